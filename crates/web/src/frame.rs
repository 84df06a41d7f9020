//! What stands round every page: the head of the book, and the page's own head and script.

use axum::extract::FromRequestParts;
use axum::http::HeaderName;
use axum::http::header::VARY;
use axum::http::request::Parts;
use axum::response::{IntoResponse, Response};
use maud::{DOCTYPE, Markup, html};
use quantities::System;

use crate::assets::{PART, STYLE};
use crate::hand::Hand;

const X_PART: HeaderName = HeaderName::from_static("x-part");

/// The head of the book: where one is, in which units, whose hand.
pub(crate) struct Cover<'a> {
    pub hand: &'a Hand,
    /// The units of the page.
    pub system: System,
    /// The page's own address, to come back to.
    pub here: &'a str,
}

/// A page.
pub(crate) fn page(title: &str, cover: &Cover, body: &Markup) -> Markup {
    let body = html! {
        a.skip href="#page" { "to the page" }
        (head_of_book(cover))
        (body)
    };
    document(title, &body)
}

/// A page without switch and initials.
pub(crate) fn bare(title: &str, body: &Markup) -> Markup {
    let body = html! {
        a.skip href="#page" { "to the page" }
        header.cover { a.home href="/" { "Hubwright" } }
        (body)
    };
    document(title, &body)
}

fn document(title: &str, body: &Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) " · Hubwright" }
                link rel="stylesheet" href=(STYLE.address());
                link rel="icon" href="data:,";
                script src=(PART.address()) defer {}
            }
            body { (body) }
        }
    }
}

fn head_of_book(cover: &Cover) -> Markup {
    let on_list = cover.here == "/";
    html! {
        header.cover {
            a.home href="/" { "Hubwright" }
            a href="/" aria-current=[on_list.then_some("page")] { "Jobs" }
            a href="/reckon" aria-current=[(cover.here == "/reckon").then_some("page")] { "Reckon" }
            form.units method="post" action="/hand" {
                input type="hidden" name="back" value=(cover.here);
                div role="group" aria-label="Units" {
                    (unit_button(cover.system, System::Metric, "metric", "mm"))
                    (unit_button(cover.system, System::Inch, "inch", "in"))
                }
            }
            form.who method="post" action="/hand" {
                input type="hidden" name="back" value=(cover.here);
                label {
                    input name="by" value=(cover.hand.by) size="6" maxlength="12"
                        placeholder="initials" autocomplete="off" aria-label="Initials of whoever writes";
                    " writing"
                }
            }
        }
    }
}

fn unit_button(now: System, this: System, value: &str, words: &str) -> Markup {
    html! {
        button type="submit" name="units" value=(value) aria-pressed=(now == this) { (words) }
    }
}

/// Where the full plan is still to be worked out: our script asks for it after a while of quiet;
/// without script the link does.
pub(crate) fn later(here: &str) -> Markup {
    let full = format!("{here}?full=1");
    html! {
        p.later id="later" data-later=(full) {
            a href=(full) { "Work out how heat flows" }
            ": seconds in hand, and what heat gets a hub off. It takes some seconds."
        }
    }
}

/// Whether only the part that changed was asked for: the header `X-Part` of our own script.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Part {
    Whole,
    Book,
}

impl<S: Sync> FromRequestParts<S> for Part {
    type Rejection = std::convert::Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Self::Rejection> {
        Ok(if parts.headers.contains_key(X_PART) { Self::Book } else { Self::Whole })
    }
}

/// The page, or only its book where that was asked for.
pub(crate) fn answer(part: Part, title: &str, cover: &Cover, book: &Markup) -> Response {
    let body = match part {
        Part::Whole => page(title, cover, book),
        Part::Book => book.clone(),
    };
    ([(VARY, X_PART.as_str())], body).into_response()
}
