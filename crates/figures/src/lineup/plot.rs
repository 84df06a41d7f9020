//! One view: lines, limits and moves over the bench.

use quantities::System;

use super::sheet::{Scales, range};
use super::{Foot, LineUp, Machine, Sight, Stands, View, Wedge};
use crate::axis::{real, tick_text, ticks};
use crate::geometry::{Point, Rect, at};
use crate::hatch::Cut;
use crate::ink::{
    Anchor, CHAIN, Colour, DOTTED, Drawing, HAIR, MEDIUM, Stroke, THICK, THIN, Words, level,
    outline,
};
use crate::labels::{place, spread};

/// Weight of the line that the moves will leave.
const AFTER: f64 = 0.42;

/// One view in its frame.
pub(super) struct Plot<'a> {
    lineup: &'a LineUp,
    view: View,
    scales: Scales,
    frame: Rect,
    /// Size of type.
    t: f64,
    /// Height on paper of zero.
    zero: f64,
}

/// A foot that moves, with where it was found and where the arrow points.
struct Arrow<'a> {
    foot: &'a Foot,
    text: &'a str,
    from: Point,
    to: Point,
}

impl<'a> Plot<'a> {
    pub fn new(lineup: &'a LineUp, view: View, scales: Scales, frame: Rect, t: f64) -> Self {
        let (low, high) = range(lineup, view);
        let middle = f64::midpoint(frame.top, frame.bottom);
        let zero = middle - view.up() * f64::midpoint(low, high) * scales.across;
        Self { lineup, view, scales, frame, t, zero }
    }

    fn y(&self, height_mm: f64) -> f64 {
        self.zero + self.view.up() * height_mm * self.scales.across
    }

    fn point(&self, x_mm: f64, height_mm: f64) -> Point {
        at(self.scales.x(x_mm), self.y(height_mm))
    }

    fn moving(&self) -> impl Iterator<Item = (usize, &'a Machine)> {
        let machines = self.lineup.machines.iter().enumerate();
        machines.filter(|(_, machine)| machine.stands == Stands::Moves)
    }

    /// Ground, hatching beyond the limits, and the bands.
    pub fn ground(&self, drawing: &mut Drawing) {
        drawing.fill(&outline(self.frame), Colour::Leaf);
        for (index, machine) in self.moving() {
            for (plane, coupling) in self.lineup.wedges(index) {
                if let Some(limit) = coupling.limit {
                    self.hatch_beyond(drawing, machine, plane, limit);
                }
            }
        }
        for (line, band, (from, to)) in self.found() {
            let edge = |sign: f64| {
                (0..=24).map(move |step| {
                    let x = from + (to - from) * f64::from(step) / 24.0;
                    (x, line.height(x) + sign * band.half_width(x))
                })
            };
            let points: Vec<Point> =
                edge(1.0).chain(edge(-1.0).rev()).map(|(x, y)| self.point(x, y)).collect();
            drawing.fill(&self.frame.clip(&points), Colour::Band);
        }
    }

    fn found(&self) -> impl Iterator<Item = (super::Line, super::Band, (f64, f64))> {
        self.lineup.machines.iter().filter_map(|machine| {
            let (line, band) = machine.sight(self.view).found?;
            Some((line, band, machine.shaft_mm))
        })
    }

    /// Where shafts will lie after their moves, known as well as they were found.
    fn after(&self) -> impl Iterator<Item = (super::Line, super::Band, (f64, f64))> {
        self.lineup.machines.iter().filter_map(|machine| {
            let sight = machine.sight(self.view);
            let (_, band) = sight.found?;
            Some((sight.after?, band, machine.shaft_mm))
        })
    }

    /// Where a wedge begins and ends along a machine: from its plane to the shaft's far end.
    fn run(machine: &Machine, plane: f64) -> (f64, f64) {
        let (from, to) = machine.shaft_mm;
        if plane >= f64::midpoint(from, to) { (plane, from.min(plane)) } else { (plane, to) }
    }

    /// One edge of a wedge, from the plane outwards.
    fn wedge_edge(
        &self,
        sight: &Sight,
        (plane, far): (f64, f64),
        wedge: Wedge,
        up: f64,
    ) -> [Point; 2] {
        [plane, far].map(|x| {
            let half = wedge.offset_mm.abs() + wedge.slope.abs() * (x - plane).abs();
            self.point(x, sight.target.height(x) + up * half)
        })
    }

