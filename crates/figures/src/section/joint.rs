//! How a disc pack is bolted: in section, seen along the axis, and one bolt enlarged.
//!
//! At the scale of the section bolt, nut and washer cannot be told apart, so their letters live
//! in the enlarged picture. That one is no drawing to scale and carries no sizes.

use std::f64::consts::TAU;

use super::assembly::{Assembly, Side};
use super::fasteners::{centre_line, plain_head};
use super::shape::{COVER, Edges, HUB, Shape, View, block};
use crate::geometry::{Point, at, clock, regular};
use crate::hatch::Cut;
use crate::ink::{
    Anchor, CHAIN, Colour, Drawing, MEDIUM, NOTE, Stroke, THICK, THIN, Words, leader_dot, level,
    upright,
};
use crate::labels::{CIRCLE, Tag, letter, rail};

/// Letters of the enlarged picture that the section leaves out.
pub(super) const LETTERS: [char; 3] = ['H', 'N', 'W'];

/// A bolted pack, in millimetres of the job.
#[derive(Clone, Debug)]
pub(super) struct Joint {
    pub d: f64,
    /// Of the hub's barrel.
    pub hub: f64,
    /// Outside of the flanges.
    pub flange: f64,
    /// Radius of the bolt circle.
    pub circle: f64,
    /// Diameter of a bolt.
    pub bolt: f64,
    /// Thickness of a flange.
    pub thick: f64,
    /// Between the flanges that hold a pack.
    pub width: f64,
    /// Inside and outside radius of a pack.
    pub pack: (f64, f64),
    pub bolts: u32,
    /// Letter of what the bolts of the other half are held by.
    pub far: char,
}

impl Joint {
    /// Thickness of a washer.
    pub fn washer(&self) -> f64 {
        0.27 * self.width
    }

    /// Radius of the hole in which a nut stands free.
    pub fn wide_hole(&self) -> f64 {
        0.98 * self.bolt
    }

    /// Where the packs lie along the axis.
    pub fn gaps(&self, two: bool, [from, to]: [f64; 2]) -> Vec<(f64, f64)> {
        let w = self.width;
        if two { vec![(from, from + w), (to - w, to)] } else { vec![(from, to)] }
    }
}

/// Heights over the bolt's diameter, near enough for a drawing.
const HEAD: f64 = 0.6;
const NUT: f64 = 0.95;
const HALF: f64 = 0.86;

/// A bolt in section: head outside the flange that holds it, washers at the pack, and the nut with
/// its locking ring in the wide hole of the other flange.
pub(super) fn bolted(j: &Joint, (from, to): (f64, f64), held: Side) -> Vec<Shape> {
    let (out, b, y) = (held.sign(), j.bolt, j.circle);
    let (near, nut) = if held == Side::Driver { (from, to) } else { (to, from) };
    let head = near + out * j.thick;
    let end = |share: f64| nut - out * share * NUT * b;
    let tip = end(1.0) - out * 0.15 * b;
    let mut shapes = vec![Shape::small(block((head, y - b / 2.0), (tip, y + b / 2.0)))];
    shapes.extend(washers(j, (from, to), y));
    shapes.extend(plain_head(head, out * HEAD * b, y, HALF * b));
    let high = [(nut, HALF), (end(0.7), HALF), (end(0.7), 0.8 * HALF), (end(1.0), 0.8 * HALF)];
    let mut outline: Vec<Point> = high.iter().map(|(x, h)| at(*x, y + h * b)).collect();
    outline.extend(high.iter().rev().map(|(x, h)| at(*x, y - h * b)));
    shapes.push(Shape::small(outline));
    for up in [-1.0, 1.0] {
        let edge = y + up * 0.45 * b;
        shapes.push(Shape::hair((nut, edge), (end(0.7), edge), 0.13));
        let ring = block((end(0.7), y + up * 0.8 * HALF * b), (end(0.92), y + up * b / 2.0));
        shapes.push(Shape::Ink(ring));
    }
    shapes.push(centre_line(head + out * (HEAD + 0.4) * b, tip - out * 0.4 * b, y));
    shapes
}

/// Both washers of a bolt in section, their rounded side to the pack.
fn washers(j: &Joint, (from, to): (f64, f64), y: f64) -> Vec<Shape> {
    let (w, b) = (j.washer(), j.bolt);
    let mut shapes = Vec::new();
    for (pack, away) in [(from + w, -1.0), (to - w, 1.0)] {
        for up in [-1.0, 1.0] {
            let outline = [(0.0, 0.55), (0.0, 0.72), (0.35, 0.9), (1.0, 0.9), (1.0, 0.55)];
            let points = outline.map(|(x, r)| at(pack + away * x * w, y + up * r * b));
            shapes.push(Shape::small(points.to_vec()));
        }
    }
    shapes
}

