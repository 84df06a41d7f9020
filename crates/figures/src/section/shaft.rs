//! Shafts and keys: never cut lengthwise. A shaft is broken off short with a thin wave, and its
//! key shows through a broken-out window with a free-hand edge.

use std::f64::consts::{PI, TAU};

use super::assembly::{Assembly, Side};
use super::shape::{Shape, WINDOW, block};
use crate::geometry::{Point, at};
use crate::ink::{Colour, HIDDEN, Stroke, THICK, THIN};

/// One machine's shaft, its end standing back from the hub face by `back`.
pub(super) fn shaft(assembly: &Assembly, side: Side, back: f64) -> Vec<Shape> {
    let half = assembly.half(side);
    let (sign, r) = (side.sign(), half.shaft.mm / 2.0);
    let x = |beyond: f64| sign * (assembly.half_gap + beyond);
    let (end, chamfer) = (back, (0.06 * r).min(2.0));
    let far = half.hub_length.mm + assembly.stub;
    let wave: Vec<Point> = wave(r).into_iter().map(|(dx, y)| at(x(far) + dx, y)).collect();
    let face = [
        at(x(end + chamfer), -r),
        at(x(end), -r + chamfer),
        at(x(end), r - chamfer),
        at(x(end + chamfer), r),
    ];
    let mut outline = face.to_vec();
    outline.extend(wave.iter().rev());
    let mut edge = vec![wave[0]];
    edge.extend(face);
    edge.push(wave[wave.len() - 1]);
    let mut shapes = vec![
        Shape::Blank(outline),
        Shape::Line { points: edge, stroke: Stroke::of(THICK) },
        Shape::Line { points: wave, stroke: Stroke::of(THIN) },
    ];
    if let Some(bore) = half.shaft_bore_mm {
        shapes.extend([-1.0, 1.0].map(|up| hidden((x(end), x(far)), up * bore / 2.0)));
    }
    shapes
}

fn hidden((from, to): (f64, f64), y: f64) -> Shape {
    let stroke = Stroke::of(THIN).colour(Colour::Ink).dash(HIDDEN).under();
    Shape::Line { points: vec![at(from, y), at(to, y)], stroke }
}

/// The wave of a break, from below the axis to above it.
fn wave(r: f64) -> Vec<(f64, f64)> {
    (0..=24)
        .map(|step| {
            let share = f64::from(step) / 24.0;
            ((TAU * share).sin() * r * 0.09, r * (2.0 * share - 1.0))
        })
        .collect()
}

/// A key in its window, and a place inside it.
pub(super) fn key(assembly: &Assembly, side: Side, back: f64) -> Option<(Vec<Shape>, Point)> {
    let half = assembly.half(side);
    let key = half.key?;
    let (sign, r, length) = (side.sign(), half.shaft.mm / 2.0, half.hub_length.mm);
    let x = |beyond: f64| sign * (assembly.half_gap + beyond);
    // Midway along the hub, a little nearer to its face, as far as the shaft's end allows.
    let start = ((length - key.length_mm) * 0.4).max(back + 0.05 * r);
    let stop = (start + key.length_mm).min(length + 0.8 * assembly.stub);
    let bottom = r - key.depth_mm;
    let window = window(
        (start - 0.03 * r).max(back),
        (stop + 0.1 * r).min(length + 0.9 * assembly.stub),
        r,
        bottom,
    );
    let window: Vec<Point> = window.into_iter().map(|(beyond, y)| at(x(beyond), y)).collect();
    let bar = block((x(start), bottom), (x(stop), bottom + key.height_mm));
    let inside = at(x(start + 0.72 * (stop - start)), bottom + 0.55 * key.height_mm);
    let cut = WINDOW[side.index()];
    let shapes = vec![
        Shape::Blank(window.clone()),
        Shape::Hatched { outline: window.clone(), cut },
        Shape::Line { points: window, stroke: Stroke::of(THIN) },
        Shape::small(bar),
    ];
    Some((shapes, inside))
}

/// A free-hand edge round the broken-out metal under a key, from surface to surface.
fn window(from: f64, to: f64, r: f64, bottom: f64) -> Vec<(f64, f64)> {
    const STEPS: u32 = 26;
    (0..=STEPS)
        .map(|step| {
            let share = f64::from(step) / f64::from(STEPS);
            let depth = 0.26 * r * (PI * share).sin().max(0.0).sqrt();
            let shake = 0.024 * r * (1.7 * f64::from(step)).sin();
            let y = if step == 0 || step == STEPS { r } else { bottom - depth + shake };
            (from + (to - from) * share, y.max(-0.6 * r))
        })
        .collect()
}
