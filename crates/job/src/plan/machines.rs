//! The machines: what the coupling has to carry.

use mechanics::power::Duty;
use quantities::{Kind, Ratio, Value};

use super::coupling::usual_factor;
use super::stage_builder::{StageBuilder, WRITTEN};
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::End;

/// The duty, as far as the log book gives it. Without a service factor the plain torque stands,
/// and the plan says so.
pub(super) fn duty(cx: &Context) -> Option<Duty> {
    let machines = &cx.file.machines;
    let (power, speed) = (machines.power.as_ref()?, machines.speed.as_ref()?);
    let factor = machines.service_factor.as_ref().map_or(1.0, |f| f.value().value);
    Duty::new(power.value(), speed.value(), Ratio::from(factor)).ok()
}

pub(super) fn stage(cx: &Context) -> StagePlan {
    let machines = &cx.file.machines;
    let mut out = cx.stage(Stage::Machines, *machines != crate::file::Machines::default());
    for end in End::BOTH {
        if machines.at(end).name.is_empty() {
            let place = format!("machines.{}.name", end.key());
            out.missing(&place, &format!("what the {} is", machines.name(end)));
        }
    }
    asked(cx, &mut out);
    if let Some(duty) = cx.duty() {
        let torque = Value::new(Kind::Torque, duty.torque());
        out.number("torque", "Torque at full load", torque).working(duty.working());
        let design = Value::new(Kind::Torque, duty.design_torque());
        out.number("design_torque", "Torque with service factor", design)
            .second("what fit, key and coupling are judged on")
            .working(duty.design_working())
            .key();
    }
    if let Some(peak) = &machines.peak_torque {
        out.number("peak_torque", "Peak torque, as entered", peak.shown()).written(WRITTEN);
    }
    let names = format!("{} drives {}", machines.name(End::Driver), machines.name(End::Driven));
    let runs = cx.runs_at();
    out.done(if runs.is_empty() { names } else { format!("{names}; {runs}") })
}

fn asked(cx: &Context, out: &mut StageBuilder) {
    let machines = &cx.file.machines;
    if machines.power.is_none() {
        out.missing("machines.power", "power that the coupling carries");
    }
    if machines.speed.is_none() {
        out.missing("machines.speed", "speed of the coupling");
    }
    if machines.service_factor.is_none() {
        out.missing(
            "machines.service_factor",
            "service factor, from the maker’s sheet or the site’s rule",
        );
        out.note("Without a service factor the plain torque of the driver is used.");
    }
    usual_factor(cx, out);
}
