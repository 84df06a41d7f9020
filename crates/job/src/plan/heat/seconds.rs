//! Seconds in hand: how long a hot hub stays open on its shaft, and what comes after.
//!
//! By finite elements (`thermal`), from the job's sizes, metals and temperatures. The hub arrives
//! with the temperature that it has at the shaft, and counts as home at once.

use quantities::{
    Basis, Kind, Limits, Measured, Physical, Source, ThermodynamicTemperature, Time, Value, Working,
};
use thermal::{Grab, HotHub, Sample, ThermalError};

use super::super::sizes::capital;
use super::super::stage_builder::StageBuilder;
use super::super::{Context, Depth};
use super::ambient;
use super::bench::{Bench, bench, why_not};
use super::near;
use crate::file::{End, si};

/// What was asked and what came of it.
pub(in crate::plan) struct Found {
    pub bench: Bench,
    pub grab: Result<Grab, ThermalError>,
}

/// Cool enough for a hand and for grease (common practice for a short touch of bare metal).
const TOUCH_K: f64 = 323.15;
/// Waits shorter than this are told in seconds.
const SOON_S: f64 = 120.0;
/// Over the place's temperature, and cool enough to line up: a rule of our own.
const LINE_UP_K: f64 = 10.0;

/// `None` for a hub that needs no heat, on a taper, or while hub and metal are not known.
pub(in crate::plan) fn found(cx: &Context, end: End) -> Option<Found> {
    let (bench, asked) = asked(cx, end)?;
    Some(Found { bench, grab: asked.solve() })
}

/// What is asked of the finite elements.
pub(super) fn asked(cx: &Context, end: End) -> Option<(Bench, HotHub)> {
    if cx.taper(end).is_some() {
        return None;
    }
    let heat = cx.heat(end)?;
    let bench = bench(cx, end)?;
    let opening = &heat.heat.opening;
    let places = near::places(cx, end, bench.hub.bore);
    let shaft = near::long_enough(&bench.shaft, &places, bench.hub.bore);
    let asked = HotHub {
        surroundings: bench.surroundings,
        surfaces: bench.surfaces,
        unknowns: bench.unknowns,
        friction: bench.friction,
        grip: si(&cx.file.heat.assume.grip).unwrap_or(0.5),
        touch: coolest(cx),
        places,
        ..HotHub::new(
            bench.hub.clone(),
            shaft,
            opening.interference,
            heat.comes,
            opening.shaft_temperature,
        )
    };
    Some((bench, asked))
}

fn touch(cx: &Context) -> ThermodynamicTemperature {
    let touch = cx.file.heat.assume.touch.as_ref();
    touch.map_or(ThermodynamicTemperature::from_si(TOUCH_K), Measured::value)
}

fn line_up(cx: &Context) -> ThermodynamicTemperature {
    let within = si(&cx.file.heat.assume.line_up_within).unwrap_or(LINE_UP_K);
    ThermodynamicTemperature::from_si(ambient(cx).si() + within)
}

/// The run goes on until the last of what is asked for.
fn coolest(cx: &Context) -> ThermodynamicTemperature {
    let (touch, line_up) = (touch(cx), line_up(cx));
    if touch < line_up { touch } else { line_up }
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End) {
    let name = cx.hub_name(end);
    if cx.taper(end).is_some() {
        out.note(format!(
            "{}: it sits on a taper, whose seconds in hand are not reckoned: draw it up at once, to its stop.",
            capital(&name)
        ));
        return;
    }
    let Some(found) = cx.grab(end) else {
        if cx.depth == Depth::Quick {
            out.note_once(
                "Seconds in hand take some seconds to work out: ask for the full plan.".to_owned(),
            );
            // A time is wanted, so nothing is inside before it is known.
            if cx.file.heat.time_wanted.is_some() && cx.heat(end).is_some() {
                let id = format!("{}.seconds", end.key());
                out.pending(&id, format!("Seconds in hand, {name}"));
            }
        } else {
            out.note(format!(
                "{}: its seconds in hand are known once outline and metals are.",
                capital(&name)
            ));
        }
        return;
    };
    match &found.grab {
        Ok(grab) => {
            if cx.file.sizes.at(end).key.is_some() {
                out.note_once(
                    "Keyways are not in the flow of heat: hub and shaft count as whole rings."
                        .to_owned(),
                );
            }
            in_hand(cx, out, end, &found.bench, grab);
            after(cx, out, end, grab);
            near::numbers(cx, out, end, (&grab.asked.places, &grab.places), NEAR);
            near::notes(cx, out, end);
        }
        Err(error) => {
            out.note(format!("{}: no seconds in hand, for {}.", capital(&name), why_not(error)));
        }
    }
}

