//! Making it hot, or cold: what to heed with each way, how long it takes, what to measure.

use quantities::{
    Basis, Energy, Kind, Length, Physical, Source, TemperatureInterval, ThermodynamicTemperature,
    Time, Value, Working,
};
use tables::heating::{Bath, soak as soak_time};

use super::super::Context;
use super::super::stage_builder::StageBuilder;
use super::ambient;
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

/// Bore and rim apart by no more than this while a hub is heated by induction: a rule of our own.
const APART_K: f64 = 50.0;

/// What to heed with the heater that was chosen, and with a shaft that is cooled.
pub(super) fn notes(cx: &Context, out: &mut StageBuilder, hottest: ThermodynamicTemperature) {
    let apart = Value::new(Kind::TemperatureDifference, TemperatureInterval::from_si(APART_K));
    let apart = out.show(&apart);
    match cx.file.heat.method.as_str() {
        "oil bath" => oil(out, hottest),
        "torch" => out.note("Torch: only where the maker allows it; two flames, soft, kept moving, from the rim inward; temperature sticks at bore and rim, no colour to be seen."),
        "induction" => out.note(format!("Induction: probe on the hub near the bore, ramp gently so that the bore keeps up with the rim (no more than {apart} between them: a rule of our own); demagnetise before it goes on; nobody with a pacemaker near.")),
        _ => {}
    }
    chilled(cx, out);
}

fn oil(out: &mut StageBuilder, hottest: ThermodynamicTemperature) {
    let flash = Value::new(Kind::Temperature, hottest + tables::heating::FLASH_MARGIN);
    out.note(format!(
        "Oil with a flash point of {} at least ({}); no flame near; a dry hub, off the pan’s floor.",
        out.show(&flash),
        tables::heating::FLASH_MARGIN_SOURCE
    ));
}

/// Time in an oven or an oil bath until the core is through: by the thickest place, which is as thick
/// as its shorter way through.
pub(super) fn soak(cx: &Context, out: &mut StageBuilder, end: End) {
    let bath = match cx.file.heat.method.as_str() {
        "oven" => Bath::Oven,
        "oil bath" => Bath::Oil,
        _ => return,
    };
    let Some((slices, joint)) = cx.hub_slices(end).zip(cx.joint_diameter(end)) else { return };
    let thick =
        |slice: &mechanics::Slice| ((slice.outside - joint).si() / 2.0).min(slice.length.si());
    let thickest = Length::from_si(slices.iter().map(thick).fold(0.0, f64::max));
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
