//! Moments, and what lies between two of them.

use super::case::Joint;

/// The unit of time (s).
pub(crate) const TICK_S: f64 = 1.0 / 1024.0;
/// Where the middle stage of a step stands in it.
pub(crate) const GAMMA: f64 = 2.0 - std::f64::consts::SQRT_2;

/// A moment.
#[derive(Clone, Debug)]
pub(crate) struct Moment {
    /// Ticks since the beginning.
    pub ticks: u64,
    /// Temperature of every node.
    pub temperature_k: Vec<f64>,
    /// The joint.
    pub joint: Joint,
}

impl Moment {
    /// Seconds since the beginning.
    pub fn seconds(&self) -> f64 {
        seconds(self.ticks)
    }
}

/// Ticks in seconds.
#[expect(clippy::cast_precision_loss, reason = "a year has 2³⁵ ticks")]
pub(crate) fn seconds(ticks: u64) -> f64 {
    ticks as f64 * TICK_S
}

/// Seconds in ticks, to the nearest `unit` ticks.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "negative and endless times are cut off first"
)]
pub(crate) fn ticks(duration_s: f64, unit: u64) -> u64 {
    let count = (duration_s / seconds(unit)).round().clamp(0.0, 1e12);
    count as u64 * unit
}

/// One accepted step.
#[derive(Clone, Debug)]
pub(crate) struct Leg {
    /// Where it began.
    pub from: Moment,
    /// Temperature at the stage within it.
    pub middle_k: Vec<f64>,
    /// Where it ended.
    pub to: Moment,
}

impl Leg {
    /// Temperature at a share of the step, by the parabola through its three stages.
    pub fn temperature_k(&self, share: f64) -> Vec<f64> {
        let x = share;
        let weights = [
            (x - GAMMA) * (x - 1.0) / GAMMA,
            x * (x - 1.0) / (GAMMA * (GAMMA - 1.0)),
            x * (x - GAMMA) / (1.0 - GAMMA),
        ];
        let stages = self.from.temperature_k.iter().zip(&self.middle_k).zip(&self.to.temperature_k);
        stages.map(|((a, b), c)| weights[0] * a + weights[1] * b + weights[2] * c).collect()
    }

    /// Seconds at a share of the step.
    pub fn seconds(&self, share: f64) -> f64 {
        self.from.seconds() + share * (self.to.seconds() - self.from.seconds())
    }

    /// The share of the step at which a figure changes sign, by halving, from what it is at both
    /// ends; `None` when its sign is the same there.
    pub fn crossing(&self, ends: [f64; 2], figure: impl Fn(&[f64]) -> f64) -> Option<f64> {
        let sign = |share: f64| figure(&self.temperature_k(share)) >= 0.0;
        let [start, end] = ends.map(|figure| figure >= 0.0);
        if start == end {
            return None;
        }
        let (mut low, mut high) = (0.0, 1.0);
        for _ in 0..20 {
            let middle = f64::midpoint(low, high);
            if sign(middle) == start { low = middle } else { high = middle }
        }
        Some(f64::midpoint(low, high))
    }
}

/// Where heat came from and went to since the beginning (J).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[expect(clippy::struct_field_names, reason = "the ending is the unit")]
pub(crate) struct Ledger {
    /// Put in.
    pub given_j: f64,
    /// Lost to the air by the hub and by the shaft.
    pub lost_j: [f64; 2],
    /// More in the metal than at the beginning.
    pub stored_j: f64,
}

impl Ledger {
    /// What does not add up, as a share of all that moved.
    pub fn error(&self) -> f64 {
        let lost = self.lost_j[0] + self.lost_j[1];
        let moved = self.given_j.abs() + lost.abs() + self.stored_j.abs();
        if moved > 0.0 { (self.given_j - lost - self.stored_j).abs() / moved } else { 0.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn leg() -> Leg {
        let moment =
            |ticks, kelvin| Moment { ticks, temperature_k: vec![kelvin], joint: Joint::default() };
        // T = 1 + x·x over a step of one second.
        Leg { from: moment(0, 1.0), middle_k: vec![1.0 + GAMMA * GAMMA], to: moment(1024, 2.0) }
    }

    #[test]
    fn a_parabola_lies_between_the_stages() {
        assert!((leg().temperature_k(0.3)[0] - 1.09).abs() < 1e-12);
        let share = leg().crossing([-0.25, 0.75], |nodal| nodal[0] - 1.25).unwrap();
        assert!((leg().seconds(share) - 0.5).abs() < 1e-5, "{share}");
        assert!(leg().crossing([-2.0, -1.0], |nodal| nodal[0] - 3.0).is_none());
    }

    #[test]
    fn times_keep_to_their_unit() {
        assert_eq!(ticks(1.07, 128), 1024 + 128);
        assert_eq!(ticks(-3.0, 1), 0);
        assert_eq!(ticks(f64::NAN, 1), 0);
    }
}
