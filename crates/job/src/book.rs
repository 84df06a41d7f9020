//! From entries to what they say now.

use std::collections::{BTreeMap, BTreeSet};

use jiff::Timestamp;
use serde_json::{Map, Value as Json};

use crate::plan::Done;
use crate::{Act, Entry, EntryId, JobFile, Problem, Stage, Written, impossible};

/// A log book: entries, never changed. Two log books of one job are brought together by their
/// union.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LogBook {
    entries: Vec<Entry>,
}

/// What a log book says now.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Job {
    /// The tables.
    pub file: JobFile,
    /// Every entry, oldest first, with what became of it.
    pub log: Vec<Line>,
    /// Steps done, by the step's name.
    pub ticks: BTreeMap<String, Done>,
    /// Remarks, oldest first.
    pub notes: Vec<Note>,
    /// Entries that this program cannot read; they are kept, and shown.
    pub set_aside: Vec<SetAside>,
}

/// One line of the log as a reader sees it.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The entry.
    pub entry: Entry,
    /// The place it writes at; empty for notes and steps.
    pub place: String,
    /// What it wrote.
    pub shown: String,
    /// The entry that took its place.
    pub replaced_by: Option<EntryId>,
}

/// A remark.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// Where.
    pub stage: Option<Stage>,
    /// When.
    pub at: Timestamp,
    /// Who.
    pub by: String,
    /// What.
    pub text: String,
}

/// An entry that could not be read, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct SetAside {
    /// The entry.
    pub entry: EntryId,
    /// Where it writes.
    pub place: String,
    /// What is wrong with it.
    pub why: String,
}

/// Why an act cannot be entered.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ActError {
    /// The place or what is to be written there is not right.
    #[error("{place}: {why}")]
    Unreadable {
        /// The place.
        place: String,
        /// What is wrong.
        why: String,
    },
    /// It reads, but cannot be.
    #[error("{}", .0.what)]
    Impossible(Problem),
    /// The entry to be replaced is not in this book.
    #[error("there is no entry {} in this log book to replace", .0.0)]
    NoSuchEntry(EntryId),
}

impl LogBook {
    /// A book of these entries, put in order of time; one that is there twice counts once.
    pub fn new(entries: impl IntoIterator<Item = Entry>) -> Self {
        let mut entries: Vec<Entry> = entries.into_iter().collect();
        entries.sort_by_key(|entry| (entry.at, entry.id));
        let mut seen = BTreeSet::new();
        entries.retain(|entry| seen.insert(entry.id));
        Self { entries }
    }

    /// A book that says what a job file says: one entry for each thing written in it, all of one
    /// time and hand, then the file's own entries.
    pub fn from_file(
        file: &JobFile,
        at: Timestamp,
        by: &str,
        mut next: impl FnMut() -> EntryId,
    ) -> Self {
        let mut written = Vec::new();
        leaves(&document(file), &mut String::new(), &mut written);
        let entries = written.into_iter().map(|(place, value)| Entry {
            id: next(),
            at,
            by: by.to_owned(),
            act: Act::Write { place, value },
        });
        let mut entries: Vec<Entry> = entries.collect();
        entries.extend(file.entries.iter().cloned());
        Self { entries }
    }

    /// The entries, oldest first.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// What they say now.
    pub fn job(&self) -> Job {
        Job::folded(
            &JobFile { hubwright: crate::file::VERSION, ..JobFile::default() },
            &self.entries,
        )
    }
}

impl Job {
    /// A job as its file says it, the file's own entries included.
    pub fn from_file(file: &JobFile) -> Self {
        Self::folded(file, &file.entries)
    }

    /// The tables as a file, without the log.
    pub fn to_file(&self) -> JobFile {
        JobFile { entries: Vec::new(), ..self.file.clone() }
    }

    /// Whether an act may be entered now.
    ///
    /// # Errors
    /// [`ActError`] says what is wrong with it, in the words of whoever writes it.
    pub fn accepts(&self, act: &Act) -> Result<(), ActError> {
        let (place, value) = match act {
            Act::Write { place, value } => (place.clone(), value),
            Act::Correct { replaces, value, .. } => (self.place_of(*replaces)?, value),
            Act::Strike { replaces, .. } => return self.place_of(*replaces).map(drop),
            Act::Note { .. } | Act::Tick { .. } => return Ok(()),
        };
        let mut doc = document(&self.file);
        let file = set(&mut doc, &place, value)
            .and_then(|()| typed(doc))
            .map_err(|why| ActError::Unreadable { place: place.clone(), why })?;
        match impossible(&file).into_iter().find(|problem| problem.place == place) {
            Some(problem) => Err(ActError::Impossible(problem)),
            None => Ok(()),
        }
    }

    fn place_of(&self, id: EntryId) -> Result<String, ActError> {
        let line = self.log.iter().find(|line| line.entry.id == id);
        line.map(|line| line.place.clone()).ok_or(ActError::NoSuchEntry(id))
    }

    fn folded(base: &JobFile, entries: &[Entry]) -> Self {
        let mut job = Self { log: lines(entries), ..Self::default() };
        for entry in entries {
            job.remember(entry);
        }
        let standing: Vec<(EntryId, String, &Written)> = job
            .log
            .iter()
            .zip(entries)
            .filter(|(line, _)| line.replaced_by.is_none())
            .filter_map(|(line, entry)| Some((entry.id, line.place.clone(), written(&entry.act)?)))
            .collect();
        let (file, set_aside) = tables(base, &standing);
        job.file = file;
        job.set_aside = set_aside;
        job
    }

