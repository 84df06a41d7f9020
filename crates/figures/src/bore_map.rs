//! How a bore is out of round and out of straight: its stations seen along the axis.
//!
//! One enlargement for all, a round number, stated. A diameter gives two opposite points, a gauge
//! of three legs three; they are what was measured, the line between them is only a guide. The broken circle is the mean of
//! all stations, so taper shows as well.

use std::f64::consts::{PI, TAU};

use crate::axis::{plain, real, round_down};
use crate::geometry::{Point, Rect, at, clock};
use crate::ink::{
    ASSUMED, Anchor, CHAIN, Colour, Drawing, MEDIUM, Stroke, THIN, Words, level, upright,
};
use crate::labels::{fitting, place};
use crate::{Figure, Paper, PaperError};

/// One diameter of a station.
#[derive(Clone, Debug, PartialEq)]
pub struct Diameter {
    /// Clockwise from the key, degrees; a diameter and its opposite are one.
    pub degrees: f64,
    /// Over the nominal size, mm.
    pub over_mm: f64,
    /// As written: "+14".
    pub text: String,
}

/// A place along the bore.
#[derive(Clone, Debug, PartialEq)]
pub struct Station {
    /// "1, 12 mm in".
    pub name: String,
    /// How the gauge touched.
    pub touches: Touches,
    /// What was measured there.
    pub diameters: Vec<Diameter>,
}

/// Points of a gauge that touch the bore, evenly round it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Touches {
    /// Opposite each other.
    Two,
    /// A third of a turn apart: three lobes show.
    Three,
}

impl Touches {
    /// From one point to the next.
    fn apart(self) -> f64 {
        match self {
            Self::Two => PI,
            Self::Three => TAU / 3.0,
        }
    }

    /// The angle of each of them, one being at `angle`.
    fn at(self, angle: f64) -> impl Iterator<Item = f64> {
        let count = if self == Self::Two { 2 } else { 3 };
        (0..count).map(move |turn| angle + f64::from(turn) * self.apart())
    }
}

/// A bore.
#[derive(Clone, Debug, PartialEq)]
pub struct BoreMap {
    /// From the end it was entered at.
    pub stations: Vec<Station>,
    /// Half the 95 % interval of a diameter, mm.
    pub plus_minus_mm: f64,
    /// What the numbers are: "µm over 80 mm".
    pub numbers: String,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BoreMapError {
    /// No station, or one without a diameter.
    #[error("a station without a diameter, or no station")]
    Nothing,
    /// More than can stand side by side.
    #[error("{0} stations are too many to draw")]
    Stations(usize),
    /// A number that is none.
    #[error("{0} cannot be drawn")]
    NotANumber(f64),
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

/// The drawing.
///
/// # Errors
/// [`BoreMapError`] when there is nothing to draw, too much, or a number that is none.
pub fn draw(map: &BoreMap, paper: Paper) -> Result<Figure, BoreMapError> {
    paper.check()?;
    check(map)?;
    let (drawing, times) = drawing(map, paper);
    let stations = map.stations.iter().map(|station| {
        let all: Vec<&str> = station.diameters.iter().map(|d| d.text.as_str()).collect();
        format!("{}: {}", station.name, all.join(", "))
    });
    let stations = stations.collect::<Vec<_>>().join("; ");
    let says = format!(
        "Stations of the bore, out-of-round drawn {} times. {}: {stations}.",
        plain(times),
        map.numbers
    );
    Ok(Figure::of(&drawing, "Bore map", says))
}

/// The sheet of a map that was checked, and its enlargement.
pub(crate) fn drawing(map: &BoreMap, paper: Paper) -> (Drawing, f64) {
    Sheet::new(map, paper).finish()
}

fn check(map: &BoreMap) -> Result<(), BoreMapError> {
    if map.stations.is_empty() || map.stations.iter().any(|s| s.diameters.is_empty()) {
        return Err(BoreMapError::Nothing);
    }
    if map.stations.len() > 6 {
        return Err(BoreMapError::Stations(map.stations.len()));
    }
    let all = map.stations.iter().flat_map(|s| &s.diameters).flat_map(|d| [d.degrees, d.over_mm]);
    let bad = all.chain([map.plus_minus_mm]).find(|n| !(n.is_finite() && n.abs() < 1e6));
    bad.map_or(Ok(()), |number| Err(BoreMapError::NotANumber(number)))
}

struct Sheet<'a> {
    map: &'a BoreMap,
    t: f64,
    /// Radius of the mean circle on paper.
    radius: f64,
    /// Paper over job, of the departure of a radius.
    times: f64,
    mean: f64,
    pitch: f64,
    drawing: Drawing,
}

const ROUND: [f64; 8] = [1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 8.0];

impl<'a> Sheet<'a> {
    fn new(map: &'a BoreMap, paper: Paper) -> Self {
        let t = paper.type_mm;
        let pitch = paper.width_mm / real(map.stations.len());
        let outer = (pitch / 2.0 - 2.2 * t).clamp(2.0 * t, 8.0 * t);
        let all: Vec<f64> =
            map.stations.iter().flat_map(|s| &s.diameters).map(|d| d.over_mm).collect();
        let mean = all.iter().sum::<f64>() / real(all.len());
        let most = all.iter().map(|v| (v - mean).abs()).fold(0.0, f64::max);
        // Of a radius.
        let most = f64::midpoint(most, map.plus_minus_mm.abs()).max(1e-6);
        let times = round_down(0.42 * outer / most, &ROUND);
        let radius = outer - times * most;
        let height = 2.0 * outer + 7.6 * t;
        Self { map, t, radius, times, mean, pitch, drawing: Drawing::new(paper.width_mm, height) }
    }

