//! Forward and back through a triangular factor, one right-hand side at a time.
//!
//! The factor comes in blocks of neighbouring columns that have the same rows below them, each
//! block full, column by column. To fetch the factor is what a pass costs, so its figures are read
//! once and one after another.

use super::dense::dot;

/// A block of columns.
#[derive(Clone, Debug)]
pub(crate) struct Block {
    /// Its first unknown.
    pub start: usize,
    /// How many columns.
    pub width: usize,
    /// Unknowns of the rows below its own.
    pub below: Vec<usize>,
    /// Where its figures begin.
    pub values_at: usize,
}

impl Block {
    fn height(&self) -> usize {
        self.width + self.below.len()
    }

    /// Its figures, column after column from the block's first row on.
    fn values<'v>(&self, values: &'v [f64]) -> &'v [f64] {
        &values[self.values_at..][..self.width * self.height()]
    }
}

/// The block in which the columns from `from` on begin; no block may lie across it.
fn first(blocks: &[Block], from: usize) -> usize {
    blocks.partition_point(|block| block.start < from)
}

/// L·y = x in place, for the unknowns from `from` on, with which `x` begins.
pub(crate) fn forward(blocks: &[Block], values: &[f64], from: usize, x: &mut [f64]) {
    let mut sums = Vec::new();
    for block in &blocks[first(blocks, from)..] {
        let own = &mut x[block.start - from..][..block.width];
        sums.clear();
        sums.resize(block.below.len(), 0.0);
        for (k, column) in block.values(values).chunks_exact(block.height()).enumerate() {
            let (triangle, under) = column.split_at(block.width);
            own[k] /= triangle[k];
            let solved = own[k];
            for (rest, factor) in own[k + 1..].iter_mut().zip(&triangle[k + 1..]) {
                *rest -= solved * factor;
            }
            for (sum, factor) in sums.iter_mut().zip(under) {
                *sum += solved * factor;
            }
        }
        for (&row, sum) in block.below.iter().zip(&sums) {
            x[row - from] -= sum;
        }
    }
}

/// Lᵀ·y = x in place, for the unknowns from `from` on, with which `x` begins.
pub(crate) fn backward(blocks: &[Block], values: &[f64], from: usize, x: &mut [f64]) {
    let mut below = Vec::new();
    for block in blocks[first(blocks, from)..].iter().rev() {
        below.clear();
        below.extend(block.below.iter().map(|&row| x[row - from]));
        let own = &mut x[block.start - from..][..block.width];
        let columns = block.values(values).chunks_exact(block.height());
        for (k, column) in columns.enumerate().rev() {
            let (triangle, under) = column.split_at(block.width);
            let solved = dot(under, &below) + dot(&triangle[k + 1..], &own[k + 1..]);
            own[k] = (own[k] - solved) / triangle[k];
        }
    }
}
