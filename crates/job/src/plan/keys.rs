//! The key of one end: its size by the standard, what the torque does to it, the room around it.

use mechanics::Estimate;
use mechanics::keys::room::{TopSizes, side_fit, top_clearance};
use mechanics::keys::{
    Depth, Ends, Key, Keys, LONGEST_OVER_SHAFT, Loaded, ShearYield, Strength, loaded,
};
use quantities::{Kind, Length, Limits, Measured, Physical, Pressure, System, Value};

use super::stage_builder::StageBuilder;
use super::{Context, fit};
use crate::file::{End, Key as Written, KeyEnds};

/// Yield of plain key steel where nothing better is known: 250 MPa, the low end for cold-drawn
/// low-carbon key stock; common practice.
const KEY_YIELD_PA: f64 = 250e6;
/// Safety that a key is judged by: common practice for steady drives; the service factor is on top.
const SAFETY: f64 = 1.5;
/// ± of a size taken with a depth gauge or calliper, where none is written (common practice).
const CALLIPER_M: f64 = 0.05e-3;

/// The key as the standard has it for this shaft.
struct Standard {
    width: Length,
    height: Length,
    from: &'static str,
}

/// Metric shafts by ISO/R 773, inch shafts by ANSI B17.1, by the units of the job.
fn standard(cx: &Context, shaft: Length) -> Option<Standard> {
    match cx.system_of_job() {
        System::Metric => tables::iso_r_773::key_for(shaft).map(|key| Standard {
            width: key.width,
            height: key.height,
            from: "ISO/R 773",
        }),
        System::Inch => {
            tables::ansi_b17_1::key_for(shaft, tables::ansi_b17_1::Shape::Square).map(|key| {
                Standard { width: key.width, height: key.height, from: "ANSI B17.1, square" }
            })
        }
    }
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End) {
    let Some(shaft) = cx.joint_diameter(end) else { return };
    let standard = standard(cx, shaft);
    let Some(written) = &cx.file.sizes.at(end).key else {
        if let Some(standard) = standard {
            out.note(format!(
                "No key was entered at the {}. A shaft of this size has a key {} × {} by {}.",
                cx.name(end),
                Value::new(Kind::Gap, standard.width).digits(cx.system),
                Value::new(Kind::Gap, standard.height).show(cx.system),
                standard.from
            ));
        }
        return;
    };
    against_standard(cx, out, end, written, standard.as_ref());
    if let Some(load) = load(cx, end, written, shaft) {
        stresses(cx, out, end, written, &load);
        length(cx, out, end, &load, shaft);
    }
    top(cx, out, end, written);
    sides(cx, out, end, written);
}

fn against_standard(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    written: &Written,
    standard: Option<&Standard>,
) {
    let Some(standard) = standard else { return };
    for (field, label, text, wanted) in [
        ("width", "Key width", &written.width, standard.width),
        ("height", "Key height", &written.height, standard.height),
    ] {
        let Some(text) = text else { continue };
        let value = value(Kind::Gap, text);
        let off = (value.si - wanted.si()).abs();
        let wanted_shown = Value::new(Kind::Gap, wanted).show(cx.system);
        out.number(
            &format!("{}.key.{field}", end.key()),
            format!("{label}, {}", cx.name(end)),
            value,
        )
        .second(format!("{}: {wanted_shown}", standard.from));
        // A key of another nominal size is not wrong in itself; it must be known.
        if off > 0.03 * wanted.si() {
            let note = format!(
                "The {} at the {} is not the one of {} for this shaft.",
                label.to_lowercase(),
                cx.name(end),
                standard.from
            );
            out.note(note);
        }
    }
}

/// The key under the whole torque, friction left out of account: the safe side.
fn load(cx: &Context, end: End, written: &Written, shaft: Length) -> Option<Loaded> {
    let length = written.length.as_ref()?.value();
    let hub = cx.hub_length(end).unwrap_or(length);
    let key = Key {
        width: written.width.as_ref()?.value(),
        height: written.height.as_ref()?.value(),
        length: if length < hub { length } else { hub },
        ends: match written.ends {
            KeyEnds::Square => Ends::Square,
            KeyEnds::Half => Ends::OneRound,
            KeyEnds::Round => Ends::BothRound,
        },
        depth: written
            .shaft_depth
            .as_ref()
            .map_or(Depth::HalfHeight, |d| Depth::ShaftKeyway(d.value())),
    };
    loaded(key, Keys::One, fit::torque_to_carry(cx)?, shaft).ok()
}

