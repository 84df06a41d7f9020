//! The fit: zones of bore and shaft on one height scale, every reading with its whisker.
//!
//! Zones are hatched ink, as their class allows; readings are pencil, round along the key and
//! square across it; the means are joined by one dimension that carries the interference or the
//! clearance. Heights are deviations from the nominal size in the unit of the axis.
//!
//! Not here: classes and their zones (`tables`), what the fit is worth (`mechanics`).

use crate::axis::{TICKS, real, round_up, tick_text, ticks};
use crate::geometry::{Rect, at};
use crate::hatch::Cut;
use crate::ink::{
    Anchor, Colour, Drawing, HAIR, MEDIUM, Stroke, THICK, THIN, Words, level, outline, upright,
};
use crate::labels::{fitting, place};
use crate::{Figure, Paper, PaperError};

/// Which way across the bore a reading was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// In line with the key: a round mark.
    AlongKey,
    /// At a right angle to it: a square mark.
    AcrossKey,
}

/// One reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Where along the bore or shaft: "1".
    pub station: String,
    /// Which way across it.
    pub direction: Direction,
    /// Deviation from the nominal size.
    pub value: f64,
    /// Half its 95 % interval.
    pub plus_minus: f64,
}

/// What a class allows.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// Deviation.
    pub lower: f64,
    /// Deviation.
    pub upper: f64,
    /// As written: "bore, H7: +0 to +30".
    pub text: String,
}

/// Bore or shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it is called where it has no zone: "bore".
    pub name: String,
    /// What its class allows, if it has one.
    pub zone: Option<Zone>,
    /// In the order they were to be taken.
    pub readings: Vec<Reading>,
    /// Their mean, or whatever the fit was worked out from.
    pub mean: Option<f64>,
}

/// What comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// "0.034 mm".
    pub number: String,
    /// "± 0.003"; empty where it is not known.
    pub spread: String,
    /// "interference", "clearance".
    pub word: String,
}

/// A fit.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// What the heights are: "µm above 80 mm".
    pub axis: String,
    /// The hub's bore.
    pub bore: Part,
    /// The shaft.
    pub shaft: Part,
    /// `None` before both were measured.
    pub outcome: Option<Outcome>,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FitError {
    /// A deviation that is no number.
    #[error("{0} cannot be drawn as a deviation")]
    NotANumber(f64),
    /// A zone that ends below its beginning.
    #[error("zone from {lower} to {upper}")]
    Zone {
        /// Its lower end.
        lower: f64,
        /// Its upper end.
        upper: f64,
    },
    /// Neither zone nor reading.
    #[error("neither a zone nor a reading to draw")]
    Nothing,
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`FitError`] when there is nothing to draw, or a number that is none.
pub fn draw(fit: &Fit, paper: Paper) -> Result<Figure, FitError> {
    paper.check()?;
    check(fit)?;
    Ok(Figure::of(&drawing(fit, paper), "Fit of bore and shaft", says(fit)))
}

/// The sheet of a fit that was checked.
pub(crate) fn drawing(fit: &Fit, paper: Paper) -> Drawing {
    Sheet::new(fit, paper).finish()
}

fn check(fit: &Fit) -> Result<(), FitError> {
    let numbers = numbers(fit);
    if numbers.is_empty() {
        return Err(FitError::Nothing);
    }
    if let Some(bad) = numbers.into_iter().find(|n| !(n.is_finite() && n.abs() < 1e9)) {
        return Err(FitError::NotANumber(bad));
    }
    for zone in fit.parts().into_iter().filter_map(|part| part.zone.as_ref()) {
        if zone.lower > zone.upper {
            return Err(FitError::Zone { lower: zone.lower, upper: zone.upper });
        }
    }
    Ok(())
}

