//! Readings generated apart from this code from a chosen truth, by the reading model in the crate's
//! head; moves were taken from the truth, not from an inversion. Readings have four to six
//! decimals, so positions hold to 0.0001 mm and slopes to 0.001 mm/m.

#![expect(clippy::unreadable_literal, reason = "readings stand as they were booked")]
#![expect(clippy::similar_names, reason = "driver and driven are the words of the trade")]

mod common;

use common::*;
use lineup::dial::Surface;
use lineup::moves::{FootPlane, moves};
use lineup::position::{Observation, Offset, Slope, position};
use lineup::{Body, Estimate, Machine, Plane, Spool, line::Line};
use quantities::{Angle, Physical};

const SIDEWAYS: Plane = Plane::Sideways;
const VERTICAL: Plane = Plane::Vertical;
const DRIVER: Body = Body::Driver;
const DRIVEN: Body = Body::Driven;

#[test]
fn reverse_rim_four_points_without_sag() {
    // The fixed machine stands at smaller x.
    let found = position(
        &layout(Machine::Driven, 0.0),
        &[
            Observation::Sweep(dial(
                DRIVEN,
                DRIVER,
                Surface::Rim,
                0.0,
                &QUARTERS,
                &[0.0, -0.3, -0.36, -0.06],
            )),
            Observation::Sweep(dial(
                DRIVER,
                DRIVEN,
                Surface::Rim,
                120.0,
                &QUARTERS,
                &[0.0, 0.174, 0.204, 0.03],
            )),
        ],
    )
    .unwrap();
    near(offset_mm(&found, VERTICAL, 0.0), -0.18, 1e-4);
    near(offset_mm(&found, VERTICAL, 120.0), -0.102, 1e-4);
    near(offset_mm(&found, SIDEWAYS, 0.0), 0.12, 1e-4);
    near(offset_mm(&found, SIDEWAYS, 120.0), 0.072, 1e-4);
    near(mm_per_m(found.slope(VERTICAL).value), 0.65, 1e-3);
    near(mm_per_m(found.slope(SIDEWAYS).value), -0.4, 1e-3);
    let [front, rear] = moves_mm(&found, &[310.0, 760.0])[..] else { panic!() };
    near(front[0], -0.0215, 1e-4);
    near(rear[0], -0.314, 1e-4);
    near(front[1], 0.004, 1e-4);
    near(rear[1], 0.184, 1e-4);
}

#[test]
fn reverse_rim_in_inches_with_two_sags() {
    let mils = |values: [f64; 4]| values.map(|mil| mil * MIL);
    let on_driver = dial(DRIVEN, DRIVER, Surface::Rim, 0.0, &QUARTERS, &mils([0.0, 7.5, 9.0, 1.5]));
    let on_driven =
        dial(DRIVER, DRIVEN, Surface::Rim, 8.0 * IN, &QUARTERS, &mils([0.0, -7.44, -12.4, -4.96]));
    let mandrel = |bottom_mil: f64| {
        lineup::sag::Sag::rim_on_mandrel(Estimate::exact(mm(bottom_mil * MIL)), "").unwrap()
    };
    let found = position(
        &layout(Machine::Driven, 0.0),
        &[
            Observation::Sweep(on_driver.with_sag(mandrel(-4.0))),
            Observation::Sweep(on_driven.with_sag(mandrel(-5.0))),
        ],
    )
    .unwrap();
    let mil = |plane, x_in: f64| offset_mm(&found, plane, x_in * IN) / MIL;
    near(mil(VERTICAL, 0.0), 6.5, 1e-3);
    near(mil(VERTICAL, 8.0), 3.7, 1e-3);
    near(mil(SIDEWAYS, 0.0), -3.0, 1e-3);
    near(mil(SIDEWAYS, 8.0), -1.24, 1e-3);
    near(mm_per_m(found.slope(VERTICAL).value), -0.35, 1e-4);
    near(mm_per_m(found.slope(SIDEWAYS).value), 0.22, 1e-4);
    let [front, rear] = moves_mm(&found, &[20.0 * IN, 44.0 * IN])[..] else { panic!() };
    near(front[0] / MIL, 0.5, 1e-3);
    near(rear[0] / MIL, 8.9, 1e-3);
    near(front[1] / MIL, -1.4, 1e-3);
    near(rear[1] / MIL, -6.68, 1e-3);
}

