//! The circle through a sweep: `r = c + a·cos t + b·sin t` by weighted least squares.
//!
//! Any positions will do, repeats and partial arcs as well; what an arc cannot see shows in the
//! covariance. The constant `c` takes up where the dial was set to zero. N readings spread evenly
//! over a full turn give u²(a) = u²(b) = 2·u²/N; half a turn costs the coefficient along its
//! middle 2.3 times the uncertainty and leaves the other as it was.

use crate::linear::{least_squares, quadratic};

/// One reading for the kernel, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Cosine of the clock angle.
    pub cos: f64,
    /// Sine of the clock angle.
    pub sin: f64,
    /// What was read, m.
    pub value: f64,
    /// Its standard uncertainty, m.
    pub sigma: f64,
}

/// The circle that fits best.
#[derive(Clone, Debug, PartialEq)]
pub struct Harmonic {
    /// c, m.
    pub constant: f64,
    /// a, m.
    pub cosine: f64,
    /// b, m.
    pub sine: f64,
    /// Covariance of (c, a, b), m², for the stated uncertainties.
    pub covariance: [[f64; 3]; 3],
    /// Reading minus circle, m, in the order of the readings.
    pub residuals: Vec<f64>,
    /// Residuals over their own standard uncertainty; `None` where a reading rules its own fit.
    pub standardised: Vec<Option<f64>>,
    /// Σ(residual/σ)².
    pub chi_squared: f64,
    /// Readings beyond the three that fix a circle.
    pub degrees_of_freedom: u32,
}

impl Harmonic {
    /// Standard deviation of the residuals, m; `None` without a degree of freedom.
    pub fn residual_deviation(&self) -> Option<f64> {
        let squares: f64 = self.residuals.iter().map(|r| r * r).sum();
        (self.degrees_of_freedom > 0).then(|| (squares / f64::from(self.degrees_of_freedom)).sqrt())
    }
}

/// Why readings fix no circle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum FitError {
    /// Fewer than three, or not at three different positions.
    #[error("the readings stand at fewer than three different clock places; a circle wants three")]
    TooFew,
    /// A number that is none, or an uncertainty that isn't positive.
    #[error("a reading is not a number, or its ± is not above nothing")]
    NotANumber,
}

