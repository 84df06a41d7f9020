//! Heat: how hot the hub must be to slide on, and what forbids it.

pub(super) mod bench;
pub(super) mod seconds;
mod trying;
mod warming;

pub use trying::{Dial, Outcome, Tried, Trying, try_heat};

use mechanics::heat::expansion::Expansion;
use mechanics::heat::{
    CanBeDone, HubHeat, Opening, heating_energy, sliding_clearance, sliding_clearance_working,
};
use quantities::{
    Kind, Length, Limits, Measured, Physical, TemperatureInterval, ThermodynamicTemperature, Value,
};

use super::sizes::capital;
use super::stage_builder::{StageBuilder, WRITTEN};
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::{End, Heat};

/// Heat for one hub.
#[derive(Clone, Debug)]
pub(super) struct Found {
    /// How hot, with what was put in.
    pub heat: HubHeat,
}

/// Room temperature where the job gives none (common practice), said in the plan.
const AMBIENT_K: f64 = 293.15;
/// Lost on the way from the heater to the shaft where the job gives nothing: a rule of our own.
const LOSS_K: f64 = 15.0;

/// `None` for a hub with clearance, or while sizes or material are not known.
pub(super) fn found(cx: &Context, end: End) -> Option<Found> {
    let fit = cx.fit(end).interference.as_ref()?;
    if fit.value < Length::default() {
        return None;
    }
    Some(Found { heat: opening(cx, end, fit.high())?.hub_heat().ok()? })
}

/// What is asked of the heat for a hub with so much interference; `None` while size or material are
/// not known.
pub(super) fn opening(cx: &Context, end: End, interference: Length) -> Option<Opening> {
    let diameter = cx.joint_diameter(end)?;
    let heat = &cx.file.heat;
    let clearance =
        heat.clearance.as_ref().map_or_else(|| sliding_clearance(diameter), Measured::value);
    let shaft = heat.shaft_temperature.as_ref().map_or_else(|| ambient(cx), Measured::value);
    Some(Opening {
        diameter,
        interference,
        clearance,
        hub: expansion(cx.hub_metal(end)?),
        shaft: expansion(cx.shaft_metal(end)?),
        shaft_temperature: shaft,
        loss: heat.loss.as_ref().map_or(TemperatureInterval::from_si(LOSS_K), Measured::value),
    })
}

/// Steel's mean expansion rises with temperature; other metals are held as one figure.
fn expansion(metal: &tables::materials::Material) -> Expansion {
    if metal.name == "steel" { Expansion::Steel } else { Expansion::Constant(metal.expansion) }
}

pub(super) fn ambient(cx: &Context) -> ThermodynamicTemperature {
    let ambient = cx.file.machines.ambient.as_ref();
    ambient.map_or(ThermodynamicTemperature::from_si(AMBIENT_K), Measured::value)
}

/// The strictest limit on the hub's temperature, and whose it is.
pub(super) fn limit(cx: &Context, end: End) -> Option<(ThermodynamicTemperature, String)> {
    let heat = &cx.file.heat;
    let mut limits = Vec::new();
    if let Some(metal) = cx.hub_metal(end)
        && let Some(limit) = metal.heating_limit
    {
        limits.push((limit, format!("usual for {}", metal.name)));
    }
    if let Some(limit) = &cx.file.coupling.sheet.max_heating {
        limits.push((limit.value(), "the maker’s sheet".to_owned()));
    }
    if let Some(limit) = &heat.limit {
        limits.push((limit.value(), "the site’s limit".to_owned()));
    }
    for name in &heat.seals_left {
        if let Some(seal) = tables::seals::seal(name) {
            limits.push((seal.limit, format!("{} seal left in place", seal.name)));
        }
    }
    limits.into_iter().min_by(|a, b| a.0.si().total_cmp(&b.0.si()))
}

pub(super) fn stage(cx: &Context) -> StagePlan {
    let heat = &cx.file.heat;
    let mut out = cx.stage(Stage::Heat, *heat != Heat::default());
    let mut parts = Vec::new();
    for end in End::BOTH {
        match cx.heat(end) {
            Some(found) => {
                numbers(cx, &mut out, end, &found.heat);
                seconds::numbers(cx, &mut out, end);
                let hot = Value::new(Kind::Temperature, found.heat.from_heater).show(cx.system);
                parts.push(format!("{} {hot}", cx.hub_name(end)));
            }
            None => without(cx, &mut out, end),
        }
    }
    common(cx, &mut out);
    let method = if heat.method.is_empty() { "heater" } else { &heat.method };
    out.done(if parts.is_empty() {
        "no hub needs heat yet".to_owned()
    } else {
        format!("{method}: {}", parts.join(", "))
    })
}

fn without(cx: &Context, out: &mut StageBuilder, end: End) {
    let name = cx.hub_name(end);
    match &cx.fit(end).interference {
        Some(fit) if fit.value < Length::default() => {
            out.note(format!("The {name} has clearance and slides on cold."));
        }
        Some(_) => out.note(format!(
            "The {name} needs its material, and the shaft’s, before its heat is known."
        )),
        None => {
            let place = format!("sizes.{}.bore.1.along", end.key());
            let id = format!("{}.temperature", end.key());
            out.unmeasured(
                &id,
                format!("Heat the {name} to"),
                &place,
                &format!("bore and shaft, {}", cx.name(end)),
            );
        }
    }
}

