//! Gear coupling: crowned teeth on the hubs in toothed sleeves.
//!
//! The sleeve's radial room over the hub's barrel: 12 % to the root of the teeth, 26 % their
//! height. The tip falls away to both ends, drawn stronger than true, or it could not be seen.

use super::assembly::{Assembly, SIDES, Side, counted};
use super::fasteners::{Tip, bolts_below, through_bolt};
use super::shape::{HUB, Shape, block, fillet, side};
use super::{Dim, SectionError, Sleeves};
use crate::geometry::{Point, at};
use crate::ink::{MEDIUM, THIN};

mod sleeves;

/// Radii and lengths that hubs and sleeves share; x outwards from the middle.
struct Build {
    sleeves: Sleeves,
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
    /// Where a sleeve's flange begins.
    seat: f64,
    flange_thick: f64,
    tooth_width: f64,
    gasket: f64,
    /// Where the sleeve's end wall begins and ends.
    wall: (f64, f64),
    plug: (f64, f64),
}

impl Build {
    /// The sides that have teeth.
    fn toothed(&self) -> &'static [Side] {
        if self.sleeves == Sleeves::OneEngagement { &SIDES[..1] } else { &SIDES }
    }

    /// "seal ring (2)".
    fn named(&self, name: &str) -> String {
        counted(name, (self.toothed().len() == 2).then_some(2))
    }
}

pub(super) fn build(
    a: &mut Assembly,
    sleeves: Sleeves,
    sleeve: Option<&Dim>,
    bolts: Option<u32>,
) -> Result<(), SectionError> {
    let b = measures(a, sleeves, sleeve)?;
    a.shafts(0.0);
    hubs(a, &b);
    sleeves::build(a, &b);
    if sleeves != Sleeves::Continuous {
        joints(a, &b, bolts);
    }
    sleeves::plugs(a, &b);
    a.keys(0.0);
    a.write_hubs(b.hubs);
    if sleeves == Sleeves::Continuous {
        a.crest = 0.8 * b.plug.1;
        a.write_outside(b.barrel, 0.0);
    } else {
        let out = if sleeves == Sleeves::OneEngagement { b.face } else { b.seat };
        a.write_outside(b.flange, out + b.flange_thick);
    }
    Ok(())
}

fn measures(
    a: &mut Assembly,
    sleeves: Sleeves,
    sleeve: Option<&Dim>,
) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, barrel, flange) = if sleeves == Sleeves::Continuous {
        let (hubs, [barrel]) = a.radii(0.23, [("sleeve outside", sleeve.or(outside), 0.38)])?;
        (hubs, barrel, barrel)
    } else {
        let round = [("sleeve outside", sleeve, 0.38), ("flange outside", outside, 0.30)];
        let (hubs, [barrel, flange]) = a.radii(0.23, round)?;
        (hubs, barrel, flange)
    };
    let (d, face, hub) = (a.d, a.half_gap, hubs[0].max(hubs[1]));
    let lengths = [a.section.driver.hub_length.mm, a.section.driven.hub_length.mm];
    let shorter = match sleeves {
        Sleeves::OneEngagement => lengths[0],
        _ => lengths[0].min(lengths[1]),
    };
    let tooth = (barrel - hub) * 0.26;
    let root = hub + (barrel - hub) * 0.12;
    let tooth_width = (0.40 * d).min(0.46 * shorter);
    let wall_thick = (0.12 * d).min(0.3 * shorter);
    // If the hub is too short for teeth, space and wall, the wall moves in to the hub's end.
    let spare = if sleeves == Sleeves::Continuous { 0.09 } else { 0.02 };
    let end = (face + tooth_width + 0.17 * d + wall_thick).min(face + shorter - spare * d);
    let wall = (end - wall_thick, end);
    let gasket = (0.012 * d).max(0.8).min(0.9 * (2.0 * face).max(0.05 * d));
    let seat = match sleeves {
        Sleeves::Flanged | Sleeves::Continuous => gasket / 2.0,
        Sleeves::OneEngagement => gasket - face,
        Sleeves::Spacer => face - (0.03 * d).min(0.15 * face),
    };
    Ok(Build {
        sleeves,
        d,
        face,
        hubs,
        barrel,
        root,
        tooth,
        bore: root + tooth + (0.012 * d).min(0.1 * (barrel - hub)),
        lips: hubs.map(|hub| hub + (0.012 * d).min(0.1 * (barrel - hub))),
        flange,
        seat,
        flange_thick: (0.15 * d).min(0.4 * (end - seat)).min(0.5 * lengths[1]),
        tooth_width,
        gasket,
        wall,
        plug: (f64::midpoint(face + tooth_width, wall.0), (0.085 * d).min(0.8 * (barrel - hub))),
    })
}

