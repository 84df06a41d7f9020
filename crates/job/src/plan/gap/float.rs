//! End float of a motor with sleeve bearings: what the coupling leaves of it, and what stays free.

use couplings::gap::Target;
use couplings::kind::FloatLimit;
use lineup::axial::{EndFloat, usual_float};
use mechanics::Estimate;
use quantities::{Basis, Kind, Length, Limits, Measured, Physical, Source, Value, Working};

use super::super::Context;
use super::super::stage_builder::{SHEET, StageBuilder};
use crate::file::End;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, faces: Option<&Target>) {
    let sheet = &cx.file.coupling.sheet.gap.end_float;
    let Some(motor) = &cx.file.gap.end_float else {
        if sheet.is_some() {
            out.missing("gap.end_float", "end float of the motor, shoulder to shoulder");
        }
        return;
    };
    pair(cx, out);
    let Some(coupling) = sheet else {
        out.missing(
            "coupling.sheet.gap.end_float",
            "end float that the coupling leaves, from the maker’s sheet",
        );
        return;
    };
    let centre = cx.file.gap.magnetic_centre.as_ref();
    if centre.is_none() {
        out.missing("gap.magnetic_centre", "magnetic centre, from the middle of the motor’s float");
        out.note("The magnetic centre is taken in the middle of the motor’s float.");
    }
    let centre = centre.map_or(Estimate::exact(Length::default()), read);
    match EndFloat::new(read(motor), centre, read(coupling)) {
        Ok(found) => {
            judged(cx, out, &found);
            plate(cx, out, &found, faces);
        }
        Err(error) => out.note(format!("No end float: {error}.")),
    }
}

fn read(text: &Measured<Length>) -> Estimate<Length> {
    Estimate::new(text.value(), text.spread().unwrap_or_default())
}

/// What goes together for a motor of this power.
fn pair(cx: &Context, out: &mut StageBuilder) {
    let power = cx.file.machines.power.as_ref().map(Measured::value);
    if let Some(usual) = power.and_then(usual_float) {
        let shown = |length| Value::new(Kind::Gap, length).show(cx.system);
        out.note(format!(
            "For a motor of this power a float of at least {} goes with a coupling that leaves at \
             most {} ({}).",
            shown(usual.rotor_least),
            shown(usual.coupling_greatest),
            usual.source
        ));
    }
}

fn judged(cx: &Context, out: &mut StageBuilder, found: &EndFloat) {
    let driver = cx.name(End::Driver);
    out.number("float", "End float that the coupling leaves", found.coupling.shown(Kind::Gap))
        .second(format!("limit: half of the {driver}’s own float (common practice)"))
        .written(SHEET)
        .judged(
            Limits::at_most(found.rotor.value.si() / 2.0),
            "Limit the float further: a thicker plate or button, as the maker has it.",
        );
    out.number("free", "Free at the nearer shoulder", found.clearance().shown(Kind::Gap))
        .second(format!("{driver} on its magnetic centre, coupling in the middle of its float"))
        .working(found.working())
        .key()
        .judged(
            Limits::at_least(0.0),
            format!("A shoulder would touch: move the {driver} along, or limit the float further."),
        );
}

/// The plate between the hub faces that lets the coupling close by half of its float and no more;
/// only where this form is limited by one.
fn plate(cx: &Context, out: &mut StageBuilder, found: &EndFloat, faces: Option<&Target>) {
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return };
    let Some(faces) = faces.filter(|_| kind.float_limit(form) == FloatLimit::Plate) else { return };
    let plate = faces.gap - found.coupling.value / 2.0;
    if plate <= Length::default() {
        return;
    }
    let shown = |length| Value::new(Kind::Gap, length);
    let source = Source::new("half of the float to either side", "", Basis::Computed);
    let working = Working::new("Plate between the hubs", "p = s − f/2", shown(plate), source)
        .term("s", "gap between the hub faces as set", shown(faces.gap))
        .term("f", "float that the coupling leaves", found.coupling.shown(Kind::Gap))
        .valid("where a plate or button between the hubs stops them; not for packs, which limit themselves");
    out.number("plate", "Plate or button between the hubs", shown(plate))
        .second("lets the hubs close by half of the float; the maker’s own comes first")
        .working(working);
}
