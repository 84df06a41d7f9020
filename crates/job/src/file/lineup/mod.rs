//! Dials, distances, feet, growth, shims, the rest of the train, and the visits before.
//!
//! Distances along the shaft are measured from the middle of the coupling, each towards its own
//! machine, and are positive.

mod before;
mod dials;
mod feet;
mod left;
mod train;

use quantities::{Angle, Length, Measured};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{End, Named, Text, is_default};

pub use before::{Before, Pipe};
pub use dials::{
    Bar, Dial, DialKind, FaceSide, OffsetAt, Offsets, Reads, Rim, Rises, Rough, Turned, View,
};
pub use feet::{Flange, Foot, GrowthAtFoot, Machine, Runout, Shift};
pub use left::{AsLeft, LeftDial, Visit};
pub use train::{Train, TrainLimits, TrainMachine};

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
    /// Straightedge and feelers, for roughing in.
    #[serde(skip_serializing_if = "is_default")]
    pub rough: Rough,
    /// The driver's feet.
    #[serde(skip_serializing_if = "is_default")]
    pub driver: Machine,
    /// The driven machine's feet.
    #[serde(skip_serializing_if = "is_default")]
    pub driven: Machine,
    /// Further machines of the train.
    #[serde(skip_serializing_if = "is_default")]
    pub train: Train,
    /// Diameter at which the gap between the hub faces is compared, top and bottom.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap_diameter: Text<Length>,
    /// What it is to be in line for: "run" (usual), "start", or "between" the two.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim: Option<Aim>,
    /// Which moves are wanted where several line up equally well: "least-total" (usual),
    /// "least-greatest", "raise-only".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub prefer: Option<Prefer>,
    /// The site's own limits, where it has them.
    #[serde(skip_serializing_if = "is_default")]
    pub limits: LineupLimits,
    /// Shim stock.
    #[serde(skip_serializing_if = "is_default")]
    pub shims: Shims,
    /// What was looked at before anything is moved.
    #[serde(skip_serializing_if = "is_default")]
    pub before: Before,
    /// Read again once the moves were made.
    #[serde(skip_serializing_if = "is_default")]
    pub as_left: AsLeft,
    /// Visits of years before, under names of your own: "1", "2".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub visits: Named<Visit>,
}

/// What the machines are to be in line for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Aim {
    /// Running, with the growth of every support.
    #[default]
    Run,
    /// Starting.
    Start,
    /// Halfway: the least worst of both.
    Between,
}

/// Which of the moves that line up equally well are wanted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Prefer {
    /// The least sum of all moves.
    #[default]
    LeastTotal,
    /// The least greatest move.
    LeastGreatest,
    /// Nothing is lowered, and the sum is least.
    RaiseOnly,
}

/// The site's own limits.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct LineupLimits {
    /// On the offset at the middle of the coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offset: Text<Length>,
    /// On the slope; with a spacer, on the angle at each flexing plane.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slope: Text<Angle>,
    /// On the rise of a foot when its bolt is let go.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub foot: Text<Length>,
    /// On the movement of the shaft while pipes are made up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pipes: Text<Length>,
}

/// Shim stock.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Shims {
    /// Thicknesses at hand; otherwise the usual ones.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub stock: Vec<Measured<Length>>,
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
