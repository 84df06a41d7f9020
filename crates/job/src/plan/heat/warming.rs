//! Making it hot, or cold: what to heed with each way, how long it takes, what to measure.

use quantities::{Basis, Energy, Kind, Length, Physical, Source, Time, Value, Working};

use super::super::Context;
use super::super::stage_builder::StageBuilder;
use super::{Found, ambient};
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
        .term("P", "power into the hub", power.shown())
        .valid("what the heater and the hub lose meanwhile comes on top");
    out.number(
        &format!("{}.heating_time", end.key()),
        format!("Time at the heater, {}", cx.hub_name(end)),
        value,
    )
    .second("at least; stop by the thermometer at the bore, not by the clock")
    .working(working);
}

/// What to heed with the heater that was chosen, and with a shaft that is cooled.
pub(super) fn notes(cx: &Context, out: &mut StageBuilder, found: &Found) {
    match cx.file.heat.method.as_str() {
        "oil bath" => oil(cx, out, found),
        "torch" => out.note("Torch: only where the maker allows it; two flames, soft, kept moving, from the rim inward; temperature sticks at bore and rim, no colour to be seen."),
        "induction" => out.note("Induction: probe on the hub near the bore, ramp gently so that the bore keeps up with the rim (no more than 50 K between them: a rule of our own); demagnetise before it goes on; nobody with a pacemaker near."),
        "oven" => soak(cx, out, tables::heating::Bath::Oven),
        _ => {}
    }
    chilled(cx, out);
}

fn oil(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let hot = found.heat.from_heater;
    let flash = Value::new(Kind::Temperature, hot + tables::heating::FLASH_MARGIN);
    out.note(format!(
        "Oil with a flash point of {} at least ({}); no flame near; a dry hub, off the pan’s floor.",
        out.show(&flash),
        tables::heating::FLASH_MARGIN_SOURCE
    ));
    soak(cx, out, tables::heating::Bath::Oil);
}

fn soak(cx: &Context, out: &mut StageBuilder, bath: tables::heating::Bath) {
    let walls = End::BOTH.into_iter().filter_map(|end| {
        let outside =
            cx.hub_slices(end)?.iter().map(|slice| slice.outside.si()).fold(0.0, f64::max);
        Some((outside - cx.joint_diameter(end)?.si()) / 2.0)
    });
    let thickest = Length::from_si(walls.fold(0.0, f64::max));
    let where_in = match bath {
        tables::heating::Bath::Oven => "Oven: leave the hub in",
        tables::heating::Bath::Oil => "Oil bath: leave the hub in",
    };
    if let Some(time) = tables::heating::soak(bath, thickest) {
        let minutes = (time.si() / 60.0).ceil();
        out.note(format!("{where_in} {minutes:.0} minutes after it is up to heat, for its thickest wall ({}); measure at the bore as it comes out.", tables::heating::INSTRUCTIONS));
    }
}

/// A shaft colder than its place was cooled: ice, dry ice or liquid nitrogen.
fn chilled(cx: &Context, out: &mut StageBuilder) {
    let Some(shaft) = cx.file.heat.shaft_temperature.as_ref() else { return };
    let cold = shaft.value();
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
