//! What a set of readings must say, whoever computes it.

use proptest::prelude::*;
use quantities::{TemperatureCoefficient, TemperatureInterval, ThermodynamicTemperature};
use uom::si::angle::degree;
use uom::si::length::{inch, micrometer, millimeter, nanometer};
use uom::si::thermodynamic_temperature::degree_celsius;

use super::form::Profile;
use super::suspects::{Slip, Which};
use super::*;

fn mm(mm: f64) -> Length {
    Length::new::<millimeter>(mm)
}

fn at(station: f64, degrees: f64, size: f64) -> Reading {
    Reading {
        station: mm(station),
        direction: Direction::At(Angle::new::<degree>(degrees)),
        size: mm(size),
        spread: mm(0.004),
    }
}

fn sized(readings: Vec<Reading>) -> Size {
    Measurement::plain(readings).size().unwrap()
}

fn microns(length: Length) -> f64 {
    length.get::<micrometer>()
}

fn celsius(degrees: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(degrees)
}

/// A bore of 80 mm that grows 12 µm over 100 mm, is 10 µm oval along 30°, and 6 µm wide in the middle.
fn shaped(stations: &[f64], directions: &[f64], turn: f64) -> Vec<Reading> {
    let mut readings = Vec::new();
    for &station in stations {
        for &direction in directions {
            let x = (station - 50.0) / 50.0;
            let around = (2.0 * (direction - 30.0).to_radians()).cos();
            let size = 80.0 + 0.006 * x + 0.005 * around + 0.006 * (1.0 - x * x);
            readings.push(at(station, direction + turn, size));
        }
    }
    readings
}

#[test]
fn taper_bow_and_ovality_are_told_apart() {
    let size = sized(shaped(&[0.0, 50.0, 100.0], &[0.0, 45.0, 90.0, 135.0], 0.0));
    let taper = size.taper.unwrap();
    assert!((microns(taper.over_span.value) - 12.0).abs() < 1e-6);
    assert!((taper.slope.value.si() - 1.2e-4).abs() < 1e-12);
    assert!((microns(size.bow.unwrap().middle_over_ends.value) - 6.0).abs() < 1e-6);
    let round = size.roundness.unwrap();
    assert!((microns(round.out_of_round.value) - 10.0).abs() < 1e-6);
    assert!((round.largest_at.unwrap().get::<degree>() - 30.0).abs() < 1e-6);
    assert_eq!(round.blind_to(), 3);
    assert!(size.suspects.is_empty());
}

/// Unevenly spread: along the key at three depths, across it at the mouth only.
#[test]
fn ovality_is_not_taken_for_taper() {
    let oval = |station, degrees, size| at(station, degrees, size);
    let size = sized(vec![
        oval(5.0, 0.0, 80.010),
        oval(50.0, 0.0, 80.010),
        oval(95.0, 0.0, 80.010),
        oval(5.0, 90.0, 79.990),
    ]);
    assert!(microns(size.taper.unwrap().over_span.value).abs() < 1e-6);
    let round = size.roundness.unwrap();
    assert!((microns(round.out_of_round.value) - 20.0).abs() < 1e-6);
    assert_eq!((round.largest_at, round.directions), (None, 2));
}

/// Geometry: a circle with three lobes has the same diameter everywhere, so two points see
/// nothing; three contacts at 120° see twice the lobe's height, up and down.
#[test]
fn two_points_are_blind_to_three_lobes_and_three_to_two() {
    let radius = |degrees: f64, lobes: f64| 40.0 + 0.005 * (lobes * degrees.to_radians()).cos();
    let two = |a: f64, lobes| radius(a, lobes) + radius(a + 180.0, lobes);
    let three = |a: f64, lobes| {
        2.0 / 3.0 * [0.0, 120.0, 240.0].iter().map(|turn| radius(a + turn, lobes)).sum::<f64>()
    };
    let seen = |contact, read: &dyn Fn(f64) -> f64| {
        let degrees = [0.0, 25.0, 50.0, 75.0, 100.0];
        let readings = degrees.iter().map(|&a| at(10.0, a, read(a))).collect();
        let measurement = Measurement { contact, ..Measurement::plain(readings) };
        microns(measurement.size().unwrap().roundness.unwrap().out_of_round.value)
    };
    assert!(seen(Contact::TwoPoint, &|a| two(a, 3.0)) < 1e-6);
    assert!((seen(Contact::TwoPoint, &|a| two(a, 2.0)) - 20.0).abs() < 1e-6);
    assert!(seen(Contact::ThreePoint, &|a| three(a, 2.0)) < 1e-6);
    assert!((seen(Contact::ThreePoint, &|a| three(a, 3.0)) - 20.0).abs() < 1e-6);
}

