//! The linear programs behind a train: the worst ratio, then the chance, then the moves.
//!
//! In one plane every machine that may move has two unknowns, the offset and the slope of its
//! move at its first foot plane. First `min w` with `|r| ≤ w`, `r = c + k·moves`, for every ratio of
//! every coupling, every foot within its room; then, w held there, the greatest product of the
//! chances that each ratio lies within 1; then, both held, the moves that are preferred.
//!
//! The chance of a ratio with standard uncertainty u is `P = Φ((1 − r)/u) − Φ((−1 − r)/u)`. Its
//! negative logarithm is convex, so a handful of tangents stand for it in a linear program, and the
//! sum of them is least where the product of the chances is greatest (to the tangents' coarseness).
//! Moves are counted in millimetres and millimetres a metre, so that coefficients lie near one another.

use microlp::{ComparisonOp, LinearExpr, OptimizationDirection, Problem, Solution, Variable};

use quantities::{Kind, Limits, Value, probability_inside};

use crate::train::{Preference, TrainError};

/// No machine is moved farther than this, mm: it keeps a train that stands free from drifting off.
const FARTHEST: f64 = 1e3;
/// Room left at what an earlier program found, for the solver's tolerance.
const SLACK: f64 = 1e-6;
/// Weight of the total beside the greatest move, so that small moves stay small.
const BESIDE: f64 = 1e-3;
/// Metres to the unit of moves.
const MM: f64 = 1e3;
/// Tangents touch where the margin to the level is so many standard uncertainties.
const MARGINS: [f64; 7] = [-2.0, -0.5, 0.5, 1.25, 2.0, 2.75, 3.5];
/// A ratio known better than this is taken as certain.
const KNOWN: f64 = 1e-4;
/// For whole shims a millimetre of moves weighs so much against a whole level, or against a unit of
/// lost chance: enough to decide between equals.
const MOVE_WEIGHS: f64 = 1e-6;

/// A machine in one plane.
#[derive(Clone)]
pub(crate) struct Mover {
    pub may_move: bool,
    /// x of the foot planes, m, with the least and greatest move, m.
    pub feet: Vec<(f64, f64, f64)>,
}

impl Mover {
    pub fn x0(&self) -> f64 {
        self.feet.first().map_or(0.0, |(x, _, _)| *x)
    }
}

/// One ratio of one coupling, between machine `driver` and the next: `constant` now, changed by
/// `on` (per metre of offset at `x`, per unit of slope) times the driven's move less the driver's.
pub(crate) struct Ratio {
    pub driver: usize,
    pub x: f64,
    pub constant: f64,
    pub on: [f64; 2],
    /// −ln P lies above all of these: at nothing, and rise per unit of |ratio|. None when certain.
    tangents: Vec<(f64, f64)>,
}

impl Ratio {
    /// `u` is its standard uncertainty, which moves do not change.
    pub fn new(driver: usize, x: f64, constant: f64, on: [f64; 2], u: f64) -> Self {
        let tangents = if u > KNOWN { tangents(u) } else { Vec::new() };
        Self { driver, x, constant, on, tangents }
    }

    /// What a move (offset at `x0`, slope) of the driven machine adds to it; of the driver, takes off.
    pub fn of(&self, [offset, slope]: &[f64; 2], x0: f64) -> f64 {
        self.on[0] * (offset + slope * (self.x - x0)) + self.on[1] * slope
    }

    /// −ln P as the tangents have it.
    fn lost(&self, size: f64) -> f64 {
        self.tangents.iter().map(|(from, rise)| from + rise * size).fold(0.0, f64::max)
    }
}

