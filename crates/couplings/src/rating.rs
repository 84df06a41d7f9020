//! Whether the coupling is large enough: torque, peak, speed, bore.
//!
//! Three torques are looked at apart: the steady one times its service factor against the rated
//! torque; repeated peaks (starts, jogs, reversals) against the peak torque; and a rare fault,
//! after which the coupling is inspected. A peak that was worked out takes no service factor.
//!
//! A service factor covers what the drive does to the steady torque; it is no factor of safety
//! (API 671, definitions). Ratings depend on each other: some hold only in line and at rest.
//!
//! Not here: service factors ([`crate::service`]), misalignment ([`crate::envelope`]), torque from
//! power and speed (`mechanics::power`).

use mechanics::power::Duty;
use quantities::{
    AngularVelocity, Basis, Kind, Length, Measured, MomentOfInertia, Physical, Source, Torque,
    Value, Verdict, Working,
};

use crate::share::{Share, ShareError};

/// Share of the rated torque that a duty takes, its service factor in it.
///
/// # Errors
/// [`ShareError`] for a rated torque not above zero.
/// # Source
/// S·T against the rated torque; common practice.
/// # Example
/// ```
/// use couplings::rating;
/// use mechanics::power::Duty;
/// use quantities::{AngularVelocity, Physical, Power, Ratio, Torque};
/// use uom::si::angular_velocity::revolution_per_minute;
/// let speed = AngularVelocity::new::<revolution_per_minute>(990.0);
/// let duty = Duty::new(Power::from_si(110e3), speed, Ratio::from_si(1.5)).unwrap();
/// let share = rating::torque(&duty, Torque::from_si(2000.0))?;
/// assert_eq!(share.fraction().show(Default::default()), "80 %");
/// # Ok::<(), couplings::share::ShareError>(())
/// ```
pub fn torque(duty: &Duty, rated: Torque) -> Result<Share, ShareError> {
    let shown = |torque| Value::new(Kind::Torque, torque);
    Share::new("rated torque", shown(duty.design_torque()), shown(rated))
}

/// Whether a peak turns round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Swing {
    /// Always one way.
    OneWay,
    /// To and fro: it counts double, since the swing is what tires the metal.
    Reversing,
}

/// A peak of torque.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// As measured or worked out; no service factor.
    pub torque: Torque,
    /// Whether it turns round.
    pub swing: Swing,
}

impl Peak {
    fn times(self) -> f64 {
        match self.swing {
            Swing::OneWay => 1.0,
            Swing::Reversing => 2.0,
        }
    }

    /// What it counts for against a peak rating.
    pub fn counts(self) -> Torque {
        self.torque * self.times()
    }

    /// How that was found.
    pub fn working(self) -> Working {
        let source = Source::new("peaks that reverse count double", "", Basis::Memory);
        let result = Value::new(Kind::Torque, self.counts());
        Working::new("Peak torque, as it counts", "C = k·P", result, source)
            .term("k", "1 one way, 2 reversing", Value::number(self.times()))
            .term("P", "peak torque", Value::new(Kind::Torque, self.torque))
    }
}

/// Share of the peak torque that a repeated peak takes.
///
/// # Errors
/// [`ShareError`] for a peak below zero or a rating not above it.
pub fn peak(peak: Peak, rated: Torque) -> Result<Share, ShareError> {
    let shown = |torque| Value::new(Kind::Torque, torque);
    Share::new("peak torque", shown(peak.counts()), shown(rated))
}

/// Torque in the coupling while a driver starts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start {
    /// Torque of the driver.
    pub driver: Torque,
    /// The load's own torque while it speeds up; `None` where it starts without its load.
    pub load: Option<Torque>,
    /// Inertia of driver and of what is driven, at the coupling's speed.
    pub inertias: [MomentOfInertia; 2],
    /// What passes through the coupling.
    pub passes: Torque,
}

/// Why there is no torque at start.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum StartError {
    /// A torque or an inertia is not above zero.
    #[error(transparent)]
    NoNumber(#[from] ShareError),
    /// The driver is no stronger than the load: it does not speed up.
    #[error("the driver’s {driver_si} N·m do not lift the load’s {load_si} N·m")]
    Stalls {
        /// The driver's torque, SI.
        driver_si: f64,
        /// The load's torque, SI.
        load_si: f64,
    },
}

