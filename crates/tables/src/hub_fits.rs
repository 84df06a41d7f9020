//! How tight hubs are usually bored, when nothing else is known: rules of thumb.
//!
//! Not here: the fits of standards (`iso_286`, `ansi_b4_1`); the maker's sheet outranks both.

use quantities::{Basis, Length, Source};
use uom::si::length::inch;

use crate::si::inches;
use crate::step::{Row, row};

/// Where the rules come from.
pub const SOURCE: Source = Source::common_practice("interference of coupling hubs, rules of thumb");

/// Interference of a keyless taper, per length of diameter.
pub const TAPER: f64 = 0.001;
/// Interference of a steel hub that carries without a key, per length of diameter.
pub const KEYLESS: (f64, f64) = (0.001, 0.0015);

/// Part of a taper's surface that must show blue: less is lapped or bored again.
pub const TAPER_CONTACT: f64 = 0.85;
/// Where [`TAPER_CONTACT`] comes from.
pub const TAPER_CONTACT_SOURCE: Source =
    Source::new("API 671", "contact of tapered bores: 85 %", Basis::Memory);

/// Thousandths of an inch.
const KEYED: [Row<[f64; 2]>; 2] = [(0.5, 2.0, [0.5, 1.5]), (2.0, 6.0, [0.5, 2.0])];

/// Least and greatest usual interference of a keyed hub with a straight bore; `None` outside
/// shafts over 1/2 up to 6 in.
///
/// # Source
/// [`SOURCE`].
/// # Example
/// ```
/// use quantities::Length;
/// use uom::si::length::{inch, mil};
/// let (least, greatest) = tables::hub_fits::keyed(Length::new::<inch>(3.0)).unwrap();
/// assert_eq!(format!("{:.1} {:.1}", least.get::<mil>(), greatest.get::<mil>()), "0.5 2.0");
/// ```
pub fn keyed(shaft: Length) -> Option<(Length, Length)> {
    let [least, greatest] = *row(&KEYED, shaft.get::<inch>())?;
    Some((inches(least / 1e3), inches(greatest / 1e3)))
}