fn in_hand(cx: &Context, out: &mut StageBuilder, end: End, bench: &Bench, grab: &Grab) {
    let time = |time| Value::new(Kind::Time, time);
    let [likely, high] = [grab.contact.likely, grab.contact.high].map(|t| out.show(&time(t)));
    let scatter = Value::new(Kind::Percent, quantities::Ratio::from_si(bench.unknowns.expansion));
    let second = format!(
        "from home on the shaft to first touch, resting on one side; likely {likely}, at most {high} \
         hanging free, steels {} apart",
        out.show(&scatter)
    );
    let energy = Value::new(Kind::Percent, grab.check.energy);
    let working = bench.assumed(grab.working()).term("b", "heat that does not add up", energy);
    let label = format!("Seconds in hand, {}", cx.hub_name(end));
    let entry = out
        .number(&format!("{}.seconds", end.key()), label, time(grab.contact.low))
        .working(working)
        .second(second)
        .key();
    if let Some(wanted) = &cx.file.heat.time_wanted {
        entry.judged(
            Limits::at_least(wanted.value().si()),
            "Heat it more, within its limit, or cool the shaft; rehearse it cold, with a stop set.",
        );
    }
}

/// What mends a seal that gets too hot while a hub cools on its shaft.
const NEAR: &str =
    "Take it off until the hub is cool, or keep the shaft between them wet and cold.";

const RUN: Source = Source::new(
    "Heat conduction and thermoelasticity by finite elements",
    "the likely case, gone on with until the hub is cool",
    Basis::Computed,
);

fn after(cx: &Context, out: &mut StageBuilder, end: End, grab: &Grab) {
    let (key, name) = (end.key(), cx.hub_name(end));
    if let Some(grips) = grab.after.grips {
        let value = Value::new(Kind::Time, grips);
        let working =
            Working::new("Time until it grips", "t = time at which pull = g·F", value, RUN)
                .term("g", "share of its cold grip", Value::number(grab.asked.grip))
                .term("F", "cold pull, low end", Value::new(Kind::Force, grab.after.cold_pull.low));
        out.number(&format!("{key}.grips"), format!("Hold the {name} home until it grips"), value)
            .second("the likely case, from home on the shaft; push all the while")
            .working(working);
    }
    let creep = Value::new(Kind::Allowance, grab.after.creep);
    let working = Working::new(
        "Creep",
        "s = shortening of the bore against the shaft in it, first touch to cold",
        creep,
        RUN,
    )
    .term("T", "hub as it arrives", Value::new(Kind::Temperature, grab.asked.hub_temperature));
    out.number(&format!("{key}.creep"), format!("The {name} may draw off its shoulder by"), creep)
        .second("if its far end grips first; check its place and the gap when cold")
        .working(working);
    let seals = seals(cx);
    let shown = |at| out.show(&Value::new(Kind::Temperature, at));
    let waits = [
        ("touch", "cool enough to touch and grease", touch(cx), shown(touch(cx))),
        ("refit", "cool enough for its seals", seals.0, format!("{}, {}", shown(seals.0), seals.1)),
        ("line_up", "cool enough to line up", line_up(cx), shown(line_up(cx))),
    ];
    for (id, what, at, second) in waits {
        let Some(time) = cooled(&grab.curve, at) else { continue };
        let kind = if time.si() < SOON_S { Kind::Time } else { Kind::Minutes };
        let value = Value::new(kind, time);
        let working =
            Working::new(what, "t = time at which the hottest of the hub = L", value, RUN)
                .term("L", "level", Value::new(Kind::Temperature, at))
                .term(
                    "Ta",
                    "air",
                    Value::new(Kind::Temperature, grab.asked.surroundings.hub.temperature),
                );
        out.number(&format!("{key}.{id}"), capital(&format!("{name} {what}")), value)
            .second(format!("{second}; in still air, never quenched"))
            .working(working);
    }
}

/// The weakest of the seals that stay in; nitrile, the weakest of the usual ones, when none is named.
fn seals(cx: &Context) -> (ThermodynamicTemperature, &'static str) {
    let named = cx.file.heat.seals_left.iter().filter_map(|name| tables::seals::seal(name));
    let weakest = named.min_by(|a, b| a.limit.si().total_cmp(&b.limit.si()));
    let seal = weakest.or_else(|| tables::seals::seal("nitrile"));
    seal.map_or((ThermodynamicTemperature::from_si(373.15), ""), |seal| (seal.limit, seal.name))
}

/// When the hottest of the hub is down at a temperature.
fn cooled(curve: &[Sample], at: ThermodynamicTemperature) -> Option<Time> {
    let pair = curve.windows(2).find(|pair| pair[1].hub <= at && pair[0].hub > at)?;
    let (from, to) = (pair[0].hub.si(), pair[1].hub.si());
    let share = (from - at.si()) / (from - to);
    Some(pair[0].time + (pair[1].time - pair[0].time) * share)
}
