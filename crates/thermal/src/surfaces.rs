//! The joint: bore and shaft, and the air between them.

mod rough;

pub use rough::Rough;

use quantities::{Physical, ThermalConductivity};
use uom::si::f64::HeatTransfer;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;

use crate::ThermalError;
use crate::check::{not_negative, positive, share};
use crate::kernel::crossing::Crossing;
use crate::kernel::growth::Curve;
use crate::unknowns::Guess;

/// How heat crosses the joint.
///
/// ```text
/// h = k/√((g + s)² − (e·g)²) + radiation + pressed·(p/10 MPa)^0.95      s = k/touching
/// ```
/// g clearance on the radius, e how far off the middle the hub stands, k conductivity of the air,
/// s the air left between rough surfaces that just touch, p contact pressure. For a published case
/// with one conductance of closed surfaces: that one as `touching`, and nothing as `pressed`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surfaces {
    /// Conductance where the surfaces just touch.
    pub touching: HeatTransfer,
    /// What a contact pressure of 10 MPa adds to it.
    pub pressed: HeatTransfer,
    /// Air in the gap.
    pub air: GapAir,
    /// Emissivity of bore and seat.
    pub emissivity: f64,
}

/// Conductivity of the air in the gap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GapAir {
    /// By its temperature, midway between bore and shaft.
    ///
    /// # Source
    /// Incropera et al., *Fundamentals of Heat and Mass Transfer*, Table A.4; from memory.
    ByTemperature,
    /// One figure.
    Constant(ThermalConductivity),
}

#[rustfmt::skip]
const AIR: [(f64, f64); 10] = [
    // K | W/(m·K)
    (250.0, 0.0223), (300.0, 0.0263), (350.0, 0.0300), (400.0, 0.0338), (450.0, 0.0373),
    (500.0, 0.0407), (550.0, 0.0439), (600.0, 0.0469), (650.0, 0.0497), (700.0, 0.0524),
];

/// Turned or ground bore and shaft, Ra 1.6 µm each, dry: 3.5 kW/(m²·K) touching and 25 kW/(m²·K)
/// more at 10 MPa, as [`Rough::surfaces`] gives them in round figures; emissivity 0.3.
impl Default for Surfaces {
    fn default() -> Self {
        let conductance = HeatTransfer::new::<watt_per_square_meter_kelvin>;
        Self {
            touching: conductance(3_500.0),
            pressed: conductance(25_000.0),
            air: GapAir::ByTemperature,
            emissivity: 0.3,
        }
    }
}

impl Surfaces {
    pub(crate) fn crossing(&self, guess: &Guess) -> Result<Crossing, ThermalError> {
        positive("touching conductance", self.touching.value)?;
        not_negative("pressed conductance", self.pressed.value)?;
        share("emissivity", self.emissivity)?;
        let air_w_mk = match self.air {
            GapAir::ByTemperature => Curve::new(AIR.to_vec()),
            GapAir::Constant(air) => {
                positive("conductivity of air", air.si())?;
                Curve::level(air.si())
            }
        };
        Ok(Crossing {
            touching_w_m2k: self.touching.value,
            pressed_w_m2k: self.pressed.value,
            air_w_mk,
            emissivity: self.emissivity,
            eccentricity: guess.eccentricity,
            factor: guess.conductance,
        })
    }
}
