//! Time: implicit steps of second order whose size follows the error.
//!
//! TR-BDF2 written as a Runge–Kutta scheme of three stages, stable for any step and damping what
//! is too fast to follow; its third-order companion gives the error of a step, smoothed by the
//! step's own matrix. Steps are powers of two of a tick, so that few factors are needed, and
//! never cross a moment at which heat switches.
//!
//! Source: Hosea and Shampine, *Analysis and implementation of TR-BDF2*, Applied Numerical
//! Mathematics 20 (1996); from memory (the tests assert the order).

use std::sync::Arc;

use super::case::{Case, Joint};
use super::model::Step;
use super::moment::{GAMMA, Ledger, Leg, Moment, seconds};
use super::path::{Guess, Path};
use super::taken::Taken;

/// A step to begin with, as a power of two of ticks: 1/64 s.
const FIRST: u32 = 4;
/// The longest step: 512 s.
const LONGEST: u32 = 19;

const D: f64 = GAMMA / 2.0;
const W: f64 = std::f64::consts::SQRT_2 / 4.0;
/// What the third-order companion weighs the three rates differently.
const ERROR: [f64; 3] = [(4.0 * W - 1.0) / 3.0, -1.0 / 3.0, 2.0 * D / 3.0];

/// A stage is settled when another round would change it by less than this share of the tolerance.
const SETTLED: f64 = 0.05;
/// Steps that a run may take.
const MOST_STEPS: usize = 20_000;
/// Rounds that a stage is given to settle the joint and the films.
const ROUNDS: usize = 40;

/// Time going on.
pub(crate) struct March<'a> {
    /// The case.
    pub case: Case<'a>,
    /// The present.
    pub now: Moment,
    /// What moved so far.
    pub ledger: Ledger,
    /// Greatest error of a step.
    pub tolerance_k: f64,
    exponent: u32,
    steps: usize,
    /// M·T of the present.
    stored_j: Vec<f64>,
    /// Rates of the present; none at the beginning and after a switch.
    rates: Option<Rates>,
    /// Up to three moments, the last of them the present; no switch between them.
    path: Path,
}

/// The rates of one stage.
#[derive(Clone)]
struct Rates {
    heat_w: Vec<f64>,
    lost_w: [f64; 2],
}

/// A stage that is solved.
struct Stage {
    temperature_k: Arc<[f64]>,
    joint: Arc<Joint>,
    /// M·T.
    stored_j: Vec<f64>,
    rates: Rates,
}

/// What a stage starts from: M·T of the present, and the rates so far with their weights.
struct Sofar<'s> {
    stored_j: &'s [f64],
    rates: &'s [(f64, &'s Rates)],
    given: &'s [(usize, f64)],
}

struct Trial {
    leg: Leg,
    end: Stage,
    path: Path,
    error_j: Vec<f64>,
    lost_j: [f64; 2],
    given_j: f64,
}

impl<'a> March<'a> {
    /// From a temperature on; `None` when the joint has no answer there.
    pub fn new(
        case: Case<'a>,
        temperature_k: impl Into<Arc<[f64]>>,
        ticks: u64,
        tolerance_k: f64,
    ) -> Option<Self> {
        let temperature_k = temperature_k.into();
        let joint = Arc::new(case.joint(case.free_gap_m(&temperature_k), &Joint::default())?);
        let stored_j = case.model.conduction.mass.times(&temperature_k);
        let now = Moment { ticks, temperature_k, joint };
        Some(Self {
            case,
            path: Path::from(now.seconds(), &now.temperature_k, &now.joint),
            now,
            ledger: Ledger::default(),
            tolerance_k,
            exponent: FIRST,
            steps: 0,
            stored_j,
            rates: None,
        })
    }

