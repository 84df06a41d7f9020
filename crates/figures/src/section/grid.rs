//! Grid coupling: a spring grid woven through slots in the flanges of two hubs, under a cover.
//!
//! Below the axis the cover is off and stands as a phantom: rung j of the grid lies at −R·sin θ,
//! foreshortened by cos θ, loops join neighbours alternately right and left, and the slots flare
//! towards the gap, as t². With a spacer the slotted hubs are its two halves, bolted to hubs on
//! the shafts.

use std::f64::consts::{PI, TAU};

use super::assembly::{Assembly, SIDES, Side};
use super::fasteners::{plain_head, plug, through_bolt};
use super::shape::{HUB, SLEEVE, Shape, fillet, side};
use super::{Dim, Middle, SectionError, Split};
use crate::geometry::{Point, at};
use crate::ink::{MEDIUM, Stroke, THIN};

mod cover;

struct Build {
    d: f64,
    split: Split,
    middle: Middle,
    /// Half the gap at the grid.
    face: f64,
    hubs: [f64; 2],
    /// Over the slotted flanges.
    tip: f64,
    /// Bottom of the slots, and the grid's height over it.
    slot: f64,
    rung: f64,
    /// Width of a slotted flange.
    wide: f64,
    /// The grid's half length.
    reach: f64,
    slots: u32,
    /// Inside and outside of the cover, and over what its halves are bolted by.
    cover: (f64, f64, f64),
    /// The cover's half length and its end walls.
    cover_end: f64,
    wall: f64,
    /// Where the cover's end walls stop over the hubs.
    lip: f64,
    /// Thickness of the flanges that hold a spacer.
    thick: f64,
}

pub(super) fn build(
    a: &mut Assembly,
    (split, middle): (Split, Middle),
    slotted: Option<&Dim>,
    bolts: Option<u32>,
) -> Result<(), SectionError> {
    let b = measures(a, (split, middle), slotted)?;
    a.shafts(0.0);
    for s in SIDES {
        match middle {
            Middle::Bare => shaft_hub(a, &b, s),
            Middle::Spacer => spaced(a, &b, s),
        }
    }
    let grid_inside = at(b.face + b.wide * 0.55, b.slot + b.rung / 2.0);
    a.part('D', "grid, spring steel", grid_inside, spring(&b));
    cover::build(a, &b, bolts);
    let size = (0.085 * b.d).min(0.8 * b.wide);
    let (x, (inner, outer, over)) = (-(b.face + 0.5 * b.wide), b.cover);
    a.crest = (outer + 0.8 * size - over).max(0.0);
    a.part('J', "grease plug (2)", at(x, outer + 0.4 * size), plug(x, inner, outer, size));
    a.keys(0.0);
    a.write_hubs(b.hubs);
    a.write_outside(over, b.face);
    Ok(())
}

fn measures(
    a: &mut Assembly,
    (split, middle): (Split, Middle),
    slotted: Option<&Dim>,
) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let round = [("slotted flange", slotted, 0.24), ("cover outside", outside, 0.315)];
    let (hubs, [tip, over]) = a.radii(0.25, round)?;
    // The shell; beyond it lies what its halves are bolted by.
    let cover = tip + 0.46 * (over - tip);
    let (d, hub) = (a.d, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let face = match middle {
        Middle::Bare => a.half_gap,
        Middle::Spacer => (0.03 * d).min(0.1 * a.half_gap),
    };
    let thick = (0.14 * d).min(0.4 * shorter).min(0.2 * a.half_gap);
    // As long as a slotted hub is, the grid's cover and the flange behind it have room on it.
    let length = match middle {
        Middle::Bare => shorter,
        Middle::Spacer => a.half_gap - face - 2.0 * thick,
    };
    let wide = (0.36 * d).min(0.5 * length);
    let quarter = TAU * tip / (0.24 * d) / 4.0;
    let slots = 4 * (5..60).find(|n| f64::from(*n) + 0.5 > quarter).unwrap_or(60);
    let depth = (0.13 * d).min(0.6 * (tip - hub));
    let wall = (0.075 * d).min(0.55 * (cover - tip));
    Ok(Build {
        d,
        split,
        middle,
        face,
        hubs,
        tip,
        slot: tip - depth,
        rung: 0.73 * depth,
        wide,
        reach: face + 0.93 * wide,
        slots,
        cover: (cover - wall, cover, over),
        cover_end: face + wide + (0.16 * d).min(0.3 * length),
        wall: 0.93 * wall,
        lip: hub + (0.10 * d).min(0.4 * (tip - hub)),
        thick,
    })
}

