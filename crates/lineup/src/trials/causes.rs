//! What is drawn, and what it does to offset up, offset right, slope up and slope right of a coupling.

use quantities::Physical;

use super::{Growth, OnTrial, TrialsError};
use crate::dial::{Dial, Turning};
use crate::linear::{dot, generalised};
use crate::observation::{Row, covariance, lever_form, rows};
use crate::position::{Observation, with_levers};
use crate::tolerance::{Judgement, Level, form};
use crate::{Layout, Plane};

/// A lever may be out by so much of itself, at one standard uncertainty.
const MOST_LEVER: f64 = 0.05;
/// So much of what a lever does may be left out.
const LEFT: f64 = 1e-4;
/// A variance smaller than this part of the whole is nothing.
const NOTHING: f64 = 1e-12;

/// A train as the trials take it.
pub(super) struct Model {
    pub couplings: Vec<Cause>,
    /// Normal numbers that the growth of all machines takes: what each adds to every coupling.
    pub growth: Vec<Vec<[f64; 4]>>,
    /// Rectangles of growth: what half of each adds to every coupling.
    pub bounds: Vec<Vec<[f64; 4]>>,
}

/// What is drawn for one coupling.
pub(super) struct Cause {
    /// The position as it was found: offsets and slopes.
    pub found: [f64; 4],
    /// What is left, by the best estimate.
    pub left: [f64; 4],
    /// Normal errors of the position: columns of the Cholesky factor of their covariance.
    pub normal: Vec<[f64; 4]>,
    pub dials: Vec<Swept>,
    /// Times that levers are put right by what a trial has just found.
    pub rounds: usize,
    /// Ratios to levels, as forms of what is left.
    pub ratios: Vec<[f64; 4]>,
}

/// A dial: how far cosine and sine of its sweep may be off, other than by what is normal.
pub(super) struct Swept {
    /// Divisions are rectangles: what half of each reading's adds to cosine and sine.
    pub even: Vec<[f64; 2]>,
    /// Half a runout with its high spot anywhere.
    pub turned: Option<f64>,
    pub lever: Option<Lever>,
    /// What cosine and sine add to the position.
    pub gains: [[f64; 4]; 2],
}

/// A place or a swing that is not known exactly.
pub(super) struct Lever {
    /// Its standard uncertainty, m.
    pub u: f64,
    /// What a metre more of it makes the dial see, of (offset, slope).
    pub sees: [f64; 2],
}

impl Swept {
    /// Cosine and sine as forms are seen by this ratio.
    fn seen_by(&self, ratio: &[f64; 4]) -> [f64; 2] {
        self.gains.map(|gain| dot(ratio, &gain))
    }

    /// How much of a lever's error comes back as an error of what the lever looks at, at one
    /// standard uncertainty.
    fn back(&self) -> f64 {
        let Some(Lever { u, sees: [on_offset, on_slope] }) = &self.lever else { return 0.0 };
        let back = |i: usize| {
            let gain = self.gains[i];
            u * (on_offset * gain[i] + on_slope * gain[i + 2]).abs()
        };
        back(0).max(back(1))
    }
}

impl Model {
    pub fn of(
        couplings: &[OnTrial],
        growths: &[Growth],
        judged: &[Vec<Judgement>],
    ) -> Result<Self, TrialsError> {
        let causes = couplings.iter().zip(judged).enumerate();
        let causes = causes.map(|(index, (coupling, judged))| cause(index, coupling, judged));
        let couplings_of: Vec<Cause> = causes.collect::<Result<_, _>>()?;
        let layouts: Vec<&Layout> = couplings.iter().map(|on| &on.position.layout).collect();
        let mut shared = Vec::new();
        let mut bounds = Vec::new();
        for (machine, growth) in growths.iter().enumerate() {
            let x0 = growth.line.reference().si();
            let on_all = |numbers: &[f64; 4]| on_couplings(&layouts, machine, x0, numbers);
            shared.extend(cholesky(&growth.line.covariance()).iter().map(on_all));
            bounds.extend(growth.bounds.iter().map(on_all));
        }
        Ok(Self { couplings: couplings_of, growth: together(&shared, couplings.len()), bounds })
    }
}

