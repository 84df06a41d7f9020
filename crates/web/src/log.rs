//! The log under the fields: newest first, corrections struck through but legible.

use std::collections::BTreeMap;

use job::{Act, EntryId, Line, Stage};
use maud::{Markup, html};

use crate::fields;
use crate::opened::{Opened, stage_of};
use crate::{Shop, time};

/// Lines that are shown before the rest is folded.
const SHOWN: usize = 10;

/// One matter of the log: what was written first and all that took its place.
struct Matter<'a> {
    lines: Vec<&'a Line>,
}

impl Matter<'_> {
    fn last(&self) -> &Line {
        self.lines[self.lines.len() - 1]
    }

    fn why(&self) -> impl Iterator<Item = &str> {
        self.lines.iter().filter_map(|line| match &line.entry.act {
            Act::Correct { why, .. } | Act::Strike { why, .. } if !why.is_empty() => {
                Some(why.as_str())
            }
            _ => None,
        })
    }

    /// What was written, one after the other; a strike writes nothing.
    fn values(&self) -> Vec<&str> {
        let written =
            self.lines.iter().filter(|line| !matches!(line.entry.act, Act::Strike { .. }));
        written.map(|line| line.shown.as_str()).collect()
    }

    fn is_struck(&self) -> bool {
        matches!(self.last().entry.act, Act::Strike { .. })
    }
}

/// The log of one stage, or of all where no stage is given.
pub(crate) fn log(shop: &Shop, opened: &Opened, stage: Option<Stage>) -> Markup {
    let matters = matters(opened, stage);
    let names = names(opened, &matters);
    let (first, rest) = matters.split_at(matters.len().min(SHOWN));
    html! {
        @if !matters.is_empty() {
            ol.log { @for matter in first { (one(shop, opened, matter, &names)) } }
            @if !rest.is_empty() {
                details.older id="older" {
                    summary { "The " (rest.len()) " entries before these" }
                    ol.log { @for matter in rest { (one(shop, opened, matter, &names)) } }
                }
            }
        }
    }
}

/// The last few matters, for the job's own page.
pub(crate) fn last(shop: &Shop, opened: &Opened, count: usize) -> Markup {
    let mut matters = matters(opened, None);
    matters.truncate(count);
    let names = names(opened, &matters);
    html! { ol.log.in-line { @for matter in &matters { (one(shop, opened, matter, &names)) } } }
}

/// The last entry of a stage that still stands, for taking it back.
pub(crate) fn last_standing(opened: &Opened, stage: Stage) -> Option<&Line> {
    let stands = |line: &&Line| {
        let writes = matches!(line.entry.act, Act::Write { .. } | Act::Correct { .. });
        writes && line.replaced_by.is_none() && stage_of(&line.place) == stage
    };
    opened.job.log.iter().rev().find(stands)
}

/// Newest first, by the last thing that happened to each.
fn matters(opened: &Opened, stage: Option<Stage>) -> Vec<Matter<'_>> {
    let mut of: BTreeMap<EntryId, usize> = BTreeMap::new();
    let mut matters: Vec<Matter> = Vec::new();
    for line in opened.job.log.iter().filter(|line| belongs(line, stage)) {
        let replaced = match &line.entry.act {
            Act::Correct { replaces, .. } | Act::Strike { replaces, .. } => {
                of.get(replaces).copied()
            }
            _ => None,
        };
        let place = replaced.unwrap_or(matters.len());
        match matters.get_mut(place) {
            Some(matter) => matter.lines.push(line),
            None => matters.push(Matter { lines: vec![line] }),
        }
        of.insert(line.entry.id, place);
    }
    matters
        .sort_by_key(|matter| std::cmp::Reverse((matter.last().entry.at, matter.last().entry.id)));
    matters
}

fn belongs(line: &Line, stage: Option<Stage>) -> bool {
    let Some(stage) = stage else { return true };
    match &line.entry.act {
        Act::Note { stage: at, .. } => at == stage.key(),
        Act::Tick { .. } => false,
        Act::Strike { .. } if line.place.is_empty() => false,
        _ => stage_of(&line.place) == stage,
    }
}

/// What the places are called, each stage's fields being built once.
fn names(opened: &Opened, matters: &[Matter]) -> BTreeMap<String, String> {
    let mut stages: Vec<Stage> =
        matters.iter().map(|matter| stage_of(&matter.last().place)).collect();
    stages.sort();
    stages.dedup();
    let mut names = BTreeMap::new();
    for stage in stages {
        let groups = fields::of(stage, opened);
        names.extend(fields::all(&groups).map(|field| (field.place.clone(), field.say.clone())));
    }
    names
}

fn one(shop: &Shop, opened: &Opened, matter: &Matter, names: &BTreeMap<String, String>) -> Markup {
    let last = matter.last();
    let values = matter.values();
    html! {
        li {
            (margin(shop, opened, last))
            @match &matter.lines[0].entry.act {
                Act::Note { text, .. } => { span.remark { (text) } }
                Act::Tick { step } => {
                    span { (step_words(opened, step)) }
                    span.entry { @if matter.is_struck() { del { "done" } } @else { "done" } }
                }
                _ => {
                    span { (names.get(&last.place).cloned().unwrap_or_else(|| last.place.replace('.', ", "))) }
                    (written(&values, matter.is_struck()))
                }
            }
            @for why in matter.why() { em { (why) } }
        }
    }
}

/// Old values struck through, the one that stands after them.
fn written(values: &[&str], struck: bool) -> Markup {
    let standing = usize::from(!struck);
    let (old, now) = values.split_at(values.len().saturating_sub(standing));
    html! {
        span.entry {
            @for value in old { del { (show(value)) } " " }
            @for value in now { ins { (show(value)) } }
        }
    }
}

fn show(value: &str) -> &str {
    if value.is_empty() { "(nothing)" } else { value }
}

/// When, and whose hand.
fn margin(shop: &Shop, opened: &Opened, line: &Line) -> Markup {
    let newest = opened.book.entries().last().map_or(line.entry.at, |entry| entry.at);
    let title = time::long(line.entry.at, shop.zone());
    html! {
        time.margin datetime=(line.entry.at) title=(title) {
            (time::short(line.entry.at, newest, shop.zone())) " " (line.entry.by)
        }
    }
}

fn step_words(opened: &Opened, step: &str) -> String {
    let (id, hold) = step.strip_suffix(".hold").map_or((step, ""), |id| (id, "Agreed: "));
    let all = opened.plan.on.iter().chain(&opened.plan.off);
    let found = all.into_iter().find(|one| one.id == id);
    found.map_or_else(|| step.to_owned(), |one| format!("{hold}{}", one.title_text()))
}
