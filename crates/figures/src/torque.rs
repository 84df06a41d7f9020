//! Torque held against torque needed, on one scale.
//!
//! Friction holds from a least to a most: full to the least, hatched from there to the most. The key
//! carries up to its limit. What is needed stands as upright lines, named above.

use crate::axis::{TICKS, real, round_up, tick_text, ticks};
use crate::geometry::{Rect, at};
use crate::hatch::Cut;
use crate::ink::{
    Anchor, Colour, Drawing, HAIR, MEDIUM, Stroke, THICK, THIN, Words, level, outline, upright,
};
use crate::labels::{fitting, place};
use crate::{Figure, Paper, PaperError};

/// Torque that is needed.
#[derive(Clone, Debug, PartialEq)]
pub struct Needed {
    /// How much.
    pub value: f64,
    /// "full load 581".
    pub text: String,
}

/// Torque held and needed; all in one unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Torque {
    /// "N·m".
    pub unit: String,
    /// What friction holds: least and most.
    pub held: (f64, f64),
    /// That, as written: "2 054 to 4 397".
    pub held_text: String,
    /// What the key carries at its limit, and as written.
    pub key: Option<(f64, String)>,
    /// What is asked, least first.
    pub needed: Vec<Needed>,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TorqueError {
    /// A torque that is none, or most below least.
    #[error("{0} cannot be drawn as a torque")]
    NotANumber(f64),
    /// More lines than can be named.
    #[error("{0} torques are too many to draw")]
    Needed(usize),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`TorqueError`] for a number that is no torque, or too many of them.
pub fn draw(torque: &Torque, paper: Paper) -> Result<Figure, TorqueError> {
    paper.check()?;
    check(torque)?;
    Ok(Figure::of(&drawing(torque, paper), "Torque held and needed", says(torque)))
}

fn check(torque: &Torque) -> Result<(), TorqueError> {
    if torque.needed.len() > 6 {
        return Err(TorqueError::Needed(torque.needed.len()));
    }
    let (least, most) = torque.held;
    let numbers = [least, most, most - least];
    let all = numbers.into_iter().chain(torque.key.iter().map(|(value, _)| *value));
    let mut all = all.chain(torque.needed.iter().map(|needed| needed.value));
    let bad = all.find(|n| !(n.is_finite() && (0.0..1e15).contains(n)));
    match bad {
        Some(bad) => Err(TorqueError::NotANumber(bad)),
        None if highest(torque) <= 0.0 => Err(TorqueError::NotANumber(0.0)),
        None => Ok(()),
    }
}

fn highest(torque: &Torque) -> f64 {
    let key = torque.key.as_ref().map_or(0.0, |(value, _)| *value);
    // A key stronger by far than anything else would press the rest together: its bar runs off.
    let asked = torque.needed.iter().map(|needed| needed.value).fold(torque.held.1, f64::max);
    asked.max(key.min(if asked > 0.0 { 1.25 * asked } else { key }))
}

fn says(torque: &Torque) -> String {
    let needed: Vec<&str> = torque.needed.iter().map(|needed| needed.text.as_str()).collect();
    let key =
        torque.key.as_ref().map_or(String::new(), |(_, text)| format!("; the key carries {text}"));
    format!(
        "Torque in {}: friction holds {}{key}. Needed: {}.",
        torque.unit,
        torque.held_text,
        needed.join(", ")
    )
}

/// The sheet of torques that were checked.
pub(crate) fn drawing(torque: &Torque, paper: Paper) -> Drawing {
    Sheet::new(torque, paper).finish()
}

struct Sheet<'a> {
    torque: &'a Torque,
    t: f64,
    frame: Rect,
    high: f64,
    step: f64,
    drawing: Drawing,
}

impl<'a> Sheet<'a> {
    fn new(torque: &'a Torque, paper: Paper) -> Self {
        let t = paper.type_mm;
        let top = (1.5 * real(torque.needed.len()) + 0.8) * t;
        let rows = if torque.key.is_some() { 2.0 } else { 1.0 };
        let (left, width) = (0.6 * t, paper.width_mm - 1.8 * t);
        let most = highest(torque);
        let wide = Words::new(tick_text(most, 0.1 * most, false), t).width() + 1.5 * t;
        let step = round_up(most / (width / wide).max(2.0), &TICKS);
        let high = (1.02 * most / step).ceil() * step;
        let frame = Rect::new(left, top, left + width, top + (2.6 * rows + 0.8) * t);
        let drawing = Drawing::new(paper.width_mm, frame.bottom + (2.4 + 1.6 * rows) * t);
        Self { torque, t, frame, high, step, drawing }
    }

    fn x(&self, value: f64) -> f64 {
        self.frame.left + value.min(self.high) / self.high * self.frame.width()
    }

    fn finish(mut self) -> Drawing {
        self.axis();
        self.friction();
        self.key();
        self.needed();
        self.drawing
    }

