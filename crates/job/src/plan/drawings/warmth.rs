//! Temperature over hub and shaft, moment by moment, as lines of one temperature.

use quantities::{Kind, Length, Physical, System, ThermodynamicTemperature, Value};
use thermal::{Body, Field, Hub, Shaft};

use super::super::{Context, removal};
use super::{WarmMoment, Warmth};
use crate::file::End;

/// A hub that goes on, from home on the shaft.
pub(super) fn on(cx: &Context, end: End) -> Option<Warmth> {
    let grab = cx.grab(end)?.grab.as_ref().ok()?;
    Some(warmth(cx, end, (&grab.asked.hub, &grab.asked.shaft), &grab.fields))
}

/// A hub that is heated off, from heat on.
pub(super) fn off(cx: &Context, end: End) -> Option<Warmth> {
    let opening = removal::hot::run(cx.hot(end)?)?;
    Some(warmth(cx, end, (&opening.asked.hub, &opening.asked.shaft), &opening.fields))
}

fn warmth(cx: &Context, end: End, (hub, shaft): (&Hub, &Shaft), fields: &[Field]) -> Warmth {
    let slices = hub.slices.iter().map(|slice| (mm(slice.length), mm(slice.outside)));
    let levels = levels(cx.system, fields);
    Warmth {
        end: end.key(),
        name: cx.hub_name(end),
        bore: mm(hub.bore),
        hollow: mm(shaft.hollow),
        shaft: [mm(shaft.behind), mm(shaft.ahead)],
        slices: slices.collect(),
        moments: fields.iter().map(|field| moment(cx.system, field, &levels)).collect(),
    }
}

fn mm(length: Length) -> f64 {
    1e3 * length.si()
}

fn shown(system: System, at: ThermodynamicTemperature) -> String {
    Value::new(Kind::Temperature, at).digits(system)
}

fn moment(system: System, field: &Field, levels: &[ThermodynamicTemperature]) -> WarmMoment {
    let unit = Kind::Temperature.unit(system).name();
    let of = |name: &str, body| {
        let [low, high] = field.range(body).map(|at| shown(system, at));
        let range = if low == high { low } else { format!("{low} to {high}") };
        format!("{name} {range} {unit}")
    };
    let line = |level: &ThermodynamicTemperature| {
        let words = shown(system, *level);
        let points = |line: thermal::Line| line.iter().map(|[r, z]| (mm(*z), mm(*r))).collect();
        field.lines(*level).into_iter().map(move |line| (words.clone(), points(line)))
    };
    WarmMoment {
        at: Value::new(Kind::Time, field.time).show(system),
        says: format!("{}, {}", of("hub", Body::Hub), of("shaft", Body::Shaft)),
        lines: levels.iter().flat_map(line).collect(),
    }
}

/// Lines between the coldest and the hottest of all moments, at most.
const LINES: f64 = 12.0;

/// Round temperatures in the plan's own degrees, the same for every moment.
fn levels(system: System, fields: &[Field]) -> Vec<ThermodynamicTemperature> {
    let unit = Kind::Temperature.unit(system);
    let bodies = fields.iter().flat_map(|field| [Body::Hub, Body::Shaft].map(|b| field.range(b)));
    let (low, high) =
        bodies.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), [cold, hot]| {
            (low.min(unit.from_si(cold.si())), high.max(unit.from_si(hot.si())))
        });
    let wide = |step: &f64| (high - low) / step <= LINES;
    let step = [5.0, 10.0, 20.0, 50.0, 100.0].into_iter().find(wide).unwrap_or(200.0);
    let mut levels = Vec::new();
    let mut level = (low / step).floor() * step + step;
    while level < high {
        levels.push(ThermodynamicTemperature::from_si(unit.to_si(level)));
        level += step;
    }
    levels
}
