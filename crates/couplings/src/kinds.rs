//! The list of kinds: the one place that a new kind adds a line to.

mod disc;
mod gear;
mod grid;
mod rigid;

use crate::kind::{Kind, same_name};

static KINDS: [&dyn Kind; 4] = [&gear::Gear, &grid::Grid, &disc::Disc, &rigid::Rigid];

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
