//! Clearance in the bore against time, from the moment the hub leaves the heat.
//!
//! The quickest case is the thick line: it is the one to count on. The likely case is broken; the
//! tint reaches to the slowest, over all that nobody knows exactly. All of it is worked out, so
//! all of it is ink.
//!
//! Not here: how the hub cools (`thermal`).

use crate::chart::{Axes, extent, is_curve};
use crate::geometry::{Point, at};
use crate::ink::{
    Anchor, Colour, Drawing, HIDDEN, MEDIUM, Stroke, THICK, THIN, Words, level, upright,
};
use crate::labels::{fitting, place};
use crate::{Figure, Paper, PaperError};

/// A moment to be marked.
#[derive(Clone, Debug, PartialEq)]
pub struct Moment {
    /// After the hub leaves the heat.
    pub seconds: f64,
    /// "count on 39 s", "70 s at most".
    pub text: String,
}

/// A level to be marked.
#[derive(Clone, Debug, PartialEq)]
pub struct Level {
    /// In the unit of the heights.
    pub value: f64,
    /// "needed to slide".
    pub text: String,
}

/// Seconds and heights.
pub type Curve = Vec<(f64, f64)>;

/// What is known of a hub on its way.
#[derive(Clone, Debug, PartialEq)]
pub struct Clearance {
    /// What the heights are: "clearance in the bore, µm".
    pub heights: String,
    /// The case that grips first.
    pub quickest: Curve,
    /// The likely case.
    pub likely: Option<Curve>,
    /// The case that grips last.
    pub slowest: Option<Curve>,
    /// What is wanted at least.
    pub level: Option<Level>,
    /// When the quickest grips.
    pub count_on: Option<Moment>,
    /// When the slowest does.
    pub at_most: Option<Moment>,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ClearanceError {
    /// Fewer than two points, no numbers, or a run that goes back in time.
    #[error("the {0} case is no curve")]
    NoCurve(&'static str),
    /// A moment or a level that is no number.
    #[error("{0} cannot be marked")]
    NotANumber(f64),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`ClearanceError`] when a case is no curve, or a mark no number.
///
/// # Example
/// ```
/// use figures::{Paper, clearance::{Clearance, Moment, draw}};
/// let figure = draw(&Clearance {
///     heights: "clearance in the bore, µm".to_owned(),
///     quickest: vec![(0.0, 84.0), (20.0, 40.0), (39.0, 0.0)],
///     likely: None,
///     slowest: None,
///     level: None,
///     count_on: Some(Moment { seconds: 39.0, text: "count on 39 s".to_owned() }),
///     at_most: None,
/// }, Paper::COLUMN)?;
/// assert!(figure.says.contains("count on 39 s"));
/// # Ok::<(), figures::clearance::ClearanceError>(())
/// ```
pub fn draw(clearance: &Clearance, paper: Paper) -> Result<Figure, ClearanceError> {
    paper.check()?;
    check(clearance)?;
    let drawing = drawing(clearance, paper);
    Ok(Figure::of(&drawing, "Clearance against time", says(clearance)))
}

fn check(clearance: &Clearance) -> Result<(), ClearanceError> {
    for (name, curve) in clearance.cases() {
        if !is_curve(curve) {
            return Err(ClearanceError::NoCurve(name));
        }
    }
    let moments = clearance.count_on.iter().chain(&clearance.at_most).map(|m| m.seconds);
    let marks = moments.chain(clearance.level.iter().map(|level| level.value));
    let bad = { marks }.find(|mark| !(mark.is_finite() && mark.abs() < 1e12));
    bad.map_or(Ok(()), |mark| Err(ClearanceError::NotANumber(mark)))
}

impl Clearance {
    fn cases(&self) -> impl Iterator<Item = (&'static str, &Curve)> {
        let likely = self.likely.iter().map(|curve| ("likely", curve));
        let slowest = self.slowest.iter().map(|curve| ("slowest", curve));
        std::iter::once(("quickest", &self.quickest)).chain(likely).chain(slowest)
    }
}

fn says(clearance: &Clearance) -> String {
    let mut said = vec![format!("{}, against seconds.", clearance.heights)];
    let (start, end) = (clearance.quickest.first(), clearance.quickest.last());
    if let (Some((_, from)), Some((after, to))) = (start, end) {
        said.push(format!("Quickest case: from {from:.0} to {to:.0} in {after:.0} s."));
    }
    for moment in clearance.count_on.iter().chain(&clearance.at_most) {
        said.push(format!("{}.", moment.text));
    }
    if let Some(level) = &clearance.level {
        said.push(format!("Level at {:.0}: {}.", level.value, level.text));
    }
    said.join(" ")
}

/// The sheet of a clearance that was checked.
pub(crate) fn drawing(clearance: &Clearance, paper: Paper) -> Drawing {
    let t = paper.type_mm;
    let points = || clearance.cases().flat_map(|(_, curve)| curve);
    let (_, last) = extent(points().map(|(x, _)| *x));
    let marks = clearance.count_on.iter().chain(&clearance.at_most).map(|m| m.seconds);
    let last = marks.fold(last, f64::max);
    let levels = clearance.level.iter().map(|level| level.value);
    let heights = extent(points().map(|(_, y)| *y).chain(levels));
    let height = (0.4 * paper.width_mm).clamp(12.0 * t, 18.0 * t);
    let axes = Axes::new((paper.width_mm, height), t, (0.0, last.max(1e-6)), heights);
    let mut drawing = Drawing::new(paper.width_mm, axes.sheet_height());
    if let Some(slowest) = &clearance.slowest {
        axes.between(&mut drawing, &clearance.quickest, slowest);
    }
    axes.draw(&mut drawing, &clearance.heights, "s");
    if let Some(likely) = &clearance.likely {
        axes.curve(&mut drawing, likely, Stroke::of(MEDIUM).dash("1.6 1").shy());
    }
    axes.curve(&mut drawing, &clearance.quickest, Stroke::of(0.7));
    if let Some(mark) = &clearance.level {
        let stroke = Stroke::of(THIN).dash(HIDDEN).shy();
        level(&mut drawing, axes.y(mark.value), axes.frame.left, axes.frame.right, stroke);
    }
    mark_moments(&mut drawing, &axes, clearance, t);
    if let Some(mark) = &clearance.level {
        name_level(&mut drawing, &axes, mark, t);
    }
    drawing
}

/// A level's words on its line, above or below it, wherever there is room.
pub(crate) fn name_level(drawing: &mut Drawing, axes: &Axes, mark: &Level, t: f64) {
    let Some(words) = fitting(&mark.text, 0.95 * t, axes.frame.width()) else { return };
    let (left, right) = (axes.frame.left + 0.4, axes.frame.right - words.width() - 0.4);
    let mut spots: Vec<(Point, Anchor)> = Vec::new();
    for off in [-0.8, 0.8] {
        for share in [1.0, 0.75, 0.5, 0.25, 0.0] {
            let x = left + (right - left) * share;
            spots.push((at(x, axes.y(mark.value) + off * t), Anchor::Start));
        }
    }
    place(drawing, &words.halo(), &spots, axes.frame.grown(0.5, 0.5));
}

/// The moment to count on as a thick upright with the answer beside it; the latest as a thin one.
fn mark_moments(drawing: &mut Drawing, axes: &Axes, clearance: &Clearance, t: f64) {
    let (top, foot) = (axes.frame.top, axes.y(0.0));
    let marks = [
        (&clearance.count_on, 0.62, Stroke::of(0.7), 1.25),
        (&clearance.at_most, 0.2, Stroke::of(THICK), 0.95),
    ];
    let high = |share: f64| foot - (foot - top) * share;
    for (moment, share, stroke, _) in marks {
        if let Some(moment) = moment {
            upright(drawing, axes.at(moment.seconds, 0.0).x, foot, high(share), stroke);
        }
    }
    for (moment, share, _, size) in marks {
        let Some(moment) = moment else { continue };
        let (x, high) = (axes.at(moment.seconds, 0.0).x, high(share));
        let words = Words::new(&moment.text, size * t).halo();
        let words = if size > 1.0 { words.strong() } else { words.colour(Colour::Soft) };
        let mut spots = Vec::new();
        for drop in [0.0, 1.5, -1.5, 3.0, 5.0] {
            let y = high + (0.5 * size + drop) * t;
            spots.push((at(x + 0.7 * t, y), Anchor::Start));
            spots.push((at(x - 0.7 * t, y), Anchor::End));
        }
        for lift in [0.9, 2.0, 3.5] {
            for shift in [0.0, -0.3, -0.5, 0.3, 0.5] {
                let place = at(x + shift * words.width(), high - lift * size * t);
                spots.push((place, Anchor::Middle));
            }
        }
        place(drawing, &words, &spots, axes.frame.grown(1.0, 0.0));
    }
}
