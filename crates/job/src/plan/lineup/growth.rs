//! What the supports grow, and where the machines must stand cold for it.

use lineup::growth::{
    PlaneGrowth, Support, growth_line, support_growth, target, target_tilt_working, target_working,
};
use lineup::line::Line;
use lineup::{Estimate, Plane};
use quantities::{
    Basis, Kind, Length, Physical, Source, TemperatureCoefficient, TemperatureInterval, Value,
    Working,
};

use super::super::stage_builder::{StageBuilder, WRITTEN};
use super::bench::{Member, Stand};
use super::judge::key;
use super::words::{rear_of, side};
use super::{Context, Found};
use crate::file::{Aim, Foot, GrowthAtFoot};

/// `±` of a growth that was given without one, as a share of it: a rule of our own, said in the
/// plan. Temperatures of supports are rarely known better.
const GROWTH_SHARE: f64 = 0.25;

/// A state of the machines.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum State {
    Start,
    Run,
}

/// Both.
pub(super) const STATES: [State; 2] = [State::Start, State::Run];

/// What a machine's line grows until a state; the axis itself where nothing is known of it.
pub(super) fn line(stands: &[Stand], state: State) -> Line {
    let planes: Vec<PlaneGrowth> = stands
        .iter()
        .filter_map(|stand| {
            let grown = foot_growth(&stand.foot, state)?;
            Some(PlaneGrowth { at: stand.plane.at, up: grown[0], right: grown[1] })
        })
        .collect();
    growth_line(&planes).unwrap_or_else(|_| Line::zero(Length::default()))
}

/// Growth of one foot plane, up and to 3 o'clock: measured, or worked out from height, rise and
/// material. A machine that starts cold has none yet.
pub(super) fn foot_growth(foot: &Foot, state: State) -> Option<[Estimate<Length>; 2]> {
    let growth = foot.growth.as_ref()?;
    let none = Estimate::exact(Length::default());
    let given = |text: &Option<quantities::Measured<Length>>| {
        let text = text.as_ref()?;
        let usual = text.value().abs() * GROWTH_SHARE;
        Some(Estimate::new(text.value(), text.spread().unwrap_or(usual)))
    };
    let worked = |state| {
        let support = support(growth, state)?;
        support_growth(support).ok().map(|grown| grown.growth)
    };
    match state {
        State::Run => {
            let up = given(&growth.up).or_else(|| worked(state));
            let right = given(&growth.right);
            (up.is_some() || right.is_some()).then(|| [up.unwrap_or(none), right.unwrap_or(none)])
        }
        State::Start => {
            foot_growth(foot, State::Run)?;
            let up = given(&growth.start_up).or_else(|| worked(state));
            Some([up.unwrap_or(none), none])
        }
    }
}

fn support(growth: &GrowthAtFoot, state: State) -> Option<Support> {
    let rise = match state {
        State::Start => growth.start_rise.as_ref()?,
        State::Run => growth.rise.as_ref()?,
    };
    let height = growth.height.as_ref()?;
    let usual = TemperatureInterval::from_si(rise.value().si().abs() * GROWTH_SHARE);
    Some(Support {
        height: Estimate::new(height.value(), height.spread().unwrap_or_default()),
        rise: Estimate::new(rise.value(), rise.spread().unwrap_or(usual)),
        expansion: expansion(&growth.material),
    })
}

fn expansion(material: &str) -> TemperatureCoefficient {
    let known = tables::materials::material(material).or(tables::materials::material("cast iron"));
    known.map_or(TemperatureCoefficient::from_si(11e-6), |material| material.expansion)
}

/// The growths, and where the moving machine is set cold for them.
pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, members: &[Member]) {
    let mut any = false;
    for member in members {
        for stand in &member.stands {
            let Some([up, right]) = foot_growth(&stand.foot, State::Run) else { continue };
            any = true;
            let foot = &stand.plane.name;
            let id = format!("growth.{}.{foot}", member.key);
            let label = format!("Growth of the {}, {foot} feet", member.name);
            let entry = out.number(&id, label, up.shown(Kind::Offset)).second("cold to running");
            let growth = stand.foot.growth.as_ref();
            let worked = growth.filter(|growth| growth.up.is_none());
            match worked.and_then(|growth| support(growth, State::Run)).map(support_growth) {
                Some(Ok(worked)) => {
                    entry.working(Working { result: up.shown(Kind::Offset), ..worked.working() })
                }
                _ => entry.written(WRITTEN),
            };
            if right.value.si() != 0.0 {
                let label = format!("Growth of the {} to 3 o’clock, {foot} feet", member.name);
                out.number(&format!("{id}.right"), label, right.shown(Kind::Offset))
                    .second("cold to running")
                    .written(WRITTEN);
            }
        }
    }
    if any {
        notes(cx, out, members);
    } else {
        out.note("No growth was given: the machines are aimed to be in line as they stand. Hot machines move; ask for their growth.");
    }
}

