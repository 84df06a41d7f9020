//! At what speed, or how much warmer than its shaft, a hub lets go.

use quantities::{
    AngularVelocity, Basis, Kind, Length, Physical, Source, TemperatureInterval, Torque, Value,
    Working,
};

use super::JointError;
use super::hub::{PressFit, Running, State};
use crate::crossing::crossing;
use crate::is_positive;

/// Where something that is raised lets a hub go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LetsGo<Q> {
    /// It does not hold even before anything is raised.
    Already,
    /// It lets go here.
    At(Q),
    /// It holds beyond anything that could be meant.
    Never,
}

/// A hub at 100 000 rad/s has burst long before; so has the model.
const FASTEST_RAD_S: f64 = 1e5;
/// Steel has melted.
const HOTTEST_K: f64 = 1500.0;

impl PressFit {
    /// Speed at which the fit no longer holds `needed`; with no torque needed, at which every slice
    /// has lifted off.
    ///
    /// # Errors
    /// As [`PressFit::state`]; [`JointError::Number`] for a friction not above zero or a torque
    /// below it.
    pub fn lets_go_at_speed(
        &self,
        interference: Length,
        friction: f64,
        needed: Torque,
        running: Running,
    ) -> Result<LetsGo<AngularVelocity>, JointError> {
        let at = |speed| Running { speed: AngularVelocity::from_si(speed), ..running };
        let found = self.lets_go(interference, friction, needed, FASTEST_RAD_S, at)?;
        Ok(found.map(AngularVelocity::from_si))
    }

    /// How much warmer than 20 °C the hub must be, with the shaft as `running` says, for the fit no
    /// longer to hold `needed`; with no torque needed, for every slice to lift off.
    ///
    /// # Errors
    /// As [`PressFit::lets_go_at_speed`].
    pub fn lets_go_at_hub_rise(
        &self,
        interference: Length,
        friction: f64,
        needed: Torque,
        running: Running,
    ) -> Result<LetsGo<TemperatureInterval>, JointError> {
        let at = |rise| Running { hub_rise: TemperatureInterval::from_si(rise), ..running };
        let found = self.lets_go(interference, friction, needed, HOTTEST_K, at)?;
        Ok(found.map(TemperatureInterval::from_si))
    }

    /// Where the torque held falls through what is needed: it only falls as speed or warmth rises.
    fn lets_go(
        &self,
        interference: Length,
        friction: f64,
        needed: Torque,
        most: f64,
        at: impl Fn(f64) -> Running,
    ) -> Result<LetsGo<f64>, JointError> {
        if !is_positive(friction) {
            return Err(JointError::Number(friction));
        }
        if !(needed.si() >= 0.0 && needed.is_finite()) {
            return Err(JointError::Number(needed.si()));
        }
        // Without a torque to hold, what is left where it is left longest tells when all has lifted off.
        let spare = |raised: f64| -> Result<f64, JointError> {
            let state = self.state(interference, at(raised))?;
            let longest = state.slices.iter().map(|slice| slice.left.si());
            Ok(if needed.si() > 0.0 {
                state.torque(friction).si() - needed.si()
            } else {
                longest.fold(f64::NEG_INFINITY, f64::max)
            })
        };
        let ends = [spare(0.0)?, spare(most)?];
        if ends[0] < 0.0 || (ends[0] == 0.0 && needed.si() == 0.0) {
            return Ok(LetsGo::Already);
        }
        if ends[1] >= 0.0 {
            return Ok(LetsGo::Never);
        }
        let [low, _] = crossing([0.0, most], ends, spare)?;
        Ok(LetsGo::At(low))
    }
}

impl<Q> LetsGo<Q> {
    fn map<R>(self, change: impl Fn(Q) -> R) -> LetsGo<R> {
        match self {
            Self::Already => LetsGo::Already,
            Self::At(value) => LetsGo::At(change(value)),
            Self::Never => LetsGo::Never,
        }
    }
}

/// A fit before something is raised, and where it lets go.
#[derive(Clone, Debug, PartialEq)]
pub struct Release {
    /// Least friction.
    pub friction: f64,
    /// Torque that it must hold; none asks when all of it has lifted off.
    pub needed: Torque,
    /// Before.
    pub before: State,
    /// Where it lets go.
    pub at: State,
}

impl PressFit {
    /// The two states between which a fit lets go, to show how that was found.
    ///
    /// # Errors
    /// As [`PressFit::state`].
    pub fn release(
        &self,
        interference: Length,
        friction: f64,
        needed: Torque,
        [before, at]: [Running; 2],
    ) -> Result<Release, JointError> {
        let (before, at) = (self.state(interference, before)?, self.state(interference, at)?);
        Ok(Release { friction, needed, before, at })
    }
}

impl Release {
    /// How the speed was found.
    pub fn speed_working(&self) -> Working {
        let speed = Value::new(Kind::Speed, self.at.running.speed);
        self.working("Speed at which the fit lets go", "s", "speed", speed)
    }

    /// How the difference of temperature between hub and shaft was found.
    pub fn warmth_working(&self) -> Working {
        let Running { hub_rise, shaft_rise, .. } = self.at.running;
        let warmer = TemperatureInterval::from_si(hub_rise.si() - shaft_rise.si());
        let warmer = Value::new(Kind::TemperatureDifference, warmer);
        self.working("Hub warmer than shaft when the fit lets go", "s", "difference", warmer)
    }

    fn working(
        &self,
        name: &'static str,
        symbol: &'static str,
        what: &str,
        found: Value,
    ) -> Working {
        let force = |state: &State| Value::new(Kind::Force, state.normal_force);
        let formula = "i − growth by turning and warmth presses\nm·N·d/2 = T\nx = s";
        Working::new(name, formula, found, LAME_AND_TURNING)
            .term("i", "interference", Value::new(Kind::Allowance, self.before.interference))
            .term("m", "least friction", Value::number(self.friction))
            .term("d", "joint", Value::new(Kind::Length, self.before.diameter))
            .term("T", "torque to hold", Value::new(Kind::Torque, self.needed))
            .term("A", "all that presses, before", force(&self.before))
            .term("N", "all that presses, there", force(&self.at))
            .term(symbol, format!("{what} at which both are alike, found by halving"), found)
            .valid("rings slice by slice, elastic")
    }
}

const LAME_AND_TURNING: Source =
    Source::new("Lamé’s rings and rotating disks, solved for what is held", "", Basis::Computed);
