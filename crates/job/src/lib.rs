//! The log book, the state of a job, and its plan.
//!
//! A job is a log book: entries are added, never changed ([`Entry`]). What its entries say now is
//! a [`Job`], whose tables are those of a [`JobFile`]; so a job can be one TOML file as well. A
//! [`plan::Plan`] is a pure function of it.
//!
//! Not here: where log books are kept (`records`), how a plan looks (`figures`, `papers`, `web`).

mod book;
mod check;
mod entry;
mod fields;
pub mod file;
mod parse;
pub mod plan;
mod read;
mod sheet;
mod site;

pub use couplings::Stage;

pub use book::{ActError, Job, Line, LogBook, Note, SetAside};
pub use check::{Problem, impossible};
pub use entry::{Act, Entry, EntryId, Written};
pub use fields::FieldLine;
pub use file::JobFile;
pub use read::{FileError, read, schema, write};
pub use sheet::{
    SHEET_VERSION, SheetFile, blank_sheet, read_sheet, sheet_lines, sheet_schema, write_sheet,
};
pub use site::{
    SITE_VERSION, SiteFile, blank_site, read_site, site_lines, site_schema, write_site,
};
