//! The maker's data for the coupling in hand, as the user enters it from the manual.
//!
//! Every figure may be missing; a missing one is said to be missing, never filled in from what is
//! usual. A figure that is here overrides what [`crate::Kind`] says of the kind in general.

use quantities::{
    Angle, AngularVelocity, Length, Mass, Measured, MomentOfInertia, Stiffness,
    ThermodynamicTemperature, Time, Torque, Volume,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use tables::nut_factor::Threads;

/// The maker's sheet. Whatever is left out counts as not known.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Sheet {
    /// Title, number and edition of the manual or drawing that these figures are from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub taken_from: Option<String>,
    /// Torque that it carries continuously.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rated_torque: Option<Measured<Torque>>,
    /// Torque that it bears at starts and other repeated peaks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub peak_torque: Option<Measured<Torque>>,
    /// Torque that may swing to and fro for ever about the steady one, to each side.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vibratory_torque: Option<Measured<Torque>>,
    /// Highest speed as supplied, not balanced further.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_speed: Option<Measured<AngularVelocity>>,
    /// Highest speed when balanced as an assembly.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balanced_speed: Option<Measured<AngularVelocity>>,
    /// Largest bore that a hub may have, with its key; the driver's where they differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_bore: Option<Measured<Length>>,
    /// Largest bore of the driven hub where it differs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub driven_max_bore: Option<Measured<Length>>,
    /// Highest temperature that a hub may be heated to.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_heating: Option<Measured<ThermodynamicTemperature>>,
    /// Material of the hubs: "steel", "ductile iron", …
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_material: Option<String>,
    /// Material of the seals: "nitrile", "fluoroelastomer", …
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seal_material: Option<String>,
    /// Highest temperature of the seals or of the elastomer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seal_limit: Option<Measured<ThermodynamicTemperature>>,
    /// Moment of inertia of the whole coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia: Option<Measured<MomentOfInertia>>,
    /// Torsional stiffness, as the torque for one radian of twist.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torsional_stiffness: Option<Measured<Torque>>,
    /// Axial stiffness of the whole coupling: the force along the shaft that moves it by a length.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub axial_stiffness: Option<Measured<Stiffness>>,
    /// Free play in the direction of turning, as an angle, when new.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub backlash: Option<Measured<Angle>>,
    /// Sizes.
    #[serde(skip_serializing_if = "unset")]
    pub sizes: Sizes,
    /// What stands between the hubs.
    #[serde(skip_serializing_if = "unset")]
    pub gap: Gap,
    /// What misalignment it bears while running, and what is allowed at fitting.
    #[serde(skip_serializing_if = "unset")]
    pub allows: Allows,
    /// Flange, cover or pack bolts.
    #[serde(skip_serializing_if = "unset")]
    pub bolts: Bolts,
    /// Set screws of the hubs.
    #[serde(skip_serializing_if = "unset")]
    pub setscrew: Setscrew,
    /// Interference of the hubs that the maker wants.
    #[serde(skip_serializing_if = "unset")]
    pub interference: Interference,
    /// Grease or oil.
    #[serde(skip_serializing_if = "unset")]
    pub lubricant: Lubricant,
    /// Masses.
    #[serde(skip_serializing_if = "unset")]
    pub masses: Masses,
    /// Moments of inertia of its parts, where the sheet gives them apart.
    #[serde(skip_serializing_if = "unset")]
    pub inertias: Inertias,
    /// How far it may wear.
    #[serde(skip_serializing_if = "unset")]
    pub wear: Wear,
}

/// Sizes of the coupling.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Sizes {
    /// Length of a hub through its bore; of the driver's where they differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_length: Option<Measured<Length>>,
    /// Length of the driven hub where it differs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub driven_hub_length: Option<Measured<Length>>,
    /// Outside diameter of a hub's barrel; of the driver's where they differ.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_outside: Option<Measured<Length>>,
    /// Outside diameter of the driven hub's barrel where it differs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub driven_hub_outside: Option<Measured<Length>>,
    /// Outside diameter of the flanges, or of the cover.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub flange_outside: Option<Measured<Length>>,
    /// Pitch diameter of the gear teeth, or mean diameter of the grid.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pitch_diameter: Option<Measured<Length>>,
    /// Length of the spacer, flange face to flange face.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spacer_length: Option<Measured<Length>>,
    /// Outside diameter of the spacer's tube.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spacer_outside: Option<Measured<Length>>,
    /// Inside diameter of the spacer's tube; left out for a solid one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spacer_inside: Option<Measured<Length>>,
    /// Free length of one disc pack between its seats, or of one diaphragm between its flanges.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pack_thickness: Option<Measured<Length>>,
    /// Thickness of what gives when it is new: grid, insert, wall of a bush.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub element_thickness: Option<Measured<Length>>,
    /// Length between the flexing planes: teeth to teeth, pack to pack.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub between_planes: Option<Measured<Length>>,
}

