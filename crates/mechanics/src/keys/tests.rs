//! Worked keys of the handbooks.

use super::room::{TopSizes, across_keyway, chord_height, leaning, side_fit, top_clearance};
use super::*;
use crate::Estimate;
use proptest::prelude::*;
use uom::si::length::{inch, millimeter};
use uom::si::pressure::{megapascal, psi};
use uom::si::torque::{newton_meter, pound_force_inch};

fn mm(mm: f64) -> Length {
    Length::new::<millimeter>(mm)
}

fn inches(inches: f64) -> Length {
    Length::new::<inch>(inches)
}

fn key(width: f64, height: f64, length: f64, ends: Ends) -> Key {
    let depth = Depth::HalfHeight;
    Key { width: mm(width), height: mm(height), length: mm(length), ends, depth }
}

fn close(found: f64, wanted: f64, half_digit: f64) {
    assert!((found - wanted).abs() <= half_digit, "{found} for {wanted}");
}

/// Mott, *Machine Elements in Mechanical Design*, ch. 11, exercise 1: 4.67 in and 3.27 in with
/// design factor 3 and shear yield 0.5; shear and bearing give the same for a square key.
#[test]
fn mott_keys_need_their_printed_length() {
    let square = Key {
        width: inches(0.5),
        height: inches(0.5),
        length: inches(1.0),
        ends: Ends::Square,
        depth: Depth::HalfHeight,
    };
    for (yield_psi, length) in [(54_000.0, 4.67), (77_000.0, 3.27)] {
        let yields = Pressure::new::<psi>(yield_psi);
        let strength = Strength::from_yield(yields, yields, ShearYield::GreatestShear);
        let torque = Torque::new::<pound_force_inch>(21_000.0);
        let needed = needed_length(square, Keys::One, torque, inches(2.0), strength, 3.0).unwrap();
        close(needed.shear.get::<inch>(), length, 0.005);
        close(needed.bearing.get::<inch>(), length, 0.005);
    }
}

/// Khurmi and Gupta, *A Textbook of Machine Design*, Example 13.1 (from memory): key 16 × 10 on 50 mm
/// as strong as the shaft, 42 and 70 MPa; the book rounds the torque to 1.03 kN·m and prints 61.31
/// and 117.7 mm, 0.1 % short of the exact 61.36 and 117.8.
#[test]
fn khurmi_key_is_as_strong_as_the_shaft() {
    let stress = Pressure::new::<megapascal>;
    let strength = Strength { shear: stress(42.0), bearing: stress(70.0) };
    let needed = |torque| {
        let torque = Torque::new::<newton_meter>(torque);
        let key = key(16.0, 10.0, 1.0, Ends::Square);
        needed_length(key, Keys::One, torque, mm(50.0), strength, 1.0).unwrap()
    };
    close(needed(1030.0).shear.get::<millimeter>(), 61.31, 0.005);
    close(needed(1030.0).bearing.get::<millimeter>(), 117.7, 0.05);
    let exact = std::f64::consts::PI / 16.0 * 42e6 * 0.05_f64.powi(3);
    close(needed(exact).longest().get::<millimeter>(), 117.81, 0.005);
}

/// A square key of 15 mm, 90 long, on 60 mm at 1200 N·m, by hand: 40 kN, 29.63 and 59.26 MPa,
/// safety 11.81 and 7.17 against 350 and 425 MPa.
#[test]
fn a_square_key_by_hand() {
    let torque = Torque::new::<newton_meter>(1200.0);
    let load = loaded(key(15.0, 15.0, 90.0, Ends::Square), Keys::One, torque, mm(60.0)).unwrap();
    close(load.force.si(), 40_000.0, 1e-6);
    close(load.shear.get::<megapascal>(), 29.63, 0.005);
    close(load.bearing.get::<megapascal>(), 59.26, 0.005);
    let stress = Pressure::new::<megapascal>;
    let safety = load.safety(Strength { shear: stress(350.0), bearing: stress(425.0) }).unwrap();
    close(safety.shear, 11.81, 0.005);
    close(safety.bearing, 7.17, 0.005);
    close(safety.least(), 7.17, 0.005);
}

/// ISO/R 773, key 22 × 14 on 80 mm: 9 mm in the shaft leaves 5 mm in the hub, which bears least.
#[test]
fn ends_and_depth_take_their_part() {
    assert_eq!(key(22.0, 14.0, 90.0, Ends::BothRound).straight(), mm(68.0));
    assert_eq!(key(22.0, 14.0, 90.0, Ends::OneRound).straight(), mm(79.0));
    let depth = Depth::ShaftKeyway(mm(9.0));
    let deep = Key { depth, ..key(22.0, 14.0, 90.0, Ends::Square) };
    close(deep.bearing_depth().get::<millimeter>(), 5.0, 1e-9);
    let short = key(22.0, 14.0, 22.0, Ends::BothRound);
    let torque = Torque::from_si(1.0);
    assert_eq!(loaded(short, Keys::One, torque, mm(80.0)), Err(KeyError::Key(short)));
}

/// Two keys count as one and a half (DIN 6892, from memory); 0.577 is 1/√3 to three digits.
#[test]
fn two_keys_never_share_evenly() {
    let torque = Torque::from_si(1500.0);
    let force = |keys| {
        loaded(key(22.0, 14.0, 90.0, Ends::Square), keys, torque, mm(80.0)).unwrap().force.si()
    };
    close(force(Keys::One), 37_500.0, 1e-6);
    close(force(Keys::Two), 25_000.0, 1e-6);
    close(ShearYield::DistortionEnergy.ratio(), 1.0 / 3.0_f64.sqrt(), 0.0005);
}

