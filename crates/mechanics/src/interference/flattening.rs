//! Interference from two sizes, and what flattening of the surfaces takes from it.

use quantities::{Basis, Kind, Length, Physical, Source, Value, Working};

use super::JointError;
use crate::Estimate;

/// What the peaks of both surfaces lose when they are pressed or shrunk together, on the diameter.
///
/// ```text
/// f = 0.8·(Rzh + Rzs)
/// ```
/// # Valid
/// Rz of turned, reamed or ground surfaces; a shrink fit loses less than a press fit.
/// # Source
/// DIN 7190-1; from memory.
pub fn flattening_din_7190(rz_hub: Length, rz_shaft: Length) -> Length {
    (rz_hub + rz_shaft) * 0.8
}

/// The same by an older rule of thumb, from arithmetic mean roughness.
///
/// ```text
/// f = 1.2·(Rah + Ras)
/// ```
/// # Valid
/// It does not agree with [`flattening_din_7190`]: Rz is commonly four to seven times Ra.
/// # Source
/// Common practice.
pub fn flattening_from_ra(ra_hub: Length, ra_shaft: Length) -> Length {
    (ra_hub + ra_shaft) * 1.2
}

/// The interference of a shaft in a bore.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interference {
    /// Size of the shaft at 20 °C.
    pub shaft: Estimate<Length>,
    /// Size of the bore at 20 °C.
    pub bore: Estimate<Length>,
    /// What flattening takes; zero when it is left out of account.
    pub flattening: Length,
    /// Shaft less bore: as measured.
    pub measured: Estimate<Length>,
    /// What is left to press with.
    pub effective: Estimate<Length>,
}

impl Interference {
    /// The interference of two sizes; negative is a clearance.
    ///
    /// ```text
    /// i = s − b      e = i − f
    /// ```
    /// # Valid
    /// The two sizes measured apart from each other: their half-widths add as squares. Measured
    /// with one instrument on one standard, what both share falls out and the `±` is a little wide.
    /// # Errors
    /// [`JointError::Number`] for sizes that are no sound numbers, or a flattening below zero.
    pub fn new(
        shaft: Estimate<Length>,
        bore: Estimate<Length>,
        flattening: Length,
    ) -> Result<Self, JointError> {
        for size in [shaft, bore] {
            if !(size.is_sound() && size.value.si() > 0.0) {
                return Err(JointError::Number(size.value.si()));
            }
        }
        if !(flattening.is_finite() && flattening.si() >= 0.0) {
            return Err(JointError::Number(flattening.si()));
        }
        let measured = shaft.less(&bore);
        let effective = measured.less(&Estimate::exact(flattening));
        Ok(Self { shaft, bore, flattening, measured, effective })
    }

    /// How the measured interference was found.
    pub fn working(&self) -> Working {
        let result = self.measured.shown(Kind::Allowance);
        Working::new("Interference", "i = s − b", result, DIFFERENCE)
            .term("s", "shaft", self.shaft.shown(Kind::Size))
            .term("b", "bore", self.bore.shown(Kind::Size))
            .valid("both at 20 °C; positive is interference, negative clearance")
    }

    /// How the interference that presses was found.
    pub fn effective_working(&self) -> Working {
        let result = self.effective.shown(Kind::Allowance);
        let source = Source::new("DIN 7190-1", "flattening 0.8·(Rz + Rz)", Basis::Memory);
        Working::new("Interference that presses", "e = i − f", result, source)
            .term("i", "interference", self.measured.shown(Kind::Allowance))
            .term("f", "flattening of both surfaces", Value::new(Kind::Allowance, self.flattening))
    }
}

const DIFFERENCE: Source =
    Source::new("ISO 286-1", "interference is shaft less hole", Basis::Memory);
