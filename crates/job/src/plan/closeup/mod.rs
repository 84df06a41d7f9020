//! Close-up: bolts and their order, grease or none, what goes in new.

mod grease;
mod parts;

use couplings::closeup::{CloseUpError, From, OnThisJob, Tightening, tightening};
use couplings::kind::Bolting;
use quantities::{Kind, Limits, Measured, Physical, Torque, Value};

use super::stage_builder::{StageBuilder, WRITTEN};
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::Closeup;

/// What closing up takes.
#[derive(Clone, Debug, Default)]
pub(super) struct Found {
    /// Torque, passes and order; `None` where there are no bolts or the sheet says too little.
    pub tightening: Option<Tightening>,
    /// What is lacking for it.
    lacks: Option<CloseUpError>,
}

pub(super) fn found(cx: &Context) -> Found {
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return Found::default() };
    let closeup = &cx.file.closeup;
    let job = OnThisJob {
        threads: closeup.threads,
        prevailing: closeup.prevailing_torque.as_ref().map(Measured::value),
    };
    let sheet = &cx.file.coupling.sheet.bolts;
    let mut bolting = kind.close_up(form);
    // A form without bolts of its own has those that its maker's sheet gives it.
    if bolting.bolts == Bolting::None && (sheet.torque.is_some() || sheet.size.is_some()) {
        bolting.bolts = Bolting::IntoHub;
    }
    match tightening(sheet, &bolting, job) {
        Ok(tightening) => Found { tightening: Some(tightening), lacks: None },
        Err(lacks) => Found { tightening: None, lacks: Some(lacks) },
    }
}

impl Found {
    /// The torque to set the wrench to.
    pub fn torque(&self) -> Option<Torque> {
        self.tightening.as_ref().map(Tightening::setting)
    }
}

pub(super) use grease::{grease_words, service};

pub(super) fn stage(cx: &Context) -> StagePlan {
    let closeup = &cx.file.closeup;
    let mut out = cx.stage(Stage::Closeup, *closeup != Closeup::default());
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return out.done(cx.not_chosen()) };
    let bolting = kind.close_up(form);
    bolts(cx, &mut out);
    if cx.closeup().tightening.is_some() || bolting.bolts != Bolting::None {
        out.note(format!("Tools: {}.", bolting.tools.trim_end_matches('.')));
    } else {
        no_bolts(cx, &mut out, form);
    }
    for rule in bolting.rules {
        out.note(*rule);
    }
    grease::numbers(cx, &mut out);
    parts::numbers(cx, &mut out);
    if out.begun() && closeup.closed.is_none() {
        out.missing(
            "closeup.closed",
            "the day it was closed up: what falls due is counted from it",
        );
    }
    out.done(summary(cx))
}

fn summary(cx: &Context) -> String {
    let torque = cx
        .closeup()
        .torque()
        .map(|torque| format!("bolts to {}", Value::new(Kind::Torque, torque).show(cx.system)));
    let grease = grease_words(cx);
    let grease = if cx.kind.is_some_and(|kind| kind.lubrication().is_some()) {
        grease
    } else {
        "no grease".into()
    };
    let parts: Vec<String> =
        torque.into_iter().chain(Some(grease)).filter(|part| !part.is_empty()).collect();
    if parts.is_empty() { "torque and grease not known yet".to_owned() } else { parts.join("; ") }
}

fn bolts(cx: &Context, out: &mut StageBuilder) {
    let Some(found) = &cx.closeup().tightening else {
        if let Some(CloseUpError::Missing(field)) = &cx.closeup().lacks {
            out.missing(
                &format!("coupling.sheet.{field}"),
                "tightening torque, or size, grade and threads of the bolts",
            );
        }
        if let Some(CloseUpError::NotHeld(error)) = &cx.closeup().lacks {
            out.note(format!("{error}. Enter the torque from the maker’s sheet."));
        }
        if let Some(CloseUpError::Number(error)) = &cx.closeup().lacks {
            out.note(format!(
                "No tightening torque: {error}. Look the bolts up on the sheet again."
            ));
        }
        return;
    };
    let setting = Value::new(Kind::Torque, found.setting());
    let whose = match found.from {
        From::MakersSheet => "the maker’s sheet",
        From::Estimate { .. } => {
            "an estimate from size, grade and threads; the maker’s figure comes first"
        }
    };
    let working = found.workings().into_iter().last();
    let entry = out.number("torque", "Tighten to", setting).second(whose).key();
    match working {
        Some(working) => entry.working(working),
        None => entry.written(found.source()),
    };
    let passes: Vec<String> = found
        .passes
        .iter()
        .map(|torque| Value::new(Kind::Torque, *torque).digits(cx.system))
        .collect();
    if passes.len() > 1 {
        out.note(format!(
            "In passes: {} {}, then once round at the last until no nut moves.",
            passes.join(", "),
            setting.unit(cx.system)
        ));
    }
    if !found.order.is_empty() {
        let order: Vec<String> = found.order.iter().map(ToString::to_string).collect();
        out.note(format!(
            "Order, with the bolts counted clockwise from the top one: {}. The picture has the \
             turn of each large, and the bolt’s own number small beside it.",
            order.join(", ")
        ));
    }
    if let Some(differ) = found.threads_differ {
        let percent = (differ.preload - 1.0) * 100.0;
        out.note(format!("The sheet’s torque is for other threads than these: it would change the preload by {percent:.0} %. Bring the threads to what the sheet says."));
    }
    done(cx, out, found);
}

/// What was entered of bolts although this form has none.
fn no_bolts(cx: &Context, out: &mut StageBuilder, form: &couplings::Form) {
    let closeup = &cx.file.closeup;
    let entered = [
        (closeup.torque_done.as_ref().map(Measured::text), "torque put on"),
        (closeup.prevailing_torque.as_ref().map(Measured::text), "prevailing torque"),
    ];
    for (text, what) in entered {
        let Some(text) = text else { continue };
        out.note(format!(
            "Entered: {what}, {text}. This form, {}, has no bolts, and the sheet gives none: \
             nothing holds it against anything.",
            form.name
        ));
    }
}

/// What was put on, against what was wanted.
fn done(cx: &Context, out: &mut StageBuilder, found: &Tightening) {
    let Some(done) = &cx.file.closeup.torque_done else { return };
    let wanted = found.setting().si();
    let within = super::site::torque_within(&cx.file.site);
    let percent = Value::new(Kind::Percent, quantities::Ratio::from_si(within)).show(cx.system);
    out.number("done", "Torque put on", done.shown())
        .second(format!("within {percent} of what was wanted"))
        .written(WRITTEN)
        .judged(
            Limits::between((1.0 - within) * wanted, (1.0 + within) * wanted),
            "Slacken, and tighten again in order.",
        );
}
