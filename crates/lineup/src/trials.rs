//! The chance of being inside, by trials: every input is drawn at random, the line-up is worked out, and
//! what comes of it is counted.
//!
//! The `±` of a position adds up squares, as if all errors were normal and small, and chances at
//! several places then only bound the chance of all. Trials ask for neither. A division of a dial is
//! a rectangle, a runout of unknown high spot a circle, bounds on growth are bounds; a stem's place
//! that is known to a millimetre multiplies the slope it looks at; and both ends, both planes and all
//! couplings of a train are judged in one trial, so what they share is shared.
//!
//! What is normal and merely adds up is drawn together, by the Cholesky factor of its covariance:
//! sums of normal numbers are normal, so nothing is lost by it.
//!
//! ```text
//! P = inside/n      u(P) = √( P·(1 − P)/n )
//! ```
//!
//! The generators are xoshiro128++ (Blackman and Vigna), started from a seed: the same inputs give the
//! same answer, on every machine. What is drawn is an error, and has single precision; what it is
//! added to, and what is counted, has double. A division of a dial is drawn in 65 536 steps.
//!
//! Source: JCGM 101:2008, clauses 5 to 7; what is drawn from which distribution, 6.4.

mod causes;
mod draw;
mod random;
mod tally;

use quantities::{Basis, Kind, Length, Source, Value, Working};

use crate::growth::{GrowthError, PlaneGrowth, growth_line, target};
use crate::line::Line;
use crate::position::{Observation, Position};
use crate::tolerance::{Judgement, Level, ToleranceError, judge_line};
use crate::{Estimate, Plane};

/// What a machine grows.
#[derive(Clone, Debug, PartialEq)]
pub struct Growth {
    line: Line,
    /// Bounds: what half of each adds to offset up and right at the line's reference, slope up and right.
    bounds: Vec<[f64; 4]>,
}

impl Growth {
    /// Known with a `±` that is 95 % of a normal distribution.
    pub fn normal(line: Line) -> Self {
        Self { line, bounds: Vec::new() }
    }

    /// Where a machine that grows like `other` must stand cold against this one, so that both run in line.
    ///
    /// ```text
    /// t(x) = growth of this one(x) − growth of the other(x)
    /// ```
    #[must_use]
    pub fn target(&self, other: &Self) -> Line {
        target(&self.as_normal(), &other.as_normal())
    }

    /// Its line, bounds taken as a normal distribution of the same standard uncertainty.
    fn as_normal(&self) -> Line {
        let add = |line: Line, on: &[f64; 4]| line.with_cause(on, 1.0 / 3.0);
        self.bounds.iter().fold(self.line.clone(), add)
    }

    /// Anywhere between bounds at each plane, all within them alike likely: a plane's `±` is the half
    /// of its range.
    ///
    /// # Errors
    /// [`GrowthError`], as for a growth line.
    pub fn between(planes: &[PlaneGrowth]) -> Result<Self, GrowthError> {
        let line = growth_line(planes)?.exactly();
        let mut bounds = Vec::new();
        for index in 0..planes.len() {
            for plane in Plane::BOTH {
                bounds.push(growth_line(&alone(planes, index, plane))?.numbers());
            }
        }
        bounds.retain(|on| on.iter().any(|part| *part != 0.0));
        Ok(Self { line, bounds })
    }
}

/// The growths at all planes, but of their `±` this one alone, as if it were what it grows.
fn alone(planes: &[PlaneGrowth], index: usize, way: Plane) -> Vec<PlaneGrowth> {
    let half = |other: usize, plane: &PlaneGrowth, of: Plane| {
        let half = if of == Plane::Vertical { plane.up } else { plane.right }.plus_minus;
        let counts = other == index && of == way;
        Estimate::exact(if counts { half } else { Length::default() })
    };
    let alone = |(other, plane): (usize, &PlaneGrowth)| PlaneGrowth {
        at: plane.at,
        up: half(other, plane, Plane::Vertical),
        right: half(other, plane, Plane::Sideways),
    };
    planes.iter().enumerate().map(alone).collect()
}

/// A coupling on trial.
#[derive(Clone, Copy, Debug)]
pub struct OnTrial<'a> {
    /// Where its machines stood when it was measured.
    pub position: &'a Position,
    /// What that was found from.
    pub seen: &'a [Observation],
    /// What is left of the deviation from running in line, moves and growth counted; its own `±` does
    /// not count here, what it comes of does.
    pub left: &'a Line,
    /// What it is judged by.
    pub levels: &'a [Level],
}

/// Why there are no trials.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TrialsError {
    /// No coupling, no level, no trial, or not one machine more than couplings.
    #[error("nothing to try: no trials were asked for, or no coupling given")]
    Nothing,
    /// A coupling's observations do not give its position.
    #[error("coupling {}: its readings fix no position", .0 + 1)]
    NotFixed(usize),
    /// A `±` of a place or a swing that is no longer small beside it.
    #[error("coupling {}: the ± of a stem’s place or of a swing is as large as the length itself; measure it again", .0 + 1)]
    Lever(usize),
    /// A coupling's levels cannot be judged by.
    #[error("coupling {}: {}", .0 + 1, .1)]
    Levels(usize, ToleranceError),
}

/// One deviation over all trials.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// The same by adding squares.
    pub judgement: Judgement,
    /// Mean and standard deviation.
    pub mean: f64,
    /// Standard deviation, in SI.
    pub deviation: f64,
    /// The ends of the interval that holds the middle 95 % of all trials, in SI.
    pub interval: [f64; 2],
    /// Part of the trials that came out within the level.
    pub inside: f64,
}

