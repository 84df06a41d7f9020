//! Whole shims, what changes would gain, dials booked the wrong way round, parked rims of known
//! runout.

#![expect(clippy::unwrap_used, reason = "a test that cannot be set up must stop")]

mod common;

use common::*;
use lineup::clock::View;
use lineup::dial::{Dial, Stem, Surface, Turning};
use lineup::gains::{Change, gains};
use lineup::line::Line;
use lineup::moves::FootPlane;
use lineup::position::{Observation, Offset, position};
use lineup::suspects::{Mistake, suspects};
use lineup::tolerance::{Level, chance_of_all, judge_line};
use lineup::train::{Part, Preference, TrainCoupling, TrainMachine, line_up};
use lineup::whole::{Proof, Stock, line_up_whole};
use lineup::{Body, Estimate, Machine, Plane};
use proptest::prelude::*;
use quantities::{Angle, Physical, Source};

const VERTICAL: Plane = Plane::Vertical;

fn levels() -> Vec<Level> {
    let source = Source::common_practice("table by speed");
    vec![
        Level::offset("offset", None, Some(mm(0.05)), source).unwrap(),
        Level::slope("slope", None, Some(Angle::from_si(0.5e-3)), source).unwrap(),
    ]
}

fn machine(name: &str, part: Part, feet: Vec<FootPlane>) -> TrainMachine {
    TrainMachine { name: name.into(), part, feet, growth: Line::zero(mm(0.0)) }
}

/// The driven line this much above the driver's at two places, level sideways.
fn coupling(x0: f64, heights: [(f64, f64); 2]) -> TrainCoupling {
    let seen = |plane, (x, y): (f64, f64)| {
        let amount = Estimate::new(mm(y), mm(0.01));
        let (of, from) = (Body::Driven, Body::Driver);
        Observation::Offset(Offset { plane, of, from, at: mm(x), amount })
    };
    let [a, b] = heights;
    let flat = |(x, _): (f64, f64)| seen(Plane::Sideways, (x, 0.0));
    let seen = [seen(VERTICAL, a), seen(VERTICAL, b), flat(a), flat(b)];
    let position = position(&layout(Machine::Driven, x0), &seen).unwrap();
    TrainCoupling { position, levels: levels() }
}

fn stock(thicknesses: &[f64], most: usize) -> Stock {
    Stock { thicknesses: thicknesses.iter().map(|t| mm(*t)).collect(), most }
}

