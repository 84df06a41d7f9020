//! Temperature over the half section of a hub on its shaft, at one moment: lines of one
//! temperature, each with its figure, to scale.
//!
//! All of it is worked out, so all of it is ink. The hub stands over its shaft, the axis at the
//! foot; lines end at the joint, for hub and shaft are two bodies.
//!
//! Not here: how the temperatures come about (`thermal`).

use crate::geometry::{Point, Rect, at};
use crate::ink::{
    Anchor, CHAIN, Colour, Drawing, MEDIUM, Stroke, THICK, THIN, Words, level, outline,
};
use crate::labels::{fitting, place};
use crate::{Figure, Paper, PaperError};

/// Hub, shaft, and where the lines run. Millimetres, along the shaft from the hub's face towards
/// the machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Warmth {
    /// "17 s after it is home".
    pub title: String,
    /// "hub 96 to 131 °C, shaft 21 to 58 °C".
    pub ranges: String,
    /// Diameter of the joint.
    pub bore: f64,
    /// The shaft's own bore; zero when solid.
    pub hollow: f64,
    /// Shaft behind the hub, and beyond it.
    pub shaft: [f64; 2],
    /// Length and outside diameter of each slice of the hub, from the machine's side.
    pub slices: Vec<(f64, f64)>,
    /// Lines of one temperature: its figure, and points along and from the axis.
    pub lines: Vec<(String, Vec<(f64, f64)>)>,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum WarmthError {
    /// A size that is none.
    #[error("{0} mm is no size that can be drawn")]
    NoSize(f64),
    /// No slice.
    #[error("the hub has no slice")]
    NoHub,
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`WarmthError`] when a size is none, or there is no hub.
///
/// # Example
/// ```
/// use figures::{Paper, warmth::{Warmth, draw}};
/// let figure = draw(&Warmth {
///     title: "17 s after it is home".to_owned(),
///     ranges: "hub 96 to 131 °C, shaft 21 to 58 °C".to_owned(),
///     bore: 80.0,
///     hollow: 0.0,
///     shaft: [160.0, 0.0],
///     slices: vec![(64.0, 116.0), (26.0, 146.0)],
///     lines: vec![("120".to_owned(), vec![(0.0, 55.0), (90.0, 60.0)])],
/// }, Paper::COLUMN)?;
/// assert!(figure.says.contains("17 s"));
/// # Ok::<(), figures::warmth::WarmthError>(())
/// ```
pub fn draw(warmth: &Warmth, paper: Paper) -> Result<Figure, WarmthError> {
    paper.check()?;
    check(warmth)?;
    let says = format!("{}: {}.", warmth.title, warmth.ranges);
    Ok(Figure::of(&drawing(warmth, paper), "Temperature of hub and shaft", says))
}

fn check(warmth: &Warmth) -> Result<(), WarmthError> {
    if warmth.slices.is_empty() {
        return Err(WarmthError::NoHub);
    }
    let slices = warmth.slices.iter().flat_map(|(length, outside)| [*length, *outside]);
    let sizes = slices.chain([warmth.bore]).map(|size| (size, size > 0.0));
    let rest = [warmth.hollow, warmth.shaft[0], warmth.shaft[1]].map(|size| (size, size >= 0.0));
    let points = warmth.lines.iter().flat_map(|(_, line)| line);
    let points = points.flat_map(|(x, r)| [*x, *r]).map(|size| (size, true));
    let mut all = sizes.chain(rest).chain(points);
    let bad = all.find(|(size, possible)| !possible || !size.is_finite() || size.abs() > 1e5);
    bad.map_or(Ok(()), |(size, _)| Err(WarmthError::NoSize(size)))
}

/// Of the shaft on either side, no more than this share of the bore is shown.
const SHOWN: f64 = 0.55;

/// From the sizes of the job to the sheet.
struct View {
    origin: Point,
    scale: f64,
    /// What is shown, along and from the axis.
    frame: Rect,
}

impl View {
    fn new(warmth: &Warmth, paper: Paper) -> Self {
        let t = paper.type_mm;
        let length: f64 = warmth.slices.iter().map(|(length, _)| length).sum();
        let outside = warmth.slices.iter().map(|(_, outside)| *outside).fold(warmth.bore, f64::max);
        let [behind, ahead] = warmth.shaft.map(|shaft| shaft.min(SHOWN * warmth.bore));
        let (wide, high) = (length + behind + ahead, outside / 2.0);
        let scale = ((paper.width_mm - 2.0 * t) / wide).min(0.62 * paper.width_mm / high);
        let top = 3.6 * t;
        let left = (paper.width_mm - scale * wide) / 2.0;
        let frame = Rect::new(left, top, left + scale * wide, top + scale * high);
        Self { origin: at(left + scale * behind, frame.bottom), scale, frame }
    }

