//! What standards and handbooks say: data with its source, no physics.
//!
//! One module a publication or a subject. A lookup answers `None`, or an error that says what is
//! held, beyond the ends of its table; never the nearest row. Every table says where its figures
//! come from and how they are known.
//!
//! Not here: what follows from the figures (`mechanics`, `lineup`), nor any maker's data.

#[macro_use]
mod written;

pub mod agma_9002;
pub mod alignment;
pub mod ansi_b17_1;
pub mod ansi_b4_1;
pub mod balance;
pub mod bolts;
pub mod din_7190;
pub mod fits;
pub mod friction;
pub mod greases;
pub mod growth;
pub mod heating;
pub mod hub_fits;
pub mod iso_286;
pub mod iso_898_1;
pub mod iso_r_773;
pub mod key_steels;
pub mod limits;
pub mod materials;
pub mod nema_mg_1;
pub mod nut_factor;
pub mod pullers;
pub mod sae_j429;
pub mod seals;
pub mod service_factors;
pub mod set_screws;
pub mod shims;
pub mod tools;

mod si;
mod step;
