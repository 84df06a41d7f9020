//! The line-up sheet: lines, bands, limits, feet and moves.

use ::lineup::line::Line;
use ::lineup::tolerance::{Level, Measure};
use ::lineup::{Plane, Spool};
use quantities::{Kind, Length, Measured, Physical, Value};

use super::super::Context;
use super::super::lineup::{FootWork, Found, foot_work, levels, spool, x};
use super::{Feet, LineUp, Machine, View};
use crate::file::End;

pub(super) fn lineup(cx: &Context) -> Option<LineUp> {
    let found = cx.lineup.as_ref()?;
    let work = foot_work(cx, found);
    let levels = levels(cx);
    let planes = spool(cx)
        .map_or([0.0, 0.0], |Spool { driver_end, driven_end }| [driver_end.si(), driven_end.si()]);
    let machine = |end| Machine { name: cx.name(end).to_owned(), feet: feet(cx, end, &work) };
    Some(LineUp {
        moves: cx.file.machines.moves.key(),
        machines: [machine(End::Driver), machine(End::Driven)],
        views: Plane::BOTH.map(|plane| view(found, plane)),
        planes,
        limit: wedge(&levels, planes, Level::limit),
        aim: wedge(&levels, planes, Level::aim),
    })
}

fn view(found: &Found, plane: Plane) -> View {
    let centre = Length::default();
    let at_centre =
        |line: &Line| [line.offset(plane, centre).value.si(), line.slope(plane).value.si()];
    let line = &found.position.line;
    View { found: at_centre(line), band: band(line, plane), target: at_centre(&found.target) }
}

/// Where the line is known best, how well there, and how well its slope: from the ± at three
/// places, since the square of the ± is a parabola along x.
fn band(line: &Line, plane: Plane) -> [f64; 3] {
    let square = |x: f64| line.offset(plane, Length::from_si(x)).plus_minus.si().powi(2);
    let (left, middle, right) = (square(-1.0), square(0.0), square(1.0));
    let curve = f64::midpoint(left, right) - middle;
    if curve <= 0.0 {
        return [0.0, middle.max(0.0).sqrt(), 0.0];
    }
    let pivot = (left - right) / (4.0 * curve);
    [pivot, (middle - curve * pivot * pivot).max(0.0).sqrt(), curve.sqrt()]
}

/// Offset and slope allowed at a flexing plane. With a spacer the slope alone is limited: the
/// offset at one plane is what the slope makes over the distance between them.
fn wedge(levels: &[Level], planes: [f64; 2], of: fn(&Level) -> Option<Value>) -> Option<[f64; 2]> {
    let strictest = |measure| {
        let with = levels.iter().filter(|level| level.measure == measure);
        with.filter_map(of).map(|value| value.si).reduce(f64::min)
    };
    let length = planes[1] - planes[0];
    if length > 0.0 {
        return strictest(Measure::FlexAngle).map(|slope| [slope * length, slope]);
    }
    Some([strictest(Measure::Offset)?, strictest(Measure::Slope)?])
}

fn feet(cx: &Context, end: End, work: &[FootWork]) -> Vec<Feet> {
    let mut feet: Vec<Feet> = cx
        .file
        .lineup
        .machine(end)
        .feet
        .iter()
        .filter_map(|(name, foot)| {
            let at = foot.at.as_ref()?.value();
            let here = work
                .iter()
                .find(|work| end == cx.file.machines.moves && work.foot.foot.name == *name);
            Some(Feet {
                x: x(end, at).si(),
                text: plain(cx, at),
                shimmed: foot
                    .shims
                    .as_ref()
                    .map(Measured::value)
                    .is_some_and(|s| s > Length::default()),
                goes_in: here
                    .and_then(|work| work.pack.as_ref())
                    .map_or(0, |pack| pack.shims.len()),
                comes_out: here.is_some_and(|work| work.foot.up().value < Length::default()),
                rise: here.map(|work| rise(cx, work)),
                push: here.map(|work| push(cx, work)),
            })
        })
        .collect();
    feet.sort_by(|a, b| a.x.abs().total_cmp(&b.x.abs()));
    feet
}

fn plain(cx: &Context, at: Length) -> String {
    let digits = Value::new(Kind::Length, at).digits(cx.system);
    digits.strip_suffix(".0").map_or(digits.clone(), str::to_owned)
}

/// "+0.35".
fn rise(cx: &Context, work: &FootWork) -> (f64, String) {
    let up = work.foot.up().value;
    let sign = if up.si() < 0.0 { "" } else { "+" };
    (up.si(), format!("{sign}{}", Value::new(Kind::Offset, up).digits(cx.system)))
}

/// "0.45 to 9".
fn push(cx: &Context, work: &FootWork) -> (f64, String) {
    let right = work.foot.right().value;
    let way = if right.si() < 0.0 { "9" } else { "3" };
    (right.si(), format!("{} to {way}", Value::new(Kind::Offset, right.abs()).digits(cx.system)))
}
