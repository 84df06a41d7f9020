//! Dimension lines: extension lines, arrows, and the size with its standing.
//!
//! Extension lines start 1 mm off the part and pass 1.2 mm beyond. A size measured on this job is
//! pencil, typewritten, in a round-ended frame; one that was assumed stands in brackets.

use crate::face::Face;
use crate::geometry::{Point, Rect, at};
use crate::ink::{Anchor, Colour, Drawing, FRAME, Stroke, THIN, Words, level, upright};
use crate::section::Known;

/// Words of a size with the standing they are written in.
#[derive(Clone, Debug)]
pub(crate) struct Size {
    pub words: Words,
    framed: bool,
}

impl Size {
    pub fn new(text: &str, known: Known, size: f64) -> Self {
        match known {
            Known::Measured => Self { words: Words::new(text, size).entry(), framed: true },
            Known::Sheet => Self { words: Words::new(text, size), framed: false },
            Known::Assumed => Self { words: Words::new(format!("({text})"), size), framed: false },
        }
    }

    /// Turned to be read from the right.
    pub fn upright(self) -> Self {
        Self { words: self.words.upright(), ..self }
    }

    pub fn colour(&self) -> Colour {
        self.words.colour
    }

    /// Length along its line, frame and all.
    pub fn length(&self) -> f64 {
        self.words.width() + if self.framed { 2.0 * FRAME } else { 0.0 }
    }

    /// Thickness across its line, frame and descenders and all.
    pub fn thickness(&self) -> f64 {
        let fall = Face::fall(&self.words.text) * self.words.size;
        self.words.rise() + fall + if self.framed { 1.5 } else { 0.0 }
    }

    /// How far its middle stands off a line that it must clear by `room` on its lower side.
    fn offset(&self, room: f64) -> f64 {
        let fall = Face::fall(&self.words.text) * self.words.size;
        room + self.words.rise() / 2.0 + fall + if self.framed { 0.75 } else { 0.0 }
    }

    pub fn write(&self, drawing: &mut Drawing, place: Point, anchor: Anchor) -> Rect {
        if self.framed {
            let inset = match anchor {
                Anchor::Start => FRAME,
                Anchor::Middle => 0.0,
                Anchor::End => -FRAME,
            };
            drawing.framed(&self.words, place.plus(inset, 0.0), anchor)
        } else {
            drawing.text(&self.words, place, anchor)
        }
    }

    fn stroke(&self) -> Stroke {
        Stroke::of(THIN).colour(self.colour())
    }
}

/// Length of an arrowhead, mm.
pub(crate) const HEAD: f64 = 2.4;

/// Where a size stands that is wider than what it measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Outside {
    /// To the left, at the end of a tail so long.
    Left(f64),
    /// To the right, at the end of a tail so long.
    Right(f64),
}

/// A level dimension.
#[derive(Clone, Debug)]
pub(crate) struct Along {
    pub from: f64,
    pub to: f64,
    /// Height of the dimension line.
    pub y: f64,
    /// Where the extension lines begin.
    pub part: f64,
    pub size: Size,
    pub outside: Outside,
}

impl Along {
    /// Whether the size fits between its arrows.
    pub fn fits(&self) -> bool {
        let arrows = if self.size.framed { 1.0 } else { 1.6 };
        self.to - self.from > (self.size.length() + arrows).max(2.0 * HEAD + 1.0)
    }

