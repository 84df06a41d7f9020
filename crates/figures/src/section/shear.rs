//! Elastomer in shear: a rubber tyre whose beads rings clamp to the flanges of two hubs.
//!
//! The flanges stand back from the hub faces, so that rings and beads find room between them; the
//! tyre arches over from one to the other. Below the axis it is seen from outside.

use std::f64::consts::PI;

use super::SectionError;
use super::assembly::{Assembly, SIDES, Side, counted};
use super::fasteners::{centre_line, heights_below, plain_head};
use super::shape::{HUB, SLEEVE, Shape, block, side};
use crate::geometry::{Point, at};
use crate::ink::{MEDIUM, THIN};

struct Build {
    d: f64,
    face: f64,
    hubs: [f64; 2],
    flange: f64,
    /// Radius of the tyre.
    tyre: f64,
    /// Thickness of the rubber, of a flange, of a ring.
    rubber: f64,
    thick: f64,
    ring: f64,
    /// The flanges' inner faces, from the middle of the coupling.
    seat: f64,
    /// Inside of beads and rings.
    bead: f64,
    circle: f64,
    screw: f64,
}

pub(super) fn build(a: &mut Assembly, screws: Option<u32>) -> Result<(), SectionError> {
    let b = measures(a)?;
    a.shafts(0.0);
    for s in SIDES {
        hub(a, &b, s);
    }
    let top = at(0.0, b.tyre - 0.5 * b.rubber);
    a.part('D', "rubber element", top, element(&b));
    rings(a, &b);
    a.bolt = screw(&b, Side::Driver);
    let mut shapes = Vec::new();
    for s in SIDES {
        shapes.extend(screw(&b, s));
        for y in heights_below(b.circle, screws.unwrap_or(6).clamp(2, 48), 0.6 * b.screw) {
            let back = s.sign() * (b.seat + b.thick);
            shapes.extend(plain_head(back, s.sign() * 0.62 * b.screw, y, 0.95 * b.screw));
        }
    }
    let head = at(-(b.seat + b.thick + 0.3 * b.screw), b.circle);
    let name = match screws {
        Some(count) => format!("clamping screw ({count} a side)"),
        None => counted("clamping screw", None),
    };
    a.part('H', name, head, shapes);
    a.keys(0.0);
    a.write_hubs(b.hubs);
    a.write_outside(b.tyre, 0.0);
    Ok(())
}

fn measures(a: &mut Assembly) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, [tyre]) = a.radii(0.25, [("element outside", outside, 0.62)])?;
    let (d, face, hub) = (a.d, a.half_gap, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let room = tyre - hub;
    let (rubber, ring) = ((0.11 * d).min(0.28 * room), 0.08 * d);
    let thick = (0.12 * d).min(0.2 * shorter);
    let seat = (rubber + ring + 0.06 * d).max(face + 0.04 * d).min(face + 0.6 * shorter);
    let (flange, bead) = (hub + 0.6 * room, hub + 0.12 * room);
    let circle = f64::midpoint(bead, flange);
    let screw = (0.1 * d).min(0.3 * (flange - bead));
    Ok(Build { d, face, hubs, flange, tyre, rubber, thick, ring, seat, bead, circle, screw })
}

fn hub(a: &mut Assembly, b: &Build, s: Side) {
    let half = a.half(s);
    let (bore, length, radius) = (half.shaft.mm / 2.0, half.hub_length.mm, b.hubs[s.index()]);
    let (f, near, far) = (b.face, b.seat, b.seat + b.thick);
    let (end, c) = (f + length, (0.03 * b.d).min(0.1 * length));
    let profile = |up: f64, inner: f64| {
        let points = [
            (f, inner),
            (f, radius),
            (near, radius),
            (near, b.flange),
            (far, b.flange),
            (far, radius),
            (end - c, radius),
            (end, radius - c),
            (end, inner),
        ];
        side(s.sign(), &points.map(|(x, y)| (x, up * y)))
    };
    let x = |x: f64| s.sign() * x;
    let edge = |at: f64, weight| Shape::line((x(at), -radius), (x(at), 0.0), weight);
    let shapes = vec![
        Shape::outside(profile(-1.0, 0.0)),
        edge(far, MEDIUM),
        edge(end - c, THIN),
        Shape::cut(profile(1.0, bore), HUB[s.index()]),
    ];
    let inside = at(x(f + 0.66 * length), bore + (radius - bore) * 0.72);
    let letter = if s == Side::Driver { 'B' } else { 'C' };
    a.part(letter, format!("hub, {}", a.machine(s)), inside, shapes);
}

/// Half an ellipse over the flanges, from the driven side to the driver's.
fn arch(across: f64, from: f64, to: f64) -> Vec<Point> {
    let point = |step: i32| {
        let (sin, cos) = (PI * f64::from(step) / 16.0).sin_cos();
        at(across * cos, from + (to - from) * sin)
    };
    (0..=16).map(point).collect()
}

/// The tyre: cut above the axis, from outside below it.
fn element(b: &Build) -> Vec<Shape> {
    let inner = b.seat - b.rubber;
    let mut cut = vec![at(b.seat, b.bead)];
    cut.extend(arch(b.seat, b.flange, b.tyre));
    cut.extend([at(-b.seat, b.bead), at(-inner, b.bead)]);
    cut.extend(arch(inner, b.flange, b.tyre - b.rubber).into_iter().rev());
    cut.push(at(inner, b.bead));
    let mut below = vec![at(b.seat, 0.0)];
    below.extend(arch(b.seat, -b.flange, -b.tyre));
    below.push(at(-b.seat, 0.0));
    vec![Shape::elastomer(cut), Shape::elastomer(below)]
}

fn rings(a: &mut Assembly, b: &Build) {
    let from = b.seat - b.rubber;
    for s in SIDES {
        let x = |x: f64| s.sign() * x;
        let outline = block((x(from - b.ring), b.bead), (x(from), b.flange));
        let shapes = vec![Shape::cut(outline, SLEEVE[s.index()])];
        let inside = at(x(from - 0.5 * b.ring), b.bead + 0.8 * (b.flange - b.bead));
        a.twin((s, Side::Driven), 'W', "clamping ring (2)", inside, shapes);
    }
}

/// A screw from behind the flange through the bead into its ring.
fn screw(b: &Build, s: Side) -> Vec<Shape> {
    let x = |x: f64| s.sign() * x;
    let (back, tip, r) = (b.seat + b.thick, b.seat - b.rubber - b.ring, b.screw / 2.0);
    let mut shapes = vec![Shape::small(block((x(tip), b.circle - r), (x(back), b.circle + r)))];
    shapes.extend(plain_head(x(back), x(0.62 * b.screw), b.circle, 0.95 * b.screw));
    shapes.push(centre_line(x(tip - 0.5 * b.screw), x(back + 1.1 * b.screw), b.circle));
    shapes
}
