//! The plan of a job: a pure function of its log book.
//!
//! Everything that page, card, command line and HTTP interface show is in [`Plan`]: numbers with
//! their working and verdict, what is still to measure, steps, cautions, the tools to bring, and
//! what the drawings need. No clock, no disk, no network.

use quantities::{Limits, System, Value, Verdict, Working};
use serde::Serialize;

use crate::Stage;

/// The plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Plan {
    /// Who, what, where.
    pub head: Head,
    /// The ten stages in order.
    pub stages: Vec<StagePlan>,
    /// Before anything else.
    pub cautions: Vec<Caution>,
    /// Putting the coupling on, in order.
    pub on: Vec<Step>,
    /// Taking it off, in order.
    pub off: Vec<Step>,
    /// Tools and supplies to bring.
    pub kit: Vec<KitItem>,
    /// The kind of coupling for this job; `None` while none is chosen.
    pub about: Option<About>,
    /// All kinds side by side, for what this drive asks.
    pub choice: Choice,
    /// What falls due after it is closed up.
    pub dues: Vec<Due>,
    /// Ways to get each hub off, side by side.
    pub ways: Vec<HubOff>,
    /// What the drawings need.
    pub drawings: Drawings,
}

/// The head of a job.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Head {
    /// The job's number in the book.
    pub number: String,
    /// What it is called.
    pub title: String,
    /// Where.
    pub works: String,
    /// True when machines and readings are invented; said wherever the works is named.
    pub invented: bool,
    /// "gear coupling, flanged sleeves".
    pub coupling: String,
    /// What drives: "motor".
    pub driver: String,
    /// What is driven: "pump".
    pub driven: String,
    /// "90 kW, 1480 rpm", as far as known.
    pub runs_at: String,
    /// The day it was written.
    pub written: String,
    /// Whose hand.
    pub by: String,
    /// The units that all texts of this plan are written in.
    pub system: System,
}

/// One stage.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StagePlan {
    /// Which.
    pub stage: Stage,
    /// One sentence: where it stands.
    pub summary: String,
    /// What was found, most wanted first.
    pub numbers: Vec<Number>,
    /// What the log book does not say yet.
    pub missing: Vec<Missing>,
    /// What a reader should know; never a number that is not above.
    pub notes: Vec<String>,
    /// True once anything was entered for it.
    pub begun: bool,
}

/// One number of the plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Number {
    /// Its name, unique in the plan: "fit.driver.interference".
    pub id: String,
    /// "Interference, motor hub".
    pub label: String,
    /// The second line: where the limit comes from, or what it is.
    pub second: String,
    /// The number; `None` when it is still to be measured.
    pub value: Option<Value>,
    /// What it is judged against.
    pub limits: Option<Limits>,
    /// The verdict, when it has limits.
    pub verdict: Option<Verdict>,
    /// What would settle or mend it, beside any verdict but inside.
    pub settle: String,
    /// How it was found.
    pub working: Option<Working>,
    /// True for what belongs on the first page of the card.
    pub key: bool,
}

/// Something still to be measured, chosen or looked up.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Missing {
    /// The place where it is entered: "sizes.driver.key.height".
    pub place: String,
    /// What it is: "key height, motor end".
    pub what: String,
}

/// A caution: a word and at most three short orders.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Caution {
    /// The stage it stands before; `None` before everything.
    pub stage: Option<Stage>,
    /// What to do.
    pub orders: Vec<String>,
}

/// A step of the work.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Step {
    /// Its name: "on.lockout".
    pub id: String,
    /// The stage it belongs to.
    pub stage: Stage,
    /// The order, with this job's numbers in it.
    pub title: Vec<Piece>,
    /// One more sentence.
    pub detail: Vec<Piece>,
    /// Who must agree before going on.
    pub hold: Option<String>,
    /// Tools and supplies.
    pub needs: Vec<String>,
    /// Done: when and by whom.
    pub done: Option<Done>,
}

/// A piece of a step's text.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Piece {
    /// Plain words.
    Words(String),
    /// A number of this job, to be set in bold.
    Number(String),
    /// A number that is still to be measured: what it is.
    Missing(String),
}

/// When and by whom.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Done {
    /// The day and time, UTC.
    pub at: String,
    /// Initials.
    pub by: String,
}

/// Something to bring.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct KitItem {
    /// "outside micrometer 75 to 100 mm".
    pub what: String,
    /// What for.
    pub why: String,
}

impl Plan {
    /// One stage.
    pub fn stage(&self, stage: Stage) -> &StagePlan {
        &self.stages[Stage::ALL.iter().position(|s| *s == stage).unwrap_or(0)]
    }

    /// All numbers, stage by stage.
    pub fn numbers(&self) -> impl Iterator<Item = &Number> {
        self.stages.iter().flat_map(|stage| &stage.numbers)
    }

    /// The number of this name.
    pub fn number(&self, id: &str) -> Option<&Number> {
        self.numbers().find(|number| number.id == id)
    }