/// JCGM 100:2008, annex H.1 (end gauge): the terms in δθ and δα, 16.6 nm and 2.9 nm as printed;
/// there as standard uncertainties, here as half-widths, which are twice as wide.
#[test]
fn thermal_terms_match_the_end_gauge_of_the_gum() {
    let per_kelvin = TemperatureCoefficient::from_si;
    let of_both = |whole: f64| 2.0 * whole / 2.0_f64.sqrt();
    let temperatures = Temperatures {
        part: celsius(19.9),
        instrument: celsius(19.9),
        part_expansion: per_kelvin(11.5e-6),
        instrument_expansion: per_kelvin(11.5e-6),
        spread: TemperatureInterval::from_si(of_both(0.05 / 3.0_f64.sqrt())),
        expansion_spread: per_kelvin(of_both(1e-6 / 3.0_f64.sqrt())),
    };
    let spread = temperatures.spread_of(Length::from_si(0.050_000_623));
    let nm = |length: Length| length.get::<nanometer>() / 2.0;
    assert!((nm(spread.temperatures) - 16.599).abs() < 0.0005, "{spread:?}");
    // δα has a rectangular half-width of 1e-6, u = 0.58e-6; the GUM multiplies by θ = −0.1 °C.
    assert!((nm(spread.expansions) - 2.886_79).abs() < 0.000_01, "{spread:?}");
    assert!((temperatures.factor() - 1.0).abs() < 1e-12);
}

/// Linear expansion: a steel shaft of 100 mm, 20 K warm, read with an instrument at 20 °C, is
/// 100·11.5e-6·20 = 0.0230 mm smaller at 20 °C; with an equally warm steel instrument, the same.
#[test]
fn a_warm_part_reads_large_and_a_warm_instrument_small() {
    let steel = TemperatureCoefficient::from_si(11.5e-6);
    let corrected = |part, instrument| {
        let temperatures = Temperatures {
            part: celsius(part),
            instrument: celsius(instrument),
            part_expansion: steel,
            instrument_expansion: steel,
            spread: TemperatureInterval::from_si(1.0),
            expansion_spread: TemperatureCoefficient::from_si(0.0),
        };
        let plain = Measurement::plain(vec![at(0.0, 0.0, 100.0)]);
        Measurement { temperatures: Some(temperatures), ..plain }.size().unwrap()
    };
    let by = |part, instrument| 100.0 - corrected(part, instrument).mean.value.get::<millimeter>();
    assert!((by(40.0, 20.0) - 0.0230).abs() < 0.000_05);
    assert!(by(40.0, 40.0).abs() < 1e-12);
    assert!((by(20.0, 40.0) + 0.0230).abs() < 0.000_05);
    // ± 1 K each on two steel parts: 100·11.5e-6·√2 = 0.00163 mm, shared by all readings.
    assert!((microns(corrected(40.0, 40.0).common) - 1.63).abs() < 0.005);
}

#[test]
fn the_setting_standard_moves_all_readings_and_its_spread_does_not_shrink() {
    let read = vec![at(0.0, 0.0, 80.062); 16];
    let standard = Estimate::new(mm(80.0), mm(0.002));
    let setting = Some(Setting { standard, read: mm(80.003) });
    let size = Measurement { setting, ..Measurement::plain(read) }.size().unwrap();
    assert!((size.mean.value.get::<millimeter>() - 80.059).abs() < 1e-9);
    assert!((microns(size.random) - 1.0).abs() < 1e-9);
    assert!((microns(size.common) - 2.0).abs() < 1e-9);
    assert!((microns(size.mean.plus_minus) - 5.0_f64.sqrt()).abs() < 1e-9);
}

