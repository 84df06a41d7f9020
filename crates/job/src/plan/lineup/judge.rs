//! Offset, tilt and flexing angles against the strictest limit that applies.

use lineup::Plane;
use lineup::position::{Position, gap_difference};
use lineup::tolerance::{Judgement, Level, Measure, Place, judge_line};
use quantities::{
    Angle, AngularVelocity, Basis, Kind, Length, Limits, Measured, Physical, Source, Value,
    Verdict, Working,
};

use super::super::stage_builder::StageBuilder;
use super::words::{rear_of, side};
use super::{Context, Found, Joint, settle};
use crate::file::{End, Text, TrainMachine};

const SHEET: Source = Source::new("The maker’s sheet", "allowance", Basis::MakersSheet);
const SITE: Source = Source::new("The site’s limit", "", Basis::Entered);
const MOVE: &str = "Make the moves at the feet, tighten, and read again.";

/// Every level that applies: the rule by speed, the coupling's own allowance, the site's limit.
pub(in crate::plan) fn levels(cx: &Context) -> Vec<Level> {
    let spacer = super::spool(cx).is_some();
    let speed = cx.file.machines.speed.as_ref().map(Measured::value);
    let mut levels = speed.map_or_else(Vec::new, |speed| by_speed(cx, speed));
    let allows = &cx.file.coupling.sheet.allows;
    let own = if allows.fitting.offset.is_some() || allows.fitting.angle.is_some() {
        &allows.fitting
    } else {
        &allows.running
    };
    levels.extend(given("the coupling’s sheet", &own.offset, &own.angle, SHEET, spacer));
    let site = &cx.file.lineup.limits;
    levels.extend(of_site(&site.offset, &site.slope, spacer));
    levels.extend(faces_close(cx));
    levels
}

/// Rigid flanges must close all round: what a feeler may find, over the width of the faces.
fn faces_close(cx: &Context) -> Option<Level> {
    if !cx.is_rigid() {
        return None;
    }
    let read = cx.file.lineup.gap_diameter.as_ref().map(Measured::value);
    let across = read.or_else(|| {
        let slices = cx.hub_slices(cx.file.machines.moves)?;
        slices.iter().map(|slice| slice.outside).reduce(|a, b| if a > b { a } else { b })
    })?;
    let feeler = tables::limits::RIGID_FLANGE_FEELER;
    let slope = Angle::from_si((feeler.most / across).value);
    Level::slope("what lets flange faces close", None, Some(slope), feeler.source).ok()
}

/// Levels at another coupling of the train: the rule by speed and the site's limits; the sheet is
/// that of the job's coupling alone.
pub(super) fn levels_of_train(cx: &Context, machine: &TrainMachine, spacer: bool) -> Vec<Level> {
    let speed = machine.speed.as_ref().or(cx.file.machines.speed.as_ref()).map(Measured::value);
    let mut levels = match (speed, spacer) {
        (Some(speed), true) => spacer_by_speed(speed),
        (Some(speed), false) => short_by_speed(speed, "rule by speed"),
        (None, _) => Vec::new(),
    };
    levels.extend(of_site(&machine.limits.offset, &machine.limits.slope, spacer));
    levels
}

fn of_site(offset: &Text<Length>, slope: &Text<Angle>, spacer: bool) -> Vec<Level> {
    given("the site’s limit", offset, slope, SITE, spacer)
}

fn given(
    name: &str,
    offset: &Text<Length>,
    slope: &Text<Angle>,
    source: Source,
    spacer: bool,
) -> Vec<Level> {
    let offset = offset.as_ref().map(Measured::value).filter(|_| !spacer);
    let slope = slope.as_ref().map(Measured::value);
    let on_slope = if spacer { Level::flex_angle } else { Level::slope };
    let offset = Level::offset(name, None, offset, source);
    offset.into_iter().chain(on_slope(name.to_owned(), None, slope, source)).collect()
}