    pub fn draw(&self, drawing: &mut Drawing) {
        let stroke = self.size.stroke();
        for x in [self.from, self.to] {
            upright(drawing, x, self.part + 1.0, self.y + 1.2, stroke);
        }
        level(drawing, self.y, self.from, self.to, stroke);
        let colour = self.size.colour();
        let (left, right) = (at(self.from, self.y), at(self.to, self.y));
        if self.fits() {
            drawing.arrow(left, (-1.0, 0.0), HEAD, colour);
            drawing.arrow(right, (1.0, 0.0), HEAD, colour);
            let middle = left.towards(right, 0.5).plus(0.0, -self.size.offset(0.75));
            self.size.write(drawing, middle, Anchor::Middle);
            return;
        }
        drawing.arrow(left, (1.0, 0.0), HEAD, colour);
        drawing.arrow(right, (-1.0, 0.0), HEAD, colour);
        let tails = match self.outside {
            Outside::Left(tail) => (tail, HEAD + 1.6),
            Outside::Right(tail) => (HEAD + 1.6, tail),
        };
        level(drawing, self.y, self.from - tails.0, self.from, stroke);
        level(drawing, self.y, self.to, self.to + tails.1, stroke);
        match self.outside {
            Outside::Left(tail) => {
                self.size.write(drawing, left.plus(-tail - 0.8, 0.0), Anchor::End)
            }
            Outside::Right(tail) => {
                self.size.write(drawing, right.plus(tail + 0.8, 0.0), Anchor::Start)
            }
        };
    }
}

/// An upright dimension beside a drawing that is the same above and below its axis.
#[derive(Clone, Debug)]
pub(crate) struct Across {
    /// Height of the axis.
    pub axis: f64,
    /// Half of what is measured.
    pub half: f64,
    /// Where the extension lines begin.
    pub part: f64,
    pub size: Size,
}

/// Room a size takes beside its line, mm.
const BESIDE: f64 = 0.9;

impl Across {
    /// Whether the size, turned, is shorter than what it measures.
    fn turned(&self) -> bool {
        self.size.length() < 2.0 * self.half - 1.0
    }

    /// Width of the lane that the dimension takes, from the lane before it.
    pub fn lane(&self) -> f64 {
        if self.turned() {
            3.0 + self.size.clone().upright().thickness() + BESIDE
        } else {
            4.2 + 2.4 + self.size.length()
        }
    }

    /// Draws to the left of `edge`; the line stands nearest to the part.
    pub fn draw_left(&self, drawing: &mut Drawing, edge: f64) {
        if self.turned() {
            let x = edge - 3.0;
            self.lines(drawing, x);
            let size = self.size.clone().upright();
            let place = at(x - size.offset(BESIDE), self.axis);
            size.write(drawing, place, Anchor::Middle);
        } else {
            let x = edge - 4.2;
            self.lines(drawing, x);
            self.size.write(drawing, at(x - 2.0, self.axis), Anchor::End);
        }
    }

    /// Draws to the right of `edge`; a turned size stands between the part and the line.
    pub fn draw_right(&self, drawing: &mut Drawing, edge: f64) {
        if self.turned() {
            let x = edge + self.lane();
            self.lines(drawing, x);
            let size = self.size.clone().upright();
            let place = at(x - size.offset(BESIDE), self.axis);
            size.write(drawing, place, Anchor::Middle);
        } else {
            let x = edge + 4.2;
            self.lines(drawing, x);
            self.size.write(drawing, at(x + 2.0, self.axis), Anchor::Start);
        }
    }

    fn lines(&self, drawing: &mut Drawing, x: f64) {
        let stroke = self.size.stroke();
        let (high, low) = (self.axis - self.half, self.axis + self.half);
        let out = if x < self.part { -1.0 } else { 1.0 };
        for y in [high, low] {
            level(drawing, y, self.part + out, x + 1.2 * out, stroke);
        }
        let colour = self.size.colour();
        let (top, bottom) = (at(x, high), at(x, low));
        if self.half > HEAD + 0.4 {
            upright(drawing, x, high, low, stroke);
            drawing.arrow(top, (0.0, -1.0), HEAD, colour);
            drawing.arrow(bottom, (0.0, 1.0), HEAD, colour);
        } else {
            upright(drawing, x, high - HEAD - 1.4, low + HEAD + 1.4, stroke);
            drawing.arrow(top, (0.0, 1.0), HEAD, colour);
            drawing.arrow(bottom, (0.0, -1.0), HEAD, colour);
        }
    }
}
