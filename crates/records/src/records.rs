//! The file with the log books.

use std::path::Path;
use std::time::Duration;

use jiff::Timestamp;
use job::{Act, Entry, EntryId, LogBook};
use sqlx::sqlite::{
    SqliteConnectOptions, SqliteJournalMode, SqlitePool, SqlitePoolOptions, SqliteSynchronous,
};
use sqlx::{Row, Sqlite, Transaction};

use crate::{JobId, Listed, RecordsError};

/// How long a writer waits for another one to finish.
const PATIENCE: Duration = Duration::from_secs(5);

/// Log books on `SQLite`. Cheap to clone; all clones share one pool.
#[derive(Clone, Debug)]
pub struct Records {
    pool: SqlitePool,
}

impl Records {
    /// Opens the file, and makes it if it is not there.
    ///
    /// # Errors
    /// [`RecordsError::Open`] when it cannot be opened, or was made by a later version.
    pub async fn open(path: &Path) -> Result<Self, RecordsError> {
        let failed = |why: Box<dyn std::error::Error + Send + Sync>| RecordsError::Open {
            path: path.to_owned(),
            why,
        };
        let options = SqliteConnectOptions::new()
            .filename(path)
            .create_if_missing(true)
            .journal_mode(SqliteJournalMode::Wal)
            .synchronous(SqliteSynchronous::Full)
            .foreign_keys(true)
            .busy_timeout(PATIENCE);
        let pool = SqlitePoolOptions::new().max_connections(4).connect_with(options).await;
        let pool = pool.map_err(|why| failed(why.into()))?;
        let brought = sqlx::migrate!("migrations/sqlite").run(&pool).await;
        brought.map_err(|why| failed(why.into()))?;
        Ok(Self { pool })
    }

    /// Finishes what is under way and closes the file.
    pub async fn close(&self) {
        self.pool.close().await;
    }

    /// All jobs, the one written last first.
    ///
    /// # Errors
    /// [`RecordsError`] of the database, or of an entry that cannot be read.
    pub async fn jobs(&self) -> Result<Vec<Listed>, RecordsError> {
        let mut jobs = Vec::new();
        for (id, _) in self.lengths().await? {
            jobs.push(Listed::of(id, &self.book(id).await?));
        }
        jobs.sort_by_key(|job| std::cmp::Reverse((job.last, job.id)));
        Ok(jobs)
    }

    /// Every job with the number of its entries. A book only grows, so that the number names the
    /// state of the book.
    ///
    /// # Errors
    /// [`RecordsError`] of the database.
    pub async fn lengths(&self) -> Result<Vec<(JobId, usize)>, RecordsError> {
        const ALL: &str = "SELECT jobs.id, COUNT(entries.id) FROM jobs \
                           LEFT JOIN entries ON entries.job = jobs.id GROUP BY jobs.id";
        let rows: Vec<(String, i64)> = sqlx::query_as(ALL).fetch_all(&self.pool).await?;
        rows.into_iter().map(|(id, count)| Ok((job_id(&id)?, as_length(count)))).collect()
    }

    /// How many entries a job has.
    ///
    /// # Errors
    /// [`RecordsError::NoSuchJob`], or of the database.
    pub async fn length(&self, job: JobId) -> Result<usize, RecordsError> {
        const ONE: &str = "SELECT (SELECT COUNT(*) FROM entries WHERE job = jobs.id) FROM jobs \
                           WHERE id = ?";
        let found = sqlx::query_scalar(ONE).bind(job.to_string()).fetch_optional(&self.pool);
        found.await?.map(as_length).ok_or(RecordsError::NoSuchJob(job))
    }

    /// Begins a job with a title and nothing else.
    ///
    /// # Errors
    /// [`RecordsError`] of the database.
    pub async fn create(&self, title: &str, by: &str) -> Result<JobId, RecordsError> {
        let act = Act::Write { place: "job.title".into(), value: title.into() };
        self.import(&LogBook::new([crate::new_entry(by, act)])).await
    }

    /// Adds one entry. When this returns, the entry is on the disk. One that is there already
    /// counts once.
    ///
    /// # Errors
    /// [`RecordsError::NoSuchJob`]; [`RecordsError::SaysElse`] when another entry has its name;
    /// or of the database.
    pub async fn append(&self, job: JobId, entry: &Entry) -> Result<(), RecordsError> {
        self.merge(job, std::slice::from_ref(entry)).await
    }

