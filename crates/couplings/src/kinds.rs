//! The list of kinds: the one place that a new kind adds a line to.

mod chain;
mod diaphragm;
mod disc;
mod gear;
mod grid;
mod jaw;
mod other;
mod pin;
mod rigid;
mod shear;

use crate::kind::{Kind, same_name};

static KINDS: [&dyn Kind; 10] = [
    &gear::Gear,
    &grid::Grid,
    &disc::Disc,
    &rigid::Rigid,
    &jaw::Jaw,
    &pin::PinAndBush,
    &shear::Shear,
    &chain::Chain,
    &diaphragm::Diaphragm,
    &other::Other,
];

/// All kinds.
pub fn kinds() -> &'static [&'static dyn Kind] {
    &KINDS
}

/// The kind of this name.
///
/// # Example
/// ```
/// assert_eq!(couplings::kind("gear").map(|kind| kind.title()), Some("Gear coupling"));
/// assert!(couplings::kind("gears").is_none());
/// ```
pub fn kind(name: &str) -> Option<&'static dyn Kind> {
    KINDS.iter().copied().find(|kind| same_name(kind.name(), name))
}
