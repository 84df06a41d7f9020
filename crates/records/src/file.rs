//! From a job file to the log book that says the same.

use jiff::{SignedDuration, Timestamp};
use job::{JobFile, LogBook};

use crate::next_id;

/// The log book of a job file: its own entries where they alone say all that its tables say,
/// otherwise one entry for each thing in its tables, made by `by` before the file's own entries.
pub fn book_of_file(file: &JobFile, by: &str) -> LogBook {
    let log = LogBook::new(file.entries.iter().cloned());
    let said = job::Job::from_file(file);
    if log.job().to_file() == said.to_file() {
        return log;
    }
    // What the tables say is older than what was entered after them.
    let first = log.entries().first().map(|entry| entry.at - SignedDuration::from_secs(1));
    let at = first.unwrap_or_else(Timestamp::now);
    LogBook::from_file(file, at, by, next_id)
}
