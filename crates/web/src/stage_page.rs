//! The page of one stage: entries left, drawing and numbers right.

use axum::Form;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use job::Stage;
use maud::{Markup, html};
use records::JobId;
use serde::Deserialize;

use crate::fields::{self, Field, Group};
use crate::form::{self, Asked};
use crate::frame::{Cover, Part, answer};
use crate::hand::Hand;
use crate::head::{field_address, head};
use crate::opened::Opened;
use crate::spine::{address, spine};
use crate::write::{self, Outcome};
use crate::{PageError, Shop, drawing, dues, frame, kinds, log, numbers, steps, trying, ways};

/// Which field waits, whether the flow of heat is to be worked out too, and what is tried.
#[derive(Deserialize)]
pub(crate) struct View {
    #[serde(default)]
    at: String,
    full: Option<String>,
    #[serde(default)]
    end: String,
    #[serde(default)]
    hub: String,
    #[serde(default)]
    shaft: String,
}

/// The page.
pub(crate) async fn show(
    State(shop): State<Shop>,
    Path((id, key)): Path<(JobId, String)>,
    Query(View { at, full, end, hub, shaft }): Query<View>,
    hand: Hand,
    part: Part,
) -> Result<Response, PageError> {
    let stage = Stage::of(&key).ok_or(PageError::NoPage)?;
    let opened = match full {
        Some(_) => shop.open_full(id, hand.units).await?,
        None => shop.open(id, hand.units).await?,
    };
    let asked = Asked { at, trying: trying::wanted(end, &hub, &shaft), ..Asked::default() };
    Ok(page(&shop, &opened, stage, &asked, &hand, part))
}

/// Writes what the form says, then goes on to the next field.
pub(crate) async fn enter(
    State(shop): State<Shop>,
    Path((id, key)): Path<(JobId, String)>,
    hand: Hand,
    part: Part,
    form: Form<Vec<(String, String)>>,
) -> Result<Response, PageError> {
    let stage = Stage::of(&key).ok_or(PageError::NoPage)?;
    let opened = shop.open(id, hand.units).await?;
    let sent = form.into();
    let written = write::write(&shop, &opened, stage, &hand, &sent);
    let Outcome { refused, next } = Box::pin(written).await?;
    if refused.is_empty() {
        return Ok(Redirect::to(&field_address(&opened, &next)).into_response());
    }
    let opened = shop.open(id, hand.units).await?;
    let asked = Asked { at: next, refused, ..Asked::default() };
    let page = page(&shop, &opened, stage, &asked, &hand, part);
    Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
}

fn page(
    shop: &Shop,
    opened: &Opened,
    stage: Stage,
    asked: &Asked,
    hand: &Hand,
    part: Part,
) -> Response {
    let here = address(opened, stage);
    let title = format!("{} · {}", stage.title(), opened.title());
    let cover = Cover { hand, system: opened.system, here: &here };
    answer(part, &title, &cover, &book(shop, opened, stage, asked))
}

fn book(shop: &Shop, opened: &Opened, stage: Stage, asked: &Asked) -> Markup {
    let groups = fields::of(stage, opened);
    let plan = opened.plan.stage(stage);
    let now = form::waiting(&groups, opened, plan, &asked.at);
    html! {
        div.book id="book" {
            (spine(opened, Some(stage)))
            main.leaf id="page" tabindex="-1" {
                (head(opened, stage.title(), plan.verdict(), &plan.missing.iter().collect::<Vec<_>>()))
                div.sides {
                    div.left {
                        (entry_form(opened, stage, &groups, asked, now))
                        section.entries {
                            div.h { h2 { "Entries" } small { "nothing is rubbed out" } }
                            (log::log(shop, opened, Some(stage)))
                            (remark(opened, stage))
                        }
                    }
                    div.right { (print(shop, opened, stage, asked)) }
                }
            }
            (next_bar(now))
        }
    }
}

