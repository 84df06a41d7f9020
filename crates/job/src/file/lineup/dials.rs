//! Dials and what else tells where the shafts lie.

use quantities::{Angle, Length, Mass, Measured};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::{End, Named, Text, is_default};

/// What a dial reads.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum DialKind {
    /// On the rim.
    #[default]
    Rim,
    /// On the face.
    Face,
}

/// Whose rim or face it reads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Reads {
    /// The driver's hub.
    Driver,
    /// The driven hub.
    Driven,
    /// The spool or spacer between the flexing planes.
    Spool,
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

/// Which side of a face the stem touches.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum FaceSide {
    /// The face that looks at the dial's carrier.
    #[default]
    Near,
    /// The back of it, looking away from the carrier: the signs turn round.
    Far,
}

/// Which way the pointer goes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Rises {
    /// The reading rises when the stem is pushed in, as on most dials.
    #[default]
    PushedIn,
    /// The reading rises when the stem is let out.
    LetOut,
}

/// What was turned during the sweep.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Turned {
    /// Both shafts together: the stem stays on one spot, and runout drops out.
    #[default]
    Both,
    /// The carrier's shaft alone, round a hub that stands still: its runout comes in.
    Carrier,
}

/// One dial and its sweep.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Dial {
    /// Rim or face.
    pub kind: DialKind,
    /// The machine whose shaft carries the bracket.
    pub rides_on: End,
    /// Whose hub it reads, or "spool"; otherwise the other machine's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reads: Option<Reads>,
    /// Where its stem touches: distance from the middle of the coupling, towards the machine read;
    /// for a spool, towards the machine that carries the dial.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Text<Length>,
    /// Diameter of the circle that a face dial sweeps.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub swing: Text<Length>,
    /// Which side of the rim.
    #[serde(skip_serializing_if = "is_default")]
    pub rim: Rim,
    /// Which side of the face.
    #[serde(skip_serializing_if = "is_default")]
    pub face: FaceSide,
    /// Sag of the bracket: half of what the dial shows at the bottom of a mandrel; positive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sag: Text<Length>,
    /// What the bracket showed at the bottom of a mandrel, zeroed on top: negative for a rim dial,
    /// of either sign for a face dial.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mandrel: Text<Length>,
    /// The bracket's bar, to work the sag out from where it was not measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bar: Option<Bar>,
    /// A name for the bracket: dials on one bracket share the error of its sag. Otherwise one to
    /// each machine.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub bracket: String,
    /// Where the reader stood.
    #[serde(skip_serializing_if = "is_default")]
    pub view: View,
    /// Which way the pointer goes.
    #[serde(skip_serializing_if = "is_default")]
    pub rises: Rises,
    /// What the dial can be read to: its smallest step.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub division: Text<Length>,
    /// The ± of one reading, beside its division.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spread: Text<Length>,
    /// What was turned: "both" shafts, or the "carrier" alone.
    #[serde(skip_serializing_if = "is_default")]
    pub turned: Turned,
    /// Total runout of the hub read, where the carrier alone was turned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub runout: Text<Length>,
    /// Clock position at which that hub's high spot stood during the sweep: "4", "7:30".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub high: String,
    /// The name of the other face dial, half a turn from this one: the two together are free of end
    /// float.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub opposite: String,
    /// Readings by clock position: "12", "3", "6", "9", also "1:30"; positive when the stem is pushed in.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub readings: Named<Measured<Length>>,
    /// Further sweeps with the same set-up, by number: "2", "3".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub again: Named<Named<Measured<Length>>>,
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
    pub end_mass: Text<Mass>,
}

/// Offsets and angles as another instrument gave them: moving machine against the other one.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Offsets {
    /// Offset up at the middle of the coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub up: Text<Length>,
    /// Offset towards 3 o'clock at the middle of the coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right: Text<Length>,
    /// Slope upwards, along from driver to driven.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slope_up: Text<Angle>,
    /// Slope towards 3 o'clock, along from driver to driven.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slope_right: Text<Angle>,
    /// Offsets at other places, each under a name of your own.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub planes: Named<OffsetAt>,
}

/// An offset of the moving machine at some place along the shaft.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct OffsetAt {
    /// Distance from the middle of the coupling, towards the driven machine; negative towards the
    /// driver.
    pub at: Text<Length>,
    /// Up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub up: Text<Length>,
    /// Towards 3 o'clock.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right: Text<Length>,
}

/// Straightedge and feelers: enough to rough in, and to see when a dial was booked the wrong way
/// round.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Rough {
    /// How far the moving machine's rim stands proud under a straightedge, by clock position; from
    /// two opposite places different rims drop out.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub steps: Named<Measured<Length>>,
    /// Gaps between the hub faces by clock position, by feelers or taper gauge.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub gaps: Named<Measured<Length>>,
    /// Diameter at which those gaps were taken.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub diameter: Text<Length>,
}
