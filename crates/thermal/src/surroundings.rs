//! Air round hub and shaft.

use quantities::{Physical, ThermodynamicTemperature};
use uom::si::f64::HeatTransfer;

use crate::ThermalError;
use crate::check::{not_negative, share};
use crate::kernel::case::Film;

/// Air, and how a surface loses heat to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Temperature of the air and of what the surface sees.
    pub temperature: ThermodynamicTemperature,
    /// Convection.
    pub convection: HeatTransfer,
    /// Emissivity of the surface.
    pub emissivity: f64,
}

/// Air round the hub and round the shaft; ice or a wet cloth on the shaft is a strong film there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surroundings {
    /// Round the hub.
    pub hub: Air,
    /// Round the shaft beyond the hub.
    pub shaft: Air,
}

impl Air {
    /// Still air of a shop on machined, lightly oxidised steel: 7 W/(m²·K) and an emissivity of 0.6.
    ///
    /// # Source
    /// Convection: the simplified rule for horizontal cylinders, h = 1.32·(ΔT/D)^¼ (Holman, *Heat
    /// Transfer*, Table 7-2; from memory), gives 6 to 8 for hubs of 0.1 to 0.4 m that are 50 to
    /// 200 K warmer than the air. Emissivity: general tables, from memory: ground steel 0.5,
    /// oxidised 0.8.
    pub fn still(temperature: ThermodynamicTemperature) -> Self {
        Self {
            temperature,
            convection: HeatTransfer::new::<WattPerSquareMeterKelvin>(7.0),
            emissivity: 0.6,
        }
    }

    pub(crate) fn film(&self) -> Result<Film, ThermalError> {
        not_negative("convection", self.convection.value)?;
        share("emissivity", self.emissivity)?;
        if !(self.temperature.si().is_finite() && self.temperature.si() > 0.0) {
            return Err(ThermalError::Temperature(self.temperature));
        }
        Ok(Film {
            air_k: self.temperature.si(),
            convection_w_m2k: self.convection.value,
            emissivity: self.emissivity,
        })
    }
}

type WattPerSquareMeterKelvin = uom::si::heat_transfer::watt_per_square_meter_kelvin;

impl Surroundings {
    /// Still air of one temperature round both.
    pub fn still(temperature: ThermodynamicTemperature) -> Self {
        Self { hub: Air::still(temperature), shaft: Air::still(temperature) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_film_that_cannot_be_is_refused() {
        let air = Air::still(ThermodynamicTemperature::from_si(293.15));
        assert!(air.film().is_ok());
        assert!(Air { emissivity: 1.2, ..air }.film().is_err());
        assert!(
            Air { convection: HeatTransfer::new::<WattPerSquareMeterKelvin>(-1.0), ..air }
                .film()
                .is_err()
        );
        assert!(
            Air { temperature: ThermodynamicTemperature::from_si(-3.0), ..air }.film().is_err()
        );
    }
}
