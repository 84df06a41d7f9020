//! As found: what is seen and measured when the coupling is opened after its time in service.

use quantities::{Length, Measured, Ratio, Time};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Day, Named, Text};

/// The coupling as it was found.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Inspection {
    /// What is seen, by the names that the plan lists for this kind: "one-side", "leak", …
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub seen: Vec<String>,
    /// The day it was opened.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opened: Option<Day>,
    /// Time in service; otherwise from the day it was closed to the day it was opened.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_service: Text<Time>,
    /// Backlash of gear teeth, along the pitch circle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub backlash: Text<Length>,
    /// Wear of a tooth, a groove or a sprocket, at the deepest place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tooth: Text<Length>,
    /// Thickness of the elastomer element or bush, at the thinnest place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub element: Text<Length>,
    /// Stretch of the chain as a part of its length.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stretch: Text<Ratio>,
    /// Free length of each disc pack off the coupling: "driver", "driven", or "pack".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub packs: Named<Measured<Length>>,
    /// How far a sleeve or spacer hangs off centre on worn teeth.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub off_centre: Text<Length>,
    /// Anything else that was seen.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}
