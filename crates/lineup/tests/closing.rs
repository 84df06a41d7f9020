//! Sweeps that close and sweeps that do not, published and generated.

mod common;

use common::*;
use lineup::Body;
use lineup::clock::Clock;
use lineup::closure::{Slip, check, closures};
use lineup::dial::{Dial, Surface};
use quantities::{Physical, Verdict};

fn sweep(readings_mm: &[f64]) -> Dial {
    dial(Body::Driver, Body::Driven, Surface::Rim, 0.0, &QUARTERS, readings_mm)
}

/// Readings of standard uncertainty 0.004 mm: closure 0.01 = 1.25 u and −0.07 = −8.75 u, limit 0.05.
/// The second set has one slipped reading.
#[test]
fn one_set_closes_and_one_does_not() {
    for (readings, sum, in_u, verdict) in [
        ([0.0, 0.18, -0.22, -0.41], 0.01, 1.25, Verdict::Inside),
        ([0.0, 0.18, -0.22, -0.33], -0.07, -8.75, Verdict::Outside),
    ] {
        let dial = Dial { division: mm(0.0), plus_minus: Some(mm(0.008)), ..sweep(&readings) };
        let checked = check(&dial, mm(0.05)).unwrap();
        let closure = &checked.closures[0].sum;
        near(in_mm(closure.value), sum, 1e-9);
        near(closure.standard_uncertainty() * 1e3, 0.008, 1e-9);
        near(closure.value.si() / closure.standard_uncertainty(), in_u, 1e-9);
        assert_eq!(checked.verdict(mm(0.05)), verdict);
    }
}

/// A set published for students in millimetres, top 0, right 1.78, bottom 2.92, left 1.32: it fails
/// by 0.18 mm, and no single slip mends it.
#[test]
fn a_published_set_fails() {
    let checked = check(&sweep(&[0.0, 1.78, 2.92, 1.32]), mm(0.05)).unwrap();
    near(in_mm(checked.closures[0].sum.value), -0.18, 1e-9);
    assert_eq!(checked.verdict(mm(0.05)), Verdict::Outside);
    assert_eq!(checked.slips, []);
}

/// US Bureau of Reclamation, FIST 2-1, figure 16, page 22: plumb wires, N + S against E + W within
/// 0.002 in; the printed closures are 0.0005 and 0.
#[test]
fn plumb_wires_close() {
    for (north, south, east, west, closure) in
        [(0.347, 0.359, 0.354, 0.3525, 0.0005), (0.346, 0.3605, 0.349, 0.3575, 0.0)]
    {
        let readings = [north, east, south, west].map(|inches| inches * IN);
        let dial = Dial { division: mm(0.0005 * IN), ..sweep(&readings) };
        let checked = check(&dial, mm(0.002 * IN)).unwrap();
        near(in_mm(checked.closures[0].sum.value).abs() / IN, closure, 1e-6);
        assert_eq!(checked.verdict(mm(0.002 * IN)), Verdict::Inside);
    }
}

/// US Army TM 10-3930-664-24, page 3-41: 0, 3, −2, 3 thousandths on a housing, TIR 0.005 in. One
/// surface's form need not close, and this one doesn't.
#[test]
fn the_form_of_a_surface_has_a_tir() {
    let readings = [0.0, 0.003, -0.002, 0.003].map(|inches| inches * IN);
    let dial = sweep(&readings);
    near(in_mm(dial.total_indicator_reading()) / IN, 0.005, 1e-9);
    near(in_mm(closures(&dial).unwrap()[0].sum.value) / IN, -0.008, 1e-9);
}

