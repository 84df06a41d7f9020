//! Ways to get a hub off, side by side: which of them hub, shaft end and place allow, and what each
//! would take.

use mechanics::pull::screw_torque;
use quantities::{Force, Kind, Physical, Pressure, Value};
use serde::Serialize;
use tables::nut_factor::{Threads, nut_factor};
use tables::pullers::{DILATION, PUMP_MPA, SCREW_OVER_SHAFT};

use super::super::coupling::Trait;
use super::super::{Context, Depth, Missing};
use super::{Found, WARMER_K, hold, hot, margin, puller_words};
use crate::file::{End, Hold};

/// The ways for one hub.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HubOff {
    /// Which end: "driver", "driven".
    pub end: &'static str,
    /// "motor hub".
    pub hub: String,
    /// The ways, gentlest first.
    pub ways: Vec<Way>,
}

/// One way.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Way {
    /// A name that stays: "puller".
    pub id: &'static str,
    /// "puller, cold".
    pub name: &'static str,
    /// Whether hub, shaft end and place allow it.
    pub may: May,
    /// What it takes.
    pub takes: Vec<Trait>,
    /// Why it cannot be.
    pub bars: Vec<String>,
    /// What to mind.
    pub mind: &'static str,
    /// What nobody has said yet, and decides.
    pub open: Vec<Missing>,
}

/// Whether a way is allowed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum May {
    /// Nothing that was said stands against it.
    Yes,
    /// Something does.
    No,
    /// Something that decides is not known.
    Open,
}

impl May {
    /// In a few words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Yes => "can be",
            Self::No => "cannot be",
            Self::Open => "not known yet",
        }
    }
}

/// Both hubs' ways; a hub that slides has none to choose.
pub(in crate::plan) fn ways(cx: &Context) -> Vec<HubOff> {
    if cx.kind.is_none() {
        return Vec::new();
    }
    let loose =
        |end: &End| cx.fit(*end).interference.as_ref().is_some_and(|fit| fit.value.si() < 0.0);
    let hub = |end: End| HubOff {
        end: end.key(),
        hub: cx.hub_name(end),
        ways: vec![
            pulled(cx, end),
            pulled_warm(cx, end),
            heated(cx, end),
            oiled(cx, end),
            cut(cx, end),
        ],
    };
    End::BOTH.into_iter().filter(|end| !loose(end)).map(hub).collect()
}

/// A way being put together.
struct Draft<'a> {
    cx: &'a Context<'a>,
    end: End,
    way: Way,
}

impl<'a> Draft<'a> {
    fn new(
        cx: &'a Context<'a>,
        end: End,
        (id, name): (&'static str, &'static str),
        mind: &'static str,
    ) -> Self {
        let (takes, bars, open) = (Vec::new(), Vec::new(), Vec::new());
        Self { cx, end, way: Way { id, name, may: May::Open, takes, bars, mind, open } }
    }

    fn takes(&mut self, what: &'static str, says: impl Into<String>) {
        self.way.takes.push(Trait { what, says: says.into() });
    }

    fn bar(&mut self, why: impl Into<String>) {
        self.way.bars.push(why.into());
    }

    fn open(&mut self, place: &str, what: impl Into<String>) {
        self.way.open.push(Missing { place: place.to_owned(), what: what.into() });
    }

    /// Barred by a no, open while nobody has said.
    fn wants(&mut self, answer: Option<bool>, place: &str, what: &str, why_not: &str) {
        match answer {
            Some(true) => {}
            Some(false) => self.bar(why_not),
            None => self.open(place, what),
        }
    }

    fn done(mut self) -> Way {
        self.way.may = match (self.way.bars.is_empty(), self.way.open.is_empty()) {
            (false, _) => May::No,
            (true, false) => May::Open,
            (true, true) => May::Yes,
        };
        self.way
    }

    fn show(&self, value: Value) -> String {
        value.show(self.cx.system)
    }

    fn force(&self, force: Force) -> String {
        self.show(Value::new(Kind::Force, force))
    }

