//! Pullers as they are sold, by the load they may bear.
//!
//! A ton here is 2000 lbf (8.9 kN), the smaller of the tons in use, so that the choice errs on the
//! safe side. Never stand in line with a loaded puller; never pull against bearings.
//!
//! Not here: the force that a hub needs (`mechanics`).

use quantities::{Basis, Force, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::si::pounds_force;

/// How a puller is driven.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Drive {
    /// By a screw and a wrench.
    Screw,
    /// By a hydraulic ram.
    Hydraulic,
}

/// A class of pullers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Puller {
    /// How it is driven.
    pub drive: Drive,
    /// Its class in tons.
    pub tons: u32,
    /// The load that it may bear.
    pub capacity: Force,
}

/// Where the classes and the margin come from.
pub const SOURCE: Source = Source::new("common practice", "puller classes", Basis::Memory);

const SCREW: [u32; 6] = [2, 5, 10, 15, 20, 30];
const HYDRAULIC: [u32; 7] = [5, 10, 15, 20, 30, 50, 100];

/// A puller must bear at least this many times the force that the hub is reckoned to need.
pub const MARGIN: f64 = 1.5;

/// Hydraulic pullers by the shaft, tons an inch of diameter, for light fits; a tool-trade rule.
pub const TONS_AN_INCH: (f64, f64) = (8.0, 10.0);
/// The screw of a screw puller is at least this part of the shaft's diameter; a tool-trade rule.
pub const SCREW_OVER_SHAFT: f64 = 0.5;

/// Dilation pressure over fit pressure that an oil-injected hub needs, least and most.
pub const DILATION: (f64, f64) = (1.1, 1.25);
/// Highest pressure of common hand pumps, MPa.
pub const PUMP_MPA: f64 = 240.0;

/// The smallest class that bears `load` (force times [`MARGIN`]); `None` when none does: then more
/// heat or oil pressure is wanted, not a harder pull.
///
/// # Example
/// ```
/// use quantities::Force;
/// use tables::pullers::{Drive, puller_for};
/// use uom::si::force::kilonewton;
/// let puller = puller_for(Force::new::<kilonewton>(150.0), Drive::Hydraulic).unwrap();
/// assert_eq!(puller.tons, 20);
/// ```
pub fn puller_for(load: Force, drive: Drive) -> Option<Puller> {
    let usable = load.is_finite() && load >= Force::default();
    let mut fitting = classes(drive).filter(|puller| usable && puller.capacity >= load);
    fitting.next()
}

/// The classes of a drive, smallest first.
pub fn classes(drive: Drive) -> impl Iterator<Item = Puller> {
    let tons: &[u32] = match drive {
        Drive::Screw => &SCREW,
        Drive::Hydraulic => &HYDRAULIC,
    };
    tons.iter().map(move |&tons| Puller {
        drive,
        tons,
        capacity: pounds_force(2000.0 * f64::from(tons)),
    })
}
