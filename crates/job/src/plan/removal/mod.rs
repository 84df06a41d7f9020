//! Off: as found, and the force or the heat that gets a hub off again without harm.

mod advice;
mod hold;
pub(super) mod hot;
mod starting;
mod ways;

use mechanics::interference::hub::Running;
use mechanics::pull::{Pull, pull_force, puller};
use quantities::{
    Basis, Force, Kind, Length, Limits, Mass, Measured, Physical, Pressure, Source,
    TemperatureInterval, Value, Working,
};
use tables::pullers::{MARGIN, Puller, puller_for};

use super::stage_builder::StageBuilder;
use super::{Context, Depth, StagePlan, fit, heat, inspection};
use crate::Stage;
use crate::file::{End, Inspection, Removal, si};
pub(super) use starting::starting;
pub(super) use ways::ways;
pub use ways::{HubOff, May, Way};

/// What gets one hub off.
#[derive(Clone, Debug)]
pub(super) struct Found {
    /// Pull when cold, over the range of friction, at the upper end of the interference.
    pub pull: Pull,
    /// The class of puller that bears it with its margin; `None` when none does.
    pub puller: Option<Puller>,
    /// Pull that is left with the hub [`WARMER_K`] warmer than its shaft; nothing once it is free.
    pub warm: Pull,
    /// Pressure of the fit at its tightest slice.
    pub pressure: Pressure,
}

/// How much warmer than its shaft a hub is for the pull that is left: a rule of our own, a rise that
/// any flame or heater gives.
pub(super) const WARMER_K: f64 = 40.0;
/// A hub heavier than this is not lifted by one (common practice).
const ONE_PERSON_KG: f64 = 20.0;

/// `None` for a hub with clearance, or while fit and hub are not known.
pub(super) fn found(cx: &Context, end: End) -> Option<Found> {
    let effective = cx.fit(end).effective?;
    // Surfaces that flattened on the way on have no more to give: what presses, presses.
    let state = cx.press_fit(end)?.state(effective.high(), Running::default()).ok()?;
    let pull = pull_force(&state, fit::friction(cx, end)).ok()?;
    let margin = margin(cx);
    let puller = puller_for(pull.force.high * margin, hold::drive(cx));
    let pressures = state.slices.iter().map(|slice| slice.pressure);
    let pressure =
        pressures.fold(Pressure::default(), |most, one| if one > most { one } else { most });
    let warm = warm(cx, end, effective.high(), &pull)?;
    Some(Found { pull, puller, warm, pressure })
}

/// The pull that is left while the hub is warmer than its shaft.
fn warm(cx: &Context, end: End, interference: Length, cold: &Pull) -> Option<Pull> {
    let hub_rise = TemperatureInterval::from_si(WARMER_K);
    let running = Running { hub_rise, ..Running::default() };
    let state = cx.press_fit(end)?.state(interference, running).ok()?;
    let none = Force::default();
    let free = Pull { normal_force: none, force: cold.force.map(|_| none), ..*cold };
    Some(pull_force(&state, cold.friction).unwrap_or(free))
}

pub(super) fn stage(cx: &Context) -> StagePlan {
    let removal = &cx.file.removal;
    let begun = *removal != Removal::default() || cx.file.inspection != Inspection::default();
    let mut out = cx.stage(Stage::Removal, begun);
    inspection::numbers(cx, &mut out);
    let mut parts = Vec::new();
    for end in End::BOTH {
        let Some(found) = cx.removal(end) else {
            if cx.fit(end).interference.is_some_and(|fit| fit.value < Length::default()) {
                out.note(format!(
                    "The {} has clearance: set screws out, and it slides.",
                    cx.hub_name(end)
                ));
            }
            continue;
        };
        numbers(cx, &mut out, end, found);
        let pull = Value::new(Kind::Force, found.pull.force.high).show(cx.system);
        parts.push(format!("{} up to {pull}", cx.hub_name(end)));
    }
    open_ways(cx, &mut out);
    choices(cx, &mut out);
    if cx.file.removal.heat_allowed != Some(false) {
        heat::spoilt_by_heat(cx, &mut out);
    }
    lifting(cx, &mut out);
    recorded(cx, &mut out);
    out.done(if parts.is_empty() {
        "known once fit and hub are known".to_owned()
    } else {
        format!("cold pull: {}", parts.join(", "))
    })
}

fn numbers(cx: &Context, out: &mut StageBuilder, end: End, found: &Found) {
    let (key, name) = (end.key(), cx.hub_name(end));
    let low = Value::new(Kind::Force, found.pull.force.low).show(cx.system);
    let force = Value::new(Kind::Force, found.pull.force.high);
    let margin = margin(cx);
    let entry = out
        .number(&format!("{key}.force"), format!("Pull to strip the {name}, cold"), force)
        .working(found.pull.working())
        .key();
    match hold::at_hand(cx) {
        Some(puller) => {
            let bears = puller.si() / margin;
            entry
                .second(format!(
                    "from {low} up; limit: the puller at hand over a margin of {margin}"
                ))
                .judged(Limits::at_most(bears), too_weak(cx));
        }
        None => {
            entry.second(format!("from {low} up, with the friction; no rust, no fretting"));
        }
    }
    if let Ok(choice) = puller(found.pull.force.high, margin, hold::drive(cx)) {
        let drive = hold::drive_words(hold::drive(cx));
        let class = match found.puller {
            Some(puller) => format!("a {drive} puller of {} tons of 2000 lbf or more", puller.tons),
            None => format!(
                "no common {drive} puller is: heat it, or use oil pressure where the hub is made for it"
            ),
        };
        let needed = Value::new(Kind::Force, choice.needed);
        out.number(&format!("{key}.class"), format!("Puller for the {name}, good for"), needed)
            .second(class)
            .working(choice.working());
    }
    hot::numbers(cx, out, end);
    hold::numbers(cx, out, end, found);
}

