//! The machines on their bench: true to scale along, a sketch across.

use super::sheet::Scales;
use super::{Foot, LineUp, Machine, Plate, Stands};
use crate::axis::real;
use crate::geometry::{Rect, at};
use crate::hatch::Cut;
use crate::ink::{Anchor, Colour, Drawing, HAIR, MEDIUM, Stroke, THICK, Words, level, outline};
use crate::labels::{fitting, spread};

/// Heights in sizes of type: half a body, half a coupling, half a shaft, the feet, the ground
/// strip, the figures under it.
const BODY: f64 = 1.5;
const HUB: f64 = 1.0;
const SHAFT: f64 = 0.35;
const FEET: f64 = 1.2;
const GROUND: f64 = 0.5;
const FIGURES: f64 = 1.7;

pub(super) struct Bench<'a> {
    lineup: &'a LineUp,
    scales: Scales,
    t: f64,
    top: f64,
}

impl<'a> Bench<'a> {
    pub fn new(lineup: &'a LineUp, scales: Scales, t: f64, top: f64) -> Self {
        Self { lineup, scales, t, top: top + 0.9 * t }
    }

    fn axis(&self) -> f64 {
        self.top + BODY * self.t
    }

    fn floor(&self) -> f64 {
        self.top + (2.0 * BODY + FEET) * self.t
    }

    /// Where the strip ends, figures and all.
    pub fn bottom(&self) -> f64 {
        self.floor() + (GROUND + FIGURES) * self.t
    }

    pub fn draw(&self, drawing: &mut Drawing) {
        self.floor_line(drawing);
        for machine in &self.lineup.machines {
            for foot in &machine.feet {
                self.foot(drawing, machine, foot);
            }
        }
        for machine in &self.lineup.machines {
            self.machine(drawing, machine);
        }
        self.couplings(drawing);
        self.figures(drawing);
    }

    fn bounds(&self, from_mm: f64, to_mm: f64, half: f64) -> Rect {
        let (axis, half) = (self.axis(), half * self.t);
        Rect::new(self.scales.x(from_mm), axis - half, self.scales.x(to_mm), axis + half)
    }

    fn plate(drawing: &mut Drawing, bounds: Rect, weight: f64) {
        drawing.shape(&outline(bounds), Some(Stroke::of(weight)), Some(Colour::Metal));
    }

    fn floor_line(&self, drawing: &mut Drawing) {
        let (left, right, y) = (self.scales.left, self.scales.right, self.floor());
        let strip = Rect::new(left, y, right, y + GROUND * self.t);
        let cut = Cut { angle: 45.0, spacing: 0.55 * self.t, weight: HAIR };
        drawing.hatch(vec![outline(strip)], cut);
        level(drawing, y, left, right, Stroke::of(THICK));
    }

    fn machine(&self, drawing: &mut Drawing, machine: &Machine) {
        let (start, end) = machine.shaft_mm;
        let Some((from, to)) = machine.body_mm else {
            Self::plate(drawing, self.bounds(start, end, SHAFT), MEDIUM);
            return;
        };
        for (from, to) in [(start, from), (to, end)] {
            if from < to {
                Self::plate(drawing, self.bounds(from, to, SHAFT), MEDIUM);
            }
        }
        let body = self.bounds(from, to, BODY);
        Self::plate(drawing, body, MEDIUM);
        let words = fitting(&machine.name, self.t, body.width() - 0.5 * self.t);
        if let Some(words) = words {
            let middle = at(f64::midpoint(body.left, body.right), self.axis());
            drawing.text(&words, middle, Anchor::Middle);
        }
    }

