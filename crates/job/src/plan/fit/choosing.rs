//! Choosing a fit: the interference that holds and is borne, and the classes that lie in it.

use mechanics::interference::hub::PressFit;
pub(in crate::plan) use mechanics::window::Lies;
use mechanics::window::{Allowed, Demand, LimitedBy, Window};
use quantities::{Kind, Length, Limits, Physical, Pressure, Value, Working};
use tables::fits::Fit;

use super::{
    Context, StageBuilder, allowed, flattening, friction, running, safety, torque_to_carry,
};
use crate::file::End;
use crate::plan::heat;

/// What would do.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Choosing {
    /// The least that holds, the greatest that hub and shaft bear.
    pub window: Window,
    /// The greatest that still goes on with the hub at its limit, and whose limit that is.
    pub goes_on: Option<(Length, String, Working)>,
    /// Classes, loosest first.
    pub candidates: Vec<Candidate>,
}

/// One class against the window.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Candidate {
    pub fit: Fit,
    pub least: Length,
    pub greatest: Length,
    pub lies: Lies,
}

/// Strength of a part whose yield nobody knows: it then limits nothing, which is said.
const NO_LIMIT_PA: f64 = 1e13;

/// `None` while duty, hub or its yield is not known.
pub(super) fn found(cx: &Context, end: End, press: &PressFit) -> Option<Choosing> {
    let demand = Demand {
        torque: torque_to_carry(cx)?,
        safety: safety(cx),
        friction: friction(cx, end).low,
        running: running(cx, end),
        flattening: flattening(cx, end),
    };
    let hub = allowed(cx, end).map_or(Pressure::from_si(NO_LIMIT_PA), |(allowed, _)| allowed);
    let shaft = cx.shaft_yield(end).unwrap_or(Pressure::from_si(NO_LIMIT_PA));
    let window = press.window(demand, Allowed { hub, shaft }).ok()?;
    let goes_on = goes_on(cx, end);
    let choosing = Choosing { window, goes_on, candidates: Vec::new() };
    Some(Choosing { candidates: candidates(cx, end, &choosing), ..choosing })
}

/// The greatest interference that a hub at its limit still opens.
fn goes_on(cx: &Context, end: End) -> Option<(Length, String, Working)> {
    let (limit, whose) = heat::limit(cx, end)?;
    let opening = heat::opening(cx, end, Length::default())?;
    let at_shaft = limit - opening.loss;
    let opens = opening.opens(at_shaft).ok()?;
    Some((opens, whose, opening.opens_working(at_shaft).ok()?))
}

impl Choosing {
    /// How interference from `low` to `high`, in metres, lies to what holds, is borne and goes on.
    pub fn lies(&self, low: f64, high: f64) -> Lies {
        let goes_on = self.goes_on.as_ref().map(|(heat, ..)| *heat);
        self.window.lies(Length::from_si(low), Length::from_si(high), goes_on)
    }
}

fn candidates(cx: &Context, end: End, choosing: &Choosing) -> Vec<Candidate> {
    let Some(nominal) = &cx.file.sizes.at(end).nominal else { return Vec::new() };
    if cx.taper(end).is_some() {
        return Vec::new();
    }
    let own = cx.file.fit.at(end).class.parse::<Fit>().ok();
    let mut fits: Vec<Fit> = tables::fits::usual(cx.system_of_job()).collect();
    fits.extend(own.filter(|own| !fits.contains(own)));
    let candidate = |fit: Fit| {
        let (low, high) = fit.interference(nominal.value()).ok()?;
        let lies = choosing.lies(low.si(), high.si());
        Some(Candidate { fit, least: low, greatest: high, lies })
    };
    let mut found: Vec<Candidate> = fits.into_iter().filter_map(candidate).collect();
    found.sort_by(|a, b| {
        let middle = |one: &Candidate| one.least.si() + one.greatest.si();
        middle(a).total_cmp(&middle(b))
    });
    found
}

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, end: End) {
    let fit = cx.fit(end);
    let Some(choosing) = &fit.choosing else { return };
    let (name, key) = (cx.hub_name(end), end.key());
    let allowance = |length| Value::new(Kind::Allowance, length);
    let window = &choosing.window;
    if let (Some(edge), Some(working)) = (&window.least, window.least_working()) {
        let second = format!(
            "by friction alone: torque to carry, safety {:.2}, friction {:.2}, turning",
            window.demand.safety, window.demand.friction
        );
        out.number(
            &format!("{key}.window.least"),
            format!("Least interference that holds, {name}"),
            allowance(edge.interference),
        )
        .second(second)
        .working(working);
    }
    if let (Some(edge), Some(working), Some(by)) =
        (&window.greatest, window.greatest_working(), window.limited_by)
    {
        out.number(
            &format!("{key}.window.greatest"),
            format!("Greatest interference that is borne, {name}"),
            allowance(edge.interference),
        )
        .second(limited_by(cx, end, by))
        .working(working);
    }
    if let Some((opens, whose, working)) = &choosing.goes_on {
        out.number(
            &format!("{key}.window.goes_on"),
            format!("Greatest interference that goes on hot, {name}"),
            allowance(*opens),
        )
        .second(format!("with the hub at its limit: {whose}"))
        .working(working.clone());
    }
    classes(cx, out, end, choosing);
    bore_for_shaft(cx, out, end, choosing);
}

