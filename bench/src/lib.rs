//! The work that is timed, and inputs for it: the same for us and for the libraries beside us.
//!
//! `bench/run` times all rows in one run, checks that both sides find the same, and prints times and
//! ratios. `cargo bench -p bench` times our side alone, with its spread.

pub mod asked;
pub mod chances;
pub mod heat;
pub mod random;
pub mod trains;
pub mod work;

use random::Random;
use serde::Serialize;

/// A hub of a barrel and a flange on a solid shaft, metres.
#[derive(Clone, Debug, Serialize)]
pub struct Hub {
    /// Diameter of the joint.
    pub joint: f64,
    /// Outside diameter of the barrel.
    pub outside: f64,
    /// Length of the barrel.
    pub barrel: f64,
    /// Outside diameter of the flange.
    pub flange: f64,
    /// Length of the flange.
    pub flange_length: f64,
    /// Interference.
    pub interference: f64,
    /// Speed, rad/s.
    pub speed: f64,
    /// Torque to hold, N·m.
    pub torque: f64,
}

/// A sweep of a dial: clock angles (radians) and readings (metres).
#[derive(Clone, Debug, Serialize)]
pub struct Sweep {
    /// Angles clockwise from 12.
    pub angles: Vec<f64>,
    /// What was read there.
    pub readings: Vec<f64>,
}

/// Hubs of all sizes that a shop meets.
pub fn hubs(count: usize) -> Vec<Hub> {
    let mut random = Random::new(1);
    let mut hub = || {
        let joint = random.between(0.03, 0.25);
        let outside = joint * random.between(1.4, 2.2);
        Hub {
            joint,
            outside,
            barrel: joint * random.between(0.5, 1.2),
            flange: outside * random.between(1.2, 1.9),
            flange_length: joint * random.between(0.1, 0.4),
            interference: joint * random.between(5e-4, 1.2e-3),
            speed: random.between(0.0, 300.0),
            torque: 3e6 * joint.powi(3) * random.between(0.2, 1.0),
        }
    };
    (0..count).map(|_| hub()).collect()
}

/// Sweeps of eight readings with a hundredth's scatter.
pub fn sweeps(count: usize) -> Vec<Sweep> {
    let mut random = Random::new(2);
    let mut sweep = || {
        let [middle, cosine, sine] = [(); 3].map(|()| random.between(-3e-4, 3e-4));
        let angles: Vec<f64> = (0..8).map(|k| f64::from(k) * std::f64::consts::FRAC_PI_4).collect();
        let mut read =
            |t: &f64| middle + cosine * t.cos() + sine * t.sin() + random.between(-5e-6, 5e-6);
        let readings = angles.iter().map(&mut read).collect();
        Sweep { angles, readings }
    };
    (0..count).map(|_| sweep()).collect()
}

/// Pairs of sweeps, each dial on the other shaft.
pub fn pairs(count: usize) -> Vec<[Sweep; 2]> {
    let sweeps = sweeps(2 * count);
    sweeps.chunks_exact(2).map(|two| [two[0].clone(), two[1].clone()]).collect()
}

/// Thicknesses wanted under a foot, metres, to the micrometre.
pub fn thicknesses(count: usize) -> Vec<f64> {
    let mut random = Random::new(3);
    (0..count).map(|_| (random.between(0.05, 6.0) * 1e3).round() / 1e6).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A row that found nothing would be fast.
    #[test]
    fn every_row_finds_something() {
        let steel = work::steel();
        assert!(hubs(500).iter().all(|hub| work::torque_held(hub, steel).is_some()));
        assert!(hubs(50).iter().all(|hub| work::window(hub, steel).is_some()));
        assert!(sweeps(50).iter().all(|sweep| work::circle(sweep).is_some()));
        assert!(pairs(50).iter().all(|pair| work::placed(pair).is_some()));
        assert!(thicknesses(50).iter().all(|wanted| work::missed(*wanted).is_some()));
        assert!(hubs(50).iter().all(|hub| asked::answered(&asked::line(hub)).is_some()));
        assert!(chances::line_ups(1).iter().all(|it| chances::chance(it).is_some()));
        assert!(trains::trains(1).iter().all(|train| trains::lined_up(train).is_some()));
        for (name, text) in asked::JOBS {
            assert!(asked::job(text).is_some_and(|job| asked::planned(&job) > 50), "{name}");
        }
        for hot in &heat::ORDINARY {
            assert!(heat::bounded(hot, thermal::Effort::Quick).is_ok(), "{}", hot.name);
        }
    }
}
