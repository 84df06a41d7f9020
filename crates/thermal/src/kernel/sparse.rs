//! Symmetric sparse matrices: built from small blocks, multiplied, factored.
//!
//! Only the lower triangle is kept, column by column. Matrices that share a [`Pattern`] can be
//! added. One thread, so that the same entry gives the same bits everywhere.

use std::sync::Arc;

use faer::dyn_stack::{MemBuffer, MemStack};
use faer::linalg::cholesky::llt::factor::LltRegularization;
use faer::sparse::linalg::cholesky::{
    CholeskySymbolicParams, LltRef, SymbolicCholesky, SymmetricOrdering,
    factorize_symbolic_cholesky,
};
use faer::sparse::{SparseColMatRef, SymbolicSparseColMatRef};
use faer::{Conj, MatMut, Par, Side, Spec};

/// Where a symmetric matrix has entries.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Pattern {
    size: usize,
    column_starts: Vec<usize>,
    rows: Vec<usize>,
}

impl Pattern {
    /// The pattern of blocks that couple every pair of their unknowns, and of the diagonal.
    pub fn of_blocks<'a>(size: usize, blocks: impl Iterator<Item = &'a [usize]>) -> Self {
        let mut columns: Vec<Vec<usize>> = (0..size).map(|k| vec![k]).collect();
        for block in blocks {
            for &column in block {
                columns[column].extend(block.iter().filter(|&&row| row > column));
            }
        }
        let mut pattern = Self { size, column_starts: vec![0], rows: Vec::new() };
        for column in &mut columns {
            column.sort_unstable();
            column.dedup();
            pattern.rows.extend_from_slice(column);
            pattern.column_starts.push(pattern.rows.len());
        }
        pattern
    }

    fn column(&self, column: usize) -> std::ops::Range<usize> {
        self.column_starts[column]..self.column_starts[column + 1]
    }

    fn place(&self, row: usize, column: usize) -> Option<usize> {
        let range = self.column(column);
        let start = range.start;
        self.rows[range].binary_search(&row).ok().map(|k| start + k)
    }

    fn symbolic(&self) -> SymbolicSparseColMatRef<'_, usize> {
        SymbolicSparseColMatRef::new_checked(
            self.size,
            self.size,
            &self.column_starts,
            None,
            &self.rows,
        )
    }
}

/// A symmetric matrix.
#[derive(Clone, Debug)]
pub(crate) struct Symmetric {
    pattern: Arc<Pattern>,
    values: Vec<f64>,
}

impl Symmetric {
    /// All zeros.
    pub fn zero(pattern: &Arc<Pattern>) -> Self {
        Self { pattern: Arc::clone(pattern), values: vec![0.0; pattern.rows.len()] }
    }

    /// Adds to one entry of the lower triangle; an entry above it, or outside the pattern, is
    /// the business of its mirror image.
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        if row >= column
            && let Some(place) = self.pattern.place(row, column)
        {
            self.values[place] += value;
        }
    }

    /// This plus `factor` times another of the same pattern.
    pub fn plus(&self, factor: f64, other: &Self) -> Self {
        let values = self.values.iter().zip(&other.values).map(|(a, b)| a + factor * b).collect();
        Self { pattern: Arc::clone(&self.pattern), values }
    }

    /// The product with a vector.
    pub fn times(&self, x: &[f64]) -> Vec<f64> {
        let mut out = vec![0.0; self.pattern.size];
        for column in 0..self.pattern.size {
            let mut sum = 0.0;
            for k in self.pattern.column(column) {
                let (row, value) = (self.pattern.rows[k], self.values[k]);
                sum += value * x[row];
                if row > column {
                    out[row] += value * x[column];
                }
            }
            out[column] += sum;
        }
        out
    }
}

/// The order in which a pattern is eliminated: found once, used by every matrix of the pattern.
#[derive(Clone, Debug)]
pub(crate) struct Order(Arc<SymbolicCholesky<usize>>);

impl Order {
    /// By approximate minimum degree; `None` when memory runs out.
    pub fn new(pattern: &Pattern) -> Option<Self> {
        let (order, params) = (SymmetricOrdering::Amd, CholeskySymbolicParams::default());
        factorize_symbolic_cholesky(pattern.symbolic(), Side::Lower, order, params)
            .ok()
            .map(|symbolic| Self(Arc::new(symbolic)))
    }

    /// Factors a matrix; `None` unless it is positive definite.
    pub fn factor(&self, matrix: &Symmetric) -> Option<Factor> {
        let mut values = vec![0.0; self.0.len_val()];
        let scratch = self.0.factorize_numeric_llt_scratch::<f64>(Par::Seq, Spec::default());
        let mut memory = MemBuffer::try_new(scratch).ok()?;
        self.0
            .factorize_numeric_llt(
                &mut values,
                SparseColMatRef::new(matrix.pattern.symbolic(), &matrix.values),
                Side::Lower,
                LltRegularization::default(),
                Par::Seq,
                MemStack::new(&mut memory),
                Spec::default(),
            )
            .ok()?;
        Some(Factor { order: self.clone(), values })
    }
}

/// A factored matrix.
#[derive(Clone, Debug)]
pub(crate) struct Factor {
    order: Order,
    values: Vec<f64>,
}

impl Factor {
    /// Solves for as many right-hand sides as stand one after another in `columns`, in place.
    pub fn solve(&self, columns: &mut [f64]) {
        let size = self.order.0.nrows();
        if size == 0 {
            return;
        }
        let count = columns.len() / size;
        let scratch = self.order.0.solve_in_place_scratch::<f64>(count, Par::Seq);
        let mut memory = MemBuffer::new(scratch);
        LltRef::new(&self.order.0, &self.values).solve_in_place_with_conj(
            Conj::No,
            MatMut::from_column_major_slice_mut(columns, size, count),
            Par::Seq,
            MemStack::new(&mut memory),
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chain(size: usize) -> Symmetric {
        let blocks: Vec<[usize; 2]> = (0..size - 1).map(|k| [k, k + 1]).collect();
        let pattern = Arc::new(Pattern::of_blocks(size, blocks.iter().map(<[_; 2]>::as_slice)));
        let mut matrix = Symmetric::zero(&pattern);
        for k in 0..size {
            matrix.add(k, k, 2.0);
            if k > 0 {
                matrix.add(k, k - 1, -1.0);
                matrix.add(k - 1, k, 99.0);
            }
        }
        matrix
    }

    /// A string of unit springs held at both ends under unit loads sags as a parabola.
    #[test]
    fn springs_sag_as_a_parabola() {
        let matrix = chain(9);
        let factor = Order::new(&matrix.pattern).unwrap().factor(&matrix).unwrap();
        let mut two = vec![1.0; 18];
        two[9..].fill(2.0);
        factor.solve(&mut two);
        for k in 0..9 {
            let x = super::super::grading::as_float(k + 1);
            assert!((two[k] - 0.5 * x * (10.0 - x)).abs() < 1e-12, "{k}: {}", two[k]);
            assert!((two[9 + k] - 2.0 * two[k]).abs() < 1e-12);
        }
        let back = matrix.times(&two[..9]);
        assert!(back.iter().all(|load| (load - 1.0).abs() < 1e-12), "{back:?}");
    }

    #[test]
    fn an_indefinite_matrix_has_no_factor() {
        let mut matrix = chain(3);
        matrix.add(1, 1, -5.0);
        assert!(Order::new(&matrix.pattern).unwrap().factor(&matrix).is_none());
    }
}
