//! The plant's own rules: they come before what is usual, and the plan says where they did.

use quantities::{Force, Length, Measured, Ratio, ThermodynamicTemperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{LineupLimits, Named, Text, is_default};

/// The plant's rules. What they leave out is as usual.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Site {
    /// Title and edition of the rules.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub rules: String,
    /// Highest temperature that a hub may be heated to.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_limit: Text<ThermodynamicTemperature>,
    /// True where flame or heater may be used at the machine.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heat_allowed: Option<bool>,
    /// Limits on the line-up, on feet and on pipes.
    #[serde(skip_serializing_if = "is_default")]
    pub limits: LineupLimits,
    /// How threads are prepared here: "dry", "zinc plated", "oiled", "lubricated", "molybdenum".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub threads: Option<tables::nut_factor::Threads>,
    /// How closely a torque that was put on must be what was wanted; otherwise 5 %.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque_within: Text<Ratio>,
    /// Margin wanted between puller and pull.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub puller_margin: Text<Ratio>,
    /// Pullers here: the force that each is good for.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub pullers: Vec<Measured<Force>>,
    /// Thicknesses of the shims here.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub shims: Vec<Measured<Length>>,
    /// Greases and oils in store, by name.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub greases: Vec<String>,
    /// Tools on hand, by name.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub tools: Vec<String>,
    /// What everybody wears at this work.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub wear: Vec<String>,
    /// Hold points besides the usual ones, or in their place.
    #[serde(skip_serializing_if = "is_default")]
    pub holds: Holds,
}

/// Hold points by the name of their step: who must agree, and to what, before going on.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Holds {
    /// Putting it on: "torque", "gap", …
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub on: Named<String>,
    /// Taking it off: "off-rig", …
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub off: Named<String>,
}
