//! Off by heat: when the hub opens on its shaft, when it shuts again, what gets how hot; and heat
//! that works, or that none does.
//!
//! By finite elements (`thermal`). Where powers are written they are answered as they stand; where
//! none are, or they do not open the hub in every case within its limit, a small search looks for
//! a power and a pattern that do.

use quantities::{
    Basis, Force, Kind, Length, Limits, Physical, Power, Source, ThermodynamicTemperature, Time,
    Value, Working,
};
use thermal::{Advice, Heat, Opening, Removal, Sample, Search, ThermalError, Zone};

use super::super::sizes::capital;
use super::super::stage_builder::StageBuilder;
use super::super::{Context, Depth, heat};
use super::advice;
use crate::file::{End, si};
use heat::bench::{Bench, bench, why_not};
use heat::near;

/// What was asked and what came of it.
pub(in crate::plan) struct Found {
    bench: Bench,
    pub(super) limit: Option<(ThermodynamicTemperature, String)>,
    pub(super) zones: Vec<Zone>,
    /// Heat as it is written; `None` when none is.
    pub(super) given: Option<Result<Opening, ThermalError>>,
    /// What else would do; `None` when heat as written does.
    advice: Option<Result<Advice, ThermalError>>,
}

/// Clearance over which a hub counts as free: a rule of our own.
pub(super) const FREE_M: f64 = 0.02e-3;
/// Heating goes on for so long where nothing is written.
const HEAT_FOR_S: f64 = 300.0;
/// All the heat at hand where nothing is written: two large gas burners, of which a third to a
/// half goes into the metal (common practice); a rule of our own.
pub(super) const AT_HAND_W: f64 = 20e3;
/// Time to draw a hub off where nothing is written: a rule of our own.
pub(super) const WINDOW_S: f64 = 30.0;
/// How long is looked at after heat has stopped.
const LOOKED_S: f64 = 3600.0;

/// `None` where nothing presses, heat is forbidden, on a taper, or while hub and metal are not known.
pub(in crate::plan) fn found(cx: &Context, end: End) -> Option<Found> {
    let removal = &cx.file.removal;
    let interference = cx.fit(end).effective?.high();
    if removal.heat_allowed == Some(false)
        || removal.at(end).tapered == Some(true)
        || cx.taper(end).is_some()
        || interference <= Length::default()
    {
        return None;
    }
    let bench = bench(cx, end)?;
    let limit = heat::limit(cx, end);
    let zones = zones(&bench);
    let heats = heats(cx, &zones);
    let asked = asked(cx, end, &bench, interference, limit.as_ref().map(|limit| limit.0));
    let given = (!heats.is_empty()).then(|| Removal { heats, ..asked.clone() }.solve());
    let does = given.as_ref().is_some_and(|given| given.as_ref().is_ok_and(works));
    let search = || Search { zones: zones.clone(), greatest: at_hand(cx), window: window(cx) };
    let advice = (!does).then(|| asked.advise(&search()));
    Some(Found { bench, limit, zones, given, advice })
}

/// Opens in every case, and nothing gets too hot.
fn works(opening: &Opening) -> bool {
    let cool = opening.hottest.peak.over_limit.is_none()
        && opening.places.iter().all(|peak| peak.over_limit.is_none());
    opening.opens.high.is_some() && cool
}

fn asked(
    cx: &Context,
    end: End,
    bench: &Bench,
    interference: Length,
    limit: Option<ThermodynamicTemperature>,
) -> Removal {
    let places = near::places(cx, end, bench.hub.bore);
    let shaft = near::long_enough(&bench.shaft, &places, bench.hub.bore);
    Removal {
        surroundings: bench.surroundings,
        surfaces: bench.surfaces,
        unknowns: bench.unknowns,
        friction: bench.friction,
        clearance: Length::from_si(si(&cx.file.removal.clearance).unwrap_or(FREE_M)),
        limit,
        places,
        until: Time::from_si(heat_for(cx).si() + LOOKED_S),
        ..Removal::new(bench.hub.clone(), shaft, interference, heat::ambient(cx), Vec::new())
    }
}

