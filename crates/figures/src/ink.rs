//! Ink on paper: the few marks that every figure is made of.
//!
//! One user unit is one millimetre of paper. A [`Drawing`] collects marks and remembers, beside
//! them, the box of every word and every line that no word may lie on; `labels` asks it for
//! room, and the tests ask it for collisions. [`svg`](crate::svg) writes it out.

use crate::face::Face;
use crate::geometry::{Point, Rect, Segment, at};
use crate::hatch::Cut;

/// Line weights, mm: outlines; small parts; dimensions and leaders; hatch and thread.
pub(crate) const THICK: f64 = 0.5;
pub(crate) const MEDIUM: f64 = 0.35;
pub(crate) const THIN: f64 = 0.2;
pub(crate) const HAIR: f64 = 0.13;

/// Dashes, mm.
pub(crate) const CHAIN: &str = "6 .8 .9 .8";
pub(crate) const SHORT_CHAIN: &str = "3 .6 .6 .6";
pub(crate) const PHANTOM: &str = "6 .8 .9 .8 .9 .8";
pub(crate) const ASSUMED: &str = "2.6 .7";
pub(crate) const HIDDEN: &str = "1.6 .8";
pub(crate) const DOTTED: &str = ".35 1";

/// Sizes of type, mm. Figures of the print are 0.61 of it high, of the entry face 0.74.
pub(crate) const SIZE: f64 = 3.8;
pub(crate) const LETTER: f64 = 4.2;
pub(crate) const NAME: f64 = 3.7;
pub(crate) const NOTE: f64 = 3.3;

/// What a mark is drawn in; the page's sheet knows each by its class.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Colour {
    /// Printed: metal, limits, words, worked-out numbers.
    Ink,
    /// Second lines and units.
    Soft,
    /// Frames, centre lines of graphs, ticks.
    Edge,
    /// Ruling that carries no meaning.
    Rule,
    /// What this job wrote.
    Pencil,
    /// Hatching.
    Hatch,
    /// Metal that is not cut, or the white under a hatch.
    Metal,
    /// Ground of a plot, and the halo of a word that lies on a line.
    Leaf,
    /// How sure of what was measured: the pencil, thinned.
    Band,
    /// How sure of what was worked out: the ink, thinned.
    Tint,
}

/// Whether words must keep clear of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Bars {
    /// No word may lie on it.
    Words,
    /// A word may, where there is no better place for it.
    Rather,
    /// A word may: hatch, ruling, a centre line, the line a word names.
    Nothing,
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Stroke {
    pub weight: f64,
    pub colour: Colour,
    pub dash: Option<&'static str>,
    pub bars: Bars,
    pub round: bool,
}

impl Stroke {
    /// A full line of ink that bars words.
    pub const fn of(weight: f64) -> Self {
        Self { weight, colour: Colour::Ink, dash: None, bars: Bars::Words, round: false }
    }

    pub const fn colour(self, colour: Colour) -> Self {
        Self { colour, ..self }
    }

    pub const fn dash(self, dash: &'static str) -> Self {
        Self { dash: Some(dash), ..self }
    }

    /// Words may lie on it.
    pub const fn under(self) -> Self {
        Self { bars: Bars::Nothing, ..self }
    }

    /// Words keep clear of it where they can.
    pub const fn shy(self) -> Self {
        Self { bars: Bars::Rather, ..self }
    }

    /// With round ends.
    pub const fn rounded(self) -> Self {
        Self { round: true, ..self }
    }
}

/// Where a word hangs on its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

/// Level, or turned to be read from the right.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Lie {
    Level,
    Upright,
}

/// Words before they have a place.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Words {
    pub text: String,
    pub size: f64,
    pub face: Face,
    pub colour: Colour,
    pub lie: Lie,
    pub halo: bool,
}

impl Words {
    pub fn new(text: impl Into<String>, size: f64) -> Self {
        Self {
            text: text.into(),
            size,
            face: Face::Print,
            colour: Colour::Ink,
            lie: Lie::Level,
            halo: false,
        }
    }

    /// Semibold. That face lacks the diameter sign, which is then set as Ø.
    pub fn strong(self) -> Self {
        Self { face: Face::Strong, text: self.text.replace('⌀', "Ø"), ..self }
    }

    /// As this job wrote it: typewriter and pencil, a little smaller, for its figures are higher.
    pub fn entry(self) -> Self {
        Self { face: Face::Entry, colour: Colour::Pencil, size: self.size * 0.87, ..self }
    }