fn numbers(cx: &Context, out: &mut StageBuilder, end: End, heat: &HubHeat) {
    let (key, name) = (end.key(), cx.hub_name(end));
    let value = Value::new(Kind::Temperature, heat.from_heater);
    let entry = out
        .number(&format!("{key}.temperature"), format!("Heat the {name} to"), value)
        .working(heat.working())
        .key();
    if let Some((limit, whose)) = limit(cx, end) {
        entry
            .second(format!("as it leaves the heater; limit: {whose}"))
            .judged(Limits::at_most(limit.si()), "See what else would do, below.");
        instead(cx, out, &name, heat, limit);
    } else {
        entry.second("as it leaves the heater; no limit is known for this material: ask the maker");
    }
    let at_shaft = Value::new(Kind::Temperature, heat.at_shaft);
    out.number(&format!("{key}.at_shaft"), format!("The {name} at the shaft, at least"), at_shaft)
        .working(heat.at_shaft_working())
        .second("below this it may grab on the way");
    let growth = Value::new(Kind::Allowance, heat.bore_growth);
    out.number(&format!("{key}.growth"), format!("Growth of the bore, {name}"), growth)
        .working(heat.growth_working())
        .second("gauge to check by: this much over the cold bore");
    energy(cx, out, end, heat);
}

fn energy(cx: &Context, out: &mut StageBuilder, end: End, heat: &HubHeat) {
    let Some((hub, metal)) = cx.hub_mass(end).zip(cx.hub_metal(end)) else { return };
    let rise = TemperatureInterval::from_si(heat.from_heater.si() - ambient(cx).si());
    if let Ok(energy) = heating_energy(hub.mass, metal.heat_capacity, rise) {
        out.number(
            &format!("{}.energy", end.key()),
            format!("Heat into the {}", cx.hub_name(end)),
            Value::new(Kind::Energy, energy.energy),
        )
        .second("what the heater loses comes on top")
        .working(energy.working());
        warming::at_power(cx, out, end, energy.energy);
    }
}

/// What could be done instead, when the limit forbids the heat.
fn instead(
    cx: &Context,
    out: &mut StageBuilder,
    name: &str,
    heat: &HubHeat,
    limit: ThermodynamicTemperature,
) {
    let Ok(CanBeDone::No(instead)) = heat.can_it_be_done(limit) else { return };
    let mut ways = Vec::new();
    if let Some(shaft) = instead.shaft_at {
        ways.push(format!(
            "cool the shaft to {}",
            Value::new(Kind::Temperature, shaft).show(cx.system)
        ));
    }
    if let Some(most) = instead.interference_at_most {
        ways.push(format!(
            "no more interference than {}",
            Value::new(Kind::Allowance, most).show(cx.system)
        ));
    }
    if let Some(left) = instead.clearance_left {
        ways.push(format!(
            "slide with only {} of clearance",
            Value::new(Kind::Allowance, left).show(cx.system)
        ));
    }
    if !ways.is_empty() {
        out.note(format!(
            "{}: at its limit it would go on if you {}.",
            capital(name),
            ways.join(", or allow ")
        ));
    }
}

fn common(cx: &Context, out: &mut StageBuilder) {
    let heat = &cx.file.heat;
    let any = End::BOTH.into_iter().find_map(|end| cx.heat(end));
    let Some(found) = any else { return };
    let clearance = Value::new(Kind::Allowance, found.heat.opening.clearance);
    let whose = if heat.clearance.is_some() {
        "as chosen"
    } else {
        "a thousandth of the diameter, 0.05 mm at least (common practice)"
    };
    let entry = out.number("clearance", "Clearance to slide by", clearance).second(whose);
    if heat.clearance.is_some() {
        entry.written(WRITTEN);
    } else {
        entry.working(sliding_clearance_working(found.heat.opening.diameter));
    }
    if heat.loss.is_none() {
        let loss = Value::new(Kind::TemperatureDifference, TemperatureInterval::from_si(LOSS_K));
        out.note(format!("{} is added for what the hub loses on the way to the shaft: a rule of our own; measure yours.", out.show(&loss)));
    }
    for end in End::BOTH {
        if let Some(metal) = cx.hub_metal(end).filter(|metal| metal.heating_limit.is_some()) {
            out.note_once(format!("Usual limit for {}: {}.", metal.name, metal.heating_source));
        }
    }
    if cx.file.machines.ambient.is_none() {
        out.missing("machines.ambient", "temperature of the place");
    }
    for name in &heat.seals_left {
        if tables::seals::seal(name).is_none() {
            out.note(format!("“{name}” is not a seal material that is known here: take it off, or ask its maker how hot it may get."));
        }
    }
    warming::notes(cx, out, found);
}
