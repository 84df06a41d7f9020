//! Sides in words, as the hand needs them.

use lineup::Plane;
use quantities::{Kind, Length, Value};

use super::{Context, Found};
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
pub(super) fn rear(moves: End, plane: Plane, slope: f64) -> &'static str {
    let rear = if moves == End::Driver { -slope } else { slope };
    side(plane, rear)
}

pub(super) fn summary(cx: &Context, found: &Found) -> String {
    let parts: Vec<String> = Plane::BOTH
        .into_iter()
        .map(|plane| {
            let off = found.off.offset(plane, Length::default()).value;
            let shown = Value::new(Kind::Offset, off.abs()).show(cx.system);
            format!("{shown} {}", side(plane, off.value))
        })
        .collect();
    let name = cx.name(cx.file.machines.moves);
    format!("{name} stands {}, against where it is aimed", parts.join(" and "))
}

/// What to do at the feet, in one phrase for a step.
pub(super) fn moves(cx: &Context, found: &Found) -> String {
    let work = super::foot_work(cx, found);
    let phrase = |plane: Plane, words: fn(f64) -> &'static str| {
        let parts = work.iter().map(|work| {
            let amount = work.foot.amount[usize::from(plane == Plane::Sideways)].value;
            let shown = Value::new(Kind::Offset, amount.abs()).show(cx.system);
            format!("{} {} {shown}", work.foot.foot.name, words(amount.value))
        });
        parts.collect::<Vec<_>>().join(", ")
    };
    let vertical = phrase(Plane::Vertical, |up| if up < 0.0 { "down" } else { "up" });
    let sideways = phrase(Plane::Sideways, |right| if right < 0.0 { "to 9 by" } else { "to 3 by" });
    [vertical, sideways].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("; ")
}
