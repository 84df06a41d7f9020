//! What a kind is, for this job: its parts with their letters and numbers, what it is like, what
//! goes wrong with it.

use couplings::kind::{Finding, GoesBack, Planes, common_findings};
use couplings::{Form, Kind};
use quantities::{Kind as Shown, System, Value, Whole};
use serde::Serialize;

use super::super::Context;
use super::super::stage_builder::StageBuilder;
use crate::file::End;

/// The kind of this job's coupling.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct About {
    /// As it is written in a job: "gear".
    pub kind: &'static str,
    /// As a heading.
    pub title: &'static str,
    /// What it is.
    pub says: &'static str,
    /// The form: "flanged sleeves".
    pub form: &'static str,
    /// What that is.
    pub form_says: &'static str,
    /// Its parts by letter, as many as this job has.
    pub parts: Vec<Part>,
    /// What it is like: what it forgives, how it takes a shock, what can be seen of it.
    pub like: Vec<Trait>,
    /// What must never be used again.
    pub never_again: Vec<&'static str>,
    /// What may be found when it is opened, its own first.
    pub faults: Vec<Fault>,
    /// How far all this may be trusted.
    pub note: &'static str,
}

/// A part of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Part {
    /// Its letter in the drawing.
    pub letter: char,
    /// Its name, with the machine's in it: "motor hub".
    pub name: String,
    /// How many; `None` while that is not known.
    pub count: Option<u32>,
    /// How many, in words: "8", "one to a bolt".
    pub how_many: String,
}

/// One thing that it is like.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Trait {
    /// What: "shock".
    pub what: &'static str,
    /// How it is.
    pub says: String,
}

/// What may be found.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fault {
    /// Its name in `inspection.seen`.
    pub id: &'static str,
    /// What is seen.
    pub seen: &'static str,
    /// True once it was seen on this job.
    pub ticked: bool,
    /// What likely did it, likeliest first.
    pub causes: &'static [&'static str],
    /// What to check next.
    pub check: &'static [&'static str],
    /// What to do before it goes back.
    pub mend: &'static [&'static str],
    /// Whether it may go back, in words.
    pub goes_back: &'static str,
    /// How it is known.
    pub source: String,
}

const NOTE: &str =
    "Common for its kind, and marked so; the maker’s sheet comes first wherever it has a figure.";

/// The kind of this job; `None` while none is chosen.
pub(in crate::plan) fn about(cx: &Context) -> Option<About> {
    let (kind, form) = cx.kind.zip(cx.form)?;
    Some(About {
        kind: kind.name(),
        title: kind.title(),
        says: kind.says(),
        form: form.name,
        form_says: form.says,
        parts: parts(cx, kind, form),
        like: like(kind, form, cx.system),
        never_again: kind.never_again(form).to_vec(),
        faults: faults(kind, &cx.file.inspection.seen),
        note: NOTE,
    })
}

fn parts(cx: &Context, kind: &dyn Kind, form: &Form) -> Vec<Part> {
    let bolts = cx.file.coupling.sheet.bolts.count.map(|Whole(count)| count);
    let circles = kind.bolt_circles(form);
    let part = |part: couplings::Part| {
        let count = part.each.count(bolts, circles);
        Part {
            letter: part.letter,
            name: cx.named(part.name),
            count,
            how_many: count.map_or_else(|| part.each.says().to_owned(), |count| count.to_string()),
        }
    };
    kind.parts(form).into_iter().map(part).collect()
}

/// What a kind in one form is like; the same traits in the same order for every kind.
pub(super) fn like(kind: &dyn Kind, form: &Form, system: System) -> Vec<Trait> {
    let (forgives, like) = (kind.forgives(form), kind.character());
    let span = |ends: Option<[Value; 2]>| match (ends, form.planes) {
        (Some([low, high]), _) => {
            format!("{} to {} ({})", low.digits(system), high.show(system), forgives.source)
        }
        (None, Planes::None) => "none".to_owned(),
        (None, _) => "the maker’s sheet says it".to_owned(),
    };
    let angle = forgives.angular().map(|ends| ends.map(|end| Value::new(Shown::Degrees, end)));
    let offset = forgives.parallel().map(|ends| ends.map(|end| Value::new(Shown::Offset, end)));
    let axial = forgives.axial().map(|ends| ends.map(|end| Value::new(Shown::Length, end)));
    let by_angle = offset.is_none() && angle.is_some();
    let offset = match form.planes {
        Planes::Two if by_angle => "from the angles and the length between them".to_owned(),
        Planes::One if by_angle => "none".to_owned(),
        _ => span(offset),
    };
    let grease = kind.lubrication().map_or("none: it runs dry", |need| need.what);
    [
        ("gives", form.planes.says().to_owned()),
        ("angle at one engagement", span(angle)),
        ("offset", offset),
        ("along the shaft", span(axial)),
        ("shock", forgives.shock.says().to_owned()),
        ("twist", forgives.twist.says().to_owned()),
        ("play", forgives.play.says().to_owned()),
        ("torsion", like.torsion.to_owned()),
        ("grease", grease.to_owned()),
        ("to be seen", like.seen.to_owned()),
        ("balance", like.balance.to_owned()),
    ]
    .into_iter()
    .map(|(what, says)| Trait { what, says })
    .collect()
}

fn faults(kind: &dyn Kind, seen: &[String]) -> Vec<Fault> {
    let all = kind.findings().iter().chain(common_findings());
    all.map(|finding| fault(finding, seen)).collect()
}

fn fault(finding: &Finding, seen: &[String]) -> Fault {
    Fault {
        id: finding.id,
        seen: finding.seen,
        ticked: seen.iter().any(|id| id == finding.id),
        causes: finding.causes,
        check: finding.check,
        mend: finding.mend,
        goes_back: match finding.goes_back {
            GoesBack::Yes => "goes back once cleaned, measured and recorded",
            GoesBack::Measure => "does not go back before it is measured against its limit",
            GoesBack::No => "does not go back: renew",
        },
        source: finding.source.to_string(),
    }
}

/// What it forgives, as one note of the stage.
pub(super) fn forgives(cx: &Context, out: &mut StageBuilder) {
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return };
    if form.planes == Planes::None {
        out.note("It forgives nothing: the shafts become one.");
        return;
    }
    let forgives = kind.forgives(form);
    let span =
        |[low, high]: [Value; 2]| format!("{} to {}", low.digits(cx.system), high.show(cx.system));
    let angle = forgives.angular().map(|ends| ends.map(|end| Value::new(Shown::Degrees, end)));
    let offset = forgives.parallel().map(|ends| ends.map(|end| Value::new(Shown::Offset, end)));
    let axial = forgives.axial().map(|ends| ends.map(|end| Value::new(Shown::Length, end)));
    let parts = [(angle, "at one engagement"), (offset, "of offset"), (axial, "along the shaft")];
    let parts: Vec<String> = parts
        .into_iter()
        .filter_map(|(ends, what)| Some(format!("{} {what}", span(ends?))))
        .collect();
    if !parts.is_empty() {
        out.note(format!(
            "What its kind forgives: {} ({}). That is what it survives, not what to leave it at.",
            parts.join(", "),
            forgives.source
        ));
    }
}

impl Context<'_> {
    /// A text with the machines by the names that this job gives them.
    pub fn named(&self, text: &str) -> String {
        let mut text = text.to_owned();
        for end in End::BOTH {
            text = text.replace(&format!("{} hub", end.key()), &self.hub_name(end));
            text = text
                .replace(&format!("{} sleeve", end.key()), &format!("{} sleeve", self.name(end)));
        }
        text
    }
}
