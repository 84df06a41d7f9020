//! What hubs and shafts are made of: elastic, thermal and strength figures at room temperature,
//! and how steel grows with temperature.
//!
//! Every material is a class, not a heat of metal: a certificate or the maker's sheet outranks it.
//! The yield strength is a minimum that the trade would expect of such a part; grey iron has none,
//! because it breaks without yielding. The heating limit is the highest temperature that a whole
//! hub may be brought to for fitting or pulling before its heat treatment or its seals suffer.
//!
//! Not here: how much a hub grows or how hard it grips (`mechanics`).

use quantities::{
    Basis, MassDensity, Pressure, Source, SpecificHeatCapacity, TemperatureCoefficient,
    ThermalConductivity, ThermodynamicTemperature,
};
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::thermodynamic_temperature::{degree_fahrenheit, kelvin};

use crate::si::{celsius, gigapascals, j_kg_k, kg_m3, megapascals, per_kelvin_e6, w_m_k};

/// How a metal gives under load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elastic {
    /// Young's modulus.
    pub young: Pressure,
    /// Poisson's ratio.
    pub poisson: f64,
}

/// A material of hubs, shafts and keys.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Its name, as an entry writes it.
    pub name: &'static str,
    /// Stiffness.
    pub elastic: Elastic,
    /// Least yield strength to be expected; `None` for a metal that breaks without yielding.
    pub yield_strength: Option<Pressure>,
    /// Mean coefficient of thermal expansion near room temperature.
    pub expansion: TemperatureCoefficient,
    /// Density.
    pub density: MassDensity,
    /// Thermal conductivity.
    pub conductivity: ThermalConductivity,
    /// Specific heat capacity.
    pub heat_capacity: SpecificHeatCapacity,
    /// The highest temperature that a hub of it may be heated to; `None` when none is held.
    pub heating_limit: Option<ThermodynamicTemperature>,
    /// Where the elastic and thermal figures come from.
    pub source: Source,
    /// Where the yield strength comes from.
    pub yield_source: Source,
    /// Where the heating limit comes from.
    pub heating_source: Source,
}

const SHIGLEY: Source = Source::new(
    "Shigley’s Mechanical Engineering Design, 9th ed.",
    "Table A-5 (E, ν); expansion ASME BPVC II-D Table TE-1 at 21 °C; the rest general property tables",
    Basis::Memory,
);
const IRON: Source = Source::new(
    "Shigley’s Mechanical Engineering Design, 9th ed.",
    "Table A-5 (E, ν); the rest general property tables",
    Basis::Memory,
);
const PROPERTIES: Source =
    Source::common_practice("general property tables, rounded to two figures");
const CASTINGS: Source = Source::common_practice("comparison tables of cast irons and cast steels");
const FROM_MEMORY: Source = Source::new("general property tables", "", Basis::Memory);

const HUB_CEILING: Source = Source::new(
    "Bloch and Geitner, Practical Machinery Management, vol. 4",
    "p. 245: 500 °F, heated evenly, no local hot spots",
    Basis::Read,
);
const TEMPERED_CASE: Source = Source::common_practice(
    "350 °F for hardened hubs and teeth: case-hardened steel is tempered not far above it",
);
const HIGH_ALLOY: Source =
    Source::new("DIN 7190", "highest joining temperatures, high-alloy steel", Basis::Memory);
const AGED_ALLOY: Source =
    Source::new("heat-treatable aluminium is aged at 160 to 190 °C", "", Basis::Memory);
const NO_LIMIT_HELD: Source =
    Source::common_practice("no heating limit held: the maker of the hub has it");

const fn memory(title: &'static str, place: &'static str) -> Source {
    Source::new(title, place, Basis::Memory)
}

/// Stiffness, expansion, density, conductivity and heat capacity in the units of handbooks.
const fn metal(name: &'static str, figures: [f64; 6], source: Source) -> Material {
    let [young_gpa, poisson, expansion, density, conductivity, heat_capacity] = figures;
    Material {
        name,
        elastic: Elastic { young: gigapascals(young_gpa), poisson },
        yield_strength: None,
        expansion: per_kelvin_e6(expansion),
        density: kg_m3(density),
        conductivity: w_m_k(conductivity),
        heat_capacity: j_kg_k(heat_capacity),
        heating_limit: None,
        source,
        yield_source: Source::common_practice("no yield strength held"),
        heating_source: NO_LIMIT_HELD,
    }
}

impl Material {
    const fn yielding(self, mpa: f64, yield_source: Source) -> Self {
        Self { yield_strength: Some(megapascals(mpa)), yield_source, ..self }
    }

    const fn heated_to(self, limit_c: f64, heating_source: Source) -> Self {
        Self { heating_limit: Some(celsius(limit_c)), heating_source, ..self }
    }
}

