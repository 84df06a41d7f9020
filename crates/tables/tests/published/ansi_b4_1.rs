//! ANSI B4.1: every row, spot limits, published answers, and the rules that bind the rows.

use tables::ansi_b4_1::Class;
use tables::fits::Zones;
use uom::si::length::mil;

use super::{inches, number, rows, same, text};

const FILE: &str = include_str!("ansi_b4_1.toml");

fn zones(class: &str, size: f64) -> Option<Zones> {
    class.parse::<Class>().expect(class).zones(inches(size)).ok()
}

/// Hole upper, shaft upper, shaft lower.
fn three(zones: &Zones) -> [f64; 3] {
    same(zones.hole.lower.get::<mil>(), 0.0, "hole lower");
    [zones.hole.upper, zones.shaft.upper, zones.shaft.lower].map(|limit| limit.get::<mil>())
}

#[test]
fn rows_are_as_printed() {
    for (table, classes) in
        [("fn", &["FN1", "FN2", "FN3", "FN4", "FN5"][..]), ("ln", &["LN1", "LN2", "LN3"][..])]
    {
        for row in rows(FILE, table) {
            let (over, to) = (number(&row[0]), number(&row[1]));
            for size in [over + 0.001, to] {
                for (class, printed) in classes.iter().zip(&row[2..]) {
                    let found = zones(class, size);
                    let Some(printed) = printed.as_array() else {
                        assert!(found.is_none(), "{class} at {size}");
                        continue;
                    };
                    for (found, printed) in three(&found.unwrap()).into_iter().zip(printed) {
                        same(found, number(printed), &format!("{class} at {size}"));
                    }
                }
            }
        }
    }
}

#[test]
fn lc2_is_as_computed_from_its_definition() {
    for row in rows(FILE, "lc2") {
        let to = number(&row[1]);
        let lc2 = zones("LC2", to).unwrap();
        let [hole, upper, lower] = three(&lc2);
        let (least, greatest) = lc2.interference();
        let found = [hole, lower, -greatest.get::<mil>(), -least.get::<mil>()];
        for (found, printed) in found.into_iter().zip(&row[2..]) {
            same(found, number(printed), &format!("LC2 at {to}"));
        }
        same(upper, 0.0, "LC2 shaft upper");
    }
}

#[test]
fn limits_of_size_are_as_published() {
    for row in rows(FILE, "limits") {
        let (class, size) = (text(&row[0]), number(&row[1]));
        let zones = zones(class, size).unwrap();
        let (least, greatest) = zones.interference();
        let at = |limit: quantities::Length| size + limit.get::<mil>() / 1e3;
        let found = [
            at(zones.hole.lower),
            at(zones.hole.upper),
            at(zones.shaft.lower),
            at(zones.shaft.upper),
            least.get::<mil>() / 1e3,
            greatest.get::<mil>() / 1e3,
        ];
        for (found, printed) in found.into_iter().zip(&row[2..]) {
            same(found, number(printed), &format!("{class} at {size}"));
        }
    }
    for row in rows(FILE, "published") {
        let (class, size) = (text(&row[0]), number(&row[1]));
        let (least, greatest) = zones(class, size).unwrap().interference();
        same(least.get::<mil>(), number(&row[2]) * 1e3, class);
        same(greatest.get::<mil>(), number(&row[3]) * 1e3, class);
    }
}

/// The classes are made of common grades: FN2, FN3 and FN4 share LN2's hole, FN1 has LN1's, and
/// the shaft of FN2 to FN4 is as wide as LN1's hole (a grade finer than its own). The row that is
/// from memory and the cells that were refilled must keep to that too.
#[test]
fn rows_keep_to_the_grades_they_are_made_of() {
    for row in rows(FILE, "fn") {
        let to = number(&row[1]);
        let [ln1_hole, ..] = three(&zones("LN1", to).unwrap());
        let [ln2_hole, ..] = three(&zones("LN2", to).unwrap());
        for class in ["FN1", "FN2", "FN3", "FN4", "FN5"] {
            let Some(fit) = zones(class, to) else { continue };
            let [hole, upper, lower] = three(&fit);
            assert!(lower > 0.0 && upper > lower, "{class} at {to}");
            assert!(fit.interference().0.value >= -1e-12, "{class} at {to} may be loose");
            match class {
                "FN1" => same(hole, ln1_hole, class),
                "FN5" => assert!(hole > ln2_hole),
                _ => {
                    same(hole, ln2_hole, class);
                    assert!((upper - lower - ln1_hole).abs() < 0.11, "{class} at {to}");
                }
            }
        }
    }
}

#[test]
fn beyond_the_table_there_is_no_answer() {
    for (class, size) in [("FN2", 12.42), ("FN3", 0.9), ("LN2", 19.7), ("FN1", 0.0), ("LC2", -1.0)]
    {
        assert!(zones(class, size).is_none(), "{class} at {size}");
    }
    let error = "FN6".parse::<Class>().unwrap_err().to_string();
    assert_eq!(error, "“FN6” is not held; held are LC2, LN1 to LN3 and FN1 to FN5");
}
