//! Grid coupling: a spring grid woven through slots in the flanges of two hubs, under a cover.
//!
//! Below the axis the cover is off and stands as a phantom: rung j of the grid lies at −R·sin θ,
//! foreshortened by cos θ, loops join neighbours alternately right and left, and the slots flare
//! towards the gap, as t².

use std::f64::consts::{PI, TAU};

use super::assembly::{Assembly, SIDES, Side};
use super::fasteners::plug;
use super::shape::{COVER, HUB, Shape, fillet, side};
use super::{Dim, SectionError};
use crate::geometry::{Point, at};
use crate::ink::{MEDIUM, PHANTOM, Stroke, THIN};

struct Build {
    d: f64,
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
    /// Inside and outside of the cover, its half length and its end walls.
    cover: (f64, f64),
    cover_end: f64,
    wall: f64,
    /// Where the cover's end walls stop over the hubs.
    lip: f64,
}

pub(super) fn build(a: &mut Assembly, slotted: Option<&Dim>) -> Result<(), SectionError> {
    let b = measures(a, slotted)?;
    a.shafts(0.0);
    hubs(a, &b);
    let grid_inside = at(b.face + b.wide * 0.55, b.slot + b.rung / 2.0);
    a.part('D', "grid, spring steel", grid_inside, spring(&b));
    cover(a, &b);
    seals(a, &b);
    let size = (0.085 * b.d).min(0.8 * b.wide);
    let (x, (inner, outer)) = (-(b.face + 0.5 * b.wide), b.cover);
    a.crest = 0.8 * size;
    a.part('J', "grease plug (2)", at(x, outer + 0.4 * size), plug(x, inner, outer, size));
    a.keys(0.0);
    a.write_hubs(b.hubs);
    a.write_outside(b.cover.1, b.face);
    Ok(())
}

fn measures(a: &mut Assembly, slotted: Option<&Dim>) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let round = [("slotted flange", slotted, 0.24), ("cover outside", outside, 0.145)];
    let (hubs, [tip, cover]) = a.radii(0.25, round)?;
    let (d, face, hub) = (a.d, a.half_gap, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let wide = (0.36 * d).min(0.5 * shorter);
    let quarter = TAU * tip / (0.24 * d) / 4.0;
    let slots = 4 * (5..60).find(|n| f64::from(*n) + 0.5 > quarter).unwrap_or(60);
    let depth = (0.13 * d).min(0.6 * (tip - hub));
    let wall = (0.075 * d).min(0.55 * (cover - tip));
    Ok(Build {
        d,
        face,
        hubs,
        tip,
        slot: tip - depth,
        rung: 0.73 * depth,
        wide,
        reach: face + 0.93 * wide,
        slots,
        cover: (cover - wall, cover),
        cover_end: face + wide + (0.16 * d).min(0.3 * shorter),
        wall: 0.93 * wall,
        lip: hub + (0.10 * d).min(0.4 * (tip - hub)),
    })
}

fn hubs(a: &mut Assembly, b: &Build) {
    for s in SIDES {
        let (i, half) = (s.index(), a.half(s));
        let (bore, length, hub) = (half.shaft.mm / 2.0, half.hub_length.mm, b.hubs[s.index()]);
        let (f, c, r) = (b.face, 0.03 * b.d, 0.03 * b.d);
        let (flange, end) = (f + b.wide, f + length);
        let x = |x: f64| s.sign() * x;
        let mut below = vec![(f, 0.0), (f, -b.tip), (flange, -b.tip)];
        below.extend(fillet(flange, -hub, r, (1.0, -1.0)));
        below.extend([(end - c, -hub), (end, -hub + c), (end, 0.0)]);
        let mut above = vec![(f, bore), (f, b.slot), (flange, b.slot)];
        above.extend(fillet(flange, hub, r, (1.0, 1.0)));
        above.extend([(end - c, hub), (end, hub - c), (end, bore)]);
        let behind =
            [(f, b.slot), (f, b.tip - c), (f + c, b.tip), (flange, b.tip), (flange, b.slot)];
        let mut shapes = vec![
            Shape::outside(side(s.sign(), &below)),
            Shape::line((x(flange), -hub), (x(flange), 0.0), MEDIUM),
            Shape::line((x(end - c), -hub), (x(end - c), 0.0), THIN),
        ];
        shapes.extend(slots(b, s));
        shapes.push(Shape::small(side(s.sign(), &behind)));
        shapes.push(Shape::cut(side(s.sign(), &above), HUB[i]));
        let name = format!("hub, {}, slotted", a.machine(s));
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

fn cover(a: &mut Assembly, b: &Build) {
    let ((inner, outer), end, w) = (b.cover, b.cover_end, b.wall);
    let c = (0.06 * b.d).min(0.8 * (outer - b.lip));
    let (inside_end, k) = (end - w, c * 0.5);
    let half =
        [(end, b.lip), (inside_end, b.lip), (inside_end, inner - k), (inside_end - k, inner)];
    let mut outline = side(1.0, &[(end - c, outer), (end, outer - c)]);
    outline.extend(side(1.0, &half));
    let mut mirrored = side(-1.0, &[(end - c, outer), (end, outer - c)]);
    mirrored.extend(side(-1.0, &half));
    outline.extend(mirrored.into_iter().rev());
    let corners = [(end, 0.0), (end, -outer + c), (end - c, -outer)];
    let mut phantom = side(-1.0, &corners);
    phantom.extend(side(1.0, &corners).into_iter().rev());
    let stroke = Stroke::of(THIN).dash(PHANTOM);
    let shapes = vec![Shape::cut(outline, COVER), Shape::Line { points: phantom, stroke }];
    let place = at(b.face + 0.2 * b.wide, f64::midpoint(inner, outer));
    a.part('E', "cover, split; off below the axis", place, shapes);
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