#[rustfmt::skip]
static MATERIALS: [Material; 11] = [
    //                             E GPa  ν     α 1e-6/K  ρ kg/m³  k W/(m·K)  cp J/(kg·K)
    metal("steel",                [207.0, 0.292, 11.52, 7800.0,  51.0, 470.0], SHIGLEY)
        .yielding(275.0, memory("EN 10083-2", "C45+N, over 100 up to 250 mm"))
        .heated_to(260.0, HUB_CEILING),
    metal("alloy steel",          [207.0, 0.292, 11.52, 7800.0,  43.0, 470.0], SHIGLEY)
        .yielding(500.0, memory("EN 10083-3", "42CrMo4+QT, over 160 up to 250 mm"))
        .heated_to(260.0, HUB_CEILING),
    metal("hardened steel",       [207.0, 0.292, 11.52, 7800.0,  43.0, 470.0], SHIGLEY)
        .yielding(500.0, memory("EN 10083-3", "42CrMo4+QT, over 160 up to 250 mm"))
        .heated_to(177.0, TEMPERED_CASE),
    metal("cast steel",           [206.8, 0.30,  11.70, 7750.0,  50.5, 470.0], CASTINGS)
        .yielding(205.0, memory("ASTM A27", "grade 60-30: 30 ksi"))
        .heated_to(260.0, HUB_CEILING),
    metal("stainless steel",      [200.0, 0.28,  17.0,  7800.0,  16.0, 480.0], PROPERTIES)
        .yielding(205.0, memory("ASTM A240", "type 304: 30 ksi"))
        .heated_to(200.0, HIGH_ALLOY),
    metal("martensitic stainless", [200.0, 0.28, 10.3,  7750.0,  25.0, 460.0], FROM_MEMORY)
        .yielding(500.0, memory("EN 10088-3", "X20Cr13+QT700"))
        .heated_to(200.0, HIGH_ALLOY),
    metal("cast iron",            [100.0, 0.211, 10.5,  7200.0,  46.0, 450.0], IRON)
        .heated_to(260.0, HUB_CEILING),
    metal("ductile iron",         [170.0, 0.29,  11.0,  7100.0,  36.0, 490.0], PROPERTIES)
        .yielding(310.0, memory("ASTM A536", "grade 65-45-12: 45 ksi, as the grade says"))
        .heated_to(260.0, HUB_CEILING),
    metal("aluminium",            [ 69.0, 0.33,  23.0,  2700.0, 160.0, 900.0], PROPERTIES)
        .yielding(250.0, memory("EN 755-2", "6082-T6 bar"))
        .heated_to(120.0, AGED_ALLOY),
    metal("bronze",               [100.0, 0.35,  18.0,  9000.0,  70.0, 360.0], PROPERTIES)
        .yielding(83.0, memory("ASTM B584", "leaded tin bronze C93500: 12 ksi")),
    metal("phosphor bronze",      [110.0, 0.34,  18.0,  8800.0,  66.0, 380.0], PROPERTIES),
];

/// Other ways to write a material's name.
const ALSO: [(&str, &str); 11] = [
    ("carbon steel", "steel"),
    ("forged steel", "steel"),
    ("quenched and tempered steel", "alloy steel"),
    ("case-hardened steel", "hardened steel"),
    ("steel casting", "cast steel"),
    ("austenitic stainless", "stainless steel"),
    ("martensitic stainless steel", "martensitic stainless"),
    ("grey iron", "cast iron"),
    ("grey cast iron", "cast iron"),
    ("nodular iron", "ductile iron"),
    ("aluminum", "aluminium"),
];

/// The material of that name; capitals do not matter.
///
/// # Example
/// ```
/// use tables::materials::material;
/// use uom::si::pressure::gigapascal;
/// let iron = material("Ductile iron").unwrap();
/// assert_eq!(iron.elastic.young.get::<gigapascal>().round(), 170.0);
/// assert!(material("unobtainium").is_none());
/// ```
pub fn material(name: &str) -> Option<&'static Material> {
    let wanted = name.trim().to_lowercase();
    let wanted = ALSO.iter().find(|(other, _)| *other == wanted).map_or(&*wanted, |(_, name)| name);
    MATERIALS.iter().find(|material| material.name == wanted)
}

/// Every material held here.
pub fn all() -> &'static [Material] {
    &MATERIALS
}

/// The names that [`material`] knows best, in their order in the table.
pub fn names() -> impl Iterator<Item = &'static str> {
    MATERIALS.iter().map(|material| material.name)
}

/// Carbon and low-alloy steel: E = 207 kN/mm², ν = 0.292.
pub fn steel() -> Elastic {
    MATERIALS[0].elastic
}

