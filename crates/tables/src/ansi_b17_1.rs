//! ANSI B17.1: square and rectangular parallel keys and their keyseats, inch.
//!
//! W width and H height of the key, D shaft · half the key lies in the shaft and half in the hub,
//! each measured at the side of the seat · shaft sizes over one and up to and including the other.
//! Depths are controlled across the shaft and the bore:
//!
//! ```text
//! Y = (D − √(D² − W²))/2      S = D − Y − H/2      T = D − Y + H/2 + C
//! ```
//!
//! with S from the bottom of the seat to the far side of the shaft, T the same across the bore, and
//! C an allowance over the key, [`ALLOWANCE`].
//!
//! Held: shafts over 5/16 up to 30 in, square keys to 15 in, rectangular ones from 7/16 in. Shafts
//! over 7-1/2 in, class 2 and the formulas are from memory; T agrees with printed coupling bores.
//!
//! Not here: the arithmetic of Y, S and T for a job, nor how much a key carries (`mechanics`).

use quantities::{Basis, Length, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::length::{inch, mil};

use crate::fits::Zone;
use crate::si::inches;
use crate::step::{NO, Row, row};

/// Where the sizes come from, to a shaft of 7-1/2 in.
pub const SOURCE: Source = Source::new("ANSI B17.1-1967", "Table 1", Basis::Read);
/// Where the sizes over 7-1/2 in, class 2 and the depth formulas come from.
pub const RECALLED: Source = Source::new("ANSI B17.1-1967", "", Basis::Memory);

/// C, the clearance over the key that the depths S and T are set out for.
pub const ALLOWANCE: Length = inches(0.005);

/// How a key’s section is shaped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Shape {
    /// As high as wide.
    Square,
    /// Lower than wide.
    Rectangular,
}

/// How a key fits its seat sideways.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Class {
    /// Clearance, keys of bar stock.
    #[serde(rename = "1")]
    One,
    /// From a little clearance to a little interference.
    #[serde(rename = "2")]
    Two,
}

/// A parallel key.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Key {
    /// W.
    pub width: Length,
    /// H.
    pub height: Length,
    /// Depth of the seat in the shaft and, alike, in the hub: H/2, at the side of the seat.
    pub depth: Length,
    /// Where the size comes from.
    pub source: Source,
}

#[rustfmt::skip]
const KEYS: [Row<[f64; 3]>; 22] = [
    // shaft over, to (in) |  W      square H  rectangular H
    ( 0.3125,  0.4375, [0.09375, 0.09375,      NO]),
    ( 0.4375,  0.5625, [0.12500, 0.12500, 0.09375]),
    ( 0.5625,  0.8750, [0.18750, 0.18750, 0.12500]),
    ( 0.8750,  1.2500, [0.25000, 0.25000, 0.18750]),
    ( 1.2500,  1.3750, [0.31250, 0.31250, 0.25000]),
    ( 1.3750,  1.7500, [0.37500, 0.37500, 0.25000]),
    ( 1.7500,  2.2500, [0.50000, 0.50000, 0.37500]),
    ( 2.2500,  2.7500, [0.62500, 0.62500, 0.43750]),
    ( 2.7500,  3.2500, [0.75000, 0.75000, 0.50000]),
    ( 3.2500,  3.7500, [0.87500, 0.87500, 0.62500]),
    ( 3.7500,  4.5000, [1.00000, 1.00000, 0.75000]),
    ( 4.5000,  5.5000, [1.25000, 1.25000, 0.87500]),
    ( 5.5000,  6.5000, [1.50000, 1.50000, 1.00000]),
    ( 6.5000,  7.5000, [1.75000, 1.75000, 1.50000]),
    ( 7.5000,  9.0000, [2.00000, 2.00000, 1.50000]),
    ( 9.0000, 11.0000, [2.50000, 2.50000, 1.75000]),
    (11.0000, 13.0000, [3.00000, 3.00000, 2.00000]),
    (13.0000, 15.0000, [3.50000, 3.50000, 2.50000]),
    (15.0000, 18.0000, [4.00000,      NO, 3.00000]),
    (18.0000, 22.0000, [5.00000,      NO, 3.50000]),
    (22.0000, 26.0000, [6.00000,      NO, 4.00000]),
    (26.0000, 30.0000, [7.00000,      NO, 5.00000]),
];

