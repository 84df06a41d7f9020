//! Small full matrices: those of the joint, a few dozen nodes.

use faer::dyn_stack::{MemBuffer, MemStack};
use faer::linalg::cholesky::llt::factor::{
    LltRegularization, cholesky_in_place, cholesky_in_place_scratch,
};
use faer::{MatMut, Par, Spec};

use super::wide::wide;

/// A full matrix, row by row.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Full {
    columns: usize,
    values: Vec<f64>,
}

impl Full {
    /// From its rows, one after another.
    pub fn from_rows(columns: usize, values: Vec<f64>) -> Self {
        Self { columns, values }
    }

    /// Number of columns.
    pub fn size(&self) -> usize {
        self.columns
    }

    /// One row.
    pub fn row(&self, row: usize) -> &[f64] {
        &self.values[row * self.columns..(row + 1) * self.columns]
    }

    /// All rows.
    pub fn rows(&self) -> impl Iterator<Item = &[f64]> {
        self.values.chunks_exact(self.columns.max(1))
    }

    /// The product with a vector.
    pub fn times(&self, x: &[f64]) -> Vec<f64> {
        wide(|| self.rows().map(|row| dot_inlined(row, x)).collect())
    }
}

/// Σ a·b.
pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    wide(|| dot_inlined(a, b))
}

/// Σ a·b, in eight sums so that the processor can overlap them.
#[expect(clippy::inline_always, reason = "what is inlined becomes wide with its caller")]
#[inline(always)]
pub(crate) fn dot_inlined(a: &[impl Copy + Into<f64>], b: &[f64]) -> f64 {
    let ((a8, a_rest), (b8, b_rest)) = (a.as_chunks::<8>(), b.as_chunks::<8>());
    let rest: f64 = a_rest.iter().zip(b_rest).map(|(&a, b)| a.into() * b).sum();
    let mut sums = [0.0; 8];
    for (a, b) in a8.iter().zip(b8) {
        for k in 0..8 {
            sums[k] += a[k].into() * b[k];
        }
    }
    sums.iter().sum::<f64>() + rest
}

/// A symmetric positive definite matrix, factored by Cholesky.
#[derive(Clone, Debug)]
pub(crate) struct Cholesky {
    size: usize,
    /// The lower triangle, column by column of full height.
    lower: Vec<f64>,
}

impl Cholesky {
    /// Of `entry(i, j)` for i ≥ j; `None` unless it is positive definite.
    pub fn new(size: usize, entry: impl Fn(usize, usize) -> f64) -> Option<Self> {
        let mut lower = vec![0.0; size * size];
        for (j, column) in lower.chunks_exact_mut(size.max(1)).enumerate() {
            for (i, value) in column.iter_mut().enumerate().skip(j) {
                *value = entry(i, j);
            }
        }
        let scratch = cholesky_in_place_scratch::<f64>(size, Par::Seq, Spec::default());
        let mut memory = MemBuffer::try_new(scratch).ok()?;
        let (regularization, whole) = (
            LltRegularization::default(),
            MatMut::from_column_major_slice_mut(&mut lower, size, size),
        );
        let stack = MemStack::new(&mut memory);
        cholesky_in_place(whole, regularization, Par::Seq, stack, Spec::default()).ok()?;
        Some(Self { size, lower })
    }

    /// Solves for one right-hand side, in place.
    pub fn solve(&self, x: &mut [f64]) {
        wide(|| {
            let columns = self.lower.chunks_exact(self.size.max(1));
            for (k, column) in columns.clone().enumerate() {
                x[k] /= column[k];
                let solved = x[k];
                for (rest, factor) in x[k + 1..].iter_mut().zip(&column[k + 1..]) {
                    *rest -= solved * factor;
                }
            }
            for (k, column) in columns.enumerate().rev() {
                x[k] = (x[k] - dot_inlined(&column[k + 1..], &x[k + 1..])) / column[k];
            }
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The Hilbert matrix of four rows has the inverse of whole numbers, whose rows sum to
    /// −4, 60, −180, 140 (Knuth, *The Art of Computer Programming*, vol. 1, 1.2.3; from memory).
    #[test]
    fn the_hilbert_matrix_gives_whole_numbers() {
        let hilbert = |i: usize, j: usize| 1.0 / super::super::grading::as_float(i + j + 1);
        let mut x = [1.0; 4];
        Cholesky::new(4, hilbert).unwrap().solve(&mut x);
        for (found, wanted) in x.iter().zip([-4.0, 60.0, -180.0, 140.0]) {
            assert!((found - wanted).abs() < 1e-9, "{x:?}");
        }
        assert!(Cholesky::new(2, |_, _| 1.0).is_none());
    }

    #[test]
    fn a_product_of_odd_length_is_whole() {
        let a: Vec<f64> = (0..11).map(super::super::grading::as_float).collect();
        assert!((dot(&a, &a) - 385.0).abs() < 1e-12);
        assert_eq!(Full::from_rows(2, vec![1.0, 2.0, 3.0, 4.0]).times(&[1.0, 1.0]), [3.0, 7.0]);
    }
}
