//! Calculations asked alone: the catalogue, and one calculation with its answer.

use std::collections::BTreeMap;

use axum::extract::{Path, Query};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use quantities::System;
use reckon::{Answer, Calculation, Input, Outcome, ReckonError, Sort};
use serde::Deserialize;

use crate::frame::{Cover, page};
use crate::hand::Hand;
use crate::{PageError, form, working};

/// What the catalogue is searched for.
#[derive(Deserialize)]
pub(crate) struct Search {
    #[serde(default)]
    q: String,
}

/// The catalogue.
pub(crate) async fn list(Query(Search { q }): Query<Search>, hand: Hand) -> Markup {
    let found: Vec<&Calculation> = reckon::all().filter(|one| matches(one, &q)).collect();
    let body = html! {
        div.book.no-spine {
            main.leaf id="page" tabindex="-1" {
                p.job { "each shows its working, its range and its source" }
                div.title { h1 { "Reckon" } }
                form.search action="/reckon" role="search" {
                    label { span.unseen { "Search the calculations" }
                        input name="q" value=(q) placeholder="what is asked: shim, bolt torque, sag"; }
                    button.button.quiet type="submit" { "Search" }
                }
                ul.catalogue {
                    @for one in &found {
                        li { a href={ "/reckon/" (one.name) } { b { (title(one)) } span { (one.does) } } }
                    }
                }
                @if found.is_empty() { p.advice { "No calculation has “" (q) "” in its name or its sentence." } }
            }
        }
    };
    let cover = Cover { hand: &hand, system: hand.units.unwrap_or_default(), here: "/reckon" };
    page("Reckon", &cover, &body)
}

fn matches(one: &Calculation, search: &str) -> bool {
    let all = format!("{} {}", one.name.replace('-', " "), one.does).to_lowercase();
    search.to_lowercase().split_whitespace().all(|word| all.contains(word))
}

/// "contact-pressure" as a heading.
fn title(one: &Calculation) -> String {
    let words = one.name.replace('-', " ");
    let mut letters = words.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}", letters.as_str())
}

/// One calculation; with its inputs in the address, its answer too.
pub(crate) async fn show(
    Path(name): Path<String>,
    Query(typed): Query<BTreeMap<String, String>>,
    hand: Hand,
) -> Result<Response, PageError> {
    let calculation = reckon::calculation(&name).map_err(|_| PageError::NoPage)?;
    let system = hand.units.unwrap_or_default();
    let query = serde_urlencoded::to_string(&typed).unwrap_or_default();
    let asked = typed.values().any(|text| !text.trim().is_empty());
    let answered = asked.then(|| ask(calculation, &typed, system));
    let status = match &answered {
        Some(Err(_)) => StatusCode::UNPROCESSABLE_ENTITY,
        _ => StatusCode::OK,
    };
    let here = format!("/reckon/{name}?{query}");
    let cover = Cover { hand: &hand, system, here: &here };
    let body = book(calculation, &typed, answered.as_ref(), system);
    Ok((status, page(&title(calculation), &cover, &body)).into_response())
}

/// Asks with the unit beside a field put behind a bare number.
fn ask(
    calculation: &Calculation,
    typed: &BTreeMap<String, String>,
    system: System,
) -> Result<Answer, ReckonError> {
    let inputs = calculation.inputs.iter().filter_map(|input| {
        let text = typed.get(input.name)?.trim();
        let unit = unit(input, system);
        let bare = form::is_bare(&text.replace(';', " ")) && !unit.is_empty();
        let text = if bare { format!("{text} {unit}") } else { text.to_owned() };
        (!text.is_empty()).then_some((input.name, text))
    });
    let inputs: Vec<(&str, String)> = inputs.collect();
    reckon::reckon(calculation.name, inputs.iter().map(|(name, text)| (*name, text.as_str())))
}

fn unit(input: &Input, system: System) -> &'static str {
    match input.sort {
        Sort::Quantity(kind) | Sort::Quantities(kind) => kind.unit(system).name(),
        Sort::Choice(_) | Sort::Word | Sort::Words => "",
    }
}

