//! A kind that has no drawing of its own: hubs, shafts and the gap are true; what joins the hubs
//! is left out, and the largest diameter, if it was given, is a phantom round them.

use super::assembly::{Assembly, SIDES, Side};
use super::shape::{HUB, Shape, side};
use super::{Dim, SectionError};
use crate::geometry::{Point, at};
use crate::ink::{PHANTOM, Stroke, THIN};

pub(super) fn build(a: &mut Assembly) -> Result<(), SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, []) = a.radii(0.25, [])?;
    let hub = hubs[0].max(hubs[1]);
    a.shafts(0.0);
    for s in SIDES {
        plain_hub(a, s, hubs[s.index()]);
    }
    a.keys(0.0);
    a.write_hubs(hubs);
    a.reach = hub;
    if let Some(Dim { mm, .. }) = outside {
        let around = mm / 2.0;
        super::check::order(("hub outside", 2.0 * hub), ("largest diameter", *mm))?;
        a.lines([1.0, -1.0].map(|up| phantom(a, up * hub, up * around)).to_vec());
        a.write_outside(around, a.half_gap);
    }
    Ok(())
}

/// A hub without a flange.
pub(super) fn plain_hub(a: &mut Assembly, s: Side, radius: f64) {
    let half = a.half(s);
    let (bore, length) = (half.shaft.mm / 2.0, half.hub_length.mm);
    let (f, c) = (a.half_gap, (0.03 * a.d).min(0.2 * length));
    let end = f + length;
    let profile = |inner: f64, up: f64| {
        side(
            s.sign(),
            &[
                (f, up * inner),
                (f, up * radius),
                (end - c, up * radius),
                (end, up * (radius - c)),
                (end, up * inner),
            ],
        )
    };
    let x = s.sign() * (end - c);
    let shapes = vec![
        Shape::outside(profile(0.0, -1.0)),
        Shape::line((x, -radius), (x, 0.0), THIN),
        Shape::cut(profile(bore, 1.0), HUB[s.index()]),
    ];
    let inside = at(s.sign() * (f + 0.62 * length), bore + (radius - bore) * 0.7);
    let letter = if s == Side::Driver { 'B' } else { 'C' };
    a.part(letter, format!("hub, {}", a.machine(s)), inside, shapes);
}

/// An outline round the hubs that says only how far out the coupling reaches.
fn phantom(a: &Assembly, hub: f64, radius: f64) -> Shape {
    let half = |s: Side| a.half_gap + 0.4 * a.half(s).hub_length.mm;
    let (from, to) = (-half(Side::Driver), half(Side::Driven));
    let points: Vec<Point> = vec![at(from, hub), at(from, radius), at(to, radius), at(to, hub)];
    Shape::Line { points, stroke: Stroke::of(THIN).dash(PHANTOM) }
}
