//! The marks of the verdicts: two limits, and where the value fell between or beyond them.
//!
//! Mark, frame, fill and word say the same thing four times, so none depends on a colour.
//!
//! | word | ends | fill | mark |
//! |---|---|---|---|
//! | inside | both round | none | dot between two bars |
//! | outside | square | full, word reversed | square past the second bar |
//! | too close to call | left square, right round | left part full | diamond, half full, on a bar |
//! | not measured | square, broken line | none | two broken bars, nothing between |

use std::f64::consts::PI;

use quantities::Verdict;

use crate::Figure;
use crate::geometry::{Point, Rect, at};
use crate::ink::{Anchor, Colour, Drawing, Stroke, Words, outline, upright};

/// What a mark stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// Paper: the mark is pencil.
    Paper,
    /// Solid pencil: the mark is left open.
    Solid,
}

/// Size of a mark, mm.
const MARK: (f64, f64) = (8.0, 6.6);

/// The mark alone, 8 × 6.6 mm.
///
/// # Example
/// ```
/// use figures::marks::{Ground, mark};
/// let figure = mark(quantities::Verdict::TooClose, Ground::Paper);
/// assert_eq!(figure.says, "too close to call");
/// ```
pub fn mark(verdict: Verdict, ground: Ground) -> Figure {
    let mut drawing = Drawing::new(MARK.0, MARK.1);
    draw_mark(&mut drawing, at(0.0, 0.0), verdict, ground);
    finish(&drawing, verdict)
}

/// Mark and word in their frame, 7.2 mm high.
pub fn stamp(verdict: Verdict) -> Figure {
    const HEIGHT: f64 = 7.2;
    let words = Words::new(verdict.words(), 4.0).strong();
    let left = MARK.0 + 1.4;
    let width = left + words.width() * 1.02 + 3.2;
    let mut drawing = Drawing::new(width, HEIGHT);
    let frame = Rect::new(0.0, 0.0, width, HEIGHT).grown(-0.3, -0.3);
    let colour = if verdict == Verdict::NotMeasured { Colour::Soft } else { Colour::Pencil };
    let line = Stroke::of(0.5).colour(colour).under();
    let (words, ground) = match verdict {
        Verdict::Inside => {
            drawing.shape(&pill(frame, Ends::Both), Some(line), None);
            (words.colour(colour), Ground::Paper)
        }
        Verdict::Outside => {
            drawing.shape(&outline(frame), Some(line), Some(colour));
            (words.colour(Colour::Leaf), Ground::Solid)
        }
        Verdict::TooClose => {
            let full = Rect { right: left, ..frame };
            drawing.fill(&outline(full), colour);
            drawing.shape(&pill(frame, Ends::Right), Some(line), None);
            (words.colour(colour), Ground::Solid)
        }
        Verdict::NotMeasured => {
            drawing.shape(&outline(frame), Some(line.dash("1.3 .9")), None);
            (words.colour(colour), Ground::Paper)
        }
    };
    draw_mark(&mut drawing, at(0.7, (HEIGHT - MARK.1) / 2.0), verdict, ground);
    drawing.text(&words, at(left + 1.2, HEIGHT / 2.0), Anchor::Start);
    finish(&drawing, verdict)
}

/// A stage on the small shaft line, 4 × 4 mm: dot, square, half diamond, broken square, or a ring
/// where nothing has begun.
pub fn bead(verdict: Option<Verdict>) -> Figure {
    let mut drawing = Drawing::new(4.0, 4.0);
    let centre = at(2.0, 2.0);
    let line = Stroke::of(0.4).colour(Colour::Pencil).under();
    let (pencil, square) = (Some(Colour::Pencil), Rect::new(0.7, 0.7, 3.3, 3.3));
    match verdict {
        Some(Verdict::Inside) => drawing.circle(centre, 1.35, None, pencil),
        Some(Verdict::Outside) => drawing.fill(&outline(square), Colour::Pencil),
        Some(Verdict::TooClose) => {
            diamond(&mut drawing, centre, 1.6, Colour::Pencil, Colour::Leaf, 0.4);
        }
        Some(Verdict::NotMeasured) => {
            let broken = Stroke::of(0.4).colour(Colour::Soft).dash(".8 .5").under();
            drawing.shape(&outline(square), Some(broken), Some(Colour::Leaf));
        }
        None => drawing.circle(centre, 1.2, Some(line.colour(Colour::Ink)), Some(Colour::Leaf)),
    }
    let says = verdict.map_or("not begun", Verdict::words);
    Figure::of(&drawing, says, says.to_owned())
}

