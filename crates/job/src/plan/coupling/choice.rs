//! Which kinds would suit this drive, and why each does or does not, side by side.
//!
//! No selection from a catalogue: it weighs nothing against anything, and names no size.

use couplings::duty::{MANY_STARTS, all_reasons};
use couplings::kind::{Duty, Load, Need, Reason, Speaks};
use couplings::service::usual;
use couplings::{Kind, Question, kinds};
use quantities::{Measured, System, Whole};
use serde::Serialize;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::super::{Context, Missing};
use super::about::{Trait, like};

/// All kinds beside each other, for what this drive asks.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Choice {
    /// What the drive asks, and where it is from.
    pub asked: Vec<Trait>,
    /// What it may ask and nobody has said.
    pub open: Vec<Missing>,
    /// What is asked, in a few words each: the heads of the answers of every kind.
    pub questions: Vec<&'static str>,
    /// The kinds.
    pub kinds: Vec<KindRow>,
}

/// One kind.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct KindRow {
    /// As it is written in a job.
    pub kind: &'static str,
    /// As a heading.
    pub title: &'static str,
    /// True for the kind of this job.
    pub chosen: bool,
    /// What it is, in one sentence.
    pub says: &'static str,
    /// What it is like, in its usual form; the same traits in the same order for all.
    pub like: Vec<Trait>,
    /// Its answer to each of the questions, in a word: "for", "against", "both", "neither", "maker".
    pub answers: Vec<&'static str>,
    /// What speaks for it on this drive.
    pub pros: Vec<&'static str>,
    /// What speaks against it.
    pub cons: Vec<&'static str>,
}

/// Above this an elastomer ages: common practice.
const HOT_C: f64 = 80.0;

pub(in crate::plan) fn choice(cx: &Context) -> Choice {
    let asks = Asks::of(cx);
    let row = |kind: &&'static dyn Kind| row(cx, *kind, &asks.duty);
    let questions = Question::asked_by(&asks.duty).map(Question::says).collect();
    Choice {
        questions,
        kinds: kinds().iter().map(row).collect(),
        asked: asks.asked,
        open: asks.open,
    }
}

fn row(cx: &Context, kind: &'static dyn Kind, duty: &Duty) -> KindRow {
    let usual = &kind.forms()[0];
    let chosen = cx.kind.is_some_and(|own| own.name() == kind.name());
    let form = cx.form.filter(|_| chosen).unwrap_or(usual);
    let reasons: Vec<Reason> = all_reasons(kind, form, duty);
    let answer = |question: Question| question.answer(kind, form, duty).says();
    let that = |speaks| {
        let reasons = reasons.iter().filter(move |reason| reason.speaks == speaks);
        reasons.map(|reason| reason.text).collect()
    };
    KindRow {
        kind: kind.name(),
        title: kind.title(),
        chosen,
        says: kind.says(),
        like: like(kind, form, cx.system),
        answers: Question::asked_by(duty).map(answer).collect(),
        pros: that(Speaks::For),
        cons: that(Speaks::Against),
    }
}

/// What the drive asks, as far as anybody said or it follows.
struct Asks {
    duty: Duty,
    asked: Vec<Trait>,
    open: Vec<Missing>,
}

impl Asks {
    fn of(cx: &Context) -> Self {
        let mut found = Self { duty: Duty::default(), asked: Vec::new(), open: Vec::new() };
        let asks = &cx.file.machines.asks;
        found.load(cx);
        found.speed(cx);
        found.duty.offset = found.need("offset", "shafts stay offset while running", asks.offset);
        let moves = "a shaft moves along its axis while running";
        found.duty.end_movement = found.need("end_movement", moves, asks.end_movement);
        let grease = "it can be stopped and opened for grease";
        found.duty.grease_service = found.need("grease_service", grease, asks.grease_service);
        found.heat(cx);
        let damping = "torsional vibration must be damped";
        found.duty.damping = found.need("damping", damping, asks.damping);
        found.starts(cx);
        found
    }

    fn said(&mut self, what: &'static str, says: impl Into<String>) {
        self.asked.push(Trait { what, says: says.into() });
    }

    fn open(&mut self, key: &str, what: &str) {
        let place = format!("machines.asks.{key}");
        self.open.push(Missing { place, what: format!("whether {what}") });
    }

    fn need(&mut self, key: &str, what: &'static str, entered: Option<bool>) -> Option<Need> {
        match entered {
            Some(yes) => self.said(what, if yes { "yes" } else { "no" }),
            None => self.open(key, what),
        }
        entered.map(Need::from)
    }

    fn load(&mut self, cx: &Context) {
        let machines = &cx.file.machines;
        if let Some(load) = machines.asks.load {
            self.said("load", format!("{}, as entered", load.says()));
            self.duty.load = Some(load);
            return;
        }
        let usual = usual(&machines.driver.sort, &machines.driven.sort);
        let Some(usual) = usual else {
            let place = "machines.asks.load".to_owned();
            self.open.push(Missing { place, what: "how the load runs".to_owned() });
            return;
        };
        let [least, most] = usual.loads.map(Load::says);
        let span = if least == most { most.to_owned() } else { format!("{least} to {most}") };
        self.said("load", format!("{span}, from what is driven ({})", usual.source));
        self.duty.load = Some(usual.loads[1]);
    }

    fn speed(&mut self, cx: &Context) {
        if let Some(speed) = &cx.file.machines.speed {
            self.said("speed", speed.shown().show(cx.system));
            self.duty.speed = Some(speed.value());
        }
    }

    /// What follows from the machines: torque that turns round, many starts, a rotor that floats.
    fn starts(&mut self, cx: &Context) {
        let machines = &cx.file.machines;
        match machines.reversing {
            Some(yes) => self.said("torque turns round", if yes { "yes" } else { "no" }),
            None => self.open.push(Missing {
                place: "machines.reversing".to_owned(),
                what: "whether the torque turns round".to_owned(),
            }),
        }
        self.duty.reversing = machines.reversing.map(Need::from);
        if let Some(Whole(starts)) = machines.starts {
            self.said("starts in an hour", starts.to_string());
            self.duty.many_starts = Some(Need::from(starts > MANY_STARTS));
        }
        if cx.file.gap.end_float.is_some() {
            self.said("a rotor floats along its axis", "yes, by its end float");
            self.duty.end_float = Some(Need::Yes);
        }
    }

    fn heat(&mut self, cx: &Context) {
        let what = match cx.system {
            System::Metric => "it stands in heat, above about 80 °C",
            System::Inch => "it stands in heat, above about 175 °F",
        };
        let ambient = cx.file.machines.ambient.as_ref().map(Measured::value);
        self.duty.hot_place = match (cx.file.machines.asks.hot_place, ambient) {
            (None, Some(ambient)) => {
                let hot = ambient.get::<degree_celsius>() > HOT_C;
                let says = if hot { "yes, by the place" } else { "no, by the place" };
                self.said(what, says);
                Some(Need::from(hot))
            }
            (entered, _) => self.need("hot_place", what, entered),
        };
    }
}
