//! The try-out on the heat page: seconds in hand for temperatures that nobody has entered.
//!
//! A form of its own that only asks. With our script it asks as the slider moves and puts the answer
//! in place; without, a button does. Nothing is written either way.

use axum::extract::{Path, Query, State};
use job::plan::{Dial, Outcome, Tried, Trying, try_heat};
use maud::{Markup, html};
use records::JobId;
use serde::Deserialize;

use crate::hand::Hand;
use crate::opened::Opened;
use crate::{PageError, Shop, drawing};

/// What is tried, as the form sends it.
#[derive(Deserialize)]
pub(crate) struct Sent {
    #[serde(default)]
    end: String,
    #[serde(default)]
    hub: String,
    #[serde(default)]
    shaft: String,
}

/// What is tried; a text that is no number leaves the plan's own temperature.
pub(crate) fn wanted(end: String, hub: &str, shaft: &str) -> Trying {
    Trying { end, hub: hub.trim().parse().ok(), shaft: shaft.trim().parse().ok() }
}

/// The answer alone, for our own script.
pub(crate) async fn show(
    State(shop): State<Shop>,
    Path(id): Path<JobId>,
    Query(Sent { end, hub, shaft }): Query<Sent>,
    hand: Hand,
) -> Result<Markup, PageError> {
    let opened = shop.open(id, hand.units).await?;
    let tried = try_heat(&opened.job, opened.system, &wanted(end, &hub, &shaft));
    let outcome = tried.into_iter().find_map(|tried| tried.outcome);
    Ok(html! { @if let Some(outcome) = outcome { (answer(&outcome)) } })
}

/// The try-out of every hub that is heated; nothing where none is.
pub(crate) fn section(opened: &Opened, trying: &Trying) -> Markup {
    let hubs = try_heat(&opened.job, opened.system, trying);
    html! {
        @if !hubs.is_empty() {
            section.trying {
                div.h { h2 { "Try it" } small { "nothing is written until it is entered" } }
                p.advice {
                    "Turn a temperature and see how long the hub would stay open. It is a try-out: \
                     quick, to half a percent or so, and no entry."
                }
                @for hub in &hubs { (one(opened, hub)) }
            }
        }
    }
}

fn one(opened: &Opened, hub: &Tried) -> Markup {
    let there = format!("/jobs/{}/heat", opened.id);
    html! {
        form.try id={ "try-" (hub.end) } method="get" action={ (there) "#try-" (hub.end) }
            data-try={ (there) "/try" } {
            h3 { (hub.name) }
            input type="hidden" name="end" value=(hub.end);
            (slider(hub, "hub", "Hub as it comes to the shaft", &hub.hub))
            (slider(hub, "shaft", "Shaft", &hub.shaft))
            button.button.quiet type="submit" { "Try" }
            p.unseen role="status" {}
            div.outcome { @if let Some(outcome) = &hub.outcome { (answer(outcome)) } }
        }
    }
}

fn slider(hub: &Tried, name: &str, label: &str, dial: &Dial) -> Markup {
    let id = format!("try-{}-{name}", hub.end);
    html! {
        label for=(id) { (label) }
        output for=(id) { (dial.stands) " " (dial.unit) }
        input id=(id) type="range" name=(name) min=(dial.least) max=(dial.most) step="1"
            value=(dial.stands) data-unit=(dial.unit)
            aria-valuetext={ (dial.stands) " " (dial.unit) };
    }
}

/// Seconds, and the clearance against time.
fn answer(outcome: &Outcome) -> Markup {
    html! {
        @match &outcome.seconds {
            Ok([low, likely, high]) => {
                p.found data-say={ "Tried: count on " (low) ", likely " (likely) "." } {
                    "Count on " b { (low) } ". Likely " (likely) ", at most " (high) "."
                }
            }
            Err(why) => p.found data-say=(why) { (why) },
        }
        @if let Some(over) = &outcome.over { p.found { b { (over) } } }
        @if let Some(drawing) = outcome.closing.as_ref().and_then(drawing::tried) {
            (drawing::show(&drawing))
        }
    }
}
