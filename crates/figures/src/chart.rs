//! Two axes: heights over a run, with ticks, ruling, and what they are.

use crate::axis::{TICKS, round_up, tick_text, ticks};
use crate::geometry::{Point, Rect, at};
use crate::ink::{Anchor, Colour, Drawing, MEDIUM, Stroke, THIN, Words, level, upright};
use crate::labels::fitting;

/// A chart's ranges on its frame.
#[derive(Clone, Debug)]
pub(crate) struct Axes {
    pub frame: Rect,
    x: (f64, f64),
    y: (f64, f64),
    steps: (f64, f64),
    t: f64,
}

impl Axes {
    /// Axes on a sheet of a width, in type `t`, over ranges that are widened to round ends.
    pub fn new((width, height): (f64, f64), t: f64, x: (f64, f64), y: (f64, f64)) -> Self {
        let step_y = round_up((y.1 - y.0).max(1e-9) / (height / (2.6 * t)), &TICKS);
        let y = ((y.0 / step_y + 1e-9).floor() * step_y, (y.1 / step_y - 1e-9).ceil() * step_y);
        let labels = ticks(y.0, y.1, step_y).into_iter().map(|v| tick_text(v, step_y, false));
        let left = labels.map(|l| Words::new(l, 0.95 * t).width()).fold(0.0, f64::max) + 0.8 * t;
        let top = 2.2 * t;
        let frame = Rect::new(left, top, width - 1.2 * t, top + height);
        let step_x = round_up((x.1 - x.0).max(1e-9) / (frame.width() / (3.6 * t)), &TICKS);
        Self { frame, x, y, steps: (step_x, step_y), t }
    }

    /// Two pairs of axes with one left edge, so that their runs lie under one another.
    pub fn under_one_another(one: Self, other: Self) -> (Self, Self) {
        let left = one.frame.left.max(other.frame.left);
        let with = |axes: Self| Self { frame: Rect { left, ..axes.frame }, ..axes };
        (with(one), with(other))
    }

    /// Height of the whole sheet.
    pub fn sheet_height(&self) -> f64 {
        self.frame.bottom + 2.0 * self.t
    }

    pub fn at(&self, x: f64, y: f64) -> Point {
        let across = (x - self.x.0) / (self.x.1 - self.x.0) * self.frame.width();
        at(self.frame.left + across, self.y(y))
    }

    pub fn y(&self, y: f64) -> f64 {
        self.frame.bottom - (y - self.y.0) / (self.y.1 - self.y.0) * self.frame.height()
    }

    /// The same axes lower on the sheet.
    pub fn lower(self, by: f64) -> Self {
        let Rect { left, top, right, bottom } = self.frame;
        Self { frame: Rect::new(left, top + by, right, bottom + by), ..self }
    }

    /// Ruling, ticks and what the heights are; `unit` follows the last figure of the run.
    pub fn draw(&self, drawing: &mut Drawing, heights: &str, unit: &str) {
        self.heights(drawing, heights);
        self.run(drawing, unit);
    }

    /// Ruling, the figures beside it, and what the heights are.
    pub fn heights(&self, drawing: &mut Drawing, heights: &str) {
        for value in ticks(self.y.0, self.y.1, self.steps.1) {
            let y = self.y(value);
            let ruling = Stroke::of(THIN).colour(Colour::Rule).under();
            level(drawing, y, self.frame.left, self.frame.right, ruling);
            let words = self.soft(tick_text(value, self.steps.1, false));
            drawing.text(&words, at(self.frame.left - 0.5 * self.t, y), Anchor::End);
        }
        let base = Stroke::of(MEDIUM);
        let zero = self.y(0.0_f64.clamp(self.y.0, self.y.1));
        level(drawing, zero, self.frame.left, self.frame.right, base.under());
        if let Some(words) = fitting(heights, 0.95 * self.t, drawing.width - self.frame.left) {
            let place = at(self.frame.left, self.frame.top - 1.5 * self.t);
            drawing.text(&words.colour(Colour::Soft), place, Anchor::Start);
        }
    }

    /// Ticks at places of the run, each with its own words.
    pub fn places(&self, drawing: &mut Drawing, places: &[(f64, &str)]) {
        for (value, text) in places {
            let x = self.at(*value, 0.0).x;
            let (from, to) = (self.frame.bottom, self.frame.bottom + 0.3 * self.t);
            upright(drawing, x, from, to, Stroke::of(THIN).under());
            let words = self.soft((*text).to_owned());
            drawing.text(&words, at(x, self.frame.bottom + 1.15 * self.t), Anchor::Middle);
        }
    }

    fn soft(&self, text: String) -> Words {
        Words::new(text, 0.95 * self.t).colour(Colour::Soft)
    }

    fn run(&self, drawing: &mut Drawing, unit: &str) {
        let soft = |text: String| self.soft(text);
        let run = ticks(self.x.0, self.x.1, self.steps.0);
        // From the last one, whose unit may take the place of the figure before it.
        for (index, value) in run.iter().enumerate().rev() {
            let x = self.at(*value, 0.0).x;
            let (from, to) = (self.frame.bottom, self.frame.bottom + 0.3 * self.t);
            upright(drawing, x, from, to, Stroke::of(THIN).under());
            // The figure stands under its tick, the unit after the last one.
            let figure = soft(tick_text(*value, self.steps.0, false));
            let last = index + 1 == run.len();
            let words = if last { soft(format!("{} {unit}", figure.text)) } else { figure.clone() };
            let start = (x - figure.width() / 2.0).min(drawing.width - words.width());
            let place = at(start, self.frame.bottom + 1.15 * self.t);
            let room = words.bounds(place, Anchor::Start).grown(0.2 * self.t, 0.0);
            if !drawing.boxes.iter().any(|(other, _)| other.touches(room)) {
                drawing.text(&words, place, Anchor::Start);
            }
        }
    }

    /// A curve through points, as far as it lies in the frame.
    pub fn curve(&self, drawing: &mut Drawing, points: &[(f64, f64)], stroke: Stroke) {
        let mut run: Vec<Point> = Vec::new();
        for pair in points.windows(2) {
            let segment = (self.at(pair[0].0, pair[0].1), self.at(pair[1].0, pair[1].1));
            let Some((from, to)) = self.frame.clip_line(segment) else { continue };
            if run.last().is_none_or(|end| end.distance(from) > 1e-6) {
                drawing.path(&run, stroke);
                run = vec![from];
            }
            run.push(to);
        }
        drawing.path(&run, stroke);
    }

    /// The field between two curves, as far as it lies in the frame.
    pub fn between(&self, drawing: &mut Drawing, one: &[(f64, f64)], other: &[(f64, f64)]) {
        let there = one.iter().map(|(x, y)| self.at(*x, *y));
        let outline: Vec<Point> =
            there.chain(other.iter().rev().map(|(x, y)| self.at(*x, *y))).collect();
        drawing.fill(&self.frame.clip(&outline), Colour::Tint);
    }
}

/// Least and greatest of finite numbers, and zero.
pub(crate) fn extent(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values.fold((0.0, 0.0), |(low, high), v| (v.min(low), v.max(high)))
}

/// Whether a curve can be drawn: two points at least, all finite, running to the right.
pub(crate) fn is_curve(points: &[(f64, f64)]) -> bool {
    points.len() >= 2
        && points.iter().all(|(x, y)| x.is_finite() && y.is_finite() && y.abs() < 1e12)
        && points.windows(2).all(|pair| pair[0].0 <= pair[1].0)
        && points[0].0 < points[points.len() - 1].0
}
