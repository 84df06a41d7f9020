//! Hatching as lines, not as a pattern: its spacing is the same at every scale, and words can be
//! cut out of it.
//!
//! The polygons are turned so that the hatch runs level, and swept line by line; between each
//! pair of crossings there is metal (even-odd).

use crate::geometry::{Point, Rect, Segment, at};

/// How a part is hatched.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Cut {
    /// Of the lines, degrees, counter-clockwise from level on the sheet.
    pub angle: f64,
    /// Between the lines, mm of paper.
    pub spacing: f64,
    /// Of a line, mm of paper.
    pub weight: f64,
}

impl Cut {
    pub const fn new(angle: f64, spacing: f64) -> Self {
        Self { angle, spacing, weight: 0.13 }
    }
}

/// The hatch lines over `polygons`, broken where a box of `gaps` stands.
pub(crate) fn lines(polygons: &[Vec<Point>], cut: Cut, gaps: &[Rect]) -> Vec<Segment> {
    let turn = Turn::by(cut.angle);
    let level: Vec<Vec<Point>> = polygons.iter().map(|p| turn.there(p)).collect();
    let boxes: Vec<Vec<Point>> = gaps.iter().map(|gap| turn.there(&gap.corners())).collect();
    let heights = level.iter().flatten().map(|p| p.y);
    let (low, high) = heights.fold((f64::MAX, f64::MIN), |(l, h), y| (l.min(y), h.max(y)));
    let mut found = Vec::new();
    let mut step = (low / cut.spacing).ceil();
    while step * cut.spacing < high && found.len() < 20_000 {
        // A hair off the round height, so that a line never runs along an edge.
        let height = step * cut.spacing + 1e-5;
        let spans =
            boxes.iter().fold(spans(&level, height), |left, gap| without(left, gap, height));
        for (from, to) in spans.into_iter().filter(|(from, to)| to - from > 0.05) {
            found.push((turn.back(at(from, height)), turn.back(at(to, height))));
        }
        step += 1.0;
    }
    found
}

/// A turn of the sheet and back.
struct Turn {
    cos: f64,
    sin: f64,
}

impl Turn {
    fn by(degrees: f64) -> Self {
        let (sin, cos) = (-degrees).to_radians().sin_cos();
        Self { cos, sin }
    }

    fn there(&self, points: &[Point]) -> Vec<Point> {
        let one = |p: &Point| at(p.x * self.cos + p.y * self.sin, p.y * self.cos - p.x * self.sin);
        points.iter().map(one).collect()
    }

    fn back(&self, p: Point) -> Point {
        at(p.x * self.cos - p.y * self.sin, p.x * self.sin + p.y * self.cos)
    }
}

/// Where a level line at `height` meets the edges of a polygon.
fn meets(polygon: &[Point], height: f64) -> Vec<f64> {
    let mut found = Vec::new();
    for (index, to) in polygon.iter().enumerate() {
        let from = polygon[(index + polygon.len() - 1) % polygon.len()];
        if (from.y <= height) != (to.y <= height) {
            found.push(from.x + (height - from.y) / (to.y - from.y) * (to.x - from.x));
        }
    }
    found
}

fn spans(polygons: &[Vec<Point>], height: f64) -> Vec<(f64, f64)> {
    let mut crossings: Vec<f64> = polygons.iter().flat_map(|p| meets(p, height)).collect();
    crossings.sort_by(f64::total_cmp);
    crossings.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect()
}

fn without(spans: Vec<(f64, f64)>, gap: &[Point], height: f64) -> Vec<(f64, f64)> {
    let mut meets = meets(gap, height);
    meets.sort_by(f64::total_cmp);
    let [from, to] = meets[..] else { return spans };
    let cut = |(a, b): (f64, f64)| {
        if to <= a || from >= b { vec![(a, b)] } else { vec![(a, from.max(a)), (to.min(b), b)] }
    };
    spans.into_iter().flat_map(cut).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(side: f64) -> Vec<Point> {
        Rect::new(0.0, 0.0, side, side).corners().to_vec()
    }

    #[test]
    fn spacing_is_what_was_asked_and_lines_stay_inside() {
        let found = lines(&[square(20.0)], Cut::new(45.0, 2.0), &[]);
        let foot = |s: &Segment| (s.0.x + s.0.y) / 2.0_f64.sqrt();
        for pair in found.windows(2) {
            assert!(((foot(&pair[1]) - foot(&pair[0])).abs() - 2.0).abs() < 1e-9);
        }
        let within = Rect::new(-1e-6, -1e-6, 20.0 + 1e-6, 20.0 + 1e-6);
        assert!(found.iter().all(|(a, b)| within.holds(Rect::new(a.x, a.y, a.x, a.y))
            && within.holds(Rect::new(b.x, b.y, b.x, b.y))));
    }

    #[test]
    fn a_hole_and_a_word_are_left_open() {
        let hole = Rect::new(5.0, 5.0, 15.0, 15.0).corners().to_vec();
        let word = Rect::new(0.0, 16.0, 20.0, 18.0);
        let found = lines(&[square(20.0), hole], Cut::new(45.0, 1.0), &[word]);
        assert!(!found.is_empty());
        for segment in found {
            assert!(!Rect::new(5.1, 5.1, 14.9, 14.9).crossed_by(segment));
            assert!(!word.grown(-0.01, -0.01).crossed_by(segment));
        }
    }
}
