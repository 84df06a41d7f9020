//! The fit: will the hub go on, and stay on.

mod choosing;
mod holding;
mod release;
mod taper;
mod wanted;

use mechanics::interference::flattening::{Interference, flattening_din_7190};
use mechanics::interference::hub::{Grip, PressFit, Running};
use mechanics::{Estimate, Range};
use quantities::{
    Kind, Length, Limits, Measured, Physical, Pressure, TemperatureInterval, Torque, Value,
    Working, probability_inside,
};
use tables::friction::{Joint, PULL, grip};

use super::sizes::{capital, closer};
use super::stage_builder::StageBuilder;
use super::{Context, StagePlan, keys};
use crate::Stage;
use crate::file::{End, Mounting, si};

pub(super) use choosing::{Candidate, Choosing, Lies};
pub(super) use wanted::wanted;

/// The fit at one end.
#[derive(Clone, Debug, Default)]
pub(super) struct Found {
    /// Shaft less bore, as measured; on a taper, as drawn up.
    pub interference: Option<Estimate<Length>>,
    /// What is left of it to press.
    pub effective: Option<Estimate<Length>>,
    /// The two sizes of a straight bore.
    sizes: Option<Interference>,
    /// The hub on its shaft, with the part of the joint that bears.
    pub press: Option<PressFit>,
    /// What it holds; `None` without interference, or while the hub is not known.
    pub grip: Option<Grip>,
    /// The interference that would do, and the classes that lie in it.
    pub choosing: Option<Choosing>,
}

/// The reference temperature of sizes (ISO 1).
const REFERENCE_K: f64 = 293.15;

pub(super) fn found(cx: &Context, end: End) -> Found {
    let press = cx.press_fit(end).and_then(|press| press.bearing(cx.bearing(end)).ok());
    let choosing = press.as_ref().and_then(|press| choosing::found(cx, end, press));
    let sizes = if cx.taper(end).is_some() { None } else { straight(cx, end) };
    let (interference, effective) = match &sizes {
        Some(fit) => (Some(fit.measured), Some(fit.effective)),
        None => match taper::drawn_up(cx, end) {
            Some(drawn) => (Some(drawn), Some(drawn.less(&Estimate::exact(flattening(cx, end))))),
            None => (None, None),
        },
    };
    let held = |press: &PressFit| press.grip(effective?, friction(cx, end), running(cx, end)).ok();
    let grip = press.as_ref().and_then(held);
    Found { interference, effective, sizes, press, grip, choosing }
}

fn straight(cx: &Context, end: End) -> Option<Interference> {
    let sizes = cx.sizes(end);
    let (bore, shaft) = (sizes.bore.as_ref()?, sizes.shaft.as_ref()?);
    Interference::sharing(shaft.mean, bore.mean, sizes.shared, flattening(cx, end)).ok()
}

/// What the peaks of both surfaces lose; nothing while they are not known.
pub(super) fn flattening(cx: &Context, end: End) -> Length {
    let hub = cx.file.coupling.hub(end);
    let roughness = hub.bore_roughness.as_ref().zip(hub.shaft_roughness.as_ref());
    roughness.map_or_else(Length::default, |(bore, shaft)| {
        flattening_din_7190(bore.value(), shaft.value())
    })
}

/// Its speed, and its warmth where both temperatures are given.
pub(super) fn running(cx: &Context, end: End) -> Running {
    let speed = cx.file.machines.speed.as_ref().map(Measured::value).unwrap_or_default();
    let fit = cx.file.fit.at(end);
    let warmth = fit.hub_temperature.as_ref().zip(fit.shaft_temperature.as_ref());
    let rise = |kelvin: f64| TemperatureInterval::from_si(kelvin - REFERENCE_K);
    warmth.map_or(Running { speed, ..Running::default() }, |(hub, shaft)| Running {
        speed,
        hub_rise: rise(hub.value().si()),
        shaft_rise: rise(shaft.value().si()),
    })
}

/// Friction in the joint: as entered, else what is usual for the way the hub goes on.
pub(super) fn friction(cx: &Context, end: End) -> Range<f64> {
    let fit = &cx.file.fit;
    let low = si(&fit.friction_least).unwrap_or_else(|| grip(joint(cx, end)));
    let high = si(&fit.friction_greatest).unwrap_or(PULL);
    Range::new(low, if high > low { high } else { low })
}

fn joint(cx: &Context, end: End) -> Joint {
    let fit = &cx.file.fit;
    let iron = cx.hub_material(end).contains("iron");
    match (fit.mounting, fit.degreased == Some(true)) {
        (Mounting::Heat, false) => Joint::Shrunk,
        (Mounting::Heat, true) => Joint::ShrunkDegreased,
        (Mounting::Press, _) => Joint::Pressed,
        (Mounting::Oil, false) if iron => Joint::IronOil,
        (Mounting::Oil, true) if iron => Joint::IronOilDegreased,
        (Mounting::Oil, false) => Joint::Oil,
        (Mounting::Oil, true) => Joint::OilDegreased,
    }
}

