//! Heat: how hot the hub must be to slide on, and what forbids it.

pub(super) mod bench;
mod instead;
mod joint;
pub(super) mod near;
pub(super) mod seconds;
mod trying;
mod warming;
mod way;

pub use trying::{Dial, Outcome, Tried, Trying, try_heat};

use mechanics::heat::expansion::{Expansion, Rows};
use mechanics::heat::{
    HubHeat, Opening, heating_energy, sliding_clearance, sliding_clearance_working,
};
use quantities::{
    Basis, Kind, Length, Limits, Measured, Physical, Source, TemperatureInterval,
    ThermodynamicTemperature, Value, Working,
};

use super::stage_builder::{StageBuilder, WRITTEN};
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::{End, ExpansionTo, Figures, Heat};

/// Heat for one hub.
#[derive(Clone, Debug)]
pub(super) struct Found {
    /// How hot it must be, with what was put in.
    pub heat: HubHeat,
    /// As it leaves the heater: as written, else what it needs; as warm as its place where a cold shaft
    /// is enough.
    pub hot: ThermodynamicTemperature,
    /// The same hub as it comes to the shaft.
    pub comes: ThermodynamicTemperature,
}

impl Found {
    /// True where the cold shaft opens the fit by itself, and nobody wrote of heat.
    pub fn needs_none(&self, cx: &Context) -> bool {
        self.hot <= ambient(cx)
    }
}

/// Room temperature where the job gives none (common practice), said in the plan.
const AMBIENT_K: f64 = 293.15;
/// Lost on the way from the heater to the shaft where the job gives nothing: a rule of our own.
const LOSS_K: f64 = 15.0;

/// `None` for a hub with clearance, or while sizes or material are not known.
pub(super) fn found(cx: &Context, end: End) -> Option<Found> {
    let fit = cx.fit(end).interference.as_ref()?;
    if fit.value < Length::default() {
        return None;
    }
    let heat = opening(cx, end, fit.high())?.hub_heat().ok()?;
    let place = ambient(cx);
    let written = cx.file.heat.heated_to.as_ref().map(Measured::value);
    let needed = if heat.at_shaft > place { heat.from_heater } else { place };
    let hot = written.unwrap_or(needed);
    let comes = hot - heat.opening.loss;
    Some(Found { heat, hot, comes: if comes > place { comes } else { place } })
}

/// What is asked of the heat for a hub with so much interference; `None` while size or material are
/// not known.
pub(super) fn opening(cx: &Context, end: End, interference: Length) -> Option<Opening> {
    let diameter = cx.joint_diameter(end)?;
    let heat = &cx.file.heat;
    let clearance =
        heat.clearance.as_ref().map_or_else(|| sliding_clearance(diameter), Measured::value);
    let shaft = heat.shaft_temperature.as_ref().map_or_else(|| ambient(cx), Measured::value);
    let opening = Opening {
        diameter,
        interference,
        clearance,
        hub: expansion(cx.hub_metal(end)?, &heat.assume.hub),
        shaft: expansion(cx.shaft_metal(end)?, &heat.assume.shaft),
        shaft_temperature: shaft,
        loss: TemperatureInterval::default(),
    };
    let loss = loss(cx, end, &opening);
    Some(Opening { loss, ..opening })
}

/// What the hub loses on its way: as written, else by the time that it takes, else a usual figure.
fn loss(cx: &Context, end: End, without: &Opening) -> TemperatureInterval {
    let heat = &cx.file.heat;
    let reckoned = || way::lost(cx, end, without.hub_heat().ok()?.at_shaft);
    let written = heat.loss.as_ref().map(Measured::value);
    written.or_else(reckoned).unwrap_or(TemperatureInterval::from_si(LOSS_K))
}

/// As written, by temperature or in one figure; else steel's, which rises with temperature, and one
/// figure for other metals.
fn expansion(metal: &tables::materials::Material, figures: &Figures) -> Expansion {
    match (rows(figures), &figures.expansion) {
        (Some(rows), _) => Expansion::Table(rows),
        (None, Some(mean)) => Expansion::Constant(mean.value()),
        (None, None) if metal.name == "steel" => Expansion::Steel,
        (None, None) => Expansion::Constant(metal.expansion),
    }
}

/// The expansion by temperature; `None` for none, and for rows that make no table.
fn rows(figures: &Figures) -> Option<Rows> {
    let row =
        |row: &ExpansionTo| Some((row.temperature.as_ref()?.value(), row.mean.as_ref()?.value()));
    let rows = figures.expansions.values().map(row).collect::<Option<Vec<_>>>()?;
    Rows::new(rows).ok()
}

pub(super) fn ambient(cx: &Context) -> ThermodynamicTemperature {
    let ambient = cx.file.machines.ambient.as_ref();
    ambient.map_or(ThermodynamicTemperature::from_si(AMBIENT_K), Measured::value)
}

