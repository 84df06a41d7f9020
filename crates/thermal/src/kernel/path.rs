//! Where temperature and clearance are going: the parabola through the last three moments.
//!
//! A good guess at the next stage saves a round of solving it; a poor one costs no accuracy.

use std::sync::Arc;

use super::case::Joint;

/// Up to three moments with no switch between them, the latest last.
#[derive(Clone, Debug)]
pub(crate) struct Path(Vec<Known>);

#[derive(Clone, Debug)]
struct Known {
    seconds: f64,
    temperature_k: Arc<[f64]>,
    joint: Arc<Joint>,
}

/// What a stage may find.
pub(crate) struct Guess {
    /// Temperature of every node.
    pub temperature_k: Vec<f64>,
    /// Clearance on the radius at every pair if nothing touched.
    pub free_gap_m: Vec<f64>,
}

impl Path {
    /// From a moment on.
    pub fn from(seconds: f64, temperature_k: &Arc<[f64]>, joint: &Arc<Joint>) -> Self {
        let mut path = Self(Vec::with_capacity(4));
        path.go(seconds, temperature_k, joint);
        path
    }

    /// Goes on to a moment.
    pub fn go(&mut self, seconds: f64, temperature_k: &Arc<[f64]>, joint: &Arc<Joint>) {
        if self.0.len() == 3 {
            self.0.remove(0);
        }
        let (temperature_k, joint) = (Arc::clone(temperature_k), Arc::clone(joint));
        self.0.push(Known { seconds, temperature_k, joint });
    }

    /// A guess at a later moment (Lagrange).
    pub fn at(&self, seconds: f64) -> Guess {
        let weight = |k: usize| -> f64 {
            let others = self.0.iter().enumerate().filter(|(other, _)| *other != k);
            let here = self.0[k].seconds;
            others.map(|(_, known)| (seconds - known.seconds) / (here - known.seconds)).product()
        };
        let weights: Vec<f64> = (0..self.0.len()).map(weight).collect();
        let sum = |of: fn(&Known) -> &[f64]| {
            let mut sum = vec![0.0; self.0.last().map_or(0, |known| of(known).len())];
            for (known, weight) in self.0.iter().zip(&weights) {
                for (sum, value) in sum.iter_mut().zip(of(known)) {
                    *sum += weight * value;
                }
            }
            sum
        };
        Guess {
            temperature_k: sum(|known| &known.temperature_k),
            free_gap_m: sum(|known| &known.joint.free_gap_m),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_parabola_goes_on() {
        let joint = |gap: f64| Arc::new(Joint { free_gap_m: vec![gap], ..Joint::default() });
        let at = |kelvin: f64| -> Arc<[f64]> { Arc::new([kelvin]) };
        let mut path = Path::from(0.0, &at(9.0), &joint(0.0));
        assert!((path.at(7.0).temperature_k[0] - 9.0).abs() < 1e-12);
        for x in [1.0, 2.0, 4.0] {
            path.go(x, &at(3.0 - x * x), &joint(2.0 * x));
        }
        let guess = path.at(5.0);
        assert!((guess.temperature_k[0] + 22.0).abs() < 1e-12, "{:?}", guess.temperature_k);
        assert!((guess.free_gap_m[0] - 10.0).abs() < 1e-12, "{:?}", guess.free_gap_m);
    }
}
