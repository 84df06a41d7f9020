//! The coupling in half section: what is measured, what the sheet says, what is assumed.

use couplings::gap::target;
use couplings::kind::{Sliding, Spacer};
use quantities::{Kind, Length, Measured, Physical, Value};

use super::super::Context;
use super::{Half, Known, Section, Size};
use crate::file::End;

/// A hub as long as its bore is usual; for the drawing only.
const LENGTH_OVER_BORE: f64 = 1.1;
/// A gap for the drawing only, as a part of the bore.
const GAP_OVER_BORE: f64 = 0.05;

pub(super) fn section(cx: &Context) -> Option<Section> {
    let (kind, form) = cx.kind.zip(cx.form)?;
    let halves = [half(cx, End::Driver)?, half(cx, End::Driven)?];
    let bore = halves[0].shaft.si.max(halves[1].shaft.si);
    let sheet = &cx.file.coupling.sheet;
    let given = |text: &Option<Measured<Length>>| {
        text.as_ref().map(|text| size(cx, text.value(), Kind::Length, Known::Given))
    };
    let flange = End::BOTH
        .into_iter()
        .filter_map(|end| cx.file.coupling.hub(end).flange_outside.as_ref().map(Measured::value));
    let widest = flange.reduce(|a, b| if a > b { a } else { b });
    let outside = given(&sheet.sizes.flange_outside).or_else(|| {
        // The ring of teeth on a hub lies inside its sleeve: it is not the outside.
        widest
            .filter(|_| kind.teeth_slide() == Sliding::No)
            .map(|d| size(cx, d, Kind::Length, Known::Given))
    });
    Some(Section {
        kind: kind.name().to_owned(),
        form: form.name.to_owned(),
        spacer: form.spacer == Spacer::With,
        halves,
        gap: gap(cx, bore),
        outside,
        bolts: sheet.bolts.count.map(|count| count.0),
        pack: given(&sheet.sizes.pack_thickness),
    })
}

fn half(cx: &Context, end: End) -> Option<Half> {
    let shaft = match &cx.sizes(end).shaft {
        Some(found) => size(cx, found.mean.value, Kind::Size, Known::Measured),
        None => size(cx, cx.joint_diameter(end)?, Kind::Length, Known::Given),
    };
    let length = match cx.hub_length(end) {
        Some(length) => size(cx, length, Kind::Length, Known::Given),
        None => {
            size(cx, Length::from_si(shaft.si * LENGTH_OVER_BORE), Kind::Length, Known::Assumed)
        }
    };
    let hub = cx.file.coupling.hub(end);
    Some(Half {
        machine: cx.name(end).to_owned(),
        shaft_bore: hub.shaft_bore.as_ref().map(|bore| bore.value().si()),
        outside: cx.hub_outside(end).map(|outside| size(cx, outside, Kind::Length, Known::Given)),
        key: key(cx, end, length.si),
        shaft,
        length,
    })
}

fn key(cx: &Context, end: End, hub: f64) -> Option<[f64; 3]> {
    let key = cx.file.sizes.at(end).key.as_ref()?;
    let standard = tables::iso_r_773::key_for(cx.joint_diameter(end)?);
    let height = crate::file::si(&key.height).or(standard.map(|key| key.height.si()))?;
    let depth = crate::file::si(&key.shaft_depth).unwrap_or(height * 0.6);
    let length = crate::file::si(&key.length).unwrap_or(hub * 0.9);
    Some([height, depth, length.min(hub)])
}

/// The gap as read, else as it should be, else a little one that is marked as assumed.
fn gap(cx: &Context, bore: f64) -> Size {
    let gap = &cx.file.gap;
    let count = gap.readings.len();
    if count > 0 {
        let sum: f64 = gap.readings.values().map(|read| read.value().si()).sum();
        let mean = sum / f64::from(u32::try_from(count).unwrap_or(1));
        return size(cx, Length::from_si(mean), Kind::Gap, Known::Measured);
    }
    let wanted = cx.kind.zip(cx.form).and_then(|(kind, form)| {
        target(&cx.file.coupling.sheet, kind.gap_rule(form), form.planes).ok()
    });
    match wanted {
        Some(target) => size(cx, target.gap, Kind::Gap, Known::Given),
        None => size(cx, Length::from_si(bore * GAP_OVER_BORE), Kind::Gap, Known::Assumed),
    }
}

fn size(cx: &Context, length: Length, kind: Kind, known: Known) -> Size {
    let digits = Value::new(kind, length).digits(cx.system);
    // "80.0" from a sheet is written as it stands there.
    let text = match (known, digits.strip_suffix(".0").or(digits.strip_suffix(".00"))) {
        (Known::Given | Known::Assumed, Some(short)) => short.to_owned(),
        _ => digits,
    };
    Size { si: length.si(), text, known }
}
