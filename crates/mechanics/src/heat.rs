//! Heat to put a hub on: how hot, with what clearance, with how much energy, and what else serves.
//!
//! The hub is heated until its bore, grown, clears the shaft as it then is:
//!
//! ```text
//! d·ah·(T − 20 °C) = δ + c + d·as·(Ts − 20 °C)
//! ```
//! d joint · δ interference at 20 °C, the upper end of its `±` · c clearance wanted while sliding ·
//! a mean expansion from 20 °C (h hub, s shaft) · T, Ts hub and shaft
//!
//! What is lost on the way from the heater to the shaft is added ([`carried`]). How long a hub stays open is a
//! matter of heat flowing through metal and is not answered here by a lump: [`lumped`] and
//! [`cylinder`] stand beside for checking against published examples.
//!
//! Not here: what a metal, a seal or a grease may be heated to (`tables::materials`).

pub mod carried;
pub mod cylinder;
pub mod expansion;
pub mod lumped;
pub mod ramp;

use quantities::{
    Basis, Energy, Kind, Length, Mass, Physical, Source, SpecificHeatCapacity, TemperatureInterval,
    ThermodynamicTemperature, Value, Working, both,
};

use std::marker::PhantomData;

use crate::is_positive;
use crate::size::correction::REFERENCE_K;
use expansion::{Expansion, Growth};

/// Why no temperature can be given.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum HeatError {
    /// A diameter that is not above zero.
    #[error("diameter is not above zero: {}", both(.0))]
    Diameter(Length),
    /// Nothing to open: the hub goes on cold.
    #[error("nothing to open: {}", both(.0))]
    Open(Length),
    /// An interference or a clearance that is no number.
    #[error("length is not sound: {}", both(.0))]
    Length(Length),
    /// A temperature that is none, or beyond what the expansion is known for.
    #[error("temperature is not sound, or beyond the expansion’s range: {}", both(.0))]
    Temperature(ThermodynamicTemperature),
    /// More growth than the expansion is known for.
    #[error("needs more growth than the expansion is known for: {}", both(.0))]
    BeyondRange(Length),
    /// A difference of temperature below zero.
    #[error("difference is below zero: {}", both(.0))]
    Interval(TemperatureInterval),
    /// A mass, a heat capacity or another number not above zero.
    #[error("number is not above zero: {0}")]
    Number(f64),
}

/// Clearance to slide by: one thousandth of the diameter, at least 0.05 mm.
///
/// # Source
/// DIN 7190-1 for the thousandth, from memory; the least is a rule of our own, so that a small hub
/// does not grab on a burr.
/// # Example
/// ```
/// use mechanics::heat::sliding_clearance;
/// use uom::si::{f64::Length, length::millimeter};
/// assert!((sliding_clearance(Length::new::<millimeter>(80.0)).get::<millimeter>() - 0.08).abs() < 1e-9);
/// ```
pub fn sliding_clearance(diameter: Length) -> Length {
    let share = diameter / 1000.0;
    if share < LEAST_CLEARANCE { LEAST_CLEARANCE } else { share }
}

const LEAST_CLEARANCE: Length =
    Length { dimension: PhantomData, units: PhantomData, value: 0.05e-3 };

/// How the clearance to slide by was found.
pub fn sliding_clearance_working(diameter: Length) -> Working {
    let allowance = |length| Value::new(Kind::Allowance, length);
    let result = allowance(sliding_clearance(diameter));
    let source = Source::new("DIN 7190-1", "one thousandth; the least is our own", Basis::Memory);
    Working::new("Clearance to slide by", "c = d/1000, at least m", result, source)
        .term("d", "joint", Value::new(Kind::Length, diameter))
        .term("m", "least", allowance(LEAST_CLEARANCE))
}

/// What is asked of the heat.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Joint diameter.
    pub diameter: Length,
    /// Interference at 20 °C: the upper end of its `±`, before flattening.
    pub interference: Length,
    /// Clearance wanted while sliding ([`sliding_clearance`]).
    pub clearance: Length,
    /// How the hub grows.
    pub hub: Expansion,
    /// How the shaft grows.
    pub shaft: Expansion,
    /// Shaft temperature when the hub goes on.
    pub shaft_temperature: ThermodynamicTemperature,
    /// What the hub loses between heater and shaft.
    pub loss: TemperatureInterval,
}

/// How hot a hub must be.
#[derive(Clone, Debug, PartialEq)]
pub struct HubHeat {
    /// What was asked.
    pub opening: Opening,
    /// Growth of the shaft from 20 °C.
    pub shaft_growth: Length,
    /// Growth that the bore needs from 20 °C.
    pub bore_growth: Length,
    /// Mean expansion of the hub over that rise.
    pub mean: quantities::TemperatureCoefficient,
    /// Hub at the shaft.
    pub at_shaft: ThermodynamicTemperature,
    /// Hub as it leaves the heater.
    pub from_heater: ThermodynamicTemperature,
}