    pub fn colour(self, colour: Colour) -> Self {
        Self { colour, ..self }
    }

    pub fn upright(self) -> Self {
        Self { lie: Lie::Upright, ..self }
    }

    /// With a rim of ground, for a word that lies on a line.
    pub fn halo(self) -> Self {
        Self { halo: true, ..self }
    }

    pub fn width(&self) -> f64 {
        self.face.width(&self.text, self.size)
    }

    /// Height of its capitals.
    pub fn rise(&self) -> f64 {
        self.face.rise() * self.size
    }

    /// Its box, were it hung at `place`; the middle of its capitals lies on the point.
    pub fn bounds(&self, place: Point, anchor: Anchor) -> Rect {
        let width = self.width();
        let start = match anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => -width / 2.0,
            Anchor::End => -width,
        };
        let half = self.rise() / 2.0;
        let fall = Face::fall(&self.text) * self.size;
        match self.lie {
            Lie::Level => Rect::new(
                place.x + start,
                place.y - half,
                place.x + start + width,
                place.y + half + fall,
            ),
            Lie::Upright => Rect::new(
                place.x - half,
                place.y - start - width,
                place.x + half + fall,
                place.y - start,
            ),
        }
    }
}

/// One mark on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Mark {
    Path { points: Vec<Point>, closed: bool, stroke: Option<Stroke>, fill: Option<Colour> },
    Circle { centre: Point, radius: f64, stroke: Option<Stroke>, fill: Option<Colour> },
    Rounded { bounds: Rect, radius: f64, stroke: Stroke },
    Hatch { polygons: Vec<Vec<Point>>, cut: Cut },
    Text { words: Words, baseline: Point, anchor: Anchor, turn: Point },
}

/// A sheet of paper with marks on it.
#[derive(Clone, Debug)]
pub(crate) struct Drawing {
    pub width: f64,
    pub height: f64,
    pub marks: Vec<Mark>,
    /// Every word's box, its frame included.
    pub boxes: Vec<(Rect, String)>,
    /// Every line that bars words.
    pub bars: Vec<Segment>,
    /// Every line that words keep clear of where they can.
    pub shy: Vec<Segment>,
}

impl Drawing {
    pub fn new(width: f64, height: f64) -> Self {
        Self {
            width,
            height,
            marks: Vec::new(),
            boxes: Vec::new(),
            bars: Vec::new(),
            shy: Vec::new(),
        }
    }

    /// A line through points.
    pub fn path(&mut self, points: &[Point], stroke: Stroke) {
        self.trace(points, false, Some(stroke), None);
    }

    pub fn line(&mut self, from: Point, to: Point, stroke: Stroke) {
        self.path(&[from, to], stroke);
    }

    /// A closed line, filled or not.
    pub fn shape(&mut self, points: &[Point], stroke: Option<Stroke>, fill: Option<Colour>) {
        self.trace(points, true, stroke, fill);
    }

    pub fn fill(&mut self, points: &[Point], fill: Colour) {
        self.trace(points, true, None, Some(fill));
    }

    fn trace(
        &mut self,
        points: &[Point],
        closed: bool,
        stroke: Option<Stroke>,
        fill: Option<Colour>,
    ) {
        if points.len() < 2 {
            return;
        }
        let bars = match stroke.map(|s| s.bars) {
            Some(Bars::Words) => Some(&mut self.bars),
            Some(Bars::Rather) => Some(&mut self.shy),
            _ => None,
        };
        if let Some(bars) = bars {
            bars.extend(points.windows(2).map(|pair| (pair[0], pair[1])));
            if closed {
                bars.push((points[points.len() - 1], points[0]));
            }
        }
        self.marks.push(Mark::Path { points: points.to_vec(), closed, stroke, fill });
    }

    pub fn circle(
        &mut self,
        centre: Point,
        radius: f64,
        stroke: Option<Stroke>,
        fill: Option<Colour>,
    ) {
        self.marks.push(Mark::Circle { centre, radius, stroke, fill });
    }

    /// Hatches polygons; words that come later are still cut out of it.
    pub fn hatch(&mut self, polygons: Vec<Vec<Point>>, cut: Cut) {
        self.marks.push(Mark::Hatch { polygons, cut });
    }

    /// Writes words, the middle of their capitals on `place`.
    pub fn text(&mut self, words: &Words, place: Point, anchor: Anchor) -> Rect {
        let bounds = words.bounds(place, anchor);
        self.boxes.push((bounds, words.text.clone()));
        let baseline = place.plus(0.0, words.rise() / 2.0);
        self.marks.push(Mark::Text { words: words.clone(), baseline, anchor, turn: place });
        bounds
    }

