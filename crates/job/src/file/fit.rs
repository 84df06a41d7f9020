//! What the fit should be.

use quantities::{Force, Length, Ratio};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{End, Text, is_default};

/// The fit wanted at each end, and what it must hold.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Fit {
    /// Safety wanted against slipping, on the torque with its service factor.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub safety: Text<Ratio>,
    /// Lowest friction in the joint; otherwise the common range is used and said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_least: Text<Ratio>,
    /// Highest friction in the joint.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_greatest: Text<Ratio>,
    /// Axial pull that the fit must hold, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub axial: Text<Force>,
    /// The driver's end.
    #[serde(skip_serializing_if = "is_default")]
    pub driver: FitEnd,
    /// The driven end.
    #[serde(skip_serializing_if = "is_default")]
    pub driven: FitEnd,
}

/// The fit wanted at one end: a class, or limits.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct FitEnd {
    /// A class of ISO 286, hole first: "H7/p6".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub class: String,
    /// Least interference wanted (clearance negative), where the maker or the site gives limits.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least: Text<Length>,
    /// Greatest interference wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub greatest: Text<Length>,
}

impl Fit {
    /// The fit at one end.
    pub fn at(&self, end: End) -> &FitEnd {
        match end {
            End::Driver => &self.driver,
            End::Driven => &self.driven,
        }
    }
}
