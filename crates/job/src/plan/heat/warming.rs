//! Making it hot, or cold: what to heed with each way, how long it takes, what to measure.

use mechanics::heat::HubHeat;
use mechanics::heat::ramp::Ramp;
use quantities::{
    Basis, Energy, Kind, Length, Limits, Physical, Power, Source, TemperatureInterval,
    ThermodynamicTemperature, Time, Value, Working,
};
use tables::heating::{Bath, soak as soak_time};

use super::super::Context;
use super::super::stage_builder::StageBuilder;
use super::bench::bench;
use super::{ambient, limit};
use crate::file::End;

/// Time at the heater, where its power is given.
pub(super) fn at_power(cx: &Context, out: &mut StageBuilder, end: End, energy: Energy) {
    let Some(power) = &cx.file.heat.power else { return };
    if power.value().si() <= 0.0 {
        return;
    }
    let time = Time::from_si(energy.si() / power.value().si());
    let value = Value::new(Kind::Minutes, time);
    let source = Source::new("Energy over power", "", Basis::Computed);
    let working = Working::new("Time at the heater", "t = Q/P", value, source)
        .term("Q", "heat into the hub", Value::new(Kind::Energy, energy))
        .term("P", "power into the hub", Value::new(Kind::HeatFlow, power.value()))
        .valid("what the heater and the hub lose meanwhile comes on top");
    out.number(
        &format!("{}.heating_time", end.key()),
        format!("Time at the heater, {}", cx.hub_name(end)),
        value,
    )
    .second("at least; stop by the thermometer at the bore, not by the clock")
    .working(working);
}

/// Bore and rim apart by no more than this while a hub is heated by induction: a rule of our own.
const APART_K: f64 = 50.0;

/// What to heed with the heater that was chosen, and with a shaft that is cooled.
pub(super) fn notes(cx: &Context, out: &mut StageBuilder, hottest: ThermodynamicTemperature) {
    match cx.file.heat.method.as_str() {
        "oil bath" => oil(out, hottest),
        "torch" => out.note("Torch: only where the maker allows it; two flames, soft, kept moving, from the rim inward; temperature sticks at bore and rim, no colour to be seen."),
        "induction" => out.note("Induction: probe on the hub near the bore, ramp gently so that bore and rim keep together; demagnetise before it goes on, and try it with a pin or a field meter at bore and face; nobody with a pacemaker near."),
        _ => {}
    }
    chilled(cx, out);
}

fn oil(out: &mut StageBuilder, hottest: ThermodynamicTemperature) {
    let temperature = |at| Value::new(Kind::Temperature, at);
    let margin = tables::heating::FLASH_MARGIN;
    let flash = temperature(hottest + margin);
    let working =
        Working::new("Flash point", "f = T + m", flash, tables::heating::FLASH_MARGIN_SOURCE)
            .term("T", "hottest of the hubs, and so of the bath", temperature(hottest))
            .term("m", "margin", Value::new(Kind::TemperatureDifference, margin));
    out.number("flash_point", "Flash point of the bath’s oil, at least", flash)
        .second("as its sheet gives it, open cup; no flame near")
        .working(working);
    out.note("Oil bath: no flame near; a dry hub, off the pan’s floor; a thermometer in the oil.");
}

/// Heating from one side: how gently, so that rim and bore keep together. For an induction heater and
/// a torch.
pub(super) fn evenly(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    hot: ThermodynamicTemperature,
    energy: Energy,
) {
    if !matches!(cx.file.heat.method.as_str(), "induction" | "torch") {
        return;
    }
    let Some((hub, wall)) = bench(cx, end).map(|bench| bench.hub).zip(thickest(cx, end)) else {
        return;
    };
    let apart = TemperatureInterval::from_si(APART_K);
    let ramp = Ramp {
        wall,
        conductivity: hub.metal.conductivity,
        heat_capacity: hub.metal.heat_capacity,
        density: hub.metal.density,
        rise: TemperatureInterval::from_si(hot.si() - ambient(cx).si()),
    };
    let (key, name) = (end.key(), cx.hub_name(end));
    if let (Ok(time), Ok(working)) = (ramp.shortest(apart), ramp.shortest_working(apart)) {
        let value = Value::new(Kind::Minutes, time);
        out.number(&format!("{key}.ramp"), format!("Heat the {name} over, at least"), value)
            .second("so that the bore keeps up with the rim; what they may be apart is a rule of our own")
            .working(working);
    }
    let Some(power) = cx.file.heat.power.as_ref().map(|power| power.value().si()) else { return };
    let time = Time::from_si(energy.si() / power);
    if let (Ok(found), Ok(working)) = (ramp.apart(time), ramp.apart_working(time)) {
        let value = Value::new(Kind::TemperatureDifference, found);
        out.number(&format!("{key}.apart"), format!("Rim ahead of the bore, {name}"), value)
            .second("at the power written; limit: a rule of our own")
            .working(working)
            .judged(
                Limits::at_most(APART_K),
                "Less power, or heat in pulses, and wait between them.",
            );
    }
}

/// What burns of a torch's gas and does not reach the metal: it takes a third, at worst (common
/// practice, from memory).
const TORCH_SHARE: f64 = 1.0 / 3.0;

