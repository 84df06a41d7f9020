//! Whether a figure is one, and whether an answer is settled.

use quantities::{Length, Physical, Ratio, Time};

use crate::ThermalError;

/// Refuses a figure that is not above zero.
pub(crate) fn positive(what: &'static str, value: f64) -> Result<(), ThermalError> {
    if value.is_finite() && value > 0.0 {
        Ok(())
    } else {
        Err(ThermalError::Figure { what, value })
    }
}

/// Refuses a figure below zero.
pub(crate) fn not_negative(what: &'static str, value: f64) -> Result<(), ThermalError> {
    if value.is_finite() && value >= 0.0 {
        Ok(())
    } else {
        Err(ThermalError::Figure { what, value })
    }
}

/// Refuses a share that is not between 0 and 1.
pub(crate) fn share(what: &'static str, value: f64) -> Result<(), ThermalError> {
    if (0.0..=1.0).contains(&value) { Ok(()) } else { Err(ThermalError::Figure { what, value }) }
}

/// Refuses a size that is not above zero.
pub(crate) fn size(length: Length) -> Result<(), ThermalError> {
    if length.si().is_finite() && length.si() > 0.0 {
        Ok(())
    } else {
        Err(ThermalError::Size(length))
    }
}

/// Refuses a time below zero or without end.
pub(crate) fn duration(time: Time) -> Result<(), ThermalError> {
    if time.si().is_finite() && (0.0..=LONGEST_S).contains(&time.si()) {
        Ok(())
    } else {
        Err(ThermalError::Time(time))
    }
}

/// No run is longer than a week.
const LONGEST_S: f64 = 7.0 * 86_400.0;

/// How much work goes into an answer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Effort {
    /// For a search among many, compared with nothing: meshes twice as wide, steps four times as
    /// rough.
    Quick,
    /// The usual; every answer is compared with [`Effort::Quick`].
    #[default]
    Usual,
    /// Meshes half as wide, steps four times as careful.
    Fine,
}

impl Effort {
    /// Width of the meshes against the usual.
    pub(crate) fn coarseness(self) -> f64 {
        match self {
            Self::Quick => 2.0,
            Self::Usual => 1.0,
            Self::Fine => 0.5,
        }
    }

    /// Greatest error of a step (K).
    pub(crate) fn tolerance_k(self) -> f64 {
        match self {
            Self::Quick => 0.2,
            Self::Usual => 0.05,
            Self::Fine => 0.0125,
        }
    }

    /// The next rougher, to compare with.
    pub(crate) fn rougher(self) -> Option<Self> {
        match self {
            Self::Fine => Some(Self::Usual),
            Self::Usual => Some(Self::Quick),
            Self::Quick => None,
        }
    }
}

/// How far an answer can be trusted as arithmetic. What the entries are worth is another matter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Check {
    /// Heat that does not add up, as a share of all that moved.
    pub energy: Ratio,
    /// How much the answer differs from that of a coarser mesh with longer steps; the error of the
    /// answer itself is a part of it. `None` of a quick answer, which is not compared.
    pub coarser: Option<Ratio>,
    /// Nodes of the mesh.
    pub nodes: usize,
    /// Steps of time.
    pub steps: usize,
}

/// More than this between two meshes, and there is no answer.
const SETTLED: f64 = 0.10;
/// More heat than this astray, and there is no answer.
const BALANCED: f64 = 1e-3;

impl Check {
    /// Refuses an answer that is not settled.
    pub(crate) fn passed(self) -> Result<Self, ThermalError> {
        let coarser = self.coarser.unwrap_or_default();
        if self.energy.si() > BALANCED {
            Err(ThermalError::Unsettled(self.energy))
        } else if coarser.si() > SETTLED {
            Err(ThermalError::Unsettled(coarser))
        } else {
            Ok(self)
        }
    }
}

/// The difference of two figures as a share of the first.
pub(crate) fn difference(fine: f64, coarse: f64) -> f64 {
    let apart = (coarse - fine).abs();
    if apart > 0.0 { apart / fine.abs() } else { 0.0 }
}