/// A slotted hub on its shaft.
fn shaft_hub(a: &mut Assembly, b: &Build, s: Side) {
    let (half, hub) = (a.half(s), b.hubs[s.index()]);
    let (bore, length) = (half.shaft.mm / 2.0, half.hub_length.mm);
    let (f, end) = (b.face, b.face + length);
    let c = 0.03 * b.d;
    let tail = [(end - c, hub), (end, hub - c)];
    let mut shapes = slotted(b, s, (bore, hub), &tail);
    let x = s.sign() * (end - c);
    shapes.push(Shape::line((x, -hub), (x, 0.0), THIN));
    let name = format!("hub, {}, slotted", a.machine(s));
    let x = |x: f64| s.sign() * x;
    match s {
        Side::Driver => {
            let inside = at(x(f + length * 0.76), bore + (hub - bore) * 0.7);
            a.part('B', name, inside, shapes);
        }
        Side::Driven => {
            let inside = at(x(f + b.wide * 0.45), bore + (b.slot - bore) * 0.55);
            a.part('C', name, inside, shapes);
        }
    }
}

/// A flanged hub on its shaft, and the slotted half of the spacer that is bolted to it.
fn spaced(a: &mut Assembly, b: &Build, s: Side) {
    let (half, hub) = (a.half(s), b.hubs[s.index()]);
    let (bore, length, seat) = (half.shaft.mm / 2.0, half.hub_length.mm, a.half_gap);
    let (behind, end, c) = (seat + b.thick, seat + length, 0.03 * b.d);
    let rim = hub + 0.8 * (b.tip - hub);
    let x = |x: f64| s.sign() * x;
    let profile = |up: f64, inner: f64| {
        let points = [
            (seat, inner),
            (seat, rim),
            (behind, rim),
            (behind, hub),
            (end - c, hub),
            (end, hub - c),
            (end, inner),
        ];
        side(s.sign(), &points.map(|(x, y)| (x, up * y)))
    };
    let shapes = vec![
        Shape::outside(profile(-1.0, 0.0)),
        Shape::line((x(behind), -hub), (x(behind), 0.0), MEDIUM),
        Shape::line((x(end - c), -hub), (x(end - c), 0.0), THIN),
        Shape::cut(profile(1.0, bore), HUB[s.index()]),
    ];
    let letter = if s == Side::Driver { 'B' } else { 'C' };
    let inside = at(x(seat + 0.66 * length), bore + 0.7 * (hub - bore));
    a.part(letter, format!("hub, {}", a.machine(s)), inside, shapes);

    let front = seat - b.thick;
    let mut shapes = slotted(b, s, (0.0, hub), &[(front, hub), (front, rim), (seat, rim)]);
    shapes.push(Shape::line((x(front), -hub), (x(front), 0.0), MEDIUM));
    let bolt = (0.1 * b.d).min(0.4 * (rim - hub));
    let circle = f64::midpoint(hub, rim);
    shapes.extend(through_bolt(x(behind), x(front), circle, bolt));
    shapes.extend(plain_head(x(behind), x(0.62 * bolt), -circle, 0.95 * bolt));
    shapes.extend(plain_head(x(front), x(-0.8 * bolt), -circle, 0.95 * bolt));
    let inside = at(x(0.4 * front), 0.5 * hub);
    a.twin((s, Side::Driver), 'L', "spacer, slotted half (2)", inside, shapes);
}

