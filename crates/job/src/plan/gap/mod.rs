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
    /// Between what that is.
    between: Between,
    /// How far the hubs stand out of their shafts, the driver's and the driven; `None` when nothing
    /// was entered, so that they count as flush.
    hubs_out: Option<[Length; 2]>,
    /// What the sheet lacks for it.
    pub lacks: Option<&'static str>,
    /// What the shafts grow into it.
    pub growth: Option<Growth>,
    /// As read, at the middle of the hubs.
    pub read: Option<Readings>,
}

pub(super) fn found(cx: &Context) -> Found {
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return Found::default() };
    let rule = kind.gap_rule(form);
    let (wanted, between, lacks) = match wanted(cx, rule) {
        Ok((target, between)) => (Some(target), between, None),
        Err(TargetError::Missing(field)) => (None, Between::HubFaces, Some(field)),
    };
    let ends = crate::file::End::BOTH.map(|end| cx.file.gap.at(end).hub_out.as_ref());
    let told = ends.iter().any(Option::is_some) && rule != GapRule::FacesTouch;
    let hubs_out = told.then(|| ends.map(|out| out.map(Measured::value).unwrap_or_default()));
    let (growth, read) = (growth::growth(cx), readings::found(&cx.file.gap));
    Found { wanted, between, hubs_out, lacks, growth, read }
}

/// Between what a distance is meant. What is read with hubs on is between their faces.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Between {
    /// Hub faces, or the seats of packs.
    #[default]
    HubFaces,
    /// Shaft ends.
    ShaftEnds,
}

/// What the gap should be, and between what: as wanted in the job, else by the sheet, else as
/// recorded before.
fn wanted(cx: &Context, rule: GapRule) -> Result<(Target, Between), TargetError> {
    let ends = if rule == GapRule::Dbse { Between::ShaftEnds } else { Between::HubFaces };
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
        return Ok((entered(text, "as wanted in this job"), ends));
    }
    let planes = cx.form.map_or(couplings::kind::Planes::None, |form| form.planes);
    let sheet = target(&cx.file.coupling.sheet, rule, planes);
    match (&gap.recorded, sheet) {
        (Some(text), Err(_)) => {
            Ok((entered(text, "as recorded before it came apart"), Between::HubFaces))
        }
        (_, sheet) => sheet.map(|sheet| {
            let ends = sheet.from.starts_with("gap.dbse");
            let between = if ends { Between::ShaftEnds } else { Between::HubFaces };
            (sheet, between)
        }),
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

    /// How much less there is between the hub faces than between what is meant.
    fn taken_by_hubs(&self) -> Length {
        match (self.between, self.hubs_out) {
            (Between::ShaftEnds, Some([one, other])) => one + other,
            _ => Length::default(),
        }
    }

    /// What to set it to, cold, between what the sheet or the job means.
    fn as_meant(&self, cx: &Context) -> Option<Target> {
        let target = self.wanted.as_ref()?;
        Some(match cx.file.gap.meant {
            // Where nothing flexes, nothing takes the growth up: it goes to a thrust bearing.
            Some(Meant::Running) if !cx.is_rigid() => wider(target, self.grown()),
            _ => target.clone(),
        })
    }

    /// What to set it to, cold, between hub faces: where it is read with the hubs on.
    pub fn cold(&self, cx: &Context) -> Option<Target> {
        self.as_meant(cx).map(|target| wider(&target, -self.taken_by_hubs()))
    }

    /// How far it stands from what the coupling is made for while cold, once it is set right; `None`
    /// where no growth is known.
    pub fn off_when_set(&self, cx: &Context) -> Option<Estimate<Length>> {
        let growth = self.growth.as_ref()?.total();
        let off = self.cold(cx)?.gap - self.made_for(cx)?;
        // A gap that nobody called one for running or standing leaves the growth out of both.
        let told = cx.file.gap.meant.is_some();
        Some(Estimate::new(off, if told { growth.plus_minus } else { Length::default() }))
    }

    /// What it will be when the machines run warm, if it is set right.
    pub fn hot(&self, cx: &Context) -> Option<Target> {
        self.cold(cx).map(|cold| wider(&cold, -self.grown()))
    }

    /// The gap that the coupling is made for, at which nothing is stretched or pushed: as meant.
    pub fn made_for(&self, cx: &Context) -> Option<Length> {
        let standing = cx.file.gap.meant == Some(Meant::Standing);
        let wanted = self.wanted.as_ref()?.gap - self.taken_by_hubs();
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
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return out.done(cx.not_chosen()) };
    let rule = kind.gap_rule(form);
    out.note(rule.says());
    let cold = cx.gap().cold(cx);
    match &cold {
        Some(target) => set(cx, &mut out, rule, target),
        None => lacking(cx, &mut out, rule),
    }
    readings::numbers(cx, &mut out, rule, cold.as_ref());
    growth::numbers(cx, &mut out);
    change::numbers(cx, &mut out, cold.as_ref());
    float::numbers(cx, &mut out, cold.as_ref());
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

/// Both distances where hubs are not flush: the one that is meant, and the other that follows.
fn set(cx: &Context, out: &mut StageBuilder, rule: GapRule, faces: &Target) {
    let found = cx.gap();
    let (Some(meant), Some(hubs_out)) = (found.as_meant(cx), found.hubs_out) else {
        let label = match (rule, found.between) {
            (GapRule::SeatsEqualPack, _) => "Set between the seats",
            (_, Between::ShaftEnds) => "Set between the shaft ends",
            (_, Between::HubFaces) => "Set between the hub faces",
        };
        set_to(cx, out, number_id(rule), label, faces);
        return;
    };
    let seats = if rule == GapRule::SeatsEqualPack { "seats" } else { "hub faces" };
    if found.between == Between::ShaftEnds {
        set_to(cx, out, "between", "Set between the shaft ends", &meant);
        let other = Flush { set: meant.gap, hubs_out, sign: -1.0 };
        let label = format!("Set between the {seats}");
        follows(cx, out, (number_id(rule), label), &other, Some(faces));
    } else {
        let label = format!("Set between the {seats}");
        set_to(cx, out, number_id(rule), &label, faces);
        let other = Flush { set: faces.gap, hubs_out, sign: 1.0 };
        follows(cx, out, ("between", "Between the shaft ends then".to_owned()), &other, None);
    }
}

fn number_id(rule: GapRule) -> &'static str {
    if rule == GapRule::SeatsEqualPack { "packs" } else { "faces" }
}

