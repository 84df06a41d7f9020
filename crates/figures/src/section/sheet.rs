//! The full sheet, 180 mm wide: letters on a rail, the section, sizes round it, names below.

use super::assembly::{Assembly, Diameter, SIDES, Side, assemble};
use super::scale::{Scale, rule, scales};
use super::shape::View;
use super::{Known, Section, SectionError};
use crate::axis::real;
use crate::dimension::{Across, Along, HEAD, Outside, Size};
use crate::geometry::{Point, at};
use crate::ink::{Anchor, CHAIN, Colour, Drawing, NAME, NOTE, SIZE, Stroke, THIN, Words, level};
use crate::labels::{Tag, rail};

const WIDTH: f64 = 180.0;
const MARGIN: f64 = 4.0;
/// The drawing itself takes no more than this.
const HIGHEST: f64 = 108.0;
const WIDEST: f64 = 136.0;
/// Lower side of the letters, and the top of the drawing under them.
const RAIL: f64 = 8.5;
const TOP: f64 = 17.0;
/// Between the drawing and the names: two lanes of lengths.
const LANES: [f64; 2] = [7.0, 16.5];
const FOOT: f64 = 27.0;
const ROW: f64 = 5.2;
/// Height of the row that disc couplings need.
const JOINT_ROW: f64 = 76.0;

pub(super) fn draw(section: &Section) -> Result<Drawing, SectionError> {
    let (assembly, scale) = fitted(section, HIGHEST, |a, s| {
        let (left, right) = lanes(a, s);
        let (from, to) = a.span();
        (to - from) * s <= WIDEST.min(WIDTH - 2.0 * MARGIN - left - right)
    })?;
    Ok(Sheet::new(&assembly, scale).finish())
}

/// Height and drawing at the largest scale that fits, the shaft's stub shortened where that gains
/// a larger one; at the smallest scale whatever it takes.
pub(super) fn fitted(
    section: &Section,
    highest: f64,
    wide: impl Fn(&Assembly, f64) -> bool,
) -> Result<(Assembly<'_>, Scale), SectionError> {
    let list = scales(section.system);
    for scale in list {
        for stub in [0.35, 0.2] {
            let assembly = assemble(section, stub)?;
            if 2.0 * assembly.reach * scale.0 <= highest && wide(&assembly, scale.0) {
                return Ok((assembly, *scale));
            }
        }
    }
    Ok((assemble(section, 0.2)?, list[list.len() - 1]))
}

/// The dimension of a diameter at a scale, written so large; the axis crosses x = 0 at `origin`.
pub(super) fn across(
    a: &Assembly,
    d: &Diameter,
    scale: f64,
    origin: Point,
    written: f64,
) -> Across {
    let (from, to) = a.span();
    let end = if d.side == Side::Driver { from } else { to };
    Across {
        axis: origin.y,
        half: d.dim.mm / 2.0 * scale,
        part: origin.x + d.from.unwrap_or(end) * scale,
        size: Size::new(&format!("⌀{}", d.dim.text), d.dim.known, written),
    }
}

/// Room that the diameters take to the left and to the right of the shafts.
fn lanes(a: &Assembly, scale: f64) -> (f64, f64) {
    let sum = |side| {
        let own = a.diameters.iter().filter(|d| d.side == side);
        own.map(|d| across(a, d, scale, Point::default(), SIZE).lane()).sum::<f64>() + AXIS_END
    };
    (sum(Side::Driver), sum(Side::Driven))
}

/// How far the axis is drawn beyond the shafts, mm.
const AXIS_END: f64 = 3.0;

struct Sheet<'a> {
    assembly: &'a Assembly<'a>,
    scale: Scale,
    origin: Point,
    /// Lower edge of the drawing.
    low: f64,
    drawing: Drawing,
}