impl Outcome {
    /// Its mean, with half of the 95 % interval as `±`.
    pub fn shown(&self) -> Value {
        let [low, high] = self.interval;
        let kind = self.judgement.deviation.kind;
        Value { kind, si: self.mean, plus_minus: Some((high - low) / 2.0) }
    }
}

/// What came of all trials.
#[derive(Clone, Debug, PartialEq)]
pub struct Trials {
    /// How many.
    pub count: u32,
    /// For each coupling every deviation that it is judged by.
    pub couplings: Vec<Vec<Outcome>>,
    /// Part of the trials in which everything was inside.
    pub inside: f64,
    /// The worst ratio to a level that 95 % of the trials stay below.
    pub worst_ratio: f64,
}

impl Trials {
    /// How well the chance is known from so many trials; never nothing, for a trial more might have
    /// come out otherwise.
    pub fn uncertainty(&self) -> f64 {
        let count = f64::from(self.count);
        (self.inside * (1.0 - self.inside) / count).sqrt().max(1.0 / count)
    }

    /// The chance, with twice its standard uncertainty as `±`.
    pub fn chance(&self) -> Value {
        let plus_minus = Some(2.0 * self.uncertainty());
        Value { kind: Kind::Percent, si: self.inside, plus_minus }
    }

    /// How it was found.
    pub fn working(&self) -> Working {
        let count = f64::from(self.count);
        let source = Source::new("JCGM 101:2008", "clauses 5 to 7", Basis::Memory);
        let working = Working::new("Chance that all is inside", "P = k/n", self.chance(), source)
            .term("k", "trials with everything inside", Value::number(self.inside * count))
            .term("n", "trials, each with every input drawn anew", Value::number(count));
        let outcomes = self.couplings.iter().flatten();
        let each = |working: Working, outcome: &Outcome| {
            let inside = Value { kind: Kind::Percent, si: outcome.inside, plus_minus: None };
            let name = outcome.judgement.words();
            working.term("k₁/n", format!("part of them with the {name} inside"), inside)
        };
        outcomes.fold(working, each).valid(
            "divisions and bounds as rectangles, every other ± as 95 % of a normal distribution",
        )
    }
}

/// Tries so often, from a seed.
///
/// `growths` are those of the machines, in the order of x: one more than couplings.
///
/// # Errors
/// [`TrialsError`].
/// # Example
/// ```
/// use lineup::growth::{PlaneGrowth, growth_line};
/// use lineup::line::Line;
/// use lineup::position::{Observation, Offset, Slope, position};
/// use lineup::tolerance::Level;
/// use lineup::trials::{Growth, OnTrial, trials};
/// use lineup::{Body, Estimate, Layout, Machine, Plane};
/// use quantities::{Angle, Length, Physical, Source};
/// let at = Length::from_si(0.0);
/// let layout = Layout { moving: Machine::Driven, reference: at, spool: None };
/// let seen: Vec<Observation> = Plane::BOTH
///     .into_iter()
///     .flat_map(|plane| {
///         let (of, from) = (Body::Driven, Body::Driver);
///         let amount = Estimate::new(Length::from_si(0.0), Length::from_si(20e-6));
///         let slope = Estimate::new(Angle::from_si(0.0), Angle::from_si(2e-4));
///         [
///             Observation::Offset(Offset { plane, of, from, at, amount }),
///             Observation::Slope(Slope { plane, of, from, amount: slope }),
///         ]
///     })
///     .collect();
/// let position = position(&layout, &seen)?;
/// let level = Level::offset("site", None, Some(Length::from_si(20e-6)), Source::common_practice("site"))?;
/// let still = || Growth::normal(Line::zero(at));
/// let coupling =
///     OnTrial { position: &position, seen: &seen, left: &position.line, levels: &[level] };
/// let found = trials(&[coupling], &[still(), still()], 1, 100_000)?;
/// // Two planes, each 95.45 % likely: 91.11 % for both.
/// assert!((found.inside - 0.9111).abs() < 4.0 * found.uncertainty());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trials(
    couplings: &[OnTrial],
    growths: &[Growth],
    seed: u64,
    count: u32,
) -> Result<Trials, TrialsError> {
    if couplings.is_empty() || growths.len() != couplings.len() + 1 || count == 0 {
        return Err(TrialsError::Nothing);
    }
    let mut judged = Vec::new();
    for (index, coupling) in couplings.iter().enumerate() {
        let left = judge_line(&coupling.position.layout, coupling.left, coupling.levels);
        let left = left.map_err(|why| TrialsError::Levels(index, why))?;
        if left.is_empty() {
            return Err(TrialsError::Nothing);
        }
        judged.push(left);
    }
    let model = causes::Model::of(couplings, growths, &judged)?;
    let tallies = draw::run(&model, seed, count);
    let mut of_each = tallies.each.into_iter();
    let outcome = |(judgement, tally): (Judgement, tally::Tally)| {
        let level = judgement.level().map_or(1.0, Level::widest);
        Outcome {
            mean: level * tally.mean(),
            deviation: level * tally.deviation(),
            interval: [0.025, 0.975].map(|part| level * tally.below(part)),
            inside: tally.inside(),
            judgement,
        }
    };
    let couplings =
        judged.into_iter().map(|left| left.into_iter().zip(&mut of_each).map(outcome).collect());
    let couplings = couplings.collect();
    let (inside, worst_ratio) = (tallies.all.inside(), tallies.all.below(0.95));
    Ok(Trials { count, couplings, inside, worst_ratio })
}