    fn hatch_beyond(&self, drawing: &mut Drawing, machine: &Machine, plane: f64, limit: Wedge) {
        let run = Self::run(machine, plane);
        for up in [1.0, -1.0] {
            let [near, far] = self.wedge_edge(machine.sight(self.view), run, limit, up);
            let edge = if up * self.view.up() < 0.0 { self.frame.top } else { self.frame.bottom };
            // Past the frame, so that clipping leaves all of it.
            let away = if edge < near.y { -1e4 } else { 1e4 };
            let beyond = [near, far, at(far.x, near.y + away), at(near.x, near.y + away)];
            let clipped = self.frame.clip(&beyond);
            if clipped.len() > 2 {
                let cut = Cut { angle: 45.0, spacing: 0.5 * self.t, weight: 0.1 };
                drawing.hatch(vec![clipped], cut);
            }
        }
    }

    /// Ticks, zero, limits, targets, what was found, and the frame.
    pub fn lines(&self, drawing: &mut Drawing) {
        self.ticks(drawing);
        let chain = Stroke::of(THIN).colour(Colour::Edge).dash(CHAIN).under();
        level(drawing, self.zero, self.frame.left, self.frame.right, chain);
        for (index, machine) in self.moving() {
            let sight = machine.sight(self.view);
            for (plane, coupling) in self.lineup.wedges(index) {
                let run = Self::run(machine, plane);
                let full = Stroke::of(MEDIUM);
                let dots = Stroke::of(0.28).dash(DOTTED).rounded().shy();
                for (wedge, stroke) in [(coupling.aim, dots), (coupling.limit, full)] {
                    let Some(wedge) = wedge else { continue };
                    for up in [1.0, -1.0] {
                        let [near, far] = self.wedge_edge(sight, run, wedge, up);
                        self.clipped(drawing, near, far, stroke);
                    }
                }
            }
        }
        for machine in &self.lineup.machines {
            self.target(drawing, machine);
        }
        for (line, _, (from, to)) in self.found() {
            let stroke = Stroke::of(0.6).colour(Colour::Pencil);
            let ends = [from, to].map(|x| self.point(x, line.height(x)));
            self.clipped(drawing, ends[0], ends[1], stroke);
        }
        for (line, band, ends) in self.after() {
            self.after_line(drawing, line, band, ends);
        }
        for arrow in self.arrows() {
            self.arrow(drawing, &arrow);
        }
        let edge = Stroke::of(THIN).colour(Colour::Edge);
        drawing.shape(&outline(self.frame), Some(edge), None);
    }

    /// Where the moves will leave a shaft: full, between the fine dashes of its band.
    fn after_line(
        &self,
        drawing: &mut Drawing,
        line: super::Line,
        band: super::Band,
        (from, to): (f64, f64),
    ) {
        const STEPS: u8 = 12;
        let at_step = |step: u8| from + (to - from) * f64::from(step) / f64::from(STEPS);
        let fine = Stroke::of(HAIR).dash("1 .8").shy();
        for sign in [1.0, -1.0] {
            let edge = |x: f64| self.point(x, line.height(x) + sign * band.half_width(x));
            for step in 0..STEPS {
                let (here, next) = (edge(at_step(step)), edge(at_step(step + 1)));
                self.clipped(drawing, here, next, fine);
            }
        }
        let ends = [from, to].map(|x| self.point(x, line.height(x)));
        self.clipped(drawing, ends[0], ends[1], Stroke::of(AFTER));
    }

    fn clipped(&self, drawing: &mut Drawing, from: Point, to: Point, stroke: Stroke) {
        if let Some((from, to)) = self.frame.clip_line((from, to)) {
            drawing.line(from, to, stroke);
        }
    }

    /// Dashed where a machine is to go, a thick chain where the fixed one lies.
    fn target(&self, drawing: &mut Drawing, machine: &Machine) {
        let line = machine.sight(self.view).target;
        let stroke = match machine.stands {
            Stands::Fixed => Stroke::of(THICK).dash("4 .9 .8 .9").shy(),
            Stands::Moves => Stroke::of(MEDIUM).dash("2 1.1").shy(),
        };
        let ends = [machine.shaft_mm.0, machine.shaft_mm.1].map(|x| self.point(x, line.height(x)));
        self.clipped(drawing, ends[0], ends[1], stroke);
    }