fn limited_by(cx: &Context, end: End, by: LimitedBy) -> String {
    match by {
        LimitedBy::Shaft => "limit: the shaft yields".to_owned(),
        LimitedBy::Hub(slice) => {
            let whose = allowed(cx, end).map(|(_, whose)| whose).unwrap_or_default();
            let many = cx.hub_slices(end).is_some_and(|slices| slices.len() > 1);
            let place =
                if many { format!(", slice {} from the gap", slice + 1) } else { String::new() };
            format!("limit: the bore of the hub{place}; {whose}")
        }
    }
}

fn classes(cx: &Context, out: &mut StageBuilder, end: End, choosing: &Choosing) {
    if choosing.candidates.is_empty() {
        return;
    }
    let name = cx.hub_name(end);
    let of = |wanted: Lies| -> Vec<String> {
        let all = choosing.candidates.iter();
        all.filter(|one| one.lies == wanted).map(|one| one.fit.to_string()).collect()
    };
    let (inside, partly) = (of(Lies::Inside), of(Lies::Partly));
    let open = choosing.window.least.is_some() && choosing.window.is_open();
    let text = if !open {
        format!(
            "No interference both holds the torque of the {name} by friction alone and is borne: it needs a key, a longer hub, or stronger steel."
        )
    } else if inside.is_empty() {
        let partly = if partly.is_empty() {
            String::new()
        } else {
            format!("; partly: {}", partly.join(", "))
        };
        format!(
            "No usual class lies whole in what would hold the {name} by friction alone{partly}. Limits of its own, a key, or selected sizes."
        )
    } else {
        format!(
            "Classes that hold the {name} by friction alone, are borne and go on: {}.",
            inside.join(", ")
        )
    };
    out.note(text);
}

/// What the bore may be for the shaft that is there.
fn bore_for_shaft(cx: &Context, out: &mut StageBuilder, end: End, choosing: &Choosing) {
    let Some(shaft) = cx.sizes(end).shaft.as_ref().filter(|_| cx.taper(end).is_none()) else {
        return;
    };
    let window = || Limits {
        least: choosing.window.least.as_ref().map(|edge| edge.interference.si()),
        greatest: choosing.window.greatest.as_ref().map(|edge| edge.interference.si()),
    };
    let wanted = super::wanted(cx, end).map_or_else(window, |wanted| wanted.limits);
    let name = cx.hub_name(end);
    let source = quantities::Source::new(
        "the shaft as measured, less the interference",
        "",
        quantities::Basis::Computed,
    );
    // The ± of the shaft is kept clear of on both sides.
    for (key, label, interference, kept) in
        [("least", "smallest", wanted.greatest, 1.0), ("greatest", "largest", wanted.least, -1.0)]
    {
        let Some(interference) = interference else { continue };
        let clear = Length::from_si(kept * shaft.mean.plus_minus.si());
        let bore = shaft.mean.value + clear - Length::from_si(interference);
        let value = Value::new(Kind::Size, bore);
        let formula = if kept > 0.0 { "b = s + u − i" } else { "b = s − u − i" };
        let working = Working::new(format!("Bore for this shaft, {label}"), formula, value, source)
            .term("s", "shaft", Value::new(Kind::Size, shaft.mean.value))
            .term(
                "u",
                "± of the shaft, kept clear of",
                Value::new(Kind::Allowance, shaft.mean.plus_minus),
            )
            .term("i", "interference", Value::new(Kind::Allowance, Length::from_si(interference)));
        out.number(
            &format!("{}.bore.{key}", end.key()),
            format!("Bore for this shaft, {label}, {name}"),
            value,
        )
        .second("at 20 °C (68 °F), for the interference wanted; for whoever bores it")
        .working(working);
    }
}
