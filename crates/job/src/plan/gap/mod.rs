//! The gap between hub faces, or between the seats of a disc pack: what it should be cold, what it
//! was read as, what it will be running, and what brings it there.

mod change;
mod float;
mod growth;
mod readings;

use couplings::gap::{Readings, Target, TargetError, target};
use couplings::kind::GapRule;
use mechanics::Estimate;
use quantities::{Basis, Kind, Length, Limits, Measured, Physical, Source, Value};

use self::growth::Growth;
use super::stage_builder::StageBuilder;
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::{Gap, Meant};

const ENTERED: Source = Source::new("This job", "gap wanted", Basis::Entered);
/// ± that a gap is restored to where neither sheet nor job gives one: a rule of our own.
const RESTORED_M: f64 = 0.25e-3;

/// The gap as far as it is known.
#[derive(Clone, Debug, Default)]
pub(super) struct Found {
    /// As the sheet or the job means it.
    wanted: Option<Target>,
    /// What the sheet lacks for it.
    pub lacks: Option<&'static str>,
    /// What the shafts grow into it.
    pub growth: Option<Growth>,
    /// As read, at the middle of the hubs.
    pub read: Option<Readings>,
}

pub(super) fn found(cx: &Context) -> Found {
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return Found::default() };
    let (wanted, lacks) = match wanted(cx, kind.gap_rule(form)) {
        Ok(target) => (Some(target), None),
        Err(TargetError::Missing(field)) => (None, Some(field)),
    };
    Found { wanted, lacks, growth: growth::growth(cx), read: readings::found(&cx.file.gap) }
}

/// What the gap should be: as wanted in the job, else by the sheet, else as recorded before.
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

/// A target that is so much wider.
fn wider(target: &Target, by: Length) -> Target {
    let shifted = |limit: Option<f64>| limit.map(|limit| limit + by.si());
    let limits =
        Limits { least: shifted(target.limits.least), greatest: shifted(target.limits.greatest) };
    Target { gap: target.gap + by, limits, ..target.clone() }
}

impl Found {
    /// What the shafts grow into the gap, both together.
    fn grown(&self) -> Length {
        self.growth.as_ref().map_or_else(Length::default, |growth| growth.total().value)
    }

    /// What to set it to, cold.
    pub fn cold(&self, cx: &Context) -> Option<Target> {
        let target = self.wanted.as_ref()?;
        Some(match cx.file.gap.meant {
            Some(Meant::Running) => wider(target, self.grown()),
            Some(Meant::Standing) | None => target.clone(),
        })
    }

    /// What it will be when the machines run warm, if it is set right.
    pub fn hot(&self, cx: &Context) -> Option<Target> {
        self.cold(cx).map(|cold| wider(&cold, -self.grown()))
    }

    /// The gap that the coupling is made for, at which nothing is stretched or pushed: as meant.
    pub fn made_for(&self, cx: &Context) -> Option<Length> {
        let standing = cx.file.gap.meant == Some(Meant::Standing);
        let wanted = self.wanted.as_ref()?.gap;
        // A maker who gives the cold gap has taken the growth in: it is right when warm.
        Some(if standing { wanted - self.grown() } else { wanted })
    }

    /// What it will be when the machines run warm, as it was read.
    pub fn running(&self, cx: &Context) -> Option<Estimate<Length>> {
        let mean = self.read.as_ref()?.mean;
        let shift = growth::shift(cx);
        let growth = self.growth.as_ref().map(Growth::total);
        let growth = growth.unwrap_or(Estimate::exact(Length::default()));
        Some(mean.less(&shift).less(&growth))
    }
}

pub(super) fn stage(cx: &Context) -> StagePlan {
    let gap = &cx.file.gap;
    let mut out = cx.stage(Stage::Gap, *gap != Gap::default());
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return out.done("no kind chosen yet") };
    let rule = kind.gap_rule(form);
    out.note(rule.says());
    let cold = cx.gap().cold(cx);
    match &cold {
        Some(target) => set(cx, &mut out, rule, target),
        None => lacking(cx, &mut out, rule),
    }
    readings::numbers(cx, &mut out, rule, cold.as_ref());
    growth::numbers(cx, &mut out, rule);
    change::numbers(cx, &mut out, cold.as_ref());
    float::numbers(cx, &mut out, rule, cold.as_ref());
    out.done(summary(cx, cold.as_ref()))
}

