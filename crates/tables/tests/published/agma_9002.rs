//! ANSI/AGMA 9002: bores and keyways as printed, and their T against the formula of ANSI B17.1.

use tables::agma_9002::{Fit, bore, keyway};
use tables::ansi_b17_1::{ALLOWANCE, Shape, key_for};
use uom::si::length::inch;

use super::{inches, number, rows, same};

const FILE: &str = include_str!("agma_9002.toml");

#[test]
fn bores_and_keyways_are_as_printed() {
    for row in rows(FILE, "bores") {
        let nominal = number(&row[0]);
        let size = |deviation: quantities::Length| nominal + deviation.get::<inch>();
        let clearance = bore(inches(nominal), Fit::Clearance).unwrap();
        let interference = bore(inches(nominal), Fit::Interference).unwrap();
        let keyway = keyway(inches(nominal)).unwrap();
        let found = [
            size(clearance.lower),
            size(clearance.upper),
            size(interference.lower),
            size(interference.upper),
            keyway.width.get::<inch>(),
            keyway.across.get::<inch>(),
        ];
        for (found, printed) in found.into_iter().zip(&row[1..]) {
            same(found, number(printed), &format!("bore {nominal}"));
        }
    }
}

/// T = D − Y + H/2 + C with the square key of ANSI B17.1 reproduces every printed T to half its
/// last digit, and the keyway is the key's width to four decimals.
#[test]
fn keyways_belong_to_the_square_keys_of_the_other_standard() {
    for row in rows(FILE, "bores") {
        let nominal = number(&row[0]);
        let key = key_for(inches(nominal), Shape::Square).unwrap();
        let (w, h) = (key.width.get::<inch>(), key.height.get::<inch>());
        let y = f64::midpoint(nominal, -(nominal * nominal - w * w).sqrt());
        let t = nominal - y + h / 2.0 + ALLOWANCE.get::<inch>();
        assert!((t - number(&row[6])).abs() <= 0.5e-3, "T of {nominal}: {t}");
        assert!((w - number(&row[5])).abs() <= 0.5e-4 + 1e-9, "width of {nominal}: {w}");
    }
}

#[test]
fn other_bores_have_no_answer() {
    for nominal in [0.374, 1.501, 0.0, f64::NAN] {
        assert!(bore(inches(nominal), Fit::Clearance).is_none(), "{nominal}");
    }
    assert!(bore(inches(1.4), Fit::Clearance).is_some());
    assert!(keyway(inches(1.4)).is_none());
}
