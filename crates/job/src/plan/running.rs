//! The first run: what to look at, and what was read.

use couplings::dues::{After, Service, dues};
use couplings::running::{Support, group, zones};
use quantities::{Kind, Limits, Physical};

use super::stage_builder::StageBuilder;
use super::{Context, StagePlan};
use crate::Stage;

pub(super) fn stage(cx: &Context) -> StagePlan {
    let running = &cx.file.running;
    let begun = *running != crate::file::Running::default();
    let mut out = cx.stage(Stage::Running, begun);
    vibration(cx, &mut out);
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
        for due in dues(kind, &cx.file.coupling.sheet, &Service::default()) {
            let After::Months([shortest, longest]) = due.after else { continue };
            let months = if shortest == longest {
                format!("{longest}")
            } else {
                format!("{shortest} to {longest}")
            };
            out.note(format!("After {months} months: {} ({}).", due.what, due.source));
        }
    }
    let ran = running.ran_for.as_ref().is_some_and(|time| time.value().si() > 0.0);
    out.done(match (begun, ran) {
        (false, _) => "not run yet",
        (true, false) => "read after the first start",
        (true, true) => "run, read hot",
    })
}

/// The largest reading against the upper end of zone B of the machine's group on a firm base.
fn vibration(cx: &Context, out: &mut StageBuilder) {
    let Some(read) = &cx.file.running.vibration else { return };
    let value = read.shown_as(Kind::Velocity);
    let group = cx.file.machines.power.as_ref().and_then(|power| group(power.value()));
    let entry = out.number("vibration", "Vibration, largest of the housings", value);
    if let Some(group) = group {
        let zones = zones(group, Support::Rigid);
        entry.second(format!("upper end of zone B on a firm base; {}", zones.source)).judged(
            Limits::at_most(zones.b_c.si()),
            "Stop and look: line-up hot, looseness, balance, in that order.",
        );
    }
}

fn trimmed(text: &str) -> &str {
    text.trim_end_matches('.')
}
