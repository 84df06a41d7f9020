//! Jaw coupling: elastomer between the jaws of two hubs.
//!
//! The cut above the axis goes through a jaw of a hub; below it the jaws in sight stand as white
//! blocks in the elastomer, or lie under the ring that holds a wrapped element.

use std::f64::consts::{FRAC_PI_2, PI};

use super::assembly::{Assembly, SIDES, Side, counted};
use super::fasteners::{centre_line, plain_head};
use super::shape::{COVER, HUB, SLEEVE, Shape, block, side};
use super::tube::Tube;
use super::{Elastomer, SectionError};
use crate::geometry::{Point, at};
use crate::ink::{MEDIUM, THICK, THIN};

/// Where jaws and elastomer meet: its middle and half its width.
#[derive(Clone, Copy)]
struct Zone {
    middle: f64,
    half: f64,
    slack: f64,
}

struct Build {
    d: f64,
    element: Elastomer,
    jaws: Option<u32>,
    /// Outside of the jaws, and where they begin over the shaft.
    hub: f64,
    inner: f64,
    /// Inside and outside of the ring round a wrapped element.
    ring: (f64, f64),
    zone: Zone,
}

pub(super) fn build(
    a: &mut Assembly,
    element: Elastomer,
    jaws: Option<u32>,
) -> Result<(), SectionError> {
    let b = measures(a, element, jaws)?;
    a.shafts(0.0);
    for s in SIDES {
        hub(a, &b, s);
    }
    match element {
        Elastomer::Star => {
            let (rubber, jaws) = star(&b, b.zone);
            a.part('D', "elastomer element", rubber.0, rubber.1);
            a.part('J', counted("jaw of B", b.jaws), jaws.0, jaws.1);
        }
        Elastomer::Wrapped => wrapped(a, &b),
        Elastomer::Spacer => spaced(a, &b),
    }
    a.keys(0.0);
    let (radius, x) = match element {
        Elastomer::Wrapped => (b.ring.1, 0.0),
        _ => (b.hub, a.half_gap),
    };
    if element == Elastomer::Wrapped {
        a.write_hubs([b.hub; 2]);
    }
    a.write_outside(radius, x);
    Ok(())
}

fn measures(
    a: &mut Assembly,
    element: Elastomer,
    jaws: Option<u32>,
) -> Result<Build, SectionError> {
    let (hub, ring) = if element == Elastomer::Wrapped {
        let outside = a.section.outside.as_ref();
        let (hubs, [band, ring]) =
            a.radii(0.30, [("element", None, 0.09), ("ring outside", outside, 0.06)])?;
        (hubs[0].max(hubs[1]), (band, ring))
    } else {
        let hub = a.only_radius(0.375)?;
        (hub, (hub, hub))
    };
    let (d, g) = (a.d, a.half_gap);
    let zone = if element == Elastomer::Spacer {
        let half = (0.13 * d).min(0.15 * g);
        Zone { middle: g - half, half, slack: 0.12 * half }
    } else {
        Zone { middle: 0.0, half: g, slack: 0.12 * g }
    };
    let inner = (d / 2.0 * 1.12).min(d / 2.0 + 0.5 * (hub - d / 2.0));
    Ok(Build { d, element, jaws, hub, inner, ring, zone })
}

/// A hub; the cut goes through a jaw of the driver's, with a spacer through one of either.
fn hub(a: &mut Assembly, b: &Build, s: Side) {
    let half = a.half(s);
    let (bore, length, g) = (half.shaft.mm / 2.0, half.hub_length.mm, a.half_gap);
    let (c, end) = ((0.04 * b.d).min(0.3 * length), g + length);
    let x = |x: f64| s.sign() * x;
    let below = [(g, 0.0), (g, -b.hub), (end - c, -b.hub), (end, -b.hub + c), (end, 0.0)];
    let mut above = vec![(g, bore)];
    if s == Side::Driver || b.element == Elastomer::Spacer {
        let tip = g - 2.0 * b.zone.half + b.zone.slack;
        above.extend([(g, b.inner), (tip, b.inner), (tip, b.hub)]);
    } else {
        above.push((g, b.hub));
    }
    above.extend([(end - c, b.hub), (end, b.hub - c), (end, bore)]);
    let shapes = vec![
        Shape::outside(side(s.sign(), &below)),
        Shape::line((x(end - c), -b.hub), (x(end - c), 0.0), THIN),
        Shape::cut(side(s.sign(), &above), HUB[s.index()]),
    ];
    let letter = if s == Side::Driver { 'B' } else { 'C' };
    let inside = at(x(g + 0.6 * length), bore + (b.hub - bore) * 0.6);
    a.part(letter, format!("hub with jaws, {}", a.machine(s)), inside, shapes);
}

/// Shapes of a part, and a place well inside it.
type Placed = (Point, Vec<Shape>);

