//! ANSI B4.1: preferred limits and fits, inch series: LN1 to LN3, FN1 to FN5 and LC2.
//!
//! LN are locational fits with interference, FN force and shrink fits, LC2 the locational clearance
//! fit H7/h6. The hole’s lower deviation is zero. Sizes are at 68 °F.
//!
//! Held: FN to 12.41 in (FN3 from 0.95 in), LN and LC2 to 19.69 in. FN over 3.94 up to 4.73 in is
//! from memory; each row is checked against its own rule.

use std::fmt;
use std::str::FromStr;

use quantities::{Basis, Length, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::length::{inch, mil};

use crate::fits::{Zone, Zones};
use crate::step::{NO, Row, lies_in, row};

/// Upper deviation of the hole, upper and lower of the shaft, in thousandths of an inch.
type Limits = [f64; 3];

const DASH: Limits = [NO; 3];

#[rustfmt::skip]
const FN: [Row<[Limits; 5]>; 21] = [
    // over, to (in) |       FN1                   FN2                   FN3                   FN4                   FN5
    ( 0.00,  0.12, [[ 0.25,  0.50,  0.30], [ 0.40,  0.85,  0.60],                DASH, [ 0.40,  0.95,  0.70], [ 0.60,  1.30,  0.90]]),
    ( 0.12,  0.24, [[ 0.30,  0.60,  0.40], [ 0.50,  1.00,  0.70],                DASH, [ 0.50,  1.20,  0.90], [ 0.70,  1.70,  1.20]]),
    ( 0.24,  0.40, [[ 0.40,  0.75,  0.50], [ 0.60,  1.40,  1.00],                DASH, [ 0.60,  1.60,  1.20], [ 0.90,  2.00,  1.40]]),
    ( 0.40,  0.56, [[ 0.40,  0.80,  0.50], [ 0.70,  1.60,  1.20],                DASH, [ 0.70,  1.80,  1.40], [ 1.00,  2.30,  1.60]]),
    ( 0.56,  0.71, [[ 0.40,  0.90,  0.60], [ 0.70,  1.60,  1.20],                DASH, [ 0.70,  1.80,  1.40], [ 1.00,  2.50,  1.80]]),
    ( 0.71,  0.95, [[ 0.50,  1.10,  0.70], [ 0.80,  1.90,  1.40],                DASH, [ 0.80,  2.10,  1.60], [ 1.20,  3.00,  2.20]]),
    ( 0.95,  1.19, [[ 0.50,  1.20,  0.80], [ 0.80,  1.90,  1.40], [ 0.80,  2.10,  1.60], [ 0.80,  2.30,  1.80], [ 1.20,  3.30,  2.50]]),
    ( 1.19,  1.58, [[ 0.60,  1.30,  0.90], [ 1.00,  2.40,  1.80], [ 1.00,  2.60,  2.00], [ 1.00,  3.10,  2.50], [ 1.60,  4.00,  3.00]]),
    ( 1.58,  1.97, [[ 0.60,  1.40,  1.00], [ 1.00,  2.40,  1.80], [ 1.00,  2.80,  2.20], [ 1.00,  3.40,  2.80], [ 1.60,  5.00,  4.00]]),
    ( 1.97,  2.56, [[ 0.70,  1.80,  1.30], [ 1.20,  2.70,  2.00], [ 1.20,  3.20,  2.50], [ 1.20,  4.20,  3.50], [ 1.80,  6.20,  5.00]]),
    ( 2.56,  3.15, [[ 0.70,  1.90,  1.40], [ 1.20,  2.90,  2.20], [ 1.20,  3.70,  3.00], [ 1.20,  4.70,  4.00], [ 1.80,  7.20,  6.00]]),
    ( 3.15,  3.94, [[ 0.90,  2.40,  1.80], [ 1.40,  3.70,  2.80], [ 1.40,  4.40,  3.50], [ 1.40,  5.90,  5.00], [ 2.20,  8.40,  7.00]]),
    ( 3.94,  4.73, [[ 0.90,  2.60,  2.00], [ 1.40,  3.90,  3.00], [ 1.40,  4.90,  4.00], [ 1.40,  6.90,  6.00], [ 2.20,  9.40,  8.00]]),
    ( 4.73,  5.52, [[ 1.00,  2.90,  2.20], [ 1.60,  4.50,  3.50], [ 1.60,  6.00,  5.00], [ 1.60,  8.00,  7.00], [ 2.50, 11.60, 10.00]]),
    ( 5.52,  6.30, [[ 1.00,  3.20,  2.50], [ 1.60,  5.00,  4.00], [ 1.60,  6.00,  5.00], [ 1.60,  8.00,  7.00], [ 2.50, 13.60, 12.00]]),
    ( 6.30,  7.09, [[ 1.00,  3.50,  2.80], [ 1.60,  5.50,  4.50], [ 1.60,  7.00,  6.00], [ 1.60,  9.00,  8.00], [ 2.50, 13.60, 12.00]]),
    ( 7.09,  7.88, [[ 1.20,  3.80,  3.00], [ 1.80,  6.20,  5.00], [ 1.80,  8.20,  7.00], [ 1.80, 10.20,  9.00], [ 2.80, 15.80, 14.00]]),
    ( 7.88,  8.86, [[ 1.20,  4.30,  3.50], [ 1.80,  6.20,  5.00], [ 1.80,  8.20,  7.00], [ 1.80, 11.20, 10.00], [ 2.80, 17.80, 16.00]]),
    ( 8.86,  9.85, [[ 1.20,  4.30,  3.50], [ 1.80,  7.20,  6.00], [ 1.80,  9.20,  8.00], [ 1.80, 13.20, 12.00], [ 2.80, 17.80, 16.00]]),
    ( 9.85, 11.03, [[ 1.20,  4.90,  4.00], [ 2.00,  7.20,  6.00], [ 2.00, 10.20,  9.00], [ 2.00, 13.20, 12.00], [ 3.00, 20.00, 18.00]]),
    (11.03, 12.41, [[ 1.20,  4.90,  4.00], [ 2.00,  8.20,  7.00], [ 2.00, 10.20,  9.00], [ 2.00, 15.20, 14.00], [ 3.00, 22.00, 20.00]]),
];

#[rustfmt::skip]
const LN: [Row<[Limits; 3]>; 13] = [
    // over, to (in) |       LN1                   LN2                   LN3
    ( 0.00,  0.12, [[ 0.25,  0.45,  0.25], [ 0.40,  0.65,  0.40], [ 0.40,  0.75,  0.50]]),
    ( 0.12,  0.24, [[ 0.30,  0.50,  0.30], [ 0.50,  0.80,  0.50], [ 0.50,  0.90,  0.60]]),
    ( 0.24,  0.40, [[ 0.40,  0.65,  0.40], [ 0.60,  1.00,  0.60], [ 0.60,  1.20,  0.80]]),
    ( 0.40,  0.71, [[ 0.40,  0.80,  0.40], [ 0.70,  1.10,  0.70], [ 0.70,  1.40,  1.00]]),
    ( 0.71,  1.19, [[ 0.50,  1.00,  0.50], [ 0.80,  1.30,  0.80], [ 0.80,  1.70,  1.20]]),
    ( 1.19,  1.97, [[ 0.60,  1.10,  0.60], [ 1.00,  1.60,  1.00], [ 1.00,  2.00,  1.40]]),
    ( 1.97,  3.15, [[ 0.70,  1.30,  0.80], [ 1.20,  2.10,  1.40], [ 1.20,  2.30,  1.60]]),
    ( 3.15,  4.73, [[ 0.90,  1.60,  1.00], [ 1.40,  2.50,  1.60], [ 1.40,  2.90,  2.00]]),
    ( 4.73,  7.09, [[ 1.00,  1.90,  1.20], [ 1.60,  2.80,  1.80], [ 1.60,  3.50,  2.50]]),
    ( 7.09,  9.85, [[ 1.20,  2.20,  1.40], [ 1.80,  3.20,  2.00], [ 1.80,  4.20,  3.00]]),
    ( 9.85, 12.41, [[ 1.20,  2.30,  1.40], [ 2.00,  3.40,  2.20], [ 2.00,  4.70,  3.50]]),
    (12.41, 15.75, [[ 1.40,  2.60,  1.60], [ 2.20,  3.90,  2.50], [ 2.20,  5.90,  4.50]]),
    (15.75, 19.69, [[ 1.60,  2.80,  1.80], [ 2.50,  4.40,  2.80], [ 2.50,  6.60,  5.00]]),
];

const FN_SOURCE: Source = Source::new(
    "ANSI B4.1-1967 Table 11, in Machinery’s Handbook, 27th and 31st ed.",
    "force and shrink fits",
    Basis::Read,
);
const FN_RECALLED: Source =
    Source::new("ANSI B4.1-1967 Table 11", "over 3.94 up to 4.73 in", Basis::Memory);
const LN_SOURCE: Source = Source::new(
    "ANSI B4.1-1967 Table 12, in Machinery’s Handbook, 31st ed.",
    "interference locational fits",
    Basis::Read,
);
const LC_SOURCE: Source =
    Source::new("ANSI B4.1", "LC2 is H7/h6, with the holes of LN1 and LN2", Basis::Computed);

/// The families held here.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Family {
    /// Locational clearance.
    Lc,
    /// Locational interference.
    Ln,
    /// Force and shrink.
    Fn,
}

