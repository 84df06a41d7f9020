//! The gap as read round the hubs, against what it is to be cold.

use couplings::gap::{Readings, SpreadMost, Target, readings, restore, spread_most};
use couplings::kind::{GapRule, Spacer};
use mechanics::Estimate;
use quantities::{Basis, Kind, Length, Limits, Measured, Physical, Source, Value};
use tables::alignment;
use tables::limits::RIGID_FLANGE_FEELER;

use super::super::Context;
use super::super::stage_builder::{StageBuilder, WRITTEN};
use crate::file::{End, Gap};

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
    spread(cx, out, rule, found);
    restoring(&cx.file.gap, out, found);
}

/// How much the gap differs round the hubs, against the angle that is allowed.
fn spread(cx: &Context, out: &mut StageBuilder, rule: GapRule, found: &Readings) {
    let most = (rule != GapRule::FacesTouch).then(|| spread_limit(cx, out)).flatten();
    let entry = out
        .number("spread", "Widest less narrowest", found.spread.shown(Kind::Gap))
        .second("shafts at an angle, or a face out of true")
        .working(found.spread_working());
    let limit = match (rule, &most) {
        (GapRule::FacesTouch, _) => {
            Some((RIGID_FLANGE_FEELER.most.si(), "the feeler that must not go in"))
        }
        (_, Some((most, whose))) => Some((most.most.si(), *whose)),
        (_, None) => None,
    };
    let Some((limit, whose)) = limit else { return };
    entry
        .second(format!("shafts at an angle, or a face out of true; limit: {whose}"))
        .judged(
            Limits::at_most(limit),
            "Turn one shaft half round and read again: what turns with it is a face out of true, \
             what stays is the angle; line up closer.",
        )
        .settled_by(CLOSER);
    if let Some((most, _)) = most {
        let source = Source::new("the angle allowed, across the faces", "", Basis::Computed);
        let working = most.working(source);
        out.number("spread.most", "Widest less narrowest, at most", working.result)
            .working(working);
    }
}

/// By the sheet's angle at fitting, else by the line-up's rule by speed.
fn spread_limit(cx: &Context, out: &mut StageBuilder) -> Option<(SpreadMost, &'static str)> {
    let fitting = cx.file.coupling.sheet.allows.fitting.angle.as_ref().map(Measured::value);
    let speed = cx.file.machines.speed.as_ref().map(Measured::value);
    let spacer = cx.form.is_some_and(|form| form.spacer == Spacer::With);
    let by_speed = || {
        let speed = speed?;
        let short = || alignment::short(speed).map(|rule| rule.slope_limit);
        if spacer { alignment::spacer(speed).map(|rule| rule.slope_limit) } else { short() }
    };
    let limit = fitting.map(|angle| (angle, "the sheet’s angle at fitting, across the faces"));
    let (angle, whose) =
        limit.or_else(|| Some((by_speed()?, "the line-up’s rule by speed, across the faces")))?;
    let faces = End::BOTH.into_iter().filter_map(|end| cx.hub_outside(end));
    let Some(faces) = faces.reduce(|least, one| if one < least { one } else { least }) else {
        out.missing(
            "coupling.driver.outside",
            "outside diameter of the hub, where the gap is read",
        );
        return None;
    };
    Some((spread_most(angle, faces).ok()?, whose))
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
