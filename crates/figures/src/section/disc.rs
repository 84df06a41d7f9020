//! Disc coupling: packs of thin steel between flanges, bolted to each by turns.
//!
//! A bolt has a tight hole in the flange that holds it and a wide one in the other, where its nut
//! stands free. The cut shows a bolt held by the hub; below the axis each bolt stands on the side
//! that its own number gives, counted round, never mirrored: opposite bolts are on different
//! sides for six, on the same side for four and eight.

use super::assembly::{Assembly, SIDES, Side, counted};
use super::joint::{Joint, bolted, lower_bolt};
use super::shape::{COVER, HUB, Shape, block, fillet, side};
use super::{Dim, Packs, SectionError};
use crate::geometry::at;
use crate::ink::{MEDIUM, THIN};

mod close;

pub(super) fn build(
    a: &mut Assembly,
    packs: &Packs,
    bolts: Option<u32>,
) -> Result<(), SectionError> {
    let (hubs, joint) = measures(a, packs, bolts)?;
    let two = *packs != Packs::One;
    a.shafts(0.0);
    match packs {
        Packs::Close { .. } => close::build(a, hubs, &joint),
        Packs::One | Packs::Two { .. } => {
            if two {
                spacer(a, &joint);
            }
            for s in SIDES {
                hub(a, s, hubs[s.index()], &joint, two);
            }
        }
    }
    let name = if two { "disc pack (2)" } else { "disc pack" };
    for (gap, side) in joint.gaps(two, a.between).into_iter().zip(SIDES) {
        let low = f64::midpoint(joint.pack.0, joint.circle - joint.bolt / 2.0);
        let inside = at(f64::midpoint(gap.0, gap.1), low);
        a.twin((side, Side::Driver), 'D', name, inside, pack(&joint, gap));
    }
    all_bolts(a, &joint, two, bolts);
    a.keys(0.0);
    a.write_hubs(hubs);
    a.write_outside(joint.flange, a.between[1] + joint.thick);
    a.joint = Some(joint);
    Ok(())
}