#[test]
fn slips_are_named_and_nothing_is_corrected() {
    let off = |by: f64| {
        let sizes = [80.060, 80.062, 80.063, 80.061 + by, 80.062, 80.064];
        let readings = sizes.iter().map(|&size| at(10.0, 0.0, size)).collect();
        sized(readings)
    };
    for (by, slip) in [
        (0.5, Some(Slip::MetricTurn)),
        (-0.635, Some(Slip::InchTurn)),
        (1.0, Some(Slip::Millimetre)),
        (2.54, Some(Slip::TenthOfAnInch)),
        (80.061 / 25.4 - 80.061, Some(Slip::MixedUnits)),
        (0.040, None),
    ] {
        let size = off(by);
        assert_eq!(size.suspects.len(), 1, "{by}");
        assert_eq!((size.suspects[0].which, size.suspects[0].slip), (Which::Reading(3), slip));
        assert!((size.corrected[3].get::<millimeter>() - 80.061 - by).abs() < 1e-9);
    }
    assert!(off(0.002).suspects.is_empty());
}

/// Three depths along and across the key, in micrometres over 80 mm.
fn three_by_two(over: [[f64; 2]; 3]) -> Size {
    let readings =
        [10.0, 45.0, 80.0].into_iter().zip(over).flat_map(|(station, [along, across])| {
            [(Direction::AlongKey, along), (Direction::AcrossKey, across)].map(
                |(direction, over)| Reading { direction, ..at(station, 0.0, 80.0 + over / 1e3) },
            )
        });
    sized(readings.collect())
}

#[test]
fn a_station_read_elsewhere_is_named_as_one() {
    let size = three_by_two([[12.0, 14.0], [13.0, 15.0], [85.0, 84.0]]);
    assert_eq!(size.suspects.len(), 1);
    assert_eq!((size.suspects[0].which, size.suspects[0].slip), (Which::Station(4), None));
    let turned = three_by_two([[12.0, 14.0], [513.0, 515.0], [13.0, 14.0]]);
    assert_eq!(turned.suspects[0].which, Which::Station(2));
    assert_eq!(turned.suspects[0].slip, Some(Slip::MetricTurn));
}

#[test]
fn swapped_directions_are_named() {
    let size = three_by_two([[2.0, 14.0], [3.0, 15.0], [14.0, 2.0]]);
    assert_eq!(size.suspects.len(), 1);
    assert_eq!(
        (size.suspects[0].which, size.suspects[0].slip),
        (Which::Station(4), Some(Slip::Swapped))
    );
    // No clearer than the ± of the readings: nothing is said.
    assert!(three_by_two([[2.0, 5.0], [3.0, 6.0], [6.0, 3.0]]).suspects.is_empty());
}

#[test]
fn two_readings_cannot_tell_which_and_a_drawing_shows_a_shared_slip() {
    let two = sized(vec![at(10.0, 0.0, 80.06), at(10.0, 90.0, 80.56)]);
    assert_eq!(two.suspects[0].which, Which::OneOfTwo);
    assert_eq!(two.suspects[0].slip, Some(Slip::MetricTurn));
    let readings = vec![at(10.0, 0.0, 80.56), at(10.0, 90.0, 80.562), at(50.0, 0.0, 80.561)];
    let all = Measurement { nominal: Some(mm(80.06)), ..Measurement::plain(readings) };
    let suspects = all.size().unwrap().suspects;
    assert_eq!((suspects.len(), suspects[0].which), (1, Which::All));
}