impl Model {
    /// Standard uncertainty of a ratio at a coupling, all causes taken as small.
    pub fn spread(&self, index: usize, ratio: &[f64; 4]) -> f64 {
        let Cause { normal, dials, found, .. } = &self.couplings[index];
        let square = |on: &[f64; 4]| dot(ratio, on).powi(2);
        let growth = self.growth.iter().map(|on| square(&on[index]));
        let bounds = self.bounds.iter().map(|on| square(&on[index]) / 3.0);
        let of_dial = |dial: &Swept| {
            let by = dial.seen_by(ratio);
            let even = dial.even.iter().map(|on| dot(&by, on).powi(2) / 3.0).sum::<f64>();
            let turned = dial.turned.map_or(0.0, |half| half * half * dot(&by, &by) / 2.0);
            let lever = dial.lever.as_ref().map_or(0.0, |Lever { u, sees }| {
                let seen = |i: usize| sees[0] * found[i] + sees[1] * found[i + 2];
                (u * (seen(0) * by[0] + seen(1) * by[1])).powi(2)
            });
            even + turned + lever
        };
        let own = normal.iter().map(square).chain(dials.iter().map(of_dial));
        own.chain(growth).chain(bounds).sum::<f64>().sqrt()
    }
}

/// What a machine's growth of so much adds to the deviation at every coupling.
fn on_couplings(
    layouts: &[&Layout],
    machine: usize,
    x0: f64,
    [up, right, climb, bear]: &[f64; 4],
) -> Vec<[f64; 4]> {
    let on = |(index, layout): (usize, &&Layout)| {
        let side = match machine {
            _ if machine == index + 1 => layout.sign(),
            _ if machine == index => -layout.sign(),
            _ => 0.0,
        };
        let arm = layout.reference.si() - x0;
        [up + arm * climb, right + arm * bear, *climb, *bear].map(|part| side * part)
    };
    layouts.iter().enumerate().map(on).collect()
}

/// As few normal numbers as have the covariance of all these.
fn together(each: &[Vec<[f64; 4]>], couplings: usize) -> Vec<Vec<[f64; 4]>> {
    let size = 4 * couplings;
    let mut sums = vec![vec![0.0; size]; size];
    for one in each {
        let flat: Vec<f64> = one.iter().flatten().copied().collect();
        for (i, row) in sums.iter_mut().enumerate() {
            for (j, sum) in row.iter_mut().enumerate() {
                *sum += flat[i] * flat[j];
            }
        }
    }
    let four = |column: Vec<f64>| {
        column.chunks_exact(4).map(|four| std::array::from_fn(|i| four[i])).collect()
    };
    semidefinite(&sums).into_iter().map(four).collect()
}

fn cholesky(covariance: &[[f64; 4]; 4]) -> Vec<[f64; 4]> {
    let rows: Vec<Vec<f64>> = covariance.iter().map(|row| row.to_vec()).collect();
    semidefinite(&rows).into_iter().map(|column| std::array::from_fn(|i| column[i])).collect()
}

/// The columns of `L`, `L·Lᵀ = matrix`, that are not nothing; for matrices that may be singular.
fn semidefinite(matrix: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let size = matrix.len();
    let mut columns: Vec<Vec<f64>> = Vec::new();
    for j in 0..size {
        let left = |i: usize| {
            matrix[i][j] - columns.iter().map(|column| column[i] * column[j]).sum::<f64>()
        };
        let square = left(j);
        if square > NOTHING * matrix[j][j] {
            let root = square.sqrt();
            let of = |i: usize| if i < j { 0.0 } else { left(i) / root };
            columns.push((0..size).map(of).collect());
        }
    }
    columns
}

fn cause(index: usize, on: &OnTrial, judged: &[Judgement]) -> Result<Cause, TrialsError> {
    let (position, layout) = (on.position, &on.position.layout);
    let found = position.numbers();
    let rows = rows(layout, on.seen, position.scatter).map_err(|_| TrialsError::NotFixed(index))?;
    let rows = with_levers(rows, layout, on.seen, &found);
    let gains = gains(&rows).ok_or(TrialsError::NotFixed(index))?;
    // What was raised because readings scatter or disagree is raised here alike.
    let wider = position.disagreement * position.factor / 2.0;
    let mut errors = Errors { wider, scatter: position.scatter, ..Errors::default() };
    for (place, row) in rows.iter().enumerate() {
        match &on.seen[row.index] {
            Observation::Sweep(dial) if row.plane == Plane::Vertical => {
                let pair = [gains[place], gains[place + 1]];
                errors.sweep(layout, dial, pair).ok_or(TrialsError::NotFixed(index))?;
            }
            Observation::Sweep(_) => {}
            Observation::Offset(seen) => {
                errors.normal(seen.amount.standard_uncertainty(), &gains[place]);
            }
            Observation::Slope(seen) => {
                errors.normal(seen.amount.standard_uncertainty(), &gains[place]);
            }
            Observation::Gap(seen) => {
                errors.normal(seen.difference.standard_uncertainty(), &gains[place]);
            }
        }
    }
    errors.sags(&rows, &gains);
    let back = errors.dials.iter().map(Swept::back).fold(0.0, f64::max);
    if back > MOST_LEVER {
        return Err(TrialsError::Lever(index));
    }
    let at = layout.reference;
    let [up, right] = Plane::BOTH.map(|plane| on.left.offset(plane, at).value.si());
    let [climb, bear] = Plane::BOTH.map(|plane| on.left.slope(plane).value.si());
    let ratios = judged.iter().map(|judgement| ratio(layout, judgement)).collect();
    Ok(Cause {
        found,
        left: [up, right, climb, bear],
        normal: cholesky(&errors.covariance),
        dials: errors.dials,
        rounds: rounds(back),
        ratios,
    })
}

