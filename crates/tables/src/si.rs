//! Quantities as constants: `uom` makes them at run time only, a table wants them at compile time.

use std::marker::PhantomData;

use quantities::{
    Angle, Force, Length, MassDensity, Pressure, SpecificHeatCapacity, TemperatureCoefficient,
    TemperatureInterval, ThermalConductivity, ThermodynamicTemperature, Torque,
};
use uom::si::f64::Area;

const POUND_FORCE: f64 = 4.448_221_615_260_5;

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
    milliradians: Angle, 1e-3, "mrad";
    pounds_force: Force, POUND_FORCE, "lbf";
    newton_metres: Torque, 1.0, "N·m";
    pound_feet: Torque, POUND_FORCE * 0.3048, "lbf·ft";
    gigapascals: Pressure, 1e9, "GPa";
    megapascals: Pressure, 1e6, "MPa";
    psi: Pressure, POUND_FORCE / (0.0254 * 0.0254), "psi";
    per_kelvin_e6: TemperatureCoefficient, 1e-6, "10⁻⁶ per K";
    kelvins: TemperatureInterval, 1.0, "K";
    kg_m3: MassDensity, 1.0, "kg/m³";
    w_m_k: ThermalConductivity, 1.0, "W/(m·K)";
    j_kg_k: SpecificHeatCapacity, 1.0, "J/(kg·K)";
}

/// From °C.
pub(crate) const fn celsius(number: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature { dimension: PhantomData, units: PhantomData, value: number + 273.15 }
}