    /// A foot on its shims: one plate a shim, what goes in solid pencil, what comes out struck.
    fn foot(&self, drawing: &mut Drawing, machine: &Machine, foot: &Foot) {
        let x = self.scales.x(foot.x_mm);
        let others = machine.feet.iter().map(|f| (self.scales.x(f.x_mm) - x).abs());
        let nearest = others.filter(|gap| *gap > 1e-9).fold(f64::MAX, f64::min);
        let half = (0.9 * self.t).min(0.42 * nearest);
        let plates = real(foot.pack.len());
        let thick = (0.28 * self.t).min(0.8 * FEET * self.t / plates.max(1.0));
        let under = self.floor() - plates * thick;
        let leg = Rect::new(x - 0.8 * half, self.axis() + BODY * self.t, x + 0.8 * half, under);
        Self::plate(drawing, leg, MEDIUM);
        for (index, plate) in foot.pack.iter().enumerate() {
            let bottom = self.floor() - real(index) * thick;
            let bounds = Rect::new(x - half, bottom - thick, x + half, bottom);
            let (colour, fill) = match plate {
                Plate::GoesIn => (Colour::Metal, Colour::Pencil),
                Plate::Stays => (Colour::Ink, Colour::Metal),
                Plate::ComesOut => (Colour::Pencil, Colour::Metal),
            };
            let stroke = Stroke::of(0.15).colour(colour);
            drawing.shape(&outline(bounds), Some(stroke), Some(fill));
            if *plate == Plate::ComesOut {
                let through = Stroke::of(MEDIUM).colour(Colour::Pencil);
                let y = f64::midpoint(bounds.top, bounds.bottom);
                level(drawing, y, x - half - 0.25 * self.t, x + half + 0.25 * self.t, through);
            }
        }
    }

    /// Hubs at both sides of each coupling, its spacer between the flexing planes.
    fn couplings(&self, drawing: &mut Drawing) {
        for (coupling, pair) in self.lineup.couplings.iter().zip(self.lineup.machines.windows(2)) {
            let (left, right) = coupling.planes_mm;
            let before = pair[0].body_mm.map_or(pair[0].shaft_mm.0, |body| body.1);
            let after = pair[1].body_mm.map_or(pair[1].shaft_mm.1, |body| body.0);
            let hub = |room: f64| (0.45 * room).clamp(0.0, 2.2 * self.t / self.scales.along);
            if self.scales.x(right) - self.scales.x(left) > 0.4 * self.t {
                Self::plate(drawing, self.bounds(left, right, 0.7 * HUB), MEDIUM);
            }
            Self::plate(drawing, self.bounds(left - hub(left - before), left, HUB), MEDIUM);
            Self::plate(drawing, self.bounds(right, right + hub(after - right), HUB), MEDIUM);
        }
    }

    /// Distances of feet and couplings under the bench, kept apart.
    fn figures(&self, drawing: &mut Drawing) {
        let mut all: Vec<(f64, &str)> = Vec::new();
        for machine in self.lineup.machines.iter().filter(|m| m.stands == Stands::Moves) {
            all.extend(machine.feet.iter().map(|f| (f.x_mm, f.text.as_str())));
        }
        let couplings = &self.lineup.couplings;
        all.extend(
            couplings
                .iter()
                .map(|c| (f64::midpoint(c.planes_mm.0, c.planes_mm.1), c.text.as_str())),
        );
        all.retain(|(_, text)| !text.is_empty());
        let size = self.figure_size(&all, drawing.width);
        let words: Vec<Words> = all
            .iter()
            .map(|(_, text)| Words::new(*text, size).colour(Colour::Soft).halo())
            .collect();
        let wanted: Vec<f64> = all.iter().map(|(x, _)| self.scales.x(*x)).collect();
        let lengths: Vec<f64> = words.iter().map(|w| w.width() + 0.4 * size).collect();
        let y = self.floor() + (GROUND + 0.48 * FIGURES) * self.t;
        for (words, x) in words.iter().zip(spread(&wanted, &lengths, 0.0, drawing.width)) {
            drawing.text(words, at(x, y), Anchor::Middle);
        }
    }

    /// Smaller type where all figures would not stand side by side.
    fn figure_size(&self, all: &[(f64, &str)], width: f64) -> f64 {
        let size = 0.95 * self.t;
        let needed: f64 = all.iter().map(|(_, t)| Words::new(*t, size).width() + 0.4 * size).sum();
        size * (width / needed.max(1e-9)).min(1.0) * if needed > width { 0.99 } else { 1.0 }
    }
}
