//! ANSI B4.1: preferred limits and fits, inch series.
//!
//! RC are running and sliding fits, LC, LT and LN locational fits (clearance, transition,
//! interference), FN force and shrink fits. The hole’s lower deviation is zero. Sizes are at 68 °F.
//!
//! Held: FN to 12.41 in (FN3 from 0.95 in), LN and LC2 to 19.69 in; RC, the other LC and LT over
//! 0.12 up to 19.69 in, these from memory. FN over 3.94 up to 4.73 in is from memory too; each row
//! is checked against its own rule.

mod grades;
mod tight;

use std::fmt;
use std::str::FromStr;

use quantities::{Basis, Length, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::length::{inch, mil};

use crate::fits::{Zone, Zones};
use crate::step::{lies_in, row};
use tight::{FN, LN};

/// Upper deviation of the hole, upper and lower of the shaft, in thousandths of an inch.
type Limits = [f64; 3];

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
const LC2_SOURCE: Source =
    Source::new("ANSI B4.1", "LC2 is H7/h6, with the holes of LN1 and LN2", Basis::Computed);
const MADE_SOURCE: Source =
    Source::new("ANSI B4.1", "grades and deviations of RC, LC and LT", Basis::Memory);

/// The families held here.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Family {
    /// Running and sliding.
    Rc,
    /// Locational clearance.
    Lc,
    /// Locational transition.
    Lt,
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
    #[error(
        "“{0}” is not held; held are RC1 to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3 and FN1 to FN5"
    )]
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
    /// FN over 0 up to 12.41 in, FN3 from 0.95 in; LN and LC2 up to 19.69 in; the others over 0.12
    /// up to 19.69 in.
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
            Family::Lc if self.number == 2 => {
                row(&LN, nominal_in).map(|[ln1, ln2, _]| [ln2[0], 0.0, -ln1[0]])
            }
            Family::Lc => grades::LC[column].limits(nominal_in),
            Family::Lt => grades::LT[column].limits(nominal_in),
            Family::Rc => grades::RC[column].limits(nominal_in),
        }
    }

    /// Where its figures for a nominal size come from.
    pub fn source(self, nominal: Length) -> Source {
        match self.family {
            Family::Fn if lies_in(nominal.get::<inch>(), 3.94, 4.73) => FN_RECALLED,
            Family::Fn => FN_SOURCE,
            Family::Ln => LN_SOURCE,
            Family::Lc if self.number == 2 => LC2_SOURCE,
            Family::Rc | Family::Lc | Family::Lt => MADE_SOURCE,
        }
    }
}

/// The families with the number of classes in each.
const FAMILIES: [(&str, Family, u8); 5] = [
    ("RC", Family::Rc, 9),
    ("LC", Family::Lc, 11),
    ("LT", Family::Lt, 6),
    ("LN", Family::Ln, 3),
    ("FN", Family::Fn, 5),
];

/// True for text that begins as a class of this standard does.
pub(crate) fn begins_as_one(text: &str) -> bool {
    let start: String = text.trim().to_uppercase().chars().take(2).collect();
    FAMILIES.iter().any(|(name, _, _)| *name == start)
}

impl FromStr for Class {
    type Err = B41Error;

    fn from_str(text: &str) -> Result<Self, B41Error> {
        let unknown = || B41Error::Class(text.trim().to_owned());
        let plain = text.to_uppercase().replace([' ', '-'], "");
        let (name, number) = plain.split_at_checked(2).ok_or_else(unknown)?;
        let held = FAMILIES.iter().find(|(family, _, _)| *family == name);
        let (_, family, most) = held.ok_or_else(unknown)?;
        let number = (1..=*most).find(|held| held.to_string() == number).ok_or_else(unknown)?;
        Ok(Self { family: *family, number })
    }
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let held = FAMILIES.iter().find(|(_, family, _)| *family == self.family);
        write!(f, "{}{}", held.map_or("", |(name, _, _)| name), self.number)
    }
}

as_text!(Class);
