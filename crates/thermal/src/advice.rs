//! A small search for heat that opens a hub within its limits, or the word that none does.
//!
//! Powers and their division among the zones are tried in the case that opens last, each until the
//! hub opens or a limit is passed. Among those that open, the one that leaves the hub coolest is
//! taken, sharpened once, and answered in full.

use quantities::{Physical, Power, ThermodynamicTemperature, Time};
use rayon::prelude::*;

use crate::ThermalError;
use crate::check::{Effort, duration, positive};
use crate::curve::Pull;
use crate::heating::{Heat, Zone};
use crate::kernel::grading::as_float;
use crate::kernel::model::Model;
use crate::removal::run::{Course, Goal};
use crate::removal::{Opening, Removal};
use crate::setup::Setup;

/// What there is to heat with.
#[derive(Clone, Debug, PartialEq)]
pub struct Search {
    /// Surfaces that can be heated.
    pub zones: Vec<Zone>,
    /// All the heat that can be brought into the hub at once.
    pub greatest: Power,
    /// How long it is to stay open, heat kept on meanwhile: time to draw it off.
    pub window: Time,
}

/// One pattern of heat and what came of it, in the case that opens last.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// All the heat.
    pub power: Power,
    /// Each zone's share of it.
    pub shares: Vec<f64>,
    /// When it opened; `None` when a limit was passed before it had been open for as long as
    /// wanted, or time was up.
    pub opens: Option<Time>,
    /// Hottest spot of the hub until then.
    pub hottest: ThermodynamicTemperature,
    /// The least pull until then.
    pub least_pull: Pull,
}

/// What to do.
#[derive(Clone, Debug, PartialEq)]
pub enum Advice {
    /// Heat like this.
    Heat {
        /// The pattern.
        trial: Trial,
        /// Its answer in full; heat stops when the case that opens last has been open for as long
        /// as wanted, and a little later.
        opening: Box<Opening>,
    },
    /// Nothing that was tried opens it within the limits.
    Nothing {
        /// What came nearest: heat that leaves the least for the puller.
        nearest: Trial,
    },
}

/// Parts that the power is divided into among the zones.
const PARTS: usize = 4;
/// Powers that are tried, as shares of the greatest.
const POWERS: [f64; 5] = [1.0, 0.7, 0.5, 0.35, 0.25];
/// Patterns that are answered in full before giving up.
const ANSWERED: usize = 3;

impl Removal {
    /// Looks for heat that opens the hub within its limit and those of its places, within the time
    /// that is looked at. Heat as entered is put aside.
    ///
    /// # Valid
    /// As [`Removal::solve`]. The search is small: patterns in quarters of which every zone has one,
    /// five powers, and the neighbours of the best, each steady until the hub opens. Heat in turns is
    /// not tried.
    /// # Errors
    /// [`ThermalError::NothingToSearch`] without zones or power; else as [`Removal::solve`].
    pub fn advise(&self, search: &Search) -> Result<Advice, ThermalError> {
        if search.zones.is_empty() {
            return Err(ThermalError::NothingToSearch);
        }
        positive("power", search.greatest.si())?;
        duration(search.window)?;
        let base = self.with(search, search.greatest, &vec![0.0; search.zones.len()], self.until);
        let setup = base.setup()?;
        let model = base.model(&setup, Effort::Quick)?;
        setup.cold_force_n(&model)?;
        let bench = Bench { asked: self, search, setup: &setup, model: &model };
        let mut trials = bench.grid()?;
        if let Some(best) = opened(&trials).first().copied().cloned() {
            trials.extend(bench.round(&best)?);
        }
        for trial in opened(&trials).into_iter().take(ANSWERED) {
            if let Some(opening) = self.answered(search, trial)? {
                return Ok(Advice::Heat { trial: trial.clone(), opening: Box::new(opening) });
            }
        }
        let left = |trial: &&Trial| trial.least_pull.high;
        trials
            .iter()
            .min_by(|a, b| left(a).si().total_cmp(&left(b).si()))
            .map(|nearest| Advice::Nothing { nearest: nearest.clone() })
            .ok_or(ThermalError::NothingToSearch)
    }

    /// The same hub under a pattern of heat.
    fn with(&self, search: &Search, power: Power, shares: &[f64], stop: Time) -> Self {
        let heat = |(zone, share): (&Zone, &f64)| Heat::until(zone.clone(), power * *share, stop);
        Self { heats: search.zones.iter().zip(shares).map(heat).collect(), ..self.clone() }
    }

    /// The full answer, when it keeps what the trial promised.
    fn answered(&self, search: &Search, trial: &Trial) -> Result<Option<Opening>, ThermalError> {
        let Some(opens) = trial.opens else { return Ok(None) };
        // Two hundredths and a second: more than a finer mesh changes the time by.
        let stop = Time::from_si((opens.si() * 1.02 + 1.0).ceil()) + search.window;
        let opening = self.with(search, trial.power, &trial.shares, stop).solve()?;
        let over = opening.hottest.peak.over_limit.is_some()
            || opening.places.iter().any(|peak| peak.over_limit.is_some());
        let lasts = opening.window.and_then(|window| window.lasts());
        let long = opening.window.is_some() && lasts.is_none_or(|lasts| lasts >= search.window);
        Ok((opening.opens.high.is_some() && long && !over).then_some(opening))
    }
}

