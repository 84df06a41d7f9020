//! What hangs on the shaft ends, and where a spacer whirls.

use couplings::kind::Spacer;
use couplings::spacer::{Hangs, Tube, overhang, whirl};
use quantities::{Kind, Length, Limits, Mass, Measured, Physical, Value};
use tables::materials::material;

use super::super::Context;
use super::super::hubs::WeightFrom;
use super::super::stage_builder::{StageBuilder, WRITTEN};
use crate::file::End;

/// Tubes this many times longer than wide bend as slender beams: a rule of our own.
const SLENDER: f64 = 5.0;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    if cx.form.is_some_and(|form| form.spacer == Spacer::With) {
        whirling(cx, out);
    }
    for end in End::BOTH {
        hanging(cx, out, end);
    }
}

fn whirling(cx: &Context, out: &mut StageBuilder) {
    let sizes = &cx.file.coupling.sheet.sizes;
    let Some(speed) = &cx.file.machines.speed else { return };
    let length = sizes.between_planes.as_ref().or(sizes.spacer_length.as_ref());
    let (Some(outside), Some(length)) = (&sizes.spacer_outside, length) else {
        let (field, what) = if sizes.spacer_outside.is_none() {
            ("spacer_outside", "outside diameter of the spacer")
        } else {
            ("spacer_length", "length of the spacer")
        };
        out.missing(
            &format!("coupling.sheet.sizes.{field}"),
            &format!("{what}, from the maker’s sheet"),
        );
        return;
    };
    if length.value() < outside.value() * SLENDER {
        out.note(
            "The spacer is shorter than five of its diameters: it whirls far above any speed of \
             this machine, and the rule for slender tubes does not hold for it.",
        );
        return;
    }
    let Some(steel) = material("steel") else { return };
    let inside = sizes.spacer_inside.as_ref().map_or_else(Length::default, Measured::value);
    let tube = Tube {
        outside: outside.value(),
        inside,
        length: length.value(),
        young: steel.elastic.young,
        density: steel.density,
    };
    let Ok(found) = whirl(tube) else {
        out.note("A spacer with such diameters has no wall: no whirling speed.");
        return;
    };
    out.number("whirl", "Whirling speed of the spacer", Value::new(Kind::Speed, found.critical))
        .second("a plain steel tube; packs or teeth that give make it lower")
        .working(found.working());
    let below = found.run_below();
    out.number("whirl_below", "Run the spacer below", Value::new(Kind::Speed, below))
        .second("0.7 of the whirling speed (common practice, from memory)")
        .working(found.margin_working());
    out.number("whirl_margin", "Speed, against the spacer’s whirling", speed.shown())
        .second("limit: 0.7 of the whirling speed (common practice, from memory)")
        .written(WRITTEN)
        .judged(Limits::at_most(below.si()), "A shorter or a wider spacer; ask the maker.");
}

/// What one shaft end carries: its parts where the hub's mass was entered or is on the sheet; else
/// half of the whole; else its parts with the hub worked out from its outline.
fn hangs(cx: &Context, end: End) -> Option<Hangs> {
    let masses = &cx.file.coupling.sheet.masses;
    let hub = cx.hub_mass(end);
    let known = hub.as_ref().is_some_and(|hub| !matches!(hub.from, WeightFrom::Outline(_)));
    if let Some(total) = masses.total.as_ref().filter(|_| !known) {
        return Some(Hangs::HalfOf(total.value()));
    }
    let part =
        |mass: &Option<Measured<Mass>>| mass.as_ref().map(Measured::value).unwrap_or_default();
    let (sleeve, spacer) = (part(&masses.sleeve), part(&masses.spacer));
    Some(Hangs::Parts { hub: hub?.mass, sleeve, spacer })
}

fn hanging(cx: &Context, out: &mut StageBuilder, end: End) {
    let Some(hangs) = hangs(cx, end) else { return };
    let name = cx.name(end);
    let Some(reach) = &cx.file.machines.at(end).overhang else {
        let masses = &cx.file.coupling.sheet.masses;
        if masses.hub.is_some() || masses.total.is_some() {
            let what = format!("from the middle of the {name}’s hub to its nearest bearing");
            out.missing(&format!("machines.{}.overhang", end.key()), &what);
        }
        return;
    };
    let Ok(found) = overhang(hangs.mass(), reach.value()) else { return };
    let mass = Value::new(Kind::Mass, hangs.mass());
    out.number(&format!("{}.hangs", end.key()), format!("Mass on the {name}’s shaft end"), mass)
        .working(hangs.working());
    let weight = Value::new(Kind::Force, found.weight).show(cx.system);
    let label = format!("Bending moment at the {name}’s bearing");
    let moment = Value::new(Kind::Torque, found.moment);
    let entry = out
        .number(&format!("{}.overhang", end.key()), label, moment)
        .second(format!("{weight} hang on its shaft end"))
        .working(found.working());
    if let Some(most) = &cx.file.machines.at(end).overhang_limit {
        entry.second(format!("{weight} hang on its shaft end; limit: as entered")).judged(
            Limits::at_most(most.value().si()),
            "A lighter coupling, or hubs closer to the bearing; ask the machine’s maker.",
        );
    }
}