/// Fits the circle.
///
/// ```text
/// (c, a, b) = (AᵀWA)⁻¹·AᵀW·r      A = [1, cos t, sin t]      W = 1/σ²
/// ```
/// # Errors
/// [`FitError`].
/// # Source
/// JCGM 100:2008, H.3, for a line; here for a circle.
/// # Example
/// ```
/// use lineup::fit::{Point, harmonic};
/// let at = |cos, sin, value| Point { cos, sin, value, sigma: 1.0 };
/// let circle = harmonic(&[at(1.0, 0.0, 0.0), at(0.0, 1.0, 3.0), at(-1.0, 0.0, -2.0), at(0.0, -1.0, -5.0)])?;
/// assert!((circle.cosine - 1.0).abs() < 1e-12 && (circle.sine - 4.0).abs() < 1e-12);
/// # Ok::<(), lineup::fit::FitError>(())
/// ```
pub fn harmonic(points: &[Point]) -> Result<Harmonic, FitError> {
    let sound = |p: &Point| p.value.is_finite() && p.sigma > 0.0 && p.sigma.is_finite();
    if !points.iter().all(sound) {
        return Err(FitError::NotANumber);
    }
    let equations = points.iter().map(|p| {
        let weight = 1.0 / p.sigma;
        ([weight, p.cos * weight, p.sin * weight], p.value * weight)
    });
    let solved = least_squares(&equations).ok_or(FitError::TooFew)?;
    let mut residuals = Vec::with_capacity(points.len());
    let mut standardised = Vec::with_capacity(points.len());
    let mut chi_squared = 0.0;
    for (equation, point) in equations.zip(points) {
        let residual = solved.residual(&equation);
        let free = 1.0 - quadratic(&equation.0, &solved.covariance, &equation.0);
        residuals.push(residual * point.sigma);
        standardised.push((free > 1e-9).then(|| residual / free.sqrt()));
        chi_squared += residual * residual;
    }
    let [constant, cosine, sine] = solved.unknowns;
    Ok(Harmonic {
        constant,
        cosine,
        sine,
        covariance: solved.covariance,
        residuals,
        standardised,
        chi_squared,
        degrees_of_freedom: u32::try_from(points.len() - 3).unwrap_or(u32::MAX),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(degrees: &[f64], values: &[f64]) -> Vec<Point> {
        let point = |(degrees, value): (&f64, &f64)| {
            let (sin, cos) = degrees.to_radians().sin_cos();
            Point { cos, sin, value: *value, sigma: 1.0 }
        };
        degrees.iter().zip(values).map(point).collect()
    }

    /// Inverse of the normal matrix, worked out apart from this code: four quarters, and seven readings
    /// over the upper half turn.
    #[test]
    fn arcs_cost_what_geometry_says() {
        let quarters = harmonic(&points(&[0.0, 90.0, 180.0, 270.0], &[0.0; 4])).unwrap();
        let half = [270.0, 300.0, 330.0, 0.0, 30.0, 60.0, 90.0];
        let half = harmonic(&points(&half, &[0.0; 7])).unwrap();
        #[rustfmt::skip]
        let wanted = [
            (quarters.covariance, [0.25, 0.5, 0.5, 0.0, 0.0, 0.0]),
            (half.covariance, [0.424_220_335_749, 0.989_847_450_081, 0.25, -0.527_737_282_206, 0.0, 0.0]),
        ];
        for (found, [cc, aa, bb, ca, cb, ab]) in wanted {
            let pairs = [(0, 0, cc), (1, 1, aa), (2, 2, bb), (0, 1, ca), (0, 2, cb), (1, 2, ab)];
            for (i, j, wanted) in pairs {
                assert!((found[i][j] - wanted).abs() < 1e-9, "{i}{j}: {found:?}");
                assert!((found[j][i] - wanted).abs() < 1e-9, "{j}{i}: {found:?}");
            }
        }
    }

    /// Many readings spread evenly over ±h about 12: N·var a = 1/((1 + S₂)/2 − S²),
    /// N·var b = 2/(1 − S₂), S = sin h/h, S₂ = sin 2h/2h. For a half turn 10.557960 and 2, for a
    /// full turn 2 and 2. Midpoints of n equal steps come within 1/n² of it.
    #[test]
    fn dense_arcs_meet_their_limit() {
        for (half_arc, var_a, var_b) in [(180.0, 2.0, 2.0), (90.0, 10.557_960_170_974, 2.0)] {
            let count = 2000_u32;
            let step = 2.0 * half_arc / f64::from(count);
            let degrees: Vec<f64> =
                (0..count).map(|i| step * (f64::from(i) + 0.5) - half_arc).collect();
            let fitted = harmonic(&points(&degrees, &vec![0.0; degrees.len()])).unwrap();
            let n = f64::from(count);
            assert!((n * fitted.covariance[1][1] / var_a - 1.0).abs() < 1e-5, "{half_arc}");
            assert!((n * fitted.covariance[2][2] / var_b - 1.0).abs() < 1e-5, "{half_arc}");
        }
    }

    #[test]
    fn three_readings_fit_and_two_places_do_not() {
        let three = harmonic(&points(&[0.0, 90.0, 180.0], &[0.0, 3.0, -2.0])).unwrap();
        assert_eq!(three.degrees_of_freedom, 0);
        assert!(three.residual_deviation().is_none());
        assert!(three.standardised.iter().all(Option::is_none));
        let two = points(&[0.0, 180.0, 180.0], &[0.0, 3.0, 3.0]);
        assert_eq!(harmonic(&two), Err(FitError::TooFew));
        assert_eq!(harmonic(&points(&[0.0, 90.0], &[0.0, 1.0])), Err(FitError::TooFew));
        assert_eq!(
            harmonic(&points(&[0.0, 90.0, 9.0], &[0.0, 1.0, f64::NAN])),
            Err(FitError::NotANumber)
        );
    }
}
