//! The interference that would do, and the classes beside it.
//!
//! Heights are interference, clearance below zero. A class is a bar from its least to its greatest;
//! one that lies whole in the window is hatched. What holds, what is borne and what goes on hot are
//! lines with their names at the right; between them stands the window. What this job measured is
//! pencil, with its ±.
//!
//! Not here: how the window is found (`mechanics`), and which classes are worth showing (`job`).

use crate::axis::{TICKS, real, round_up, tick_text, ticks};
use crate::geometry::{Rect, at};
use crate::hatch::Cut;
use crate::ink::{
    ASSUMED, Anchor, Colour, Drawing, FRAME, HAIR, MEDIUM, Stroke, THICK, THIN, Words, level,
    outline, upright,
};
use crate::labels::{fitting, spread};
use crate::{Figure, Paper, PaperError};

/// A class.
#[derive(Clone, Debug, PartialEq)]
pub struct Class {
    /// "H7/p6".
    pub name: String,
    /// Least interference.
    pub least: f64,
    /// Greatest interference.
    pub greatest: f64,
    /// All of it lies in the window.
    pub inside: bool,
    /// It is the one that is asked for.
    pub wanted: bool,
}

/// A window of interference; all heights in one unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Window {
    /// "µm".
    pub unit: String,
    /// The least that holds.
    pub holds_from: Option<f64>,
    /// The greatest that is borne.
    pub bears_to: Option<f64>,
    /// The greatest that goes on hot.
    pub goes_on_to: Option<f64>,
    /// Loosest first.
    pub classes: Vec<Class>,
    /// As measured: value and ±.
    pub measured: Option<(f64, f64)>,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum WindowError {
    /// Neither a class nor a limit.
    #[error("neither a class nor a limit to draw")]
    Nothing,
    /// More classes than can stand side by side.
    #[error("{0} classes are too many to draw")]
    Classes(usize),
    /// A number that is none, or a class that ends below its beginning.
    #[error("{0} cannot be drawn as an interference")]
    NotANumber(f64),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`WindowError`] when there is nothing to draw, too much, or a number that is none.
pub fn draw(window: &Window, paper: Paper) -> Result<Figure, WindowError> {
    paper.check()?;
    check(window)?;
    Ok(Figure::of(&drawing(window, paper), "Interference that would do", says(window)))
}

/// The sheet of a window that was checked.
pub(crate) fn drawing(window: &Window, paper: Paper) -> Drawing {
    Sheet::new(window, paper).finish()
}

fn check(window: &Window) -> Result<(), WindowError> {
    let numbers = window.numbers();
    if numbers.is_empty() {
        return Err(WindowError::Nothing);
    }
    if window.classes.len() > 16 {
        return Err(WindowError::Classes(window.classes.len()));
    }
    let turned = window.classes.iter().find(|class| class.least > class.greatest);
    let turned = turned.map(|class| class.greatest);
    let bad = numbers.into_iter().find(|n| !(n.is_finite() && n.abs() < 1e9));
    turned.or(bad).map_or(Ok(()), |number| Err(WindowError::NotANumber(number)))
}

impl Window {
    fn numbers(&self) -> Vec<f64> {
        let limits = [self.holds_from, self.bears_to, self.goes_on_to].into_iter().flatten();
        let classes = self.classes.iter().flat_map(|class| [class.least, class.greatest]);
        let measured = self.measured.iter().flat_map(|(value, off)| [value - off, value + off]);
        limits.chain(classes).chain(measured).collect()
    }

    /// The greatest that both is borne and goes on.
    fn top(&self) -> Option<f64> {
        [self.bears_to, self.goes_on_to].into_iter().flatten().reduce(f64::min)
    }

    /// Limits as written at their lines.
    fn lines(&self) -> Vec<(f64, String)> {
        [
            ("holds from", self.holds_from),
            ("borne to", self.bears_to),
            ("goes on to", self.goes_on_to),
        ]
        .into_iter()
        .filter_map(|(words, value)| Some((value?, format!("{words} {}", short(value?)))))
        .collect()
    }
}