impl Opening {
    /// How hot the hub must be.
    ///
    /// # Valid
    /// The hub is hot through and through, and evenly; the temperature is at least this.
    /// # Errors
    /// [`HeatError`]: [`HeatError::Open`] when nothing needs to be opened; sizes and temperatures
    /// that are no sound numbers; growth beyond what the expansion is known for.
    /// # Source
    /// DIN 7190-1 (from memory); Bloch, *Improving Machinery Reliability*, Eq. 3-12.
    /// # Example
    /// ```
    /// use mechanics::heat::{Opening, expansion::Expansion};
    /// use quantities::{TemperatureCoefficient, TemperatureInterval, ThermodynamicTemperature};
    /// use uom::si::{f64::Length, length::millimeter, temperature_coefficient::per_kelvin};
    /// use uom::si::{temperature_interval::kelvin, thermodynamic_temperature::degree_celsius};
    /// let steel = Expansion::Constant(TemperatureCoefficient::new::<per_kelvin>(11.5e-6));
    /// let heat = Opening {
    ///     diameter: Length::new::<millimeter>(75.0),
    ///     interference: Length::new::<millimeter>(0.062),
    ///     clearance: Length::new::<millimeter>(0.075),
    ///     hub: steel.clone(),
    ///     shaft: steel,
    ///     shaft_temperature: ThermodynamicTemperature::new::<degree_celsius>(20.0),
    ///     loss: TemperatureInterval::new::<kelvin>(20.0),
    /// }
    /// .hub_heat()?;
    /// assert_eq!(format!("{:.0}", heat.at_shaft.get::<degree_celsius>()), "179");
    /// assert_eq!(format!("{:.0}", heat.from_heater.get::<degree_celsius>()), "199");
    /// # Ok::<(), mechanics::heat::HeatError>(())
    /// ```
    pub fn hub_heat(&self) -> Result<HubHeat, HeatError> {
        self.check()?;
        let shaft_growth = self.shaft.growth(self.diameter, self.shaft_temperature)?;
        let bore_growth = self.interference + self.clearance + shaft_growth;
        let Growth { temperature, mean } = self.hub.reaches(self.diameter, bore_growth)?;
        Ok(HubHeat {
            opening: self.clone(),
            shaft_growth,
            bore_growth,
            mean,
            at_shaft: temperature,
            from_heater: temperature + self.loss,
        })
    }

    fn check(&self) -> Result<(), HeatError> {
        if !is_positive(self.diameter.si()) {
            return Err(HeatError::Diameter(self.diameter));
        }
        if !self.interference.is_finite() {
            return Err(HeatError::Length(self.interference));
        }
        if !(self.clearance.is_finite() && self.clearance.si() >= 0.0) {
            return Err(HeatError::Length(self.clearance));
        }
        let open = self.interference + self.clearance;
        if open.si() <= 0.0 {
            return Err(HeatError::Open(open));
        }
        if !(self.loss.si().is_finite() && self.loss.si() >= 0.0) {
            return Err(HeatError::Interval(self.loss));
        }
        Ok(())
    }

    /// How cold the shaft must be for a hub of this temperature, for heat and cold together or cold
    /// alone (hub at room temperature). The shaft's expansion must be a mean over the chill: that of
    /// steel down to −196 °C is 8.5·10⁻⁶ per K by DIN 7190-1 (from memory).
    ///
    /// # Errors
    /// As [`Opening::hub_heat`].
    pub fn shaft_chill(
        &self,
        hub: ThermodynamicTemperature,
    ) -> Result<ThermodynamicTemperature, HeatError> {
        self.check()?;
        let grown = self.hub.growth(self.diameter, hub)?;
        let growth = grown - self.interference - self.clearance;
        Ok(self.shaft.reaches(self.diameter, growth)?.temperature)
    }