    fn ticks(&self, drawing: &mut Drawing) {
        let unit = if self.lineup.system == System::Inch { 0.0254 } else { 1.0 };
        let step = self.scales.step / unit;
        let ends = [self.frame.top, self.frame.bottom]
            .map(|y| self.view.up() * (y - self.zero) / (self.scales.across * unit));
        let (low, high) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
        for value in ticks(low, high, step) {
            let y = self.y(value * unit);
            let stroke = Stroke::of(THIN).colour(Colour::Edge).under();
            level(drawing, y, self.frame.left - 0.3 * self.t, self.frame.left, stroke);
            let words =
                Words::new(tick_text(value, step, true), 0.95 * self.t).colour(Colour::Soft);
            let place = at(self.frame.left - 0.5 * self.t, y);
            let bounds = words.bounds(place, Anchor::End);
            if bounds.top >= self.frame.top - 0.2 * self.t
                && bounds.bottom <= self.frame.bottom + 0.2 * self.t
            {
                drawing.text(&words, place, Anchor::End);
            }
        }
    }

    fn arrows(&self) -> Vec<Arrow<'a>> {
        let mut arrows = Vec::new();
        for (_, machine) in self.moving() {
            let Some((line, _)) = machine.sight(self.view).found else { continue };
            for foot in &machine.feet {
                let Some(shift) = foot.shift(self.view) else { continue };
                let height = line.height(foot.x_mm);
                let from = self.point(foot.x_mm, height);
                let to = self.point(foot.x_mm, height + shift.mm);
                arrows.push(Arrow { foot, text: &shift.text, from, to });
            }
        }
        arrows.sort_by(|a, b| a.foot.x_mm.total_cmp(&b.foot.x_mm));
        arrows
    }

    fn arrow(&self, drawing: &mut Drawing, arrow: &Arrow) {
        let reach = arrow.to.y - arrow.from.y;
        let pencil = Stroke::of(0.45).colour(Colour::Pencil);
        let dot = 0.28 * self.t;
        drawing.circle(arrow.from, dot, None, Some(Colour::Pencil));
        let box_ =
            Rect::new(arrow.from.x, arrow.from.y, arrow.from.x, arrow.from.y).grown(dot, dot);
        drawing.bars.extend([
            (at(box_.left, box_.top), at(box_.right, box_.bottom)),
            (at(box_.left, box_.bottom), at(box_.right, box_.top)),
        ]);
        let head = (0.8 * self.t).min(0.7 * reach.abs());
        if reach.abs() < 1.5 * dot {
            return;
        }
        drawing.line(arrow.from, arrow.to.plus(0.0, -0.8 * head * reach.signum()), pencil);
        drawing.arrow_wide(arrow.to, (0.0, reach), head, Colour::Pencil);
    }

    /// Writes the moves beside their arrows, or in rows outside the plot; says how many rows it
    /// wants: as many as it was given when all is well.
    pub fn moves(&self, drawing: &mut Drawing, rows: usize, row: f64) -> usize {
        let arrows = self.arrows();
        let size = 1.15 * self.t;
        let words =
            |arrow: &Arrow| Words::new(arrow.text, size).strong().colour(Colour::Pencil).halo();
        if rows == 0 {
            let all = arrows.iter().all(|arrow| {
                let words = words(arrow);
                place(drawing, &words, &self.beside(arrow, words.width()), self.frame)
            });
            return if all { 0 } else { self.rows_for(&arrows, size) };
        }
        let room = 0.6 * self.t;
        for turn in 0..rows {
            let own: Vec<&Arrow> = arrows.iter().skip(turn).step_by(rows).collect();
            let lengths: Vec<f64> = own.iter().map(|a| words(a).width() + room).collect();
            let wanted: Vec<f64> = own.iter().map(|a| a.from.x).collect();
            let xs = spread(&wanted, &lengths, 0.0, drawing.width);
            for (arrow, x) in own.iter().zip(xs) {
                let y = self.frame.bottom + (real(turn) + 0.5) * row;
                let thin = Stroke::of(HAIR).colour(Colour::Pencil).under();
                drawing.line(at(arrow.from.x, self.frame.bottom), at(x, y - 0.45 * size), thin);
                drawing.text(&words(arrow), at(x, y), Anchor::Middle);
            }
        }
        rows
    }

    /// Rows that hold all moves side by side.
    fn rows_for(&self, arrows: &[Arrow], size: f64) -> usize {
        let room = 0.6 * self.t;
        let lengths = arrows.iter().map(|a| Words::new(a.text, size).strong().width() + room);
        let needed = lengths.sum::<f64>() / (0.9 * self.scales.right);
        (1..arrows.len()).find(|rows| real(*rows) >= needed).unwrap_or(arrows.len())
    }

    /// Places for a move's words, the best first.
    fn beside(&self, arrow: &Arrow, width: f64) -> Vec<(Point, Anchor)> {
        let off = 0.6 * self.t;
        let mut places = Vec::new();
        for share in [0.5, 0.7, 0.3, 1.0, 0.0, 1.3, -0.3] {
            let y = arrow.from.y + (arrow.to.y - arrow.from.y) * share;
            places.push((at(arrow.from.x + off, y), Anchor::Start));
            places.push((at(arrow.from.x - off, y), Anchor::End));
        }
        let (high, low) = (arrow.from.y.min(arrow.to.y), arrow.from.y.max(arrow.to.y));
        for shift in [0.0, 0.35, -0.35] {
            places.push((at(arrow.from.x + shift * width, high - self.t), Anchor::Middle));
            places.push((at(arrow.from.x + shift * width, low + self.t), Anchor::Middle));
        }
        places
    }

    /// Names the lines where there is room; a line is named once.
    pub fn names(&self, drawing: &mut Drawing) {
        let name = |text: &str, colour| Words::new(text, 0.95 * self.t).colour(colour).halo();
        if let Some((line, _, ends)) = self.found().next() {
            let words = name("found", Colour::Pencil);
            self.along(drawing, &words, line, ends, [0.9, -0.9, 1.3, -1.3]);
        }
        if let Some((_, machine)) = self.moving().next() {
            let words = name("aimed at, cold", Colour::Ink);
            let line = machine.sight(self.view).target;
            self.along(drawing, &words, line, machine.shaft_mm, [-0.85, 0.85, -1.2, 1.2]);
        }
        if let Some((line, _, ends)) = self.after().next() {
            let words = name("after the moves", Colour::Ink);
            self.along(drawing, &words, line, ends, [0.9, -0.9, 1.3, -1.3]);
        }
        for machine in self.lineup.machines.iter().filter(|m| m.stands == Stands::Fixed) {
            let words = name(&machine.name, Colour::Ink);
            let line = machine.sight(self.view).target;
            let shares = [1.0, -1.0, 1.4, -1.4];
            self.along(drawing, &words, line, machine.shaft_mm, shares);
        }
        self.name_wedges(drawing);
    }

    /// Words above or below a line, so many times the type off it, somewhere along it.
    fn along(
        &self,
        drawing: &mut Drawing,
        words: &Words,
        line: super::Line,
        (from, to): (f64, f64),
        off: [f64; 4],
    ) {
        let spots = off.into_iter().flat_map(|off| {
            [0.2, 0.5, 0.35, 0.65, 0.8, 0.1, 0.9].into_iter().map(move |share| {
                let x = from + (to - from) * share;
                (self.point(x, line.height(x)).plus(0.0, off * self.t), Anchor::Middle)
            })
        });
        let spots: Vec<_> = spots.collect();
        place(drawing, words, &spots, self.frame.grown(-0.3, -0.3));
    }

    fn name_wedges(&self, drawing: &mut Drawing) {
        let mut named = [false, false];
        for (index, machine) in self.moving() {
            let sight = machine.sight(self.view);
            for (plane, coupling) in self.lineup.wedges(index) {
                let run = Self::run(machine, plane);
                for (k, (wedge, text)) in
                    [(coupling.limit, "limit"), (coupling.aim, "aim")].into_iter().enumerate()
                {
                    let Some(wedge) = wedge.filter(|_| !named[k]) else { continue };
                    let words = Words::new(text, 0.95 * self.t).halo();
                    let spots = [-1.0, 1.0].into_iter().flat_map(|up| {
                        let [near, far] = self.wedge_edge(sight, run, wedge, up);
                        let beyond = up * self.view.up();
                        [0.3, 0.45, 0.6, 0.2, 0.75].into_iter().map(move |share| {
                            (
                                near.towards(far, share).plus(0.0, beyond * 0.95 * self.t),
                                Anchor::Middle,
                            )
                        })
                    });
                    let spots: Vec<_> = spots.collect();
                    named[k] = place(drawing, &words, &spots, self.frame.grown(-0.3, -0.3));
                }
            }
        }
    }
}
