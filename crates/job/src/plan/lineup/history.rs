//! The years before: what was found at each visit against what had been left, and its drift.

use lineup::drift::{Drift, Span, drift};
use lineup::tolerance::{Level, Measure};
use lineup::{Estimate, Plane};
use quantities::{Angle, Kind, Length, Measured, Physical, Value};

use super::super::stage_builder::StageBuilder;
use super::judge::key;
use super::words::{rear_of, side};
use super::{Context, Joint};
use crate::file::{Day, Offsets, Text};

/// ± of what an old record says without one: a rule of our own.
const RECORD_M: f64 = 0.03e-3;
const RECORD_RAD: f64 = 0.1e-3;
const DAYS_A_YEAR: f64 = 365.25;

/// A line-up at one time: offset up and to the right, slope up and to the right.
type State = [Option<Estimate<f64>>; 4];

/// One visit: found and left, in SI.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Past {
    pub day: Day,
    pub found: State,
    pub left: State,
}

/// All visits by their day, this one last when its day is known.
pub(in crate::plan) fn visits(cx: &Context) -> Vec<Past> {
    let past = cx.file.lineup.visits.values().filter_map(|visit| {
        let state = |offsets: &Option<Offsets>| offsets.as_ref().map_or([None; 4], of_record);
        Some(Past { day: visit.day?, found: state(&visit.found), left: state(&visit.left) })
    });
    let mut all: Vec<Past> = past.collect();
    all.sort_by_key(|past| past.day);
    all.extend(this_visit(cx));
    all
}

fn this_visit(cx: &Context) -> Option<Past> {
    let joint = cx.lineup()?.own();
    let day = cx.file.job.written.parse().ok()?;
    let now = of_line(joint, &joint.position.line);
    let (found, left) = match &joint.as_found {
        Some(before) => (of_line(joint, &before.line), now),
        None => (now, [None; 4]),
    };
    Some(Past { day, found, left })
}

fn of_line(joint: &Joint, line: &lineup::line::Line) -> State {
    let middle = joint.position.layout.reference;
    let offset = |plane| plain(line.offset(plane, middle));
    let slope = |plane| plain(line.slope(plane));
    [
        Some(offset(Plane::Vertical)),
        Some(offset(Plane::Sideways)),
        Some(slope(Plane::Vertical)),
        Some(slope(Plane::Sideways)),
    ]
}

fn plain<Q: Physical<Spread = Q>>(estimate: Estimate<Q>) -> Estimate<f64> {
    Estimate { value: estimate.value.si(), plus_minus: estimate.plus_minus.si() }
}

fn of_record(record: &Offsets) -> State {
    let length = |text: &Text<Length>| known(text.as_ref(), RECORD_M);
    let angle = |text: &Text<Angle>| known(text.as_ref(), RECORD_RAD);
    [length(&record.up), length(&record.right), angle(&record.slope_up), angle(&record.slope_right)]
}

fn known<Q: Physical<Spread = Q>>(text: Option<&Measured<Q>>, usual: f64) -> Option<Estimate<f64>> {
    let text = text?;
    let spread = text.spread().map_or(usual, Physical::si);
    Some(Estimate { value: text.value().si(), plus_minus: spread })
}

/// Years from one visit to the next.
fn years(from: Day, to: Day) -> Option<f64> {
    let days = i32::try_from(to.days_since(from)?).ok()?;
    (days > 0).then(|| f64::from(days) / DAYS_A_YEAR)
}

/// The changes of one of the four numbers between visits: found this time less left the time before.
fn spans(visits: &[Past], index: usize) -> Vec<(f64, Estimate<f64>)> {
    let pairs = visits.windows(2);
    pairs
        .filter_map(|pair| {
            let (before, now) =
                (pair[0].left[index].or(pair[0].found[index])?, pair[1].found[index]?);
            let years = years(pair[0].day, pair[1].day)?;
            let spread = before.plus_minus.hypot(now.plus_minus);
            Some((years, Estimate { value: now.value - before.value, plus_minus: spread }))
        })
        .collect()
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    if cx.file.lineup.visits.is_empty() {
        return;
    }
    for (name, visit) in &cx.file.lineup.visits {
        if visit.day.is_none() {
            out.missing(&format!("lineup.visits.{name}.day"), "the day of that visit");
        }
    }
    let visits = visits(cx);
    if visits.len() < 2 {
        out.note("One visit before this one is on record; its drift shows once this one is read, and its day is known.");
        return;
    }
    let first = visits[0].day;
    let moves = cx.file.machines.moves;
    for plane in Plane::BOTH {
        let index = usize::from(plane == Plane::Sideways);
        offset_drift(cx, out, &visits, plane, index);
        let of: Vec<Span<Angle>> = typed(&spans(&visits, 2 + index));
        if let Ok(found) = drift(of) {
            let rate = found.per_year;
            let way = rear_of(moves, plane, rate.value.si());
            let value = Value { si: rate.value.si().abs(), ..rate.shown(Kind::Slope) };
            out.number(
                &format!("drift.tilt.{}", key(plane)),
                format!("Drift in a year, rear end {way}"),
                value,
            )
            .second(spans_words(&found, first))
            .working(found.working(Kind::Slope));
        }
    }
    for visit in cx.file.lineup.visits.values().filter(|visit| !visit.note.is_empty()) {
        let day = visit.day.map_or_else(String::new, |day| format!("{day}: "));
        out.note(format!("{day}{}", visit.note));
    }
}

fn offset_drift(cx: &Context, out: &mut StageBuilder, visits: &[Past], plane: Plane, index: usize) {
    let of: Vec<Span<Length>> = typed(&spans(visits, index));
    let Ok(found) = drift(of) else { return };
    let rate = found.per_year;
    let way = side(plane, rate.value.si());
    let value = Value { si: rate.value.si().abs(), ..rate.shown(Kind::Allowance) };
    let mut words = spans_words(&found, visits[0].day);
    if let Some(years) = years_left(cx, &found, plane) {
        words = format!("{words}; at that rate it is at its limit in about {years:.0} years");
    }
    let name = cx.name(cx.file.machines.moves);
    out.number(
        &format!("drift.offset.{}", key(plane)),
        format!("Drift in a year, {name} {way}"),
        value,
    )
    .second(words)
    .working(found.working(Kind::Allowance));
}

/// Years until the offset, as it lies against its target, has drifted to its limit.
fn years_left(cx: &Context, drift: &Drift<Length>, plane: Plane) -> Option<f64> {
    let joint = cx.lineup()?.own();
    let now = joint.off.offset(plane, joint.position.layout.reference).value;
    let levels = joint.levels.iter().filter(|level| level.measure == Measure::Offset);
    let limit = levels.filter_map(Level::limit).map(|limit| limit.si).reduce(f64::min)?;
    (now.si().abs() < limit).then(|| drift.reaches(now, Length::from_si(limit))).flatten()
}

fn typed<Q: Physical<Spread = Q>>(spans: &[(f64, Estimate<f64>)]) -> Vec<Span<Q>> {
    let span = |(years, change): &(f64, Estimate<f64>)| Span {
        years: *years,
        change: Estimate::new(Q::from_si(change.value), Q::from_si(change.plus_minus)),
    };
    spans.iter().map(span).collect()
}

fn spans_words<Q>(drift: &Drift<Q>, first: Day) -> String {
    match drift.spans.len() {
        1 => format!("from one span since {first}"),
        count => format!("from {count} spans between visits since {first}"),
    }
}
