//! Heat: on before it grabs, off before the shaft follows.
//!
//! A hot hub on a cold shaft gives its heat away through the gap that it needs to slide: how many
//! seconds until it grabs ([`HotHub`])? A hub that is to come off is heated faster than its shaft:
//! with how much heat, where, and for how long does it open, and when does it shut again
//! ([`Removal`])? Both are answered by finite elements of the two bodies of revolution: conduction
//! in time, growth, and one-sided contact in the joint, with heat crossing it as it opens and
//! closes.
//!
//! z runs along the shaft from the hub's face towards the machine. Sizes are at 20 °C (ISO 1).
//! Interference and clearance are on the diameter, both positive. Temperatures in between are
//! kelvins.
//!
//! Not modelled: keyways, tapers, recesses, bolt holes; a hub that is tilted or heated more on one
//! side than on the other; plastic flow; friction along the joint while it moves. An answer that
//! would need them is not given. Not here: how hot a hub must be (`mechanics::heat`).

mod advice;
mod check;
mod curve;
mod error;
mod field;
mod heating;
mod hot_hub;
mod kernel;
mod metal;
mod profile;
mod removal;
mod setup;
mod surfaces;
mod surroundings;
mod unknowns;

pub use advice::{Advice, Search, Trial};
pub use check::{Check, Effort};
pub use curve::{Body, Friction, Peak, Place, Pull, Sample};
pub use error::ThermalError;
pub use field::{Field, Line};
pub use heating::{Heat, Surface, Zone};
pub use hot_hub::{After, Grab, HotHub, InHand};
pub use metal::{Expansion, Metal};
pub use profile::{Hub, Shaft, Slice};
pub use removal::{Hottest, Opening, Removal, Window};
pub use surfaces::{GapAir, Rough, Surfaces};
pub use surroundings::{Air, Surroundings};
pub use unknowns::{Bounds, Unknowns};
pub use uom::si::f64::HeatTransfer;
