//! Getting a hub off cold: the force, the puller, the screw, the ram.
//!
//! The pull is what friction holds, F = μ·Σ p·π·d·L. For choosing a puller friction is taken high
//! on purpose (`tables::friction`), so that the puller is big enough.
//!
//! A hub warmed more than its shaft pulls easier: give [`PressFit::state`] its `hub_rise` and
//! `shaft_rise`. Heat alone frees it at the temperature of [`Opening::hub_heat`], with the shaft as
//! warm as it will have become.
//!
//! Never react the pull through bearings; nobody stands in line with a loaded puller.
//!
//! [`PressFit::state`]: crate::interference::hub::PressFit::state
//! [`Opening::hub_heat`]: crate::heat::Opening::hub_heat

pub mod hold;

use quantities::{
    Angle, Basis, Force, Kind, Length, Physical, Pressure, Source, Value, Working, both,
};
use tables::friction::PULL_SOURCE;
use tables::pullers::{self, Drive, Puller, puller_for};
use uom::si::f64::Area;

use crate::bolts::{BoltError, Tightening, tightening_torque};
use crate::interference::hub::State;
use crate::{Range, is_positive};

/// Why no pull can be given.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PullError {
    /// A friction that is no range above zero.
    #[error("friction is no range above zero: {} to {}", .0.low, .0.high)]
    Friction(Range<f64>),
    /// A force that is not above zero.
    #[error("force is not above zero: {}", both(.0))]
    Force(Force),
    /// A margin below one, or another number not above zero.
    #[error("number is not sound: {0}")]
    Number(f64),
}

/// The pull to strip a hub.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pull {
    /// All that presses on the joint.
    pub normal_force: Force,
    /// Friction.
    pub friction: Range<f64>,
    /// Half of the cone's angle, and what the pressure pushes the hub off with; nothing on a straight
    /// seat.
    pub cone: (Angle, Force),
    /// The pull; none where it comes off by itself.
    pub force: Range<Force>,
}

/// The pull to strip a hub from a fit in this state.
///
/// ```text
/// N = Σ p·π·d·L      F = μ·N      on a taper  F = μ·N·cos β − N·sin β
/// ```
/// # Valid
/// Keyed or plain bores without rust; a hub that has fretted or rusted on takes more.
/// # Errors
/// [`PullError::Friction`] for a friction that is no range above zero.
/// # Source
/// Bloch, *Improving Machinery Reliability*, Eq. 3-13; on a taper the statics of a cone.
/// # Example
/// ```
/// use mechanics::{Range, Slice, pull::pull_force};
/// use mechanics::interference::hub::{Metal, PressFit, Running};
/// use uom::si::{f64::Length, force::kilonewton, length::millimeter};
/// let mm = Length::new::<millimeter>;
/// let steel = Metal::from(tables::materials::material("steel").unwrap());
/// let hub = [Slice { length: mm(110.0), outside: mm(160.0) }];
/// let fit = PressFit::new(mm(0.0), mm(100.0), &hub, steel, steel).unwrap();
/// let state = fit.state(mm(0.08), Running::default()).unwrap();
/// let pull = pull_force(&state, Range::new(0.15, 0.24))?;
/// assert_eq!(format!("{:.1}", pull.force.low.get::<kilonewton>()), "261.5");
/// # Ok::<(), mechanics::pull::PullError>(())
/// ```
pub fn pull_force(state: &State, friction: Range<f64>) -> Result<Pull, PullError> {
    if !(friction.is_sound() && friction.low > 0.0) {
        return Err(PullError::Friction(friction));
    }
    let force = friction.map(|friction| {
        let held = state.axial(friction);
        if held > Force::default() { held } else { Force::default() }
    });
    let cone = (state.half_angle(), state.push_off());
    Ok(Pull { normal_force: state.normal_force, friction, cone, force })
}

impl Pull {
    /// How the upper end of the pull was found.
    pub fn working(&self) -> Working {
        let force = |force| Value::new(Kind::Force, force);
        let result = force(self.force.high);
        let tapered = self.cone.1 > Force::default();
        let formula = if tapered {
            "N = c·Σ p·π·d·L\nF = m·N·cos b − P"
        } else {
            "N = c·Σ p·π·d·L\nF = m·N"
        };
        let mut working = Working::new("Pull to strip the hub", formula, result, PULL_SOURCE)
            .term("N", "all that presses on the joint", force(self.normal_force))
            .term("m", "friction, upper end", Value::number(self.friction.high));
        if tapered {
            working = working
                .term("b", "half of the cone’s angle", Value::new(Kind::Degrees, self.cone.0))
                .term("P", "push-off by the pressure", force(self.cone.1));
        }
        working.valid(
            "no rust, no fretting; the upper end of friction, so that the puller is big enough",
        )
    }
}