/// Where [`steel_expansion`] comes from.
pub const STEEL_EXPANSION: Source = Source::new(
    "ASME Boiler and Pressure Vessel Code, Section II, Part D (2001)",
    "Table TE-1, group 1 (plain carbon steel), coefficient B",
    Basis::Read,
);

#[rustfmt::skip]
const TE_1: [(f64, f64); 20] = [
    // °F | mean coefficient from 70 °F (1e-6 per °F)
    (70.0, 6.4), (100.0, 6.5), (150.0, 6.6), (200.0, 6.7), (250.0, 6.8),
    (300.0, 6.9), (350.0, 7.0), (400.0, 7.1), (450.0, 7.2), (500.0, 7.3),
    (550.0, 7.3), (600.0, 7.4), (650.0, 7.5), (700.0, 7.6), (750.0, 7.7),
    (800.0, 7.8), (850.0, 7.9), (900.0, 7.9), (950.0, 8.0), (1000.0, 8.1),
];

/// A temperature converted from another unit must not slip over an end by a rounding error.
const HAIR: f64 = 1e-6;

/// Mean coefficient of expansion of carbon steel from room temperature to `to`, by straight lines
/// between the rows of the table.
///
/// # Valid
/// 20 to 538 °C (1000 °F). The table begins at 70 °F (21.1 °C); its first row serves from 20 °C. Printed to
/// 0.1·10⁻⁶ per °F, so good to about ± 0.1·10⁻⁶ per K. A smaller round figure asks for a hotter
/// hub and is on the safe side for fitting. Beyond the range `None`.
/// # Source
/// [`STEEL_EXPANSION`].
/// # Example
/// ```
/// use quantities::ThermodynamicTemperature;
/// use uom::si::{temperature_coefficient::per_kelvin, thermodynamic_temperature::degree_celsius};
/// let hot = ThermodynamicTemperature::new::<degree_celsius>(204.4);
/// let mean = tables::materials::steel_expansion(hot).unwrap().get::<per_kelvin>();
/// assert!((mean - 12.78e-6).abs() < 0.01e-6);
/// ```
pub fn steel_expansion(to: ThermodynamicTemperature) -> Option<TemperatureCoefficient> {
    let fahrenheit = to.get::<degree_fahrenheit>();
    if !(68.0 - HAIR..=1000.0 + HAIR).contains(&fahrenheit) {
        return None;
    }
    let fahrenheit = fahrenheit.clamp(70.0, 1000.0);
    let pair = TE_1.windows(2).find(|pair| fahrenheit <= pair[1].0)?;
    let [(from, low), (to, high)] = [pair[0], pair[1]];
    let mean = low + (high - low) * (fahrenheit - from) / (to - from);
    Some(TemperatureCoefficient::new::<per_kelvin>(mean * 1.8e-6))
}

/// Where the mean coefficient of steel at −50 °C is still taken as that of the warm; it falls from there.
const COLD_K: f64 = 223.15;
/// The coldest that steel is chilled to: liquid nitrogen.
const COLDEST_K: f64 = 77.15;

/// Mean coefficient of expansion of carbon steel from 20 °C down to `to`: the first row of
/// [`steel_expansion`] down to −50 °C, then straight to the figure for chilling of DIN 7190-1, which
/// is taken as reached at −196 °C.
///
/// # Valid
/// −196 to 20 °C; `None` beyond. A small figure promises less shrinkage: the safe side.
/// # Source
/// [`STEEL_EXPANSION`]; [`crate::din_7190::SOURCE`]; the straight line between is our own.
/// # Example
/// ```
/// use quantities::ThermodynamicTemperature;
/// use uom::si::{temperature_coefficient::per_kelvin, thermodynamic_temperature::degree_celsius};
/// let dry_ice = ThermodynamicTemperature::new::<degree_celsius>(-78.0);
/// let mean = tables::materials::steel_contraction(dry_ice).unwrap().get::<per_kelvin>();
/// assert!((mean - 10.94e-6).abs() < 0.01e-6);
/// ```
pub fn steel_contraction(to: ThermodynamicTemperature) -> Option<TemperatureCoefficient> {
    let cold = to.get::<kelvin>();
    if !(COLDEST_K - HAIR..=293.15 + HAIR).contains(&cold) {
        return None;
    }
    let warm = TE_1[0].1 * 1.8e-6;
    let chilled = crate::din_7190::joining_of("steel")?.chilling.get::<per_kelvin>();
    let share = ((COLD_K - cold) / (COLD_K - COLDEST_K)).max(0.0);
    Some(TemperatureCoefficient::new::<per_kelvin>(warm + (chilled - warm) * share))
}
