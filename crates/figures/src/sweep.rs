//! A sweep of a dial unrolled: its readings, the curve through them, and what each lies off it.
//!
//! The run is once round the clock, 12 to 12. Readings are round marks in pencil, the curve that was
//! worked out is ink. Below, much enlarged, each reading stands on the curve made level; broken
//! lines are the ± of one reading.
//!
//! Not here: how the curve was found, and whether the sweep closes.

use crate::chart::{Axes, extent};
use crate::ink::{Colour, Drawing, HIDDEN, MEDIUM, Stroke, THIN, level};
use crate::{Figure, Paper, PaperError};

/// Clock positions that the run names, degrees.
const QUARTERS: [(f64, &str); 5] =
    [(0.0, "12"), (90.0, "3"), (180.0, "6"), (270.0, "9"), (360.0, "12")];
/// The curve is drawn in steps of so many degrees.
const STEP: u32 = 4;

/// A sweep and the curve through it, in one unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Sweep {
    /// "motor rim, dial on the pump".
    pub name: String,
    /// "mm", "mil".
    pub unit: String,
    /// Degrees clockwise from 12, and what was read.
    pub readings: Vec<(f64, f64)>,
    /// `c`, `a` and `b` of the curve `c + a·cos t + b·sin t`.
    pub circle: [f64; 3],
    /// ± of one reading.
    pub plus_minus: f64,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SweepError {
    /// No reading, or one that is no number.
    #[error("no readings that can be drawn")]
    Readings,
    /// Paper too narrow for its type.
    #[error(transparent)]
    Paper(#[from] PaperError),
}

impl Sweep {
    fn on_curve(&self, degrees: f64) -> f64 {
        let (sin, cos) = degrees.to_radians().sin_cos();
        let [c, a, b] = self.circle;
        c + a * cos + b * sin
    }

    /// What each reading lies off the curve.
    fn off(&self) -> Vec<(f64, f64)> {
        self.readings.iter().map(|(t, read)| (*t, read - self.on_curve(*t))).collect()
    }
}

/// The drawing.
///
/// # Errors
/// [`SweepError`] for a sweep without readings, or with one that is no number.
pub fn draw(sweep: &Sweep, paper: Paper) -> Result<Figure, SweepError> {
    paper.check()?;
    let sound = |(t, read): &(f64, f64)| (0.0..=360.0).contains(t) && read.abs() < 1e9;
    let curve = sweep.circle.iter().all(|part| part.abs() < 1e9) && sweep.plus_minus > 0.0;
    if sweep.readings.is_empty() || !curve || !sweep.readings.iter().all(sound) {
        return Err(SweepError::Readings);
    }
    Ok(Figure::of(&drawing(sweep, paper), "Sweep of a dial", says(sweep)))
}

fn says(sweep: &Sweep) -> String {
    let farthest = sweep.off().into_iter().map(|(_, off)| off.abs()).fold(0.0, f64::max);
    let Sweep { name, unit, readings, circle: [c, a, b], .. } = sweep;
    format!(
        "{name}: {} readings round the clock and the curve {c:.3} + {a:.3}·cos t + {b:.3}·sin t \
         {unit} through them, t clockwise from 12; the farthest lies {farthest:.3} {unit} off it.",
        readings.len()
    )
}

/// The sheet of a sweep that was checked.
pub(crate) fn drawing(sweep: &Sweep, paper: Paper) -> Drawing {
    let t = paper.type_mm;
    let round = |degree: u32| (f64::from(degree), sweep.on_curve(f64::from(degree)));
    let curve: Vec<(f64, f64)> = (0..=360 / STEP).map(|step| round(step * STEP)).collect();
    let heights = extent(curve.iter().chain(&sweep.readings).map(|(_, y)| *y));
    let off = sweep.off();
    let widest = off.iter().map(|(_, y)| y.abs()).fold(sweep.plus_minus, f64::max);
    let run = (0.0, 360.0);
    let upper = (0.32 * paper.width_mm).clamp(10.0 * t, 14.0 * t);
    // Both plots stand under one another only when the figures beside them take one width.
    let axes = Axes::new((paper.width_mm, upper), t, run, heights);
    let below = Axes::new((paper.width_mm, 6.0 * t), t, run, (-widest, widest));
    let (axes, below) = Axes::under_one_another(axes, below.lower(upper + 2.8 * t));
    let mut drawing = Drawing::new(paper.width_mm, below.sheet_height());
    axes.heights(&mut drawing, &format!("{}, {}", sweep.name, sweep.unit));
    axes.curve(&mut drawing, &curve, Stroke::of(MEDIUM).under());
    for (degrees, read) in &sweep.readings {
        drawing.circle(axes.at(*degrees, *read), 0.28 * t, None, Some(Colour::Pencil));
    }
    below.heights(&mut drawing, &format!("off the curve, {}", sweep.unit));
    for spread in [-sweep.plus_minus, sweep.plus_minus] {
        let stroke = Stroke::of(THIN).dash(HIDDEN).under();
        level(&mut drawing, below.y(spread), below.frame.left, below.frame.right, stroke);
    }
    let pencil = Stroke::of(MEDIUM).colour(Colour::Pencil).under();
    for (degrees, off) in off {
        let tip = below.at(degrees, off);
        drawing.line(below.at(degrees, 0.0), tip, pencil);
        drawing.circle(tip, 0.28 * t, None, Some(Colour::Pencil));
    }
    below.places(&mut drawing, &QUARTERS);
    drawing
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::proof::{cases, is_plain, is_tidy};

    fn sweeps() -> impl Strategy<Value = Sweep> {
        let reading = (0.0..=360.0_f64, -1.0..1.0_f64);
        let part = || prop_oneof![Just(0.0), -3.0..3.0_f64, -0.01..0.01_f64];
        (prop::collection::vec(reading, 1..12), [part(), part(), part()], 1e-3..0.1_f64).prop_map(
            |(odd, circle, plus_minus)| {
                let name = "gearbox rim, dial on the second shaft".to_owned();
                let mut sweep =
                    Sweep { name, unit: "mm".to_owned(), readings: Vec::new(), circle, plus_minus };
                let read = |(t, off): (f64, f64)| (t, sweep.on_curve(t) + 0.02 * off);
                sweep.readings = odd.into_iter().map(read).collect();
                sweep
            },
        )
    }

    proptest! {
        #![proptest_config(cases(60))]
        #[test]
        fn every_sweep_is_tidy(sweep in sweeps(), inch in any::<bool>()) {
            let scale = if inch { 39.37 } else { 1.0 };
            let sweep = Sweep {
                readings: sweep.readings.iter().map(|(t, y)| (*t, y * scale)).collect(),
                circle: sweep.circle.map(|part| part * scale),
                plus_minus: sweep.plus_minus * scale,
                ..sweep
            };
            for paper in [Paper::CARD, Paper::COLUMN, Paper::PHONE, Paper::PAGE] {
                is_tidy(&drawing(&sweep, paper)).map_err(TestCaseError::fail)?;
                is_plain(&draw(&sweep, paper).unwrap()).map_err(TestCaseError::fail)?;
            }
        }
    }

    /// Marks lie where their numbers say: readings of a quarter each on a curve of height 1.
    #[test]
    fn readings_lie_on_their_curve() {
        let readings = vec![(0.0, 1.0), (90.0, 0.0), (180.0, -1.0), (270.0, 0.0)];
        let sweep = Sweep {
            name: "pump rim".to_owned(),
            unit: "mm".to_owned(),
            readings,
            circle: [0.0, 1.0, 0.0],
            plus_minus: 0.01,
        };
        assert!(sweep.off().iter().all(|(_, off)| off.abs() < 1e-12));
        assert!(draw(&sweep, Paper::CARD).unwrap().says.contains("lies 0.000 mm off it"));
        let none = Sweep { readings: vec![(0.0, f64::NAN)], ..sweep };
        assert_eq!(draw(&none, Paper::CARD), Err(SweepError::Readings));
    }
}
