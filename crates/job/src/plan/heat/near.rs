//! Seals, bearings and grease near a hot hub: how hot they get, when it goes on and when it comes
//! off.
//!
//! Reckoned is what comes along the shaft. What a seal gets from the hub's hot face through the air
//! is not: hence the shield.

use quantities::{
    Basis, Kind, Length, Limits, Measured, Physical, Source, ThermodynamicTemperature, Value,
    Working,
};
use thermal::{Body, Peak, Place, Shaft};

use super::super::Context;
use super::super::sizes::capital;
use super::super::stage_builder::StageBuilder;
use crate::file::{End, Kept, Near};

/// Everything near that stays, at the shaft's surface behind the hub.
pub(in crate::plan) fn places(cx: &Context, end: End, bore: Length) -> Vec<Place> {
    let near = cx.file.removal.at(end).near.iter();
    let place = |(name, near): (&String, &Near)| {
        Some(Place {
            name: name.clone(),
            body: Body::Shaft,
            radius: 0.49 * bore,
            along: -near.behind.as_ref()?.value(),
            limit: limit(near),
        })
    };
    near.filter(|(_, near)| near.kept != Some(Kept::TakenOff)).filter_map(place).collect()
}

/// A shaft that goes on far enough behind the hub to have them all on it.
pub(in crate::plan) fn long_enough(shaft: &Shaft, places: &[Place], bore: Length) -> Shaft {
    let farthest = places.iter().map(|place| -place.along.si()).fold(0.0, f64::max);
    let needed = if places.is_empty() { 0.0 } else { farthest + 0.5 * bore.si() };
    Shaft { behind: Length::from_si(shaft.behind.si().max(needed)), ..shaft.clone() }
}

/// As written, else that of what it is made of.
fn limit(near: &Near) -> Option<ThermodynamicTemperature> {
    let written = near.limit.as_ref().map(Measured::value);
    written.or_else(|| tables::seals::seal(&near.material).map(|seal| seal.limit))
}

/// How hot each gets, against what it stands.
pub(in crate::plan) fn numbers(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    found: (&[Place], &[Peak]),
    mend: &str,
) {
    for (place, peak) in found.0.iter().zip(found.1) {
        let near = cx.file.removal.at(end).near.get(&place.name);
        let value = Value::new(Kind::Temperature, peak.temperature);
        let source = Source::new("Heat conduction by finite elements", "", Basis::Computed);
        let formula = "T = highest in time at x behind the hub";
        let working = Working::new("Hottest that it gets", formula, value, source)
            .term("x", "behind the hub", Value::new(Kind::Length, -place.along))
            .valid("what comes along the shaft; not what the hub’s hot face sends through the air");
        let after = out.show(&Value::new(Kind::Minutes, peak.time));
        let whose = near.map_or_else(String::new, whose);
        let id = format!("{}.near.{}", end.key(), place.name);
        let label = format!("{} near the {}", capital(&place.name), cx.hub_name(end));
        let entry = out.number(&id, label, value).working(working);
        let entry =
            entry.second(format!("the shaft’s surface there; hottest after {after}{whose}"));
        if let Some(limit) = place.limit {
            entry.judged(Limits::at_most(limit.si()), mend);
        }
    }
}

/// Whose limit it is, and how it is kept.
fn whose(near: &Near) -> String {
    let seal = tables::seals::seal(&near.material);
    let limit = match (&near.limit, seal) {
        (Some(_), _) => "; limit as written".to_owned(),
        (None, Some(seal)) => format!("; limit: {} ({})", seal.name, seal.source),
        (None, None) => String::new(),
    };
    let kept = match near.kept {
        Some(Kept::Shielded) => "; behind its shield",
        Some(Kept::Left) => {
            "; nothing shields it from the hub’s hot face: a shield, or off with it"
        }
        _ => "",
    };
    format!("{limit}{kept}")
}

/// What was taken off, and what nobody has said enough of.
pub(super) fn notes(cx: &Context, out: &mut StageBuilder, end: End) {
    for (name, near) in &cx.file.removal.at(end).near {
        let (what, hub) = (capital(name), cx.hub_name(end));
        if near.kept == Some(Kept::TakenOff) {
            out.note(format!(
                "{what} near the {hub}: taken off; back on once the hub is cool enough for it."
            ));
        } else if !near.material.is_empty() && tables::seals::seal(&near.material).is_none() {
            out.note(format!(
                "{what} near the {hub}: “{}” is no material that is known here; write its limit, or take it off.",
                near.material
            ));
        }
    }
}
