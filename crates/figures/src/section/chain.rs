//! Chain coupling: a double roller chain round the sprockets of two hubs, under a cover.
//!
//! Above the axis the cut passes through a gap between teeth, where a roller lies on either
//! sprocket. Below it the cover is off and stands as a phantom; the pins of the chain lie round the
//! pitch circle, inner and outer links between them by turns.

use std::f64::consts::TAU;

use super::assembly::{Assembly, SIDES, Side};
use super::fasteners::plug;
use super::seam::Seam;
use super::shape::{COVER, HUB, Shape, block, side};
use super::{Cover, SectionError};
use crate::geometry::at;
use crate::ink::{MEDIUM, PHANTOM, Stroke, THIN};

struct Build {
    d: f64,
    face: f64,
    hubs: [f64; 2],
    /// Pitch circle of the sprockets, and half the height of a link.
    pitch: f64,
    link: f64,
    /// A sprocket's near and far side, from the middle of the coupling.
    teeth: (f64, f64),
    /// Thickness of a link plate.
    plate: f64,
    /// Inside and outside of the cover, over its joint, and its half length.
    cover: (f64, f64),
    over: f64,
    cover_end: f64,
}

pub(super) fn build(a: &mut Assembly, cover: Cover) -> Result<(), SectionError> {
    let b = measures(a, cover)?;
    a.shafts(0.0);
    for s in SIDES {
        hub(a, &b, s);
    }
    let inside = at(0.5 * (b.teeth.0 + b.teeth.1), b.pitch);
    a.part('D', "roller chain, double", inside, chain(&b));
    let tooth = at(-0.5 * (b.teeth.0 + b.teeth.1), -b.pitch + 0.9 * b.link);
    a.part('T', "sprocket teeth", tooth, vec![]);
    if cover == Cover::On {
        case(a, &b);
        seals(a, &b);
    }
    a.keys(0.0);
    a.write_hubs(b.hubs);
    a.write_outside(b.over, b.face);
    Ok(())
}

fn measures(a: &mut Assembly, kind: Cover) -> Result<Build, SectionError> {
    let outside = a.section.outside.as_ref();
    let named = match kind {
        Cover::On => ("cover outside", outside, 0.64),
        Cover::Bare => ("chain outside", outside, 0.34),
    };
    let (hubs, [over]) = a.radii(0.25, [named])?;
    let (d, face, hub) = (a.d, a.half_gap, hubs[0].max(hubs[1]));
    let shorter = a.section.driver.hub_length.mm.min(a.section.driven.hub_length.mm);
    // The shell; beyond it lies what its halves are bolted by.
    let cover = if kind == Cover::On { over - 0.22 * (over - hubs[0].max(hubs[1])) } else { over };
    let room = cover - hub;
    // Links reach as far as the cover leaves them, or to the largest diameter.
    let (pitch, link) = match kind {
        Cover::On => (0.5, 0.24),
        Cover::Bare => (0.36, 0.36),
    };
    let (wall, plate) = (0.12 * room, (0.035 * d).min(0.08 * shorter));
    let near = (face + 0.02 * d).max(1.6 * plate);
    let far = near + (0.17 * d).min(0.3 * shorter);
    Ok(Build {
        d,
        face,
        hubs,
        pitch: cover - pitch * room,
        link: link * room,
        teeth: (near, far),
        plate,
        cover: (cover - wall, cover),
        over,
        cover_end: far + 4.0 * plate + (0.1 * d).min(0.2 * shorter),
    })
}

fn hub(a: &mut Assembly, b: &Build, s: Side) {
    let half = a.half(s);
    let (bore, length, radius) = (half.shaft.mm / 2.0, half.hub_length.mm, b.hubs[s.index()]);
    let (f, (near, far), tip) = (b.face, b.teeth, b.pitch + 0.45 * b.link);
    let (end, c) = (f + length, (0.03 * b.d).min(0.2 * length));
    let profile = |up: f64, inner: f64, top: f64| {
        let points = [
            (f, inner),
            (f, radius),
            (near, radius),
            (near, top),
            (far, top),
            (far, radius),
            (end - c, radius),
            (end, radius - c),
            (end, inner),
        ];
        side(s.sign(), &points.map(|(x, y)| (x, up * y)))
    };
    let x = |x: f64| s.sign() * x;
    let edge = |at: f64, weight| Shape::line((x(at), -radius), (x(at), 0.0), weight);
    let shapes = vec![
        Shape::outside(profile(-1.0, 0.0, tip)),
        edge(near, MEDIUM),
        edge(far, MEDIUM),
        edge(end - c, THIN),
        Shape::cut(profile(1.0, bore, b.pitch - 0.7 * b.link), HUB[s.index()]),
    ];
    let inside = at(x(f + 0.66 * length), bore + (radius - bore) * 0.72);
    let letter = if s == Side::Driver { 'B' } else { 'C' };
    a.part(letter, format!("hub, {}, toothed", a.machine(s)), inside, shapes);
}

