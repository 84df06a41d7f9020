//! Bolts, nuts and plugs: small parts that are never cut.

use super::shape::{Shape, block};
use crate::geometry::at;
use crate::ink::{HAIR, MEDIUM, SHORT_CHAIN, Stroke, THIN};

/// Heights over the bolt's diameter, near enough for a drawing: head, nut, tip beyond the nut, and
/// half the width across corners.
const HEAD: f64 = 0.62;
const NUT: f64 = 0.8;
const TIP: f64 = 0.3;
const CORNER: f64 = 0.95;

/// A through bolt, head at `from` and nut at `to`, its axis at height `y`.
pub(super) fn through_bolt(from: f64, to: f64, y: f64, diameter: f64) -> Vec<Shape> {
    let (r, along) = (diameter / 2.0, (to - from).signum());
    let tip = to + along * (NUT + TIP) * diameter;
    let mut shapes = vec![Shape::small(block((from, y - r), (tip, y + r)))];
    for up in [-0.8, 0.8] {
        let height = y + up * r;
        shapes.push(Shape::hair((to + along * NUT * diameter, height), (tip, height), HAIR));
    }
    shapes.extend(hexagon(from, -along * HEAD * diameter, y, diameter));
    shapes.extend(hexagon(to, along * NUT * diameter, y, diameter));
    let beyond = 0.5 * diameter * along;
    shapes.push(centre_line(from - along * HEAD * diameter - beyond, tip + beyond, y));
    shapes
}

/// A bolt's own centre line.
pub(super) fn centre_line(from: f64, to: f64, y: f64) -> Shape {
    let stroke = Stroke::of(THIN).dash(SHORT_CHAIN).under();
    Shape::Line { points: vec![at(from, y), at(to, y)], stroke }
}

/// A head or nut across its corners, chamfered at its free end, with the edges of its faces.
fn hexagon(face: f64, height: f64, y: f64, diameter: f64) -> Vec<Shape> {
    let (corner, free) = (CORNER * diameter, face + height);
    let chamfer = 0.12 * diameter * height.signum();
    let outline = vec![
        at(face, y - corner),
        at(free - chamfer, y - corner),
        at(free, y - 0.7 * corner),
        at(free, y + 0.7 * corner),
        at(free - chamfer, y + corner),
        at(face, y + corner),
    ];
    let edge = |up: f64| {
        let height = y + up * corner;
        Shape::hair((face, height), (free - 0.6 * chamfer, height), HAIR)
    };
    vec![Shape::small(outline), edge(-0.5), edge(0.5)]
}

/// A head or nut seen from outside on the face of a flange.
pub(super) fn plain_head(face: f64, height: f64, y: f64, half_width: f64) -> Vec<Shape> {
    let edge = |up: f64| {
        Shape::hair((face, y + up * half_width), (face + height, y + up * half_width), HAIR)
    };
    let outline = block((face, y - half_width), (face + height, y + half_width));
    vec![Shape::small(outline), edge(-0.5), edge(0.5)]
}

/// Whether a bolt's tip shows beyond its nut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tip {
    Shown,
    Hidden,
}

/// Bolts of a circle below the axis, seen from outside: heads at `from`, nuts at `to`.
pub(super) fn bolts_below(
    from: f64,
    to: f64,
    circle: f64,
    diameter: f64,
    count: u32,
    tip: Tip,
) -> Vec<Shape> {
    let mut shapes = Vec::new();
    for y in heights_below(circle, count, 0.6 * diameter) {
        shapes.extend(plain_head(from, -HEAD * diameter, y, CORNER * diameter));
        shapes.extend(plain_head(to, NUT * diameter, y, CORNER * diameter));
        if tip == Tip::Shown {
            let nut = to + NUT * diameter;
            let tip = (nut + TIP * diameter, y + diameter / 2.0);
            shapes.push(Shape::small(block((nut, y - diameter / 2.0), tip)));
        }
    }
    shapes
}

/// Heights of the bolts of a circle that show below the axis, one bolt straight down or, by an
/// odd count, as the cut one on top leaves them; those nearer to the axis than `clear` are left out.
pub(super) fn heights_below(circle: f64, count: u32, clear: f64) -> Vec<f64> {
    let mut heights: Vec<f64> = Vec::new();
    for step in 0..count {
        let angle = std::f64::consts::TAU * f64::from(step) / f64::from(count);
        let (y, towards_us) = (circle * angle.cos(), angle.sin() >= -1e-9);
        if y < -clear && towards_us {
            heights.push(y);
        }
    }
    heights
}

/// A plug through a wall from `inner` to `outer` radius, its head outside.
pub(super) fn plug(x: f64, inner: f64, outer: f64, diameter: f64) -> Vec<Shape> {
    let r = diameter / 2.0;
    let thread =
        |side: f64| Shape::hair((x + side * 0.8 * r, inner), (x + side * 0.8 * r, outer), HAIR);
    vec![
        Shape::small(block((x - r, inner), (x + r, outer))),
        Shape::small(block((x - diameter, outer), (x + diameter, outer + 0.8 * diameter))),
        thread(-1.0),
        thread(1.0),
    ]
}

/// A plug seen from outside, in front of the wall.
pub(super) fn plug_head(x: f64, y: f64, diameter: f64) -> Vec<Shape> {
    let ring = |radius, weight, filled| Shape::Ring { centre: at(x, y), radius, weight, filled };
    vec![ring(0.8 * diameter, MEDIUM, true), ring(0.35 * diameter, THIN, false)]
}