fn tangents(u: f64) -> Vec<(f64, f64)> {
    let density = |z: f64| (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt();
    let touching = |r: f64| {
        let ratio = Value { kind: Kind::Number, si: r, plus_minus: Some(2.0 * u) };
        let chance = probability_inside(&ratio, &Limits::between(-1.0, 1.0)).unwrap_or(1.0);
        let rise = (density((1.0 - r) / u) - density((1.0 + r) / u)) / (u * chance);
        (-chance.ln() - rise * r, rise)
    };
    let places = MARGINS.iter().map(|margin| 1.0 - u * margin).filter(|r| *r > 0.0);
    places.chain([0.0]).map(touching).collect()
}

/// Moves found: offset at the first foot plane (m) and slope for each machine, and the worst ratio.
pub(crate) struct Found {
    pub moves: Vec<[f64; 2]>,
    pub worst_ratio: f64,
}

/// Why a program has no answer. Leaving all as it is breaks no bound of a train, so the first cannot
/// come of one; it can of a branch of it.
pub(crate) enum Failed {
    /// The feet leave no move at all.
    NoRoom,
    /// What the solver said.
    Solver(String),
}

impl From<Failed> for TrainError {
    fn from(failed: Failed) -> Self {
        match failed {
            Failed::NoRoom => Self::Unsolved("no move within the room of the feet".to_owned()),
            Failed::Solver(said) => Self::Unsolved(said),
        }
    }
}

/// The moves that leave the least worst ratio, of those the ones most surely inside, and of those the
/// preferred. `raise_only` forbids moves below zero.
pub(crate) fn solve(
    machines: &[Mover],
    ratios: &[Ratio],
    preference: Preference,
    raise_only: bool,
) -> Result<Found, Failed> {
    let worst_ratio = least_worst(machines, ratios, raise_only)?;
    let held = Held { worst: worst_ratio + SLACK, lost: f64::INFINITY };
    let second = Program::new(machines, ratios, Costs { worst: 0.0, lost: 1.0 }, held, raise_only);
    let lost = second.minimum()?.var_value(second.lost) + SLACK;
    let free = Costs { worst: 0.0, lost: 0.0 };
    let mut third = Program::new(machines, ratios, free, Held { lost, ..held }, raise_only);
    third.prefer(machines, preference, 1.0);
    let solution = third.minimum()?;
    Ok(Found { moves: third.moves(&solution), worst_ratio })
}

/// The least worst ratio alone.
pub(crate) fn least_worst(
    machines: &[Mover],
    ratios: &[Ratio],
    raise_only: bool,
) -> Result<f64, Failed> {
    let first = Program::new(machines, ratios, Costs { worst: 1.0, lost: 0.0 }, OPEN, raise_only);
    Ok(first.minimum()?.var_value(first.worst).max(0.0))
}

/// What a search for whole shims makes least; small moves decide between equals.
#[derive(Clone, Copy)]
pub(crate) enum Aim {
    /// The worst ratio.
    WorstRatio,
    /// The chance lost, the worst ratio held at no more than this.
    ChanceLost(f64),
}

/// The moves that make an aim least, and what it comes to.
pub(crate) fn least(
    machines: &[Mover],
    ratios: &[Ratio],
    aim: Aim,
    raise_only: bool,
) -> Result<(Vec<[f64; 2]>, f64), Failed> {
    let (costs, held) = match aim {
        Aim::WorstRatio => (Costs { worst: 1.0, lost: 0.0 }, OPEN),
        Aim::ChanceLost(worst) => (Costs { worst: 0.0, lost: 1.0 }, Held { worst, ..OPEN }),
    };
    let mut program = Program::new(machines, ratios, costs, held, raise_only);
    program.prefer(machines, Preference::LeastTotal, MOVE_WEIGHS);
    let solution = program.minimum()?;
    let moves = program.moves(&solution);
    let sum = weighed(machines, ratios, &moves).sum(aim);
    Ok((moves, sum))
}

/// What given moves come to.
pub(crate) struct Weighed {
    pub worst_ratio: f64,
    lost: f64,
    total_mm: f64,
}

impl Weighed {
    /// By an aim; without end where they break what it holds.
    pub fn sum(&self, aim: Aim) -> f64 {
        let moved = MOVE_WEIGHS * self.total_mm;
        match aim {
            Aim::WorstRatio => self.worst_ratio + moved,
            Aim::ChanceLost(most) if self.worst_ratio > most + SLACK => f64::INFINITY,
            Aim::ChanceLost(_) => self.lost + moved,
        }
    }
}

pub(crate) fn weighed(machines: &[Mover], ratios: &[Ratio], moves: &[[f64; 2]]) -> Weighed {
    let (mut worst_ratio, mut lost) = (0.0_f64, 0.0);
    for ratio in ratios {
        let on = |index: usize| ratio.of(&moves[index], machines[index].x0());
        let change = on(ratio.driver + 1) - on(ratio.driver);
        let size = (ratio.constant + change).abs();
        worst_ratio = worst_ratio.max(size);
        lost += ratio.lost(size);
    }
    let free = machines.iter().enumerate().filter(|(_, machine)| machine.may_move);
    let feet = free.flat_map(|(index, machine)| {
        let [offset, slope] = moves[index];
        machine.feet.iter().map(move |foot| (offset + slope * (foot.0 - machine.x0())).abs())
    });
    Weighed { worst_ratio, lost, total_mm: feet.sum::<f64>() * MM }
}

/// What the worst ratio and the chance lost cost in a program.
#[derive(Clone, Copy)]
struct Costs {
    worst: f64,
    lost: f64,
}

/// What they are held at.
#[derive(Clone, Copy)]
struct Held {
    worst: f64,
    lost: f64,
}

const OPEN: Held = Held { worst: f64::INFINITY, lost: f64::INFINITY };

struct Program {
    problem: Problem,
    worst: Variable,
    /// Sum of −ln P over all ratios.
    lost: Variable,
    unknowns: Vec<Option<[Variable; 2]>>,
}

impl Program {
    fn new(
        machines: &[Mover],
        ratios: &[Ratio],
        costs: Costs,
        held: Held,
        raise_only: bool,
    ) -> Self {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let worst = problem.add_var(costs.worst, (0.0, held.worst));
        let lost = problem.add_var(costs.lost, (0.0, held.lost));
        let mut free = || problem.add_var(0.0, (-FARTHEST, FARTHEST));
        let unknowns =
            machines.iter().map(|machine| machine.may_move.then(|| [free(), free()])).collect();
        let mut program = Self { problem, worst, lost, unknowns };
        let mut all_lost = LinearExpr::empty();
        for ratio in ratios {
            let lost = program.problem.add_var(0.0, (0.0, f64::INFINITY));
            all_lost.add(lost, 1.0);
            program.bind_ratio(machines, ratio, lost);
        }
        all_lost.add(program.lost, -1.0);
        program.at_most(all_lost, 0.0);
        for (index, machine) in machines.iter().enumerate().filter(|(_, machine)| machine.may_move)
        {
            for &(x, least, greatest) in &machine.feet {
                let least = if raise_only { least.max(0.0) } else { least };
                let here = |program: &Self| program.move_at(machines, index, x, 1.0);
                let (low, high) = (here(&program), here(&program));
                program.at_least(low, least * MM);
                program.at_most(high, greatest * MM);
            }
        }
        program
    }

    /// |constant + on·moves| ≤ worst, and the chance lost lies above its tangents.
    fn bind_ratio(&mut self, machines: &[Mover], ratio: &Ratio, lost: Variable) {
        for sign in [1.0, -1.0] {
            let mut sum = self.change(machines, ratio, sign);
            sum.add(self.worst, -1.0);
            self.at_most(sum, -sign * ratio.constant);
            for (from, rise) in &ratio.tangents {
                let mut sum = self.change(machines, ratio, sign * rise);
                sum.add(lost, -1.0);
                self.at_most(sum, -from - sign * rise * ratio.constant);
            }
        }
    }

    /// `times` what the moves add to a ratio.
    fn change(&self, machines: &[Mover], ratio: &Ratio, times: f64) -> LinearExpr {
        let mut sum = LinearExpr::empty();
        for (index, side) in [(ratio.driver + 1, times), (ratio.driver, -times)] {
            let Some([offset, slope]) = self.unknowns[index] else { continue };
            let arm = ratio.x - machines[index].x0();
            sum.add(offset, side * ratio.on[0] / MM);
            sum.add(slope, side * (ratio.on[0] * arm + ratio.on[1]) / MM);
        }
        sum
    }

    fn moves(&self, solution: &Solution) -> Vec<[f64; 2]> {
        let pair = |unknowns: &Option<[Variable; 2]>| {
            unknowns.map_or([0.0; 2], |pair| pair.map(|unknown| solution.var_value(unknown) / MM))
        };
        self.unknowns.iter().map(pair).collect()
    }

    /// `sign` times the move at `x`, in mm.
    fn move_at(&self, machines: &[Mover], index: usize, x: f64, sign: f64) -> LinearExpr {
        let mut sum = LinearExpr::empty();
        if let Some([offset, slope]) = self.unknowns[index] {
            sum.add(offset, sign);
            let arm = x - machines[index].x0();
            if arm != 0.0 {
                sum.add(slope, sign * arm);
            }
        }
        sum
    }

    /// Adds what is to be least: |move| at every foot, and for one preference the greatest.
    fn prefer(&mut self, machines: &[Mover], preference: Preference, weight: f64) {
        let (each, top) = match preference {
            Preference::LeastTotal | Preference::RaiseOnly => (weight, 0.0),
            Preference::LeastGreatest => (BESIDE * weight, weight),
        };
        let greatest = self.problem.add_var(top, (0.0, f64::INFINITY));
        for (index, machine) in machines.iter().enumerate().filter(|(_, machine)| machine.may_move)
        {
            for &(x, _, _) in &machine.feet {
                let size = self.problem.add_var(each, (0.0, f64::INFINITY));
                for sign in [1.0, -1.0] {
                    let mut sum = self.move_at(machines, index, x, sign);
                    sum.add(size, -1.0);
                    self.at_most(sum, 0.0);
                }
                let mut below = LinearExpr::empty();
                below.add(size, 1.0);
                below.add(greatest, -1.0);
                self.at_most(below, 0.0);
            }
        }
    }

    fn at_most(&mut self, sum: LinearExpr, most: f64) {
        if most < f64::INFINITY {
            self.problem.add_constraint(sum, ComparisonOp::Le, most);
        }
    }

    fn at_least(&mut self, sum: LinearExpr, least: f64) {
        if least > f64::NEG_INFINITY {
            self.problem.add_constraint(sum, ComparisonOp::Ge, least);
        }
    }

    fn minimum(&self) -> Result<Solution, Failed> {
        let outcome = self.problem.solve().map_err(|error| match error {
            microlp::Error::Infeasible => Failed::NoRoom,
            other => Failed::Solver(other.to_string()),
        })?;
        outcome.into_solution().map_err(|_| Failed::Solver("interrupted".into()))
    }
}
