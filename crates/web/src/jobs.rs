//! The list of jobs, a new job, and the demo jobs.

use std::sync::Arc;

use axum::Form;
use axum::extract::{Path, Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use jiff::Timestamp;
use job::{Act, LogBook};
use maud::{Markup, html};
use quantities::System;
use records::{book_of_file, new_entry};
use serde::Deserialize;

use crate::frame::{Cover, Part, answer};
use crate::hand::Hand;
use crate::marks::{self, Stamped};
use crate::opened::Summary;
use crate::{PageError, Shop, dues, time};

/// What the list is searched for.
#[derive(Deserialize)]
pub(crate) struct Search {
    #[serde(default)]
    q: String,
}

/// The list.
pub(crate) async fn list(
    State(shop): State<Shop>,
    Query(Search { q }): Query<Search>,
    hand: Hand,
    part: Part,
) -> Result<Response, PageError> {
    let mut jobs = Vec::new();
    for (id, length) in shop.records().lengths().await? {
        jobs.push(shop.summary(id, hand.units, length).await?);
    }
    jobs.sort_by_key(|job| std::cmp::Reverse((job.last.as_ref().map(|(at, _)| *at), job.id)));
    let cover = Cover { hand: &hand, system: hand.units.unwrap_or_default(), here: "/" };
    Ok(answer(part, "Jobs", &cover, &page(&shop, &jobs, &q)))
}

fn page(shop: &Shop, jobs: &[Arc<Summary>], search: &str) -> Markup {
    let newest = jobs.iter().filter_map(|job| job.last.as_ref()).map(|(at, _)| *at).max();
    let newest = newest.unwrap_or_default();
    let found: Vec<&Arc<Summary>> = jobs.iter().filter(|job| matches(job, search)).collect();
    html! {
        div.book.no-spine id="book" {
            main.leaf id="page" tabindex="-1" {
                p.job { "kept in " (shop.book().display()) }
                div.title { h1 { "Jobs" } }
                div.sides.wide-left {
                    div.left {
                        (begin_form())
                        @if jobs.len() > 5 || !search.is_empty() { (search_form(search)) }
                        @if found.is_empty() { (nothing(search)) }
                        ol.jobs { @for job in &found { li { (row(shop, job, newest)) } } }
                    }
                    div.right { (dues::of_all(jobs, today(shop))) (demos(shop)) }
                }
            }
        }
    }
}

fn today(shop: &Shop) -> jiff::civil::Date {
    records::now().to_zoned_datetime(shop.zone().clone()).date()
}

fn begin_form() -> Markup {
    html! {
        form.begin method="post" action="/jobs" {
            label { span.unseen { "Name of the new job" }
                input name="title" required placeholder="name of the machine or the job" autocomplete="off"; }
            button.button type="submit" { "New job" }
        }
    }
}

fn search_form(search: &str) -> Markup {
    html! {
        form.search action="/" role="search" {
            label { span.unseen { "Search the jobs" }
                input name="q" value=(search) placeholder="search: machine, works, coupling, number"; }
            button.button.quiet type="submit" { "Search" }
        }
    }
}

fn nothing(search: &str) -> Markup {
    html! {
        p.advice {
            @if search.is_empty() {
                "No job yet. Give the first one a name above, or open an invented one to look round."
            } @else { "No job has “" (search) "” in its name, number, works, coupling or hand." }
        }
    }
}

/// Every word of the search stands somewhere in what the list says of the job.
fn matches(job: &Summary, search: &str) -> bool {
    let head = &job.head;
    let all =
        [&head.title, &head.number, &head.works, &head.coupling, &head.by].map(String::as_str);
    let all = all.join(" ").to_lowercase();
    search.to_lowercase().split_whitespace().all(|word| all.contains(word))
}

fn row(shop: &Shop, job: &Summary, newest: Timestamp) -> Markup {
    let head = &job.head;
    let about =
        [head.coupling.as_str(), head.works.as_str(), if head.invented { "invented" } else { "" }];
    let about: Vec<&str> = about.into_iter().filter(|words| !words.is_empty()).collect();
    html! {
        a href={ "/jobs/" (job.id) } {
            span.margin {
                strong { (head.number) }
                @if let Some((at, by)) = &job.last {
                    " " (time::short(*at, newest, shop.zone())) " " (by)
                }
            }
            span.name { b { (job.title) } small { (about.join(", ")) } }
            (marks::trail(&job.stages))
            span.word { @if let Some(verdict) = job.verdict { (marks::stamp(verdict, Stamped::Small)) } }
        }
    }
}

fn demos(shop: &Shop) -> Markup {
    html! {
        @if !shop.demos().is_empty() {
            section.demos {
                div.h { h2 { "To look round" } small { "invented jobs" } }
                ul {
                    @for (name, file) in shop.demos() {
                        li {
                            @let file = job::read(file).ok();
                            span {
                                (file.as_ref().map_or(name.as_str(), |file| file.job.title.as_str()))
                                small { (file.as_ref().map_or("", |file| file.coupling.kind.as_str())) " coupling" }
                            }
                            form method="post" action={ "/demos/" (name) } {
                                button.button.quiet type="submit" aria-label={ "Open " (name.replace('-', " ")) } { "Open" }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// The name of a new job.
#[derive(Deserialize)]
pub(crate) struct Begin {
    title: String,
}

/// Begins a job, and goes to its first stage.
pub(crate) async fn begin(
    State(shop): State<Shop>,
    hand: Hand,
    Form(Begin { title }): Form<Begin>,
) -> Result<impl IntoResponse, PageError> {
    let title = title.trim();
    if title.is_empty() {
        return Err(PageError::Unreadable("a job needs a name".to_owned()));
    }
    let first = new_entry(&hand.by, write("job.title", title));
    let day = first.at.to_zoned_datetime(shop.zone().clone()).date().to_string();
    let units = match hand.units {
        Some(System::Inch) => "inch",
        _ => "metric",
    };
    let rest = [("job.written", day.as_str()), ("job.by", hand.by.as_str()), ("job.units", units)];
    let rest = rest.into_iter().filter(|(_, value)| !value.is_empty());
    let entries = rest.map(|(place, value)| new_entry(&hand.by, write(place, value)));
    let id = shop.records().import(&LogBook::new([first].into_iter().chain(entries))).await?;
    Ok(Redirect::to(&format!("/jobs/{id}/machines")))
}

fn write(place: &str, value: &str) -> Act {
    Act::Write { place: place.to_owned(), value: value.into() }
}

/// Copies a demo job into the records, and goes to it.
pub(crate) async fn open_demo(
    State(shop): State<Shop>,
    Path(name): Path<String>,
) -> Result<impl IntoResponse, PageError> {
    let (_, text) = shop.demos().iter().find(|(one, _)| *one == name).ok_or(PageError::NoPage)?;
    let file = job::read(text).map_err(|errors| {
        PageError::Unreadable(errors.first().map(ToString::to_string).unwrap_or_default())
    })?;
    let id = shop.records().import(&book_of_file(&file, &file.job.by)).await?;
    Ok(Redirect::to(&format!("/jobs/{id}")))
}
