//! Shim packs: exact against going through every pack, and never worse than taking the thickest first.

use lineup::moves::FootPlane;
use lineup::shims::{ShimError, USUAL_MOST, pack, reachable, repack};
use proptest::prelude::*;
use quantities::{Length, Physical};

fn mm(mm: f64) -> Length {
    Length::from_si(mm / 1e3)
}

/// Precut thicknesses sold in inch, common practice; 0.050 and thicker are nominal.
const INCH_STOCK: [f64; 13] =
    [0.001, 0.002, 0.003, 0.004, 0.005, 0.010, 0.015, 0.020, 0.025, 0.050, 0.075, 0.100, 0.125];

/// Precut thicknesses sold in millimetres, from memory.
const METRIC_STOCK: [f64; 11] = [0.025, 0.05, 0.1, 0.2, 0.25, 0.4, 0.5, 0.7, 1.0, 2.0, 3.0];

/// Least deviation (µm) over every pack of at most `most`, and the fewest shims that reach it.
fn by_brute_force(wanted: i64, stock: &[i64], most: usize) -> (i64, usize) {
    fn go(rest: i64, stock: &[i64], left: usize, used: usize, best: &mut (i64, usize)) {
        *best = (*best).min((rest.abs(), used));
        if left == 0 {
            return;
        }
        for (i, shim) in stock.iter().enumerate() {
            go(rest - shim, &stock[i..], left - 1, used + 1, best);
        }
    }
    let mut best = (i64::MAX, 0);
    go(wanted, stock, most, 0, &mut best);
    best
}

fn greedy(wanted: i64, stock: &[i64], most: usize) -> i64 {
    let mut rest = wanted;
    for _ in 0..most {
        match stock.iter().filter(|shim| **shim <= rest).max() {
            Some(shim) => rest -= shim,
            None => break,
        }
    }
    rest
}

#[expect(clippy::cast_precision_loss, reason = "a few thousand")]
fn um(um: i64) -> Length {
    Length::from_si(um as f64 * 1e-6)
}

/// Sizes that somebody may type or that arithmetic may leave: sound, huge, minute, none at all.
fn absurd() -> impl Strategy<Value = Length> {
    prop_oneof![
        any::<f64>(),
        -2.0..2.0_f64,
        prop::sample::select(vec![
            f64::NAN,
            f64::INFINITY,
            f64::NEG_INFINITY,
            9.3e9,
            -9.3e9,
            1e-10
        ]),
        (0_i32..4000).prop_map(|um| f64::from(um) * 1e-6),
    ]
    .prop_map(Length::from_si)
}

/// A few of them.
fn absurd_list(most: usize) -> impl Strategy<Value = Vec<Length>> {
    prop::collection::vec(absurd(), 0..most)
}

