//! A train of two to eight machines: one common line that all can reach.
//!
//! Every coupling was measured by itself and gives the next machine's line against the one before
//! it; chained, all lines stand on one datum. Any machine may be held. Among all moves that the
//! feet allow, those are sought that leave the least worst ratio of deviation to level at any
//! coupling, running (growth included); among these the ones that are most surely inside; and among
//! these the moves that are preferred.
//!
//! A line's uncertainty grows along the chain; a coupling's does not, since it was measured itself.

use quantities::{Basis, Kind, Length, Physical, Source, Value, Working};

use crate::common_line::{Mover, Ratio, solve};
use crate::line::Line;
use crate::moves::{FootPlane, MovesError, check};
use crate::position::Position;
use crate::tolerance::{Judgement, Level, ToleranceError, judge_line, ratio_forms};
use crate::{Estimate, Plane};

/// Whether a machine may be moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// It stays where it is.
    Held,
    /// It can be moved at its feet.
    Movable,
}

/// Which of the moves that line up equally well are wanted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Preference {
    /// The least sum of all moves.
    #[default]
    LeastTotal,
    /// The least greatest move.
    LeastGreatest,
    /// Nothing is lowered, and the sum is least; for feet without shims to take out.
    RaiseOnly,
}

/// A machine of the train, in the order of x.
#[derive(Clone, Debug, PartialEq)]
pub struct TrainMachine {
    /// Its name.
    pub name: String,
    /// Whether it may be moved.
    pub part: Part,
    /// Its foot planes, two at least if it may be moved.
    pub feet: Vec<FootPlane>,
    /// What its line grows on its way to running.
    pub growth: Line,
}

/// The coupling between a machine and the next.
#[derive(Clone, Debug, PartialEq)]
pub struct TrainCoupling {
    /// As measured cold.
    pub position: Position,
    /// What it is judged by: for offset and slope, or for flex angles.
    pub levels: Vec<Level>,
}

/// Why a train has no common line.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TrainError {
    /// Two to eight machines, and one coupling fewer.
    #[error(
        "{machines} machines and {couplings} couplings; expected two to eight machines, and a coupling between each and the next"
    )]
    Size {
        /// How many machines.
        machines: usize,
        /// How many couplings.
        couplings: usize,
    },
    /// A machine's feet are no feet.
    #[error("{machine}: {why}")]
    Feet {
        /// The machine.
        machine: String,
        /// What is wrong.
        why: MovesError,
    },
    /// A coupling's levels cannot be judged by, or it has none.
    #[error("coupling {} has {}", index + 1, why.map_or_else(|| "no levels to be judged by; give a limit on its offset, its slope or its flex angles".to_owned(), |why| why.to_string()))]
    Levels {
        /// Which one, counted from zero.
        index: usize,
        /// What is wrong; `None` when there are none.
        why: Option<ToleranceError>,
    },
    /// The linear program could not be solved in the numbers at hand.
    #[error("no common line found: {0}")]
    Unsolved(String),
}

/// One foot plane of a train.
#[derive(Clone, Debug, PartialEq)]
pub struct TrainFoot {
    /// The foot plane.
    pub foot: FootPlane,
    /// Where its shaft stands now, above and to the right of the datum.
    pub present: [Estimate<Length>; 2],
    /// Up, and to the right.
    pub amount: [Length; 2],
}

impl TrainFoot {
    /// How its move came about, in a plan that leaves these worst ratios.
    pub fn working(&self, plane: Plane, worst_ratio: [f64; 2]) -> Working {
        let (present, amount) = (self.present[plane.index()], self.amount[plane.index()]);
        let result = Estimate::new(amount, present.plus_minus).shown(Kind::Offset);
        let common = Value::new(Kind::Offset, present.value + amount);
        let ratio = worst_ratio[plane.index()];
        let worst = Value { kind: Kind::Percent, si: ratio, plus_minus: None };
        Working::new(
            format!("Move at the {} feet, {}", self.foot.name, plane.words()),
            "m = c − p",
            result,
            Source::new("Linear program over all foot moves", "", Basis::Computed),
        )
        .term("c", "common line of the train at the foot plane, cold", common)
        .term("p", "where the shaft stands there", present.shown(Kind::Offset))
        .term("w", "worst part of a level that this line leaves used up", worst)
        .valid("w is least; every move within the room of its foot; straight shafts")
    }
}

/// What to do with one machine.
#[derive(Clone, Debug, PartialEq)]
pub struct TrainMoves {
    /// Its name.
    pub name: String,
    /// Its line now, cold, against the datum.
    pub present: Line,
    /// Its foot planes.
    pub feet: Vec<TrainFoot>,
}