    /// One step, never past `until` nor past the next switch; `None` when even the shortest step
    /// will not settle, or too many were taken.
    pub fn advance(&mut self, until: u64) -> Option<Leg> {
        let switch = self.case.next_switch(self.now.ticks);
        let end = switch.map_or(until, |switch| switch.min(until));
        while self.steps < MOST_STEPS {
            let room = end.checked_sub(self.now.ticks).and_then(u64::checked_ilog2)?;
            let exponent = self.exponent.min(room);
            let Some(trial) = self.attempt(1 << exponent) else {
                self.exponent = exponent.checked_sub(1)?;
                continue;
            };
            let error_k = self.error_k(&trial)?;
            if error_k > self.tolerance_k && exponent > 0 {
                self.exponent = exponent - 1;
                continue;
            }
            let leg = self.accept(trial);
            if error_k < 0.1 * self.tolerance_k && exponent == self.exponent {
                self.exponent = (exponent + 1).min(LONGEST);
            }
            if switch == Some(self.now.ticks) {
                self.exponent = FIRST;
                self.rates = None;
                self.path =
                    Path::from(self.now.seconds(), &self.now.temperature_k, &self.now.joint);
            }
            return Some(leg);
        }
        None
    }

    /// A step of so many ticks, whatever its error, with no heed of switches; `None` when it will
    /// not settle.
    pub fn stride(&mut self, ticks: u64) -> Option<Leg> {
        let trial = self.attempt(ticks)?;
        Some(self.accept(trial))
    }

    fn accept(&mut self, trial: Trial) -> Leg {
        let stored = |stored_j: &[f64]| stored_j.iter().sum::<f64>();
        self.ledger.given_j += trial.given_j;
        self.ledger.stored_j += stored(&trial.end.stored_j) - stored(&self.stored_j);
        self.ledger.lost_j[0] += trial.lost_j[0];
        self.ledger.lost_j[1] += trial.lost_j[1];
        self.steps += 1;
        self.now = trial.leg.to.clone();
        self.stored_j = trial.end.stored_j;
        self.rates = Some(trial.end.rates);
        self.path = trial.path;
        trial.leg
    }

    fn attempt(&self, step_ticks: u64) -> Option<Trial> {
        let whole_s = seconds(step_ticks);
        let step = self.case.model.step(step_ticks, D * whole_s)?;
        let given: Vec<(usize, f64)> = self.case.given_w(self.now.ticks).collect();
        let begun = self.rates.is_none().then(|| self.rates(&self.now, &given));
        let first = self.rates.as_ref().or(begun.as_ref())?;
        let start_s = self.now.seconds();
        let sofar = |rates| Sofar { stored_j: &self.stored_j, rates, given: &given };

        let mut path = self.path.clone();
        let rates = [(step.tau_s, first)];
        let guess = path.at(start_s + GAMMA * whole_s);
        let middle = self.stage(&step, &sofar(&rates), guess, &self.now.joint)?;
        path.go(start_s + GAMMA * whole_s, &middle.temperature_k, &middle.joint);

        let rates = [first, &middle.rates].map(|rates| (W * whole_s, rates));
        let guess = path.at(start_s + whole_s);
        let end = self.stage(&step, &sofar(&rates), guess, &middle.joint)?;
        path.go(start_s + whole_s, &end.temperature_k, &end.joint);

        let stages = [first, &middle.rates, &end.rates];
        let mut error_j = vec![0.0; self.stored_j.len()];
        for (rates, weight) in stages.into_iter().zip(ERROR) {
            add(&mut error_j, weight * whole_s, &rates.heat_w);
        }
        let lost = |body: usize| {
            let weights = stages.iter().zip([W, W, D]);
            whole_s * weights.map(|(rates, weight)| weight * rates.lost_w[body]).sum::<f64>()
        };
        let to = Moment {
            ticks: self.now.ticks + step_ticks,
            temperature_k: Arc::clone(&end.temperature_k),
            joint: Arc::clone(&end.joint),
        };
        Some(Trial {
            error_j,
            lost_j: [lost(0), lost(1)],
            given_j: whole_s * given.iter().map(|(_, watts)| watts).sum::<f64>(),
            leg: Leg { from: self.now.clone(), middle_k: middle.temperature_k, to },
            end,
            path,
        })
    }

    /// The error of a step, smoothed by its own matrix.
    fn error_k(&self, trial: &Trial) -> Option<f64> {
        let step_ticks = trial.leg.to.ticks - trial.leg.from.ticks;
        let step = self.case.model.step(step_ticks, D * seconds(step_ticks))?;
        Some(step.smooth(&trial.error_j).iter().fold(0.0, |most, e| e.abs().max(most)))
    }

