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
    /// Rectangles: what half of each adds.
    pub even: Vec<[f64; 4]>,
    /// Runouts with their high spot anywhere: what the cosine and the sine of its place add.
    pub turned: Vec<[[f64; 4]; 2]>,
    pub levers: Vec<Lever>,
    /// Ratios to levels, as forms of what is left.
    pub ratios: Vec<[f64; 4]>,
}

/// A place or a swing that is not known exactly.
pub(super) struct Lever {
    /// Its standard uncertainty, m.
    pub u: f64,
    /// What a metre more of it makes the dial see, of (offset, slope).
    pub sees: [f64; 2],
    /// What cosine and sine of the dial add to the position.
    pub gains: [[f64; 4]; 2],
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
        let Cause { normal, even, turned, levers, found, .. } = &self.couplings[index];
        let square = |on: &[f64; 4]| dot(ratio, on).powi(2);
        let growth = self.growth.iter().map(|on| square(&on[index]));
        let bounds = self.bounds.iter().map(|on| square(&on[index]) / 3.0);
        let turned = turned.iter().flatten().map(|on| square(on) / 2.0);
        let levers = levers.iter().map(|lever| {
            let seen = |i: usize| lever.sees[0] * found[i] + lever.sees[1] * found[i + 2];
            let [up, right] = &lever.gains;
            (lever.u * (seen(0) * dot(ratio, up) + seen(1) * dot(ratio, right))).powi(2)
        });
        let own = normal.iter().map(square).chain(even.iter().map(|on| square(on) / 3.0));
        own.chain(growth).chain(bounds).chain(turned).chain(levers).sum::<f64>().sqrt()
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
    let mut levers = Vec::new();
    for (place, row) in rows.iter().enumerate() {
        match &on.seen[row.index] {
            Observation::Sweep(dial) if row.plane == Plane::Vertical => {
                let pair = [gains[place], gains[place + 1]];
                errors.sweep(dial, &pair).ok_or(TrialsError::NotFixed(index))?;
                levers.extend(lever(layout, dial, pair));
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
    let far = |lever: &Lever| {
        let [gain_up, gain_right] = lever.gains;
        let [on_offset, on_slope] = lever.sees;
        let back = |i: usize, gain: [f64; 4]| on_offset * gain[i] + on_slope * gain[i + 2];
        lever.u * back(0, gain_up).abs().max(back(1, gain_right).abs()) > MOST_LEVER
    };
    if levers.iter().any(far) {
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
        even: errors.even,
        turned: errors.turned,
        levers,
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

fn lever(layout: &Layout, dial: &Dial, gains: [[f64; 4]; 2]) -> Option<Lever> {
    let u = dial.lever_plus_minus.filter(|spread| spread.si() > 0.0)?.si() / 2.0;
    Some(Lever { u, sees: lever_form(layout, dial)?, gains })
}

/// Errors of readings, gathered.
#[derive(Default)]
struct Errors {
    wider: f64,
    scatter: f64,
    covariance: [[f64; 4]; 4],
    even: Vec<[f64; 4]>,
    turned: Vec<[[f64; 4]; 2]>,
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
    fn sweep(&mut self, dial: &Dial, [cosine, sine]: &[[f64; 4]; 2]) -> Option<()> {
        let circle = dial.fit().ok()?.circle;
        let half = dial.division.si() / 2.0;
        let stated = dial.plus_minus.map_or(0.0, |spread| spread.si() / 2.0);
        let all = dial.standard_uncertainty();
        let normal = stated.hypot(all * (self.scatter * self.scatter - 1.0).max(0.0).sqrt());
        for reading in dial.all_readings() {
            let (cos, sin) = reading.clock.cos_sin();
            let moves = |unknown: usize| {
                let [c, a, b] = circle.covariance[unknown];
                (c + a * cos + b * sin) / (all * all)
            };
            let on: [f64; 4] = std::array::from_fn(|i| moves(1) * cosine[i] + moves(2) * sine[i]);
            self.normal(normal, &on);
            self.even.push(on.map(|part| self.wider * half * part));
        }
        match dial.turning {
            Turning::Together => {}
            Turning::CarrierAlone(runout) => {
                let scale = |on: &[f64; 4]| on.map(|part| self.wider * runout.si() / 2.0 * part);
                self.turned.push([scale(cosine), scale(sine)]);
            }
            Turning::CarrierOver { .. } => {
                for on in [cosine, sine] {
                    self.normal(all / 2_f64.sqrt(), on);
                }
            }
        }
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