impl TrainMoves {
    /// Its moves in a plane, in the order of its foot planes.
    pub fn amounts(&self, plane: Plane) -> impl Iterator<Item = Length> + '_ {
        self.feet.iter().map(move |foot| foot.amount[plane.index()])
    }
}

/// What is left at one coupling, running, after the moves.
#[derive(Clone, Debug, PartialEq)]
pub struct TrainLeft {
    /// Deviation from running in line, moving minus fixed of that coupling.
    pub deviation: Line,
    /// Against its levels.
    pub judged: Vec<Judgement>,
}

/// The moves of a train.
#[derive(Clone, Debug, PartialEq)]
pub struct TrainPlan {
    /// The machine whose cold line is the datum: the first that is held, or the first.
    pub datum: usize,
    /// Each machine, in order.
    pub machines: Vec<TrainMoves>,
    /// Each coupling, in order.
    pub couplings: Vec<TrainLeft>,
    /// The worst ratio of deviation to level that is left, vertical and sideways.
    pub worst_ratio: [f64; 2],
}

impl TrainPlan {
    /// How the worst ratio in a plane came about.
    pub fn working(&self, plane: Plane) -> Working {
        let ratio = self.worst_ratio[plane.index()];
        let judged = self.couplings.iter().flat_map(|left| &left.judged);
        let judged = judged.filter(|judgement| judgement.plane == plane);
        let worst = judged.max_by(|a, b| a.ratio().total_cmp(&b.ratio()));
        let source = Source::new("Linear program over all foot moves", "", Basis::Computed);
        let result = Value { kind: Kind::Percent, si: ratio, plus_minus: None };
        let working = Working::new(
            format!("Worst part of a level used up, {}", plane.words()),
            "w = max |d|/T",
            result,
            source,
        )
        .valid("straight shafts; every move within the room of its foot");
        let level = |judgement: &Judgement| judgement.level().cloned();
        match worst.and_then(|judgement| Some((judgement.deviation, level(judgement)?))) {
            Some((deviation, level)) => working.term("d", "deviation there", deviation).term(
                "T",
                level.name.clone(),
                level.shown(),
            ),
            None => working,
        }
    }
}

/// Finds the common line of a train.
///
/// # Errors
/// [`TrainError`].
pub fn line_up(
    machines: &[TrainMachine],
    couplings: &[TrainCoupling],
    preference: Preference,
) -> Result<TrainPlan, TrainError> {
    check_train(machines, couplings)?;
    let running = running(machines, couplings);
    let mut moves = vec![[[0.0; 2]; 2]; machines.len()];
    let mut worst_ratio = [0.0; 2];
    for plane in Plane::BOTH {
        let in_plane = InPlane::of(machines, couplings, &running, plane)?;
        let raise_only = plane == Plane::Vertical && preference == Preference::RaiseOnly;
        let found = solve(&in_plane.movers, &in_plane.ratios, preference, raise_only)?;
        worst_ratio[plane.index()] = found.worst_ratio;
        for (to, from) in moves.iter_mut().zip(found.moves) {
            to[plane.index()] = from;
        }
    }
    told_of(machines, couplings, &moves, worst_ratio)
}

/// A train in one plane, as the programs take it.
pub(crate) struct InPlane {
    pub movers: Vec<Mover>,
    pub ratios: Vec<Ratio>,
}

impl InPlane {
    pub fn of(
        machines: &[TrainMachine],
        couplings: &[TrainCoupling],
        running: &[Line],
        plane: Plane,
    ) -> Result<Self, TrainError> {
        let movers = machines.iter().map(|machine| mover(machine, plane)).collect();
        Ok(Self { movers, ratios: ratios(couplings, running, plane)? })
    }
}

/// The plan that these moves make; for each machine and plane the move at its first foot plane and
/// its slope.
pub(crate) fn told_of(
    machines: &[TrainMachine],
    couplings: &[TrainCoupling],
    moves: &[[[f64; 2]; 2]],
    worst_ratio: [f64; 2],
) -> Result<TrainPlan, TrainError> {
    let running = running(machines, couplings);
    let datum = machines.iter().position(|m| m.part == Part::Held).unwrap_or(0);
    let shifts: Vec<Line> =
        machines.iter().zip(moves).map(|(machine, moves)| shift(machine, moves)).collect();
    let after = left(couplings, &running, &shifts)?;
    let present = chain(couplings, datum);
    let parts = machines.iter().zip(present).zip(&shifts);
    let machines = parts.map(|((machine, present), shift)| told(machine, present, shift)).collect();
    Ok(TrainPlan { datum, machines, couplings: after, worst_ratio })
}

