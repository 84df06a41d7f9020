//! What falls due after a coupling is closed up.

use std::sync::Arc;

use jiff::civil::Date;
use job::plan::Due;
use maud::{Markup, html};

use crate::opened::Summary;

/// Matters that the list of jobs shows.
const SHOWN: usize = 12;

/// What falls due on one job.
pub(crate) fn of_job(dues: &[Due]) -> Markup {
    html! {
        @if !dues.is_empty() {
            section.dues-of-job {
                div.h { h2 { "Falls due" } small { "counted from the day it was closed up" } }
                ul.notes {
                    @for due in dues {
                        li {
                            b { (days(due)) } ": " (due.what)
                            small { (due.source) }
                        }
                    }
                }
            }
        }
    }
}

/// "from 2027-05-25 to 2027-11-25"; the interval while the day is not known.
fn days(due: &Due) -> String {
    match (&due.from, &due.to) {
        (Some(from), Some(to)) if from != to => format!("from {from} to {to}"),
        (Some(from), _) => format!("on {from}"),
        _ => format!("after {}", due.after),
    }
}

/// One matter of one job, with its days.
struct Matter<'a> {
    job: &'a Summary,
    what: &'a str,
    from: Date,
    to: Date,
}

/// What falls due on all jobs, soonest first.
pub(crate) fn of_all(jobs: &[Arc<Summary>], today: Date) -> Markup {
    let mut matters: Vec<Matter> = jobs.iter().flat_map(|job| matters(job)).collect();
    matters.sort_by_key(|matter| (matter.to, matter.job.id));
    html! {
        @if !matters.is_empty() {
            section {
                div.h { h2 { "Due" } small { "by date" } }
                ul.due { @for matter in matters.iter().take(SHOWN) { (one(matter, today)) } }
            }
        }
    }
}

fn matters(job: &Summary) -> impl Iterator<Item = Matter<'_>> {
    job.dues.iter().filter_map(move |due| {
        let from = due.from.as_ref()?.parse().ok()?;
        let to = due.to.as_ref().and_then(|to| to.parse().ok()).unwrap_or(from);
        Some(Matter { job, what: &due.what, from, to })
    })
}

fn one(matter: &Matter, today: Date) -> Markup {
    let until = |day: Date| (day - today).get_days();
    let late = until(matter.to) < 0;
    let (count, words) = match (until(matter.from), until(matter.to)) {
        (_, to) if to < 0 => (-to, if to == -1 { "day late" } else { "days late" }),
        (from, to) if from <= 0 => (to, if to == 1 { "day left" } else { "days left" }),
        (from, _) => (from, if from == 1 { "day" } else { "days" }),
    };
    html! {
        li.late[late] {
            b { (count) small { (words) } }
            span { a href={ "/jobs/" (matter.job.id) } { (matter.job.title) } small { (matter.what) } }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_counted_to_the_first_day_then_to_the_last_then_beyond_it() {
        let job = crate::opened::tests::summary("Pump");
        let day = |text: &str| text.parse::<Date>().unwrap();
        let matter =
            Matter { job: &job, what: "grease", from: day("2027-05-25"), to: day("2027-06-25") };
        let shown = |today: &str| one(&matter, day(today)).into_string();
        assert!(shown("2027-05-20").contains("<b>5<small>days</small>"));
        assert!(shown("2027-05-25").contains("<b>31<small>days left</small>"));
        assert!(shown("2027-06-26").contains("class=\"late\"><b>1<small>day late</small>"));
    }
}
