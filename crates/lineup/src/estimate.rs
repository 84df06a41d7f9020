//! A number found here, with its `±`.

use quantities::{Kind, Physical, Value};

/// A quantity and the half-width of its 95 % interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate<Q> {
    /// What was found.
    pub value: Q,
    /// Half the width of the interval that holds the true value with about 95 % probability.
    pub plus_minus: Q,
}

impl<Q: Physical<Spread = Q>> Estimate<Q> {
    /// With a `±`.
    pub fn new(value: Q, plus_minus: Q) -> Self {
        Self { value, plus_minus }
    }

    /// Without a `±`: taken as exact.
    pub fn exact(value: Q) -> Self {
        Self { value, plus_minus: Q::from_si(0.0) }
    }

    /// From SI floats, the second a standard uncertainty (k = 1).
    pub(crate) fn from_standard(value: f64, u: f64) -> Self {
        Self { value: Q::from_si(value), plus_minus: Q::from_si(2.0 * u) }
    }

    /// The standard uncertainty (k = 1), in SI.
    pub fn standard_uncertainty(&self) -> f64 {
        self.plus_minus.si() / 2.0
    }

    /// To be shown as a `kind`.
    pub fn shown(&self, kind: Kind) -> Value {
        Value::new(kind, self.value).with_plus_minus(self.plus_minus.si())
    }

    /// True for a number with a `±` that is one too, and not negative.
    pub(crate) fn is_sound(&self) -> bool {
        self.value.si().is_finite() && is_spread(self.plus_minus.si())
    }
}

/// True for a half-width: a number, not negative.
pub(crate) fn is_spread(spread: f64) -> bool {
    spread.is_finite() && spread >= 0.0
}
