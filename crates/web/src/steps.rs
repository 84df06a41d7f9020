//! Steps with their boxes, hold points, cautions and the kit to bring.

use axum::Form;
use axum::extract::{Path, Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use job::plan::{Caution, KitItem, Piece, Step};
use job::{Act, Stage};
use maud::{Markup, html};
use records::{JobId, new_entry};
use serde::Deserialize;

use crate::frame::{Cover, Part, answer};
use crate::hand::Hand;
use crate::head::head;
use crate::opened::Opened;
use crate::spine::spine;
use crate::{PageError, Shop, frame, time, write};

/// Whether the flow of heat is to be worked out too.
#[derive(Deserialize)]
pub(crate) struct Full {
    full: Option<String>,
}

/// The whole order of work.
pub(crate) async fn show(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    Query(Full { full }): Query<Full>,
    hand: Hand,
    part: Part,
) -> Result<Response, PageError> {
    let opened = match full {
        Some(_) => shop.open_full(id, hand.units).await?,
        None => shop.open(id, hand.units).await?,
    };
    let here = format!("/jobs/{id}/steps");
    let cover = Cover { hand: &hand, system: opened.system, here: &here };
    Ok(answer(part, "Order of work", &cover, &page(&shop, &opened, &here)))
}

fn page(shop: &Shop, opened: &Opened, here: &str) -> Markup {
    let on: Vec<&Step> = opened.plan.on.iter().collect();
    html! {
        div.book id="book" {
            (spine(opened, None))
            main.leaf id="page" tabindex="-1" {
                (head(opened, "Order of work", None, &[]))
                div.sides.wide-left {
                    div.left {
                        @for caution in before_all(&opened.plan.cautions) { (self::caution(caution)) }
                        (steps(shop, opened, &on, here))
                        @if on.is_empty() { p.advice { "Choose the kind of coupling; its steps follow from it." } }
                    }
                    div.right {
                        @if opened.has_more_to_say() { (frame::later(here)) }
                        (kit(&opened.plan.kit))
                        p { a.button.quiet href={ "/jobs/" (opened.id) "/removal" } { "Taking it off" } }
                    }
                }
            }
        }
    }
}

fn before_all(cautions: &[Caution]) -> impl Iterator<Item = &Caution> {
    cautions.iter().filter(|caution| caution.stage.is_none())
}

/// What is to be done at a stage: its cautions, then its steps.
pub(crate) fn at_stage(shop: &Shop, opened: &Opened, stage: Stage, here: &str) -> Markup {
    let plan = &opened.plan;
    let cautions: Vec<&Caution> =
        plan.cautions.iter().filter(|caution| caution.stage == Some(stage)).collect();
    let steps: Vec<&Step> = match stage {
        Stage::Removal => plan.off.iter().collect(),
        _ => plan.on.iter().filter(|step| step.stage == stage).collect(),
    };
    html! {
        @if !cautions.is_empty() || !steps.is_empty() {
            section.do {
                @for caution in cautions { (self::caution(caution)) }
                (self::steps(shop, opened, &steps, here))
            }
        }
    }
}

fn caution(caution: &Caution) -> Markup {
    html! {
        div.caution role="note" {
            b { "CAUTION" }
            ul { @for order in &caution.orders { li { (order) } } }
        }
    }
}

fn steps(shop: &Shop, opened: &Opened, steps: &[&Step], here: &str) -> Markup {
    let done = steps.iter().filter(|step| step.done.is_some()).count();
    let now = steps.iter().position(|step| step.done.is_none());
    html! {
        @if !steps.is_empty() {
            form.steps method="post" action={ "/jobs/" (opened.id) "/steps" } data-part="book" {
                input type="hidden" name="back" value=(here);
                div.h { h2 { "Steps" } small { (done) " of " (steps.len()) " done, in order" } }
                ol {
                    @for (place, step) in steps.iter().enumerate() {
                        (one(shop, opened, step, place + 1, now == Some(place)))
                    }
                }
            }
        }
    }
}

fn one(shop: &Shop, opened: &Opened, step: &Step, number: usize, now: bool) -> Markup {
    let (name, says) = if step.done.is_some() { ("untick", "done") } else { ("tick", "not done") };
    let id = format!("s-{}", step.id.replace('.', "-"));
    html! {
        li.step.done[step.done.is_some()].now[now] id=(id) {
            button.box id={ "b-" (id) } type="submit" name=(name) value=(step.id) aria-pressed=(step.done.is_some())
                aria-label={ "Step " (number) ", " (says) ": " (step.title_text()) } {}
            div {
                h3 { (number) ". " (pieces(&step.title)) }
                @if !step.detail.is_empty() { p { (pieces(&step.detail)) } }
                @if !step.needs.is_empty() { p.needs { "To hand: " (step.needs.join(", ")) } }
            }
            @if let Some(done) = &step.done { span.by { (time::done(&done.at, shop.zone())) " " (done.by) } }
        }
        @if let Some(hold) = &step.hold { li { (self::hold(shop, opened, step, hold)) } }
    }
}

/// A hold point: another hand agrees before the next step.
fn hold(shop: &Shop, opened: &Opened, step: &Step, words: &str) -> Markup {
    let name = hold_name(&step.id);
    let agreed = opened.job.ticks.get(&name);
    html! {
        div.hold {
            span { b { "HOLD" } " " (words) }
            @match agreed {
                Some(done) => { span.by { "agreed " (time::done(&done.at, shop.zone())) " " (done.by) } }
                None => {
                    button.button.quiet type="submit" name="tick" value=(name)
                        aria-label={ "Agree: " (words) } { "Agree" }
                }
            }
        }
    }
}

/// A hold point is ticked apart from the step that it follows.
fn hold_name(step: &str) -> String {
    format!("{step}.hold")
}

fn pieces(pieces: &[Piece]) -> Markup {
    html! {
        @for piece in pieces {
            @match piece {
                Piece::Words(text) => (text),
                Piece::Number(text) => b { (text) },
                Piece::Missing(text) => span.missing { (text) },
            }
        }
    }
}

/// Tools and supplies.
fn kit(kit: &[KitItem]) -> Markup {
    html! {
        @if !kit.is_empty() {
            section {
                div.h { h2 { "To bring" } }
                ul.kit { @for item in kit { li { span { (item.what) } small { (item.why) } } } }
            }
        }
    }
}

/// A box that was pressed.
#[derive(Deserialize)]
pub(crate) struct Pressed {
    tick: Option<String>,
    untick: Option<String>,
    #[serde(default)]
    back: String,
}

/// Ticks a step, or takes its tick back.
pub(crate) async fn tick(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    hand: Hand,
    Form(pressed): Form<Pressed>,
) -> Result<impl IntoResponse, PageError> {
    let opened = shop.open(id, hand.units).await?;
    let step = pressed.tick.as_ref().or(pressed.untick.as_ref()).ok_or(PageError::NoPage)?;
    let is_tick = |line: &&job::Line| {
        line.replaced_by.is_none()
            && matches!(&line.entry.act, Act::Tick { step: one } if one == step)
    };
    let ticked = opened.job.log.iter().find(is_tick);
    let act = match (ticked, &pressed.untick) {
        (Some(line), Some(_)) => Some(write::back(&opened.job, line)),
        (None, None) => Some(Act::Tick { step: step.clone() }),
        _ => None,
    };
    if let Some(act) = act {
        shop.records().append(id, &new_entry(&hand.by, act)).await?;
    }
    let within = format!("/jobs/{id}/");
    let back =
        if pressed.back.starts_with(&within) { pressed.back } else { format!("{within}steps") };
    Ok(Redirect::to(&format!("{back}#s-{}", step.trim_end_matches(".hold").replace('.', "-"))))
}
