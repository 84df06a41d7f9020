//! Shims as they are sold, and how many may lie under one foot.
//!
//! Not here: which to take for a move (`lineup`).

use quantities::{Basis, Length, Power, Source, System};
use uom::si::power::horsepower;

use crate::si::{inches, millimetres};

/// Thicknesses of precut shims, metric.
pub const METRIC: [Length; 11] = [
    millimetres(0.025),
    millimetres(0.05),
    millimetres(0.1),
    millimetres(0.2),
    millimetres(0.25),
    millimetres(0.4),
    millimetres(0.5),
    millimetres(0.7),
    millimetres(1.0),
    millimetres(2.0),
    millimetres(3.0),
];
/// Where the metric thicknesses come from.
pub const METRIC_SOURCE: Source =
    Source::new("common practice", "precut shims, metric", Basis::Memory);

/// Thicknesses of precut shims, inch; from [`NOMINAL_FROM`] on they are to be measured before use.
pub const INCH: [Length; 13] = [
    inches(0.001),
    inches(0.002),
    inches(0.003),
    inches(0.004),
    inches(0.005),
    inches(0.010),
    inches(0.015),
    inches(0.020),
    inches(0.025),
    inches(0.050),
    inches(0.075),
    inches(0.100),
    inches(0.125),
];
/// Where the inch thicknesses come from.
pub const INCH_SOURCE: Source = Source::common_practice("precut shims, inch");

/// Shims of this thickness and more are nominal only.
pub const NOMINAL_FROM: Length = inches(0.050);

/// No more shims than this under one foot, as a strict shop has it.
pub const MOST_STRICT: usize = 3;
/// No more shims than this under one foot, in common practice.
pub const MOST: usize = 5;
/// Where the numbers of shims come from.
pub const MOST_SOURCE: Source =
    Source::common_practice("three shims under a foot by textbooks, five by custom");

/// The pack that a motor starts on, so that it can be lowered later.
///
/// # Source
/// US Bureau of Reclamation, FIST 4-1A, p. 17 (1/8 in); over 250 hp 1/4 in, common practice.
pub fn first_pack(motor: Power) -> Length {
    if motor.get::<horsepower>() > 250.0 { inches(0.250) } else { inches(0.125) }
}

/// Thicknesses in stock, thinnest first.
pub fn stock(system: System) -> &'static [Length] {
    match system {
        System::Metric => &METRIC,
        System::Inch => &INCH,
    }
}
