//! The section for a card or a phone, 82 mm wide: shafts, largest diameter and gap, no letters.

use super::assembly::{Assembly, Diameter, Side};
use super::scale::{Scale, rule};
use super::shape::View;
use super::sheet::{across, fitted, gap, stands};
use super::{Known, Section, SectionError};
use crate::dimension::Size;
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

/// Where the diameters stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Sizes {
    /// In lanes beside the drawing.
    Beside,
    /// Under it, where lanes would leave the drawing too little room.
    Under,
}

pub(super) fn draw(section: &Section) -> Result<Drawing, SectionError> {
    let (assembly, scale, sizes) = laid_out(section)?;
    let a = &assembly;
    let (left, right) = room(a, scale.0, sizes);
    let (from, to) = a.span();
    let reach = a.reach * scale.0;
    let free = (WIDTH - 2.0 * MARGIN - left - right - (to - from) * scale.0).max(0.0);
    let top = TOP + a.crest * scale.0 + reach;
    let origin = at(MARGIN + left + free / 2.0 - from * scale.0, top);
    let low = origin.y + reach;
    let rows = if sizes == Sizes::Under { 6.0 } else { 0.0 };
    let mut drawing = Drawing::new(WIDTH, low + 18.8 + rows);
    parts(&mut drawing, a, scale, origin);
    if sizes == Sizes::Beside {
        diameters(&mut drawing, a, scale, origin);
    }
    if let Some(gap) = gap(a, scale.0, origin.x, (low, low + LANE), WRITTEN) {
        gap.draw(&mut drawing);
    }
    foot(&mut drawing, a, scale, low, sizes);
    Ok(drawing)
}

/// Sizes beside the drawing, unless that costs it more than a third of its scale.
fn laid_out(section: &Section) -> Result<(Assembly<'_>, Scale, Sizes), SectionError> {
    let fits = |sizes: Sizes| {
        move |a: &Assembly, s: f64| {
            let (left, right) = room(a, s, sizes);
            let (from, to) = a.span();
            (to - from) * s + left + right <= WIDTH - 2.0 * MARGIN
        }
    };
    let (assembly, scale) = fitted(section, HIGHEST, fits(Sizes::Beside))?;
    let (other, larger) = fitted(section, HIGHEST, fits(Sizes::Under))?;
    if larger.0 > 1.5 * scale.0 || !fits(Sizes::Beside)(&assembly, scale.0) {
        Ok((other, larger, Sizes::Under))
    } else {
        Ok((assembly, scale, Sizes::Beside))
    }
}

#[cfg(test)]
pub(super) fn lists_sizes(section: &Section) -> bool {
    laid_out(section).is_ok_and(|(_, _, sizes)| sizes == Sizes::Under)
}

/// The sizes that matter on a card: both shafts, and the largest diameter.
fn shown<'a>(a: &'a Assembly) -> impl Iterator<Item = &'a Diameter> {
    a.diameters.iter().filter(|d| d.from.is_none() || is_outside(a, d))
}

fn is_outside(a: &Assembly, d: &Diameter) -> bool {
    d.side == Side::Driven && (d.dim.mm / 2.0 - a.reach).abs() < 1e-6
}

fn room(a: &Assembly, scale: f64, sizes: Sizes) -> (f64, f64) {
    if sizes == Sizes::Under {
        return (AXIS_END, AXIS_END);
    }
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

/// Whose shaft is whose, sizes that had no room beside it, the scale and what the signs mean, and
/// the printed rule.
fn foot(drawing: &mut Drawing, a: &Assembly, scale: Scale, low: f64, sizes: Sizes) {
    let mut y = low + 11.7;
    let machine = |side: Side| Words::new(a.machine(side), WRITTEN).strong();
    let left = drawing.text(&machine(Side::Driver), at(MARGIN, y), Anchor::Start).right;
    let right = drawing.text(&machine(Side::Driven), at(WIDTH - MARGIN, y), Anchor::End).left;
    if sizes == Sizes::Under {
        for d in shown(a) {
            let size = Size::new(&format!("⌀{}", d.dim.text), d.dim.known, WRITTEN);
            match (d.from, d.side) {
                (None, Side::Driver) => size.write(drawing, at(left + 1.5, y), Anchor::Start),
                (None, Side::Driven) => size.write(drawing, at(right - 1.5, y), Anchor::End),
                (Some(_), _) => {
                    let words = Words::new("over all", WRITTEN);
                    let end = drawing.text(&words, at(MARGIN, y + 5.8), Anchor::Start).right;
                    size.write(drawing, at(end + 1.5, y + 5.8), Anchor::Start)
                }
            };
        }
        y += 6.0;
    }
    let mut notes = vec![scale.1.to_owned()];
    if stands(a, Known::Measured) {
        notes.push("framed: measured".to_owned());
    }
    if a.edges.assumed {
        notes.push("( ): assumed".to_owned());
    }
    let y = y + 5.1;
    let left = rule(drawing, (WIDTH - MARGIN, y), 22.0, scale.0, a.section.system);
    let soft = |text: String| Words::new(text, 3.0).colour(Colour::Soft);
    while notes.len() > 1 && MARGIN + soft(notes.join(" · ")).width() > left - 2.0 {
        notes.pop();
    }
    drawing.text(&soft(notes.join(" · ")), at(MARGIN, y), Anchor::Start);
}