/// Bolts below the axis, each with its head on the side that its own number gives.
pub(super) fn lower_bolt(j: &Joint, (from, to): (f64, f64), held: Side) -> Vec<Shape> {
    let (w, b) = (j.washer(), j.bolt);
    let mut shapes = Vec::new();
    for number in 0..j.bolts {
        let angle = TAU * f64::from(number) / f64::from(j.bolts);
        let (y, before_us) = (j.circle * angle.cos(), angle.sin() >= -1e-9);
        if y > -0.6 * b || !before_us {
            continue;
        }
        let own = number % 2 == 0;
        let out = if own { held.sign() } else { -held.sign() };
        let face = if out < 0.0 { from - j.thick } else { to + j.thick };
        shapes.extend(plain_head(face, out * HEAD * b, y, HALF * b));
        for (pack, away) in [(from + w, -1.0), (to - w, 1.0)] {
            let cone = [(0.0, -0.72), (0.0, 0.72), (1.0, 0.9), (1.0, -0.9)];
            let points = cone.map(|(x, r)| at(pack + away * x * w, y + r * b));
            shapes.push(Shape::small(points.to_vec()));
        }
    }
    shapes
}

/// Where the two pictures of the second row stand.
const FACE_X: f64 = 45.0;
const BOLT_X: f64 = 130.0;
const FACE_RADIUS: f64 = 22.0;

impl Joint {
    /// Draws the second row below `top`.
    pub fn draw(&self, drawing: &mut Drawing, assembly: &Assembly, top: f64) {
        let centre = at(FACE_X, top + 32.0);
        self.face(drawing, assembly, centre);
        let caption = |text: &str| Words::new(text, NOTE).colour(Colour::Soft);
        let y = centre.y + 34.5;
        drawing.text(
            &caption("seen from the driven end, bolt 1 turned to the top"),
            at(FACE_X, y),
            Anchor::Middle,
        );
        let y = y + 5.4;
        for (x, by, fill) in
            [(FACE_X - 24.0, 'B', Colour::Ink), (FACE_X + 6.0, self.far, Colour::Metal)]
        {
            drawing.circle(at(x, y), 1.4, Some(Stroke::of(THIN)), Some(fill));
            drawing.text(&Words::new(format!("held by {by}"), NOTE), at(x + 2.6, y), Anchor::Start);
        }
        let centre = at(BOLT_X, top + 34.0);
        self.enlarged(drawing, centre);
        let text = format!("one bolt, enlarged: tight in B, free in the wide hole of {}", self.far);
        drawing.text(&caption(&text), at(BOLT_X, y), Anchor::Middle);
    }

    /// Along the axis: hexagons full where B holds the bolt, open where the other half does.
    fn face(&self, drawing: &mut Drawing, assembly: &Assembly, centre: Point) {
        let s = FACE_RADIUS / self.flange;
        let circle = |drawing: &mut Drawing, r: f64, stroke: Stroke, fill| {
            drawing.circle(centre, r * s, Some(stroke), fill);
        };
        circle(drawing, self.flange, Stroke::of(THICK), Some(Colour::Metal));
        circle(drawing, self.pack.0, Stroke::of(THIN), None);
        circle(drawing, self.pack.1, Stroke::of(THIN), None);
        let ring = |r: f64| regular(centre, r * s, 120, 0.0);
        drawing.hatch(vec![ring(self.pack.1), ring(self.pack.0)], Cut::new(0.0, 0.45));
        let bore = match self.far {
            'C' => assembly.half(Side::Driven).shaft.mm / 2.0,
            _ => self.d / 2.0,
        };
        circle(drawing, bore.min(self.pack.0), Stroke::of(THICK), Some(Colour::Metal));
        circle(drawing, self.circle, Stroke::of(THIN).dash(CHAIN).under(), None);
        let chain = Stroke::of(THIN).dash(CHAIN).under();
        let reach = FACE_RADIUS + 1.3;
        level(drawing, centre.y, centre.x - reach, centre.x + reach, chain);
        upright(drawing, centre.x, centre.y - reach, centre.y + reach, chain);
        for number in 0..self.bolts {
            let angle = TAU * f64::from(number) / f64::from(self.bolts);
            let place = clock(centre, self.circle * s, angle);
            let size = (self.bolt * s).min(0.42 * TAU * self.circle * s / f64::from(self.bolts));
            let line = Stroke::of(MEDIUM).under();
            drawing.circle(place, 1.05 * size, Some(line), Some(Colour::Metal));
            let full = number % 2 == 0;
            let fill = if full { Colour::Ink } else { Colour::Metal };
            drawing.shape(&regular(place, HALF * size, 6, angle), Some(line), Some(fill));
            if !full {
                drawing.circle(place, 0.45 * size, Some(Stroke::of(THIN)), None);
            }
            let text = Words::new((number + 1).to_string(), NOTE);
            drawing.text(&text, clock(centre, FACE_RADIUS + 3.6, angle), Anchor::Middle);
        }
    }

