//! What the fit holds and bears as it stands.

use mechanics::interference::hub::{Grip, State};
use quantities::{Force, Kind, Length, Limits, Measured, Physical, Torque, Value};

use super::{Context, StageBuilder, allowed, needed, safety};
use crate::file::End;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End) {
    let name = cx.hub_name(end);
    let fit = cx.fit(end);
    let Some(grip) = &fit.grip else {
        if let Some(found) = fit.interference.filter(|fit| fit.value < Length::default()) {
            let sure = if found.high() > Length::default() {
                " By its ± it may also be a little tight: have heat at hand."
            } else {
                ""
            };
            out.note(format!(
                "The {name} has clearance: key and set screw hold it, the fit holds nothing.{sure}"
            ));
        }
        return;
    };
    let pressure = Value::new(Kind::Stress, grip.most.mean_pressure());
    out.number(&format!("{}.pressure", end.key()), format!("Contact pressure, {name}"), pressure)
        .second("mean over its length, at the upper end of the interference, turning")
        .working(grip.most.pressure_working());
    hub_stress(cx, out, end, grip);
    shaft_stress(cx, out, end, grip);
    torque(cx, out, end, grip);
    safeties(cx, out, end, grip);
    axial(cx, out, end, grip);
}

fn hub_stress(cx: &Context, out: &mut StageBuilder, end: End, grip: &Grip) {
    let Some((_, slice)) = grip.most.worst_slice() else { return };
    let name = cx.hub_name(end);
    let value = Value::new(Kind::Stress, slice.hub_bore.von_mises);
    let working = slice.hub_bore.working(&format!("bore of the {name}"));
    let entry = out
        .number(&format!("{}.stress", end.key()), format!("Stress at the bore, {name}"), value)
        .working(working);
    if let Some((limit, whose)) = allowed(cx, end) {
        entry
            .second(format!("at the upper end of the interference, turning; limit: {whose}"))
            .judged(
                Limits::at_most(limit.si()),
                "The bore comes too near to yielding. Take less interference, or a hub of stronger steel.",
            );
    } else {
        entry.second("no yield is known for this material: ask the maker what it bears");
    }
}

fn shaft_stress(cx: &Context, out: &mut StageBuilder, end: End, grip: &Grip) {
    let stress = |slice: &mechanics::interference::hub::SliceState| slice.shaft.von_mises.si();
    let slices = grip.most.slices.iter();
    let Some(worst) = slices.max_by(|a, b| stress(a).total_cmp(&stress(b))) else { return };
    let value = Value::new(Kind::Stress, worst.shaft.von_mises);
    let hollow = cx.file.coupling.hub(end).shaft_bore.is_some();
    let place = if hollow { "bore of the hollow shaft" } else { "surface of the shaft" };
    let entry = out
        .number(
            &format!("{}.shaft_stress", end.key()),
            format!("Stress at the {place}, {}", cx.name(end)),
            value,
        )
        .working(worst.shaft.working(place));
    if let Some(limit) = cx.shaft_yield(end) {
        entry.second("from the fit alone; limit: usual yield of its material").judged(
            Limits::at_most(limit.si()),
            "The shaft would yield under the hub. Take less interference, or plug its bore.",
        );
    } else {
        entry.second("from the fit alone");
    }
}

/// The fit where it holds least; where it may be loose, where it holds most, with nothing promised.
fn least(grip: &Grip) -> &State {
    grip.least.as_ref().unwrap_or(&grip.most)
}

