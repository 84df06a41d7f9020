//! What the stages of a plan share: the job, its units, and what the earlier stages found.

use std::sync::OnceLock;

use couplings::kind::{Planes, Spacer};
use couplings::{Form, Kind};
use mechanics::power::Duty;
use quantities::{Limits, Physical, System};
use rayon::join;

use super::site::Ruled;
use super::sizes::Part;
use super::stage_builder::StageBuilder;
use super::{Depth, closeup, fit, gap, heat, lineup, machines, removal, sizes};
use crate::file::End;
use crate::{JobFile, Stage};

/// The job, and what its stages find, each found when it is first asked for. A stage may lean on
/// those before it.
pub(super) struct Context<'a> {
    pub file: &'a JobFile,
    /// Stages for which this job says nothing; the plant's rules may.
    pub untouched: &'a [Stage],
    pub system: System,
    pub depth: Depth,
    pub kind: Option<&'static dyn Kind>,
    pub form: Option<&'static Form>,
    duty: OnceLock<Option<Duty>>,
    sizes: [OnceLock<sizes::Found>; 2],
    fits: [OnceLock<fit::Found>; 2],
    heats: [OnceLock<Option<heat::Found>>; 2],
    gap: OnceLock<gap::Found>,
    grabs: [OnceLock<Option<heat::seconds::Found>>; 2],
    lineup: OnceLock<Option<lineup::Found>>,
    closeup: OnceLock<closeup::Found>,
    removals: [OnceLock<Option<removal::Found>>; 2],
    hot: [OnceLock<Option<removal::hot::Found>>; 2],
}

impl<'a> Context<'a> {
    pub fn new(ruled: &'a Ruled<'a>, system: System, depth: Depth) -> Self {
        let file: &JobFile = &ruled.file;
        let kind = couplings::kind(&file.coupling.kind);
        let named = Some(file.coupling.form.as_str()).filter(|form| !form.is_empty());
        // A form that this kind does not have is still to choose: none stands in for it.
        let form = kind.and_then(|kind| kind.form(named));
        Self {
            file,
            untouched: &ruled.untouched,
            system,
            depth,
            kind,
            form,
            duty: OnceLock::new(),
            sizes: Default::default(),
            fits: Default::default(),
            heats: Default::default(),
            gap: OnceLock::new(),
            grabs: Default::default(),
            lineup: OnceLock::new(),
            closeup: OnceLock::new(),
            removals: Default::default(),
            hot: Default::default(),
        }
    }

    /// Lets the flow of heat run at both ends, on and off, side by side.
    pub fn let_heat_flow(&self) {
        let on = || join(|| self.grab(End::Driver), || self.grab(End::Driven));
        let off = || join(|| self.hot(End::Driver), || self.hot(End::Driven));
        join(on, off);
    }

    pub fn stage(&self, stage: Stage, begun: bool) -> StageBuilder {
        StageBuilder::new(stage, self.system, begun && !self.untouched.contains(&stage))
    }

    /// The units that the job was written in, whatever it is shown in.
    pub fn system_of_job(&self) -> System {
        self.file.system()
    }

    pub fn duty(&self) -> Option<&Duty> {
        self.duty.get_or_init(|| machines::duty(self)).as_ref()
    }

    pub fn sizes(&self, end: End) -> &sizes::Found {
        self.sizes[index(end)].get_or_init(|| sizes::found(self, end))
    }

    pub fn fit(&self, end: End) -> &fit::Found {
        self.fits[index(end)].get_or_init(|| fit::found(self, end))
    }

    pub fn heat(&self, end: End) -> Option<&heat::Found> {
        self.heats[index(end)].get_or_init(|| heat::found(self, end)).as_ref()
    }

    pub fn gap(&self) -> &gap::Found {
        self.gap.get_or_init(|| gap::found(self))
    }

    pub fn lineup(&self) -> Option<&lineup::Found> {
        self.lineup.get_or_init(|| lineup::found(self)).as_ref()
    }

    pub fn closeup(&self) -> &closeup::Found {
        self.closeup.get_or_init(|| closeup::found(self))
    }

    pub fn removal(&self, end: End) -> Option<&removal::Found> {
        self.removals[index(end)].get_or_init(|| removal::found(self, end)).as_ref()
    }

    /// Seconds in hand; only in a full plan.
    pub fn grab(&self, end: End) -> Option<&heat::seconds::Found> {
        let found = || if_full(self.depth, || heat::seconds::found(self, end));
        self.grabs[index(end)].get_or_init(found).as_ref()
    }

    /// Heat to get a hub off; only in a full plan.
    pub fn hot(&self, end: End) -> Option<&removal::hot::Found> {
        let found = || if_full(self.depth, || removal::hot::found(self, end));
        self.hot[index(end)].get_or_init(found).as_ref()
    }

    /// "motor".
    pub fn name(&self, end: End) -> &str {
        self.file.machines.name(end)
    }

    /// "motor hub".
    pub fn hub_name(&self, end: End) -> String {
        format!("{} hub", self.name(end))
    }

    /// "90 kW, 1480 rpm".
    pub fn runs_at(&self) -> String {
        let machines = &self.file.machines;
        let power = machines.power.as_ref().map(|power| power.shown().show(self.system));
        let speed = machines.speed.as_ref().map(|speed| speed.shown().show(self.system));
        [power, speed].into_iter().flatten().collect::<Vec<_>>().join(", ")
    }

    /// Why a stage that needs kind and form says nothing.
    pub fn not_chosen(&self) -> &'static str {
        if self.kind.is_none() { "no kind chosen yet" } else { "its form is still to choose" }
    }

    /// True for a kind in which nothing flexes.
    pub fn is_rigid(&self) -> bool {
        self.form.is_some_and(|form| form.planes == Planes::None)
    }

    /// True where a spacer hinges at two planes.
    pub fn has_two_planes(&self) -> bool {
        self.form.is_some_and(|form| form.planes == Planes::Two && form.spacer == Spacer::With)
    }

    /// The size limits of one part by its class, with the class's name.
    pub fn zone(&self, end: End, part: Part) -> Option<(String, Limits)> {
        let fit: tables::fits::Fit = self.file.fit.at(end).class.parse().ok()?;
        let nominal = self.file.sizes.at(end).nominal.as_ref()?.value();
        let zones = fit.zones(nominal).ok().filter(|_| self.taper(end).is_none())?;
        let [hole, shaft] = fit.part_names();
        let (name, zone) = match part {
            Part::Bore => (hole, zones.hole),
            Part::Shaft => (shaft, zones.shaft),
        };
        let at = |deviation: quantities::Length| (nominal + deviation).si();
        Some((name, Limits::between(at(zone.lower), at(zone.upper))))
    }
}

fn if_full<T>(depth: Depth, found: impl FnOnce() -> Option<T>) -> Option<T> {
    if depth == Depth::Full { found() } else { None }
}

fn index(end: End) -> usize {
    usize::from(end == End::Driven)
}