/// Body, then flange or gear ring: the widest part of the hub, and the longer of what lies to its
/// sides. However the hub is cut into slices, they are the same.
fn zones(bench: &Bench) -> Vec<Zone> {
    let slices = &bench.hub.slices;
    let end: Length = slices.iter().map(|slice| slice.length).sum();
    let widest = slices.iter().map(|slice| slice.outside.si()).fold(0.0, f64::max);
    let is_wide = |slice: &thermal::Slice| slice.outside.si() > widest * (1.0 - 1e-9);
    let (mut from, mut wide) = (Length::default(), None);
    for slice in slices {
        let to = from + slice.length;
        match &mut wide {
            Some((_, last)) if is_wide(slice) && *last == from => *last = to,
            None if is_wide(slice) => wide = Some((from, to)),
            _ => {}
        }
        from = to;
    }
    let (start, last) = wide.unwrap_or((Length::default(), end));
    let (behind, ahead) = (start, end - last);
    let body = |from, to| Zone::outside("body", from, to);
    if behind <= Length::default() && ahead <= Length::default() {
        return vec![body(Length::default(), end)];
    }
    let body = if behind >= ahead { body(Length::default(), start) } else { body(last, end) };
    vec![body, Zone::outside("flange", start, last)]
}

fn heats(cx: &Context, zones: &[Zone]) -> Vec<Heat> {
    let removal = &cx.file.removal;
    let powers = [&removal.power_body, &removal.power_flange];
    let given = zones.iter().zip(powers);
    given
        .filter_map(|(zone, power)| {
            Some(Heat::until(zone.clone(), power.as_ref()?.value(), heat_for(cx)))
        })
        .collect()
}

fn heat_for(cx: &Context) -> Time {
    Time::from_si(si(&cx.file.removal.heat_for).unwrap_or(HEAT_FOR_S))
}

pub(super) fn window(cx: &Context) -> Time {
    Time::from_si(si(&cx.file.removal.window).unwrap_or(WINDOW_S))
}

pub(super) fn at_hand(cx: &Context) -> Power {
    let removal = &cx.file.removal;
    let written =
        [&removal.power_body, &removal.power_flange].map(|power| si(power).unwrap_or(0.0));
    let usual = AT_HAND_W.max(written.iter().sum());
    Power::from_si(si(&removal.power_at_hand).unwrap_or(usual))
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End) {
    let name = cx.hub_name(end);
    let Some(found) = cx.hot(end) else {
        if cx.depth == Depth::Quick && cx.file.removal.heat_allowed != Some(false) {
            out.note_once(
                "Heat to get a hub off takes some seconds to work out: ask for the full plan."
                    .to_owned(),
            );
        }
        return;
    };
    match &found.given {
        Some(Ok(opening)) => opened(cx, out, end, found, opening),
        Some(Err(error)) => {
            out.note(format!(
                "{}: no answer for that heat, for {}.",
                capital(&name),
                why_not(error)
            ));
        }
        None => {}
    }
    match &found.advice {
        Some(Ok(Advice::Heat { trial, opening })) => {
            advice::numbers(cx, out, end, (&found.zones, trial), opening);
            if found.given.is_none() {
                opened(cx, out, end, found, opening);
            }
        }
        Some(Ok(Advice::Nothing { nearest })) => advice::nothing(cx, out, end, found, nearest),
        Some(Err(error)) => {
            out.note(format!(
                "{}: no heat can be advised, for {}.",
                capital(&name),
                why_not(error)
            ));
        }
        None => {}
    }
    advice::assumed(cx, out);
}

