//! Diaphragm coupling: thin steel plates that carry the torque from rim to boss.
//!
//! A diaphragm is bolted by its rim to the flange of a hub, over a spigot; its boss carries the
//! spacer's tube, or is screwed to the other hub where there is one diaphragm alone.

use super::assembly::{Assembly, SIDES, Side, counted};
use super::fasteners::{Tip, bolts_below, through_bolt};
use super::shape::{COVER, HUB, Shape, block, side};
use super::{Packs, SectionError};
use crate::geometry::at;
use crate::ink::{MEDIUM, THIN};

struct Build {
    d: f64,
    face: f64,
    hubs: [f64; 2],
    /// Outside of rim and flange, inside of the rim.
    rim: (f64, f64),
    /// Inside and outside of the boss.
    boss: (f64, f64),
    circle: f64,
    bolt: f64,
    /// Thickness of the flanges.
    thick: f64,
    /// From a hub's face to what the boss carries.
    width: f64,
}

pub(super) fn build(
    a: &mut Assembly,
    packs: &Packs,
    bolts: Option<u32>,
) -> Result<(), SectionError> {
    let b = measures(a, packs)?;
    let two = *packs != Packs::One;
    a.shafts(0.0);
    if two {
        spacer(a, &b);
    }
    for s in SIDES {
        hub(a, &b, s, two || s == Side::Driver);
    }
    let ends = if two { &SIDES[..] } else { &SIDES[..1] };
    let name = if two { "diaphragm (2)" } else { "diaphragm" };
    let mut fasteners = Vec::new();
    for s in ends {
        let x = |x: f64| s.sign() * x;
        let inside = at(x(b.face - 0.3 * b.width), b.rim.1 + 0.12 * (b.rim.0 - b.rim.1));
        a.twin((*s, Side::Driver), 'D', name, inside, diaphragm(&b, *s));
        let (back, near) = (x(b.face + b.thick), x(b.face - 0.6 * b.width));
        fasteners.extend(through_bolt(back, near, b.circle, b.bolt));
        let (left, right) = (back.min(near), back.max(near));
        let count = bolts.unwrap_or(8).clamp(2, 48);
        fasteners.extend(bolts_below(left, right, b.circle, b.bolt, count, Tip::Shown));
    }
    if !two {
        fasteners.extend(boss_screw(&b));
    }
    let back = b.face + b.thick;
    a.bolt = through_bolt(-back, -b.face + 0.6 * b.width, b.circle, b.bolt);
    let each = if two && bolts.is_some() { "rim bolt, each end" } else { "rim bolt" };
    a.part('H', counted(each, bolts), at(-back - 0.3 * b.bolt, b.circle), fasteners);
    let nut = at(-b.face + 0.6 * b.width + 0.4 * b.bolt, b.circle + 0.6 * b.bolt);
    a.part('N', "self-locking nut", nut, vec![]);
    a.keys(0.0);
    a.write_hubs(b.hubs);
    a.write_outside(b.rim.0, b.face + if two { b.thick } else { 0.0 });
    Ok(())
}

fn measures(a: &mut Assembly, packs: &Packs) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, [rim]) = a.radii(0.225, [("flange outside", outside, 0.5)])?;
    let (d, face, hub) = (a.d, a.half_gap, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let width = match packs {
        Packs::One => 2.0 * face,
        Packs::Two { flange_gap } | Packs::Close { flange_gap } => {
            super::disc::between_flanges(a, flange_gap.as_ref(), (0.16 * d).min(0.5 * face))?
        }
    };
    let room = rim - hub;
    let inner = hub + 0.58 * room;
    Ok(Build {
        d,
        face,
        hubs,
        rim: (rim, inner),
        boss: (d / 2.0 + 0.4 * (hub - d / 2.0), hub + 0.3 * room),
        circle: f64::midpoint(inner, rim),
        bolt: (0.12 * d).min(0.45 * (rim - inner)).min(0.4 * face),
        thick: (0.15 * d).min(0.4 * shorter),
        width,
    })
}

