//! What the ways off load: puller, its screw, ram and bolts, the hub where it is held, the oil.

use mechanics::pull::hold::{Jaws, thread_shear};
use mechanics::pull::{
    puller_bolt_stress, ram_force, ram_force_working, ram_pressure, ram_working, screw_torque,
};
use quantities::{
    Basis, Force, Kind, Length, Limits, Measured, Physical, Pressure, Source, Value, Whole, Working,
};
use tables::bolts::thread;
use tables::nut_factor::{Threads, nut_factor};
use tables::pullers::{DILATION, Drive, PUMP_MPA};

use super::super::Context;
use super::super::stage_builder::StageBuilder;
use super::ways::{is_rough, warmer};
use super::{Found, margin};
use crate::file::End;

/// Shear yield over yield, by von Mises.
const SHEAR_YIELD: f64 = 0.577;

/// A screw puller where its screw is written and no ram is; else hydraulic.
pub(super) fn drive(cx: &Context) -> Drive {
    let ram = cx.file.removal.ram_area.is_some();
    if screw(cx).is_some() && !ram { Drive::Screw } else { Drive::Hydraulic }
}

pub(super) fn drive_words(drive: Drive) -> &'static str {
    match drive {
        Drive::Screw => "screw",
        Drive::Hydraulic => "hydraulic",
    }
}

/// The force that the puller at hand is good for: as written, else that of its ram.
pub(super) fn at_hand(cx: &Context) -> Option<Force> {
    let removal = &cx.file.removal;
    let ram = || {
        let (area, pressure) = (removal.ram_area.as_ref()?, removal.ram_pressure.as_ref()?);
        ram_force(pressure.value(), area.value()).ok()
    };
    removal.puller.as_ref().map(Measured::value).or_else(ram)
}

/// Diameter of the puller's screw: as written, else that of its thread.
pub(super) fn screw(cx: &Context) -> Option<Length> {
    let removal = &cx.file.removal;
    let own = removal.screw.as_ref().map(Measured::value);
    own.or_else(|| thread(&removal.screw_thread).map(|thread| thread.diameter))
}

/// Numbers of the ways that are worth a working.
pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End, found: &Found) {
    let pull = found.pull.force.high;
    if is_rough(cx, end) {
        warm(cx, out, end, found);
    }
    on_the_screw(cx, out, end, pull);
    ram(cx, out, end, pull);
    puller_bolts(cx, out, end, pull);
    threads(cx, out, end, pull);
    jaws(cx, out, end, pull);
    if cx.file.removal.at(end).oil_port == Some(true) {
        dilation(cx, out, end, found.pressure);
    }
}

fn warm(cx: &Context, out: &mut StageBuilder, end: End, found: &Found) {
    let left = Value::new(Kind::Force, found.warm.force.high);
    let label = format!("Pull left on the {}, warm", cx.hub_name(end));
    out.number(&format!("{}.force_warm", end.key()), label, left)
        .second(format!(
            "rough: all of the hub {} warmer than its shaft, as rings",
            warmer().show(cx.system)
        ))
        .working(found.warm.working());
}

