//! NEMA MG 1: how true to size the shaft extensions of motors are, inch series.
//!
//! Deviations are counted from the nominal size.

use quantities::{Basis, Length, Source};
use uom::si::length::inch;

use crate::fits::Zone;
use crate::si::inches;
use crate::step::{Row, row};

/// Where the figures come from.
pub const SOURCE: Source =
    Source::new("NEMA MG 1", "part 4, diameters of shaft extensions", Basis::Memory);

#[rustfmt::skip]
const SHAFTS: [Row<f64>; 2] = [
    // over, to (in) | below the nominal size at most (in)
    (0.1874, 1.5, 0.0005),
    (1.5,    6.5, 0.001),
];

/// Deviations of a motor’s shaft; `None` outside 3/16 to 6-1/2 in.
///
/// # Example
/// ```
/// use quantities::Length;
/// use tables::nema_mg_1::shaft_extension;
/// use uom::si::length::{inch, mil};
/// let zone = shaft_extension(Length::new::<inch>(2.125)).unwrap();
/// assert_eq!(format!("{:.1}", zone.lower.get::<mil>()), "-1.0");
/// ```
pub fn shaft_extension(nominal: Length) -> Option<Zone> {
    let below = row(&SHAFTS, nominal.get::<inch>())?;
    Some(Zone { upper: inches(0.0), lower: -inches(*below) })
}