/// Worst ratio of two machines, the driven moved up by these at 300 and 700 mm.
fn worst(front: f64, rear: f64, up: [f64; 2]) -> f64 {
    let (near, far) = (front + up[0], rear + up[1]);
    let slope = (far - near) / 400.0;
    ((near - 300.0 * slope) / 0.05).abs().max((slope * 1e3 / 0.5).abs())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Against trying every pair of whole shims: none leaves a smaller worst ratio.
    #[test]
    fn no_pair_of_whole_shims_is_better(
        front in -0.6..0.6_f64,
        rear in -0.6..0.6_f64,
        shims in 0_u32..4,
        most in 1_usize..4,
    ) {
        let lies = mm(f64::from(shims) * 0.25);
        let foot = |name: &str, x| FootPlane { shims: Some(lies), ..FootPlane::new(name, mm(x)) };
        let machines = [
            machine("pump", Part::Held, vec![]),
            machine("motor", Part::Movable, vec![foot("front", 300.0), foot("rear", 700.0)]),
        ];
        let couplings = [coupling(0.0, [(300.0, front), (700.0, rear)])];
        let stock = stock(&[0.1, 0.25], most);
        let plan = line_up_whole(&machines, &couplings, Preference::LeastTotal, &stock).unwrap();
        prop_assert_eq!(plan.proof, Proof::Best);
        let mut sums = vec![0.0];
        for tenths in 0..=most {
            for quarters in 0..=most - tenths {
                let sum = 0.1 * f64::from(u32::try_from(tenths).unwrap())
                    + 0.25 * f64::from(u32::try_from(quarters).unwrap());
                sums.extend([sum, sum - in_mm(lies)]);
            }
        }
        sums.retain(|up| *up >= -in_mm(lies) - 1e-9);
        let least = sums.iter().flat_map(|a| sums.iter().map(move |b| worst(front, rear, [*a, *b])));
        let least = least.fold(f64::INFINITY, f64::min);
        let up: Vec<f64> = plan.plan.machines[1].amounts(VERTICAL).map(in_mm).collect();
        prop_assert!((worst(front, rear, [up[0], up[1]]) - plan.plan.worst_ratio[0]).abs() < 1e-6);
        prop_assert!(plan.plan.worst_ratio[0] <= least + 1e-3, "{} for {least}", plan.plan.worst_ratio[0]);
        prop_assert!(plan.free.worst_ratio[0] <= plan.plan.worst_ratio[0] + 1e-6);
        for up in up {
            prop_assert!(sums.iter().any(|sum| (sum - up).abs() < 1e-5), "{up} is no sum");
        }
    }

    /// Three dials where two would do: the one that was read from the wrong end, or with its signs
    /// turned, is named first. Offsets and slopes too small to be told from their mirror are left out.
    #[test]
    fn the_dial_booked_the_wrong_way_round_is_named(
        up in 0.25..0.5_f64,
        right in 0.25..0.5_f64,
        slope in 0.3..0.9_f64,
        which in 0_usize..3,
        view in any::<bool>(),
    ) {
        let at = |x: f64| (up + slope * x / 1e3, right - slope * x / 1e3);
        let rim = |carrier: Machine, x: f64| {
            let (y, z) = at(x);
            let sign = if carrier == Machine::Driver { 1.0 } else { -1.0 };
            let read = [0.0, z - y, -2.0 * y, -z - y].map(|r| sign * r);
            dial(carrier.into(), carrier.other().into(), Surface::Rim, x, &QUARTERS, &read)
        };
        let face = |swing: f64| {
            let (y, z) = (slope / 1e3 * swing / 2.0, -slope / 1e3 * swing / 2.0);
            let read = [0.0, z - y, -2.0 * y, -z - y];
            dial(Body::Driver, Body::Driven, Surface::Face(mm(swing)), 0.0, &QUARTERS, &read)
        };
        let mut dials = [rim(Machine::Driver, 120.0), rim(Machine::Driven, -120.0), face(300.0)];
        let right_way: Vec<Observation> = dials.iter().cloned().map(Observation::Sweep).collect();
        let layout = layout(Machine::Driven, 0.0);
        prop_assert!(suspects(&layout, &right_way).unwrap().is_empty());
        let dial = &mut dials[which];
        if view {
            for reading in &mut dial.readings {
                reading.clock = reading.clock.seen(View::FromDriven);
            }
        } else {
            dial.stem = Stem::FallsPushedIn;
        }
        let seen: Vec<Observation> = dials.into_iter().map(Observation::Sweep).collect();
        let found = suspects(&layout, &seen).unwrap();
        let wanted = if view { Mistake::View } else { Mistake::Sign };
        prop_assert!(!found.is_empty());
        prop_assert!(found.iter().any(|s| s.observation == which && s.mistake == wanted), "{found:?}");
    }

    /// A parked rim of known runout is taken off wherever its high spot stands.
    #[test]
    fn known_runout_of_a_parked_rim_drops_out(high in 0.0..360.0_f64, runout in 0.0..0.3_f64) {
        let eight = [0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0];
        let wobble = |t: f64| runout / 2.0 * (t - high).to_radians().cos();
        let read = eight.map(|t: f64| {
            0.2 * t.to_radians().cos() - 0.1 * t.to_radians().sin() + wobble(t)
        });
        let rim = dial(Body::Driver, Body::Driven, Surface::Rim, 0.0, &eight, &read);
        let turning = Turning::CarrierOver { runout: mm(runout), high: clock(high) };
        let sweep = Dial { turning, ..rim }.fit().unwrap();
        prop_assert!((in_mm(sweep.cosine().value) - 0.2).abs() < 1e-9);
        prop_assert!((in_mm(sweep.sine().value) + 0.1).abs() < 1e-9);
    }
}

