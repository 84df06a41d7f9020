//! The cover of a grid coupling, its gasket, bolts and seals.
//!
//! Split across the shaft, it is two bells with flanges in the middle, bolted along the shaft. Split
//! along it, the cut above the axis lies in the joint itself, as seen from above: beyond the shell
//! lies the joint's face, with its bolts end on. Below the axis the cover is off, its outline a
//! phantom.

use super::Build;
use crate::geometry::{Point, at};
use crate::ink::{PHANTOM, Stroke, THIN};
use crate::section::Split;
use crate::section::assembly::{Assembly, SIDES, Side, counted};
use crate::section::fasteners::through_bolt;
use crate::section::seam::Seam;
use crate::section::shape::{COVER, SLEEVE, Shape, block, side};

pub(super) fn build(a: &mut Assembly, b: &Build, bolts: Option<u32>) {
    match b.split {
        Split::Along => along(a, b, bolts),
        Split::Across => across(a, b, bolts),
    }
    seals(a, b);
}

/// Chamfer of the shell's outside.
fn chamfer(b: &Build) -> f64 {
    (0.06 * b.d).min(0.8 * (b.cover.1 - b.lip))
}

/// One half of the shell in section, from its outside at the middle to its inside there.
fn shell(b: &Build) -> Vec<(f64, f64)> {
    let ((inner, outer, _), end) = (b.cover, b.cover_end);
    let (inside_end, c) = (end - b.wall, chamfer(b));
    let k = 0.5 * c;
    vec![
        (end - c, outer),
        (end, outer - c),
        (end, b.lip),
        (inside_end, b.lip),
        (inside_end, inner - k),
        (inside_end - k, inner),
    ]
}

/// Points of the driven side, then the same of the driver's, in one outline.
fn both(half: &[(f64, f64)]) -> Vec<Point> {
    let mut outline = side(1.0, half);
    outline.extend(side(-1.0, half).into_iter().rev());
    outline
}

fn phantom(half: &[(f64, f64)]) -> Shape {
    let mut points = side(-1.0, half);
    points.extend(side(1.0, half).into_iter().rev());
    Shape::Line { points, stroke: Stroke::of(THIN).dash(PHANTOM) }
}

fn along(a: &mut Assembly, b: &Build, bolts: Option<u32>) {
    let ((inner, outer, over), end, c) = (b.cover, b.cover_end, chamfer(b));
    let seam = Seam { end: end - c, from: outer, to: over };
    let below = [(end, 0.0), (end, -outer + c), (end - c, -outer), (end - c, -over)];
    let shapes = vec![seam.face(), Shape::cut(both(&shell(b)), COVER), phantom(&below)];
    let place = at(b.face + 0.2 * b.wide, f64::midpoint(inner, outer));
    a.part('E', "cover, off below the axis", place, shapes);
    seam.fasten(a, bolts);
}

fn across(a: &mut Assembly, b: &Build, bolts: Option<u32>) {
    let ((inner, outer, over), end, c) = (b.cover, b.cover_end, chamfer(b));
    let gasket = (0.012 * b.d).max(0.8).min(0.2 * b.wide) / 2.0;
    let flange = gasket + (0.09 * b.d).min(0.4 * b.wide);
    for s in SIDES {
        let mut half = vec![(gasket, inner), (gasket, over), (flange, over), (flange, outer)];
        half.extend(shell(b));
        let below = [
            (gasket, -over),
            (flange, -over),
            (flange, -outer),
            (end - c, -outer),
            (end, -outer + c),
            (end, 0.0),
        ];
        let stroke = Stroke::of(THIN).dash(PHANTOM);
        let cut = if s == Side::Driver { COVER } else { SLEEVE[0] };
        let shapes = vec![
            Shape::cut(side(s.sign(), &half), cut),
            Shape::Line { points: side(s.sign(), &below), stroke },
        ];
        let inside =
            at(s.sign() * (0.25 * flange + 0.75 * (end - b.wall)), f64::midpoint(inner, outer));
        let name = "cover half (2), off below";
        a.twin((s, Side::Driven), 'E', name, inside, shapes);
    }
    let strip = |y0: f64, y1: f64| Shape::Ink(block((-gasket, y0), (gasket, y1)));
    a.part('G', "gasket", at(0.0, over - 0.12 * (over - outer)), vec![strip(inner, over)]);
    let bolt = (0.09 * b.d).min((over - outer) / 2.2);
    let circle = f64::midpoint(outer, over);
    let shapes = through_bolt(-flange, flange, circle, bolt);
    a.bolt.clone_from(&shapes);
    a.part('H', counted("bolt and nut", bolts), at(flange + 0.4 * bolt, circle), shapes);
}

fn seals(a: &mut Assembly, b: &Build) {
    let (end, w) = (b.cover_end, b.wall);
    for s in [Side::Driven, Side::Driver] {
        let hub = b.hubs[s.index()];
        let high = b.lip + 0.5 * (b.lip - hub);
        let ring = [
            (end - 1.9 * w, hub),
            (end + 0.5 * w, hub),
            (end + 0.5 * w, high),
            (end, high),
            (end, b.lip),
            (end - w, b.lip),
            (end - w, high),
            (end - 1.9 * w, high),
        ];
        let shapes = vec![Shape::seal(side(s.sign(), &ring))];
        let inside = at(s.sign() * (end - 0.5 * w), f64::midpoint(hub, b.lip));
        a.twin((s, Side::Driven), 'F', "seal (2)", inside, shapes);
    }
}
