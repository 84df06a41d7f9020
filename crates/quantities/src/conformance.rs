//! How likely a value lies within its limits, and what `±` would settle it.
//!
//! The true value is taken as normally distributed about the one found, with half its `±` as
//! standard deviation (JCGM 106:2012, 7.2).

use crate::{Limits, Value};

/// The probability that the true value lies within the limits; `None` for a value without a `±`.
///
/// ```text
/// P = Φ((G − x)/u) − Φ((L − x)/u)      u = U/2
/// ```
/// # Source
/// JCGM 106:2012, 7.3 and 7.4.
/// # Example
/// ```
/// use quantities::{Kind, Limits, Value, probability_inside};
/// let fit = Value { kind: Kind::Allowance, si: 51e-6, plus_minus: Some(4e-6) };
/// let p = probability_inside(&fit, &Limits::between(2e-6, 51e-6)).unwrap();
/// assert!((p - 0.5).abs() < 1e-9);
/// ```
pub fn probability_inside(value: &Value, limits: &Limits) -> Option<f64> {
    let u = value.plus_minus? / 2.0;
    if !(u > 0.0 && u.is_finite() && value.si.is_finite()) {
        return None;
    }
    let below = |limit: f64| normal((limit - value.si) / u);
    Some(limits.greatest.map_or(1.0, below) - limits.least.map_or(0.0, below))
}

/// The largest `±`, in SI, with which this value is no longer too close to call: its distance from
/// the nearest limit. `None` without limits.
///
/// # Example
/// ```
/// use quantities::{Kind, Limits, Value, settling};
/// let fit = Value { kind: Kind::Allowance, si: 49e-6, plus_minus: Some(4e-6) };
/// let needed = settling(&fit, &Limits::between(2e-6, 51e-6)).unwrap();
/// assert!((needed - 2e-6).abs() < 1e-12);
/// ```
pub fn settling(value: &Value, limits: &Limits) -> Option<f64> {
    let ends = [limits.least, limits.greatest].into_iter().flatten();
    ends.map(|limit| (limit - value.si).abs()).reduce(f64::min)
}

/// The standard normal distribution, by its series about the middle.
///
/// Source: Abramowitz and Stegun, *Handbook of Mathematical Functions*, 26.2.11; from memory.
fn normal(z: f64) -> f64 {
    if z.abs() > 8.0 {
        return if z > 0.0 { 1.0 } else { 0.0 };
    }
    let (mut term, mut sum) = (z, z);
    for k in 1..200 {
        term *= z * z / f64::from(2 * k + 1);
        sum += term;
    }
    let density = (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt();
    (0.5 + density * sum).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Kind;

    /// Abramowitz and Stegun, Table 26.1, printed to 15 decimals; from memory.
    #[test]
    fn the_normal_distribution_is_as_tabulated() {
        for (z, printed) in [
            (0.0, 0.5),
            (1.0, 0.841_344_746_068_543),
            (1.96, 0.975_002_104_851_780),
            (2.0, 0.977_249_868_051_821),
            (3.0, 0.998_650_101_968_370),
            (-1.0, 0.158_655_253_931_457),
        ] {
            assert!((normal(z) - printed).abs() < 1e-14, "{z}: {}", normal(z));
        }
        assert!(normal(-7.9) >= 0.0 && normal(7.9) <= 1.0);
    }

    /// Limits two standard deviations to both sides hold 95.45 %; one of them open, 97.72 %.
    #[test]
    fn limits_hold_their_share() {
        let value = Value { kind: Kind::Size, si: 0.08, plus_minus: Some(2e-6) };
        let both = probability_inside(&value, &Limits::between(0.08 - 2e-6, 0.08 + 2e-6)).unwrap();
        let one = probability_inside(&value, &Limits::at_most(0.08 + 2e-6)).unwrap();
        assert!((both - 0.954_499_736).abs() < 1e-8, "{both}");
        assert!((one - 0.977_249_868).abs() < 1e-8, "{one}");
        assert_eq!(probability_inside(&value, &Limits::default()), Some(1.0));
        let exact = Value { plus_minus: None, ..value };
        assert_eq!(probability_inside(&exact, &Limits::at_most(1.0)), None);
    }
}
