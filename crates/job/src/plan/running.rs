//! The first run: what to look at, and what was read.

use quantities::{Kind, Limits, Physical};

use super::{Context, StagePlan};
use crate::Stage;

/// Vibration of a machine that may run without end: 4.5 mm/s r.m.s., the upper end of zone B for
/// machines of medium size on a firm base in ISO 20816-3; from memory.
const VIBRATION_M_S: f64 = 4.5e-3;

pub(super) fn stage(cx: &Context) -> StagePlan {
    let running = &cx.file.running;
    let begun = *running != crate::file::Running::default();
    let mut out = cx.stage(Stage::Running, begun);
    if let Some(vibration) = &running.vibration {
        let most = Limits::at_most(VIBRATION_M_S);
        out.number(
            "vibration",
            "Vibration, largest of the housings",
            vibration.shown_as(Kind::Velocity),
        )
        .second("upper end of zone B, ISO 20816-3, firm base; from memory")
        .judged(most, "Stop and look: line-up hot, looseness, balance, in that order.");
    }
    if let Some(temperature) = &running.temperature {
        out.number("temperature", "Outside of the coupling after the run", temperature.shown())
            .second("a coupling much warmer than its machines is short of grease or out of line");
    }
    if let Some(kind) = cx.kind {
        for check in kind.checks_after_start() {
            out.note(format!(
                "{}: {}. If not: {}.",
                check.look,
                trimmed(check.right),
                trimmed(check.wrong)
            ));
        }
        if let Some(lubrication) = kind.lubrication() {
            let [shortest, longest] = lubrication.months;
            out.note(format!(
                "Open and regrease after {shortest} to {longest} months ({}); the maker’s sheet comes first.",
                lubrication.source
            ));
        }
    }
    let ran = running.ran_for.as_ref().is_some_and(|time| time.value().si() > 0.0);
    out.done(match (begun, ran) {
        (false, _) => "not run yet",
        (true, false) => "read after the first start",
        (true, true) => "run, read hot",
    })
}

fn trimmed(text: &str) -> &str {
    text.trim_end_matches('.')
}