/// Torque that passes through a stiff coupling while its driver speeds up a machine.
///
/// ```text
/// C = T·J2/(J1 + J2)                    without load
/// C = (T·J2 + L·J1)/(J1 + J2)           against the load's torque L
/// ```
/// # Valid
/// Two stiff rotors and a torque that rises slowly. One that is applied at once, or the kick as a
/// motor is switched on, can double it. Against a load the driver must be stronger than it.
/// # Errors
/// [`StartError::NoNumber`] for a torque or an inertia not above zero, [`StartError::Stalls`] where
/// the load holds the driver.
/// # Source
/// Newton's second law for two rotors that turn as one.
/// # Example
/// ```
/// use couplings::rating::start;
/// use quantities::{MomentOfInertia, Physical, Torque};
/// let inertias = [1.2, 3.6].map(MomentOfInertia::from_si);
/// let free = start(Torque::from_si(1400.0), None, inertias)?;
/// assert_eq!(format!("{:.0}", free.passes.si()), "1050");
/// let loaded = start(Torque::from_si(1400.0), Some(Torque::from_si(600.0)), inertias)?;
/// assert_eq!(format!("{:.0}", loaded.passes.si()), "1200");
/// # Ok::<(), couplings::rating::StartError>(())
/// ```
pub fn start(
    driver: Torque,
    load: Option<Torque>,
    inertias: [MomentOfInertia; 2],
) -> Result<Start, StartError> {
    let sound = |si: f64| si.is_finite() && si > 0.0;
    let torques = [("starting torque", Some(driver)), ("load’s torque", load)];
    for (what, torque) in torques.into_iter().filter_map(|(what, torque)| Some((what, torque?))) {
        if !sound(torque.si()) {
            return Err(ShareError::Asked { what, si: torque.si() }.into());
        }
    }
    if let Some(none) = inertias.iter().find(|inertia| !sound(inertia.si())) {
        return Err(ShareError::Borne { what: "inertia", si: none.si() }.into());
    }
    let against = load.unwrap_or_default();
    if against >= driver {
        return Err(StartError::Stalls { driver_si: driver.si(), load_si: against.si() });
    }
    let [one, other] = inertias;
    let passes = (driver * other.si() + against * one.si()) / (one.si() + other.si());
    Ok(Start { driver, load, inertias, passes })
}

impl Start {
    /// How it was found.
    pub fn working(&self) -> Working {
        let source = Source::new("two stiff rotors that speed up as one", "", Basis::Computed);
        let torque = |torque| Value::new(Kind::Torque, torque);
        let inertia = |at: usize| Value::new(Kind::Inertia, self.inertias[at]);
        let formula = match self.load {
            Some(_) => "C = (T·J2 + L·J1)/(J1 + J2)",
            None => "C = T·J2/(J1 + J2)",
        };
        let name = "Torque in the coupling at start";
        let working = Working::new(name, formula, torque(self.passes), source)
            .term("T", "driver’s torque at start", torque(self.driver))
            .term("J1", "driver’s inertia", inertia(0))
            .term("J2", "inertia of what is driven", inertia(1));
        match self.load {
            Some(load) => working
                .term("L", "load’s torque", torque(load))
                .valid("torque that rises slowly; applied at once it can double"),
            None => working
                .valid("torque that rises slowly, no load yet; applied at once it can double"),
        }
    }
}

/// Share of the largest bore.
///
/// # Errors
/// [`ShareError`] for sizes not above zero.
pub fn bore(bore: &Measured<Length>, largest: &Measured<Length>) -> Result<Share, ShareError> {
    Share::new("largest bore", bore.shown_as(Kind::Length), largest.shown_as(Kind::Length))
}

/// A running speed against the speeds of the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SpeedUse {
    /// Against the highest speed as supplied.
    pub as_supplied: Option<Share>,
    /// Against the highest speed when balanced as an assembly.
    pub balanced: Option<Share>,
}

/// What a running speed asks of the coupling.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpeedNeed {
    /// Nothing: it may run as supplied.
    AsSupplied,
    /// It must be balanced as an assembly.
    Balance,
    /// It is too fast for this coupling.
    TooFast,
    /// Too close to call.
    TooClose,
    /// The sheet gives no speed that decides it.
    NotKnown,
}

/// A running speed against the highest speeds of the sheet, either of which may be missing.
///
/// # Errors
/// [`ShareError`] for a speed below zero or a limit not above it.
pub fn speed(
    running: AngularVelocity,
    as_supplied: Option<AngularVelocity>,
    balanced: Option<AngularVelocity>,
) -> Result<SpeedUse, ShareError> {
    let shown = |speed: AngularVelocity| Value::new(Kind::Speed, speed);
    // Which way a shaft turns is no matter here.
    let running = AngularVelocity::from_si(running.si().abs());
    let share = |what, limit: Option<AngularVelocity>| {
        limit.map(|limit| Share::new(what, shown(running), shown(limit))).transpose()
    };
    Ok(SpeedUse {
        as_supplied: share("highest speed as supplied", as_supplied)?,
        balanced: share("highest speed when balanced", balanced)?,
    })
}