/// What is printed beside the entries: drawing, numbers, what to know, what to do.
fn print(shop: &Shop, opened: &Opened, stage: Stage, asked: &Asked) -> Markup {
    let plan = opened.plan.stage(stage);
    let here = address(opened, stage);
    html! {
        @for drawing in drawing::of_stage(&opened.plan, stage) { (drawing::show(&drawing)) }
        @for moments in drawing::moments_of_stage(&opened.plan, stage) { (drawing::show_moments(&moments)) }
        @if matches!(stage, Stage::Heat | Stage::Removal) && opened.has_more_to_say() {
            (frame::later(&here))
        }
        @if stage == Stage::Heat { (trying::section(opened, &asked.trying)) }
        @if !plan.numbers.is_empty() {
            section.numbers {
                div.h { h2 { "Numbers" } small { "the equals sign opens the working" } }
                (numbers::numbers(&plan.numbers, opened.system))
            }
        }
        @if plan.numbers.is_empty() && !plan.summary.is_empty() { p.advice.stands { (plan.summary) } }
        @if !plan.notes.is_empty() {
            section.to-know {
                div.h { h2 { "To know" } }
                ul.notes { @for note in &plan.notes { li { (note) } } }
            }
        }
        @if stage == Stage::Coupling {
            p.advice.stands {
                a href={ "/jobs/" (opened.id) "/sheet" } { "The maker’s sheet by itself" }
                ": to print, to keep, or to take over from another job."
            }
        }
        @if stage == Stage::Coupling { (kinds::about(opened)) (kinds::choice(opened)) }
        @if stage == Stage::Removal { (ways::ways(opened)) }
        @if stage == Stage::Running { (dues::of_job(&opened.plan.dues)) }
        (steps::at_stage(shop, opened, stage, &here))
    }
}

fn entry_form(
    opened: &Opened,
    stage: Stage,
    groups: &[Group],
    asked: &Asked,
    now: Option<&Field>,
) -> Markup {
    let at = now.map_or("", |field| field.place.as_str());
    html! {
        form.entry-form id="entry" method="post" action=(address(opened, stage)) data-part="book" {
            input type="hidden" name="units" value=(units(opened));
            input type="hidden" name="at" value=(at);
            // The first button is the one that Enter presses.
            button.unseen type="submit" tabindex="-1" aria-hidden="true" { "Write" }
            (form::strip(now, opened.system))
            @if stage == Stage::Lineup && opened.job.file.lineup.dials.is_empty() { (dial_sets()) }
            (form::groups(groups, opened, asked, now))
            (buttons(opened, stage))
        }
    }
}

fn units(opened: &Opened) -> &'static str {
    match opened.system {
        quantities::System::Metric => "metric",
        quantities::System::Inch => "inch",
    }
}

/// Sets of dials to begin a sweep with.
fn dial_sets() -> Markup {
    html! {
        section.group {
            div.h { h2 { "Dials" } small { "which set is on the shafts?" } }
            div.presses {
                @for (key, words) in fields::TEMPLATES {
                    button.button.quiet type="submit" name="dials" value=(key) { (words) }
                }
            }
        }
    }
}

fn buttons(opened: &Opened, stage: Stage) -> Markup {
    let last = log::last_standing(opened, stage);
    let place = Stage::ALL.iter().position(|one| *one == stage).unwrap_or(0);
    html! {
        div.presses {
            button.button type="submit" { "Write and go on" }
            @if let Some(line) = last {
                button.button.quiet type="submit" name="undo" value=(line.entry.id.0)
                    aria-label={ "Undo " (line.shown) ", " (fields::say(opened, &line.place)) } { "Undo" }
            }
        }
        label.why {
            span { "Why, where it corrects an entry" }
            input name="why" autocomplete="off" placeholder="may stay blank";
        }
        @match Stage::ALL.get(place + 1) {
            Some(next) => a.on id="on" href=(address(opened, *next)) { "On to " (next.title()) " ›" },
            None => a.on id="on" href={ "/jobs/" (opened.id) } { "Back to the job ›" },
        }
    }
}

fn remark(opened: &Opened, stage: Stage) -> Markup {
    html! {
        form.remark method="post" action={ "/jobs/" (opened.id) "/notes" } data-part="book" {
            input type="hidden" name="stage" value=(stage.key());
            label { span.unseen { "Remark" } input name="text" placeholder="a remark for this stage" autocomplete="off"; }
            button.button.quiet type="submit" { "Note" }
        }
    }
}

/// On a phone: the next reading, and a way to enter it.
fn next_bar(now: Option<&Field>) -> Markup {
    html! {
        @if let Some(field) = now {
            div.next role="region" aria-label="Next reading" {
                span id="next" { (field.say) }
                button type="submit" form="entry" { "enter" }
            }
        }
    }
}
