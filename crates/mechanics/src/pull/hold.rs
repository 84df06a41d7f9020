//! Where a puller holds the hub: threads of its puller holes, jaws behind a flange; and its screw.
//!
//! Not here: tension in the puller's bolts ([`super::puller_bolt_stress`]).

use quantities::{Basis, Force, Kind, Length, Physical, Pressure, Source, Value, Working};

use super::PullError;
use crate::is_positive;

/// What of the cylinder π·d·L the threads of a hole offer to shear.
const THREAD_SHARE: f64 = 0.88;
/// Where that share comes from.
const NORTON: Source = Source::new(
    "Norton, Machine Design, thread stripping",
    "area factor of a nut, 0.88 for 60° threads",
    Basis::Memory,
);
const STATICS: Source = Source::new("statics of a short beam", "", Basis::Computed);

/// Threads of puller holes under the pull.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThreadShear {
    /// The pull.
    pub pull: Force,
    /// Holes that are used.
    pub holes: u32,
    /// Nominal diameter of their thread.
    pub diameter: Length,
    /// Length of thread that is engaged.
    pub engaged: Length,
    /// Shear stress in the hub's threads.
    pub stress: Pressure,
}

/// Shear stress in the threads of the hub's puller holes.
///
/// ```text
/// τ = F/(n·w·π·d·L)      w = 0.88
/// ```
/// # Valid
/// 60° threads, metric or unified, coarse; all holes pull alike, which asks for a stiff bar set
/// square.
/// # Errors
/// [`PullError`] for what is not above zero.
/// # Source
/// Norton, *Machine Design*, thread stripping; from memory.
pub fn thread_shear(
    pull: Force,
    holes: u32,
    diameter: Length,
    engaged: Length,
) -> Result<ThreadShear, PullError> {
    let area = THREAD_SHARE * std::f64::consts::PI * diameter.si() * engaged.si();
    let stress = shared(pull, holes, &[diameter.si(), engaged.si()], area)?;
    Ok(ThreadShear { pull, holes, diameter, engaged, stress })
}

impl ThreadShear {
    /// How the stress was found.
    pub fn working(&self) -> Working {
        let length = |length| Value::new(Kind::Length, length);
        let result = Value::new(Kind::Stress, self.stress);
        Working::new("Shear in the puller holes’ threads", "s = F/(n·w·π·d·L)", result, NORTON)
            .term("F", "pull, upper end", Value::new(Kind::Force, self.pull))
            .term("n", "holes", Value::count(self.holes))
            .term("w", "share of the cylinder that the threads offer", Value::number(THREAD_SHARE))
            .term("d", "diameter of the thread", length(self.diameter))
            .term("L", "length of thread that is engaged", length(self.engaged))
            .valid("all holes alike, a stiff bar set square")
    }
}

/// Jaws that hold behind a flange or the hub's back face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Jaws {
    /// How many.
    pub count: u32,
    /// Width of each, along the rim.
    pub width: Length,
    /// How far each reaches over what it holds by, towards the shaft.
    pub grip: Length,
}

impl Jaws {
    /// Pressure under the jaws, p = F/(n·b·h).
    ///
    /// # Errors
    /// [`PullError`] for what is not above zero.
    pub fn bearing(&self, pull: Force) -> Result<Pressure, PullError> {
        let [width, grip] = [self.width.si(), self.grip.si()];
        shared(pull, self.count, &[width, grip], width * grip)
    }

    /// Bending stress at the root of the flange that they hold by, t thick.
    ///
    /// ```text
    /// σ = 3·F·h/(n·b·t²)
    /// ```
    /// # Valid
    /// The force in the middle of the grip, on a beam as wide as the jaw and no longer than its
    /// grip: a ring carries more than that. On a flange that stands out further than the jaw
    /// grips, give the whole height as `grip`.
    /// # Errors
    /// [`PullError`] for what is not above zero.
    pub fn bending(&self, pull: Force, thickness: Length) -> Result<Pressure, PullError> {
        let [width, grip, thick] = [self.width.si(), self.grip.si(), thickness.si()];
        shared(pull, self.count, &[width, grip, thick], width * thick * thick / (3.0 * grip))
    }

