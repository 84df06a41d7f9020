//! The steps of this kind, with this job's numbers put in.

use couplings::step::When;
use quantities::Length;

use super::{Context, Depth, Number, Piece, Step};
use crate::file::End;
use crate::{Job, Stage};

/// On or off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    On,
    Off,
}

impl Way {
    fn key(self) -> &'static str {
        match self {
            Self::On => "on",
            Self::Off => "off",
        }
    }
}

/// The steps of one way that this job has.
pub(super) fn steps(cx: &Context, job: &Job, numbers: &[Number], way: Way) -> Vec<Step> {
    let (Some(kind), Some(form)) = (cx.kind, cx.form) else { return Vec::new() };
    let steps = match way {
        Way::On => kind.install_steps(form),
        Way::Off => kind.removal_steps(form),
    };
    let here = steps.into_iter().filter(|step| is_for(cx, step.when));
    let mut steps: Vec<Step> = here.map(|step| filled(cx, job, numbers, way, &step)).collect();
    super::site::holds(&cx.file.site, way, &mut steps);
    steps
}

fn is_for(cx: &Context, when: When) -> bool {
    match when {
        When::Always => true,
        When::Hot(end) => !slides(cx, end),
        When::Slip(end) => slides(cx, end),
        When::EndFloat => {
            cx.file.gap.end_float.is_some() || cx.file.coupling.sheet.gap.end_float.is_some()
        }
    }
}

/// True when bore and shaft leave clearance; a fit that was not measured counts as tight.
fn slides(cx: &Context, end: End) -> bool {
    cx.fit(end).interference.as_ref().is_some_and(|fit| fit.value < Length::default())
}

fn filled(cx: &Context, job: &Job, numbers: &[Number], way: Way, step: &couplings::Step) -> Step {
    let id = format!("{}.{}", way.key(), step.id);
    Step {
        stage: step.stage,
        title: pieces(cx, numbers, step.title),
        detail: pieces(cx, numbers, &told(cx, numbers, step.detail)),
        hold: step.hold.map(str::to_owned),
        needs: needs(cx, step),
        done: job.ticks.get(&id).cloned(),
        id,
    }
}

/// A text with the sentences that this job puts in it; they may be none, and hold blanks of their own.
fn told(cx: &Context, numbers: &[Number], text: &str) -> String {
    let mut text = text.to_owned();
    let mut tell = |blank: &str, says: &dyn Fn() -> String| {
        if text.contains(blank) {
            text = text.replace(blank, &says());
        }
    };
    tell("{lineup.packs}", &|| super::lineup::packs_phrase(cx));
    for end in End::BOTH {
        let blank = format!("{{removal.{}.starting}}", end.key());
        tell(&blank, &|| super::removal::starting(cx, numbers, end));
    }
    text
}

/// Tools and supplies; no source of heat where none may be used.
fn needs(cx: &Context, step: &couplings::Step) -> Vec<String> {
    let barred = step.stage == Stage::Removal && cx.file.removal.heat_allowed == Some(false);
    let kept = step.needs.iter().filter(|need| !(barred && need.starts_with("heat source")));
    kept.map(|need| (*need).to_owned()).collect()
}

/// Words and numbers of a text with blanks such as `{gap.faces}`; machines by the names that this
/// job gives them.
fn pieces(cx: &Context, numbers: &[Number], text: &str) -> Vec<Piece> {
    let text = super::sizes::capital(&named(cx, text));
    let mut out = Vec::new();
    let mut rest = text.as_str();
    while let Some((before, after)) = rest.split_once('{') {
        let Some((blank, behind)) = after.split_once('}') else { break };
        if !before.is_empty() {
            out.push(Piece::Words(before.to_owned()));
        }
        out.push(blank_filled(cx, numbers, blank));
        rest = behind;
    }
    if !rest.is_empty() {
        out.push(Piece::Words(rest.to_owned()));
    }
    out
}

fn named(cx: &Context, text: &str) -> String {
    text.replace("{driver}", cx.name(End::Driver))
        .replace("{driven}", cx.name(End::Driven))
        .replace("{moves}", cx.name(cx.file.machines.moves))
}

fn blank_filled(cx: &Context, numbers: &[Number], blank: &str) -> Piece {
    let missing = || Piece::Missing(still_to(cx, blank).to_owned());
    if let Some(phrase) = phrase(cx, blank) {
        return if phrase.is_empty() { missing() } else { Piece::Number(phrase) };
    }
    let number = numbers.iter().find(|number| number.id == blank);
    number.and_then(|number| number.value).map_or_else(missing, |value| {
        Piece::Number(quantities::Value { plus_minus: None, ..value }.show(cx.system))
    })
}

/// What a blank waits for. The flow of heat is left out of a quick plan, so that its numbers are not
/// lacking.
fn still_to(cx: &Context, blank: &str) -> &'static str {
    let flows = blank.ends_with(".seconds")
        || (blank.starts_with("removal.") && blank.ends_with(".temperature"));
    let of_coupling = ["coupling.", "gap.", "closeup."].iter().any(|from| blank.starts_with(from));
    let from_sheet = match blank {
        "gap.faces" | "gap.packs" => cx.gap().lacks.is_some(),
        "closeup.torque" | "closeup.grease" | "coupling.mass" => true,
        _ => false,
    };
    match cx.depth {
        Depth::Quick if flows => "worked out on the full plan",
        _ if of_coupling && cx.kind.is_none() => "coupling still to choose",
        _ if from_sheet => "still to enter, from the maker’s sheet",
        _ => couplings::step::STILL_TO_MEASURE,
    }
}

/// A hub that goes on as warm as its place, over a chilled shaft.
fn cold(cx: &Context, end: End) -> Option<String> {
    let found = cx.heat(end).filter(|found| found.needs_none(cx))?;
    let at = quantities::Value::new(quantities::Kind::Temperature, found.hot);
    Some(format!("no more than {}: the chilled shaft is enough", at.show(cx.system)))
}

/// Blanks that are more than one number; empty while there is nothing to say.
fn phrase(cx: &Context, blank: &str) -> Option<String> {
    match blank {
        "lineup.moves" => Some(super::lineup::moves_phrase(cx)),
        "closeup.grease" => Some(super::closeup::grease_words(cx)),
        "heat.driver.temperature" => cold(cx, End::Driver),
        "heat.driven.temperature" => cold(cx, End::Driven),
        _ => None,
    }
}