/// A star, seen edge on in the cut, and the jaws that it lies between below the axis.
fn star(b: &Build, zone: Zone) -> (Placed, Placed) {
    let Zone { middle: m, half: g, slack } = zone;
    let low = 0.16 * b.d;
    let rubber = vec![
        Shape::elastomer(block((m - g + slack, low), (m + g - slack, 0.98 * b.inner))),
        Shape::elastomer(block((m - g, 0.0), (m + g, -0.97 * b.hub))),
    ];
    let inside = at(m + 0.4 * g, f64::midpoint(low, b.inner));
    ((inside, rubber), (at(m, f64::midpoint(b.inner, b.hub)), blocks(b, zone)))
}

/// The jaws of both halves seen from outside, below the axis.
fn blocks(b: &Build, Zone { middle, half, slack }: Zone) -> Vec<Shape> {
    let mut shapes = Vec::new();
    let pitch = PI / f64::from(b.jaws.unwrap_or(6).clamp(2, 12));
    let width = 0.62 * pitch;
    let (mut sign, mut angle) = (-1.0, 0.0);
    while angle <= FRAC_PI_2 + 0.01 {
        // One straight below is seen edge on, and only as a line: left out.
        let from = -b.hub * (angle - width / 2.0).max(0.0).cos();
        let to = -b.hub * (angle + width / 2.0).min(FRAC_PI_2).cos();
        if to - from > 0.03 * b.hub {
            let corner = (middle - sign * (half - slack), to);
            let outline = block((middle + sign * half, from), corner);
            shapes.push(Shape::Solid { outline, cuts: Vec::new(), weight: THICK });
        }
        sign = -sign;
        angle += pitch;
    }
    shapes
}

/// A band over the jaws with blocks between them, held by a ring that screws close.
fn wrapped(a: &mut Assembly, b: &Build) {
    let (g, (band, ring)) = (a.half_gap, b.ring);
    let wide = 0.72 * g;
    let rubber = vec![
        Shape::elastomer(block((-0.94 * g, b.hub), (0.94 * g, band))),
        Shape::elastomer(block((-0.94 * g, 0.0), (0.94 * g, -band))),
    ];
    a.part('D', "elastomer element, open", at(-0.83 * g, f64::midpoint(b.hub, band)), rubber);
    let head = at(0.0, -0.5 * ring);
    let radius = (0.06 * b.d).min(0.4 * wide);
    let holder = vec![
        Shape::cut(block((-wide, band), (wide, ring)), SLEEVE[1]),
        Shape::small(block((-wide, 0.0), (wide, -ring))),
        Shape::Ring { centre: head, radius, weight: MEDIUM, filled: true },
        Shape::line((-0.6 * radius, head.y), (0.6 * radius, head.y), THIN),
    ];
    a.part('W', "ring and its screw", at(0.5 * wide, f64::midpoint(band, ring)), holder);
    let jaw = at(0.0, f64::midpoint(b.inner, b.hub));
    a.part('J', counted("jaw of B", b.jaws), jaw, vec![]);
}

/// A star at each end, and between them a tube with a ring of jaws screwed to either flange.
fn spaced(a: &mut Assembly, b: &Build) {
    let (face, out) = (b.zone.middle - b.zone.half, b.hub);
    let thick = (0.16 * b.d).min(0.2 * face);
    let end = face - thick;
    let outside = 0.72 * out;
    let tube = Tube {
        ends: [-end, end],
        flanges: [(out, thick.min(0.4 * end)); 2],
        outside,
        inside: outside - (0.09 * b.d).min(0.4 * outside),
        cut: COVER,
    };
    let mut shapes = tube.shapes();
    for s in SIDES {
        let (x0, x1) = (s.sign() * end, s.sign() * face);
        shapes.push(Shape::outside(block((x0, 0.0), (x1, -out))));
        shapes.push(Shape::cut(block((x0, tube.inside), (x1, out)), SLEEVE[s.index()]));
        shapes.push(Shape::line((x1, tube.inside), (x1, 0.0), MEDIUM));
    }
    a.part('E', "spacer", tube.inside(), shapes);
    for s in SIDES {
        let zone = Zone { middle: s.sign() * b.zone.middle, ..b.zone };
        let (rubber, jaws) = star(b, zone);
        a.twin((s, Side::Driver), 'D', "elastomer element (2)", rubber.0, rubber.1);
        a.twin((s, Side::Driver), 'J', &counted("jaw of B", b.jaws), jaws.0, jaws.1);
    }
    let bolt = (0.1 * b.d).min(0.3 * (out - outside));
    let y = f64::midpoint(outside, out);
    let mut screws = Vec::new();
    for s in SIDES {
        let x = |x: f64| s.sign() * x;
        let neck = end - tube.flanges[0].1;
        let tip = face - 0.2 * thick;
        screws.push(Shape::small(block((x(neck), y - bolt / 2.0), (x(tip), y + bolt / 2.0))));
        screws.extend(plain_head(x(neck), x(-0.62 * bolt), y, 0.95 * bolt));
        screws.extend(plain_head(x(neck), x(-0.62 * bolt), -y, 0.95 * bolt));
        screws.push(centre_line(x(neck - 1.1 * bolt), x(tip + 0.4 * bolt), y));
    }
    let head = at(-(end - tube.flanges[0].1 - 0.3 * bolt), y);
    a.part('H', "bolt of the jaw rings", head, screws);
}
