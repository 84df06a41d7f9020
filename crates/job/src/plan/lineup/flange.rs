//! A machine on a flange: shims at its bolts, a shift on its seat.

use lineup::Plane;
use lineup::clock::{Clock, View};
use lineup::flange::{Flange, FlangeMove, flange_move};
use quantities::{Kind, Length, Limits, Measured, Physical, Value};

use super::super::stage_builder::StageBuilder;
use super::judge::key;
use super::{Context, Found, machine};

/// Bolts of a flange where nobody counted them.
const USUAL_BOLTS: u32 = 4;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let end = cx.file.machines.moves;
    let Some(table) = &cx.file.lineup.machine(end).flange else { return };
    let place = format!("lineup.{}.flange", end.key());
    if table.at.is_none() {
        out.missing(&format!("{place}.at"), "distance of the flange’s seat from the coupling");
    }
    if table.circle.is_none() {
        out.missing(&format!("{place}.circle"), "bolt circle of the flange");
    }
    let Some((at, circle)) = table.at.as_ref().zip(table.circle.as_ref()) else { return };
    let side = if machine(end) == lineup::Machine::Driver { -1.0 } else { 1.0 };
    let flange = Flange {
        at: at.value() * side,
        circle: circle.value(),
        bolts: table.bolts.map_or(USUAL_BOLTS, |bolts| bolts.0),
        first: Clock::read(&table.first, View::FromDriver).unwrap_or(Clock::TWELVE),
    };
    let joint = found.own();
    let moved = flange_move(machine(end), flange, &joint.position.line, &joint.target);
    let Ok(moved) = moved else { return };
    shims(cx, out, &moved);
    shifts(out, &moved, table.room.as_ref().map(Measured::value));
    if table.bolts.is_none() {
        out.note("The flange is taken to have four bolts, the first at 12.");
    }
    out.note("On a flange, 12 and 3 are the directions that the dials called so; shims go between flange and seat, one cut round each bolt.");
}

fn shims(cx: &Context, out: &mut StageBuilder, moved: &FlangeMove) {
    for (bolt, (clock, shim)) in moved.shims.iter().enumerate() {
        let value = Value::new(Kind::Offset, *shim);
        let label = format!("Shim at the bolt at {clock}");
        let nothing = value.digits(cx.system)
            == Value::new(Kind::Offset, Length::default()).digits(cx.system);
        let entry = out.number(&format!("flange.{}", bolt + 1), label, value);
        let entry = entry.second(if nothing {
            "it tilts about this side"
        } else {
            "between flange and seat"
        });
        if let Some(working) = moved.working(bolt) {
            entry.working(working);
        }
    }
}

fn shifts(out: &mut StageBuilder, moved: &FlangeMove, room: Option<Length>) {
    for (plane, ways) in [(Plane::Vertical, ["12", "6"]), (Plane::Sideways, ["3", "9"])] {
        let shift = moved.shift[usize::from(plane == Plane::Sideways)];
        let way = if shift.value.si() < 0.0 { ways[1] } else { ways[0] };
        let value = Value { si: shift.value.si().abs(), ..shift.shown(Kind::Offset) };
        let entry = out
            .number(
                &format!("flange.shift.{}", key(plane)),
                format!("Shift the flange to {way}"),
                value,
            )
            .second("on its seat, a dial at the rim of the flange")
            .working(moved.shift_working(plane));
        if let Some(room) = room {
            entry
                .judged(Limits::at_most(room.si()), "The register or the bolts bind before it is there. Open the holes, or have the register relieved.")
                .settled_by("With its ± it may bind before it is there: read the dials again, or try how far it goes.");
        }
    }
}
