//! The parts moved apart along the axis, in the order in which they are threaded on.
//!
//! Whatever is trapped behind a hub lies outside it. Numbers give the order of work, equal numbers
//! where both sides are alike. It is a picture: it carries no sizes.

use super::assembly::{Assembly, Side, assemble};
use super::shape::{Part, Shape, View};
use super::{Cover, Kind, Section, SectionError};
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

/// Letters of parts that move together, on one side or where there is but one of them.
type Group = (&'static str, usize, &'static [char], Option<Side>);

const L: Option<Side> = Some(Side::Driver);
const R: Option<Side> = Some(Side::Driven);

const GEAR: [Group; 9] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("seal", 2, &['F'], L),
    ("sleeve", 3, &['D', 'J'], L),
    ("hub", 4, &['B'], L),
    ("gasket", 5, &['G'], None),
    ("hub", 4, &['C'], R),
    ("sleeve", 3, &['E', 'J'], R),
    ("seal", 2, &['F'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const ONE_PACK: [Group; 5] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("hub", 2, &['B'], L),
    ("disc pack", 3, &['D'], L),
    ("hub", 2, &['C'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const TWO_PACKS: [Group; 7] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("hub", 2, &['B'], L),
    ("disc pack", 4, &['D'], L),
    ("spacer", 3, &['E'], None),
    ("disc pack", 4, &['D'], R),
    ("hub", 2, &['C'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const RIGID: [Group; 4] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("hub", 2, &['B'], L),
    ("hub", 2, &['C'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const GRID: [Group; 8] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("seal", 2, &['F'], L),
    ("hub", 3, &['B'], L),
    ("grid", 4, &['D'], None),
    ("cover", 5, &['E', 'J'], None),
    ("hub", 3, &['C'], R),
    ("seal", 2, &['F'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const COVERED_CHAIN: [Group; 8] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("seal", 2, &['F'], L),
    ("hub", 3, &['B'], L),
    ("chain", 4, &['D'], None),
    ("cover", 5, &['E'], None),
    ("hub", 3, &['C'], R),
    ("seal", 2, &['F'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const BARE_CHAIN: [Group; 5] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("hub", 2, &['B'], L),
    ("chain", 3, &['D'], None),
    ("hub", 2, &['C'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const JAW: [Group; 5] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("hub", 2, &['B'], L),
    ("element", 3, &['D'], None),
    ("hub", 2, &['C'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const PIN: [Group; 6] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("hub", 2, &['B'], L),
    ("pins", 4, &['H'], None),
    ("bushes", 3, &['D'], None),
    ("hub", 2, &['C'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const SHEAR: [Group; 7] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("hub", 2, &['B'], L),
    ("ring", 3, &['W'], L),
    ("element", 4, &['D'], None),
    ("ring", 3, &['W'], R),
    ("hub", 2, &['C'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const ONE_DIAPHRAGM: [Group; 5] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("hub", 2, &['B'], L),
    ("diaphragm", 3, &['D'], L),
    ("hub", 2, &['C'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

const TWO_DIAPHRAGMS: [Group; 7] = [
    ("shaft, key", 1, &['A', 'K'], L),
    ("hub", 2, &['B'], L),
    ("diaphragm", 3, &['D'], L),
    ("spacer", 3, &['E'], None),
    ("diaphragm", 3, &['D'], R),
    ("hub", 2, &['C'], R),
    ("shaft, key", 1, &['A', 'K'], R),
];

/// The kinds that have such a picture, and what in it the bolt stands over.
fn groups(kind: &Kind) -> Option<(&'static [Group], usize)> {
    match kind {
        Kind::Gear { .. } => Some((&GEAR, 4)),
        Kind::Disc { packs: super::Packs::One, .. } => Some((&ONE_PACK, 2)),
        Kind::Disc { .. } => Some((&TWO_PACKS, 2)),
        Kind::Rigid { .. } => Some((&RIGID, 1)),
        Kind::Grid { .. } => Some((&GRID, 4)),
        Kind::Chain { cover: Cover::On } => Some((&COVERED_CHAIN, 4)),
        Kind::Chain { cover: Cover::Bare } => Some((&BARE_CHAIN, 2)),
        Kind::Jaw { .. } => Some((&JAW, 2)),
        Kind::Pin { .. } => Some((&PIN, 2)),
        Kind::Shear { .. } => Some((&SHEAR, 3)),
        Kind::Diaphragm { packs: super::Packs::One, .. } => Some((&ONE_DIAPHRAGM, 2)),
        Kind::Diaphragm { .. } => Some((&TWO_DIAPHRAGMS, 2)),
        Kind::Other => None,
    }
}

/// `None` for a kind without such a picture.
pub(super) fn draw(section: &Section) -> Result<Option<Drawing>, SectionError> {
    let assembly = assemble(section, 0.35)?;
    Ok(groups(&section.kind).map(|(groups, over)| sheet(&assembly, groups, over)))
}

/// In words, from left to right.
pub(super) fn says(section: &Section) -> Option<String> {
    let (groups, _) = groups(&section.kind)?;
    let named = groups.iter().map(|(name, order, ..)| format!("{order} {name}"));
    Some(format!("Taken apart, from left to right: {}.", named.collect::<Vec<_>>().join(", ")))
}

fn sheet(a: &Assembly, groups: &[Group], over: usize) -> Drawing {
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
    let beside = middles.get(over + 1).copied().unwrap_or(WIDTH / 2.0);
    let bolt_x = if spans.len().is_multiple_of(2) {
        f64::midpoint(middles[over], beside)
    } else {
        middles[over]
    };
    let last = groups.iter().map(|(_, order, ..)| *order).max().unwrap_or(0) + 1;
    bolt(&mut drawing, a, (bolt_x, axis - reach), scale, last);
    numbers(&mut drawing, groups, &middles, axis + reach);
    drawing
}

fn members<'a>(a: &'a Assembly, (_, _, letters, side): &Group) -> Vec<&'a Part> {
    let belongs = |part: &&Part| {
        let named = part.letter.is_some_and(|letter| letters.contains(&letter));
        named && (part.side.is_none() || part.side == *side)
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
        Kind::Shear { .. } => "screws",
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
    let words: Vec<Words> = groups.iter().map(|(name, ..)| Words::new(*name, NOTE)).collect();
    let lengths: Vec<f64> = words.iter().map(|w| w.width().max(2.0 * CIRCLE) + 2.0).collect();
    let places = spread(middles, &lengths, 0.0, WIDTH);
    for (((_, order, ..), words), (middle, x)) in
        groups.iter().zip(&words).zip(middles.iter().zip(places))
    {
        let y = low + 8.0;
        drawing.line(at(*middle, low + 0.8), at(x, y - CIRCLE), Stroke::of(THIN).under());
        number(drawing, *order, at(x, y));
        drawing.text(words, at(x, y + 6.2), Anchor::Middle);
    }
}
