//! From a form that was sent to entries in the log book.
//!
//! The form sends every field of its page and, beside each, what the page had shown there. Only a
//! field that differs from both what was shown and what stands now becomes an entry, so that a
//! page left open while another hand wrote never takes that writing back.

use std::collections::BTreeMap;

use axum::Form;
use job::{Act, ActError, EntryId, Job, Line, LogBook, Stage, Written};
use quantities::System;
use records::new_entry;

use crate::fields::{self, Face, Field, Group};
use crate::form::{self, Refused};
use crate::hand::Hand;
use crate::opened::{BETWEEN, Opened, standing};
use crate::{PageError, Shop};

/// A form as it was sent: names and values in order.
pub(crate) struct Sent(Vec<(String, String)>);

impl From<Form<Vec<(String, String)>>> for Sent {
    fn from(Form(pairs): Form<Vec<(String, String)>>) -> Self {
        Self(pairs)
    }
}

impl Sent {
    pub fn get(&self, name: &str) -> Option<&str> {
        self.0.iter().find(|(key, _)| key == name).map(|(_, value)| value.as_str())
    }

    /// The units that the page was shown in.
    fn units(&self, usual: System) -> System {
        match self.get("units") {
            Some("metric") => System::Metric,
            Some("inch") => System::Inch,
            _ => usual,
        }
    }
}

/// What became of a form.
#[derive(Default)]
pub(crate) struct Outcome {
    pub refused: BTreeMap<String, Refused>,
    /// The place of the field to go on to.
    pub next: String,
}

/// Writes what a form says that the page did not show.
pub(crate) async fn write(
    shop: &Shop,
    opened: &Opened,
    stage: Stage,
    hand: &Hand,
    sent: &Sent,
) -> Result<Outcome, PageError> {
    let mut pen =
        Pen { shop, opened, by: &hand.by, book: opened.book.clone(), job: opened.job.clone() };
    // What was typed beside a button is written before the button does its work.
    let written = pen.write_fields(stage, sent).await?;
    if !written.refused.is_empty() {
        return Ok(written);
    }
    if let Some(entry) = sent.get("undo") {
        return pen.take_back(entry).await;
    }
    if let Some(set) = sent.get("dials") {
        return pen.set_dials(set).await;
    }
    if let Some(pressed) = sent.get("toggle") {
        return pen.toggle(stage, pressed).await;
    }
    Ok(written)
}

/// Writes these values where something else stands now; if one is not accepted, none is written.
pub(crate) async fn put_in(
    shop: &Shop,
    opened: &Opened,
    hand: &Hand,
    acts: Vec<Act>,
) -> Result<(), PageError> {
    let (mut book, mut job) = (opened.book.clone(), opened.job.clone());
    let differs = |place: &str, value: &Written| {
        let now = match value {
            Written::List(texts) => texts.join(BETWEEN),
            Written::Text(_) | Written::Flag(_) => value.shown(),
        };
        opened.text_at(place) != now
    };
    let acts = acts.into_iter().filter_map(|act| match act {
        Act::Write { place, value } if differs(&place, &value) => {
            Some(match standing(&opened.job, &place) {
                Some(line) => Act::Correct { replaces: line.entry.id, value, why: String::new() },
                None => Act::Write { place, value },
            })
        }
        _ => None,
    });
    let mut entries = Vec::new();
    for act in acts {
        job.accepts(&act).map_err(|why| PageError::Unaccepted(sentence(&why)))?;
        let entry = new_entry(&hand.by, act);
        book = LogBook::new(book.entries().iter().cloned().chain([entry.clone()]));
        job = book.job();
        entries.push(entry);
    }
    for entry in &entries {
        shop.records().append(opened.id, entry).await?;
    }
    Ok(())
}

/// What writes: the job as it grows under it.
struct Pen<'a> {
    shop: &'a Shop,
    opened: &'a Opened,
    by: &'a str,
    book: LogBook,
    job: Job,
}

