//! How good the line will be after the moves, and what stands in the way of a better one.

use lineup::Plane;
use lineup::gains::{Change, Gain};
use lineup::moves::tilt;
use lineup::position::Observation;
use lineup::tolerance::{Judgement, chance_of_all, judge_line};
use lineup::trials::{Growth, OnTrial, Trials, trials};
use quantities::{Basis, Kind, Length, Limits, Physical, Source, Value, Verdict, Working};

use super::super::stage_builder::StageBuilder;
use super::judge::key;
use super::{Context, Found, Joint, Moves, settle};

/// Gains that are said, at most.
const SAID: usize = 3;
/// With less than this lost together, the bound is as good as the chance.
const LITTLE_LOST: f64 = 1e-3;
/// Trials, and where their numbers at random start.
const TRIALS: u32 = 20_000;
const SEED: u64 = 1;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let Some(moves) = &found.moves else { return };
    let mut all: Vec<Judgement> = Vec::new();
    for (index, joint) in found.joints.iter().enumerate() {
        let deviation = moves.left(index);
        let judged = judge_line(&joint.position.layout, deviation, &joint.levels);
        let judged = judged.unwrap_or_default();
        for plane in Plane::BOTH {
            let here = judged.iter().filter(|judgement| judgement.plane == plane);
            let here: Vec<&Judgement> = here.collect();
            left(cx, out, found, joint, plane, &here);
        }
        all.extend(judged);
    }
    chance(out, found, moves, &all);
    for plane in Plane::BOTH {
        tilting(out, found, moves, plane);
    }
}

/// The part of the strictest limit that is still used up.
fn left(
    cx: &Context,
    out: &mut StageBuilder,
    found: &Found,
    joint: &Joint,
    plane: Plane,
    judged: &[&Judgement],
) {
    let worst = judged.iter().max_by(|a, b| a.ratio().total_cmp(&b.ratio()));
    let Some(worst) = worst.filter(|worst| worst.level().is_some()) else { return };
    let limit = worst.level().map_or(1.0, |level| level.shown().si);
    let value = Value {
        kind: Kind::Percent,
        si: worst.ratio(),
        plus_minus: worst.deviation.plus_minus.map(|spread| spread / limit),
    };
    let verdict = judged.iter().map(|j| j.verdict()).max().unwrap_or(Verdict::NotMeasured);
    let at = if joint.key.is_empty() {
        String::new()
    } else {
        format!(", {} and {}", joint.names[0], joint.names[1])
    };
    let label = format!("Used up after these moves, {}{at}", plane.words());
    let level = worst.level().map_or("", |level| level.name.as_str());
    let mend =
        found.moves.as_ref().map_or_else(String::new, |moves| in_the_way(cx, found, moves, plane));
    let entry = out
        .number(&joint.id(&format!("left.{}", key(plane))), label, value)
        .second(format!(
            "of the limit that is nearest: {level}; whole shims and all growth counted"
        ))
        .working(Working { result: value, ..worst.working() })
        .ruled(Limits::at_most(1.0), verdict, mend);
    if verdict == Verdict::TooClose {
        let unsure = judged.iter().find(|j| j.verdict() == verdict).unwrap_or(worst);
        entry.settled_by(settle::sentence(cx, joint, unsure));
    }
}

/// What keeps it from being better, each change with what it would gain.
fn in_the_way(cx: &Context, found: &Found, moves: &Moves, plane: Plane) -> String {
    let said: Vec<String> = moves
        .gains(plane)
        .take(SAID)
        .map(|gain| {
            format!(
                "{} would bring it to {:.0} % of the limit",
                change_words(cx, found, plane, gain),
                gain.then * 100.0
            )
        })
        .collect();
    if said.is_empty() {
        let steps = moves
            .whole
            .as_ref()
            .is_some_and(|(plan, _)| plan.worst_ratio[0] > moves.free.worst_ratio[0] + 0.01);
        return if steps && plane == Plane::Vertical {
            "The shims in stock come in steps too coarse: get thinner ones.".to_owned()
        } else {
            "No move of these machines brings it inside.".to_owned()
        };
    }
    format!("The feet allow no better. {}.", super::words::capital_first(&said.join("; ")))
}

fn change_words(cx: &Context, found: &Found, plane: Plane, gain: &Gain) -> String {
    match &gain.change {
        Change::Room { machine, foot, beyond } => {
            let name = &found.members[*machine].name;
            format!("{} at the {foot} feet of the {name}", room_short(cx, plane, *beyond))
        }
        Change::AllRoom => match plane {
            Plane::Vertical => {
                "room to come down at every foot (bases machined, or the rest raised)".to_owned()
            }
            Plane::Sideways => "room to both sides at every foot".to_owned(),
        },
        Change::LetGo(machine) => format!("moving the {} as well", found.members[*machine].name),
    }
}

