//! Single figures that a job is held to: soft foot, closure, pipe strain, runout, end float.
//!
//! They are for machines whose makers say nothing else.
//!
//! Not here: alignment by speed ([`crate::alignment`]).

use quantities::{Angle, Basis, Length, Source};
use uom::si::length::millimeter;

use crate::si::{inches, millimetres, milliradians};
use crate::step::{Row, row};

/// A figure with its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// No more than this.
    pub most: Length,
    /// Where it comes from.
    pub source: Source,
}

const fn most(most: Length, source: Source) -> Limit {
    Limit { most, source }
}

const API_686: Source =
    Source::new("API RP 686, 2nd ed. (2009)", "ch. 4 and 7, in a summary", Basis::Read);

/// A foot may rise so far when its bolt is loosened.
pub const SOFT_FOOT: Limit =
    most(millimetres(0.05), Source::common_practice("soft foot: no more than 0.05 mm (0.002 in)"));
/// A foot may rise so far in a strict shop.
pub const SOFT_FOOT_STRICT: Limit = most(
    inches(0.001),
    Source::common_practice("soft foot: more than 0.001 in calls for correction"),
);

/// The sums of opposite readings of one sweep may differ by so much.
pub const CLOSURE: Limit = most(
    inches(0.002),
    Source::new("US Bureau of Reclamation, FIST 2-1", "runout worksheet, p. 22", Basis::Read),
);

/// The shaft may move so far, up or sideways, as the pipes are bolted up.
pub const PIPE_STRAIN: Limit = most(millimetres(0.05), API_686);
/// The same, as a textbook has it.
pub const PIPE_STRAIN_TEXTBOOK: Limit = most(
    inches(0.003),
    Source::new(
        "Bloch and Geitner, Machinery Component Maintenance and Repair",
        "p. 173",
        Basis::Read,
    ),
);
/// Bolt holes of a pipe flange may be off by so much.
pub const PIPE_BOLT_HOLES: Limit = most(millimetres(1.5), API_686);
/// The gap between pipe flanges may differ from the gasket's thickness by so much.
pub const PIPE_GAP: Limit = most(millimetres(1.5), API_686);

/// Pipe flanges may be out of parallel by so much, by their outside diameter: 0.25 mm under
/// 250 mm, then 0.01 mm a centimetre, never more than 0.75 mm. `None` unless the diameter is a
/// positive length.
///
/// # Source
/// API RP 686, in a summary.
/// # Example
/// ```
/// use quantities::Length;
/// use uom::si::length::millimeter;
/// let limit = tables::limits::pipe_parallelism(Length::new::<millimeter>(400.0)).unwrap();
/// assert_eq!(format!("{:.2}", limit.most.get::<millimeter>()), "0.40");
/// ```
pub fn pipe_parallelism(outside: Length) -> Option<Limit> {
    let outside_mm = outside.get::<millimeter>();
    let usable = outside_mm.is_finite() && outside_mm > 0.0;
    let allowed = if outside_mm < 250.0 { 0.25 } else { (0.001 * outside_mm).min(0.75) };
    usable.then(|| most(Length::new::<millimeter>(allowed), API_686))
}

/// Total runout of a hub's rim.
pub const HUB_RIM_RUNOUT: Limit =
    most(millimetres(0.05), Source::new("common practice", "hub runout", Basis::Memory));
/// Total runout of a hub's face.
pub const HUB_FACE_RUNOUT: Limit = HUB_RIM_RUNOUT;

#[rustfmt::skip]
const SHAFT_RUNOUT: [Row<f64>; 12] = [
    // shaft over, to (mm) | total runout midway along the extension (mm)
    (  6.0,  10.0, 0.030), ( 10.0,  18.0, 0.035), ( 18.0,  30.0, 0.040), ( 30.0,  50.0, 0.050),
    ( 50.0,  80.0, 0.060), ( 80.0, 120.0, 0.070), (120.0, 180.0, 0.080), (180.0, 250.0, 0.090),
    (250.0, 315.0, 0.100), (315.0, 400.0, 0.110), (400.0, 500.0, 0.125), (500.0, 630.0, 0.140),
];

/// Total runout of a motor's shaft extension, midway along it; `None` outside over 6 up to 630 mm.
///
/// # Source
/// ANSI/EASA AR100-2015, Table 2-4 (IEC foot- and flange-mounted machines).
/// # Example
/// ```
/// use quantities::Length;
/// use uom::si::length::millimeter;
/// let limit = tables::limits::shaft_runout(Length::new::<millimeter>(80.0)).unwrap();
/// assert_eq!(format!("{:.3}", limit.most.get::<millimeter>()), "0.060");
/// ```
pub fn shaft_runout(diameter: Length) -> Option<Limit> {
    let source = Source::new("ANSI/EASA AR100-2015", "Table 2-4", Basis::Read);
    let allowed = row(&SHAFT_RUNOUT, diameter.get::<millimeter>())?;
    Some(most(Length::new::<millimeter>(*allowed), source))
}

/// A feeler that must not go in all round between two rigid flanges brought together.
pub const RIGID_FLANGE_FEELER: Limit = most(
    millimetres(0.05),
    Source::new("US Army TM 55-1905-220-14-4", "flange coupling: 0.002 in", Basis::Read),
);

/// Slope between the planes of flexing that running machines are held to at any speed.
pub const FLEX_PLANES: Angle = milliradians(0.5);
/// Where [`FLEX_PLANES`] comes from.
pub const FLEX_PLANES_SOURCE: Source = Source::new(
    "API RP 686, 2nd ed. (2009)",
    "ch. 7, 5.4.6.2 as quoted: 0.5 mil per inch between flex planes",
    Basis::Read,
);

/// Rotor end float of a sleeve-bearing motor and the most that its coupling may leave: small
/// motors (about 125 to 450 hp), then large ones.
pub const END_FLOAT: [(Length, Length); 2] =
    [(inches(0.25), inches(0.09)), (inches(0.50), inches(0.19))];
/// Where [`END_FLOAT`] comes from.
pub const END_FLOAT_SOURCE: Source = Source::new("NEMA MG 1", "part 20", Basis::Memory);

/// A key need be no longer than so many shaft diameters.
pub const KEY_LENGTH: f64 = 1.5;
/// Where [`KEY_LENGTH`] comes from.
pub const KEY_LENGTH_SOURCE: Source =
    Source::new("Shigley’s Mechanical Engineering Design, 9th ed.", "p. 391", Basis::Read);

/// Vertical sets on one thrust bearing: the orbit's diameter is at most this, times the shaft's
/// length from the bearing to the reading, divided by the diameter of the thrust runner.
pub const VERTICAL_ORBIT: Limit = most(inches(0.002), RECLAMATION);
/// Vertical sets: no point of the shaft's line further than this from the straight line.
pub const VERTICAL_STRAIGHTNESS: Limit = most(inches(0.003), RECLAMATION);
/// Vertical sets: the centre of runout may lean by this part of the length between readings.
pub const VERTICAL_PLUMB: f64 = 0.000_025;
const RECLAMATION: Source =
    Source::new("US Bureau of Reclamation, FIST 2-1 (2000)", "Table 1", Basis::Read);