impl SpeedUse {
    /// What the speed asks for.
    pub fn need(&self) -> SpeedNeed {
        let verdict =
            |share: &Option<Share>| share.as_ref().map_or(Verdict::NotMeasured, Share::verdict);
        match (verdict(&self.as_supplied), verdict(&self.balanced)) {
            (Verdict::Inside, _) => SpeedNeed::AsSupplied,
            (Verdict::TooClose, _) | (_, Verdict::TooClose) => SpeedNeed::TooClose,
            (_, Verdict::Inside) => SpeedNeed::Balance,
            (Verdict::NotMeasured, Verdict::NotMeasured) => SpeedNeed::NotKnown,
            (_, Verdict::Outside) | (Verdict::Outside, Verdict::NotMeasured) => SpeedNeed::TooFast,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantities::{Power, Ratio};
    use uom::si::angular_velocity::revolution_per_minute;

    fn rpm(rpm: f64) -> AngularVelocity {
        AngularVelocity::new::<revolution_per_minute>(rpm)
    }

    /// T = 9549.297·P/n with 110 kW at 990 rpm and S 1.5: 1591.55 N·m of 2000 N·m (by hand).
    #[test]
    fn a_service_factor_takes_its_share() {
        let duty = Duty::new(Power::from_si(110e3), rpm(990.0), Ratio::from_si(1.5)).unwrap();
        let share = torque(&duty, Torque::from_si(2000.0)).unwrap();
        assert!((share.fraction().si - 0.795_77).abs() <= 0.5e-5);
        assert_eq!(share.verdict(), Verdict::Inside);
        assert!(torque(&duty, Torque::from_si(0.0)).is_err());
        assert!(torque(&duty, Torque::from_si(f64::NAN)).is_err());
    }

    #[test]
    fn a_peak_that_reverses_counts_double() {
        let torque = Torque::from_si(1500.0);
        let share = |swing| peak(Peak { torque, swing }, Torque::from_si(2500.0)).unwrap();
        assert_eq!(share(Swing::OneWay).verdict(), Verdict::Inside);
        assert_eq!(share(Swing::Reversing).verdict(), Verdict::Outside);
    }

    /// By hand: 1400·3.6/4.8 = 1050 N·m; against a rotor that is very heavy all of it passes.
    #[test]
    fn the_far_rotor_draws_the_torque_through() {
        let passes = |one: f64, other: f64| {
            start(Torque::from_si(1400.0), None, [one, other].map(MomentOfInertia::from_si))
                .map(|start| start.passes.si())
        };
        assert!((passes(1.2, 3.6).unwrap() - 1050.0).abs() <= 1e-9);
        assert!((passes(1.2, 1e9).unwrap() - 1400.0).abs() <= 1e-3);
        assert!(passes(0.0, 1.0).is_err() && passes(1.0, f64::NAN).is_err());
    }

    /// By hand: both rotors gain (1400 − 600)/4.8 rad/s², so 600 + 3.6·166.667 = 1200 N·m pass.
    #[test]
    fn the_loads_torque_passes_too() {
        let inertias = [1.2, 3.6].map(MomentOfInertia::from_si);
        let passes =
            |load: f64| start(Torque::from_si(1400.0), Some(Torque::from_si(load)), inertias);
        assert!((passes(600.0).unwrap().passes.si() - 1200.0).abs() <= 1e-9);
        assert!(matches!(passes(1400.0), Err(StartError::Stalls { .. })));
        assert!(passes(-1.0).is_err());
    }

    #[test]
    fn speed_may_ask_for_balance() {
        let need = |running, supplied: Option<f64>, balanced: Option<f64>| {
            speed(rpm(running), supplied.map(rpm), balanced.map(rpm)).unwrap().need()
        };
        assert_eq!(need(1480.0, Some(3600.0), Some(5000.0)), SpeedNeed::AsSupplied);
        assert_eq!(need(-1480.0, Some(3600.0), None), SpeedNeed::AsSupplied);
        assert_eq!(need(4000.0, Some(3600.0), Some(5000.0)), SpeedNeed::Balance);
        assert_eq!(need(6000.0, Some(3600.0), Some(5000.0)), SpeedNeed::TooFast);
        assert_eq!(need(4000.0, Some(3600.0), None), SpeedNeed::TooFast);
        assert_eq!(need(4000.0, None, Some(5000.0)), SpeedNeed::Balance);
        assert_eq!(need(4000.0, None, None), SpeedNeed::NotKnown);
    }
}
