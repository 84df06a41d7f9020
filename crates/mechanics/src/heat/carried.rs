//! What a hub loses in the air between heater and shaft.
//!
//! ```text
//! h = hc + ε·σ·(T² + Ta²)·(T + Ta)      r = (T − Ta)·(e^(h·A·t/(m·c)) − 1)
//! ```
//! T at the shaft · Ta air · A all of its surface · m·c its heat capacity · t time on the way
//!
//! On its way the hub touches nothing, so that it is as warm inside as outside: h·V/(A·k) is a
//! hundredth. Once it is on the shaft it is no such body ([`super::lumped`]).

use std::f64::consts::PI;

use quantities::{
    Basis, HeatTransfer, Kind, Length, Mass, Physical, Source, SpecificHeatCapacity,
    TemperatureInterval, ThermodynamicTemperature, Time, Value, Working,
};
use uom::si::{area::square_meter, f64::Area};

use super::HeatError;
use crate::{Slice, is_positive};

const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;

/// A hub on its way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Carried {
    /// Its surface, bore and all.
    pub surface: Area,
    /// Its mass.
    pub mass: Mass,
    /// What it stores.
    pub heat_capacity: SpecificHeatCapacity,
    /// Convection round it.
    pub convection: HeatTransfer,
    /// Emissivity of its surface.
    pub emissivity: f64,
    /// The air.
    pub air: ThermodynamicTemperature,
    /// How long it is on its way.
    pub time: Time,
}

/// Surface of a hub of slices around one bore: outside, bore, ends and steps.
pub fn surface(bore: Length, slices: &[Slice]) -> Area {
    let disc = |diameter: Length| PI / 4.0 * diameter.si().powi(2);
    let around = |slice: &Slice| PI * (slice.outside + bore).si() * slice.length.si();
    let steps = slices.windows(2).map(|pair| (disc(pair[0].outside) - disc(pair[1].outside)).abs());
    let ends = [slices.first(), slices.last()].into_iter().flatten();
    let ends = ends.map(|slice| disc(slice.outside) - disc(bore));
    let whole: f64 = slices.iter().map(around).chain(steps).chain(ends).sum();
    Area::new::<square_meter>(whole)
}

impl Carried {
    /// What it loses, when it is to come to the shaft this warm; nothing where it is no warmer than the
    /// air.
    ///
    /// # Valid
    /// Some minutes; the film is that of the temperature at the shaft, so a little low.
    /// # Errors
    /// [`HeatError::Number`] for what is not above zero, [`HeatError::Temperature`] for a temperature
    /// that is none.
    /// # Source
    /// Incropera et al., *Fundamentals of Heat and Mass Transfer*, "The lumped capacitance method".
    pub fn loss(
        &self,
        at_shaft: ThermodynamicTemperature,
    ) -> Result<TemperatureInterval, HeatError> {
        let over = at_shaft.si() - self.air.si();
        if !is_positive(at_shaft.si()) || !over.is_finite() {
            return Err(HeatError::Temperature(at_shaft));
        }
        let times = self.times(at_shaft);
        if !(times.is_finite() && times >= 1.0) {
            return Err(HeatError::Number(times));
        }
        Ok(TemperatureInterval::from_si(over.max(0.0) * (times - 1.0)))
    }

    fn times(&self, at_shaft: ThermodynamicTemperature) -> f64 {
        let seconds =
            self.mass.si() * self.heat_capacity.si() / (self.film(at_shaft) * self.surface.value);
        (self.time.si() / seconds).exp()
    }

    fn film(&self, at: ThermodynamicTemperature) -> f64 {
        let (hub, air) = (at.si(), self.air.si());
        let radiated = STEFAN_BOLTZMANN * (hub * hub + air * air) * (hub + air);
        self.convection.si() + self.emissivity * radiated
    }

    /// How the loss was found.
    ///
    /// # Errors
    /// As [`Carried::loss`].
    pub fn working(&self, at_shaft: ThermodynamicTemperature) -> Result<Working, HeatError> {
        let loss = Value::new(Kind::TemperatureDifference, self.loss(at_shaft)?);
        let over = TemperatureInterval::from_si((at_shaft.si() - self.air.si()).max(0.0));
        let film = HeatTransfer::from_si(self.film(at_shaft));
        let source = Source::new(
            "Incropera, Fundamentals of Heat and Mass Transfer",
            "the lumped capacitance method; black-body radiation",
            Basis::Memory,
        );
        Ok(Working::new(
            "Lost on the way to the shaft",
            "k = e^(h·A·t/(m·c))\nr = D·(k − 1)",
            loss,
            source,
        )
        .term("D", "hub at the shaft over the air", Value::new(Kind::TemperatureDifference, over))
        .term(
            "k",
            "what that is at the heater, as a part of it",
            Value::number(self.times(at_shaft)),
        )
        .term("h", "to the air, radiation with it", Value::new(Kind::HeatTransfer, film))
        .term("A", "surface of the hub", Value::new(Kind::Area, self.surface))
        .term("t", "on the way", Value::new(Kind::Time, self.time))
        .term("m", "mass", Value::new(Kind::Mass, self.mass))
        .term("c", "heat capacity", Value::new(Kind::HeatCapacity, self.heat_capacity))
        .valid("carried through air, touching nothing that is cold"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::lumped::{Body, BoreSurface, Substance, lumped_cooling};
    use quantities::{MassDensity, ThermalConductivity};

    fn mm(mm: f64) -> Length {
        Length::from_si(mm / 1e3)
    }

    fn kelvin(kelvin: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::from_si(kelvin)
    }

    /// From the heater's temperature down to the shaft's takes just the time on the way, by the lump
    /// of the textbook; and a flange's step and faces are counted once.
    #[test]
    fn it_loses_what_the_lump_loses_in_that_time() {
        let slices = [Slice { length: mm(90.0), outside: mm(130.0) }];
        let body = Body::ring(mm(130.0), mm(80.0), mm(90.0), BoreSurface::Bare);
        let substance = Substance {
            density: MassDensity::from_si(7850.0),
            heat_capacity: SpecificHeatCapacity::from_si(470.0),
            conductivity: ThermalConductivity::from_si(50.0),
        };
        let film = 12.0;
        let whole =
            lumped_cooling(body, substance, film, kelvin(500.0), kelvin(450.0), kelvin(293.15))
                .unwrap();
        let carried = Carried {
            surface: surface(mm(80.0), &slices),
            mass: whole.mass,
            heat_capacity: substance.heat_capacity,
            convection: HeatTransfer::from_si(film),
            emissivity: 0.0,
            air: kelvin(293.15),
            time: whole.time,
        };
        assert!((carried.surface.value / whole.area.value - 1.0).abs() < 1e-12);
        assert!((carried.loss(kelvin(450.0)).unwrap().si() - 50.0).abs() < 1e-9);
        let black = Carried { emissivity: 0.6, ..carried };
        assert!(black.loss(kelvin(450.0)).unwrap() > carried.loss(kelvin(450.0)).unwrap());
        assert!(carried.loss(kelvin(290.0)).unwrap().si().abs() < 1e-12, "no warmer than the air");
        let cut = [30.0, 60.0].map(|length| Slice { length: mm(length), outside: mm(130.0) });
        assert!((surface(mm(80.0), &cut).value / carried.surface.value - 1.0).abs() < 1e-12);
    }
}