/// A listed pack may lose any of its shims and take others, never more than allowed in all.
#[test]
fn listed_packs_change_shim_by_shim() {
    let listed = |name: &str, x| FootPlane {
        shims: Some(mm(3.1)),
        pack: vec![mm(2.0), mm(1.0), mm(0.1)],
        ..FootPlane::new(name, mm(x))
    };
    let machines = [
        machine("pump", Part::Held, vec![]),
        machine("motor", Part::Movable, vec![listed("front", 300.0), listed("rear", 700.0)]),
    ];
    let couplings = [coupling(0.0, [(300.0, 0.1), (700.0, 0.1)])];
    let plan =
        line_up_whole(&machines, &couplings, Preference::LeastTotal, &stock(&[0.7], 3)).unwrap();
    let up: Vec<f64> = plan.plan.machines[1].amounts(VERTICAL).map(in_mm).collect();
    near(up[0], -0.1, 1e-6);
    near(up[1], -0.1, 1e-6);
    near(plan.plan.worst_ratio[0], 0.0, 1e-3);
}

/// 0.30 mm too high everywhere, 0.10 mm of shims, levels 0.05 mm and 0.5 mm/m. By hand: the front
/// comes down by 0.1 and the rear up until offset and slope use the same of their levels,
/// 0.2 − 0.15·w = 0.05·w, w = 1. With room at the front the rear comes down by 0.1 and the front by
/// 0.2, 0.2 − 0.35·w = 0.05·w, w = 0.5. With room at both, or the pump let go, nothing is left.
#[test]
fn every_change_has_its_price() {
    let foot = |name: &str, x| FootPlane { shims: Some(mm(0.1)), ..FootPlane::new(name, mm(x)) };
    let feet = vec![foot("front", 300.0), foot("rear", 700.0)];
    let pump = vec![FootPlane::new("front", mm(-300.0)), FootPlane::new("rear", mm(-700.0))];
    let machines = [machine("pump", Part::Held, pump), machine("motor", Part::Movable, feet)];
    let couplings = [coupling(0.0, [(300.0, 0.3), (700.0, 0.3)])];
    let found = gains(&machines, &couplings, Preference::LeastTotal).unwrap();
    let then = |change: &Change| found.iter().find(|gain| gain.change == *change).map(|g| g.then);
    near(then(&Change::AllRoom).unwrap(), 0.0, 1e-6);
    near(then(&Change::LetGo(0)).unwrap(), 0.0, 1e-6);
    near(found[0].now, 1.0, 1e-6);
    let one = found.iter().find_map(|gain| match &gain.change {
        Change::Room { foot, beyond, .. } => Some((foot.as_str(), in_mm(*beyond), gain.then)),
        _ => None,
    });
    let (name, beyond, left) = one.unwrap();
    assert_eq!(name, "front");
    near(beyond, -0.1, 1e-5);
    near(left, 0.5, 1e-6);
    let free = [machine("pump", Part::Held, vec![]), machine("motor", Part::Held, vec![])];
    let level = [coupling(0.0, [(300.0, 0.0), (700.0, 0.0)])];
    assert!(gains(&free, &level, Preference::LeastTotal).unwrap().is_empty());
}

/// Of moves that leave the same worst ratio the plan takes those most surely inside: where a coupling
/// between two held machines sets the worst ratio, the next one is still brought to its middle, though
/// less would move if it only came to the same ratio.
#[test]
fn what_can_be_sure_is_made_sure() {
    let feet = |at: [f64; 2]| at.map(|x| FootPlane::new("", mm(x))).to_vec();
    let machines = [
        machine("a", Part::Held, vec![]),
        machine("b", Part::Held, vec![]),
        machine("c", Part::Movable, feet([1400.0, 1900.0])),
    ];
    let couplings = [
        coupling(0.0, [(-50.0, 0.04), (50.0, 0.04)]),
        coupling(1000.0, [(950.0, 0.3), (1050.0, 0.3)]),
    ];
    let plan = line_up(&machines, &couplings, Preference::LeastTotal).unwrap();
    near(plan.worst_ratio[0], 0.8, 1e-5);
    let judged = chance_of_all(&plan.couplings[1].judged).unwrap();
    // At 0.8 of its levels, as the first coupling is, the slope would be 1.4 of its u from the limit.
    assert!(judged > 0.999, "{judged}");
}

