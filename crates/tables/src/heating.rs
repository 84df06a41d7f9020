//! Heating a hub and chilling a shaft: temperatures in use, soaking, oil baths, coolants.
//!
//! Not here: how hot this hub must be and how long it stays loose (`mechanics`); what its material
//! stands ([`crate::materials`]) or its seals ([`crate::seals`]).

use quantities::{Basis, Length, Source, TemperatureInterval, ThermodynamicTemperature, Time};
use uom::si::f64::Velocity;
use uom::si::velocity::millimeter_per_minute;

use crate::si::{celsius, kelvins};

/// The temperature that hub instructions usually name.
pub const USUAL: ThermodynamicTemperature = celsius(135.0);
/// Where [`USUAL`] and the soaking come from.
pub const INSTRUCTIONS: Source = Source::common_practice("instructions for interference-fit hubs");

/// Least flash point of the oil of a bath at 135 °C.
pub const FLASH_POINT: ThermodynamicTemperature = celsius(177.0);
/// The bath stays at least so far below the flash point of its oil.
pub const FLASH_MARGIN: TemperatureInterval = kelvins(30.0);
/// Where [`FLASH_MARGIN`] comes from.
pub const FLASH_MARGIN_SOURCE: Source = Source::new("common practice", "oil baths", Basis::Memory);

/// Dry ice.
pub const DRY_ICE: ThermodynamicTemperature = celsius(-78.0);
/// Liquid nitrogen.
pub const LIQUID_NITROGEN: ThermodynamicTemperature = celsius(-196.0);
/// Where the coolants' temperatures come from.
pub const COOLANTS: Source = Source::new("general physical data", "", Basis::Memory);

/// How a hub is heated through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bath {
    /// In an oven.
    Oven,
    /// In hot oil.
    Oil,
}

/// How long to soak a hub of that wall, by instruction sheets: 3 min a millimetre in an oven, 6 in
/// oil. `None` unless the wall is a positive length.
///
/// # Source
/// [`INSTRUCTIONS`].
/// # Example
/// ```
/// use quantities::Length;
/// use tables::heating::{Bath, soak};
/// use uom::si::{length::millimeter, time::minute};
/// let time = soak(Bath::Oven, Length::new::<millimeter>(40.0)).unwrap();
/// assert_eq!(time.get::<minute>().round(), 120.0);
/// ```
pub fn soak(bath: Bath, wall: Length) -> Option<Time> {
    let minutes_a_millimetre = match bath {
        Bath::Oven => 3.0,
        Bath::Oil => 6.0,
    };
    let usable = wall.is_finite() && wall > Length::default();
    usable.then(|| wall / Velocity::new::<millimeter_per_minute>(1.0 / minutes_a_millimetre))
}
