//! The line-up as a draughtsman projects it: from the side, beneath it the bench to lengthwise
//! scale with feet and shims, beneath that the view from above.
//!
//! Thin upright lines run through all three at feet and couplings. The stretch crosswise is one
//! for both views and is stated. Found is pencil, thick, with its 95 % band; target is dashed; where
//! the moves will leave it is full between the fine dashes of the same band; the limit is full with
//! hatching beyond it, the aim dotted; arrows at the feet say where to.
//!
//! x runs along the train from driver to driven, mm. In the side view up is up; seen from above,
//! 3 o'clock (to the right looking along +x) is down the page, as it lies when one looks down on it.
//!
//! Not here: how lines, limits and moves were found.

use quantities::System;

use crate::{Figure, Paper, PaperError};

mod bench;
mod plot;
#[cfg(test)]
mod proof;
mod sheet;

/// A straight shaft line in one view.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Where it passes…
    pub at_mm: f64,
    /// …so far up, or so far to 3 o'clock.
    pub offset_mm: f64,
    /// Rise over run.
    pub slope: f64,
}

impl Line {
    /// Along the axis.
    pub const ZERO: Self = Self { at_mm: 0.0, offset_mm: 0.0, slope: 0.0 };

    /// Its height at a place along the train.
    pub fn height(&self, x_mm: f64) -> f64 {
        self.offset_mm + self.slope * (x_mm - self.at_mm)
    }
}

/// How sure a line is: its half-width is √(offset² + (slope·(x − pivot))²).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Where the line is known best.
    pub pivot_mm: f64,
    /// ± there, 95 %.
    pub offset_mm: f64,
    /// ± of the slope, 95 %.
    pub slope: f64,
}

impl Band {
    /// Half its width at a place along the train.
    pub fn half_width(&self, x_mm: f64) -> f64 {
        self.offset_mm.hypot(self.slope * (x_mm - self.pivot_mm))
    }
}

/// One view of a machine's shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sight {
    /// Where it was found, and how surely; `None` before it was measured.
    pub found: Option<(Line, Band)>,
    /// Where it should lie, cold.
    pub target: Line,
    /// Where the moves will leave it, cold, known as well as what was found.
    pub after: Option<Line>,
}

/// A move of one foot in one view.
#[derive(Clone, Debug, PartialEq)]
pub struct Move {
    /// Up, or to 3 o'clock.
    pub mm: f64,
    /// As written: "+0.35", "0.45 to 9".
    pub text: String,
}

/// What becomes of a shim.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Plate {
    /// It lies there and stays.
    Stays,
    /// Put in.
    GoesIn,
    /// Taken out.
    ComesOut,
}

/// Feet at one place along the train.
#[derive(Clone, Debug, PartialEq)]
pub struct Foot {
    /// Where.
    pub x_mm: f64,
    /// Its distance as written: "776".
    pub text: String,
    /// Its shims, from the bottom.
    pub pack: Vec<Plate>,
    /// In the side view.
    pub rise: Option<Move>,
    /// In the view from above.
    pub push: Option<Move>,
}

/// Whether a machine is the one that is moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// The others are lined up to it.
    Fixed,
    /// It is moved.
    Moves,
}

/// A machine of the train.
#[derive(Clone, Debug, PartialEq)]
pub struct Machine {
    /// "motor".
    pub name: String,
    /// Ends of its shaft, from left to right.
    pub shaft_mm: (f64, f64),
    /// Ends of its body; `None` where only its shaft is of interest.
    pub body_mm: Option<(f64, f64)>,
    /// From left to right.
    pub feet: Vec<Foot>,
    /// Moved or not.
    pub stands: Stands,
    /// y.
    pub side: Sight,
    /// z.
    pub above: Sight,
}

/// How far a shaft may be off at a flexing plane and beyond it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wedge {
    /// Half its height at the plane.
    pub offset_mm: f64,
    /// How it opens along the shaft, rise over run.
    pub slope: f64,
}

/// A coupling between two machines that follow each other.
#[derive(Clone, Debug, PartialEq)]
pub struct Coupling {
    /// Its flexing planes; one and the same where it has but one.
    pub planes_mm: (f64, f64),
    /// Its place as written under the bench, if it is: "0".
    pub text: String,
    /// What is allowed.
    pub limit: Option<Wedge>,
    /// What is aimed at.
    pub aim: Option<Wedge>,
}

/// A train with its lines, limits and moves.
#[derive(Clone, Debug, PartialEq)]
pub struct LineUp {
    /// From driver to driven.
    pub machines: Vec<Machine>,
    /// One fewer than machines.
    pub couplings: Vec<Coupling>,
    /// For the figures at the side: mm, or mils.
    pub system: System,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum LineUpError {
    /// Nothing to draw.
    #[error("a line-up needs at least two machines and a coupling between each two")]
    NoTrain,
    /// A number that is none, or beyond any machine.
    #[error("{0} is not a length that can be drawn")]
    NotALength(f64),
    /// Ends in the wrong order.
    #[error("{what} ends at {to} mm before it begins at {from} mm")]
    Backwards {
        /// Which.
        what: &'static str,
        /// Its beginning, mm.
        from: f64,
        /// Its end, mm.
        to: f64,
    },
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`LineUpError`] when there is no train, a number is none, or the paper is too narrow.
pub fn draw(lineup: &LineUp, paper: Paper) -> Result<Figure, LineUpError> {
    check(lineup, paper)?;
    let drawing = sheet::draw(lineup, paper);
    Ok(Figure::of(&drawing, "Line-up from the side and from above", says(lineup)))
}

/// The two views.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum View {
    Side,
    Above,
}