/// The key that belongs to a shaft of that diameter; `None` where the standard has none.
///
/// # Valid
/// Shafts over 5/16 up to 30 in; square to 15 in, rectangular from 7/16 in.
/// # Source
/// [`SOURCE`]; over 7-1/2 in [`RECALLED`].
/// # Example
/// ```
/// use quantities::Length;
/// use tables::ansi_b17_1::{Shape, key_for};
/// use uom::si::length::inch;
/// let key = key_for(Length::new::<inch>(2.875), Shape::Square).unwrap();
/// assert_eq!(format!("{:.4}", key.width.get::<inch>()), "0.7500");
/// ```
pub fn key_for(shaft: Length, shape: Shape) -> Option<Key> {
    let shaft_in = shaft.get::<inch>();
    let [width, square, rectangular] = *row(&KEYS, shaft_in)?;
    let height = match shape {
        Shape::Square => square,
        Shape::Rectangular => rectangular,
    };
    height.is_finite().then(|| Key {
        width: Length::new::<inch>(width),
        height: Length::new::<inch>(height),
        depth: Length::new::<inch>(height / 2.0),
        source: if shaft_in > 7.5 { RECALLED } else { SOURCE },
    })
}

/// Allowed widths of a key and its seat, counted from W.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Widths {
    /// Of the key.
    pub key: Zone,
    /// Of the seat, in shaft and hub alike.
    pub seat: Zone,
    /// Where they come from.
    pub source: Source,
}

/// Key and seat widths in thousandths of an inch: key upper, key lower, seat upper; seat lower 0.
type Tolerances = [Row<[f64; 3]>];

#[rustfmt::skip]
const SQUARE_1: [Row<[f64; 3]>; 6] = [
    // W over, to (in) | key +, key −, seat + (0.001 in)
    (0.00, 0.50, [0.0, -2.0, 2.0]),
    (0.50, 0.75, [0.0, -2.0, 3.0]),
    (0.75, 1.00, [0.0, -3.0, 3.0]),
    (1.00, 1.50, [0.0, -3.0, 4.0]),
    (1.50, 2.50, [0.0, -4.0, 4.0]),
    (2.50, 3.50, [0.0, -6.0, 4.0]),
];

#[rustfmt::skip]
const RECTANGULAR_1: [Row<[f64; 3]>; 7] = [
    (0.00, 0.50, [0.0, -3.0, 2.0]),
    (0.50, 0.75, [0.0, -3.0, 3.0]),
    (0.75, 1.00, [0.0, -4.0, 3.0]),
    (1.00, 1.50, [0.0, -4.0, 4.0]),
    (1.50, 3.00, [0.0, -5.0, 4.0]),
    (3.00, 4.00, [0.0, -6.0, 4.0]),
    (4.00, 6.00, [0.0, -8.0, 4.0]),
];

#[rustfmt::skip]
const CLASS_2: [Row<[f64; 3]>; 3] = [
    (0.00, 1.25, [1.0,  0.0, 2.0]),
    (1.25, 3.00, [2.0,  0.0, 2.0]),
    (3.00, 3.50, [3.0,  0.0, 2.0]),
];

/// Deviations of S: a seat may be deeper in the shaft, not shallower.
pub const S_ZONE: Zone = Zone { upper: inches(0.0), lower: inches(-0.015) };
/// Deviations of T: a seat may be deeper in the hub, not shallower.
pub const T_ZONE: Zone = Zone { upper: inches(0.010), lower: inches(0.0) };

/// How far the height of a rectangular key of key stock may be off, either way.
const KEY_STOCK_HEIGHT: Length = inches(0.005);

/// Allowed height of a key, counted from H: as its width, but for a rectangular one of class 2,
/// which is of key stock; `None` for a width that the table does not hold.
///
/// # Source
/// ANSI B17.1: class 1 as its printed top clearances have it; class 2 [`RECALLED`].
pub fn height(width: Length, shape: Shape, class: Class) -> Option<Zone> {
    let as_width = widths(width, shape, class)?.key;
    Some(match (class, shape) {
        (Class::Two, Shape::Rectangular) => {
            Zone { upper: KEY_STOCK_HEIGHT, lower: -KEY_STOCK_HEIGHT }
        }
        _ => as_width,
    })
}

/// Allowed widths of a key and its seat; `None` for a width that the table does not hold.
///
/// # Source
/// ANSI B17.1, table of design fits; class 2 [`RECALLED`].
pub fn widths(width: Length, shape: Shape, class: Class) -> Option<Widths> {
    let (table, source): (&Tolerances, Source) = match (class, shape) {
        (Class::One, Shape::Square) => (&SQUARE_1, SOURCE),
        (Class::One, Shape::Rectangular) => (&RECTANGULAR_1, SOURCE),
        (Class::Two, _) => (&CLASS_2, RECALLED),
    };
    let [key_upper, key_lower, seat_upper] =
        row(table, width.get::<inch>())?.map(Length::new::<mil>);
    Some(Widths {
        key: Zone { upper: key_upper, lower: key_lower },
        seat: Zone { upper: seat_upper, lower: inches(0.0) },
        source,
    })
}
