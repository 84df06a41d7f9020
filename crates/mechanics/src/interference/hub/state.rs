//! A fit in one state: what presses, slice by slice.

use quantities::{
    Angle, AngularVelocity, Basis, Force, Kind, Length, Physical, Pressure, Source, Torque, Value,
    Working,
};
use tables::materials::Elastic;

use super::super::stress::Stress;
use super::super::{Joint, JointError, LAME, contact_pressure};
use super::{Metal, PressFit, Running};
use crate::Slice;
use crate::taper::Taper;

/// One slice under pressure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SliceState {
    /// The slice.
    pub slice: Slice,
    /// Diameter that it stands on.
    pub diameter: Length,
    /// Growth of the hub's bore by turning.
    pub hub_turning: Length,
    /// Growth of the shaft by turning.
    pub shaft_turning: Length,
    /// What the hub's growth by warmth is more than the shaft's.
    pub warmth: Length,
    /// Interference that speed and warmth have taken.
    pub lost: Length,
    /// Interference that is left; not above zero when the slice has lifted off.
    pub left: Length,
    /// Contact pressure; zero when it has lifted off.
    pub pressure: Pressure,
    /// Stress in the hub at the bore, that of turning included.
    pub hub_bore: Stress,
    /// Highest stress in the shaft from the pressure (turning relieves it and is left out).
    pub shaft: Stress,
}

/// A fit in one state.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Interference put in, cold and at rest.
    pub interference: Length,
    /// How it runs.
    pub running: Running,
    /// Joint diameter; on a taper its mean, weighted by what presses.
    pub diameter: Length,
    /// The taper that it stands on; `None` on a straight seat.
    pub taper: Option<Taper>,
    /// Part of the joint that bears.
    pub bearing: f64,
    /// Slice by slice.
    pub slices: Vec<SliceState>,
    /// All that presses on the joint: c·Σ p·π·d·L.
    pub normal_force: Force,
}

/// Letters of the slices: length, outside, interference left, pressure.
#[rustfmt::skip]
const SLICE_LETTERS: [[&str; 4]; 9] = [
    ["L₁", "D₁", "e₁", "p₁"], ["L₂", "D₂", "e₂", "p₂"], ["L₃", "D₃", "e₃", "p₃"],
    ["L₄", "D₄", "e₄", "p₄"], ["L₅", "D₅", "e₅", "p₅"], ["L₆", "D₆", "e₆", "p₆"],
    ["L₇", "D₇", "e₇", "p₇"], ["L₈", "D₈", "e₈", "p₈"], ["L₉", "D₉", "e₉", "p₉"],
];

impl PressFit {
    /// The fit with so much interference, running so.
    ///
    /// # Errors
    /// [`JointError::Loose`] without interference, [`JointError::Running`] for a speed or a
    /// temperature that is no sound number.
    pub fn state(&self, interference: Length, running: Running) -> Result<State, JointError> {
        if !(interference > Length::default() && interference.is_finite()) {
            return Err(JointError::Loose(interference));
        }
        let sound = running.speed.si() >= 0.0
            && running.speed.is_finite()
            && running.hub_rise.si().is_finite()
            && running.shaft_rise.si().is_finite();
        if !sound {
            return Err(JointError::Running(running));
        }
        let slice =
            |(slice, joint): &(Slice, Joint)| self.slice(*slice, joint, interference, running);
        let slices: Vec<SliceState> = self.joints.iter().map(slice).collect();
        let force = |slice: &SliceState| {
            let area = std::f64::consts::PI * slice.diameter.si() * slice.slice.length.si();
            slice.pressure.si() * area * self.bearing
        };
        let pressing: f64 = slices.iter().map(force).sum();
        let moment: f64 = slices.iter().map(|slice| force(slice) * slice.diameter.si()).sum();
        let diameter =
            if pressing > 0.0 { Length::from_si(moment / pressing) } else { self.diameter };
        let normal_force = Force::from_si(pressing);
        let Self { taper, bearing, .. } = *self;
        Ok(State { interference, running, diameter, taper, bearing, slices, normal_force })
    }

