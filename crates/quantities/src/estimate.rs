//! A quantity that was found, with its `±`.

use crate::{Kind, Physical, Value};

/// A quantity and the half-width of its 95 % interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate<Q> {
    /// The best value.
    pub value: Q,
    /// Half the width of the interval that holds the true value with about 95 % probability.
    pub plus_minus: Q,
}

impl<Q: Physical<Spread = Q>> Estimate<Q> {
    /// A value with its `±`.
    pub fn new(value: Q, plus_minus: Q) -> Self {
        Self { value, plus_minus }
    }

    /// A value taken as exact.
    pub fn exact(value: Q) -> Self {
        Self { value, plus_minus: Q::from_si(0.0) }
    }

    /// From SI floats, the second a standard uncertainty (k = 1).
    pub fn from_standard(value: f64, u: f64) -> Self {
        Self { value: Q::from_si(value), plus_minus: Q::from_si(2.0 * u) }
    }

    /// The standard uncertainty (k = 1), in SI.
    pub fn standard_uncertainty(&self) -> f64 {
        self.plus_minus.si() / 2.0
    }

    /// The lower end.
    pub fn low(&self) -> Q {
        Q::from_si(self.value.si() - self.plus_minus.si())
    }

    /// The upper end.
    pub fn high(&self) -> Q {
        Q::from_si(self.value.si() + self.plus_minus.si())
    }

    /// This less another, found apart from it: the half-widths add as squares.
    ///
    /// # Example
    /// ```
    /// use quantities::{Estimate, Length, Physical};
    /// let um = |um: f64| Length::from_si(um * 1e-6);
    /// let shaft = Estimate::new(um(46.0), um(3.0));
    /// let bore = Estimate::new(um(14.0), um(4.0));
    /// let interference = shaft.less(&bore);
    /// assert!((interference.value.si() - 32e-6).abs() < 1e-12);
    /// assert!((interference.plus_minus.si() - 5e-6).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn less(&self, other: &Self) -> Self {
        let both = [self.plus_minus.si(), other.plus_minus.si()];
        Self {
            value: Q::from_si(self.value.si() - other.value.si()),
            plus_minus: Q::from_si(root_sum_square(both)),
        }
    }

    /// To be shown as a `kind` of the same dimension.
    pub fn shown(&self, kind: Kind) -> Value {
        Value::new(kind, self.value).with_plus_minus(self.plus_minus.si())
    }

    /// True for a number with a `±` that is one too, and not negative.
    pub fn is_sound(&self) -> bool {
        self.value.si().is_finite() && is_spread(self.plus_minus.si())
    }
}

/// √(Σ u²): how half-widths that have nothing to do with each other combine (JCGM 100:2008, 5.1.2).
pub fn root_sum_square(parts: impl IntoIterator<Item = f64>) -> f64 {
    parts.into_iter().map(|part| part * part).sum::<f64>().sqrt()
}

/// True for a half-width: a number, not negative.
pub fn is_spread(spread: f64) -> bool {
    spread.is_finite() && spread >= 0.0
}