fn numbers(fit: &Fit) -> Vec<f64> {
    let mut all = Vec::new();
    for part in fit.parts() {
        all.extend(part.zone.iter().flat_map(|zone| [zone.lower, zone.upper]));
        all.extend(
            part.readings
                .iter()
                .flat_map(|r| [r.value - r.plus_minus.abs(), r.value + r.plus_minus.abs()]),
        );
        all.extend(part.mean);
    }
    all
}

impl Outcome {
    /// "interference 0.034 mm ± 0.003".
    fn words(&self) -> String {
        let all = [&self.word, &self.number, &self.spread];
        let said: Vec<&str> =
            all.into_iter().map(String::as_str).filter(|w| !w.is_empty()).collect();
        said.join(" ")
    }
}

impl Fit {
    fn parts(&self) -> [&Part; 2] {
        [&self.bore, &self.shaft]
    }
}

fn says(fit: &Fit) -> String {
    let part = |part: &Part| {
        let zone = part.zone.as_ref().map_or_else(|| part.name.clone(), |zone| zone.text.clone());
        match part.readings.len() {
            0 => format!("{zone}, not measured"),
            1 => format!("{zone}, one reading"),
            count => format!("{zone}, {count} readings"),
        }
    };
    let outcome =
        fit.outcome.as_ref().map_or(String::new(), |outcome| format!(" {}.", outcome.words()));
    format!("Heights in {}. {}; {}.{outcome}", fit.axis, part(&fit.bore), part(&fit.shaft))
}

/// A part's column on the sheet.
#[derive(Clone, Copy)]
struct Column {
    left: f64,
    right: f64,
}

struct Sheet<'a> {
    fit: &'a Fit,
    t: f64,
    frame: Rect,
    /// Values at the bottom and the top of the frame.
    low: f64,
    high: f64,
    step: f64,
    columns: [Column; 2],
    drawing: Drawing,
}

impl<'a> Sheet<'a> {
    fn new(fit: &'a Fit, paper: Paper) -> Self {
        let t = paper.type_mm;
        let height = (0.5 * paper.width_mm).clamp(15.0 * t, 20.0 * t);
        let all = numbers(fit);
        let low = all.iter().copied().fold(0.0, f64::min);
        let high = all.iter().copied().fold(0.0, f64::max);
        let span = (high - low).max(1e-6);
        let step = round_up(span / (height / (2.6 * t)), &TICKS);
        let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
        let labels = ticks(low, high, step).into_iter().map(|v| tick_text(v, step, false));
        let left = labels.map(|l| Words::new(l, t).width()).fold(0.0, f64::max) + 0.8 * t;
        let outcome = fit.outcome.as_ref().map_or(0.0, |outcome| {
            let number = Words::new(&outcome.number, 1.5 * t).strong().width();
            let below = [&outcome.spread, &outcome.word].map(|text| Words::new(text, t).width());
            below.into_iter().fold(number, f64::max) + 2.6 * t
        });
        let top = 1.9 * t;
        let frame = Rect::new(left, top, paper.width_mm - 0.3, top + height);
        let room = (frame.width() - outcome.min(0.45 * frame.width())) / 2.0;
        let column = |index: f64| {
            let start = frame.left + index * room;
            Column { left: start + 0.4 * t, right: start + room - 0.4 * t }
        };
        let drawing = Drawing::new(paper.width_mm, frame.bottom + 2.0 * t);
        Self { fit, t, frame, low, high, step, columns: [column(0.0), column(1.0)], drawing }
    }

    fn y(&self, value: f64) -> f64 {
        self.frame.bottom - (value - self.low) / (self.high - self.low) * self.frame.height()
    }

    fn finish(mut self) -> Drawing {
        self.axis();
        for (index, cut) in [Cut::new(45.0, 0.55), Cut::new(135.0, 0.4)].into_iter().enumerate() {
            let spacing = cut.spacing * self.t;
            self.zone(index, Cut { spacing, weight: 0.1, ..cut });
        }
        self.means();
        for index in 0..2 {
            self.readings(index);
        }
        self.outcome();
        for index in 0..2 {
            self.name(index);
        }
        self.drawing
    }

