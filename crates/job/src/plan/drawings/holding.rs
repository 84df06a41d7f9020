//! Pressure along the hub, and what the fit holds against what is needed.

use quantities::{Kind, Measured, Physical, Torque, Value};

use super::super::{Context, fit, keys};
use super::{HeldTorque, HubPressure, PressureSlice};
use crate::file::{End, si};

/// `None` for a hub that does not press, or is not known.
pub(super) fn pressure(cx: &Context, end: End) -> Option<HubPressure> {
    let grip = cx.fit(end).grip.as_ref()?;
    let unit = Kind::Stress.unit(cx.system);
    let slices = grip.most.slices.iter().enumerate().map(|(place, most)| {
        let least = grip.least.as_ref().map_or(0.0, |state| state.slices[place].pressure.si());
        PressureSlice {
            sizes: [most.slice.length, most.slice.outside, most.diameter].map(Physical::si),
            least: unit.from_si(least),
            most: unit.from_si(most.pressure.si()),
            text: Value::new(Kind::Stress, most.pressure).digits(cx.system),
        }
    });
    Some(HubPressure {
        end: end.key(),
        name: cx.hub_name(end),
        unit: unit.name(),
        slices: slices.collect(),
        shaft_bore: si(&cx.file.coupling.hub(end).shaft_bore),
    })
}

/// `None` while the fit does not press, or nothing is known to be needed.
pub(super) fn torque(cx: &Context, end: End) -> Option<HeldTorque> {
    let grip = cx.fit(end).grip.as_ref()?;
    let duty = cx.duty()?;
    let unit = Kind::Torque.unit(cx.system);
    let digits = |torque| Value::new(Kind::Torque, torque).digits(cx.system);
    let held = grip.torque.map(|torque| unit.from_si(torque.si()));
    let mark =
        |torque: Torque, words: &'static str| (unit.from_si(torque.si()), words, digits(torque));
    let mut needed = vec![mark(duty.torque(), "full load")];
    if duty.design_torque() > duty.torque() {
        needed.push(mark(duty.design_torque(), "with service factor"));
    }
    if let Some(wanted) = fit::needed(cx).filter(|wanted| Some(*wanted) > fit::torque_to_carry(cx))
    {
        needed.push(mark(wanted, "wanted, with safety"));
    }
    if let Some(peak) = cx.file.machines.peak_torque.as_ref().map(Measured::value) {
        needed.push(mark(peak, "peak"));
    }
    needed.sort_by(|a, b| a.0.total_cmp(&b.0));
    Some(HeldTorque {
        end: end.key(),
        name: cx.hub_name(end),
        unit: unit.name(),
        held: (
            held.low,
            held.high,
            format!("{} to {}", digits(grip.torque.low), digits(grip.torque.high)),
        ),
        key: keys::capacity(cx, end).map(|torque| (unit.from_si(torque.si()), digits(torque))),
        needed,
    })
}