/// Readings of another bore agree among themselves; the drawing tells.
#[test]
fn readings_of_another_bore_are_named_by_the_drawing() {
    let readings = |sizes: &[f64]| {
        let each = sizes.iter().enumerate();
        let directions = [0.0, 90.0];
        let at = |(place, size): (usize, &f64)| {
            at(if place < 2 { 10.0 } else { 50.0 }, directions[place % 2], *size)
        };
        each.map(at).collect()
    };
    let on_80 = |sizes: &[f64]| {
        let measurement = Measurement::plain(readings(sizes));
        let suspects =
            Measurement { nominal: Some(mm(80.0)), ..measurement }.size().unwrap().suspects;
        suspects.into_iter().map(|suspect| suspect.which).collect::<Vec<_>>()
    };
    let half = on_80(&[80.000, 80.001, 65.010, 65.012]);
    assert_eq!(half, [Which::Far(2), Which::Far(3)]);
    assert_eq!(on_80(&[65.010, 65.012, 65.011]), [Which::All]);
    assert_eq!(on_80(&[83.050]), [Which::All]);
    assert!(on_80(&[79.25, 79.251, 79.252]).is_empty(), "worn, but a shaft still");
}

#[test]
fn barrel_and_waist_need_to_be_larger_than_their_spread() {
    let profile = |middle| {
        let ends = [at(0.0, 0.0, 80.0), at(50.0, 0.0, 80.0 + middle), at(100.0, 0.0, 80.0)];
        sized(ends.to_vec()).bow.unwrap().profile()
    };
    assert_eq!(profile(0.010), Profile::Barrel);
    assert_eq!(profile(-0.010), Profile::Waist);
    assert_eq!(profile(0.002), Profile::Straight);
}

#[test]
fn what_is_no_reading_is_refused() {
    assert_eq!(Measurement::plain(vec![]).size(), Err(SizeError::Empty));
    for bad in [at(0.0, 0.0, f64::NAN), at(0.0, 0.0, -1.0), at(f64::INFINITY, 0.0, 80.0)] {
        let error = Measurement::plain(vec![at(0.0, 0.0, 80.0), bad]).size().unwrap_err();
        assert!(matches!(error, SizeError::Reading { index: 1, .. }), "{error}");
    }
}

proptest! {
    /// Turning the hub on the bench (all directions by one angle) changes no size and no form.
    #[test]
    fn turning_the_part_changes_nothing(turn in -720.0..720.0_f64) {
        let plain = sized(shaped(&[0.0, 40.0, 100.0], &[0.0, 60.0, 120.0], 0.0));
        let turned = sized(shaped(&[0.0, 40.0, 100.0], &[0.0, 60.0, 120.0], turn));
        prop_assert!((plain.mean.value - turned.mean.value).abs() < Length::from_si(1e-12));
        let over = |size: &Size| microns(size.taper.unwrap().over_span.value);
        prop_assert!((over(&plain) - over(&turned)).abs() < 1e-6);
        let round = |size: &Size| microns(size.roundness.unwrap().out_of_round.value);
        prop_assert!((round(&plain) - round(&turned)).abs() < 1e-6);
    }

    /// Reading from the other face turns the taper's sign and nothing else.
    #[test]
    fn reading_from_the_other_face_mirrors_the_taper(sizes in prop::collection::vec(79.9..80.1_f64, 4)) {
        let from = |mirror: bool| {
            let readings = sizes.iter().zip([0.0, 30.0, 70.0, 100.0]).map(|(&size, station)| {
                at(if mirror { 100.0 - station } else { station }, 0.0, size)
            });
            sized(readings.collect())
        };
        let (near, far) = (from(false), from(true));
        let over = |size: &Size| microns(size.taper.unwrap().over_span.value);
        prop_assert!((over(&near) + over(&far)).abs() < 1e-6);
        let bow = |size: &Size| microns(size.bow.unwrap().middle_over_ends.value);
        prop_assert!((bow(&near) - bow(&far)).abs() < 1e-6);
    }

    /// The same readings in inches give the same size.
    #[test]
    fn inches_and_millimetres_agree(sizes in prop::collection::vec(3.0..3.2_f64, 1..7)) {
        let read = |make: &dyn Fn(f64) -> Length| {
            let reading = |(i, &size): (usize, &f64)| Reading { size: make(size), ..at(count_of(i), 0.0, 1.0) };
            sized(sizes.iter().enumerate().map(reading).collect()).mean.value
        };
        let difference = read(&Length::new::<inch>) - read(&|size| mm(size * 25.4));
        prop_assert!(difference.abs() < Length::from_si(1e-14));
    }
}