#[test]
fn rim_and_face_at_eight_points() {
    let eight = [0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0];
    let rim = [0.0, -0.119258, -0.2905, -0.413415, -0.416, -0.296742, -0.1255, -0.002585];
    let face = [0.0, 0.058787, 0.13, 0.171924, 0.16, 0.101213, 0.03, -0.011924];
    let found = position(
        &layout(Machine::Driven, 15.0),
        &[
            Observation::Sweep(dial(DRIVER, DRIVEN, Surface::Rim, 15.0, &eight, &rim)),
            Observation::Sweep(dial(DRIVER, DRIVEN, Surface::Face(mm(200.0)), 15.0, &eight, &face)),
        ],
    )
    .unwrap();
    near(offset_mm(&found, VERTICAL, 15.0), 0.208, 1e-4);
    near(offset_mm(&found, SIDEWAYS, 15.0), -0.0825, 1e-4);
    near(mm_per_m(found.slope(VERTICAL).value), -0.8, 1e-3);
    near(mm_per_m(found.slope(SIDEWAYS).value), 0.5, 1e-3);
    near(in_mm(found.gap_difference(VERTICAL, mm(200.0)).value), 0.16, 1e-4);
    let [front, rear] = moves_mm(&found, &[260.0, 690.0])[..] else { panic!() };
    near(front[0], -0.012, 1e-4);
    near(rear[0], 0.332, 1e-4);
    near(front[1], -0.04, 1e-4);
    near(rear[1], -0.255, 1e-4);
}

#[test]
fn faces_at_both_ends_of_a_spacer() {
    let layout = lineup::Layout {
        spool: Some(Spool { driver_end: mm(0.0), driven_end: mm(500.0) }),
        ..layout(Machine::Driven, 0.0)
    };
    let face = |carrier, at, readings: [f64; 4]| {
        let surface = Surface::Face(mm(240.0));
        Observation::Sweep(dial(carrier, Body::Spool, surface, at, &QUARTERS, &readings))
    };
    let found = position(
        &layout,
        &[
            face(DRIVER, 0.0, [0.0, 0.084, 0.072, -0.012]),
            face(DRIVEN, 500.0, [0.0, 0.204, 0.288, 0.084]),
        ],
    )
    .unwrap();
    let (y, z) = (found.flex_angles(VERTICAL).unwrap(), found.flex_angles(SIDEWAYS).unwrap());
    near(mm_per_m(y.driver_end.value), -0.3, 1e-3);
    near(mm_per_m(y.driven_end.value), -1.2, 1e-3);
    near(mm_per_m(z.driver_end.value), 0.4, 1e-3);
    near(mm_per_m(z.driven_end.value), 0.5, 1e-3);
    let working = found.flex_working(VERTICAL, Machine::Driver).unwrap();
    near(working.result.si * 1e3, -0.3, 1e-3);
    near(working.terms[0].value.si / working.terms[1].value.si, working.result.si, 1e-12);
    near(offset_mm(&found, VERTICAL, 500.0), -0.15, 2e-4);
    near(offset_mm(&found, SIDEWAYS, 500.0), 0.2, 2e-4);
    near(mm_per_m(found.slope(VERTICAL).value), -1.5, 1e-3);
    near(mm_per_m(found.slope(SIDEWAYS).value), 0.9, 1e-3);
    let [front, rear] = moves_mm(&found, &[720.0, 1340.0])[..] else { panic!() };
    near(front[0], 0.48, 2e-4);
    near(rear[0], 1.41, 2e-4);
    near(front[1], -0.398, 2e-4);
    near(rear[1], -0.956, 2e-4);
}

