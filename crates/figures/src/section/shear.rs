//! Elastomer in shear: a rubber tyre whose beads rings clamp to two flanges.
//!
//! The flanges stand back from the faces in the middle of the element, so that rings and beads find
//! room between them; the tyre arches over from one to the other. With a spacer the driver's flange
//! is that of a tube bolted to the driver's hub, and the element stands over the gap at its end.
//! Below the axis it is seen from outside.

use std::f64::consts::PI;

use super::assembly::{Assembly, SIDES, Side, counted};
use super::fasteners::{Tip, bolts_below, centre_line, heights_below, plain_head, through_bolt};
use super::shape::{COVER, HUB, SLEEVE, Shape, block, fillet};
use super::{Rubber, SectionError};
use crate::geometry::{Point, at};
use crate::ink::{MEDIUM, THIN};

mod toothed;

/// x outwards from the middle of the element.
struct Build {
    d: f64,
    /// Where the middle of the element lies.
    middle: f64,
    /// Half the gap that the element bridges.
    face: f64,
    hubs: [f64; 2],
    flange: f64,
    /// Radius of the tyre.
    tyre: f64,
    /// Thickness of the rubber, of a flange, of a ring.
    rubber: f64,
    thick: f64,
    ring: f64,
    /// The flanges' inner faces.
    seat: f64,
    /// Inside of beads and rings.
    bead: f64,
    circle: f64,
    screw: f64,
}

pub(super) fn build(
    a: &mut Assembly,
    rubber: Rubber,
    screws: Option<u32>,
) -> Result<(), SectionError> {
    if rubber == Rubber::Toothed {
        return toothed::build(a);
    }
    let b = measures(a, rubber)?;
    a.shafts(0.0);
    hub(a, &b, Side::Driven);
    match rubber {
        Rubber::Spacer => spacer(a, &b),
        _ => hub(a, &b, Side::Driver),
    }
    let top = at(b.middle, b.tyre - 0.5 * b.rubber);
    a.part('D', "rubber element", top, element(&b));
    rings(a, &b);
    a.bolt = screw(&b, Side::Driver);
    let mut shapes = Vec::new();
    for s in SIDES {
        shapes.extend(screw(&b, s));
        for y in heights_below(b.circle, screws.unwrap_or(6).clamp(2, 48), 0.6 * b.screw) {
            let back = b.middle + s.sign() * (b.seat + b.thick);
            shapes.extend(plain_head(back, s.sign() * 0.62 * b.screw, y, 0.95 * b.screw));
        }
    }
    let head = at(b.middle - (b.seat + b.thick + 0.3 * b.screw), b.circle);
    let name = match screws {
        Some(count) => format!("clamping screw ({count} a side)"),
        None => counted("clamping screw", None),
    };
    a.part('H', name, head, shapes);
    a.keys(0.0);
    a.write_hubs(b.hubs);
    a.write_outside(b.tyre, b.middle);
    Ok(())
}

fn measures(a: &mut Assembly, kind: Rubber) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, [tyre]) = a.radii(0.25, [("element outside", outside, 0.62)])?;
    let (d, hub) = (a.d, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let (middle, face) = if kind == Rubber::Spacer {
        let face = (0.03 * d).min(0.05 * a.half_gap);
        (a.half_gap - face, face)
    } else {
        (0.0, a.half_gap)
    };
    // Half of what the element may take along the shaft: with a spacer, less than half of that.
    let most = if kind == Rubber::Spacer { 0.7 * a.half_gap } else { f64::MAX };
    let room = tyre - hub;
    let (rubber, ring) = ((0.11 * d).min(0.28 * room).min(0.2 * most), (0.08 * d).min(0.15 * most));
    let thick = (0.12 * d).min(0.2 * shorter).min(0.2 * most);
    let seat =
        (rubber + ring + (0.06 * d).min(0.1 * most)).max(face + 0.04 * d).min(face + 0.6 * shorter);
    let (flange, bead) = (hub + 0.6 * room, hub + 0.12 * room);
    let circle = f64::midpoint(bead, flange);
    let screw = (0.1 * d).min(0.3 * (flange - bead));
    Ok(Build {
        d,
        middle,
        face,
        hubs,
        flange,
        tyre,
        rubber,
        thick,
        ring,
        seat,
        bead,
        circle,
        screw,
    })
}

/// Points given outwards from the middle of the element.
fn from_middle(b: &Build, s: Side, points: &[(f64, f64)]) -> Vec<Point> {
    points.iter().map(|(x, y)| at(b.middle + s.sign() * x, *y)).collect()
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
        from_middle(b, s, &points.map(|(x, y)| (x, up * y)))
    };
    let x = |x: f64| b.middle + s.sign() * x;
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