/// Stress that the bore of the hub may have: 80 % of yield, or all of it where the shaft is thin
/// beside the hub; and in words why.
pub(super) fn allowed(cx: &Context, end: End) -> Option<(Pressure, String)> {
    let (yields, whose) = cx.hub_yield(end)?;
    let slices = cx.hub_slices(end)?;
    let thinnest = slices.iter().map(|slice| slice.outside.si()).fold(f64::INFINITY, f64::min);
    let thick = cx.joint_diameter(end)?.si() / thinnest <= FULL_YIELD_TO;
    let part = if thick { 1.0 } else { PART_OF_YIELD };
    let percent = Value { kind: Kind::Percent, ..Value::number(part) }.show(cx.system);
    Some((yields * part, format!("{percent} of {whose} ({BLOCH})")))
}

/// Part of yield that the bore of a hub may reach, and the d/D up to which it may reach all of it.
const PART_OF_YIELD: f64 = 0.8;
const FULL_YIELD_TO: f64 = 0.4;
const BLOCH: &str = "Bloch, Improving Machinery Reliability, p. 217";

pub(super) fn stage(cx: &Context) -> StagePlan {
    let fit = &cx.file.fit;
    let mut out = cx.stage(Stage::Fit, *fit != crate::file::Fit::default());
    for end in End::BOTH {
        interference(cx, &mut out, end);
        taper::numbers(cx, &mut out, end);
        holding::numbers(cx, &mut out, end);
        release::numbers(cx, &mut out, end);
        choosing::numbers(cx, &mut out, end);
        keys::numbers(cx, &mut out, end);
    }
    assumed(cx, &mut out);
    let parts: Vec<String> = End::BOTH.into_iter().filter_map(|end| in_words(cx, end)).collect();
    out.done(if parts.is_empty() {
        "bore and shaft not both measured".to_owned()
    } else {
        parts.join("; ")
    })
}

fn in_words(cx: &Context, end: End) -> Option<String> {
    let interference = cx.fit(end).interference?;
    let shown = Value::new(Kind::Allowance, interference.value.abs()).show(cx.system);
    let sort = if interference.value < Length::default() { "clearance" } else { "interference" };
    Some(format!("{} {sort} {shown}", cx.name(end)))
}

fn interference(cx: &Context, out: &mut StageBuilder, end: End) {
    let name = cx.hub_name(end);
    let id = format!("{}.interference", end.key());
    let wanted = wanted(cx, end);
    not_held(cx, out, end);
    if wanted.is_none() {
        let place = format!("fit.{}.class", end.key());
        out.missing(&place, &format!("fit wanted, {name}: a class such as H7/p6, or limits"));
    }
    if cx.taper(end).is_some() {
        return;
    }
    let Some(fit) = &cx.fit(end).sizes else {
        let place = format!("sizes.{}.bore.1.along", end.key());
        out.unmeasured(
            &id,
            format!("Interference, {name}"),
            &place,
            &format!("bore and shaft, {}", cx.name(end)),
        );
        return;
    };
    let loose = fit.measured.value < Length::default();
    let value = fit.measured.shown(Kind::Allowance);
    let entry =
        out.number(&id, format!("Interference, {name}"), value).working(fit.working()).key();
    match wanted {
        Some(wanted) => {
            let second =
                if loose { format!("{}; − is clearance", wanted.whose) } else { wanted.whose };
            let closer = closer(
                cx,
                &value,
                &wanted.limits,
                "Take the readings of bore and shaft again with gauges set near this size",
            );
            entry
                .second(second)
                .judged(wanted.limits, mend(&wanted.limits, fit.measured.value))
                .settled_by(closer);
            chance(out, end, &name, &value, &wanted.limits);
        }
        None if loose => {
            entry.second("− is clearance");
        }
        None => {}
    }
    let spread = Value::new(Kind::Allowance, fit.measured.plus_minus);
    let second = if fit.shared > Length::default() {
        "95 %; the gauge was set on the shaft’s micrometer: its own error falls out"
    } else {
        "95 %; bore and shaft measured apart"
    };
    out.number(&format!("{id}.spread"), format!("± of the interference, {name}"), spread)
        .second(second)
        .working(fit.spread_working());
    presses(cx, out, end, &name);
}

