//! The section for a card or a phone, 82 mm wide: shafts, largest diameter and gap, no letters.

use super::assembly::{Assembly, Diameter, Side};
use super::scale::{Scale, rule};
use super::shape::View;
use super::sheet::{across, fitted, gap, stands};
use super::{Known, Section, SectionError};
use crate::geometry::{Point, at};
use crate::ink::{Anchor, CHAIN, Colour, Drawing, Stroke, THIN, Words, level};

const WIDTH: f64 = 82.0;
const MARGIN: f64 = 0.5;
const HIGHEST: f64 = 64.0;
const TOP: f64 = 1.0;
const LANE: f64 = 6.0;
const AXIS_END: f64 = 1.5;
/// Size of type; smaller than on the page, so that the drawing gets the room.
const WRITTEN: f64 = 3.3;

pub(super) fn draw(section: &Section) -> Result<Drawing, SectionError> {
    let (assembly, scale) = fitted(section, HIGHEST, |a, s| {
        let (left, right) = room(a, s);
        let (from, to) = a.span();
        (to - from) * s + left + right <= WIDTH - 2.0 * MARGIN
    })?;
    let a = &assembly;
    let (left, right) = room(a, scale.0);
    let (from, to) = a.span();
    let reach = a.reach * scale.0;
    let free = (WIDTH - 2.0 * MARGIN - left - right - (to - from) * scale.0).max(0.0);
    let origin = at(MARGIN + left + free / 2.0 - from * scale.0, TOP + reach);
    let low = origin.y + reach;
    let mut drawing = Drawing::new(WIDTH, low + 18.5);
    parts(&mut drawing, a, scale, origin);
    diameters(&mut drawing, a, scale, origin);
    if let Some(gap) = gap(a, scale.0, origin.x, (low, low + LANE), WRITTEN) {
        gap.draw(&mut drawing);
    }
    foot(&mut drawing, a, scale, low);
    Ok(drawing)
}

/// The sizes that matter on a card: both shafts, and the largest diameter.
fn shown<'a>(a: &'a Assembly) -> impl Iterator<Item = &'a Diameter> {
    a.diameters.iter().filter(|d| d.from.is_none() || is_outside(a, d))
}

fn is_outside(a: &Assembly, d: &Diameter) -> bool {
    d.side == Side::Driven && (d.dim.mm / 2.0 - a.reach).abs() < 1e-6
}

fn room(a: &Assembly, scale: f64) -> (f64, f64) {
    let sum = |side| {
        let own = shown(a).filter(|d| d.side == side);
        own.map(|d| across(a, d, scale, Point::default(), WRITTEN).lane()).sum::<f64>() + AXIS_END
    };
    (sum(Side::Driver) + 0.5, sum(Side::Driven) + 1.3)
}

fn parts(drawing: &mut Drawing, a: &Assembly, scale: Scale, origin: Point) {
    let view = View { scale: scale.0, origin, edges: &a.edges };
    for shape in a.parts.iter().flat_map(|part| &part.shapes) {
        view.draw(drawing, shape);
    }
    let (from, to) = ends(a, scale, origin);
    level(drawing, origin.y, from - AXIS_END, to + AXIS_END, Stroke::of(THIN).dash(CHAIN).under());
}

fn ends(a: &Assembly, scale: Scale, origin: Point) -> (f64, f64) {
    let (from, to) = a.span();
    (origin.x + from * scale.0, origin.x + to * scale.0)
}

fn diameters(drawing: &mut Drawing, a: &Assembly, scale: Scale, origin: Point) {
    let (from, to) = ends(a, scale, origin);
    let (mut left, mut right) = (from - AXIS_END, to + AXIS_END);
    let mut own: Vec<&Diameter> = shown(a).collect();
    own.sort_by(|a, b| a.dim.mm.total_cmp(&b.dim.mm));
    for diameter in own {
        let across = across(a, diameter, scale.0, origin, WRITTEN);
        match diameter.side {
            Side::Driver => {
                across.draw_left(drawing, left);
                left -= across.lane();
            }
            Side::Driven => {
                across.draw_right(drawing, right);
                right += across.lane();
            }
        }
    }
}

/// Whose shaft is whose, the scale and what the signs mean, and the printed rule.
fn foot(drawing: &mut Drawing, a: &Assembly, scale: Scale, low: f64) {
    let y = low + 11.5;
    let machine = |side: Side| Words::new(a.machine(side), WRITTEN).strong();
    drawing.text(&machine(Side::Driver), at(MARGIN, y), Anchor::Start);
    drawing.text(&machine(Side::Driven), at(WIDTH - MARGIN, y), Anchor::End);
    let mut notes = vec![scale.1.to_owned()];
    if stands(a, Known::Measured) {
        notes.push("framed: measured".to_owned());
    }
    if a.edges.assumed {
        notes.push("( ): assumed".to_owned());
    }
    let y = low + 16.4;
    let left = rule(drawing, (WIDTH - MARGIN, y), 22.0, scale.0, a.section.system);
    let soft = |text: String| Words::new(text, 3.0).colour(Colour::Soft);
    while notes.len() > 1 && MARGIN + soft(notes.join(" · ")).width() > left - 2.0 {
        notes.pop();
    }
    drawing.text(&soft(notes.join(" · ")), at(MARGIN, y), Anchor::Start);
}
