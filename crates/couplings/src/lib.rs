//! The kinds of coupling, one file each, and what a coupling asks of a job.
//!
//! [`kind`](mod@kind) is the small interface behind which all that is special about a kind stands
//! (`kinds/gear.rs`, `kinds/grid.rs`, …). [`sheet`] is the maker's data as the user enters it; it
//! overrides whatever is said of a kind in general. [`step`] is one line of the order of work.
//!
//! Terms follow AGMA 9009 and the trade: hub, sleeve, cover, grid, disc pack, spacer, flange,
//! seal, gasket, DBSE (distance between shaft ends).
//!
//! Not here: what a job has measured (`job`), how metal behaves (`mechanics`), where the shafts
//! are (`lineup`).

pub mod axial_force;
mod cautions;
mod character;
pub mod closeup;
pub mod contradictions;
pub mod din_740;
pub mod dues;
pub mod duty;
mod end;
pub mod envelope;
mod findings;
mod forgives;
pub mod gap;
pub mod inertia;
pub mod kind;
mod kinds;
pub mod lubricant;
pub mod question;
pub mod rating;
pub mod running;
pub mod service;
pub mod share;
pub mod sheet;
pub mod spacer;
mod stage;
pub mod step;
mod steps;
pub mod teeth;
pub mod vertical;
pub mod wear;

pub use end::End;
pub use kind::{
    Bolting, Caution, Character, Check, CloseUp, Duty, Each, Finding, Forgives, Form, GapRule,
    Gives, GoesBack, Kind, Load, Lubrication, Measure, Need, Part, Planes, Play, Reason, Shock,
    Sliding, Spacer, Speaks, Turn, Twist, common_cautions, common_findings,
};
pub use kinds::{kind, kinds};
pub use question::{Answer, Question};
pub use share::Share;
pub use sheet::{Allowance, Allows, Sheet};
pub use stage::Stage;
pub use step::{Step, When};