    /// Heat that comes to every node at a moment.
    fn rates(&self, moment: &Moment, given: &[(usize, f64)]) -> Rates {
        let model = self.case.model;
        let mut heat_w = model.conduction.stiffness.times(&moment.temperature_k);
        for watts in &mut heat_w {
            *watts = -*watts;
        }
        let losses = self.case.losses(&moment.temperature_k);
        for (node, watts) in losses.at_nodes_w {
            heat_w[node] -= watts;
        }
        for (node, watts) in given {
            heat_w[*node] += watts;
        }
        let conductance = self.case.joint_w_k(&moment.joint, &moment.temperature_k);
        let difference = model.differences(&moment.temperature_k);
        for ((pair, w_k), kelvin) in model.mesh.pairs.iter().zip(conductance).zip(difference) {
            heat_w[pair.hub] -= w_k * kelvin;
            heat_w[pair.shaft] += w_k * kelvin;
        }
        Rates { heat_w, lost_w: losses.of_bodies_w }
    }

    /// Solves one stage, films and joint settled by iteration from a guess; `None` when they will
    /// not settle.
    fn stage(&self, step: &Step, sofar: &Sofar, guess: Guess, pressed: &Joint) -> Option<Stage> {
        let case = &self.case;
        let mut start_j = sofar.stored_j.to_vec();
        for (weight, rates) in sofar.rates {
            add(&mut start_j, *weight, &rates.heat_w);
        }
        let mut right = start_j.clone();
        for (node, watts) in sofar.given {
            right[*node] += step.tau_s * watts;
        }
        let mut joint = case.joint(guess.free_gap_m, pressed)?;
        let mut taken = Taken::new(case, &guess.temperature_k, &joint);
        let mut before_k = guess.temperature_k;
        for _ in 0..ROUNDS {
            let coupled = step.coupled(&taken.joint_w_k)?;
            let temperature_k = coupled.solve(&taken.loaded(case, step, &right, &before_k))?;
            joint = case.joint(case.free_gap_m(&temperature_k), &joint)?;
            let next = Taken::new(case, &temperature_k, &joint);
            let left_k = taken.left_k(case, step, &coupled, &next, [&before_k, &temperature_k]);
            if left_k < SETTLED * self.tolerance_k {
                let stored_j = case.model.conduction.mass.times(&temperature_k);
                let risen = stored_j.iter().zip(&start_j).map(|(to, from)| to - from);
                let heat_w = risen.map(|joules| joules / step.tau_s).collect();
                let rates = Rates { heat_w, lost_w: taken.lost_w(case, &before_k, &temperature_k) };
                let (temperature_k, joint) = (temperature_k.into(), Arc::new(joint));
                return Some(Stage { temperature_k, joint, stored_j, rates });
            }
            (taken, before_k) = (next, temperature_k);
        }
        None
    }
}

