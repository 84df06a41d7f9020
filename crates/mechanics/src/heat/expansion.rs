//! How much a diameter grows from 20 °C, and how hot it must be for a growth.

use quantities::{Length, Physical, TemperatureCoefficient, ThermodynamicTemperature};
use tables::materials::{steel_contraction, steel_expansion};

use super::HeatError;
use crate::is_positive;
use crate::size::correction::REFERENCE_K;

/// Mean expansion of a metal from 20 °C.
#[derive(Clone, Debug, PartialEq)]
pub enum Expansion {
    /// One mean coefficient, whatever the temperature.
    Constant(TemperatureCoefficient),
    /// Carbon and low-alloy steel, whose mean coefficient rises with temperature
    /// (`tables::materials::steel_expansion`, and `steel_contraction` below 20 °C, down to −196 °C).
    Steel,
    /// Mean coefficients by temperature.
    Table(Rows),
}

/// Mean coefficients from 20 °C to temperatures that rise, straight lines between them.
///
/// Tables mostly begin at 100 °C: the first coefficient then serves from 0 °C on. Beyond its ends a
/// table says nothing.
#[derive(Clone, Debug, PartialEq)]
pub struct Rows(Vec<(ThermodynamicTemperature, TemperatureCoefficient)>);

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
/// The first coefficient of a table serves down to here.
const FREEZING_K: f64 = 273.15;

impl Rows {
    /// A table, in whatever order its rows are given.
    ///
    /// # Errors
    /// [`HeatError::Temperature`] where two rows have one temperature, or a hotter one would be
    /// smaller; [`HeatError::Number`] for no rows, and for a coefficient that is not above zero.
    /// # Example
    /// ```
    /// use mechanics::heat::expansion::{Expansion, Rows};
    /// use quantities::{Length, Physical, TemperatureCoefficient, ThermodynamicTemperature};
    /// use uom::si::thermodynamic_temperature::degree_celsius;
    /// let celsius = ThermodynamicTemperature::new::<degree_celsius>;
    /// let row = |at, mean| (celsius(at), TemperatureCoefficient::from_si(mean));
    /// let metal = Expansion::Table(Rows::new(vec![row(100.0, 11.0e-6), row(200.0, 12.0e-6)])?);
    /// let grown = metal.growth(Length::from_si(0.1), celsius(150.0))?;
    /// assert_eq!(format!("{:.1}", grown.si() * 1e6), "149.5"); // 100 mm · 11.5·10⁻⁶ · 130 K
    /// # Ok::<(), mechanics::heat::HeatError>(())
    /// ```
    pub fn new(
        mut rows: Vec<(ThermodynamicTemperature, TemperatureCoefficient)>,
    ) -> Result<Self, HeatError> {
        rows.sort_by(|a, b| a.0.si().total_cmp(&b.0.si()));
        let first = *rows.first().ok_or(HeatError::Number(0.0))?;
        for (at, mean) in &rows {
            if !is_positive(at.si()) {
                return Err(HeatError::Temperature(*at));
            }
            if !is_positive(mean.si()) {
                return Err(HeatError::Number(mean.si()));
            }
        }
        if first.0.si() > FREEZING_K {
            rows.insert(0, (ThermodynamicTemperature::from_si(FREEZING_K), first.1));
        }
        let strain = |row: &(ThermodynamicTemperature, TemperatureCoefficient)| {
            row.1.si() * (row.0.si() - REFERENCE_K)
        };
        for pair in rows.windows(2) {
            let rises = pair[0].0 < pair[1].0 && strain(&pair[0]) < strain(&pair[1]);
            if !rises {
                return Err(HeatError::Temperature(pair[1].0));
            }
        }
        Ok(Self(rows))
    }

    /// The rows, coldest first.
    pub fn rows(&self) -> &[(ThermodynamicTemperature, TemperatureCoefficient)] {
        &self.0
    }

    fn ends_k(&self) -> (f64, f64) {
        let at = |row: Option<&(ThermodynamicTemperature, TemperatureCoefficient)>| {
            row.map_or(f64::NAN, |row| row.0.si())
        };
        (at(self.0.first()), at(self.0.last()))
    }

