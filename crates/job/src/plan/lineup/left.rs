//! Moves tried on paper, moves made, and what they brought: as found and as left side by side.

use lineup::Estimate;
use lineup::Plane;
use lineup::growth::{PlaneGrowth, growth_line};
use lineup::line::Line;
use lineup::position::Position;
use lineup::tolerance::judge_line;
use quantities::{
    Basis, Kind, Length, Limits, Measured, Physical, Source, Value, Verdict, Working,
};

use super::super::stage_builder::StageBuilder;
use super::judge::{key, named, offset_working, working_of};
use super::words::side;
use super::{Context, Found, Joint, Member};
use crate::file::{Foot, Shift};

/// ± of a move that was made without a ± of its own: shims measured, a dial on the foot.
const MOVED_M: f64 = 0.01e-3;
/// Within this part of what was foretold a foot did as it should; a rule of our own.
const AS_TOLD: f64 = 0.15;

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, found: &Found) {
    tried(cx, out, found);
    let joint = found.own();
    if let Some(before) = &joint.as_found {
        as_found(cx, out, joint, before);
        learned(cx, out, found, joint, before);
    }
}

/// The moves of one kind at this job's two machines, as a line of the moving less the fixed; `None`
/// where none were entered.
fn shift(found: &Found, of: fn(&Foot) -> Option<&Shift>) -> Option<Line> {
    let [left, right] =
        [found.own, found.own + 1].map(|index| of_member(&found.members[index], of));
    let zero = || Line::zero(Length::default());
    if left.is_none() && right.is_none() {
        return None;
    }
    let driven_less_driver = right.unwrap_or_else(zero).minus(&left.unwrap_or_else(zero));
    let driver_moves = found.own().moving_end() == crate::file::End::Driver;
    Some(if driver_moves { driven_less_driver.negated() } else { driven_less_driver })
}

fn of_member(member: &Member, of: fn(&Foot) -> Option<&Shift>) -> Option<Line> {
    let any = member.stands.iter().any(|stand| of(&stand.foot).is_some());
    let planes: Vec<PlaneGrowth> = member
        .stands
        .iter()
        .map(|stand| {
            let amount = |text: Option<&Measured<Length>>| {
                let spread = Length::from_si(MOVED_M);
                text.map_or_else(
                    || Estimate::exact(Length::default()),
                    |text| Estimate::new(text.value(), text.spread().unwrap_or(spread)),
                )
            };
            let shift = of(&stand.foot);
            PlaneGrowth {
                at: stand.plane.at,
                up: amount(shift.and_then(|shift| shift.up.as_ref())),
                right: amount(shift.and_then(|shift| shift.right.as_ref())),
            }
        })
        .collect();
    any.then(|| growth_line(&planes).ok()).flatten()
}

/// Where the machine would lie after the moves that are being tried on paper.
fn tried(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let joint = found.own();
    let Some(shift) = shift(found, |foot| foot.tried.as_ref()) else { return };
    let off = joint.off.plus(&shift);
    let judged = judge_line(&joint.position.layout, &off, &joint.levels).unwrap_or_default();
    for judgement in judged {
        let (id, label) = named(joint, &judgement);
        let value = Value { si: judgement.deviation.si.abs(), ..judgement.deviation };
        let limit = judgement.level().map_or(f64::INFINITY, |level| level.shown().si);
        let verdict = judgement.verdict();
        let outcome = match verdict {
            Verdict::Inside => "these moves will do",
            Verdict::TooClose => "too close to call",
            _ => "these moves will not do",
        };
        let limit = Value { si: limit, plus_minus: None, ..value }.show(cx.system);
        let now = now(joint, &judgement);
        out.number(&format!("tried.{id}"), format!("If the tried moves were made: {label}"), value)
            .second(format!("{outcome}: the limit is {limit}"))
            .working(sum_working(now, judgement.deviation));
    }
}

/// The same deviation as it is now.
fn now(joint: &Joint, then: &lineup::tolerance::Judgement) -> Value {
    let all = judge_line(&joint.position.layout, &joint.off, &joint.levels).unwrap_or_default();
    let same = all
        .into_iter()
        .find(|one| (one.plane, one.place, one.measure) == (then.plane, then.place, then.measure));
    same.map_or(then.deviation, |one| one.deviation)
}

fn sum_working(now: Value, then: Value) -> Working {
    let moved = Value { si: then.si - now.si, plus_minus: None, ..then };
    let source = Source::new("Geometry of two straight lines", "", Basis::Computed);
    Working::new("After the tried moves", "e = d + m", then, source)
        .term("d", "as it lies against its target", now)
        .term("m", "what the tried moves change there", moved)
        .valid("feet that take up what is put under them; the sign is said in words")
}

