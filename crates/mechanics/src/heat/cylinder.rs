//! A long solid cylinder whose surroundings change at once: the exact series.
//!
//! ```text
//! θ = Σ Cn·exp(−ζn²·Fo)·J0(ζn·r)      ζ·J1(ζ) = Bi·J0(ζ)
//! Cn = (2/ζn)·J1(ζn)/(J0² + J1²)      heat = 1 − Σ 2·Cn·exp(−ζn²·Fo)·J1(ζn)/ζn
//! ```
//! θ part of the first difference that is left · Bi = h·R/k · Fo = a·t/R² · r radius over R
//!
//! Here for checking solutions by other means.
//!
//! Source: Incropera et al., *Fundamentals of Heat and Mass Transfer*, "Radial systems with
//! convection"; Bessel functions by their integrals (Abramowitz and Stegun 9.1.18, 9.1.21).

use super::HeatError;
use crate::is_positive;
use crate::least_squares::count_of;

/// One term of the series.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Term {
    /// ζ.
    pub root: f64,
    /// C.
    pub coefficient: f64,
}

/// The state of the cylinder at one time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cooled {
    /// θ at the radius asked for.
    pub theta: f64,
    /// Part of the heat that has gone.
    pub heat_fraction: f64,
}

/// The `n`th term, from 1.
///
/// # Errors
/// [`HeatError::Number`] for a Biot number not above zero, or `n` of zero.
pub fn term(biot: f64, n: usize) -> Result<Term, HeatError> {
    if !is_positive(biot) {
        return Err(HeatError::Number(biot));
    }
    if n == 0 {
        return Err(HeatError::Number(0.0));
    }
    // Between (n − 1)·π and n·π lies one zero of J1 and one of J0, and one root between them.
    let pi = std::f64::consts::PI;
    let (mut low, mut high) = (count_of(n - 1) * pi, count_of(n) * pi);
    let miss = |zeta: f64| zeta * bessel(1, zeta) - biot * bessel(0, zeta);
    let rising = miss(high) > 0.0;
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if (miss(middle) > 0.0) == rising { high = middle } else { low = middle }
    }
    let root = f64::midpoint(low, high);
    let (j0, j1) = (bessel(0, root), bessel(1, root));
    Ok(Term { root, coefficient: 2.0 / root * j1 / (j0 * j0 + j1 * j1) })
}

/// Temperature and heat by the first `terms` terms.
///
/// # Valid
/// One term for Fo above 0.2, where it is good to about 1 %; forty for Fo down to 0.01.
/// # Errors
/// [`HeatError::Number`] for a number not above zero, or a radius beyond the surface.
/// # Example
/// ```
/// use mechanics::heat::cylinder::cooled;
/// let centre = cooled(0.5, 0.1, 0.0, 40)?;
/// assert_eq!(format!("{:.4}", centre.theta), "0.9875");
/// # Ok::<(), mechanics::heat::HeatError>(())
/// ```
pub fn cooled(
    biot: f64,
    fourier: f64,
    radius_over_outer: f64,
    terms: usize,
) -> Result<Cooled, HeatError> {
    if !is_positive(fourier) {
        return Err(HeatError::Number(fourier));
    }
    if !(0.0..=1.0).contains(&radius_over_outer) {
        return Err(HeatError::Number(radius_over_outer));
    }
    let mut out = Cooled { theta: 0.0, heat_fraction: 1.0 };
    for n in 1..=terms {
        let Term { root, coefficient } = term(biot, n)?;
        let left = coefficient * (-root * root * fourier).exp();
        out.theta += left * bessel(0, root * radius_over_outer);
        out.heat_fraction -= 2.0 * left * bessel(1, root) / root;
    }
    Ok(out)
}

/// Jn(x) for n 0 or 1: the mean of cos(n·t − x·sin t) over a turn, which the trapezium rule finds
/// to the last digit once the points outnumber x.
fn bessel(order: u8, x: f64) -> f64 {
    let points = [32_u32, 64, 128, 256].into_iter().find(|&points| f64::from(points) > x + 24.0);
    let points = points.unwrap_or(1024);
    let step = std::f64::consts::TAU / f64::from(points);
    let value = |k: u32| {
        let t = step * f64::from(k);
        (f64::from(order) * t - x * t.sin()).cos()
    };
    (0..points).map(value).sum::<f64>() / f64::from(points)
}
