//! The best that whole shims can do: a train's vertical moves when every pack is made of what the
//! stock holds.
//!
//! Each machine that moves has two planes of feet that decide, its first and its last; whatever
//! stands between follows the straight line. What may be laid under a deciding plane is a list of
//! moves ([`reachable`]). The best choice out of these lists is found by branch and bound: a plane
//! whose best move is no sum of whole shims is tried with the next one below as its most, and with
//! the next one above as its least; a branch that cannot better the best found so far is dropped.
//! The search runs twice, as a train's programs do: for the least worst ratio, then, that held, for
//! the best chance of being inside; small moves decide between equals. Where its bounds do not close
//! on the least worst ratio, every choice is gone over (`chain`).
//!
//! Sideways nothing comes in steps, so those moves are the train's own.

use std::cmp::Ordering;
use std::collections::BinaryHeap;

use quantities::{Length, Physical};

use crate::Plane;
use crate::chain::{self, Searched};
use crate::common_line::{Aim, Failed, Mover, least, solve, weighed};
use crate::shims::{ShimError, reachable};
use crate::train::{
    InPlane, Part, Preference, TrainCoupling, TrainError, TrainMachine, TrainPlan, check_train,
    running, told_of,
};

/// Moves are sought this much beyond those that do without whole shims, m.
const REACH_M: f64 = 2e-3;
/// Programs solved before the search is given up and its gap is stated.
const MOST_TRIES: usize = 400;
/// A move is a sum of whole shims when it is this near one, m.
const HAIR_M: f64 = 5e-9;
/// Better by less than this of a level is not better.
const BETTER: f64 = 1e-6;

/// What is at hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// Thicknesses, each as often as needed.
    pub thicknesses: Vec<Length>,
    /// Shims under one foot at most.
    pub most: usize,
}

/// How good the answer is known to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Proof {
    /// No choice of whole shims, within 2 mm of the moves that do without, leaves less.
    Best,
    /// The search was given up: some choice may leave a worst ratio smaller by this at most.
    Within(f64),
}

/// Moves in whole shims.
#[derive(Clone, Debug, PartialEq)]
pub struct WholePlan {
    /// The moves.
    pub plan: TrainPlan,
    /// What moves of any size would do.
    pub free: TrainPlan,
    /// How sure it is that nothing better can be made of the stock.
    pub proof: Proof,
}

/// Why there are no moves in whole shims.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum WholeError {
    /// The train has no common line.
    #[error(transparent)]
    Train(#[from] TrainError),
    /// The stock is none.
    #[error(transparent)]
    Shims(#[from] ShimError),
}

/// The best common line that whole shims can make.
///
/// # Errors
/// [`WholeError`].
pub fn line_up_whole(
    machines: &[TrainMachine],
    couplings: &[TrainCoupling],
    preference: Preference,
    stock: &Stock,
) -> Result<WholePlan, WholeError> {
    check_train(machines, couplings)?;
    let running = running(machines, couplings);
    let sideways = InPlane::of(machines, couplings, &running, Plane::Sideways)?;
    let aside =
        solve(&sideways.movers, &sideways.ratios, preference, false).map_err(TrainError::from)?;
    let vertical = InPlane::of(machines, couplings, &running, Plane::Vertical)?;
    let raise_only = preference == Preference::RaiseOnly;
    let free = solve(&vertical.movers, &vertical.ratios, preference, raise_only)
        .map_err(TrainError::from)?;
    let choices = choices(machines, &vertical.movers, &free.moves, stock, raise_only)?;
    let mut search = Search { train: &vertical, raise_only, choices, aim: Aim::WorstRatio };
    let stays = search.weighed(vec![[0.0; 2]; machines.len()]);
    let worst = search.run(stays).map_err(TrainError::from)?;
    let worst = search.settled(worst);
    search.aim = Aim::ChanceLost(worst.worst_ratio + BETTER);
    let surest = search.run(search.weighed(worst.moves)).map_err(TrainError::from)?;
    let found = Best { proof: worst.proof, ..surest };
    let moves: Vec<[[f64; 2]; 2]> =
        found.moves.iter().zip(&aside.moves).map(|(up, right)| [*up, *right]).collect();
    let plan = told_of(machines, couplings, &moves, [found.worst_ratio, aside.worst_ratio])?;
    let any: Vec<[[f64; 2]; 2]> =
        free.moves.iter().zip(&aside.moves).map(|(up, right)| [*up, *right]).collect();
    let free = told_of(machines, couplings, &any, [free.worst_ratio, aside.worst_ratio])?;
    Ok(WholePlan { plan, free, proof: found.proof })
}

/// A deciding plane of feet and the moves that whole shims allow there.
struct Choice {
    machine: usize,
    foot: usize,
    x: f64,
    moves: Vec<f64>,
}

fn choices(
    machines: &[TrainMachine],
    movers: &[Mover],
    free: &[[f64; 2]],
    stock: &Stock,
    raise_only: bool,
) -> Result<Vec<Choice>, ShimError> {
    let mut all = Vec::new();
    for (machine, train) in machines.iter().enumerate().filter(|(_, m)| m.part == Part::Movable) {
        let (mover, [offset, slope]) = (&movers[machine], free[machine]);
        for foot in deciding(mover) {
            let (x, least, greatest) = mover.feet[foot];
            let about = offset + slope * (x - mover.x0());
            let least = if raise_only { least.max(0.0) } else { least };
            let low = least.max(about.min(0.0) - REACH_M);
            let high = greatest.min(about.max(0.0) + REACH_M);
            let window = (Length::from_si(low - HAIR_M), Length::from_si(high + HAIR_M));
            let whole = reachable(&train.feet[foot], &stock.thicknesses, stock.most, window)?;
            all.push(Choice {
                machine,
                foot,
                x,
                moves: whole.into_iter().map(Physical::si).collect(),
            });
        }
    }
    Ok(all)
}

/// The first and the last plane of feet along x.
fn deciding(mover: &Mover) -> [usize; 2] {
    let by = |better: fn(f64, f64) -> bool| {
        let pick = |best: usize, (index, foot): (usize, &(f64, f64, f64))| {
            if better(foot.0, mover.feet[best].0) { index } else { best }
        };
        mover.feet.iter().enumerate().fold(0, pick)
    };
    [by(|a, b| a < b), by(|a, b| a > b)]
}

struct Search<'a> {
    train: &'a InPlane,
    raise_only: bool,
    choices: Vec<Choice>,
    aim: Aim,
}

