//! How metal behaves: sizes, fits, keys, heat, bolts; pure functions.
//!
//! Every module answers one question of the bench with numbers that come in as arguments: no table
//! is looked up here, no clock, no disk. A result is a struct of what was used on the way, and its
//! `working()` shows how it was found.
//!
//! Sizes are at 20 °C (ISO 1). Diametral interference is positive when the shaft is the larger; a
//! clearance is a negative interference. A `±` is the 95 % half-width ([`Estimate`]).
//!
//! Not here: tolerances and materials (`tables`), verdicts and words for people (`job`).

pub mod bolts;
mod crossing;
pub mod heat;
pub mod interference;
pub mod keys;
mod least_squares;
pub mod mass;
pub mod order;
pub mod power;
pub mod pull;
mod range;
pub mod size;
pub mod taper;
pub mod window;

pub use mass::Slice;
pub use quantities::Estimate;
pub use range::Range;
pub(crate) use range::is_positive;
