//! The force along the shafts that a coupling of a stated axial stiffness puts on the bearings.

use couplings::axial_force::pull;
use couplings::kind::Planes;
use mechanics::Estimate;
use quantities::{Length, Limits, Measured, Physical};

use super::super::Context;
use super::super::stage_builder::StageBuilder;
use super::used::{State, axial, magnitude};
use crate::file::End;

const MEND: &str = "Set the gap closer to what the coupling is made for when warm, or take one that \
                    is softer along its axis; ask the machine’s maker.";

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    let Some(stiffness) = &cx.file.coupling.sheet.axial_stiffness else { return };
    if cx.form.is_none_or(|form| form.planes == Planes::None) {
        return;
    }
    let stiffness = Estimate::new(stiffness.value(), stiffness.spread().unwrap_or_default());
    let states = [
        ("running", "Axial force while running, as the gap was read", axial(cx, State::Running)),
        ("cold", "Axial force cold at the start, as the gap was read", axial(cx, State::Cold)),
        ("set", "Axial force cold, once the gap is set", cx.gap().off_when_set(cx).map(magnitude)),
        ("most", "Axial force at the end of its travel", travel(cx)),
    ];
    if states.iter().all(|(_, _, moved)| moved.is_none()) {
        out.missing("gap.readings.12", "the gap, for the axial force on the bearings");
    }
    let limit = thrust_limit(cx);
    for (id, label, moved) in states {
        let Some(found) = moved.and_then(|moved| pull(stiffness, moved).ok()) else { continue };
        let entry = out
            .number(&format!("axial.{id}"), label, found.shown())
            .second("lands on the thrust bearings of both machines")
            .working(found.working());
        if let Some((limits, end)) = limit.filter(|_| id != "most") {
            entry.second(format!("limit: the {}, as entered", cx.name(end))).judged(limits, MEND);
        }
    }
}

/// All of the axial movement that the sheet allows it while running.
fn travel(cx: &Context) -> Option<Estimate<Length>> {
    let most = cx.file.coupling.sheet.allows.running.axial.as_ref();
    most.map(|most| Estimate::exact(most.value()))
}

/// The least force along the shaft that a machine's maker allows, and whose it is.
pub(super) fn thrust_limit(cx: &Context) -> Option<(Limits, End)> {
    let limit = |end: End| cx.file.machines.at(end).thrust_limit.as_ref().map(Measured::value);
    let limits = End::BOTH.into_iter().filter_map(|end| Some((limit(end)?.si(), end)));
    let least = limits.min_by(|(one, _), (other, _)| one.total_cmp(other));
    least.map(|(most, end)| (Limits::at_most(most), end))
}
