//! The whole sheet: what scales, what goes where.

use quantities::System;

use super::bench::Bench;
use super::plot::Plot;
use super::{LineUp, Machine, Stands, View};
use crate::Paper;
use crate::axis::{TICKS, plain, real, round_down, round_up, tick_text};
use crate::geometry::{Rect, at};
use crate::ink::{Anchor, Colour, Drawing, HAIR, Stroke, Words, upright};

/// How far along and across are drawn; both are stated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Scales {
    /// x of the train at the left edge of the plots, mm.
    pub from: f64,
    /// Paper over train, along.
    pub along: f64,
    /// Paper over train, across.
    pub across: f64,
    /// Left edge of the plots on paper.
    pub left: f64,
    /// Their right edge.
    pub right: f64,
    /// Between ticks, mm of the train.
    pub step: f64,
}

impl Scales {
    pub fn x(&self, along_mm: f64) -> f64 {
        self.left + (along_mm - self.from) * self.along
    }
}

const ALONG: [f64; 19] =
    [1.0, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.8, 2.0, 2.2, 2.5, 2.8, 3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0];
const ACROSS: [f64; 9] = [1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0];

/// Rows of moves outside the plots, for each view: none where they have room inside.
type Rows = [usize; 2];

pub(super) fn draw(lineup: &LineUp, paper: Paper) -> Drawing {
    let mut rows = [0, 0];
    loop {
        let (drawing, wanted) = attempt(lineup, paper, rows);
        if wanted == rows {
            return drawing;
        }
        rows = wanted;
    }
}

/// One try with so many rows for moves; says how many rows each view wants.
fn attempt(lineup: &LineUp, paper: Paper, rows: Rows) -> (Drawing, Rows) {
    let t = paper.type_mm;
    let height = plot_height(paper);
    let scales = scales(lineup, paper, height);
    let notes = wrapped(&notes(lineup, &scales), t, scales.right - scales.left);
    let row = move_row(t);
    let head = 1.5 * t;
    let side = Rect::new(scales.left, head, scales.right, head + height);
    let bench_top = side.bottom + real(rows[0]) * row;
    let bench = Bench::new(lineup, scales, t, bench_top);
    let above_top = bench.bottom();
    let above = Rect::new(scales.left, above_top, scales.right, above_top + height);
    let foot = above.bottom + real(rows[1]) * row + 0.75 * t;
    let end = foot + 0.75 * t + real(notes.len()) * 1.3 * t;
    let mut drawing = Drawing::new(paper.width_mm, end + 0.3 * t);

    let plots = [
        Plot::new(lineup, View::Side, scales, side, t),
        Plot::new(lineup, View::Above, scales, above, t),
    ];
    for plot in &plots {
        plot.ground(&mut drawing);
    }
    for x in uprights(lineup, &scales) {
        let stroke = Stroke::of(HAIR).colour(Colour::Edge).dash("1 .9").under();
        upright(&mut drawing, x, side.top, above.bottom, stroke);
    }
    bench.draw(&mut drawing);
    for plot in &plots {
        plot.lines(&mut drawing);
    }
    let corner = format!("crosswise × {}", plain(scales.across / scales.along));
    let head_y = head - 0.7 * t;
    title(&mut drawing, ("From the side", "up is up the page"), Some(&corner), head_y, &scales, t);
    title(&mut drawing, ("From above", "3 o’clock side is down the page"), None, foot, &scales, t);
    for (index, line) in notes.iter().enumerate() {
        let place = at(scales.left, foot + (1.5 + 1.3 * real(index)) * t);
        drawing.text(&Words::new(line, 0.9 * t).colour(Colour::Soft), place, Anchor::Start);
    }
    let wanted =
        [plots[0].moves(&mut drawing, rows[0], row), plots[1].moves(&mut drawing, rows[1], row)];
    for plot in &plots {
        plot.names(&mut drawing);
    }
    (drawing, wanted)
}

fn plot_height(paper: Paper) -> f64 {
    (0.3 * paper.width_mm).clamp(8.5 * paper.type_mm, 13.0 * paper.type_mm)
}

/// Height of a row of moves beside a plot.
fn move_row(t: f64) -> f64 {
    1.9 * t
}

fn scales(lineup: &LineUp, paper: Paper, height: f64) -> Scales {
    let t = paper.type_mm;
    let ranges = [View::Side, View::Above].map(|view| {
        let (low, high) = range(lineup, view);
        high - low
    });
    let across = round_down(0.86 * height / ranges[0].max(ranges[1]), &ACROSS);
    let unit = if lineup.system == System::Inch { 0.0254 } else { 1.0 };
    let step = round_up(1.7 * t / (across * unit), &TICKS);
    let most = (height / (across * unit) / step).ceil() * step;
    let widest = Words::new(tick_text(-most, step, true), 0.95 * t).width();
    let (left, right) = (widest + 0.7 * t, paper.width_mm - 0.4);
    let (from, to) = lineup.span();
    let margin = 0.015 * (to - from);
    let along = 1.0 / round_up((to - from + 2.0 * margin) / (right - left), &ALONG);
    let spare = (right - left) / along - (to - from);
    Scales { from: from - spare / 2.0, along, across, left, right, step: step * unit }
}

