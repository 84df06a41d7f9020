//! What a joint conducts, from how rough its surfaces are.

use quantities::{
    Basis, Kind, Length, Physical, Pressure, Source, ThermalConductivity, Value, Working,
};
use uom::si::f64::HeatTransfer;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;

use super::{AIR, Surfaces};
use crate::ThermalError;
use crate::check::positive;
use crate::kernel::crossing::PRESSED_AT_PA;
use crate::kernel::growth::Curve;

/// Bore and shaft as they were machined, from the theory of contact of rough metals.
///
/// ```text
/// σ = 1.25·√(Ra² + Ra²)     m = 0.125·σ^0.402 (µm)
/// touching = k_air/(3·σ + 0.37 µm)
/// pressed = 1.25·k·m/σ·(10 MPa/H)^0.95        k = 2·kh·ks/(kh + ks)
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rough {
    /// Arithmetic mean roughness Ra of bore and shaft.
    pub arithmetic_mean: [Length; 2],
    /// Conductivity of hub and shaft.
    pub conductivity: [ThermalConductivity; 2],
    /// Hardness of the softer surface as a pressure, about three times its yield strength or more.
    pub hardness: Pressure,
}

/// Mean free path of air (m), twice over for two surfaces.
const FREE_PATH_M: f64 = 0.37e-6;
/// Temperature that the air in a joint is taken at (K).
const AIR_AT_K: f64 = 350.0;
/// Where the relation comes from.
const YOVANOVICH: Source = Source::new(
    "Yovanovich’s correlation of contact conductance, after Cooper, Mikic and Yovanovich (1969)",
    "slope by Antonetti, White and Simons; mean free path of air",
    Basis::Memory,
);

impl Rough {
    /// Conductances of the joint; air and emissivity at their default.
    ///
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
    /// use thermal::Rough;
    /// let rough = Rough {
    ///     arithmetic_mean: [Length::from_si(1.6e-6); 2],
    ///     conductivity: [ThermalConductivity::from_si(47.0); 2],
    ///     hardness: Pressure::from_si(2.0e9),
    /// };
    /// let surfaces = rough.surfaces()?;
    /// assert_eq!(format!("{:.0}", surfaces.touching.value / 100.0), "34");
    /// assert_eq!(format!("{:.0}", surfaces.pressed.value / 1000.0), "26");
    /// # Ok::<(), thermal::ThermalError>(())
    /// ```
    pub fn surfaces(&self) -> Result<Surfaces, ThermalError> {
        for figure in self.arithmetic_mean {
            positive("roughness", figure.si())?;
        }
        for figure in self.conductivity {
            positive("conductivity", figure.si())?;
        }
        positive("hardness", self.hardness.si())?;
        let conductance = HeatTransfer::new::<watt_per_square_meter_kelvin>;
        let softness = (PRESSED_AT_PA / self.hardness.si()).powf(0.95);
        let pressed = 1.25 * self.metal_w_mk() * self.slope() / self.sigma_m() * softness;
        Ok(Surfaces {
            touching: conductance(air_w_mk() / (3.0 * self.sigma_m() + FREE_PATH_M)),
            pressed: conductance(pressed),
            ..Surfaces::default()
        })
    }

    /// How the conductance of surfaces that just touch was found.
    pub fn touching_working(&self, surfaces: &Surfaces) -> Working {
        let rough = |length| Value::new(Kind::Roughness, length);
        let [a, b] = self.arithmetic_mean;
        let result = Value::new(Kind::HeatTransfer, surfaces.touching);
        let air = ThermalConductivity::from_si(air_w_mk());
        Working::new(
            "Joint just touching",
            "r = 1.25·√(a² + b²)\nh = k/(3·r + f)",
            result,
            YOVANOVICH,
        )
        .term("a", "roughness Ra of the bore", rough(a))
        .term("b", "roughness Ra of the shaft", rough(b))
        .term("r", "both together, r.m.s.", rough(Length::from_si(self.sigma_m())))
        .term("k", "conductivity of air", Value::new(Kind::Conductivity, air))
        .term("f", "mean free path of air", rough(Length::from_si(FREE_PATH_M)))
        .valid("clean, dry metal; Ra 0.2 to 6 µm (8 to 240 µin)")
    }

