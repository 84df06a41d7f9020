//! The linear programs behind a train: first the worst ratio, then the moves that reach it.
//!
//! In one plane every machine that may move has two unknowns, the offset and the slope of its
//! move at its first foot plane. First `min w` with `|c + k·moves| ≤ w` for every ratio of every
//! coupling, every foot within its room; then, w held there, the moves that are preferred. Moves are
//! counted in millimetres and millimetres a metre, so that coefficients lie near one another.

use microlp::{ComparisonOp, LinearExpr, OptimizationDirection, Problem, Solution, Variable};

use crate::train::Preference;

/// No machine is moved farther than this, mm: it keeps a train that stands free from drifting off.
const FARTHEST: f64 = 1e3;
/// Room left above the least worst ratio in the second program, for the solver's tolerance.
const SLACK: f64 = 1e-6;
/// Weight of the total beside the greatest move, so that small moves stay small.
const BESIDE: f64 = 1e-3;
/// Metres to the unit of moves.
const MM: f64 = 1e3;

/// A machine in one plane.
pub(crate) struct Mover {
    pub may_move: bool,
    /// x of the foot planes, m, with the least and greatest move, m.
    pub feet: Vec<(f64, f64, f64)>,
}

impl Mover {
    fn x0(&self) -> f64 {
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
}

/// Moves found: offset at the first foot plane (m) and slope for each machine, and the worst ratio.
pub(crate) struct Found {
    pub moves: Vec<[f64; 2]>,
    pub worst_ratio: f64,
}

/// What the solver said instead of an answer. Leaving all as it is breaks no bound, so there is
/// always an answer to be found.
pub(crate) struct Failed(pub String);

/// The moves that leave the least worst ratio, and of those the preferred. `raise_only` forbids
/// moves below zero.
pub(crate) fn solve(
    machines: &[Mover],
    ratios: &[Ratio],
    preference: Preference,
    raise_only: bool,
) -> Result<Found, Failed> {
    let first = Program::new(machines, ratios, (1.0, f64::INFINITY), raise_only);
    let worst_ratio = first.minimum()?.var_value(first.worst).max(0.0);
    let mut second = Program::new(machines, ratios, (0.0, worst_ratio + SLACK), raise_only);
    second.prefer(machines, preference);
    let solution = second.minimum()?;
    let pair = |unknowns: &Option<[Variable; 2]>| {
        unknowns.map_or([0.0; 2], |pair| pair.map(|unknown| solution.var_value(unknown) / MM))
    };
    Ok(Found { moves: second.unknowns.iter().map(pair).collect(), worst_ratio })
}

struct Program {
    problem: Problem,
    worst: Variable,
    unknowns: Vec<Option<[Variable; 2]>>,
}

impl Program {
    fn new(machines: &[Mover], ratios: &[Ratio], worst: (f64, f64), raise_only: bool) -> Self {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let (cost, most) = worst;
        let worst = problem.add_var(cost, (0.0, most));
        let mut free = || problem.add_var(0.0, (-FARTHEST, FARTHEST));
        let unknowns =
            machines.iter().map(|machine| machine.may_move.then(|| [free(), free()])).collect();
        let mut program = Self { problem, worst, unknowns };
        for ratio in ratios {
            program.bind_ratio(machines, ratio);
        }
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

    /// |constant + on·moves| ≤ worst.
    fn bind_ratio(&mut self, machines: &[Mover], ratio: &Ratio) {
        for sign in [1.0, -1.0] {
            let mut sum = LinearExpr::empty();
            sum.add(self.worst, -1.0);
            for (index, side) in [(ratio.driver + 1, sign), (ratio.driver, -sign)] {
                let Some([offset, slope]) = self.unknowns[index] else { continue };
                let arm = ratio.x - machines[index].x0();
                sum.add(offset, side * ratio.on[0] / MM);
                sum.add(slope, side * (ratio.on[0] * arm + ratio.on[1]) / MM);
            }
            self.at_most(sum, -sign * ratio.constant);
        }
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
    fn prefer(&mut self, machines: &[Mover], preference: Preference) {
        let (each, top) = match preference {
            Preference::LeastTotal | Preference::RaiseOnly => (1.0, 0.0),
            Preference::LeastGreatest => (BESIDE, 1.0),
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
        let outcome = self.problem.solve().map_err(|error| Failed(error.to_string()))?;
        outcome.into_solution().map_err(|_| Failed("interrupted".into()))
    }
}