/// The least and the greatest height that must show in a view; zero always does.
pub(super) fn range(lineup: &LineUp, view: View) -> (f64, f64) {
    let mut heights = vec![0.0];
    for (index, machine) in lineup.machines.iter().enumerate() {
        heights.extend(machine_heights(machine, view));
        if machine.stands == Stands::Moves {
            for (plane, coupling) in lineup.wedges(index) {
                let middle = machine.sight(view).target.height(plane);
                let offset = coupling.limit.map_or(0.0, |wedge| wedge.offset_mm.abs());
                heights.extend([middle - offset, middle + offset]);
            }
        }
    }
    let low = heights.iter().copied().fold(f64::MAX, f64::min);
    let high = heights.iter().copied().fold(f64::MIN, f64::max);
    let least = 0.02;
    let short = ((least - (high - low)) / 2.0).max(0.0);
    (low - short, high + short)
}

fn machine_heights(machine: &Machine, view: View) -> Vec<f64> {
    let sight = machine.sight(view);
    let mut heights = Vec::new();
    for x in [machine.shaft_mm.0, machine.shaft_mm.1] {
        heights.push(sight.target.height(x));
        heights.extend(sight.after.map(|after| after.height(x)));
        if let Some((found, band)) = sight.found {
            let (middle, half) = (found.height(x), band.half_width(x));
            heights.extend([middle - half, middle + half]);
        }
    }
    for foot in &machine.feet {
        if let (Some((found, _)), Some(shift)) = (sight.found, foot.shift(view)) {
            let height = found.height(foot.x_mm);
            heights.extend([height, height + shift.mm]);
        }
    }
    heights
}

/// Where thin upright lines run through all three pictures; one for two planes close together.
fn uprights(lineup: &LineUp, scales: &Scales) -> Vec<f64> {
    let feet = lineup.machines.iter().filter(|m| m.stands == Stands::Moves).flat_map(|m| &m.feet);
    let mut all: Vec<f64> = feet.map(|foot| scales.x(foot.x_mm)).collect();
    for coupling in &lineup.couplings {
        let (left, right) = (scales.x(coupling.planes_mm.0), scales.x(coupling.planes_mm.1));
        if right - left < 1.5 {
            all.push(f64::midpoint(left, right));
        } else {
            all.extend([left, right]);
        }
    }
    all
}

/// A view's name, which way it is looked at if there is room, and what stands in the corner.
fn title(
    drawing: &mut Drawing,
    (name, way): (&str, &str),
    corner: Option<&str>,
    y: f64,
    scales: &Scales,
    t: f64,
) {
    let name = drawing.text(&Words::new(name, t).strong(), at(scales.left, y), Anchor::Start);
    let right = corner.map_or(scales.right, |corner| {
        let words = Words::new(corner, 0.95 * t).colour(Colour::Soft);
        drawing.text(&words, at(scales.right, y), Anchor::End).left
    });
    let way = Words::new(way, 0.95 * t).colour(Colour::Soft);
    let place = at(name.right + 0.8 * t, y);
    if way.bounds(place, Anchor::Start).right < right - 0.5 * t {
        drawing.text(&way, place, Anchor::Start);
    }
}

/// What the signs mean, as far as they are there.
fn notes(lineup: &LineUp, scales: &Scales) -> Vec<String> {
    let unit = if lineup.system == System::Inch { "mils" } else { "mm" };
    let along = plain(1.0 / scales.along);
    let mut notes = vec![
        format!("Figures in {unit}."),
        format!("Along 1:{along}, across {}:1.", plain(scales.across)),
    ];
    if lineup.machines.iter().any(|m| m.side.found.is_some() || m.above.found.is_some()) {
        notes.push("Tint: how sure.".to_owned());
    }
    let any = |of: fn(&super::Coupling) -> bool| lineup.couplings.iter().any(of);
    if any(|c| c.limit.is_some()) {
        notes.push("Hatched: outside the limit.".to_owned());
    }
    if any(|c| c.aim.is_some()) {
        notes.push("Dotted: the aim.".to_owned());
    }
    notes.push("Dashed: aimed at, cold.".to_owned());
    notes
}

/// Sentences on as few lines as the width takes.
fn wrapped(notes: &[String], t: f64, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for note in notes {
        let longer = lines.last().map(|line| format!("{line} {note}"));
        match longer {
            Some(longer) if Words::new(longer.clone(), 0.9 * t).width() < width => {
                lines.pop();
                lines.push(longer);
            }
            _ => lines.push(note.clone()),
        }
    }
    lines
}
