//! Zones and readings of one fit.

use quantities::{Kind, Length, Limits, Physical, System, Value};

use super::super::Context;
use super::super::sizes::{Corrected, Part};
use super::{FitPart, FitReading, FitZones};
use crate::file::End;

pub(super) fn zones(cx: &Context, end: End) -> Option<FitZones> {
    // On a taper sizes go with their place along the shaft: no zone, and no station like another.
    if cx.taper(end).is_some() {
        return None;
    }
    let nominal = cx.joint_diameter(end)?;
    let parts = Part::BOTH.map(|part| fit_part(cx, end, part, nominal));
    let empty = parts.iter().all(|part| part.zone.is_none() && part.readings.is_empty());
    if empty {
        return None;
    }
    let shown = Value::new(Kind::Size, nominal).show(cx.system);
    let axis = match cx.system {
        System::Metric => format!("µm above {}", shown.replace(".000", "")),
        System::Inch => format!("mils above {shown}"),
    };
    let outcome = cx.fit(end).interference.as_ref().map(|fit| {
        let word = if fit.value < Length::default() { "clearance" } else { "interference" };
        let number = Value::new(Kind::Allowance, fit.value.abs());
        let spread = number.with_plus_minus(fit.plus_minus.si()).plus_minus_digits(cx.system);
        let spread = spread.map_or_else(String::new, |digits| format!("± {digits}"));
        (number.show(cx.system), spread, word)
    });
    Some(FitZones { end: end.key(), name: cx.hub_name(end), axis, parts, outcome })
}

/// Deviations in the unit of the axis: micrometres, mils.
fn deviation(cx: &Context, si: f64) -> f64 {
    match cx.system {
        System::Metric => si * 1e6,
        System::Inch => si / 25.4e-6,
    }
}

fn fit_part(cx: &Context, end: End, part: Part, nominal: Length) -> FitPart {
    let name = part.key();
    let over = |si: f64| deviation(cx, si - nominal.si());
    let zone = cx.zone(end, part).and_then(|(class, Limits { least, greatest })| {
        let (lower, upper) = (over(least?), over(greatest?));
        let text = format!("{name}, {class}: {} to {}", signed(lower), signed(upper));
        Some((lower, upper, text))
    });
    let reading = |read: Corrected| FitReading {
        station: read.station.to_owned(),
        degrees: read.degrees,
        touches: read.touches,
        deviation: over(read.size.si()),
        plus_minus: deviation(cx, read.spread.si()),
    };
    let sizes = cx.sizes(end);
    FitPart {
        name,
        zone,
        readings: sizes.readings(part).map(reading).collect(),
        by_three_points: sizes.by_three_points(part).map(reading).collect(),
        mean: sizes.part(part).map(|size| over(size.mean.value.si())),
    }
}

fn signed(number: f64) -> String {
    let shown = if (number - number.round()).abs() < 0.05 {
        format!("{:.0}", number.abs())
    } else {
        format!("{:.1}", number.abs())
    };
    format!("{}{shown}", if number < -0.05 { "−" } else { "+" })
}
