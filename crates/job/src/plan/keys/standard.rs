//! The key and its keyways against the standard: ISO/R 773 for a metric job, ANSI B17.1 for an inch
//! job.

use mechanics::keys::room::across_keyway;
use quantities::{Kind, Length, Limits, Measured, Physical, System, Value};
use tables::ansi_b17_1::{self, Class, Shape};
use tables::fits::Zone;
use tables::iso_286;
use tables::iso_r_773::{self, Seat};

use super::{Context, StageBuilder, Written};
use crate::file::{End, Text};
use crate::plan::sizes::closer;
use crate::plan::stage_builder::WRITTEN;

/// The key as the standard has it for this shaft, with what it allows.
pub(super) struct Standard {
    pub width: Length,
    pub height: Length,
    /// "ISO/R 773, normal".
    pub from: String,
    /// Deviations of the key's height; `None` where they are not held here.
    bar_height: Option<Zone>,
    /// Deviations of the key's width, of the keyway's in the shaft and in the hub.
    pub key: Option<Zone>,
    pub in_shaft: Option<Zone>,
    pub in_hub: Option<Zone>,
    /// Depths from the top of shaft and bore.
    shaft_depth: Option<Limits>,
    hub_depth: Option<Limits>,
}

pub(super) fn standard(cx: &Context, end: End, shaft: Length) -> Option<Standard> {
    let written = cx.file.sizes.at(end).key.as_ref();
    match cx.system_of_job() {
        System::Metric => metric(written, shaft),
        System::Inch => inch(written, shaft),
    }
}

fn metric(written: Option<&Written>, shaft: Length) -> Option<Standard> {
    let key = iso_r_773::key_for(shaft)?;
    let seat = written.and_then(|written| written.seat).unwrap_or(Seat::Normal);
    let seat_word = match seat {
        Seat::Tight => "tight",
        Seat::Normal => "normal",
        Seat::Free => "free",
    };
    let keyway = key.keyway(seat);
    let bar = zone("h9", key.width);
    let square = (key.height - key.width).abs() < key.width * 1e-6;
    let deeper = |depth: Length| Limits::between(depth.si(), (depth + key.depth_tolerance).si());
    Some(Standard {
        width: key.width,
        height: key.height,
        from: format!("ISO/R 773, {seat_word} seat"),
        bar_height: zone(if square { SQUARE_HEIGHT } else { FLAT_HEIGHT }, key.height),
        key: bar,
        in_shaft: keyway.map(|keyway| keyway.shaft),
        in_hub: keyway.map(|keyway| keyway.hub),
        shaft_depth: Some(deeper(key.shaft_depth)),
        hub_depth: Some(deeper(key.hub_depth)),
    })
}

/// Class of a metric key's height: square, and flat (ISO/R 773, from memory).
const SQUARE_HEIGHT: &str = "h9";
const FLAT_HEIGHT: &str = "h11";

fn zone(class: &str, size: Length) -> Option<Zone> {
    class.parse::<iso_286::Class>().ok().and_then(|class| class.limits(size).ok())
}

fn inch(written: Option<&Written>, shaft: Length) -> Option<Standard> {
    let lower = |written: &Written| {
        let (width, height) = (written.width.as_ref()?.value(), written.height.as_ref()?.value());
        Some(height < width * 0.95)
    };
    let (shape, word) = match written.and_then(lower) {
        Some(true) => (Shape::Rectangular, "rectangular"),
        _ => (Shape::Square, "square"),
    };
    let class = written.and_then(|written| written.fit_class).unwrap_or(Class::One);
    let number = if class == Class::One { 1 } else { 2 };
    let key = ansi_b17_1::key_for(shaft, shape)?;
    let widths = ansi_b17_1::widths(key.width, shape, class);
    let across = across_keyway(shaft, key.width, key.height).ok();
    let depth = |least: Length, more: Length| Limits::between(least.si(), (least + more).si());
    Some(Standard {
        width: key.width,
        height: key.height,
        from: format!("ANSI B17.1, {word}, class {number}"),
        bar_height: ansi_b17_1::height(key.width, shape, class),
        key: widths.map(|widths| widths.key),
        in_shaft: widths.map(|widths| widths.seat),
        in_hub: widths.map(|widths| widths.seat),
        // S may be smaller and T larger: a keyway may be deeper, not shallower.
        shaft_depth: across.map(|a| depth(shaft - a.shaft, -ansi_b17_1::S_ZONE.lower)),
        hub_depth: across.map(|a| depth(a.hub - shaft, ansi_b17_1::T_ZONE.upper)),
    })
}