/// Our rule by speed: offset and slope for short couplings, the angle at each flexing plane for a
/// spacer; where nothing flexes its aim is the limit.
fn by_speed(cx: &Context, speed: AngularVelocity) -> Vec<Level> {
    if super::spool(cx).is_some() {
        return spacer_by_speed(speed);
    }
    if cx.is_rigid() {
        return short_by_speed(speed, RIGID);
    }
    short_by_speed(speed, "rule by speed")
}

const RIGID: &str = "aim of the rule by speed, since nothing flexes";

fn spacer_by_speed(speed: AngularVelocity) -> Vec<Level> {
    let source = tables::alignment::SOURCE;
    let rule = tables::alignment::spacer(speed);
    let level = rule.map(|rule| {
        Level::flex_angle("rule by speed", Some(rule.slope_aim), Some(rule.slope_limit), source)
    });
    level.into_iter().flatten().collect()
}

fn short_by_speed(speed: AngularVelocity, name: &str) -> Vec<Level> {
    let source = tables::alignment::SOURCE;
    let Some(rule) = tables::alignment::short(speed) else { return Vec::new() };
    let (offset, slope) = if name == RIGID {
        (rule.offset_aim, rule.slope_aim)
    } else {
        (rule.offset_limit, rule.slope_limit)
    };
    [
        Level::offset(name, Some(rule.offset_aim), Some(offset), source),
        Level::slope(name, Some(rule.slope_aim), Some(slope), source),
    ]
    .into_iter()
    .flatten()
    .collect()
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let own = found.own();
    if own.levels.is_empty() {
        out.missing("machines.speed", "speed, which sets the limits of the line-up");
        out.note("Without a speed, and without limits on the sheet or from the site, nothing can be judged.");
    }
    for joint in &found.joints {
        judged(cx, out, joint);
    }
    gap(cx, out, own);
    at_planes(cx, out, own);
    sureness(out, own);
}

fn judged(cx: &Context, out: &mut StageBuilder, joint: &Joint) {
    let judged = judge_line(&joint.position.layout, &joint.off, &joint.levels).unwrap_or_default();
    for plane in Plane::BOTH {
        if !judged.iter().any(|j| j.measure == Measure::Offset && j.plane == plane) {
            offset_alone(out, joint, plane);
        }
    }
    for judgement in &judged {
        judged_number(cx, out, joint, judgement);
    }
}

fn judged_number(cx: &Context, out: &mut StageBuilder, joint: &Joint, judgement: &Judgement) {
    let deviation = &judgement.deviation;
    let (id, label) = named(joint, judgement);
    let value = Value { si: deviation.si.abs(), ..*deviation };
    let entry =
        out.number(&joint.id(&id), label, value).working(deviation_working(joint, judgement)).key();
    if let Some((level, verdict)) = &judgement.by_limit {
        let aim = judgement.by_aim.as_ref().and_then(|(level, _)| level.aim());
        let aim = aim.map_or_else(String::new, |aim| format!("; aim {}", aim.show(cx.system)));
        let limit = level.limit().map_or(f64::INFINITY, |limit| limit.si);
        let entry = entry.second(format!("against its cold target; {}{aim}", level.name)).ruled(
            Limits::at_most(limit),
            *verdict,
            MOVE,
        );
        if *verdict == Verdict::TooClose {
            entry.settled_by(settle::sentence(cx, joint, judgement));
        }
    }
}

/// A name for a number and what it is called: "offset.up", "Line-up, motor low".
pub(super) fn named(joint: &Joint, judgement: &Judgement) -> (String, String) {
    let Judgement { plane, place, measure, deviation, .. } = judgement;
    let moves = joint.moving_end();
    let name = joint.moving_name();
    match (measure, place) {
        (Measure::Offset, _) => (
            format!("offset.{}", key(*plane)),
            format!("Line-up, {name} {}", side(*plane, deviation.si)),
        ),
        (Measure::Slope, _) => {
            let way = rear_of(moves, *plane, deviation.si);
            let whose =
                if joint.key.is_empty() { String::new() } else { format!(" of the {name}") };
            (format!("tilt.{}", key(*plane)), format!("Tilt, rear end{whose} {way}"))
        }
        (Measure::FlexAngle, place) => {
            let end = if *place == Place::DriverEnd { End::Driver } else { End::Driven };
            let at = &joint.names[usize::from(end == End::Driven)];
            let label = format!("Angle at the {at} end, {}", plane.words());
            (format!("flex.{}.{}", end.key(), key(*plane)), label)
        }
    }
}

