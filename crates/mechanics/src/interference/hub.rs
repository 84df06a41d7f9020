//! A hub of slices: what it holds, what it bears, at rest and running.
//!
//! Every slice is a ring in plane stress of its own (Lamé), each with its own outside diameter: a
//! flange or a gear ring presses harder than the barrel beside it. Slices do not bear on each
//! other. Finite elements of whole hubs (axisymmetric, frictionless, d 60 to 100 mm, D/d 1.5 to 3,
//! with and without flanges) hold up to 1.1 % more than the slices say on a shaft as long as the
//! hub, and 0.7 to 2.7 % more where the shaft runs on 1.5·d beyond both ends: the slices are a
//! little low, which is the safe side for torque. At the very end of the hub the pressure has no
//! bound in theory, and so no peak at the edge is ever given.
//!
//! A keyway is not counted: it takes its own width from the joint, w/(π·d) of what presses.
//!
//! Running, the hub grows more than the shaft and the joint loses interference:
//!
//! ```text
//! hub bore      ρ·ω²·d/(16·E)·((3 + ν)·D² + (1 − ν)·d²)
//! shaft         ρ·ω²·d/(16·E)·((3 + ν)·b² + (1 − ν)·d²)
//! warmth        d·(αh·th − αs·ts)
//! ```
//! ω speed · t temperature over 20 °C; letters otherwise as in [`super`].
//!
//! Source: Timoshenko and Goodier, *Theory of Elasticity*, "Rotating disks"; from memory.

use quantities::{
    AngularVelocity, Basis, Force, Kind, Length, MassDensity, Physical, Pressure, Source,
    TemperatureCoefficient, TemperatureInterval, Torque, Value, Working,
};
use tables::materials::{Elastic, Material};

use super::stress::Stress;
use super::{Joint, JointError, LAME, Sizes, contact_pressure};
use crate::{Estimate, Range, Slice, is_positive};

/// A metal, as far as a running fit knows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Metal {
    /// How it gives.
    pub elastic: Elastic,
    /// Density.
    pub density: MassDensity,
    /// Mean coefficient of expansion.
    pub expansion: TemperatureCoefficient,
}

impl From<&Material> for Metal {
    fn from(material: &Material) -> Self {
        let Material { elastic, density, expansion, .. } = *material;
        Self { elastic, density, expansion }
    }
}

/// How fast it turns and how warm it is; by default cold and at rest.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Running {
    /// Speed.
    pub speed: AngularVelocity,
    /// Hub over 20 °C.
    pub hub_rise: TemperatureInterval,
    /// Shaft over 20 °C.
    pub shaft_rise: TemperatureInterval,
}

/// A hub of slices on a shaft. Only [`PressFit::new`] makes one.
#[derive(Clone, Debug, PartialEq)]
pub struct PressFit {
    pub(super) joints: Vec<(Slice, Joint)>,
    pub(super) diameter: Length,
    pub(super) hub: Metal,
    pub(super) shaft: Metal,
}

