//! Dials, distances, feet, growth and shims.
//!
//! Distances along the shaft are measured from the middle of the coupling, each towards its own
//! machine, and are positive.

use quantities::{Angle, Length, TemperatureInterval};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{End, Named, Text, is_default};

/// The line-up.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Lineup {
    /// The dials, each under a name of your own.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub dials: Named<Dial>,
    /// Offsets and angles that another instrument gave.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub typed: Option<Offsets>,
    /// The driver's feet.
    #[serde(skip_serializing_if = "is_default")]
    pub driver: Machine,
    /// The driven machine's feet.
    #[serde(skip_serializing_if = "is_default")]
    pub driven: Machine,
    /// Diameter at which the gap between the hub faces is compared, top and bottom.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap_diameter: Text<Length>,
    /// The site's own limits, where it has them.
    #[serde(skip_serializing_if = "is_default")]
    pub limits: LineupLimits,
    /// Shim stock.
    #[serde(skip_serializing_if = "is_default")]
    pub shims: Shims,
}

/// What a dial reads.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum DialKind {
    /// On the rim.
    #[default]
    Rim,
    /// On the face that looks at the dial's carrier.
    Face,
}

/// Where the reader stood.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum View {
    /// Behind the driver, looking at the driven machine: 3 is to the right.
    #[default]
    FromDriver,
    /// Behind the driven machine, looking at the driver: 3 and 9 are turned round on input.
    FromDriven,
}

/// Which side of a rim the stem touches.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Rim {
    /// The outside.
    #[default]
    Outside,
    /// The inside of a rim or bore: the signs turn round.
    Inside,
}

/// One dial and its sweep.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Dial {
    /// Rim or face.
    pub kind: DialKind,
    /// The machine whose shaft carries the bracket; the dial reads the other one's hub.
    pub rides_on: End,
    /// Where its stem touches: distance from the middle of the coupling, towards the machine read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Text<Length>,
    /// Diameter of the circle that a face dial sweeps.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub swing: Text<Length>,
    /// Which side of the rim.
    #[serde(skip_serializing_if = "is_default")]
    pub rim: Rim,
    /// Sag of the bracket: half of what the dial shows at the bottom of a mandrel; positive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sag: Text<Length>,
    /// The bracket's bar, to work the sag out from where it was not measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bar: Option<Bar>,
    /// Where the reader stood.
    #[serde(skip_serializing_if = "is_default")]
    pub view: View,
    /// The ± of one reading.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spread: Text<Length>,
    /// Readings by clock position: "12", "3", "6", "9", also "1:30"; positive when the stem is pushed in.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub readings: Named<quantities::Measured<Length>>,
    /// What it showed when it came back to its first position.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub back: Text<Length>,
}

/// A bracket's bar.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Bar {
    /// Outside diameter.
    pub outside: Text<Length>,
    /// Inside diameter of a tube.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inside: Text<Length>,
    /// Free length from clamp to dial.
    pub length: Text<Length>,
    /// Mass of the dial and its clamp at the end.
    pub end_mass: Text<quantities::Mass>,
}

/// Offsets and angles as another instrument gave them: moving machine against the other one.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Offsets {
    /// Offset up at the middle of the coupling.
    pub up: Text<Length>,
    /// Offset towards 3 o'clock at the middle of the coupling.
    pub right: Text<Length>,
    /// Slope upwards, along from driver to driven.
    pub slope_up: Text<Angle>,
    /// Slope towards 3 o'clock, along from driver to driven.
    pub slope_right: Text<Angle>,
}

/// The feet of one machine.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Machine {
    /// Foot planes by name: "front" (next to the coupling), "rear".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub feet: Named<Foot>,
    /// Height of the shaft above the feet, for drawings only.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub centre_height: Text<Length>,
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
    /// Room sideways before a bolt binds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub side_room: Text<Length>,
    /// Rise of the left and right foot when its own bolt is let go: "left", "right".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub rise: Named<quantities::Measured<Length>>,
}

/// Growth of one foot plane: measured or from the maker, or worked out.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct GrowthAtFoot {
    /// Growth up, measured or the maker's figure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub up: Text<Length>,
    /// Height from the shims to the shaft's middle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub height: Text<Length>,
    /// How much warmer the support runs than it stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rise: Text<TemperatureInterval>,
    /// What it is made of: "cast iron", "steel", …
    #[serde(skip_serializing_if = "String::is_empty")]
    pub material: String,
}

/// The site's own limits.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct LineupLimits {
    /// On the offset at the middle of the coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offset: Text<Length>,
    /// On the slope.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slope: Text<Angle>,
}

/// Shim stock.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Shims {
    /// Thicknesses at hand; otherwise the usual ones.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub stock: Vec<quantities::Measured<Length>>,
    /// Most shims under one foot; otherwise five (common practice).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub most: Text<quantities::Ratio>,
}

impl Lineup {
    /// The feet of one machine.
    pub fn machine(&self, end: End) -> &Machine {
        match end {
            End::Driver => &self.driver,
            End::Driven => &self.driven,
        }
    }
}