/// How a deviation was found: where it lies less where it is aimed.
fn deviation_working(joint: &Joint, judgement: &Judgement) -> Working {
    working_of(joint, &joint.position, judgement)
}

/// The same of another position at the same coupling.
pub(super) fn working_of(joint: &Joint, position: &Position, judgement: &Judgement) -> Working {
    let Judgement { plane, place, measure, deviation, .. } = judgement;
    match measure {
        Measure::Offset => offset_working(joint, position, *plane, position.layout.reference),
        Measure::Slope => {
            let name = format!("Tilt, {}", plane.words());
            let found = position.slope(*plane).shown(Kind::Slope);
            let target = joint.target.slope(*plane).shown(Kind::Slope);
            less(name, found, target, *deviation)
        }
        Measure::FlexAngle => {
            let end = if *place == Place::DriverEnd { End::Driver } else { End::Driven };
            let worked = flex_working(joint, position, (*plane, end), *deviation);
            worked.unwrap_or_else(|| judgement.working())
        }
    }
}

/// How an offset from the target was found at a place along the shafts.
pub(super) fn offset_working(
    joint: &Joint,
    position: &Position,
    plane: Plane,
    at: Length,
) -> Working {
    let off = position.line.minus(&joint.target).offset(plane, at).shown(Kind::Offset);
    let found = position.offset_at(plane, at).shown(Kind::Offset);
    let target = joint.target.offset(plane, at).shown(Kind::Offset);
    let name = format!("Line-up at the coupling, {}", plane.words());
    let working = less(name, found, target, off);
    let from = Value::new(Kind::Length, at - position.layout.reference);
    if from.si == 0.0 {
        return working;
    }
    working.term("x", "from the middle of the coupling, towards the driven", from)
}

/// A spacer bends at one plane by what the shafts are apart at the other, over its length.
fn flex_working(
    joint: &Joint,
    position: &Position,
    (plane, end): (Plane, End),
    deviation: Value,
) -> Option<Working> {
    let spool = position.layout.spool?;
    let at = if end == End::Driver { spool.driven_end } else { spool.driver_end };
    let rises = (end == End::Driven) == (joint.moving_end() == End::Driver);
    let length = spool.driven_end - spool.driver_end;
    let source = Source::new("Geometry of a spacer between two shafts", "", Basis::Computed);
    let found = position.offset_at(plane, at).shown(Kind::Offset);
    let target = joint.target.offset(plane, at).shown(Kind::Offset);
    let working = Working::new(
        format!(
            "Angle at the {} end, {}",
            joint.names[usize::from(end == End::Driven)],
            plane.words()
        ),
        if rises { "e = (d − t)/L" } else { "e = (t − d)/L" },
        deviation,
        source,
    );
    Some(
        working
            .term("d", "offset at the other flexing plane, moving less fixed", found)
            .term("t", "cold target there", target)
            .term("L", "between the flexing planes", Value::new(Kind::Length, length))
            .valid("straight shafts and small angles; the sign is left out"),
    )
}

fn less(name: String, found: Value, target: Value, result: Value) -> Working {
    let source = Source::new("Least squares over all readings", "straight shafts", Basis::Computed);
    Working::new(name, "e = d − t", result, source)
        .term("d", "as it lies, moving less fixed", found)
        .term("t", "cold target", target)
        .valid("straight shafts and small slopes; the sign is said in words")
}