    /// Adds entries, all or none: the union of two books.
    ///
    /// # Errors
    /// As [`Records::append`].
    pub async fn merge(&self, job: JobId, entries: &[Entry]) -> Result<(), RecordsError> {
        let mut writing = self.pool.begin_with("BEGIN IMMEDIATE").await?;
        add(&mut writing, job, entries).await?;
        Ok(writing.commit().await?)
    }

    /// Begins a job with these entries.
    ///
    /// # Errors
    /// [`RecordsError`] of the database.
    pub async fn import(&self, book: &LogBook) -> Result<JobId, RecordsError> {
        let job = JobId::new();
        let mut writing = self.pool.begin_with("BEGIN IMMEDIATE").await?;
        sqlx::query("INSERT INTO jobs (id) VALUES (?)")
            .bind(job.to_string())
            .execute(&mut *writing)
            .await?;
        add(&mut writing, job, book.entries()).await?;
        writing.commit().await?;
        Ok(job)
    }

    /// The log book of a job.
    ///
    /// # Errors
    /// [`RecordsError::NoSuchJob`]; [`RecordsError::Unreadable`]; or of the database.
    pub async fn book(&self, job: JobId) -> Result<LogBook, RecordsError> {
        let rows = sqlx::query("SELECT id, at, hand, act FROM entries WHERE job = ?")
            .bind(job.to_string())
            .fetch_all(&self.pool)
            .await?;
        if rows.is_empty() {
            self.length(job).await?;
        }
        let entries: Result<Vec<Entry>, RecordsError> =
            rows.iter().map(|row| entry(job, row)).collect();
        Ok(LogBook::new(entries?))
    }

    /// A job as a file: what it says now, and every entry that led to it.
    ///
    /// # Errors
    /// As [`Records::book`], and [`RecordsError::NotAFile`].
    pub async fn export(&self, job: JobId) -> Result<String, RecordsError> {
        let book = self.book(job).await?;
        let file = job::JobFile { entries: book.entries().to_vec(), ..book.job().to_file() };
        job::write(&file).map_err(|why| RecordsError::NotAFile { job, why: why.to_string() })
    }
}

async fn add(
    writing: &mut Transaction<'_, Sqlite>,
    job: JobId,
    entries: &[Entry],
) -> Result<(), RecordsError> {
    const ADD: &str = "INSERT INTO entries (job, id, at, hand, act) VALUES (?, ?, ?, ?, ?) \
                       ON CONFLICT DO NOTHING";
    for entry in entries {
        let act = serde_json::to_string(&entry.act)
            .map_err(|why| unreadable(job, &entry.id.0.to_string(), &why))?;
        let added = sqlx::query(ADD)
            .bind(job.to_string())
            .bind(entry.id.0.to_string())
            .bind(entry.at.to_string())
            .bind(&entry.by)
            .bind(act)
            .execute(&mut **writing)
            .await;
        added.map_err(|why| refused(why, job, entry.id))?;
    }
    Ok(())
}

/// What the database's refusal means.
fn refused(why: sqlx::Error, job: JobId, entry: EntryId) -> RecordsError {
    let Some(database) = why.as_database_error() else { return why.into() };
    if database.is_foreign_key_violation() {
        RecordsError::NoSuchJob(job)
    } else if database.message().contains("never replaced") {
        RecordsError::SaysElse { job, entry }
    } else {
        why.into()
    }
}

fn entry(job: JobId, row: &sqlx::sqlite::SqliteRow) -> Result<Entry, RecordsError> {
    let id: String = row.try_get("id")?;
    let at: String = row.try_get("at")?;
    let act: String = row.try_get("act")?;
    Ok(Entry {
        id: EntryId(id.parse().map_err(|why: uuid::Error| unreadable(job, &id, &why))?),
        at: at.parse::<Timestamp>().map_err(|why| unreadable(job, &id, &why))?,
        by: row.try_get("hand")?,
        act: serde_json::from_str(&act).map_err(|why| unreadable(job, &id, &why))?,
    })
}

fn unreadable(job: JobId, entry: &str, why: &dyn std::fmt::Display) -> RecordsError {
    let (job, entry, why) = (job.to_string(), entry.to_owned(), why.to_string());
    RecordsError::Unreadable { job, entry, why }
}

fn job_id(text: &str) -> Result<JobId, RecordsError> {
    text.parse().map_err(|why: uuid::Error| RecordsError::Unreadable {
        job: text.to_owned(),
        entry: String::new(),
        why: why.to_string(),
    })
}

fn as_length(count: i64) -> usize {
    usize::try_from(count).unwrap_or(0)
}
