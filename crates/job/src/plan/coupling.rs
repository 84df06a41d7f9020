//! The coupling: its kind, and what the maker's sheet says it bears.

use couplings::kind::Planes;
use quantities::{Kind, Limits, Measured, Physical, Value};

use super::stage_builder::{SHEET, StageBuilder};
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::End;

pub(super) fn stage(cx: &Context) -> StagePlan {
    let coupling = &cx.file.coupling;
    let mut out = cx.stage(Stage::Coupling, *coupling != crate::file::Coupling::default());
    let Some((kind, form)) = cx.kind.zip(cx.form) else {
        out.missing("coupling.kind", "kind of coupling");
        return out.done("no kind chosen yet");
    };
    out.note(kind.says());
    out.note(form.says);
    forgives(cx, &mut out);
    rating(cx, &mut out);
    hubs(cx, &mut out);
    mass(cx, &mut out);
    let sheet = if coupling.sheet == couplings::Sheet::default() {
        "no sheet entered"
    } else {
        "sheet entered"
    };
    out.done(format!("{}, {sheet}", kind.title().to_lowercase()))
}

fn forgives(cx: &Context, out: &mut StageBuilder) {
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return };
    let forgives = kind.forgives(form);
    let mut parts = Vec::new();
    if let Some([low, high]) = forgives.angular() {
        let one = |angle| Value::new(Kind::Degrees, angle);
        parts.push(format!(
            "{} to {} at one engagement",
            one(low).digits(cx.system),
            out.show(&one(high))
        ));
    }
    if let Some([low, high]) = forgives.parallel() {
        let one = |length| Value::new(Kind::Offset, length);
        parts.push(format!("{} to {} of offset", one(low).digits(cx.system), out.show(&one(high))));
    }
    if let Some([low, high]) = forgives.axial() {
        let one = |length| Value::new(Kind::Length, length);
        parts.push(format!(
            "{} to {} along the shaft",
            one(low).digits(cx.system),
            out.show(&one(high))
        ));
    }
    if forgives.planes == Planes::None {
        out.note("It forgives nothing: the shafts become one.");
    } else if !parts.is_empty() {
        let source = forgives.source;
        out.note(format!("What its kind forgives: {} ({source}). That is what it survives, not what to leave it at.", parts.join(", ")));
    }
}

fn rating(cx: &Context, out: &mut StageBuilder) {
    let sheet = &cx.file.coupling.sheet;
    match (&sheet.rated_torque, &cx.duty) {
        (Some(rated), Some(duty)) => {
            let design = Value::new(Kind::Torque, duty.design_torque());
            out.number("rating", "Torque that the coupling must carry", design)
                .second("with service factor; limit: rated torque on the sheet")
                .working(duty.design_working())
                .judged(
                    Limits::at_most(rated.value().si()),
                    "A larger coupling, or ask the maker.",
                );
        }
        (None, _) => {
            out.missing("coupling.sheet.rated_torque", "rated torque, from the maker’s sheet");
        }
        _ => {}
    }
    if let (Some(most), Some(speed)) = (&sheet.max_speed, &cx.file.machines.speed) {
        out.number("speed", "Speed", speed.shown()).second("limit: the sheet, as supplied").judged(
            Limits::at_most(most.value().si()),
            "It must be balanced for this speed, or another coupling taken.",
        );
    }
    for end in End::BOTH {
        if let (Some(most), Some(bore)) = (&sheet.max_bore, &cx.file.sizes.at(end).nominal) {
            out.number(
                &format!("{}.bore", end.key()),
                format!("Bore, {}", cx.hub_name(end)),
                bore.shown_as(Kind::Size),
            )
            .second("limit: the sheet, with its key")
            .judged(
                Limits::at_most(most.value().si()),
                "The hub has too little metal left; ask the maker.",
            );
        }
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
        if let Some(hub) = cx.hub_mass(end) {
            let label = format!("Mass, {}", cx.hub_name(end));
            out.number(&format!("{}.mass", end.key()), label, hub.0).second(hub.1);
        }
    }
}