#[test]
fn friction_first_takes_what_it_holds() {
    let nm = Torque::new::<newton_meter>;
    assert_eq!(Sharing::KeyAlone.share(nm(500.0)), nm(500.0));
    assert_eq!(Sharing::AfterFriction(nm(200.0)).share(nm(500.0)), nm(300.0));
    assert_eq!(Sharing::AfterFriction(nm(900.0)).share(nm(500.0)), nm(0.0));
}

/// ANSI B17.1, depth control formulas (from memory), worked apart from this program to six digits:
/// Y, S, T for square and rectangular keys.
#[test]
fn inch_keyways_have_their_depth() {
    #[rustfmt::skip]
    let printed = [
        // shaft, width, height | Y, S, T (in)
        (1.0,   0.25,  0.25,  0.015_877_1, 0.859_123, 1.114_12),
        (1.625, 0.375, 0.375, 0.021_930_6, 1.415_57,  1.795_57),
        (2.0,   0.5,   0.5,   0.031_754_2, 1.718_25,  2.223_25),
        (2.875, 0.75,  0.75,  0.049_774_8, 2.450_23,  3.205_23),
        (4.0,   1.0,   1.0,   0.063_508_3, 3.436_49,  4.441_49),
        (2.0,   0.5,   0.375, 0.031_754_2, 1.780_75,  2.160_75),
        (3.0,   0.75,  0.5,   0.047_631_2, 2.702_37,  3.207_37),
    ];
    for (shaft, width, height, chord, across_shaft, across_hub) in printed {
        let y = chord_height(inches(shaft), inches(width)).unwrap();
        close(y.get::<inch>(), chord, 5e-8);
        let across = across_keyway(inches(shaft), inches(width), inches(height)).unwrap();
        close(across.shaft.get::<inch>(), across_shaft, 5e-6);
        close(across.hub.get::<inch>(), across_hub, 5e-6);
        let exact = Estimate::exact;
        let room = top_clearance(TopSizes {
            hub_across: exact(across.hub),
            bore: exact(inches(shaft)),
            shaft_across: exact(across.shaft),
            shaft: exact(inches(shaft)),
            key_height: exact(inches(height)),
        });
        close(room.unwrap().clearance.value.get::<inch>(), 0.005, 1e-9);
    }
}

/// ANSI/AGMA 9002-B04, bore and keyway table: T of interference bores, three decimals. The room over
/// a key there is that of ANSI B17.1.
#[test]
fn coupling_bores_have_the_same_keyway() {
    let printed = [
        (1.1875, 0.25, 1.304),
        (1.3125, 0.3125, 1.455),
        (1.375, 0.3125, 1.518),
        (1.5, 0.375, 1.669),
    ];
    for (bore, width, hub) in printed {
        let across = across_keyway(inches(bore), inches(width), inches(width)).unwrap();
        close(across.hub.get::<inch>(), hub, 0.0005);
    }
}

/// DIN 6885-1: 50 mm takes a 14 × 9 key with 53.8 and 44.5 across, so 0.3 mm over the key.
#[test]
fn room_over_a_metric_key() {
    let size = |value| Estimate::new(mm(value), mm(0.02));
    let sizes = TopSizes {
        hub_across: size(53.8),
        bore: size(50.0),
        shaft_across: size(44.5),
        shaft: size(50.0),
        key_height: size(9.0),
    };
    let room = top_clearance(sizes).unwrap().clearance;
    close(room.value.get::<millimeter>(), 0.3, 1e-9);
    close(room.plus_minus.get::<millimeter>(), 0.02 * 3.5_f64.sqrt(), 1e-9);
    let tight = side_fit(size(13.97), size(14.0)).unwrap();
    assert!(tight.play.value < Length::default());
}

/// By hand: 0.03 of play in the hub, a key tight in the shaft, keyways that lean 0.02 against each
/// other: 0.01 is left; leaning the same way they leave it all.
#[test]
fn leaning_keyways_take_side_play() {
    let size = |value| Estimate::exact(mm(value));
    let hub = side_fit(size(22.03), size(22.0)).unwrap();
    let shaft = side_fit(size(21.99), size(22.0)).unwrap();
    let room = |hub_twist, shaft_twist| {
        leaning(hub, shaft, size(hub_twist), size(shaft_twist)).unwrap().room.value
    };
    close(room(0.01, -0.01).get::<millimeter>(), 0.01, 1e-9);
    close(room(0.02, 0.02).get::<millimeter>(), 0.03, 1e-9);
    close(room(0.05, 0.0).get::<millimeter>(), -0.02, 1e-9);
    assert!(leaning(hub, shaft, size(f64::NAN), size(0.0)).is_err());
}

proptest! {
    /// A key as long as was needed has the safety that was asked for.
    #[test]
    fn needed_length_and_safety_agree(
        torque in 10.0..5000.0_f64, width in 4.0..40.0_f64, tall in 0.5..1.0_f64,
        shaft in 2.5..5.0_f64, safety in 1.0..4.0_f64,
    ) {
        let (shaft, torque) = (mm(width * shaft), Torque::from_si(torque));
        let yields = Pressure::new::<megapascal>(360.0);
        let strength = Strength::from_yield(yields, yields, ShearYield::DistortionEnergy);
        let section = key(width, width * tall, 1.0, Ends::BothRound);
        let needed = needed_length(section, Keys::Two, torque, shaft, strength, safety).unwrap();
        let long = Key { length: needed.longest() + section.width, ..section };
        let found = loaded(long, Keys::Two, torque, shaft).unwrap().safety(strength).unwrap();
        prop_assert!((found.least() / safety - 1.0).abs() < 1e-9);
    }
}
