//! A straight line in both planes, with the covariance of its four numbers.
//!
//! Positions of shafts, growth and targets are all of this kind: `y(x) = p + q·(x − x₀)` and
//! likewise in z. Their differences add covariances; a `±` at any x follows from them.

use quantities::{Angle, Length, Physical};

use crate::{Estimate, Plane};

/// A line in both planes; SI floats, standard covariance.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    x0_m: f64,
    /// y at x₀, z at x₀, slope of y, slope of z.
    numbers: [f64; 4],
    covariance: [[f64; 4]; 4],
}

impl Line {
    pub(crate) fn new(x0_m: f64, numbers: [f64; 4], covariance: [[f64; 4]; 4]) -> Self {
        Self { x0_m, numbers, covariance }
    }

    /// The x axis itself: no offset, no slope, exactly.
    pub fn zero(at: Length) -> Self {
        Self::new(at.si(), [0.0; 4], [[0.0; 4]; 4])
    }

    /// x of the plane that its offsets are stated at.
    pub fn reference(&self) -> Length {
        Length::from_si(self.x0_m)
    }

    /// Its height (or its place sideways) at `x`.
    ///
    /// ```text
    /// d(x) = p + q·(x − x₀)      u² = u²(p) + 2·(x − x₀)·u(p, q) + (x − x₀)²·u²(q)
    /// ```
    pub fn offset(&self, plane: Plane, x: Length) -> Estimate<Length> {
        let row = self.row(plane, x.si());
        Estimate::from_standard(self.along(&row), self.spread(&row))
    }

    /// Its slope.
    pub fn slope(&self, plane: Plane) -> Estimate<Angle> {
        let mut row = [0.0; 4];
        row[2 + plane.index()] = 1.0;
        Estimate::from_standard(self.along(&row), self.spread(&row))
    }

    /// Covariance of offset up, offset right (at its reference), slope up, slope right; m and rad.
    pub fn covariance(&self) -> [[f64; 4]; 4] {
        self.covariance
    }

    /// Correlation of its offsets at two places, −1 to 1; `None` where either is exact.
    pub fn correlation(&self, plane: Plane, first: Length, second: Length) -> Option<f64> {
        let (a, b) = (self.row(plane, first.si()), self.row(plane, second.si()));
        let product = self.spread(&a) * self.spread(&b);
        (product > 0.0).then(|| self.shared(&a, &b) / product)
    }

    /// This line minus another; their errors are taken as independent.
    #[must_use]
    pub fn minus(&self, other: &Self) -> Self {
        let other = other.moved_to(self.x0_m);
        let mut out = self.clone();
        for i in 0..4 {
            out.numbers[i] -= other.numbers[i];
            for j in 0..4 {
                out.covariance[i][j] += other.covariance[i][j];
            }
        }
        out
    }

    /// This line plus another; their errors are taken as independent.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        self.minus(&other.negated())
    }

    /// Halfway between this line and another; their errors are taken as independent.
    #[must_use]
    pub fn midway(&self, other: &Self) -> Self {
        let mut half = self.plus(other);
        for number in &mut half.numbers {
            *number /= 2.0;
        }
        half.widened(0.5)
    }

    /// Turned over: the same line seen from the other machine.
    #[must_use]
    pub fn negated(&self) -> Self {
        Self { numbers: self.numbers.map(|number| -number), ..self.clone() }
    }

    /// With every standard uncertainty `factor` times as large.
    pub(crate) fn widened(mut self, factor: f64) -> Self {
        for row in &mut self.covariance {
            for entry in row {
                *entry *= factor * factor;
            }
        }
        self
    }

    /// With the covariance of another line instead of its own.
    pub(crate) fn with_covariance_of(self, other: &Self) -> Self {
        Self { covariance: other.moved_to(self.x0_m).covariance, ..self }
    }

    /// The same line, taken as exact.
    pub(crate) fn exactly(self) -> Self {
        Self { covariance: [[0.0; 4]; 4], ..self }
    }

    /// With one more independent error: what one unit of it, of this variance, adds to the numbers.
    pub(crate) fn with_cause(mut self, on: &[f64; 4], variance: f64) -> Self {
        for (row, a) in self.covariance.iter_mut().zip(on) {
            for (entry, b) in row.iter_mut().zip(on) {
                *entry += a * b * variance;
            }
        }
        self
    }

    /// Offset up, offset right (at its reference), slope up, slope right.
    pub(crate) fn numbers(&self) -> [f64; 4] {
        self.numbers
    }

    /// A linear form of the line: value and standard uncertainty of `on_offset·d(x₀) + on_slope·q`.
    pub(crate) fn form(&self, plane: Plane, [on_offset, on_slope]: [f64; 2]) -> (f64, f64) {
        let mut row = [0.0; 4];
        row[plane.index()] = on_offset;
        row[2 + plane.index()] = on_slope;
        (self.along(&row), self.spread(&row))
    }

    fn row(&self, plane: Plane, x_m: f64) -> [f64; 4] {
        let mut row = [0.0; 4];
        row[plane.index()] = 1.0;
        row[2 + plane.index()] = x_m - self.x0_m;
        row
    }

    fn along(&self, row: &[f64; 4]) -> f64 {
        row.iter().zip(&self.numbers).map(|(a, b)| a * b).sum()
    }

    fn shared(&self, a: &[f64; 4], b: &[f64; 4]) -> f64 {
        let times = |row: &[f64; 4]| row.iter().zip(b).map(|(c, b)| c * b).sum::<f64>();
        a.iter().zip(&self.covariance).map(|(a, row)| a * times(row)).sum()
    }

    fn spread(&self, row: &[f64; 4]) -> f64 {
        self.shared(row, row).max(0.0).sqrt()
    }

    fn moved_to(&self, x_m: f64) -> Self {
        let rows: Vec<[f64; 4]> = Plane::BOTH
            .map(|plane| self.row(plane, x_m))
            .into_iter()
            .chain([[0.0, 0.0, 1.0, 0.0], [0.0, 0.0, 0.0, 1.0]])
            .collect();
        let mut out = Self::new(x_m, [0.0; 4], [[0.0; 4]; 4]);
        for (i, row) in rows.iter().enumerate() {
            out.numbers[i] = self.along(row);
            for (j, other) in rows.iter().enumerate() {
                out.covariance[i][j] = self.shared(row, other);
            }
        }
        out
    }
}
