//! What hangs on the shaft ends, and where a spacer whirls.

use couplings::kind::Spacer;
use couplings::spacer::{Tube, overhang, whirl};
use quantities::{Kind, Length, Limits, Mass, Measured, Physical, Value};
use tables::materials::material;

use super::super::Context;
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

/// The mass on one shaft end: hub, sleeve and half the spacer, or half of the whole.
fn mass(cx: &Context, end: End) -> Option<Mass> {
    let masses = &cx.file.coupling.sheet.masses;
    if let Some(total) = &masses.total {
        return Some(total.value() / 2.0);
    }
    let part =
        |mass: &Option<Measured<Mass>>| mass.as_ref().map(Measured::value).unwrap_or_default();
    let hub = cx.hub_mass(end)?.mass;
    Some(hub + part(&masses.sleeve) + part(&masses.spacer) / 2.0)
}

fn hanging(cx: &Context, out: &mut StageBuilder, end: End) {
    let Some(mass) = mass(cx, end) else { return };
    let Some(reach) = &cx.file.machines.at(end).overhang else { return };
    let Ok(found) = overhang(mass, reach.value()) else { return };
    let weight = Value::new(Kind::Force, found.weight).show(cx.system);
    let label = format!("Bending moment at the {}’s bearing", cx.name(end));
    out.number(&format!("{}.overhang", end.key()), label, Value::new(Kind::Torque, found.moment))
        .second(format!("{weight} hang on its shaft end"))
        .working(found.working());
}
