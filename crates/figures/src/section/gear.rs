//! Gear coupling: crowned teeth on the hubs in two flanged sleeves.
//!
//! The sleeve's radial room over the hub's barrel: 12 % to the root of the teeth, 26 % their
//! height. The tip falls away to both ends, drawn stronger than true, or it could not be seen.

use super::SectionError;
use super::assembly::{Assembly, SIDES, Side, counted};
use super::fasteners::{Tip, bolts_below, plug, plug_head, through_bolt};
use super::shape::{HUB, SLEEVE, Shape, fillet, side};
use crate::geometry::{Point, at};
use crate::ink::{MEDIUM, THIN};

/// Radii and lengths that hubs and sleeves share.
struct Build {
    d: f64,
    face: f64,
    hubs: [f64; 2],
    /// Of the sleeve's barrel.
    barrel: f64,
    root: f64,
    tooth: f64,
    /// Of the sleeve's bore.
    bore: f64,
    /// Of the lip that runs close over the hub.
    lips: [f64; 2],
    flange: f64,
    flange_thick: f64,
    tooth_width: f64,
    gasket: f64,
    /// Where the sleeve's end wall begins and ends.
    wall: (f64, f64),
    plug: (f64, f64),
}

pub(super) fn build(
    a: &mut Assembly,
    sleeve: Option<&super::Dim>,
    bolts: Option<u32>,
) -> Result<(), SectionError> {
    let b = measures(a, sleeve)?;
    let bolt = (0.13 * b.d).min((b.flange - b.barrel) / 2.4);
    let circle = f64::midpoint(b.barrel, b.flange);
    let (nut, count) = (b.gasket / 2.0 + b.flange_thick, bolts.unwrap_or(8));

    a.shafts(0.0);
    hubs(a, &b);
    sleeves(a, &b);
    seals(a, &b);
    let edge = b.flange - 0.02 * b.d;
    let (g, bore) = (b.gasket / 2.0, b.bore);
    let gasket = vec![
        Shape::Ink(super::shape::block((-g, bore), (g, edge))),
        Shape::Ink(super::shape::block((-g, 0.0), (g, -edge))),
    ];
    a.part('G', "gasket", at(0.0, b.flange - 0.05 * b.d), gasket);
    let mut fasteners = through_bolt(-nut, nut, circle, bolt);
    a.bolt.clone_from(&fasteners);
    fasteners.extend(bolts_below(-nut, nut, circle, bolt, count, Tip::Shown));
    a.part('H', counted("bolt and nut", bolts), at(nut + 0.4 * bolt, circle), fasteners);
    plugs(a, &b);
    a.keys(0.0);
    a.write_hubs(b.hubs);
    a.write_outside(b.flange, nut);
    Ok(())
}

fn measures(a: &mut Assembly, sleeve: Option<&super::Dim>) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let round = [("sleeve outside", sleeve, 0.38), ("flange outside", outside, 0.30)];
    let (hubs, [barrel, flange]) = a.radii(0.23, round)?;
    let (d, face, hub) = (a.d, a.half_gap, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let tooth = (barrel - hub) * 0.26;
    let root = hub + (barrel - hub) * 0.12;
    let tooth_width = (0.40 * d).min(0.46 * shorter);
    let wall_thick = (0.12 * d).min(0.3 * shorter);
    // If the hub is too short for teeth, space and wall, the wall moves in to the hub's end.
    let end = (face + tooth_width + 0.17 * d + wall_thick).min(face + shorter - 0.02 * d);
    let wall = (end - wall_thick, end);
    let gasket = (0.012 * d).max(0.8).min(0.9 * (2.0 * face).max(0.05 * d));
    Ok(Build {
        d,
        face,
        hubs,
        barrel,
        root,
        tooth,
        bore: root + tooth + (0.012 * d).min(0.1 * (barrel - hub)),
        lips: hubs.map(|hub| hub + (0.012 * d).min(0.1 * (barrel - hub))),
        flange,
        flange_thick: (0.15 * d).min(0.4 * end),
        tooth_width,
        gasket,
        wall,
        plug: (f64::midpoint(face + tooth_width, wall.0), (0.085 * d).min(0.8 * (barrel - hub))),
    })
}