proptest! {
    #[test]
    fn absurd_sizes_are_refused_or_answered(
        (wanted, low, high) in (absurd(), absurd(), absurd()),
        lying in prop::option::of(absurd()),
        stock in absurd_list(4),
        there in absurd_list(3),
        most in 0_usize..10,
    ) {
        let sound = |length: Length| length.si().abs() < 1.0;
        if let Ok(found) = pack(wanted, &stock, most) {
            prop_assert!(found.shims.len() <= most && sound(wanted));
            prop_assert!((found.deviation() + wanted - found.total()).si().abs() < 1e-9);
        }
        if let Ok(found) = repack(&there, wanted, &stock, most) {
            prop_assert!(found.pack.shims.len() <= most && there.iter().all(|shim| sound(*shim)));
        }
        let foot = FootPlane { shims: lying, pack: there, ..FootPlane::new("front", mm(300.0)) };
        if let Ok(moves) = reachable(&foot, &stock, most, (low, high)) {
            prop_assert!(sound(low) && sound(high));
            prop_assert!(moves.iter().all(|up| *up >= low - mm(1e-6) && *up <= high + mm(1e-6)));
        }
    }

    #[test]
    fn exact_and_never_worse_than_greedy(
        wanted in 0_i64..3000,
        stock in prop::collection::vec(10_i64..1500, 1..6),
        most in 1_usize..5,
    ) {
        let lengths: Vec<Length> = stock.iter().map(|shim| um(*shim)).collect();
        let found = pack(um(wanted), &lengths, most).unwrap();
        let off_um = (found.deviation().si() * 1e6).abs();
        let (least, fewest) = by_brute_force(wanted, &stock, most);
        prop_assert!((off_um - um(least).si() * 1e6).abs() < 1e-3, "{found:?} for {least}");
        prop_assert_eq!(found.shims.len(), fewest);
        prop_assert!(off_um <= um(greedy(wanted, &stock, most)).si() * 1e6 + 1e-3);
    }

    /// A pack rebuilt from the very shims that it needs changes nothing; any other is no worse
    /// than a new one.
    #[test]
    fn what_lies_there_is_used(wanted in 100_i64..3000, there in prop::collection::vec(0_usize..11, 0..5)) {
        let stock = METRIC_STOCK.map(mm);
        let there: Vec<Length> = there.into_iter().map(|i| stock[i]).collect();
        let new = pack(um(wanted), &stock, USUAL_MOST).unwrap();
        let changed = repack(&there, um(wanted), &stock, USUAL_MOST).unwrap();
        let off = |length: Length| length.si().abs();
        prop_assert!(off(changed.pack.deviation()) <= off(new.deviation()) + 1e-12);
        prop_assert!(changed.pack.shims.len() <= USUAL_MOST);
        let total = |shims: &[Length]| shims.iter().map(|shim| shim.si()).sum::<f64>();
        let kept = total(&there) - total(&changed.take_out);
        prop_assert!((kept + total(&changed.put_in) - changed.pack.total().si()).abs() < 1e-12);
        let again = repack(&new.shims, um(wanted), &stock, USUAL_MOST).unwrap();
        prop_assert!(again.take_out.is_empty() && again.put_in.is_empty());
    }
}

#[test]
fn thin_shims_lie_in_the_middle() {
    let found = pack(mm(3.675), &METRIC_STOCK.map(mm), USUAL_MOST).unwrap();
    assert!(found.deviation().si().abs() < 1e-9, "{found:?}");
    let thickness: Vec<f64> = found.shims.iter().map(|shim| shim.si()).collect();
    let thinnest = thickness.iter().copied().fold(f64::INFINITY, f64::min);
    assert!(thickness[0] > thinnest && thickness[thickness.len() - 1] > thinnest, "{found:?}");
}

/// Every whole thousandth up to a quarter inch can be made of five shims of the inch stock.
#[test]
fn five_inch_shims_make_every_thousandth() {
    let stock = INCH_STOCK.map(|inches| mm(inches * 25.4));
    for mil in 0..=250 {
        let wanted = mm(f64::from(mil) * 0.0254);
        let found = pack(wanted, &stock, USUAL_MOST).unwrap();
        assert!(found.deviation().si().abs() < 2e-9, "{mil} mil: {found:?}");
    }
}

#[test]
fn nonsense_is_refused() {
    assert_eq!(pack(mm(1.0), &[], 5), Err(ShimError::NoStock));
    assert_eq!(pack(mm(1.0), &[mm(1.0)], 0), Err(ShimError::Count(0)));
    assert!(matches!(pack(mm(-1.0), &[mm(1.0)], 5), Err(ShimError::Thickness(_))));
    assert!(matches!(pack(mm(f64::NAN), &[mm(1.0)], 5), Err(ShimError::Thickness(_))));
    assert!(matches!(pack(mm(1.0), &[mm(0.0)], 5), Err(ShimError::Thickness(_))));
    assert_eq!(pack(mm(0.0), &[mm(1.0)], 5).unwrap().shims, []);
}