#[test]
fn reverse_rim_from_half_a_turn() {
    let arc = [270.0, 300.0, 330.0, 0.0, 30.0, 60.0, 90.0];
    let on_driver = [0.0, -0.116244, -0.163827, -0.13, -0.023827, 0.126244, 0.28];
    let on_driven = [0.0, 0.079124, 0.133296, 0.148, 0.119296, 0.054876, -0.028];
    let found = position(
        &layout(Machine::Driven, 0.0),
        &[
            Observation::Sweep(
                dial(DRIVEN, DRIVER, Surface::Rim, 0.0, &arc, &on_driver).with_sag(sag(0.04)),
            ),
            Observation::Sweep(
                dial(DRIVER, DRIVEN, Surface::Rim, 180.0, &arc, &on_driven).with_sag(sag(0.05)),
            ),
        ],
    )
    .unwrap();
    near(offset_mm(&found, VERTICAL, 0.0), 0.31, 1e-4);
    near(offset_mm(&found, VERTICAL, 180.0), 0.112, 1e-4);
    near(offset_mm(&found, SIDEWAYS, 0.0), -0.14, 1e-4);
    near(offset_mm(&found, SIDEWAYS, 180.0), -0.014, 1e-4);
    let [front, rear] = moves_mm(&found, &[420.0, 980.0])[..] else { panic!() };
    near(front[0], 0.152, 1e-4);
    near(rear[0], 0.768, 1e-4);
    near(front[1], -0.154, 1e-4);
    near(rear[1], -0.546, 1e-4);
}

/// With scatter and rounding: estimates are ordinary least squares over eight readings a dial, and
/// their uncertainty comes from the residuals, for the stated one is made too small to count.
#[test]
fn scatter_beyond_what_was_stated_rules_the_uncertainty() {
    let eight = [0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0];
    let sweep = |carrier, touched, at, readings: [f64; 8]| {
        let mut dial =
            dial(carrier, touched, Surface::Rim, at, &eight, &readings).with_sag(sag(0.02));
        dial.division = mm(1e-6);
        dial
    };
    let on_driver = sweep(DRIVEN, DRIVER, 0.0, [0.0, 0.09, 0.22, 0.28, 0.27, 0.17, 0.05, -0.02]);
    let on_driven =
        sweep(DRIVER, DRIVEN, 140.0, [0.0, -0.02, -0.11, -0.18, -0.21, -0.19, -0.11, -0.03]);
    for (dial, deviation) in [(&on_driver, 0.004_528_251_692), (&on_driven, 0.005_544_585_686)] {
        let circle = dial.fit().unwrap().circle;
        near(circle.residual_deviation().unwrap() * 1e3, deviation, 1e-6);
    }
    let seen = [Observation::Sweep(on_driver), Observation::Sweep(on_driven)];
    let found = position(&layout(Machine::Driven, 0.0), &seen).unwrap();
    near(offset_mm(&found, VERTICAL, 0.0), 0.154_675_144_213, 1e-6);
    near(offset_mm(&found, VERTICAL, 140.0), 0.089_068_542_495, 1e-6);
    near(offset_mm(&found, SIDEWAYS, 0.0), -0.081_390_872_965, 1e-6);
    near(offset_mm(&found, SIDEWAYS, 140.0), 0.003_535_533_906, 1e-6);
    // Student's factor for ten degrees of freedom, from the incomplete beta function.
    near(found.factor, 2.228_138_851_986, 1e-6);
    let student = found.factor;
    let u = in_mm(found.offset_at(VERTICAL, mm(0.0)).plus_minus) / student;
    near(u, 0.002_530_995_205, 1e-6);
    let feet = [FootPlane::new("front", mm(330.0)), FootPlane::new("rear", mm(810.0))];
    let wanted = [
        (-3.101_159_219_770_5e-05, -0.118_792_800_374, 0.006_884_101_861),
        (0.224_905_908_583, -0.409_969_052_504, 0.019_003_973_917),
    ];
    let found = moves(&found.line, &Line::zero(mm(0.0)), &feet).unwrap();
    for (foot, (up, right, u)) in found.iter().zip(wanted) {
        near(in_mm(foot.up().value), up, 1e-6);
        near(in_mm(foot.right().value), right, 1e-6);
        near(in_mm(foot.up().plus_minus) / student, u, 1e-6);
        near(in_mm(foot.right().plus_minus) / student, u, 1e-6);
    }
}

