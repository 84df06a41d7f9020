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

struct Build {
    d: f64,
    hubs: [f64; 2],
    flange: f64,
    thick: f64,
    bolt: f64,
    /// Radius of the bolt circle.
    circle: f64,
    /// Radius of the spigot, and how far it stands out.
    spigot: f64,
    rise: f64,
}

pub(super) fn build(a: &mut Assembly, bolts: Option<u32>) -> Result<(), SectionError> {
    let b = measures(a)?;
    let (thick, circle) = (b.thick, b.circle);
    let back = (0.05 * b.d).max(1.4 * b.rise);
    a.shafts(back);
    for s in [Side::Driven, Side::Driver] {
        hub(a, s, &b);
    }
    let mut fasteners = through_bolt(-thick, thick, circle, b.bolt);
    a.bolt.clone_from(&fasteners);
    let count = bolts.unwrap_or(6);
    fasteners.extend(bolts_below(-thick, thick, circle, b.bolt, count, Tip::Hidden));
    let head = at(-thick - 0.3 * b.bolt, circle);
    a.part('H', counted("fitted bolt and nut", bolts), head, fasteners);
    let under = (0.06 * b.d).min(0.3 * (b.spigot - b.d / 2.0));
    a.part('S', "spigot", at(0.5 * b.rise, b.spigot - under), vec![]);
    a.keys(back);
    a.write_hubs(b.hubs);
    a.write_outside(b.flange, thick);
    Ok(())
}

fn measures(a: &mut Assembly) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let (hubs, [flange]) = a.radii(0.30, [("flange outside", outside, 0.52)])?;
    let (d, hub) = (a.d, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    let thick = (0.3 * d).min(0.5 * shorter);
    Ok(Build {
        d,
        hubs,
        flange,
        thick,
        bolt: (0.16 * d).min((flange - hub) * 0.34),
        circle: f64::midpoint(hub, flange),
        spigot: d / 2.0 + (hub - d / 2.0) * 0.85,
        rise: (0.06 * d).min(0.2 * thick),
    })
}

fn hub(a: &mut Assembly, s: Side, b: &Build) {
    let half = a.half(s);
    let (bore, length, barrel) = (half.shaft.mm / 2.0, half.hub_length.mm, b.hubs[s.index()]);
    let (c, f) = (0.03 * b.d, (0.05 * b.d).min(0.25 * (b.flange - barrel)));
    let (thick, end) = (b.thick, b.thick + f);
    let (letter, feature, step) = match s {
        Side::Driver => ('B', "with spigot", -b.rise),
        Side::Driven => ('C', "recessed", 1.12 * b.rise),
    };
    let profile = |up: f64| {
        [
            (thick, up * (barrel + f)),
            (end, up * barrel),
            (length - c, up * barrel),
            (length, up * (barrel - c)),
        ]
    };
    let mut below = vec![(0.0, 0.0), (0.0, -b.flange), (thick, -b.flange)];
    below.extend(profile(-1.0));
    below.push((length, 0.0));
    let (low, high) = (b.circle - b.bolt / 2.0, b.circle + b.bolt / 2.0);
    let mut inner = vec![(step, bore), (step, b.spigot), (0.0, b.spigot), (0.0, low), (thick, low)];
    inner.extend(profile(1.0));
    inner.push((length, bore));
    let rim = [(0.0, high), (0.0, b.flange), (thick, b.flange), (thick, high)];
    let (cut, x) = (HUB[s.index()], |x: f64| s.sign() * x);
    let shapes = vec![
        Shape::outside(side(s.sign(), &below)),
        Shape::line((x(end), -barrel), (x(end), 0.0), THIN),
        Shape::line((x(thick), -barrel - f), (x(thick), 0.0), MEDIUM),
        Shape::cut(side(s.sign(), &inner), cut),
        Shape::cut(side(s.sign(), &rim), cut),
    ];
    let inside = at(x(0.62 * length), bore + (barrel - bore) * 0.75);
    a.part(letter, format!("hub, {}, {feature}", a.machine(s)), inside, shapes);
}
