//! In which order and in which stages the bolts of a circle are tightened.
//!
//! Each hexagon carries its turn, large; outside it stands the bolt's own number, small, counted
//! clockwise from the top. The first turn is solid, or, where bolts go in by turns from either side,
//! every head is and every nut is not. Three arrows show how it goes on. Stages are bars that get denser; the last one is solid.

use std::f64::consts::TAU;

use crate::axis::{plain, real};
use crate::geometry::{Point, Rect, at, clock, regular};
use crate::hatch::Cut;
use crate::ink::{Anchor, CHAIN, Colour, Drawing, MEDIUM, Stroke, THICK, THIN, Words, outline};
use crate::labels::fitting;
use crate::{Figure, Paper, PaperError};

/// A round of tightening.
#[derive(Clone, Debug, PartialEq)]
pub struct Stage {
    /// Of the full torque, 0 to 1.
    pub share: f64,
    /// As written: "42 N·m", "snug by hand".
    pub text: String,
}

/// A circle of bolts.
#[derive(Clone, Debug, PartialEq)]
pub struct Tightening {
    /// Places on the circle, numbered from 1 at the top and clockwise, in the order of tightening.
    pub order: Vec<usize>,
    /// Whether all bolts show the same end.
    pub ends: Ends,
    /// From the first to the last.
    pub stages: Vec<Stage>,
    /// A line beneath: "In each stage follow the numbers."
    pub note: String,
}

/// Which end of its bolts a circle shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// The same of all.
    Alike,
    /// By turns a head and a nut, as the bolts of a pack go to either hub.
    ByTurns,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TighteningError {
    /// Fewer than two bolts, or more than can be drawn.
    #[error("{0} bolts cannot be drawn")]
    Bolts(usize),
    /// Not every place once.
    #[error("the order does not name each place once: {0:?}")]
    Order(Vec<usize>),
    /// Not between nothing and the full torque.
    #[error("a stage cannot be {0} of the full torque")]
    Share(f64),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`TighteningError`] when the order is not one of 2 to 48 bolts, or a share is beyond 0 to 1.
///
/// # Example
/// ```
/// use figures::{Paper, tightening::{Ends, Stage, Tightening, draw}};
/// let stage = |share, text: &str| Stage { share, text: text.to_owned() };
/// let figure = draw(&Tightening {
///     order: vec![1, 4, 2, 5, 3, 6],
///     ends: Ends::Alike,
///     stages: vec![stage(0.3, "33 N·m"), stage(1.0, "110 N·m")],
///     note: "In each stage follow the numbers.".to_owned(),
/// }, Paper::CARD)?;
/// assert!(figure.says.contains("1, 4, 2, 5, 3, 6"));
/// # Ok::<(), figures::tightening::TighteningError>(())
/// ```
pub fn draw(tightening: &Tightening, paper: Paper) -> Result<Figure, TighteningError> {
    check(tightening, paper)?;
    Ok(Figure::of(&drawing(tightening, paper), "Order of tightening", says(tightening)))
}

fn check(tightening: &Tightening, paper: Paper) -> Result<(), TighteningError> {
    paper.check()?;
    let order = &tightening.order;
    if !(2..=48).contains(&order.len()) {
        return Err(TighteningError::Bolts(order.len()));
    }
    let mut sorted = order.clone();
    sorted.sort_unstable();
    if !sorted.into_iter().eq(1..=order.len()) {
        return Err(TighteningError::Order(order.clone()));
    }
    let bad = tightening.stages.iter().map(|s| s.share).find(|s| !(0.0..=1.0).contains(s));
    bad.map_or(Ok(()), |share| Err(TighteningError::Share(share)))
}

fn says(tightening: &Tightening) -> String {
    let join = |parts: Vec<String>| parts.join(", ");
    let order = join(tightening.order.iter().map(ToString::to_string).collect());
    let stages = join(tightening.stages.iter().map(|s| s.text.clone()).collect());
    let bolts = tightening.order.len();
    let ends = match tightening.ends {
        Ends::Alike => "",
        Ends::ByTurns => ", by turns a head and a nut, the top one a head",
    };
    format!(
        "{bolts} bolts{ends}, numbered clockwise from the top, tightened in the order {order}; \
         stages: {stages}."
    )
}

/// Sizes that follow from the number of bolts.
struct Circle {
    centre: Point,
    bolts: f64,
    hexagon: f64,
    flange: f64,
}

