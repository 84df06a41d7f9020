//! ISO 286-1 and -2: limits and fits, sizes to 500 mm.
//!
//! A class, H7 or p6, is a letter (where the zone lies) and a grade (how wide it is). The tables
//! govern: the standard's formulas only say where they were rounded from, and miss some cells.
//! Deviations are counted from the nominal size; a fit's interference is diametral and positive
//! when the shaft is the larger. Sizes are at 20 °C (ISO 1).
//!
//! Held: all letters, a to zc, and grades 1 to 18, for sizes to 500 mm (h, H, js and JS from
//! grade 5 on to 630 mm). Anything else is an error, never the nearest row. What is not read but
//! recalled or computed says so ([`Class::source`]).
//!
//! Not here: what a measured pair of parts does (`mechanics`).

mod grades;
mod holes;
mod shafts;

use std::fmt;
use std::str::FromStr;

use quantities::{Basis, Length, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uom::si::length::{micrometer, millimeter};

pub use crate::fits::{Zone, Zones};
use crate::step::lies_in;

/// Where the figures come from.
pub const SOURCE: Source = Source::new(
    "ISO 286-1 and -2, as tabulated in Narayana, Kannaiah and Venkata Reddy, Machine Drawing",
    "Tables 15.1 to 15.3",
    Basis::Read,
);

/// Where the deviations a, b, c (but for 30 to 40 mm), cd, ef, fg, j up to 180 mm and y to zc come
/// from, and the grades 1 to 4.
pub const RECALLED: Source =
    Source::new("ISO 286-1", "outer letters, c and j, grades 1 to 4", Basis::Memory);

/// Where the grades from 12 on come from.
pub const COARSE: Source = Source::new(
    "ISO 286-1",
    "Table 1: from IT12 on, ten times the grade five finer",
    Basis::Computed,
);

/// Whether a class belongs to a hole (capital letter) or to a shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// A bore.
    Hole,
    /// A shaft.
    Shaft,
}

/// Where a zone lies: clear of the nominal size for a to g, at it for h, beyond it for k to zc.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the letter says it")]
#[rustfmt::skip]
pub enum Letter {
    A, B, C, Cd, D, E, Ef, F, Fg, G, H, Js, J, K, M, N, P, R, S, T, U, V, X, Y, Z, Za, Zb, Zc,
}

#[rustfmt::skip]
const LETTERS: [(Letter, &str); 28] = [
    (Letter::A, "a"), (Letter::B, "b"), (Letter::C, "c"), (Letter::Cd, "cd"), (Letter::D, "d"),
    (Letter::E, "e"), (Letter::Ef, "ef"), (Letter::F, "f"), (Letter::Fg, "fg"), (Letter::G, "g"),
    (Letter::H, "h"), (Letter::Js, "js"), (Letter::J, "j"), (Letter::K, "k"), (Letter::M, "m"),
    (Letter::N, "n"), (Letter::P, "p"), (Letter::R, "r"), (Letter::S, "s"), (Letter::T, "t"),
    (Letter::U, "u"), (Letter::V, "v"), (Letter::X, "x"), (Letter::Y, "y"), (Letter::Z, "z"),
    (Letter::Za, "za"), (Letter::Zb, "zb"), (Letter::Zc, "zc"),
];

impl Letter {
    /// As a shaft writes it.
    pub fn text(self) -> &'static str {
        LETTERS.iter().find(|(letter, _)| *letter == self).map_or("", |(_, text)| text)
    }

    /// True for a to h, whose shafts lie below the nominal size and whose holes lie above it.
    fn lies_below(self) -> bool {
        self <= Self::H
    }

    /// True where the deviation for a size is from memory.
    fn is_recalled(self, part: Part, nominal_mm: f64) -> bool {
        match self {
            Self::C => !lies_in(nominal_mm, 30.0, 40.0),
            Self::J => part == Part::Shaft && lies_in(nominal_mm, 0.0, 180.0),
            Self::A | Self::B | Self::Cd | Self::Ef | Self::Fg => true,
            letter => letter >= Self::Y,
        }
    }
}

/// A tolerance class, such as H7 or p6.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(try_from = "String", into = "String")]
#[schemars(with = "String")]
pub struct Class {
    part: Part,
    letter: Letter,
    grade: u8,
}

