//! What is looked at before anything is moved.

use quantities::Length;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::super::{End, Named, Text};

/// How base, bolts and pipes were found.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Before {
    /// True where the anchor bolts of the base are tight.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub anchors_tight: Option<bool>,
    /// True where the grout under the base sounds full.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grout_sound: Option<bool>,
    /// True where feet and pads are clean, free of rust, paint and burrs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub feet_clean: Option<bool>,
    /// True where the jack bolts stand free of the feet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jack_bolts_free: Option<bool>,
    /// True where dowels are drawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dowels_out: Option<bool>,
    /// True where the coupling is open, or turns free.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub coupling_free: Option<bool>,
    /// Pipes, each under a name of your own: "suction", "discharge".
    #[serde(skip_serializing_if = "Named::is_empty")]
    pub pipes: Named<Pipe>,
}

/// A pipe on a machine.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Pipe {
    /// The machine whose flange it is; otherwise the driven one's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on: Option<End>,
    /// How far the shaft went up at the coupling while its flange was made up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub up: Text<Length>,
    /// How far the shaft went towards 3 o'clock.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right: Text<Length>,
    /// Outside diameter of the flange.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside: Text<Length>,
    /// Widest less narrowest gap between the loose flanges.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub out_of_parallel: Text<Length>,
}