pub(super) fn numbers(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    written: &Written,
    standard: &Standard,
) {
    let name = cx.name(end);
    let width = |zone: Option<Zone>| around(standard.width, zone);
    let bar =
        Row { key: "width", label: format!("Key width, {name}"), limits: width(standard.key) };
    let height = Row {
        key: "height",
        label: format!("Key height, {name}"),
        limits: around(standard.height, standard.bar_height),
    };
    bar.number(cx, out, end, standard, &written.width);
    height.number(cx, out, end, standard, &written.height);
    for (key, what, text, limits) in [
        (
            "shaft_width",
            "Keyway width in the shaft",
            &written.shaft_width,
            width(standard.in_shaft),
        ),
        ("hub_width", "Keyway width in the hub", &written.hub_width, width(standard.in_hub)),
        ("shaft_depth", "Keyway depth in the shaft", &written.shaft_depth, standard.shaft_depth),
        ("hub_depth", "Keyway depth in the hub", &written.hub_depth, standard.hub_depth),
    ] {
        let row = Row { key, label: format!("{what}, {name}"), limits };
        row.number(cx, out, end, standard, text);
    }
    nominal(cx, out, end, written, standard);
}

fn around(nominal: Length, zone: Option<Zone>) -> Option<Limits> {
    let zone = zone?;
    Some(Limits::between((nominal + zone.lower).si(), (nominal + zone.upper).si()))
}

struct Row {
    key: &'static str,
    label: String,
    limits: Option<Limits>,
}

impl Row {
    /// A size of key or keyway. It is judged where its ± was written: a size without one says too
    /// little for tolerances of some hundredths.
    fn number(
        &self,
        cx: &Context,
        out: &mut StageBuilder,
        end: End,
        standard: &Standard,
        text: &Text<Length>,
    ) {
        let Some(text) = text else { return };
        let value = text.shown_as(Kind::Gap);
        let wanted = match (&self.limits, self.key) {
            (Some(limits), _) => limits.show(&Value { kind: Kind::Size, ..value }, cx.system),
            (None, "height") => Value::new(Kind::Gap, standard.height).show(cx.system),
            (None, _) => String::new(),
        };
        let entry = out
            .number(&format!("{}.key.{}", end.key(), self.key), self.label.clone(), value)
            .second(format!("{}: {wanted}", standard.from))
            .written(WRITTEN);
        if let Some(limits) = self.limits
            && text.spread().is_some()
        {
            let closer = closer(
                cx,
                &value,
                &limits,
                "Take the reading again with a micrometer or gauge blocks",
            );
            entry.judged(limits, mend(self.key)).settled_by(closer);
        }
    }
}

fn mend(key: &str) -> &'static str {
    match key {
        "width" | "height" => "Another key, or this one ground to suit its keyways.",
        "shaft_width" | "hub_width" => {
            "A key fitted to it if it is wide; a true cutter through it if it is narrow."
        }
        _ => {
            "Too deep weakens the part; too shallow, the key touches on top. Look at the room over the key."
        }
    }
}

/// A key of another nominal size is not wrong in itself; it must be known.
fn nominal(cx: &Context, out: &mut StageBuilder, end: End, written: &Written, standard: &Standard) {
    for (what, text, wanted) in [
        ("key width", &written.width, standard.width),
        ("key height", &written.height, standard.height),
    ] {
        let off = |text: &Measured<Length>| (text.value() - wanted).abs() > wanted * 0.03;
        if text.as_ref().is_some_and(off) {
            out.note(format!(
                "The {what} at the {} is not the one of {} for this shaft.",
                cx.name(end),
                standard.from
            ));
        }
    }
}
