//! Sides in words, as the hand needs them.

use lineup::Plane;
use quantities::{Kind, Length, Physical, Value};

use super::{Context, FootWork, Found, foot_work};
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
    format!("{name} {stands} {}, against where it is aimed", parts.join(" and "))
}

/// What to do at the feet, in one phrase for a step.
pub(super) fn moves(cx: &Context, found: &Found) -> String {
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
    let phrase = |amount: fn(&FootWork) -> Length, words: fn(f64) -> &'static str| {
        let parts = work.iter().map(|work| {
            let amount = amount(work);
            let shown = Value::new(Kind::Offset, amount.abs()).show(cx.system);
            format!("{} {} {shown}", work.plane.name, words(amount.si()))
        });
        parts.collect::<Vec<_>>().join(", ")
    };
    let vertical = phrase(|work| work.up().value, |up| if up < 0.0 { "down" } else { "up" });
    let sideways =
        phrase(|work| work.right().value, |right| if right < 0.0 { "to 9 by" } else { "to 3 by" });
    [vertical, sideways].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("; ")
}

/// With its first letter large.
pub(super) fn capital_first(text: &str) -> String {
    super::super::sizes::capital(text)
}
