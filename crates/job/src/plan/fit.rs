//! The fit: will the hub go on, and stay on.

use mechanics::interference::flattening::{Interference, flattening_din_7190};
use mechanics::interference::hub::{Grip, Running};
use mechanics::interference::release::LetsGo;
use mechanics::{Estimate, Range};
use quantities::{Kind, Length, Limits, Measured, Physical, Torque, Value};
use tables::friction::{Joint, PULL, grip};

use super::sizes::capital;
use super::stage_builder::StageBuilder;
use super::{Context, StagePlan, keys};
use crate::Stage;
use crate::file::{End, si};

/// The fit at one end.
#[derive(Clone, Debug, Default)]
pub(super) struct Found {
    /// Shaft less bore, as measured.
    pub interference: Option<Estimate<Length>>,
    /// The same with its working.
    pub sizes: Option<Interference>,
    /// What it holds; `None` without interference, or while the hub is not known.
    pub grip: Option<Grip>,
}

pub(super) fn found(cx: &Context, end: End) -> Found {
    let sizes = cx.sizes(end);
    let (Some(bore), Some(shaft)) = (&sizes.bore, &sizes.shaft) else { return Found::default() };
    let hub = cx.file.coupling.hub(end);
    let roughness = hub.bore_roughness.as_ref().zip(hub.shaft_roughness.as_ref());
    let flattening = roughness.map_or_else(Length::default, |(bore, shaft)| {
        flattening_din_7190(bore.value(), shaft.value())
    });
    let Ok(fit) = Interference::new(shaft.mean, bore.mean, flattening) else {
        return Found::default();
    };
    let speed = cx.file.machines.speed.as_ref().map(Measured::value).unwrap_or_default();
    let running = Running { speed, ..Running::default() };
    let grip =
        cx.press_fit(end).and_then(|press| press.grip(fit.effective, friction(cx), running).ok());
    Found { interference: Some(fit.measured), sizes: Some(fit), grip }
}

/// Friction in the joint: as entered, else the usual range for steel.
pub(super) fn friction(cx: &Context) -> Range<f64> {
    let (low, high) = (grip(Joint::Shrunk), PULL);
    let fit = &cx.file.fit;
    Range::new(si(&fit.friction_least).unwrap_or(low), si(&fit.friction_greatest).unwrap_or(high))
}

/// Least and greatest interference wanted, and who wants it.
pub(super) fn wanted(cx: &Context, end: End) -> Option<(Limits, String)> {
    let fit = cx.file.fit.at(end);
    if fit.least.is_some() || fit.greatest.is_some() {
        let limits = Limits { least: si(&fit.least), greatest: si(&fit.greatest) };
        return Some((limits, "limits as entered".to_owned()));
    }
    let class: tables::iso_286::Fit = fit.class.parse().ok()?;
    let (least, greatest) =
        class.interference(cx.file.sizes.at(end).nominal.as_ref()?.value()).ok()?;
    Some((Limits::between(least.si(), greatest.si()), format!("class {class}, ISO 286")))
}