fn on_the_screw(cx: &Context, out: &mut StageBuilder, end: End, pull: Force) {
    let (key, name) = (end.key(), cx.hub_name(end));
    if let Some(screw) = screw(cx)
        && let Ok(torque) = screw_torque(nut_factor(Threads::Lubricated), pull, screw)
    {
        let label = format!("Torque on the puller’s screw, {name}");
        out.number(&format!("{key}.screw"), label, Value::new(Kind::Torque, torque.torque))
            .second("for the upper end of the pull, screw well greased")
            .working(torque.working());
    }
    let written = &cx.file.removal.screw_thread;
    let Some(thread) = thread(written) else {
        if !written.is_empty() {
            out.note_once(format!("“{written}” is no thread that is held: the stress in the puller’s screw is not worked out."));
        }
        return;
    };
    let Ok(stress) = ram_pressure(pull, thread.stress_area) else { return };
    let value = Value::new(Kind::Stress, stress);
    let source = Source::new("force over area", "", Basis::Computed);
    let working = Working::new("Stress in the puller’s screw", "s = F/A", value, source)
        .term("F", "pull, upper end", Value::new(Kind::Force, pull))
        .term("A", "stress area of the screw", Value::new(Kind::Area, thread.stress_area))
        .valid("pushed square; the wrench’s torque comes on top, hence half the yield strength");
    let label = format!("Stress in the puller’s screw, {name}");
    let entry = out.number(&format!("{key}.screw_stress"), label, value).working(working);
    if let Some(limit) = &cx.file.removal.stud_yield {
        entry.second("limit: half the yield strength of studs and screw (common practice)").judged(
            Limits::at_most(limit.value().si() / 2.0),
            "A larger screw, or a ram; heat with the pull.",
        );
    }
}

/// What the gauge shows at the pull, against what ram and pump may have.
fn ram(cx: &Context, out: &mut StageBuilder, end: End, pull: Force) {
    let removal = &cx.file.removal;
    let Some(area) = removal.ram_area.as_ref().map(Measured::value) else { return };
    let most = removal.ram_pressure.as_ref().map(Measured::value);
    let (key, name) = (end.key(), cx.hub_name(end));
    if let Some(most) = most
        && removal.puller.is_none()
        && let (Ok(force), Ok(working)) = (ram_force(most, area), ram_force_working(most, area))
    {
        let value = Value::new(Kind::Force, force);
        out.number(&format!("{key}.ram_force"), format!("The ram is good for, {name}"), value)
            .second(format!("limit: {} times the pull", margin(cx)))
            .working(working)
            .judged(
                Limits::at_least(pull.si() * margin(cx)),
                "A larger ram, or heat with the pull. Never more pressure than it may have.",
            );
    }
    let (Ok(pressure), Ok(working)) = (ram_pressure(pull, area), ram_working(pull, area)) else {
        return;
    };
    let value = Value::new(Kind::Pressure, pressure);
    let label = format!("Gauge of the ram at the pull, {name}");
    let entry = out.number(&format!("{key}.ram"), label, value).working(working);
    let entry =
        entry.second("for the upper end of the pull; stop there and look for what still holds");
    if let Some(most) = most {
        entry.judged(
            Limits::at_most(most.si()),
            "A larger ram, or heat with the pull. Never more pressure than it may have.",
        );
    }
}

/// Tension in the bolts of the puller holes, against their yield strength.
fn puller_bolts(cx: &Context, out: &mut StageBuilder, end: End, pull: Force) {
    let hold = cx.file.removal.at(end);
    let Some((Whole(count), thread)) = hold.holes.zip(thread(&hold.hole_thread)) else { return };
    let Ok(stress) = puller_bolt_stress(pull, count, thread.stress_area) else { return };
    let value = Value::new(Kind::Stress, stress);
    let source = Source::new("tension shared alike by the bolts", "", Basis::Computed);
    let working = Working::new("Stress in the puller’s bolts", "s = F/(n·A)", value, source)
        .term("F", "pull, upper end", Value::new(Kind::Force, pull))
        .term("n", "bolts", Value::count(count))
        .term("A", "stress area of one", Value::new(Kind::Area, thread.stress_area))
        .valid("a stiff bar set square, all bolts alike");
    let label = format!("Stress in the puller’s bolts, {}", cx.hub_name(end));
    let entry = out.number(&format!("{}.bolts", end.key()), label, value).working(working);
    match cx.file.removal.stud_yield.as_ref().map(Measured::value) {
        Some(limit) => {
            entry.second("limit: half their yield strength (common practice)").judged(
                Limits::at_most(limit.si() / 2.0),
                "More or stronger bolts, or heat with the pull.",
            );
        }
        None => out.missing("removal.stud_yield", "yield strength of the puller’s bolts"),
    }
}