/// How much more than the pull a puller must bear.
fn margin(cx: &Context) -> f64 {
    si(&cx.file.removal.margin).unwrap_or(MARGIN)
}

/// "good for 182 kN or more: 30 tons of 2000 lbf".
pub(super) fn puller_words(cx: &Context, puller: &Puller, pull: Force) -> String {
    let load = Value::new(Kind::Force, pull * margin(cx)).show(cx.system);
    format!("good for {load} or more: {} tons of 2000 lbf", puller.tons)
}

fn too_weak(cx: &Context) -> &'static str {
    match cx.file.removal.heat_allowed {
        Some(false) => {
            "A larger puller, or oil pressure where the hub is made for it. Never more force than the puller bears."
        }
        _ => "A larger puller, or heat with the pull. Never more force than the puller bears.",
    }
}

/// How many ways nothing stands against; once all is said and none is left, what would make one. Only
/// in a full plan, for heat is one of them.
fn open_ways(cx: &Context, out: &mut StageBuilder) {
    if cx.depth == Depth::Quick {
        return;
    }
    for hub in ways(cx) {
        let count = |may: May| hub.ways.iter().filter(|way| way.may == may).count();
        let (open, barred) = (count(May::Yes), count(May::No));
        if open == 0 && barred < hub.ways.len() {
            continue;
        }
        let number = |count: usize| Value::count(u32::try_from(count).unwrap_or(u32::MAX));
        let source = Source::new("the ways side by side", "", Basis::Computed);
        let working = Working::new("Ways that may be", "n = N − b − o", number(open), source)
            .term("N", "ways that are looked at", number(hub.ways.len()))
            .term("b", "that something stands against", number(barred))
            .term("o", "of which too little is known", number(count(May::Open)));
        let label = format!("Ways that may get the {} off", hub.hub);
        out.number(&format!("{}.ways", hub.end), label, number(open))
            .second("puller cold or with heat, heat alone, oil, cutting; side by side below")
            .working(working)
            .judged(Limits::at_least(1.0), NO_WAY);
    }
}

/// What would make a way where none is left.
const NO_WAY: &str = "None of the five ways works as things stand. Pull nothing yet: make room for a puller, get a larger one, have an oil port drilled by the hub’s maker, have heat allowed, or give the hub up and cut it.";

fn choices(cx: &Context, out: &mut StageBuilder) {
    match cx.file.removal.heat_allowed {
        Some(true) => out.note("Load the puller first, then heat the hub fast and all round; the shaft warms later and closes the window again."),
        Some(false) => out.note("No flame or heater here: cold pull, or oil pressure where the hub is made for it."),
        None => out.missing("removal.heat_allowed", "whether heat may be used at the machine"),
    }
    if hold::at_hand(cx).is_none() {
        out.missing("removal.puller", "force that the puller at hand is good for");
    }
}

/// What must be carried, and by how many: what comes off first, then the hubs.
fn lifting(cx: &Context, out: &mut StageBuilder) {
    let masses = &cx.file.coupling.sheet.masses;
    for (part, mass) in [("a sleeve or half cover", &masses.sleeve), ("the spacer", &masses.spacer)]
    {
        if let Some(mass) = mass.as_ref().map(Measured::value) {
            carried(cx, out, part, mass, "a sling holds it before its last bolt is out");
        }
    }
    for end in End::BOTH {
        if let Some(hub) = cx.hub_mass(end) {
            carried(cx, out, &cx.hub_name(end), hub.mass, "a sling holds it while it is pulled");
        }
    }
}

fn carried(cx: &Context, out: &mut StageBuilder, part: &str, mass: Mass, sling: &str) {
    let shown = Value::new(Kind::Mass, mass).show(cx.system);
    let how = if mass > Mass::from_si(ONE_PERSON_KG) {
        format!("sling and hoist, or two people; nobody under it; {sling}")
    } else {
        format!("one person can, with dry gloves; {sling}")
    };
    out.note(format!("{}, {shown}: {how}.", super::sizes::capital(part)));
}

/// The gap that the next one must find again.
fn recorded(cx: &Context, out: &mut StageBuilder) {
    let gap = &cx.file.gap;
    match &gap.recorded {
        Some(recorded) => out.note(format!("Gap recorded: {}.", recorded.text())),
        None if gap.readings.is_empty() => {
            out.note("Write down the gap and the place of each hub before anything comes apart.");
        }
        None => {
            let mut texts: Vec<&str> = gap.readings.values().map(Measured::text).collect();
            texts.dedup();
            out.note(format!("Gap as last read: {}.", texts.join(", ")));
        }
    }
}
