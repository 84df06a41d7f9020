//! A key and its keyways.

use quantities::{Force, Length, Pressure, Whole};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Text, is_default};

/// How a key ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum KeyEnds {
    /// Square at both ends.
    #[default]
    Square,
    /// Round at both ends: a width of its length does not bear.
    Round,
    /// Round at one end.
    Half,
}

/// A key and its keyways as measured.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Key {
    /// Width of the key.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub width: Text<Length>,
    /// Height of the key.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub height: Text<Length>,
    /// Length of the key.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Text<Length>,
    /// How it ends.
    #[serde(skip_serializing_if = "is_default")]
    pub ends: KeyEnds,
    /// Depth of the keyway in the shaft, from the shaft's top.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_depth: Text<Length>,
    /// Depth of the keyway in the hub, from the bore's top.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_depth: Text<Length>,
    /// Width of the keyway in the shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_width: Text<Length>,
    /// Width of the keyway in the hub.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_width: Text<Length>,
    /// Yield strength of the key, where it is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub yield_strength: Text<Pressure>,
    /// Steel of the key, where its yield is not known: "low-carbon bar", "medium-carbon bar".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub steel: String,
    /// How many keys there are: 1, or 2 at 180°.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub count: Option<Whole>,
    /// How tight a metric key is to sit sideways; "normal" when nothing is said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seat: Option<tables::iso_r_773::Seat>,
    /// Class of an inch key's fit: "1" (clearance) or "2"; "1" when nothing is said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fit_class: Option<tables::ansi_b17_1::Class>,
    /// How far the shaft's keyway leans from the axis over its length; its sign as seen from the
    /// other machine, clockwise positive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_twist: Text<Length>,
    /// How far the hub's keyway leans, with its sign seen the same way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_twist: Text<Length>,
    /// Length of the keyway in the shaft, for the key's length for balance.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_keyway_length: Text<Length>,
    /// Length of the keyway in the hub.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_keyway_length: Text<Length>,
    /// Force that one set screw holds, where its maker says.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub set_screw_holding: Text<Force>,
}
