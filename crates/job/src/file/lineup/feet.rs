//! The feet of one machine, what they stand on, and what they grow.

use quantities::{Length, Measured, TemperatureInterval, Whole};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::{Named, Text, is_default};

/// How one machine stands.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Machine {
    /// True where it may be moved, false where it stays; otherwise as the machines' table says.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub moves: Option<bool>,
    /// Foot planes by name: "front" (next to the coupling), "rear"; more where it has more.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub feet: Named<Foot>,
    /// Height of the shaft above the feet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub centre_height: Text<Length>,
    /// Distance between its left and its right feet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub width: Text<Length>,
    /// Its flange, where it stands on one instead of feet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub flange: Option<Flange>,
    /// Heights of the base's pads, by corner: "front-left", "rear-left", "rear-right",
    /// "front-right", seen from behind the driver.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub pads: Named<Measured<Length>>,
    /// Heights of the machine's own soles by the same corners; nothing where they are in one plane.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub soles: Named<Measured<Length>>,
    /// Runout of its shaft and hub.
    #[serde(skip_serializing_if = "is_default")]
    pub runout: Runout,
}

/// Total runout, turned in its own bearings.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Runout {
    /// Of the shaft beside the hub.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft: Text<Length>,
    /// Of the hub's rim.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rim: Text<Length>,
    /// Of the hub's face.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub face: Text<Length>,
}

/// A flange that a machine stands on, its shaft upright as a rule.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Flange {
    /// Distance of its seat from the middle of the coupling.
    pub at: Text<Length>,
    /// Its bolt circle.
    pub circle: Text<Length>,
    /// How many bolts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bolts: Option<Whole>,
    /// Clock position of its first bolt; otherwise 12.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub first: String,
    /// How far it can go on its seat, to every side.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room: Text<Length>,
}

/// A pair of feet in one plane across the shaft.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Foot {
    /// Distance from the middle of the coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Text<Length>,
    /// How its support grows from standing to running.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth: Option<GrowthAtFoot>,
    /// Shims now under it, all together.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shims: Text<Length>,
    /// The same shim by shim, where the pack was taken apart.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub pack: Vec<Measured<Length>>,
    /// Room sideways before a bolt binds, the same to both sides.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub side_room: Text<Length>,
    /// Room towards 3 o'clock, where it differs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room_right: Text<Length>,
    /// Room towards 9 o'clock, where it differs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room_left: Text<Length>,
    /// Rise of the left and right foot when its own bolt is let go: "left", "right".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub rise: Named<Measured<Length>>,
    /// The same with pipes and coupling free.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub rise_free: Named<Measured<Length>>,
    /// Gaps under the loose foot, "left" and "right", at its corners "front-left", "rear-left",
    /// "rear-right", "front-right".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub gaps: Named<Named<Measured<Length>>>,
    /// A move to try out on paper.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tried: Option<Shift>,
    /// The move that was made.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub made: Option<Shift>,
}

/// A move at one plane of feet.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Shift {
    /// Shims put in; negative taken out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub up: Text<Length>,
    /// Pushed towards 3 o'clock; negative towards 9.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right: Text<Length>,
}

/// Growth of one foot plane: measured or from the maker, or worked out.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct GrowthAtFoot {
    /// Growth up, measured or the maker's figure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub up: Text<Length>,
    /// Growth towards 3 o'clock, measured or the maker's figure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right: Text<Length>,
    /// Height from the shims to the shaft's middle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub height: Text<Length>,
    /// How much warmer the support runs than it stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rise: Text<TemperatureInterval>,
    /// What it is made of: "cast iron", "steel", …
    #[serde(skip_serializing_if = "String::is_empty")]
    pub material: String,
    /// Growth up already there when it starts, where it does not start cold.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub start_up: Text<Length>,
    /// How much warmer the support is when it starts than it stands, where it does not start cold.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub start_rise: Text<TemperatureInterval>,
}