/// Temperature sticks and gas for a torch.
pub(super) fn torch(cx: &Context, out: &mut StageBuilder, end: End, heat: &HubHeat) {
    if cx.file.heat.method != "torch" {
        return;
    }
    let (key, name) = (end.key(), cx.hub_name(end));
    let temperature = |at| Value::new(Kind::Temperature, at);
    let low = temperature(heat.from_heater);
    out.number(
        &format!("{key}.stick_melts"),
        format!("Stick that must melt at the bore, {name}"),
        low,
    )
    .second("temperature stick, that or the next above; touch it to the bore, not in the flame")
    .working(heat.working());
    let most = heat.from_heater + TemperatureInterval::from_si(APART_K);
    let limit = limit(cx, end).map_or(most, |(limit, _)| if limit < most { limit } else { most });
    let source = Source::new("rim and bore kept together", "", Basis::OwnRule);
    let formula = if limit < most { "T = L" } else { "T = n + D" };
    let mut working = Working::new("Stick that must not melt", formula, temperature(limit), source)
        .term("n", "needed from the heater", temperature(heat.from_heater))
        .term(
            "D",
            "rim and bore apart, at most",
            Value::new(Kind::TemperatureDifference, TemperatureInterval::from_si(APART_K)),
        );
    if limit < most {
        working = working.term("L", "limit of the hub", temperature(limit));
    }
    out.number(
        &format!("{key}.stick_stays"),
        format!("Stick that must not melt at the rim, {name}"),
        temperature(limit),
    )
    .second("that or the next below; when it melts, flame away")
    .working(working);
    let Some(power) = &cx.file.heat.power else { return };
    let flow = |watts: f64| Value::new(Kind::HeatFlow, Power::from_si(watts));
    let value = flow(power.value().si() / TORCH_SHARE);
    let source = Source::new(
        "common practice",
        "a third to a half of a burner’s heat goes in",
        Basis::Memory,
    );
    let working = Working::new("Burner", "G = P/e", value, source)
        .term("P", "heat into the hub", flow(power.value().si()))
        .term("e", "share that goes in, low end", Value::number(TORCH_SHARE));
    out.number(&format!("{key}.burner"), format!("Burners for the {name}, together"), value)
        .second("of the gas burnt; two flames, one each side")
        .working(working);
}

/// The thickest place of a hub, which is as thick as its shorter way through.
fn thickest(cx: &Context, end: End) -> Option<Length> {
    let (slices, joint) = cx.hub_slices(end).zip(cx.joint_diameter(end))?;
    let thick =
        |slice: &mechanics::Slice| ((slice.outside - joint).si() / 2.0).min(slice.length.si());
    Some(Length::from_si(slices.iter().map(thick).fold(0.0, f64::max)))
}

/// Time in an oven or an oil bath until the core is through: by the thickest place, which is as thick
/// as its shorter way through.
pub(super) fn soak(cx: &Context, out: &mut StageBuilder, end: End) {
    let bath = match cx.file.heat.method.as_str() {
        "oven" => Bath::Oven,
        "oil bath" => Bath::Oil,
        _ => return,
    };
    let Some(thickest) = thickest(cx, end) else { return };
    let Some(time) = soak_time(bath, thickest) else { return };
    let a_millimetre = soak_time(bath, Length::from_si(1e-3)).unwrap_or_default();
    let value = Value::new(Kind::Minutes, time);
    let working = Working::new("Soak", "t = r·w", value, tables::heating::INSTRUCTIONS)
        .term("r", "for each millimetre of wall", Value::new(Kind::Minutes, a_millimetre))
        .term("w", "thickest place, in millimetres", Value::new(Kind::Length, thickest))
        .valid("from when oven or bath is up to heat");
    let inside = match bath {
        Bath::Oven => "in the oven",
        Bath::Oil => "in the bath",
    };
    out.number(&format!("{}.soak", end.key()), format!("Soak, {}", cx.hub_name(end)), value)
        .second(format!("{inside} from when it is up to heat; measure at the bore as it comes out"))
        .working(working);
}

/// No shaft is this warm when a hub goes on: a rule of our own.
const WARMEST_SHAFT_K: f64 = 373.15;

/// A shaft colder than its place was cooled: ice, dry ice or liquid nitrogen.
fn chilled(cx: &Context, out: &mut StageBuilder) {
    let Some(shaft) = cx.file.heat.shaft_temperature.as_ref() else { return };
    let cold = shaft.value();
    if cold.si() > WARMEST_SHAFT_K {
        out.note(format!(
            "The shaft is written as {}, warmer than any on which a hub goes: read it again, and mind the unit.",
            out.show(&Value::new(Kind::Temperature, cold))
        ));
    }
    if cold >= ambient(cx) {
        return;
    }
    let reach = |coolant| Value::new(Kind::Temperature, coolant);
    let (dry_ice, nitrogen) = (tables::heating::DRY_ICE, tables::heating::LIQUID_NITROGEN);
    if cold < nitrogen {
        out.note(format!(
            "No common coolant gets a shaft colder than {}.",
            out.show(&reach(nitrogen))
        ));
    } else if cold < dry_ice {
        out.note("Liquid nitrogen: it drives the air out of pits and small rooms, so ventilate and carry an oxygen alarm; face shield, loose gloves; nothing closed tight. Ask the shaft’s maker whether its steel bears it.");
    } else if cold.si() < 273.15 {
        out.note("Dry ice: ventilate, for its gas smothers in low places; gloves; never in a closed vessel. Frost on the shaft is wiped off dry before the hub goes on.");
    } else {
        out.note("A shaft that is cooled draws damp: wipe it dry, and keep water off bearings and seals.");
    }
}
