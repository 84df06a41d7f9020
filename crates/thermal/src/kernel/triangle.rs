//! Forward and back through a triangular factor, one right-hand side at a time or several abreast.
//!
//! The factor comes in blocks of neighbouring columns that have the same rows below them, each
//! block full, column by column. To fetch the factor is what a pass costs, so its figures are read
//! once and one after another.

use super::dense::dot_inlined;
use super::wide::wide;

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

/// Right-hand sides that are solved abreast: the factor is fetched once for all of them.
pub(crate) const ABREAST: usize = 16;

/// L·y = x in place, for the unknowns from `from` on, with which `x` begins.
pub(crate) fn forward(blocks: &[Block], values: &[f64], from: usize, x: &mut [f64]) {
    wide(|| {
        let mut sums = Vec::new();
        for block in &blocks[first(blocks, from)..] {
            let own = &mut x[block.start - from..][..block.width];
            sums.clear();
            sums.resize(block.below.len(), 0.0);
            let figures = block.values(values);
            for (k, column) in figures.chunks_exact(block.height()).enumerate() {
                own[k] /= column[k];
                let solved = own[k];
                for (rest, factor) in own[k + 1..].iter_mut().zip(&column[k + 1..]) {
                    *rest -= solved * factor;
                }
            }
            add_products(&mut sums, block, figures, own);
            for (&row, sum) in block.below.iter().zip(&sums) {
                x[row - from] -= sum;
            }
        }
    });
}

/// Adds what a block's solved unknowns make in the rows below it, four columns at a time: so the
/// sums are fetched and put back less often.
#[expect(clippy::inline_always, reason = "what is inlined becomes wide with its caller")]
#[inline(always)]
fn add_products(sums: &mut [f64], block: &Block, figures: &[f64], solved: &[f64]) {
    let (width, height) = (block.width, block.height());
    let fours = figures.chunks_exact(4 * height);
    let (solved, solved_rest) = solved.as_chunks::<4>();
    for (column, factor) in fours.remainder().chunks_exact(height).zip(solved_rest) {
        for (sum, figure) in sums.iter_mut().zip(&column[width..]) {
            *sum += figure * factor;
        }
    }
    for (columns, factors) in fours.zip(solved) {
        let [a, b, c, d] = [0, 1, 2, 3].map(|k| &columns[k * height + width..(k + 1) * height]);
        for ((((sum, a), b), c), d) in sums.iter_mut().zip(a).zip(b).zip(c).zip(d) {
            *sum += (a * factors[0] + b * factors[1]) + (c * factors[2] + d * factors[3]);
        }
    }
}

/// Lᵀ·y = x in place, for the unknowns from `from` on, with which `x` begins.
pub(crate) fn backward(blocks: &[Block], values: &[f64], from: usize, x: &mut [f64]) {
    wide(|| {
        let mut below = Vec::new();
        for block in blocks[first(blocks, from)..].iter().rev() {
            below.clear();
            below.extend(block.below.iter().map(|&row| x[row - from]));
            let own = &mut x[block.start - from..][..block.width];
            let columns = block.values(values).chunks_exact(block.height());
            for (k, column) in columns.enumerate().rev() {
                let (triangle, under) = column.split_at(block.width);
                let solved =
                    dot_inlined(under, &below) + dot_inlined(&triangle[k + 1..], &own[k + 1..]);
                own[k] = (own[k] - solved) / triangle[k];
            }
        }
    });
}

/// As [`forward`], of several right-hand sides.
pub(crate) fn forward_abreast(
    blocks: &[Block],
    values: &[f64],
    from: usize,
    x: &mut [[f64; ABREAST]],
) {
    wide(|| {
        let mut sums = Vec::new();
        for block in &blocks[first(blocks, from)..] {
            let own = &mut x[block.start - from..][..block.width];
            sums.clear();
            sums.resize(block.below.len(), [0.0; ABREAST]);
            for (k, column) in block.values(values).chunks_exact(block.height()).enumerate() {
                let (triangle, under) = column.split_at(block.width);
                let solved = own[k].map(|value| value / triangle[k]);
                own[k] = solved;
                for (rest, factor) in own[k + 1..].iter_mut().zip(&triangle[k + 1..]) {
                    for lane in 0..ABREAST {
                        rest[lane] -= solved[lane] * factor;
                    }
                }
                for (sum, factor) in sums.iter_mut().zip(under) {
                    for lane in 0..ABREAST {
                        sum[lane] += solved[lane] * factor;
                    }
                }
            }
            for (&row, sum) in block.below.iter().zip(&sums) {
                for (value, sum) in x[row - from].iter_mut().zip(sum) {
                    *value -= sum;
                }
            }
        }
    });
}

/// As [`backward`], of several right-hand sides.
pub(crate) fn backward_abreast(
    blocks: &[Block],
    values: &[f64],
    from: usize,
    x: &mut [[f64; ABREAST]],
) {
    wide(|| {
        let mut below = Vec::new();
        for block in blocks[first(blocks, from)..].iter().rev() {
            below.clear();
            below.extend(block.below.iter().map(|&row| x[row - from]));
            let own = &mut x[block.start - from..][..block.width];
            let columns = block.values(values).chunks_exact(block.height());
            for (k, column) in columns.enumerate().rev() {
                let (triangle, under) = column.split_at(block.width);
                let mut left = own[k];
                for (rows, factors) in [(&below[..], under), (&own[k + 1..], &triangle[k + 1..])] {
                    for (row, factor) in rows.iter().zip(factors) {
                        for lane in 0..ABREAST {
                            left[lane] -= row[lane] * factor;
                        }
                    }
                }
                own[k] = left.map(|value| value / triangle[k]);
            }
        }
    });
}
