//! Our side of the row about trains: five machines, whole shims in height, any move sideways.

use lineup::line::Line;
use lineup::moves::FootPlane;
use lineup::position::{Observation, Offset, Slope, position};
use lineup::tolerance::Level;
use lineup::train::{Part, Preference, TrainCoupling, TrainMachine};
use lineup::whole::{Proof, Stock, line_up_whole};
use lineup::{Body, Estimate, Layout, Machine, Plane};
use quantities::{Angle, Basis, Length, Physical, Source};
use serde::Serialize;

use crate::random::Random;
use crate::work::stock;

/// Shims under a foot at most.
pub const MOST: usize = 5;
/// Offset and slope that a coupling may have, m and rad.
pub const LIMITS: [f64; 2] = [5e-5, 5e-4];
const PLUS_MINUS: f64 = 1e-5;

/// A train as it was found, metres and radians.
#[derive(Clone, Debug, Serialize)]
pub struct Train {
    /// x of both feet of every machine.
    pub feet: Vec<[f64; 2]>,
    /// The machine that stays.
    pub held: usize,
    /// Shims under both feet of every machine.
    pub shims: Vec<[f64; 2]>,
    /// Room to either side at every foot.
    pub room: f64,
    /// x of the couplings.
    pub couplings: Vec<f64>,
    /// Offset up and right at every coupling.
    pub offsets: Vec<[f64; 2]>,
    /// Slope up and right at every coupling.
    pub slopes: Vec<[f64; 2]>,
}

/// Trains of five machines.
pub fn trains(count: usize) -> Vec<Train> {
    let mut random = Random::new(4);
    (0..count).map(|_| train(&mut random)).collect()
}

fn train(random: &mut Random) -> Train {
    let start = |k: u32| 1.7 * f64::from(k);
    let feet: Vec<[f64; 2]> = (0..5)
        .map(|k| {
            let from = start(k) + random.between(0.0, 0.1);
            [from, from + random.between(0.6, 0.9)]
        })
        .collect();
    let couplings = feet.windows(2).map(|two| f64::midpoint(two[0][1], two[1][0])).collect();
    let mut pair = |size: f64| [random.between(-size, size), random.between(-size, size)];
    let offsets = (0..4).map(|_| pair(4e-4)).collect();
    let slopes = (0..4).map(|_| pair(1e-3)).collect();
    let shims = vec![[2e-3; 2]; 5];
    Train { feet, held: 2, shims, room: 3e-3, couplings, offsets, slopes }
}

/// The worst ratio that whole shims can reach in height, the worst ratio sideways, and how far
/// from the best the first may be; `None` where there is no answer.
pub fn lined_up(train: &Train) -> Option<[f64; 3]> {
    let machines: Vec<TrainMachine> = (0..train.feet.len()).map(|k| machine(train, k)).collect();
    let couplings: Vec<TrainCoupling> =
        (0..train.couplings.len()).map(|k| coupling(train, k)).collect::<Option<_>>()?;
    let thicknesses = stock().into_iter().map(Length::from_si).collect();
    let stock = Stock { thicknesses, most: MOST };
    let found = line_up_whole(&machines, &couplings, Preference::LeastTotal, &stock).ok()?;
    let gap = match found.proof {
        Proof::Best => 0.0,
        Proof::Within(gap) => gap,
    };
    let [up, right] = found.plan.worst_ratio;
    Some([up, right, gap])
}

fn machine(train: &Train, k: usize) -> TrainMachine {
    let room = Length::from_si(train.room);
    let foot = |(at, shims): (&f64, &f64)| FootPlane {
        shims: Some(Length::from_si(*shims)),
        side_room: Some((room, room)),
        ..FootPlane::new("feet", Length::from_si(*at))
    };
    TrainMachine {
        name: format!("machine {}", k + 1),
        part: if k == train.held { Part::Held } else { Part::Movable },
        feet: train.feet[k].iter().zip(&train.shims[k]).map(foot).collect(),
        growth: Line::zero(Length::from_si(train.feet[k][0])),
    }
}

fn coupling(train: &Train, k: usize) -> Option<TrainCoupling> {
    let at = Length::from_si(train.couplings[k]);
    let layout = Layout { moving: Machine::Driven, reference: at, spool: None };
    let (of, from) = (Body::Driven, Body::Driver);
    let seen: Vec<Observation> = Plane::BOTH
        .into_iter()
        .zip(train.offsets[k].iter().zip(&train.slopes[k]))
        .flat_map(|(plane, (offset, slope))| {
            let amount = Estimate::new(Length::from_si(*offset), Length::from_si(PLUS_MINUS));
            let climbs = Estimate::new(Angle::from_si(*slope), Angle::from_si(PLUS_MINUS));
            [
                Observation::Offset(Offset { plane, of, from, at, amount }),
                Observation::Slope(Slope { plane, of, from, amount: climbs }),
            ]
        })
        .collect();
    let source = Source::new("Invented for this run", "", Basis::Entered);
    let [offset, slope] = LIMITS;
    let levels = vec![
        Level::offset("offset", None, Some(Length::from_si(offset)), source).ok()?,
        Level::slope("slope", None, Some(Angle::from_si(slope)), source).ok()?,
    ];
    Some(TrainCoupling { position: position(&layout, &seen).ok()?, levels })
}
