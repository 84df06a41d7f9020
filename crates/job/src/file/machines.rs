//! Head of the job and the two machines.

use couplings::kind::Load;
use quantities::{
    AngularVelocity, Force, Length, MomentOfInertia, Power, Ratio, System,
    ThermodynamicTemperature, Torque, Whole,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{End, Text, is_default};

/// Number, name, works, units.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Head {
    /// The job's number in the book.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub number: String,
    /// What it is called: "Sea-water pump 2".
    pub title: String,
    /// Where.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub works: String,
    /// True when machines and readings are invented.
    #[serde(skip_serializing_if = "is_default")]
    pub invented: bool,
    /// Units that it is shown in: "metric" or "inch".
    pub units: System,
    /// The day it was written: "2026-11-25".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub written: String,
    /// Whose hand: initials.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub by: String,
    /// Anything the next person should know.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// What drives: its sort chooses the service factor.
pub type Driver = Machine;
/// What is driven.
pub type Driven = Machine;

/// The machines and what they do.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Machines {
    /// Power that the coupling carries.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub power: Text<Power>,
    /// Speed of the coupling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub speed: Text<AngularVelocity>,
    /// Service factor on the torque; from the maker's sheet or the site's rule.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub service_factor: Text<Ratio>,
    /// Largest torque at start-up or in a jam, if known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub peak_torque: Text<Torque>,
    /// Greatest torque of the driver while it starts, at the coupling's speed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub start_torque: Text<Torque>,
    /// True where it starts against its load: the load's torque is there while it speeds up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub starts_loaded: Option<bool>,
    /// Starts in an hour, where they are many.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub starts: Option<Whole>,
    /// True where the torque turns round.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reversing: Option<bool>,
    /// Torque that swings about the steady one without end, to each side.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vibratory_torque: Text<Torque>,
    /// How often it swings: "25 Hz".
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vibratory_frequency: Text<AngularVelocity>,
    /// What the drive asks of a coupling, for choosing its kind.
    #[serde(skip_serializing_if = "is_default")]
    pub asks: Asks,
    /// Temperature of the place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ambient: Text<ThermodynamicTemperature>,
    /// Which machine may be moved: "driver" (usual) or "driven".
    #[serde(skip_serializing_if = "is_default")]
    pub moves: End,
    /// The machine that drives.
    #[serde(skip_serializing_if = "is_default")]
    pub driver: Machine,
    /// The machine that is driven.
    #[serde(skip_serializing_if = "is_default")]
    pub driven: Machine,
}

/// What a drive asks of a coupling; what is left out is not known.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Asks {
    /// How the load runs: "uniform", "moderate", "heavy", "extreme"; otherwise from what is driven.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load: Option<Load>,
    /// True where the shaft lines stay offset while running.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offset: Option<bool>,
    /// True where a shaft moves along its axis while running.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_movement: Option<bool>,
    /// True where it can be stopped and opened for grease.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grease_service: Option<bool>,
    /// True where it stands in heat, above about 80 °C; otherwise from the temperature of the place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hot_place: Option<bool>,
    /// True where torsional vibration must be damped.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub damping: Option<bool>,
}

/// One machine.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Machine {
    /// Its short name in sentences: "motor", "pump".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// What sort of machine it is: "electric motor", "centrifugal pump".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub sort: String,
    /// What locks its energy out: "motor switch 2M", "suction and discharge valves shut, drained".
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub isolate: Vec<String>,
    /// Moment of inertia of its rotor, at the coupling's speed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia: Text<MomentOfInertia>,
    /// From the middle of its hub to the nearest bearing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub overhang: Text<Length>,
    /// Greatest bending moment that its maker allows a coupling's weight at that bearing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub overhang_limit: Text<Torque>,
    /// Most force along the shaft that its maker allows a coupling to put on its bearings.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thrust_limit: Text<Force>,
}

impl Machines {
    /// One of the two.
    pub fn at(&self, end: End) -> &Machine {
        match end {
            End::Driver => &self.driver,
            End::Driven => &self.driven,
        }
    }

    /// The short name of one of the two; "driver" or "driven machine" when none was given.
    pub fn name(&self, end: End) -> &str {
        match (self.at(end).name.as_str(), end) {
            ("", End::Driver) => "driver",
            ("", End::Driven) => "driven machine",
            (name, _) => name,
        }
    }
}
