//! How fast a wall may be heated from one side, so that its far side keeps up.
//!
//! ```text
//! D = v·w²/(2·a)      a = k/(ρ·c)      t = r/v
//! ```
//! D difference across the wall once it has settled · v rise a second · w wall · a diffusivity ·
//! r rise · t time of heating

use quantities::{
    Basis, Kind, Length, MassDensity, Physical, Source, SpecificHeatCapacity, TemperatureInterval,
    ThermalConductivity, Time, Value, Working,
};

use super::HeatError;
use crate::is_positive;

/// A wall that is heated evenly on one side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ramp {
    /// Thickness of the wall.
    pub wall: Length,
    /// Its conductivity.
    pub conductivity: ThermalConductivity,
    /// Its heat capacity.
    pub heat_capacity: SpecificHeatCapacity,
    /// Its density.
    pub density: MassDensity,
    /// How much warmer it gets.
    pub rise: TemperatureInterval,
}

const SLAB: Source = Source::new(
    "Carslaw and Jaeger, Conduction of Heat in Solids, 3.8",
    "slab with steady heat on one face, once it has settled",
    Basis::Memory,
);

impl Ramp {
    /// Shortest time of heating that keeps the faces no further apart than this.
    ///
    /// ```text
    /// t = r·w²·ρ·c/(2·k·D)
    /// ```
    /// # Valid
    /// A wall that is thin against its diameter; longer than it takes to settle, w²/a.
    /// # Errors
    /// [`HeatError`] for what is not above zero.
    /// # Source
    /// Carslaw and Jaeger, *Conduction of Heat in Solids*, 3.8; from memory.
    pub fn shortest(&self, apart: TemperatureInterval) -> Result<Time, HeatError> {
        let scale = self.across()?;
        if !is_positive(apart.si()) {
            return Err(HeatError::Interval(apart));
        }
        Ok(Time::from_si(self.rise.si() * scale / apart.si()))
    }

    /// How far apart the faces are when it is heated in this time.
    ///
    /// # Errors
    /// [`HeatError`] for what is not above zero.
    pub fn apart(&self, time: Time) -> Result<TemperatureInterval, HeatError> {
        let scale = self.across()?;
        if !is_positive(time.si()) {
            return Err(HeatError::Number(time.si()));
        }
        Ok(TemperatureInterval::from_si(self.rise.si() * scale / time.si()))
    }

    /// w²·ρ·c/(2·k), in seconds.
    fn across(&self) -> Result<f64, HeatError> {
        let figures = [self.conductivity.si(), self.heat_capacity.si(), self.density.si()];
        if let Some(figure) = figures.into_iter().find(|figure| !is_positive(*figure)) {
            return Err(HeatError::Number(figure));
        }
        if !is_positive(self.wall.si()) {
            return Err(HeatError::Length(self.wall));
        }
        if !is_positive(self.rise.si()) {
            return Err(HeatError::Interval(self.rise));
        }
        let [k, c, density] = figures;
        Ok(self.wall.si() * self.wall.si() * density * c / (2.0 * k))
    }

    /// How the shortest time was found.
    ///
    /// # Errors
    /// As [`Ramp::shortest`].
    pub fn shortest_working(&self, apart: TemperatureInterval) -> Result<Working, HeatError> {
        let result = Value::new(Kind::Minutes, self.shortest(apart)?);
        let working = Working::new("Shortest heating", "t = r·w²·ρ·c/(2·k·D)", result, SLAB);
        Ok(self.terms(working).term("D", "rim and bore apart, at most", difference(apart)))
    }

    /// How far apart the faces are was found.
    ///
    /// # Errors
    /// As [`Ramp::apart`].
    pub fn apart_working(&self, time: Time) -> Result<Working, HeatError> {
        let result = difference(self.apart(time)?);
        let working = Working::new("Rim ahead of the bore", "D = r·w²·ρ·c/(2·k·t)", result, SLAB);
        Ok(self.terms(working).term("t", "time of heating", Value::new(Kind::Minutes, time)))
    }

    fn terms(&self, working: Working) -> Working {
        working
            .term("r", "rise", difference(self.rise))
            .term("w", "thickest wall", Value::new(Kind::Length, self.wall))
            .term("ρ", "density", Value::new(Kind::Density, self.density))
            .term("c", "heat capacity", Value::new(Kind::HeatCapacity, self.heat_capacity))
            .term("k", "conductivity", Value::new(Kind::Conductivity, self.conductivity))
            .valid("heat evenly all round; a wall that is thin against its diameter")
    }
}

fn difference(kelvins: TemperatureInterval) -> Value {
    Value::new(Kind::TemperatureDifference, kelvins)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A slab with steady heat F on one face and none through the other: Carslaw and Jaeger, 3.8,
    /// give F·l/K·((3·x² − l²)/(6·l²)) over the mean, which rises by F/(ρ·c·l); from memory. With
    /// K = 50 W/(m·K), ρ·c = 3.6 MJ/(m³·K), l = 50 mm, F = 72 kW/m²: 0.4 K/s, and the faces 36 K apart.
    #[test]
    fn a_slab_is_as_far_apart_as_the_book_has_it() {
        let (flux, conducts, long) = (72e3, 50.0, 0.05);
        let at =
            |x: f64| flux * long / conducts * (3.0 * x * x - long * long) / (6.0 * long * long);
        let ramp = Ramp {
            wall: Length::from_si(long),
            conductivity: ThermalConductivity::from_si(conducts),
            heat_capacity: SpecificHeatCapacity::from_si(450.0),
            density: MassDensity::from_si(8000.0),
            rise: TemperatureInterval::from_si(120.0),
        };
        let rate = flux / (8000.0 * 450.0 * long);
        let time = Time::from_si(120.0 / rate);
        let apart = ramp.apart(time).unwrap();
        assert!((apart.si() - (at(long) - at(0.0))).abs() < 1e-9, "{apart:?}");
        let back = ramp.shortest(apart).unwrap();
        assert!((back.si() - time.si()).abs() < 1e-9);
        assert!(ramp.shortest(TemperatureInterval::from_si(0.0)).is_err());
        assert!(Ramp { wall: Length::from_si(-0.1), ..ramp }.apart(time).is_err());
    }
}