pub(super) fn stage(cx: &Context) -> StagePlan {
    let fit = &cx.file.fit;
    let mut out = cx.stage(Stage::Fit, *fit != crate::file::Fit::default());
    for end in End::BOTH {
        interference(cx, &mut out, end);
        holding(cx, &mut out, end);
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
    if wanted.is_none() {
        let place = format!("fit.{}.class", end.key());
        out.missing(&place, &format!("fit wanted, {name}: a class such as H7/p6, or limits"));
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
    let label = format!("Interference, {name}");
    let value = fit.measured.shown(Kind::Allowance);
    let entry = out.number(&id, label, value).working(fit.working()).key();
    if let Some((limits, whose)) = wanted {
        let second = if loose { format!("{whose}; − is clearance") } else { whose };
        entry.second(second).judged(limits, settle(&limits, fit.measured.value));
    }
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

fn settle(limits: &Limits, found: Length) -> &'static str {
    let found = found.si();
    if limits.greatest.is_some_and(|greatest| found > greatest) {
        "Too tight: measure both again at one temperature; then have the bore honed, or take the maker’s word."
    } else if limits.least.is_some_and(|least| found < least) {
        "Too loose: measure both again at one temperature; then a new hub, or the shaft built up. Never knurl or shim."
    } else {
        "Measure bore and shaft again with gauges set near this size: a smaller ± will settle it."
    }
}

fn holding(cx: &Context, out: &mut StageBuilder, end: End) {
    let name = cx.hub_name(end);
    let fit = cx.fit(end);
    let Some(grip) = &fit.grip else {
        if fit.interference.is_some_and(|fit| fit.value < Length::default()) {
            out.note(format!(
                "The {name} has clearance: key and set screw hold it, the fit holds nothing."
            ));
        }
        return;
    };
    let key = end.key();
    let pressure = Value::new(Kind::Stress, grip.most.mean_pressure());
    out.number(&format!("{key}.pressure"), format!("Contact pressure, {name}"), pressure)
        .second("mean over its length, at the upper end of the interference");
    stress(cx, out, end, grip);
    torque(cx, out, end, grip);
    axial(cx, out, end, grip);
    speed(cx, out, end);
}

fn stress(cx: &Context, out: &mut StageBuilder, end: End, grip: &Grip) {
    let Some((_, slice)) = grip.most.worst_slice() else { return };
    let name = cx.hub_name(end);
    let value = Value::new(Kind::Stress, slice.hub_bore.von_mises);
    let working = slice.hub_bore.working(&format!("bore of the {name}"));
    let entry = out
        .number(&format!("{}.stress", end.key()), format!("Stress at the bore, {name}"), value)
        .working(working);
    let own = cx.file.coupling.hub(end).yield_strength.as_ref().map(Measured::value);
    let usual = cx.hub_metal(end).and_then(|metal| metal.yield_strength);
    if let Some(limit) = own.or(usual) {
        let whose = if own.is_some() { "yield as entered" } else { "usual yield of its material" };
        entry
            .second(format!("at the upper end of the interference, turning; limit: {whose}"))
            .judged(
                Limits::at_most(limit.si()),
                "The bore would yield. Take less interference, or a hub of stronger steel.",
            );
    }
}

fn torque(cx: &Context, out: &mut StageBuilder, end: End, grip: &Grip) {
    let low = Value::new(Kind::Torque, grip.torque.low);
    let high = out.show(&Value::new(Kind::Torque, grip.torque.high));
    let least = grip.least.as_ref().unwrap_or(&grip.most);
    let entry = out
        .number(
            &format!("{}.torque", end.key()),
            format!("Torque that the fit holds, {}", cx.hub_name(end)),
            low,
        )
        .working(least.torque_working(grip.friction.low))
        .key();
    let keyed = cx.file.sizes.at(end).key.is_some();
    match needed(cx) {
        Some(torque) if !keyed => entry
            .second(format!("at least; up to {high} with the best friction; limit: needed, with safety"))
            .judged(
                Limits::at_least(torque.si()),
                "It may slip. A key, more interference, or a longer hub; or a smaller ± on the sizes.",
            ),
        Some(torque) => {
            let needed = Value::new(Kind::Torque, torque).show(cx.system);
            entry.second(format!("at least; up to {high}; {needed} needed, and the key is judged as if it carried all of it"))
        }
        None => entry.second(format!("at least; up to {high} with the best friction")),
    };
}

/// Torque that a fit alone must hold: what is to be carried, times the safety wanted.
fn needed(cx: &Context) -> Option<Torque> {
    Some(torque_to_carry(cx)? * si(&cx.file.fit.safety).unwrap_or(1.0))
}

/// The torque with its service factor, or the peak where that is known to be larger.
pub(super) fn torque_to_carry(cx: &Context) -> Option<Torque> {
    let duty = cx.duty.as_ref()?.design_torque();
    let peak = cx.file.machines.peak_torque.as_ref().map(Measured::value);
    Some(peak.filter(|peak| *peak > duty).unwrap_or(duty))
}

fn axial(cx: &Context, out: &mut StageBuilder, end: End, grip: &Grip) {
    let value = Value::new(Kind::Force, grip.axial.low);
    let least = grip.least.as_ref().unwrap_or(&grip.most);
    let entry = out
        .number(
            &format!("{}.axial", end.key()),
            format!("Pull that the fit holds, {}", cx.hub_name(end)),
            value,
        )
        .second("at least, while no torque is on it")
        .working(least.axial_working(grip.friction.low));
    if let Some(pull) = &cx.file.fit.axial {
        entry.judged(
            Limits::at_least(pull.value().si()),
            "It may walk along the shaft. A retaining plate or nut must hold it.",
        );
    }
}

fn speed(cx: &Context, out: &mut StageBuilder, end: End) {
    let (Some(press), Some(fit)) = (cx.press_fit(end), &cx.fit(end).sizes) else { return };
    let none = Torque::default();
    let slips =
        press.lets_go_at_speed(fit.effective.low(), friction(cx).low, none, Running::default());
    if let Ok(LetsGo::At(speed)) = slips {
        let value = Value::new(Kind::Speed, speed);
        let entry = out
            .number(
                &format!("{}.speed", end.key()),
                format!("Speed that opens the fit, {}", cx.hub_name(end)),
                value,
            )
            .second("the hub grows as it turns; the whole fit is open here");
        if let Some(runs) = &cx.file.machines.speed {
            entry.judged(
                Limits::at_least(runs.value().si()),
                "It opens at running speed. More interference.",
            );
        }
    }
}

fn assumed(cx: &Context, out: &mut StageBuilder) {
    let any = End::BOTH.iter().any(|end| cx.fit(*end).grip.is_some());
    let fit = &cx.file.fit;
    if any && (fit.friction_least.is_none() || fit.friction_greatest.is_none()) {
        let range = friction(cx);
        out.note(format!(
            "Friction in the joint: {:.2} for what it holds ({}), {:.2} for pulling it off ({}).",
            range.low,
            tables::friction::SOURCE,
            range.high,
            tables::friction::PULL_SOURCE
        ));
    }
    for end in End::BOTH {
        let hub = cx.file.coupling.hub(end);
        let rough = hub.bore_roughness.is_some() && hub.shaft_roughness.is_some();
        if cx.fit(end).grip.is_some() && !rough {
            out.note(capital(&format!(
                "{}: no roughness was given, so nothing is taken off for flattening.",
                cx.hub_name(end)
            )));
        }
    }
}
