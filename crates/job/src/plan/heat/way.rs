//! What a hub loses on its way from heater to shaft, where the time that it takes is written.

use mechanics::heat::carried::{Carried, surface};
use quantities::{Kind, Measured, TemperatureInterval, ThermodynamicTemperature, Value};

use super::super::Context;
use super::super::stage_builder::StageBuilder;
use super::bench::bench;
use crate::file::End;

/// `None` while time, outline or metal is not known.
fn carried(cx: &Context, end: End) -> Option<Carried> {
    let bench = bench(cx, end)?;
    let air = bench.surroundings.hub;
    Some(Carried {
        surface: surface(cx.joint_diameter(end)?, &cx.hub_slices(end)?),
        mass: cx.hub_mass(end)?.mass,
        heat_capacity: bench.hub.metal.heat_capacity,
        convection: air.convection,
        emissivity: air.emissivity,
        air: air.temperature,
        time: cx.file.heat.carried.as_ref().map(Measured::value)?,
    })
}

/// What it loses, when it is to come to the shaft this warm.
pub(super) fn lost(
    cx: &Context,
    end: End,
    at_shaft: ThermodynamicTemperature,
) -> Option<TemperatureInterval> {
    carried(cx, end)?.loss(at_shaft).ok()
}

pub(super) fn number(
    cx: &Context,
    out: &mut StageBuilder,
    end: End,
    at_shaft: ThermodynamicTemperature,
) {
    if cx.file.heat.loss.is_some() {
        return;
    }
    let Some(carried) = carried(cx, end) else { return };
    let (Ok(loss), Ok(working)) = (carried.loss(at_shaft), carried.working(at_shaft)) else {
        return;
    };
    out.number(
        &format!("{}.loss", end.key()),
        format!("Lost on the way, {}", cx.hub_name(end)),
        Value::new(Kind::TemperatureDifference, loss),
    )
    .second("in still air, touching nothing cold; added to what it needs at the shaft")
    .working(working);
}