#[test]
fn two_rims_and_a_face_weighed_together() {
    let offset = |at, value, u| {
        let amount = Estimate::new(mm(value), mm(2.0 * u));
        Observation::Offset(Offset {
            plane: VERTICAL,
            of: DRIVEN,
            from: DRIVER,
            at: mm(at),
            amount,
        })
    };
    let slope = |plane, value: f64, u: f64| {
        let amount = Estimate::new(Angle::from_si(value), Angle::from_si(2.0 * u));
        Observation::Slope(Slope { plane, of: DRIVEN, from: DRIVER, amount })
    };
    // The sideways plane only has to be determined.
    let level = Offset {
        plane: SIDEWAYS,
        of: DRIVEN,
        from: DRIVER,
        at: mm(0.0),
        amount: Estimate::new(mm(0.0), mm(0.01)),
    };
    let found = position(
        &layout(Machine::Driven, 0.0),
        &[
            offset(0.0, 0.214, 0.008),
            offset(150.0, 0.109, 0.01),
            slope(VERTICAL, -0.00058, 9.0e-5),
            Observation::Offset(level),
            slope(SIDEWAYS, 0.0, 1e-4),
        ],
    )
    .unwrap();
    let at_zero = found.offset_at(VERTICAL, mm(0.0));
    near(in_mm(at_zero.value), 0.210_672_924_188, 1e-9);
    near(at_zero.standard_uncertainty() * 1e3, 0.007_222_907_802, 1e-9);
    near(found.slope(VERTICAL).value.si(), -0.000_643_162_454_873_646, 1e-12);
    near(found.slope(VERTICAL).standard_uncertainty(), 6.193_976_344_828e-5, 1e-13);
    near(found.chi_squared, 0.935_740_072_202, 1e-9);
    assert_eq!(found.degrees_of_freedom, 1);
    let feet = [FootPlane::new("front", mm(350.0)), FootPlane::new("rear", mm(900.0))];
    let wanted = [(0.014_433_935_018, 0.019_103_442_523), (0.368_173_285_199, 0.052_493_080_17)];
    let moves = moves(&found.line, &Line::zero(mm(0.0)), &feet).unwrap();
    for (foot, (up, u)) in moves.iter().zip(wanted) {
        near(in_mm(foot.up().value), up, 1e-9);
        near(foot.up().standard_uncertainty() * 1e3, u, 1e-9);
    }
}

/// Two rim offsets of ±0.02 mm 140 mm apart: u(front), u(rear) and their correlation.
#[test]
fn a_hundredth_at_the_hubs_is_much_more_at_the_feet() {
    let rim = |plane, at| {
        let amount = Estimate::new(mm(0.0), mm(0.02));
        Observation::Offset(Offset { plane, of: DRIVEN, from: DRIVER, at: mm(at), amount })
    };
    let seen: Vec<Observation> =
        Plane::BOTH.into_iter().flat_map(|plane| [rim(plane, 0.0), rim(plane, 140.0)]).collect();
    let found = position(&layout(Machine::Driven, 70.0), &seen).unwrap();
    for (x, u) in [(330.0, 0.027_199_189_664), (810.0, 0.075_084_985_863)] {
        near(found.offset_at(SIDEWAYS, mm(x)).standard_uncertainty() * 1e3 / u, 1.0, 1e-9);
    }
    let together = found.line.correlation(VERTICAL, mm(330.0), mm(810.0)).unwrap();
    near(together, 0.985_807_097_897, 1e-9);
}
