//! A try-out: seconds in hand for temperatures that nobody has entered, quick enough to follow a
//! slider. Nothing of it goes into the job.

use quantities::{Kind, Physical, System, ThermodynamicTemperature, Value};
use thermal::{Effort, HotHub};

use super::super::drawings::{Closing, heat};
use super::super::sizes::capital;
use super::super::{Context, Depth, site};
use super::bench::why_not;
use super::{ambient, limit, seconds};
use crate::Job;
use crate::file::End;

/// What to try on one hub; `None` for a temperature that the plan has.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Trying {
    /// "driver" or "driven".
    pub end: String,
    /// The hub as it comes to the shaft, in the units of the page.
    pub hub: Option<f64>,
    /// The shaft, in the units of the page.
    pub shaft: Option<f64>,
}

/// A temperature that can be turned, in whole degrees of the page's units.
#[derive(Clone, Debug, PartialEq)]
pub struct Dial {
    /// The lowest.
    pub least: f64,
    /// The highest.
    pub most: f64,
    /// Where it stands.
    pub stands: f64,
    /// "°C".
    pub unit: &'static str,
}

/// A hub that is heated, and what can be tried on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Tried {
    /// "Motor hub".
    pub name: String,
    /// "driver".
    pub end: &'static str,
    /// The hub as it comes to the shaft.
    pub hub: Dial,
    /// The shaft.
    pub shaft: Dial,
    /// What came of it, for the hub that was tried.
    pub outcome: Option<Outcome>,
}

/// What a try-out came to.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// Low, likely and high, in words; or why there is no answer.
    pub seconds: Result<[String; 3], String>,
    /// A limit that the hub would be over.
    pub over: Option<String>,
    /// Its clearance against time.
    pub closing: Option<Closing>,
}

/// The coldest shaft that can be tried, and the hottest hub (K): liquid nitrogen's reach is another
/// calculation's, and few hubs may be hotter.
const COLDEST_K: f64 = 195.15;
const HOTTEST_K: f64 = 623.15;
/// How far above the plan's own temperature the hub's dial goes (K).
const ABOVE_K: f64 = 120.0;

/// The hubs that are heated, and seconds in hand of the one that is tried.
pub fn try_heat(job: &Job, system: System, trying: &Trying) -> Vec<Tried> {
    let ruled = site::ruled(&job.file);
    let cx = Context::new(&ruled, system, Depth::Quick);
    End::BOTH.into_iter().filter_map(|end| tried(&cx, end, trying)).collect()
}

fn tried(cx: &Context, end: End, trying: &Trying) -> Option<Tried> {
    let (_, planned) = seconds::asked(cx, end)?;
    let chosen = Some(trying).filter(|trying| trying.end == end.key());
    let room = ambient(cx).si();
    let (hub_k, shaft_k) = (planned.hub_temperature.si(), planned.shaft_temperature.si());
    let most = (hub_k + ABOVE_K).min(HOTTEST_K).max(hub_k);
    let hub = dial(cx.system, [room.min(hub_k), most, hub_k], chosen.and_then(|t| t.hub));
    let shaft = [COLDEST_K.min(shaft_k), room.max(shaft_k), shaft_k];
    let shaft = dial(cx.system, shaft, chosen.and_then(|t| t.shaft));
    let asked = HotHub {
        hub_temperature: kelvin(cx.system, hub.stands),
        shaft_temperature: kelvin(cx.system, shaft.stands),
        effort: Effort::Quick,
        ..planned
    };
    let outcome = chosen.map(|_| outcome(cx, end, &asked));
    Some(Tried { name: capital(&cx.hub_name(end)), end: end.key(), hub, shaft, outcome })
}

fn outcome(cx: &Context, end: End, asked: &HotHub) -> Outcome {
    let shown = |kind, si| Value { kind, si, plus_minus: None }.show(cx.system);
    let over = limit(cx, end).filter(|(limit, _)| asked.hub_temperature > *limit);
    let over = over.map(|(limit, whose)| {
        format!("Over its limit of {}: {whose}.", shown(Kind::Temperature, limit.si()))
    });
    match asked.in_hand() {
        Ok(found) => {
            let contact = found.contact;
            let times = [contact.low, contact.likely, contact.high];
            let closing = heat::closes(cx, end, &contact, &found.curve, &found.tight);
            let seconds = Ok(times.map(|time| shown(Kind::Time, time.si())));
            Outcome { seconds, over, closing: Some(closing) }
        }
        Err(error) => {
            let seconds = Err(format!("No seconds in hand: {}.", why_not(&error)));
            Outcome { seconds, over, closing: None }
        }
    }
}

/// Whole degrees between the ends, where it was turned to, or where the plan stands.
fn dial(system: System, [least, most, stands]: [f64; 3], turned: Option<f64>) -> Dial {
    let unit = Kind::Temperature.unit(system);
    let [least, most] = [unit.from_si(least).floor(), unit.from_si(most).ceil()];
    let turned = turned.filter(|degrees| degrees.is_finite());
    let stands = turned.unwrap_or_else(|| unit.from_si(stands).round()).clamp(least, most);
    Dial { least, most, stands, unit: unit.name() }
}

fn kelvin(system: System, degrees: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::from_si(Kind::Temperature.unit(system).to_si(degrees))
}
