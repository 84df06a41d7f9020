//! At what speed, or how much warmer than its shaft, a hub lets go.

use quantities::{AngularVelocity, Length, Physical, TemperatureInterval, Torque};

use super::JointError;
use super::hub::{PressFit, Running};
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

    /// Halves the interval in which the torque held falls through what is needed: the torque only
    /// falls as speed or warmth rises.
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
        let holds = |raised: f64| -> Result<bool, JointError> {
            let held = self.state(interference, at(raised))?.torque(friction);
            Ok(held > needed || (needed.si() > 0.0 && held == needed))
        };
        if !holds(0.0)? {
            return Ok(LetsGo::Already);
        }
        if holds(most)? {
            return Ok(LetsGo::Never);
        }
        let (mut low, mut high) = (0.0, most);
        for _ in 0..100 {
            let middle = f64::midpoint(low, high);
            if holds(middle)? { low = middle } else { high = middle }
        }
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
