//! The joint: bore and shaft, and the air between them.

use quantities::{Length, Physical, Pressure, ThermalConductivity};
use uom::si::f64::HeatTransfer;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;

use crate::ThermalError;
use crate::check::{not_negative, positive, share};
use crate::kernel::crossing::{Crossing, PRESSED_AT_PA};
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
/// more at 10 MPa, as [`Surfaces::of_roughness`] gives them in round figures; emissivity 0.3.
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
    /// Surfaces of a roughness, from the theory of contact of rough metals.
    ///
    /// ```text
    /// σ = 1.25·√(Ra² + Ra²)     m = 0.125·σ^0.402 (µm)
    /// touching = k_air/(3·σ + 0.37 µm)
    /// pressed = 1.25·k·m/σ·(10 MPa/H)^0.95        k = 2·kh·ks/(kh + ks)
    /// ```
    /// H hardness of the softer surface, about three times its yield strength or more.
    /// # Valid
    /// Clean metal, Ra 0.2 to 6 µm each; 3·σ is the distance of the mean planes under little load.
    /// # Errors
    /// [`ThermalError::Figure`] for a figure not above zero.
    /// # Source
    /// Yovanovich's correlation of contact conductance (after Cooper, Mikic and Yovanovich, 1969);
    /// slope by Antonetti, White and Simons; mean free path of air; all from memory.
    /// # Example
    /// ```
    /// use quantities::{Length, Physical, Pressure, ThermalConductivity};
    /// use thermal::Surfaces;
    /// let steel = ThermalConductivity::from_si(47.0);
    /// let ground = Length::from_si(1.6e-6);
    /// let surfaces = Surfaces::of_roughness([ground; 2], [steel; 2], Pressure::from_si(2.0e9))?;
    /// assert_eq!(format!("{:.0}", surfaces.touching.value / 100.0), "34");
    /// assert_eq!(format!("{:.0}", surfaces.pressed.value / 1000.0), "26");
    /// # Ok::<(), thermal::ThermalError>(())
    /// ```
    pub fn of_roughness(
        arithmetic_mean: [Length; 2],
        conductivity: [ThermalConductivity; 2],
        hardness: Pressure,
    ) -> Result<Self, ThermalError> {
        let ([a, b], [hub, shaft]) =
            (arithmetic_mean.map(Physical::si), conductivity.map(Physical::si));
        for figure in [a, b] {
            positive("roughness", figure)?;
        }
        for figure in [hub, shaft] {
            positive("conductivity", figure)?;
        }
        positive("hardness", hardness.si())?;
        let sigma_m = 1.25 * a.hypot(b);
        let slope = 0.125 * (sigma_m * 1e6).powf(0.402);
        let metal_w_mk = 2.0 * hub * shaft / (hub + shaft);
        let air_w_mk = Curve::new(AIR.to_vec()).at(350.0);
        let pressed =
            1.25 * metal_w_mk * slope / sigma_m * (PRESSED_AT_PA / hardness.si()).powf(0.95);
        let conductance = HeatTransfer::new::<watt_per_square_meter_kelvin>;
        Ok(Self {
            touching: conductance(air_w_mk / (3.0 * sigma_m + 0.37e-6)),
            pressed: conductance(pressed),
            ..Self::default()
        })
    }

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