/// One slice under pressure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SliceState {
    /// The slice.
    pub slice: Slice,
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
    /// Joint diameter.
    pub diameter: Length,
    /// Slice by slice.
    pub slices: Vec<SliceState>,
    /// All that presses on the joint: Σ p·π·d·L.
    pub normal_force: Force,
}

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
    /// A hub of slices on a shaft.
    ///
    /// # Errors
    /// [`JointError`] for no slices or no length, for diameters out of order, and for metals that
    /// are no metals.
    pub fn new(
        shaft_bore: Length,
        diameter: Length,
        slices: &[Slice],
        hub: Metal,
        shaft: Metal,
    ) -> Result<Self, JointError> {
        if slices.is_empty() || slices.iter().any(|slice| !is_positive(slice.length.si())) {
            return Err(JointError::Length);
        }
        for metal in [hub, shaft] {
            if !(is_positive(metal.density.si()) && metal.expansion.si().is_finite()) {
                return Err(JointError::Metal(metal));
            }
        }
        let joint = |slice: &Slice| {
            let sizes = Sizes { shaft_bore, joint: diameter, hub_outside: slice.outside };
            Ok((*slice, Joint::new(sizes, hub.elastic, shaft.elastic)?))
        };
        let joints = slices.iter().map(joint).collect::<Result<_, JointError>>()?;
        Ok(Self { joints, diameter, hub, shaft })
    }

    /// Joint diameter.
    pub fn diameter(&self) -> Length {
        self.diameter
    }

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
        let area = |slice: &SliceState| {
            std::f64::consts::PI * self.diameter.si() * slice.slice.length.si()
        };
        let pressing = slices.iter().map(|slice| slice.pressure.si() * area(slice)).sum();
        let normal_force = Force::from_si(pressing);
        Ok(State { interference, running, diameter: self.diameter, slices, normal_force })
    }

    fn slice(
        &self,
        slice: Slice,
        joint: &Joint,
        interference: Length,
        running: Running,
    ) -> SliceState {
        let hub_turning = turning_growth(self.hub, slice.outside, self.diameter, running.speed);
        let inside = joint.sizes.shaft_bore;
        let shaft_turning = turning_growth(self.shaft, inside, self.diameter, running.speed);
        let warmth = self.diameter * self.warmth(running);
        let lost = hub_turning - shaft_turning + warmth;
        let left = interference - lost;
        let contact = contact_pressure(joint, left).ok();
        let none = Pressure::default();
        let of_turning = self.hub.elastic.young * (hub_turning / self.diameter).value;
        let pressed = contact.map_or(Stress::plane(none, none), |contact| contact.hub_bore());
        SliceState {
            slice,
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

    /// Axial force held with so much friction.
    pub fn axial(&self, friction: f64) -> Force {
        self.normal_force * friction
    }

    /// The slice whose bore is stressed highest, and its place from 0.
    pub fn worst_slice(&self) -> Option<(usize, &SliceState)> {
        let stress = |slice: &SliceState| slice.hub_bore.von_mises.si();
        self.slices.iter().enumerate().max_by(|a, b| stress(a.1).total_cmp(&stress(b.1)))
    }

    /// Mean pressure over the length.
    pub fn mean_pressure(&self) -> Pressure {
        let length: f64 = self.slices.iter().map(|slice| slice.slice.length.si()).sum();
        Pressure::from_si(
            self.normal_force.si() / (std::f64::consts::PI * self.diameter.si() * length),
        )
    }

    fn holding(&self, name: &str, formula: &'static str, result: Value, friction: f64) -> Working {
        let mut working = Working::new(name, formula, result, LAME)
            .term("i", "interference that presses", Value::new(Kind::Allowance, self.interference))
            .term("d", "joint", Value::new(Kind::Length, self.diameter));
        for (place, slice) in self.slices.iter().enumerate() {
            let name = |what: &str| format!("slice {}, {what}", place + 1);
            working = working
                .term("L", name("length"), Value::new(Kind::Length, slice.slice.length))
                .term("D", name("outside"), Value::new(Kind::Length, slice.slice.outside))
                .term("e", name("interference left"), Value::new(Kind::Allowance, slice.left))
                .term("p", name("pressure"), Value::new(Kind::Stress, slice.pressure));
        }
        working
            .term("N", "all that presses", Value::new(Kind::Force, self.normal_force))
            .term("m", "friction", Value::number(friction))
            .valid("rings slice by slice, elastic; no bound is given for the edge of the hub")
    }

    /// How the torque held was found.
    pub fn torque_working(&self, friction: f64) -> Working {
        let result = Value::new(Kind::Torque, self.torque(friction));
        self.holding("Torque held by the fit", "N = Σ p·π·d·L\nT = m·N·d/2", result, friction)
    }

    /// How the axial force held was found.
    pub fn axial_working(&self, friction: f64) -> Working {
        let result = Value::new(Kind::Force, self.axial(friction));
        self.holding("Axial force held by the fit", "N = Σ p·π·d·L\nF = m·N", result, friction)
    }
}
