//! The gap, and what moves it: hubs that stand out, shafts that grow, rotors that float.

use quantities::{Length, Measured, TemperatureInterval};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{End, Named, Text, is_default};

/// The gap between hub faces, or between the seats of a disc pack.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Gap {
    /// The gap wanted, with its ±; otherwise the sheet's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wanted: Text<Length>,
    /// The gap that was recorded before the coupling came apart, to be restored.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub recorded: Text<Length>,
    /// Whether the gap of the sheet, or the one wanted, is that of the machines running or standing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub meant: Option<Meant>,
    /// Readings of the gap by clock position: "12", "3", "6", "9".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub readings: Named<Measured<Length>>,
    /// How much the shafts grow towards each other when warm, both together, where it is known as
    /// one figure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_growth: Text<Length>,
    /// End float of a motor with sleeve bearings, shoulder to shoulder.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_float: Text<Length>,
    /// Distance of its magnetic centre from the middle of that float.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub magnetic_centre: Text<Length>,
    /// The driver's shaft.
    #[serde(skip_serializing_if = "is_default")]
    pub driver: ShaftEnd,
    /// The driven shaft.
    #[serde(skip_serializing_if = "is_default")]
    pub driven: ShaftEnd,
}

/// In which state of the machines a gap is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Meant {
    /// Warm, as they run: it is set wider cold by what the shafts grow.
    Running,
    /// Cold, as they stand: the maker has taken the growth in already.
    Standing,
}

/// One shaft along its axis.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ShaftEnd {
    /// How far the hub's face stands out beyond the shaft's end; negative where the shaft stands
    /// proud; nothing when they are flush.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_out: Text<Length>,
    /// Growth of the shaft towards the coupling, measured or the maker's figure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth: Text<Length>,
    /// From the thrust bearing, or whatever holds the rotor, to the shaft's end; negative when the
    /// shaft grows away from the coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Text<Length>,
    /// Mean rise of the shaft's temperature over that length, from standing to running.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rise: Text<TemperatureInterval>,
    /// What the casing carries that bearing towards the coupling as it warms, where it is known;
    /// negative away from it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub casing: Text<Length>,
    /// What the rotor still moves towards the coupling, from where it stood when the gap was read
    /// to where it runs; negative away from it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shift: Text<Length>,
}

impl Gap {
    /// One of the two shafts.
    pub fn at(&self, end: End) -> &ShaftEnd {
        match end {
            End::Driver => &self.driver,
            End::Driven => &self.driven,
        }
    }
}
