//! The gap between hub faces, or between the seats of a disc pack.

use couplings::gap::{Readings, Target, TargetError, readings, restore, target};
use couplings::kind::GapRule;
use mechanics::Estimate;
use quantities::{Basis, Kind, Length, Limits, Measured, Physical, Source, Value};

use super::stage_builder::StageBuilder;
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::Gap;

/// ± of a feeler or gauge reading that has none of its own (common practice).
const FEELER_M: f64 = 0.03e-3;
const MOVE: &str = "Slide the hub or the machine, and read again.";
const CLOSER: &str =
    "The ± of a feeler reaches over the limit: read it with a gauge block or an inside micrometer.";
const ENTERED: Source = Source::new("This job", "gap wanted", Basis::Entered);
/// ± that a gap is restored to where neither sheet nor job gives one: a rule of our own.
const RESTORED_M: f64 = 0.25e-3;

pub(super) fn stage(cx: &Context) -> StagePlan {
    let gap = &cx.file.gap;
    let mut out = cx.stage(Stage::Gap, *gap != Gap::default());
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return out.done("no kind chosen yet") };
    let rule = kind.gap_rule(form);
    out.note(rule.says());
    let wanted = wanted(cx, rule);
    match &wanted {
        Ok(target) => set(cx, &mut out, rule, target),
        Err(TargetError::Missing(field)) => {
            let what = if rule == GapRule::SeatsEqualPack {
                "free length of pack and spacer"
            } else {
                "gap between hubs"
            };
            out.missing(
                &format!("coupling.sheet.{field}"),
                &format!("{what}, from the maker’s sheet"),
            );
        }
    }
    let found = found(gap);
    taken(cx, &mut out, rule, wanted.as_ref().ok(), found.as_ref());
    restoring(gap, &mut out, found.as_ref());
    growth(cx, &mut out, wanted.as_ref().ok());
    out.done(summary(cx, wanted.ok().as_ref()))
}

fn summary(cx: &Context, wanted: Option<&Target>) -> String {
    let taken = cx.file.gap.readings.len();
    let set = wanted.map(|target| Value::new(Kind::Gap, target.gap).show(cx.system));
    match (set, taken) {
        (None, _) => "not known what it should be".to_owned(),
        (Some(set), 0) => format!("{set}, not read yet"),
        (Some(set), taken) => format!("{set}; read at {taken} of 4 places"),
    }
}

/// What the gap should be: as wanted in the job, else as recorded before, else by the sheet.
fn wanted(cx: &Context, rule: GapRule) -> Result<Target, TargetError> {
    let gap = &cx.file.gap;
    let entered = |text: &Measured<Length>, from: &'static str| {
        let si = text.value().si();
        let spread = text.spread().map_or(RESTORED_M, Physical::si);
        Target {
            gap: text.value(),
            limits: Limits::between(si - spread, si + spread),
            from,
            source: ENTERED,
        }
    };
    if let Some(text) = &gap.wanted {
        return Ok(entered(text, "as wanted in this job"));
    }
    let planes = cx.form.map_or(couplings::kind::Planes::None, |form| form.planes);
    let sheet = target(&cx.file.coupling.sheet, rule, planes);
    match (&gap.recorded, sheet) {
        (Some(text), Err(_)) => Ok(entered(text, "as recorded before it came apart")),
        (_, sheet) => sheet,
    }
}

fn set(cx: &Context, out: &mut StageBuilder, rule: GapRule, target: &Target) {
    let id = if rule == GapRule::SeatsEqualPack { "packs" } else { "faces" };
    let label = match rule {
        GapRule::SeatsEqualPack => "Set between the seats",
        GapRule::Dbse => "Set between the shaft ends",
        GapRule::HubFaces | GapRule::FacesTouch => "Set between the hub faces",
    };
    let value = Value::new(Kind::Gap, target.gap);
    let limits = target.limits.show(&value, cx.system);
    let limits = if limits.is_empty() { String::new() } else { format!("{limits}; ") };
    out.number(id, label, value).second(format!("{limits}{}", from_words(target.from)));
}

fn from_words(from: &str) -> String {
    if from.contains('.') { "from the maker’s sheet".to_owned() } else { from.to_owned() }
}

fn found(gap: &Gap) -> Option<Readings> {
    let usual = Length::from_si(FEELER_M);
    let points: Vec<Estimate<Length>> = gap
        .readings
        .values()
        .map(|read| Estimate::new(read.value(), read.spread().unwrap_or(usual)))
        .collect();
    readings(&points).ok()
}

fn taken(
    cx: &Context,
    out: &mut StageBuilder,
    rule: GapRule,
    target: Option<&Target>,
    found: Option<&Readings>,
) {
    let limits = target.map(|target| target.limits).unwrap_or_default();
    for clock in ["12", "3", "6", "9"] {
        let label = format!("Gap at {clock} o’clock");
        let id = format!("at.{clock}");
        match cx.file.gap.readings.get(clock) {
            None => {
                let place = format!("gap.readings.{clock}");
                out.unmeasured(&id, label, &place, &format!("gap at {clock} o’clock"));
            }
            Some(read) => {
                let spread = read.spread().map_or(FEELER_M, Physical::si);
                let value = Value::new(Kind::Gap, read.value()).with_plus_minus(spread);
                let entry = out.number(&id, label, value);
                if limits != Limits::default() {
                    entry.judged(limits, MOVE).settled_by(CLOSER);
                }
            }
        }
    }
    let Some(found) = found else { return };
    let entry = out
        .number("mean", "Mean gap", found.mean.shown(Kind::Gap))
        .working(found.mean_working())
        .key();
    if limits != Limits::default() {
        entry
            .second(if rule == GapRule::FacesTouch {
                "faces touch: no feeler goes in"
            } else {
                "of the places read"
            })
            .judged(limits, MOVE)
            .settled_by(CLOSER);
    }
    out.number("spread", "Widest less narrowest", found.spread.shown(Kind::Gap))
        .second("shafts at an angle, or a face out of true")
        .working(found.spread_working());
}

fn restoring(gap: &Gap, out: &mut StageBuilder, found: Option<&Readings>) {
    let (Some(recorded), Some(found)) = (&gap.recorded, found) else { return };
    let spread = recorded.spread().unwrap_or(Length::from_si(FEELER_M));
    let restore = restore(&Estimate::new(recorded.value(), spread), &found.mean);
    out.number(
        "change",
        "Change that brings back the recorded gap",
        restore.change.shown(Kind::Gap),
    )
    .second("+ opens it")
    .working(restore.working());
}

fn growth(cx: &Context, out: &mut StageBuilder, target: Option<&Target>) {
    let gap = &cx.file.gap;
    let (Some(growth), Some(target)) = (&gap.shaft_growth, target) else { return };
    let hot = Value::new(Kind::Gap, target.gap - growth.value());
    out.number("hot", "Gap when warm, if set as above", hot)
        .second(format!("the shafts grow {} towards each other", growth.text()));
    let axial = &cx.file.coupling.sheet.allows.running.axial;
    if let Some(axial) = axial {
        let used = Value::new(Kind::Gap, growth.value());
        out.number("travel", "Axial travel used by growth", used)
            .second("limit: the sheet, running, to one side of the set position")
            .judged(
                Limits::at_most(axial.value().si()),
                "Set it wider cold by part of the growth; the maker says how much.",
            );
    }
    out.note(format!(
        "To have it right when warm, set it wider cold by the growth: {}.",
        Value::new(Kind::Gap, target.gap + growth.value()).show(cx.system)
    ));
}