impl Pen<'_> {
    /// Adds one entry, if the job accepts it.
    async fn enter(&mut self, act: Act) -> Result<Result<(), ActError>, PageError> {
        if let Err(why) = self.job.accepts(&act) {
            return Ok(Err(why));
        }
        let entry = new_entry(self.by, act);
        self.shop.records().append(self.opened.id, &entry).await?;
        self.book = LogBook::new(self.book.entries().iter().cloned().chain([entry]));
        self.job = self.book.job();
        Ok(Ok(()))
    }

    async fn write_fields(&mut self, stage: Stage, sent: &Sent) -> Result<Outcome, PageError> {
        let groups = fields::of(stage, self.opened);
        let system = sent.units(self.opened.system);
        let why = sent.get("why").unwrap_or("").trim().to_owned();
        let mut refused = BTreeMap::new();
        let mut last = sent.get("at").unwrap_or("").to_owned();
        for field in fields::all(&groups) {
            let Some(typed) = changed(self.opened, field, system, sent) else { continue };
            let Some(act) = act(&self.job, field, typed, system, &why) else { continue };
            last.clone_from(&field.place);
            if let Err(why) = self.enter(act).await? {
                let why = sentence(&why);
                refused.insert(field.place.clone(), Refused { typed: typed.to_owned(), why });
            }
        }
        let next = refused.keys().next().cloned().unwrap_or_else(|| after(&groups, &last));
        Ok(Outcome { refused, next })
    }

    /// Takes an entry back: what it wrote is struck; what it had replaced stands again.
    async fn take_back(&mut self, entry: &str) -> Result<Outcome, PageError> {
        let id = entry.parse().map(EntryId).map_err(|_| no_entry(entry))?;
        let line =
            self.job.log.iter().find(|line| line.entry.id == id).ok_or_else(|| no_entry(entry))?;
        let next = line.place.clone();
        let act = back(&self.job, line);
        if let Err(why) = self.enter(act).await? {
            return Err(PageError::Unreadable(why.to_string()));
        }
        Ok(Outcome { next, ..Outcome::default() })
    }

    /// Adds one of several to the list at a place, or takes it out.
    async fn toggle(&mut self, stage: Stage, pressed: &str) -> Result<Outcome, PageError> {
        let groups = fields::of(stage, self.opened);
        let (place, value) = pressed.split_once('=').unwrap_or((pressed, ""));
        let has = |field: &&Field| match &field.face {
            Face::Several(choices) => {
                field.place == place && choices.iter().any(|choice| choice.value == value)
            }
            _ => false,
        };
        let field = fields::all(&groups).find(has).ok_or_else(|| no_entry(pressed))?;
        let text = self.opened.text_at(place);
        let mut held: Vec<&str> = text.split(BETWEEN).filter(|one| !one.is_empty()).collect();
        match held.iter().position(|one| *one == value) {
            Some(at) => drop(held.remove(at)),
            None => held.push(value),
        }
        if let Some(act) = act(&self.job, field, &held.join(BETWEEN), self.opened.system, "")
            && let Err(why) = self.enter(act).await?
        {
            return Err(PageError::Unreadable(why.to_string()));
        }
        Ok(Outcome { next: place.to_owned(), ..Outcome::default() })
    }

    async fn set_dials(&mut self, set: &str) -> Result<Outcome, PageError> {
        for (place, word) in fields::template(self.opened, set) {
            let act = Act::Write { place, value: word.into() };
            if let Err(why) = self.enter(act).await? {
                return Err(PageError::Unreadable(why.to_string()));
            }
        }
        Ok(Outcome { next: "lineup.dials".to_owned(), ..Outcome::default() })
    }
}

/// What was typed, where it is neither what the page showed nor what stands there now.
fn changed<'a>(opened: &Opened, field: &Field, system: System, sent: &'a Sent) -> Option<&'a str> {
    let typed = sent.get(&field.place)?.trim();
    let was = sent.get(&format!("was.{}", field.place)).unwrap_or("").trim();
    (typed != was && typed != form::shown(opened, field, system)).then_some(typed)
}

