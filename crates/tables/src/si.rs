//! Quantities as constants: `uom` makes them at run time only, a table wants them at compile time.

use std::marker::PhantomData;

use quantities::{
    Length, MassDensity, Pressure, SpecificHeatCapacity, TemperatureCoefficient,
    ThermalConductivity, ThermodynamicTemperature,
};
use uom::si::f64::Area;

macro_rules! constant {
    ($($name:ident: $quantity:ident, $per:expr, $unit:literal;)*) => {$(
        #[doc = concat!("From ", $unit, ".")]
        pub(crate) const fn $name(number: f64) -> $quantity {
            $quantity { dimension: PhantomData, units: PhantomData, value: number * $per }
        }
    )*};
}

constant! {
    millimetres: Length, 1e-3, "mm";
    inches: Length, 0.0254, "in";
    square_millimetres: Area, 1e-6, "mm²";
    square_inches: Area, 0.0254 * 0.0254, "in²";
    gigapascals: Pressure, 1e9, "GPa";
    megapascals: Pressure, 1e6, "MPa";
    psi: Pressure, 4.448_221_615_260_5 / (0.0254 * 0.0254), "psi";
    per_kelvin_e6: TemperatureCoefficient, 1e-6, "10⁻⁶ per K";
    kg_m3: MassDensity, 1.0, "kg/m³";
    w_m_k: ThermalConductivity, 1.0, "W/(m·K)";
    j_kg_k: SpecificHeatCapacity, 1.0, "J/(kg·K)";
}

/// From °C.
pub(crate) const fn celsius(number: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature { dimension: PhantomData, units: PhantomData, value: number + 273.15 }
}
