//! The first run: what to look at, what was read, and what falls due after it.

mod dues;
mod vibration;

use quantities::{Basis, Kind, Limits, Physical, Source, Value, Working};

use super::stage_builder::{StageBuilder, WRITTEN};
use super::{Context, StagePlan};
use crate::Stage;

pub use dues::Due;
pub(super) use dues::dues;

pub(super) fn stage(cx: &Context) -> StagePlan {
    let running = &cx.file.running;
    let begun = *running != crate::file::Running::default();
    let mut out = cx.stage(Stage::Running, begun);
    vibration::numbers(cx, &mut out);
    temperature(cx, &mut out);
    if let Some(kind) = cx.kind {
        for check in kind.checks_after_start() {
            out.note(format!(
                "{}: {}. If not: {}.",
                check.look,
                trimmed(check.right),
                trimmed(check.wrong)
            ));
        }
    }
    for due in dues(cx) {
        out.note(due.in_words());
    }
    let ran = running.ran_for.as_ref().is_some_and(|time| time.value().si() > 0.0);
    out.done(match (begun, ran) {
        (false, _) => "not run yet",
        (true, false) => "read after the first start",
        (true, true) => "run, read hot",
    })
}

/// The outside of the coupling against its seals, and against the bearing beside it.
fn temperature(cx: &Context, out: &mut StageBuilder) {
    let running = &cx.file.running;
    let Some(temperature) = &running.temperature else { return };
    let label = "Outside of the coupling after the run";
    let entry = out
        .number("temperature", label, temperature.shown())
        .second("much warmer than its machines: short of grease, or out of line")
        .written(WRITTEN);
    if let Some(most) = &cx.file.coupling.sheet.seal_limit {
        entry.second("limit: seals or elastomer, from the sheet").judged(
            Limits::at_most(most.value().si()),
            "Stop before the seals go: grease, line-up, load, in that order.",
        );
    }
    let Some(bearing) = &running.bearing_temperature else { return };
    let rise = temperature.value().si() - bearing.value().si();
    let value = Value { kind: Kind::TemperatureDifference, si: rise, plus_minus: None };
    let source = Source::new("coupling less the warmer bearing beside it", "", Basis::Computed);
    let working = Working::new("Coupling over its bearing", "r = t − b", value, source)
        .term("t", "outside of the coupling", temperature.shown())
        .term("b", "warmer bearing beside it", bearing.shown());
    out.number("rise", "Coupling over the warmer bearing", value)
        .second("little is right; much means grease or line-up (common practice)")
        .working(working);
}

fn trimmed(text: &str) -> &str {
    text.trim_end_matches('.')
}