    fn mean(&self, to: ThermodynamicTemperature) -> Option<TemperatureCoefficient> {
        // A temperature converted from another unit must not slip over an end by a rounding error.
        let (first, last) = self.ends_k();
        let kelvin = to.si();
        if !(first - 1e-6 <= kelvin && kelvin <= last + 1e-6) {
            return None;
        }
        let kelvin = kelvin.clamp(first, last);
        let between = self.0.windows(2).find(|pair| kelvin <= pair[1].0.si());
        let Some([from, to]) = between else { return self.0.last().map(|row| row.1) };
        let share = (kelvin - from.0.si()) / (to.0.si() - from.0.si());
        let mean = from.1.si() + share * (to.1.si() - from.1.si());
        Some(TemperatureCoefficient::from_si(mean))
    }
}

impl Expansion {
    /// Mean coefficient from 20 °C to a temperature.
    ///
    /// # Errors
    /// [`HeatError::Temperature`] outside the range, [`HeatError::Number`] for a coefficient that is
    /// not above zero.
    pub fn mean(&self, to: ThermodynamicTemperature) -> Result<TemperatureCoefficient, HeatError> {
        if !is_positive(to.si()) {
            return Err(HeatError::Temperature(to));
        }
        match self {
            Self::Constant(mean) if is_positive(mean.si()) => Ok(*mean),
            Self::Constant(mean) => Err(HeatError::Number(mean.si())),
            Self::Steel if to.si() < REFERENCE_K => {
                steel_contraction(to).ok_or(HeatError::Temperature(to))
            }
            Self::Steel => steel_expansion(to).ok_or(HeatError::Temperature(to)),
            Self::Table(rows) => rows.mean(to).ok_or(HeatError::Temperature(to)),
        }
    }

    /// Growth of a diameter from 20 °C; negative when it is colder.
    ///
    /// # Errors
    /// As [`Expansion::mean`].
    pub fn growth(
        &self,
        diameter: Length,
        to: ThermodynamicTemperature,
    ) -> Result<Length, HeatError> {
        Ok(diameter * (self.mean(to)?.si() * (to.si() - REFERENCE_K)))
    }

    /// The temperature at which a diameter has grown so much (shrunk, when negative).
    ///
    /// # Errors
    /// [`HeatError::BeyondRange`] when no temperature that the expansion is known for does it.
    pub fn reaches(&self, diameter: Length, growth: Length) -> Result<Growth, HeatError> {
        let beyond = HeatError::BeyondRange(growth);
        if !(growth.is_finite() && is_positive(diameter.si())) {
            return Err(HeatError::Length(growth));
        }
        let strain = growth.si() / diameter.si();
        let kelvin = match self {
            Self::Constant(mean) if is_positive(mean.si()) => REFERENCE_K + strain / mean.si(),
            Self::Constant(mean) => return Err(HeatError::Number(mean.si())),
            Self::Steel => self.halved(strain, (COLDEST_STEEL_K, HOTTEST_STEEL_K)).ok_or(beyond)?,
            Self::Table(rows) => self.halved(strain, rows.ends_k()).ok_or(beyond)?,
        };
        let temperature = ThermodynamicTemperature::from_si(kelvin);
        let mean = self.mean(temperature).map_err(|_| beyond)?;
        Ok(Growth { temperature, mean })
    }

    /// Halves a range of temperatures: growth only rises with temperature.
    fn halved(&self, strain: f64, (mut low, mut high): (f64, f64)) -> Option<f64> {
        let strain_at = |kelvin: f64| {
            let to = ThermodynamicTemperature::from_si(kelvin);
            self.mean(to).ok().map(|mean| mean.si() * (kelvin - REFERENCE_K))
        };
        if !(strain_at(low)? <= strain && strain <= strain_at(high)?) {
            return None;
        }
        for _ in 0..60 {
            let middle = f64::midpoint(low, high);
            if strain_at(middle)? < strain { low = middle } else { high = middle }
        }
        Some(f64::midpoint(low, high))
    }
}
