//! A quantity with its `±`, and a quantity between two ends.

use quantities::{Kind, Physical, Value};

/// A quantity and the half-width of its 95 % interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate<Q> {
    /// The best value.
    pub value: Q,
    /// Half the width of the interval that holds the true value with about 95 % probability.
    pub spread: Q,
}

impl<Q: Physical<Spread = Q>> Estimate<Q> {
    /// A value with its `±`.
    pub fn new(value: Q, spread: Q) -> Self {
        Self { value, spread }
    }

    /// A value taken as exact.
    pub fn exact(value: Q) -> Self {
        Self { value, spread: Q::from_si(0.0) }
    }

    /// The lower end.
    pub fn low(&self) -> Q {
        Q::from_si(self.value.si() - self.spread.si())
    }

    /// The upper end.
    pub fn high(&self) -> Q {
        Q::from_si(self.value.si() + self.spread.si())
    }

    /// Both ends.
    pub fn range(&self) -> Range<Q> {
        Range { low: self.low(), high: self.high() }
    }

    /// This less another, found apart from it: the half-widths add as squares.
    #[must_use]
    pub fn less(&self, other: &Self) -> Self {
        Self {
            value: Q::from_si(self.value.si() - other.value.si()),
            spread: Q::from_si(root_sum_square([self.spread.si(), other.spread.si()])),
        }
    }

    /// To be shown as a `kind` of the same dimension.
    pub fn shown(&self, kind: Kind) -> Value {
        Value::new(kind, self.value).with_plus_minus(self.spread.si())
    }

    /// True when both numbers are numbers and the `±` is not negative.
    pub(crate) fn is_sound(&self) -> bool {
        self.value.si().is_finite() && self.spread.si().is_finite() && self.spread.si() >= 0.0
    }
}

/// A quantity known to lie between two ends: friction, a preload.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range<Q> {
    /// The lower end.
    pub low: Q,
    /// The upper end.
    pub high: Q,
}

impl<Q> Range<Q> {
    /// From the lower end to the upper.
    pub fn new(low: Q, high: Q) -> Self {
        Self { low, high }
    }

    /// The same done to both ends.
    pub fn map<R>(self, change: impl Fn(Q) -> R) -> Range<R> {
        Range { low: change(self.low), high: change(self.high) }
    }
}

impl Range<f64> {
    /// True for two numbers in order, neither negative.
    pub(crate) fn is_sound(&self) -> bool {
        self.low.is_finite() && self.high.is_finite() && 0.0 <= self.low && self.low <= self.high
    }
}

/// √(Σ u²): how half-widths that have nothing to do with each other combine (JCGM 100:2008, 5.1.2).
pub(crate) fn root_sum_square(parts: impl IntoIterator<Item = f64>) -> f64 {
    parts.into_iter().map(|part| part * part).sum::<f64>().sqrt()
}

/// True for a number above zero; false for zero, for less, and for what is no number.
pub(crate) fn is_positive(number: f64) -> bool {
    number.is_finite() && number > 0.0
}