/// A slotted flange and the barrel behind it, which ends as `tail` says.
fn slotted(b: &Build, s: Side, (bore, hub): (f64, f64), tail: &[(f64, f64)]) -> Vec<Shape> {
    let (f, c, r) = (b.face, 0.03 * b.d, 0.03 * b.d);
    let flange = f + b.wide;
    let end = tail.last().map_or(flange, |(x, _)| *x);
    let below_tail = tail.iter().map(|(x, y)| (*x, -y));
    let mut below = vec![(f, 0.0), (f, -b.tip), (flange, -b.tip)];
    below.extend(fillet(flange, -hub, r, (1.0, -1.0)));
    below.extend(below_tail);
    below.push((end, 0.0));
    let mut above = vec![(f, bore), (f, b.slot), (flange, b.slot)];
    above.extend(fillet(flange, hub, r, (1.0, 1.0)));
    above.extend(tail);
    above.push((end, bore));
    let behind = [(f, b.slot), (f, b.tip - c), (f + c, b.tip), (flange, b.tip), (flange, b.slot)];
    let cut = match b.middle {
        Middle::Bare => HUB[s.index()],
        Middle::Spacer => SLEEVE[s.index()],
    };
    let x = |x: f64| s.sign() * x;
    let mut shapes = vec![
        Shape::outside(side(s.sign(), &below)),
        Shape::line((x(flange), -hub), (x(flange), 0.0), MEDIUM),
    ];
    shapes.extend(slots(b, s));
    shapes.push(Shape::small(side(s.sign(), &behind)));
    shapes.push(Shape::cut(side(s.sign(), &above), cut));
    shapes
}

/// Flanks of the slots seen from outside, below the axis.
fn slots(b: &Build, s: Side) -> Vec<Shape> {
    let mut shapes = Vec::new();
    let pitch = TAU / f64::from(b.slots);
    for slot in 0..b.slots / 4 {
        let middle = pitch * (f64::from(slot) + 0.5);
        for flank in [-1.0, 1.0] {
            let points = (0..=8).map(|step| {
                let t = f64::from(step) / 8.0;
                let angle = middle + flank * PI / f64::from(b.slots) * (0.46 + 0.5 * t * t);
                let height = b.tip * angle.min(PI / 2.0).sin();
                at(s.sign() * (b.face + b.wide * (1.0 - t)), -height)
            });
            let stroke = Stroke::of(THIN).under();
            shapes.push(Shape::Line { points: points.collect(), stroke });
        }
    }
    shapes
}

/// One rung in section above the axis, rungs and loops from outside below it.
fn spring(b: &Build) -> Vec<Shape> {
    let r = b.rung / 2.0;
    let end = |sign: f64| {
        (0..=8).map(move |step| {
            let (sin, cos) = (PI * f64::from(step) / 8.0).sin_cos();
            at(sign * (b.reach + r * sin), b.slot + r - r * cos)
        })
    };
    let mut rung: Vec<Point> = end(1.0).collect();
    rung.extend(end(-1.0).rev());
    let mut shapes = vec![Shape::Ink(rung)];
    let count = b.slots / 4;
    let angle = |j: u32| TAU * (f64::from(j) + 0.5) / f64::from(b.slots);
    let height = |j: u32| -0.965 * b.tip * angle(j).sin();
    let (straight, bow) = (b.reach - 0.03 * b.d, 0.055 * b.d);
    for j in 0..count {
        let width = 0.05 * b.d * angle(j).cos().max(0.24);
        let y = height(j);
        let end = straight + 0.012 * b.d;
        shapes.push(Shape::Bar { points: vec![at(-end, y), at(end, y)], width });
        if j + 1 < count {
            let sign = if j % 2 == 0 { 1.0 } else { -1.0 };
            let (middle, half) = (f64::midpoint(y, height(j + 1)), (y - height(j + 1)) / 2.0);
            let points = (-6..=6).map(|step| {
                let (sin, cos) = (f64::from(step) * PI / 12.0).sin_cos();
                at(sign * (straight + bow * cos), middle + half * sin)
            });
            shapes.push(Shape::Bar { points: points.collect(), width: 0.9 * width });
        }
    }
    shapes
}