/// A class that reads well, and that the tables do not hold for this size.
fn not_held(cx: &Context, out: &mut StageBuilder, end: End) {
    let Ok(class) = cx.file.fit.at(end).class.parse::<tables::fits::Fit>() else { return };
    let Some(nominal) = &cx.file.sizes.at(end).nominal else { return };
    if cx.taper(end).is_none()
        && let Err(error) = class.interference(nominal.value())
    {
        out.note(format!(
            "{}: {error}. Limits can be entered instead.",
            capital(&cx.hub_name(end))
        ));
    }
}

fn presses(cx: &Context, out: &mut StageBuilder, end: End, name: &str) {
    let Some(fit) = &cx.fit(end).sizes else { return };
    if fit.flattening > Length::default() {
        out.number(
            &format!("{}.presses", end.key()),
            format!("Interference that presses, {name}"),
            fit.effective.shown(Kind::Allowance),
        )
        .second("after the surfaces have flattened")
        .working(fit.effective_working());
    }
}

/// The probability that the true fit lies inside.
fn chance(out: &mut StageBuilder, end: End, name: &str, value: &Value, limits: &Limits) {
    let Some(probability) = probability_inside(value, limits) else { return };
    let chance = Value { kind: Kind::Percent, ..Value::number(probability) };
    let allowance = |si| Value { si, plus_minus: None, ..*value };
    let source = quantities::Source::new("JCGM 106:2012", "7.3 and 7.4", quantities::Basis::Memory);
    let mut working = Working::new(
        "Chance that the true fit lies inside",
        "P = Φ((G − x)/u) − Φ((L − x)/u)",
        chance,
        source,
    )
    .term("x", "interference", allowance(value.si))
    .term("u", "half its ±", allowance(value.plus_minus.unwrap_or(0.0) / 2.0));
    if let Some(least) = limits.least {
        working = working.term("L", "least wanted", allowance(least));
    }
    if let Some(greatest) = limits.greatest {
        working = working.term("G", "greatest wanted", allowance(greatest));
    }
    out.number(
        &format!("{}.chance", end.key()),
        format!("Chance that the true fit lies inside, {name}"),
        chance,
    )
    .second("normally distributed, half the ± as standard deviation")
    .working(working.valid("an open limit counts as never passed"));
}

fn mend(limits: &Limits, found: Length) -> &'static str {
    if limits.greatest.is_some_and(|greatest| found.si() > greatest) {
        "Too tight: measure both again at one temperature; then have the bore honed, or take the maker’s word."
    } else {
        "Too loose: measure both again at one temperature; then a new hub, or the shaft built up. Never knurl or shim."
    }
}

/// The torque that friction must hold alone: what is to be carried, times the safety wanted.
pub(super) fn needed(cx: &Context) -> Option<Torque> {
    Some(torque_to_carry(cx)? * safety(cx))
}

/// The safety wanted; 1 while nothing is said.
fn safety(cx: &Context) -> f64 {
    si(&cx.file.fit.safety).unwrap_or(1.0)
}

/// The torque with its service factor, or the peak where that is known to be larger.
pub(super) fn torque_to_carry(cx: &Context) -> Option<Torque> {
    let duty = cx.duty()?.design_torque();
    let peak = cx.file.machines.peak_torque.as_ref().map(Measured::value);
    Some(peak.filter(|peak| *peak > duty).unwrap_or(duty))
}

fn assumed(cx: &Context, out: &mut StageBuilder) {
    let any = End::BOTH.into_iter().find(|end| cx.fit(*end).grip.is_some());
    let fit = &cx.file.fit;
    if let Some(end) = any
        && (fit.friction_least.is_none() || fit.friction_greatest.is_none())
    {
        let range = friction(cx, end);
        out.note(format!(
            "Friction in the joint: {:.2} for what it holds ({}), {:.2} for pulling it off ({}).",
            range.low,
            tables::friction::SOURCE,
            range.high,
            tables::friction::PULL_SOURCE
        ));
    }
    for end in End::BOTH.into_iter().filter(|end| cx.fit(*end).grip.is_some()) {
        let hub = cx.file.coupling.hub(end);
        if hub.bore_roughness.is_none() || hub.shaft_roughness.is_none() {
            out.note(capital(&format!(
                "{}: no roughness was given, so nothing is taken off for flattening.",
                cx.hub_name(end)
            )));
        }
        if cx.file.sizes.at(end).key.is_some() {
            out.note_once("A keyway takes its own width from the joint: what friction holds is reckoned without it; the pull to strip the hub, with the whole of it.".to_owned());
        }
        let fit = cx.file.fit.at(end);
        if fit.hub_temperature.is_some() != fit.shaft_temperature.is_some() {
            let (place, what) = if fit.hub_temperature.is_some() {
                ("shaft_temperature", "temperature of the shaft in service")
            } else {
                ("hub_temperature", "temperature of the hub in service")
            };
            out.missing(
                &format!("fit.{}.{place}", end.key()),
                &format!("{what}, {}", cx.hub_name(end)),
            );
        }
    }
}