    fn remember(&mut self, entry: &Entry) {
        match &entry.act {
            Act::Note { stage, text } => self.notes.push(Note {
                stage: Stage::of(stage),
                at: entry.at,
                by: entry.by.clone(),
                text: text.clone(),
            }),
            Act::Tick { step } if self.stands(entry.id) => {
                let at = entry.at.strftime("%Y-%m-%d %H:%M").to_string();
                self.ticks.insert(step.clone(), Done { at, by: entry.by.clone() });
            }
            _ => {}
        }
    }

    fn stands(&self, id: EntryId) -> bool {
        self.log.iter().any(|line| line.entry.id == id && line.replaced_by.is_none())
    }
}

fn written(act: &Act) -> Option<&Written> {
    match act {
        Act::Write { value, .. } | Act::Correct { value, .. } => Some(value),
        Act::Strike { .. } | Act::Note { .. } | Act::Tick { .. } => None,
    }
}

/// The log with its places worked out and its corrections followed.
fn lines(entries: &[Entry]) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::with_capacity(entries.len());
    for entry in entries {
        let (place, shown, replaces) = match &entry.act {
            Act::Write { place, value } => (place.clone(), value.shown(), None),
            Act::Correct { replaces, value, .. } => (String::new(), value.shown(), Some(*replaces)),
            Act::Strike { replaces, .. } => (String::new(), String::new(), Some(*replaces)),
            Act::Note { text, .. } => (String::new(), text.clone(), None),
            Act::Tick { step } => (String::new(), step.clone(), None),
        };
        let mut line = Line { entry: entry.clone(), place, shown, replaced_by: None };
        let old = lines.iter_mut().find(|old| Some(old.entry.id) == replaces);
        if let Some(old) = old {
            old.replaced_by = Some(entry.id);
            line.place.clone_from(&old.place);
        }
        lines.push(line);
    }
    lines
}

/// The tables that the standing entries write; what cannot be read is set aside.
fn tables(base: &JobFile, standing: &[(EntryId, String, &Written)]) -> (JobFile, Vec<SetAside>) {
    let mut doc = document(base);
    let all = standing.iter().try_for_each(|(_, place, value)| set(&mut doc, place, value));
    if let (Ok(()), Ok(file)) = (all, typed(doc)) {
        return (file, Vec::new());
    }
    let mut doc = document(base);
    let mut set_aside = Vec::new();
    for (entry, place, value) in standing {
        let mut tried = doc.clone();
        match set(&mut tried, place, value).and_then(|()| typed(tried.clone()).map(drop)) {
            Ok(()) => doc = tried,
            Err(why) => set_aside.push(SetAside { entry: *entry, place: place.clone(), why }),
        }
    }
    (typed(doc).unwrap_or_else(|_| base.clone()), set_aside)
}

fn document(file: &JobFile) -> Map<String, Json> {
    match serde_json::to_value(file) {
        Ok(Json::Object(mut map)) => {
            map.remove("entries");
            map
        }
        _ => Map::new(),
    }
}

fn typed(doc: Map<String, Json>) -> Result<JobFile, String> {
    serde_json::from_value(Json::Object(doc)).map_err(|error| error.to_string())
}

/// Writes at a place, making the tables on the way. An empty text clears the place.
fn set(doc: &mut Map<String, Json>, place: &str, value: &Written) -> Result<(), String> {
    let mut keys: Vec<&str> = place.split('.').collect();
    let last = keys.pop().filter(|key| !key.is_empty() && !keys.is_empty());
    let last = last.ok_or_else(|| format!("“{place}” is not a place in a job"))?;
    let mut table = doc;
    for key in keys {
        let next = table.entry(key).or_insert_with(|| Json::Object(Map::new()));
        table =
            next.as_object_mut().ok_or_else(|| format!("“{key}” holds a value, not a table"))?;
    }
    match value {
        Written::Text(text) if text.trim().is_empty() => {
            table.remove(last);
        }
        Written::Text(text) => {
            table.insert(last.to_owned(), Json::String(text.clone()));
        }
        Written::Flag(flag) => {
            table.insert(last.to_owned(), Json::Bool(*flag));
        }
        Written::List(texts) => {
            let texts = texts.iter().cloned().map(Json::String).collect();
            table.insert(last.to_owned(), Json::Array(texts));
        }
    }
    Ok(())
}

pub(crate) fn leaves(
    table: &Map<String, Json>,
    path: &mut String,
    out: &mut Vec<(String, Written)>,
) {
    for (key, value) in table {
        let length = path.len();
        if !path.is_empty() {
            path.push('.');
        }
        path.push_str(key);
        match value {
            Json::Object(inner) => leaves(inner, path, out),
            Json::String(text) => out.push((path.clone(), Written::Text(text.clone()))),
            Json::Bool(flag) => out.push((path.clone(), Written::Flag(*flag))),
            Json::Array(texts) => {
                let texts = texts.iter().filter_map(|text| text.as_str().map(str::to_owned));
                out.push((path.clone(), Written::List(texts.collect())));
            }
            // The version mark is the file's, not an entry's.
            Json::Number(number) if path.contains('.') => {
                out.push((path.clone(), Written::Text(number.to_string())));
            }
            Json::Number(_) | Json::Null => {}
        }
        path.truncate(length);
    }
}
