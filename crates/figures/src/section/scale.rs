//! Named scales, and the printed rule that shows whether a page came out true.
//!
//! Metric scales follow ISO 5455 with 1:2.5 and 1:4, which shops use beside it; inch scales are
//! the usual fractions of an inch to the inch (common practice).

use quantities::System;

use crate::geometry::{Rect, at};
use crate::ink::{Anchor, Colour, Drawing, NOTE, Stroke, Words, outline};

/// Paper over job, and what it is called.
pub(super) type Scale = (f64, &'static str);

const METRIC: [Scale; 10] = [
    (2.0, "2:1"),
    (1.0, "1:1"),
    (0.5, "1:2"),
    (0.4, "1:2.5"),
    (0.25, "1:4"),
    (0.2, "1:5"),
    (0.1, "1:10"),
    (0.05, "1:20"),
    (0.02, "1:50"),
    (0.01, "1:100"),
];

const INCH: [Scale; 14] = [
    (2.0, "2:1"),
    (1.0, "1:1"),
    (0.75, "3:4"),
    (0.5, "1:2"),
    (0.375, "3:8"),
    (0.25, "1:4"),
    (0.1875, "3:16"),
    (0.125, "1:8"),
    (0.0625, "1:16"),
    (1.0 / 24.0, "1:24"),
    (0.031_25, "1:32"),
    (1.0 / 48.0, "1:48"),
    (0.015_625, "1:64"),
    (1.0 / 96.0, "1:96"),
];

/// From the largest to the smallest.
pub(super) fn scales(system: System) -> &'static [Scale] {
    match system {
        System::Metric => &METRIC,
        System::Inch => &INCH,
    }
}

const HEIGHT: f64 = 1.2;

/// A rule of round length that ends at `right`, its middle at `y`; `longest` on paper, mm.
/// Gives the left end of all it wrote.
pub(super) fn rule(
    drawing: &mut Drawing,
    (right, y): (f64, f64),
    longest: f64,
    scale: f64,
    system: System,
) -> f64 {
    let (unit, name) = match system {
        System::Metric => (1.0, "mm"),
        System::Inch => (25.4, "in"),
    };
    let lengths = [1000.0, 500.0, 200.0, 100.0, 50.0, 20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1];
    let fits = |length: &&f64| **length * unit * scale <= longest;
    let length = lengths.iter().find(fits).copied().unwrap_or(0.1);
    let label = Words::new(format!("{length} {name}"), NOTE);
    let end = right - label.width() - 1.5;
    let width = length * unit * scale;
    let parts = if format!("{length}").contains('5') { 5 } else { 2 };
    for part in 0..parts {
        let share = |k: i32| end - width + width * f64::from(k) / f64::from(parts);
        let bounds = Rect::new(share(part), y - HEIGHT / 2.0, share(part + 1), y + HEIGHT / 2.0);
        let fill = if part % 2 == 0 { Colour::Ink } else { Colour::Metal };
        drawing.shape(&outline(bounds), Some(Stroke::of(0.15)), Some(fill));
    }
    drawing.text(&label, at(end + 1.5, y), Anchor::Start);
    drawing.text(&Words::new("0", NOTE), at(end - width - 1.5, y), Anchor::End).left
}