    /// How the temperature of [`Opening::shaft_chill`] was found.
    ///
    /// # Errors
    /// As [`Opening::hub_heat`].
    pub fn chill_working(&self, hub: ThermodynamicTemperature) -> Result<Working, HeatError> {
        let allowance = |length| Value::new(Kind::Allowance, length);
        let temperature = |temperature| Value::new(Kind::Temperature, temperature);
        let grown = self.hub.growth(self.diameter, hub)?;
        let cold = self.shaft_chill(hub)?;
        let reference = ThermodynamicTemperature::from_si(REFERENCE_K);
        let formula = "g = h − i − c\nT = R + g/(a·d)";
        Ok(Working::new("Shaft as cold as", formula, temperature(cold), DIN_7190)
            .term("h", "growth of the hub from 20 °C", allowance(grown))
            .term("i", "interference, upper end", allowance(self.interference))
            .term("c", "clearance to slide by", allowance(self.clearance))
            .term(
                "g",
                "growth left for the shaft",
                allowance(grown - self.interference - self.clearance),
            )
            .term(
                "a",
                "mean expansion of the shaft",
                Value::new(Kind::Expansion, self.shaft.mean(cold)?),
            )
            .term("d", "joint", Value::new(Kind::Length, self.diameter))
            .term("R", "reference temperature", temperature(reference))
            .valid("the shaft cold through and through"))
    }

    /// The largest interference that a hub of this temperature still opens with the clearance.
    ///
    /// # Errors
    /// As [`Opening::hub_heat`].
    pub fn opens(&self, hub: ThermodynamicTemperature) -> Result<Length, HeatError> {
        let shaft = self.shaft.growth(self.diameter, self.shaft_temperature)?;
        Ok(self.hub.growth(self.diameter, hub)? - shaft - self.clearance)
    }
}

impl Opening {
    /// How the interference of [`Opening::opens`] was found.
    ///
    /// # Errors
    /// As [`Opening::hub_heat`].
    pub fn opens_working(&self, hub: ThermodynamicTemperature) -> Result<Working, HeatError> {
        let allowance = |length| Value::new(Kind::Allowance, length);
        let grown = self.hub.growth(self.diameter, hub)?;
        let shaft = self.shaft.growth(self.diameter, self.shaft_temperature)?;
        let result = allowance(self.opens(hub)?);
        Ok(Working::new("Greatest interference that goes on", "i = h − s − c", result, DIN_7190)
            .term("H", "hub at the shaft", Value::new(Kind::Temperature, hub))
            .term("d", "joint", Value::new(Kind::Length, self.diameter))
            .term("h", "growth of the hub from 20 °C", allowance(grown))
            .term("s", "growth of the shaft from 20 °C", allowance(shaft))
            .term("c", "clearance to slide by", allowance(self.clearance))
            .valid("the hub hot through and through, and evenly"))
    }
}

/// What can be done when a hub may not be made as hot as it must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Alternatives {
    /// Hub at the shaft when it leaves the heater at the limit.
    pub hub_at_shaft: ThermodynamicTemperature,
    /// Cool the shaft to this as well; `None` when no cold that is known for it suffices.
    pub shaft_at: Option<ThermodynamicTemperature>,
    /// Or take the interference down to this; `None` when even no interference would not do.
    pub interference_at_most: Option<Length>,
    /// Or slide with this clearance, if it is enough; `None` when nothing would be left.
    pub clearance_left: Option<Length>,
}

/// Whether a hub can be made hot enough.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CanBeDone {
    /// It can, and this much is in hand.
    Yes {
        /// Limit less the temperature from the heater.
        in_hand: TemperatureInterval,
    },
    /// Not by heat alone.
    No(Alternatives),
}

impl HubHeat {
    /// Whether it can be done with the hub no hotter than `limit` as it leaves the heater.
    ///
    /// # Errors
    /// As [`Opening::hub_heat`].
    pub fn can_it_be_done(&self, limit: ThermodynamicTemperature) -> Result<CanBeDone, HeatError> {
        if !is_positive(limit.si()) {
            return Err(HeatError::Temperature(limit));
        }
        let in_hand = limit.si() - self.from_heater.si();
        if in_hand >= 0.0 {
            return Ok(CanBeDone::Yes { in_hand: TemperatureInterval::from_si(in_hand) });
        }
        let hub_at_shaft = limit - self.opening.loss;
        let opens = self.opening.opens(hub_at_shaft)?;
        let above_zero = |length: Length| Some(length).filter(|length| length.si() > 0.0);
        Ok(CanBeDone::No(Alternatives {
            hub_at_shaft,
            shaft_at: self.opening.shaft_chill(hub_at_shaft).ok(),
            interference_at_most: above_zero(opens),
            clearance_left: above_zero(opens + self.opening.clearance - self.opening.interference),
        }))
    }

    /// How the growth that the bore needs was found.
    pub fn growth_working(&self) -> Working {
        let allowance = |length| Value::new(Kind::Allowance, length);
        let result = allowance(self.bore_growth);
        Working::new("Growth that the bore needs", "g = i + c + s", result, DIN_7190)
            .term("i", "interference, upper end", allowance(self.opening.interference))
            .term("c", "clearance to slide by", allowance(self.opening.clearance))
            .term("s", "growth of the shaft from 20 °C", allowance(self.shaft_growth))
    }

