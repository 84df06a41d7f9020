//! Symmetric sparse matrices: built from small blocks, multiplied, factored.
//!
//! Only the lower triangle is kept, column by column. Matrices that share a [`Pattern`] can be
//! added. One thread, so that the same entry gives the same bits everywhere.

use std::sync::Arc;

use faer::dyn_stack::{MemBuffer, MemStack};
use faer::linalg::cholesky::llt::factor::LltRegularization;
use faer::perm::PermRef;
use faer::sparse::linalg::SupernodalThreshold;
use faer::sparse::linalg::cholesky::{
    CholeskySymbolicParams, SymbolicCholesky, SymbolicCholeskyRaw, SymmetricOrdering,
    factorize_symbolic_cholesky,
};
use faer::sparse::{SparseColMatRef, SymbolicSparseColMatRef};
use faer::{Par, Side, Spec};

use super::triangle::{ABREAST, Block, backward, backward_abreast, forward, forward_abreast};

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

    /// Adds a small full matrix of a few unknowns; those beyond the last are held, and left out.
    pub fn add_block<const N: usize>(&mut self, unknowns: &[usize; N], block: &[[f64; N]; N]) {
        for (&row, values) in unknowns.iter().zip(block) {
            for (&column, value) in unknowns.iter().zip(values) {
                if row < self.pattern.size {
                    self.add(row, column, *value);
                }
            }
        }
    }

    /// This plus `factor` times another of the same pattern.
    pub fn plus(&self, factor: f64, other: &Self) -> Self {
        let values = self.values.iter().zip(&other.values).map(|(a, b)| a + factor * b).collect();
        Self { pattern: Arc::clone(&self.pattern), values }
    }

    /// The diagonal.
    pub fn diagonal(&self) -> Vec<f64> {
        let starts = &self.pattern.column_starts[..self.pattern.size];
        starts.iter().map(|&start| self.values[start]).collect()
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

/// How a pattern is eliminated: found once, used by every matrix of the pattern.
#[derive(Clone, Debug)]
pub(crate) struct Order(Arc<Elimination>);

#[derive(Debug)]
struct Elimination {
    symbolic: SymbolicCholesky<usize>,
    /// The unknown that goes first, the next, ...
    sequence: Vec<usize>,
    blocks: Vec<Block>,
}

impl Order {
    /// In this sequence of all unknowns; `None` when memory runs out.
    pub fn new(pattern: &Pattern, sequence: Vec<usize>) -> Option<Self> {
        let mut turns = vec![0; sequence.len()];
        for (turn, &unknown) in sequence.iter().enumerate() {
            turns[unknown] = turn;
        }
        let sequence_of = PermRef::new_checked(&sequence, &turns, pattern.size);
        let symbolic = factorize_symbolic_cholesky(
            pattern.symbolic(),
            Side::Lower,
            SymmetricOrdering::Custom(sequence_of),
            CholeskySymbolicParams {
                supernodal_flop_ratio_threshold: SupernodalThreshold::FORCE_SUPERNODAL,
                ..CholeskySymbolicParams::default()
            },
        )
        .ok()?;
        let SymbolicCholeskyRaw::Supernodal(raw) = symbolic.raw() else { return None };
        let block = |k: usize| Block {
            start: raw.supernode_begin()[k],
            width: raw.supernode_end()[k] - raw.supernode_begin()[k],
            below: raw.supernode(k).pattern().to_vec(),
            values_at: raw.col_ptr_for_val()[k],
        };
        let blocks = (0..raw.n_supernodes()).map(block).collect();
        Some(Self(Arc::new(Elimination { symbolic, sequence, blocks })))
    }

    /// Factors a matrix; `None` unless it is positive definite.
    pub fn factor(&self, matrix: &Symmetric) -> Option<Factor> {
        let symbolic = &self.0.symbolic;
        let mut values = vec![0.0; symbolic.len_val()];
        let scratch = symbolic.factorize_numeric_llt_scratch::<f64>(Par::Seq, Spec::default());
        let mut memory = MemBuffer::try_new(scratch).ok()?;
        symbolic
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

/// A factored matrix: L·Lᵀ in the order of elimination.
#[derive(Clone, Debug)]
pub(crate) struct Factor {
    order: Order,
    values: Vec<f64>,
}

impl Factor {
    /// Number of unknowns.
    pub fn size(&self) -> usize {
        self.order.0.sequence.len()
    }

    /// In the order of elimination.
    pub fn ordered(&self, x: &[f64]) -> Vec<f64> {
        self.order.0.sequence.iter().map(|&unknown| x[unknown]).collect()
    }

    /// Back from the order of elimination.
    pub fn restored(&self, ordered: &[f64]) -> Vec<f64> {
        let mut x = vec![0.0; ordered.len()];
        for (&unknown, value) in self.order.0.sequence.iter().zip(ordered) {
            x[unknown] = *value;
        }
        x
    }

    /// L·y = x in place, in the order of elimination; `x` may be the last unknowns alone.
    pub fn forward(&self, x: &mut [f64]) {
        forward(&self.order.0.blocks, &self.values, self.size() - x.len(), x);
    }

    /// Lᵀ·y = x in place, in the order of elimination; `x` may be the last unknowns alone.
    pub fn backward(&self, x: &mut [f64]) {
        backward(&self.order.0.blocks, &self.values, self.size() - x.len(), x);
    }

    /// As [`Factor::forward`], of several right-hand sides.
    pub fn forward_abreast(&self, x: &mut [[f64; ABREAST]]) {
        forward_abreast(&self.order.0.blocks, &self.values, self.size() - x.len(), x);
    }

    /// As [`Factor::backward`], of several right-hand sides.
    pub fn backward_abreast(&self, x: &mut [[f64; ABREAST]]) {
        backward_abreast(&self.order.0.blocks, &self.values, self.size() - x.len(), x);
    }

    /// How many figures it has.
    pub fn figures(&self) -> usize {
        self.values.len()
    }

    /// Solves for one right-hand side.
    pub fn solve(&self, right: &[f64]) -> Vec<f64> {
        let mut x = self.ordered(right);
        self.forward(&mut x);
        self.backward(&mut x);
        self.restored(&x)
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

    fn factor(matrix: &Symmetric, sequence: Vec<usize>) -> Option<Factor> {
        Order::new(&matrix.pattern, sequence).unwrap().factor(matrix)
    }

    /// A string of unit springs held at both ends under unit loads sags as a parabola, in whatever
    /// order its points are taken.
    #[test]
    fn springs_sag_as_a_parabola() {
        let matrix = chain(9);
        for sequence in
            [(0..9).collect(), vec![0, 8, 2, 6, 1, 7, 4, 5, 3], vec![4, 0, 1, 2, 3, 8, 7, 5, 6]]
        {
            let factor = factor(&matrix, sequence).unwrap();
            let sag = factor.solve(&[1.0; 9]);
            for (k, sag) in sag.iter().enumerate() {
                let x = super::super::grading::as_float(k + 1);
                assert!((sag - 0.5 * x * (10.0 - x)).abs() < 1e-12, "{k}: {sag}");
            }
            let back = matrix.times(&sag);
            assert!(back.iter().all(|load| (load - 1.0).abs() < 1e-12), "{back:?}");
        }
    }

    #[test]
    fn an_indefinite_matrix_has_no_factor() {
        let mut matrix = chain(3);
        matrix.add(1, 1, -5.0);
        assert!(factor(&matrix, vec![0, 1, 2]).is_none());
    }
}
