//! What a sweep says, and two face dials made one.
//!
//! At a rim the cosine is (touched − carrier) upwards and the sine the same to the right; at a face
//! they are half the swing times the slope. Four readings a quarter turn apart give (r12 − r6)/2
//! and (r3 − r9)/2; any other set is fitted.

use quantities::{Basis, Kind, Length, Physical, Source, Value, Working};

use crate::dial::{Dial, DialError, Reading};
use crate::fit::Harmonic;
use crate::{Estimate, Plane};

/// What a sweep says: the circle through its readings, and the sag that is taken off it.
#[derive(Clone, Debug, PartialEq)]
pub struct Sweep {
    /// The circle, sag still in it; readings rise with the stem pushed in on an outside rim.
    pub circle: Harmonic,
    pub(crate) sag_m: f64,
    pub(crate) runout_u_m: f64,
}

impl Sweep {
    /// (B − A)y at a rim, D/2·slope at a face, sag taken off; `±` of readings and runout alone.
    pub fn cosine(&self) -> Estimate<Length> {
        let u = self.circle.covariance[1][1].sqrt().hypot(self.runout_u_m);
        Estimate::from_standard(self.circle.cosine - self.sag_m, u)
    }

    /// What was taken off the cosine for the sag of the bracket.
    pub fn sag(&self) -> Length {
        Length::from_si(self.sag_m)
    }

    /// (B − A)z at a rim, D/2·slope at a face.
    pub fn sine(&self) -> Estimate<Length> {
        let u = self.circle.covariance[2][2].sqrt().hypot(self.runout_u_m);
        Estimate::from_standard(self.circle.sine, u)
    }

    /// How the vertical (cosine) or the sideways part (sine) was found.
    pub fn working(&self, plane: Plane) -> Working {
        let shown = |si: f64| Value::new(Kind::Offset, Length::from_si(si));
        let source =
            Source::new("Least squares over the sweep", "JCGM 100:2008, H.3", Basis::Computed);
        let count = u32::try_from(self.circle.residuals.len()).unwrap_or(u32::MAX);
        let working = match plane {
            Plane::Vertical => Working::new(
                "Vertical part of the sweep",
                "r = c + a·cos t + b·sin t\nv = a − s",
                self.cosine().shown(Kind::Offset),
                source,
            )
            .term("a", "cosine of the circle through the readings", shown(self.circle.cosine))
            .term("s", "sag of the bracket", shown(self.sag_m)),
            Plane::Sideways => Working::new(
                "Sideways part of the sweep",
                "r = c + a·cos t + b·sin t\nh = b",
                self.sine().shown(Kind::Offset),
                source,
            )
            .term(
                "b",
                "sine of the circle through the readings",
                shown(self.circle.sine),
            ),
        };
        working
            .term("n", "readings", Value::count(count))
            .valid("four readings a quarter turn apart give a = (r12 − r6)/2, b = (r3 − r9)/2")
    }
}

/// Two face dials half a turn apart as one dial free of end float: half the difference of what
/// they read at the same time.
///
/// ```text
/// r(t) = ( r₁(t) − r₂(t + 180°) )/2
/// ```
/// Each dial's readings stand at its own clock positions. The answer has the first dial's
/// positions, and 1/√2 of the uncertainty of one reading.
///
/// # Errors
/// [`DialError::NoPair`] unless both touch the same face alike, and for every reading of the
/// first the second has one opposite.
/// # Source
/// Bloch and Geitner, *Machinery Component Maintenance and Repair*, page 212.
pub fn free_of_float(first: &Dial, second: &Dial) -> Result<Dial, DialError> {
    let alike = first.surface == second.surface
        && !first.surface.is_rim()
        && first.stem == second.stem
        && (first.carried_by, first.touches) == (second.carried_by, second.touches);
    let others = second.all_readings();
    let half = |reading: &Reading| {
        let opposite = reading.clock.quarters_on(2);
        let other = others.iter().find(|other| other.clock.is(opposite))?;
        Some(Reading { clock: reading.clock, value: (reading.value - other.value) / 2.0 })
    };
    let readings: Option<Vec<Reading>> = first.all_readings().iter().map(half).collect();
    let readings = readings.filter(|_| alike).ok_or(DialError::NoPair)?;
    let root = 0.5_f64.sqrt();
    Ok(Dial {
        readings,
        division: first.division * root,
        plus_minus: first.plus_minus.map(|spread| spread * root),
        returned: None,
        ..first.clone()
    })
}