    /// One bolted joint, large: which flange holds it, which lets it move.
    fn enlarged(&self, drawing: &mut Drawing, centre: Point) {
        let j = self.for_the_eye();
        let (b, y) = (j.bolt, j.circle);
        let (from, to) = (0.0, j.width);
        let (low, high) = (y - 2.9 * b, y + 2.5 * b);
        let scale = 40.0 / (high - low);
        let middle = f64::midpoint(from, to);
        let edges = Edges::default();
        let origin = at(centre.x - middle * scale, centre.y + y * scale);
        let view = View { scale, origin, edges: &edges };
        let far = if self.far == 'E' { COVER } else { HUB[1] };
        let mut shapes = Vec::new();
        for (x0, x1, hole, cut) in
            [(from - j.thick, from, b / 2.0, HUB[0]), (to, to + j.thick, j.wide_hole(), far)]
        {
            shapes.extend(broken_flange((x0, x1), (low, y - hole), cut));
            shapes.push(Shape::cut(block((x0, y + hole), (x1, high)), cut));
            shapes.extend([x0, x1].map(|x| Shape::line((x, y - hole), (x, y + hole), MEDIUM)));
        }
        let w = j.washer();
        let sheet = |low: f64, high: f64| Shape::Laminations {
            from: at(from + w, low),
            to: at(to - w, high),
        };
        shapes.push(sheet(y - 2.1 * b, y - b / 2.0));
        shapes.push(sheet(y + b / 2.0, y + 1.8 * b));
        shapes.extend(bolted(&j, (from, to), Side::Driver));
        for shape in &shapes {
            view.draw(drawing, shape);
        }
        let tag = |letter, x, y| Tag { letter, end: view.place(at(x, y)) };
        let tags = [
            tag('B', from - 0.5 * j.thick, y + 1.95 * b),
            tag('D', middle, y + 1.4 * b),
            tag('W', to - 0.5 * w, y + 0.73 * b),
            tag('N', to + 0.4 * b, y + 0.66 * b),
            tag(self.far, to + 0.6 * j.thick, y + 2.05 * b),
        ];
        rail(drawing, &tags, centre.y - 25.0, centre.x - 30.0, centre.x + 30.0);
        let end = view.place(at(from - j.thick - 0.3 * b, y - 0.4 * b));
        let foot = end.plus(-8.0, 11.0);
        drawing.line(end, foot, Stroke::of(THIN));
        letter(drawing, 'H', foot.plus(-1.5, CIRCLE));
        leader_dot(drawing, end);
    }

    /// Proportions that show well, whatever the true ones are: this picture is not to scale.
    fn for_the_eye(&self) -> Self {
        let bolt = self.bolt;
        Self { thick: 1.25 * bolt, width: 1.3 * bolt, ..self.clone() }
    }
}

/// A flange's lower part, cut and broken off with a wave.
fn broken_flange((x0, x1): (f64, f64), (low, high): (f64, f64), cut: Cut) -> Vec<Shape> {
    let wave: Vec<Point> = (0..=20)
        .map(|step| {
            let share = f64::from(step) / 20.0;
            at(x0 + (x1 - x0) * share, low + 0.05 * (x1 - x0) * (0.9 * f64::from(step)).sin())
        })
        .collect();
    let mut outline = wave.clone();
    outline.extend([at(x1, high), at(x0, high)]);
    let frame = vec![wave[20], at(x1, high), at(x0, high), wave[0]];
    vec![
        Shape::Blank(outline.clone()),
        Shape::Hatched { outline, cut },
        Shape::Line { points: frame, stroke: Stroke::of(THICK) },
        Shape::Line { points: wave, stroke: Stroke::of(THIN) },
    ]
}
