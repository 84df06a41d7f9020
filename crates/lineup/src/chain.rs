//! The least worst ratio that whole shims leave along a train, by going over every choice.
//!
//! A coupling only sees the machines on its two sides, so the best way to reach a stand of one
//! machine follows from the best ways to reach the stands of the one before: the least worst ratio
//! so far. Pairs of stands that leave more than is already known to be possible are never looked at:
//! the stands of the machine before are laid out by the first two ratios of the coupling, and only
//! those near what a stand of the next one asks for are tried. That is quick where steps are coarse
//! and little is left, just where bounds from moves of any size say nothing.

use crate::common_line::{Mover, Ratio};

/// Pairs looked at, and stands of one machine, before it is given up.
const MOST_PAIRS: usize = 40_000_000;
const MOST_STANDS: usize = 1_000_000;
/// What the ratios of a coupling see of a stand: offset, slope, and two angles at most.
type Seen = [f64; 4];

/// What going over every choice has found.
pub(crate) enum Searched {
    /// This stand of every machine leaves less than asked, and no other choice less still.
    Better(Vec<usize>),
    /// No choice leaves less.
    None,
    /// There are too many.
    TooMany,
}

/// Looks for stands that leave less than `below` at every coupling; `stands` are the moves that each
/// machine can make, offset at its first foot plane and slope.
pub(crate) fn least_worst(
    movers: &[Mover],
    ratios: &[Ratio],
    stands: &[Vec<[f64; 2]>],
    below: f64,
) -> Searched {
    if stands.iter().any(|stands| stands.len() > MOST_STANDS) {
        return Searched::TooMany;
    }
    let Some(first) = stands.first() else { return Searched::None };
    let mut reached: Vec<Reached> =
        (0..first.len()).map(|stand| Reached { stand, worst: 0.0, from: 0 }).collect();
    let mut trail: Vec<Vec<Reached>> = Vec::new();
    let mut pairs = 0;
    for driver in 0..stands.len() - 1 {
        let here: Vec<&Ratio> = ratios.iter().filter(|ratio| ratio.driver == driver).collect();
        if here.len() > Seen::default().len() {
            return Searched::TooMany;
        }
        let seen = |machine: usize, stand: &[f64; 2]| -> Seen {
            let x0 = movers[machine].x0();
            std::array::from_fn(|i| here.get(i).map_or(0.0, |ratio| ratio.of(stand, x0)))
        };
        let laid = Laid::out(&reached, |stand| seen(driver, &stands[driver][stand]), below);
        let mut next = Vec::new();
        for (stand, moved) in stands[driver + 1].iter().enumerate() {
            let mut wanted = seen(driver + 1, moved);
            for (wanted, ratio) in wanted.iter_mut().zip(&here) {
                *wanted += ratio.constant;
            }
            let mut best = Reached { stand, worst: below, from: usize::MAX };
            laid.near(&wanted, below, |from, before| {
                pairs += 1;
                let off = wanted.iter().zip(before).map(|(wanted, on)| (wanted - on).abs());
                let worst = off.fold(reached[from].worst, f64::max);
                if worst < best.worst {
                    best = Reached { stand, worst, from };
                }
            });
            if best.from != usize::MAX {
                next.push(best);
            }
            if pairs > MOST_PAIRS {
                return Searched::TooMany;
            }
        }
        trail.push(std::mem::replace(&mut reached, next));
    }
    let Some(last) = reached.iter().min_by(|a, b| a.worst.total_cmp(&b.worst)) else {
        return Searched::None;
    };
    let (mut all, mut at) = (vec![last.stand], last);
    for before in trail.iter().rev() {
        at = &before[at.from];
        all.push(at.stand);
    }
    all.reverse();
    Searched::Better(all)
}

/// A stand that can be reached, the least worst ratio on the way to it, and by which stand of the
/// machine before.
struct Reached {
    stand: usize,
    worst: f64,
    from: usize,
}

/// Stands laid out in strips by what their first ratio sees, in each strip in the order of the second.
struct Laid {
    width: f64,
    /// Strip, what the second ratio sees, which one, and what all see.
    stands: Vec<(f64, f64, usize, Seen)>,
}

impl Laid {
    fn out(reached: &[Reached], seen: impl Fn(usize) -> Seen, below: f64) -> Self {
        let width = 2.0 * below;
        let lay = |(from, reached): (usize, &Reached)| {
            let seen = seen(reached.stand);
            let (strip, along) = place(&seen, width);
            (strip, along, from, seen)
        };
        let mut stands: Vec<_> = reached.iter().enumerate().map(lay).collect();
        stands.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
        Self { width, stands }
    }

    fn near(&self, wanted: &Seen, below: f64, mut each: impl FnMut(usize, &Seen)) {
        let (first, low) = place(&wanted.map(|wanted| wanted - below), self.width);
        let (last, high) = place(&wanted.map(|wanted| wanted + below), self.width);
        let strips = [Some(first), (last > first).then_some(last)];
        for strip in strips.into_iter().flatten() {
            let ahead = |stand: &(f64, f64, usize, Seen)| {
                stand.0 < strip || (stand.0 <= strip && stand.1 < low)
            };
            let start = self.stands.partition_point(ahead);
            let here = self.stands[start..].iter();
            for (_, _, from, seen) in here.take_while(|s| s.0 <= strip && s.1 <= high) {
                each(*from, seen);
            }
        }
    }
}

/// Strip, and place along it.
fn place([first, second, ..]: &Seen, width: f64) -> (f64, f64) {
    ((first / width).floor(), *second)
}