/// A deviation over its level, as a form of the four numbers.
fn ratio(layout: &Layout, judgement: &Judgement) -> [f64; 4] {
    let level = judgement.level().map_or(1.0, Level::widest);
    let on = form(layout, judgement.place, judgement.measure).unwrap_or([0.0; 2]);
    let mut ratio = [0.0; 4];
    ratio[judgement.plane.index()] = on[0] / level;
    ratio[2 + judgement.plane.index()] = on[1] / level;
    ratio
}

/// How each row moves the four unknowns.
fn gains(rows: &[Row]) -> Option<Vec<[f64; 4]>> {
    let covariance = covariance(rows);
    let alone = |place: usize| {
        let one = |(other, row): (usize, &Row)| (row.on, f64::from(u8::from(other == place)));
        let equations: Vec<_> = rows.iter().enumerate().map(one).collect();
        generalised(&equations, &covariance).map(|(solved, _)| solved.unknowns)
    };
    (0..rows.len()).map(alone).collect()
}

fn lever(layout: &Layout, dial: &Dial) -> Option<Lever> {
    let u = dial.lever_plus_minus.filter(|spread| spread.si() > 0.0)?.si() / 2.0;
    Some(Lever { u, sees: lever_form(layout, dial)? })
}

/// Times that levers are put right until nothing is left of it, where each time leaves this part.
fn rounds(back: f64) -> usize {
    let left = std::iter::successors(Some(back), |left| Some(left * back));
    1 + left.take_while(|left| *left > LEFT).count()
}

/// Errors of readings, gathered.
#[derive(Default)]
struct Errors {
    wider: f64,
    scatter: f64,
    covariance: [[f64; 4]; 4],
    dials: Vec<Swept>,
}

impl Errors {
    fn normal(&mut self, u: f64, on: &[f64; 4]) {
        let on = on.map(|part| self.wider * u * part);
        for (row, a) in self.covariance.iter_mut().zip(on) {
            for (sum, b) in row.iter_mut().zip(on) {
                *sum += a * b;
            }
        }
    }

    /// The division of every reading is a rectangle; the rest of its error is normal.
    fn sweep(&mut self, layout: &Layout, dial: &Dial, gains: [[f64; 4]; 2]) -> Option<()> {
        let circle = dial.fit().ok()?.circle;
        let half = dial.division.si() / 2.0;
        let stated = dial.plus_minus.map_or(0.0, |spread| spread.si() / 2.0);
        let all = dial.standard_uncertainty();
        let normal = stated.hypot(all * (self.scatter * self.scatter - 1.0).max(0.0).sqrt());
        let [cosine, sine] = &gains;
        let mut even = Vec::new();
        for reading in dial.all_readings() {
            let (cos, sin) = reading.clock.cos_sin();
            let moves = [1, 2].map(|unknown: usize| {
                let [c, a, b] = circle.covariance[unknown];
                (c + a * cos + b * sin) / (all * all)
            });
            let on: [f64; 4] = std::array::from_fn(|i| moves[0] * cosine[i] + moves[1] * sine[i]);
            self.normal(normal, &on);
            even.push(moves.map(|part| self.wider * half * part));
        }
        let mut turned = None;
        match dial.turning {
            Turning::Together => {}
            Turning::CarrierAlone(runout) => turned = Some(self.wider * runout.si() / 2.0),
            Turning::CarrierOver { .. } => {
                for on in [cosine, sine] {
                    self.normal(all / 2_f64.sqrt(), on);
                }
            }
        }
        self.dials.push(Swept { even, turned, lever: lever(layout, dial), gains });
        Some(())
    }

    /// Dials on one bracket share the error of its sag; a bracket without a name is its own.
    fn sags(&mut self, rows: &[Row], gains: &[[f64; 4]]) {
        let mut shared: Vec<(&(String, bool), [f64; 4])> = Vec::new();
        for (row, gain) in rows.iter().zip(gains) {
            let Some((bracket, u)) = &row.sag else { continue };
            let own = gain.map(|part| u * part);
            let same =
                shared.iter_mut().find(|(known, _)| *known == bracket && !bracket.0.is_empty());
            match same {
                Some((_, on)) => *on = std::array::from_fn(|i| on[i] + own[i]),
                None => shared.push((bracket, own)),
            }
        }
        for (_, on) in shared {
            self.normal(1.0, &on);
        }
    }
}
