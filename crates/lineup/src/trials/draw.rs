//! The trials themselves: some at a time side by side, so that the processor's lanes are filled.

use rand_xoshiro::Xoshiro256PlusPlus;
use rand_xoshiro::rand_core::{Rng, SeedableRng};

use super::causes::{Cause, Lever, Model};
use super::normal::Normal;
use super::tally::Tally;
use crate::linear::dot;

/// Trials side by side.
pub(super) const LANES: usize = 32;
/// One number of each of them.
pub(super) type Lanes = [f64; LANES];
/// Times that a lever is put right by what the trial has just found: each leaves a twentieth at most.
const ROUNDS: usize = 3;

/// What came of all trials: every ratio by itself, and the worst of all.
pub(super) struct Tallies {
    pub each: Vec<Tally>,
    pub all: Tally,
}

pub(super) fn run(model: &Model, seed: u64, count: u32) -> Tallies {
    let mut random = Source { bits: Xoshiro256PlusPlus::seed_from_u64(seed), bell: Normal::new() };
    let mut each = Vec::new();
    for (index, cause) in model.couplings.iter().enumerate() {
        let start = |on: &[f64; 4]| Tally::about(dot(on, &cause.left), model.spread(index, on));
        each.extend(cause.ratios.iter().map(start));
    }
    let mut all = Tally::of_worst(&each);
    let mut deviations = vec![[[0.0; LANES]; 4]; model.couplings.len()];
    let mut left = usize::try_from(count).unwrap_or(usize::MAX);
    while left > 0 {
        let used = left.min(LANES);
        left -= used;
        trial(model, &mut random, &mut deviations);
        let mut worst = [0.0; LANES];
        let mut tallies = each.iter_mut();
        for (cause, deviation) in model.couplings.iter().zip(&deviations) {
            for (on, tally) in cause.ratios.iter().zip(&mut tallies) {
                let mut ratio = [0.0; LANES];
                for (times, part) in on.iter().zip(deviation) {
                    if *times != 0.0 {
                        add(&mut ratio, *times, part);
                    }
                }
                for (worst, ratio) in worst.iter_mut().zip(&ratio) {
                    *worst = ratio.abs().max(*worst);
                }
                tally.count(&ratio[..used]);
            }
        }
        all.count(&worst[..used]);
    }
    Tallies { each, all }
}

/// What is left at every coupling, drawn anew.
fn trial(model: &Model, random: &mut Source, deviations: &mut [[Lanes; 4]]) {
    for (cause, deviation) in model.couplings.iter().zip(&mut *deviations) {
        *deviation = measured(cause, random);
    }
    let mut number = [0.0; LANES];
    for on_all in &model.growth {
        random.normal(&mut number);
        for (on, deviation) in on_all.iter().zip(&mut *deviations) {
            add_all(deviation, on, &number);
        }
    }
    for on_all in &model.bounds {
        random.even(&mut number);
        for (on, deviation) in on_all.iter().zip(&mut *deviations) {
            add_all(deviation, on, &number);
        }
    }
}

/// What is left at a coupling, as the errors of its measurement have it.
fn measured(cause: &Cause, random: &mut Source) -> [Lanes; 4] {
    let mut off = [[0.0; LANES]; 4];
    let mut number = [0.0; LANES];
    for on in &cause.normal {
        random.normal(&mut number);
        add_all(&mut off, on, &number);
    }
    for on in &cause.even {
        random.even(&mut number);
        add_all(&mut off, on, &number);
    }
    for [on_cos, on_sin] in &cause.turned {
        random.even(&mut number);
        let (mut cos, mut sin) = (number, number);
        for (cos, sin) in cos.iter_mut().zip(&mut sin) {
            (*sin, *cos) = (*sin * std::f64::consts::PI).sin_cos();
        }
        add_all(&mut off, on_cos, &cos);
        add_all(&mut off, on_sin, &sin);
    }
    if !cause.levers.is_empty() {
        off = levered(cause, random, &off);
    }
    for (off, left) in off.iter_mut().zip(cause.left) {
        for off in off {
            *off += left;
        }
    }
    off
}

/// Errors of a position whose dials stood elsewhere than was believed: `x = x̂ + e − Σ g·δ·(s·x)`.
fn levered(cause: &Cause, random: &mut Source, errors: &[Lanes; 4]) -> [Lanes; 4] {
    let mut off = *errors;
    let mut amounts = vec![[0.0; LANES]; cause.levers.len()];
    for (lever, amount) in cause.levers.iter().zip(&mut amounts) {
        random.normal(amount);
        for amount in amount {
            *amount *= lever.u;
        }
    }
    for _ in 0..ROUNDS {
        let last = off;
        off = *errors;
        for (Lever { sees, gains, .. }, amount) in cause.levers.iter().zip(&amounts) {
            for (plane, gain) in gains.iter().enumerate() {
                let found = [cause.found[plane], cause.found[plane + 2]];
                let mut seen = [0.0; LANES];
                for lane in 0..LANES {
                    let offset = sees[0] * (found[0] + last[plane][lane]);
                    let slope = sees[1] * (found[1] + last[plane + 2][lane]);
                    seen[lane] = -amount[lane] * (offset + slope);
                }
                add_all(&mut off, gain, &seen);
            }
        }
    }
    off
}

/// Where numbers at random come from.
struct Source {
    bits: Xoshiro256PlusPlus,
    bell: Normal,
}

impl Source {
    fn normal(&mut self, number: &mut Lanes) {
        for one in number {
            *one = self.bell.draw(&mut self.bits);
        }
    }

    /// Evenly between −1 and 1, to 32 bits.
    fn even(&mut self, number: &mut Lanes) {
        // From 1 to below 2, in steps of 2⁻³², less what brings their middle to nothing.
        const ONE: u64 = 0x3ff << 52;
        const MIDDLE: f64 = 1.5 - 1.0 / 8_589_934_592.0;
        for two in number.chunks_exact_mut(2) {
            let bits = self.bits.next_u64();
            for (one, bits) in two.iter_mut().zip([bits >> 32, bits & 0xffff_ffff]) {
                *one = 2.0 * (f64::from_bits(bits << 20 | ONE) - MIDDLE);
            }
        }
    }
}

fn add_all(sums: &mut [Lanes; 4], on: &[f64; 4], number: &Lanes) {
    for (sum, times) in sums.iter_mut().zip(on) {
        if *times != 0.0 {
            add(sum, *times, number);
        }
    }
}

fn add(sum: &mut Lanes, times: f64, number: &Lanes) {
    for (sum, number) in sum.iter_mut().zip(number) {
        *sum += times * number;
    }
}
