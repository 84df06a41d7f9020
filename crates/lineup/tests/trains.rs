//! Trains: published readings of three machines, and lines that nothing allowed can better.

#![expect(clippy::unwrap_used, reason = "a test that cannot be set up must stop")]

mod common;

use common::*;
use lineup::bounded::best_move;
use lineup::dial::Surface;
use lineup::growth::{PlaneGrowth, growth_line};
use lineup::line::Line;
use lineup::moves::FootPlane;
use lineup::position::{Observation, Offset, Position, position};
use lineup::tolerance::Level;
use lineup::train::{
    Part, Preference, TrainCoupling, TrainError, TrainMachine, TrainPlan, line_up,
};
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

fn machine(name: &str, part: Part, feet_mm: &[f64], shims: Option<f64>) -> TrainMachine {
    let foot = |x: &f64| FootPlane {
        shims: shims.map(mm),
        ..FootPlane::new(format!("{name} {x}"), mm(*x))
    };
    let feet = feet_mm.iter().map(foot).collect();
    TrainMachine { name: name.into(), part, feet, growth: Line::zero(mm(0.0)) }
}

/// The driven line above the driver's at two places, level sideways.
fn coupling(moving: Machine, reference: f64, a: (f64, f64), b: (f64, f64)) -> TrainCoupling {
    let seen = |plane, (x, y): (f64, f64)| {
        let amount = Estimate::new(mm(y), mm(0.01));
        Observation::Offset(Offset {
            plane,
            of: Body::Driven,
            from: Body::Driver,
            at: mm(x),
            amount,
        })
    };
    let flat = |(x, _): (f64, f64)| seen(Plane::Sideways, (x, 0.0));
    let seen = [seen(VERTICAL, a), seen(VERTICAL, b), flat(a), flat(b)];
    let position = position(&layout(moving, reference), &seen).unwrap();
    TrainCoupling { position, levels: levels() }
}

fn amounts(plan: &TrainPlan, plane: usize) -> Vec<Vec<f64>> {
    let of =
        |feet: &[lineup::train::TrainFoot]| feet.iter().map(|f| in_mm(f.amount[plane])).collect();
    plan.machines.iter().map(|machine| of(&machine.feet)).collect()
}

/// Readings generated apart from this code: motor, gearbox (held), compressor on one axis. Moves to
/// 0.0002 mm; the line-up left is perfect.
#[test]
fn a_gearbox_held_between_motor_and_compressor() {
    let sweep = |carrier, touched, at, readings: &[f64; 4], amplitude| {
        let dial = dial(carrier, touched, Surface::Rim, at, &QUARTERS, readings);
        Observation::Sweep(dial.with_sag(sag(amplitude)))
    };
    let (a, b) = (Body::Driver, Body::Driven);
    let found = |moving, x0, seen: [Observation; 2]| -> Position {
        position(&layout(moving, x0), &seen).unwrap()
    };
    let first = found(
        Machine::Driver,
        -60.0,
        [
            sweep(a, b, 0.0, &[0.0, -0.35, -0.5, -0.15], 0.03),
            sweep(b, a, -120.0, &[0.0, 0.398, 0.524, 0.126], 0.03),
        ],
    );
    let second = found(
        Machine::Driven,
        990.0,
        [
            sweep(b, a, 900.0, &[0.0, -0.69, -1.02, -0.33], 0.05),
            sweep(a, b, 1080.0, &[0.0, 0.842, 1.144, 0.302], 0.05),
        ],
    );
    let machines = [
        machine("motor", Part::Movable, &[-1000.0, -350.0], None),
        machine("gearbox", Part::Held, &[], None),
        machine("compressor", Part::Movable, &[1300.0, 2200.0], None),
    ];
    let couplings = [first, second].map(|position| TrainCoupling { position, levels: levels() });
    let plan = line_up(&machines, &couplings, Preference::LeastTotal).unwrap();
    assert_eq!(plan.datum, 1);
    #[rustfmt::skip]
    let wanted = [[[0.82, 0.43], [-0.4, -0.205]], [[0.0; 2]; 2], [[0.82, 1.63], [-0.38, -0.83]]];
    for plane in [0, 1] {
        for (found, wanted) in amounts(&plan, plane).iter().zip(wanted) {
            for (found, wanted) in found.iter().zip(wanted[plane]) {
                near(*found, wanted, 2e-4);
            }
        }
        near(plan.worst_ratio[plane], 0.0, 1e-6);
    }
    let motor = &plan.machines[0].present;
    near(in_mm(motor.offset(VERTICAL, mm(0.0)).value), -0.22, 2e-4);
    near(mm_per_m(motor.slope(Plane::Sideways).value), -0.3, 2e-3);
}

