//! ANSI/AGMA 9002-B04: bores and keyways of flexible couplings, inch series.
//!
//! Deviations of bores are counted from the nominal size; T is the size across the bore, from its
//! far side to the bottom of the keyway of a square key.
//!
//! Held: bores from 3/8 to 1-1/2 in, for larger ones the text was not at hand.

use quantities::{Basis, Length, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::length::inch;

use crate::fits::Zone;
use crate::si::inches;

/// Where the figures come from.
pub const SOURCE: Source =
    Source::new("ANSI/AGMA 9002-B04", "bore and keyway tolerances, inch series", Basis::Read);

/// What a bore is made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Fit {
    /// The hub slides on.
    Clearance,
    /// The hub is heated or pressed on.
    Interference,
}

/// A hub’s keyway.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Keyway {
    /// Nominal width, to four decimals of an inch.
    pub width: Length,
    /// Its deviations.
    pub width_zone: Zone,
    /// T.
    pub across: Length,
    /// Its deviations.
    pub across_zone: Zone,
}

/// Bore (in), keyway width (in), T (in).
#[rustfmt::skip]
const BORES: [(f64, f64, f64); 13] = [
    (0.3750, 0.0938, 0.421),
    (0.4375, 0.0938, 0.484),
    (0.5625, 0.1250, 0.623),
    (0.6250, 0.1875, 0.709),
    (0.7500, 0.1875, 0.837),
    (0.8125, 0.1875, 0.900),
    (0.9375, 0.2500, 1.051),
    (1.0000, 0.2500, 1.114),
    (1.1250, 0.2500, 1.241),
    (1.1875, 0.2500, 1.304),
    (1.3125, 0.3125, 1.455),
    (1.3750, 0.3125, 1.518),
    (1.5000, 0.3750, 1.669),
];

/// Deviations of a bore; `None` outside 3/8 to 1-1/2 in.
///
/// # Example
/// ```
/// use quantities::Length;
/// use tables::agma_9002::{Fit, bore};
/// use uom::si::length::{inch, mil};
/// let zone = bore(Length::new::<inch>(1.0), Fit::Interference).unwrap();
/// assert_eq!(format!("{:.1} to {:.1}", zone.lower.get::<mil>(), zone.upper.get::<mil>()), "-1.0 to -0.5");
/// ```
pub fn bore(nominal: Length, fit: Fit) -> Option<Zone> {
    let held = (0.375 - 1e-9..=1.5 + 1e-9).contains(&nominal.get::<inch>());
    held.then_some(match fit {
        Fit::Clearance => Zone { upper: inches(0.0010), lower: inches(0.0) },
        Fit::Interference => Zone { upper: inches(-0.0005), lower: inches(-0.0010) },
    })
}

/// The keyway of a bore; `None` unless the table lists that very bore.
pub fn keyway(nominal: Length) -> Option<Keyway> {
    let nominal_in = nominal.get::<inch>();
    let (_, width, across) = BORES.iter().find(|(bore, _, _)| (bore - nominal_in).abs() < 1e-6)?;
    let wider = if nominal_in < 1.4 { 0.0020 } else { 0.0025 };
    Some(Keyway {
        width: Length::new::<inch>(*width),
        width_zone: Zone { upper: Length::new::<inch>(wider), lower: inches(0.0) },
        across: Length::new::<inch>(*across),
        across_zone: Zone { upper: inches(0.015), lower: inches(0.0) },
    })
}