fn book(
    calculation: &Calculation,
    typed: &BTreeMap<String, String>,
    answered: Option<&Result<Answer, ReckonError>>,
    system: System,
) -> Markup {
    let wrong = answered.and_then(|answered| answered.as_ref().err());
    html! {
        div.book.no-spine {
            main.leaf id="page" tabindex="-1" {
                p.job { a href="/reckon" { "Reckon" } }
                div.title { h1 { (title(calculation)) } }
                p.does { (calculation.does) }
                div.sides.as-is {
                    form.ask.left action={ "/reckon/" (calculation.name) } {
                        div.group {
                            div.h { h2 { "Given" } small { "a unit that is typed wins" } }
                            @for input in calculation.inputs { (field(input, typed, wrong, system)) }
                        }
                        div.presses { button.button type="submit" { "Reckon" } }
                    }
                    div.right {
                        @match answered {
                            Some(Ok(answer)) => (result(calculation, answer, system)),
                            Some(Err(error)) if input_of(error).is_none() => {
                                p.advice role="alert" { (error.to_string()) }
                            }
                            _ => (gives(calculation)),
                        }
                        section {
                            div.h { h2 { "Holds for" } }
                            p { (calculation.valid) }
                            p.source { "Source: " (calculation.source.to_string()) }
                        }
                    }
                }
            }
        }
    }
}

fn field(
    input: &Input,
    typed: &BTreeMap<String, String>,
    wrong: Option<&ReckonError>,
    system: System,
) -> Markup {
    let value = typed.get(input.name).map_or("", String::as_str);
    let wrong = wrong.filter(|error| input_of(error) == Some(input.name));
    let id = format!("i-{}", input.name);
    let told = format!("wrong-{id}");
    html! {
        div.row.one {
            label.label for=(id) {
                (input.what)
                @match input.default {
                    Some("") => small { "may be left out" },
                    Some(default) => small { "otherwise " (default) },
                    None => {}
                }
            }
            div.field { span.line {
                @if let Sort::Choice(words) = input.sort {
                    select id=(id) name=(input.name) aria-invalid=[wrong.map(|_| "true")] {
                        option value="" selected[value.is_empty()] { (input.default.unwrap_or_default()) }
                        @for word in words { option value=(word) selected[*word == value] { (word) } }
                    }
                } @else {
                    input id=(id) name=(input.name) value=(value) autocomplete="off" spellcheck="false"
                        class=[(value.chars().count() > 9).then_some("words")]
                        aria-invalid=[wrong.map(|_| "true")] aria-describedby=[wrong.map(|_| &told)];
                    @if value.is_empty() || form::is_bare(value) { span.unit { (unit(input, system)) } }
                }
            } }
        }
        @if let Some(error) = wrong { p.wrong id=(told) role="alert" { (error.to_string()) } }
    }
}

/// The input that an error is about.
fn input_of(error: &ReckonError) -> Option<&str> {
    match error {
        ReckonError::Missing { input, .. } => Some(input),
        ReckonError::Unreadable { input, .. } | ReckonError::UnknownInput { input, .. } => {
            Some(input)
        }
        _ => None,
    }
}

fn result(calculation: &Calculation, answer: &Answer, system: System) -> Markup {
    html! {
        section.numbers {
            div.h { h2 { "Found" } }
            @for output in calculation.outputs {
                @if let Some(outcome) = answer.result(output.name) {
                    div.number { div.plain {
                        span.label { (output.what) }
                        (value(outcome, system))
                    } }
                }
            }
        }
        @for one in &answer.working { (working::slip(one, "", system)) }
    }
}

fn value(outcome: &Outcome, system: System) -> Markup {
    html! {
        @match outcome {
            Outcome::Value(value) => span.value {
                b { (value.digits(system)) }
                i {
                    @if let Some(half) = value.plus_minus_digits(system) { "± " (half) " " }
                    (value.unit(system))
                }
            },
            other => span.value.several { b { (other.show(system)) } },
        }
    }
}

fn gives(calculation: &Calculation) -> Markup {
    html! {
        section {
            div.h { h2 { "Gives" } }
            ul.kit { @for output in calculation.outputs { li { span { (output.what) } } } }
        }
    }
}