/// An offset that nothing limits is still worth seeing.
fn offset_alone(out: &mut StageBuilder, joint: &Joint, plane: Plane) {
    let middle = joint.position.layout.reference;
    let off = joint.off.offset(plane, middle);
    let value = Value { si: off.value.si().abs(), ..off.shown(Kind::Offset) };
    let label = format!("Line-up, {} {}", joint.moving_name(), side(plane, off.value.si()));
    out.number(&joint.id(&format!("offset.{}", key(plane))), label, value)
        .second("at the middle of the coupling, against its cold target")
        .working(offset_working(joint, &joint.position, plane, middle));
}

/// The difference of the gap at the rim, as feelers would find it.
fn gap(cx: &Context, out: &mut StageBuilder, joint: &Joint) {
    let Some(diameter) = cx.file.lineup.gap_diameter.as_ref().map(Measured::value) else { return };
    for (plane, wide) in [(Plane::Vertical, ["12", "6"]), (Plane::Sideways, ["3", "9"])] {
        let gap = gap_difference(&joint.position.layout, &joint.off, plane, diameter);
        let shown = gap.shown(Kind::Offset);
        let wide = if shown.si >= 0.0 { wide[0] } else { wide[1] };
        let value = Value { si: shown.si.abs(), ..shown };
        out.number(&format!("gap.{}", key(plane)), format!("Gap wider at {wide}"), value)
            .second(format!(
                "across {}, against its cold target",
                Value::new(Kind::Length, diameter).show(cx.system)
            ))
            .working(gap_working(joint, plane, diameter, shown));
    }
}

fn gap_working(joint: &Joint, plane: Plane, diameter: Length, result: Value) -> Working {
    let source = Source::new("Geometry of two facing hubs", "", Basis::Computed);
    let slope = joint.off.slope(plane).shown(Kind::Slope);
    let opens = joint.moving_end() == End::Driver;
    Working::new(
        format!("Difference of the gap, {}", plane.words()),
        if opens { "g = D·q" } else { "g = −D·q" },
        result,
        source,
    )
    .term("D", "diameter", Value::new(Kind::Length, diameter))
    .term("q", "tilt of the moving machine against its target, along +x", slope)
    .valid("faces square to their shafts")
}

/// With a spacer, where the moving shaft lies at each flexing plane.
fn at_planes(cx: &Context, out: &mut StageBuilder, joint: &Joint) {
    let Some(spool) = joint.position.layout.spool else { return };
    for (end, x) in [(End::Driver, spool.driver_end), (End::Driven, spool.driven_end)] {
        for plane in Plane::BOTH {
            let off = joint.off.offset(plane, x);
            let value = Value { si: off.value.si().abs(), ..off.shown(Kind::Offset) };
            let way = side(plane, off.value.si());
            let name = joint.moving_name();
            let label = format!("At the {} end’s flexing plane, {name} {way}", cx.name(end));
            out.number(&format!("plane.{}.{}", end.key(), key(plane)), label, value)
                .second("against its cold target")
                .working(offset_working(joint, &joint.position, plane, x));
        }
    }
}

/// Where the ± comes from, when it is not only what was stated.
fn sureness(out: &mut StageBuilder, joint: &Joint) {
    let position = &joint.position;
    if position.scatter > 1.0 || position.disagreement > 1.0 {
        let more = position.scatter * position.disagreement;
        let factor = position.factor;
        out.note(format!(
            "The readings scatter {more:.1} times as much as their ± allows, so the ± is theirs: widened by that, with Student’s factor {factor:.1} for so few readings."
        ));
    }
    if let Some((now, then)) = settle::one_more_sweep(joint, Plane::Vertical)
        && now > 0.0
    {
        let digits = |si: f64| {
            let value = Value { kind: Kind::Allowance, si: 0.0, plus_minus: Some(si) };
            (value.plus_minus_digits(out.system()).unwrap_or_default(), value.unit(out.system()))
        };
        let ((now, unit), (then, _)) = (digits(now), digits(then));
        out.note(format!(
            "The dials alone give the height at the coupling to ± {now} {unit}; one more sweep would bring that to ± {then} {unit}."
        ));
    }
}

pub(super) fn key(plane: Plane) -> &'static str {
    match plane {
        Plane::Vertical => "up",
        Plane::Sideways => "right",
    }
}