/// Adds so many times a vector.
fn add(sum: &mut [f64], weight: f64, part: &[f64]) {
    for (sum, value) in sum.iter_mut().zip(part) {
        *sum += weight * value;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kernel::case::{Burn, Film, Place};
    use crate::kernel::crossing::Crossing;
    use crate::kernel::growth::{Curve, Growth};
    use crate::kernel::mesh::Part;
    use crate::kernel::model::Model;
    use crate::kernel::model::tests::bar;
    use crate::kernel::moment::ticks;

    /// Hub and shaft as one bar: nothing in the joint that holds heat up.
    fn whole(model: &Model, film_w_m2k: f64) -> Case<'_> {
        let growth = Growth { mean_per_k: Curve::level(11.5e-6), factor: 1.0 };
        let air = Film { air_k: 300.0, convection_w_m2k: film_w_m2k, emissivity: 0.0 };
        Case {
            model,
            growth: [growth.clone(), growth],
            interference_r_m: 50e-6,
            crossing: Crossing {
                touching_w_m2k: 1e9,
                pressed_w_m2k: 0.0,
                air_w_mk: Curve::level(0.03),
                emissivity: 0.0,
                eccentricity: 0.0,
                factor: 1.0,
            },
            film: [air; 2],
            place: Place::Home,
            burns: vec![],
        }
    }

    fn at(model: &Model, field: &[f64], r_m: f64) -> f64 {
        let part = if r_m > 0.025 { Part::Hub } else { Part::Shaft };
        let (element, [x, y]) = model.mesh.find(part, [r_m, 0.01]).unwrap();
        let point = element.ring.at([x, y]);
        (0..9).map(|n| point.value[n] * field[element.nodes[n]]).sum()
    }

    /// A long cylinder that is put into colder air, temperature above the air as a share of what
    /// it began with. The series θ = Σ Cₙ·exp(−ζₙ²·Fo)·J₀(ζₙ·r/R) of Incropera et al.,
    /// *Fundamentals of Heat and Mass Transfer*, 5.6, worked out with 40 terms to five figures.
    #[test]
    fn a_long_cylinder_cools_as_the_series_says() {
        #[rustfmt::skip]
        let printed = [
            // Bi    Fo   r/R  θ
            (0.1,  0.5,  0.0, 0.929_34),
            (0.5,  0.1,  0.0, 0.987_538),
            (0.5,  0.1,  1.0, 0.819_62),
            (1.0,  0.2,  0.5, 0.793_803),
            (2.0,  0.05, 1.0, 0.612_855),
            (1.02, 0.23, 0.3, 0.803_373),
        ];
        for (biot, fourier, place, theta) in printed {
            let film = biot * 50.0 / 0.05;
            let model = bar(film, 1.0).endless();
            let seconds = fourier * 0.05 * 0.05 * 3.7e6 / 50.0;
            let count = model.mesh.nodes_m.len();
            let mut march = March::new(whole(&model, film), vec![400.0; count], 0, 0.01).unwrap();
            let until = ticks(seconds, 1);
            let mut last = None;
            while march.now.ticks < until {
                last = march.advance(until);
                assert!(last.is_some());
            }
            let found = (at(&model, &last.unwrap().to.temperature_k, 0.05 * place) - 300.0) / 100.0;
            assert!((found - theta).abs() < 1e-4, "Bi {biot} Fo {fourier}: {found} for {theta}");
            assert!(march.ledger.error() < 1e-5, "{:?}", march.ledger);
        }
    }

    /// The error at a fixed moment falls with the square of the step.
    #[test]
    fn steps_are_of_second_order() {
        let model = bar(500.0, 2.0).endless();
        let count = model.mesh.nodes_m.len();
        let centre = |exponent: u32| {
            let mut march = March::new(whole(&model, 500.0), vec![400.0; count], 0, 1e-6).unwrap();
            while march.now.ticks < 64 << 10 {
                march.stride(1 << exponent).unwrap();
            }
            at(&model, &march.now.temperature_k, 0.0)
        };
        let found = [14, 13, 12, 9].map(centre);
        let errors = [0, 1, 2].map(|k| (found[k] - found[3]).abs());
        for pair in errors.windows(2) {
            let order = (pair[0] / pair[1]).log2();
            assert!((1.7..3.0).contains(&order), "order {order}: {errors:?}");
        }
    }

    /// Heat that is switched on and off again arrives to the last joule.
    #[test]
    fn heat_switches_at_its_moment_and_adds_up() {
        let model = bar(0.0, 2.0).endless();
        let count = model.mesh.nodes_m.len();
        let mut case = whole(&model, 0.0);
        let outside = model.skins.iter().map(|skin| (skin.node, 1e5 * skin.area_m2)).collect();
        case.burns = vec![Burn { ticks: [ticks(3.0, 1), ticks(20.5, 1)], watts: outside }];
        let mut march = March::new(case, vec![300.0; count], 0, 0.05).unwrap();
        while march.now.ticks < ticks(60.0, 1) {
            march.advance(ticks(60.0, 1)).unwrap();
        }
        let wanted = 1e5 * std::f64::consts::TAU * 0.05 * 0.02 * 17.5;
        assert!((march.ledger.given_j / wanted - 1.0).abs() < 1e-12, "{:?}", march.ledger);
        assert!((march.ledger.stored_j / wanted - 1.0).abs() < 1e-6, "{:?}", march.ledger);
        assert!(march.ledger.error() < 1e-6, "{:?}", march.ledger);
    }
}
