//! Jaw coupling: jaws of both hubs with an elastomer star between them.
//!
//! The cut passes through a jaw of the driver above the axis; below it the jaws of both hubs stand
//! as white blocks in the elastomer.

use std::f64::consts::{FRAC_PI_2, PI};

use super::SectionError;
use super::assembly::{Assembly, SIDES, Side};
use super::shape::{HUB, Shape, block, side};
use crate::geometry::at;
use crate::ink::{THICK, THIN};

pub(super) fn build(a: &mut Assembly, jaws: Option<u32>) -> Result<(), SectionError> {
    let hub = a.only_radius(0.375)?;
    let d = a.d;
    let g = a.half_gap;
    let slack = 0.12 * g;
    let inner = (d / 2.0 * 1.12).min(d / 2.0 + 0.5 * (hub - d / 2.0));

    a.shafts(0.0);
    for s in SIDES {
        let half = a.half(s);
        let (bore, length) = (half.shaft.mm / 2.0, half.hub_length.mm);
        let (c, end) = ((0.04 * d).min(0.3 * length), g + length);
        let x = |x: f64| s.sign() * x;
        let below = [(g, 0.0), (g, -hub), (end - c, -hub), (end, -hub + c), (end, 0.0)];
        let mut above = vec![(g, bore)];
        if s == Side::Driver {
            above.extend([(g, inner), (-g + slack, inner), (-g + slack, hub)]);
        } else {
            above.push((g, hub));
        }
        above.extend([(end - c, hub), (end, hub - c), (end, bore)]);
        let shapes = vec![
            Shape::outside(side(s.sign(), &below)),
            Shape::line((x(end - c), -hub), (x(end - c), 0.0), THIN),
            Shape::cut(side(s.sign(), &above), HUB[s.index()]),
        ];
        let letter = if s == Side::Driver { 'B' } else { 'C' };
        let inside = at(x(g + 0.6 * length), bore + (hub - bore) * 0.6);
        a.part(letter, format!("hub with jaws, {}", a.machine(s)), inside, shapes);
    }
    let low = 0.16 * d;
    let inside = at(0.4 * g, f64::midpoint(low, inner));
    a.part(
        'D',
        "elastomer element",
        inside,
        vec![
            Shape::elastomer(block((-g + slack, low), (g - slack, 0.98 * inner))),
            Shape::elastomer(block((-g, 0.0), (g, -0.97 * hub))),
        ],
    );
    let jaw = at(0.0, f64::midpoint(inner, hub));
    a.part('J', format!("jaw of B{}", count(jaws)), jaw, blocks(hub, (g, slack), jaws));
    a.keys(0.0);
    a.write_outside(hub, g);
    Ok(())
}

fn count(jaws: Option<u32>) -> String {
    jaws.map_or(String::new(), |jaws| format!(" ({jaws})"))
}

/// The jaws of both hubs seen from outside, below the axis.
fn blocks(hub: f64, (g, slack): (f64, f64), jaws: Option<u32>) -> Vec<Shape> {
    let mut shapes = Vec::new();
    let pitch = PI / f64::from(jaws.unwrap_or(6).clamp(2, 12));
    let width = 0.62 * pitch;
    let mut sign = -1.0;
    let mut middle = 0.0;
    while middle <= FRAC_PI_2 + 0.01 {
        // One straight below is seen edge on, and only as a line: left out.
        let from = -hub * (middle - width / 2.0).max(0.0).cos();
        let to = -hub * (middle + width / 2.0).min(FRAC_PI_2).cos();
        if to - from > 0.03 * hub {
            let outline = block((sign * g, from), (-sign * (g - slack), to));
            shapes.push(Shape::Solid { outline, cuts: Vec::new(), weight: THICK });
        }
        sign = -sign;
        middle += pitch;
    }
    shapes
}
