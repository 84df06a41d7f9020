//! The trials themselves: some at a time side by side, so that the processor's lanes are filled.

#![expect(
    clippy::inline_always,
    reason = "what is inlined has the width that the caller was chosen for"
)]
#![expect(clippy::cast_possible_truncation, reason = "errors have single precision")]

use super::causes::{Cause, Lever, Model, Swept};
use super::random::{LANES, Lanes, Random};
use super::tally::Tally;
use crate::linear::dot;

/// Offset up, offset right, slope up and slope right, of each trial.
type Four = [Lanes; 4];

/// What came of all trials: every ratio by itself, and the worst of all.
pub(super) struct Tallies {
    pub each: Vec<Tally>,
    pub all: Tally,
}

pub(super) fn run(model: &Model, seed: u64, count: u32) -> Tallies {
    let mut tallies = Tallies::none(model);
    pulp::Arch::new().dispatch(Run { model, seed, count, tallies: &mut tallies });
    tallies
}

/// All trials, in code for whatever registers this machine has.
struct Run<'a> {
    model: &'a Model,
    seed: u64,
    count: u32,
    tallies: &'a mut Tallies,
}

impl pulp::WithSimd for Run<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: pulp::Simd>(self, _: S) {
        let Self { model, seed, count, tallies } = self;
        let mut random = Random::new(seed);
        let mut errors = vec![[[0.0; LANES]; 4]; model.couplings.len()];
        let mut levers = Vec::new();
        let mut left = usize::try_from(count).unwrap_or(usize::MAX);
        let mut counts = [1.0; LANES];
        while left > 0 {
            let used = left.min(LANES);
            counts[used..].fill(0.0);
            trial(model, &mut random, &mut levers, &mut errors);
            tallies.count(model, &errors, &counts, used);
            left -= used;
        }
    }
}

impl Tallies {
    fn none(model: &Model) -> Self {
        let mut each = Vec::new();
        for (index, cause) in model.couplings.iter().enumerate() {
            let start = |on: &[f64; 4]| Tally::about(dot(on, &cause.left), model.spread(index, on));
            each.extend(cause.ratios.iter().map(start));
        }
        let all = Tally::of_worst(&each);
        Self { each, all }
    }

    #[inline(always)]
    fn count(&mut self, model: &Model, errors: &[Four], counts: &[f64; LANES], used: usize) {
        let mut worst = [0.0; LANES];
        let mut tallies = self.each.iter_mut();
        for (cause, errors) in model.couplings.iter().zip(errors) {
            for (on, tally) in cause.ratios.iter().zip(&mut tallies) {
                let mut ratio = [dot(on, &cause.left); LANES];
                for (times, part) in on.iter().zip(errors) {
                    if *times != 0.0 {
                        for (ratio, part) in ratio.iter_mut().zip(part) {
                            *ratio += times * f64::from(*part);
                        }
                    }
                }
                for (worst, ratio) in worst.iter_mut().zip(&ratio) {
                    *worst = ratio.abs().max(*worst);
                }
                tally.count(&ratio, counts, used);
            }
        }
        self.all.count(&worst, counts, used);
    }
}

/// How far every coupling is off what is believed, drawn anew.
#[inline(always)]
fn trial(model: &Model, random: &mut Random, levers: &mut Vec<Lanes>, errors: &mut [Four]) {
    for (cause, errors) in model.couplings.iter().zip(&mut *errors) {
        *errors = measured(cause, random, levers);
    }
    for two in model.growth.chunks(2) {
        for (on_all, number) in two.iter().zip(random.two_normal()) {
            for (on, errors) in on_all.iter().zip(&mut *errors) {
                add_all(errors, on, &number);
            }
        }
    }
    for on_all in &model.bounds {
        let number = random.even();
        for (on, errors) in on_all.iter().zip(&mut *errors) {
            add_all(errors, on, &number);
        }
    }
}

/// How far a coupling's position is off, as the errors of its measurement have it.
#[inline(always)]
fn measured(cause: &Cause, random: &mut Random, levers: &mut Vec<Lanes>) -> Four {
    let mut off = [[0.0; LANES]; 4];
    for two in cause.normal.chunks(2) {
        for (on, number) in two.iter().zip(random.two_normal()) {
            add_all(&mut off, on, &number);
        }
    }
    for dial in &cause.dials {
        for (gain, number) in dial.gains.iter().zip(read(dial, random)) {
            add_all(&mut off, gain, &number);
        }
    }
    if cause.dials.iter().any(|dial| dial.lever.is_some()) {
        off = levered(cause, random, levers, &off);
    }
    off
}

