//! A toothed rubber sleeve in the pockets of two flanges, with neither clamp nor bolt.

use std::f64::consts::TAU;

use crate::geometry::at;
use crate::ink::{Colour, MEDIUM, Stroke, THIN};
use crate::section::SectionError;
use crate::section::assembly::{Assembly, SIDES, Side};
use crate::section::shape::{HUB, Shape, block, fillet, side};

pub(super) fn build(a: &mut Assembly) -> Result<(), SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, [flange]) = a.radii(0.25, [("flange outside", outside, 0.5)])?;
    let (d, f, hub) = (a.d, a.half_gap, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let thick = (0.34 * d).min(0.6 * shorter);
    // The pocket in the flange, from its face; the rim stands round it.
    let pocket = 0.55 * thick;
    let (low, high) = (hub + 0.18 * (flange - hub), flange - 0.22 * (flange - hub));
    a.shafts(0.0);
    for s in SIDES {
        let (half, radius) = (a.half(s), hubs[s.index()]);
        let (bore, length) = (half.shaft.mm / 2.0, half.hub_length.mm);
        let (behind, end) = (f + thick, f + length);
        let c = (0.03 * d).min(0.2 * (length - thick));
        let tail = |up: f64| {
            let mut points = vec![(f, up * flange), (behind, up * flange)];
            points.extend(fillet(behind, up * radius, c, (1.0, up)));
            points.extend([(end - c, up * radius), (end, up * (radius - c))]);
            points
        };
        let mut below = vec![(f, 0.0)];
        below.extend(tail(-1.0));
        below.push((end, 0.0));
        let mut above = vec![(f, bore), (f, low), (f + pocket, low), (f + pocket, high), (f, high)];
        above.extend(tail(1.0));
        above.push((end, bore));
        let x = |x: f64| s.sign() * x;
        let shapes = vec![
            Shape::outside(side(s.sign(), &below)),
            Shape::line((x(behind), -radius), (x(behind), 0.0), MEDIUM),
            Shape::line((x(end - c), -radius), (x(end - c), 0.0), THIN),
            Shape::cut(side(s.sign(), &above), HUB[s.index()]),
        ];
        let inside = at(x(f + 0.66 * length), bore + (radius - bore) * 0.72);
        let letter = if s == Side::Driver { 'B' } else { 'C' };
        a.part(letter, format!("hub, {}, toothed pocket", a.machine(s)), inside, shapes);
    }
    sleeve(a, (low, high), pocket);
    a.keys(0.0);
    a.write_hubs(hubs);
    a.write_outside(flange, f + thick);
    Ok(())
}

/// The sleeve: cut above the axis, its teeth marked; below it what shows between the flanges.
fn sleeve(a: &mut Assembly, (low, high): (f64, f64), pocket: f64) {
    let f = a.half_gap;
    let end = f + 0.94 * pocket;
    let middle = f64::midpoint(low, high);
    let mut shapes = vec![
        Shape::elastomer(block((-end, low), (end, high))),
        Shape::elastomer(block((-f, 0.0), (f, -high))),
    ];
    for s in SIDES {
        // Where a tooth of the flange stands in the sleeve's end: its flank, edge on.
        let x = |x: f64| s.sign() * x;
        let flank = [(f, middle), (end, middle)].map(|(along, y)| (x(along), y));
        let stroke = Stroke::of(MEDIUM).colour(Colour::Metal).under();
        let points = flank.iter().map(|(x, y)| at(*x, *y)).collect();
        shapes.push(Shape::Line { points, stroke });
    }
    a.part('D', "rubber sleeve, toothed", at(0.0, middle), shapes);
    let mut teeth = vec![Shape::elastomer(block((-end, 0.0), (end, -high)))];
    for tooth in 0..8 {
        let y = -high * (TAU * (f64::from(tooth) + 0.3) / 32.0).sin();
        for s in SIDES {
            teeth.push(Shape::line((s.sign() * f, y), (s.sign() * end, y), MEDIUM));
        }
    }
    a.apart(teeth);
}
