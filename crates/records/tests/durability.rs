//! What was appended outlives a program that is killed, and nothing rubs it out.
#![expect(clippy::disallowed_methods, reason = "these tests write to a disk")]
#![expect(clippy::unwrap_used, reason = "a test may stop")]

use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

use job::Act;
use records::{Records, new_entry};
use sqlx::Connection;
use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection};
use tempfile::TempDir;

const FILE: &str = "HUBWRIGHT_TEST_BOOKS";
const READINGS: usize = 25;

/// The test starts itself once more as the program that is killed: it appends without end and
/// says each time that the entry is kept.
#[tokio::test]
async fn a_killed_program_leaves_every_reading_it_had_kept() {
    if let Some(path) = std::env::var_os(FILE) {
        return append_until_killed(path.as_ref()).await;
    }
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("books.db");
    let mut program = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "a_killed_program_leaves_every_reading_it_had_kept", "--nocapture"])
        .env(FILE, &path)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let said = BufReader::new(program.stdout.take().unwrap()).lines();
    let kept = said.map_while(Result::ok).filter(|line| line.contains("kept")).take(READINGS);
    assert_eq!(kept.count(), READINGS);
    program.kill().unwrap();
    program.wait().unwrap();

    let records = Records::open(&path).await.unwrap();
    let jobs = records.jobs().await.unwrap();
    assert!(jobs[0].entries > READINGS, "{} of {READINGS} and the title", jobs[0].entries);
}

async fn append_until_killed(path: &std::path::Path) {
    let records = Records::open(path).await.unwrap();
    let job = records.create("Pump", "R.A.").await.unwrap();
    for reading in 0.. {
        let place = format!("sizes.driver.bore.{reading}.along");
        let act = Act::Write { place, value: "80.012 mm".into() };
        records.append(job, &new_entry("R.A.", act)).await.unwrap();
        println!("kept");
    }
}

/// Somebody at the database with another program.
#[tokio::test]
async fn the_database_itself_refuses_to_rub_out() {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("books.db");
    let records = Records::open(&path).await.unwrap();
    let job = records.create("Pump", "R.A.").await.unwrap();
    let options = SqliteConnectOptions::new().filename(&path);
    let mut other = SqliteConnection::connect_with(&options).await.unwrap();
    for rubbing in [
        "UPDATE entries SET hand = 'X.X.'",
        "DELETE FROM entries",
        "INSERT OR REPLACE INTO entries SELECT job, id, at, 'X.X.', act FROM entries",
        "DELETE FROM jobs",
        "INSERT INTO entries SELECT job, 'no JSON', at, hand, 'act' FROM entries",
        "INSERT INTO entries SELECT 'nobody', id, at, hand, act FROM entries",
    ] {
        assert!(sqlx::query(rubbing).execute(&mut other).await.is_err(), "{rubbing}");
    }
    assert_eq!(records.book(job).await.unwrap().entries()[0].by, "R.A.");
}

/// The settings that durability rests on.
#[tokio::test]
async fn the_file_is_a_write_ahead_log() {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("books.db");
    let records = Records::open(&path).await.unwrap();
    records.create("Pump", "R.A.").await.unwrap();
    let options = SqliteConnectOptions::new().filename(&path);
    let mut other = SqliteConnection::connect_with(&options).await.unwrap();
    let mode: String =
        sqlx::query_scalar("PRAGMA journal_mode").fetch_one(&mut other).await.unwrap();
    assert_eq!(mode, "wal");
}

/// A file that a later version has changed is refused, not guessed at.
#[tokio::test]
async fn a_file_of_a_later_version_is_refused() {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("books.db");
    Records::open(&path).await.unwrap().close().await;
    let options = SqliteConnectOptions::new().filename(&path);
    let mut other = SqliteConnection::connect_with(&options).await.unwrap();
    let later = "INSERT INTO _sqlx_migrations (version, description, success, checksum, \
                 execution_time) VALUES (29990101000000, 'later', 1, x'00', 0)";
    sqlx::query(later).execute(&mut other).await.unwrap();
    other.close().await.unwrap();
    let refused = Records::open(&path).await.unwrap_err();
    assert!(refused.to_string().contains("29990101000000"), "{refused}");
}

#[tokio::test]
async fn a_file_that_is_no_database_is_refused() {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("books.db");
    std::fs::write(&path, "not a database, but a long enough text to be taken for one").unwrap();
    assert!(Records::open(&path).await.is_err());
}
