//! What standards and handbooks say: data with its source, no physics.
//!
//! One module a publication or a subject. A lookup answers `None`, or an error that says what is
//! held, beyond the ends of its table; never the nearest row. Every table says where its figures
//! come from and how they are known.
//!
//! Not here: what follows from the figures (`mechanics`, `lineup`), nor any maker's data.

#[macro_use]
mod written;

pub mod ansi_b4_1;
pub mod fits;
pub mod iso_286;
pub mod materials;
mod si;
mod step;