fn notes(cx: &Context, out: &mut StageBuilder, members: &[Member]) {
    let guessed = members.iter().flat_map(|member| &member.stands).any(|stand| {
        let growth = stand.foot.growth.as_ref();
        growth.is_some_and(|growth| {
            growth.up.is_none() && growth.rise.is_some() && growth.material.is_empty()
        })
    });
    if guessed {
        out.note("A support whose metal was not named is taken as cast iron.");
    }
    match cx.file.lineup.aim.unwrap_or_default() {
        Aim::Run => {}
        Aim::Start => out.note("Aimed to be in line as it starts; it grows out of line as it warms."),
        Aim::Between => out.note("Aimed halfway between start and run: so the worse of the two is least, whatever the limits."),
    }
}

/// Where the moving machine is set cold, at the middle of the coupling.
pub(super) fn targets(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let joint = found.own();
    let moves = cx.file.machines.moves;
    let (fixed, moving) = found.growths();
    let name = cx.name(moves);
    for plane in Plane::BOTH {
        let aimed = joint.target.offset(plane, Length::default());
        if aimed.value.si() != 0.0 {
            let way = side(plane, aimed.value.si());
            let label = format!("Set the {name} cold, {way} at the coupling by");
            let value = Value { si: aimed.value.si().abs(), ..aimed.shown(Kind::Offset) };
            out.number(&format!("target.{}", key(plane)), label, value)
                .second("so that it runs in line: growth of the one less growth of the other")
                .working(target_working(fixed, moving, plane, Length::default()));
        }
        let slope = joint.target.slope(plane);
        if slope.value.si() != 0.0 {
            let way = rear_of(moves, plane, slope.value.si());
            let value = Value { si: slope.value.si().abs(), ..slope.shown(Kind::Slope) };
            out.number(
                &format!("target.tilt.{}", key(plane)),
                format!("Set it cold with its rear end {way} by"),
                value,
            )
            .second("the growths at its feet differ, or the other machine’s do")
            .working(target_tilt_working(fixed, moving, plane));
        }
    }
}

/// What start and run see of a machine that stands where it is aimed.
pub(super) fn states(cx: &Context, out: &mut StageBuilder, found: &Found) {
    if cx.file.lineup.aim.is_none() {
        return;
    }
    let joint = found.own();
    let middle = joint.position.layout.reference;
    let name = cx.name(cx.file.machines.moves);
    for (index, (key_of, words)) in
        [("start", "at start"), ("run", "running")].into_iter().enumerate()
    {
        let (fixed, moving) = found.states(index);
        let seen = joint.target.minus(&target(fixed, moving));
        for plane in Plane::BOTH {
            let off = seen.offset(plane, middle);
            let aimed = joint.target.offset(plane, middle);
            if off.value.si() == 0.0 && aimed.value.si() == 0.0 {
                continue;
            }
            // What is aimed at is taken as it is; unsure is where the state itself brings it.
            let plus_minus = target(fixed, moving).offset(plane, middle).plus_minus;
            let off = Estimate::new(off.value, plus_minus);
            let value = Value { si: off.value.si().abs(), ..off.shown(Kind::Offset) };
            let label = format!("Where aimed, {words}: {name} {}", side(plane, off.value.si()));
            out.number(&format!("state.{key_of}.{}", key(plane)), label, value)
                .second("at the coupling, from being in line")
                .working(state_working(aimed, target(fixed, moving).offset(plane, middle), off));
        }
    }
}

fn state_working(
    aimed: Estimate<Length>,
    needed: Estimate<Length>,
    off: Estimate<Length>,
) -> Working {
    let source = Source::new("Growth lines of both machines", "", Basis::Computed);
    Working::new("From being in line", "e = a − n", off.shown(Kind::Offset), source)
        .term("a", "cold target that is aimed at", Value::new(Kind::Offset, aimed.value))
        .term("n", "cold target that this state would need", needed.shown(Kind::Offset))
        .valid("at the middle of the coupling; the sign is said in words")
}