    fn hold(&self) -> &'a Hold {
        self.cx.file.removal.at(self.end)
    }

    fn place(&self, key: &str) -> String {
        format!("removal.{}.{key}", self.end.key())
    }

    fn found(&self) -> Option<&'a Found> {
        self.cx.removal(self.end)
    }

    /// A puller needs a hold, room, and a shaft end that takes the push.
    fn wants_a_puller(&mut self) {
        let hold = self.hold();
        let name = self.cx.hub_name(self.end);
        match (hold.puller_holes, hold.jaws_hold) {
            (Some(true), _) | (_, Some(true)) => {}
            (Some(false), Some(false)) => self.bar("neither puller holes nor a hold for jaws"),
            (None, _) => {
                self.open(&self.place("puller_holes"), format!("puller holes in the {name}"));
            }
            (Some(false), None) => {
                self.open(&self.place("jaws_hold"), format!("hold for jaws behind the {name}"));
            }
        }
        self.wants(
            hold.end_takes_push,
            &self.place("end_takes_push"),
            "whether the shaft’s end takes the push",
            "the shaft’s end cannot take the push",
        );
        self.wants(
            hold.room,
            &self.place("room"),
            "room in front of the hub",
            "no room for a puller: move a machine first",
        );
    }

    fn wants_heat(&mut self) {
        self.wants(
            self.cx.file.removal.heat_allowed,
            "removal.heat_allowed",
            "whether heat may be used at the machine",
            "no heat may be used at the machine",
        );
    }

    fn fit_not_known(&mut self) {
        if self.found().is_none() {
            let end = self.end.key();
            self.open(&format!("sizes.{end}"), "fit and hub, for the force it takes");
        }
    }
}

fn pulled(cx: &Context, end: End) -> Way {
    let mind =
        "Load it, wait, and look; a stop on the shaft, nobody in line. Never harder than it bears.";
    let mut draft = Draft::new(cx, end, ("puller", "puller, cold"), mind);
    draft.wants_a_puller();
    draft.fit_not_known();
    let Some(found) = draft.found() else { return draft.done() };
    let force = found.pull.force;
    draft.takes("pull", format!("{} to {}", draft.force(force.low), draft.force(force.high)));
    class(&mut draft, force.high);
    at_hand(&mut draft, force.high);
    screw(&mut draft, force.high);
    draft.done()
}

fn pulled_warm(cx: &Context, end: End) -> Way {
    let mind = "Load the puller first, then heat the hub fast and all round, never the jaws; the shaft follows.";
    let mut draft = Draft::new(cx, end, ("heated", "puller, with heat"), mind);
    draft.wants_a_puller();
    draft.wants_heat();
    draft.fit_not_known();
    let Some(found) = draft.found() else { return draft.done() };
    if let Some(force) = cx.hot(end).and_then(hot::left) {
        let left = if force > Force::default() {
            format!("{} at best, with the heat below", draft.force(force))
        } else {
            "nothing: the heat below opens it".to_owned()
        };
        draft.takes("pull left", left);
        at_hand(&mut draft, force);
        return draft.done();
    }
    if !is_rough(cx, end) {
        draft.takes("pull left", "worked out on the full plan");
        return draft.done();
    }
    let force = found.warm.force.high;
    let rise = draft.show(warmer());
    draft.takes(
        "pull left",
        format!(
            "about {} if all of the hub is {rise} warmer than its shaft: a rough figure",
            draft.force(force)
        ),
    );
    at_hand(&mut draft, force);
    draft.done()
}

fn heated(cx: &Context, end: End) -> Way {
    let mind = "Even heat, a way clear to lift it off, and quick: once the shaft is warm too, the chance is gone.";
    let mut draft = Draft::new(cx, end, ("heat", "heat alone"), mind);
    draft.wants_heat();
    draft.fit_not_known();
    match cx.hot(end) {
        Some(found) => {
            let (takes, bar) = hot::in_words(cx, found);
            draft.takes("heat", takes);
            draft.way.bars.extend(bar);
        }
        None if cx.file.removal.heat_allowed == Some(false) => {}
        None if tapered(cx, end) => draft.open(
            &format!("sizes.{}.taper", end.key()),
            "what heat does on a taper, which is not reckoned: have the puller loaded",
        ),
        None if cx.depth == Depth::Quick => draft.takes("heat", "worked out on the full plan"),
        None => draft.open(
            &format!("coupling.{}.material", end.key()),
            "outline and metal of hub and shaft, for the heat that it takes",
        ),
    }
    draft.done()
}

