//! Curves of heat: clearance as a hot hub closes, pull as a heated hub opens.

use quantities::{Force, Kind, Length, Physical, System, Time, Value};
use thermal::{Bounds, Sample};

use super::super::{Context, removal};
use super::{Closing, Opens, Pulling};
use crate::file::End;

/// More points than a drawing can show are thinned out.
const POINTS: usize = 240;

pub(super) fn closing(cx: &Context, end: End) -> Option<Closing> {
    let grab = cx.grab(end)?.grab.as_ref().ok()?;
    Some(closes(cx, end, &grab.contact, &grab.curve, &grab.tight))
}

/// A hub's clearance against time until first contact, likely and tight.
pub(in crate::plan) fn closes(
    cx: &Context,
    end: End,
    contact: &Bounds<Time>,
    likely: &[Sample],
    tight: &[Sample],
) -> Closing {
    let shown = |time| Value::new(Kind::Time, time).show(cx.system);
    let until = |curve: &[Sample], at: Time| {
        let mut open = heights(cx, curve.iter().take_while(|sample| sample.time <= at));
        open.push((at.si(), 0.0));
        thinned(open)
    };
    Closing {
        end: end.key(),
        name: cx.hub_name(end),
        heights: format!("least clearance in the bore, {}", small(cx.system)),
        tight: until(tight, contact.low),
        likely: until(likely, contact.likely),
        home_by: (contact.low.si(), format!("home by {}", shown(contact.low))),
        at_most: (contact.high.si(), format!("{} at most", shown(contact.high))),
    }
}

fn small(system: System) -> &'static str {
    match system {
        System::Metric => "µm",
        System::Inch => "mils",
    }
}

fn heights<'a>(cx: &Context, samples: impl Iterator<Item = &'a Sample>) -> Vec<(f64, f64)> {
    let height = |length: Length| match cx.system {
        System::Metric => length.si() * 1e6,
        System::Inch => length.si() / 25.4e-6,
    };
    samples.map(|sample| (sample.time.si(), height(sample.least).max(0.0))).collect()
}

fn thinned(curve: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    let every = curve.len().div_ceil(POINTS).max(1);
    let last = curve.len().saturating_sub(1);
    curve
        .into_iter()
        .enumerate()
        .filter(|(place, _)| place % every == 0 || *place == last)
        .map(|(_, point)| point)
        .collect()
}

pub(super) fn pulling(cx: &Context, end: End) -> Option<Pulling> {
    let opening = removal::hot::run(cx.hot(end)?)?;
    let unit = Kind::Force.unit(cx.system);
    let force = |force: Force| unit.from_si(force.si());
    let stop = opening.asked.heats.iter().map(|heat| heat.stop.si()).fold(0.0, f64::max);
    let shuts = opening.window.and_then(|window| window.shuts).map_or(stop, Physical::si);
    let shown_s = 1.25 * stop.max(shuts).max(60.0);
    let curve = opening.curve.iter().take_while(|sample| sample.time.si() <= shown_s);
    let curve: Vec<_> = curve.map(|sample| (sample.time.si(), force(sample.pull.high))).collect();
    let last_s = curve.last().map_or(0.0, |point| point.0);
    let window = opening.window.map(|window| {
        let to = window.shuts.map_or(last_s, Physical::si).min(last_s);
        let digits = |s: f64| Value::new(Kind::Time, Time::from_si(s)).digits(cx.system);
        let words = match window.shuts {
            Some(_) => format!("open {} to {} s", digits(window.opens.si()), digits(to)),
            None => format!("open from {} s", digits(window.opens.si())),
        };
        Opens { from: window.opens.si(), to, text: words }
    });
    let puller = removal::hot::puller(cx).map(|puller| {
        let shown = Value::new(Kind::Force, puller).show(cx.system);
        (force(puller), format!("puller, {shown}"))
    });
    Some(Pulling {
        end: end.key(),
        name: cx.hub_name(end),
        heights: format!("pull needed, {}", unit.name()),
        pull: thinned(curve),
        puller,
        window: window.filter(|window| window.to > window.from),
        heat_off: (stop <= last_s).then_some(stop),
    })
}