/// A hole and a shaft for each other, such as H7/p6.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(try_from = "String", into = "String")]
#[schemars(with = "String")]
pub struct Fit {
    /// The class of the hole.
    pub hole: Class,
    /// The class of the shaft.
    pub shaft: Class,
}

/// Why a class or a fit gives no limits.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Iso286Error {
    /// Not letters and a number.
    #[error("“{0}” is not a tolerance class such as H7 or p6")]
    NotAClass(String),
    /// A letter that is not held.
    #[error(
        "letter “{0}” is none of ISO 286: a b c cd d e ef f fg g h js j k m n p r s t u v x y z za zb zc"
    )]
    Letter(String),
    /// A grade that is not held.
    #[error("grade {0} is not held; held are 1 to 18")]
    Grade(u32),
    /// Not a hole and a shaft.
    #[error("“{0}” is not a fit such as H7/p6: a hole in capitals, then a shaft")]
    NotAFit(String),
    /// A class that the tables do not give for the size.
    #[error("{class} is not held for {} mm", .nominal.get::<millimeter>())]
    NotHeld {
        /// The class.
        class: Class,
        /// The size.
        nominal: Length,
    },
}

impl Class {
    /// Hole or shaft.
    pub fn part(self) -> Part {
        self.part
    }

    /// Where its zone lies.
    pub fn letter(self) -> Letter {
        self.letter
    }

    /// How wide its zone is, 1 to 18.
    pub fn grade(self) -> u8 {
        self.grade
    }

    /// Where its figures for a nominal size come from.
    pub fn source(self, nominal: Length) -> Source {
        if self.letter.is_recalled(self.part, nominal.get::<millimeter>()) {
            RECALLED
        } else {
            grade_source(self.grade)
        }
    }

    /// Upper and lower deviation for a nominal size.
    ///
    /// # Valid
    /// To 500 mm, and within that wherever the standard has the letter: t over 24 mm, v over 14 mm,
    /// y over 18 mm, a and b over 1 mm, j in grades 5 to 7, J in 6 to 8, K coarser than 8 to 3 mm
    /// only, holes K to ZC from grade 3; cd, ef and fg to 10 mm.
    /// # Errors
    /// [`Iso286Error::NotHeld`] outside that.
    /// # Source
    /// [`SOURCE`].
    /// # Example
    /// ```
    /// use quantities::Length;
    /// use tables::iso_286::Class;
    /// use uom::si::length::{micrometer, millimeter};
    /// let zone = "p6".parse::<Class>()?.limits(Length::new::<millimeter>(80.0))?;
    /// assert_eq!(zone.upper.get::<micrometer>().round(), 51.0);
    /// assert_eq!(zone.lower.get::<micrometer>().round(), 32.0);
    /// # Ok::<(), tables::iso_286::Iso286Error>(())
    /// ```
    pub fn limits(self, nominal: Length) -> Result<Zone, Iso286Error> {
        let nominal_mm = nominal.get::<millimeter>();
        let zone = match self.part {
            Part::Hole => holes::zone(self.letter, self.grade, nominal_mm),
            Part::Shaft => shafts::zone(self.letter, self.grade, nominal_mm),
        };
        let (upper, lower) = zone.ok_or(Iso286Error::NotHeld { class: self, nominal })?;
        Ok(Zone {
            upper: Length::new::<micrometer>(upper),
            lower: Length::new::<micrometer>(lower),
        })
    }
}

impl Fit {
    /// Least and greatest diametral interference of the two classes; a clearance is negative.
    ///
    /// # Errors
    /// [`Iso286Error::NotHeld`] when either class is not held for the size.
    /// # Example
    /// ```
    /// use quantities::Length;
    /// use tables::iso_286::Fit;
    /// use uom::si::length::{micrometer, millimeter};
    /// let fit: Fit = "H7/p6".parse()?;
    /// let (least, greatest) = fit.interference(Length::new::<millimeter>(100.0))?;
    /// assert_eq!(least.get::<micrometer>().round(), 2.0);
    /// assert_eq!(greatest.get::<micrometer>().round(), 59.0);
    /// # Ok::<(), tables::iso_286::Iso286Error>(())
    /// ```
    pub fn interference(self, nominal: Length) -> Result<(Length, Length), Iso286Error> {
        self.zones(nominal).map(|zones| zones.interference())
    }