fn tapered(cx: &Context, end: End) -> bool {
    cx.taper(end).is_some() || cx.file.removal.at(end).tapered == Some(true)
}

/// True where the finite elements have no answer for what heat leaves, and never will.
pub(super) fn is_rough(cx: &Context, end: End) -> bool {
    let hot = || cx.hot(end).and_then(hot::left);
    tapered(cx, end) || (cx.depth == Depth::Full && hot().is_none())
}

/// How much warmer than its shaft, as it is shown.
pub(super) fn warmer() -> Value {
    Value { kind: Kind::TemperatureDifference, ..Value::number(WARMER_K) }
}

fn oiled(cx: &Context, end: End) -> Way {
    let mind = "Stop nut or plate first: on a taper the hub jumps. Bleed, raise in steps, stay out of line, let down before touching.";
    let mut draft = Draft::new(cx, end, ("oil", "oil under pressure"), mind);
    let hold = draft.hold();
    draft.wants(
        hold.oil_port,
        &draft.place("oil_port"),
        "whether hub or shaft has a port for oil",
        "neither hub nor shaft has a port for oil",
    );
    if hold.tapered == Some(false) {
        draft.takes("then", "a pull as well: on a straight seat oil only floats it");
    }
    let Some(found) = draft.found() else { return draft.done() };
    let [low, high] = [DILATION.0, DILATION.1].map(|times| found.pressure * times);
    let shown = |pressure: Pressure| Value::new(Kind::Pressure, pressure);
    draft.takes(
        "oil at",
        format!(
            "{} to {}: {} to {} times the pressure of the fit ({})",
            shown(low).digits(cx.system),
            draft.show(shown(high)),
            DILATION.0,
            DILATION.1,
            tables::pullers::SOURCE
        ),
    );
    if high.si() > PUMP_MPA * 1e6 {
        draft.bar("more than common hand pumps give");
    }
    draft.done()
}

fn cut(cx: &Context, end: End) -> Way {
    let mind = "Last: along the key seat, stop short of the shaft, split the rest with a wedge. The sling holds both halves.";
    let mut draft = Draft::new(cx, end, ("cut", "cutting the hub"), mind);
    draft.wants(
        draft.hold().scrap,
        &draft.place("scrap"),
        "whether the hub is scrap",
        "the hub is to be used again",
    );
    draft.wants_heat_to_cut();
    draft.done()
}

impl Draft<'_> {
    /// Grinding throws sparks: where no heat is allowed it is sawn or milled.
    fn wants_heat_to_cut(&mut self) {
        if self.cx.file.removal.heat_allowed == Some(false) {
            self.takes("how", "sawn or milled: sparks are heat as well");
        }
    }
}

/// The smallest class of pullers that bears it.
fn class(draft: &mut Draft, pull: Force) {
    let drive = hold::drive(draft.cx);
    match tables::pullers::puller_for(pull * margin(draft.cx), drive) {
        Some(puller) => draft.takes(
            "puller",
            format!(
                "{}, {} ({})",
                hold::drive_words(drive),
                puller_words(draft.cx, &puller, pull),
                tables::pullers::SOURCE
            ),
        ),
        None => draft.bar("no common puller bears it with its margin: heat, or oil"),
    }
}

/// The puller at hand against what it would have to bear.
fn at_hand(draft: &mut Draft, pull: Force) {
    let Some(puller) = hold::at_hand(draft.cx) else { return };
    let margin = margin(draft.cx);
    if puller < pull * margin {
        let bears = draft.force(puller);
        draft.bar(format!("the puller at hand, {bears}, is not {margin} times the pull"));
    }
}

fn screw(draft: &mut Draft, pull: Force) {
    let Some(screw) = hold::screw(draft.cx) else { return };
    let greased = nut_factor(Threads::Lubricated);
    if let Ok(found) = screw_torque(greased, pull, screw) {
        let torque = draft.show(Value::new(Kind::Torque, found.torque));
        draft.takes("screw", format!("{torque} on the screw, well greased"));
    }
    if let Some(shaft) = draft.cx.joint_diameter(draft.end)
        && screw < shaft * SCREW_OVER_SHAFT
    {
        draft.bar("a screw under half the shaft’s diameter (a tool-trade rule)");
    }
}