fn hubs(a: &mut Assembly, b: &Build) {
    for s in SIDES {
        if b.toothed().contains(&s) {
            toothed(a, b, s);
        } else {
            rigid(a, b, s);
        }
    }
    let inside = at(-(b.face + b.tooth_width / 2.0), b.root + b.tooth / 2.0);
    a.part('T', "crowned teeth", inside, vec![]);
}

fn toothed(a: &mut Assembly, b: &Build, s: Side) {
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
        Side::Driver => ('B', b.tooth_width + (length - b.tooth_width) * 0.6, 0.7 * (hub - bore)),
        Side::Driven => ('C', b.tooth_width * 0.55, 0.72 * (b.root - bore)),
    };
    a.part(letter, format!("hub, {}", a.machine(s)), at(x(f + share), bore + up), shapes);
    a.apart(teeth(b, s));
}

/// A hub without teeth, its flange at its face.
fn rigid(a: &mut Assembly, b: &Build, s: Side) {
    let (half, radius) = (a.half(s), b.hubs[s.index()]);
    let (bore, length) = (half.shaft.mm / 2.0, half.hub_length.mm);
    let (f, flange, end) = (b.face, b.face + b.flange_thick, b.face + length);
    let c = (0.03 * b.d).min(0.2 * (length - b.flange_thick));
    let round = (0.04 * b.d).min(0.2 * (length - b.flange_thick));
    let profile = |inner: f64, up: f64| {
        let mut points = vec![(f, up * inner), (f, up * b.flange), (flange, up * b.flange)];
        points.extend(fillet(flange, up * radius, round, (1.0, up)));
        points.extend([(end - c, up * radius), (end, up * (radius - c)), (end, up * inner)]);
        side(s.sign(), &points)
    };
    let x = |x: f64| s.sign() * x;
    let shapes = vec![
        Shape::outside(profile(0.0, -1.0)),
        Shape::line((x(flange), -radius), (x(flange), 0.0), MEDIUM),
        Shape::line((x(end - c), -radius), (x(end - c), 0.0), THIN),
        Shape::cut(profile(bore, 1.0), HUB[s.index()]),
    ];
    let inside = at(x(f + 0.66 * length), bore + 0.7 * (radius - bore));
    a.part('C', format!("hub, {}, rigid", a.machine(s)), inside, shapes);
}

/// Teeth seen from outside; in their sleeve it covers them.
fn teeth(b: &Build, s: Side) -> Vec<Shape> {
    let (x0, x1) = (s.sign() * b.face, s.sign() * (b.face + b.tooth_width));
    let tip = b.root + 0.8 * b.tooth;
    let mut shapes = vec![Shape::small(block((x0, 0.0), (x1, -tip)))];
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

/// Gaskets and bolts: one joint in the middle, or one at each end of a spacer.
fn joints(a: &mut Assembly, b: &Build, bolts: Option<u32>) {
    let (thick, count) = (b.flange_thick, bolts.unwrap_or(8));
    let bolt = (0.13 * b.d).min((b.flange - b.barrel) / 2.4);
    let circle = f64::midpoint(b.barrel, b.flange);
    // Each joint from its left gasket face to its right one.
    let faces = match b.sleeves {
        Sleeves::Spacer => {
            vec![(-b.seat, -b.seat + b.gasket), (b.seat - b.gasket, b.seat)]
        }
        Sleeves::OneEngagement => vec![(-b.seat, b.face)],
        _ => vec![(-b.seat, b.seat)],
    };
    let inside = |(from, to)| at(f64::midpoint(from, to), b.flange - 0.05 * b.d);
    if let [one] = faces[..] {
        a.part('G', "gasket", inside(one), gasket(b, one));
    } else {
        for (s, face) in SIDES.into_iter().zip(&faces) {
            a.twin((s, Side::Driver), 'G', "gasket (2)", inside(*face), gasket(b, *face));
        }
    }
    let mut fasteners = Vec::new();
    for (index, (from, to)) in faces.iter().enumerate() {
        let ends = (from - thick, to + thick);
        // Heads on the hubs' side, nuts where the spacer leaves room for the spanner.
        let (head, nut) = if index == 0 { ends } else { (ends.1, ends.0) };
        fasteners.extend(through_bolt(head, nut, circle, bolt));
        if index == 0 {
            a.bolt.clone_from(&fasteners);
        }
        fasteners.extend(bolts_below(head, nut, circle, bolt, count, Tip::Shown));
    }
    let each = if faces.len() == 2 && bolts.is_some() {
        "bolt and nut, each flange"
    } else {
        "bolt and nut"
    };
    let nut = at(faces[0].1 + thick + 0.4 * bolt, circle);
    a.part('H', counted(each, bolts), nut, fasteners);
}

/// In section above the axis, its edge below it.
fn gasket(b: &Build, (from, to): (f64, f64)) -> Vec<Shape> {
    let edge = b.flange - 0.02 * b.d;
    vec![Shape::Ink(block((from, b.bore), (to, edge))), Shape::Ink(block((from, 0.0), (to, -edge)))]
}
