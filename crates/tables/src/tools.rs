//! What a tool crib has: ranges of micrometers, bore gauges, torque wrenches and feelers.
//!
//! Ranges as they are usually sold (common practice, from memory); a shop's own may differ.

use quantities::{Basis, Kind, Length, Source, System, Torque, Value};

use crate::si::{inches, millimetres, newton_metres, pound_feet};

/// Where the ranges come from.
pub const SOURCE: Source =
    Source::new("common practice", "measuring tools as usually sold", Basis::Memory);

/// What a tool spans.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range<Q> {
    /// From this.
    pub from: Q,
    /// To this.
    pub to: Q,
    /// The units that it is marked in.
    pub system: System,
}

impl Range<Length> {
    /// As it is marked: "75 to 100 mm".
    pub fn show(&self) -> String {
        let (scale, decimals) = match self.system {
            System::Metric => (1e-3, 2),
            System::Inch => (0.0254, 4),
        };
        let number = |length: Length| {
            let text = format!("{:.decimals$}", length.value / scale);
            text.trim_end_matches('0').trim_end_matches('.').to_owned()
        };
        let unit = Kind::Length.unit(self.system).name();
        format!("{} to {} {unit}", number(self.from), number(self.to))
    }
}

impl Range<Torque> {
    /// As it is marked: "40 to 200 N·m".
    pub fn show(&self) -> String {
        let whole = |torque| Value::new(Kind::Torque, torque);
        format!("{} to {}", whole(self.from).digits(self.system), whole(self.to).show(self.system))
    }
}

/// The outside micrometer for a size: 0 to 25 mm and on in steps of 25 mm to 600 mm, or 0 to 1 in
/// and on in inches to 24 in. `None` beyond that.
///
/// # Example
/// ```
/// use quantities::{Length, System};
/// use tables::tools::micrometer_for;
/// use uom::si::length::millimeter;
/// let shaft = Length::new::<millimeter>(80.0);
/// assert_eq!(micrometer_for(shaft, System::Metric).unwrap().show(), "75 to 100 mm");
/// assert_eq!(micrometer_for(shaft, System::Inch).unwrap().show(), "3 to 4 in");
/// ```
pub fn micrometer_for(size: Length, system: System) -> Option<Range<Length>> {
    let (step, steps) = match system {
        System::Metric => (millimetres(25.0), 24.0),
        System::Inch => (inches(1.0), 24.0),
    };
    // A size on a step's end is measured with the smaller one; a hair keeps rounding out of it.
    let frames = ((size / step).value - 1e-9).ceil();
    let held = size > Length::default() && (1.0..=steps).contains(&frames);
    held.then(|| Range { from: step * (frames - 1.0), to: step * frames, system })
}

const METRIC_BORES: [(f64, f64); 8] = [
    (6.0, 10.0),
    (10.0, 18.0),
    (18.0, 35.0),
    (35.0, 60.0),
    (50.0, 150.0),
    (100.0, 160.0),
    (160.0, 250.0),
    (250.0, 450.0),
];
const INCH_BORES: [(f64, f64); 7] =
    [(0.2, 0.4), (0.4, 0.7), (0.7, 1.4), (1.4, 2.4), (2.0, 6.0), (6.0, 10.0), (10.0, 16.0)];

/// The two-point bore gauge for a bore; `None` outside 6 to 450 mm, 0.2 to 16 in.
///
/// # Example
/// ```
/// use quantities::{Length, System};
/// use tables::tools::bore_gauge_for;
/// use uom::si::length::millimeter;
/// let bore = Length::new::<millimeter>(80.0);
/// assert_eq!(bore_gauge_for(bore, System::Metric).unwrap().show(), "50 to 150 mm");
/// ```
pub fn bore_gauge_for(bore: Length, system: System) -> Option<Range<Length>> {
    match system {
        System::Metric => smallest(&METRIC_BORES, millimetres, bore, system),
        System::Inch => smallest(&INCH_BORES, inches, bore, system),
    }
}

const METRIC_WRENCHES: [(f64, f64); 6] =
    [(5.0, 25.0), (20.0, 100.0), (40.0, 200.0), (60.0, 340.0), (200.0, 1000.0), (500.0, 2000.0)];
const INCH_WRENCHES: [(f64, f64); 6] =
    [(3.0, 15.0), (10.0, 80.0), (30.0, 150.0), (50.0, 250.0), (100.0, 600.0), (300.0, 1500.0)];

/// The smallest torque wrench that gives a torque; `None` beyond 5 to 2000 N·m, 3 to 1500 lbf·ft.
///
/// # Example
/// ```
/// use quantities::{System, Torque};
/// use tables::tools::torque_wrench_for;
/// use uom::si::torque::newton_meter;
/// let torque = Torque::new::<newton_meter>(218.0);
/// assert_eq!(torque_wrench_for(torque, System::Metric).unwrap().show(), "60.0 to 340 N·m");
/// ```
pub fn torque_wrench_for(torque: Torque, system: System) -> Option<Range<Torque>> {
    match system {
        System::Metric => smallest(&METRIC_WRENCHES, newton_metres, torque, system),
        System::Inch => smallest(&INCH_WRENCHES, pound_feet, torque, system),
    }
}

/// The first of the ranges, small to large, that holds the quantity.
fn smallest<Q: Copy + PartialOrd>(
    ranges: &[(f64, f64)],
    unit: impl Fn(f64) -> Q,
    wanted: Q,
    system: System,
) -> Option<Range<Q>> {
    let ranges = ranges.iter().map(|&(from, to)| Range { from: unit(from), to: unit(to), system });
    let mut holding = ranges.filter(|range| range.from <= wanted && wanted <= range.to);
    holding.next()
}

/// Thinnest and thickest leaf of a feeler set.
pub fn feelers(system: System) -> Range<Length> {
    match system {
        System::Metric => Range { from: millimetres(0.05), to: millimetres(1.0), system },
        System::Inch => Range { from: inches(0.0015), to: inches(0.035), system },
    }
}
