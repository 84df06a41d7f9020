//! What the fit should be.

use quantities::{Force, Length, Ratio, ThermodynamicTemperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{End, Text, is_default};

/// The fit wanted at each end, and what it must hold.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Fit {
    /// Safety wanted against slipping, on the torque with its service factor.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub safety: Text<Ratio>,
    /// Lowest friction in the joint; otherwise the common range is used and said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_least: Text<Ratio>,
    /// Highest friction in the joint.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_greatest: Text<Ratio>,
    /// How the hubs go on: "heat", "press" or "oil"; it decides the friction to count on.
    #[serde(skip_serializing_if = "is_default")]
    pub mounting: Mounting,
    /// True where bore and shaft are degreased before the hub goes on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub degreased: Option<bool>,
    /// What a key is asked to carry: "key alone" or "after friction".
    #[serde(skip_serializing_if = "is_default")]
    pub sharing: Sharing,
    /// Axial pull that the fit must hold, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub axial: Text<Force>,
    /// The driver's end.
    #[serde(skip_serializing_if = "is_default")]
    pub driver: FitEnd,
    /// The driven end.
    #[serde(skip_serializing_if = "is_default")]
    pub driven: FitEnd,
}

/// How a hub goes on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Mounting {
    /// Heated, or its shaft chilled.
    #[default]
    Heat,
    /// Pressed on cold.
    Press,
    /// On a film of oil under pressure.
    Oil,
}

/// What a key is asked to carry beside an interference.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Sharing {
    /// The whole torque.
    #[default]
    #[serde(rename = "key alone")]
    KeyAlone,
    /// What the least friction of the fit leaves.
    #[serde(rename = "after friction")]
    AfterFriction,
}

/// The fit wanted at one end: a class, or limits.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct FitEnd {
    /// A class: "H7/p6" (ISO 286, hole first), "FN2" (ANSI B4.1), "AGMA interference".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub class: String,
    /// Least interference wanted (clearance negative), where the maker or the site gives limits.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least: Text<Length>,
    /// Greatest interference wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub greatest: Text<Length>,
    /// How far a hub on a taper was drawn up from metal touching metal.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drawn_up: Text<Length>,
    /// Temperature of the hub in service, where it differs from the shaft's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_temperature: Text<ThermodynamicTemperature>,
    /// Temperature of the shaft in service.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_temperature: Text<ThermodynamicTemperature>,
}

impl Fit {
    /// The fit at one end.
    pub fn at(&self, end: End) -> &FitEnd {
        match end {
            End::Driver => &self.driver,
            End::Driven => &self.driven,
        }
    }
}