/// A hub with a flange out to the rim, or to the boss.
fn hub(a: &mut Assembly, b: &Build, s: Side, rimmed: bool) {
    let half = a.half(s);
    let (bore, length, radius) = (half.shaft.mm / 2.0, half.hub_length.mm, b.hubs[s.index()]);
    let (f, flange, end) = (b.face, b.face + b.thick, b.face + length);
    let c = (0.03 * b.d).min(0.2 * (length - b.thick));
    let top = if rimmed { b.rim.0 } else { b.boss.1 };
    let behind = [(flange, top), (flange, radius), (end - c, radius), (end, radius - c)];
    let profile = |up: f64, inner: f64, front: &[(f64, f64)]| {
        let mut points = vec![(f, up * inner)];
        points.extend(front.iter().chain(&behind).map(|(x, y)| (*x, up * y)));
        points.push((end, up * inner));
        side(s.sign(), &points)
    };
    // The spigot that the rim sits on.
    let (low, high, out) = (b.rim.1 - 0.06 * b.d, b.rim.1, f - 0.14 * b.width);
    let spigot = [(f, low), (out, low), (out, high), (f, high), (f, top)];
    let front: &[(f64, f64)] = if rimmed { &spigot } else { &[(f, top)] };
    let x = |x: f64| s.sign() * x;
    let edge = |at: f64, weight| Shape::line((x(at), -radius), (x(at), 0.0), weight);
    let shapes = vec![
        Shape::outside(profile(-1.0, 0.0, &[(f, top)])),
        edge(flange, MEDIUM),
        edge(end - c, THIN),
        Shape::cut(profile(1.0, bore, front), HUB[s.index()]),
    ];
    let inside = at(x(f + 0.62 * length), bore + (radius - bore) * 0.72);
    let letter = if s == Side::Driver { 'B' } else { 'C' };
    a.part(letter, format!("hub, {}", a.machine(s)), inside, shapes);
    if s == Side::Driver {
        let inside = at(x(f + 0.2 * b.thick), f64::midpoint(low, high));
        a.part('S', "spigot", inside, vec![]);
    }
}

/// Rim, web and boss in section above the axis; the rim edge on below it.
fn diaphragm(b: &Build, s: Side) -> Vec<Shape> {
    let x = |share: f64| s.sign() * (b.face - share * b.width);
    let ((outer, inner), (low, high)) = (b.rim, b.boss);
    // The web thins towards the rim, where there is more of it to share the torque.
    let web = vec![at(x(0.34), high), at(x(0.40), inner), at(x(0.50), inner), at(x(0.56), high)];
    vec![
        Shape::Ink(block((x(0.0), inner), (x(0.6), outer))),
        Shape::Ink(web),
        Shape::Ink(block((x(0.25), low), (x(1.0), high))),
        Shape::Ink(block((x(0.0), 0.0), (x(0.6), -outer))),
    ]
}

/// What holds the boss of a single diaphragm to the driven hub.
fn boss_screw(b: &Build) -> Vec<Shape> {
    let hub = b.hubs[1];
    let size = (0.1 * b.d).min(0.5 * (b.boss.1 - hub));
    let (y, back) = (f64::midpoint(hub, b.boss.1), b.face + b.thick);
    vec![
        Shape::small(block((b.face - 0.6 * b.width, y - size / 2.0), (back, y + size / 2.0))),
        Shape::small(block((back, y - 0.9 * size), (back + 0.62 * size, y + 0.9 * size))),
    ]
}

/// The tube between two bosses; its bore is left open, so that it reads as a tube.
fn spacer(a: &mut Assembly, b: &Build) {
    let (end, outer) = (b.face - b.width, b.boss.1);
    let wall = (0.07 * b.d).min(0.4 * outer);
    let shapes = vec![
        Shape::outside(block((-end, 0.0), (end, -outer))),
        Shape::line((-end, 0.0), (-end, outer - wall), MEDIUM),
        Shape::line((end, 0.0), (end, outer - wall), MEDIUM),
        Shape::cut(block((-end, outer - wall), (end, outer)), COVER),
    ];
    a.part('E', "spacer", at(0.0, outer - 0.5 * wall), shapes);
}
