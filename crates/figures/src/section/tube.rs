//! A tube with a flange at each end: the spacer that stands between two hubs.
//!
//! Its bore is left open, so that it reads as a tube.

use super::shape::{Shape, fillet};
use crate::geometry::{Point, at};
use crate::hatch::Cut;
use crate::ink::MEDIUM;

/// From the driver's end to the driven one; flanges differ where it carries something.
#[derive(Clone, Copy, Debug)]
pub(super) struct Tube {
    pub ends: [f64; 2],
    /// Radius and thickness of each flange.
    pub flanges: [(f64, f64); 2],
    /// Outside and inside radius between them.
    pub outside: f64,
    pub inside: f64,
    pub cut: Cut,
}

impl Tube {
    /// Cut above the axis, from outside below it.
    pub fn shapes(&self) -> Vec<Shape> {
        let ([from, to], [left, right]) = (self.ends, self.necks());
        let mut shapes = vec![
            Shape::outside(self.outline(-1.0, 0.0)),
            Shape::cut(self.outline(1.0, self.inside), self.cut),
        ];
        for x in [from, to] {
            shapes.push(Shape::line((x, self.inside), (x, 0.0), MEDIUM));
        }
        for x in [left, right] {
            shapes.push(Shape::line((x, -self.outside), (x, 0.0), MEDIUM));
        }
        shapes
    }

    /// Where the flanges end.
    fn necks(&self) -> [f64; 2] {
        [self.ends[0] + self.flanges[0].1, self.ends[1] - self.flanges[1].1]
    }

    fn outline(&self, up: f64, inner: f64) -> Vec<Point> {
        let ([from, to], [left, right]) = (self.ends, self.necks());
        let [(first, _), (second, _)] = self.flanges;
        let round = (0.1 * (right - left)).min(0.2 * (first.min(second) - self.outside)).max(0.0);
        let mut points = vec![(from, up * inner), (from, up * first), (left, up * first)];
        points.extend(fillet(left, up * self.outside, round, (1.0, up)));
        let other = fillet(right, up * self.outside, round, (-1.0, up));
        points.extend(other.into_iter().rev());
        points.extend([(right, up * second), (to, up * second), (to, up * inner)]);
        points.into_iter().map(|(x, y)| at(x, y)).collect()
    }

    /// A place well inside it.
    pub fn inside(&self) -> Point {
        let [left, right] = self.necks();
        at(f64::midpoint(left, right), f64::midpoint(self.inside, self.outside))
    }
}
