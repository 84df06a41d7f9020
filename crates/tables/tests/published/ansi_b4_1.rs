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
    assert!(error.starts_with("“FN6” is not held; held are RC1 to RC9"), "{error}");
    for text in ["RC0", "RC10", "LC12", "LT7", "LN4", "LC+2", "RC", "XY1", ""] {
        assert!(text.parse::<Class>().is_err(), "{text}");
    }
}

/// R. L. Mott, Machine Elements in Mechanical Design, Example Problem 13-1, from memory: RC5 for
/// 2.000 in is a hole of 2.0018/2.0000 and a shaft of 1.9975/1.9963, clearance 0.0025 to 0.0055.
#[test]
fn a_running_fit_comes_out_as_worked() {
    let fit = zones("RC5", 2.0).unwrap();
    for (found, printed) in three(&fit).into_iter().zip([1.8, -2.5, -3.7]) {
        same(found, printed, "RC5 at 2");
    }
    let (least, greatest) = fit.interference();
    same(-greatest.get::<mil>(), 2.5, "least clearance");
    same(-least.get::<mil>(), 5.5, "greatest clearance");
}

/// The classes from memory are made of grades whose holes the tables that were read have too: LN1's
/// is of grade 6, LN2's of grade 7, FN5's of grade 8.
#[test]
fn classes_from_memory_share_the_holes_that_were_read() {
    for row in rows(FILE, "ln").into_iter().skip(1) {
        let to = number(&row[1]);
        let hole = |class: &str| zones(class, to).map(|fit| three(&fit)[0]);
        for (class, read) in [
            ("RC2", "LN1"),
            ("LC1", "LN1"),
            ("RC3", "LN2"),
            ("LC5", "LN2"),
            ("LT1", "LN2"),
            ("LT6", "LN2"),
            ("RC4", "FN5"),
            ("LC3", "FN5"),
            ("LT4", "FN5"),
        ] {
            if let (Some(found), Some(read)) = (hole(class), hole(read)) {
                same(found, read, &format!("hole of {class} at {to}"));
            }
        }
        // LC2 from the tables that were read is LC2 as its grades make it.
        let [_, _, lower] = three(&zones("LC2", to).unwrap());
        same(lower, -hole("LN1").unwrap(), "LC2 shaft");
    }
}

/// What the families promise (ANSI B4.1, descriptions of the fits): RC and LC always leave room,
/// each RC class more than the one before but for the least room of pairs that share a deviation;
/// LT may leave either.
#[test]
fn families_keep_their_promise() {
    for row in rows(FILE, "ln").into_iter().skip(1) {
        let to = number(&row[1]);
        let room = |class: &str| {
            let (least, greatest) = zones(class, to).unwrap().interference();
            (-greatest.get::<mil>(), -least.get::<mil>())
        };
        for number in 1..=9 {
            let (least, greatest) = room(&format!("RC{number}"));
            assert!(least > 0.0 && greatest > least);
            if number < 9 {
                let next = room(&format!("RC{}", number + 1));
                assert!(next.0 >= least - 1e-9 && next.1 > greatest, "RC{number} at {to}");
            }
        }
        for number in 1..=11 {
            let (least, greatest) = room(&format!("LC{number}"));
            assert!(least > -1e-9 && greatest > least, "LC{number} at {to}");
        }
        for number in 1..=6 {
            if let Some(fit) = zones(&format!("LT{number}"), to) {
                let (least, greatest) = fit.interference();
                assert!(least.value < 1e-12 && greatest.value > 0.0, "LT{number} at {to}");
            }
        }
    }
}
