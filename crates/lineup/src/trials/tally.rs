//! What is kept of one ratio: how many came out inside, their mean and spread, and how often each
//! size came out.

/// Boxes that ratios are sorted into.
const BOXES: u16 = 4096;
/// How far they reach to either side of the best estimate, in standard uncertainties.
const REACH: f64 = 8.0;

/// One ratio of all trials.
pub(super) struct Tally {
    about: f64,
    trials: u32,
    inside: u32,
    sum: f64,
    squares: f64,
    boxes: Vec<u32>,
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
        let width = ((most - least) / f64::from(BOXES)).max(1e-12 * (1.0 + about.abs()));
        let boxes = vec![0; usize::from(BOXES)];
        Self { about, trials: 0, inside: 0, sum: 0.0, squares: 0.0, boxes, least, width }
    }

    pub fn count(&mut self, ratios: &[f64]) {
        let per_width = 1.0 / self.width;
        for ratio in ratios {
            let off = ratio - self.about;
            self.trials += 1;
            self.inside += u32::from(ratio.abs() <= 1.0);
            self.sum += off;
            self.squares += off * off;
            self.boxes[place((ratio - self.least) * per_width)] += 1;
        }
    }

    pub fn inside(&self) -> f64 {
        f64::from(self.inside) / f64::from(self.trials)
    }

    pub fn mean(&self) -> f64 {
        self.about + self.sum / f64::from(self.trials)
    }

    pub fn deviation(&self) -> f64 {
        let trials = f64::from(self.trials);
        let mean = self.sum / trials;
        ((self.squares / trials - mean * mean).max(0.0) * trials / (trials - 1.0).max(1.0)).sqrt()
    }

    /// The ratio that this part of the trials stays below.
    pub fn below(&self, part: f64) -> f64 {
        let wanted = part * f64::from(self.trials);
        let (mut sum, mut edge) = (0.0, self.least);
        for &held in &self.boxes {
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

/// The box for so many widths above the least; whatever lies beyond goes into the last.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held between nothing and the last box"
)]
fn place(widths: f64) -> usize {
    usize::from(widths.clamp(0.0, f64::from(BOXES - 1)) as u16)
}