/// What stands between the hubs. A tolerance is written after the figure: "3.2 ± 0.4 mm".
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Gap {
    /// Gap between hub faces, with its tolerance after a ±.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_faces: Option<Measured<Length>>,
    /// Distance between shaft ends (DBSE), with its tolerance after a ±.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dbse: Option<Measured<Length>>,
    /// Least gap that may be set, where the sheet gives a range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least: Option<Measured<Length>>,
    /// Greatest gap that may be set, where the sheet gives a range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub greatest: Option<Measured<Length>>,
    /// Total end float that the coupling leaves when it is limited for a sleeve-bearing motor.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_float: Option<Measured<Length>>,
}

/// What misalignment the coupling bears.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Allows {
    /// At fitting.
    #[serde(skip_serializing_if = "unset")]
    pub fitting: Allowance,
    /// While running: the most it bears.
    #[serde(skip_serializing_if = "unset")]
    pub running: Allowance,
}

/// One set of allowances. Each is the most that is allowed when the others are nothing.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Allowance {
    /// Offset of the shafts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offset: Option<Measured<Length>>,
    /// Angle at one engagement (mesh, pack or element).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub angle: Option<Measured<Angle>>,
    /// Movement along the shaft to each side of the set position; of the whole coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub axial: Option<Measured<Length>>,
}

/// Flange, cover or pack bolts.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Bolts {
    /// Bolts in one flange, cover or pack.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1, max = 200))]
    pub count: Option<quantities::Whole>,
    /// Size: "M16", "5/8-11".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub size: Option<String>,
    /// Property class or grade: "8.8", "grade 5".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grade: Option<String>,
    /// Tightening torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque: Option<Measured<Torque>>,
    /// What the threads are like when that torque is applied.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub threads: Option<Threads>,
    /// Diameter of the bolt circle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub circle: Option<Measured<Length>>,
    /// Torque that turns a self-locking nut before it seats.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub prevailing_torque: Option<Measured<Torque>>,
}

/// Set screws of the hubs.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Setscrew {
    /// Set screws in one hub.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1, max = 12))]
    pub count: Option<quantities::Whole>,
    /// Size: "M10", "3/8-16".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub size: Option<String>,
    /// Tightening torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque: Option<Measured<Torque>>,
}

/// Interference between bore and shaft; a clearance is negative.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Interference {
    /// Least.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least: Option<Measured<Length>>,
    /// Greatest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub greatest: Option<Measured<Length>>,
}

/// Grease or oil.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Lubricant {
    /// What the sheet asks for, in its words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Mass of the filling of the whole coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass: Option<Measured<Mass>>,
    /// Volume of the filling of the whole coupling, where the sheet gives a volume.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub volume: Option<Measured<Volume>>,
    /// Months between fillings.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1, max = 240))]
    pub months: Option<quantities::Whole>,
    /// Running time between fillings, where the sheet gives hours.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub running_time: Option<Measured<Time>>,
}

/// Masses of the parts.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Masses {
    /// One hub, bored.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub: Option<Measured<Mass>>,
    /// The driven hub where it differs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub driven_hub: Option<Measured<Mass>>,
    /// One sleeve or half cover.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sleeve: Option<Measured<Mass>>,
    /// The spacer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spacer: Option<Measured<Mass>>,
    /// The whole coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub total: Option<Measured<Mass>>,
}

/// Moments of inertia of the parts.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Inertias {
    /// One hub, bored.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub: Option<Measured<MomentOfInertia>>,
    /// The driven hub where it differs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub driven_hub: Option<Measured<MomentOfInertia>>,
    /// One sleeve or half cover.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sleeve: Option<Measured<MomentOfInertia>>,
    /// The spacer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spacer: Option<Measured<MomentOfInertia>>,
}

/// How far the coupling may wear.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Wear {
    /// Backlash at which it is renewed, measured along the pitch circle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub backlash: Option<Measured<Length>>,
    /// Backlash when new, measured along the pitch circle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub new_backlash: Option<Measured<Length>>,
    /// Wear of a tooth, groove or element at which it is renewed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tooth: Option<Measured<Length>>,
    /// Least thickness of an elastomer element or bush.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub element: Option<Measured<Length>>,
    /// Stretch of a chain over its length at which it is renewed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stretch: Option<Measured<quantities::Ratio>>,
    /// What the free length of one disc pack may differ from new.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pack: Option<Measured<Length>>,
}

fn unset<T: Default + PartialEq>(part: &T) -> bool {
    *part == T::default()
}