/// Trials that opened, the coolest first.
fn opened(trials: &[Trial]) -> Vec<&Trial> {
    let mut opened: Vec<&Trial> = trials.iter().filter(|trial| trial.opens.is_some()).collect();
    opened.sort_by(|a, b| a.hottest.si().total_cmp(&b.hottest.si()));
    opened
}

struct Bench<'a> {
    asked: &'a Removal,
    search: &'a Search,
    setup: &'a Setup<'a>,
    model: &'a Model,
}

impl Bench<'_> {
    fn grid(&self) -> Result<Vec<Trial>, ThermalError> {
        let patterns = divisions(PARTS, self.search.zones.len());
        let trials = patterns.par_iter().map(|shares| self.downwards(shares));
        Ok(trials.collect::<Result<Vec<_>, _>>()?.concat())
    }

    /// One pattern with less and less power. Where the time ran out with the hub neither open nor
    /// too hot, less power would not open it either.
    fn downwards(&self, shares: &[f64]) -> Result<Vec<Trial>, ThermalError> {
        let mut trials = Vec::new();
        for power in POWERS {
            let (trial, ran_out) = self.attempt(self.search.greatest * power, shares)?;
            trials.push(trial);
            if ran_out {
                break;
            }
        }
        Ok(trials)
    }

    /// The neighbours of a trial: half a part moved from one zone to another, and powers between.
    fn round(&self, best: &Trial) -> Result<Vec<Trial>, ThermalError> {
        let half = 0.5 / as_float(PARTS);
        let mut patterns = vec![best.shares.clone()];
        for from in 0..best.shares.len() {
            for to in (0..best.shares.len()).filter(|to| *to != from) {
                let mut shares = best.shares.clone();
                shares[from] -= half;
                shares[to] += half;
                if shares[from] >= 0.0 {
                    patterns.push(shares);
                }
            }
        }
        let powers = [0.84, 1.0, 1.19].map(|factor| best.power * factor);
        let trials = patterns.iter().flat_map(|shares| powers.map(|power| (power, shares)));
        let is_new = |(power, shares): &(Power, &Vec<f64>)| {
            *power <= self.search.greatest && (*power != best.power || **shares != best.shares)
        };
        let trials: Vec<_> = trials.filter(is_new).collect();
        let tried = trials.par_iter().map(|(power, shares)| Ok(self.attempt(*power, shares)?.0));
        tried.collect()
    }

    /// What came of it, and whether the time ran out before anything did.
    fn attempt(&self, power: Power, shares: &[f64]) -> Result<(Trial, bool), ThermalError> {
        let asked = self.asked.with(self.search, power, shares, self.asked.until);
        let course = Course::new(&asked, self.setup, self.model, Effort::Quick);
        let held_s = self.search.window.si();
        let run = course.run(&asked.unknowns.tight(), Goal::HeldWithinLimit(held_s))?;
        let too_hot = course.over_any_limit(&run) || run.ended.is_some();
        let kept = !course.over_any_limit(&run) && run.held_s() >= held_s;
        let trial = Trial {
            power,
            shares: shares.to_vec(),
            opens: run.opens.filter(|_| kept),
            hottest: run.hottest(self.model, None).peak.temperature,
            least_pull: run.least_pull().1,
        };
        Ok((trial, run.opens.is_none() && !too_hot))
    }
}

/// All ways to give `parts` equal parts to `zones`, as shares of the whole, none going without:
/// a zone that is left cold goes on gripping.
fn divisions(parts: usize, zones: usize) -> Vec<Vec<f64>> {
    fn give(left: usize, zones: usize) -> Vec<Vec<usize>> {
        if zones == 1 {
            return vec![vec![left]];
        }
        let mut ways = Vec::new();
        for first in 1..=left.saturating_sub(zones - 1) {
            for mut rest in give(left - first, zones - 1) {
                rest.insert(0, first);
                ways.push(rest);
            }
        }
        ways
    }
    let share = |count: usize| as_float(count) / as_float(parts.max(zones));
    give(parts.max(zones), zones.max(1))
        .into_iter()
        .map(|way| way.into_iter().map(share).collect())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_division_is_whole() {
        assert_eq!(divisions(4, 1), vec![vec![1.0]]);
        assert_eq!(divisions(4, 2).len(), 3);
        assert_eq!(divisions(4, 3).len(), 3);
        for way in divisions(4, 3).into_iter().chain(divisions(4, 5)) {
            assert!((way.iter().sum::<f64>() - 1.0).abs() < 1e-12, "{way:?}");
            assert!(way.iter().all(|share| *share > 0.0), "{way:?}");
        }
    }
}
