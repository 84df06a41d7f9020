//! The key of one end: its size by the standard, what the torque does to it, the room around it, the
//! set screws over it, its length for balance.

mod room;
mod screw;
mod standard;
mod strength;

use mechanics::Estimate;
use mechanics::keys::balance::{BalanceKey, LengthRule};
use quantities::{Kind, Length, Measured, Physical, Value};

use super::stage_builder::StageBuilder;
use super::{Context, fit};
use crate::file::{End, Key as Written, KeyEnds};

pub(super) use strength::capacity;

/// ± of a size taken with a depth gauge or calliper, where none is written (common practice).
const CALLIPER_M: f64 = 0.05e-3;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End) {
    let Some(shaft) = cx.joint_diameter(end) else { return };
    let standard = standard::standard(cx, end, shaft);
    let Some(written) = &cx.file.sizes.at(end).key else {
        if let Some(standard) = &standard {
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
    if let Some(standard) = &standard {
        standard::numbers(cx, out, end, written, standard);
    }
    strength::numbers(cx, out, end, written);
    room::numbers(cx, out, end, written, standard.as_ref());
    screw::numbers(cx, out, end, written);
    balance(cx, out, end, written);
}

/// Length of a plain key that leaves hub and shaft in balance, where both keyways were measured.
fn balance(cx: &Context, out: &mut StageBuilder, end: End, written: &Written) {
    let (Some(shaft), Some(hub)) = (&written.shaft_keyway_length, &written.hub_keyway_length)
    else {
        return;
    };
    let rule = match written.ends {
        KeyEnds::Square => LengthRule::Mean,
        KeyEnds::Round | KeyEnds::Half => LengthRule::MeanLess5Percent,
    };
    let Ok(key) = BalanceKey::new(hub.value(), shaft.value(), rule) else { return };
    let second = match rule {
        LengthRule::Mean => "mean of both keyways; half-key balance, ISO 21940-32",
        LengthRule::MeanLess5Percent => {
            "mean of both keyways less 5 % for round ends; half-key balance, ISO 21940-32"
        }
    };
    out.number(
        &format!("{}.key.balance", end.key()),
        format!("Key length for balance, {}", cx.name(end)),
        Value::new(Kind::Length, key.length),
    )
    .second(second)
    .working(key.working());
    let Some(length) = &written.length else { return };
    let off = (length.value() - key.length).abs();
    if off.si() > BALANCE_OFF_M {
        out.note(format!(
            "The key at the {} is {} longer or shorter than balance asks for: cut it, or step it.",
            cx.name(end),
            Value::new(Kind::Length, off).show(cx.system)
        ));
    }
}

/// A key that departs no more than this from its length for balance is left as it is: a rule of our
/// own.
const BALANCE_OFF_M: f64 = 2e-3;

fn estimate(written: &Measured<Length>) -> Estimate<Length> {
    Estimate::new(written.value(), written.spread().unwrap_or(Length::from_si(CALLIPER_M)))
}

/// How many keys carry.
fn keys(written: &Written) -> mechanics::keys::Keys {
    match written.count {
        Some(count) if count.0 > 1 => mechanics::keys::Keys::Two,
        _ => mechanics::keys::Keys::One,
    }
}
