//! The line-up's data as the sheet wants it.

use job::plan::drawings::{self as data, View};
use quantities::System;

use crate::foot_map::{FootMap, Tried};
use crate::lineup::{
    Band, Coupling, Foot, Line, LineUp, Machine, Move, Plate, Sight, Stands, Wedge,
};
use crate::sweep::Sweep;

const MM: f64 = 1e3;
/// A shaft is drawn this far past its last foot, and past the coupling where it has none, as a part
/// of the way from the coupling to that foot.
const BEYOND: f64 = 0.08;
/// Length of a shaft whose feet are not known, mm.
const BARE_MM: f64 = 250.0;

pub(super) fn sweep(data: &data::SweepCurve) -> Sweep {
    Sweep {
        name: data.name.clone(),
        unit: data.unit.to_owned(),
        readings: data.readings.clone(),
        circle: data.circle,
        plus_minus: data.plus_minus,
    }
}

pub(super) fn input(data: &data::LineUp, system: System) -> LineUp {
    let wedge = |[offset, slope]: [f64; 2]| Wedge { offset_mm: offset * MM, slope };
    let coupling = |joint: &data::Joint| Coupling {
        planes_mm: (joint.planes[0] * MM, joint.planes[1] * MM),
        text: joint.text.clone(),
        limit: joint.limit.map(wedge),
        aim: joint.aim.map(wedge),
    };
    let couplings: Vec<Coupling> = data.couplings.iter().map(coupling).collect();
    let machines = data.machines.iter().enumerate().map(|(place, of)| {
        let before = place.checked_sub(1).and_then(|i| couplings.get(i));
        machine(of, before, couplings.get(place))
    });
    LineUp { machines: machines.collect(), couplings, system }
}

/// A machine's shaft runs from the coupling before it to the one after it; at an end of the train it
/// runs on past its last foot.
fn machine(data: &data::Machine, before: Option<&Coupling>, after: Option<&Coupling>) -> Machine {
    let mut feet: Vec<Foot> = data.feet.iter().map(foot).collect();
    feet.sort_by(|a, b| a.x_mm.total_cmp(&b.x_mm));
    let places = || feet.iter().map(|foot| foot.x_mm);
    let (least, most) =
        (places().fold(f64::INFINITY, f64::min), places().fold(f64::NEG_INFINITY, f64::max));
    let past = |foot: f64, plane: f64, side: f64| {
        if foot.is_finite() {
            foot + side * BEYOND * (foot - plane).abs()
        } else {
            plane + side * BARE_MM
        }
    };
    let (start, end) = match (before, after) {
        (Some(before), Some(after)) => (before.planes_mm.1, after.planes_mm.0),
        (Some(before), None) => (before.planes_mm.1, past(most, middle(before), 1.0)),
        (None, Some(after)) => (past(least, middle(after), -1.0), after.planes_mm.0),
        (None, None) => (past(least, 0.0, -1.0), past(most, 0.0, 1.0)),
    };
    // A flexing plane beyond the feet would leave no shaft.
    let shaft_mm = (start.min(least), end.max(most));
    let near = |foot: f64, coupling: Option<&Coupling>, side: f64| {
        coupling.map_or(foot, |coupling| foot - side * BEYOND * (foot - middle(coupling)).abs())
    };
    let body = (
        if before.is_some() { near(least, before, 1.0).max(shaft_mm.0) } else { shaft_mm.0 },
        if after.is_some() { near(most, after, -1.0).min(shaft_mm.1) } else { shaft_mm.1 },
    );
    let [side, above] = data.views.map_or([STAYS; 2], |views| views.map(|view| sight(&view)));
    Machine {
        name: data.name.clone(),
        shaft_mm,
        body_mm: least.is_finite().then_some(body),
        feet,
        stands: if data.moves { Stands::Moves } else { Stands::Fixed },
        side,
        above,
    }
}

/// The middle of a coupling.
fn middle(coupling: &Coupling) -> f64 {
    f64::midpoint(coupling.planes_mm.0, coupling.planes_mm.1)
}

const STAYS: Sight = Sight { found: None, target: Line::ZERO, after: None };

fn sight(view: &View) -> Sight {
    let line = |[offset, slope]: [f64; 2]| Line { at_mm: 0.0, offset_mm: offset * MM, slope };
    let [pivot, offset, slope] = view.band;
    let band = Band { pivot_mm: pivot * MM, offset_mm: offset * MM, slope };
    let (found, after) = (Some((line(view.found), band)), view.after.map(line));
    Sight { found, target: line(view.target), after }
}

fn foot(data: &data::Feet) -> Foot {
    let stays = data.shimmed.then_some(if data.comes_out { Plate::ComesOut } else { Plate::Stays });
    let goes_in = std::iter::repeat_n(Plate::GoesIn, data.goes_in);
    let moved = |(si, text): &(f64, String)| Move { mm: si * MM, text: text.clone() };
    Foot {
        x_mm: data.x * MM,
        text: data.text.clone(),
        pack: stays.into_iter().chain(goes_in).collect(),
        rise: data.rise.as_ref().map(moved),
        push: data.push.as_ref().map(moved),
    }
}

pub(super) fn foot_map(data: &job::plan::drawings::FootMap) -> FootMap {
    let foot = |foot: &job::plan::drawings::MapFoot| Tried {
        rise: foot.rise.clone(),
        soft: foot.soft,
        gaps: foot.gaps.clone(),
    };
    FootMap {
        name: data.name.clone(),
        unit: data.unit.to_owned(),
        coupling_right: data.end == "driver",
        planes: data.planes.iter().map(|plane| plane.feet.each_ref().map(foot)).collect(),
    }
}