/// A choice among the classes of `tables::pullers`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// The pull.
    pub pull: Force,
    /// Capacity over pull.
    pub margin: f64,
    /// Capacity that it takes.
    pub needed: Force,
    /// The smallest class that has it; `None` when none has: add heat or oil, do not pull harder.
    pub class: Option<Puller>,
}

/// The smallest puller of a drive that has a margin over the pull; the usual margin is
/// [`tables::pullers::MARGIN`].
///
/// # Errors
/// [`PullError`] for a pull not above zero or a margin below one.
pub fn puller(pull: Force, margin: f64, drive: Drive) -> Result<Choice, PullError> {
    if !is_positive(pull.si()) {
        return Err(PullError::Force(pull));
    }
    if !(margin.is_finite() && margin >= 1.0) {
        return Err(PullError::Number(margin));
    }
    let needed = pull * margin;
    Ok(Choice { pull, margin, needed, class: puller_for(needed, drive) })
}

impl Choice {
    /// How the capacity was found.
    pub fn working(&self) -> Working {
        let force = |force| Value::new(Kind::Force, force);
        Working::new("Capacity of the puller", "C = g·F", force(self.needed), pullers::SOURCE)
            .term("g", "margin", Value::number(self.margin))
            .term("F", "pull", force(self.pull))
    }
}

/// Torque on a puller's screw for a pull, T = K·F·d; K is that of the screw as it is greased.
///
/// # Errors
/// [`BoltError`] for what is not above zero.
pub fn screw_torque(nut_factor: f64, pull: Force, screw: Length) -> Result<Tightening, BoltError> {
    tightening_torque(nut_factor, pull, screw)
}

/// Force of a ram, F = p·A.
///
/// # Errors
/// [`PullError::Number`] for a pressure or an area not above zero.
pub fn ram_force(pressure: Pressure, area: Area) -> Result<Force, PullError> {
    for number in [pressure.si(), area.value] {
        if !is_positive(number) {
            return Err(PullError::Number(number));
        }
    }
    Ok(Force::from_si(pressure.si() * area.value))
}

/// Pressure that a ram needs for a pull, p = F/A.
///
/// # Errors
/// [`PullError`] for a pull or an area not above zero.
pub fn ram_pressure(pull: Force, area: Area) -> Result<Pressure, PullError> {
    if !is_positive(pull.si()) {
        return Err(PullError::Force(pull));
    }
    if !is_positive(area.value) {
        return Err(PullError::Number(area.value));
    }
    Ok(Pressure::from_si(pull.si() / area.value))
}

/// How the pressure of [`ram_pressure`] was found.
///
/// # Errors
/// As [`ram_pressure`].
pub fn ram_working(pull: Force, area: Area) -> Result<Working, PullError> {
    let result = Value::new(Kind::Pressure, ram_pressure(pull, area)?);
    let source = Source::new("force is pressure times area", "", Basis::Computed);
    Ok(Working::new("Pressure in the ram", "p = F/A", result, source)
        .term("F", "pull", Value::new(Kind::Force, pull))
        .term("A", "effective area of the ram", Value::new(Kind::Area, area)))
}

/// How the force of [`ram_force`] was found.
///
/// # Errors
/// As [`ram_force`].
pub fn ram_force_working(pressure: Pressure, area: Area) -> Result<Working, PullError> {
    let result = Value::new(Kind::Force, ram_force(pressure, area)?);
    let source = Source::new("force is pressure times area", "", Basis::Computed);
    Ok(Working::new("Force of the ram", "F = p·A", result, source)
        .term("p", "pressure that the pump may give", Value::new(Kind::Pressure, pressure))
        .term("A", "effective area of the ram", Value::new(Kind::Area, area)))
}

