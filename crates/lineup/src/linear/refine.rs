//! Digits that a badly conditioned fit has lost, brought back.
//!
//! What is left of the normal equations, `g = Aᵀ·(y − A·x)`, is summed with twice the digits and
//! sends the answer the rest of the way: `x ← x + (AᵀA)⁻¹·g`, as long as the steps shrink.
//!
//! Sources: Golub and Van Loan, *Matrix Computations*, "iterative improvement"; Dekker (1971) and
//! Knuth, *Seminumerical Algorithms*, 4.2.2, for sums and products with their rounding errors; all
//! from memory.

use super::{Equation, Solution, dot};

/// Each step brings several digits, so few are ever needed.
const MOST_STEPS: usize = 8;

pub(super) fn refine<const W: usize>(
    solved: &mut Solution<W>,
    equations: &(impl Iterator<Item = Equation<W>> + Clone),
) {
    let size = |step: &[f64; W], unknowns: &[f64; W]| {
        let shares = step.iter().zip(unknowns).map(|(step, x)| step.abs() / x.abs());
        shares.filter(|share| !share.is_nan()).fold(0.0, f64::max)
    };
    let mut last = f64::INFINITY;
    for _ in 0..MOST_STEPS {
        let left = gradient(&solved.unknowns, equations.clone());
        let step: [f64; W] = std::array::from_fn(|i| dot(&solved.covariance[i], &left));
        let share = size(&step, &solved.unknowns);
        if share.is_nan() || share > last / 2.0 {
            return;
        }
        solved.unknowns = std::array::from_fn(|i| solved.unknowns[i] + step[i]);
        last = share;
    }
}

/// `Aᵀ·(y − A·x)`.
fn gradient<const W: usize>(
    unknowns: &[f64; W],
    equations: impl Iterator<Item = Equation<W>>,
) -> [f64; W] {
    let mut sums = [Twofold::default(); W];
    for (row, value) in equations {
        let terms = row.iter().zip(unknowns);
        let left = terms.fold(Twofold::from(value), |left, (a, x)| left.plus_product(-a, *x));
        for (sum, a) in sums.iter_mut().zip(row) {
            *sum = sum.plus_product(a, left.high).plus_product(a, left.low);
        }
    }
    sums.map(|sum| sum.high + sum.low)
}

/// A number and what rounding has taken from it.
#[derive(Clone, Copy, Default)]
struct Twofold {
    high: f64,
    low: f64,
}

impl From<f64> for Twofold {
    fn from(high: f64) -> Self {
        Self { high, low: 0.0 }
    }
}

impl Twofold {
    fn plus_product(self, a: f64, b: f64) -> Self {
        let product = a * b;
        let lost = a.mul_add(b, -product);
        let sum = self.high + product;
        let virtual_product = sum - self.high;
        let rounding = (self.high - (sum - virtual_product)) + (product - virtual_product);
        let low = self.low + (lost + rounding);
        let high = sum + low;
        Self { high, low: low - (high - sum) }
    }
}