/// Both machines free, the pump 0.2 mm high: each preference is best at what it prefers.
#[test]
fn preferences_differ_as_they_say() {
    let machines = [
        machine("motor", Part::Movable, &[-700.0, -300.0], None),
        machine("pump", Part::Movable, &[300.0, 700.0], None),
    ];
    let couplings = [coupling(Machine::Driver, 0.0, (-50.0, 0.2), (50.0, 0.2))];
    let moves = |preference| amounts(&line_up(&machines, &couplings, preference).unwrap(), 0);
    let greatest = |moves: &[Vec<f64>]| moves.iter().flatten().fold(0.0_f64, |m, x| m.max(x.abs()));
    let total = |moves: &[Vec<f64>]| moves.iter().flatten().map(|x| x.abs()).sum::<f64>();
    // By symmetry the line goes through 0.1 at the middle. Slope 0.1/500 balances near and far feet
    // at ∓0.04; slope 0.1/700 leaves the far feet alone and moves the near ones by 0.4/7.
    near(greatest(&moves(Preference::LeastGreatest)), 0.04, 1e-4);
    near(total(&moves(Preference::LeastTotal)), 0.8 / 7.0, 1e-4);
    let raised = moves(Preference::RaiseOnly);
    assert!(raised.iter().flatten().all(|x| *x >= -1e-6), "{raised:?}");
    // By hand: the line through (−700, 0) and (300, 0.2) clears the other two feet by 0.08 each, and
    // no line above all four has a smaller sum, for the sum is least where the middle is lowest.
    for (raised, wanted) in raised.iter().flatten().zip([0.0, 0.08, 0.0, 0.08]) {
        near(*raised, wanted, 1e-4);
    }
}

#[test]
fn growth_is_in_the_target() {
    let hot = growth_line(&[PlaneGrowth::up(mm(0.0), Estimate::exact(mm(0.3)))]).unwrap();
    let machines = [
        machine("motor", Part::Movable, &[-700.0, -300.0], None),
        TrainMachine { growth: hot, ..machine("pump", Part::Held, &[], None) },
    ];
    let couplings = [coupling(Machine::Driver, 0.0, (-50.0, 0.0), (50.0, 0.0))];
    let plan = line_up(&machines, &couplings, Preference::LeastTotal).unwrap();
    for up in &amounts(&plan, 0)[0] {
        near(*up, 0.3, 1e-4);
    }
    near(in_mm(plan.couplings[0].deviation.offset(VERTICAL, mm(0.0)).value), 0.0, 1e-4);
}

/// Nothing may move and the driven stands 0.3 mm high: what is left is stated of the machine that the
/// coupling's layout calls moving.
#[test]
fn what_is_left_is_the_moving_machines() {
    for (moving, sign) in [(Machine::Driver, -1.0), (Machine::Driven, 1.0)] {
        let machines =
            [machine("motor", Part::Held, &[], None), machine("pump", Part::Held, &[], None)];
        let couplings = [coupling(moving, 0.0, (-50.0, 0.3), (50.0, 0.3))];
        let plan = line_up(&machines, &couplings, Preference::LeastTotal).unwrap();
        let left = plan.couplings[0].deviation.offset(VERTICAL, mm(0.0));
        near(in_mm(left.value), sign * 0.3, 1e-9);
        near(plan.worst_ratio[0], 6.0, 1e-6);
        let working = plan.working(VERTICAL);
        near(working.terms[0].value.si.abs() / working.terms[1].value.si, 6.0, 1e-6);
    }
}

#[test]
fn a_train_has_two_to_eight_machines() {
    let one = [machine("motor", Part::Held, &[], None)];
    assert!(matches!(line_up(&one, &[], Preference::LeastTotal), Err(TrainError::Size { .. })));
    let footless =
        [machine("motor", Part::Movable, &[1.0], None), machine("pump", Part::Held, &[], None)];
    let couplings = [coupling(Machine::Driver, 0.0, (-50.0, 0.0), (50.0, 0.0))];
    assert!(matches!(
        line_up(&footless, &couplings, Preference::LeastTotal),
        Err(TrainError::Feet { .. })
    ));
    let mut bare = couplings;
    bare[0].levels.clear();
    let two = [machine("motor", Part::Held, &[], None), machine("pump", Part::Held, &[], None)];
    assert!(matches!(line_up(&two, &bare, Preference::LeastTotal), Err(TrainError::Levels { .. })));
}