/// Errors of cosine and sine of a sweep.
#[inline(always)]
fn read(dial: &Swept, random: &mut Random) -> [Lanes; 2] {
    let mut off = [[0.0; LANES]; 2];
    for two in dial.even.chunks(2) {
        for (on, number) in two.iter().zip(random.two_coarse()) {
            for (off, times) in off.iter_mut().zip(on) {
                add(off, *times as f32, &number);
            }
        }
    }
    if let Some(half) = dial.turned {
        for (off, number) in off.iter_mut().zip(random.circle()) {
            add(off, half as f32, &number);
        }
    }
    off
}

/// Errors of a position whose dials stood elsewhere than was believed: `x = x̂ + e − Σ g·δ·(s·x)`.
#[inline(always)]
fn levered(cause: &Cause, random: &mut Random, amounts: &mut Vec<Lanes>, errors: &Four) -> Four {
    let levers = || cause.dials.iter().filter_map(|dial| Some((dial.lever.as_ref()?, &dial.gains)));
    amounts.clear();
    while amounts.len() < levers().count() {
        amounts.extend(random.two_normal());
    }
    let mut off = *errors;
    for _ in 0..cause.rounds {
        let last = off;
        off = *errors;
        for ((Lever { u, sees }, gains), amount) in levers().zip(&*amounts) {
            let [on_offset, on_slope] = sees.map(|sees| (-u * sees) as f32);
            for (plane, gain) in gains.iter().enumerate() {
                let believed = -u * dot(sees, &[cause.found[plane], cause.found[plane + 2]]);
                let mut seen = [believed as f32; LANES];
                add(&mut seen, on_offset, &last[plane]);
                add(&mut seen, on_slope, &last[plane + 2]);
                for (seen, amount) in seen.iter_mut().zip(amount) {
                    *seen *= amount;
                }
                add_all(&mut off, gain, &seen);
            }
        }
    }
    off
}

#[inline(always)]
fn add_all(sums: &mut Four, on: &[f64; 4], number: &Lanes) {
    for (sum, times) in sums.iter_mut().zip(on) {
        if *times != 0.0 {
            add(sum, *times as f32, number);
        }
    }
}

#[inline(always)]
fn add(sum: &mut Lanes, times: f32, number: &Lanes) {
    for (sum, number) in sum.iter_mut().zip(number) {
        *sum += times * number;
    }
}

#[cfg(test)]
mod tests {
    use pulp::{Scalar, WithSimd};

    use super::*;

    /// A dial with all that can be off, another without, and a machine that grows.
    fn model() -> Model {
        let gains = [[1.0, 0.1, 7.0, 0.0], [0.0, 1.0, 0.3, 8.0]];
        let lever = Some(Lever { u: 4e-4, sees: [0.0, 5.0] });
        let even = vec![[3e-2, 1e-3], [-2e-2, 4e-2], [1e-2, -5e-2]];
        let loose = Swept { even: even.clone(), turned: Some(0.2), lever, gains };
        let firm = Swept { even, turned: None, lever: None, gains };
        let cause = Cause {
            found: [0.1, 0.2, 0.3, -0.4],
            left: [0.5, -0.2, 0.1, 0.6],
            normal: vec![[0.2, 0.0, 0.1, 0.0], [0.0, 0.1, 0.0, 0.3], [0.1, 0.1, 0.1, 0.1]],
            dials: vec![loose, firm],
            rounds: 2,
            ratios: vec![[1.0, 0.0, 0.2, 0.0], [0.0, 0.0, 0.0, 1.0]],
        };
        let growth = vec![vec![[0.1, 0.0, 0.2, 0.0]]];
        Model { couplings: vec![cause], growth, bounds: vec![vec![[0.0, 0.3, 0.0, 0.1]]] }
    }

    /// In wide registers as in narrow ones, to the last bit.
    #[test]
    fn every_machine_finds_the_same() {
        let (model, seed, count) = (model(), 3, 100_001);
        let wide = run(&model, seed, count);
        let mut narrow = Tallies::none(&model);
        Run { model: &model, seed, count, tallies: &mut narrow }.with_simd(Scalar::new());
        for (wide, narrow) in
            wide.each.iter().chain([&wide.all]).zip(narrow.each.iter().chain([&narrow.all]))
        {
            assert!(wide == narrow);
            assert!(wide.inside() > 0.1 && wide.inside() < 1.0 && wide.deviation() > 0.0);
        }
    }

    /// By squares and by trials.
    #[test]
    fn the_spread_is_as_was_foretold() {
        let model = model();
        let found = run(&model, 4, 400_000);
        for (ratio, tally) in model.couplings[0].ratios.iter().zip(&found.each) {
            let off = tally.deviation() / model.spread(0, ratio) - 1.0;
            // Four standard deviations of a standard deviation, 1/√(2n) each.
            assert!(off.abs() < 4.0 / f64::sqrt(800_000.0), "{off}");
        }
    }
}
