//! Why the records do not answer.

use std::path::PathBuf;

use job::EntryId;

use crate::JobId;

/// Why the records do not answer.
#[derive(Debug, thiserror::Error)]
pub enum RecordsError {
    /// The file cannot be opened or brought up to date.
    #[error("{}: {why}", .path.display())]
    Open {
        /// Which file.
        path: PathBuf,
        /// Why.
        why: Box<dyn std::error::Error + Send + Sync>,
    },
    /// There is no such job.
    #[error("there is no job {0}")]
    NoSuchJob(JobId),
    /// Another entry already has this name.
    #[error("entry {} of job {job} is there already and says something else", .entry.0)]
    SaysElse {
        /// The job.
        job: JobId,
        /// The name of the two entries.
        entry: EntryId,
    },
    /// What is kept cannot be read.
    #[error("entry {entry} of job {job} cannot be read: {why}")]
    Unreadable {
        /// The job.
        job: String,
        /// The entry.
        entry: String,
        /// Why.
        why: String,
    },
    /// The job file cannot be written.
    #[error("job {job} cannot be written as a file: {why}")]
    NotAFile {
        /// The job.
        job: JobId,
        /// Why.
        why: String,
    },
    /// The database.
    #[error("the database does not answer")]
    Database(#[from] sqlx::Error),
}
