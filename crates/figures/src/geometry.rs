//! Points, boxes and lines on the sheet: who touches whom.
//!
//! On paper x runs right and y runs down, in millimetres. Coordinates of the job (x along the
//! shafts, y up from the axis) use the same [`Point`] until a view brings them to the sheet.

use std::f64::consts::TAU;

/// A place on the sheet or in the job, mm.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub(crate) struct Point {
    pub x: f64,
    pub y: f64,
}

pub(crate) const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Point {
    pub fn plus(self, x: f64, y: f64) -> Self {
        at(self.x + x, self.y + y)
    }

    /// From the first point to the second, as a share of the way.
    pub fn towards(self, other: Self, share: f64) -> Self {
        at(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)
    }

    pub fn distance(self, other: Self) -> f64 {
        (other.x - self.x).hypot(other.y - self.y)
    }
}

/// A straight piece of a line.
pub(crate) type Segment = (Point, Point);

/// A box with level and upright sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Rect {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Rect {
    pub fn new(left: f64, top: f64, right: f64, bottom: f64) -> Self {
        Self { left, top, right, bottom }
    }

    pub fn width(self) -> f64 {
        self.right - self.left
    }

    pub fn height(self) -> f64 {
        self.bottom - self.top
    }

    /// Larger by so much on each side; smaller when negative.
    pub fn grown(self, x: f64, y: f64) -> Self {
        Self::new(self.left - x, self.top - y, self.right + x, self.bottom + y)
    }

    pub fn corners(self) -> [Point; 4] {
        [
            at(self.left, self.top),
            at(self.right, self.top),
            at(self.right, self.bottom),
            at(self.left, self.bottom),
        ]
    }

    pub fn touches(self, other: Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    pub fn holds(self, other: Self) -> bool {
        self.left <= other.left
            && other.right <= self.right
            && self.top <= other.top
            && other.bottom <= self.bottom
    }

    /// Whether a straight line passes through the inside of the box.
    pub fn crossed_by(self, (from, to): Segment) -> bool {
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        let edges = [
            (-dx, from.x - self.left),
            (dx, self.right - from.x),
            (-dy, from.y - self.top),
            (dy, self.bottom - from.y),
        ];
        for (slope, room) in edges {
            if slope.abs() < 1e-12 {
                if room < 0.0 {
                    return false;
                }
            } else if slope < 0.0 {
                enter = enter.max(room / slope);
            } else {
                leave = leave.min(room / slope);
            }
        }
        enter < leave
    }

    /// The part of a polygon that lies within the box (Sutherland and Hodgman).
    pub fn clip(self, polygon: &[Point]) -> Vec<Point> {
        let inside: [&dyn Fn(Point) -> f64; 4] =
            [&|p| p.x - self.left, &|p| self.right - p.x, &|p| p.y - self.top, &|p| {
                self.bottom - p.y
            }];
        inside.iter().fold(polygon.to_vec(), |shape, depth| keep_inside(&shape, depth))
    }

    /// The part of a straight line that lies within the box.
    pub fn clip_line(self, (from, to): Segment) -> Option<Segment> {
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let edges = [
            (-dx, from.x - self.left),
            (dx, self.right - from.x),
            (-dy, from.y - self.top),
            (dy, self.bottom - from.y),
        ];
        for (slope, room) in edges {
            if slope.abs() < 1e-12 {
                if room < 0.0 {
                    return None;
                }
            } else if slope < 0.0 {
                enter = enter.max(room / slope);
            } else {
                leave = leave.min(room / slope);
            }
        }
        (enter < leave).then(|| (from.towards(to, enter), from.towards(to, leave)))
    }
}

fn keep_inside(polygon: &[Point], depth: &dyn Fn(Point) -> f64) -> Vec<Point> {
    let mut kept = Vec::with_capacity(polygon.len() + 2);
    for (index, &here) in polygon.iter().enumerate() {
        let before = polygon[(index + polygon.len() - 1) % polygon.len()];
        let (d0, d1) = (depth(before), depth(here));
        if (d0 < 0.0) != (d1 < 0.0) {
            kept.push(before.towards(here, d0 / (d0 - d1)));
        }
        if d1 >= 0.0 {
            kept.push(here);
        }
    }
    kept
}

/// Whether two straight pieces cross each other inside both.
pub(crate) fn cross((a, b): Segment, (c, d): Segment) -> bool {
    let turn = |p: Point, q: Point, r: Point| (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0
}

/// Corners of a regular polygon, the first one at `turn` radians clockwise from the top.
pub(crate) fn regular(centre: Point, radius: f64, corners: u32, turn: f64) -> Vec<Point> {
    (0..corners)
        .map(|k| clock(centre, radius, turn + TAU * f64::from(k) / f64::from(corners)))
        .collect()
}

/// A point on a circle, the angle taken clockwise from the top as on a clock.
pub(crate) fn clock(centre: Point, radius: f64, angle: f64) -> Point {
    centre.plus(radius * angle.sin(), -radius * angle.cos())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_through_a_box_crosses_it_and_one_beside_it_does_not() {
        let square = Rect::new(0.0, 0.0, 10.0, 10.0);
        assert!(square.crossed_by((at(-5.0, 5.0), at(15.0, 5.0))));
        assert!(square.crossed_by((at(2.0, 2.0), at(3.0, 3.0))), "a line wholly inside");
        assert!(!square.crossed_by((at(-5.0, 11.0), at(15.0, 11.0))));
        assert!(!square.crossed_by((at(-5.0, 4.0), at(4.0, -5.0))), "past the corner");
    }

    #[test]
    fn clipping_keeps_what_is_inside() {
        let square = Rect::new(0.0, 0.0, 10.0, 10.0);
        let clipped =
            square.clip(&[at(-10.0, 5.0), at(20.0, 5.0), at(20.0, 20.0), at(-10.0, 20.0)]);
        let lowest = clipped.iter().fold(f64::MAX, |low, p| low.min(p.y));
        assert!((lowest - 5.0).abs() < 1e-9 && clipped.iter().all(|p| square.holds_point(*p)));
    }

    impl Rect {
        fn holds_point(self, p: Point) -> bool {
            self.grown(1e-9, 1e-9).holds(Rect::new(p.x, p.y, p.x, p.y))
        }
    }
}
