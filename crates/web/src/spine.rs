//! The ten stages on a drawn shaft line, with where each one stands.

use job::Stage;
use job::plan::StagePlan;
use maud::{Markup, html};

use crate::marks;
use crate::opened::{Opened, Standing, waits_for};

/// The stages beside a page; on a phone, one step back and one on.
pub(crate) fn spine(opened: &Opened, here: Option<Stage>) -> Markup {
    html! {
        nav.spine aria-label="Stages of the job" {
            ol {
                @for stage in &opened.plan.stages {
                    li { (stage_link(opened, stage, here)) }
                }
            }
            @if let Some(here) = here { (hop(opened, here)) }
        }
    }
}

fn stage_link(opened: &Opened, stage: &StagePlan, here: Option<Stage>) -> Markup {
    let current = (here == Some(stage.stage)).then_some("page");
    html! {
        a href=(address(opened, stage.stage)) aria-current=[current] {
            (marks::stage(Standing::of(stage)))
            span { (stage.stage.title()) small { (waits_for(stage)) } }
        }
    }
}

/// Back, where one is, on.
fn hop(opened: &Opened, here: Stage) -> Markup {
    let place = Stage::ALL.iter().position(|stage| *stage == here).unwrap_or(0);
    let back = place.checked_sub(1).map(|before| Stage::ALL[before]);
    let on = Stage::ALL.get(place + 1).copied();
    let job = format!("/jobs/{}", opened.id);
    html! {
        div.hop {
            a href=(back.map_or(job.clone(), |stage| address(opened, stage)))
                aria-label=(back.map_or("back to the job", Stage::title)) { "‹" }
            a href=(job) {
                span { (here.title()) ", " (place + 1) " of 10" }
                (marks::trail(&opened.standings()))
            }
            a href=(on.map_or(job.clone(), |stage| address(opened, stage)))
                aria-label=(on.map_or("back to the job", Stage::title)) { "›" }
        }
    }
}

/// The address of a stage's page.
pub(crate) fn address(opened: &Opened, stage: Stage) -> String {
    format!("/jobs/{}/{}", opened.id, stage.key())
}
