//! Our side of the row about chances: two rims read eight times each, their stems' places known to a
//! millimetre, machines that grow; a million trials a line-up.

use lineup::growth::{PlaneGrowth, growth_line};
use lineup::position::{Observation, position};
use lineup::sag::Sag;
use lineup::tolerance::Level;
use lineup::trials::{Growth, OnTrial, trials};
use lineup::{Estimate, Layout, Machine};
use quantities::{Angle, Basis, Length, Physical, Source};
use serde::Serialize;

use crate::random::Random;
use crate::trains::LIMITS;
use crate::work::{PLANES_M, dial};
use crate::{Sweep, sweeps};

/// Trials of each line-up.
pub const TRIALS: u32 = 1_000_000;
/// `±` of a reading beyond its division, of a stem's place, of a sag, of a growth.
pub const SPREADS: [f64; 4] = [1e-5, 1e-3, 1e-5, 3e-5];
/// x of two planes of feet of driver and driven.
pub const FEET_M: [[f64; 2]; 2] = [[-0.9, -0.3], [0.4, 1.0]];

/// Two rims, and what the machines grow at their feet.
#[derive(Clone, Debug, Serialize)]
pub struct LineUp {
    /// The first dial rides on the driver, the second on the driven.
    pub rims: [Sweep; 2],
    /// At both planes of each machine.
    pub growth: [[f64; 2]; 2],
}

/// Line-ups that may or may not be inside.
pub fn line_ups(count: usize) -> Vec<LineUp> {
    let mut random = Random::new(5);
    let mut growth = || [(); 2].map(|()| [(); 2].map(|()| random.between(0.0, 2e-5)));
    let near = |sweep: &Sweep| {
        let readings = sweep.readings.iter().map(|read| read / 10.0).collect();
        Sweep { readings, ..sweep.clone() }
    };
    let sweeps = sweeps(2 * count);
    let pairs = sweeps.chunks_exact(2);
    pairs.map(|two| LineUp { rims: [near(&two[0]), near(&two[1])], growth: growth() }).collect()
}

/// The chance that offset and slope are inside both ways, and the standard deviations of offset and
/// slope upwards over their limits.
pub fn chance(line_up: &LineUp) -> Option<[f64; 3]> {
    let [spread, place, sag, grown] = SPREADS.map(Length::from_si);
    let mut carriers = [Machine::Driver, Machine::Driven].into_iter().zip(PLANES_M);
    let seen = line_up.rims.each_ref().map(|sweep| {
        let (carrier, at) = carriers.next().unwrap_or((Machine::Driver, 0.0));
        let amplitude = Estimate::new(Length::default(), sag);
        let mut dial = dial(carrier, at, sweep).with_sag(Sag { amplitude, bracket: String::new() });
        (dial.plus_minus, dial.lever_plus_minus) = (Some(spread), Some(place));
        // The zero was set where the sweep began, and read.
        dial.zero = None;
        Observation::Sweep(dial)
    });
    let reference = Length::from_si(f64::midpoint(PLANES_M[0], PLANES_M[1]));
    let layout = Layout { moving: Machine::Driven, reference, spool: None };
    let found = position(&layout, &seen).ok()?;
    let growth = |machine: usize| {
        let foot = |foot: usize| {
            let up = Estimate::new(Length::from_si(line_up.growth[machine][foot]), grown);
            PlaneGrowth::up(Length::from_si(FEET_M[machine][foot]), up)
        };
        Some(Growth::normal(growth_line(&[foot(0), foot(1)]).ok()?))
    };
    let growths = [growth(0)?, growth(1)?];
    let source = Source::new("Invented for this run", "", Basis::Entered);
    let [offset, slope] = LIMITS;
    let levels = [
        Level::offset("offset", None, Some(Length::from_si(offset)), source).ok()?,
        Level::slope("slope", None, Some(Angle::from_si(slope)), source).ok()?,
    ];
    let left = found.line.minus(&growths[0].target(&growths[1]));
    let on = OnTrial { position: &found, seen: &seen, left: &left, levels: &levels };
    let tried = trials(&[on], &growths, 1, TRIALS).ok()?;
    let [of_offset, of_slope] = [0, 1].map(|place| tried.couplings[0][place].deviation);
    Some([tried.inside, of_offset / offset, of_slope / slope])
}
