//! The coupling: its kind, and whether it bears what this drive asks of it.

mod about;
mod axial;
mod choice;
mod rating;
mod spacer;
mod swing;
pub(super) mod used;

use quantities::{Kind, Measured, Physical, Value};

use super::hubs::WeightFrom;
use super::stage_builder::{SHEET, StageBuilder, WRITTEN};
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::End;

pub use about::{About, Fault, Part, Trait};
pub use choice::{Choice, KindRow};

pub(super) use about::about;
pub(super) use choice::choice;
pub(super) use rating::usual_factor;

pub(super) fn stage(cx: &Context) -> StagePlan {
    let coupling = &cx.file.coupling;
    let mut out = cx.stage(Stage::Coupling, *coupling != crate::file::Coupling::default());
    let Some((kind, form)) = cx.kind.zip(cx.form) else {
        unchosen(cx, &mut out);
        return out.done(cx.not_chosen());
    };
    out.note(kind.says());
    out.note(form.says);
    about::forgives(cx, &mut out);
    contradictions(cx, &mut out);
    rating::numbers(cx, &mut out);
    swing::numbers(cx, &mut out);
    used::numbers(cx, &mut out);
    axial::numbers(cx, &mut out);
    spacer::numbers(cx, &mut out);
    torsion(cx, &mut out);
    hubs(cx, &mut out);
    mass(cx, &mut out);
    let sheet = if coupling.sheet == couplings::Sheet::default() {
        "no sheet entered"
    } else {
        "sheet entered"
    };
    out.done(format!("{}, {sheet}", kind.title().to_lowercase()))
}

/// What is still to choose before anything can be said of it.
fn unchosen(cx: &Context, out: &mut StageBuilder) {
    let Some(kind) = cx.kind else {
        out.missing("coupling.kind", "kind of coupling");
        return;
    };
    let known: Vec<&str> = kind.forms().iter().map(|form| form.name).collect();
    let known = known.join(", ");
    let form = &cx.file.coupling.form;
    out.missing("coupling.form", &format!("how it is built, one of: {known}"));
    out.note(format!("“{form}” is no form of this kind, {}: choose one of {known}.", kind.name()));
}

/// Figures of the sheet that cannot both be right.
fn contradictions(cx: &Context, out: &mut StageBuilder) {
    for pair in couplings::contradictions::contradictions(&cx.file.coupling.sheet) {
        out.note(format!(
            "The sheet contradicts itself: {}, {}, is above {}, {}. Look both up in the manual.",
            pair.small,
            pair.small_is.show(cx.system),
            pair.large,
            pair.large_is.show(cx.system)
        ));
    }
}

/// What the sheet says of its twist.
fn torsion(cx: &Context, out: &mut StageBuilder) {
    let sheet = &cx.file.coupling.sheet;
    if let Some(stiffness) = &sheet.torsional_stiffness {
        out.number("stiffness", "Torsional stiffness, torque for one radian", stiffness.shown())
            .second("from the sheet")
            .written(SHEET);
    }
    if let Some(stiffness) = &sheet.axial_stiffness {
        out.number("axial_stiffness", "Axial stiffness", stiffness.shown())
            .second("from the sheet")
            .written(SHEET);
    }
    if let Some(backlash) = &sheet.backlash {
        out.number("backlash", "Backlash when new", backlash.shown_as(Kind::Degrees))
            .second("from the sheet")
            .written(SHEET);
    }
    if let Some(inertia) = &sheet.inertia {
        out.number("inertia", "Moment of inertia", inertia.shown())
            .second("from the sheet")
            .written(SHEET);
    }
}

fn hubs(cx: &Context, out: &mut StageBuilder) {
    for end in End::BOTH {
        let hub = cx.file.coupling.hub(end);
        let place = format!("coupling.{}", end.key());
        let name = cx.hub_name(end);
        for (key, lacks, what) in [
            ("outside", cx.hub_outside(end).is_none(), "outside diameter"),
            ("length", cx.hub_length(end).is_none(), "length"),
            ("material", cx.hub_material(end).is_empty(), "material"),
            ("shaft_material", hub.shaft_material.is_empty(), "material of the shaft in it"),
        ] {
            if lacks {
                out.missing(&format!("{place}.{key}"), &format!("{what}, {name}"));
            }
        }
    }
}

/// A part heavier than this is not lifted by one, as with hubs (common practice).
const ONE_PERSON_KG: f64 = 20.0;

/// Parts beside the hubs that nobody lifts alone.
fn heavy(cx: &Context, out: &mut StageBuilder) {
    let masses = &cx.file.coupling.sheet.masses;
    for (part, mass) in [
        ("A sleeve or half cover", &masses.sleeve),
        ("The spacer", &masses.spacer),
        ("The whole coupling", &masses.total),
    ] {
        let heavy = mass.as_ref().filter(|mass| mass.value().si() > ONE_PERSON_KG);
        let Some(mass) = heavy else { continue };
        let shown = Value::new(Kind::Mass, mass.value()).show(cx.system);
        out.note(format!(
            "{part} weighs {shown}: sling and hoist, or two people; nobody under it, and nothing \
             let go before its bolts hold (common practice)."
        ));
    }
}

fn mass(cx: &Context, out: &mut StageBuilder) {
    if let Some(total) = cx.file.coupling.sheet.masses.total.as_ref().map(Measured::value) {
        out.number("mass", "Mass of the whole coupling", Value::new(Kind::Mass, total))
            .second("from the sheet")
            .written(SHEET);
    }
    heavy(cx, out);
    for end in End::BOTH {
        let Some(hub) = cx.hub_mass(end) else { continue };
        let label = format!("Mass, {}", cx.hub_name(end));
        let id = format!("{}.mass", end.key());
        let entry = out.number(&id, label, Value::new(Kind::Mass, hub.mass));
        match hub.from {
            WeightFrom::Job => entry.second("as entered").written(WRITTEN),
            WeightFrom::Sheet => entry.second("from the sheet").written(SHEET),
            WeightFrom::Outline(found) => entry
                .second("worked out from its outline, keyway not taken out")
                .working(found.working()),
        };
    }
}
