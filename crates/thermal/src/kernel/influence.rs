//! What a thermal strain at any node does to the clearance at any pair: one matrix, pairs by nodes.
//!
//! Asked for the clearance some hundred times, a model answers faster by it than by a way through
//! its factor. Its figures are kept in single precision, which halves what must be fetched, and
//! summed in double: a clearance differs by less than 10⁻⁷ of the growths that it is made of.

use super::dense::dot_inlined;
use super::wide::wide;

/// Pairs by nodes.
#[derive(Clone, Debug)]
pub(crate) struct Influence {
    nodes: usize,
    figures: Vec<f32>,
}

impl Influence {
    /// From its rows.
    pub fn from_rows(nodes: usize, rows: impl Iterator<Item = Vec<f64>>) -> Self {
        #[expect(clippy::cast_possible_truncation, reason = "as said above")]
        let figures = rows.flatten().map(|figure| figure as f32).collect();
        Self { nodes, figures }
    }

    /// What strains of the nodes make at every pair.
    pub fn of(&self, strain: &[f64]) -> Vec<f64> {
        let rows = self.figures.chunks_exact(self.nodes.max(1));
        wide(|| rows.map(|row| dot_inlined(row, strain)).collect())
    }
}