    fn axis(&mut self) {
        let foot = self.frame.bottom;
        level(
            &mut self.drawing,
            foot,
            self.frame.left,
            self.frame.right,
            Stroke::of(MEDIUM).under(),
        );
        let mut taken = f64::NEG_INFINITY;
        let unit = Words::new(&self.torque.unit, 0.95 * self.t);
        let last = self.frame.right + self.t - unit.width() - 0.8 * self.t;
        for value in ticks(0.0, self.high, self.step) {
            let x = self.x(value);
            let stroke = Stroke::of(THIN).colour(Colour::Rule).under();
            upright(&mut self.drawing, x, self.frame.top, foot, stroke);
            let words = Words::new(tick_text(value, self.step, false), 0.95 * self.t);
            let half = words.width() / 2.0;
            let at_x = x.max(half);
            if at_x - half > taken && at_x + half < last {
                taken = at_x + half + 0.5 * self.t;
                let place = at(at_x, foot + 1.1 * self.t);
                self.drawing.text(&words.colour(Colour::Soft), place, Anchor::Middle);
            }
        }
        let place = at(self.frame.right + self.t, foot + 1.1 * self.t);
        self.drawing.text(&unit.colour(Colour::Soft), place, Anchor::End);
    }

    fn row(&self, index: f64) -> Rect {
        let top = self.frame.top + (2.6 * index + 0.8) * self.t;
        Rect::new(self.frame.left, top, self.frame.right, top + 1.8 * self.t)
    }

    /// What a bar is, below the axis, behind a small piece of it.
    fn named(&mut self, index: f64, text: &str) -> Rect {
        let y = self.frame.bottom + (2.9 + 1.6 * index) * self.t;
        let left = self.frame.left + 2.2 * self.t;
        if let Some(words) = fitting(text, self.t, self.drawing.width - left) {
            self.drawing.text(&words, at(left, y), Anchor::Start);
        }
        let half = 0.4 * self.t;
        Rect::new(self.frame.left, y - half, self.frame.left + 1.6 * self.t, y + half)
    }

    fn friction(&mut self) {
        let row = self.row(0.0);
        let (least, most) = (self.x(self.torque.held.0), self.x(self.torque.held.1));
        let text = format!("friction holds {} {}", self.torque.held_text, self.torque.unit);
        let piece = self.named(0.0, &text);
        let middle = f64::midpoint(piece.left, piece.right);
        for (bar, from, to) in [(row, least, most), (piece, middle, piece.right)] {
            self.drawing.fill(&outline(Rect { right: from, ..bar }), Colour::Soft);
            let perhaps = outline(Rect { left: from, right: to, ..bar });
            self.drawing.fill(&perhaps, Colour::Leaf);
            self.drawing.hatch(vec![perhaps.clone()], Cut::new(45.0, 0.4 * self.t));
            self.drawing.shape(&perhaps, Some(Stroke::of(MEDIUM).under()), None);
        }
    }

    fn key(&mut self) {
        let Some((value, text)) = &self.torque.key else { return };
        let row = self.row(1.0);
        let over = if *value > self.high { ", beyond the edge" } else { "" };
        let text = format!("the key carries {text} {}{over}", self.torque.unit);
        let piece = self.named(1.0, &text);
        for bar in [Rect { right: self.x(*value), ..row }, piece] {
            let corners = outline(bar);
            self.drawing.fill(&corners, Colour::Leaf);
            self.drawing.shape(&corners, Some(Stroke::of(MEDIUM).under()), None);
        }
    }

    /// Upright lines, each named to its right; the least has the highest name, so that no name lies on
    /// another's line.
    fn needed(&mut self) {
        let row = |index: usize| (1.5 * real(index) + 0.8) * self.t;
        let rows: Vec<f64> = (0..self.torque.needed.len()).map(row).collect();
        for (needed, y) in self.torque.needed.iter().zip(&rows) {
            let x = self.x(needed.value);
            let (top, foot) = (self.frame.top, self.frame.bottom);
            upright(&mut self.drawing, x, y - 0.5 * self.t, top, Stroke::of(HAIR).under());
            upright(&mut self.drawing, x, top, foot, Stroke::of(THICK).under());
        }
        for (needed, y) in self.torque.needed.iter().zip(&rows) {
            let x = self.x(needed.value);
            let Some(words) = fitting(&needed.text, self.t, self.drawing.width - 0.8) else {
                continue;
            };
            let spots = [
                (at(x + 0.4 * self.t, *y), Anchor::Start),
                (at(x - 0.4 * self.t, *y), Anchor::End),
                (at(self.drawing.width - 0.4, *y), Anchor::End),
            ];
            let within = Rect::new(0.0, 0.0, self.drawing.width, self.frame.top);
            place(&mut self.drawing, &words.halo(), &spots, within);
        }
    }
}
