//! Bores and shafts as measured.

use quantities::{Length, Measured, Ratio, ThermodynamicTemperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{End, Gauge, Key, Named, Text, is_default};

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
    /// What the bore was read with.
    #[serde(skip_serializing_if = "is_default")]
    pub bore_gauge: Gauge,
    /// What the shaft was read with.
    #[serde(skip_serializing_if = "is_default")]
    pub micrometer: Gauge,
    /// True where the bore gauge was set on the micrometer that measured the shaft: that one's own
    /// error then falls out of the fit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gauge_on_micrometer: Option<bool>,
    /// The taper, for a hub on a tapered shaft end.
    #[serde(skip_serializing_if = "is_default")]
    pub taper: TaperedEnd,
    /// The key and its keyways.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub key: Option<Key>,
}

/// A tapered shaft end, and how its hub sits on it before it is drawn up.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct TaperedEnd {
    /// Taper on the diameter: "1:10", "1:12", "3/4 in/ft"; empty for a straight shaft.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub rate: String,
    /// Diameter of the shaft at the small end of the joint; otherwise the nominal size is taken as
    /// that of the large end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub small_end: Text<Length>,
    /// Part of the surface that showed blue.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub contact: Text<Ratio>,
    /// How far the end of the shaft stands out of the hub's face, metal touching metal; negative
    /// when it stands back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stands_out: Text<Length>,
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
    /// Diameters in other directions, by degrees from the key: "30", "60", "120".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub around: Named<Measured<Length>>,
    /// Readings with three points at 120°, by degrees of one of them from the key: "0", "60".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub three_point: Named<Measured<Length>>,
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
