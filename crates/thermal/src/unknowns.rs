//! What nobody knows exactly, and the cases at its edges.

use crate::ThermalError;
use crate::check::{positive, share};

/// The lower end, the likely figure and the upper end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds<T> {
    /// Lower end.
    pub low: T,
    /// Likely.
    pub likely: T,
    /// Upper end.
    pub high: T,
}

impl<T: Copy> Bounds<T> {
    /// One figure, taken as known.
    pub fn known(figure: T) -> Self {
        Self { low: figure, likely: figure, high: figure }
    }
}

/// What nobody knows exactly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unknowns {
    /// How far off the middle the hub stands in its clearance: 0 in the middle, 1 resting on one
    /// side all along. Likely 0.7 (a rule of our own: on a level shaft it rests, while it is slid
    /// home it does not everywhere).
    pub eccentricity: Bounds<f64>,
    /// What the conductance of the joint is multiplied by: 0.8 to 1.25 (a rule of our own:
    /// contact conductances scatter by as much between like surfaces).
    pub conductance: Bounds<f64>,
    /// How far hub and shaft each may grow more or less than entered: 0.03 of it (steels differ by
    /// that: ASME BPVC II-D, Table TE-1, groups of steels; EN 1993-1-2).
    pub expansion: f64,
}

impl Default for Unknowns {
    fn default() -> Self {
        Self {
            eccentricity: Bounds { low: 0.0, likely: 0.7, high: 1.0 },
            conductance: Bounds { low: 0.8, likely: 1.0, high: 1.25 },
            expansion: 0.03,
        }
    }
}

/// One case among what is possible.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Guess {
    pub eccentricity: f64,
    pub conductance: f64,
    /// Factors on the growth of hub and shaft.
    pub growth: [f64; 2],
}

impl Unknowns {
    /// Nothing unknown: a hub in the middle, all figures as entered.
    pub fn none() -> Self {
        Self { eccentricity: Bounds::known(0.0), conductance: Bounds::known(1.0), expansion: 0.0 }
    }

    pub(crate) fn check(&self) -> Result<(), ThermalError> {
        for bounds in [self.eccentricity, self.conductance] {
            if !(bounds.low <= bounds.likely && bounds.likely <= bounds.high) {
                return Err(ThermalError::Figure { what: "bounds", value: bounds.likely });
            }
        }
        share("eccentricity", self.eccentricity.low)?;
        share("eccentricity", self.eccentricity.high)?;
        positive("conductance factor", self.conductance.low)?;
        positive("conductance factor", 1.0 / self.conductance.high)?;
        share("expansion’s scatter", 2.0 * self.expansion)
    }

    /// As likely as not.
    pub(crate) fn likely(&self) -> Guess {
        Guess {
            eccentricity: self.eccentricity.likely,
            conductance: self.conductance.likely,
            growth: [1.0; 2],
        }
    }

    /// The hub grows less than the shaft, and more heat crosses: grabs soonest, opens last.
    pub(crate) fn tight(&self) -> Guess {
        Guess {
            eccentricity: self.eccentricity.high,
            conductance: self.conductance.high,
            growth: [1.0 - self.expansion, 1.0 + self.expansion],
        }
    }

    /// The other way round: grabs last, opens soonest.
    pub(crate) fn loose(&self) -> Guess {
        Guess {
            eccentricity: self.eccentricity.low,
            conductance: self.conductance.low,
            growth: [1.0 + self.expansion, 1.0 - self.expansion],
        }
    }
}
