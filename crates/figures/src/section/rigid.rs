//! Rigid flange coupling: flanges face to face, or with a spacer between, centred by a spigot.
//!
//! The recess is a little deeper than the spigot is high, so that the faces touch; a spacer takes
//! the spigots of both hubs in its bore. A fitted bolt and its hole share one line, a free one
//! stands off it. Shaft ends stand back from the faces.

use super::assembly::{Assembly, SIDES, Side, counted};
use super::fasteners::{Tip, bolts_below, through_bolt};
use super::shape::{COVER, HUB, Shape, side};
use super::tube::Tube;
use super::{Middle, SectionError, Through};
use crate::geometry::at;
use crate::ink::{MEDIUM, THIN};

struct Build {
    through: Through,
    middle: Middle,
    d: f64,
    /// The flanges' faces.
    face: f64,
    hubs: [f64; 2],
    flange: f64,
    thick: f64,
    bolt: f64,
    /// Radius of a bolt's hole.
    hole: f64,
    /// Radius of the bolt circle.
    circle: f64,
    /// Radius of the spigot, and how far it stands out.
    spigot: f64,
    rise: f64,
}

pub(super) fn build(
    a: &mut Assembly,
    through: Through,
    middle: Middle,
    bolts: Option<u32>,
) -> Result<(), SectionError> {
    let b = measures(a, through, middle)?;
    let back = (0.05 * b.d).max(1.4 * b.rise);
    a.shafts(back);
    if middle == Middle::Spacer {
        spacer(a, &b);
    }
    for s in [Side::Driven, Side::Driver] {
        hub(a, s, &b);
    }
    joints(a, &b, bolts);
    let under = (0.06 * b.d).min(0.3 * (b.spigot - b.d / 2.0));
    let (name, x) = match middle {
        Middle::Bare => ("spigot", 0.5 * b.rise),
        Middle::Spacer => ("spigot (2)", 0.5 * b.rise - b.face),
    };
    a.part('S', name, at(x, b.spigot - under), vec![]);
    a.keys(back);
    a.write_hubs(b.hubs);
    a.write_outside(b.flange, b.face + b.thick);
    Ok(())
}

fn measures(a: &mut Assembly, through: Through, middle: Middle) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, [flange]) = a.radii(0.30, [("flange outside", outside, 0.52)])?;
    let (d, hub, face) = (a.d, hubs[0].max(hubs[1]), a.half_gap);
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let room = if middle == Middle::Spacer { 0.35 * face } else { shorter };
    let thick = (0.3 * d).min(0.5 * shorter).min(room);
    let bolt = (0.16 * d).min((flange - hub) * 0.34);
    Ok(Build {
        through,
        middle,
        d,
        face,
        hubs,
        flange,
        thick,
        bolt,
        hole: if through == Through::Fitted { 0.5 * bolt } else { 0.62 * bolt },
        circle: f64::midpoint(hub, flange),
        spigot: d / 2.0 + (hub - d / 2.0) * 0.85,
        rise: (0.06 * d).min(0.2 * thick),
    })
}

fn hub(a: &mut Assembly, s: Side, b: &Build) {
    let half = a.half(s);
    let (bore, length, barrel) = (half.shaft.mm / 2.0, half.hub_length.mm, b.hubs[s.index()]);
    let (c, round) = (0.03 * b.d, (0.05 * b.d).min(0.25 * (b.flange - barrel)));
    let (f, thick) = (b.face, b.face + b.thick);
    let (neck, end) = (thick + round, f + length);
    let (letter, feature, step) = match (b.middle, s) {
        (_, Side::Driver) => ('B', "with spigot", -b.rise),
        (Middle::Spacer, Side::Driven) => ('C', "with spigot", -b.rise),
        (Middle::Bare, Side::Driven) => ('C', "recessed", 1.12 * b.rise),
    };
    let profile = |up: f64| {
        [
            (thick, up * (barrel + round)),
            (neck, up * barrel),
            (end - c, up * barrel),
            (end, up * (barrel - c)),
        ]
    };
    let mut below = vec![(f, 0.0), (f, -b.flange), (thick, -b.flange)];
    below.extend(profile(-1.0));
    below.push((end, 0.0));
    let (low, high) = (b.circle - b.hole, b.circle + b.hole);
    let front = f + step;
    let mut inner = vec![(front, bore), (front, b.spigot), (f, b.spigot), (f, low), (thick, low)];
    inner.extend(profile(1.0));
    inner.push((end, bore));
    let rim = [(f, high), (f, b.flange), (thick, b.flange), (thick, high)];
    let (cut, x) = (HUB[s.index()], |x: f64| s.sign() * x);
    let shapes = vec![
        Shape::outside(side(s.sign(), &below)),
        Shape::line((x(neck), -barrel), (x(neck), 0.0), THIN),
        Shape::line((x(thick), -barrel - round), (x(thick), 0.0), MEDIUM),
        Shape::cut(side(s.sign(), &inner), cut),
        Shape::cut(side(s.sign(), &rim), cut),
    ];
    let inside = at(x(f + 0.62 * length), bore + (barrel - bore) * 0.75);
    a.part(letter, format!("hub, {}, {feature}", a.machine(s)), inside, shapes);
}

/// Its bore takes the spigots.
fn spacer(a: &mut Assembly, b: &Build) {
    let wall = (0.1 * b.d).min(0.6 * (b.circle - b.bolt - b.spigot)).max(0.02 * b.d);
    let tube = Tube {
        ends: [-b.face, b.face],
        flanges: [(b.flange, b.thick); 2],
        outside: b.spigot + wall,
        inside: b.spigot,
        cut: COVER,
    };
    let mut shapes = tube.shapes();
    if b.through == Through::Free {
        for s in SIDES {
            let (x0, x1) = (s.sign() * (b.face - b.thick), s.sign() * b.face);
            let hole = [(x0, b.circle - b.hole), (x1, b.circle + b.hole)];
            shapes.push(Shape::small(super::shape::block(hole[0], hole[1])));
        }
    }
    a.part('E', "spacer", tube.inside(), shapes);
}

fn joints(a: &mut Assembly, b: &Build, bolts: Option<u32>) {
    let (f, count) = (b.face, bolts.unwrap_or(6));
    let ends = match b.middle {
        Middle::Bare => vec![(-b.thick, b.thick)],
        Middle::Spacer => vec![(-f - b.thick, -f + b.thick), (f + b.thick, f - b.thick)],
    };
    let mut fasteners = Vec::new();
    for (index, (head, nut)) in ends.iter().enumerate() {
        fasteners.extend(through_bolt(*head, *nut, b.circle, b.bolt));
        if index == 0 {
            a.bolt.clone_from(&fasteners);
        }
        fasteners.extend(bolts_below(*head, *nut, b.circle, b.bolt, count, Tip::Hidden));
    }
    let name = match (b.through, ends.len()) {
        (Through::Fitted, 1) => "fitted bolt and nut",
        (Through::Free, 1) => "bolt and nut, free",
        (Through::Fitted, _) => "fitted bolt and nut, each end",
        (Through::Free, _) => "bolt and nut, free, each end",
    };
    let head = at(-f - b.thick - 0.3 * b.bolt, b.circle);
    a.part('H', counted(name, bolts), head, fasteners);
}