    fn finish(mut self) -> (Drawing, f64) {
        let y = (self.drawing.height - 3.4 * self.t) / 2.0;
        for (index, station) in self.map.stations.iter().enumerate() {
            let centre = at(self.pitch * (real(index) + 0.5), y);
            self.station(station, centre);
        }
        let note = format!(
            "Out-of-round drawn {} times. Numbers: {}. Broken circle: mean.",
            plain(self.times),
            self.map.numbers
        );
        let width = self.drawing.width;
        if let Some(words) = fitting(&note, 0.9 * self.t, width) {
            let place = at(0.0, self.drawing.height - 0.8 * self.t);
            self.drawing.text(&words.colour(Colour::Soft), place, Anchor::Start);
        }
        (self.drawing, self.times)
    }

    fn r(&self, over: f64) -> f64 {
        self.radius + (over - self.mean) / 2.0 * self.times
    }

    fn station(&mut self, station: &Station, centre: Point) {
        let guide = Guide::through(station);
        let ring = |sheet: &Self, off: f64| -> Vec<Point> {
            (0..72)
                .map(|step| {
                    let angle = TAU * f64::from(step) / 72.0;
                    let r = sheet.r(guide.at(angle)) + off;
                    clock(centre, r, angle)
                })
                .collect()
        };
        let reach = self.radius + 1.6 * self.t;
        let chain = Stroke::of(THIN).colour(Colour::Edge).dash(CHAIN).under();
        level(&mut self.drawing, centre.y, centre.x - reach, centre.x + reach, chain);
        upright(&mut self.drawing, centre.x, centre.y - reach, centre.y + reach, chain);
        let half = self.map.plus_minus_mm.abs() / 2.0 * self.times;
        // Out along the outer edge and back along the inner one.
        let (mut band, mut back) = (ring(self, half), ring(self, -half));
        band.push(band[0]);
        back.push(back[0]);
        band.extend(back.into_iter().rev());
        self.drawing.fill(&band, Colour::Band);
        let mean = Stroke::of(THIN).dash(ASSUMED).under();
        self.drawing.circle(centre, self.radius, Some(mean), None);
        let line = ring(self, 0.0);
        self.drawing.shape(&line, Some(Stroke::of(MEDIUM).colour(Colour::Pencil)), None);
        for diameter in &station.diameters {
            for angle in station.touches.at(diameter.degrees.to_radians()) {
                let point = clock(centre, self.r(diameter.over_mm), angle);
                self.drawing.circle(point, 0.22 * self.t, None, Some(Colour::Pencil));
            }
        }
        for diameter in &station.diameters {
            self.number(diameter, station.touches, centre);
        }
        if let Some(words) = fitting(&station.name, self.t, (self.pitch - 0.5 * self.t) / 1.06) {
            let place = at(centre.x, self.drawing.height - 2.3 * self.t);
            self.drawing.text(&words.strong(), place, Anchor::Middle);
        }
    }

    /// A diameter's number outside one of its ends, or else nearby.
    fn number(&mut self, diameter: &Diameter, touches: Touches, centre: Point) {
        let column = Rect::new(
            centre.x - self.pitch / 2.0,
            0.0,
            centre.x + self.pitch / 2.0,
            self.drawing.height - 3.0 * self.t,
        );
        let words = Words::new(&diameter.text, 0.95 * self.t).entry().halo();
        let mut spots = Vec::new();
        for away in [1.1, 1.7, 2.4] {
            let beside = [0.0, 0.2, -0.2].into_iter();
            let angles = beside.flat_map(|off| touches.at(diameter.degrees.to_radians() + off));
            for angle in angles {
                let r = self.r(diameter.over_mm).max(self.radius) + away * self.t;
                let anchor = match angle.sin() {
                    s if s > 0.5 => Anchor::Start,
                    s if s < -0.5 => Anchor::End,
                    _ => Anchor::Middle,
                };
                spots.push((clock(centre, r, angle), anchor));
            }
        }
        place(&mut self.drawing, &words, &spots, column);
    }
}

/// A smooth guide through the points of a station, the same again from one leg to the next.
struct Guide {
    /// From one leg of the gauge to the next.
    period: f64,
    /// Angle within a period, and size; sorted.
    knots: Vec<(f64, f64)>,
}

impl Guide {
    fn through(station: &Station) -> Self {
        let period = station.touches.apart();
        let knot = |d: &Diameter| (d.degrees.to_radians().rem_euclid(period), d.over_mm);
        let mut knots: Vec<(f64, f64)> = station.diameters.iter().map(knot).collect();
        knots.sort_by(|a, b| a.0.total_cmp(&b.0));
        knots.dedup_by(|a, b| (a.0 - b.0).abs() < 1e-6);
        Self { period, knots }
    }

    /// Between two knots half a cosine wave, so that it never overshoots what was measured.
    fn at(&self, angle: f64) -> f64 {
        let angle = angle.rem_euclid(self.period);
        let count = self.knots.len();
        let after = self.knots.iter().position(|(a, _)| *a > angle).unwrap_or(0);
        let (mut to, mut from) = (self.knots[after], self.knots[(after + count - 1) % count]);
        if to.0 <= from.0 {
            to.0 += self.period;
        }
        let mut angle = angle;
        if angle < from.0 {
            angle += self.period;
        }
        if from.0 > angle {
            from.0 -= self.period;
        }
        let share = (angle - from.0) / (to.0 - from.0).max(1e-9);
        from.1 + (to.1 - from.1) * (1.0 - (PI * share).cos()) / 2.0
    }
}