/// A class, such as FN2.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(try_from = "String", into = "String")]
#[schemars(with = "String")]
pub struct Class {
    family: Family,
    number: u8,
}

/// Why a class gives no limits.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum B41Error {
    /// Not a class that is held.
    #[error("“{0}” is not held; held are LC2, LN1 to LN3 and FN1 to FN5")]
    Class(String),
    /// A class that the table does not give for the size.
    #[error("{class} is not held for {} in", .nominal.get::<inch>())]
    NotHeld {
        /// The class.
        class: Class,
        /// The size.
        nominal: Length,
    },
}

impl Class {
    /// The family.
    pub fn family(self) -> Family {
        self.family
    }

    /// The zones of hole and shaft for a nominal size.
    ///
    /// # Valid
    /// FN over 0 up to 12.41 in, FN3 from 0.95 in; LN and LC2 up to 19.69 in.
    /// # Errors
    /// [`B41Error::NotHeld`] outside that.
    /// # Example
    /// ```
    /// use quantities::Length;
    /// use tables::ansi_b4_1::Class;
    /// use uom::si::length::{inch, mil};
    /// let zones = "FN2".parse::<Class>()?.zones(Length::new::<inch>(2.0))?;
    /// assert_eq!(format!("{:.1}", zones.shaft.upper.get::<mil>()), "2.7");
    /// # Ok::<(), tables::ansi_b4_1::B41Error>(())
    /// ```
    pub fn zones(self, nominal: Length) -> Result<Zones, B41Error> {
        let limits = self.limits(nominal.get::<inch>());
        let limits = limits.filter(|limits| limits.iter().all(|limit| limit.is_finite()));
        let [hole, upper, lower] = limits.ok_or(B41Error::NotHeld { class: self, nominal })?;
        let thousandths = Length::new::<mil>;
        Ok(Zones {
            hole: Zone { upper: thousandths(hole), lower: thousandths(0.0) },
            shaft: Zone { upper: thousandths(upper), lower: thousandths(lower) },
        })
    }

