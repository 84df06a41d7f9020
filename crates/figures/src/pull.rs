//! The pull that a hub needs on its way off, against time since the heat went on.
//!
//! While the hub is hotter than its shaft it is free; the open window is a hatched box with its
//! answer in words, a small black mark is the moment the heat goes off.
//!
//! Not here: how hub and shaft warm up (`thermal`), what a puller may do.

use crate::chart::{Axes, extent, is_curve};
use crate::clearance::{Curve, Level, name_level};
use crate::geometry::{Rect, at};
use crate::hatch::Cut;
use crate::ink::{Anchor, Colour, Drawing, HIDDEN, MEDIUM, Stroke, THIN, Words, level, outline};
use crate::labels::place;
use crate::{Figure, Paper, PaperError};

/// When the hub is free.
#[derive(Clone, Debug, PartialEq)]
pub struct Window {
    /// From, s after the heat goes on.
    pub from: f64,
    /// To, s.
    pub to: f64,
    /// "open 34 to 55 s".
    pub text: String,
}

/// A hub on its way off.
#[derive(Clone, Debug, PartialEq)]
pub struct Pull {
    /// What the heights are: "pull needed, kN".
    pub heights: String,
    /// Seconds and pull.
    pub pull: Curve,
    /// What the puller holds.
    pub level: Option<Level>,
    /// When the hub is free; `None` if it never is.
    pub window: Option<Window>,
    /// When the heat goes off, s.
    pub heat_off: Option<f64>,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PullError {
    /// Fewer than two points, no numbers, or a run that goes back in time.
    #[error("the pull is no curve")]
    NoCurve,
    /// A mark that is no number, or a window that closes before it opens.
    #[error("{0} cannot be marked")]
    NotANumber(f64),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`PullError`] when the pull is no curve, or a mark no number.
pub fn draw(pull: &Pull, paper: Paper) -> Result<Figure, PullError> {
    paper.check()?;
    check(pull)?;
    Ok(Figure::of(&drawing(pull, paper), "Pull against time", says(pull)))
}

fn check(pull: &Pull) -> Result<(), PullError> {
    if !is_curve(&pull.pull) {
        return Err(PullError::NoCurve);
    }
    let mut marks: Vec<f64> = pull.heat_off.iter().copied().collect();
    marks.extend(pull.level.iter().map(|level| level.value));
    marks.extend(pull.window.iter().flat_map(|w| [w.from, w.to, w.to - w.from]));
    let bad = marks.into_iter().find(|mark| !(mark.is_finite() && (0.0..1e12).contains(mark)));
    bad.map_or(Ok(()), |mark| Err(PullError::NotANumber(mark)))
}

fn says(pull: &Pull) -> String {
    let window = pull.window.as_ref().map_or("never free", |w| w.text.as_str());
    let off = pull.heat_off.map_or(String::new(), |s| format!(", heat off at {s:.0} s"));
    let level = pull.level.as_ref().map_or(String::new(), |l| format!("; {} {}", l.text, l.value));
    format!("{}, against seconds since the heat went on: {window}{off}{level}.", pull.heights)
}

/// The sheet of a pull that was checked.
pub(crate) fn drawing(pull: &Pull, paper: Paper) -> Drawing {
    let t = paper.type_mm;
    let (_, last) = extent(pull.pull.iter().map(|(x, _)| *x));
    let ends = pull.window.iter().map(|w| w.to).chain(pull.heat_off);
    let last = ends.fold(last, f64::max);
    let levels = pull.level.iter().map(|level| level.value);
    let heights = extent(pull.pull.iter().map(|(_, y)| *y).chain(levels));
    let height = (0.4 * paper.width_mm).clamp(12.0 * t, 18.0 * t);
    let axes = Axes::new((paper.width_mm, height), t, (0.0, last), heights);
    let mut drawing = Drawing::new(paper.width_mm, axes.sheet_height());
    let open = pull.window.as_ref().map(|window| open_window(&mut drawing, &axes, window, t));
    axes.draw(&mut drawing, &pull.heights, "s");
    axes.curve(&mut drawing, &pull.pull, Stroke::of(0.7));
    if let Some(mark) = &pull.level {
        let stroke = Stroke::of(THIN).dash(HIDDEN).shy();
        level(&mut drawing, axes.y(mark.value), axes.frame.left, axes.frame.right, stroke);
    }
    if let Some(seconds) = pull.heat_off {
        let foot = axes.at(seconds, 0.0);
        let half = 0.45 * t;
        let mark = [foot, foot.plus(-half, -1.6 * half), foot.plus(half, -1.6 * half)];
        drawing.fill(&mark, Colour::Ink);
        drawing.bars.push((mark[1], mark[2]));
    }
    name(&mut drawing, &axes, pull, open, t);
    drawing
}

fn open_window(drawing: &mut Drawing, axes: &Axes, window: &Window, t: f64) -> Rect {
    let (left, right) = (axes.at(window.from, 0.0).x, axes.at(window.to, 0.0).x);
    let top = axes.frame.top + 0.14 * axes.frame.height();
    let bounds = Rect::new(left, top, right, axes.y(0.0));
    let corners = outline(bounds);
    drawing.fill(&corners, Colour::Leaf);
    drawing.hatch(vec![corners.clone()], Cut::new(135.0, 0.5 * t));
    drawing.shape(&corners, Some(Stroke::of(MEDIUM)), None);
    bounds
}

fn name(drawing: &mut Drawing, axes: &Axes, pull: &Pull, open: Option<Rect>, t: f64) {
    if let (Some(window), Some(bounds)) = (&pull.window, open) {
        let words = Words::new(&window.text, 1.2 * t).strong().halo();
        let middle = f64::midpoint(bounds.left, bounds.right);
        let half = words.width() / 2.0 + 0.4;
        let x = middle
            .clamp(axes.frame.left + half, (drawing.width - half).max(axes.frame.left + half));
        let mut spots = vec![(at(x, bounds.top - 0.9 * t), Anchor::Middle)];
        for row in 0..6 {
            let y = bounds.top + (1.0 + 1.4 * f64::from(row)) * t;
            spots.push((at(bounds.right + 0.6 * t, y), Anchor::Start));
            spots.push((at(bounds.left - 0.6 * t, y), Anchor::End));
        }
        place(drawing, &words, &spots, axes.frame.grown(1.5, 1.0));
    }
    if let Some(mark) = &pull.level {
        name_level(drawing, axes, mark, t);
    }
}