/// One pin with its rollers and plates above the axis, the pins in sight below it.
fn chain(b: &Build) -> Vec<Shape> {
    let mut shapes = pin(b, b.pitch, 0.7 * b.link);
    shapes.extend(
        [Plates::Inner, Plates::Outer]
            .into_iter()
            .flat_map(|which| plates(b, which, (b.pitch - b.link, b.pitch + b.link))),
    );
    // Twice a link's height, and a little, from pin to pin.
    let quarter = (TAU * b.pitch / (2.6 * b.link) / 4.0).floor().clamp(3.0, 12.0);
    let height = |step: f64| b.pitch * (TAU / 4.0 * step / quarter).cos();
    let mut step = 0.0;
    while step < quarter {
        // The lowest pin is cut by nothing and shows whole; higher ones are turned towards us.
        shapes.extend(pin(b, -height(step), 0.7 * b.link));
        let which = if step % 2.0 < 0.5 { Plates::Inner } else { Plates::Outer };
        let to = if step + 1.0 < quarter { height(step + 1.0) } else { 0.0 };
        shapes.extend(plates(b, which, (-height(step), -to)));
        step += 1.0;
    }
    shapes
}

/// A pin through both strands, a roller on either sprocket.
fn pin(b: &Build, y: f64, roller: f64) -> Vec<Shape> {
    let ((near, far), end, thin) = (b.teeth, b.teeth.1 + 3.4 * b.plate, 0.35 * roller);
    let mut shapes = vec![Shape::Ink(block((-end, y - thin), (end, y + thin)))];
    for sign in [-1.0, 1.0] {
        let (from, to) = (at(sign * near, y - roller), at(sign * far, y + roller));
        shapes.push(Shape::Ink(block((from.x, from.y), (to.x, to.y))));
    }
    shapes
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Plates {
    /// Against the rollers.
    Inner,
    /// Outside those.
    Outer,
}

/// The plates of a link, edge on, between two heights.
fn plates(b: &Build, which: Plates, (low, high): (f64, f64)) -> Vec<Shape> {
    let out = b.teeth.1 + if which == Plates::Inner { 0.3 * b.plate } else { 1.7 * b.plate };
    // Between the strands both lie in the gap, the thinner the narrower it is.
    let between = 0.3 * b.teeth.0;
    let inner = if which == Plates::Inner { b.teeth.0 - between } else { 0.0 };
    let mut shapes = Vec::new();
    for sign in [-1.0, 1.0] {
        shapes.push(Shape::Ink(block((sign * out, low), (sign * (out + b.plate), high))));
        shapes.push(Shape::Ink(block((sign * inner, low), (sign * (inner + between), high))));
    }
    shapes
}

fn case(a: &mut Assembly, b: &Build) {
    let ((inner, outer), end) = (b.cover, b.cover_end);
    let wall = outer - inner;
    let lip = lip(b);
    let half = [(end, outer), (end, lip), (end - wall, lip), (end - wall, inner)];
    let mut outline = side(1.0, &half);
    outline.extend(side(-1.0, &half).into_iter().rev());
    let seam = Seam { end, from: outer, to: b.over };
    let corners = [(end, 0.0), (end, -b.over)];
    let mut phantom = side(-1.0, &corners);
    phantom.extend(side(1.0, &corners).into_iter().rev());
    let stroke = Stroke::of(THIN).dash(PHANTOM);
    let shapes =
        vec![seam.face(), Shape::cut(outline, COVER), Shape::Line { points: phantom, stroke }];
    let place = at(-0.5 * end, f64::midpoint(inner, outer));
    a.part('E', "cover, off below the axis", place, shapes);
    let size = (0.075 * b.d).min(0.3 * end);
    a.crest = (outer + 0.8 * size - b.over).max(0.0);
    a.part(
        'J',
        "grease plug",
        at(0.5 * end, outer + 0.4 * size),
        plug(0.5 * end, inner, outer, size),
    );
    seam.fasten(a, None);
}

/// Where the cover's end walls stop over the hubs.
fn lip(b: &Build) -> f64 {
    let hub = b.hubs[0].max(b.hubs[1]);
    hub + 0.2 * (b.cover.0 - hub)
}

fn seals(a: &mut Assembly, b: &Build) {
    let (end, wall) = (b.cover_end, b.cover.1 - b.cover.0);
    for s in [Side::Driven, Side::Driver] {
        let (low, high) = (b.hubs[s.index()], lip(b));
        let x = |x: f64| s.sign() * x;
        let shapes = vec![Shape::seal(block((x(end - wall), low), (x(end), high)))];
        let inside = at(x(end - 0.5 * wall), f64::midpoint(low, high));
        a.twin((s, Side::Driven), 'F', "seal (2)", inside, shapes);
    }
}