    /// How the pressure was found.
    ///
    /// # Errors
    /// As [`Jaws::bearing`].
    pub fn bearing_working(&self, pull: Force) -> Result<Working, PullError> {
        let result = Value::new(Kind::Stress, self.bearing(pull)?);
        let source = Source::new("force over area", "", Basis::Computed);
        let working = Working::new("Pressure under the jaws", "p = F/(n·b·h)", result, source);
        Ok(self.terms(working, pull).valid("jaws square, all alike"))
    }

    /// How the bending stress was found.
    ///
    /// # Errors
    /// As [`Jaws::bending`].
    pub fn bending_working(&self, pull: Force, thickness: Length) -> Result<Working, PullError> {
        let result = Value::new(Kind::Stress, self.bending(pull, thickness)?);
        let working =
            Working::new("Bending where the jaws hold", "s = 3·F·h/(n·b·t²)", result, STATICS);
        let working = self.terms(working, pull);
        let working = working.term("t", "thickness there", Value::new(Kind::Length, thickness));
        Ok(working.valid("a beam as wide as the jaw: a whole ring carries more; jaws square"))
    }

    fn terms(&self, working: Working, pull: Force) -> Working {
        let length = |length| Value::new(Kind::Length, length);
        working
            .term("F", "pull, upper end", Value::new(Kind::Force, pull))
            .term("n", "jaws", Value::count(self.count))
            .term("b", "width of a jaw", length(self.width))
            .term("h", "how far it grips", length(self.grip))
    }
}

fn shared(pull: Force, count: u32, sizes: &[f64], area: f64) -> Result<Pressure, PullError> {
    if !is_positive(pull.si()) {
        return Err(PullError::Force(pull));
    }
    for number in sizes.iter().copied().chain([f64::from(count)]) {
        if !is_positive(number) {
            return Err(PullError::Number(number));
        }
    }
    Ok(Pressure::from_si(pull.si() / (f64::from(count) * area)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use tables::bolts::threads;

    fn mm(mm: f64) -> Length {
        Length::from_si(mm / 1000.0)
    }

    /// Norton, *Machine Design*, on the height of a nut: with half a diameter of thread engaged, of
    /// the same metal as the bolt, the bolt breaks before the threads strip; from memory. The bolt
    /// yields at Sy·At, the threads at 0.577·Sy.
    #[test]
    fn half_a_diameter_of_thread_outlasts_its_bolt() {
        let pull = Force::from_si(1e4);
        for thread in threads() {
            let shear = thread_shear(pull, 1, thread.diameter, thread.diameter / 2.0).unwrap();
            let tension = pull.si() / thread.stress_area.value;
            assert!(shear.stress.si() / 0.577 < tension, "{}", thread.name);
        }
    }

    /// Four jaws 30 mm wide that grip 10 mm under 120 kN: 100 MPa. A beam 30 mm wide and 20 mm
    /// thick, 30 kN at 5 mm: 150 N·m over 30·20²/6 = 2000 mm³ is 75 MPa. By hand.
    #[test]
    fn jaws_press_and_bend_as_a_beam_does() {
        let jaws = Jaws { count: 4, width: mm(30.0), grip: mm(10.0) };
        let pull = Force::from_si(120e3);
        assert!((jaws.bearing(pull).unwrap().si() - 100e6).abs() < 1.0);
        assert!((jaws.bending(pull, mm(20.0)).unwrap().si() - 75e6).abs() < 1.0);
        assert!(jaws.bending(pull, mm(0.0)).is_err());
        assert!(Jaws { count: 0, ..jaws }.bearing(pull).is_err());
        assert!(jaws.bearing(Force::from_si(0.0)).is_err());
        assert!(thread_shear(pull, 2, mm(16.0), mm(0.0)).is_err());
    }
}