/// Shear in the hub's own threads.
fn threads(cx: &Context, out: &mut StageBuilder, end: End, pull: Force) {
    let hold = cx.file.removal.at(end);
    let Some((Whole(count), thread)) = hold.holes.zip(thread(&hold.hole_thread)) else { return };
    let Some(depth) = hold.hole_depth.as_ref().map(Measured::value) else {
        let place = format!("removal.{}.hole_depth", end.key());
        out.missing(&place, "length of thread that the puller’s bolts engage");
        return;
    };
    let Ok(shear) = thread_shear(pull, count, thread.diameter, depth) else { return };
    let value = Value::new(Kind::Stress, shear.stress);
    let label = format!("Shear in the threads of the puller holes, {}", cx.hub_name(end));
    let entry =
        out.number(&format!("{}.threads", end.key()), label, value).working(shear.working());
    if let Some((limit, whose)) = cx.hub_yield(end) {
        entry.second(format!("limit: half of what shears the hub, 0.577 of its yield ({whose})")).judged(
            Limits::at_most(SHEAR_YIELD * limit.si() / 2.0),
            "More holes or deeper thread, or heat with the pull: stripped holes leave nothing to pull by.",
        );
    }
}

/// Pressure under the jaws, and bending of the flange that they hold by.
fn jaws(cx: &Context, out: &mut StageBuilder, end: End, pull: Force) {
    let hold = cx.file.removal.at(end);
    let read = |text: &crate::file::Text<Length>| text.as_ref().map(Measured::value);
    let (Some(Whole(count)), Some(width), Some(grip)) =
        (hold.jaws, read(&hold.jaw_width), read(&hold.jaw_grip))
    else {
        return;
    };
    let jaws = Jaws { count, width, grip };
    let (key, name) = (end.key(), cx.hub_name(end));
    let limits = cx.hub_yield(end).map(|(limit, whose)| {
        (Limits::at_most(limit.si() / 2.0), format!("limit: half of the hub’s yield ({whose})"))
    });
    let mend = "More or wider jaws, a split plate behind the hub, or heat with the pull.";
    let mut judged = |id: &str, label: String, stress: Pressure, working: Working| {
        let value = Value::new(Kind::Stress, stress);
        let entry = out.number(&format!("{key}.{id}"), label, value).working(working);
        if let Some((limits, whose)) = &limits {
            entry.second(whose.clone()).judged(*limits, mend);
        }
    };
    if let (Ok(pressure), Ok(working)) = (jaws.bearing(pull), jaws.bearing_working(pull)) {
        judged("jaws", format!("Pressure under the jaws, {name}"), pressure, working);
    }
    let Some(thick) = read(&hold.jaw_on) else {
        let place = format!("removal.{key}.jaw_on");
        out.missing(&place, "thickness of the flange that the jaws hold by");
        return;
    };
    if let (Ok(stress), Ok(working)) =
        (jaws.bending(pull, thick), jaws.bending_working(pull, thick))
    {
        judged("jaws.bending", format!("Bending where the jaws hold, {name}"), stress, working);
    }
}

fn dilation(cx: &Context, out: &mut StageBuilder, end: End, fit: Pressure) {
    let needed = Value::new(Kind::Pressure, fit * DILATION.1);
    let working =
        Working::new("Oil pressure that lifts the hub", "o = k·p", needed, tables::pullers::SOURCE)
            .term("k", "over the pressure of the fit", Value::number(DILATION.1))
            .term("p", "pressure of the fit", Value::new(Kind::Stress, fit));
    out.number(
        &format!("{}.oil", end.key()),
        format!("Oil under the {}", cx.hub_name(end)),
        needed,
    )
    .second("limit: common hand pumps; never above what the hub’s maker allows")
    .working(working)
    .judged(Limits::at_most(PUMP_MPA * 1e6), "Heat as well, or ask the hub’s maker.");
}