/// The strictest limit on the hub's temperature, and whose it is.
pub(super) fn limit(cx: &Context, end: End) -> Option<(ThermodynamicTemperature, String)> {
    let heat = &cx.file.heat;
    let mut limits = Vec::new();
    if let Some(metal) = cx.hub_metal(end)
        && let Some(limit) = metal.heating_limit
    {
        limits.push((limit, format!("usual for {}", metal.name)));
    }
    if let Some(limit) = &cx.file.coupling.sheet.max_heating {
        limits.push((limit.value(), "the maker’s sheet".to_owned()));
    }
    if let Some(limit) = &heat.limit {
        limits.push((limit.value(), "the site’s limit".to_owned()));
    }
    for name in &heat.seals_left {
        if let Some(seal) = tables::seals::seal(name) {
            limits.push((seal.limit, format!("{} left in place", seal.name)));
        }
    }
    limits.into_iter().min_by(|a, b| a.0.si().total_cmp(&b.0.si()))
}

pub(super) fn stage(cx: &Context) -> StagePlan {
    let heat = &cx.file.heat;
    let mut out = cx.stage(Stage::Heat, *heat != Heat::default());
    let mut parts = Vec::new();
    for end in End::BOTH {
        match cx.heat(end) {
            Some(found) => {
                numbers(cx, &mut out, end, found);
                joint::numbers(cx, &mut out, end);
                seconds::numbers(cx, &mut out, end);
                let hot = Value::new(Kind::Temperature, found.hot).show(cx.system);
                parts.push(format!("{} {hot}", cx.hub_name(end)));
            }
            None => without(cx, &mut out, end),
        }
    }
    common(cx, &mut out);
    spoilt_by_heat(cx, &mut out);
    let method = if heat.method.is_empty() { "heater" } else { &heat.method };
    out.done(if parts.is_empty() {
        "no hub needs heat yet".to_owned()
    } else {
        format!("{method}: {}", parts.join(", "))
    })
}

/// What of this kind a hot hub or a flame spoils.
pub(super) fn spoilt_by_heat(cx: &Context, out: &mut StageBuilder) {
    let Some(kind) = cx.kind else { return };
    out.note(format!(
        "Heat spoils, on this kind: {}. Keep them off or well clear, a wet cloth or a plate between, \
         until the metal can be touched; renew what got hot (common practice).",
        kind.near_heat().join("; ")
    ));
}

fn without(cx: &Context, out: &mut StageBuilder, end: End) {
    let name = cx.hub_name(end);
    match &cx.fit(end).interference {
        Some(fit) if fit.value < Length::default() => {
            out.note(format!("The {name} has clearance and slides on cold."));
        }
        Some(fit) => match opening(cx, end, fit.high()).map(|opening| opening.hub_heat()) {
            Some(Err(_)) => out.note(format!(
                "No temperature for the {name}: what is asked, or the shaft’s cold, lies beyond what the expansion of its metals is known for."
            )),
            _ => out.note(format!(
                "The {name} needs its material, and the shaft’s, before its heat is known."
            )),
        },
        None => {
            let place = format!("sizes.{}.bore.1.along", end.key());
            let id = format!("{}.temperature", end.key());
            out.unmeasured(
                &id,
                format!("Heat the {name} to"),
                &place,
                &format!("bore and shaft, {}", cx.name(end)),
            );
        }
    }
}

fn numbers(cx: &Context, out: &mut StageBuilder, end: End, found: &Found) {
    let (key, name) = (end.key(), cx.hub_name(end));
    let heat = &found.heat;
    let temperature = |at| Value::new(Kind::Temperature, at);
    let cold = found.needs_none(cx);
    let label = if cold { format!("The {name} goes on at") } else { format!("Heat the {name} to") };
    let entry = out.number(&format!("{key}.temperature"), label, temperature(found.hot)).key();
    let written = cx.file.heat.heated_to.is_some();
    let entry = match (written, cold) {
        (true, _) => entry.written(WRITTEN),
        (false, true) => entry.working(goes_on_cold(cx, found)),
        (false, false) => entry.working(heat.working()),
    };
    let limit = limit(cx, end);
    let whose = limit.as_ref().map_or_else(
        || "no limit is known for this material: ask the maker".to_owned(),
        |(_, whose)| format!("limit: {whose}"),
    );
    let limits = Limits {
        least: written.then(|| heat.from_heater.si()),
        greatest: limit.as_ref().map(|(limit, _)| limit.si()),
    };
    let entry = entry.second(match (written, cold) {
        (true, _) => format!("as it leaves the heater, as written; {whose}"),
        (false, true) => "as it is: the cold shaft is enough".to_owned(),
        (false, false) => format!("as it leaves the heater; {whose}"),
    });
    if limits != Limits::default() {
        let too_cold = limits.least.is_some_and(|least| found.hot.si() < least);
        entry.judged(
            limits,
            if too_cold {
                "Not hot enough to slide on with its clearance: heat it to what it needs."
            } else {
                "See what else would do, below."
            },
        );
    }
    if let Some((limit, _)) = limit {
        instead::numbers(cx, out, end, heat, limit);
    }
    if written {
        let label = format!("The {name} leaves the heater at, at least");
        out.number(&format!("{key}.needed"), label, temperature(heat.from_heater))
            .working(heat.working())
            .second("what the fit needs");
    }
    let label = format!("The {name} at the shaft, at least");
    out.number(&format!("{key}.at_shaft"), label, temperature(heat.at_shaft))
        .working(heat.at_shaft_working())
        .second("below this it may grab on the way");
    way::number(cx, out, end, heat.at_shaft);
    if !cold {
        let growth = Value::new(Kind::Allowance, heat.bore_growth);
        out.number(&format!("{key}.growth"), format!("Growth of the bore, {name}"), growth)
            .working(heat.growth_working())
            .second("gauge to check by: this much over the cold bore");
        energy(cx, out, end, found.hot);
        warming::torch(cx, out, end, heat);
    }
    clearance(cx, out, end, heat);
}

