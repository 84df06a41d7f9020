//! The head of a job's page: job, name, stamp, and what is still to be entered.

use job::plan::Missing;
use maud::{Markup, html};
use quantities::Verdict;

use crate::marks::{self, Stamped};
use crate::opened::{Opened, stage_of};

/// Letters that the head gives to the names of items before it only counts them.
const ROOM: usize = 60;

/// The head.
pub(crate) fn head(
    opened: &Opened,
    title: &str,
    verdict: Option<Verdict>,
    missing: &[&Missing],
) -> Markup {
    html! {
        p.job { (line(opened, title)) }
        div.title {
            h1 { (title) }
            @if let Some(verdict) = verdict { (marks::stamp(verdict, Stamped::Large)) }
            @if !missing.is_empty() { (todo(opened, missing)) }
        }
    }
}

/// "Job 41, Sea-water pump 2, gear coupling, Tangle Row Drying (invented)".
fn line(opened: &Opened, title: &str) -> Markup {
    let head = &opened.plan.head;
    let number = (!head.number.is_empty()).then(|| format!("Job {}", head.number));
    let works = if head.invented && !head.works.is_empty() {
        format!("{} (invented)", head.works)
    } else if head.invented {
        "invented".to_owned()
    } else {
        head.works.clone()
    };
    let name = (title != opened.title()).then(|| opened.title().to_owned());
    let rest: Vec<String> =
        [Some(head.coupling.clone()), Some(works)].into_iter().flatten().collect();
    let rest: Vec<String> = rest.into_iter().filter(|words| !words.is_empty()).collect();
    html! {
        @if let Some(number) = &number { (number) @if name.is_some() || !rest.is_empty() { ", " } }
        @if let Some(name) = &name {
            a href={ "/jobs/" (opened.id) } { (name) } @if !rest.is_empty() { ", " }
        }
        (rest.join(", "))
    }
}

fn todo(opened: &Opened, missing: &[&Missing]) -> Markup {
    let mut letters = 0;
    let named = missing.iter().take_while(|item| {
        letters += item.what.chars().count();
        letters <= ROOM
    });
    let named = named.count().max(1);
    let more = missing.len().saturating_sub(named);
    html! {
        div.todo {
            (marks::verdict(Verdict::NotMeasured))
            span { "Still to enter:" }
            @for item in missing.iter().take(named) { (link(opened, item)) }
            @if more > 0 {
                a href={ "/jobs/" (opened.id) "#missing" } { "and " (more) " more" }
            }
        }
    }
}

/// A link to the field that an item is entered in.
pub(crate) fn link(opened: &Opened, item: &Missing) -> Markup {
    html! { a href=(field_address(opened, &item.place)) { (item.what) } }
}

/// The page of a field, with that field waiting.
pub(crate) fn field_address(opened: &Opened, place: &str) -> String {
    let query = serde_urlencoded::to_string([("at", place)]).unwrap_or_default();
    format!("/jobs/{}/{}?{query}#{}", opened.id, stage_of(place).key(), anchor(place))
}

/// The name of a field within its page.
pub(crate) fn anchor(place: &str) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c } else { '-' };
    format!("f-{}", place.chars().map(plain).collect::<String>())
}
