//! Gap, close-up, first run and removal.

use quantities::{
    Force, Length, Pressure, Ratio, ThermodynamicTemperature, Time, Torque, Velocity,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Named, Text};

/// The gap between hub faces, or between the seats of a disc pack.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Gap {
    /// The gap wanted, with its ±; otherwise the sheet's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wanted: Text<Length>,
    /// The gap that was recorded before the coupling came apart, to be restored.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub recorded: Text<Length>,
    /// Readings of the gap by clock position: "12", "3", "6", "9".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub readings: Named<quantities::Measured<Length>>,
    /// How much the shafts grow towards each other when warm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_growth: Text<Length>,
    /// End float of a motor with sleeve bearings.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_float: Text<Length>,
}

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
}
