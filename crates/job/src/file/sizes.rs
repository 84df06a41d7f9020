//! Bores, shafts and keys as measured.

use quantities::{Length, ThermodynamicTemperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{End, Named, Text, is_default};

/// Sizes at both ends.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Sizes {
    /// Temperature of parts and instruments when they were measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperature: Text<ThermodynamicTemperature>,
    /// Temperature of the instruments, where it differs from the parts'.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub instrument_temperature: Text<ThermodynamicTemperature>,
    /// The ± of a reading that has none of its own.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spread: Text<Length>,
    /// The driver's end.
    #[serde(skip_serializing_if = "is_default")]
    pub driver: SizeEnd,
    /// The driven end.
    #[serde(skip_serializing_if = "is_default")]
    pub driven: SizeEnd,
}

/// Sizes at one end.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct SizeEnd {
    /// Nominal size of bore and shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nominal: Text<Length>,
    /// Readings of the bore, by station: "1", "2", "3".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub bore: Named<Bore>,
    /// Readings of the shaft, by station.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub shaft: Named<Bore>,
    /// The key and its keyways.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub key: Option<Key>,
}

/// Readings of a bore or a shaft at one station.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Bore {
    /// How far in from the face that looks at the other machine.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Text<Length>,
    /// Diameter in line with the key.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub along: Text<Length>,
    /// Diameter square to the key.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub across: Text<Length>,
    /// Diameter at 45° to the key, where it was taken.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub between: Text<Length>,
}

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
    pub yield_strength: Text<quantities::Pressure>,
}

impl Sizes {
    /// The sizes at one end.
    pub fn at(&self, end: End) -> &SizeEnd {
        match end {
            End::Driver => &self.driver,
            End::Driven => &self.driven,
        }
    }
}
