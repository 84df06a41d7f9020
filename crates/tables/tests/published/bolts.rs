//! ISO 898-1 and SAE J429: threads as printed, loads by area times stress, areas by geometry.

use std::f64::consts::PI;

use tables::bolts::{bolt, thread};
use tables::nut_factor::{REUSABLE, Threads, nut_factor};
use uom::si::area::{square_inch, square_millimeter};
use uom::si::force::{newton, pound_force};
use uom::si::length::{inch, millimeter};

use super::{number, rows, same, text};

const FILE: &str = include_str!("bolts.toml");

/// Half the last digit of a figure printed with three significant digits.
fn half_digit(printed: f64) -> f64 {
    0.5 * 10_f64.powf(printed.abs().log10().floor() - 2.0)
}

/// The load is area times stress; the area, printed with three digits, may be off by half of the
/// last, and the printed load by half of its own step.
fn load_agrees(found: f64, printed: f64, half_step: f64, area: f64) -> bool {
    (found - printed).abs() <= half_step + found * half_digit(area) / area
}

#[test]
fn metric_bolts_are_as_printed() {
    for row in rows(FILE, "metric") {
        let name = text(&row[0]);
        let thread = thread(name).unwrap();
        same(thread.diameter.get::<millimeter>(), number(&row[1]), name);
        same(thread.pitch.get::<millimeter>(), number(&row[2]), name);
        same(thread.stress_area.get::<square_millimeter>(), number(&row[3]), name);
        for (class, printed) in ["8.8", "10.9", "12.9"].into_iter().zip(&row[4..]) {
            let load = bolt(&format!("{name} {class}")).unwrap().proof_load().get::<newton>();
            let printed = number(printed);
            assert!(
                load_agrees(load, printed, half_digit(printed), number(&row[3])),
                "{name} {class}: {load} for {printed}"
            );
        }
    }
}

/// The loads are printed in steps of 50 lbf below 10 000 lbf and of 100 lbf beyond.
#[test]
fn inch_bolts_are_as_printed() {
    for row in rows(FILE, "inch") {
        let name = text(&row[0]);
        let thread = thread(name).unwrap();
        same(thread.diameter.get::<inch>(), number(&row[1]), name);
        same(1.0 / thread.pitch.get::<inch>(), number(&row[2]), name);
        same(thread.stress_area.get::<square_inch>(), number(&row[3]), name);
        for (grade, printed) in ["2", "5", "8"].into_iter().zip(&row[4..]) {
            let load = bolt(&format!("{name} grade {grade}")).unwrap().proof_load();
            let (load, printed) = (load.get::<pound_force>(), number(printed));
            let half_step = if printed < 10_000.0 { 25.0 } else { 50.0 };
            assert!((load - printed).abs() <= half_step, "{name} {grade}: {load} for {printed}");
        }
    }
}

/// Thread geometry: A = π/4·(d − 0.9382·P)², metric; the inch series has 0.9743/n, alike. Areas
/// are printed to three digits in mm², in in² to four decimals under 0.2 and to three beyond.
#[test]
fn stress_areas_follow_from_the_thread() {
    for thread in tables::bolts::threads() {
        let metric = thread.name.starts_with('M');
        let (mean_diameter, held, half) = if metric {
            let (d, pitch) =
                (thread.diameter.get::<millimeter>(), thread.pitch.get::<millimeter>());
            let held = thread.stress_area.get::<square_millimeter>();
            (d - 0.9382 * pitch, held, half_digit(held))
        } else {
            let (d, pitch) = (thread.diameter.get::<inch>(), thread.pitch.get::<inch>());
            let held = thread.stress_area.get::<square_inch>();
            (d - 0.9743 * pitch, held, if held < 0.2 { 0.5e-4 } else { 0.5e-3 })
        };
        let area = PI / 4.0 * mean_diameter * mean_diameter;
        assert!((area - held).abs() <= half, "{}: {area} for {held}", thread.name);
    }
}

/// Breaking loads of ISO 898-1 are area times tensile strength, 800 (830 over M16), 1040 and
/// 1220 N/mm²; so they check the areas, those of M30 and M36 too.
#[test]
fn areas_agree_with_the_breaking_loads() {
    for row in rows(FILE, "metric_breaking") {
        let thread = thread(text(&row[0])).unwrap();
        let area = thread.stress_area.get::<square_millimeter>();
        let first = if thread.diameter.get::<millimeter>() > 16.5 { 830.0 } else { 800.0 };
        for (strength, printed) in [first, 1040.0, 1220.0].into_iter().zip(&row[1..]) {
            let load = area * strength;
            assert!(
                load_agrees(load, number(printed), half_digit(number(printed)), area),
                "{}: {load}",
                thread.name
            );
        }
    }
}

/// Worked examples (common practice): T = K·F·d at 75 % of the proof load. 1/2-13 and 3/4-10 of
/// grade 2, dry, as printed in a bolt torque table: 5853 and 13 778 lbf, 48.8 and 172 lbf·ft;
/// M16 8.8, dry, 218.4 N·m.
#[test]
fn torques_of_a_printed_table_come_out() {
    for (text, preload, torque) in
        [("1/2-13 grade 2", 5853.0, 48.8), ("3/4-10 grade 2", 13_778.0, 172.0)]
    {
        let bolt = bolt(text).unwrap();
        let found = REUSABLE * bolt.proof_load().get::<pound_force>();
        assert!((found - preload).abs() <= 0.6, "{text}: {found}");
        let found = nut_factor(Threads::Dry) * found * bolt.thread.diameter.get::<inch>() / 12.0;
        assert!((found - torque).abs() <= 0.5, "{text}: {found}");
    }
    let bolt = bolt("M16 8.8").unwrap();
    let load = REUSABLE * bolt.proof_load().get::<newton>();
    let torque = nut_factor(Threads::Dry) * load * bolt.thread.diameter.get::<millimeter>() / 1e3;
    assert!((torque / 218.4 - 1.0).abs() < 0.001, "{torque}");
}