impl<'a> Sheet<'a> {
    fn new(assembly: &'a Assembly, scale: Scale) -> Self {
        let (left, right) = lanes(assembly, scale.0);
        let (from, to) = assembly.span();
        let (reach, crest) = (assembly.reach * scale.0, assembly.crest * scale.0);
        let free = (WIDTH - 2.0 * MARGIN - left - right - (to - from) * scale.0).max(0.0);
        let origin = at(MARGIN + left + free / 2.0 - from * scale.0, TOP + crest + reach);
        let rows = real(names(assembly).len().div_ceil(3));
        let joint = if assembly.joint.is_some() { JOINT_ROW } else { 0.0 };
        let low = origin.y + reach;
        let height = low + FOOT + joint + rows * ROW + 6.5;
        Self { assembly, scale, origin, low, drawing: Drawing::new(WIDTH, height) }
    }

    fn finish(mut self) -> Drawing {
        self.parts();
        self.diameters();
        self.lengths();
        self.letters();
        let mut y = self.low + FOOT;
        if let Some(joint) = &self.assembly.joint {
            joint.draw(&mut self.drawing, self.assembly, y - 4.0);
            y += JOINT_ROW;
        }
        self.names(y);
        self.drawing
    }

    fn view(&self) -> View<'a> {
        View { scale: self.scale.0, origin: self.origin, edges: &self.assembly.edges }
    }

    fn ends(&self) -> (f64, f64) {
        let (from, to) = self.assembly.span();
        (self.origin.x + from * self.scale.0, self.origin.x + to * self.scale.0)
    }

    fn parts(&mut self) {
        let view = self.view();
        for shape in self.assembly.parts.iter().flat_map(|part| &part.shapes) {
            view.draw(&mut self.drawing, shape);
        }
        let (from, to) = self.ends();
        let chain = Stroke::of(THIN).dash(CHAIN).under();
        level(&mut self.drawing, self.origin.y, from - AXIS_END, to + AXIS_END, chain);
    }

    /// Shafts in the inner lanes, what is larger further out.
    fn diameters(&mut self) {
        let (from, to) = self.ends();
        let (mut left, mut right) = (from - AXIS_END, to + AXIS_END);
        for side in SIDES {
            let mut own: Vec<&Diameter> =
                self.assembly.diameters.iter().filter(|d| d.side == side).collect();
            own.sort_by(|a, b| a.dim.mm.total_cmp(&b.dim.mm));
            for diameter in own {
                let across = across(self.assembly, diameter, self.scale.0, self.origin, SIZE);
                match side {
                    Side::Driver => {
                        across.draw_left(&mut self.drawing, left);
                        left -= across.lane();
                    }
                    Side::Driven => {
                        across.draw_right(&mut self.drawing, right);
                        right += across.lane();
                    }
                }
            }
        }
    }

    fn lengths(&mut self) {
        let (pack, gap, hubs) =
            lanes_of_lengths(self.assembly, self.scale.0, self.origin.x, self.low);
        for along in pack.into_iter().chain(gap) {
            along.draw(&mut self.drawing);
        }
        for side in SIDES {
            let half = self.assembly.half(side);
            let face = self.origin.x + side.sign() * self.assembly.half_gap * self.scale.0;
            let end = face + side.sign() * half.hub_length.mm * self.scale.0;
            let outside = match side {
                Side::Driver => Outside::Left(HEAD + 1.6),
                Side::Driven => Outside::Right(HEAD + 1.6),
            };
            let along = Along {
                from: face.min(end),
                to: face.max(end),
                y: self.low + hubs,
                part: self.low,
                size: Size::new(&half.hub_length.text, half.hub_length.known, SIZE),
                outside,
            };
            along.draw(&mut self.drawing);
        }
    }

    fn letters(&mut self) {
        let view = self.view();
        let shown = |letter: &char| {
            self.assembly.joint.is_none() || !super::joint::LETTERS.contains(letter)
        };
        let tags: Vec<Tag> = self
            .assembly
            .parts
            .iter()
            .filter_map(|part| Some((part.letter?, part.tag.as_ref()?)))
            .filter(|(letter, _)| shown(letter))
            .map(|(letter, (_, inside))| Tag { letter, end: view.place(*inside) })
            .collect();
        let (from, to) = self.ends();
        rail(
            &mut self.drawing,
            &tags,
            RAIL,
            (from - 6.0).max(MARGIN),
            (to + 6.0).min(WIDTH - MARGIN),
        );
    }

    /// Names in three columns, sorted by letter, then the scale and the printed rule.
    fn names(&mut self, y: f64) {
        let names = names(self.assembly);
        let rows = names.len().div_ceil(3);
        for (index, (letter, name)) in names.iter().enumerate() {
            let (column, row) = (real(index / rows), real(index % rows));
            let place = at(MARGIN + column * 0.32 * (WIDTH - 2.0 * MARGIN), y + row * ROW);
            self.drawing.text(&Words::new(*letter, NAME).strong(), place, Anchor::Start);
            self.drawing.text(&Words::new(name, NAME), place.plus(5.0, 0.0), Anchor::Start);
        }
        let foot = y + real(rows) * ROW + 2.6;
        level(&mut self.drawing, foot - 3.8, 0.0, WIDTH, Stroke::of(THIN));
        let section = self.assembly.section;
        let right = (WIDTH - MARGIN, foot);
        rule(&mut self.drawing, right, 42.0, self.scale.0, section.system);
        let mut notes = vec![format!("Scale {}", self.scale.1)];
        if stands(self.assembly, Known::Measured) {
            notes.push("framed: measured on this job".to_owned());
        }
        if self.assembly.edges.assumed {
            notes.push("broken, (brackets): assumed".to_owned());
        }
        let note = Words::new(notes.join(" · "), NOTE).colour(Colour::Soft);
        self.drawing.text(&note, at(MARGIN, foot), Anchor::Start);
    }
}

