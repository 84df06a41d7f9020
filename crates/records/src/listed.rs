//! A job in the list of jobs.

use jiff::Timestamp;
use job::LogBook;
use serde::Serialize;

use crate::JobId;

/// What the list says of a job.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Listed {
    /// Its name in the records.
    pub id: JobId,
    /// Its number in the book.
    pub number: String,
    /// What it is called.
    pub title: String,
    /// Where.
    pub works: String,
    /// The kind of coupling.
    pub kind: String,
    /// How many entries it has.
    pub entries: usize,
    /// When the last one was made.
    pub last: Option<Timestamp>,
    /// Who made it.
    pub by: String,
}

impl Listed {
    pub(crate) fn of(id: JobId, book: &LogBook) -> Self {
        let file = book.job().file;
        let last = book.entries().last();
        Self {
            id,
            number: file.job.number,
            title: file.job.title,
            works: file.job.works,
            kind: file.coupling.kind,
            entries: book.entries().len(),
            last: last.map(|entry| entry.at),
            by: last.map(|entry| entry.by.clone()).unwrap_or_default(),
        }
    }
}
