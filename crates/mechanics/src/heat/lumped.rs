//! A body that is as warm inside as outside: for checking, and for nothing else.
//!
//! ```text
//! τ = ρ·c·V/(h·A)      t = τ·ln((T0 − Ta)/(T1 − Ta))      Bi = h·V/(A·k)
//! ```
//! A hub on a cold shaft is no such body: metal touching metal takes its heat in seconds, while
//! the lump in still air cools for an hour. So no time in hand is ever taken from here.

use quantities::{
    Energy, Length, Mass, MassDensity, Physical, SpecificHeatCapacity, ThermalConductivity,
    ThermodynamicTemperature, Time,
};

use uom::si::{area::square_meter, f64::Area};

use super::HeatError;
use crate::is_positive;

/// What a body is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Substance {
    /// Density.
    pub density: MassDensity,
    /// Specific heat capacity.
    pub heat_capacity: SpecificHeatCapacity,
    /// Conductivity.
    pub conductivity: ThermalConductivity,
}

/// Volume and surface of a body, in SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    volume_m3: f64,
    area_m2: f64,
}

impl Body {
    /// A ball.
    pub fn ball(diameter: Length) -> Self {
        let d = diameter.si();
        let pi = std::f64::consts::PI;
        Self { volume_m3: pi / 6.0 * d.powi(3), area_m2: pi * d * d }
    }

    /// A ring with its ends and outside bare.
    pub fn ring(outside: Length, bore: Length, length: Length, bore_surface: BoreSurface) -> Self {
        let (big, small, length) = (outside.si(), bore.si(), length.si());
        let pi = std::f64::consts::PI;
        let face = pi / 4.0 * (big * big - small * small);
        let inside = match bore_surface {
            BoreSurface::Bare => pi * small * length,
            BoreSurface::Covered => 0.0,
        };
        Self { volume_m3: face * length, area_m2: 2.0 * face + pi * big * length + inside }
    }
}

/// Whether the bore gives off heat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BoreSurface {
    /// It does.
    Bare,
    /// It does not.
    Covered,
}

/// How a lump changes its temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lumped {
    /// Mass.
    pub mass: Mass,
    /// Surface.
    pub area: Area,
    /// Time constant.
    pub time_constant: Time,
    /// Biot number on volume over surface: below 0.1 the lump is a fair picture.
    pub biot: f64,
    /// Time from the first temperature to the second.
    pub time: Time,
    /// Heat given off (taken up, when negative) on the way to the surroundings' temperature.
    pub whole_heat: Energy,
}

/// Time for a lump to go from one temperature to another.
///
/// # Valid
/// Bi below 0.1, one film coefficient everywhere, surroundings that stay as they are.
/// # Errors
/// [`HeatError`] for what is not above zero, or a second temperature that is not between the first
/// and the surroundings.
/// # Source
/// Incropera et al., *Fundamentals of Heat and Mass Transfer*, "The lumped capacitance method".
pub fn lumped_cooling(
    body: Body,
    substance: Substance,
    film_w_m2k: f64,
    from: ThermodynamicTemperature,
    to: ThermodynamicTemperature,
    surroundings: ThermodynamicTemperature,
) -> Result<Lumped, HeatError> {
    let Substance { density, heat_capacity, conductivity } = substance;
    let Body { volume_m3, area_m2 } = body;
    let positive =
        [density.si(), heat_capacity.si(), conductivity.si(), film_w_m2k, volume_m3, area_m2];
    if let Some(&number) = positive.iter().find(|number| !is_positive(**number)) {
        return Err(HeatError::Number(number));
    }
    let ratio = (from.si() - surroundings.si()) / (to.si() - surroundings.si());
    if !(ratio >= 1.0 && ratio.is_finite()) {
        return Err(HeatError::Temperature(to));
    }
    let mass = density.si() * volume_m3;
    let capacity = mass * heat_capacity.si();
    let constant = capacity / (film_w_m2k * area_m2);
    Ok(Lumped {
        mass: Mass::from_si(mass),
        area: Area::new::<square_meter>(area_m2),
        time_constant: Time::from_si(constant),
        biot: film_w_m2k * volume_m3 / (area_m2 * conductivity.si()),
        time: Time::from_si(constant * ratio.ln()),
        whole_heat: Energy::from_si(capacity * (from.si() - surroundings.si())),
    })
}
