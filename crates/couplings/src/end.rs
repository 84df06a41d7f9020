//! The two ends of a coupling.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Which end of the coupling.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum End {
    /// The machine that drives.
    #[default]
    Driver,
    /// The machine that is driven.
    Driven,
}

impl End {
    /// Both, driver first.
    pub const BOTH: [Self; 2] = [Self::Driver, Self::Driven];

    /// Its key in the file.
    pub fn key(self) -> &'static str {
        match self {
            Self::Driver => "driver",
            Self::Driven => "driven",
        }
    }

    /// The other one.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Driver => Self::Driven,
            Self::Driven => Self::Driver,
        }
    }
}