    fn slice(
        &self,
        slice: Slice,
        joint: &Joint,
        interference: Length,
        running: Running,
    ) -> SliceState {
        let diameter = joint.sizes.joint;
        let hub_turning = turning_growth(self.hub, slice.outside, diameter, running.speed);
        let inside = joint.sizes.shaft_bore;
        let shaft_turning = turning_growth(self.shaft, inside, diameter, running.speed);
        let warmth = diameter * self.warmth(running);
        let lost = hub_turning - shaft_turning + warmth;
        let left = interference - lost;
        let contact = contact_pressure(joint, left).ok();
        let none = Pressure::default();
        let of_turning = self.hub.elastic.young * (hub_turning / diameter).value;
        let pressed = contact.map_or(Stress::plane(none, none), |contact| contact.hub_bore());
        SliceState {
            slice,
            diameter,
            hub_turning,
            shaft_turning,
            warmth,
            lost,
            left,
            pressure: contact.map_or(none, |contact| contact.pressure),
            hub_bore: Stress::plane(pressed.hoop + of_turning, pressed.radial),
            shaft: contact.map_or(Stress::plane(none, none), |contact| contact.shaft_inside()),
        }
    }

    /// Part of the diameter that warmth takes.
    fn warmth(&self, running: Running) -> f64 {
        self.hub.expansion.si() * running.hub_rise.si()
            - self.shaft.expansion.si() * running.shaft_rise.si()
    }
}

/// Growth of the diameter `at` of a turning ring whose other diameter is `other`.
fn turning_growth(metal: Metal, other: Length, at: Length, speed: AngularVelocity) -> Length {
    let Elastic { young, poisson } = metal.elastic;
    let squares = (3.0 + poisson) * other.si().powi(2) + (1.0 - poisson) * at.si().powi(2);
    at * (metal.density.si() * speed.si().powi(2) / (16.0 * young.si()) * squares)
}

impl SliceState {
    /// How the interference that is left was found.
    pub fn left_working(&self) -> Working {
        let allowance = |length| Value::new(Kind::Allowance, length);
        let source = Source::new(
            "Timoshenko and Goodier, Theory of Elasticity",
            "rotating disks; linear expansion",
            Basis::Memory,
        );
        Working::new(
            "Interference left when running",
            "e = i − (h − s + w)",
            allowance(self.left),
            source,
        )
        .term("i", "interference, cold and at rest", allowance(self.left + self.lost))
        .term("h", "growth of the hub by turning", allowance(self.hub_turning))
        .term("s", "growth of the shaft by turning", allowance(self.shaft_turning))
        .term("w", "hub’s growth by warmth over the shaft’s", allowance(self.warmth))
        .valid("not above zero: this slice has lifted off")
    }
}

impl State {
    /// Torque held with so much friction.
    pub fn torque(&self, friction: f64) -> Torque {
        Torque::from_si(friction * self.normal_force.si() * self.diameter.si() / 2.0)
    }

    /// Half of the cone's angle; nothing on a straight seat.
    pub(crate) fn half_angle(&self) -> Angle {
        self.taper.map(Taper::half_angle).unwrap_or_default()
    }

    /// What the pressure pushes the hub off with: N·sin β on a taper, nothing on a straight seat.
    pub fn push_off(&self) -> Force {
        self.normal_force * self.half_angle().si().sin()
    }

    /// Axial force held with so much friction: μ·N, on a taper μ·N·cos β − N·sin β. Below zero it comes
    /// off by itself.
    pub fn axial(&self, friction: f64) -> Force {
        self.normal_force * (friction * self.half_angle().si().cos()) - self.push_off()
    }

    /// The slice whose bore is stressed highest, and its place from 0.
    pub fn worst_slice(&self) -> Option<(usize, &SliceState)> {
        let stress = |slice: &SliceState| slice.hub_bore.von_mises.si();
        self.slices.iter().enumerate().max_by(|a, b| stress(a.1).total_cmp(&stress(b.1)))
    }

