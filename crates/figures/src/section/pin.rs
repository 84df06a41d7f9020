//! Pin and bush coupling: pins shouldered and nutted in the driver's flange, or in that of a spacer
//! bolted to it, in elastomer bushes in the driven one.

use super::assembly::{Assembly, SIDES, Side, counted};
use super::fasteners::{Tip, bolts_below, centre_line, heights_below, plain_head, through_bolt};
use super::shape::{COVER, HUB, Shape, block, fillet, side};
use super::tube::Tube;
use super::{Middle, SectionError};
use crate::geometry::at;
use crate::ink::{MEDIUM, THIN};

struct Build {
    d: f64,
    /// Where the bushes' flange begins, and where the pins' ends.
    face: f64,
    stand: f64,
    hubs: [f64; 2],
    flange: f64,
    /// Thickness of the flanges: the pins', the bushes'.
    thick: [f64; 2],
    circle: f64,
    pin: f64,
    /// Radius of a bush.
    bush: f64,
}

pub(super) fn build(
    a: &mut Assembly,
    middle: Middle,
    pins: Option<u32>,
) -> Result<(), SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, [flange]) = a.radii(0.30, [("flange outside", outside, 0.56)])?;
    let (d, hub) = (a.d, hubs[0].max(hubs[1]));
    let room = flange - hub;
    let lengths = [a.section.driver.hub_length.mm, a.section.driven.hub_length.mm];
    let b = Build {
        d,
        face: a.half_gap,
        stand: match middle {
            Middle::Bare => -a.half_gap,
            Middle::Spacer => a.half_gap - (0.06 * d).min(0.1 * a.half_gap),
        },
        hubs,
        flange,
        thick: match middle {
            Middle::Bare => [(0.26 * d).min(0.6 * lengths[0]), (0.42 * d).min(0.6 * lengths[1])],
            Middle::Spacer => {
                let least = (0.26 * d).min(0.6 * lengths[0]).min(0.3 * a.half_gap);
                [least, (0.42 * d).min(0.6 * lengths[1])]
            }
        },
        circle: f64::midpoint(hub, flange),
        pin: (0.14 * d).min(0.25 * room),
        bush: (0.2 * d).min(0.36 * room),
    };
    a.shafts(0.0);
    flanges(a, &b, middle);
    if middle == Middle::Spacer {
        spacer(a, &b, pins.unwrap_or(6));
    }
    let bush_inside = at(b.face + 0.6 * b.thick[1], b.circle + 0.8 * b.bush);
    a.part('D', counted("elastomer bush", pins), bush_inside, bush(&b));
    let mut shapes = pin(&b);
    shapes.extend(below(&b, pins.unwrap_or(6)));
    let pin_inside = at(b.stand - 0.5 * b.thick[0], b.circle);
    a.part('H', counted("pin with nut", pins), pin_inside, shapes);
    a.keys(0.0);
    a.write_hubs(b.hubs);
    a.write_outside(b.flange, b.face + b.thick[1]);
    Ok(())
}

fn flanges(a: &mut Assembly, b: &Build, middle: Middle) {
    for s in SIDES {
        let (i, half) = (s.index(), a.half(s));
        let (bore, length, hub) = (half.shaft.mm / 2.0, half.hub_length.mm, b.hubs[i]);
        let (f, flange, c) = (b.face, b.face + b.thick[i], 0.03 * b.d);
        let (end, r) = (f + length, (0.04 * b.d).min(0.2 * (length - b.thick[i])));
        let hole = if s == Side::Driver { b.pin / 2.0 } else { b.bush };
        let mut below = vec![(f, 0.0), (f, -b.flange), (flange, -b.flange)];
        below.extend(fillet(flange, -hub, r, (1.0, -1.0)));
        below.extend([(end - c, -hub), (end, -hub + c), (end, 0.0)]);
        let mut above = vec![(f, bore), (f, b.circle - hole), (flange, b.circle - hole)];
        above.extend(fillet(flange, hub, r, (1.0, 1.0)));
        above.extend([(end - c, hub), (end, hub - c), (end, bore)]);
        let (low, high) = (b.circle + hole, b.flange);
        let rim = [(f, low), (f, high), (flange, high), (flange, low)];
        let x = |x: f64| s.sign() * x;
        let shapes = vec![
            Shape::outside(side(s.sign(), &below)),
            Shape::line((x(flange), -hub), (x(flange), 0.0), MEDIUM),
            Shape::line((x(end - c), -hub), (x(end - c), 0.0), THIN),
            Shape::cut(side(s.sign(), &above), HUB[i]),
            Shape::cut(side(s.sign(), &rim), HUB[i]),
        ];
        let inside = at(x(f + 0.62 * length), bore + (hub - bore) * 0.72);
        match (s, middle) {
            (Side::Driver, Middle::Bare) => a.part('B', "hub that holds the pins", inside, shapes),
            (Side::Driver, Middle::Spacer) => {
                let name = format!("hub, {}", a.machine(s));
                a.part('B', name, inside, shapes);
            }
            (Side::Driven, _) => a.part('C', "hub that holds the bushes", inside, shapes),
        }
    }
}

