//! Pressure along a hub, slice by slice, under its own outline.
//!
//! Above stands the hub's wall in section on a piece of its shaft, below it the mean pressure of each
//! slice: a full line at the upper end of the interference, a broken one at its lower end. Length runs
//! from the gap inwards. No bound is given at the hub's ends, and none is drawn.

use quantities::System;

use crate::axis::{TICKS, round_up, tick_text, ticks};
use crate::geometry::{Rect, at};
use crate::hatch::Cut;
use crate::ink::{
    Anchor, CHAIN, Colour, Drawing, HIDDEN, MEDIUM, Stroke, THICK, THIN, Words, level, outline,
    upright,
};
use crate::labels::fitting;
use crate::{Figure, Paper, PaperError};

/// A slice of the hub.
#[derive(Clone, Debug, PartialEq)]
pub struct Slice {
    /// Along the shaft, mm.
    pub length: f64,
    /// Outside diameter, mm.
    pub outside: f64,
    /// Diameter of the joint, mm.
    pub joint: f64,
    /// Pressure at the lower end of the interference.
    pub least: f64,
    /// At its upper end.
    pub most: f64,
    /// That, as written.
    pub text: String,
}

/// Pressure along a hub.
#[derive(Clone, Debug, PartialEq)]
pub struct Pressure {
    /// "MPa".
    pub unit: String,
    /// From the gap inwards.
    pub slices: Vec<Slice>,
    /// Bore of a hollow shaft, mm.
    pub shaft_bore: Option<f64>,
    /// Units that lengths are written in.
    pub system: System,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PressureError {
    /// No slice.
    #[error("a hub without a slice")]
    Nothing,
    /// More slices than can be drawn.
    #[error("{0} slices are too many to draw")]
    Slices(usize),
    /// A size or a pressure that is none.
    #[error("{0} cannot be drawn")]
    NotANumber(f64),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`PressureError`] when there is nothing to draw, too much, or a number that is none.
pub fn draw(pressure: &Pressure, paper: Paper) -> Result<Figure, PressureError> {
    paper.check()?;
    check(pressure)?;
    Ok(Figure::of(&drawing(pressure, paper), "Pressure along the hub", says(pressure)))
}

/// The sheet of a hub that was checked.
pub(crate) fn drawing(pressure: &Pressure, paper: Paper) -> Drawing {
    Sheet::new(pressure, paper).finish()
}

fn check(pressure: &Pressure) -> Result<(), PressureError> {
    if pressure.slices.is_empty() {
        return Err(PressureError::Nothing);
    }
    if pressure.slices.len() > 24 {
        return Err(PressureError::Slices(pressure.slices.len()));
    }
    for slice in &pressure.slices {
        let sizes = [slice.length, slice.joint, slice.outside - slice.joint];
        let bad = sizes.into_iter().find(|size| !(size.is_finite() && *size > 0.0 && *size < 1e6));
        let loads = [slice.least, slice.most];
        let bad = bad.or(loads.into_iter().find(|p| !(p.is_finite() && (0.0..1e9).contains(p))));
        if let Some(bad) = bad {
            return Err(PressureError::NotANumber(bad));
        }
    }
    let bore = pressure.shaft_bore.unwrap_or(0.0);
    let fits = pressure.slices.iter().all(|slice| bore < slice.joint) && bore >= 0.0;
    if fits { Ok(()) } else { Err(PressureError::NotANumber(bore)) }
}

fn says(pressure: &Pressure) -> String {
    let slices: Vec<String> = pressure
        .slices
        .iter()
        .map(|slice| {
            let length = length(slice.length, pressure.system);
            format!("{} over {length}", slice.text)
        })
        .collect();
    format!(
        "Mean contact pressure in {} from the gap inwards: {}. No bound is given at the ends of the hub.",
        pressure.unit,
        slices.join(", then ")
    )
}

fn length(mm: f64, system: System) -> String {
    match system {
        System::Metric => format!("{mm:.0} mm"),
        System::Inch => format!("{:.2} in", mm / 25.4),
    }
}

/// The shaft is shown from this part of its radius on.
const SHAFT_FROM: f64 = 0.75;

struct Sheet<'a> {
    pressure: &'a Pressure,
    t: f64,
    /// The hub's wall and a piece of its shaft.
    hub: Rect,
    /// Radius at the lower edge of that piece, mm.
    base: f64,
    /// Pressure against length.
    frame: Rect,
    /// Paper over job, of lengths and radii.
    scale: f64,
    high: f64,
    step: f64,
    drawing: Drawing,
}

impl<'a> Sheet<'a> {
    fn new(pressure: &'a Pressure, paper: Paper) -> Self {
        let t = paper.type_mm;
        let most = pressure.slices.iter().map(|slice| slice.most).fold(0.0, f64::max).max(1e-9);
        let height = 9.0 * t;
        let step = round_up(1.15 * most / (height / (2.4 * t)), &TICKS);
        let high = (1.15 * most / step).ceil() * step;
        let labels = ticks(0.0, high, step).into_iter().map(|v| tick_text(v, step, false));
        let left = labels.map(|l| Words::new(l, t).width()).fold(0.0, f64::max) + 0.9 * t;
        let length: f64 = pressure.slices.iter().map(|slice| slice.length).sum();
        let radius = pressure.slices.iter().map(|slice| slice.outside / 2.0).fold(0.0, f64::max);
        let joints = pressure.slices.iter().map(|slice| slice.joint / 2.0);
        let base = SHAFT_FROM * joints.fold(f64::INFINITY, f64::min);
        let room = paper.width_mm - left - 0.5 * t;
        // One scale for both ways, so that the hub looks as it is; about a third as high as the paper is wide.
        let scale = (room / length).min(0.34 * paper.width_mm / (radius - base));
        let top = 0.8 * t;
        let hub = Rect::new(left, top, left + scale * length, top + scale * (radius - base));
        let under = hub.bottom + 3.4 * t;
        let frame = Rect::new(left, under, hub.right, under + height);
        let drawing = Drawing::new(paper.width_mm, frame.bottom + 3.9 * t);
        Self { pressure, t, hub, base, frame, scale, high, step, drawing }
    }