/// The driver's hub with a plain flange, and the tube bolted to it that bears the other flange of
/// the element.
fn spacer(a: &mut Assembly, b: &Build) {
    let half = a.half(Side::Driver);
    let (bore, length, radius) = (half.shaft.mm / 2.0, half.hub_length.mm, b.hubs[0]);
    let (seat, end) = (-a.half_gap, -a.half_gap - length);
    let room = b.middle - b.seat - b.thick - seat;
    let thick = b.thick.min(0.2 * room).min(0.4 * length);
    let (c, round) = ((0.03 * b.d).min(0.1 * length), (0.03 * b.d).min(0.1 * length));
    let outer = b.hubs[0].max(b.hubs[1]);
    let rim = outer + 0.5 * (b.flange - outer);
    let profile = |up: f64, inner: f64| {
        let mut points = vec![(seat, up * inner), (seat, up * rim), (seat - thick, up * rim)];
        points.extend(fillet(seat - thick, up * radius, round, (-1.0, up)));
        points.extend([(end + c, up * radius), (end, up * (radius - c)), (end, up * inner)]);
        points.into_iter().map(|(x, y)| at(x, y)).collect::<Vec<Point>>()
    };
    let shapes = vec![
        Shape::outside(profile(-1.0, 0.0)),
        Shape::line((seat - thick, -radius), (seat - thick, 0.0), MEDIUM),
        Shape::line((end + c, -radius), (end + c, 0.0), THIN),
        Shape::cut(profile(1.0, bore), HUB[0]),
    ];
    let inside = at(seat - 0.66 * length, bore + (radius - bore) * 0.72);
    a.part('B', format!("hub, {}", a.machine(Side::Driver)), inside, shapes);

    let (tip, near, far) = (b.middle - b.face, b.middle - b.seat, b.middle - b.seat - b.thick);
    let (bolt, circle) = ((0.1 * b.d).min(0.4 * (rim - outer)), f64::midpoint(outer, rim));
    let tube = outer.min(circle - 0.95 * bolt);
    let inner = tube - (0.09 * b.d).min(0.4 * tube);
    let outline = |up: f64, inside: f64| {
        [
            (seat, inside),
            (seat, rim),
            (seat + thick, rim),
            (seat + thick, tube),
            (far, tube),
            (far, b.flange),
            (near, b.flange),
            (near, tube),
            (tip, tube),
            (tip, inside),
        ]
        .map(|(x, y)| at(x, up * y))
        .to_vec()
    };
    let mut shapes = vec![
        Shape::outside(outline(-1.0, 0.0)),
        Shape::cut(outline(1.0, inner), COVER),
        Shape::line((seat, inner), (seat, 0.0), MEDIUM),
        Shape::line((tip, inner), (tip, 0.0), MEDIUM),
    ];
    for x in [seat + thick, far] {
        shapes.push(Shape::line((x, -tube), (x, 0.0), MEDIUM));
    }
    shapes.extend(through_bolt(seat - thick, seat + thick, circle, bolt));
    shapes.extend(bolts_below(seat - thick, seat + thick, circle, bolt, 8, Tip::Hidden));
    let inside = at(f64::midpoint(seat + thick, far), f64::midpoint(inner, tube));
    a.part('E', "spacer, bolted to the hub", inside, shapes);
}

/// Half an ellipse over the flanges, from the driven side to the driver's.
fn arch(middle: f64, across: f64, from: f64, to: f64) -> Vec<Point> {
    let point = |step: i32| {
        let (sin, cos) = (PI * f64::from(step) / 16.0).sin_cos();
        at(middle + across * cos, from + (to - from) * sin)
    };
    (0..=16).map(point).collect()
}

/// The tyre: cut above the axis, from outside below it.
fn element(b: &Build) -> Vec<Shape> {
    let (m, inner) = (b.middle, b.seat - b.rubber);
    let mut cut = vec![at(m + b.seat, b.bead)];
    cut.extend(arch(m, b.seat, b.flange, b.tyre));
    cut.extend([at(m - b.seat, b.bead), at(m - inner, b.bead)]);
    cut.extend(arch(m, inner, b.flange, b.tyre - b.rubber).into_iter().rev());
    cut.push(at(m + inner, b.bead));
    let mut below = vec![at(m + b.seat, 0.0)];
    below.extend(arch(m, b.seat, -b.flange, -b.tyre));
    below.push(at(m - b.seat, 0.0));
    vec![Shape::elastomer(cut), Shape::elastomer(below)]
}

fn rings(a: &mut Assembly, b: &Build) {
    let from = b.seat - b.rubber;
    for s in SIDES {
        let x = |x: f64| b.middle + s.sign() * x;
        let outline = block((x(from - b.ring), b.bead), (x(from), b.flange));
        let shapes = vec![Shape::cut(outline, SLEEVE[s.index()])];
        let inside = at(x(from - 0.5 * b.ring), b.bead + 0.8 * (b.flange - b.bead));
        a.twin((s, Side::Driven), 'W', "clamping ring (2)", inside, shapes);
    }
}

/// A screw from behind the flange through the bead into its ring.
fn screw(b: &Build, s: Side) -> Vec<Shape> {
    let x = |x: f64| b.middle + s.sign() * x;
    let (back, tip, r) = (b.seat + b.thick, b.seat - b.rubber - b.ring, b.screw / 2.0);
    let mut shapes = vec![Shape::small(block((x(tip), b.circle - r), (x(back), b.circle + r)))];
    shapes.extend(plain_head(x(back), s.sign() * 0.62 * b.screw, b.circle, 0.95 * b.screw));
    shapes.push(centre_line(x(tip - 0.5 * b.screw), x(back + 1.1 * b.screw), b.circle));
    shapes
}
