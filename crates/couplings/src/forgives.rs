//! What a kind forgives, and what it does to the torque.
//!
//! Capacities, as is common for a kind; the maker's sheet comes first, and neither is a target for
//! the line-up.

use quantities::{Angle, Length, Physical, Source};
use serde::Serialize;

use crate::kind::Planes;

/// What a coupling forgives per engagement (gear mesh, pack, element), as is common for its kind;
/// low and high of what is met. Capacity, not a target for the line-up.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Forgives {
    /// Planes of flexure.
    pub planes: Planes,
    /// Angle at one engagement, degrees; `None` means none at all.
    pub angular_deg: Option<[f64; 2]>,
    /// Offset of the shafts, mm; `None` with two planes means that it follows from the angle and
    /// the length between them, with fewer that there is none.
    pub parallel_mm: Option<[f64; 2]>,
    /// Movement along the shaft, to each side of the set position, mm.
    pub axial_mm: Option<[f64; 2]>,
    /// How it passes a shock on.
    pub shock: Shock,
    /// How it twists.
    pub twist: Twist,
    /// Free play in the direction of turning.
    pub play: Play,
    /// How the figures are known.
    pub source: Source,
}

impl Forgives {
    /// Angle at one engagement, low and high.
    pub fn angular(&self) -> Option<[Angle; 2]> {
        self.angular_deg.map(|span| span.map(|degrees| Angle::from_si(degrees.to_radians())))
    }

    /// Offset, low and high.
    pub fn parallel(&self) -> Option<[Length; 2]> {
        self.parallel_mm.map(millimetres)
    }

    /// Axial movement, low and high.
    pub fn axial(&self) -> Option<[Length; 2]> {
        self.axial_mm.map(millimetres)
    }
}

fn millimetres(span: [f64; 2]) -> [Length; 2] {
    span.map(|mm| Length::from_si(mm / 1e3))
}

/// How a coupling passes a shock on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Shock {
    /// Not known of such a kind: the maker's sheet says it.
    NotKnown,
    /// As it comes.
    Passes,
    /// Takes the edge off.
    Softens,
    /// Spreads it well out and damps it.
    Cushions,
}

/// How a coupling twists under torque.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Twist {
    /// Not known of such a kind: the maker's sheet says it.
    NotKnown,
    /// Not at all: as stiff as a shaft.
    Rigid,
    /// Hardly.
    Stiff,
    /// Soft at first, stiffer as the torque rises.
    Progressive,
    /// Softly.
    Soft,
}

/// Free play in the direction of turning.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Play {
    /// Not known of such a kind: the maker's sheet says it.
    NotKnown,
    /// None.
    None,
    /// A little.
    Little,
    /// Backlash that the kind needs for its movement and its oil film.
    Backlash,
}

impl Shock {
    /// In a few words.
    pub fn says(self) -> &'static str {
        match self {
            Self::NotKnown => "the maker’s sheet says it",
            Self::Passes => "passes it on as it comes",
            Self::Softens => "takes the edge off",
            Self::Cushions => "spreads it out and damps it",
        }
    }
}

impl Twist {
    /// In a few words.
    pub fn says(self) -> &'static str {
        match self {
            Self::NotKnown => "the maker’s sheet says it",
            Self::Rigid => "not at all",
            Self::Stiff => "hardly",
            Self::Progressive => "soft at first, stiffer as the torque rises",
            Self::Soft => "softly",
        }
    }
}

impl Play {
    /// In a few words.
    pub fn says(self) -> &'static str {
        match self {
            Self::NotKnown => "the maker’s sheet says it",
            Self::None => "none",
            Self::Little => "a little",
            Self::Backlash => "backlash, which its movement and its oil film need",
        }
    }
}
