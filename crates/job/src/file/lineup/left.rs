//! As left, and the visits of years before.

use quantities::{Length, Measured};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::{Day, Named, Text};
use super::Offsets;

/// Read again once the moves were made.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct AsLeft {
    /// What the dials of this job read then, by their names; their set-up is the same.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub dials: Named<LeftDial>,
    /// Offsets and angles that another instrument gave then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub typed: Option<Offsets>,
}

/// A dial's last sweep.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct LeftDial {
    /// Readings by clock position.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub readings: Named<Measured<Length>>,
    /// What it showed when it came back to its first position.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub back: Text<Length>,
}

/// A visit before this one: moving machine against the other one.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Visit {
    /// The day: "2024-05-12".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub day: Option<Day>,
    /// How it was found.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub found: Option<Offsets>,
    /// How it was left.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub left: Option<Offsets>,
    /// What was done, or why.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}
