//! Further machines of a train, beyond the two of the job.

use quantities::{Angle, AngularVelocity, Length};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::{Named, Text, is_default};
use super::{Dial, Foot, Offsets};

/// The rest of the train.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Train {
    /// Machines beyond the driver: "1" is coupled to it, "2" to that one, and so on.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub before: Named<TrainMachine>,
    /// Machines beyond the driven one: "1" is coupled to it, "2" to that one, and so on.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub after: Named<TrainMachine>,
}

/// One of them, and the coupling that joins it to the machine nearer to this job's coupling.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct TrainMachine {
    /// Its short name: "compressor".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// True where it may be moved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub moves: Option<bool>,
    /// From the middle of the coupling before it to the middle of its own.
    pub coupling_at: Text<Length>,
    /// Distance between the flexing planes of its coupling, where that has a spacer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub between_planes: Text<Length>,
    /// Speed of its coupling, where it is not that of the job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub speed: Text<AngularVelocity>,
    /// Limits on its coupling.
    #[serde(skip_serializing_if = "is_default")]
    pub limits: TrainLimits,
    /// Dials at its coupling; of its two machines the one nearer the train's driver counts as driver,
    /// and distances are from the middle of this coupling.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub dials: Named<Dial>,
    /// Offsets and angles at its coupling that another instrument gave: the machine farther from this
    /// job's coupling against the nearer one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub typed: Option<Offsets>,
    /// Its foot planes by name, at distances from the middle of its coupling.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub feet: Named<Foot>,
}

/// Limits on a coupling of the train.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct TrainLimits {
    /// On the offset at its middle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offset: Text<Length>,
    /// On the slope; with a spacer, on the angle at each flexing plane.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slope: Text<Angle>,
}