/// By the normal distribution, from printed tables: a deviation on its limit is inside by half, one
/// a ± away from it in 97.7 of 100 cases.
#[test]
fn chances_follow_the_spread() {
    let amount = |y: f64| Estimate::new(mm(y), mm(0.01));
    let chance = |y: f64| {
        let (of, from) = (Body::Driven, Body::Driver);
        let seen = |plane, at: f64, y: f64| {
            Observation::Offset(Offset { plane, of, from, at: mm(at), amount: amount(y) })
        };
        let both = |y: f64| [seen(VERTICAL, 0.0, y), seen(VERTICAL, 1e3, y)];
        let flat = [seen(Plane::Sideways, 0.0, 0.0), seen(Plane::Sideways, 1e3, 0.0)];
        let seen: Vec<Observation> = both(y).into_iter().chain(flat).collect();
        let found = position(&layout(Machine::Driven, 0.0), &seen).unwrap();
        let judged = judge_line(&found.layout, &found.line, &levels()[..1]).unwrap();
        judged[0].chance().unwrap()
    };
    near(chance(0.05), 0.5, 1e-6);
    near(chance(0.04), 0.977_250, 1e-5);
    near(chance(-0.06), 0.022_750, 1e-5);
    assert!(chance(0.0) > 0.999_999);
}

/// Two machines that may both move leave bounds from moves of any size at zero, so only going over
/// every choice proves anything. Here every choice is gone over by the test as well, plainly.
#[test]
fn two_free_machines_are_proven_by_every_choice() {
    let foot =
        |name: &str, x: f64| FootPlane { shims: Some(mm(0.0)), ..FootPlane::new(name, mm(x)) };
    let feet = [[-900.0, -300.0], [250.0, 800.0]];
    let machines: Vec<TrainMachine> = feet
        .iter()
        .map(|two| {
            let feet = two.map(|x| foot("feet", x)).to_vec();
            machine("free", Part::Movable, feet)
        })
        .collect();
    let sizes = [0.05, 0.1, 0.2, 0.5];
    let mut sums = vec![0.0];
    for _ in 0..3 {
        let more: Vec<f64> = sums.iter().flat_map(|sum| sizes.map(|size| sum + size)).collect();
        sums.extend(more);
        sums.sort_by(f64::total_cmp);
        sums.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    }
    for heights in [[0.137, -0.211], [-0.283, 0.092], [0.061, 0.323]] {
        let coupling = coupling(0.0, [(0.0, heights[0]), (100.0, heights[1])]);
        let slope = (heights[1] - heights[0]) / 100.0;
        let line = |machine: usize, up: [f64; 2]| {
            let [first, last] = feet[machine];
            let climb = (up[1] - up[0]) / (last - first);
            [up[0] - climb * first, climb]
        };
        let all = |machine: usize| -> Vec<[f64; 2]> {
            sums.iter().flat_map(|a| sums.iter().map(|b| line(machine, [*a, *b]))).collect()
        };
        let (before, after) = (all(0), all(1));
        let mut least = f64::INFINITY;
        for from in &before {
            for to in &after {
                let offset = heights[0] + to[0] - from[0];
                let climb = slope + to[1] - from[1];
                least = least.min((offset / 0.05).abs().max((climb * 1e3 / 0.5).abs()));
            }
        }
        let found =
            line_up_whole(&machines, &[coupling], Preference::LeastTotal, &stock(&sizes, 3))
                .unwrap();
        assert_eq!(found.proof, Proof::Best, "{heights:?}");
        near(found.plan.worst_ratio[0], least, 2e-6);
    }
}