fn finish(drawing: &Drawing, verdict: Verdict) -> Figure {
    Figure::of(drawing, verdict.words(), verdict.words().to_owned())
}

fn draw_mark(drawing: &mut Drawing, origin: Point, verdict: Verdict, ground: Ground) {
    let (colour, open) = match ground {
        Ground::Paper => (Colour::Pencil, Colour::Leaf),
        Ground::Solid => (Colour::Leaf, Colour::Pencil),
    };
    let colour = if verdict == Verdict::NotMeasured { Colour::Soft } else { colour };
    let middle = MARK.1 / 2.0;
    let bar = Stroke::of(0.62).colour(colour).under();
    let bar = if verdict == Verdict::NotMeasured { bar.dash("1.1 .85") } else { bar };
    let bars = match verdict {
        Verdict::Inside | Verdict::NotMeasured => [1.5, 6.5],
        Verdict::Outside => [0.8, 4.1],
        Verdict::TooClose => [1.2, 5.4],
    };
    for x in bars {
        let x = origin.x + x;
        upright(drawing, x, origin.y + middle - 2.6, origin.y + middle + 2.6, bar);
    }
    let place = |x: f64| origin.plus(x, middle);
    match verdict {
        Verdict::Inside => drawing.circle(place(4.0), 1.4, None, Some(colour)),
        Verdict::Outside => {
            let centre = place(6.35);
            let square = Rect::new(centre.x, centre.y, centre.x, centre.y).grown(1.15, 1.15);
            drawing.fill(&outline(square), colour);
        }
        Verdict::TooClose => diamond(drawing, place(5.4), 2.0, colour, open, 0.4),
        Verdict::NotMeasured => {}
    }
}

/// A diamond whose left half is full.
fn diamond(
    drawing: &mut Drawing,
    centre: Point,
    half: f64,
    colour: Colour,
    open: Colour,
    weight: f64,
) {
    let (top, bottom) = (centre.plus(0.0, -half), centre.plus(0.0, half));
    let (left, right) = (centre.plus(-half, 0.0), centre.plus(half, 0.0));
    let line = Stroke::of(weight).colour(colour).under();
    drawing.shape(&[top, right, bottom, left], Some(line), Some(open));
    drawing.fill(&[top, bottom, left], colour);
}

/// Which ends of a frame are round.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Ends {
    Both,
    Right,
}

fn pill(frame: Rect, ends: Ends) -> Vec<Point> {
    let r = frame.height() / 2.0;
    let arc = |x: f64, from: f64| {
        (0..=12).map(move |step| {
            let (sin, cos) = (from + PI * f64::from(step) / 12.0).sin_cos();
            at(x + r * cos, frame.top + r + r * sin)
        })
    };
    let mut points: Vec<Point> = arc(frame.right - r, -PI / 2.0).collect();
    match ends {
        Ends::Both => points.extend(arc(frame.left + r, PI / 2.0)),
        Ends::Right => points.extend([at(frame.left, frame.bottom), at(frame.left, frame.top)]),
    }
    points
}

#[cfg(test)]
mod tests {
    use super::*;

    const VERDICTS: [Verdict; 4] =
        [Verdict::Inside, Verdict::Outside, Verdict::TooClose, Verdict::NotMeasured];

    /// Each differs from each other in shape, not only in colour.
    #[test]
    fn marks_differ_without_their_colours() {
        let bare = |figure: Figure| figure.svg.replace("pencil", "").replace("soft", "");
        for make in [|v| mark(v, Ground::Paper), |v| bead(Some(v))] {
            let all: std::collections::BTreeSet<String> =
                VERDICTS.into_iter().map(|v| bare(make(v))).collect();
            assert_eq!(all.len(), 4);
        }
    }

    #[test]
    fn a_stamp_carries_its_word() {
        for verdict in VERDICTS {
            let figure = stamp(verdict);
            assert!(figure.svg.contains(verdict.words()) && figure.says == verdict.words());
        }
    }
}
