//! What stands in the way of a good line, and what each change would gain.
//!
//! A foot at the end of its room may be what keeps the worst ratio up. Each such foot is given all
//! room in turn and the train solved again: how much farther it then goes, and what the worst ratio
//! becomes, is what undercutting its bolts, machining its base or raising the rest is worth. The same
//! for all feet at once, and for every machine that is held and could be let go.

use quantities::{Length, Physical};

use crate::Plane;
use crate::common_line::{Failed, Mover, least_worst, solve};
use crate::train::{
    InPlane, Part, Preference, TrainCoupling, TrainError, TrainMachine, check_train, running,
};

/// A move this near the end of its room is at it, m.
const AT_END_M: f64 = 1e-7;
/// A gain smaller than this of a level is none.
const WORTH: f64 = 0.01;

/// Something that could be changed.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// More room for one foot plane.
    Room {
        /// Which machine, counted from zero.
        machine: usize,
        /// The foot plane's name.
        foot: String,
        /// How much more it would take; negative downwards or to the left.
        beyond: Length,
    },
    /// Room without end for every foot of the machines that move.
    AllRoom,
    /// A held machine let go, counted from zero.
    LetGo(usize),
}

/// What a change would gain in one plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Gain {
    /// In this plane.
    pub plane: Plane,
    /// What would change.
    pub change: Change,
    /// The worst ratio as things are.
    pub now: f64,
    /// The worst ratio with the change made.
    pub then: f64,
}

/// What each change would gain, the greatest gain first; none where nothing stands in the way.
///
/// # Errors
/// [`TrainError`].
pub fn gains(
    machines: &[TrainMachine],
    couplings: &[TrainCoupling],
    preference: Preference,
) -> Result<Vec<Gain>, TrainError> {
    check_train(machines, couplings)?;
    let running = running(machines, couplings);
    let mut all = Vec::new();
    for plane in Plane::BOTH {
        let train = InPlane::of(machines, couplings, &running, plane)?;
        let bench = Bench { machines, train, plane, preference };
        all.extend(bench.gains()?);
    }
    all.sort_by(|a, b| (b.now - b.then).total_cmp(&(a.now - a.then)));
    Ok(all)
}

struct Bench<'a> {
    machines: &'a [TrainMachine],
    train: InPlane,
    plane: Plane,
    preference: Preference,
}

impl Bench<'_> {
    fn raise_only(&self) -> bool {
        self.plane == Plane::Vertical && self.preference == Preference::RaiseOnly
    }

    fn gains(&self) -> Result<Vec<Gain>, Failed> {
        let found =
            solve(&self.train.movers, &self.train.ratios, self.preference, self.raise_only())?;
        if found.worst_ratio < WORTH {
            return Ok(Vec::new());
        }
        let now = found.worst_ratio;
        let gain = |change, then| Gain { plane: self.plane, change, now, then };
        let bound = self.bound(&found.moves);
        let mut all = Vec::new();
        for &(machine, foot, end) in &bound {
            let with = self.with_room(&[(machine, foot, end)]);
            let then = solve(&with, &self.train.ratios, self.preference, self.raise_only())?;
            let room = self.train.movers[machine].feet[foot];
            let [offset, slope] = then.moves[machine];
            let goes = offset + slope * (room.0 - self.train.movers[machine].x0());
            let beyond = Length::from_si(goes - if end == End::Least { room.1 } else { room.2 });
            let name = self.machines[machine].feet[foot].name.clone();
            all.push(gain(Change::Room { machine, foot: name, beyond }, then.worst_ratio));
        }
        if !bound.is_empty() {
            all.push(gain(Change::AllRoom, self.least(&self.with_room(&self.every_end()))?));
        }
        for (index, machine) in self.machines.iter().enumerate() {
            if machine.part == Part::Held && machine.feet.len() > 1 {
                let mut with = self.train.movers.clone();
                with[index].may_move = true;
                all.push(gain(Change::LetGo(index), self.least(&with)?));
            }
        }
        all.retain(|gain| gain.now - gain.then >= WORTH);
        Ok(all)
    }

    fn least(&self, movers: &[Mover]) -> Result<f64, Failed> {
        least_worst(movers, &self.train.ratios, self.raise_only())
    }

    /// Feet at the end of their room, and at which end.
    fn bound(&self, moves: &[[f64; 2]]) -> Vec<(usize, usize, End)> {
        let mut all = Vec::new();
        for (machine, (mover, [offset, slope])) in self.train.movers.iter().zip(moves).enumerate() {
            if !mover.may_move {
                continue;
            }
            for (foot, (x, least, greatest)) in mover.feet.iter().enumerate() {
                let up = offset + slope * (x - mover.x0());
                if up - least < AT_END_M {
                    all.push((machine, foot, End::Least));
                } else if greatest - up < AT_END_M {
                    all.push((machine, foot, End::Greatest));
                }
            }
        }
        all
    }

    fn every_end(&self) -> Vec<(usize, usize, End)> {
        let feet = |(machine, mover): (usize, &Mover)| {
            let ends =
                (0..mover.feet.len()).flat_map(|foot| [(foot, End::Least), (foot, End::Greatest)]);
            ends.map(|(foot, end)| (machine, foot, end)).collect::<Vec<_>>()
        };
        self.train.movers.iter().enumerate().flat_map(feet).collect()
    }

    fn with_room(&self, feet: &[(usize, usize, End)]) -> Vec<Mover> {
        let mut movers = self.train.movers.clone();
        for &(machine, foot, end) in feet {
            let room = &mut movers[machine].feet[foot];
            match end {
                End::Least => room.1 = f64::NEG_INFINITY,
                End::Greatest => room.2 = f64::INFINITY,
            }
        }
        movers
    }
}

/// The end of a foot's room that a move has come to.
#[derive(Clone, Copy, PartialEq)]
enum End {
    Least,
    Greatest,
}