fn torque(cx: &Context, out: &mut StageBuilder, end: End, grip: &Grip) {
    let low = Value::new(Kind::Torque, grip.torque.low);
    let high = out.show(&Value::new(Kind::Torque, grip.torque.high));
    let entry = out
        .number(
            &format!("{}.torque", end.key()),
            format!("Torque that the fit holds, {}", cx.hub_name(end)),
            low,
        )
        .key();
    let entry = match &grip.least {
        Some(least) => entry.working(least.torque_working(grip.friction.low)),
        None => entry.working(nothing_promised(grip, low)),
    };
    let keyed = cx.file.sizes.at(end).key.is_some();
    match needed(cx) {
        Some(torque) if !keyed => entry
            .second(format!("at least; up to {high} with the best friction; limit: needed, with safety"))
            .judged(
                Limits::at_least(torque.si()),
                "It may slip. A key, more interference, or a longer hub; or a smaller ± on the sizes.",
            ),
        Some(torque) => {
            let needed = Value::new(Kind::Torque, torque).show(cx.system);
            entry.second(format!("at least; up to {high}; {needed} needed, and {}", shared(cx)))
        }
        None => entry.second(format!("at least; up to {high} with the best friction")),
    };
}

/// How the torque is shared with the key, in words.
fn shared(cx: &Context) -> &'static str {
    match cx.file.fit.sharing {
        crate::file::Sharing::KeyAlone => "the key is judged as if it carried all of it",
        crate::file::Sharing::AfterFriction => "the key is judged on what this leaves",
    }
}

/// A fit that may be loose at the lower end of its ± holds nothing for sure.
fn nothing_promised(grip: &Grip, none: Value) -> quantities::Working {
    let source = quantities::Source::new("the lower end of the ±", "", quantities::Basis::Computed);
    quantities::Working::new("Torque held by the fit", "T = t", none, source)
        .term("t", "held at the lower end of the interference, which is none", none)
        .term(
            "i",
            "interference that presses at its upper end",
            Value::new(Kind::Allowance, grip.most.interference),
        )
}

/// Torque and axial pull at once, against service and peak.
fn safeties(cx: &Context, out: &mut StageBuilder, end: End, grip: &Grip) {
    if grip.least.is_none() {
        return;
    }
    let axial = cx.file.fit.axial.as_ref().map(Measured::value).unwrap_or_default();
    let with = if axial > Force::default() { " and axial pull" } else { "" };
    let service = cx.duty().map(mechanics::power::Duty::design_torque);
    let peak = cx.file.machines.peak_torque.as_ref().map(Measured::value);
    let keyed = cx.file.sizes.at(end).key.is_some();
    for (key, label, torque, wanted) in [
        ("safety", "torque with service factor", service, safety(cx)),
        ("safety.peak", "peak torque", peak, 1.0),
    ] {
        let Some(torque) = torque else { continue };
        let id = format!("{}.{key}", end.key());
        let label = format!("Safety against slipping, {label}{with}, {}", cx.hub_name(end));
        safety_number(out, (&id, label), grip, (torque, axial), (wanted, keyed));
    }
}

fn safety_number(
    out: &mut StageBuilder,
    (id, label): (&str, String),
    grip: &Grip,
    (torque, axial): (Torque, Force),
    (wanted, keyed): (f64, bool),
) {
    let Ok(hold) = least(grip).hold(grip.friction.low, torque, axial) else { return };
    let entry = out.number(id, label, Value::number(hold.safety)).working(hold.working());
    let second = "friction alone, at the lower end of the interference and of friction";
    if keyed {
        entry.second(format!("{second}; the key is judged apart"));
    } else {
        entry.second(second).judged(
            Limits::at_least(wanted),
            "It may slip. A key, more interference, or a longer hub; degreased surfaces hold more.",
        );
    }
}

fn axial(cx: &Context, out: &mut StageBuilder, end: End, grip: &Grip) {
    let value = Value::new(Kind::Force, grip.axial.low);
    let entry = out.number(
        &format!("{}.axial", end.key()),
        format!("Pull that the fit holds, {}", cx.hub_name(end)),
        value,
    );
    let entry = match &grip.least {
        Some(least) => entry.working(least.axial_working(grip.friction.low)),
        None => entry.working(nothing_promised(grip, value)),
    };
    let entry = entry.second("at least, while no torque is on it");
    if let Some(pull) = &cx.file.fit.axial {
        entry.judged(
            Limits::at_least(pull.value().si()),
            "It may walk along the shaft. A retaining plate or nut must hold it.",
        );
    }
}
