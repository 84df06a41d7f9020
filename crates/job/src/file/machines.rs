//! Head of the job and the two machines.

use quantities::{AngularVelocity, Power, Ratio, System, ThermodynamicTemperature, Torque};
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