/// A tube bolted to the driver's hub; its other flange holds the pins.
fn spacer(a: &mut Assembly, b: &Build, count: u32) {
    let (from, to) = (-b.face, b.stand);
    let outside = f64::midpoint(b.hubs[0].max(b.hubs[1]), b.circle - 1.2 * b.pin);
    let near = b.thick[0].min(0.3 * (to - from));
    let tube = Tube {
        ends: [from, to],
        flanges: [(b.flange, 0.6 * near), (b.flange, near)],
        outside,
        inside: outside - (0.09 * b.d).min(0.4 * outside),
        cut: COVER,
    };
    let mut shapes = tube.shapes();
    let (head, nut) = (from - b.thick[0], from + 0.6 * near);
    shapes.extend(through_bolt(head, nut, b.circle, b.pin));
    shapes.extend(bolts_below(head, nut, b.circle, b.pin, count.clamp(2, 48), Tip::Hidden));
    a.part('E', "spacer, bolted to the hub", tube.inside(), shapes);
}

/// A bush in section, on both sides of its pin.
fn bush(b: &Build) -> Vec<Shape> {
    let (from, to) = (b.face + 0.01 * b.d, b.face + 0.98 * b.thick[1]);
    let shank = 0.6 * b.pin;
    [(-b.bush, -shank), (shank, b.bush)]
        .map(|(low, high)| Shape::elastomer(block((from, b.circle + low), (to, b.circle + high))))
        .to_vec()
}

/// A pin: shouldered against the driver's flange, with a nut behind it, a washer over the bush.
fn pin(b: &Build) -> Vec<Shape> {
    let (f, y) = (b.face, b.circle);
    let (stand, nut, washer) = (b.stand, b.stand - b.thick[0], f + b.thick[1]);
    let (thread, shoulder, shank, rim) = (b.pin / 2.0, 0.75 * b.pin, 0.6 * b.pin, 0.8 * b.bush);
    let (step, end) = (stand + 0.6 * (f - stand), washer + 0.06 * b.d);
    let upper = [
        (nut, thread),
        (stand, thread),
        (stand, shoulder),
        (step, shoulder),
        (step, shank),
        (washer, shank),
        (washer, rim),
        (end, rim),
    ];
    let mut outline: Vec<_> = upper.iter().map(|(x, dy)| at(*x, y + dy)).collect();
    outline.extend(upper.iter().rev().map(|(x, dy)| at(*x, y - dy)));
    let high = 0.8 * b.pin;
    let tip = nut - high - 0.35 * b.pin;
    let mut shapes =
        vec![Shape::small(outline), Shape::small(block((nut, y - thread), (tip, y + thread)))];
    shapes.extend(plain_head(nut, -high, y, 0.95 * b.pin));
    shapes.push(centre_line(tip - 0.4 * b.pin, end + 0.5 * b.pin, y));
    shapes
}

/// Nuts, shoulders in the gap and washers of the lower pins, seen from outside.
fn below(b: &Build, count: u32) -> Vec<Shape> {
    let (f, washer) = (b.face, b.face + b.thick[1]);
    let mut shapes = Vec::new();
    for y in heights_below(b.circle, count.clamp(2, 48), 0.6 * b.pin) {
        let (shoulder, rim) = (0.75 * b.pin, 0.8 * b.bush);
        shapes.extend(plain_head(b.stand - b.thick[0], -0.8 * b.pin, y, 0.95 * b.pin));
        shapes.push(Shape::small(block((b.stand, y - shoulder), (f, y + shoulder))));
        shapes.push(Shape::small(block((washer, y - rim), (washer + 0.06 * b.d, y + rim))));
    }
    shapes
}