    /// A place along the shaft and from the axis.
    fn at(&self, along: f64, radius: f64) -> Point {
        at(self.origin.x + self.scale * along, self.origin.y - self.scale * radius)
    }

    /// A box, from and to along the shaft, from and to over the axis.
    fn bounds(&self, (from, to): (f64, f64), (inner, outer): (f64, f64)) -> Rect {
        let (foot, top) = (self.at(from, inner), self.at(to, outer));
        Rect::new(foot.x, top.y, top.x, foot.y)
    }
}

/// The sheet of a warmth that was checked.
pub(crate) fn drawing(warmth: &Warmth, paper: Paper) -> Drawing {
    let t = paper.type_mm;
    let view = View::new(warmth, paper);
    let mut drawing = Drawing::new(paper.width_mm, view.frame.bottom + 0.8 * t);
    bodies(&mut drawing, warmth, &view);
    let shown = isotherms(&mut drawing, warmth, &view);
    let heads = [(&warmth.title, 1.05, 0.8, true), (&warmth.ranges, 0.95, 2.2, false)];
    for (text, size, row, strong) in heads {
        let Some(words) = fitting(text, size * t, drawing.width) else { continue };
        let words = if strong { words.strong() } else { words.colour(Colour::Soft) };
        drawing.text(&words, at(0.0, row * t), Anchor::Start);
    }
    figures(&mut drawing, &shown, &view, t);
    drawing
}

fn bodies(drawing: &mut Drawing, warmth: &Warmth, view: &View) {
    let (bore, hollow) = (warmth.bore / 2.0, warmth.hollow / 2.0);
    let length: f64 = warmth.slices.iter().map(|(length, _)| length).sum();
    let shaft = view.bounds((0.0, length), (hollow, bore));
    let shaft = Rect::new(view.frame.left, shaft.top, view.frame.right, shaft.bottom);
    drawing.shape(&outline(shaft), Some(Stroke::of(MEDIUM).under()), Some(Colour::Metal));
    let (mut hub, mut along) = (vec![view.at(0.0, bore)], 0.0);
    for (slice, outside) in &warmth.slices {
        hub.push(view.at(along, outside / 2.0));
        along += slice;
        hub.push(view.at(along, outside / 2.0));
    }
    hub.push(view.at(length, bore));
    drawing.shape(&hub, Some(Stroke::of(THICK).under()), Some(Colour::Metal));
    let axis = Stroke::of(THIN).dash(CHAIN).under();
    level(drawing, view.frame.bottom, view.frame.left, view.frame.right, axis);
}

/// A line as far as it is shown, and the words on it.
type Shown<'a> = (&'a str, Vec<Point>);

fn isotherms<'a>(drawing: &mut Drawing, warmth: &'a Warmth, view: &View) -> Vec<Shown<'a>> {
    let mut shown: Vec<Shown<'a>> = Vec::new();
    for (words, line) in &warmth.lines {
        let mut run: Vec<Point> = Vec::new();
        for pair in line.windows(2) {
            let segment = (view.at(pair[0].0, pair[0].1), view.at(pair[1].0, pair[1].1));
            let Some((from, to)) = view.frame.clip_line(segment) else { continue };
            if run.last().is_none_or(|end| end.distance(from) > 1e-6) {
                shown.push((words, std::mem::replace(&mut run, vec![from])));
            }
            run.push(to);
        }
        shown.push((words, run));
    }
    shown.retain(|(_, run)| run.len() > 1);
    for (_, run) in &shown {
        drawing.path(run, Stroke::of(THIN).under());
    }
    shown
}

/// Each line's figure on it where there is room, the longest lines first; not twice close by.
fn figures(drawing: &mut Drawing, shown: &[Shown], view: &View, t: f64) {
    let length = |run: &[Point]| run.windows(2).map(|pair| pair[0].distance(pair[1])).sum::<f64>();
    let mut order: Vec<(f64, &Shown)> = shown.iter().map(|line| (length(&line.1), line)).collect();
    order.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut named: Vec<(&str, Point)> = Vec::new();
    for (length, (text, run)) in order {
        let words = Words::new(*text, 0.9 * t).halo();
        let middle = along(run, 0.5 * length);
        let near = |(other, at): &(&str, Point)| other == text && at.distance(middle) < 9.0 * t;
        if length < words.width() || named.iter().any(near) {
            continue;
        }
        let spots =
            [0.5, 0.35, 0.65, 0.2, 0.8].map(|part| (along(run, part * length), Anchor::Middle));
        if place(drawing, &words, &spots, view.frame) {
            named.push((text, middle));
        }
    }
}

/// The point so far along a line.
fn along(run: &[Point], distance: f64) -> Point {
    let mut left = distance;
    for pair in run.windows(2) {
        let length = pair[0].distance(pair[1]);
        if left <= length && length > 0.0 {
            return pair[0].towards(pair[1], left / length);
        }
        left -= length;
    }
    run[run.len() - 1]
}