    fn limits(self, nominal_in: f64) -> Option<Limits> {
        let column = usize::from(self.number) - 1;
        match self.family {
            Family::Fn => row(&FN, nominal_in).map(|classes| classes[column]),
            Family::Ln => row(&LN, nominal_in).map(|classes| classes[column]),
            Family::Lc => row(&LN, nominal_in).map(|[ln1, ln2, _]| [ln2[0], 0.0, -ln1[0]]),
        }
    }

    /// Where its figures for a nominal size come from.
    pub fn source(self, nominal: Length) -> Source {
        match self.family {
            Family::Fn if lies_in(nominal.get::<inch>(), 3.94, 4.73) => FN_RECALLED,
            Family::Fn => FN_SOURCE,
            Family::Ln => LN_SOURCE,
            Family::Lc => LC_SOURCE,
        }
    }
}

const CLASSES: [(&str, Family, u8); 9] = [
    ("LC2", Family::Lc, 2),
    ("LN1", Family::Ln, 1),
    ("LN2", Family::Ln, 2),
    ("LN3", Family::Ln, 3),
    ("FN1", Family::Fn, 1),
    ("FN2", Family::Fn, 2),
    ("FN3", Family::Fn, 3),
    ("FN4", Family::Fn, 4),
    ("FN5", Family::Fn, 5),
];

impl FromStr for Class {
    type Err = B41Error;

    fn from_str(text: &str) -> Result<Self, B41Error> {
        let plain = text.to_uppercase().replace([' ', '-'], "");
        let held = CLASSES.iter().find(|(name, _, _)| *name == plain);
        let (_, family, number) = held.ok_or_else(|| B41Error::Class(text.trim().to_owned()))?;
        Ok(Self { family: *family, number: *number })
    }
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let this = |(_, family, number): &&(&str, Family, u8)| {
            *family == self.family && *number == self.number
        };
        f.write_str(CLASSES.iter().find(this).map_or("", |(name, _, _)| name))
    }
}

as_text!(Class);
