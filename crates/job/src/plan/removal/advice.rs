//! Heat that works, or that none does: the numbers of the advice, and what it took for granted.

use quantities::{Basis, Force, Kind, Length, Physical, Power, Source, Time, Value, Working};
use thermal::{Opening, Trial, Zone};

use super::super::Context;
use super::super::sizes::capital;
use super::super::stage_builder::StageBuilder;
use super::hot::{AT_HAND_W, FREE_M, Found, WINDOW_S, at_hand, window};
use crate::file::End;

/// Less pull than this is none: a rule of our own.
const LETS_GO_N: f64 = 100.0;

fn searched(about: &'static str) -> Source {
    Source::new("Search among powers and patterns, by finite elements", about, Basis::Computed)
}

fn heat(power: Power) -> Value {
    Value::new(Kind::HeatFlow, power)
}

/// The pattern that works, zone by zone, and for how long.
pub(super) fn numbers(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    (zones, trial): (&[Zone], &Trial),
    opening: &Opening,
) {
    let (key, name) = (end.key(), cx.hub_name(end));
    let source = searched("the one that leaves the hub coolest");
    for (zone, share) in zones.iter().zip(&trial.shares).filter(|(_, share)| **share > 0.0) {
        let value = heat(trial.power * *share);
        let working = Working::new("Heat that works", "P = s·G", value, source)
            .term("s", "its share", Value::number(*share))
            .term("G", "all of the heat", heat(trial.power));
        let label = format!("Heat that works, on the {} of the {name}", zone.name);
        out.number(&format!("{key}.advised.{}", zone.name), label, value)
            .second("into the metal: of a gas burner’s heat a third to a half goes in")
            .working(working);
    }
    let stop = opening.asked.heats.first().map(|heat| heat.stop);
    if let (Some(stop), Some(opens)) = (stop, opening.opens.high) {
        let time = |time| Value::new(Kind::Time, time);
        let spare = stop - opens - window(cx);
        let working = Working::new("Heat goes on for", "t = o + w + m", time(stop), source)
            .term("o", "opens, slowest case", time(opens))
            .term("w", "wanted open", time(window(cx)))
            .term("m", "a little more, for the search is coarser", time(spare));
        out.number(&format!("{key}.advised.for"), format!("Heat the {name} for"), time(stop))
            .second("and draw it off meanwhile, as soon as it is loose")
            .working(working);
    }
}

/// That no heat does it, how near it came, and what else there is.
pub(super) fn nothing(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    found: &Found,
    nearest: &Trial,
) {
    let (key, name) = (end.key(), cx.hub_name(end));
    let force = |force: Force| Value::new(Kind::Force, force);
    let source = searched("the case that opens last");
    let left = force(nearest.least_pull.high);
    let mut working =
        Working::new("Least pull that heat leaves", "F = least of what was tried", left, source)
            .term("G", "all of the heat then", heat(nearest.power))
            .term("H", "all the heat at hand", heat(at_hand(cx)))
            .term("w", "wanted open", Value::new(Kind::Time, window(cx)));
    for (zone, share) in found.zones.iter().zip(&nearest.shares) {
        let symbol = if zone.name == "body" { "B" } else { "R" };
        working = working.term(symbol, zone.name.clone(), heat(nearest.power * *share));
    }
    let short = left.si < LETS_GO_N;
    let second = if short {
        "it lets go, but for less long than wanted: have the puller loaded and draw at once"
    } else {
        "what the puller must still do at best, with this heat"
    };
    out.number(&format!("{key}.least_pull"), format!("Least pull that heat leaves, {name}"), left)
        .second(second)
        .working(working);
    let within = if found.limit.is_some() { " within its limit" } else { "" };
    out.note(format!(
        "{}: no heat up to what is at hand holds it open for as long as wanted{within} in every case. Cool the shaft as well (ice or wet cloth beside the hub), pull with the heat, use oil pressure where the hub is made for it, or give the hub up and cut it.",
        capital(&name)
    ));
    if found.given.is_none()
        && let Some((limit, whose)) = &found.limit
    {
        let value = Value::new(Kind::Temperature, *limit);
        let formula = "T = limit, which was passed before it was open for w";
        let working = Working::new("Heat that helps it off", formula, value, source)
            .term("w", "wanted open", Value::new(Kind::Time, window(cx)))
            .term("P", "heat that came nearest", heat(nearest.power))
            .term("F", "least pull with it, high end", left);
        out.number(&format!("{key}.temperature"), format!("Heat the {name} to, at most"), value)
            .second(format!("its limit ({whose}); heat alone does not do it in every case"))
            .working(working);
    }
}

/// Defaults that the heat off leans on, as numbers of their own.
pub(super) fn assumed(cx: &Context, out: &mut StageBuilder) {
    let removal = &cx.file.removal;
    let usual = Source::new("where nothing is written", "", Basis::OwnRule);
    let mut shown = |id: &str, label: &str, value: Value, second: &str| {
        if !out.has(id) {
            out.number(id, label, value).second(second).written(usual);
        }
    };
    let powers = [&removal.power_body, &removal.power_flange, &removal.power_at_hand];
    if powers.into_iter().all(Option::is_none) {
        let hand = heat(Power::from_si(AT_HAND_W));
        shown(
            "assumed.heat",
            "Heat at hand, as nothing is written",
            hand,
            "into the metal; write what is at hand",
        );
    }
    if removal.window.is_none() {
        let open = Value::new(Kind::Time, Time::from_si(WINDOW_S));
        shown(
            "assumed.window",
            "To stay open for, as nothing is written",
            open,
            "time to draw it off",
        );
    }
    if removal.clearance.is_none() {
        let free = Value::new(Kind::Allowance, Length::from_si(FREE_M));
        shown(
            "assumed.open",
            "Open means, as nothing is written",
            free,
            "clearance everywhere, on the diameter",
        );
    }
}