/// The sheet of a tightening that was checked.
pub(crate) fn drawing(tightening: &Tightening, paper: Paper) -> Drawing {
    let t = paper.type_mm;
    // Hexagons side by side with a little room; smaller where the paper is too narrow for them.
    let per_bolt = real(tightening.order.len()) * 2.25 / TAU;
    let widest = paper.width_mm / 2.0 - 0.3;
    let hexagon = (0.95 * t).min(widest / (per_bolt + 2.0));
    let bolts = (5.2 * t).max(per_bolt * hexagon).min(widest - 2.0 * hexagon);
    let flange = bolts + 2.0 * hexagon;
    let stages = real(tightening.stages.len()) * 2.0 * t;
    let beside = paper.width_mm - 2.0 * flange > 21.0 * t;
    let note = if tightening.note.is_empty() { 0.0 } else { 2.0 * t };
    let (stages_at, body) = if beside {
        (at(2.0 * flange + 2.5 * t, (flange - stages / 2.0).max(0.0)), (2.0 * flange).max(stages))
    } else {
        (at(0.0, 2.0 * flange + t), 2.0 * flange + t + stages)
    };
    let x = if beside { flange + 0.3 } else { paper.width_mm / 2.0 };
    let y = if beside { body / 2.0 } else { flange };
    let circle = Circle { centre: at(x, y + 0.3), bolts, hexagon, flange };
    let mut drawing = Drawing::new(paper.width_mm, body + note + 0.6);
    flange_view(&mut drawing, tightening, &circle, t);
    rounds(&mut drawing, tightening, stages_at.plus(0.0, 0.3), t);
    let words = fitting(&tightening.note, 0.95 * t, paper.width_mm);
    if let Some(words) = words.filter(|_| note > 0.0) {
        drawing.text(&words.colour(Colour::Soft), at(0.0, body + 1.2 * t), Anchor::Start);
    }
    drawing
}

fn flange_view(drawing: &mut Drawing, tightening: &Tightening, circle: &Circle, t: f64) {
    let Circle { centre, bolts, hexagon, flange } = *circle;
    drawing.circle(centre, flange, Some(Stroke::of(THICK)), Some(Colour::Metal));
    drawing.circle(centre, bolts, Some(Stroke::of(THIN).dash(CHAIN).under()), None);
    let inner = bolts - 2.6 * t;
    drawing.circle(centre, inner, Some(Stroke::of(MEDIUM)), None);
    let count = tightening.order.len();
    let angle = |place: usize| TAU * real(place - 1) / real(count);
    let spot = |place: usize| clock(centre, bolts, angle(place));
    for pair in tightening.order.windows(2).take(3) {
        let (from, to) = (spot(pair[0]), spot(pair[1]));
        let away = 1.3 * hexagon / from.distance(to).max(1e-9);
        let others = (1..=count).filter(|place| !pair.contains(place));
        let crowded = |place| passes(spot(place), (from, to), 1.3 * hexagon);
        if away > 0.35 || others.into_iter().any(crowded) {
            continue;
        }
        let (start, end) = (from.towards(to, away), from.towards(to, 1.0 - away));
        drawing.line(start, end, Stroke::of(THIN).under());
        drawing.arrow(end, (to.x - from.x, to.y - from.y), 0.75 * t, Colour::Ink);
    }
    for (index, place) in tightening.order.iter().enumerate() {
        let corners = regular(spot(*place), hexagon, 6, angle(*place) + 0.5);
        let solid = match tightening.ends {
            Ends::Alike => index == 0,
            Ends::ByTurns => place % 2 == 1,
        };
        let (fill, ink) =
            if solid { (Colour::Ink, Colour::Leaf) } else { (Colour::Metal, Colour::Ink) };
        drawing.shape(&corners, Some(Stroke::of(MEDIUM).under()), Some(fill));
        let number = Words::new((index + 1).to_string(), hexagon).strong().colour(ink);
        drawing.text(&number, spot(*place), Anchor::Middle);
    }
    for place in 1..=count {
        let own = Words::new(place.to_string(), 0.75 * hexagon).colour(Colour::Soft);
        drawing.text(&own, clock(centre, bolts + 1.5 * hexagon, angle(place)), Anchor::Middle);
    }
}

/// Whether a line passes a point more closely than so much.
fn passes(point: Point, (from, to): (Point, Point), room: f64) -> bool {
    let length = from.distance(to).max(1e-9);
    let (ux, uy) = ((to.x - from.x) / length, (to.y - from.y) / length);
    let along = ((point.x - from.x) * ux + (point.y - from.y) * uy).clamp(0.0, length);
    point.distance(from.plus(ux * along, uy * along)) < room
}

/// Bars of the stages, one under the other, as long as their share of the torque.
fn rounds(drawing: &mut Drawing, tightening: &Tightening, origin: Point, t: f64) {
    let longest = 8.0 * t;
    let last = tightening.stages.len().saturating_sub(1);
    for (index, stage) in tightening.stages.iter().enumerate() {
        let y = origin.y + 2.0 * t * real(index);
        let width = (longest * stage.share).max(0.8 * t);
        let bar =
            Rect::new(origin.x + 1.6 * t, y + 0.3 * t, origin.x + 1.6 * t + width, y + 1.7 * t);
        let fill = if index == last { Colour::Ink } else { Colour::Metal };
        drawing.fill(&outline(bar), fill);
        if index < last && stage.share > 0.0 {
            let spacing = (0.9 - 0.65 * stage.share) * t * 0.6;
            drawing.hatch(vec![outline(bar)], Cut::new(45.0, spacing));
        }
        drawing.shape(&outline(bar), Some(Stroke::of(MEDIUM)), None);
        let number = Words::new(plain(real(index + 1)), t).strong();
        drawing.text(&number, at(origin.x + 0.3, y + t), Anchor::Start);
        let left = origin.x + 2.3 * t + longest;
        if let Some(words) = fitting(&stage.text, t, drawing.width - left) {
            drawing.text(&words, at(left, y + t), Anchor::Start);
        }
    }
}