    fn axis(&mut self) {
        for value in ticks(self.low, self.high, self.step) {
            let (y, zero) = (self.y(value), value.abs() < self.step * 1e-6);
            let stroke =
                if zero { Stroke::of(MEDIUM) } else { Stroke::of(THIN).colour(Colour::Rule) };
            level(&mut self.drawing, y, self.frame.left, self.frame.right, stroke.under());
            let words =
                Words::new(tick_text(value, self.step, false), t(self)).colour(Colour::Soft);
            self.drawing.text(&words, at(self.frame.left - 0.5 * self.t, y), Anchor::End);
        }
        let room = self.frame.width();
        if let Some(words) = fitting(&self.fit.axis, self.t, room) {
            let place = at(self.frame.left, 0.75 * self.t);
            self.drawing.text(&words.colour(Colour::Soft), place, Anchor::Start);
        }
    }

    fn part(&self, index: usize) -> &'a Part {
        self.fit.parts()[index]
    }

    fn zone_bounds(&self, index: usize) -> Option<Rect> {
        let zone = self.part(index).zone.as_ref()?;
        let Column { left, right } = self.columns[index];
        Some(Rect::new(left, self.y(zone.upper), right, self.y(zone.lower)))
    }

    fn zone(&mut self, index: usize, cut: Cut) {
        let Some(bounds) = self.zone_bounds(index) else { return };
        let corners = outline(bounds);
        self.drawing.fill(&corners, Colour::Leaf);
        self.drawing.hatch(vec![corners.clone()], cut);
        self.drawing.shape(&corners, Some(Stroke::of(THICK)), None);
    }

    /// Dashed lines at the means, from their column to the dimension.
    fn means(&mut self) {
        let right = self.arrow_x() + 0.5 * self.t;
        for index in 0..2 {
            let Some(mean) = self.part(index).mean else { continue };
            let stroke = Stroke::of(THIN).colour(Colour::Pencil).dash("1.2 .8").under();
            let y = self.y(mean);
            level(&mut self.drawing, y, self.columns[index].left, right, stroke);
        }
    }

    fn arrow_x(&self) -> f64 {
        self.columns[1].right + 0.9 * self.t
    }

    fn readings(&mut self, index: usize) {
        let part = self.part(index);
        let mut stations: Vec<&str> = Vec::new();
        for reading in &part.readings {
            if !stations.contains(&reading.station.as_str()) {
                stations.push(&reading.station);
            }
        }
        let Column { left, right } = self.columns[index];
        let pitch = (right - left) / real(stations.len().max(1));
        for (number, station) in stations.iter().enumerate() {
            let own: Vec<&Reading> =
                part.readings.iter().filter(|r| r.station == **station).collect();
            let start = left + pitch * real(number);
            let step = pitch / (real(own.len()) + 1.0);
            for (count, reading) in own.iter().enumerate() {
                self.reading(reading, start + step * (real(count) + 1.0), step);
            }
            let words = fitting(station, 0.95 * self.t, pitch - 0.2 * self.t);
            if let Some(words) = words {
                let place = at(start + pitch / 2.0, self.frame.bottom + 1.05 * self.t);
                self.drawing.text(&words.colour(Colour::Soft), place, Anchor::Middle);
            }
        }
    }

    fn reading(&mut self, reading: &Reading, x: f64, room: f64) {
        let half = reading.plus_minus.abs();
        let (high, low) = (self.y(reading.value + half), self.y(reading.value - half));
        let pencil = Stroke::of(MEDIUM).colour(Colour::Pencil);
        let wide = (0.35 * self.t).min(0.35 * room);
        upright(&mut self.drawing, x, high, low, pencil);
        for y in [high, low] {
            level(&mut self.drawing, y, x - wide, x + wide, pencil);
        }
        let (centre, radius) = (at(x, self.y(reading.value)), (0.3 * self.t).min(0.3 * room));
        match reading.direction {
            Direction::AlongKey => {
                self.drawing.circle(centre, radius, None, Some(Colour::Pencil));
            }
            Direction::AcrossKey => {
                let square = Rect::new(x, centre.y, x, centre.y).grown(radius, radius);
                self.drawing.shape(&outline(square), Some(pencil), Some(Colour::Leaf));
            }
        }
    }

    /// One dimension between the means, with the number that comes of it.
    fn outcome(&mut self) {
        let (Some(bore), Some(shaft)) = (self.fit.bore.mean, self.fit.shaft.mean) else { return };
        let Some(outcome) = &self.fit.outcome else { return };
        let (x, from, to) = (self.arrow_x(), self.y(bore), self.y(shaft));
        let (high, low) = (from.min(to), from.max(to));
        let head = 0.75 * self.t;
        if low - high > 2.4 * head {
            upright(&mut self.drawing, x, high, low, Stroke::of(MEDIUM));
            self.drawing.arrow_wide(at(x, high), (0.0, -1.0), head, Colour::Ink);
            self.drawing.arrow_wide(at(x, low), (0.0, 1.0), head, Colour::Ink);
        } else {
            let tail = 1.8 * head;
            upright(&mut self.drawing, x, high - tail, low + tail, Stroke::of(HAIR));
            self.drawing.arrow_wide(at(x, high), (0.0, 1.0), head, Colour::Ink);
            self.drawing.arrow_wide(at(x, low), (0.0, -1.0), head, Colour::Ink);
        }
        let left = x + 0.9 * self.t;
        let room = self.drawing.width - left;
        let span = 2.3 * self.t;
        let middle =
            f64::midpoint(high, low).clamp(self.frame.top + span, self.frame.bottom - span);
        let line = |off: f64| at(left, middle + off * self.t);
        // For bold letters, which are wider.
        if let Some(number) = fitting(&outcome.number, 1.5 * self.t, room / 1.06) {
            self.drawing.text(&number.strong().halo(), line(-1.4), Anchor::Start);
        }
        for (text, off) in [(&outcome.spread, 0.2), (&outcome.word, 1.5)] {
            if let Some(words) = fitting(text, self.t, room) {
                let words = words.colour(Colour::Soft).halo();
                self.drawing.text(&words, line(off), Anchor::Start);
            }
        }
    }

    /// Names a zone above or below it, or in it, wherever there is room.
    fn name(&mut self, index: usize) {
        let part = self.part(index);
        let Column { left, right } = self.columns[index];
        let text = part.zone.as_ref().map_or(&part.name, |zone| &zone.text);
        let bounds = self.zone_bounds(index).unwrap_or_else(|| {
            let own = part.readings.iter().map(|r| self.y(r.value + r.plus_minus.abs()));
            let y = own.fold(self.frame.bottom, f64::min);
            Rect::new(left, y, right, y)
        });
        let end = self.columns[1].right;
        for size in [self.t, 0.9 * self.t, 0.8 * self.t] {
            let Some(words) = fitting(text, size, end - self.frame.left) else { continue };
            let words = words.halo();
            let mut spots = Vec::new();
            for away in [0.75, 1.5, 2.5] {
                for (x, anchor) in [(left, Anchor::Start), (right, Anchor::End)] {
                    spots.push((at(x, bounds.top - away * self.t), anchor));
                    spots.push((at(x, bounds.bottom + away * self.t), anchor));
                }
            }
            for row in 1..14 {
                let y = bounds.top + f64::from(row) * 0.9 * self.t;
                spots.push((at(f64::midpoint(left, right), y), Anchor::Middle));
            }
            let within = Rect { left: 0.0, top: 1.3 * self.t, ..self.frame };
            if place(&mut self.drawing, &words, &spots, within) {
                return;
            }
        }
    }
}

/// Size of the figures at the side.
fn t(sheet: &Sheet) -> f64 {
    0.95 * sheet.t
}
