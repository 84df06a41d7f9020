//! What the tables answer against the figures as published, copied into the files beside this one
//! with their sources, and against the rules that the publications state.

mod agma_9002;
mod alignment;
mod ansi_b4_1;
mod bolts;
mod iso_286;
mod keys;
mod materials;
mod practice;

use quantities::Length;
use toml::Value;
use uom::si::length::{inch, micrometer, millimeter};

/// The rows of one table of a file of published figures.
fn rows(file: &str, table: &str) -> Vec<Vec<Value>> {
    let file: toml::Table = file.parse().expect("the file of published figures reads");
    let rows = file[table]["rows"].as_array().expect("rows").clone();
    assert!(!rows.is_empty(), "{table}");
    rows.into_iter().map(|row| row.as_array().expect("a row").clone()).collect()
}

fn number(value: &Value) -> f64 {
    number_or_dash(value).expect("a number")
}

/// `None` where the publication prints a dash.
fn number_or_dash(value: &Value) -> Option<f64> {
    match value {
        Value::Integer(whole) => Some(f64::from(i32::try_from(*whole).expect("a small number"))),
        Value::Float(number) => Some(*number),
        Value::String(dash) if dash == "-" => None,
        other => panic!("{other:?} is no number"),
    }
}

fn text(value: &Value) -> &str {
    value.as_str().expect("text")
}

fn mm(size: f64) -> Length {
    Length::new::<millimeter>(size)
}

fn inches(size: f64) -> Length {
    Length::new::<inch>(size)
}

fn um(length: Length) -> f64 {
    length.get::<micrometer>()
}

/// A table looked up must give the very figure; what is left is the rounding of the unit.
fn same(found: f64, printed: f64, what: &str) {
    assert!(
        (found - printed).abs() <= 1e-6 * printed.abs().max(1.0),
        "{what}: {found} for {printed}"
    );
}