fn hubs(a: &mut Assembly, b: &Build) {
    for s in SIDES {
        let (i, half) = (s.index(), a.half(s));
        let (length, bore, hub) = (half.hub_length.mm, half.shaft.mm / 2.0, b.hubs[s.index()]);
        let (f, c, end) = (b.face, 0.03 * b.d, b.face + length);
        let teeth_end = f + b.tooth_width;
        let x = |x: f64| s.sign() * x;
        let profile = |inner: f64, up: f64| {
            let radii = [inner, b.root, b.root, hub, hub, hub - c, inner].map(|r| r * up);
            let xs = [f, f, teeth_end, teeth_end, end - c, end, end];
            side(s.sign(), &std::array::from_fn::<_, 7, _>(|k| (xs[k], radii[k])))
        };
        let shapes = vec![
            Shape::outside(profile(0.0, -1.0)),
            Shape::line((x(end - c), -hub), (x(end - c), 0.0), THIN),
            Shape::line((x(teeth_end), -hub), (x(teeth_end), 0.0), MEDIUM),
            Shape::cut(profile(bore, 1.0), HUB[i]),
            Shape::Ink(crown(b, s)),
        ];
        let (letter, share, up) = match s {
            Side::Driver => {
                ('B', b.tooth_width + (length - b.tooth_width) * 0.6, 0.7 * (hub - bore))
            }
            Side::Driven => ('C', b.tooth_width * 0.55, 0.72 * (b.root - bore)),
        };
        a.part(letter, format!("hub, {}", a.machine(s)), at(x(f + share), bore + up), shapes);
        a.apart(teeth(b, s));
    }
    let inside = at(-(b.face + b.tooth_width / 2.0), b.root + b.tooth / 2.0);
    a.part('T', "crowned teeth", inside, vec![]);
}

/// Teeth seen from outside; in their sleeve it covers them.
fn teeth(b: &Build, s: Side) -> Vec<Shape> {
    let (x0, x1) = (s.sign() * b.face, s.sign() * (b.face + b.tooth_width));
    let tip = b.root + 0.8 * b.tooth;
    let mut shapes = vec![Shape::small(super::shape::block((x0, 0.0), (x1, -tip)))];
    for tooth in 0..10 {
        let y = -tip * (std::f64::consts::TAU * (f64::from(tooth) + 0.25) / 40.0).sin();
        shapes.push(Shape::hair((x0, y), (x1, y), THIN));
    }
    shapes
}

/// One row of teeth in section: its tip a parabola that falls by a fifth of its height.
fn crown(b: &Build, s: Side) -> Vec<Point> {
    let x = |share: f64| s.sign() * (b.face + b.tooth_width * share);
    let mut outline = vec![at(x(0.0), b.root)];
    outline.extend((0..=16).map(|step| {
        let share = f64::from(step) / 16.0;
        at(x(share), b.root + b.tooth * (1.0 - 0.22 * (2.0 * share - 1.0).powi(2)))
    }));
    outline.push(at(x(1.0), b.root));
    outline
}

/// Where the seal's groove begins and ends, and its depth.
fn groove(b: &Build) -> (f64, f64, f64) {
    let thick = b.wall.1 - b.wall.0;
    (b.wall.1 - 0.78 * thick, b.wall.1 - 0.30 * thick, 0.065 * b.d)
}

fn sleeves(a: &mut Assembly, b: &Build) {
    let (inner, face) = (b.gasket / 2.0, b.gasket / 2.0 + b.flange_thick);
    let (c, round, end) = (0.05 * b.d, 0.035 * b.d, b.wall.1);
    let (from, to, depth) = groove(b);
    for s in SIDES {
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
        let high = b.bore + (b.barrel - b.bore) * 0.75;
        match s {
            Side::Driver => {
                let inside = at(x(f64::midpoint(inner, face)), high);
                a.part('D', format!("sleeve, {} half", a.machine(s)), inside, shapes);
            }
            Side::Driven => {
                let inside = at(x(end - 0.5 * (end - b.wall.0)), f64::midpoint(b.barrel, b.bore));
                a.part('E', format!("sleeve, {} half", a.machine(s)), inside, shapes);
            }
        }
    }
}

fn seals(a: &mut Assembly, b: &Build) {
    let (from, to, depth) = groove(b);
    for s in SIDES {
        let (hub, lip, slack) = (b.hubs[s.index()], b.lips[s.index()], 0.006 * b.d);
        let (x0, x1) = (s.sign() * (from + slack), s.sign() * (to - slack));
        let ring = Shape::seal(super::shape::block((x0, hub), (x1, lip + 0.92 * depth)));
        let inside = at(f64::midpoint(x0, x1), f64::midpoint(hub, lip + depth));
        a.twin((s, Side::Driver), 'F', "seal ring (2)", inside, vec![ring]);
        let outside = lip + 0.92 * depth;
        a.apart(vec![
            Shape::small(super::shape::block((x0, 0.0), (x1, -outside))),
            Shape::line((x0, hub), (x0, 0.0), THIN),
            Shape::line((x1, hub), (x1, 0.0), THIN),
        ]);
    }
}

fn plugs(a: &mut Assembly, b: &Build) {
    let (x, size) = b.plug;
    for s in SIDES {
        let x = s.sign() * x;
        let mut shapes = plug(x, b.bore, b.barrel, size);
        shapes.extend(plug_head(x, -0.62 * b.barrel, size));
        let inside = at(x, b.barrel + 0.4 * size);
        a.twin((s, Side::Driver), 'J', "grease plug (2)", inside, shapes);
    }
}
