//! What hub and shaft are made of, as heat and squeeze see it.

use quantities::{
    MassDensity, Physical, Pressure, SpecificHeatCapacity, TemperatureCoefficient,
    ThermalConductivity, ThermodynamicTemperature,
};
use tables::materials::{Elastic, Material, steel_contraction, steel_expansion};
use uom::si::thermodynamic_temperature::degree_fahrenheit;

use crate::ThermalError;
use crate::check::positive;
use crate::kernel::conduction::Conductor;
use crate::kernel::elastic::Stiffness;
use crate::kernel::growth::{Curve, Growth, REFERENCE_K};

/// A metal. Conductivity and heat capacity are one figure each, to be taken at the middle of the
/// temperatures met.
///
/// # Source
/// Of a [`Material`], `tables::materials` with the sources named there: figures near room
/// temperature. Carbon steel by EN 1993-1-2, 3.4.1, conducts 7 % less and stores 8 % more at
/// 100 °C than at 20 °C, which lengthens times by as much.
#[derive(Clone, Debug, PartialEq)]
pub struct Metal {
    /// Thermal conductivity.
    pub conductivity: ThermalConductivity,
    /// Specific heat capacity.
    pub heat_capacity: SpecificHeatCapacity,
    /// Density.
    pub density: MassDensity,
    /// Expansion.
    pub expansion: Expansion,
    /// Stiffness, taken as that of room temperature (steel loses 5 % by 200 °C).
    pub elastic: Elastic,
    /// Least yield strength; `None` when none is known, and then none is watched.
    pub yield_strength: Option<Pressure>,
    /// The highest temperature that a hub of it may have; `None` when none is known.
    pub heating_limit: Option<ThermodynamicTemperature>,
}

/// Mean expansion from 20 °C.
#[derive(Clone, Debug, PartialEq)]
pub enum Expansion {
    /// One mean coefficient, whatever the temperature.
    Constant(TemperatureCoefficient),
    /// Carbon and low-alloy steel, whose mean coefficient rises with temperature
    /// (`tables::materials::steel_expansion`, and `steel_contraction` below 20 °C, down to −196 °C).
    Steel,
    /// Mean coefficients from 20 °C to temperatures that rise; straight lines between them.
    Table(Vec<(ThermodynamicTemperature, TemperatureCoefficient)>),
}

impl From<&Material> for Metal {
    fn from(material: &Material) -> Self {
        Self {
            conductivity: material.conductivity,
            heat_capacity: material.heat_capacity,
            density: material.density,
            expansion: Expansion::Constant(material.expansion),
            elastic: material.elastic,
            yield_strength: material.yield_strength,
            heating_limit: material.heating_limit,
        }
    }
}

impl Metal {
    /// Refuses figures that no metal has.
    pub(crate) fn check(&self) -> Result<(), ThermalError> {
        positive("conductivity", self.conductivity.si())?;
        positive("heat capacity", self.heat_capacity.si())?;
        positive("density", self.density.si())?;
        positive("modulus", self.elastic.young.si())?;
        let poisson = self.elastic.poisson;
        if !(0.0..0.5).contains(&poisson) {
            return Err(ThermalError::Figure { what: "Poisson’s ratio", value: poisson });
        }
        let rows = self.expansion.rows();
        let rising = rows.windows(2).all(|pair| pair[0].0 < pair[1].0);
        if rows.is_empty() || !rising {
            return Err(ThermalError::Figure { what: "expansion’s rows", value: f64::NAN });
        }
        rows.iter().try_for_each(|(_, mean)| positive("expansion", *mean))
    }

    pub(crate) fn conductor(&self) -> Conductor {
        Conductor {
            conductivity_w_mk: self.conductivity.si(),
            capacity_j_m3k: self.density.si() * self.heat_capacity.si(),
        }
    }

    pub(crate) fn stiffness(&self) -> Stiffness {
        Stiffness { young_pa: self.elastic.young.si(), poisson: self.elastic.poisson }
    }

    /// Growth with the coefficient multiplied by `factor`.
    pub(crate) fn growth(&self, factor: f64) -> Growth {
        Growth { mean_per_k: Curve::new(self.expansion.rows()), factor }
    }
}

