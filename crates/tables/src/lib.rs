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
pub mod ansi_b17_1;
pub mod ansi_b4_1;
pub mod bolts;
pub mod fits;
pub mod iso_286;
pub mod iso_898_1;
pub mod iso_r_773;
pub mod materials;
pub mod nut_factor;
pub mod sae_j429;
mod si;
mod step;
