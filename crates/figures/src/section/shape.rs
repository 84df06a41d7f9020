//! What parts are drawn from, and how a view of the job brings them to the sheet.

use super::assembly::Side;
use crate::geometry::{Point, at};
use crate::hatch::Cut;
use crate::ink::{ASSUMED, Colour, Drawing, MEDIUM, Stroke, THICK, THIN};

/// Hatches: parts that touch never share both angle and spacing.
pub(super) const HUB: [Cut; 2] = [Cut::new(45.0, 2.2), Cut::new(135.0, 2.2)];
pub(super) const SLEEVE: [Cut; 2] = [Cut::new(135.0, 1.3), Cut::new(45.0, 1.3)];
pub(super) const WINDOW: [Cut; 2] = [Cut::new(45.0, 1.6), Cut::new(135.0, 1.6)];
pub(super) const COVER: Cut = Cut::new(45.0, 1.3);
const SEAL: [Cut; 2] = [
    Cut { angle: 45.0, spacing: 0.55, weight: 0.2 },
    Cut { angle: 135.0, spacing: 0.55, weight: 0.2 },
];
const ELASTOMER: [Cut; 2] = [
    Cut { angle: 45.0, spacing: 0.75, weight: 0.22 },
    Cut { angle: 135.0, spacing: 0.75, weight: 0.22 },
];

/// A mark in millimetres of the job, y up from the axis.
#[derive(Clone, Debug)]
pub(super) enum Shape {
    /// A part's outline, white, hatched where it is cut.
    Solid { outline: Vec<Point>, cuts: Vec<Cut>, weight: f64 },
    /// Solid ink.
    Ink(Vec<Point>),
    /// White without an outline: a hole, or air in front of something.
    Blank(Vec<Point>),
    /// A line through points.
    Line { points: Vec<Point>, stroke: Stroke },
    /// Hatch without an outline.
    Hatched { outline: Vec<Point>, cut: Cut },
    /// A black band as wide as a spring bar, width in job millimetres.
    Bar { points: Vec<Point>, width: f64 },
    /// Thin steel: black, parted by white lines where the scale leaves room for them.
    Laminations { from: Point, to: Point },
    /// A circle.
    Ring { centre: Point, radius: f64, weight: f64, filled: bool },
}

impl Shape {
    /// An outline of a part that is not cut.
    pub fn outside(outline: Vec<Point>) -> Self {
        Self::Solid { outline, cuts: Vec::new(), weight: THICK }
    }

    /// An outline of a small part that is not cut.
    pub fn small(outline: Vec<Point>) -> Self {
        Self::Solid { outline, cuts: Vec::new(), weight: MEDIUM }
    }

    pub fn cut(outline: Vec<Point>, cut: Cut) -> Self {
        Self::Solid { outline, cuts: vec![cut], weight: THICK }
    }

    pub fn seal(outline: Vec<Point>) -> Self {
        Self::Solid { outline, cuts: SEAL.to_vec(), weight: MEDIUM }
    }

    pub fn elastomer(outline: Vec<Point>) -> Self {
        Self::Solid { outline, cuts: ELASTOMER.to_vec(), weight: MEDIUM }
    }

    pub fn line(from: (f64, f64), to: (f64, f64), weight: f64) -> Self {
        let points = vec![at(from.0, from.1), at(to.0, to.1)];
        Self::Line { points, stroke: Stroke::of(weight) }
    }

    /// A line that words may lie on.
    pub fn hair(from: (f64, f64), to: (f64, f64), weight: f64) -> Self {
        let points = vec![at(from.0, from.1), at(to.0, to.1)];
        Self::Line { points, stroke: Stroke::of(weight).under() }
    }
}

/// Points of an outline that is given for the driven side, mirrored for the driver's.
pub(super) fn side(sign: f64, points: &[(f64, f64)]) -> Vec<Point> {
    points.iter().map(|(x, y)| at(sign * x, *y)).collect()
}

/// A level rectangle between two corners.
pub(super) fn block(from: (f64, f64), to: (f64, f64)) -> Vec<Point> {
    vec![at(from.0, from.1), at(to.0, from.1), at(to.0, to.1), at(from.0, to.1)]
}

/// A rounded inside corner at `(x, y)`, from the upright face beside it to the level one; `dx` and
/// `dy` point into the free quarter.
pub(super) fn fillet(x: f64, y: f64, radius: f64, (dx, dy): (f64, f64)) -> Vec<(f64, f64)> {
    const STEPS: u32 = 6;
    (0..=STEPS)
        .map(|step| {
            let (sin, cos) =
                (f64::from(step) / f64::from(STEPS) * std::f64::consts::FRAC_PI_2).sin_cos();
            (x + dx * radius * (1.0 - cos), y + dy * radius * (1.0 - sin))
        })
        .collect()
}

