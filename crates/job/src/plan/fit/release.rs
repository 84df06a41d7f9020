//! At what speed, and how much warmer than its shaft, the hub lets go.

use mechanics::interference::hub::{PressFit, Running};
use mechanics::interference::release::LetsGo;
use quantities::{
    AngularVelocity, Kind, Length, Limits, Physical, TemperatureInterval, Torque, Value,
};

use super::{Context, StageBuilder, friction, running, torque_to_carry};
use crate::file::End;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End) {
    let fit = cx.fit(end);
    let (Some(press), Some(effective)) = (&fit.press, &fit.effective) else { return };
    let case = Case { press, interference: effective.low(), friction: friction(cx, end).low, end };
    opens(cx, out, &case);
    if cx.file.sizes.at(end).key.is_none()
        && let Some(torque) = torque_to_carry(cx)
    {
        slips(cx, out, &case, torque);
    }
    warmth(cx, out, &case);
}

/// One fit at the lower end of its interference and friction.
struct Case<'a> {
    press: &'a PressFit,
    interference: Length,
    friction: f64,
    end: End,
}

impl Case<'_> {
    /// The speed at which it no longer holds `needed`.
    fn speed(&self, needed: Torque, still: Running) -> Option<AngularVelocity> {
        let found = self.press.lets_go_at_speed(self.interference, self.friction, needed, still);
        match found {
            Ok(LetsGo::At(speed)) => Some(speed),
            _ => None,
        }
    }

    fn speed_number(
        &self,
        out: &mut StageBuilder,
        (id, label, second): (&str, String, &str),
        (needed, still): (Torque, Running),
        (runs, mend): (Option<f64>, &str),
    ) {
        let Some(speed) = self.speed(needed, still) else { return };
        let at = Running { speed, ..still };
        let Ok(release) = self.press.release(self.interference, self.friction, needed, [still, at])
        else {
            return;
        };
        let entry = out
            .number(&format!("{}.{id}", self.end.key()), label, Value::new(Kind::Speed, speed))
            .second(second)
            .working(release.speed_working());
        if let Some(runs) = runs {
            entry.judged(Limits::at_least(runs), mend);
        }
    }
}

fn opens(cx: &Context, out: &mut StageBuilder, case: &Case) {
    let label = format!("Speed that opens the fit, {}", cx.hub_name(case.end));
    let still = Running { speed: AngularVelocity::default(), ..running(cx, case.end) };
    let runs = cx.file.machines.speed.as_ref().map(|runs| runs.value().si());
    case.speed_number(
        out,
        ("speed", label, "the hub grows as it turns; the whole fit is open here"),
        (Torque::default(), still),
        (runs, "It opens at running speed. More interference."),
    );
}

fn slips(cx: &Context, out: &mut StageBuilder, case: &Case, torque: Torque) {
    let label = format!("Speed at which it would slip, {}", cx.hub_name(case.end));
    let still = Running { speed: AngularVelocity::default(), ..running(cx, case.end) };
    let runs = cx.file.machines.speed.as_ref().map(|runs| runs.value().si());
    case.speed_number(
        out,
        ("speed.slips", label, "here friction no longer holds the torque to carry"),
        (torque, still),
        (runs, "It slips at running speed. A key, or more interference."),
    );
}

/// How much warmer than its shaft the hub may become.
fn warmth(cx: &Context, out: &mut StageBuilder, case: &Case) {
    let keyed = cx.file.sizes.at(case.end).key.is_some();
    let needed = torque_to_carry(cx).filter(|_| !keyed).unwrap_or_default();
    let service = running(cx, case.end);
    let cold = Running { hub_rise: TemperatureInterval::from_si(0.0), ..service };
    let before = Running { shaft_rise: TemperatureInterval::from_si(0.0), ..cold };
    let found = case.press.lets_go_at_hub_rise(case.interference, case.friction, needed, before);
    let Ok(LetsGo::At(rise)) = found else { return };
    let at = Running { hub_rise: rise, ..before };
    let Ok(release) = case.press.release(case.interference, case.friction, needed, [before, at])
    else {
        return;
    };
    let what = if needed > Torque::default() { "slips" } else { "is loose" };
    let entry = out
        .number(
            &format!("{}.warmth", case.end.key()),
            format!("Hub warmer than its shaft when it {what}, {}", cx.hub_name(case.end)),
            Value::new(Kind::TemperatureDifference, rise),
        )
        .working(release.warmth_working());
    let expected = service.hub_rise.si() - service.shaft_rise.si();
    let fit = cx.file.fit.at(case.end);
    if fit.hub_temperature.is_some() && fit.shaft_temperature.is_some() {
        entry.second("turning; limit: what was entered for service").judged(
            Limits::at_least(expected.max(0.0)),
            "It lets go in service. More interference, or let hub and shaft warm up together.",
        );
    } else {
        entry.second("turning at its speed, at the lower end of the interference");
    }
}