/// As found, beside what stands above as left.
fn as_found(cx: &Context, out: &mut StageBuilder, joint: &Joint, before: &Position) {
    let off = before.line.minus(&joint.target);
    let judged = judge_line(&before.layout, &off, &joint.levels).unwrap_or_default();
    if judged.is_empty() {
        for plane in Plane::BOTH {
            let offset = off.offset(plane, before.layout.reference);
            let value = Value { si: offset.value.si().abs(), ..offset.shown(Kind::Offset) };
            let label =
                format!("As found: {} {}", joint.moving_name(), side(plane, offset.value.si()));
            out.number(&format!("found.offset.{}", key(plane)), label, value)
                .second("against its cold target")
                .working(offset_working(joint, before, plane, before.layout.reference));
        }
    }
    for judgement in judged {
        let (id, label) = named(joint, &judgement);
        let value = Value { si: judgement.deviation.si.abs(), ..judgement.deviation };
        let limit = judgement.level().map_or(f64::INFINITY, |level| level.shown().si);
        let limit = Value { si: limit, plus_minus: None, ..value }.show(cx.system);
        let word = judgement.verdict().words();
        out.number(&format!("found.{id}"), format!("As found: {label}"), value)
            .second(format!("{word}; the limit is {limit}"))
            .working(working_of(joint, before, &judgement));
    }
}

/// What the moves brought, against what was foretold of them.
fn learned(cx: &Context, out: &mut StageBuilder, found: &Found, joint: &Joint, before: &Position) {
    let Some(made) = shift(found, |foot| foot.made.as_ref()) else {
        out.note("Enter the moves that were made at each foot, and what they brought is set beside what was foretold.");
        return;
    };
    let mover = found.mover();
    for stand in &mover.stands {
        for plane in Plane::BOTH {
            let foretold = made.offset(plane, stand.plane.at);
            let places = [&before.line, &joint.position.line];
            let places = places.map(|line| line.offset(plane, stand.plane.at));
            came_number(cx, out, &stand.plane.name, plane, foretold, places);
        }
    }
    let miss = joint.position.line.minus(&before.line.plus(&made));
    let middle = joint.position.layout.reference;
    for plane in Plane::BOTH {
        let off = miss.offset(plane, middle);
        let value = Value { si: off.value.si().abs(), ..off.shown(Kind::Offset) };
        let way = side(plane, off.value.si());
        let label = format!("Off what was foretold, {}: {way} by", plane.words());
        let spread = off.plus_minus.si();
        out.number(&format!("foretold.{}", key(plane)), label, value)
            .second("at the coupling; nothing beyond its ± when feet, distances and dials are right")
            .working(miss_working(before, joint, &made, plane))
            .judged(
                Limits::at_most(spread.max(2.0 * MOVED_M)),
                "A foot did not do as it was told: look for a springing pack, a soft foot, or a distance taken wrongly, before moving again.",
            )
            .settled_by("Its ± reaches over that: read the dials again before trusting the moves.");
    }
}

fn came_number(
    cx: &Context,
    out: &mut StageBuilder,
    foot: &str,
    plane: Plane,
    foretold: Estimate<Length>,
    places: [Estimate<Length>; 2],
) {
    let actual = places[1].less(&places[0]);
    let words = |amount: f64| match (plane, amount < 0.0) {
        (Plane::Vertical, false) => "came up",
        (Plane::Vertical, true) => "went down",
        (Plane::Sideways, false) => "went to 3",
        (Plane::Sideways, true) => "went to 9",
    };
    let told = Value::new(Kind::Offset, foretold.value.abs()).show(cx.system);
    let (a, f) = (actual.value.si(), foretold.value.si());
    let share = if f.abs() > 3.0 * MOVED_M {
        let part = a / f;
        let good = (part - 1.0).abs() <= AS_TOLD.max(actual.plus_minus.si() / f.abs());
        if good {
            format!("of {told}: as foretold")
        } else {
            format!("of {told}: {:.0} %; reckon the next move by that", part * 100.0)
        }
    } else {
        format!("of {told}")
    };
    let value = Value { si: a.abs(), ..actual.shown(Kind::Offset) };
    let source = Source::new("Two line-ups of the same feet", "", Basis::Computed);
    let working = Working::new("What a foot did", "m = |b − a|", value, source)
        .term("b", "at the foot as left", places[1].shown(Kind::Offset))
        .term("a", "at the foot as found", places[0].shown(Kind::Offset))
        .valid("straight shafts; the sign is said in words");
    out.number(
        &format!("came.{foot}.{}", key(plane)),
        format!("The {foot} feet {}", words(a)),
        value,
    )
    .second(share)
    .working(working);
}

fn miss_working(before: &Position, joint: &Joint, made: &Line, plane: Plane) -> Working {
    let middle = joint.position.layout.reference;
    let at = |line: &Line| line.offset(plane, middle).shown(Kind::Offset);
    let miss = joint.position.line.minus(&before.line.plus(made));
    let source = Source::new("Geometry of two straight lines", "", Basis::Computed);
    Working::new("Off what was foretold", "e = b − (a + m)", at(&miss), source)
        .term("b", "as left", at(&joint.position.line))
        .term("a", "as found", at(&before.line))
        .term("m", "what the moves made should change", at(made))
        .valid("at the middle of the coupling; the sign is said in words")
}
