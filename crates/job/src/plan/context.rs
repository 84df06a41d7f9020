//! What the stages of a plan share: the job, its units, and what the earlier stages found.

use couplings::kind::{Planes, Spacer};
use couplings::{Form, Kind};
use mechanics::power::Duty;
use quantities::{Limits, Physical, System};

use super::site::Ruled;
use super::sizes::Part;
use super::stage_builder::StageBuilder;
use super::{Depth, closeup, fit, gap, heat, lineup, machines, removal, sizes};
use crate::file::End;
use crate::{JobFile, Stage};

/// Results in the order in which they lean on each other.
pub(super) struct Context<'a> {
    pub file: &'a JobFile,
    /// Stages for which this job says nothing; the plant's rules may.
    pub untouched: &'a [Stage],
    pub system: System,
    pub depth: Depth,
    pub kind: Option<&'static dyn Kind>,
    pub form: Option<&'static Form>,
    pub duty: Option<Duty>,
    pub sizes: [sizes::Found; 2],
    pub fits: [fit::Found; 2],
    pub heats: [Option<heat::Found>; 2],
    pub gap: gap::Found,
    pub grabs: [Option<heat::seconds::Found>; 2],
    pub lineup: Option<lineup::Found>,
    pub closeup: closeup::Found,
    pub removals: [Option<removal::Found>; 2],
    pub hot: [Option<removal::hot::Found>; 2],
}

impl<'a> Context<'a> {
    pub fn new(ruled: &'a Ruled, system: System, depth: Depth) -> Self {
        let file = &ruled.file;
        let kind = couplings::kind(&file.coupling.kind);
        let named = Some(file.coupling.form.as_str()).filter(|form| !form.is_empty());
        let form = kind.and_then(|kind| kind.form(named).or(kind.form(None)));
        let mut cx = Self {
            file,
            untouched: &ruled.untouched,
            system,
            depth,
            kind,
            form,
            duty: None,
            sizes: Default::default(),
            fits: Default::default(),
            heats: [None, None],
            gap: gap::Found::default(),
            grabs: [None, None],
            lineup: None,
            closeup: closeup::Found::default(),
            removals: [None, None],
            hot: [None, None],
        };
        cx.duty = machines::duty(&cx);
        cx.sizes = End::BOTH.map(|end| sizes::found(&cx, end));
        cx.fits = End::BOTH.map(|end| fit::found(&cx, end));
        cx.heats = End::BOTH.map(|end| heat::found(&cx, end));
        cx.gap = gap::found(&cx);
        cx.lineup = lineup::found(&cx);
        cx.closeup = closeup::found(&cx);
        cx.removals = End::BOTH.map(|end| removal::found(&cx, end));
        if depth == Depth::Full {
            cx.grabs = End::BOTH.map(|end| heat::seconds::found(&cx, end));
            cx.hot = End::BOTH.map(|end| removal::hot::found(&cx, end));
        }
        cx
    }

    pub fn stage(&self, stage: Stage, begun: bool) -> StageBuilder {
        StageBuilder::new(stage, self.system, begun && !self.untouched.contains(&stage))
    }

    /// The units that the job was written in, whatever it is shown in.
    pub fn system_of_job(&self) -> System {
        self.file.system()
    }

    pub fn sizes(&self, end: End) -> &sizes::Found {
        &self.sizes[index(end)]
    }

    pub fn fit(&self, end: End) -> &fit::Found {
        &self.fits[index(end)]
    }

    pub fn heat(&self, end: End) -> Option<&heat::Found> {
        self.heats[index(end)].as_ref()
    }

    pub fn removal(&self, end: End) -> Option<&removal::Found> {
        self.removals[index(end)].as_ref()
    }

    /// Seconds in hand; only in a full plan.
    pub fn grab(&self, end: End) -> Option<&heat::seconds::Found> {
        self.grabs[index(end)].as_ref()
    }

    /// Heat to get a hub off; only in a full plan.
    pub fn hot(&self, end: End) -> Option<&removal::hot::Found> {
        self.hot[index(end)].as_ref()
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

fn index(end: End) -> usize {
    usize::from(end == End::Driven)
}
