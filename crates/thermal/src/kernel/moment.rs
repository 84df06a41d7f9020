//! Moments, and what lies between two of them.

use std::sync::Arc;

use super::case::Joint;

/// The unit of time (s).
pub(crate) const TICK_S: f64 = 1.0 / 1024.0;
/// Where the middle stage of a step stands in it.
pub(crate) const GAMMA: f64 = 2.0 - std::f64::consts::SQRT_2;

/// How closely a crossing is found, as a share of a step, and after how many looks at the most.
const CLOSE: f64 = 1e-6;
const MOST_LOOKS: usize = 60;

/// A moment.
#[derive(Clone, Debug)]
pub(crate) struct Moment {
    /// Ticks since the beginning.
    pub ticks: u64,
    /// Temperature of every node.
    pub temperature_k: Arc<[f64]>,
    /// The joint.
    pub joint: Arc<Joint>,
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
    pub middle_k: Arc<[f64]>,
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
        let stages =
            self.from.temperature_k.iter().zip(&*self.middle_k).zip(&*self.to.temperature_k);
        stages.map(|((a, b), c)| weights[0] * a + weights[1] * b + weights[2] * c).collect()
    }

    /// Seconds at a share of the step.
    pub fn seconds(&self, share: f64) -> f64 {
        self.from.seconds() + share * (self.to.seconds() - self.from.seconds())
    }

    /// The share of the step at which a figure changes sign, from what it is at both ends; `None`
    /// when its sign is the same there.
    ///
    /// Source: the rule of false position in the form called Illinois; Dowell and Jarratt, BIT 11
    /// (1971); from memory.
    pub fn crossing(&self, ends: [f64; 2], figure: impl Fn(&[f64]) -> f64) -> Option<f64> {
        let [mut start, mut end] = [(0.0, ends[0]), (1.0, ends[1])];
        let is_up = |figure: f64| figure >= 0.0;
        if is_up(start.1) == is_up(end.1) {
            return None;
        }
        let mut last = start.0;
        let mut stayed = None;
        for _ in 0..MOST_LOOKS {
            let share = start.0 + (end.0 - start.0) * start.1 / (start.1 - end.1);
            if (share - last).abs() < CLOSE {
                return Some(share);
            }
            let here = figure(&self.temperature_k(share));
            let before = is_up(here) == is_up(start.1);
            let (moved, other) =
                if before { (&mut start, &mut end) } else { (&mut end, &mut start) };
            *moved = (share, here);
            if stayed == Some(before) {
                other.1 *= 0.5;
            }
            (stayed, last) = (Some(before), share);
        }
        Some(last)
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
        let moment = |ticks, kelvin| Moment {
            ticks,
            temperature_k: Arc::new([kelvin]),
            joint: Arc::default(),
        };
        // T = 1 + x·x over a step of one second.
        Leg {
            from: moment(0, 1.0),
            middle_k: Arc::new([1.0 + GAMMA * GAMMA]),
            to: moment(1024, 2.0),
        }
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
