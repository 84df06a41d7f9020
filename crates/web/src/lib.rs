//! Pages, forms and HTTP interface; the only crate that knows HTTP.
//!
//! [`app`] is the whole of it: the program serves it ([`serve`]) and the tests call it. A page
//! loops over a [`job::plan::Plan`] and prints; it never computes. A form's fields are the places
//! of the job file (`fields`); each reading that comes in becomes one entry in the
//! records before the answer goes out. All pages work without script; with it, only the part that
//! changed is fetched again.
//!
//! Not here: what a number means (`job`), how a drawing is drawn (`figures`), how a card is set
//! (`papers`), how entries are kept (`records`).

mod api;
mod app;
mod assets;
mod card;
mod drawing;
mod dues;
mod error;
mod fields;
mod form;
mod frame;
mod guard;
mod hand;
mod head;
mod job_page;
mod jobs;
mod kinds;
mod log;
mod marks;
mod numbers;
mod openapi;
mod opened;
mod reckon_page;
mod rules_page;
mod sheet_page;
mod shop;
mod spine;
mod stage_page;
mod steps;
mod take_over;
mod time;
mod trying;
mod ways;
mod working;
mod write;

pub use app::{app, serve};
pub use error::PageError;
pub use shop::Shop;
