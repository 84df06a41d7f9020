//! Quantities as constants: `uom` makes them at run time only, a table wants them at compile time.

use std::marker::PhantomData;

use quantities::{
    MassDensity, Pressure, SpecificHeatCapacity, TemperatureCoefficient, ThermalConductivity,
    ThermodynamicTemperature,
};

macro_rules! constant {
    ($($name:ident: $quantity:ident, $per:expr, $unit:literal;)*) => {$(
        #[doc = concat!("From ", $unit, ".")]
        pub(crate) const fn $name(number: f64) -> $quantity {
            $quantity { dimension: PhantomData, units: PhantomData, value: number * $per }
        }
    )*};
}

constant! {
    gigapascals: Pressure, 1e9, "GPa";
    megapascals: Pressure, 1e6, "MPa";
    per_kelvin_e6: TemperatureCoefficient, 1e-6, "10⁻⁶ per K";
    kg_m3: MassDensity, 1.0, "kg/m³";
    w_m_k: ThermalConductivity, 1.0, "W/(m·K)";
    j_kg_k: SpecificHeatCapacity, 1.0, "J/(kg·K)";
}

/// From °C.
pub(crate) const fn celsius(number: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature { dimension: PhantomData, units: PhantomData, value: number + 273.15 }
}