    fn finish(mut self) -> Drawing {
        self.outline();
        self.axis();
        self.steps();
        self.words();
        self.drawing
    }

    /// Every slice with where it begins and ends on paper.
    fn slices(&self) -> Vec<(&'a Slice, f64, f64)> {
        let mut from = self.frame.left;
        let place = |slice: &'a Slice| {
            let start = from;
            from += self.scale * slice.length;
            (slice, start, from)
        };
        self.pressure.slices.iter().map(place).collect()
    }

    /// The wall cut open, the shaft whole unless it is hollow; broken off below.
    fn outline(&mut self) {
        let height = |sheet: &Self, diameter: f64| {
            sheet.hub.bottom - sheet.scale * (diameter / 2.0 - sheet.base).max(0.0)
        };
        let foot = self.hub.bottom;
        for (slice, from, to) in self.slices() {
            let (outside, joint) = (height(self, slice.outside), height(self, slice.joint));
            let ring = outline(Rect::new(from, outside, to, joint));
            self.drawing.hatch(vec![ring.clone()], Cut::new(45.0, 0.5 * self.t));
            self.drawing.shape(&ring, Some(Stroke::of(MEDIUM).under()), None);
            level(&mut self.drawing, joint, from, to, Stroke::of(THICK).under());
            if let Some(bore) = self.pressure.shaft_bore {
                let inside = height(self, bore);
                let wall = outline(Rect::new(from, joint, to, inside));
                self.drawing.hatch(vec![wall], Cut::new(135.0, 0.5 * self.t));
                if inside < foot {
                    level(&mut self.drawing, inside, from, to, Stroke::of(MEDIUM).under());
                }
            }
        }
        let broken = Stroke::of(THIN).colour(Colour::Edge).dash(CHAIN).under();
        let over = 0.4 * self.t;
        level(&mut self.drawing, foot, self.hub.left - over, self.hub.right + over, broken);
        let joint = |slice: &Slice| height(self, slice.joint);
        let ends = [self.pressure.slices.first(), self.pressure.slices.last()];
        let [left, right] = ends.map(|slice| slice.map_or(foot, joint));
        for (x, top) in [(self.hub.left, left), (self.hub.right, right)] {
            upright(&mut self.drawing, x, top, foot, Stroke::of(THIN).under());
        }
    }

    fn y(&self, value: f64) -> f64 {
        self.frame.bottom - value / self.high * self.frame.height()
    }

    fn axis(&mut self) {
        for value in ticks(0.0, self.high, self.step) {
            let (y, zero) = (self.y(value), value < self.step * 1e-6);
            let stroke =
                if zero { Stroke::of(MEDIUM) } else { Stroke::of(THIN).colour(Colour::Rule) };
            level(&mut self.drawing, y, self.frame.left, self.frame.right, stroke.under());
            let words = Words::new(tick_text(value, self.step, false), 0.95 * self.t);
            let place = at(self.frame.left - 0.5 * self.t, y);
            self.drawing.text(&words.colour(Colour::Soft), place, Anchor::End);
        }
        let text = format!("mean pressure of each slice, {}", self.pressure.unit);
        if let Some(words) = fitting(&text, self.t, self.drawing.width) {
            let place = at(0.0, self.frame.top - 1.5 * self.t);
            self.drawing.text(&words.colour(Colour::Soft), place, Anchor::Start);
        }
    }

    fn steps(&mut self) {
        for (slice, from, to) in self.slices() {
            let (most, least) = (self.y(slice.most), self.y(slice.least));
            if slice.most > 0.0 {
                let under = outline(Rect::new(from, most, to, self.frame.bottom));
                self.drawing.fill(&under, Colour::Leaf);
            }
            for x in [from, to] {
                upright(&mut self.drawing, x, most, self.frame.bottom, Stroke::of(THIN).under());
            }
            level(&mut self.drawing, most, from, to, Stroke::of(THICK).under());
            let broken = Stroke::of(MEDIUM).dash(HIDDEN).under();
            level(&mut self.drawing, least, from, to, broken);
            let room = to - from - 0.3 * self.t;
            let place = at(f64::midpoint(from, to), most - 0.8 * self.t);
            if let Some(words) =
                fitting(&slice.text, 1.1 * self.t, room).filter(|w| !w.text.ends_with('…'))
            {
                self.drawing.text(&words.strong().halo(), place, Anchor::Middle);
            }
        }
    }

    fn words(&mut self) {
        let total: f64 = self.pressure.slices.iter().map(|slice| slice.length).sum();
        let text = format!("from the gap inwards, {}", length(total, self.pressure.system));
        if let Some(words) = fitting(&text, 0.95 * self.t, self.drawing.width - self.frame.left) {
            let place = at(self.frame.left, self.frame.bottom + self.t);
            self.drawing.text(&words.colour(Colour::Soft), place, Anchor::Start);
        }
        let note = "Full: most interference. Broken: least. No bound is given at the ends.";
        if let Some(words) = fitting(note, 0.9 * self.t, self.drawing.width) {
            let place = at(0.0, self.drawing.height - 1.0 * self.t);
            self.drawing.text(&words.colour(Colour::Soft), place, Anchor::Start);
        }
    }
}
