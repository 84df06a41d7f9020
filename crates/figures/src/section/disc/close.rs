//! A close-coupled disc coupling: hubs turned towards each other inside a split spacer.
//!
//! The flanges lie at the hubs' outer ends, so that the packs stand wide apart in the room of a
//! short coupling. What is stated is the distance between the seats on those flanges.

use crate::geometry::at;
use crate::ink::{MEDIUM, THIN};
use crate::section::SectionError;
use crate::section::assembly::{Assembly, SIDES, Side};
use crate::section::joint::Joint;
use crate::section::shape::{COVER, HUB, Shape, block, side};

/// Turns the hubs inwards and gives their flanges' thickness: the usual one, or what leaves a gap
/// between the barrels.
pub(super) fn turned(a: &mut Assembly, usual: f64) -> Result<f64, SectionError> {
    let lengths = SIDES.map(|s| a.half(s).hub_length.mm);
    let (both, seats) = (lengths[0] + lengths[1], a.section.gap.mm);
    let thick = usual.max((both - seats) / 2.0 + 0.02 * a.d);
    let most = 0.6 * lengths[0].min(lengths[1]);
    crate::section::check::order(("barrels of both hubs", both - 2.0 * most), ("the gap", seats))?;
    let thick = thick.min(most);
    a.half_gap = (seats + 2.0 * thick - both) / 2.0;
    a.between = [-(a.half_gap + lengths[0] - thick), a.half_gap + lengths[1] - thick];
    a.edges.xs = a.between.iter().map(|x| x.abs()).collect();
    for length in lengths {
        a.edges.xs.extend([a.half_gap, a.half_gap + length]);
    }
    Ok(thick)
}

pub(super) fn build(a: &mut Assembly, hubs: [f64; 2], j: &Joint) {
    for s in SIDES {
        hub(a, s, hubs[s.index()], j);
    }
    spacer(a, hubs[0].max(hubs[1]), j);
}

/// A hub with its flange at the end that looks at its own machine.
fn hub(a: &mut Assembly, s: Side, radius: f64, j: &Joint) {
    let half = a.half(s);
    let (bore, length) = (half.shaft.mm / 2.0, half.hub_length.mm);
    let (f, end) = (a.half_gap, a.half_gap + length);
    let seat = end - j.thick;
    let c = (0.03 * a.d).min(0.2 * (length - j.thick));
    let (low, high) = (j.circle - j.bolt / 2.0, j.circle + j.bolt / 2.0);
    let barrel = |up: f64| [(f, up * (radius - c)), (f + c, up * radius), (seat, up * radius)];
    let mut below = vec![(f, 0.0)];
    below.extend(barrel(-1.0));
    below.extend([(seat, -j.flange), (end, -j.flange), (end, 0.0)]);
    let mut above = vec![(f, bore)];
    above.extend(barrel(1.0));
    above.extend([(seat, low), (end, low), (end, bore)]);
    let rim = [(seat, high), (seat, j.flange), (end, j.flange), (end, high)];
    let x = |x: f64| s.sign() * x;
    let cut = HUB[s.index()];
    let shapes = vec![
        Shape::outside(side(s.sign(), &below)),
        Shape::cut(side(s.sign(), &above), cut),
        Shape::Blank(block((x(seat), low), (x(end), high))),
        Shape::cut(side(s.sign(), &rim), cut),
        Shape::line((x(seat), low), (x(seat), high), MEDIUM),
        Shape::line((x(end), low), (x(end), high), MEDIUM),
    ];
    let inside = at(x(f + 0.3 * length), bore + (radius - bore) * 0.6);
    let letter = if s == Side::Driver { 'B' } else { 'C' };
    a.part(letter, format!("hub, {}, turned inwards", a.machine(s)), inside, shapes);
}

/// Its halves are joined along the shaft; the joint is seen below the axis.
fn spacer(a: &mut Assembly, hub: f64, j: &Joint) {
    let room = j.hub - hub;
    let (inner, outer) = (hub + 0.25 * room, hub + 0.85 * room);
    let ends = [a.between[0] + j.width, a.between[1] - j.width];
    let necks = [ends[0] + j.thick, ends[1] - j.thick];
    let (low, high) = (j.circle - j.wide_hole(), j.circle + j.wide_hole());
    let outline = |up: f64, inside: f64, rim: f64| {
        [
            (ends[0], inside),
            (ends[0], rim),
            (necks[0], rim),
            (necks[0], outer),
            (necks[1], outer),
            (necks[1], rim),
            (ends[1], rim),
            (ends[1], inside),
        ]
        .map(|(x, y)| at(x, up * y))
        .to_vec()
    };
    let mut shapes = vec![
        Shape::outside(outline(-1.0, 0.0, j.flange)),
        Shape::cut(outline(1.0, inner, low), COVER),
    ];
    for (end, neck) in ends.into_iter().zip(necks) {
        shapes.extend([
            Shape::line((neck, -outer), (neck, 0.0), MEDIUM),
            Shape::Blank(block((neck, low), (end, high))),
            Shape::cut(block((neck, high), (end, j.flange)), COVER),
            Shape::line((neck, low), (neck, high), MEDIUM),
            Shape::line((end, low), (end, high), MEDIUM),
        ]);
    }
    let joint = -0.42 * outer;
    for up in [0.0, 0.012 * a.d] {
        shapes.push(Shape::line((ends[0], joint + up), (ends[1], joint + up), THIN));
    }
    a.part('E', "spacer, split along the shaft", at(0.0, f64::midpoint(inner, outer)), shapes);
}
