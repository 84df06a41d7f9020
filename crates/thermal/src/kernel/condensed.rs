//! A factored matrix of two bodies whose joint is eliminated last: all that one side of the joint
//! tells the other is in a few last unknowns.
//!
//! The last unknowns are those of the pairs on the hub, then those of the pairs on the shaft. With d
//! the difference hub − shaft at the pairs, B = d·A⁻¹·dᵀ is how the two sides part under a unit
//! between them.

use super::dense::Full;
use super::sparse::Factor;
use super::triangle::ABREAST;

/// A factor that ends with the joint.
#[derive(Clone, Debug)]
pub(crate) struct Condensed {
    /// The factor of A.
    pub factor: Factor,
    /// B, pairs by pairs.
    pub between: Full,
}

impl Condensed {
    /// With so many pairs as last unknowns, twice.
    pub fn new(factor: Factor, pairs: usize) -> Self {
        let mut rows = Vec::with_capacity(pairs * pairs);
        for first in (0..pairs).step_by(ABREAST) {
            let mut last = units(pairs, first);
            factor.forward_abreast(&mut last);
            factor.backward_abreast(&mut last);
            let (hub, shaft) = last.split_at(pairs);
            for lane in 0..ABREAST.min(pairs - first) {
                rows.extend(hub.iter().zip(shaft).map(|(hub, shaft)| hub[lane] - shaft[lane]));
            }
        }
        Self { factor, between: Full::from_rows(pairs, rows) }
    }

    /// Where the joint begins.
    pub fn joint_at(&self) -> usize {
        self.factor.size() - 2 * self.between.size()
    }

    /// d·A⁻¹·right. What lies before the joint is left half solved in `ordered`: a call of
    /// `factor.backward` ends it.
    pub fn difference(&self, ordered: &mut [f64]) -> Vec<f64> {
        self.factor.forward(ordered);
        let mut last = ordered[self.joint_at()..].to_vec();
        self.factor.backward(&mut last);
        parted(&last)
    }

    /// A⁻¹·dᵀ for a few pairs, from `first` on, in the order of elimination.
    pub fn answers(&self, first: usize) -> Vec<[f64; ABREAST]> {
        let mut last = units(self.between.size(), first);
        self.factor.forward_abreast(&mut last);
        let mut whole = vec![[0.0; ABREAST]; self.joint_at()];
        whole.extend(last);
        self.factor.backward_abreast(&mut whole);
        whole
    }

    /// Takes A⁻¹·dᵀ·flow off what [`Condensed::difference`] has left half solved.
    pub fn less(&self, ordered: &mut [f64], flow: &[f64]) {
        let mut across: Vec<f64> = flow.iter().copied().chain(flow.iter().map(|q| -q)).collect();
        self.factor.forward(&mut across);
        for (value, across) in ordered[self.joint_at()..].iter_mut().zip(across) {
            *value -= across;
        }
    }
}

/// A unit between the two sides at each of a few pairs, from `first` on, as last unknowns.
fn units(pairs: usize, first: usize) -> Vec<[f64; ABREAST]> {
    let mut last = vec![[0.0; ABREAST]; 2 * pairs];
    for lane in 0..ABREAST.min(pairs - first) {
        (last[first + lane][lane], last[pairs + first + lane][lane]) = (1.0, -1.0);
    }
    last
}

/// The first half less the second.
fn parted(last: &[f64]) -> Vec<f64> {
    let (hub, shaft) = last.split_at(last.len() / 2);
    hub.iter().zip(shaft).map(|(hub, shaft)| hub - shaft).collect()
}