/// A part and what it is drawn from.
#[derive(Clone, Debug)]
pub(super) struct Part {
    /// What it is; twins share it. `None` for what is no part, such as a phantom.
    pub letter: Option<char>,
    /// Of twins, which one.
    pub side: Option<Side>,
    /// Its name and a place well inside it; on one of twins only.
    pub tag: Option<(String, Point)>,
    pub shapes: Vec<Shape>,
    /// What shows besides when it lies apart from the others.
    pub apart: Vec<Shape>,
}

/// Which coordinates of edges are known; an edge on any other is thin and broken.
#[derive(Clone, Debug, Default)]
pub(super) struct Edges {
    /// Some size was assumed; without that everything is drawn as known.
    pub assumed: bool,
    pub xs: Vec<f64>,
    pub radii: Vec<f64>,
}

impl Edges {
    fn knows(&self, from: Point, to: Point) -> bool {
        let held = |value: f64, known: &[f64]| known.iter().any(|k| (k - value.abs()).abs() < 1e-6);
        if !self.assumed {
            true
        } else if (from.y - to.y).abs() < 1e-9 {
            held(from.y, &self.radii)
        } else {
            (from.x - to.x).abs() < 1e-9 && held(from.x, &self.xs)
        }
    }
}

/// Job millimetres to the sheet.
#[derive(Clone, Debug)]
pub(super) struct View<'a> {
    pub scale: f64,
    /// Where the axis crosses x = 0.
    pub origin: Point,
    pub edges: &'a Edges,
}

impl View<'_> {
    pub fn place(&self, p: Point) -> Point {
        self.origin.plus(p.x * self.scale, -p.y * self.scale)
    }

    fn places(&self, points: &[Point]) -> Vec<Point> {
        points.iter().map(|p| self.place(*p)).collect()
    }

    pub fn draw(&self, drawing: &mut Drawing, shape: &Shape) {
        match shape {
            Shape::Solid { outline, cuts, weight } => {
                let placed = self.places(outline);
                drawing.fill(&placed, Colour::Metal);
                for cut in cuts {
                    drawing.hatch(vec![placed.clone()], *cut);
                }
                self.outline(drawing, outline, *weight);
            }
            Shape::Ink(outline) => drawing.fill(&self.places(outline), Colour::Ink),
            Shape::Blank(outline) => drawing.fill(&self.places(outline), Colour::Metal),
            Shape::Line { points, stroke } => drawing.path(&self.places(points), *stroke),
            Shape::Hatched { outline, cut } => drawing.hatch(vec![self.places(outline)], *cut),
            Shape::Bar { points, width } => {
                let stroke = Stroke::of((width * self.scale).max(THIN)).under();
                drawing.path(&self.places(points), stroke);
            }
            Shape::Laminations { from, to } => self.laminations(drawing, *from, *to),
            Shape::Ring { centre, radius, weight, filled } => {
                let fill = filled.then_some(Colour::Metal);
                let radius = radius * self.scale;
                drawing.circle(self.place(*centre), radius, Some(Stroke::of(*weight)), fill);
            }
        }
    }

    /// Known edges full, the others thin and broken.
    fn outline(&self, drawing: &mut Drawing, outline: &[Point], weight: f64) {
        let placed = self.places(outline);
        if !self.edges.assumed {
            drawing.shape(&placed, Some(Stroke::of(weight)), None);
            return;
        }
        for index in 0..outline.len() {
            let before = (index + outline.len() - 1) % outline.len();
            let stroke = if self.edges.knows(outline[before], outline[index]) {
                Stroke::of(weight).rounded()
            } else {
                Stroke::of(THIN).dash(ASSUMED)
            };
            drawing.line(placed[before], placed[index], stroke);
        }
    }

    fn laminations(&self, drawing: &mut Drawing, from: Point, to: Point) {
        let corners = block((from.x, from.y), (to.x, to.y));
        drawing.fill(&self.places(&corners), Colour::Ink);
        let gaps = ((to.x - from.x).abs() * self.scale / 0.55).floor();
        let mut line = 1.0;
        while line < gaps {
            let x = from.x + (to.x - from.x) * line / gaps;
            let stroke = Stroke::of(0.12).colour(Colour::Metal).under();
            drawing.path(&self.places(&[at(x, from.y), at(x, to.y)]), stroke);
            line += 1.0;
        }
    }
}
