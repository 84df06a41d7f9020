//! What the torque does to the key.

use mechanics::keys::{
    Depth, Ends, Key, LONGEST_OVER_SHAFT, Loaded, Sharing, ShearYield, Strength, loaded,
    needed_length,
};
use quantities::{Kind, Length, Limits, Measured, Physical, Pressure, Torque, Value, Working};

use super::{Context, StageBuilder, Written, fit, keys};
use crate::file::{End, KeyEnds};

/// Safety that a key is judged by: common practice for steady drives; the service factor is on top.
const SAFETY: f64 = 1.5;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End, written: &Written) {
    let Some(load) = load(cx, end, written) else { return not_judged(cx, out, end, written) };
    share(cx, out, end);
    let strength = strength(cx, end, written);
    stresses(cx, out, end, written, &load, &strength);
    length(cx, out, end, written, &load, strength.0);
}

/// A key that must carry torque and is not known is not judged: no word on the fit without it.
fn not_judged(cx: &Context, out: &mut StageBuilder, end: End, written: &Written) {
    let asked = [
        ("width", written.width.is_some()),
        ("height", written.height.is_some()),
        ("length", written.length.is_some()),
    ];
    let Some((lacks, _)) = asked.into_iter().find(|(_, given)| !given) else { return };
    if fit::torque_to_carry(cx).is_some() {
        let place = format!("sizes.{}.key.{lacks}", end.key());
        let label = format!("Pressure on the key’s side, {}", cx.name(end));
        let what = format!("key {lacks}, {} end", cx.name(end));
        out.unmeasured(&format!("{}.key.bearing", end.key()), label, &place, &what);
    }
}

/// The key as it lies in the hub.
fn key(cx: &Context, end: End, written: &Written) -> Option<Key> {
    let length = written.length.as_ref()?.value();
    let hub = cx.hub_length(end).unwrap_or(length);
    Some(Key {
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
    })
}

/// How torque is shared between key and friction, by the rule that the job chose.
fn sharing(cx: &Context, end: End) -> Sharing {
    let least = cx.fit(end).grip.as_ref().map(|grip| grip.torque.low);
    match (cx.file.fit.sharing, least) {
        (crate::file::Sharing::AfterFriction, Some(least)) => Sharing::AfterFriction(least),
        _ => Sharing::KeyAlone,
    }
}

fn load(cx: &Context, end: End, written: &Written) -> Option<Loaded> {
    let torque = sharing(cx, end).share(fit::torque_to_carry(cx)?);
    loaded(key(cx, end, written)?, keys(written), torque, cx.joint_diameter(end)?).ok()
}

/// Yield of key and of the weakest beside it, and whose word that of the key is.
fn strength(cx: &Context, end: End, written: &Written) -> (Strength, String) {
    let own = written.yield_strength.as_ref().map(Measured::value);
    let named = tables::key_steels::key_steel(&written.steel);
    let steel = named.unwrap_or(&tables::key_steels::STEELS[0]);
    let yields = own.unwrap_or(steel.yield_strength);
    let least = |one: Pressure, other: Option<(Pressure, &str)>| {
        other.map_or(one, |(other, _)| if other < one { other } else { one })
    };
    let shaft = cx.shaft_yield(end).map(|shaft| (shaft, ""));
    let weakest = least(least(yields, cx.hub_yield(end)), shaft);
    let whose = if own.is_some() {
        "yield as entered".to_owned()
    } else {
        let shown = Value::new(Kind::Stress, steel.yield_strength).show(cx.system);
        format!("yield of {}, {shown}", steel.name)
    };
    (Strength::from_yield(yields, weakest, ShearYield::GreatestShear), whose)
}

fn share(cx: &Context, out: &mut StageBuilder, end: End) {
    let Some(torque) = fit::torque_to_carry(cx) else { return };
    let sharing = sharing(cx, end);
    let second = match sharing {
        Sharing::KeyAlone => "all of it, friction left out of account: the safe side",
        Sharing::AfterFriction(_) => {
            "what the least friction leaves; the key bears it only after the fit has begun to slip"
        }
    };
    out.number(
        &format!("{}.key.torque", end.key()),
        format!("Torque on the key, {}", cx.name(end)),
        Value::new(Kind::Torque, sharing.share(torque)),
    )
    .second(second)
    .working(sharing.working(torque));
}

fn stresses(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    written: &Written,
    load: &Loaded,
    (strength, whose): &(Strength, String),
) {
    let name = cx.name(end);
    let two = match keys(written) {
        mechanics::keys::Keys::One => "",
        mechanics::keys::Keys::Two => "two keys count as one and a half; ",
    };
    let side = if cx.hub_yield(end).is_some_and(|(hub, _)| hub.si() <= strength.bearing.si()) {
        "the hub’s side is the weakest"
    } else {
        whose.as_str()
    };
    let rows: [(&str, &str, Pressure, Pressure, Working, &str); 2] = [
        ("shear", "Shear of the key", load.shear, strength.shear, load.shear_working(), whose),
        (
            "bearing",
            "Pressure on the key’s side",
            load.bearing,
            strength.bearing,
            load.bearing_working(),
            side,
        ),
    ];
    for (key, label, stress, limit, working, whose) in rows {
        out.number(
            &format!("{}.key.{key}", end.key()),
            format!("{label}, {name}"),
            Value::new(Kind::Stress, stress),
        )
        .second(format!("{two}{whose}, safety {SAFETY}"))
        .working(working)
        .judged(
            Limits::at_most(limit.si() / SAFETY),
            "A longer key, a second key, or a fit that holds the torque by itself.",
        );
    }
}

/// Too long does not bear evenly; and how long it would have to be.
fn length(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    written: &Written,
    load: &Loaded,
    strength: Strength,
) {
    let name = cx.name(end);
    if load.key.length > load.shaft * LONGEST_OVER_SHAFT {
        out.note(format!(
            "The key at the {name} is longer than {LONGEST_OVER_SHAFT} shaft diameters: it does not bear evenly along its length."
        ));
    }
    let needed = needed_length(load.key, keys(written), load.torque, load.shaft, strength, SAFETY);
    let Some(needed) = needed.ok().filter(|needed| needed.longest() > Length::default()) else {
        return;
    };
    let round = load.key.length - load.straight;
    let value = Value::new(Kind::Length, needed.longest() + round);
    let governs = if needed.bearing > needed.shear { "pressure on its side" } else { "shear" };
    out.number(
        &format!("{}.key.needed", end.key()),
        format!("Key length that would do, {name}"),
        value,
    )
    .second(format!("end to end; {governs} decides, safety {SAFETY}"))
    .working(needed.working(SAFETY, load, strength, round));
}

/// Torque at which the key comes to its limit.
pub(in crate::plan) fn capacity(cx: &Context, end: End) -> Option<Torque> {
    let written = cx.file.sizes.at(end).key.as_ref()?;
    let one = Torque::from_si(1.0);
    let load = loaded(key(cx, end, written)?, keys(written), one, cx.joint_diameter(end)?).ok()?;
    let (strength, _) = strength(cx, end, written);
    Some(one * (load.safety(strength).ok()?.least() / SAFETY))
}
