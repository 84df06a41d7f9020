//! How the hubs are made hot.

use quantities::{Length, TemperatureInterval, ThermodynamicTemperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Text;

/// Heating the hubs.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Heat {
    /// "oven", "induction", "oil bath" or "torch".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub method: String,
    /// Clearance wanted while the hub slides; otherwise by size, and said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clearance: Text<Length>,
    /// What the hub loses on the way from heater to shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loss: Text<TemperatureInterval>,
    /// The site's own limit on the hub's temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Text<ThermodynamicTemperature>,
    /// Temperature of the shaft, where it is cooled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_temperature: Text<ThermodynamicTemperature>,
    /// Seals that stay in the hub or touch it: "nitrile", "fluoroelastomer", …
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub seals_left: Vec<String>,
}
