//! What lies round the toothed hubs: sleeves, seals, plugs, end rings, spacer.

use super::Build;
use crate::geometry::at;
use crate::hatch::Cut;
use crate::ink::{MEDIUM, THIN};
use crate::section::Sleeves;
use crate::section::assembly::{Assembly, SIDES, Side};
use crate::section::fasteners::{plug, plug_head};
use crate::section::shape::{COVER, SLEEVE, Shape, block, fillet, side};
use crate::section::tube::Tube;

/// A spacer's hatch: neither sleeve's.
const SPACER: Cut = Cut::new(45.0, 1.9);

pub(super) fn build(a: &mut Assembly, b: &Build) {
    if b.sleeves == Sleeves::Spacer {
        spacer(a, b);
    }
    if b.sleeves == Sleeves::Continuous {
        continuous(a, b);
        end_rings(a, b);
    } else {
        for s in b.toothed() {
            flanged(a, b, *s);
        }
    }
    seals(a, b);
}

/// Where the seal's groove begins and ends, and its depth.
fn groove(b: &Build) -> (f64, f64, f64) {
    let thick = b.wall.1 - b.wall.0;
    (b.wall.1 - 0.78 * thick, b.wall.1 - 0.30 * thick, 0.065 * b.d)
}

fn flanged(a: &mut Assembly, b: &Build, s: Side) {
    let (inner, face) = (b.seat, b.seat + b.flange_thick);
    let (c, round, end) = (0.05 * b.d, 0.035 * b.d, b.wall.1);
    let (from, to, depth) = groove(b);
    let lip = b.lips[s.index()];
    let mut below = vec![(inner, 0.0), (inner, -b.flange), (face, -b.flange)];
    below.extend(fillet(face, -b.barrel, round, (1.0, -1.0)));
    below.extend([(end - c, -b.barrel), (end, -b.barrel + c), (end, 0.0)]);
    let mut above = vec![(inner, b.bore), (inner, b.flange), (face, b.flange)];
    above.extend(fillet(face, b.barrel, round, (1.0, 1.0)));
    above.extend([(end - c, b.barrel), (end, b.barrel - c), (end, lip), (to, lip)]);
    above.extend([(to, lip + depth), (from, lip + depth), (from, lip)]);
    above.extend([(b.wall.0, lip), (b.wall.0, b.bore)]);
    let x = |x: f64| s.sign() * x;
    let shapes = vec![
        Shape::outside(side(s.sign(), &below)),
        Shape::line((x(face), -b.barrel), (x(face), 0.0), MEDIUM),
        Shape::line((x(end - c), -b.barrel), (x(end - c), 0.0), THIN),
        Shape::cut(side(s.sign(), &above), SLEEVE[s.index()]),
    ];
    let flange = at(x(f64::midpoint(inner, face)), b.bore + (b.barrel - b.bore) * 0.75);
    let end_wall = at(x(end - 0.5 * (end - b.wall.0)), f64::midpoint(b.barrel, b.bore));
    let half = format!("sleeve, {} half", a.machine(s));
    match (b.sleeves, s) {
        (Sleeves::Spacer, _) => a.twin((s, Side::Driven), 'D', "sleeve (2)", end_wall, shapes),
        (Sleeves::OneEngagement, _) => a.part('D', "sleeve", flange, shapes),
        (_, Side::Driver) => a.part('D', half, flange, shapes),
        (_, Side::Driven) => a.part('E', half, end_wall, shapes),
    }
}

fn spacer(a: &mut Assembly, b: &Build) {
    let end = b.seat - b.gasket;
    let thick = b.flange_thick.min(0.35 * end);
    let outside = b.root.min(b.barrel - 0.1 * (b.flange - b.barrel));
    let tube = Tube {
        ends: [-end, end],
        flanges: [(b.flange, thick); 2],
        outside,
        inside: outside - (0.09 * b.d).min(0.4 * outside),
        cut: SPACER,
    };
    a.part('E', "spacer", tube.inside(), tube.shapes());
}

/// One sleeve over both hubs.
fn continuous(a: &mut Assembly, b: &Build) {
    let (end, c) = (b.wall.1 + 0.05 * b.d, 0.03 * b.d);
    let half = |up: f64, inner: f64| {
        [(end, inner), (end, b.barrel - c), (end - c, b.barrel)].map(|(x, y)| (x, up * y))
    };
    let both = |points: &[(f64, f64)]| {
        let mut outline = side(1.0, points);
        outline.extend(side(-1.0, points).into_iter().rev());
        outline
    };
    let shapes = vec![
        Shape::outside(both(&half(-1.0, 0.0))),
        Shape::line((end - c, -b.barrel), (end - c, 0.0), THIN),
        Shape::line((c - end, -b.barrel), (c - end, 0.0), THIN),
        Shape::cut(both(&half(1.0, b.bore)), SLEEVE[0]),
    ];
    a.part('D', "sleeve", at(0.0, f64::midpoint(b.bore, b.barrel)), shapes);
}

/// What closes a continuous sleeve: rings with the seals in them, held by snap rings.
fn end_rings(a: &mut Assembly, b: &Build) {
    let (from, to, depth) = groove(b);
    let (near, end) = b.wall;
    for s in SIDES {
        let lip = b.lips[s.index()];
        let outline = [
            (near, b.bore),
            (end, b.bore),
            (end, lip),
            (to, lip),
            (to, lip + depth),
            (from, lip + depth),
            (from, lip),
            (near, lip),
        ];
        let (x0, x1) = (s.sign() * end, s.sign() * (end + 0.022 * b.d));
        let snap = block((x0, b.bore - 0.03 * b.d), (x1, b.bore + 0.025 * b.d));
        let shapes = vec![Shape::cut(side(s.sign(), &outline), COVER), Shape::small(snap)];
        let inside = at(s.sign() * f64::midpoint(near, end), 0.6 * b.bore + 0.4 * (lip + depth));
        a.twin((s, Side::Driven), 'W', "end ring with snap ring (2)", inside, shapes);
        let edge = s.sign() * near;
        a.apart(vec![Shape::small(block((edge, 0.0), (x0, -b.bore)))]);
    }
}

fn seals(a: &mut Assembly, b: &Build) {
    let (from, to, depth) = groove(b);
    for s in b.toothed() {
        let (hub, lip, slack) = (b.hubs[s.index()], b.lips[s.index()], 0.006 * b.d);
        let (x0, x1) = (s.sign() * (from + slack), s.sign() * (to - slack));
        let ring = Shape::seal(block((x0, hub), (x1, lip + 0.92 * depth)));
        let inside = at(f64::midpoint(x0, x1), f64::midpoint(hub, lip + depth));
        a.twin((*s, Side::Driver), 'F', &b.named("seal ring"), inside, vec![ring]);
        let outside = lip + 0.92 * depth;
        a.apart(vec![
            Shape::small(block((x0, 0.0), (x1, -outside))),
            Shape::line((x0, hub), (x0, 0.0), THIN),
            Shape::line((x1, hub), (x1, 0.0), THIN),
        ]);
    }
}

pub(super) fn plugs(a: &mut Assembly, b: &Build) {
    let (x, size) = b.plug;
    for s in b.toothed() {
        let x = s.sign() * x;
        let mut shapes = plug(x, b.bore, b.barrel, size);
        shapes.extend(plug_head(x, -0.62 * b.barrel, size));
        let inside = at(x, b.barrel + 0.4 * size);
        a.twin((*s, Side::Driver), 'J', &b.named("grease plug"), inside, shapes);
    }
}