impl View {
    /// Which way on the page a positive number goes.
    fn up(self) -> f64 {
        match self {
            Self::Side => -1.0,
            Self::Above => 1.0,
        }
    }
}

impl Machine {
    fn sight(&self, view: View) -> &Sight {
        match view {
            View::Side => &self.side,
            View::Above => &self.above,
        }
    }
}

impl Foot {
    fn shift(&self, view: View) -> Option<&Move> {
        match view {
            View::Side => self.rise.as_ref(),
            View::Above => self.push.as_ref(),
        }
    }
}

impl LineUp {
    /// Ends of the whole train.
    fn span(&self) -> (f64, f64) {
        let ends = self.machines.iter().map(|m| {
            let body = m.body_mm.unwrap_or(m.shaft_mm);
            (m.shaft_mm.0.min(body.0), m.shaft_mm.1.max(body.1))
        });
        ends.fold((f64::MAX, f64::MIN), |(low, high), (from, to)| (low.min(from), high.max(to)))
    }

    /// The wedges that a machine must stay within: from the plane, the way its shaft runs.
    fn wedges(&self, machine: usize) -> impl Iterator<Item = (f64, &Coupling)> {
        let before = machine.checked_sub(1).and_then(|i| self.couplings.get(i));
        let after = self.couplings.get(machine);
        let before = before.map(|coupling| (coupling.planes_mm.1, coupling));
        before.into_iter().chain(after.map(|coupling| (coupling.planes_mm.0, coupling)))
    }
}

fn says(lineup: &LineUp) -> String {
    let mut said = vec!["The train from the side and from above.".to_owned()];
    for machine in &lineup.machines {
        if machine.stands == Stands::Fixed {
            said.push(format!("{} stays.", machine.name));
            continue;
        }
        let feet = machine.feet.iter().map(|foot| {
            let moves = [View::Side, View::Above].into_iter().filter_map(|view| foot.shift(view));
            let moves: Vec<&str> = moves.map(|m| m.text.as_str()).collect();
            let what = if moves.is_empty() { "no move".to_owned() } else { moves.join(" and ") };
            format!("feet at {}: {what}", foot.text)
        });
        let unmeasured = machine.side.found.is_none() && machine.above.found.is_none();
        let found = if unmeasured { ", not measured" } else { "" };
        said.push(format!("{}{found}: {}.", machine.name, feet.collect::<Vec<_>>().join("; ")));
    }
    said.join(" ")
}

fn check(lineup: &LineUp, paper: Paper) -> Result<(), LineUpError> {
    paper.check()?;
    if lineup.machines.len() < 2 || lineup.couplings.len() + 1 != lineup.machines.len() {
        return Err(LineUpError::NoTrain);
    }
    let bad = numbers(lineup).into_iter().find(|n| !(n.is_finite() && n.abs() < 1e6));
    if let Some(number) = bad {
        return Err(LineUpError::NotALength(number));
    }
    for machine in &lineup.machines {
        ordered("a shaft", machine.shaft_mm)?;
        ordered("a body", machine.body_mm.unwrap_or(machine.shaft_mm))?;
    }
    let (from, to) = lineup.span();
    ordered("the train", (from, to))
}

fn ordered(what: &'static str, (from, to): (f64, f64)) -> Result<(), LineUpError> {
    if from < to { Ok(()) } else { Err(LineUpError::Backwards { what, from, to }) }
}

/// Every number that is drawn.
fn numbers(lineup: &LineUp) -> Vec<f64> {
    let mut all = Vec::new();
    let line = |line: Line| [line.at_mm, line.offset_mm, line.slope];
    for machine in &lineup.machines {
        for (from, to) in std::iter::once(machine.shaft_mm).chain(machine.body_mm) {
            all.extend([from, to]);
        }
        for sight in [machine.side, machine.above] {
            all.extend(line(sight.target));
            all.extend(sight.after.iter().flat_map(|after| line(*after)));
            if let Some((found, band)) = sight.found {
                all.extend(line(found));
                all.extend([band.pivot_mm, band.offset_mm, band.slope]);
            }
        }
        for foot in &machine.feet {
            all.push(foot.x_mm);
            all.extend(foot.rise.iter().chain(&foot.push).map(|m| m.mm));
        }
    }
    for coupling in &lineup.couplings {
        all.extend([coupling.planes_mm.0, coupling.planes_mm.1]);
        for wedge in coupling.limit.iter().chain(&coupling.aim) {
            all.extend([wedge.offset_mm, wedge.slope]);
        }
    }
    all
}
