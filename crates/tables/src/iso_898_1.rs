//! ISO 898-1: bolts of property classes 8.8, 10.9 and 12.9, metric coarse threads.
//!
//! Held: M6 to M27, M30 and M36. The areas of M30 and M36 come from their breaking loads.
//!
//! Not here: fine threads, stainless bolts (ISO 3506), how hard to tighten (`mechanics`).

use quantities::{Basis, Length, Pressure, Source};
use uom::si::length::millimeter;

use crate::bolts::Thread;
use crate::si::{megapascals, millimetres, square_millimetres};

/// Where the figures come from.
pub const SOURCE: Source =
    Source::new("ISO 898-1", "proof loads of coarse threads, as reprinted", Basis::Read);

const fn metric(name: &'static str, diameter: f64, pitch: f64, area: f64) -> Thread {
    Thread {
        name,
        diameter: millimetres(diameter),
        pitch: millimetres(pitch),
        stress_area: square_millimetres(area),
        source: SOURCE,
    }
}

/// Coarse threads.
#[rustfmt::skip]
pub static THREADS: [Thread; 13] = [
    //            d mm  pitch  area mm²
    metric("M6",   6.0, 1.00,  20.1),
    metric("M8",   8.0, 1.25,  36.6),
    metric("M10", 10.0, 1.50,  58.0),
    metric("M12", 12.0, 1.75,  84.3),
    metric("M14", 14.0, 2.00, 115.0),
    metric("M16", 16.0, 2.00, 157.0),
    metric("M18", 18.0, 2.50, 192.0),
    metric("M20", 20.0, 2.50, 245.0),
    metric("M22", 22.0, 2.50, 303.0),
    metric("M24", 24.0, 3.00, 353.0),
    metric("M27", 27.0, 3.00, 459.0),
    metric("M30", 30.0, 3.50, 561.0),
    metric("M36", 36.0, 4.00, 817.0),
];

/// Property classes held.
pub const CLASSES: [&str; 3] = ["8.8", "10.9", "12.9"];

/// Proof stress of a property class; that of 8.8 is higher over M16.
///
/// # Source
/// [`SOURCE`].
/// # Example
/// ```
/// use quantities::Length;
/// use tables::iso_898_1::proof_stress;
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let (class, stress) = proof_stress("10.9", Length::new::<millimeter>(16.0)).unwrap();
/// assert_eq!((class, stress.get::<megapascal>().round()), ("10.9", 830.0));
/// ```
pub fn proof_stress(class: &str, diameter: Length) -> Option<(&'static str, Pressure)> {
    let over_m16 = diameter.get::<millimeter>() > 16.0 + 1e-6;
    let held = CLASSES.into_iter().find(|held| *held == class.trim())?;
    let mpa = match held {
        "8.8" if over_m16 => 600.0,
        "8.8" => 580.0,
        "10.9" => 830.0,
        _ => 970.0,
    };
    Some((held, megapascals(mpa)))
}
