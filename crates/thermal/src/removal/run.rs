//! One run of heat: marching, watching for the opening and the shutting.

use quantities::{Length, Physical, ThermodynamicTemperature, Time};

use super::{Hottest, Removal, Window, difference};
use crate::ThermalError;
use crate::check::Effort;
use crate::curve::{Peak, Pull, Sample, Watch, first_over, hottest, peaks};
use crate::field::Past;
use crate::kernel::case::{Burn, Place as Where};
use crate::kernel::growth::Curve;
use crate::kernel::march::March;
use crate::kernel::model::Model;
use crate::kernel::moment::{Leg, Moment, ticks};
use crate::setup::{HOTTEST_K, SWITCH_TICKS, Setup, unsolved};
use crate::unknowns::Guess;

/// How far a run goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Goal {
    /// To the end of the time that is looked at.
    WholeTime,
    /// Until it opens, if it does.
    Opened,
    /// Until it has been open for so long (s), or has shut, or a limit is passed.
    HeldWithinLimit(f64),
    /// Until it shuts, if it does.
    Shut,
}

/// What the runs of one question share.
pub(crate) struct Course<'a> {
    asked: &'a Removal,
    setup: &'a Setup<'a>,
    model: &'a Model,
    effort: Effort,
}

/// A run.
pub(crate) struct Run {
    pub curve: Vec<Sample>,
    pub past: Past,
    pub opens: Option<Time>,
    pub shuts: Option<Time>,
    pub energy: f64,
    /// When the hub passed what is modelled.
    pub ended: Option<Time>,
    /// Node, temperature (K) and time of the hottest spot.
    hottest: (usize, f64, Time),
    /// Seconds, and the least clearance on the radius if nothing touched.
    leads: Vec<(f64, f64)>,
    /// Temperatures at the moment that it opened, and the guess that it was run with.
    opened: Option<(Vec<f64>, Guess)>,
}

impl<'a> Course<'a> {
    pub fn new(asked: &'a Removal, setup: &'a Setup, model: &'a Model, effort: Effort) -> Self {
        Self { asked, setup, model, effort }
    }

    /// A run with heat as entered.
    pub fn run(&self, guess: &Guess, goal: Goal) -> Result<Run, ThermalError> {
        let burns = self.asked.heats.iter().map(|heat| heat.burn(self.model));
        let burns = burns.collect::<Result<Vec<_>, _>>()?;
        let start = vec![self.asked.temperature.si(); self.model.mesh.nodes_m.len()];
        self.from(guess, start, Time::from_si(0.0), burns, goal)
    }

    /// What follows when heat stops the moment that it opened.
    pub fn stopped(&self, run: &Run) -> Result<Option<Run>, ThermalError> {
        let (Some(opens), Some((start, guess))) = (run.opens, &run.opened) else {
            return Ok(None);
        };
        let mut then = self.from(guess, start.clone(), opens, vec![], Goal::Shut)?;
        then.opens = Some(opens);
        let left_m = then.leads.last().map_or(0.0, |(_, lead)| *lead);
        if then.shuts.is_none() && left_m < 0.5 * self.asked.clearance.si() {
            // It shuts at once: there was no clearance above the wanted one to lose.
            then.shuts = Some(opens);
        }
        Ok(Some(then))
    }

    fn from(
        &self,
        guess: &Guess,
        start: Vec<f64>,
        since: Time,
        burns: Vec<Burn>,
        goal: Goal,
    ) -> Result<Run, ThermalError> {
        let watch = Watch::new(self.model, self.asked.friction, &self.asked.places)?;
        let case = self.setup.case(self.model, guess, Where::Home, burns)?;
        let first = ticks(since.si(), 1);
        let end = first + ticks(self.asked.until.si() - since.si(), SWITCH_TICKS);
        let mut march = March::new(case, start, first, self.effort.tolerance_k())
            .ok_or_else(|| unsolved(since.si()))?;
        let mut run = Run::begin(self.model, watch.sample(&march.now), &march.now);
        if march.now.joint.least_m() >= 0.5 * self.asked.clearance.si() {
            run.opens = Some(since);
            run.opened = Some((march.now.temperature_k.to_vec(), *guess));
        }
        while march.now.ticks < end && !self.reached(&run, goal) {
            let leg = march.advance(end).ok_or_else(|| unsolved(march.now.seconds()))?;
            run.note(self.model, watch.sample(&leg.to), &leg.to);
            self.switch(&mut run, &march, &leg, guess);
            if !self.is_known(run.hottest.1) {
                run.ended = Some(leg_end(&leg));
            }
        }
        run.energy = march.ledger.error();
        Ok(run)
    }