/// Whether any size shown has this standing.
pub(super) fn stands(a: &Assembly, known: Known) -> bool {
    let lengths = [&a.section.gap, &a.section.driver.hub_length, &a.section.driven.hub_length];
    a.diameters.iter().any(|d| d.dim.known == known) || lengths.iter().any(|d| d.known == known)
}

/// What lies between the flanges of a pack, and the gap, each in its lane, and the lane of the hubs'
/// lengths.
///
/// The gap has the first lane and the hubs the second. A pack takes the first where the gap is
/// wide enough to stand between the hubs; hubs that are turned inwards take it from the gap.
fn lanes_of_lengths(
    a: &Assembly,
    scale: f64,
    middle: f64,
    low: f64,
) -> (Option<Along>, Option<Along>, f64) {
    let [first, second] = LANES;
    let lane = |lane: f64| gap(a, scale, middle, (low, low + lane), SIZE);
    if a.between[1] > a.half_gap {
        return (None, lane(second), first);
    }
    let pack = a.flange_gap.as_ref().map(|dim| {
        let from = middle + a.between[0] * scale;
        let size = Size::new(&dim.text, dim.known, SIZE);
        let outside = Outside::Right(HEAD + 1.6);
        Along { from, to: from + dim.mm * scale, y: low + first, part: low, size, outside }
    });
    let wide = lane(second).filter(Along::fits);
    match pack {
        Some(pack) if wide.is_some() => (Some(pack), wide, second),
        _ => (None, lane(first), second),
    }
}

/// The gap's dimension in the lane at a height under the drawing; beside the gap where it is
/// narrower than its size: right of it if the driven hub is long enough, else left, else past the
/// driven hub's end.
pub(super) fn gap(
    a: &Assembly,
    scale: f64,
    middle: f64,
    (part, y): (f64, f64),
    written: f64,
) -> Option<Along> {
    let [from, to] = a.between;
    if to <= from {
        return None;
    }
    let size = Size::new(&a.section.gap.text, a.section.gap.known, written);
    let tail = HEAD + 1.6;
    let need = size.length() + tail + 3.0;
    let hub = |side: Side| a.half(side).hub_length.mm * scale;
    let outside = if hub(Side::Driven) > need {
        Outside::Right(tail)
    } else if hub(Side::Driver) > need {
        Outside::Left(tail)
    } else {
        Outside::Right(hub(Side::Driven) + 2.0)
    };
    Some(Along { from: middle + from * scale, to: middle + to * scale, y, part, size, outside })
}

fn names(a: &Assembly) -> Vec<(char, String)> {
    let tags = a.parts.iter().filter_map(|part| Some((part.letter?, part.tag.as_ref()?)));
    let mut names: Vec<_> = tags.map(|(letter, (name, _))| (letter, name.clone())).collect();
    names.sort_by_key(|(letter, _)| *letter);
    names
}