fn measured_text(value: f64) -> String {
    format!("measured {}", short(value))
}

/// As many digits as help: none from ten on.
fn short(value: f64) -> String {
    let places = usize::from(value.abs() < 10.0);
    format!("{value:.places$}").replace('-', "−")
}

fn says(window: &Window) -> String {
    let lines: Vec<String> = window.lines().into_iter().map(|(_, text)| text).collect();
    let inside: Vec<&str> =
        window.classes.iter().filter(|c| c.inside).map(|c| c.name.as_str()).collect();
    let inside = if inside.is_empty() { "none".to_owned() } else { inside.join(", ") };
    let measured = window.measured.map_or(String::new(), |(value, off)| {
        format!(" Measured {} ± {}.", short(value), short(off))
    });
    format!(
        "Interference in {}: {}. Classes that lie whole in it: {inside}.{measured}",
        window.unit,
        lines.join(", ")
    )
}

struct Sheet<'a> {
    window: &'a Window,
    t: f64,
    frame: Rect,
    low: f64,
    high: f64,
    step: f64,
    drawing: Drawing,
}

impl<'a> Sheet<'a> {
    fn new(window: &'a Window, paper: Paper) -> Self {
        let t = paper.type_mm;
        let all = window.numbers();
        let low = all.iter().copied().fold(0.0, f64::min);
        let high = all.iter().copied().fold(0.0, f64::max);
        let height = (0.5 * paper.width_mm).clamp(16.0 * t, 21.0 * t);
        let span = (high - low).max(1e-6);
        let step = round_up(span / (height / (2.6 * t)), &TICKS);
        let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
        let labels = ticks(low, high, step).into_iter().map(|v| tick_text(v, step, false));
        let left = labels.map(|l| Words::new(l, t).width()).fold(0.0, f64::max) + 0.9 * t;
        let measured = window.measured.map(|(value, _)| measured_text(value));
        let measured = measured.map(|text| Words::new(text, t).entry().width() + 2.0 * FRAME);
        let names = window.lines().into_iter().map(|(_, text)| Words::new(text, t).width());
        let names = names.chain(measured);
        let right = names.fold(0.0, f64::max) + 2.2 * t;
        let right = right.min(0.4 * paper.width_mm);
        let names = window.classes.iter().map(|class| Words::new(&class.name, t).width());
        let foot = names.fold(0.0, f64::max) + 1.2 * t;
        let frame = Rect::new(left, 1.9 * t, paper.width_mm - right, 1.9 * t + height);
        let drawing = Drawing::new(paper.width_mm, frame.bottom + foot);
        Self { window, t, frame, low, high, step, drawing }
    }

    fn y(&self, value: f64) -> f64 {
        self.frame.bottom - (value - self.low) / (self.high - self.low) * self.frame.height()
    }

    fn finish(mut self) -> Drawing {
        self.axis();
        self.bars();
        self.limits();
        self.measured();
        self.drawing
    }

    fn axis(&mut self) {
        for value in ticks(self.low, self.high, self.step) {
            let (y, zero) = (self.y(value), value.abs() < self.step * 1e-6);
            let stroke =
                if zero { Stroke::of(MEDIUM) } else { Stroke::of(THIN).colour(Colour::Rule) };
            level(&mut self.drawing, y, self.frame.left, self.frame.right, stroke.under());
            let words = Words::new(tick_text(value, self.step, false), 0.95 * self.t);
            let place = at(self.frame.left - 0.5 * self.t, y);
            self.drawing.text(&words.colour(Colour::Soft), place, Anchor::End);
        }
        let text = format!("interference, {}; below 0 clearance", self.window.unit);
        if let Some(words) = fitting(&text, self.t, self.drawing.width - self.frame.left) {
            let place = at(self.frame.left, 0.75 * self.t);
            self.drawing.text(&words.colour(Colour::Soft), place, Anchor::Start);
        }
    }