pub(crate) fn check_train(
    machines: &[TrainMachine],
    couplings: &[TrainCoupling],
) -> Result<(), TrainError> {
    let fits = (2..=8).contains(&machines.len()) && couplings.len() + 1 == machines.len();
    if !fits {
        let (machines, couplings) = (machines.len(), couplings.len());
        return Err(TrainError::Size { machines, couplings });
    }
    for machine in machines.iter().filter(|machine| machine.part == Part::Movable) {
        let why = |why| TrainError::Feet { machine: machine.name.clone(), why };
        check(&machine.feet).map_err(why)?;
    }
    match couplings.iter().position(|coupling| coupling.levels.is_empty()) {
        Some(index) => Err(TrainError::Levels { index, why: None }),
        None => Ok(()),
    }
}

/// Driven minus driver at each coupling, cold.
fn step(coupling: &TrainCoupling) -> Line {
    let line = &coupling.position.line;
    if coupling.position.layout.sign() > 0.0 { line.clone() } else { line.negated() }
}

/// Every machine's cold line against the datum's.
fn chain(couplings: &[TrainCoupling], datum: usize) -> Vec<Line> {
    let here =
        couplings.first().map_or(Length::from_si(0.0), |first| first.position.layout.reference);
    let mut lines = vec![Line::zero(here); couplings.len() + 1];
    for i in datum..couplings.len() {
        lines[i + 1] = lines[i].plus(&step(&couplings[i]));
    }
    for i in (0..datum).rev() {
        lines[i] = lines[i + 1].minus(&step(&couplings[i]));
    }
    lines
}

/// Driven minus driver at each coupling, running, before any move.
pub(crate) fn running(machines: &[TrainMachine], couplings: &[TrainCoupling]) -> Vec<Line> {
    let pairs = machines.windows(2).zip(couplings);
    pairs
        .map(|(pair, coupling)| step(coupling).plus(&pair[1].growth).minus(&pair[0].growth))
        .collect()
}

fn mover(machine: &TrainMachine, plane: Plane) -> Mover {
    let feet = machine.feet.iter().map(|foot| {
        let (least, greatest) = foot.room(plane);
        (foot.at.si(), least, greatest)
    });
    Mover { may_move: machine.part == Part::Movable, feet: feet.collect() }
}

fn ratios(
    couplings: &[TrainCoupling],
    running: &[Line],
    plane: Plane,
) -> Result<Vec<Ratio>, TrainError> {
    let mut ratios = Vec::new();
    for (driver, (coupling, line)) in couplings.iter().zip(running).enumerate() {
        let layout = &coupling.position.layout;
        let why = |why| TrainError::Levels { index: driver, why: Some(why) };
        let x = layout.reference;
        let (offset, slope) = (line.offset(plane, x).value.si(), line.slope(plane).value.si());
        for on in ratio_forms(layout, &coupling.levels).map_err(why)? {
            let constant = on[0] * offset + on[1] * slope;
            let shift = line.reference().si() - x.si();
            let (_, u) = line.form(plane, [on[0], on[1] - on[0] * shift]);
            ratios.push(Ratio::new(driver, x.si(), constant, on, u));
        }
    }
    Ok(ratios)
}

/// A machine's move as a line, from the move at its first foot plane and its slope.
fn shift(machine: &TrainMachine, [up, right]: &[[f64; 2]; 2]) -> Line {
    let x0 = machine.feet.first().map_or(0.0, |foot| foot.at.si());
    Line::new(x0, [up[0], right[0], up[1], right[1]], [[0.0; 4]; 4])
}

fn left(
    couplings: &[TrainCoupling],
    running: &[Line],
    shifts: &[Line],
) -> Result<Vec<TrainLeft>, TrainError> {
    let parts = couplings.iter().zip(running).zip(shifts.windows(2)).enumerate();
    parts
        .map(|(index, ((coupling, line), pair))| {
            let layout = &coupling.position.layout;
            let driven_less_driver = line.plus(&pair[1]).minus(&pair[0]);
            let moving = layout.sign() > 0.0;
            let deviation = if moving { driven_less_driver } else { driven_less_driver.negated() };
            let judged = judge_line(layout, &deviation, &coupling.levels)
                .map_err(|why| TrainError::Levels { index, why: Some(why) })?;
            Ok(TrainLeft { deviation, judged })
        })
        .collect()
}

fn told(machine: &TrainMachine, present: Line, shift: &Line) -> TrainMoves {
    let feet = machine.feet.iter().map(|foot| TrainFoot {
        foot: foot.clone(),
        present: Plane::BOTH.map(|plane| present.offset(plane, foot.at)),
        amount: Plane::BOTH.map(|plane| shift.offset(plane, foot.at).value),
    });
    TrainMoves { name: machine.name.clone(), feet: feet.collect(), present }
}