fn measures(
    a: &mut Assembly,
    packs: &Packs,
    bolts: Option<u32>,
) -> Result<([f64; 2], Joint), SectionError> {
    let outside = a.section.outside.as_ref();
    let share = if matches!(packs, Packs::Close { .. }) { 0.48 } else { 0.34 };
    let (hubs, [flange]) = a.radii(0.225, [("flange outside", outside, share)])?;
    let (d, hub) = (a.d, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let full = a.section.gap.mm;
    let width = match packs {
        Packs::One => full,
        Packs::Two { flange_gap } | Packs::Close { flange_gap } => {
            between_flanges(a, flange_gap.as_ref(), (0.17 * d).min(0.25 * full))?
        }
    };
    let thick = match packs {
        Packs::One => (0.16 * d).min(0.5 * shorter),
        Packs::Two { .. } => (0.16 * d).min(0.5 * shorter).min(0.3 * (full - 2.0 * width)),
        Packs::Close { .. } => close::turned(a, (0.16 * d).min(0.4 * shorter))?,
    };
    // Round hubs that are turned inwards the spacer's tube takes the lower part of the room.
    let low = if matches!(packs, Packs::Close { .. }) { hub + 0.3 * (flange - hub) } else { hub };
    let bolt = (0.145 * d).min((flange - low) * 0.32);
    let circle = f64::midpoint(low, flange) + 0.02 * (flange - low);
    let least = if low > hub { low } else { d / 2.0 + 0.3 * (hub - d / 2.0) };
    let pack = ((circle - 0.21 * d).max(least), (circle + 0.17 * d).min(flange));
    let joint = Joint {
        d,
        hub: low,
        flange,
        circle,
        bolt,
        thick,
        width,
        pack,
        bolts: bolts.unwrap_or(6).clamp(4, 16),
        far: if *packs == Packs::One { 'C' } else { 'E' },
    };
    Ok((hubs, joint))
}

/// What lies between the flanges that hold a pack or a diaphragm, as given or as assumed; both are
/// written, and the seats that it is measured from known only where it was given.
pub(super) fn between_flanges(
    a: &mut Assembly,
    given: Option<&Dim>,
    assumed: f64,
) -> Result<f64, SectionError> {
    let dim = given.cloned().unwrap_or_else(|| a.assumed(assumed));
    length("the gap between flanges", dim.mm)?;
    let full = a.section.gap.mm;
    super::check::order(("two flange gaps", 2.0 * dim.mm), ("the gap", full))?;
    a.edges.assumed |= dim.known == super::Known::Assumed;
    if dim.known != super::Known::Assumed {
        a.edges.xs.push(full / 2.0 - dim.mm);
    }
    let mm = dim.mm;
    a.flange_gap = Some(dim);
    Ok(mm)
}

fn length(what: &'static str, mm: f64) -> Result<(), SectionError> {
    if mm.is_finite() && mm > 0.0 { Ok(()) } else { Err(SectionError::Size { what, mm }) }
}

fn hub(a: &mut Assembly, s: Side, radius: f64, j: &Joint, two: bool) {
    let half = a.half(s);
    let (bore, length) = (half.shaft.mm / 2.0, half.hub_length.mm);
    let (f, c) = (a.half_gap, (0.03 * a.d).min(0.2 * (length - j.thick)));
    let (flange, end) = (f + j.thick, f + length);
    let r = (0.04 * a.d).min(0.2 * (length - j.thick));
    let hole = if two || s == Side::Driver { j.bolt / 2.0 } else { j.wide_hole() };
    let mut below = vec![(f, 0.0), (f, -j.flange), (flange, -j.flange)];
    below.extend(fillet(flange, -radius, r, (1.0, -1.0)));
    below.extend([(end - c, -radius), (end, -radius + c), (end, 0.0)]);
    let (low, high) = (j.circle - hole, j.circle + hole);
    let mut above = vec![(f, bore), (f, low), (flange, low)];
    above.extend(fillet(flange, radius, r, (1.0, 1.0)));
    above.extend([(end - c, radius), (end, radius - c), (end, bore)]);
    let rim = [(f, high), (f, j.flange), (flange, j.flange), (flange, high)];
    let x = |x: f64| s.sign() * x;
    let cut = HUB[s.index()];
    let shapes = vec![
        Shape::outside(side(s.sign(), &below)),
        Shape::line((x(flange), -radius), (x(flange), 0.0), MEDIUM),
        Shape::line((x(end - c), -radius), (x(end - c), 0.0), THIN),
        Shape::cut(side(s.sign(), &above), cut),
        Shape::Blank(block((x(f), low), (x(flange), high))),
        Shape::cut(side(s.sign(), &rim), cut),
        Shape::line((x(f), low), (x(f), high), MEDIUM),
        Shape::line((x(flange), low), (x(flange), high), MEDIUM),
    ];
    let inside = at(x(f + 0.62 * length), bore + (radius - bore) * 0.72);
    let letter = if s == Side::Driver { 'B' } else { 'C' };
    a.part(letter, format!("hub, {}", a.machine(s)), inside, shapes);
}

/// The tube between two packs; its bore is left open, so that it reads as a tube.
fn spacer(a: &mut Assembly, j: &Joint) {
    let (x, d) = (a.half_gap - j.width, a.d);
    let tube = j.hub.min(j.circle - 0.26 * d).max(j.circle - 0.9 * (j.circle - d / 4.0));
    let (bore, hole, flange) = (tube - 0.07 * d, j.wide_hole(), x - j.thick);
    let r = (0.03 * d).min(0.3 * flange.max(0.0));
    let half = |up: f64, inner: f64, outer: f64| {
        let mut points = vec![(x, up * inner), (x, up * outer), (flange, up * outer)];
        points.extend(fillet(flange, up * tube, r, (-1.0, up)));
        points
    };
    let both = |points: &[(f64, f64)]| {
        let mut outline = side(-1.0, points);
        outline.extend(side(1.0, points).into_iter().rev());
        outline
    };
    let (low, high) = (j.circle - hole, j.circle + hole);
    let mut shapes = vec![
        Shape::outside(both(&half(-1.0, 0.0, j.flange))),
        Shape::cut(both(&half(1.0, bore, low)), COVER),
    ];
    for s in SIDES {
        let x = |x: f64| s.sign() * x;
        let edge = a.half_gap - j.width;
        shapes.extend([
            Shape::line((x(flange), -tube), (x(flange), 0.0), MEDIUM),
            Shape::Blank(block((x(flange), low), (x(edge), high))),
            Shape::cut(block((x(flange), high), (x(edge), j.flange)), COVER),
            Shape::line((x(edge), bore), (x(edge), 0.0), MEDIUM),
            Shape::line((x(flange), low), (x(flange), high), MEDIUM),
            Shape::line((x(edge), low), (x(edge), high), MEDIUM),
        ]);
    }
    a.part('E', "spacer", at(0.0, tube - 0.035 * d), shapes);
}

/// A pack: cut above the axis on both sides of its bolt, seen from outside below it.
fn pack(j: &Joint, (from, to): (f64, f64)) -> Vec<Shape> {
    let washer = j.washer();
    let (x0, x1) = (from + washer, to - washer);
    let sheet = |low: f64, high: f64| Shape::Laminations { from: at(x0, low), to: at(x1, high) };
    vec![
        sheet(j.pack.0, j.circle - j.bolt / 2.0),
        sheet(j.circle + j.bolt / 2.0, j.pack.1),
        sheet(-j.pack.1, -0.55 * j.pack.0),
    ]
}

fn all_bolts(a: &mut Assembly, j: &Joint, two: bool, bolts: Option<u32>) {
    let mut shapes = Vec::new();
    let gaps = j.gaps(two, a.between);
    for (index, gap) in gaps.iter().enumerate() {
        // Each pack's cut bolt is held by the hub beside it.
        let held = if index == 0 { Side::Driver } else { Side::Driven };
        shapes.extend(bolted(j, *gap, held));
        shapes.extend(lower_bolt(j, *gap, held));
    }
    let first = gaps[0];
    a.bolt = bolted(j, first, Side::Driver);
    let each = if two && bolts.is_some() { " each pack" } else { "" };
    let name = match bolts {
        Some(count) => format!("bolt ({count}{each})"),
        None => counted("bolt", None),
    };
    let head = at(first.0 - j.thick - 0.3 * j.bolt, j.circle);
    a.part('H', name, head, shapes);
    let nut = at(first.1 + 0.45 * j.bolt, j.circle + 0.6 * j.bolt);
    a.part('N', "self-locking nut", nut, vec![]);
    let washer = at(first.1 - 0.5 * j.washer(), j.circle + 0.72 * j.bolt);
    a.part('W', "bevelled washer, round to the pack", washer, vec![]);
}