/// What is to be set, cold, as it is meant.
fn set_to(cx: &Context, out: &mut StageBuilder, id: &str, label: &str, cold: &Target) {
    let value = Value::new(Kind::Gap, cold.gap);
    let limits = limits_words(cx, cold);
    let from = from_words(cold.from);
    let growth = &cx.gap().growth;
    let warm = cx.file.gap.meant == Some(Meant::Running) && growth.is_some() && !cx.is_rigid();
    let from = if warm { format!("{from}, and what the shafts grow") } else { from };
    let entry = out.number(id, label, value).second(format!("{limits}{from}"));
    match (growth, warm) {
        (Some(growth), true) => {
            entry.working(growth.cold(cold.gap - cx.gap().grown()).working());
        }
        _ => {
            entry.written(cold.source);
        }
    }
}

/// The other distance, where hubs are not flush with their shaft ends.
fn follows(
    cx: &Context,
    out: &mut StageBuilder,
    (id, label): (&str, String),
    other: &Flush,
    limits: Option<&Target>,
) {
    let limits = limits.map_or_else(String::new, |target| limits_words(cx, target));
    out.number(id, label, Value::new(Kind::Gap, other.found()))
        .second(format!("{limits}hubs are not flush with their shafts"))
        .working(other.working());
}

/// "179.5 to 180.5 mm; ", or nothing without limits.
fn limits_words(cx: &Context, target: &Target) -> String {
    let limits = target.limits.show(&Value::new(Kind::Gap, target.gap), cx.system);
    if limits.is_empty() { limits } else { format!("{limits}; ") }
}

fn from_words(from: &str) -> String {
    if from.contains('.') { "from the maker’s sheet".to_owned() } else { from.to_owned() }
}

/// From shaft ends to hub faces, or back.
struct Flush {
    set: Length,
    /// The driver's hub, the driven one.
    hubs_out: [Length; 2],
    sign: f64,
}

impl Flush {
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