/// Worst ratio of a train of three in the vertical plane with moves (offset at 0, slope) given.
fn worst(couplings: &[TrainCoupling], moves: &[[f64; 2]]) -> f64 {
    let pairs = couplings.iter().zip(moves.windows(2));
    let ratios = pairs.flat_map(|(coupling, pair)| {
        let x0 = in_mm(coupling.position.layout.reference);
        let at = |[p, q]: [f64; 2]| p + q * x0;
        let offset = offset_mm(&coupling.position, VERTICAL, x0) + at(pair[1]) - at(pair[0]);
        let slope =
            mm_per_m(coupling.position.slope(VERTICAL).value) + (pair[1][1] - pair[0][1]) * 1e3;
        [offset.abs() / 0.05, slope.abs() / 0.5]
    });
    ratios.fold(0.0, f64::max)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever else the feet allow leaves a worst ratio at least as large; and the plan's own moves
    /// leave the ratio that it states and stay within the feet's room.
    #[test]
    fn nothing_allowed_is_better(
        offsets in prop::array::uniform4(-0.4..0.4_f64),
        shims in 0.0..0.2_f64,
        tries in prop::collection::vec(prop::array::uniform6(0.0..1.0_f64), 40),
        held in 0_usize..4,
    ) {
        let feet = [[-900.0, -400.0], [300.0, 800.0], [1400.0, 2100.0]];
        let part = |i| if held == i { Part::Held } else { Part::Movable };
        let machines: Vec<TrainMachine> =
            (0..3).map(|i| machine("m", part(i), &feet[i], Some(shims))).collect();
        let couplings = [
            coupling(Machine::Driven, 0.0, (-60.0, offsets[0]), (60.0, offsets[1])),
            coupling(Machine::Driven, 1100.0, (1040.0, offsets[2]), (1160.0, offsets[3])),
        ];
        let plan = line_up(&machines, &couplings, Preference::LeastTotal).unwrap();
        let line = |at: [f64; 2], up: [f64; 2]| {
            let slope = (up[1] - up[0]) / (at[1] - at[0]);
            [up[0] - slope * at[0], slope]
        };
        let told = amounts(&plan, 0);
        prop_assert!(told.iter().flatten().all(|up| *up >= -shims - 1e-6));
        let moves: Vec<[f64; 2]> = (0..3).map(|i| line(feet[i], [told[i][0], told[i][1]])).collect();
        prop_assert!((worst(&couplings, &moves) - plan.worst_ratio[0]).abs() < 1e-4);
        for random in tries {
            let up = |i: usize, j: usize| {
                if held == i { 0.0 } else { -shims + random[2 * i + j] * (told[i][j].abs() + 0.3) }
            };
            let moves: Vec<[f64; 2]> = (0..3).map(|i| line(feet[i], [up(i, 0), up(i, 1)])).collect();
            prop_assert!(worst(&couplings, &moves) >= plan.worst_ratio[0] - 1e-6);
        }
    }

    /// Two machines, one held: the least worst ratio is never above the one that least squares leaves.
    #[test]
    fn the_worst_ratio_is_least(front in -0.6..0.6_f64, rear in -0.6..0.6_f64, shims in 0.0..0.3_f64) {
        let machines = [
            machine("pump", Part::Held, &[], None),
            machine("motor", Part::Movable, &[300.0, 700.0], Some(shims)),
        ];
        let couplings = [coupling(Machine::Driven, 0.0, (300.0, front), (700.0, rear))];
        let plan = line_up(&machines, &couplings, Preference::LeastTotal).unwrap();
        let measured = &couplings[0].position;
        let zero = Line::zero(mm(0.0));
        let squares = best_move(&measured.layout, &measured.line, &zero, &machines[1].feet, &levels()).unwrap();
        prop_assert!(plan.worst_ratio[0] <= squares.worst_ratio + 1e-6);
        if squares.obstacles.is_empty() {
            prop_assert!(plan.worst_ratio[0] < 1e-6);
        }
    }
}