    /// How the conductance that a pressure adds was found.
    pub fn pressed_working(&self, surfaces: &Surfaces) -> Working {
        let result = Value::new(Kind::HeatTransfer, surfaces.pressed);
        let metal = ThermalConductivity::from_si(self.metal_w_mk());
        let softness = (PRESSED_AT_PA / self.hardness.si()).powf(0.95);
        let formula = "q = (P/H)^0.95\nh = 1.25·k·m·q/r";
        Working::new("What pressure adds to the joint", formula, result, YOVANOVICH)
            .term(
                "k",
                "conductivity of the metals, harmonic mean",
                Value::new(Kind::Conductivity, metal),
            )
            .term("m", "slope of the surfaces", Value::number(self.slope()))
            .term(
                "r",
                "both roughnesses together, r.m.s.",
                Value::new(Kind::Roughness, Length::from_si(self.sigma_m())),
            )
            .term("P", "pressure", Value::new(Kind::Stress, Pressure::from_si(PRESSED_AT_PA)))
            .term("H", "hardness of the softer surface", Value::new(Kind::Stress, self.hardness))
            .term("q", "share of the surface that bears", Value::number(softness))
            .valid("clean metal; a joint that was pressed before conducts more")
    }

    fn sigma_m(&self) -> f64 {
        let [a, b] = self.arithmetic_mean.map(Physical::si);
        1.25 * a.hypot(b)
    }

    fn slope(&self) -> f64 {
        0.125 * (self.sigma_m() * 1e6).powf(0.402)
    }

    fn metal_w_mk(&self) -> f64 {
        let [hub, shaft] = self.conductivity.map(Physical::si);
        2.0 * hub * shaft / (hub + shaft)
    }
}

fn air_w_mk() -> f64 {
    Curve::new(AIR.to_vec()).at(AIR_AT_K)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Incropera et al., *Fundamentals of Heat and Mass Transfer*, Table 3.1, contact resistance of
    /// stainless steel in vacuum at 10 000 kN/m²: 0.7 to 4.0·10⁻⁴ m²·K/W; from memory. Stainless
    /// conducts 15 W/(m·K); machined surfaces, Ra 0.8 to 3.2 µm; hardness 3 GPa.
    #[test]
    fn pressed_metal_conducts_as_the_table_says() {
        for micrometres in [0.8, 1.6, 3.2] {
            let rough = Rough {
                arithmetic_mean: [Length::from_si(micrometres * 1e-6); 2],
                conductivity: [ThermalConductivity::from_si(15.0); 2],
                hardness: Pressure::from_si(3e9),
            };
            let resistance = 1.0 / rough.surfaces().unwrap().pressed.value;
            assert!((0.7e-4..=4.0e-4).contains(&resistance), "{micrometres} µm: {resistance}");
        }
    }

    #[test]
    fn rougher_surfaces_conduct_less_and_impossible_ones_not_at_all() {
        let rough = |ra: f64| Rough {
            arithmetic_mean: [Length::from_si(ra); 2],
            conductivity: [ThermalConductivity::from_si(50.0); 2],
            hardness: Pressure::from_si(2e9),
        };
        let [fine, coarse] = [0.8e-6, 3.2e-6].map(|ra| rough(ra).surfaces().unwrap());
        assert!(coarse.touching < fine.touching && coarse.pressed < fine.pressed);
        assert!(rough(0.0).surfaces().is_err());
        assert!(Rough { hardness: Pressure::from_si(0.0), ..rough(1e-6) }.surfaces().is_err());
    }
}
