//! A quantity between two ends.

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

/// True for a number above zero; false for zero, for less, and for what is no number.
pub(crate) fn is_positive(number: f64) -> bool {
    number.is_finite() && number > 0.0
}
