//! End float: a sleeve-bearing motor has no thrust bearing, so the coupling keeps its rotor off the
//! bearing shoulders.
//!
//! F float of the motor's rotor, shoulder to shoulder · f float that the coupling leaves · c distance
//! of the magnetic centre from the middle of F
//!
//! With the rotor on its magnetic centre and the coupling in the middle of its float, what stays
//! free at the nearer shoulder is (F − f)/2 − c.

use quantities::{Kind, Length, Limits, Physical, Power, Source, Value, Verdict, Working, judge};

use tables::limits::{END_FLOAT, END_FLOAT_SOURCE};

/// A coupling that limits the end float of a motor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndFloat {
    /// Float of the motor's rotor, shoulder to shoulder.
    pub motor: Length,
    /// Float that the coupling leaves.
    pub coupling: Length,
    /// Distance of the magnetic centre from the middle of the motor's float.
    pub off_centre: Length,
    /// What stays free at the nearer shoulder; negative when it touches.
    pub free: Length,
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum FloatError {
    /// A float that is no number above zero.
    #[error("float is no number above zero: {0:?}")]
    Float(Length),
    /// An off-centre distance that is no number.
    #[error("magnetic centre is no number: {0:?}")]
    Centre(Length),
}

/// What stays free at the nearer shoulder of the motor's bearings.
///
/// ```text
/// e = (F − f)/2 − c
/// ```
/// # Errors
/// [`FloatError`] for floats not above zero.
/// # Example
/// ```
/// use couplings::end_float::end_float;
/// use quantities::{Length, Physical};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let float = end_float(mm(12.7), mm(4.76), mm(0.5))?;
/// assert_eq!(format!("{:.2}", float.free.si() * 1e3), "3.47");
/// # Ok::<(), couplings::end_float::FloatError>(())
/// ```
pub fn end_float(
    motor: Length,
    coupling: Length,
    off_centre: Length,
) -> Result<EndFloat, FloatError> {
    for float in [motor, coupling] {
        if !(float.is_finite() && float.si() > 0.0) {
            return Err(FloatError::Float(float));
        }
    }
    if !off_centre.is_finite() {
        return Err(FloatError::Centre(off_centre));
    }
    let free = (motor - coupling) / 2.0 - off_centre.abs();
    Ok(EndFloat { motor, coupling, off_centre, free })
}

impl EndFloat {
    /// Inside while the coupling leaves less than half of the motor's float and no shoulder touches.
    ///
    /// # Source
    /// Half of the rotor's float: common practice, as pump manuals print it.
    pub fn verdict(&self) -> Verdict {
        let half =
            judge(&Value::new(Kind::Gap, self.coupling), &Limits::at_most(self.motor.si() / 2.0));
        if self.free.si() > 0.0 { half } else { Verdict::Outside }
    }

    /// How what stays free was found.
    pub fn working(&self) -> Working {
        let source =
            Source::common_practice("coupling in the middle, motor on its magnetic centre");
        let shown = |length| Value::new(Kind::Gap, length);
        Working::new("Free at the nearer shoulder", "e = (F − f)/2 − c", shown(self.free), source)
            .term("F", "float of the motor’s rotor", shown(self.motor))
            .term("f", "float that the coupling leaves", shown(self.coupling))
            .term("c", "magnetic centre from the middle", shown(self.off_centre.abs()))
            .valid("coupling set in the middle of its own float")
    }
}

/// A pair of floats that go together for a size of motor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Usual {
    /// Least float of the motor's rotor.
    pub motor_least: Length,
    /// Greatest float that the coupling may leave.
    pub coupling_greatest: Length,
    /// How it is known.
    pub source: Source,
}

/// What NEMA MG 1 pairs for a motor of this power; `None` below 125 hp, where it sets nothing, and
/// between 450 and 500 hp, where the pair depends on speed.
///
/// # Source
/// NEMA MG 1, part 20; from memory, to be confirmed (`tables::limits`).
pub fn usual(power: Power) -> Option<Usual> {
    let [small, large] = END_FLOAT.map(|(motor_least, coupling_greatest)| Usual {
        motor_least,
        coupling_greatest,
        source: END_FLOAT_SOURCE,
    });
    match power.get::<uom::si::power::horsepower>() {
        hp if (125.0..=450.0).contains(&hp) => Some(small),
        hp if hp >= 500.0 => Some(large),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::power::horsepower;

    fn inch(inch: f64) -> Length {
        Length::from_si(inch * 0.0254)
    }

    /// NEMA MG 1 part 20 (from memory): 1/4 in with 0.09 in, 1/2 in with 0.19 in; each pair keeps
    /// the rule of half the rotor's float (common practice).
    #[test]
    fn the_usual_pairs_keep_the_shoulders_free() {
        for hp in [200.0, 800.0] {
            let pair = usual(Power::new::<horsepower>(hp)).unwrap();
            let float =
                end_float(pair.motor_least, pair.coupling_greatest, Length::default()).unwrap();
            assert_eq!(float.verdict(), Verdict::Inside);
        }
        assert!(usual(Power::new::<horsepower>(50.0)).is_none());
        assert!(usual(Power::new::<horsepower>(470.0)).is_none());
    }

    #[test]
    fn a_shoulder_that_touches_is_outside() {
        let float = end_float(inch(0.25), inch(0.09), inch(0.09)).unwrap();
        assert!(float.free.si() < 0.0);
        assert_eq!(float.verdict(), Verdict::Outside);
        let wide = end_float(inch(0.25), inch(0.19), Length::default()).unwrap();
        assert_eq!(wide.verdict(), Verdict::Outside);
        assert!(end_float(inch(0.0), inch(0.1), inch(0.0)).is_err());
    }
}
