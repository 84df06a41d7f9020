//! What a fit holds over the `±` of its interference and the range of friction.

use quantities::{Angle, Estimate, Force, Kind, Length, Physical, Source, Torque, Value, Working};

use super::super::JointError;
use super::{PressFit, Running, State};
use crate::{Range, is_positive};

/// What a fit holds and bears over the `±` of its interference and the range of friction.
#[derive(Clone, Debug, PartialEq)]
pub struct Grip {
    /// At the lower end of the interference; `None` when it may be loose.
    pub least: Option<State>,
    /// At the upper end.
    pub most: State,
    /// Friction.
    pub friction: Range<f64>,
    /// Torque held: least interference and friction to most of both.
    pub torque: Range<Torque>,
    /// Axial force held.
    pub axial: Range<Force>,
}

impl PressFit {
    /// What the fit holds and bears over the `±` of the interference and the range of friction.
    ///
    /// ```text
    /// N = Σ p·π·d·L      T = μ·N·d/2      F = μ·N
    /// ```
    /// # Valid
    /// Friction alike over the whole joint; torque and axial force not both at once.
    /// # Errors
    /// [`JointError`] when even the upper end has no interference, and for a friction that is no
    /// range.
    /// # Source
    /// Shigley, *Mechanical Engineering Design*, 9th ed., Eq. 7-48 and 7-49.
    /// # Example
    /// ```
    /// use mechanics::{Estimate, Range, Slice};
    /// use mechanics::interference::hub::{Metal, PressFit, Running};
    /// use uom::si::{f64::Length, length::millimeter, torque::newton_meter};
    /// let mm = Length::new::<millimeter>;
    /// let steel = Metal::from(tables::materials::material("steel").unwrap());
    /// let barrel = Slice { length: mm(90.0), outside: mm(120.0) };
    /// let flange = Slice { length: mm(30.0), outside: mm(220.0) };
    /// let fit = PressFit::new(mm(0.0), mm(80.0), &[barrel, flange], steel, steel)?;
    /// let interference = Estimate::new(mm(0.062), mm(0.006));
    /// let grip = fit.grip(interference, Range::new(0.12, 0.18), Running::default())?;
    /// assert!(grip.torque.low.get::<newton_meter>() > 6_000.0);
    /// assert!(grip.most.slices[1].pressure > grip.most.slices[0].pressure);
    /// # Ok::<(), mechanics::interference::JointError>(())
    /// ```
    pub fn grip(
        &self,
        interference: Estimate<Length>,
        friction: Range<f64>,
        running: Running,
    ) -> Result<Grip, JointError> {
        if !friction.is_sound() {
            return Err(JointError::Number(friction.low));
        }
        let most = self.state(interference.high(), running)?;
        let least = match self.state(interference.low(), running) {
            Err(JointError::Loose(_)) => None,
            other => Some(other?),
        };
        let low = least.as_ref().map_or(Torque::default(), |state| state.torque(friction.low));
        let low_axial = least.as_ref().map_or(Force::default(), |state| state.axial(friction.low));
        Ok(Grip {
            torque: Range::new(low, most.torque(friction.high)),
            axial: Range::new(low_axial, most.axial(friction.high)),
            least,
            most,
            friction,
        })
    }
}

/// Torque and axial force at once against what a fit holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// All that presses.
    pub normal_force: Force,
    /// Friction.
    pub friction: f64,
    /// Joint diameter.
    pub diameter: Length,
    /// Torque.
    pub torque: Torque,
    /// Axial force.
    pub axial: Force,
    /// Half of the cone's angle, and what the pressure pushes the hub off with; nothing on a straight
    /// seat.
    pub cone: (Angle, Force),
    /// What both ask of the joint together.
    pub together: Force,
    /// What holds over what is asked.
    pub safety: f64,
}

impl State {
    /// How safely the fit holds a torque and an axial force at once.
    ///
    /// ```text
    /// R = √( (2·T/d)² + F² )      S = μ·N/R
    /// ```
    /// On a taper the push-off comes to F, and both along the cone: (F + N·sin β)/cos β.
    ///
    /// # Valid
    /// Friction alike over the joint; it resists the resultant of both, whichever way it points.
    /// # Errors
    /// [`JointError::Number`] for a friction not above zero, or for nothing to hold.
    /// # Source
    /// Coulomb friction; statics.
    pub fn hold(&self, friction: f64, torque: Torque, axial: Force) -> Result<Hold, JointError> {
        if !is_positive(friction) {
            return Err(JointError::Number(friction));
        }
        let around = 2.0 * torque.si() / self.diameter.si();
        let cone = (self.half_angle(), self.push_off());
        let together = around.hypot((axial + cone.1).si() / cone.0.si().cos());
        if !is_positive(together) {
            return Err(JointError::Number(together));
        }
        Ok(Hold {
            normal_force: self.normal_force,
            friction,
            diameter: self.diameter,
            torque,
            axial,
            cone,
            together: Force::from_si(together),
            safety: friction * self.normal_force.si() / together,
        })
    }
}

impl Hold {
    /// How the safety was found.
    pub fn working(&self) -> Working {
        let force = |force| Value::new(Kind::Force, force);
        let result = Value::number(self.safety);
        let formula = if self.cone.1 > Force::default() {
            "R = √((2·T/d)² + ((F + P)/cos b)²)\nS = m·N/R"
        } else {
            "R = √((2·T/d)² + F²)\nS = m·N/R"
        };
        let working = Working::new("Safety against slipping", formula, result, STATICS)
            .term("T", "torque", Value::new(Kind::Torque, self.torque))
            .term("d", "joint", Value::new(Kind::Length, self.diameter))
            .term("F", "axial force", force(self.axial))
            .term("R", "both together", force(self.together))
            .term("m", "least friction", Value::number(self.friction))
            .term("N", "all that presses, at the lower end", force(self.normal_force));
        if self.cone.1 <= Force::default() {
            return working;
        }
        working.term("b", "half of the cone’s angle", Value::new(Kind::Degrees, self.cone.0)).term(
            "P",
            "push-off by the pressure",
            force(self.cone.1),
        )
    }
}

const STATICS: Source =
    Source::new("Coulomb friction and statics", "", quantities::Basis::Computed);
