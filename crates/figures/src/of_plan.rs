//! A plan's drawings: from its data to figures.
//!
//! What a plan does not hold yet, or what cannot be drawn from what it holds, is left out.

mod fit;
mod heat;
mod lineup;
mod section;

use job::plan::Plan;
use job::plan::drawings::Closing;

use crate::section::Detail;
use crate::tightening::{Ends, Stage, Tightening};
use crate::{Figure, Paper};

/// The coupling in half section, from this job's sizes.
pub fn section(plan: &Plan, detail: Detail) -> Option<Figure> {
    let section = section::input(plan.drawings.section.as_ref()?, plan.head.system);
    crate::section::draw(&section, detail).ok()
}

/// Why the section cannot be drawn from sizes that are there: what does not fit, and what to change.
pub fn section_refused(plan: &Plan) -> Option<String> {
    let system = plan.head.system;
    let section = section::input(plan.drawings.section.as_ref()?, system);
    let error = crate::section::draw(&section, Detail::Full).err()?;
    Some(section::refused(&error, system))
}

/// Its parts moved apart along the axis, numbered in the order of work.
pub fn taken_apart(plan: &Plan) -> Option<Figure> {
    let section = section::input(plan.drawings.section.as_ref()?, plan.head.system);
    crate::section::taken_apart(&section).ok().flatten()
}

/// The line-up sheet: from the side, the bench, from above.
pub fn lineup(plan: &Plan, paper: Paper) -> Option<Figure> {
    let lineup = lineup::input(plan.drawings.lineup.as_ref()?, plan.head.system);
    crate::lineup::draw(&lineup, paper).ok()
}

/// A sweep of a dial and the curve through it, by its place among the plan's.
pub fn sweep(plan: &Plan, place: usize, paper: Paper) -> Option<Figure> {
    let sweep = plan.drawings.sweeps.get(place)?;
    crate::sweep::draw(&lineup::sweep(sweep), paper).ok()
}

/// The fit at the driver's or the driven end ("driver", "driven").
pub fn fit(plan: &Plan, end: &str, paper: Paper) -> Option<Figure> {
    let zones = plan.drawings.fits.iter().find(|fit| fit.end == end)?;
    crate::fit::draw(&fit::input(zones), paper).ok()
}

/// The bore map at one end: out-of-round and taper, enlarged.
pub fn bore_map(plan: &Plan, end: &str, paper: Paper) -> Option<Figure> {
    let zones = plan.drawings.fits.iter().find(|fit| fit.end == end)?;
    crate::bore_map::draw(&fit::bore(zones, plan.head.system)?, paper).ok()
}

/// How a hot hub closes on its shaft at one end; only of a full plan.
pub fn clearance(plan: &Plan, end: &str, paper: Paper) -> Option<Figure> {
    closing(plan.drawings.closing.iter().find(|closing| closing.end == end)?, paper)
}

/// The same, of a hub that is not the plan's own: of a try-out.
pub fn closing(closing: &Closing, paper: Paper) -> Option<Figure> {
    crate::clearance::draw(&heat::clearance(closing), paper).ok()
}

/// The pull as a hub is heated off at one end; only of a full plan.
pub fn pull(plan: &Plan, end: &str, paper: Paper) -> Option<Figure> {
    let pulling = plan.drawings.pulling.iter().find(|pulling| pulling.end == end)?;
    crate::pull::draw(&heat::pull(pulling), paper).ok()
}

/// The interference that would do at one end, and the classes beside it.
pub fn window(plan: &Plan, end: &str, paper: Paper) -> Option<Figure> {
    let window = plan.drawings.windows.iter().find(|window| window.end == end)?;
    crate::window::draw(&fit::window(window), paper).ok()
}

/// Pressure along the hub at one end.
pub fn pressure(plan: &Plan, end: &str, paper: Paper) -> Option<Figure> {
    let pressure = plan.drawings.pressures.iter().find(|pressure| pressure.end == end)?;
    crate::pressure::draw(&fit::pressure(pressure, plan.head.system), paper).ok()
}

/// Torque held against torque needed at one end.
pub fn torque(plan: &Plan, end: &str, paper: Paper) -> Option<Figure> {
    let torque = plan.drawings.torques.iter().find(|torque| torque.end == end)?;
    crate::torque::draw(&fit::torque(torque), paper).ok()
}

/// How much of what the coupling bears is used up.
pub fn budget(plan: &Plan, paper: Paper) -> Option<Figure> {
    let state = |used: &job::plan::drawings::UsedUp| crate::budget::State {
        name: used.name.to_owned(),
        shares: used.shares,
        plus_minus: used.plus_minus,
    };
    let states: Vec<_> = plan.drawings.used.iter().map(state).collect();
    crate::budget::draw(&states, paper).ok()
}

/// What the coupling bears at once of angle and axial position, and where this job stands in it.
pub fn envelope(plan: &Plan, paper: Paper) -> Option<Figure> {
    let data = plan.drawings.bears.as_ref()?;
    let field = |[axial, angle]: [f64; 2]| vec![(-axial, 0.0), (0.0, angle), (axial, 0.0)];
    let state = |state: &job::plan::drawings::InField| crate::envelope::State {
        name: state.name.to_owned(),
        axial: state.at[0],
        angle: state.at[1],
        plus_minus: (state.plus_minus[0], state.plus_minus[1]),
        basis: if state.read {
            crate::envelope::Basis::Measured
        } else {
            crate::envelope::Basis::WorkedOut
        },
    };
    let envelope = crate::envelope::Envelope {
        heights: data.heights.clone(),
        run: data.run.clone(),
        allowed: field(data.most),
        fitting: data.fitting.map(field),
        states: data.states.iter().map(state).collect(),
    };
    crate::envelope::draw(&envelope, paper).ok()
}

/// The feet of the machine at one end, as they were tried.
pub fn foot_map(plan: &Plan, end: &str, paper: Paper) -> Option<Figure> {
    let map = plan.drawings.foot_maps.iter().find(|map| map.end == end)?;
    crate::foot_map::draw(&lineup::foot_map(map), paper).ok()
}

/// Temperature of hub and shaft at one end as the hub goes on, moment by moment.
pub fn warmth_on(plan: &Plan, end: &str, paper: Paper) -> Vec<Figure> {
    let warmth = plan.drawings.warmth_on.iter().find(|warmth| warmth.end == end);
    warmth.map_or_else(Vec::new, |warmth| heat::warmth(warmth, "after it is home", paper))
}

/// Temperature of hub and shaft at one end as the hub is heated off, moment by moment.
pub fn warmth_off(plan: &Plan, end: &str, paper: Paper) -> Vec<Figure> {
    let warmth = plan.drawings.warmth_off.iter().find(|warmth| warmth.end == end);
    warmth.map_or_else(Vec::new, |warmth| heat::warmth(warmth, "after heat goes on", paper))
}

/// The order of tightening, and its passes.
pub fn tightening(plan: &Plan, paper: Paper) -> Option<Figure> {
    let bolts = plan.drawings.tightening.as_ref()?;
    let stage = |(share, text): &(f64, String)| Stage { share: *share, text: text.clone() };
    let input = Tightening {
        order: bolts.order.clone(),
        stages: bolts.passes.iter().map(stage).collect(),
        ends: if bolts.by_turns { Ends::ByTurns } else { Ends::Alike },
        note: if bolts.by_turns {
            "Black: head; white: nut. Large: turn in each pass; small: bolt.".to_owned()
        } else {
            "Large: turn in each pass; small: bolt, clockwise.".to_owned()
        },
    };
    crate::tightening::draw(&input, paper).ok()
}
