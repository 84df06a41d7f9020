//! What falls due after a close-up, with its days once the day of closing up was entered.

use couplings::dues::{After, Due as Interval, Halved, dues as intervals};
use quantities::Measured;
use serde::Serialize;

use super::super::Context;
use super::super::closeup::service;
use crate::file::Day;

/// Something that falls due.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Due {
    /// A name that stays: "grease".
    pub id: &'static str,
    /// What is to be done.
    pub what: String,
    /// How long after closing up: "6 to 12 months".
    pub after: String,
    /// The first day, once the day of closing up is known: "2027-05-25".
    pub from: Option<String>,
    /// The last day.
    pub to: Option<String>,
    /// How the interval is known, and what shortened it.
    pub source: String,
}

impl Due {
    /// In one sentence.
    pub fn in_words(&self) -> String {
        let days = match (&self.from, &self.to) {
            (Some(from), Some(to)) if from == to => format!(", on {from}"),
            (Some(from), Some(to)) => format!(", from {from} to {to}"),
            _ => String::new(),
        };
        format!("After {}{days}: {} ({}).", self.after, self.what, self.source)
    }
}

pub(in crate::plan) fn dues(cx: &Context) -> Vec<Due> {
    let Some(kind) = cx.kind else { return Vec::new() };
    let service = service(cx);
    let found = intervals(kind, &cx.file.coupling.sheet, &service);
    let hard: Vec<&str> = service.hardships.iter().map(|hardship| hardship.name()).collect();
    let hard = hard.join(", ");
    found.into_iter().map(|interval| due(cx, &interval, &hard)).collect()
}

fn due(cx: &Context, interval: &Interval, hard: &str) -> Due {
    let closed = cx.file.closeup.closed;
    let at = |earliest: usize| closed.and_then(|day| later(day, interval.after, earliest));
    let halved = match interval.halved {
        Halved::Yes => format!("; halved for {hard}, a rule of our own"),
        Halved::No => String::new(),
    };
    let hours = cx.file.coupling.sheet.lubricant.running_time.as_ref();
    let hours = hours.map(Measured::text).filter(|_| interval.id == "grease");
    let hours = hours.map_or_else(String::new, |text| format!(", or {text} of running if sooner"));
    Due {
        id: interval.id,
        what: format!("{}{hours}", interval.what),
        after: span(interval.after),
        from: at(0).map(|day| day.to_string()),
        to: at(1).map(|day| day.to_string()),
        source: format!("{}{halved}", interval.source),
    }
}

fn later(day: Day, after: After, end: usize) -> Option<Day> {
    match after {
        After::Days(days) => day.days_later(days[end]),
        After::Months(months) => day.months_later(months[end]),
    }
}

fn span(after: After) -> String {
    let (ends, one, many) = match after {
        After::Days(ends) => (ends, "day", "days"),
        After::Months(ends) => (ends, "month", "months"),
    };
    match ends {
        [1, 1] => format!("1 {one}"),
        [low, high] if low == high => format!("{high} {many}"),
        [low, high] => format!("{low} to {high} {many}"),
    }
}