    /// How the least temperature at the shaft was found.
    pub fn at_shaft_working(&self) -> Working {
        let result = Value::new(Kind::Temperature, self.at_shaft);
        let rise = TemperatureInterval::from_si(self.at_shaft.si() - REFERENCE_K);
        let reference = ThermodynamicTemperature::from_si(REFERENCE_K);
        Working::new("Hub at the shaft, at least", "r = g/(a·d)\nT = R + r", result, DIN_7190)
            .term("g", "growth that the bore needs", Value::new(Kind::Allowance, self.bore_growth))
            .term("a", "mean expansion of the hub", Value::new(Kind::Expansion, self.mean))
            .term("d", "joint", Value::new(Kind::Length, self.opening.diameter))
            .term("R", "reference temperature", Value::new(Kind::Temperature, reference))
            .term("r", "rise of the hub", Value::new(Kind::TemperatureDifference, rise))
            .valid("the hub hot through and through, and evenly")
    }

    /// How the temperature was found.
    pub fn working(&self) -> Working {
        let kelvin = |interval| Value::new(Kind::TemperatureDifference, interval);
        let allowance = |length| Value::new(Kind::Allowance, length);
        let Opening { diameter, interference, clearance, loss, .. } = self.opening;
        let result = Value::new(Kind::Temperature, self.from_heater);
        let reference = ThermodynamicTemperature::from_si(REFERENCE_K);
        let rise = TemperatureInterval::from_si(self.at_shaft.si() - REFERENCE_K);
        let formula = "g = i + c + s\nr = g/(a·d)\nT = R + r + v";
        Working::new("Hub as it leaves the heater", formula, result, DIN_7190)
            .term("i", "interference, upper end", allowance(interference))
            .term("c", "clearance to slide by", allowance(clearance))
            .term("s", "growth of the shaft from 20 °C", allowance(self.shaft_growth))
            .term("g", "growth that the bore needs", allowance(self.bore_growth))
            .term("d", "joint", Value::new(Kind::Length, diameter))
            .term("a", "mean expansion of the hub", Value::new(Kind::Expansion, self.mean))
            .term("r", "rise of the hub", kelvin(rise))
            .term("R", "reference temperature", Value::new(Kind::Temperature, reference))
            .term("v", "lost on the way", kelvin(loss))
            .valid("the hub hot through and through, and evenly")
    }
}

const DIN_7190: Source = Source::new(
    "DIN 7190-1; Bloch, Improving Machinery Reliability, Eq. 3-12",
    "joining temperature",
    Basis::Memory,
);

/// Energy to heat a hub.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatingEnergy {
    /// Mass of the hub.
    pub mass: Mass,
    /// Its specific heat capacity.
    pub heat_capacity: SpecificHeatCapacity,
    /// Rise.
    pub rise: TemperatureInterval,
    /// Energy that goes into the hub.
    pub energy: Energy,
}

/// Energy that goes into a hub to heat it.
///
/// ```text
/// Q = m·c·ΔT
/// ```
/// # Valid
/// What the heater itself loses comes on top.
/// # Errors
/// [`HeatError::Number`] for a mass or heat capacity not above zero, [`HeatError::Interval`] for a
/// rise below zero.
pub fn heating_energy(
    mass: Mass,
    heat_capacity: SpecificHeatCapacity,
    rise: TemperatureInterval,
) -> Result<HeatingEnergy, HeatError> {
    for number in [mass.si(), heat_capacity.si()] {
        if !is_positive(number) {
            return Err(HeatError::Number(number));
        }
    }
    if !(rise.si().is_finite() && rise.si() >= 0.0) {
        return Err(HeatError::Interval(rise));
    }
    let energy = Energy::from_si(mass.si() * heat_capacity.si() * rise.si());
    Ok(HeatingEnergy { mass, heat_capacity, rise, energy })
}

impl HeatingEnergy {
    /// How the energy was found.
    pub fn working(&self) -> Working {
        let source = Source::new("definition of heat capacity", "", Basis::Computed);
        Working::new(
            "Heat into the hub",
            "Q = m·c·t",
            Value::new(Kind::Energy, self.energy),
            source,
        )
        .term("m", "mass", Value::new(Kind::Mass, self.mass))
        .term("c", "specific heat capacity", Value::new(Kind::HeatCapacity, self.heat_capacity))
        .term("t", "rise", Value::new(Kind::TemperatureDifference, self.rise))
        .valid("what the heater loses comes on top")
    }
}

#[cfg(test)]
mod tests;