/// Piotrowski, *Shaft Alignment Handbook*, chapter 8, figure 8.10: top 0, east −50, bottom −40,
/// west 10 mil set to zero at the east are 50, 0, 10, 60.
#[test]
fn a_set_can_be_zeroed_elsewhere() {
    let readings = [0.0, -50.0, -40.0, 10.0].map(|mil| mil * MIL);
    let dial = sweep(&readings).rezeroed(Clock::THREE).unwrap();
    for (reading, mil) in dial.readings.iter().zip([50.0, 0.0, 10.0, 60.0]) {
        near(in_mm(reading.value) / MIL, mil, 1e-9);
    }
    near(in_mm(closures(&dial).unwrap()[0].sum.value), 0.0, 1e-9);
    assert!(sweep(&readings).rezeroed(clock(45.0)).is_none());
}

#[test]
fn a_single_slip_is_suspected_and_never_put_right() {
    // True: 0, 0.30, 0.40, 0.10.
    let slips = |readings: [f64; 4]| check(&sweep(&readings), mm(0.05)).unwrap().slips;
    assert_eq!(slips([0.0, 0.30, 0.40, 0.10]), []);
    assert_eq!(slips([0.0, 0.30, -0.40, 0.10]), [Slip::Sign(Clock::SIX)]);
    // Bottom and left in each other's place: by r6 = r3 + r9 the same as a wrong sign at the right.
    let swapped = [Slip::Sign(Clock::THREE), Slip::Swapped(Clock::SIX, Clock::NINE)];
    assert_eq!(slips([0.0, 0.30, 0.10, 0.40]), swapped);
    let turned = slips([0.0, 1.30, 0.40, 0.10]);
    assert!(turned.contains(&Slip::Turn(Clock::THREE, mm(-1.0))), "{turned:?}");
    assert!(
        !turned.iter().any(|slip| matches!(slip, Slip::Turn(clock, _) if *clock == Clock::TWELVE))
    );
}

#[test]
fn the_reading_that_does_not_fit_is_named() {
    let eight: Vec<f64> = (0..8).map(|i| 45.0 * f64::from(i)).collect();
    let mut readings: Vec<f64> = eight
        .iter()
        .map(|d| 0.2 * d.to_radians().cos() - 0.1 * d.to_radians().sin() - 0.2)
        .collect();
    readings[3] += 0.09;
    let dial = dial(Body::Driver, Body::Driven, Surface::Rim, 0.0, &eight, &readings);
    let odd = check(&dial, mm(0.05)).unwrap().odd.unwrap();
    assert_eq!(odd.clock, clock(135.0));
    assert!(in_mm(odd.off_by) > 0.0);
    // Four readings share their misfit evenly: none can be named.
    assert!(check(&sweep(&[0.0, 0.18, -0.22, -0.13]), mm(0.05)).unwrap().odd.is_none());
}

#[test]
fn coming_back_to_zero_counts() {
    let dial = Dial { returned: Some(mm(0.12)), ..sweep(&[0.0, 0.30, 0.40, 0.10]) };
    let checked = check(&dial, mm(0.05)).unwrap();
    near(in_mm(checked.return_to_zero.unwrap().value), 0.12, 1e-9);
    assert_eq!(checked.verdict(mm(0.05)), Verdict::Outside);
}

/// Repeats 0.00/0.02 and 0.30/0.30: pooled deviation √(0.0002/2) = 0.01 mm with two degrees.
#[test]
fn repeats_show_repeatability() {
    let twice = [0.0, 0.0, 90.0, 90.0, 180.0, 270.0];
    let readings = [0.0, 0.02, 0.30, 0.30, 0.40, 0.10];
    let dial = dial(Body::Driver, Body::Driven, Surface::Rim, 0.0, &twice, &readings);
    let (deviation, freedom) = check(&dial, mm(0.05)).unwrap().repeatability.unwrap();
    near(in_mm(deviation), 0.01, 1e-9);
    assert_eq!(freedom, 2);
}

/// The parts of one reading's uncertainty: division 0.01 mm and dial error ±0.005 mm, both
/// rectangles, are 0.002887 mm each (JCGM 100:2008, 4.3.7).
#[test]
fn a_division_is_a_rectangle() {
    near(sweep(&[0.0; 4]).standard_uncertainty() * 1e3, 0.002_886_751_346, 1e-12);
}
