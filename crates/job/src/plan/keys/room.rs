//! The room around the key: over its top, at its sides, and where its keyways lean.

use mechanics::Estimate;
use mechanics::keys::room::{SideFit, TopSizes, leaning, side_fit, top_clearance};
use quantities::{Kind, Length, Limits, Measured, Physical, Value, root_sum_square};
use tables::fits::Zone;

use super::standard::Standard;
use super::{Context, StageBuilder, Written, estimate};
use crate::file::End;
use crate::plan::sizes::closer;

pub(super) fn numbers(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    written: &Written,
    standard: Option<&Standard>,
) {
    top(cx, out, end, written);
    let shaft = side(cx, out, end, written, standard, "shaft");
    let hub = side(cx, out, end, written, standard, "hub");
    if let (Some(shaft), Some(hub)) = (shaft, hub) {
        twist(cx, out, end, written, [shaft, hub]);
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
    let across = |size: &Estimate<Length>, depth: Estimate<Length>, sign: f64| {
        let both = [size.plus_minus.si(), depth.plus_minus.si()];
        Estimate::new(size.value + depth.value * sign, Length::from_si(root_sum_square(both)))
    };
    let sizes = TopSizes {
        hub_across: across(&bore.mean, estimate(in_hub), 1.0),
        bore: bore.mean,
        shaft_across: across(&shaft.mean, estimate(in_shaft), -1.0),
        shaft: shaft.mean,
        key_height: estimate(height),
    };
    let Ok(top) = top_clearance(sizes) else { return };
    let (value, limits) = (top.clearance.shown(Kind::Offset), Limits::at_least(0.0));
    let closer =
        closer(cx, &value, &limits, "Take the readings of both depths and of the key again");
    out.number(
        &format!("{}.key.top", end.key()),
        format!("Room over the key, {}", cx.name(end)),
        value,
    )
    .second("a key that touches on top pushes the hub out of true")
    .working(top.working())
    .judged(limits, "File the key’s top until there is room; never hammer the hub over it.")
    .settled_by(closer);
}

/// Side play in one part, against what the standard's widths allow where the ± of both is known.
fn side(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    written: &Written,
    standard: Option<&Standard>,
    part: &str,
) -> Option<SideFit> {
    let (keyway, zone) = match part {
        "shaft" => (&written.shaft_width, standard.and_then(|standard| standard.in_shaft)),
        _ => (&written.hub_width, standard.and_then(|standard| standard.in_hub)),
    };
    let (keyway, width) = (keyway.as_ref()?, written.width.as_ref()?);
    let fit = side_fit(estimate(keyway), estimate(width)).ok()?;
    let value = fit.play.shown(Kind::Allowance);
    let entry = out
        .number(
            &format!("{}.key.side.{part}", end.key()),
            format!("Side play of the key in the {part}, {}", cx.name(end)),
            value,
        )
        .working(fit.working(part));
    let key = standard.and_then(|standard| standard.key);
    let (Some(standard), Some(zone), Some(key)) = (standard, zone, key) else {
        entry.second("− is tight");
        return Some(fit);
    };
    let limits = play(zone, key);
    let entry =
        entry.second(format!("− is tight; {}: {}", standard.from, limits.show(&value, cx.system)));
    if keyway.spread().is_some() && width.spread().is_some() {
        let closer = closer(cx, &value, &limits, "Take the readings of key and keyway again");
        entry
            .judged(limits, "Loose: a key fitted to the wider keyway, stepped if need be. Tight: ease the key, not the keyway.")
            .settled_by(closer);
    }
    Some(fit)
}

/// From the widest key in the narrowest keyway to the narrowest in the widest.
fn play(keyway: Zone, key: Zone) -> Limits {
    Limits::between((keyway.lower - key.upper).si(), (keyway.upper - key.lower).si())
}

/// Keyways that lean against each other, where both were taken.
fn twist(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    written: &Written,
    [shaft, hub]: [SideFit; 2],
) {
    if written.shaft_twist.is_none() && written.hub_twist.is_none() {
        return;
    }
    let of = |twist: &Option<Measured<Length>>| {
        twist.as_ref().map_or(Estimate::exact(Length::default()), estimate)
    };
    let Ok(room) = leaning(hub, shaft, of(&written.hub_twist), of(&written.shaft_twist)) else {
        return;
    };
    let value: Value = room.room.shown(Kind::Allowance);
    let limits = Limits::at_least(0.0);
    let closer =
        closer(cx, &value, &limits, "Take the readings of both keyways at both ends again");
    out.number(
        &format!("{}.key.twist", end.key()),
        format!("Room beside the key where keyways lean, {}", cx.name(end)),
        value,
    )
    .second("− : the key binds and sets the hub askew")
    .working(room.working())
    .judged(limits, "Ease or step the key; a keyway that leans this far is cut again.")
    .settled_by(closer);
}
