//! ISO/R 773 and DIN 6885-1: parallel keys and their keyways, metric.
//!
//! b width and h height of the key · t1 depth in the shaft, t2 in the hub, from the shaft’s surface
//! at the keyway’s middle · shaft sizes over one and up to and including the other.
//!
//! Held: shafts over 6 up to 500 mm. Keyway widths come from ISO 286: P9 in both parts for a tight
//! key, N9 in the shaft and JS9 in the hub for a normal one, H9 and D10 for a free one.
//!
//! Not here: how much a key carries (`mechanics`).

use quantities::{Basis, Length, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::length::millimeter;

use crate::fits::Zone;
use crate::iso_286::Class;
use crate::step::{Row, row};

/// Where the figures come from.
pub const SOURCE: Source = Source::new(
    "ISO/R 773 and DIN 6885-1",
    "parallel keys and keyways, as reprinted",
    Basis::CommonPractice,
);

#[rustfmt::skip]
const KEYS: [Row<[f64; 5]>; 26] = [
    // shaft over, to |    b     h     t1    t2  tolerance of t1 and t2 (+, mm)
    (  6.0,   8.0, [  2.0,  2.0,  1.2,  1.0, 0.1]),
    (  8.0,  10.0, [  3.0,  3.0,  1.8,  1.4, 0.1]),
    ( 10.0,  12.0, [  4.0,  4.0,  2.5,  1.8, 0.1]),
    ( 12.0,  17.0, [  5.0,  5.0,  3.0,  2.3, 0.1]),
    ( 17.0,  22.0, [  6.0,  6.0,  3.5,  2.8, 0.1]),
    ( 22.0,  30.0, [  8.0,  7.0,  4.0,  3.3, 0.2]),
    ( 30.0,  38.0, [ 10.0,  8.0,  5.0,  3.3, 0.2]),
    ( 38.0,  44.0, [ 12.0,  8.0,  5.0,  3.3, 0.2]),
    ( 44.0,  50.0, [ 14.0,  9.0,  5.5,  3.8, 0.2]),
    ( 50.0,  58.0, [ 16.0, 10.0,  6.0,  4.3, 0.2]),
    ( 58.0,  65.0, [ 18.0, 11.0,  7.0,  4.4, 0.2]),
    ( 65.0,  75.0, [ 20.0, 12.0,  7.5,  4.9, 0.2]),
    ( 75.0,  85.0, [ 22.0, 14.0,  9.0,  5.4, 0.2]),
    ( 85.0,  95.0, [ 25.0, 14.0,  9.0,  5.4, 0.2]),
    ( 95.0, 110.0, [ 28.0, 16.0, 10.0,  6.4, 0.2]),
    (110.0, 130.0, [ 32.0, 18.0, 11.0,  7.4, 0.2]),
    (130.0, 150.0, [ 36.0, 20.0, 12.0,  8.4, 0.3]),
    (150.0, 170.0, [ 40.0, 22.0, 13.0,  9.4, 0.3]),
    (170.0, 200.0, [ 45.0, 25.0, 15.0, 10.4, 0.3]),
    (200.0, 230.0, [ 50.0, 28.0, 17.0, 11.4, 0.3]),
    (230.0, 260.0, [ 56.0, 32.0, 20.0, 12.4, 0.3]),
    (260.0, 290.0, [ 63.0, 32.0, 20.0, 12.4, 0.3]),
    (290.0, 330.0, [ 70.0, 36.0, 22.0, 14.4, 0.3]),
    (330.0, 380.0, [ 80.0, 40.0, 25.0, 15.4, 0.3]),
    (380.0, 440.0, [ 90.0, 45.0, 28.0, 17.4, 0.3]),
    (440.0, 500.0, [100.0, 50.0, 31.0, 19.4, 0.3]),
];

/// A parallel key and its keyway.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Key {
    /// b.
    pub width: Length,
    /// h.
    pub height: Length,
    /// t1, from the top of the shaft.
    pub shaft_depth: Length,
    /// t2, from the bore.
    pub hub_depth: Length,
    /// How much deeper either may be; they may not be shallower.
    pub depth_tolerance: Length,
}

/// How tight a key sits sideways.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Seat {
    /// P9 in shaft and hub.
    Tight,
    /// N9 in the shaft, JS9 in the hub.
    Normal,
    /// H9 in the shaft, D10 in the hub: the hub may slide.
    Free,
}

/// Allowed widths of the two halves of a keyway, counted from b.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Keyway {
    /// In the shaft.
    pub shaft: Zone,
    /// In the hub.
    pub hub: Zone,
}

/// The key that belongs to a shaft of that diameter; `None` outside over 6 up to 500 mm.
///
/// # Source
/// [`SOURCE`].
/// # Example
/// ```
/// use quantities::Length;
/// use tables::iso_r_773::key_for;
/// use uom::si::length::millimeter;
/// let key = key_for(Length::new::<millimeter>(80.0)).unwrap();
/// assert_eq!(key.width.get::<millimeter>().round(), 22.0);
/// assert_eq!(key.height.get::<millimeter>().round(), 14.0);
/// ```
pub fn key_for(shaft: Length) -> Option<Key> {
    row(&KEYS, shaft.get::<millimeter>()).map(key)
}

/// The key of that width; `None` when the standard has no such width.
pub fn key_of(width: Length) -> Option<Key> {
    let width_mm = width.get::<millimeter>();
    let held = KEYS.iter().find(|(_, _, figures)| (figures[0] - width_mm).abs() < 1e-6);
    held.map(|(_, _, figures)| key(figures))
}

fn key(figures: &[f64; 5]) -> Key {
    let [width, height, shaft_depth, hub_depth, depth_tolerance] =
        figures.map(Length::new::<millimeter>);
    Key { width, height, shaft_depth, hub_depth, depth_tolerance }
}

impl Key {
    /// Over the key seat in the hub: d + t2, the size that a gauge across the bore finds.
    pub fn across_hub(&self, bore: Length) -> Length {
        bore + self.hub_depth
    }

    /// Under the key seat of the shaft: d − t1.
    pub fn across_shaft(&self, shaft: Length) -> Length {
        shaft - self.shaft_depth
    }

    /// Allowed widths of the keyway.
    ///
    /// # Example
    /// ```
    /// use quantities::Length;
    /// use tables::iso_r_773::{Seat, key_of};
    /// use uom::si::length::{micrometer, millimeter};
    /// let key = key_of(Length::new::<millimeter>(22.0)).unwrap();
    /// let keyway = key.keyway(Seat::Normal).unwrap();
    /// assert_eq!(keyway.shaft.lower.get::<micrometer>().round(), -52.0);
    /// ```
    pub fn keyway(&self, seat: Seat) -> Option<Keyway> {
        let (shaft, hub) = seat.classes();
        let zone = |class: &str| class.parse::<Class>().and_then(|c| c.limits(self.width)).ok();
        Some(Keyway { shaft: zone(shaft)?, hub: zone(hub)? })
    }
}

impl Seat {
    /// Classes of the keyway’s width in shaft and hub.
    pub fn classes(self) -> (&'static str, &'static str) {
        match self {
            Self::Tight => ("P9", "P9"),
            Self::Normal => ("N9", "JS9"),
            Self::Free => ("H9", "D10"),
        }
    }
}
