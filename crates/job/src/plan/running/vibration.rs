//! Vibration against the zones of the machine's group and against its own past, and what a pattern
//! points to.

use couplings::running::{SIGNATURES, Signature, Support, Zone, Zones, group, slowest, zones};
use quantities::{Basis, Kind, Limits, Measured, Source, Value, Velocity, Verdict, Working, judge};

use super::super::Context;
use super::super::stage_builder::{StageBuilder, WRITTEN};

const MEND: &str = "Stop and look: line-up hot, looseness, balance, in that order.";

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    let running = &cx.file.running;
    let read = [
        ("vibration", "Vibration, largest of the housings", &running.vibration),
        ("axial", "Vibration along the shaft", &running.vibration_axial),
    ];
    let zones = zones_here(cx, out);
    let mut all_inside = true;
    for (id, label, text) in read {
        let Some(text) = text else { continue };
        all_inside &= one(out, id, label, text, zones.as_ref());
    }
    if let (Some(before), Some(zones)) = (&running.vibration_before, &zones) {
        alarm(out, before, zones);
    }
    let patterns = if all_inside { &SIGNATURES[..2] } else { &SIGNATURES[..] };
    for signature in patterns {
        out.note(in_words(signature));
    }
}

/// The zones of this machine; says how they are known and what was taken for granted.
fn zones_here(cx: &Context, out: &mut StageBuilder) -> Option<Zones> {
    let power = cx.file.machines.power.as_ref()?.value();
    if cx.file.machines.speed.as_ref().is_some_and(|speed| speed.value() < slowest()) {
        let from = Value::new(Kind::Speed, slowest()).show(cx.system);
        out.note(format!(
            "Vibration zones are held from {from} up (ISO 10816-3); go by its own past."
        ));
        return None;
    }
    let Some(group) = group(power) else {
        out.note("Vibration zones are held from 15 kW up (ISO 10816-3); go by its own past.");
        return None;
    };
    let support = cx.file.running.support;
    let found = zones(group, support.unwrap_or(Support::Rigid));
    let shown = |velocity: Velocity| Value::new(Kind::Velocity, velocity);
    let base = match support {
        Some(Support::Flexible) => "a flexible base",
        Some(Support::Rigid) => "a firm base",
        None => "a firm base, which is taken until its support is entered",
    };
    out.note(format!(
        "Vibration, r.m.s., on {base}: as new up to {}, fit to run on up to {}, for a limited time \
         up to {} ({}; pumps have a part of their own, ISO 10816-7). A change from its own past is \
         worth more than a level.",
        shown(found.a_b).digits(cx.system),
        shown(found.b_c).digits(cx.system),
        shown(found.c_d).show(cx.system),
        found.source
    ));
    Some(found)
}

/// True when it is inside, or nothing is held against it.
fn one(
    out: &mut StageBuilder,
    id: &str,
    label: &str,
    text: &Measured<Velocity>,
    zones: Option<&Zones>,
) -> bool {
    let value = text.shown_as(Kind::Velocity);
    let entry = out.number(id, label, value).written(WRITTEN);
    let Some(zones) = zones else { return true };
    let limits = Limits::at_most(zones.b_c.value);
    entry
        .second(format!("{}; limit: fit to run on", zone_words(zones.of(&value))))
        .judged(limits, MEND);
    judge(&value, &limits) == Verdict::Inside
}

fn zone_words([best, worst]: [Zone; 2]) -> String {
    let word = |zone| match zone {
        Zone::A => "as new",
        Zone::B => "fit to run on",
        Zone::C => "for a limited time",
        Zone::D => "likely to do damage",
    };
    if best == worst { word(best).to_owned() } else { format!("{} or {}", word(best), word(worst)) }
}

/// Where an alarm is set over the machine's own past.
fn alarm(out: &mut StageBuilder, before: &Measured<Velocity>, zones: &Zones) {
    let alarm = Value::new(Kind::Velocity, zones.alarm(before.value()));
    let source = Source::new("ISO 10816 series", "to be confirmed", Basis::Memory);
    let working =
        Working::new("Alarm over its own past", "a = b + Z/4, at most 1.25·Z", alarm, source)
            .term("b", "vibration before, or usual", before.shown_as(Kind::Velocity))
            .term("Z", "upper end of what is fit to run on", Value::new(Kind::Velocity, zones.b_c));
    out.number("alarm", "Alarm over its own past", alarm)
        .second("a quarter of the zone’s end above what is usual for it")
        .working(working);
}

fn in_words(signature: &Signature) -> String {
    let Signature { fault, orders, direction, phase, source } = signature;
    format!("How {fault} shows: {direction}, {orders}; {phase} ({source}).")
}
