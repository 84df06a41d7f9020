//! What a bore or a shaft was read with, and what that was set on.

use quantities::{Length, ThermodynamicTemperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Text, is_default};

/// What the readings are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum GaugeReads {
    /// Sizes.
    #[default]
    Size,
    /// Differences from what the instrument was set on; positive when the part is larger.
    Difference,
}

/// How the instrument touches.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Points {
    /// Two points across.
    #[default]
    #[serde(rename = "two points")]
    Two,
    /// Three points at 120°.
    #[serde(rename = "three points")]
    Three,
}

/// An instrument.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Gauge {
    /// What the readings are: "size" or "difference".
    #[serde(skip_serializing_if = "is_default")]
    pub reads: GaugeReads,
    /// Size of the ring, standard or micrometer that it was set on, with its ±.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub set_on: Text<Length>,
    /// What it read there, where the readings are sizes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub read_there: Text<Length>,
    /// How it touches: "two points" or "three points".
    #[serde(skip_serializing_if = "is_default")]
    pub points: Points,
    /// The ± of one reading with it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spread: Text<Length>,
    /// Temperature of the instrument, or of the standard that it was set on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperature: Text<ThermodynamicTemperature>,
    /// Temperature of the part that it read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part_temperature: Text<ThermodynamicTemperature>,
}
