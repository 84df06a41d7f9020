//! A job as a file: what its log book says now, one table a stage.
//!
//! Quantities are text with units. A key that is not known is an error. The places that entries
//! write at are the keys of this file joined by dots.

mod coupling;
mod day;
mod fit;
mod gap;
mod gauge;
mod heat;
mod inspection;
mod key;
mod lineup;
mod machines;
mod site;
mod sizes;
mod work;

use std::collections::BTreeMap;

use quantities::{Physical, System};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::Entry;

pub use coupling::{Coupling, Hub, HubSlice};
pub use couplings::End;
pub use day::{Day, DayError};
pub use fit::{Fit, FitEnd, Mounting, Sharing};
pub use gap::{Gap, Meant, ShaftEnd};
pub use gauge::{Gauge, GaugeReads, Points};
pub use heat::{Assume, ExpansionTo, Figures, Heat};
pub use inspection::Inspection;
pub use key::{Key, KeyEnds};
pub use lineup::{
    Aim, AsLeft, Bar, Before, Dial, DialKind, FaceSide, Flange, Foot, GrowthAtFoot, LeftDial,
    Lineup, LineupLimits, Machine as LineupMachine, OffsetAt, Offsets, Pipe, Prefer, Reads, Rim,
    Rises, Rough, Runout, Shift, Shims, Train, TrainLimits, TrainMachine, Turned, View, Visit,
};
pub use machines::{Asks, Driven, Driver, Head, Machine, Machines};
pub use site::{Holds, Site};
pub use sizes::{Bore, SizeEnd, Sizes, TaperedEnd};
pub use work::{Closeup, Hold, Kept, Near, Removal, Room, Running};

/// The version of the file's form that this program writes.
pub const VERSION: u32 = 1;

/// `Option` of a quantity as text.
pub type Text<Q> = Option<quantities::Measured<Q>>;

/// Readings by name: stations, clock positions, feet.
pub type Named<T> = BTreeMap<String, T>;

/// A job file.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct JobFile {
    /// The version mark: 1.
    pub hubwright: u32,
    /// Number, name, works, units.
    pub job: Head,
    /// The plant's own rules.
    #[serde(default, skip_serializing_if = "is_default")]
    pub site: Site,
    /// The driver, the driven machine, and what they do.
    #[serde(default, skip_serializing_if = "is_default")]
    pub machines: Machines,
    /// The kind of coupling, its hubs and the maker's sheet.
    #[serde(default, skip_serializing_if = "is_default")]
    pub coupling: Coupling,
    /// Bores, shafts and keys as measured.
    #[serde(default, skip_serializing_if = "is_default")]
    pub sizes: Sizes,
    /// What the fit should be.
    #[serde(default, skip_serializing_if = "is_default")]
    pub fit: Fit,
    /// How the hubs are made hot.
    #[serde(default, skip_serializing_if = "is_default")]
    pub heat: Heat,
    /// The gap between hub faces or pack seats.
    #[serde(default, skip_serializing_if = "is_default")]
    pub gap: Gap,
    /// Dials, distances, feet, growth, shims.
    #[serde(default, skip_serializing_if = "is_default")]
    pub lineup: Lineup,
    /// Bolts and grease as the job has them.
    #[serde(default, skip_serializing_if = "is_default")]
    pub closeup: Closeup,
    /// The first run.
    #[serde(default, skip_serializing_if = "is_default")]
    pub running: Running,
    /// The coupling as it was found after its time in service.
    #[serde(default, skip_serializing_if = "is_default")]
    pub inspection: Inspection,
    /// How the hubs come off.
    #[serde(default, skip_serializing_if = "is_default")]
    pub removal: Removal,
    /// Entries after the tables above: corrections, notes, steps done.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub entries: Vec<Entry>,
}

pub(crate) fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

/// The SI value of a quantity that may not be there.
pub(crate) fn si<Q: Physical>(text: &Text<Q>) -> Option<f64> {
    text.as_ref().map(|written| written.value().si())
}

impl JobFile {
    /// The units that this job is written in.
    pub fn system(&self) -> System {
        self.job.units
    }
}
