//! What the joint conducts, where the roughness of bore and shaft is known.

use quantities::{Kind, Length, Measured, Physical, Pressure, ThermalConductivity, Value};
use thermal::Rough;

use super::super::Context;
use super::super::sizes::capital;
use super::super::stage_builder::StageBuilder;
use super::bench::bench;
use crate::file::{End, si};

/// Rz over Ra of turned and ground surfaces: 4 to 7 (common practice), and so the middle.
const RZ_OVER_RA: f64 = 5.0;
/// Hardness where nothing is written: steel or iron of 200 HB (a rule of our own).
const HARDNESS_PA: f64 = 2e9;

/// Both surfaces of a joint; `None` where their roughness is not to count, or either is not known.
pub(super) fn rough(
    cx: &Context,
    end: End,
    conductivity: [ThermalConductivity; 2],
) -> Option<Rough> {
    if cx.file.heat.assume.by_roughness != Some(true) {
        return None;
    }
    let hub = cx.file.coupling.hub(end);
    let mean = |rz: &Measured<Length>| rz.value() / RZ_OVER_RA;
    Some(Rough {
        arithmetic_mean: [mean(hub.bore_roughness.as_ref()?), mean(hub.shaft_roughness.as_ref()?)],
        conductivity,
        hardness: Pressure::from_si(si(&cx.file.heat.assume.hardness).unwrap_or(HARDNESS_PA)),
    })
}

/// What is still to be measured, where roughness is to count.
fn missing(cx: &Context, out: &mut StageBuilder, end: End) {
    let hub = cx.file.coupling.hub(end);
    for (text, key, what) in [
        (&hub.bore_roughness, "bore_roughness", "roughness Rz of the bore"),
        (&hub.shaft_roughness, "shaft_roughness", "roughness Rz of the shaft"),
    ] {
        if text.is_none() {
            let place = format!("coupling.{}.{key}", end.key());
            out.missing(&place, &format!("{what}, {}", cx.name(end)));
        }
    }
}

/// What follows from the roughness, where nothing else was written.
pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End) {
    if cx.file.heat.assume.by_roughness == Some(true) {
        missing(cx, out, end);
    }
    let Some(bench) = bench(cx, end) else { return };
    let metals = [bench.hub.metal.conductivity, bench.shaft.metal.conductivity];
    let Some(rough) = rough(cx, end, metals) else { return };
    let Ok(found) = rough.surfaces() else { return };
    let (key, name) = (end.key(), cx.hub_name(end));
    let film = |film| Value::new(Kind::HeatTransfer, film);
    let assume = &cx.file.heat.assume;
    if assume.touching.is_none() {
        let label = format!("{} and shaft just touching conduct", capital(&name));
        out.number(&format!("{key}.touching"), label, film(found.touching))
            .second("by their roughness, Ra as a fifth of Rz (common practice: 4 to 7)")
            .working(rough.touching_working(&found));
    }
    if assume.pressed.is_none() {
        let pressure = out.show(&Value::new(Kind::Stress, Pressure::from_si(10e6)));
        let label = format!("{} and shaft conduct more, pressed", capital(&name));
        let hardness = if assume.hardness.is_none() { "; hardness by default" } else { "" };
        out.number(&format!("{key}.pressed"), label, film(found.pressed))
            .second(format!("at {pressure}, by their roughness{hardness}"))
            .working(rough.pressed_working(&found));
    }
}