    /// Writes words in a round-ended frame: a size measured on this job.
    pub fn framed(&mut self, words: &Words, place: Point, anchor: Anchor) -> Rect {
        let inner = self.text(words, place, anchor);
        let bounds = match words.lie {
            Lie::Level => inner.grown(FRAME, 0.75),
            Lie::Upright => inner.grown(0.75, FRAME),
        };
        if let Some(last) = self.boxes.last_mut() {
            last.0 = bounds;
        }
        let radius = bounds.width().min(bounds.height()) / 2.0;
        let stroke = Stroke::of(THIN).colour(words.colour).under();
        self.marks.push(Mark::Rounded { bounds, radius, stroke });
        bounds
    }

    /// A filled arrowhead with its tip at `tip`, pointing along `(dx, dy)`, slender as on a
    /// dimension line.
    pub fn arrow(&mut self, tip: Point, along: (f64, f64), size: f64, colour: Colour) {
        self.head(tip, along, size, 0.175, colour);
    }

    /// A broad arrowhead, for a move.
    pub fn arrow_wide(&mut self, tip: Point, along: (f64, f64), size: f64, colour: Colour) {
        self.head(tip, along, size, 0.4, colour);
    }

    fn head(&mut self, tip: Point, (dx, dy): (f64, f64), size: f64, half: f64, colour: Colour) {
        let length = dx.hypot(dy).max(1e-9);
        let (ux, uy) = (dx / length * size, dy / length * size);
        let (wx, wy) = (-uy * half, ux * half);
        let head = [tip, tip.plus(-ux + wx, -uy + wy), tip.plus(-ux - wx, -uy - wy)];
        self.fill(&head, colour);
        self.bars.push((head[1], head[2]));
        self.bars.push((tip, head[1].towards(head[2], 0.5)));
    }

    /// Whether a box is on the sheet and free of words and barring lines.
    pub fn is_free(&self, bounds: Rect) -> bool {
        let sheet = Rect::new(0.0, 0.0, self.width, self.height);
        sheet.holds(bounds)
            && !self.boxes.iter().any(|(other, _)| other.touches(bounds))
            && !self.bars.iter().any(|bar| bounds.crossed_by(*bar))
    }

    /// Whether a box also keeps clear of the lines that it rather should.
    pub fn is_clear(&self, bounds: Rect) -> bool {
        self.is_free(bounds) && !self.shy.iter().any(|bar| bounds.crossed_by(*bar))
    }

    /// What collides: word on word, a line through a word, a word off the sheet.
    #[cfg(test)]
    pub fn clashes(&self) -> Vec<String> {
        let sheet = Rect::new(0.0, 0.0, self.width, self.height);
        let mut found = Vec::new();
        for (index, (bounds, text)) in self.boxes.iter().enumerate() {
            if !sheet.holds(*bounds) {
                found.push(format!("off the sheet: {text} {bounds:?}"));
            }
            for (_, other) in self.boxes[index + 1..].iter().filter(|(b, _)| b.touches(*bounds)) {
                found.push(format!("word on word: {text} / {other}"));
            }
            let core = bounds.grown(-0.15, -0.15);
            if let Some(bar) = self.bars.iter().find(|bar| core.crossed_by(**bar)) {
                found.push(format!("line through: {text} {bounds:?} {bar:?}"));
            }
        }
        found
    }
}

/// Room between a framed word and the round ends of its frame, mm.
pub(crate) const FRAME: f64 = 1.0;

/// A dot that ends a leader; its rim shows on solid ink too.
pub(crate) fn leader_dot(drawing: &mut Drawing, place: Point) {
    let rim = Stroke::of(0.25).colour(Colour::Metal).under();
    drawing.circle(place, 0.55, Some(rim), Some(Colour::Ink));
}

/// A closed outline of a box.
pub(crate) fn outline(bounds: Rect) -> Vec<Point> {
    bounds.corners().to_vec()
}

/// A level line at `y` from one x to another.
pub(crate) fn level(drawing: &mut Drawing, y: f64, from: f64, to: f64, stroke: Stroke) {
    drawing.line(at(from, y), at(to, y), stroke);
}

/// An upright line at `x` from one y to another.
pub(crate) fn upright(drawing: &mut Drawing, x: f64, from: f64, to: f64, stroke: Stroke) {
    drawing.line(at(x, from), at(x, to), stroke);
}
