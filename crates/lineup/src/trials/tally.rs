//! What is kept of one ratio: how many came out inside, their mean and spread, and how often each
//! size came out.

#![expect(
    clippy::inline_always,
    reason = "what is inlined has the width that the caller was chosen for"
)]

use super::random::LANES;

/// Boxes that ratios are sorted into.
const BOXES: usize = 2048;
const COUNT: f64 = 2048.0;
/// How far they reach to either side of the best estimate, in standard uncertainties.
const REACH: f64 = 8.0;

/// One ratio of all trials; sums are kept apart for each lane.
#[derive(PartialEq)]
pub(super) struct Tally {
    about: f64,
    inside: [f64; LANES],
    sum: [f64; LANES],
    squares: [f64; LANES],
    boxes: Box<[u32; BOXES]>,
    least: f64,
    width: f64,
}

impl Tally {
    /// Of a ratio that lies about here, give or take a standard uncertainty of `u`.
    pub fn about(about: f64, u: f64) -> Self {
        Self::over(about, about - REACH * u, about + REACH * u)
    }

    /// Of the worst of these, without signs.
    pub fn of_worst(all: &[Self]) -> Self {
        let end = |tally: &Self| tally.about.abs() + (tally.about - tally.least);
        Self::over(0.0, 0.0, all.iter().map(end).fold(0.0, f64::max))
    }

    fn over(about: f64, least: f64, most: f64) -> Self {
        // One that does not vary has a box of its own.
        let width = ((most - least) / COUNT).max(1e-12 * (1.0 + about.abs()));
        let (sum, squares, inside) = ([0.0; LANES], [0.0; LANES], [0.0; LANES]);
        Self { about, inside, sum, squares, boxes: Box::new([0; BOXES]), least, width }
    }

    /// Counts the first so many of these; `counts` is one for each of them, and nothing beyond.
    #[inline(always)]
    pub fn count(&mut self, ratios: &[f64; LANES], counts: &[f64; LANES], used: usize) {
        let mut places = [0; LANES];
        let per_width = 1.0 / self.width;
        for (place, ratio) in places.iter_mut().zip(ratios) {
            *place = box_of((ratio - self.least) * per_width);
        }
        let sums = self.inside.iter_mut().zip(&mut self.sum).zip(&mut self.squares);
        for (((inside, sum), squares), (ratio, counts)) in sums.zip(ratios.iter().zip(counts)) {
            let off = counts * (ratio - self.about);
            *inside += if ratio.abs() <= 1.0 { *counts } else { 0.0 };
            *sum += off;
            *squares += off * off;
        }
        for place in &places[..used] {
            self.boxes[place % BOXES] += 1;
        }
    }

    fn trials(&self) -> f64 {
        self.boxes.iter().map(|held| f64::from(*held)).sum()
    }

    pub fn inside(&self) -> f64 {
        self.inside.iter().sum::<f64>() / self.trials()
    }

    pub fn mean(&self) -> f64 {
        self.about + self.sum.iter().sum::<f64>() / self.trials()
    }

    pub fn deviation(&self) -> f64 {
        let trials = self.trials();
        let mean = self.sum.iter().sum::<f64>() / trials;
        let squares = self.squares.iter().sum::<f64>() / trials;
        ((squares - mean * mean).max(0.0) * trials / (trials - 1.0).max(1.0)).sqrt()
    }

    /// The ratio that this part of the trials stays below.
    pub fn below(&self, part: f64) -> f64 {
        let wanted = part * self.trials();
        let (mut sum, mut edge) = (0.0, self.least);
        for &held in &*self.boxes {
            let held = f64::from(held);
            if held > 0.0 && sum + held >= wanted {
                return edge + self.width * (wanted - sum) / held;
            }
            sum += held;
            edge += self.width;
        }
        edge
    }
}

/// The box for so many widths above the least; whatever lies beyond goes into the first or the last.
#[expect(clippy::cast_possible_truncation, reason = "the last bits are what is wanted")]
#[inline(always)]
fn box_of(widths: f64) -> usize {
    // 2⁵²: with so much added a number has no fraction, and its last bits are a whole number.
    const WHOLE: f64 = 4_503_599_627_370_496.0;
    let middle = (widths - 0.5).clamp(0.0, COUNT - 1.0);
    (middle + WHOLE).to_bits() as usize % BOXES
}