fn stresses(cx: &Context, out: &mut StageBuilder, end: End, written: &Written, load: &Loaded) {
    let own = written.yield_strength.as_ref().map(Measured::value);
    let yields = own.unwrap_or(Pressure::from_si(KEY_YIELD_PA));
    let hub = cx.hub_metal(end).and_then(|metal| metal.yield_strength);
    let weakest = hub.map_or(yields, |hub| if hub < yields { hub } else { yields });
    let strength = Strength::from_yield(yields, weakest, ShearYield::GreatestShear);
    let whose =
        if own.is_some() { "yield as entered" } else { "yield of plain key steel, 250 MPa" };
    let name = cx.name(end);
    for (key, label, stress, limit, working) in [
        ("shear", "Shear of the key", load.shear, strength.shear, load.shear_working()),
        (
            "bearing",
            "Pressure on the key’s side",
            load.bearing,
            strength.bearing,
            load.bearing_working(),
        ),
    ] {
        out.number(
            &format!("{}.key.{key}", end.key()),
            format!("{label}, {name}"),
            Value::new(Kind::Stress, stress),
        )
        .second(format!("whole torque on the key; {whose}, safety {SAFETY}"))
        .working(working)
        .judged(
            Limits::at_most(limit.si() / SAFETY),
            "A longer key, a second key, or a fit that holds the torque by itself.",
        );
    }
}

fn length(cx: &Context, out: &mut StageBuilder, end: End, load: &Loaded, shaft: Length) {
    if load.key.length > shaft * LONGEST_OVER_SHAFT {
        out.note(format!(
            "The key at the {} is longer than {LONGEST_OVER_SHAFT} shaft diameters: it does not bear evenly along its length.",
            cx.name(end)
        ));
    }
}

/// Room over the key, from the depths of its keyways.
fn top(cx: &Context, out: &mut StageBuilder, end: End, written: &Written) {
    let sizes = cx.sizes(end);
    let (Some(bore), Some(shaft)) = (&sizes.bore, &sizes.shaft) else { return };
    let (Some(height), Some(in_shaft), Some(in_hub)) =
        (&written.height, &written.shaft_depth, &written.hub_depth)
    else {
        return;
    };
    let (in_shaft, in_hub) = (estimate(in_shaft), estimate(in_hub));
    let across = |size: &Estimate<Length>, depth: &Estimate<Length>, sign: f64| Estimate {
        value: size.value + depth.value * sign,
        plus_minus: Length::from_si(size.plus_minus.si().hypot(depth.plus_minus.si())),
    };
    let sizes = TopSizes {
        hub_across: across(&bore.mean, &in_hub, 1.0),
        bore: bore.mean,
        shaft_across: across(&shaft.mean, &in_shaft, -1.0),
        shaft: shaft.mean,
        key_height: estimate(height),
    };
    let Ok(top) = top_clearance(sizes) else { return };
    out.number(
        &format!("{}.key.top", end.key()),
        format!("Room over the key, {}", cx.name(end)),
        top.clearance.shown(Kind::Offset),
    )
    .second("a key that touches on top pushes the hub out of true")
    .working(top.working())
    .judged(
        Limits::at_least(0.0),
        "File the key’s top until there is room; never hammer the hub over it.",
    );
}

fn sides(cx: &Context, out: &mut StageBuilder, end: End, written: &Written) {
    let Some(width) = &written.width else { return };
    for (part, keyway) in [("shaft", &written.shaft_width), ("hub", &written.hub_width)] {
        let Some(keyway) = keyway else { continue };
        let Ok(fit) = side_fit(estimate(keyway), estimate(width)) else { continue };
        out.number(
            &format!("{}.key.side.{part}", end.key()),
            format!("Side play of the key in the {part}, {}", cx.name(end)),
            fit.play.shown(Kind::Allowance),
        )
        .second("− is tight")
        .working(fit.working(part));
    }
}

fn estimate(written: &Measured<Length>) -> Estimate<Length> {
    Estimate::new(written.value(), written.spread().unwrap_or(Length::from_si(CALLIPER_M)))
}

fn value(kind: Kind, written: &Measured<Length>) -> Value {
    Value { plus_minus: None, ..written.shown_as(kind) }
}
