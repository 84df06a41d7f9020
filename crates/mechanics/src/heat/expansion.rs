//! How much a diameter grows from 20 °C, and how hot it must be for a growth.

use quantities::{Length, Physical, TemperatureCoefficient, ThermodynamicTemperature};
use tables::materials::{steel_contraction, steel_expansion};

use super::HeatError;
use crate::is_positive;
use crate::size::correction::REFERENCE_K;

/// Mean expansion of a metal from 20 °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Expansion {
    /// One mean coefficient, whatever the temperature.
    Constant(TemperatureCoefficient),
    /// Carbon and low-alloy steel, whose mean coefficient rises with temperature
    /// (`tables::materials::steel_expansion`, and `steel_contraction` below 20 °C, down to −196 °C).
    Steel,
}

/// A temperature and the mean expansion from 20 °C to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Growth {
    /// The temperature.
    pub temperature: ThermodynamicTemperature,
    /// Mean expansion from 20 °C.
    pub mean: TemperatureCoefficient,
}

/// Liquid nitrogen.
const COLDEST_STEEL_K: f64 = REFERENCE_K - 216.0;
/// Where the table ends.
const HOTTEST_STEEL_K: f64 = 273.15 + 537.0;

impl Expansion {
    /// Mean coefficient from 20 °C to a temperature.
    ///
    /// # Errors
    /// [`HeatError::Temperature`] outside the range, [`HeatError::Number`] for a coefficient that is
    /// not above zero.
    pub fn mean(self, to: ThermodynamicTemperature) -> Result<TemperatureCoefficient, HeatError> {
        if !is_positive(to.si()) {
            return Err(HeatError::Temperature(to));
        }
        match self {
            Self::Constant(mean) if is_positive(mean.si()) => Ok(mean),
            Self::Constant(mean) => Err(HeatError::Number(mean.si())),
            Self::Steel if to.si() < REFERENCE_K => {
                steel_contraction(to).ok_or(HeatError::Temperature(to))
            }
            Self::Steel => steel_expansion(to).ok_or(HeatError::Temperature(to)),
        }
    }

    /// Growth of a diameter from 20 °C; negative when it is colder.
    ///
    /// # Errors
    /// As [`Expansion::mean`].
    pub fn growth(
        self,
        diameter: Length,
        to: ThermodynamicTemperature,
    ) -> Result<Length, HeatError> {
        Ok(diameter * (self.mean(to)?.si() * (to.si() - REFERENCE_K)))
    }

    /// The temperature at which a diameter has grown so much (shrunk, when negative).
    ///
    /// # Errors
    /// [`HeatError::BeyondRange`] when no temperature that the expansion is known for does it.
    pub fn reaches(self, diameter: Length, growth: Length) -> Result<Growth, HeatError> {
        let beyond = HeatError::BeyondRange(growth);
        if !(growth.is_finite() && is_positive(diameter.si())) {
            return Err(HeatError::Length(growth));
        }
        let strain = growth.si() / diameter.si();
        let kelvin = match self {
            Self::Constant(mean) if is_positive(mean.si()) => REFERENCE_K + strain / mean.si(),
            Self::Constant(mean) => return Err(HeatError::Number(mean.si())),
            Self::Steel => steel_reaches(strain).ok_or(beyond)?,
        };
        let temperature = ThermodynamicTemperature::from_si(kelvin);
        let mean = self.mean(temperature).map_err(|_| beyond)?;
        Ok(Growth { temperature, mean })
    }
}

/// Halves the table's range: growth only rises with temperature.
fn steel_reaches(strain: f64) -> Option<f64> {
    let strain_at = |kelvin: f64| {
        let to = ThermodynamicTemperature::from_si(kelvin);
        Expansion::Steel.mean(to).ok().map(|mean| mean.si() * (kelvin - REFERENCE_K))
    };
    let (mut low, mut high) = (COLDEST_STEEL_K, HOTTEST_STEEL_K);
    if !(strain_at(low)? <= strain && strain <= strain_at(high)?) {
        return None;
    }
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if strain_at(middle)? < strain { low = middle } else { high = middle }
    }
    Some(f64::midpoint(low, high))
}