fn summary(cx: &Context, cold: Option<&Target>) -> String {
    let taken = cx.file.gap.readings.len();
    let set = cold.map(|target| Value::new(Kind::Gap, target.gap).show(cx.system));
    match (set, taken) {
        (None, _) => "not known what it should be".to_owned(),
        (Some(set), 0) => format!("{set}, not read yet"),
        (Some(set), taken) => format!("{set}; read at {taken} of 4 places"),
    }
}

fn lacking(cx: &Context, out: &mut StageBuilder, rule: GapRule) {
    let Some(field) = cx.gap().lacks else { return };
    let what = if rule == GapRule::SeatsEqualPack {
        "free length of pack and spacer"
    } else {
        "gap between hubs"
    };
    out.missing(&format!("coupling.sheet.{field}"), &format!("{what}, from the maker’s sheet"));
}

fn set(cx: &Context, out: &mut StageBuilder, rule: GapRule, cold: &Target) {
    let id = if rule == GapRule::SeatsEqualPack { "packs" } else { "faces" };
    let label = match rule {
        GapRule::SeatsEqualPack => "Set between the seats",
        GapRule::Dbse => "Set between the shaft ends",
        GapRule::HubFaces | GapRule::FacesTouch => "Set between the hub faces",
    };
    let value = Value::new(Kind::Gap, cold.gap);
    let limits = cold.limits.show(&value, cx.system);
    let limits = if limits.is_empty() { String::new() } else { format!("{limits}; ") };
    let from = from_words(cold.from);
    let warm = cx.file.gap.meant == Some(Meant::Running) && cx.gap().growth.is_some();
    let from = if warm { format!("{from}, and what the shafts grow") } else { from };
    let entry = out.number(id, label, value).second(format!("{limits}{from}"));
    match (&cx.gap().growth, warm) {
        (Some(growth), true) => {
            entry.working(growth.cold(cold.gap - cx.gap().grown()).working());
        }
        _ => {
            entry.written(cold.source);
        }
    }
    flush(cx, out, rule, cold);
}

fn from_words(from: &str) -> String {
    if from.contains('.') { "from the maker’s sheet".to_owned() } else { from.to_owned() }
}

/// The other distance, where hubs are not flush with their shaft ends.
fn flush(cx: &Context, out: &mut StageBuilder, rule: GapRule, cold: &Target) {
    let gap = &cx.file.gap;
    let out_of = |end| gap.at(end).hub_out.as_ref().map(Measured::value);
    let ends = crate::file::End::BOTH.map(out_of);
    if ends == [None, None] || rule == GapRule::FacesTouch {
        return;
    }
    let hubs_out = ends.map(Option::unwrap_or_default);
    let between = Between { set: cold.gap, hubs_out, sign: sign(rule) };
    let label = if rule == GapRule::Dbse {
        "Between the hub faces then"
    } else {
        "Between the shaft ends then"
    };
    out.number("between", label, Value::new(Kind::Gap, between.found()))
        .second("hubs are not flush with their shafts")
        .working(between.working());
}

/// Hubs that stand out come closer than their shaft ends.
fn sign(rule: GapRule) -> f64 {
    if rule == GapRule::Dbse { -1.0 } else { 1.0 }
}

/// From shaft ends to hub faces, or back.
struct Between {
    set: Length,
    /// The driver's hub, the driven one.
    hubs_out: [Length; 2],
    sign: f64,
}

impl Between {
    fn found(&self) -> Length {
        self.set + (self.hubs_out[0] + self.hubs_out[1]) * self.sign
    }

    fn working(&self) -> quantities::Working {
        let shown = |length| Value::new(Kind::Gap, length);
        let formula = if self.sign < 0.0 { "b = s − o1 − o2" } else { "b = s + o1 + o2" };
        let source = Source::new("hub faces and shaft ends on one axis", "", Basis::Computed);
        let name = "Hub faces and shaft ends";
        quantities::Working::new(name, formula, shown(self.found()), source)
            .term("s", "as set", shown(self.set))
            .term("o1", "driver’s hub beyond its shaft’s end", shown(self.hubs_out[0]))
            .term("o2", "driven hub beyond its shaft’s end", shown(self.hubs_out[1]))
    }
}