fn opened(cx: &Context, out: &mut StageBuilder, end: End, found: &Found, opening: &Opening) {
    let (key, name) = (end.key(), cx.hub_name(end));
    let time = |time| Value::new(Kind::Time, time);
    let energy = Value::new(Kind::Percent, opening.check.energy);
    let coarser = Value::new(Kind::Percent, opening.check.coarser.unwrap_or_default());
    let run = |working| {
        found.bench.assumed(working).term("b", "heat that does not add up", energy).term(
            "x",
            "difference from a coarser mesh",
            coarser,
        )
    };
    match (opening.opens.high, opening.opens.likely) {
        (Some(high), likely) => {
            let likely = likely.unwrap_or(high);
            let value = time(high);
            let working = run(reached(
                "Time until it opens",
                "t = first time at which the least clearance = C, slowest case",
                value,
                opening,
            ));
            out.number(&format!("{key}.opens"), format!("The {name} opens after"), value)
                .second(format!("in every case; likely {}", time(likely).show(cx.system)))
                .working(working)
                .key();
        }
        (None, Some(likely)) => {
            let value = time(likely);
            let working = run(reached(
                "Time until it opens",
                "t = first time at which the least clearance = C, likely case",
                value,
                opening,
            ));
            out.number(&format!("{key}.opens"), format!("The {name} opens after, likely"), value)
                .second("not in every case: metals and joint vary; keep the puller loaded")
                .working(working);
        }
        (None, None) => {
            let value = Value::new(Kind::Force, opening.least_pull.1.high);
            out.number(
                &format!("{key}.hot_pull"),
                format!("Pull that this heat leaves, {name}"),
                value,
            )
            .second(format!(
                "it does not open; least after {}",
                time(opening.least_pull.0).show(cx.system)
            ))
            .working(run(opening.working()));
        }
    }
    if let Some(shuts) = opening.if_stopped.and_then(|window| window.shuts) {
        let value = time(shuts);
        let working = reached(
            "Time at which it shuts",
            "t = next time at which the least clearance < C",
            value,
            opening,
        );
        out.number(&format!("{key}.shuts"), format!("The {name} shuts again at"), value)
            .second(
                "if heat stops the moment that it opens, likely; keep heating while it is drawn",
            )
            .working(working);
    }
    if let Some(window) = opening.shortest
        && let Some(shuts) = window.shuts
    {
        let value = time(shuts - window.opens);
        let source = "shortest of the likely, the tight and the loose case that open";
        let working = reached("Time to draw it off", "t = s − o", value, opening)
            .term("o", "opens", time(window.opens))
            .term("s", "shuts again, heat stopped as it opened", time(shuts))
            .valid(source);
        out.number(&format!("{key}.window"), format!("Time to draw the {name} off, at least"), value)
            .second("once heat stops as it opens: the shortest of the cases; keep heating while it is drawn")
            .working(working);
    }
    let at_opening = opening.window.and_then(|window| at(&opening.curve, window.opens));
    let freed = at_opening.map(|sample| sample.hub);
    hottest(out, end, &name, found, opening.hottest.peak.temperature, freed);
    let mend = "Wet cloth on the shaft between, heat for less long, or take it off first.";
    near::numbers(cx, out, end, (&opening.asked.places, &opening.places), mend);
    if let Some(ended) = opening.ended {
        let after = out.show(&time(ended));
        out.note(format!(
            "{}: after {after} it is hotter than can be reckoned (600 °C, 1110 °F at most); what comes later is not looked at.",
            capital(&name)
        ));
    }
}

fn reached(name: &'static str, formula: &'static str, value: Value, opening: &Opening) -> Working {
    let power: f64 = opening.asked.heats.iter().map(|heat| heat.power.si()).sum();
    let source = Source::new(
        "Heat conduction, thermoelasticity and one-sided contact by finite elements",
        "checked against Incropera, Fundamentals of Heat and Mass Transfer, 5.6, and Lamé’s thick ring",
        Basis::Computed,
    );
    Working::new(name, formula, value, source)
        .term("C", "clearance wanted", Value::new(Kind::Allowance, opening.asked.clearance))
        .term(
            "δ",
            "interference that presses",
            Value::new(Kind::Allowance, opening.asked.interference),
        )
        .term("P", "heat that goes in", Value::new(Kind::HeatFlow, Power::from_si(power)))
        .term("F", "pull before heat, high end", Value::new(Kind::Force, opening.cold_pull.high))
}

