//! The line-up's data as the sheet wants it.

use job::plan::drawings::{self as data, View};
use quantities::System;

use crate::lineup::{
    Band, Coupling, Foot, Line, LineUp, Machine, Move, Plate, Sight, Stands, Wedge,
};

const MM: f64 = 1e3;
/// A shaft is drawn this far past its last foot, and past the coupling where it has none, as a part
/// of the way from the coupling to that foot.
const BEYOND: f64 = 0.08;
/// Length of a shaft whose feet are not known, mm.
const BARE_MM: f64 = 250.0;

pub(super) fn input(data: &data::LineUp, system: System) -> LineUp {
    let wedge = |[offset, slope]: [f64; 2]| Wedge { offset_mm: offset * MM, slope };
    let [left, right] = data.planes;
    let machine = |place: usize, end: &str, side: f64| {
        let plane = data.planes[place] * MM;
        machine(&data.machines[place], (side, plane), (end == data.moves).then_some(data.views))
    };
    LineUp {
        machines: vec![machine(0, "driver", -1.0), machine(1, "driven", 1.0)],
        couplings: vec![Coupling {
            planes_mm: (left * MM, right * MM),
            text: "0".to_owned(),
            limit: data.limit.map(wedge),
            aim: data.aim.map(wedge),
        }],
        system,
    }
}

/// `side` is −1 for the driver, left of the coupling, and 1 for the driven machine; its shaft ends
/// at its own flexing plane.
fn machine(data: &data::Machine, (side, plane): (f64, f64), moves: Option<[View; 2]>) -> Machine {
    let mut feet: Vec<Foot> = data.feet.iter().map(foot).collect();
    feet.sort_by(|a, b| a.x_mm.total_cmp(&b.x_mm));
    let reach = |x: f64| (x * side).abs();
    let far = feet.iter().map(|foot| reach(foot.x_mm)).fold(0.0, f64::max);
    let near = feet.iter().map(|foot| reach(foot.x_mm)).fold(f64::INFINITY, f64::min);
    let start = (plane * side).max(0.0);
    let end = if far > 0.0 { far * (1.0 + BEYOND) } else { start + BARE_MM };
    let start = start.min(0.9 * end);
    let span = |from: f64, to: f64| if side < 0.0 { (-to, -from) } else { (from, to) };
    let [up, right] = moves.map_or([STAYS; 2], |views| views.map(|view| sight(&view)));
    Machine {
        name: data.name.clone(),
        shaft_mm: span(start, end),
        body_mm: (far > 0.0).then(|| span(near * (1.0 - BEYOND), end)),
        feet,
        stands: if moves.is_some() { Stands::Moves } else { Stands::Fixed },
        side: up,
        above: right,
    }
}

const STAYS: Sight = Sight { found: None, target: Line::ZERO };

fn sight(view: &View) -> Sight {
    let line = |[offset, slope]: [f64; 2]| Line { at_mm: 0.0, offset_mm: offset * MM, slope };
    let [pivot, offset, slope] = view.band;
    let band = Band { pivot_mm: pivot * MM, offset_mm: offset * MM, slope };
    Sight { found: Some((line(view.found), band)), target: line(view.target) }
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
