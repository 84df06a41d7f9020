//! Offset, tilt and flexing angles against the strictest limit that applies.

use lineup::tolerance::{Judgement, Level, Measure, Place, judge_line};
use lineup::{Plane, position::gap_difference};
use quantities::{AngularVelocity, Basis, Kind, Length, Limits, Measured, Source, Value};

use super::super::stage_builder::StageBuilder;
use super::words::{rear, side};
use super::{Context, Found};
use crate::file::End;

const SHEET: Source = Source::new("The maker’s sheet", "allowance", Basis::MakersSheet);
const SITE: Source = Source::new("The site’s limit", "", Basis::Entered);
const MOVE: &str = "Make the moves at the feet, tighten, and read again.";

/// Every level that applies: the rule by speed, the coupling's own allowance, the site's limit.
pub(in crate::plan) fn levels(cx: &Context) -> Vec<Level> {
    let speed = cx.file.machines.speed.as_ref().map(Measured::value);
    let mut levels = speed.map_or_else(Vec::new, |speed| by_speed(cx, speed));
    let spacer = super::spool(cx).is_some();
    let allows = &cx.file.coupling.sheet.allows;
    let own = if allows.fitting.offset.is_some() || allows.fitting.angle.is_some() {
        &allows.fitting
    } else {
        &allows.running
    };
    let site = &cx.file.lineup.limits;
    for (name, offset, slope, source) in [
        ("the coupling’s sheet", &own.offset, &own.angle, SHEET),
        ("the site’s limit", &site.offset, &site.slope, SITE),
    ] {
        let offset = offset.as_ref().map(Measured::value).filter(|_| !spacer);
        levels.extend(Level::offset(name, None, offset, source));
        let slope = slope.as_ref().map(Measured::value);
        let on_slope = if spacer { Level::flex_angle } else { Level::slope };
        levels.extend(on_slope(name.to_owned(), None, slope, source));
    }
    levels
}

/// Our rule by speed: offset and slope for short couplings, the angle at each flexing plane for a
/// spacer; where nothing flexes its aim is the limit.
fn by_speed(cx: &Context, speed: AngularVelocity) -> Vec<Level> {
    let source = tables::alignment::SOURCE;
    if super::spool(cx).is_some() {
        let rule = tables::alignment::spacer(speed);
        let level = rule.map(|rule| {
            Level::flex_angle("rule by speed", Some(rule.slope_aim), Some(rule.slope_limit), source)
        });
        return level.into_iter().flatten().collect();
    }
    let Some(rule) = tables::alignment::short(speed) else { return Vec::new() };
    let (name, offset, slope) = if cx.is_rigid() {
        ("aim of the rule by speed, since nothing flexes", rule.offset_aim, rule.slope_aim)
    } else {
        ("rule by speed", rule.offset_limit, rule.slope_limit)
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
    let levels = levels(cx);
    if levels.is_empty() {
        out.missing("machines.speed", "speed, which sets the limits of the line-up");
        out.note("Without a speed, and without limits on the sheet or from the site, nothing can be judged.");
    }
    let judged = judge_line(&found.position.layout, &found.off, &levels).unwrap_or_default();
    for plane in Plane::BOTH {
        if !judged.iter().any(|j| j.measure == Measure::Offset && j.plane == plane) {
            offset_alone(cx, out, found, plane);
        }
    }
    for judgement in &judged {
        judged_number(cx, out, found, judgement);
    }
    gap(cx, out, found);
}

fn judged_number(cx: &Context, out: &mut StageBuilder, found: &Found, judgement: &Judgement) {
    let Judgement { plane, place, measure, deviation, .. } = judgement;
    let moves = cx.file.machines.moves;
    let name = cx.name(moves);
    let (id, label) = match (measure, place) {
        (Measure::Offset, _) => (
            format!("offset.{}", key(*plane)),
            format!("Line-up, {name} {}", side(*plane, deviation.si)),
        ),
        (Measure::Slope, _) => {
            let way = rear(moves, *plane, deviation.si);
            (format!("tilt.{}", key(*plane)), format!("Tilt, rear end {way}"))
        }
        (Measure::FlexAngle, place) => {
            let end = if *place == Place::DriverEnd { End::Driver } else { End::Driven };
            let label = format!("Angle at the {} end, {}", cx.name(end), plane.words());
            (format!("flex.{}.{}", end.key(), key(*plane)), label)
        }
    };
    let value = Value { si: deviation.si.abs(), ..*deviation };
    let working = match measure {
        Measure::Offset => found.position.working(*plane, Length::default()),
        _ => judgement.working(),
    };
    let entry = out.number(&id, label, value).working(working).key();
    if let Some((level, verdict)) = &judgement.by_limit {
        let aim = judgement.by_aim.as_ref().and_then(|(level, _)| level.aim());
        let aim = aim.map_or_else(String::new, |aim| format!("; aim {}", aim.show(cx.system)));
        let limit = level.limit().map_or(f64::INFINITY, |limit| limit.si);
        entry.second(format!("against its cold target; {}{aim}", level.name)).ruled(
            Limits::at_most(limit),
            *verdict,
            MOVE,
        );
    }
}

/// An offset that nothing limits is still worth seeing.
fn offset_alone(cx: &Context, out: &mut StageBuilder, found: &Found, plane: Plane) {
    let off = found.off.offset(plane, Length::default());
    let name = cx.name(cx.file.machines.moves);
    let value = Value::new(Kind::Offset, off.value.abs())
        .with_plus_minus(quantities::Physical::si(off.plus_minus));
    let label = format!("Line-up, {name} {}", side(plane, quantities::Physical::si(off.value)));
    out.number(&format!("offset.{}", key(plane)), label, value)
        .second("at the middle of the coupling, against its cold target")
        .working(found.position.working(plane, Length::default()));
}

/// The difference of the gap at the rim, as feelers would find it.
fn gap(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let Some(diameter) = cx.file.lineup.gap_diameter.as_ref().map(Measured::value) else { return };
    for (plane, wide) in [(Plane::Vertical, ["12", "6"]), (Plane::Sideways, ["3", "9"])] {
        let gap = gap_difference(&found.position.layout, &found.off, plane, diameter);
        let shown = gap.shown(Kind::Offset);
        let wide = if shown.si >= 0.0 { wide[0] } else { wide[1] };
        let value = Value { si: shown.si.abs(), ..shown };
        out.number(&format!("gap.{}", key(plane)), format!("Gap wider at {wide}"), value).second(
            format!(
                "across {}, against its cold target",
                Value::new(Kind::Length, diameter).show(cx.system)
            ),
        );
    }
}

pub(super) fn key(plane: Plane) -> &'static str {
    match plane {
        Plane::Vertical => "up",
        Plane::Sideways => "right",
    }
}