/// What a search found.
struct Best {
    moves: Vec<[f64; 2]>,
    worst_ratio: f64,
    sum: f64,
    proof: Proof,
}

/// For each choice the first and the last of its moves that are still open.
type Open = Vec<(usize, usize)>;

/// A branch: what is open, where its own best lies, and what that sums to.
struct Branch {
    open: Open,
    moves: Vec<[f64; 2]>,
    sum: f64,
}

impl Search<'_> {
    /// The best there is, `best` being the best so far.
    fn run(&self, mut best: Best) -> Result<Best, Failed> {
        let all = self.choices.iter().map(|choice| (0, choice.moves.len() - 1)).collect();
        let mut heap = BinaryHeap::new();
        let mut tries = 0;
        self.grow(all, &mut heap, &mut best)?;
        while let Some(branch) = heap.pop() {
            if branch.sum >= best.sum - BETTER {
                break;
            }
            if tries >= MOST_TRIES {
                best.proof = Proof::Within(best.sum - branch.sum);
                break;
            }
            let Some((index, below)) = self.undecided(&branch) else { continue };
            let (first, last) = branch.open[index];
            for part in [(first, below), (below + 1, last)] {
                let mut open = branch.open.clone();
                open[index] = part;
                self.grow(open, &mut heap, &mut best)?;
                tries += 1;
            }
        }
        Ok(best)
    }

    /// Solves a branch, betters the best by rounding its answer, and keeps it if it may hold more.
    fn grow(
        &self,
        open: Open,
        heap: &mut BinaryHeap<Branch>,
        best: &mut Best,
    ) -> Result<(), Failed> {
        let held = self.bounded(&open);
        let (moves, sum) = match least(&held, &self.train.ratios, self.aim, self.raise_only) {
            Ok(found) => found,
            // A plane between the two has no room in this branch.
            Err(Failed::NoRoom) => return Ok(()),
            Err(failed) => return Err(failed),
        };
        let rounded = self.weighed(self.rounded(&moves, &open));
        if rounded.sum < best.sum - BETTER && self.allows(&rounded.moves) {
            *best = rounded;
        }
        if sum < best.sum - BETTER {
            heap.push(Branch { open, moves, sum });
        }
        Ok(())
    }

    fn weighed(&self, moves: Vec<[f64; 2]>) -> Best {
        let weighed = weighed(&self.train.movers, &self.train.ratios, &moves);
        let (worst_ratio, sum) = (weighed.worst_ratio, weighed.sum(self.aim));
        Best { moves, worst_ratio, sum, proof: Proof::Best }
    }

    /// The best of all choices, where the search was given up but all can be gone over.
    fn settled(&self, best: Best) -> Best {
        if best.proof == Proof::Best {
            return best;
        }
        let movers = &self.train.movers;
        let stands: Vec<Vec<[f64; 2]>> = (0..movers.len()).map(|i| self.stands(i)).collect();
        let below = best.worst_ratio - BETTER;
        match chain::least_worst(movers, &self.train.ratios, &stands, below) {
            Searched::Better(chosen) => {
                let taken = chosen.iter().zip(&stands).map(|(chosen, stands)| stands[*chosen]);
                self.weighed(taken.collect())
            }
            Searched::None => Best { proof: Proof::Best, ..best },
            Searched::TooMany => best,
        }
    }

    /// Every move that a machine can make in whole shims.
    fn stands(&self, machine: usize) -> Vec<[f64; 2]> {
        let own: Vec<&Choice> = self.choices.iter().filter(|c| c.machine == machine).collect();
        let [first, last] = own[..] else { return vec![[0.0; 2]] };
        let line = |near: f64, far: f64| self.line([first, last], [near, far]);
        let all =
            first.moves.iter().flat_map(|near| last.moves.iter().map(|far| line(*near, *far)));
        all.filter(|stand| self.has_room(machine, stand)).collect()
    }

    /// The move of a machine, from those at its deciding feet.
    fn line(&self, [first, last]: [&Choice; 2], [near, far]: [f64; 2]) -> [f64; 2] {
        let slope = (far - near) / (last.x - first.x);
        let x0 = self.train.movers[first.machine].x0();
        [near + slope * (x0 - first.x), slope]
    }

    /// The machines with their deciding feet held between what is open.
    fn bounded(&self, open: &Open) -> Vec<Mover> {
        let mut movers = self.train.movers.clone();
        for (choice, (first, last)) in self.choices.iter().zip(open) {
            let foot = &mut movers[choice.machine].feet[choice.foot];
            (foot.1, foot.2) = (choice.moves[*first], choice.moves[*last]);
        }
        movers
    }

    fn at(&self, moves: &[[f64; 2]], choice: &Choice) -> f64 {
        let [offset, slope] = moves[choice.machine];
        offset + slope * (choice.x - self.train.movers[choice.machine].x0())
    }

    /// The nearest move of whole shims among what is open.
    fn nearest(choice: &Choice, (first, last): (usize, usize), wanted: f64) -> usize {
        let open = &choice.moves[first..=last];
        let above = open.partition_point(|move_m| *move_m < wanted).min(open.len() - 1);
        let below = above.saturating_sub(1);
        let off = |index: usize| (open[index] - wanted).abs();
        first + if off(below) <= off(above) { below } else { above }
    }

    /// Every deciding foot on its nearest move of whole shims.
    fn rounded(&self, moves: &[[f64; 2]], open: &Open) -> Vec<[f64; 2]> {
        let mut out = moves.to_vec();
        for pair in self.choices.chunks(2).zip(open.chunks(2)) {
            let ([first, last], [of_first, of_last]) = pair else { continue };
            let up = |choice: &Choice, open: &(usize, usize)| {
                choice.moves[Self::nearest(choice, *open, self.at(moves, choice))]
            };
            let ends = [up(first, of_first), up(last, of_last)];
            out[first.machine] = self.line([first, last], ends);
        }
        out
    }

    /// True when the planes between the deciding ones have room as well.
    fn allows(&self, moves: &[[f64; 2]]) -> bool {
        moves.iter().enumerate().all(|(machine, moved)| self.has_room(machine, moved))
    }

    fn has_room(&self, machine: usize, [offset, slope]: &[f64; 2]) -> bool {
        let mover = &self.train.movers[machine];
        let has_room = |(x, least, greatest): &(f64, f64, f64)| {
            let up = offset + slope * (x - mover.x0());
            up >= least - HAIR_M && up <= greatest + HAIR_M
        };
        !mover.may_move || mover.feet.iter().all(has_room)
    }

    /// The choice whose move lies farthest from whole shims, and the last of its moves below.
    fn undecided(&self, branch: &Branch) -> Option<(usize, usize)> {
        let off = |(index, choice): (usize, &Choice)| {
            let (first, last) = branch.open[index];
            let wanted = self.at(&branch.moves, choice);
            let nearest = Self::nearest(choice, (first, last), wanted);
            let off = (choice.moves[nearest] - wanted).abs();
            let below = choice.moves[first..=last].partition_point(|up| *up <= wanted);
            let below =
                (first + below).saturating_sub(1).clamp(first, last.saturating_sub(1).max(first));
            (off > HAIR_M && first < last).then_some((off, index, below))
        };
        let all = self.choices.iter().enumerate().filter_map(off);
        all.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, index, below)| (index, below))
    }
}

impl PartialEq for Branch {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Branch {}

impl PartialOrd for Branch {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// The smallest sum comes off the heap first.
impl Ord for Branch {
    fn cmp(&self, other: &Self) -> Ordering {
        other.sum.total_cmp(&self.sum)
    }
}
