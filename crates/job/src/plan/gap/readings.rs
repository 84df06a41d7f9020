//! The gap as read round the hubs, against what it is to be cold.

use couplings::gap::{Readings, Target, readings, restore};
use couplings::kind::GapRule;
use mechanics::Estimate;
use quantities::{Kind, Length, Limits, Physical, Value};

use super::super::Context;
use super::super::stage_builder::{StageBuilder, WRITTEN};
use crate::file::Gap;

/// ± of a feeler or gauge reading that has none of its own (common practice).
const FEELER_M: f64 = 0.03e-3;
const MOVE: &str = "Slide the hub or the machine, and read again.";
const CLOSER: &str =
    "The ± of a feeler reaches over the limit: read it with a gauge block or an inside micrometer.";

/// Mean and spread of the readings; `None` of fewer than two.
pub(super) fn found(gap: &Gap) -> Option<Readings> {
    let usual = Length::from_si(FEELER_M);
    let points: Vec<Estimate<Length>> = gap
        .readings
        .values()
        .map(|read| Estimate::new(read.value(), read.spread().unwrap_or(usual)))
        .collect();
    readings(&points).ok()
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, rule: GapRule, cold: Option<&Target>) {
    let limits = cold.map(|target| target.limits).unwrap_or_default();
    for clock in ["12", "3", "6", "9"] {
        at(cx, out, clock, limits);
    }
    let Some(found) = &cx.gap().read else { return };
    let entry = out
        .number("mean", "Mean gap", found.mean.shown(Kind::Gap))
        .working(found.mean_working())
        .key();
    if limits != Limits::default() {
        let second = if rule == GapRule::FacesTouch {
            "faces touch: no feeler goes in"
        } else {
            "of the places read"
        };
        entry.second(second).judged(limits, MOVE).settled_by(CLOSER);
    }
    out.number("spread", "Widest less narrowest", found.spread.shown(Kind::Gap))
        .second("shafts at an angle, or a face out of true")
        .working(found.spread_working());
    restoring(&cx.file.gap, out, found);
}

fn at(cx: &Context, out: &mut StageBuilder, clock: &str, limits: Limits) {
    let label = format!("Gap at {clock} o’clock");
    let id = format!("at.{clock}");
    let Some(read) = cx.file.gap.readings.get(clock) else {
        let place = format!("gap.readings.{clock}");
        out.unmeasured(&id, label, &place, &format!("gap at {clock} o’clock"));
        return;
    };
    let spread = read.spread().map_or(FEELER_M, Physical::si);
    let value = Value::new(Kind::Gap, read.value()).with_plus_minus(spread);
    let entry = out.number(&id, label, value).written(WRITTEN);
    if limits != Limits::default() {
        entry.judged(limits, MOVE).settled_by(CLOSER);
    }
}

fn restoring(gap: &Gap, out: &mut StageBuilder, found: &Readings) {
    let Some(recorded) = &gap.recorded else { return };
    let spread = recorded.spread().unwrap_or(Length::from_si(FEELER_M));
    let restore = restore(&Estimate::new(recorded.value(), spread), &found.mean);
    let label = "Change that brings back the recorded gap";
    out.number("change", label, restore.change.shown(Kind::Gap))
        .second("+ opens it")
        .working(restore.working());
}