impl Expansion {
    fn rows(&self) -> Vec<(f64, f64)> {
        match self {
            Self::Constant(mean) => vec![(REFERENCE_K, mean.si())],
            Self::Steel => steel_rows(),
            Self::Table(rows) => rows.iter().map(|(at, mean)| (at.si(), mean.si())).collect(),
        }
    }

    /// Refuses a temperature that the coefficients do not reach.
    pub(crate) fn reaches(&self, kelvin: f64) -> Result<(), ThermalError> {
        let rows = self.rows();
        // A temperature converted from another unit must not slip over an end by a rounding error.
        let first = rows.first().map(|row| row.0 - 1e-6);
        let last = rows.last().map(|row| row.0 + 1e-6);
        let reached = match self {
            Self::Constant(_) => kelvin > 0.0,
            Self::Steel | Self::Table(_) => first <= Some(kelvin) && Some(kelvin) <= last,
        };
        if reached && kelvin.is_finite() {
            Ok(())
        } else {
            Err(ThermalError::Temperature(ThermodynamicTemperature::from_si(kelvin)))
        }
    }
}

/// Two rows for the cold, then those of the table as it is printed: every 50 °F from 100 °F on.
fn steel_rows() -> Vec<(f64, f64)> {
    let cold = [77.15, 223.15].map(ThermodynamicTemperature::from_si);
    let cold = cold.into_iter().filter_map(|at| Some((at.si(), steel_contraction(at)?.si())));
    let printed = std::iter::once(70.0).chain((0..=18).map(|k| 100.0 + 50.0 * f64::from(k)));
    let warm = printed.filter_map(|fahrenheit| {
        // A hair inside the table, whose ends are given in whole degrees.
        let at = ThermodynamicTemperature::new::<degree_fahrenheit>(fahrenheit.min(998.5));
        steel_expansion(at).map(|mean| (at.si(), mean.si()))
    });
    cold.chain(warm).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use tables::materials::material;
    use uom::si::thermodynamic_temperature::degree_celsius;

    fn metal(expansion: Expansion) -> Metal {
        Metal { expansion, ..Metal::from(material("steel").unwrap()) }
    }

    /// ASME BPVC II-D (2001), Table TE-1, group 1, coefficient C: 1.9 in per 100 ft at 300 °F,
    /// printed to 0.1; with half the last digit of coefficient B, 0.05·10⁻⁶ · 230 · 1200, beside.
    #[test]
    fn steel_grows_as_the_code_prints() {
        let growth = metal(Expansion::Steel).growth(1.0);
        let from_70 = |fahrenheit: f64| {
            let at = |f: f64| ThermodynamicTemperature::new::<degree_fahrenheit>(f).si();
            (growth.strain(at(fahrenheit)) - growth.strain(at(70.0))) * 1200.0
        };
        for (fahrenheit, inches) in [(150.0, 0.6), (300.0, 1.9), (500.0, 3.7), (750.0, 6.3)] {
            let half_digits = 0.05 + 0.05e-6 * (fahrenheit - 70.0) * 1200.0;
            let found = from_70(fahrenheit);
            assert!((found - inches).abs() <= half_digits, "{fahrenheit} °F: {found} for {inches}");
        }
    }

    #[test]
    fn beyond_its_rows_an_expansion_is_refused() {
        let kelvin = |c: f64| ThermodynamicTemperature::new::<degree_celsius>(c).si();
        assert!(Expansion::Steel.reaches(kelvin(-196.0)).is_ok());
        assert!(Expansion::Steel.reaches(kelvin(-200.0)).is_err());
        assert!(Expansion::Steel.reaches(kelvin(530.0)).is_ok());
        assert!(Expansion::Steel.reaches(kelvin(560.0)).is_err());
        assert!(Expansion::Steel.reaches(f64::NAN).is_err());
        let mean = TemperatureCoefficient::from_si(11e-6);
        let at = |c: f64| (ThermodynamicTemperature::new::<degree_celsius>(c), mean);
        let table = Expansion::Table(vec![at(20.0), at(200.0)]);
        assert!(table.reaches(kelvin(150.0)).is_ok() && table.reaches(kelvin(201.0)).is_err());
        assert!(metal(Expansion::Table(vec![at(200.0), at(20.0)])).check().is_err());
        assert!(metal(Expansion::Table(vec![])).check().is_err());
        assert!(metal(table).check().is_ok());
    }
}