    /// The classes side by side, their names below, read from the right.
    fn bars(&mut self) {
        let classes = &self.window.classes;
        let pitch = self.frame.width() / real(classes.len().max(1));
        let wide = (0.5 * pitch).min(2.2 * self.t);
        for (index, class) in classes.iter().enumerate() {
            let middle = self.frame.left + pitch * (real(index) + 0.5);
            let (top, foot) = (self.y(class.greatest), self.y(class.least));
            let bounds = Rect::new(middle - wide / 2.0, top, middle + wide / 2.0, foot);
            let corners = outline(bounds);
            self.drawing.fill(&corners, Colour::Leaf);
            if class.inside {
                self.drawing.hatch(vec![corners.clone()], Cut::new(45.0, 0.4 * self.t));
            }
            let weight = if class.inside { THICK } else { THIN };
            self.drawing.shape(&corners, Some(Stroke::of(weight).under()), None);
            let words = Words::new(&class.name, self.t.min(0.9 * pitch)).upright();
            let words = if class.wanted { words.strong() } else { words };
            let half = words.width() / 2.0;
            let place = at(middle, self.frame.bottom + 0.6 * self.t + half);
            self.drawing.text(&words, place, Anchor::Middle);
        }
    }

    /// What holds, what is borne, what goes on: lines, and their names at the right.
    fn limits(&mut self) {
        for (value, _) in self.window.lines() {
            let y = self.y(value);
            level(
                &mut self.drawing,
                y,
                self.frame.left,
                self.frame.right,
                Stroke::of(MEDIUM).under(),
            );
        }
        self.opening();
        let lines = self.window.lines();
        let measured = self.window.measured.map(|(value, _)| value);
        let mut wanted: Vec<f64> = lines.iter().map(|(value, _)| self.y(*value)).collect();
        let mut lengths = vec![1.5 * self.t; lines.len()];
        wanted.extend(measured.map(|value| self.y(value)));
        lengths.extend(measured.map(|_| 1.2 * self.t + 2.0));
        let places = spread(&wanted, &lengths, self.frame.top - self.t, self.frame.bottom + self.t);
        let start = self.frame.right + 1.6 * self.t;
        let room = self.drawing.width - start;
        for ((y, place), (_, text)) in wanted.iter().zip(&places).zip(&lines) {
            let leader = Stroke::of(HAIR).under();
            self.drawing.line(at(self.frame.right, *y), at(start - 0.3 * self.t, *place), leader);
            if let Some(words) = fitting(text, self.t, room) {
                self.drawing.text(&words, at(start, *place), Anchor::Start);
            }
        }
        if let (Some(value), Some(y), Some(place)) = (measured, wanted.last(), places.last()) {
            let leader = Stroke::of(HAIR).colour(Colour::Pencil).under();
            self.drawing.line(at(self.frame.right, *y), at(start, *place), leader);
            if let Some(words) = fitting(&measured_text(value), self.t, room - 2.0 * FRAME) {
                self.drawing.framed(&words.entry(), at(start + FRAME, *place), Anchor::Start);
            }
        }
    }

    /// The window itself: a double line at the right edge of the frame from its foot to its top.
    fn opening(&mut self) {
        let (Some(from), Some(to)) = (self.window.holds_from, self.window.top()) else { return };
        if from >= to {
            return;
        }
        let (high, low) = (self.y(to), self.y(from));
        for off in [0.0, 0.35 * self.t] {
            let stroke = Stroke::of(MEDIUM).under();
            upright(&mut self.drawing, self.frame.right - off, high, low, stroke);
        }
    }

    fn measured(&mut self) {
        let Some((value, off)) = self.window.measured else { return };
        let (high, low) = (self.y(value + off.abs()), self.y(value - off.abs()));
        let band = outline(Rect::new(self.frame.left, high, self.frame.right, low));
        self.drawing.fill(&band, Colour::Band);
        let stroke = Stroke::of(THIN).colour(Colour::Pencil).dash(ASSUMED).under();
        let y = self.y(value);
        level(&mut self.drawing, y, self.frame.left, self.frame.right, stroke);
    }
}
