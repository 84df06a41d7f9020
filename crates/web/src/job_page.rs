//! The job's own page: the way through, the drawing, what is missing, what was written last.

use axum::Form;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use job::plan::{Missing, StagePlan};
use job::{Act, Stage};
use maud::{Markup, html};
use records::{JobId, new_entry};
use serde::Deserialize;

use crate::frame::{Cover, Part, answer};
use crate::hand::Hand;
use crate::head::{head, link};
use crate::marks::{self, Stamped};
use crate::opened::{Opened, Standing};
use crate::spine::address;
use crate::{PageError, Shop, drawing, dues, log};

/// Entries that the page shows.
const WRITTEN_LAST: usize = 8;

/// The page.
pub(crate) async fn show(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    hand: Hand,
    part: Part,
) -> Result<Response, PageError> {
    let opened = shop.open(id, hand.units).await?;
    let here = format!("/jobs/{id}");
    let cover = Cover { hand: &hand, system: opened.system, here: &here };
    Ok(answer(part, opened.title(), &cover, &book(&shop, &opened)))
}

fn book(shop: &Shop, opened: &Opened) -> Markup {
    let plan = &opened.plan;
    let missing: Vec<&Missing> = plan.missing().collect();
    html! {
        div.book.no-spine id="book" {
            main.leaf id="page" tabindex="-1" {
                (head(opened, opened.title(), plan.verdict(), &missing))
                div.sides.wide-left {
                    div.left { (way(opened)) (papers(opened)) (still_missing(opened, &missing)) (dues::of_job(&plan.dues)) }
                    div.right {
                        @if let Some(drawing) = drawing::section(plan) { (drawing::show(&drawing)) }
                        (set_aside(opened))
                        section {
                            div.h { h2 { "Written last" } }
                            (log::last(shop, opened, WRITTEN_LAST))
                        }
                    }
                }
            }
        }
    }
}

fn way(opened: &Opened) -> Markup {
    html! {
        section.way {
            div.h { h2 { "The way through" } small { "the worst word of each stage stands beside it" } }
            ol { @for stage in &opened.plan.stages { li { (stage_row(opened, stage)) } } }
        }
    }
}

fn stage_row(opened: &Opened, stage: &StagePlan) -> Markup {
    let missing = stage.missing.len();
    html! {
        a href=(address(opened, stage.stage)) {
            (marks::stage(Standing::of(stage)))
            b { (stage.stage.title()) }
            span.sum {
                (stage.summary)
                @if missing > 0 && !stage.summary.contains("still") {
                    @if !stage.summary.is_empty() { "; " }
                    b { (missing) " still to enter" }
                }
            }
            span.word { @if let Some(verdict) = stage.verdict() { (marks::stamp(verdict, Stamped::Small)) } }
        }
    }
}

fn papers(opened: &Opened) -> Markup {
    let job = format!("/jobs/{}", opened.id);
    let steps = &opened.plan.on;
    let done = steps.iter().filter(|step| step.done.is_some()).count();
    html! {
        div.presses {
            a.button href={ (job) "/card.pdf" } { "Job card (PDF)" }
            a.button.quiet href={ (job) "/steps" } {
                "Order of work" @if !steps.is_empty() { ", " (done) " of " (steps.len()) " done" }
            }
            a.button.quiet href={ (job) "/drawing" } { "Drawing" }
            a.button.quiet href={ (job) "/sheet" } { "Maker’s sheet" }
            a.button.quiet href={ (job) "/rules" } { "Plant rules" }
            a.button.quiet href={ (job) "/job.toml" } { "Job file" }
        }
    }
}

/// The coupling on a page of its own, every part lettered.
pub(crate) async fn drawing(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    hand: Hand,
    part: Part,
) -> Result<Response, PageError> {
    let opened = shop.open(id, hand.units).await?;
    let here = format!("/jobs/{id}/drawing");
    let cover = Cover { hand: &hand, system: opened.system, here: &here };
    let book = html! {
        div.book.no-spine id="book" {
            main.leaf id="page" tabindex="-1" {
                (head(&opened, "Drawing", None, &[]))
                @match drawing::whole_section(&opened.plan) {
                    Some(figure) => (drawing::show_whole(&figure)),
                    None => p.advice {
                        @if let Some(why) = drawing::refused(&opened.plan) { (why) }
                        @else { "Nothing can be drawn yet: choose the kind and enter the sizes." }
                    },
                }
                @if let Some(figure) = drawing::taken_apart(&opened.plan) {
                    section id="taken-apart" {
                        div.h { h2 { "Taken apart" } small { "numbers give the order of the work" } }
                        (drawing::show_whole(&figure))
                    }
                }
                p { a.on href={ "/jobs/" (id) "/coupling" } { "Back to the coupling" } }
            }
        }
    };
    Ok(answer(part, "Drawing", &cover, &book))
}

/// Everything that is still to be entered, stage by stage.
fn still_missing(opened: &Opened, missing: &[&Missing]) -> Markup {
    html! {
        @if !missing.is_empty() {
            section id="missing" {
                div.h { h2 { "Still to enter" } small { (missing.len()) } }
                ul.missing-list {
                    @for item in missing {
                        li { small { (crate::opened::stage_of(&item.place).title()) } (link(opened, item)) }
                    }
                }
            }
        }
    }
}

/// Entries that this program cannot read: kept, and shown.
fn set_aside(opened: &Opened) -> Markup {
    html! {
        @if !opened.job.set_aside.is_empty() {
            section {
                div.h { h2 { "Set aside" } small { "kept, but not understood here" } }
                ul.log.in-line {
                    @for entry in &opened.job.set_aside { li { span { (entry.place) } em { (entry.why) } } }
                }
            }
        }
    }
}

/// A remark that was sent.
#[derive(Deserialize)]
pub(crate) struct Remark {
    stage: String,
    text: String,
}

/// Adds a remark to a stage.
pub(crate) async fn remark(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    hand: Hand,
    Form(Remark { stage, text }): Form<Remark>,
) -> Result<impl IntoResponse, PageError> {
    let stage = Stage::of(&stage).ok_or(PageError::NoPage)?;
    let text = text.trim().to_owned();
    if !text.is_empty() {
        let act = Act::Note { stage: stage.key().to_owned(), text };
        shop.records().append(id, &new_entry(&hand.by, act)).await?;
    }
    Ok(Redirect::to(&format!("/jobs/{id}/{}", stage.key())))
}
