//! How much of the misalignment that a coupling bears is used up, and by what: a bar for each state.
//!
//! Shares of offset, angle and axial position stand end to end, for they add up; a whisker is the
//! ± of their sum, the thick upright is all that the coupling bears.
//!
//! Not here: how the shares come about (`couplings::envelope`).

use crate::axis::{TICKS, real, round_up, tick_text, ticks};
use crate::geometry::{Rect, at};
use crate::hatch::Cut;
use crate::ink::{
    Anchor, Colour, Drawing, MEDIUM, Stroke, THICK, THIN, Words, level, outline, upright,
};
use crate::labels::fitting;
use crate::{Figure, Paper, PaperError};

/// Kinds of misalignment, in the order of a bar.
const PARTS: [&str; 3] = ["offset", "angle", "axial"];

/// One state.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// "running".
    pub name: String,
    /// Shares of offset, angle and axial position; `None` where one is not there.
    pub shares: [Option<f64>; 3],
    /// ± of their sum, 95 %.
    pub plus_minus: f64,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BudgetError {
    /// No state.
    #[error("there is nothing to draw")]
    Nothing,
    /// A share that is none.
    #[error("{0} is no share that can be drawn")]
    NoShare(f64),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`BudgetError`] when there is no state, or a share is none.
///
/// # Example
/// ```
/// use figures::{Paper, budget::{State, draw}};
/// let running = State {
///     name: "running".to_owned(),
///     shares: [None, Some(0.23), Some(0.01)],
///     plus_minus: 0.03,
/// };
/// assert!(draw(&[running], Paper::COLUMN)?.says.contains("angle 23 %"));
/// # Ok::<(), figures::budget::BudgetError>(())
/// ```
pub fn draw(states: &[State], paper: Paper) -> Result<Figure, BudgetError> {
    paper.check()?;
    if states.is_empty() {
        return Err(BudgetError::Nothing);
    }
    let shares = states.iter().flat_map(|state| state.shares.into_iter().flatten());
    let mut all = shares.chain(states.iter().map(|state| state.plus_minus));
    if let Some(bad) = all.find(|share| !(0.0..1e4).contains(share)) {
        return Err(BudgetError::NoShare(bad));
    }
    Ok(Figure::of(&drawing(states, paper), "Misalignment used up", says(states)))
}

fn says(states: &[State]) -> String {
    let state = |state: &State| {
        let part =
            |(name, share): (&str, Option<f64>)| Some(format!("{name} {:.0} %", 100.0 * share?));
        let parts: Vec<String> = PARTS.into_iter().zip(state.shares).filter_map(part).collect();
        format!("{}: {}", state.name, parts.join(", "))
    };
    let all: Vec<String> = states.iter().map(state).collect();
    format!("Of what the coupling bears, {}.", all.join("; "))
}

impl State {
    fn sum(&self) -> f64 {
        self.shares.into_iter().flatten().sum()
    }
}

/// The sheet of states that were checked.
pub(crate) fn drawing(states: &[State], paper: Paper) -> Drawing {
    let t = paper.type_mm;
    let most = states.iter().map(|state| state.sum() + state.plus_minus).fold(1.0, f64::max);
    let frame = Rect::new(0.3, 2.0 * t, paper.width_mm - 1.6 * t, 0.0);
    let step = round_up(most / (frame.width() / (4.0 * t)), &TICKS);
    let most = (most / step - 1e-9).ceil() * step;
    let x = |share: f64| frame.left + share / most * frame.width();
    let row = 3.3 * t;
    let foot = 1.6 * t + row * real(states.len());
    let mut drawing = Drawing::new(paper.width_mm, foot + 4.0 * t);
    for (place, state) in states.iter().enumerate() {
        let top = 1.9 * t + row * real(place);
        bar(&mut drawing, state, (top, top + 1.3 * t), &x);
        let name = format!(
            "{}: {:.0} ± {:.0} %",
            state.name,
            100.0 * state.sum(),
            100.0 * state.plus_minus
        );
        if let Some(words) = fitting(&name, 0.95 * t, frame.width()) {
            drawing.text(&words, at(frame.left, top - 0.75 * t), Anchor::Start);
        }
    }
    level(&mut drawing, foot, frame.left, frame.right, Stroke::of(MEDIUM).under());
    for value in ticks(0.0, most, step) {
        upright(&mut drawing, x(value), foot, foot + 0.3 * t, Stroke::of(THIN).under());
        let text = tick_text(100.0 * value, 100.0 * step, false);
        let text = if value + step > most { format!("{text} %") } else { text };
        let words = Words::new(text, 0.95 * t).colour(Colour::Soft);
        let start = (x(value) - words.width() / 2.0).clamp(0.0, drawing.width - words.width());
        drawing.text(&words, at(start, foot + 1.15 * t), Anchor::Start);
    }
    upright(&mut drawing, x(1.0), foot, 0.9 * t, Stroke::of(0.7).under());
    legend(&mut drawing, foot + 2.9 * t, t);
    drawing
}

fn bar(drawing: &mut Drawing, state: &State, (top, bottom): (f64, f64), x: &dyn Fn(f64) -> f64) {
    let mut from = 0.0;
    for (part, share) in state.shares.into_iter().enumerate() {
        let Some(share) = share else { continue };
        piece(drawing, part, Rect::new(x(from), top, x(from + share), bottom));
        from += share;
    }
    let middle = f64::midpoint(top, bottom);
    let (low, high) = ((from - state.plus_minus).max(0.0), from + state.plus_minus);
    level(drawing, middle, x(low), x(high), Stroke::of(THICK).colour(Colour::Leaf).under());
    level(drawing, middle, x(low), x(high), Stroke::of(THIN).under());
    for end in [low, high] {
        upright(drawing, x(end), middle - 0.6, middle + 0.6, Stroke::of(THIN).under());
    }
}

/// Offset solid, angle hatched, axial open.
fn piece(drawing: &mut Drawing, part: usize, bounds: Rect) {
    let corners = outline(bounds);
    drawing.fill(&corners, if part == 0 { Colour::Ink } else { Colour::Metal });
    if part == 1 {
        drawing.hatch(vec![corners.clone()], Cut::new(45.0, 1.2));
    }
    drawing.shape(&corners, Some(Stroke::of(MEDIUM).under()), None);
}

fn legend(drawing: &mut Drawing, y: f64, t: f64) {
    let mut left = 0.3;
    for (part, name) in PARTS.into_iter().enumerate() {
        piece(drawing, part, Rect::new(left, y - 0.5 * t, left + 1.8 * t, y + 0.5 * t));
        let words = Words::new(name, 0.95 * t);
        drawing.text(&words, at(left + 2.3 * t, y), Anchor::Start);
        left += 3.6 * t + words.width();
    }
}
