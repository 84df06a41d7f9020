//! Close-up, first run and removal.

use couplings::running::Support;
use quantities::{
    Area, Force, Length, Power, Pressure, Ratio, ThermodynamicTemperature, Time, Torque, Velocity,
    Whole,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Day, End, Named, Text, is_default};

/// Bolts and grease as the job has them.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Closeup {
    /// Torque that was put on, where it was read back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque_done: Text<Torque>,
    /// Running torque of a self-locking nut, measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub prevailing_torque: Text<Torque>,
    /// Threads as they are: "dry", "zinc plated", "oiled", "lubricated", "molybdenum".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub threads: Option<tables::nut_factor::Threads>,
    /// Grease put in.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub grease_used: String,
    /// Rings of free space inside, measured, where the sheet gives no filling: under names of your
    /// own.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub rooms: Named<Room>,
    /// The day it was closed up: what falls due is counted from it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closed: Option<Day>,
}

/// A ring of free space inside a coupling.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Room {
    /// Its inside diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inside: Text<Length>,
    /// Its outside diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside: Text<Length>,
    /// Its length along the shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Text<Length>,
}

/// The first run.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Running {
    /// Vibration, largest of the bearing housings, r.m.s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vibration: Text<Velocity>,
    /// Temperature of the coupling's outside after the run.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperature: Text<ThermodynamicTemperature>,
    /// How long it has run.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ran_for: Text<Time>,
    /// Vibration along the shaft, largest of the housings beside the coupling, r.m.s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vibration_axial: Text<Velocity>,
    /// Vibration before this job, or what is usual for this machine, r.m.s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vibration_before: Text<Velocity>,
    /// How the machine stands: "rigid" on its base, or "flexible".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub support: Option<Support>,
    /// Temperature of the warmer bearing beside the coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bearing_temperature: Text<ThermodynamicTemperature>,
    /// What makes grease and rubber age sooner: "hot", "wet", "dusty", "reversing", "many starts".
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub hardships: Vec<String>,
}

/// How the hubs come off.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Removal {
    /// The puller at hand: the force it is good for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub puller: Text<Force>,
    /// Margin wanted between puller and pull.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub margin: Text<Ratio>,
    /// True where flame or heater may be used at the machine.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heat_allowed: Option<bool>,
    /// Yield strength of the puller's bolts or studs, where it matters.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stud_yield: Text<Pressure>,
    /// Diameter of the puller's screw, where it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub screw: Text<Length>,
    /// Thread of the puller's screw: "M24", "1-8"; its diameter serves where none is written.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub screw_thread: String,
    /// Effective area of the puller's ram, where it is hydraulic.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ram_area: Text<Area>,
    /// Highest pressure that ram and pump may have.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ram_pressure: Text<Pressure>,
    /// Heat that goes into the hub’s body: of a gas burner’s power a third to a half.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub power_body: Text<Power>,
    /// Heat that goes into the hub’s flange or gear ring.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub power_flange: Text<Power>,
    /// How long it is heated: 5 minutes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heat_for: Text<Time>,
    /// All the heat that can be brought into the hub at once: 20 kW.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub power_at_hand: Text<Power>,
    /// How long it must stay open to be drawn off: 30 s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub window: Text<Time>,
    /// Clearance on the diameter at which it counts as open: 0.02 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clearance: Text<Length>,
    /// The driver's hub: what it lets itself be got off by.
    #[serde(skip_serializing_if = "is_default")]
    pub driver: Hold,
    /// The driven hub.
    #[serde(skip_serializing_if = "is_default")]
    pub driven: Hold,
}

/// What a hub and its shaft end offer to whoever pulls it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Hold {
    /// True where the hub has threaded puller holes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub puller_holes: Option<bool>,
    /// Bolts that go into them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub holes: Option<Whole>,
    /// Their thread: "M16", "5/8-11".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub hole_thread: String,
    /// Length of thread that the bolts engage.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hole_depth: Text<Length>,
    /// Jaws that hold behind the hub or its flange.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jaws: Option<Whole>,
    /// Width of each jaw.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jaw_width: Text<Length>,
    /// How far a jaw reaches over what it holds by.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jaw_grip: Text<Length>,
    /// Thickness of the flange that it holds by.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jaw_on: Text<Length>,
    /// True where jaws find a square hold behind the hub.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jaws_hold: Option<bool>,
    /// True where the shaft's end can take the push: sound centre, no hollow end, no probe in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_takes_push: Option<bool>,
    /// True where there is room in front of the hub for a puller.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room: Option<bool>,
    /// True where hub or shaft has a port for oil under pressure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub oil_port: Option<bool>,
    /// True on a taper.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tapered: Option<bool>,
    /// True where the hub is not used again.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub scrap: Option<bool>,
    /// Seals and bearings on the shaft near the hub, by name.
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub near: Named<Near>,
}

impl Removal {
    /// What one of the two hubs offers.
    pub fn at(&self, end: End) -> &Hold {
        match end {
            End::Driver => &self.driver,
            End::Driven => &self.driven,
        }
    }
}

/// Something near a hub that must not get hot, when it goes on as when it comes off.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Near {
    /// How far behind the hub.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub behind: Text<Length>,
    /// What it may have.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Text<ThermodynamicTemperature>,
    /// What it is of, whose limit then holds where none is written: "nitrile",
    /// "fluoroelastomer", …, or "grease".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub material: String,
    /// What is done with it while the hub is hot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub kept: Option<Kept>,
}

/// What is done with a seal or grease near a hot hub.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Kept {
    /// It is taken off, and goes back once the hub is cool.
    #[serde(rename = "taken off")]
    TakenOff,
    /// It stays behind a shield or a wet cloth.
    Shielded,
    /// It stays as it is.
    Left,
}
