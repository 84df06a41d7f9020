//! Interference from two sizes, and what flattening of the surfaces takes from it.

use quantities::{Basis, Kind, Length, Physical, Source, Value, Working, is_spread};

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
    /// Half-width of what sits in both sizes alike, and falls out of their difference.
    pub shared: Length,
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
    /// The two sizes measured apart from each other: their half-widths add as squares. For a bore
    /// gauge set on the micrometer that measured the shaft, see [`Interference::sharing`].
    /// # Errors
    /// [`JointError::Number`] for sizes that are no sound numbers, or a flattening below zero.
    pub fn new(
        shaft: Estimate<Length>,
        bore: Estimate<Length>,
        flattening: Length,
    ) -> Result<Self, JointError> {
        Self::sharing(shaft, bore, Length::default(), flattening)
    }

    /// The interference of two sizes that share a part of their `±`: a bore gauge set on the
    /// micrometer that measured the shaft carries that micrometer's error in both.
    ///
    /// ```text
    /// U² = Us² + Ub² − 2·Uc²
    /// ```
    /// # Errors
    /// As [`Interference::new`]; [`JointError::Number`] for a shared part larger than either `±`.
    /// # Source
    /// JCGM 100:2008, 5.2.2, with a common component in both sizes.
    pub fn sharing(
        shaft: Estimate<Length>,
        bore: Estimate<Length>,
        shared: Length,
        flattening: Length,
    ) -> Result<Self, JointError> {
        for size in [shaft, bore] {
            if !(size.is_sound() && size.value.si() > 0.0) {
                return Err(JointError::Number(size.value.si()));
            }
            if shared > size.plus_minus {
                return Err(JointError::Number(shared.si()));
            }
        }
        for part in [shared, flattening] {
            if !is_spread(part.si()) {
                return Err(JointError::Number(part.si()));
            }
        }
        let squares = |size: Estimate<Length>| size.plus_minus.si().powi(2) - shared.si().powi(2);
        let plus_minus = Length::from_si((squares(shaft) + squares(bore)).max(0.0).sqrt());
        let measured = Estimate::new(shaft.value - bore.value, plus_minus);
        let effective = measured.less(&Estimate::exact(flattening));
        Ok(Self { shaft, bore, shared, flattening, measured, effective })
    }

    /// How the measured interference was found.
    pub fn working(&self) -> Working {
        let result = self.measured.shown(Kind::Allowance);
        Working::new("Interference", "i = s − b", result, DIFFERENCE)
            .term("s", "shaft", self.shaft.shown(Kind::Size))
            .term("b", "bore", self.bore.shown(Kind::Size))
            .valid("both at 20 °C; positive is interference, negative clearance")
    }

    /// How the `±` of the measured interference was found.
    pub fn spread_working(&self) -> Working {
        let allowance = |length| Value::new(Kind::Allowance, length);
        let result = allowance(self.measured.plus_minus);
        let source = Source::new("JCGM 100:2008 (GUM)", "5.2.2", Basis::Memory);
        Working::new("± of the interference", "U = √(s² + b² − 2·c²)", result, source)
            .term("s", "± of the shaft", allowance(self.shaft.plus_minus))
            .term("b", "± of the bore", allowance(self.bore.plus_minus))
            .term("c", "± that both share, and that falls out", allowance(self.shared))
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