    /// Length of the joint.
    pub fn length(&self) -> Length {
        self.slices.iter().map(|slice| slice.slice.length).sum()
    }

    /// Mean pressure over what bears.
    pub fn mean_pressure(&self) -> Pressure {
        let area = |slice: &SliceState| slice.diameter.si() * slice.slice.length.si();
        let whole: f64 = self.slices.iter().map(area).sum();
        let pressing = self.slices.iter().map(|slice| slice.pressure.si() * area(slice));
        Pressure::from_si(pressing.sum::<f64>() / whole)
    }

    /// How the mean pressure was found.
    pub fn pressure_working(&self) -> Working {
        let area: f64 = self
            .slices
            .iter()
            .map(|slice| std::f64::consts::PI * slice.diameter.si() * slice.slice.length.si())
            .sum();
        let diameter = Length::from_si(area / (std::f64::consts::PI * self.length().si()));
        let result = Value::new(Kind::Stress, self.mean_pressure());
        let formula = "N = c·Σ p·π·d·L\np = N/(c·π·d·L)";
        self.by_slice(Working::new("Mean contact pressure", formula, result, LAME))
            .term("N", "all that presses", Value::new(Kind::Force, self.normal_force))
            .term("c", "part of the joint that bears", Value::number(self.bearing))
            .term("d", "joint", Value::new(Kind::Length, diameter))
            .term("L", "length of the joint", Value::new(Kind::Length, self.length()))
            .valid("rings slice by slice, elastic; no bound is given for the edge of the hub")
    }

    /// The terms of every slice; their letters carry its number.
    fn by_slice(&self, mut working: Working) -> Working {
        working = working.term(
            "i",
            "interference that presses",
            Value::new(Kind::Allowance, self.interference),
        );
        for (place, slice) in self.slices.iter().enumerate() {
            let name = |what: &str| format!("slice {}, {what}", place + 1);
            let [length, outside, left, pressure] =
                SLICE_LETTERS.get(place).copied().unwrap_or(["·"; 4]);
            working = working
                .term(length, name("length"), Value::new(Kind::Length, slice.slice.length))
                .term(outside, name("outside"), Value::new(Kind::Length, slice.slice.outside))
                .term(left, name("interference left"), Value::new(Kind::Allowance, slice.left))
                .term(pressure, name("pressure"), Value::new(Kind::Stress, slice.pressure));
        }
        working
    }

    fn holding(
        &self,
        name: &'static str,
        formula: &'static str,
        result: Value,
        friction: f64,
    ) -> Working {
        self.by_slice(Working::new(name, formula, result, LAME))
            .term("d", "joint", Value::new(Kind::Length, self.diameter))
            .term("c", "part of the joint that bears", Value::number(self.bearing))
            .term("N", "all that presses", Value::new(Kind::Force, self.normal_force))
            .term("m", "friction", Value::number(friction))
            .valid("rings slice by slice, elastic; no bound is given for the edge of the hub")
    }

    /// How the torque held was found.
    pub fn torque_working(&self, friction: f64) -> Working {
        let result = Value::new(Kind::Torque, self.torque(friction));
        self.holding("Torque held by the fit", "N = c·Σ p·π·d·L\nT = m·N·d/2", result, friction)
    }

    /// How the axial force held was found.
    pub fn axial_working(&self, friction: f64) -> Working {
        let result = Value::new(Kind::Force, self.axial(friction));
        let formula = match self.taper {
            None => "N = c·Σ p·π·d·L\nF = m·N",
            Some(_) => "N = c·Σ p·π·d·L\nP = N·sin b\nF = m·N·cos b − P",
        };
        self.on_cone(self.holding("Axial force held by the fit", formula, result, friction))
    }

    /// The terms that a taper adds.
    fn on_cone(&self, working: Working) -> Working {
        if self.taper.is_none() {
            return working;
        }
        working
            .term("b", "half of the cone’s angle", Value::new(Kind::Degrees, self.half_angle()))
            .term("P", "push-off by the pressure", Value::new(Kind::Force, self.push_off()))
    }
}