    /// Everything still to be measured, stage by stage.
    pub fn missing(&self) -> impl Iterator<Item = &Missing> {
        self.stages.iter().flat_map(|stage| &stage.missing)
    }

    /// The worst word in the plan; `None` when nothing was judged.
    pub fn verdict(&self) -> Option<Verdict> {
        self.stages.iter().filter_map(StagePlan::verdict).max()
    }
}

impl StagePlan {
    /// The worst word of the stage.
    pub fn verdict(&self) -> Option<Verdict> {
        self.numbers.iter().filter_map(|number| number.verdict).max()
    }
}

impl Step {
    /// The title as plain text.
    pub fn title_text(&self) -> String {
        self.title.iter().map(Piece::text).collect()
    }
}

impl Piece {
    /// As plain text.
    pub fn text(&self) -> &str {
        match self {
            Self::Words(text) | Self::Number(text) | Self::Missing(text) => text,
        }
    }
}

mod cautions;
mod closeup;
mod context;
mod coupling;
pub mod drawings;
mod fit;
mod gap;
mod heat;
mod hubs;
mod inspection;
mod keys;
mod kit;
mod lineup;
mod machines;
mod removal;
mod running;
mod site;
mod sizes;
mod stage_builder;
mod steps;

use context::Context;
pub use coupling::{About, Choice, Fault, KindRow, Part, Trait};
pub use drawings::Drawings;
pub use heat::{Dial, Outcome, Tried, Trying, try_heat};
pub use removal::{HubOff, May, Way};
pub use running::Due;

/// How much is worked out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Depth {
    /// All that takes no time: everything but the flow of heat.
    #[default]
    Quick,
    /// The flow of heat as well: seconds in hand, and heat to get a hub off. Some seconds of work.
    Full,
}

/// The plan of a job without the flow of heat, its texts in one system of units.
pub fn plan(job: &crate::Job, system: System) -> Plan {
    plan_with(job, system, Depth::Quick)
}

/// The plan of a job, its texts in one system of units.
pub fn plan_with(job: &crate::Job, system: System, depth: Depth) -> Plan {
    let ruled = site::ruled(&job.file);
    let cx = Context::new(&ruled, system, depth);
    if depth == Depth::Full {
        cx.let_heat_flow();
    }
    let stages = Stage::ALL.map(|stage| planned(&cx, &ruled, stage)).to_vec();
    let numbers: Vec<Number> = stages.iter().flat_map(|stage| stage.numbers.clone()).collect();
    let on = steps::steps(&cx, job, &numbers, steps::Way::On);
    let off = steps::steps(&cx, job, &numbers, steps::Way::Off);
    Plan {
        head: head(&cx),
        cautions: cautions::cautions(&cx),
        kit: kit::kit(&cx, on.iter().chain(&off)),
        about: coupling::about(&cx),
        choice: coupling::choice(&cx),
        dues: running::dues(&cx),
        ways: removal::ways(&cx),
        drawings: drawings::drawings(&cx),
        stages,
        on,
        off,
    }
}

/// One stage alone, without the flow of heat: nothing is worked out but what it leans on.
pub fn stage(job: &crate::Job, system: System, stage: Stage) -> StagePlan {
    let ruled = site::ruled(&job.file);
    planned(&Context::new(&ruled, system, Depth::Quick), &ruled, stage)
}

fn planned(cx: &Context, ruled: &site::Ruled<'_>, stage: Stage) -> StagePlan {
    let mut planned = match stage {
        Stage::Machines => machines::stage(cx),
        Stage::Coupling => coupling::stage(cx),
        Stage::Sizes => sizes::stage(cx),
        Stage::Fit => fit::stage(cx),
        Stage::Heat => heat::stage(cx),
        Stage::Gap => gap::stage(cx),
        Stage::Lineup => lineup::stage(cx),
        Stage::Closeup => closeup::stage(cx),
        Stage::Running => running::stage(cx),
        Stage::Removal => removal::stage(cx),
    };
    let said = ruled.said.iter().filter(|(at, _)| *at == stage);
    planned.notes.extend(said.map(|(_, says)| says.clone()));
    planned
}

fn head(cx: &Context) -> Head {
    let job = &cx.file.job;
    let coupling = match (cx.kind, cx.form) {
        (Some(kind), Some(form)) if kind.forms().len() > 1 => {
            format!("{}, {}", kind.title().to_lowercase(), form.name)
        }
        (Some(kind), _) => kind.title().to_lowercase(),
        _ => String::new(),
    };
    Head {
        number: job.number.clone(),
        title: job.title.clone(),
        works: job.works.clone(),
        invented: job.invented,
        coupling,
        driver: cx.name(crate::file::End::Driver).to_owned(),
        driven: cx.name(crate::file::End::Driven).to_owned(),
        runs_at: cx.runs_at(),
        written: job.written.clone(),
        by: job.by.clone(),
        system: cx.system,
    }
}