fn room_short(cx: &Context, plane: Plane, beyond: Length) -> String {
    let shown = Value::new(Kind::Offset, beyond.abs()).show(cx.system);
    match (plane, beyond.si() < 0.0) {
        (Plane::Vertical, true) => format!("{shown} off base or sole"),
        (Plane::Vertical, false) => format!("{shown} more height"),
        (Plane::Sideways, true) => format!("{shown} more room to 9"),
        (Plane::Sideways, false) => format!("{shown} more room to 3"),
    }
}

/// What a foot at the end of its room would need.
pub(super) fn room_words(cx: &Context, plane: Plane, beyond: Length) -> String {
    if beyond.si() == 0.0 {
        return "Alone it would gain nothing by more room; see what the other feet need."
            .to_owned();
    }
    let shown = room_short(cx, plane, beyond);
    match plane {
        Plane::Vertical => {
            format!("{shown} would let it come down; or raise the other machine by as much.")
        }
        Plane::Sideways => {
            format!("{shown} would let it go on: open the holes, or undercut the bolts.")
        }
    }
}

/// The chance that everything is inside once the moves are made.
///
/// Chances lost that add up are a bound, and a good one while they are small; beyond that, trials say
/// what the bound leaves open.
fn chance(out: &mut StageBuilder, found: &Found, moves: &Moves, judged: &[Judgement]) {
    let Some(bound) = chance_of_all(judged) else { return };
    let at_least = Value { kind: Kind::Percent, si: bound, plus_minus: None };
    let lost: f64 = judged.iter().filter_map(Judgement::chance).map(|chance| 1.0 - chance).sum();
    let tried = (lost > LITTLE_LOST).then(|| tried(found, moves)).flatten();
    let (value, second, working) = if let Some(tried) = tried {
        let working = tried.working().term("b", "at least, by adding squares", at_least);
        (tried.chance(), "by trials with every reading, place and growth drawn anew", working)
    } else {
        let source =
            Source::new("JCGM 106:2012", "7.3 and 7.4; chances lost add up", Basis::Computed);
        let name = "Chance that all is inside";
        let working = Working::new(name, "P = max(0, 1 − L)", at_least, source)
            .term("L", "chances that each is not, together", Value::number(lost))
            .valid("the ± of dials and growth; what the feet do on tightening is not in it");
        (at_least, "at least, by the ± of readings and growth", working)
    };
    out.number("chance", "Chance that all is inside after these moves", value)
        .second(second)
        .working(working);
}

/// What comes out when everything that was measured is drawn anew, again and again.
fn tried(found: &Found, moves: &Moves) -> Option<Trials> {
    let seen: Vec<Vec<Observation>> = found.joints.iter().map(Joint::observations).collect();
    let joints = found.joints.iter().zip(&seen).enumerate();
    let couplings: Vec<OnTrial> = joints
        .filter(|(_, (joint, _))| !joint.levels.is_empty())
        .map(|(index, (joint, seen))| OnTrial {
            position: &joint.position,
            seen,
            left: moves.left(index),
            levels: &joint.levels,
        })
        .collect();
    let growth = |member: &super::Member| Growth::normal(member.growth.clone());
    let growths: Vec<Growth> = found.members.iter().map(growth).collect();
    trials(&couplings, &growths, SEED, TRIALS).ok()
}

/// Where bolts bind, what shims on one side would do instead.
fn tilting(out: &mut StageBuilder, found: &Found, moves: &Moves, plane: Plane) {
    if plane == Plane::Vertical {
        return;
    }
    for gain in moves.gains(plane) {
        let Change::Room { machine, foot, beyond } = &gain.change else { continue };
        let member = &found.members[*machine];
        let Some(table) = &member.table else { continue };
        let sizes = table.centre_height.as_ref().zip(table.width.as_ref());
        let Some((height, width)) = sizes else { continue };
        let Some(tilted) = tilt(beyond.abs(), height.value(), width.value()) else { continue };
        let (low, high) = if beyond.si() < 0.0 { ("9", "3") } else { ("3", "9") };
        let label = format!("Or tilt the {} at its {foot} feet", member.name);
        out.number(&format!("tilting.{}.{foot}", member.key), label, Value::new(Kind::Offset, tilted.shims))
            .second(format!("out of the foot at {low}, into the foot at {high}: the shaft goes to {low} by what the bolts forbid"))
            .working(tilted.working());
    }
}