    /// Where its figures for a nominal size come from: the less sure of its two classes.
    pub fn source(self, nominal: Length) -> Source {
        let [hole, shaft] = [self.hole, self.shaft].map(|class| class.source(nominal));
        if trust(hole) <= trust(shaft) { hole } else { shaft }
    }

    /// The zones of hole and shaft.
    ///
    /// # Errors
    /// [`Iso286Error::NotHeld`] when either class is not held for the size.
    pub fn zones(self, nominal: Length) -> Result<Zones, Iso286Error> {
        Ok(Zones { hole: self.hole.limits(nominal)?, shaft: self.shaft.limits(nominal)? })
    }
}

/// Width of a tolerance grade, IT1 to IT18; `None` beyond 500 mm (from IT5 on 630 mm) or those
/// grades.
pub fn tolerance(nominal: Length, grade: u8) -> Option<Length> {
    let grade = Some(grade).filter(|grade| grades::GRADES.contains(grade))?;
    grades::width(nominal.get::<millimeter>(), grade).map(Length::new::<micrometer>)
}

/// Where the widths of a grade come from.
pub fn grade_source(grade: u8) -> Source {
    if grades::READ.contains(&grade) {
        SOURCE
    } else if grade >= grades::FIRST_COARSE {
        COARSE
    } else {
        RECALLED
    }
}

/// What is recalled is less sure than what is computed, and that than what is read.
fn trust(source: Source) -> u8 {
    match source.basis {
        Basis::Memory => 0,
        Basis::Computed => 1,
        _ => 2,
    }
}

impl FromStr for Class {
    type Err = Iso286Error;

    fn from_str(text: &str) -> Result<Self, Iso286Error> {
        let text = text.trim();
        let not_a_class = || Iso286Error::NotAClass(text.to_owned());
        let digits = text.find(|c: char| c.is_ascii_digit()).ok_or_else(not_a_class)?;
        let (letter, grade) = (text[..digits].trim_end(), &text[digits..]);
        let grade: u32 = grade.parse().map_err(|_| not_a_class())?;
        let lower = letter.to_lowercase();
        let part = match letter {
            letter if letter == lower => Part::Shaft,
            letter if letter == letter.to_uppercase() => Part::Hole,
            _ => return Err(not_a_class()),
        };
        let held = LETTERS.iter().find(|(_, text)| *text == lower);
        let (letter, _) = held.ok_or_else(|| Iso286Error::Letter(letter.to_owned()))?;
        match u8::try_from(grade) {
            Ok(held) if grades::GRADES.contains(&held) => {
                Ok(Self { part, letter: *letter, grade: held })
            }
            _ => Err(Iso286Error::Grade(grade)),
        }
    }
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let letter = self.letter.text();
        match self.part {
            Part::Hole => write!(f, "{}{}", letter.to_uppercase(), self.grade),
            Part::Shaft => write!(f, "{letter}{}", self.grade),
        }
    }
}

impl FromStr for Fit {
    type Err = Iso286Error;

    fn from_str(text: &str) -> Result<Self, Iso286Error> {
        let not_a_fit = || Iso286Error::NotAFit(text.trim().to_owned());
        let (hole, shaft) = in_two(text).ok_or_else(not_a_fit)?;
        let fit = Self { hole: hole.parse()?, shaft: shaft.parse()? };
        if (fit.hole.part, fit.shaft.part) == (Part::Hole, Part::Shaft) {
            Ok(fit)
        } else {
            Err(not_a_fit())
        }
    }
}

/// "H7/p6", "H7-p6", "H7 p6" and "H7p6" at the end of the first grade.
fn in_two(text: &str) -> Option<(&str, &str)> {
    let first = text.find(|c: char| c.is_ascii_digit())?;
    let end = first + text[first..].find(|c: char| !c.is_ascii_digit())?;
    let (hole, shaft) = text.split_at(end);
    Some((hole.trim(), shaft.trim_start_matches(['/', '-', '–', ' '])))
}

impl fmt::Display for Fit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.hole, self.shaft)
    }
}

as_text!(Class, Fit);
