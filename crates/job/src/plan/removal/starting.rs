//! What to do with a hub that the puller does not start: in words, for the step that pulls it.

use quantities::{Force, Kind, Value};

use super::super::{Context, Number, heat};
use super::{hold, margin};
use crate::file::End;

/// What stands in the step until the puller is on it, and what when it does not start. A blank in it
/// is filled like any other.
pub(in crate::plan) fn starting(cx: &Context, numbers: &[Number], end: End) -> String {
    [too_small(cx, end), Some(stuck(cx, numbers, end))].into_iter().flatten().collect()
}

/// That the puller at hand does not bear the pull.
fn too_small(cx: &Context, end: End) -> Option<String> {
    let puller = hold::at_hand(cx)?;
    let pull = cx.removal(end)?.pull.force.high;
    let shown = |force: Force| Value::new(Kind::Force, force).show(cx.system);
    (pull * margin(cx) > puller).then(|| {
        format!(
            "The puller at hand, {}, does not bear {} with its margin: a larger one first. ",
            shown(puller),
            shown(pull)
        )
    })
}

fn stuck(cx: &Context, numbers: &[Number], end: End) -> String {
    if cx.file.removal.heat_allowed == Some(false) {
        return "If it does not start: no heat here, so more time under load, oil pressure where \
                the hub is made for it, or a larger puller."
            .to_owned();
    }
    let id = format!("removal.{}.temperature", end.key());
    let frees = numbers.iter().find(|number| number.id == id).and_then(|number| number.value);
    let limit = heat::limit(cx, end).map(|(limit, _)| Value::new(Kind::Temperature, limit));
    match (frees, limit) {
        (Some(frees), Some(limit)) if frees.si > limit.si => format!(
            "If it does not start: the heat that would free it, {}, is over its limit. Heat it \
             fast and all round to {} and no further, the shaft kept cool, with the puller loaded.",
            frees.show(cx.system),
            limit.show(cx.system)
        ),
        _ => format!(
            "If it does not start, heat the hub fast and all round towards {{{id}}}, the shaft kept \
             cool, and pull before the shaft warms."
        ),
    }
}