/// The entry that a field's text becomes: a first writing, a correction, or a strike.
fn act(job: &Job, field: &Field, typed: &str, system: System, why: &str) -> Option<Act> {
    let old = standing(job, &field.place).map(|line| line.entry.id);
    let why = why.to_owned();
    match (old, typed.is_empty()) {
        (None, true) => None,
        (Some(replaces), true) => Some(Act::Strike { replaces, why }),
        (None, false) => Some(Act::Write {
            place: field.place.clone(),
            value: value(&field.face, typed, system),
        }),
        (Some(replaces), false) => {
            Some(Act::Correct { replaces, value: value(&field.face, typed, system), why })
        }
    }
}

/// What is written: the text with the unit that stood beside the field, unless one was typed.
fn value(face: &Face, typed: &str, system: System) -> Written {
    let with_unit = |text: &str| {
        let unit = face.unit(system);
        if form::is_bare(text) && !unit.is_empty() {
            format!("{text} {unit}")
        } else {
            text.to_owned()
        }
    };
    let parts = || parts(typed).map(str::trim).filter(|part| !part.is_empty());
    match face {
        Face::Quantity(_) | Face::Hours => Written::Text(with_unit(typed)),
        Face::Quantities(_) => Written::List(parts().map(with_unit).collect()),
        Face::Texts(_) | Face::Several(_) => Written::List(parts().map(str::to_owned).collect()),
        Face::YesNo => Written::Flag(typed == "yes"),
        Face::Words(_) | Face::Code(_) | Face::Choice(..) => Written::Text(typed.to_owned()),
    }
}

/// The parts of a list: semicolons part them; bare numbers may be parted by a comma and a space.
fn parts(typed: &str) -> std::str::Split<'_, &'static str> {
    let numbers = form::is_bare(typed) && !typed.contains(';');
    typed.split(if numbers { ", " } else { ";" })
}

/// The act that takes a line back.
pub(crate) fn back(job: &Job, line: &Line) -> Act {
    let replaces = line.entry.id;
    let older = match line.entry.act {
        Act::Correct { replaces, .. } => job.log.iter().find(|older| older.entry.id == replaces),
        _ => None,
    };
    match older.map(|older| &older.entry.act) {
        Some(Act::Write { value, .. } | Act::Correct { value, .. }) => {
            Act::Correct { replaces, value: value.clone(), why: "taken back".to_owned() }
        }
        _ => Act::Strike { replaces, why: String::new() },
    }
}

/// The place that comes after this one: in its folded group, or among those that stand open.
fn after(groups: &[Group], place: &str) -> String {
    let holds = |group: &&Group| group.fields().any(|field| field.place == place);
    let folded = groups.iter().filter(|group| group.folded).find(holds);
    let mut fields: Vec<&Field> =
        folded.map_or_else(|| fields::open(groups).collect(), |group| group.fields().collect());
    fields.retain(|field| !matches!(field.face, Face::Several(_)));
    let here = fields.iter().position(|field| field.place == place);
    let next = here.and_then(|here| fields.get(here + 1));
    next.map_or(place, |field| field.place.as_str()).to_owned()
}

fn no_entry(text: &str) -> PageError {
    PageError::Unreadable(format!("there is no entry “{text}” in this log book"))
}

/// What is wrong, for whoever typed it.
fn sentence(why: &ActError) -> String {
    match why {
        ActError::Unreadable { why, .. } => format!("Not written: {why}."),
        ActError::Impossible(problem) => {
            format!("Not written: {}; expected {}.", problem.what, problem.expected)
        }
        ActError::NoSuchEntry(_) => format!("Not written: {why}."),
    }
}

#[cfg(test)]
mod tests {
    use quantities::Kind;

    use super::*;

    #[test]
    fn a_list_is_parted_where_whoever_typed_it_parted_it() {
        let list = |face: Face, typed: &str| match value(&face, typed, System::Metric) {
            Written::List(parts) => parts,
            other => panic!("{other:?} is no list"),
        };
        let shims = || Face::Quantities(Kind::Offset);
        assert_eq!(list(shims(), "0.05, 0.10"), ["0.05 mm", "0.10 mm"]);
        assert_eq!(list(shims(), "0,05; 0,10 mm;2 mil"), ["0,05 mm", "0,10 mm", "2 mil"]);
        let locks = "switch 2M open, locked; casing drained;";
        assert_eq!(list(Face::Texts(""), locks), ["switch 2M open, locked", "casing drained"]);
    }
}