    fn reached(&self, run: &Run, goal: Goal) -> bool {
        let goal_met = match goal {
            Goal::WholeTime => false,
            Goal::Opened => run.opens.is_some(),
            Goal::HeldWithinLimit(held_s) => {
                run.shuts.is_some() || run.held_s() >= held_s || self.over_any_limit(run)
            }
            Goal::Shut => run.shuts.is_some(),
        };
        goal_met || run.ended.is_some()
    }

    pub fn over_any_limit(&self, run: &Run) -> bool {
        let hub = self.asked.limit.is_some_and(|limit| run.hottest.1 > limit.si());
        hub || peaks(&run.curve, &self.asked.places).iter().any(|peak| peak.over_limit.is_some())
    }

    /// Notes the first opening and the shutting after it.
    fn switch(&self, run: &mut Run, march: &March, leg: &Leg, guess: &Guess) {
        if run.shuts.is_some() {
            return;
        }
        let wanted = 0.5 * self.asked.clearance.si();
        let spare = |nodal: &[f64]| {
            march.case.free_gap_m(nodal).into_iter().fold(f64::INFINITY, f64::min) - wanted
        };
        let ends = [&leg.from, &leg.to].map(|moment| moment.joint.least_m() - wanted);
        let Some(part) = leg.crossing(ends, spare) else { return };
        let time = Time::from_si(leg.seconds(part));
        if ends[1] >= 0.0 {
            if run.opens.is_none() {
                run.opens = Some(time);
                run.opened = Some((leg.temperature_k(part), *guess));
            }
        } else {
            run.shuts = Some(time);
        }
    }

    /// False where the hub's expansion is not known, or its metal no longer what it was.
    fn is_known(&self, hub_k: f64) -> bool {
        hub_k <= HOTTEST_K && self.asked.hub.metal.expansion.reaches(hub_k).is_ok()
    }
}

impl Run {
    fn begin(model: &Model, sample: Sample, now: &Moment) -> Self {
        let (node, kelvin) = hottest(model, &now.temperature_k);
        let mut past = Past::default();
        past.note(now.seconds(), &now.temperature_k);
        Self {
            hottest: (node, kelvin, sample.time),
            curve: vec![sample],
            past,
            opens: None,
            shuts: None,
            energy: 0.0,
            ended: None,
            leads: vec![(now.seconds(), now.joint.least_m())],
            opened: None,
        }
    }

    fn note(&mut self, model: &Model, sample: Sample, now: &Moment) {
        let (node, kelvin) = hottest(model, &now.temperature_k);
        if kelvin > self.hottest.1 {
            self.hottest = (node, kelvin, sample.time);
        }
        self.leads.push((now.seconds(), now.joint.least_m()));
        self.past.note(now.seconds(), &now.temperature_k);
        self.curve.push(sample);
    }

    /// Seconds since it opened; below zero when it has not.
    pub fn held_s(&self) -> f64 {
        let now = self.leads.last().map_or(0.0, |(seconds, _)| *seconds);
        self.opens.map_or(-1.0, |opens| now - opens.si())
    }

    pub fn window(&self) -> Option<Window> {
        self.opens.map(|opens| Window { opens, shuts: self.shuts })
    }

    pub fn least_pull(&self) -> (Time, Pull) {
        let mut least = (self.curve[0].time, self.curve[0].pull);
        for sample in &self.curve {
            if sample.pull.high < least.1.high {
                least = (sample.time, sample.pull);
            }
        }
        least
    }

    pub fn hottest(&self, model: &Model, limit: Option<ThermodynamicTemperature>) -> Hottest {
        let (node, kelvin, time) = self.hottest;
        let [radius, along] = model.mesh.nodes_m[node].map(Length::from_si);
        let temperature = ThermodynamicTemperature::from_si(kelvin);
        let over_limit = limit.and_then(|limit| first_over(&self.curve, limit, |s| s.hub));
        Hottest { peak: Peak { temperature, time, over_limit }, radius, along }
    }

    /// How much another run's answer differs: of the time to open, or of the pull that is left.
    pub fn difference(&self, other: &Self, cold_n: f64, interference_r_m: f64) -> f64 {
        match (self.opens, other.opens) {
            (Some(fine), Some(coarse)) => difference(fine.si(), coarse.si()),
            (None, None) => {
                let left = |run: &Self| run.least_pull().1.high.si();
                (left(self) - left(other)).abs() / cold_n
            }
            // One just opens and the other just does not: compare how far they came.
            _ => {
                let last = |run: &Self| run.leads.last().map_or(0.0, |(seconds, _)| *seconds);
                let end = last(self).min(last(other));
                (self.lead_m(end) - other.lead_m(end)).abs() / interference_r_m
            }
        }
    }

    /// The least clearance on the radius if nothing touched, at a moment.
    fn lead_m(&self, seconds: f64) -> f64 {
        Curve::new(self.leads.clone()).at(seconds)
    }
}

fn leg_end(leg: &Leg) -> Time {
    Time::from_si(leg.to.seconds())
}
