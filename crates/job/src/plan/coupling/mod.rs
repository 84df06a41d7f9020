//! The coupling: its kind, and whether it bears what this drive asks of it.

mod about;
mod choice;
mod rating;
mod spacer;
pub(super) mod used;

use quantities::{Kind, Measured, Value};

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
        out.missing("coupling.kind", "kind of coupling");
        return out.done("no kind chosen yet");
    };
    out.note(kind.says());
    out.note(form.says);
    about::forgives(cx, &mut out);
    rating::numbers(cx, &mut out);
    used::numbers(cx, &mut out);
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

/// What the sheet says of its twist.
fn torsion(cx: &Context, out: &mut StageBuilder) {
    let sheet = &cx.file.coupling.sheet;
    if let Some(stiffness) = &sheet.torsional_stiffness {
        out.number("stiffness", "Torsional stiffness, torque for one radian", stiffness.shown())
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

fn mass(cx: &Context, out: &mut StageBuilder) {
    if let Some(total) = cx.file.coupling.sheet.masses.total.as_ref().map(Measured::value) {
        out.number("mass", "Mass of the whole coupling", Value::new(Kind::Mass, total))
            .second("from the sheet")
            .written(SHEET);
    }
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
