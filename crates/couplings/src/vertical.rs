//! Vertical sets on one thrust bearing, joined by rigid flanges: how true they must hang.
//!
//! B length from the thrust bearing to the reading · D diameter of the thrust runner · L length
//! between readings
//!
//! Limits for where the maker gives none (`tables::limits`).

use quantities::{Kind, Length, Physical, Value, Working, both};
use tables::limits::{VERTICAL_ORBIT, VERTICAL_PLUMB};

/// Why there is no limit.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("length is not above zero: {}", both(.0))]
pub struct VerticalError(Length);

fn positive(length: Length) -> Result<f64, VerticalError> {
    let si = length.si();
    if si.is_finite() && si > 0.0 { Ok(si) } else { Err(VerticalError(length)) }
}

/// Greatest diameter of the orbit that a shaft may describe when it is turned slowly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Orbit {
    /// From the thrust bearing to the reading.
    pub below: Length,
    /// Diameter of the thrust runner.
    pub runner: Length,
    /// Greatest diameter of the orbit.
    pub greatest: Length,
}

/// Greatest orbit of a vertical shaft turned slowly.
///
/// ```text
/// o = 0.002 in·B/D
/// ```
/// # Errors
/// [`VerticalError`] for lengths not above zero.
/// # Source
/// US Bureau of Reclamation, FIST 2-1 (2000), table 1.
/// # Example
/// ```
/// use couplings::vertical::orbit;
/// use quantities::{Length, Physical};
/// let inch = |inch: f64| Length::from_si(inch * 0.0254);
/// let orbit = orbit(inch(240.0), inch(60.0))?;
/// assert_eq!(format!("{:.4}", orbit.greatest.si() / 0.0254), "0.0080");
/// # Ok::<(), couplings::vertical::VerticalError>(())
/// ```
pub fn orbit(below: Length, runner: Length) -> Result<Orbit, VerticalError> {
    let greatest = VERTICAL_ORBIT.most * (positive(below)? / positive(runner)?);
    Ok(Orbit { below, runner, greatest })
}

impl Orbit {
    /// How it was found.
    pub fn working(&self) -> Working {
        let result = Value::new(Kind::Offset, self.greatest);
        Working::new("Greatest orbit", "o = k·B/D", result, VERTICAL_ORBIT.source)
            .term("k", "0.002 in", Value::new(Kind::Offset, VERTICAL_ORBIT.most))
            .term("B", "thrust bearing to reading", Value::new(Kind::Length, self.below))
            .term("D", "diameter of the thrust runner", Value::new(Kind::Length, self.runner))
            .valid("vertical sets on one thrust bearing")
    }
}

/// How far the centre of runout may lean over a length between readings: 0.000 025 of it.
///
/// # Errors
/// [`VerticalError`] for a length not above zero.
/// # Source
/// US Bureau of Reclamation, FIST 2-1 (2000), table 1.
pub fn plumb(between: Length) -> Result<Length, VerticalError> {
    Ok(Length::from_si(VERTICAL_PLUMB * positive(between)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inch(inch: f64) -> Length {
        Length::from_si(inch * 0.0254)
    }

    /// US Bureau of Reclamation rules (FIST 2-1, table 1), worked by hand: 240 in under a 60 in
    /// runner, 0.008 in orbit and 0.006 in plumb; 170 in under 80 in, 0.00425 in both.
    #[test]
    fn a_vertical_set_hangs_true() {
        for (length, runner, orbit_in, plumb_in) in
            [(240.0, 60.0, 0.008, 0.006), (170.0, 80.0, 0.004_25, 0.004_25)]
        {
            let found = orbit(inch(length), inch(runner)).unwrap().greatest.si() / 0.0254;
            assert!((found - orbit_in).abs() <= 0.5e-5);
            let found = plumb(inch(length)).unwrap().si() / 0.0254;
            assert!((found - plumb_in).abs() <= 0.5e-5);
        }
        assert!(orbit(inch(240.0), inch(0.0)).is_err());
    }
}
