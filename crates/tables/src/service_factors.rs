//! Service factors of couplings: by how much the steady torque is raised for the work it does.
//!
//! A service factor is no factor of safety. The coupling maker's own table outranks this one.
//!
//! Not here: starts, peaks and fault torques (`mechanics`).

use quantities::{Basis, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How roughly the driven machine works.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Load {
    /// Steady: centrifugal pumps on clean liquid, centrifugal compressors.
    Uniform,
    /// Some shock: fans, conveyors, hoists, mixers.
    Medium,
    /// Heavy shock: reciprocating machines, crushers, mills.
    Heavy,
}

/// What drives.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Driver {
    /// An electric motor.
    ElectricMotor,
    /// An engine with four to twelve cylinders.
    EngineFourToTwelve,
    /// An engine with one to three cylinders.
    EngineOneToThree,
}

/// Where the factors and the machines' classes come from.
pub const SOURCE: Source =
    Source::new("AGMA 514.02", "load classes and factors, as reprinted", Basis::CommonPractice);

/// The service factor.
///
/// # Source
/// [`SOURCE`].
/// # Example
/// ```
/// use tables::service_factors::{Driver, Load, service_factor};
/// assert_eq!(service_factor(Load::Medium, Driver::ElectricMotor), 1.5);
/// ```
pub fn service_factor(load: Load, driver: Driver) -> f64 {
    let [motor, four_to_twelve, one_to_three] = match load {
        Load::Uniform => [1.0, 1.5, 1.8],
        Load::Medium => [1.5, 2.3, 2.8],
        Load::Heavy => [2.0, 3.0, 3.5],
    };
    match driver {
        Driver::ElectricMotor => motor,
        Driver::EngineFourToTwelve => four_to_twelve,
        Driver::EngineOneToThree => one_to_three,
    }
}

/// Least service factor of a special-purpose coupling with a metallic flexing element.
pub const SPECIAL_PURPOSE_FLEXING: f64 = 1.5;
/// Least service factor of a special-purpose gear coupling; from memory.
pub const SPECIAL_PURPOSE_GEAR: f64 = 1.75;
/// Where those two come from.
pub const SPECIAL_PURPOSE: Source = Source::new("API Std 671", "data sheet", Basis::Read);

const UNIFORM: [&str; 5] = [
    "axial compressor",
    "centrifugal compressor",
    "crane travel gear",
    "centrifugal pump, clean liquid",
    "agitator, light liquid",
];
const MEDIUM: [&str; 12] = [
    "turbo-compressor",
    "crane hoist or slewing gear",
    "centrifugal pump, semi-liquid",
    "apron or drag conveyor",
    "elevator or hoist",
    "centrifugal fan",
    "concrete mixer",
    "mill live table",
    "machine-tool main drive",
    "pipeline pump",
    "kneader",
    "calender",
];
const HEAVY: [&str; 12] = [
    "reciprocating compressor",
    "piston pump",
    "belt conveyor",
    "inclined hoist",
    "wind machine fan",
    "crusher",
    "rubber extruder",
    "kiln",
    "stamping mill",
    "cold rolling mill",
    "rotary drilling",
    "wet press or drying cylinder",
];

/// Driven machines of a class.
pub fn machines(load: Load) -> &'static [&'static str] {
    match load {
        Load::Uniform => &UNIFORM,
        Load::Medium => &MEDIUM,
        Load::Heavy => &HEAVY,
    }
}