/// Tensile stress in bolts screwed into the hub's puller holes, σ = F/(n·A).
///
/// # Valid
/// All pull alike, which asks for a stiff bar set square; A is the stress area
/// ([`crate::bolts::stress_area`]).
/// # Errors
/// [`PullError`] for what is not above zero.
pub fn puller_bolt_stress(
    pull: Force,
    bolts: u32,
    stress_area: Area,
) -> Result<Pressure, PullError> {
    if bolts == 0 {
        return Err(PullError::Number(0.0));
    }
    ram_pressure(pull, stress_area * f64::from(bolts))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Slice;
    use crate::heat::{Opening, expansion::Expansion};
    use crate::interference::hub::{Metal, PressFit, Running};
    use quantities::{
        MassDensity, TemperatureCoefficient, TemperatureInterval, ThermodynamicTemperature,
    };
    use tables::materials::Elastic;
    use tables::pullers::MARGIN;
    use uom::si::area::square_inch;
    use uom::si::force::{newton, pound_force};
    use uom::si::length::{inch, millimeter};
    use uom::si::pressure::{megapascal, psi};
    use uom::si::thermodynamic_temperature::degree_celsius;
    use uom::si::torque::newton_meter;

    fn us_tons(tons: f64) -> Force {
        Force::new::<pound_force>(2000.0 * tons)
    }

    fn mm(mm: f64) -> Length {
        Length::new::<millimeter>(mm)
    }

    fn metal(mpa: f64, poisson: f64) -> Metal {
        Metal {
            elastic: Elastic { young: Pressure::new::<megapascal>(mpa), poisson },
            density: MassDensity::from_si(7850.0),
            expansion: TemperatureCoefficient::from_si(1.17e-5),
        }
    }

    fn state(sizes: [f64; 5], hub: Metal, shaft: Metal, running: Running) -> State {
        let [bore, d, outside, length, interference] = sizes;
        let slice = Slice { length: mm(length), outside: mm(outside) };
        let fit = PressFit::new(mm(bore), mm(d), &[slice], hub, shaft).unwrap();
        fit.state(mm(interference), running).unwrap()
    }

    fn pulls(state: &State, friction: f64) -> f64 {
        let pull = pull_force(state, Range::new(friction, friction)).unwrap();
        pull.force.high.get::<newton>()
    }

    fn close(found: f64, wanted: f64, half_digit: f64) {
        assert!((found - wanted).abs() <= half_digit, "{found} for {wanted}");
    }

    /// Lamé and F = π·μ·d·L·p worked apart from this program to six digits.
    #[test]
    fn pulls_by_hand() {
        let steel = metal(207_000.0, 0.292);
        let cold = Running::default();
        let first = state([0.0, 100.0, 160.0, 110.0, 0.08], steel, steel, cold);
        close(first.mean_pressure().get::<megapascal>(), 50.4562, 5e-5);
        close(first.slices[0].hub_bore.hoop.get::<megapascal>(), 115.144, 5e-4);
        close(first.torque(0.15).get::<newton_meter>(), 13_077.3, 0.05);
        close(pulls(&first, 0.15), 261_546.0, 0.8);
        let second = state([0.0, 75.0, 120.0, 90.0, 0.045], steel, steel, cold);
        close(second.mean_pressure().get::<megapascal>(), 37.8422, 5e-5);
        close(pulls(&second, 0.24), 192_593.0, 0.6);
        let unlike = state(
            [50.0, 120.0, 190.0, 130.0, 0.1],
            metal(170_000.0, 0.28),
            metal(207_000.0, 0.3),
            cold,
        );
        close(unlike.mean_pressure().get::<megapascal>(), 40.1648, 5e-5);
        close(pulls(&unlike, 0.2), 393_686.0, 1.0);
    }

    /// A hub 40 K warmer than its shaft keeps 0.0332 of 0.080 mm and pulls with 108 542 N.
    #[test]
    fn part_heat_relieves_the_pull() {
        let steel = metal(207_000.0, 0.292);
        let warm = Running { hub_rise: TemperatureInterval::from_si(40.0), ..Running::default() };
        let warm = state([0.0, 100.0, 160.0, 110.0, 0.08], steel, steel, warm);
        close(warm.slices[0].left.get::<millimeter>(), 0.0332, 5e-5);
        close(pulls(&warm, 0.15), 108_542.0, 0.5);
    }

    /// Heat alone, by ΔT = (δ + c)/(α·d): 111.111 K, so 131.111 °C; with the shaft 25 K warmer too,
    /// a difference of 51.2821 K at a rise of 76.2821 K.
    #[test]
    fn heat_alone_frees_a_hub() {
        let freed = |d: f64, interference: f64, clearance: f64, shaft: f64| {
            let steel = Expansion::Constant(TemperatureCoefficient::from_si(1.17e-5));
            let opening = Opening {
                diameter: mm(d),
                interference: mm(interference),
                clearance: mm(clearance),
                hub: steel.clone(),
                shaft: steel,
                shaft_temperature: ThermodynamicTemperature::new::<degree_celsius>(shaft),
                loss: TemperatureInterval::from_si(0.0),
            };
            opening.hub_heat().unwrap().at_shaft.get::<degree_celsius>()
        };
        close(freed(100.0, 0.08, 0.05, 20.0), 131.111, 0.0005);
        close(freed(75.0, 0.045, 0.0, 45.0) - 20.0, 76.2821, 5e-5);
        close(freed(75.0, 0.045, 0.0, 45.0) - 45.0, 51.2821, 5e-5);
    }

    /// Bloch's four-inch hub at 12 000 psi and friction 0.24: 126 669 lbf, 63.3 US tons (from the
    /// printed formula); with the margin 95 tons, so a hundred-ton puller. A rule of 8 to 10 tons per
    /// inch of shaft would have said 32 to 40.
    #[test]
    fn a_puller_with_a_margin() {
        let inches = Length::new::<inch>;
        let steel = metal(Pressure::new::<psi>(30e6).get::<megapascal>(), 0.292);
        let slice = Slice { length: inches(3.5), outside: inches(4.0 / 0.68) };
        let fit = PressFit::new(inches(0.0), inches(4.0), &[slice], steel, steel).unwrap();
        // 0.0014881 in/in is 12 000 psi; exactly 2p/(E·(1 − 0.68²)).
        let interference = 2.0 * 12_000.0 / (30e6 * (1.0 - 0.68 * 0.68)) * 4.0;
        let state = fit.state(inches(interference), Running::default()).unwrap();
        let pull = pull_force(&state, Range::new(0.03, tables::friction::PULL)).unwrap();
        close(pull.force.high.get::<pound_force>(), 126_669.0, 0.5);
        let puller = |drive| puller(pull.force.high, MARGIN, drive).unwrap();
        let (small, large) = (puller(Drive::Screw), puller(Drive::Hydraulic));
        close(large.needed.get::<pound_force>() / 2000.0, 95.002, 0.0005);
        assert_eq!(large.class.unwrap().tons, 100);
        assert_eq!(small.class, None);
        // 4.5 tons of pull take 6.75 with the margin: five tons are not enough.
        let light = super::puller(us_tons(4.5), MARGIN, Drive::Hydraulic).unwrap();
        assert_eq!(light.class.unwrap().tons, 10);
    }

    /// By hand: 0.15·60 kN·30 mm = 270 N·m; 10 000 psi on 6.5 in² = 65 000 lbf = 32.5 US tons.
    #[test]
    fn screws_and_rams() {
        let torque = screw_torque(0.15, Force::new::<newton>(60_000.0), mm(30.0)).unwrap();
        close(torque.torque.get::<newton_meter>(), 270.0, 0.05);
        let area = Area::new::<square_inch>(6.5);
        let force = ram_force(Pressure::new::<psi>(10_000.0), area).unwrap();
        close(force.get::<pound_force>(), 65_000.0, 0.5);
        close((force / us_tons(1.0)).value, 32.5, 0.05);
        close(ram_pressure(force, area).unwrap().get::<psi>(), 10_000.0, 0.5);
        let stress = puller_bolt_stress(us_tons(32.5), 2, Area::new::<square_inch>(0.606)).unwrap();
        close(stress.get::<psi>(), 65_000.0 / 1.212, 0.5);
    }

    #[test]
    fn what_is_no_pull_is_refused() {
        assert!(puller(Force::from_si(0.0), 1.5, Drive::Screw).is_err());
        assert!(puller(Force::from_si(1.0), 0.9, Drive::Screw).is_err());
        let steel = metal(207_000.0, 0.292);
        let fit = state([0.0, 75.0, 120.0, 90.0, 0.045], steel, steel, Running::default());
        assert!(pull_force(&fit, Range::new(0.0, 0.2)).is_err());
    }
}