fn at(curve: &[Sample], time: Time) -> Option<&Sample> {
    curve.iter().find(|sample| sample.time >= time)
}

/// The temperature to heat to, and the hottest spot against its limit.
fn hottest(
    out: &mut StageBuilder,
    end: End,
    name: &str,
    found: &Found,
    peak: ThermodynamicTemperature,
    freed: Option<ThermodynamicTemperature>,
) {
    let celsius = |at| Value::new(Kind::Temperature, at);
    let source = Source::new("Heat conduction by finite elements", "", Basis::Computed);
    let working = |what: &'static str, value| {
        Working::new(what, "T = hottest node of the hub", value, source).term(
            "k",
            "conductivity",
            Value::new(Kind::Conductivity, found.bench.hub.metal.conductivity),
        )
    };
    if let Some(freed) = freed {
        let value = celsius(freed);
        out.number(
            &format!("{}.temperature", end.key()),
            format!("Heat that frees the {name}"),
            value,
        )
        .second("its hottest spot as it opens, with the shaft as warm as it then is")
        .working(working("Hottest spot as it opens", value));
    }
    let value = celsius(peak);
    let entry = out
        .number(&format!("{}.hottest", end.key()), format!("Hottest spot of the {name}"), value)
        .working(working("Hottest spot", value));
    if let Some((limit, whose)) = &found.limit {
        entry
            .second(format!("while it is heated off; limit: {whose}"))
            .judged(Limits::at_most(limit.si()), "Less heat, spread wider, stopped sooner.");
    } else {
        entry.second("while it is heated off; no limit is known for this material");
    }
}

/// For the ways side by side: what heat alone takes, and what stands against it.
pub(super) fn in_words(cx: &Context, found: &Found) -> (String, Option<String>) {
    let time = |time| Value::new(Kind::Time, time).show(cx.system);
    let bar = || Some("heat alone does not do it in every case: pull as well".to_owned());
    let Some(opening) = run(found) else {
        let hand = Value::new(Kind::HeatFlow, at_hand(cx)).show(cx.system);
        return (format!("more than {hand}, or more than its limit"), bar());
    };
    let window = opening.if_stopped.and_then(|window| Some((window.opens, window.shuts?)));
    let likely = window.map_or_else(String::new, |(opens, shuts)| {
        let (opens, shuts) = (time(opens), time(shuts));
        format!("; likely after {opens}, and shut again at {shuts} if heat stops as it opens")
    });
    match opening.opens.high {
        Some(opens) => {
            let hot = || {
                Some("something gets hotter than it may: less heat, and pull as well".to_owned())
            };
            let bar = if works(opening) { None } else { hot() };
            (format!("open in every case after {}{likely}", time(opens)), bar)
        }
        None => ("not open in every case".to_owned(), bar()),
    }
}

/// The pull that heat leaves, by the finite elements, where it does not open the hub in every case:
/// the least of what was tried.
pub(super) fn left(found: &Found) -> Option<Force> {
    let given = found.given.as_ref().and_then(|given| given.as_ref().ok());
    let given = given.map(|opening| match opening.opens.high {
        Some(_) => Force::default(),
        None => opening.least_pull.1.high,
    });
    let advised = match &found.advice {
        Some(Ok(Advice::Heat { .. })) => Some(Force::default()),
        Some(Ok(Advice::Nothing { nearest })) => Some(nearest.least_pull.high),
        _ => None,
    };
    let less = |a: Force, b: Force| if a < b { a } else { b };
    [given, advised].into_iter().flatten().reduce(less)
}

/// The pull as heat takes it down, for the drawing: the run, and the one that is pulled with.
pub(in crate::plan) fn run(found: &Found) -> Option<&Opening> {
    let advised = match &found.advice {
        Some(Ok(Advice::Heat { opening, .. })) => Some(&**opening),
        _ => None,
    };
    found.given.as_ref().and_then(|given| given.as_ref().ok()).or(advised)
}

/// Force that the puller at hand is good for.
pub(in crate::plan) fn puller(cx: &Context) -> Option<Force> {
    super::hold::at_hand(cx)
}