fn goes_on_cold(cx: &Context, found: &Found) -> Working {
    let temperature = |at| Value::new(Kind::Temperature, at);
    let source = Source::new("the hub is no colder than its place", "", Basis::Computed);
    let result = temperature(found.hot);
    Working::new("Hub as it goes on", "T = the warmer of n and p", result, source)
        .term("n", "needed beside this shaft", temperature(found.heat.from_heater))
        .term("p", "its place", temperature(ambient(cx)))
        .term("s", "shaft", temperature(found.heat.opening.shaft_temperature))
}

fn energy(cx: &Context, out: &mut StageBuilder, end: End, hot: ThermodynamicTemperature) {
    let Some((hub, metal)) = cx.hub_mass(end).zip(cx.hub_metal(end)) else { return };
    let rise = TemperatureInterval::from_si(hot.si() - ambient(cx).si());
    let own = cx.file.heat.assume.hub.heat_capacity.as_ref().map(Measured::value);
    if let Ok(energy) = heating_energy(hub.mass, own.unwrap_or(metal.heat_capacity), rise) {
        out.number(
            &format!("{}.energy", end.key()),
            format!("Heat into the {}", cx.hub_name(end)),
            Value::new(Kind::Energy, energy.energy),
        )
        .second("what the heater loses comes on top")
        .working(energy.working());
        warming::at_power(cx, out, end, energy.energy);
        warming::evenly(cx, out, end, hot, energy.energy);
    }
    warming::soak(cx, out, end);
}

fn clearance(cx: &Context, out: &mut StageBuilder, end: End, heat: &HubHeat) {
    let value = Value::new(Kind::Allowance, heat.opening.clearance);
    let label = format!("Clearance to slide by, {}", cx.hub_name(end));
    let entry = out.number(&format!("{}.clearance", end.key()), label, value);
    if cx.file.heat.clearance.is_some() {
        entry.second("on the diameter; as chosen").written(WRITTEN);
    } else {
        entry
            .second(
                "on the diameter; a thousandth of it, 0.05 mm (2 mil) at least (common practice)",
            )
            .working(sliding_clearance_working(heat.opening.diameter));
    }
}

fn common(cx: &Context, out: &mut StageBuilder) {
    let heat = &cx.file.heat;
    let hottest = End::BOTH.into_iter().filter_map(|end| Some(cx.heat(end)?.hot));
    let Some(hottest) = hottest.max_by(|a, b| a.si().total_cmp(&b.si())) else { return };
    if heat.loss.is_none() && heat.carried.is_none() {
        let loss = Value::new(Kind::TemperatureDifference, TemperatureInterval::from_si(LOSS_K));
        let source = Source::new("where nothing is written", "", Basis::OwnRule);
        out.number("loss", "Added for what a hub loses on its way", loss)
            .second("measure yours, or write how long it is on its way")
            .written(source);
    }
    for end in End::BOTH {
        if let Some(metal) = cx.hub_metal(end).filter(|metal| metal.heating_limit.is_some()) {
            out.note_once(format!("Usual limit for {}: {}.", metal.name, metal.heating_source));
        }
    }
    if cx.file.machines.ambient.is_none() {
        out.missing("machines.ambient", "temperature of the place");
    }
    for (whose, figures) in [("hubs", &heat.assume.hub), ("shafts", &heat.assume.shaft)] {
        if !figures.expansions.is_empty() && rows(figures).is_none() {
            out.note(format!("The {whose}’ expansion by temperature is left out: every row needs its temperature and its mean, no two the same temperature, and a hotter one must be larger."));
        }
    }
    for name in &heat.seals_left {
        if tables::seals::seal(name).is_none() {
            out.note(format!("“{name}” is not a seal material that is known here: take it off, or ask its maker how hot it may get."));
        }
    }
    warming::notes(cx, out, hottest);
}
