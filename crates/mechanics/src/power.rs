//! Torque from power and speed.
//!
//! T torque · P power · n speed · S service factor
//!
//! The service factor covers what the drive does to the steady torque; it is no factor of safety.
//! A peak that has been worked out by itself takes none.

use quantities::{
    AngularVelocity, Basis, Kind, Physical, Power, Ratio, Source, Torque, Value, Working, both,
};

use crate::is_positive;

/// What a machine gives at a speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duty {
    power: Power,
    speed: AngularVelocity,
    service_factor: Ratio,
}

/// Why a duty gives no torque.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum PowerError {
    /// No power.
    #[error("power is not above zero: {}", both(.0))]
    Power(Power),
    /// No speed: power over no speed is no torque.
    #[error("speed is not above zero: {}", both(.0))]
    Speed(AngularVelocity),
    /// A service factor below one, or none.
    #[error("service factor is below one: {}", both(.0))]
    ServiceFactor(Ratio),
    /// No rated torque to compare with.
    #[error("torque is not above zero: {}", both(.0))]
    Torque(Torque),
}

impl Duty {
    /// A duty with its service factor (1 when none applies).
    ///
    /// # Errors
    /// [`PowerError`] for a power or speed not above zero, or a factor below one.
    pub fn new(
        power: Power,
        speed: AngularVelocity,
        service_factor: Ratio,
    ) -> Result<Self, PowerError> {
        if !is_positive(power.si()) {
            return Err(PowerError::Power(power));
        }
        if !is_positive(speed.si()) {
            return Err(PowerError::Speed(speed));
        }
        if !(service_factor.is_finite() && service_factor.si() >= 1.0) {
            return Err(PowerError::ServiceFactor(service_factor));
        }
        Ok(Self { power, speed, service_factor })
    }

    /// Steady torque.
    ///
    /// ```text
    /// T = P/n
    /// ```
    /// with the speed as an angle per time; in kW and rpm, T = 9549.297·P/n in N·m.
    /// # Valid
    /// Steady running at that power and speed.
    /// # Example
    /// ```
    /// use mechanics::power::Duty;
    /// use quantities::{AngularVelocity, Power, Ratio};
    /// use uom::si::{angular_velocity::revolution_per_minute, power::kilowatt, ratio::ratio, torque::newton_meter};
    /// let duty = Duty::new(
    ///     Power::new::<kilowatt>(75.0),
    ///     AngularVelocity::new::<revolution_per_minute>(1480.0),
    ///     Ratio::new::<ratio>(1.5),
    /// )?;
    /// assert_eq!(format!("{:.1}", duty.torque().get::<newton_meter>()), "483.9");
    /// assert_eq!(format!("{:.1}", duty.design_torque().get::<newton_meter>()), "725.9");
    /// # Ok::<(), mechanics::power::PowerError>(())
    /// ```
    pub fn torque(&self) -> Torque {
        Torque::from_si(self.power.si() / self.speed.si())
    }

    /// Torque to choose and check a coupling by: S·T.
    pub fn design_torque(&self) -> Torque {
        self.torque() * self.service_factor.si()
    }

    /// The part of a rated torque that the duty takes: S·T over the rating.
    ///
    /// # Errors
    /// [`PowerError::Torque`] for a rating not above zero.
    pub fn utilisation(&self, rated: Torque) -> Result<Ratio, PowerError> {
        if is_positive(rated.si()) {
            Ok(Ratio::from_si(self.design_torque().si() / rated.si()))
        } else {
            Err(PowerError::Torque(rated))
        }
    }

    /// How the steady torque was found.
    pub fn working(&self) -> Working {
        Working::new("Torque", "T = P/n", Value::new(Kind::Torque, self.torque()), DEFINITION)
            .term("P", "power", Value::new(Kind::Power, self.power))
            .term("n", "speed, as an angle per time", Value::new(Kind::Speed, self.speed))
            .valid("steady running")
    }

    /// How the design torque was found.
    pub fn design_working(&self) -> Working {
        let result = Value::new(Kind::Torque, self.design_torque());
        Working::new("Torque with service factor", "T = P/n\nD = S·T", result, DEFINITION)
            .term("P", "power", Value::new(Kind::Power, self.power))
            .term("n", "speed, as an angle per time", Value::new(Kind::Speed, self.speed))
            .term("S", "service factor", Value::number(self.service_factor.si()))
            .term("T", "torque", Value::new(Kind::Torque, self.torque()))
    }
}

const DEFINITION: Source = Source::new("power is torque times speed", "", Basis::Computed);

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::angular_velocity::revolution_per_minute;
    use uom::si::power::{horsepower, kilowatt};
    use uom::si::torque::{newton_meter, pound_force_inch};

    fn duty(power: Power, rpm: f64, factor: f64) -> Duty {
        let speed = AngularVelocity::new::<revolution_per_minute>(rpm);
        Duty::new(power, speed, Ratio::from_si(factor)).unwrap()
    }

    /// T = 9549.297·P/n and 63 025.36·hp/n (1 hp = 550 ft·lbf/s), printed to six digits.
    #[test]
    fn torque_matches_the_constants_of_the_trade() {
        let close =
            |found: f64, wanted: f64| assert!((found / wanted - 1.0).abs() < 5e-6, "{found}");
        let kilowatts = |kw| Power::new::<kilowatt>(kw);
        close(duty(kilowatts(75.0), 1480.0, 1.0).torque().get::<newton_meter>(), 483.917);
        let pump = duty(kilowatts(110.0), 990.0, 1.5);
        close(pump.torque().get::<newton_meter>(), 1061.03);
        close(pump.design_torque().get::<newton_meter>(), 1591.55);
        let hp = |hp| Power::new::<horsepower>(hp);
        close(duty(hp(100.0), 1750.0, 1.0).torque().get::<pound_force_inch>(), 3601.45);
        close(duty(hp(12.0), 100.0, 1.0).torque().get::<pound_force_inch>(), 7563.04);
        close(duty(hp(5000.0), 10_000.0, 1.0).torque().get::<pound_force_inch>(), 31_512.7);
        let used = pump.utilisation(Torque::from_si(2000.0)).unwrap().si();
        close(used, 1591.55 / 2000.0);
    }

    #[test]
    fn no_speed_is_no_torque() {
        let still = AngularVelocity::from_si(0.0);
        let error = Duty::new(Power::from_si(75e3), still, Ratio::from_si(1.0)).unwrap_err();
        assert_eq!(error, PowerError::Speed(still));
        let nan = Duty::new(Power::from_si(f64::NAN), still, Ratio::from_si(1.0));
        assert!(matches!(nan, Err(PowerError::Power(_))));
    }
}
