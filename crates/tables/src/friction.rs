//! Friction between hub and shaft: what to count on for grip, and what to allow for in pulling.
//!
//! The same joint may hold with 0.1 and pull off with 0.25: grip is reckoned with a low figure,
//! the puller with a high one.
//!
//! Not here: torque and force (`mechanics`).

use quantities::{Basis, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How hub and shaft were put together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Joint {
    /// Steel on steel, hub heated, surfaces as usual.
    Shrunk,
    /// Steel on steel, hub heated, surfaces degreased.
    ShrunkDegreased,
    /// Steel on steel, hub pressed on cold along the shaft.
    Pressed,
    /// Steel on steel, oil pressure, mineral oil.
    Oil,
    /// Steel on steel, oil pressure, glycerine, degreased.
    OilDegreased,
    /// Grey iron on steel, oil pressure, mineral oil.
    IronOil,
    /// Grey iron on steel, oil pressure, degreased.
    IronOilDegreased,
}

/// Where the figures for grip come from.
pub const SOURCE: Source =
    Source::new("DIN 7190:2001", "friction of interference fits", Basis::Memory);

/// Coefficient of friction to count on for grip.
///
/// # Source
/// [`SOURCE`].
/// # Example
/// ```
/// use tables::friction::{Joint, grip};
/// assert_eq!(grip(Joint::Shrunk), 0.14);
/// ```
pub fn grip(joint: Joint) -> f64 {
    match joint {
        Joint::Shrunk => 0.14,
        Joint::ShrunkDegreased => 0.20,
        Joint::Pressed => 0.08,
        Joint::Oil => 0.12,
        Joint::OilDegreased => 0.18,
        Joint::IronOil => 0.10,
        Joint::IronOilDegreased => 0.16,
    }
}

/// Coefficient to choose a puller by: high on purpose.
pub const PULL: f64 = 0.24;
/// Where [`PULL`] comes from.
pub const PULL_SOURCE: Source =
    Source::new("Bloch, Improving Machinery Reliability", "pp. 217-219, eq. 3-13", Basis::Read);

/// The whole span that is met in the field.
pub const RANGE: (f64, f64) = (0.03, 0.30);
/// Where [`RANGE`] comes from.
pub const RANGE_SOURCE: Source = Source::common_practice("0.03 to 0.3; the top for removal");

/// Friction left with an oil film between hub and shaft; on a taper the hub then slides off.
pub const OIL_FILM: f64 = 0.02;
