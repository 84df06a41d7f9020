//! DIN 7190: joining by heat and cold — temperatures, coefficients, clearance.
//!
//! All from memory; a maker's sheet outranks it. The figures for joining are lower than those of
//! handbooks, which asks for a hotter hub: the safe side.
//!
//! Not here: interference lost to roughness, pressure, torque (`mechanics`).

use quantities::{Basis, Source, TemperatureCoefficient, ThermodynamicTemperature};

use crate::si::{celsius, per_kelvin_e6};

/// Where the figures come from.
pub const SOURCE: Source =
    Source::new("DIN 7190-1", "joining by heating or cooling", Basis::Memory);

/// Clearance wanted for sliding on, as a part of the diameter.
pub const JOINING_CLEARANCE: f64 = 0.001;

/// Expansion of a material in joining: on heating the hub, and on chilling the shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joining {
    /// The material.
    pub material: &'static str,
    /// On heating.
    pub heating: TemperatureCoefficient,
    /// On chilling.
    pub chilling: TemperatureCoefficient,
}

const fn joining(material: &'static str, heating: f64, chilling: f64) -> Joining {
    Joining { material, heating: per_kelvin_e6(heating), chilling: per_kelvin_e6(chilling) }
}

/// Coefficients for joining.
pub static JOINING: [Joining; 3] =
    [joining("steel", 11.0, 8.5), joining("iron", 10.0, 8.0), joining("aluminium", 23.0, 18.0)];

/// Coefficients by the name of a material of [`crate::materials`]; `None` for one not held.
///
/// # Example
/// ```
/// use uom::si::temperature_coefficient::per_kelvin;
/// let iron = tables::din_7190::joining_of("ductile iron").unwrap();
/// assert!((iron.heating.get::<per_kelvin>() - 10e-6).abs() < 1e-12);
/// ```
pub fn joining_of(material: &str) -> Option<&'static Joining> {
    let class = match material {
        "steel" | "alloy steel" | "hardened steel" | "cast steel" => "steel",
        "cast iron" | "ductile iron" => "iron",
        "aluminium" => "aluminium",
        _ => return None,
    };
    JOINING.iter().find(|joining| joining.material == class)
}

/// Highest temperatures for joining, by material.
#[rustfmt::skip]
pub static HIGHEST: [(&str, ThermodynamicTemperature); 4] = [
    ("steel of low strength, cast steel, ductile iron", celsius(350.0)),
    ("quenched and tempered steel",                     celsius(300.0)),
    ("surface-hardened steel",                          celsius(250.0)),
    ("case-hardened or high-alloy steel",               celsius(200.0)),
];
