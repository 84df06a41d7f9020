//! The parts moved apart along the axis, in the order in which they are threaded on.
//!
//! Whatever is trapped behind a hub lies outside it. Numbers give the order of work, equal numbers
//! where both sides are alike. It is a picture: it carries no sizes.

use super::assembly::{Assembly, assemble};
use super::order::{self, Group, Order};
use super::shape::{Part, Shape, View};
use super::{Kind, Rubber, Section, SectionError};
use crate::axis::real;
use crate::geometry::{Point, at};
use crate::ink::{
    Anchor, CHAIN, Colour, Drawing, LETTER, MEDIUM, NOTE, Stroke, THIN, Words, level, upright,
};
use crate::labels::spread;

const WIDTH: f64 = 180.0;
const MARGIN: f64 = 6.0;
/// Between parts, mm of paper.
const APART: f64 = 3.2;
const HIGHEST: f64 = 62.0;
/// Height of the row for the bolt, and for numbers and names.
const BOLT_ROW: f64 = 26.0;
const FOOT: f64 = 18.0;
const CIRCLE: f64 = 2.9;

/// `None` for a kind without such a picture.
pub(super) fn draw(section: &Section) -> Result<Option<Drawing>, SectionError> {
    let assembly = assemble(section, 0.35)?;
    Ok(order::of(&section.kind).map(|order| sheet(&assembly, &order)))
}

/// In words, from left to right.
pub(super) fn says(section: &Section) -> Option<String> {
    let Order { groups, .. } = order::of(&section.kind)?;
    let named = groups.iter().map(|group| format!("{} {}", group.order, group.name));
    Some(format!("Taken apart, from left to right: {}.", named.collect::<Vec<_>>().join(", ")))
}

fn sheet(a: &Assembly, Order { groups, bolt_over }: &Order) -> Drawing {
    let members: Vec<Vec<&Part>> = groups.iter().map(|group| members(a, group)).collect();
    let spans: Vec<(f64, f64)> = members.iter().map(|parts| span(parts)).collect();
    let total: f64 = spans.iter().map(|(from, to)| to - from).sum();
    let gaps = APART * real(spans.len() - 1);
    let scale = ((WIDTH - 2.0 * MARGIN - gaps) / total).min(HIGHEST / (2.0 * a.reach));
    let reach = a.reach * scale;
    let axis = BOLT_ROW + reach;
    let mut drawing = Drawing::new(WIDTH, axis + reach + FOOT);
    let chain = Stroke::of(THIN).dash(CHAIN).under();
    level(&mut drawing, axis, 2.0, WIDTH - 2.0, chain);
    let mut x = (WIDTH - total * scale - gaps) / 2.0;
    let mut middles = Vec::new();
    for (parts, (from, to)) in members.iter().zip(&spans) {
        let view = View { scale, origin: at(x - from * scale, axis), edges: &a.edges };
        let shapes = parts.iter().flat_map(|part| part.shapes.iter().chain(&part.apart));
        for shape in shapes {
            view.draw(&mut drawing, shape);
        }
        middles.push(x + (to - from) * scale / 2.0);
        x += (to - from) * scale + APART;
    }
    level(&mut drawing, axis, 2.0, WIDTH - 2.0, chain);
    let [left, right] = *bolt_over;
    let bolt_x = f64::midpoint(middles[left], middles[right]);
    let last = groups.iter().map(|group| group.order).max().unwrap_or(0) + 1;
    bolt(&mut drawing, a, (bolt_x, axis - reach), scale, last);
    numbers(&mut drawing, groups, &middles, axis + reach);
    drawing
}

fn members<'a>(a: &'a Assembly, group: &Group) -> Vec<&'a Part> {
    let belongs = |part: &&Part| {
        let named = part.letter.is_some_and(|letter| group.letters.contains(&letter));
        named && (part.side.is_none() || part.side == group.side)
    };
    a.parts.iter().filter(belongs).collect()
}

/// Where along the axis parts begin and end.
fn span(parts: &[&Part]) -> (f64, f64) {
    let xs = parts.iter().flat_map(|part| &part.shapes).flat_map(points).map(|p| p.x);
    xs.fold((f64::MAX, f64::MIN), |(low, high), x| (low.min(x), high.max(x)))
}

fn points(shape: &Shape) -> Vec<Point> {
    match shape {
        Shape::Solid { outline, .. }
        | Shape::Ink(outline)
        | Shape::Blank(outline)
        | Shape::Hatched { outline, .. } => outline.clone(),
        Shape::Line { points, .. } | Shape::Bar { points, .. } => points.clone(),
        Shape::Laminations { from, to } => vec![*from, *to],
        Shape::Ring { .. } => Vec::new(),
    }
}

/// One bolt above the parts it goes through, on its own line down to them.
fn bolt(drawing: &mut Drawing, a: &Assembly, (x, top): (f64, f64), scale: f64, order: usize) {
    let all: Vec<Point> = a.bolt.iter().flat_map(points).collect();
    if all.is_empty() {
        return;
    }
    let fold = |value: fn(&Point) -> f64| {
        let values = all.iter().map(value);
        values.fold((f64::MAX, f64::MIN), |(low, high), v| (low.min(v), high.max(v)))
    };
    let ((left, right), (low, high)) = (fold(|p| p.x), fold(|p| p.y));
    // Small bolts are drawn larger: it is a picture.
    let scale = scale.max(9.0 / (right - left)).min(12.0 / (high - low));
    let (middle, height) = (f64::midpoint(left, right), f64::midpoint(low, high));
    let y = 9.0;
    let edges = super::shape::Edges::default();
    let origin = at(x - middle * scale, y + height * scale);
    let view = View { scale, origin, edges: &edges };
    for shape in &a.bolt {
        view.draw(drawing, shape);
    }
    let half = (high - low) / 2.0 * scale;
    upright(drawing, x, y + half + 1.5, top - 1.0, Stroke::of(THIN).dash("1 1").under());
    let place = at(x + (right - left) / 2.0 * scale + 8.0, y);
    number(drawing, order, place);
    let name = match a.section.kind {
        Kind::Shear { rubber: Rubber::Clamped | Rubber::Spacer, .. } => "screws",
        _ => "bolts and nuts",
    };
    drawing.text(&Words::new(name, NOTE), place.plus(CIRCLE + 1.8, 0.0), Anchor::Start);
}

fn number(drawing: &mut Drawing, order: usize, place: Point) {
    drawing.circle(place, CIRCLE, Some(Stroke::of(MEDIUM)), Some(Colour::Metal));
    drawing.text(&Words::new(order.to_string(), LETTER).strong(), place, Anchor::Middle);
}

/// Numbers and names under the parts, kept apart.
fn numbers(drawing: &mut Drawing, groups: &[Group], middles: &[f64], low: f64) {
    let words: Vec<Words> = groups.iter().map(|group| Words::new(group.name, NOTE)).collect();
    let lengths: Vec<f64> = words.iter().map(|w| w.width().max(2.0 * CIRCLE) + 2.0).collect();
    let places = spread(middles, &lengths, 0.0, WIDTH);
    for ((group, words), (middle, x)) in groups.iter().zip(&words).zip(middles.iter().zip(places)) {
        let y = low + 8.0;
        drawing.line(at(*middle, low + 0.8), at(x, y - CIRCLE), Stroke::of(THIN).under());
        number(drawing, group.order, at(x, y));
        drawing.text(words, at(x, y + 6.2), Anchor::Middle);
    }
}
