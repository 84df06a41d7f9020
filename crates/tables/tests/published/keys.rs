//! Parallel keys, metric and inch: every row, the sizes across, the rules of the tolerances.

use quantities::Length;
use tables::ansi_b17_1::{self, ALLOWANCE, Class, S_ZONE, Shape, T_ZONE, height, widths};
use tables::iso_r_773::{self, Seat};
use uom::si::length::{inch, millimeter};

use super::{inches, mm, number, number_or_dash, rows, same, um};

const FILE: &str = include_str!("keys.toml");

fn in_mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn in_inches(length: Length) -> f64 {
    length.get::<inch>()
}

#[test]
fn metric_keys_are_as_printed() {
    for row in rows(FILE, "metric") {
        for shaft in [number(&row[0]) + 0.01, number(&row[1])] {
            let key = iso_r_773::key_for(mm(shaft)).unwrap();
            let found =
                [key.width, key.height, key.shaft_depth, key.hub_depth, key.depth_tolerance];
            for (found, printed) in found.into_iter().zip(&row[2..]) {
                same(in_mm(found), number(printed), &format!("shaft {shaft}"));
            }
            assert_eq!(iso_r_773::key_of(key.width), Some(key));
        }
    }
    for shaft in [6.0, 500.1, 0.0, -30.0, f64::NAN] {
        assert!(iso_r_773::key_for(mm(shaft)).is_none(), "{shaft}");
    }
    assert!(iso_r_773::key_of(mm(7.0)).is_none());
}

/// Two depths together make room for the key and a clearance over it, 0.1 mm to 0.4 mm.
#[test]
fn metric_keyways_leave_room_over_the_key() {
    for row in rows(FILE, "metric") {
        let key = iso_r_773::key_for(mm(number(&row[1]))).unwrap();
        let over = in_mm(key.shaft_depth + key.hub_depth - key.height);
        assert!((0.19..=0.41).contains(&over), "b {}: {over}", number(&row[2]));
    }
}

#[test]
fn keyway_widths_are_as_printed() {
    for row in rows(FILE, "widths") {
        let key = iso_r_773::key_of(mm(number(&row[0]))).unwrap();
        let [tight, normal, free] =
            [Seat::Tight, Seat::Normal, Seat::Free].map(|seat| key.keyway(seat).unwrap());
        assert_eq!(tight.shaft, tight.hub);
        let found = [
            normal.hub.upper,
            tight.shaft.upper,
            tight.shaft.lower,
            normal.shaft.upper,
            normal.shaft.lower,
            free.shaft.upper,
            free.hub.upper,
            free.hub.lower,
        ];
        for (column, (found, printed)) in found.into_iter().zip(&row[1..]).enumerate() {
            same(um(found), number(printed), &format!("b {}, column {column}", number(&row[0])));
        }
        same(um(normal.hub.lower), -number(&row[1]), "JS9 lower");
        same(um(free.shaft.lower), 0.0, "H9 lower");
    }
}

#[test]
fn sizes_across_are_as_printed() {
    for row in rows(FILE, "across") {
        let shaft = mm(number(&row[0]));
        let key = iso_r_773::key_for(shaft).unwrap();
        let found = [
            key.width,
            key.height,
            key.across_hub(shaft),
            key.across_shaft(shaft),
            key.depth_tolerance,
        ];
        for (found, printed) in found.into_iter().zip(&row[1..]) {
            same(in_mm(found), number(printed), &format!("shaft {}", number(&row[0])));
        }
    }
}

#[test]
fn inch_keys_are_as_printed() {
    for row in rows(FILE, "inch") {
        for shaft in [number(&row[0]) + 0.001, number(&row[1])] {
            for (shape, height, depth) in [(Shape::Square, 3, 5), (Shape::Rectangular, 4, 6)] {
                let key = ansi_b17_1::key_for(inches(shaft), shape);
                let what = format!("{shape:?} for {shaft}");
                let (Some(height), Some(depth)) =
                    (number_or_dash(&row[height]), number_or_dash(&row[depth]))
                else {
                    assert!(key.is_none(), "{what}");
                    continue;
                };
                let key = key.unwrap();
                same(in_inches(key.width), number(&row[2]), &what);
                same(in_inches(key.height), height, &what);
                same(in_inches(key.depth), depth, &what);
            }
        }
    }
    for shaft in [0.3125, 30.01, 0.0, f64::NAN] {
        assert!(ansi_b17_1::key_for(inches(shaft), Shape::Square).is_none(), "{shaft}");
    }
}

/// Rules of the table of design fits: the greatest side clearance is the narrowest key in the
/// widest seat; the greatest top clearance adds both depths' tolerances and the allowance to the
/// lowest key, whose height has the tolerance of its width.
#[test]
fn inch_widths_are_as_printed_and_keep_their_rules() {
    let depths = in_inches(T_ZONE.upper - S_ZONE.lower + ALLOWANCE);
    for (table, shape, class) in [
        ("inch_square_class_1", Shape::Square, Class::One),
        ("inch_rectangular_class_1", Shape::Rectangular, Class::One),
        ("inch_class_2", Shape::Square, Class::Two),
        ("inch_class_2", Shape::Rectangular, Class::Two),
    ] {
        for row in rows(FILE, table) {
            for width in [number(&row[0]) + 0.001, number(&row[1])] {
                let found = widths(inches(width), shape, class).unwrap();
                let what = format!("{table}, W {width}");
                same(in_inches(found.seat.upper), number(&row[3]), &what);
                same(in_inches(found.seat.upper - found.key.lower), number(&row[4]), &what);
                if class == Class::One {
                    same(in_inches(found.key.lower), number(&row[2]), &what);
                    let lowest = height(inches(width), shape, class).unwrap().lower;
                    same(depths - in_inches(lowest), number(&row[5]), &what);
                } else {
                    same(in_inches(found.key.upper), number(&row[2]), &what);
                    same(in_inches(found.key.upper - found.seat.lower), number(&row[5]), &what);
                }
            }
        }
    }
    // From memory: key stock, square ones as high as they are wide.
    for (shape, lower, upper) in [(Shape::Square, 0.0, 0.001), (Shape::Rectangular, -0.005, 0.005)]
    {
        let zone = height(inches(0.5), shape, Class::Two).unwrap();
        same(in_inches(zone.lower), lower, "key stock, lower");
        same(in_inches(zone.upper), upper, "key stock, upper");
    }
    assert!(height(inches(3.6), Shape::Square, Class::One).is_none());
    assert!(widths(inches(3.6), Shape::Square, Class::One).is_none());
    assert!(widths(inches(0.0), Shape::Square, Class::One).is_none());
}

/// S and T by the standard's formulas, with the keys looked up here, against the published figures.
#[test]
fn inch_depths_come_out_of_the_keys_held() {
    for row in rows(FILE, "inch_depths") {
        let [shaft, width, height] = [0, 1, 2].map(|column| number(&row[column]));
        let shape = if (width - height).abs() < 1e-9 { Shape::Square } else { Shape::Rectangular };
        let key = ansi_b17_1::key_for(inches(shaft), shape).unwrap();
        same(in_inches(key.width), width, "W");
        same(in_inches(key.height), height, "H");
        let half = in_inches(key.depth);
        let chord = f64::midpoint(shaft, -(shaft * shaft - in_inches(key.width).powi(2)).sqrt());
        let found = [chord, shaft - chord - half, shaft - chord + half + in_inches(ALLOWANCE)];
        for (found, printed) in found.into_iter().zip(&row[3..]) {
            assert!((found - number(printed)).abs() <= 5e-6, "Y, S or T of {shaft}: {found}");
        }
    }
}
