//! Sides in words, as the hand needs them.

use lineup::Plane;
use quantities::{Kind, Length, Physical, Value};

use super::feet::{feet_words, packing_words};
use super::{Context, FootWork, Found, Packing, foot_work, sweeps};
use crate::file::End;

/// "low", "to 3 o’clock".
pub(super) fn side(plane: Plane, amount: f64) -> &'static str {
    match (plane, amount < 0.0) {
        (Plane::Vertical, false) => "high",
        (Plane::Vertical, true) => "low",
        (Plane::Sideways, false) => "to 3 o’clock",
        (Plane::Sideways, true) => "to 9 o’clock",
    }
}

/// Which way the rear end of the machine that moves points, for a slope along +x.
pub(super) fn rear_of(moves: End, plane: Plane, slope: f64) -> &'static str {
    let rear = if moves == End::Driver { -slope } else { slope };
    side(plane, rear)
}

pub(super) fn summary(cx: &Context, found: &Found) -> String {
    let joint = found.own();
    let middle = joint.position.layout.reference;
    let parts: Vec<String> = Plane::BOTH
        .into_iter()
        .map(|plane| {
            let off = joint.off.offset(plane, middle).value;
            let shown = Value::new(Kind::Offset, off.abs()).show(cx.system);
            format!("{shown} {}", side(plane, off.si()))
        })
        .collect();
    let name = cx.name(cx.file.machines.moves);
    let stands = match (&joint.as_found, joint.roughed_in) {
        (Some(_), _) => "was left",
        (None, true) => "stands, roughly,",
        (None, false) => "stands",
    };
    let parts = parts.join(" and ");
    let doubt = if sweeps::fails(cx) { "; a sweep does not close" } else { "" };
    format!("{name} {stands} {parts}, against where it is aimed{doubt}")
}

/// While a sweep does not close.
const NOTHING_YET: &str = "move nothing yet, a sweep does not close: sweep again";

/// What to do at the feet, in one phrase for a step.
pub(super) fn moves(cx: &Context, found: &Found) -> String {
    if sweeps::fails(cx) {
        return NOTHING_YET.to_owned();
    }
    let work = foot_work(found);
    let mut machines: Vec<usize> = work.iter().map(|work| work.member).collect();
    machines.dedup();
    let several = machines.len() > 1;
    let of = |machine: &usize| {
        let own: Vec<&FootWork> = work.iter().filter(|work| work.member == *machine).collect();
        let phrase = machine_moves(cx, &own);
        if several { format!("{} {phrase}", found.members[*machine].name) } else { phrase }
    };
    machines.iter().map(of).collect::<Vec<_>>().join("; ")
}

fn machine_moves(cx: &Context, work: &[&FootWork]) -> String {
    let one = |work: &FootWork, amount: Length, way: &str| {
        let shown = Value::new(Kind::Offset, amount.abs()).show(cx.system);
        format!("{} {way} {shown}", work.plane.name)
    };
    let vertical = work.iter().map(|work| match work.packing {
        Packing::Leave => format!("{} stays", work.plane.name),
        _ if work.whole < Length::default() => one(work, work.whole, "down"),
        _ => one(work, work.whole, "up"),
    });
    let sideways = work.iter().map(|work| {
        let right = work.right().value;
        one(work, right, if right < Length::default() { "to 9 by" } else { "to 3 by" })
    });
    let parts = [vertical.collect::<Vec<_>>().join(", "), sideways.collect::<Vec<_>>().join(", ")];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("; ")
}

/// What to do with the shims under each foot, as sentences for a step.
pub(super) fn packs(cx: &Context, found: &Found) -> String {
    if sweeps::fails(cx) {
        return String::new();
    }
    let told = foot_work(found).iter().filter_map(|work| {
        let pack = packing_words(cx, work);
        (!pack.is_empty()).then(|| format!("{}: {pack}. ", capital_first(&feet_words(found, work))))
    });
    told.collect()
}

/// With its first letter large.
pub(super) fn capital_first(text: &str) -> String {
    super::super::sizes::capital(text)
}
