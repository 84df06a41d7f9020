//! Rigid flange coupling: flanges face to face, centred by a spigot, held by fitted bolts.
//!
//! The recess is a little deeper than the spigot is high, so that the faces touch. A fitted
//! bolt and its hole share one line. Shaft ends stand back from the faces.

use super::SectionError;
use super::assembly::{Assembly, Side, counted};
use super::fasteners::{Tip, bolts_below, through_bolt};
use super::shape::{HUB, Shape, side};
use crate::geometry::at;
use crate::ink::{MEDIUM, THIN};

pub(super) fn build(a: &mut Assembly, bolts: Option<u32>) -> Result<(), SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, [flange]) = a.radii(0.30, [("flange outside", outside, 0.52)])?;
    let (d, hub) = (a.d, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let thick = (0.3 * d).min(0.5 * shorter);
    let bolt = (0.16 * d).min((flange - hub) * 0.34);
    let circle = f64::midpoint(hub, flange);
    let spigot = d / 2.0 + (hub - d / 2.0) * 0.85;
    let rise = (0.06 * d).min(0.2 * thick);
    let back = (0.05 * d).max(1.4 * rise);

    a.shafts(back);
    for s in [Side::Driven, Side::Driver] {
        let half = a.half(s);
        let (bore, length, barrel) = (half.shaft.mm / 2.0, half.hub_length.mm, hubs[s.index()]);
        let (c, f) = (0.03 * d, (0.05 * d).min(0.25 * (flange - hub)));
        let end = thick + f;
        let step = match s {
            Side::Driver => -rise,
            Side::Driven => 1.12 * rise,
        };
        let below = [
            (0.0, 0.0),
            (0.0, -flange),
            (thick, -flange),
            (thick, -barrel - f),
            (end, -barrel),
            (length - c, -barrel),
            (length, -barrel + c),
            (length, 0.0),
        ];
        let (low, high) = (circle - bolt / 2.0, circle + bolt / 2.0);
        let inner = [
            (step, bore),
            (step, spigot),
            (0.0, spigot),
            (0.0, low),
            (thick, low),
            (thick, barrel + f),
            (end, barrel),
            (length - c, barrel),
            (length, barrel - c),
            (length, bore),
        ];
        let rim = [(0.0, high), (0.0, flange), (thick, flange), (thick, high)];
        let (cut, x) = (HUB[s.index()], |x: f64| s.sign() * x);
        let shapes = vec![
            Shape::outside(side(s.sign(), &below)),
            Shape::line((x(end), -barrel), (x(end), 0.0), THIN),
            Shape::line((x(thick), -barrel - f), (x(thick), 0.0), MEDIUM),
            Shape::cut(side(s.sign(), &inner), cut),
            Shape::cut(side(s.sign(), &rim), cut),
        ];
        let inside = at(x(0.62 * length), bore + (barrel - bore) * 0.75);
        match s {
            Side::Driver => {
                a.part('B', format!("hub, {}, with spigot", a.machine(s)), inside, shapes);
            }
            Side::Driven => {
                a.part('C', format!("hub, {}, recessed", a.machine(s)), inside, shapes);
            }
        }
    }
    let mut fasteners = through_bolt(-thick, thick, circle, bolt);
    fasteners.extend(bolts_below(-thick, thick, circle, bolt, bolts.unwrap_or(6), Tip::Hidden));
    a.part('H', counted("fitted bolt and nut", bolts), at(-thick - 0.3 * bolt, circle), fasteners);
    a.part(
        'S',
        "spigot",
        at(0.5 * rise, spigot - (0.06 * d).min(0.3 * (spigot - d / 2.0))),
        vec![],
    );
    a.keys(back);
    a.write_hubs(hubs);
    a.write_outside(flange, thick);
    Ok(())
}
