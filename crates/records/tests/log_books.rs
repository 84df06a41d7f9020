//! The records on a real file: what is written stays, twice is once, and two books become one.
#![expect(clippy::unwrap_used, reason = "a test may stop")]

use job::{Act, Entry, LogBook};
use records::{JobId, Records, RecordsError, book_of_file, new_entry};
use tempfile::TempDir;

async fn opened() -> (Records, TempDir) {
    let folder = TempDir::new().unwrap();
    (Records::open(&folder.path().join("books.db")).await.unwrap(), folder)
}

fn write(place: &str, value: &str) -> Entry {
    new_entry("R.A.", Act::Write { place: place.into(), value: value.into() })
}

#[tokio::test]
async fn what_is_written_is_read_back_word_for_word() {
    let (records, folder) = opened().await;
    let job = records.create("Sea-water pump 2", "R.A.").await.unwrap();
    let reading = write("sizes.driver.bore.1.along", "80.012 ± 0.004 mm");
    records.append(job, &reading).await.unwrap();
    records.close().await;
    let again = Records::open(&folder.path().join("books.db")).await.unwrap();
    let book = again.book(job).await.unwrap();
    assert_eq!(book.entries().last(), Some(&reading));
    let bore = &book.job().file.sizes.driver.bore["1"];
    assert_eq!(bore.along.as_ref().unwrap().text(), "80.012 ± 0.004 mm");
}

#[tokio::test]
async fn the_list_says_what_the_books_say_last_written_first() {
    let (records, _folder) = opened().await;
    let one = records.create("Boiler feed pump", "T.B.").await.unwrap();
    let two = records.create("Drum line", "T.B.").await.unwrap();
    for (place, value) in [("job.number", "41"), ("coupling.kind", "disc")] {
        records.append(one, &write(place, value)).await.unwrap();
    }
    let listed = records.jobs().await.unwrap();
    let seen =
        listed.iter().map(|job| (job.id, job.title.as_str(), job.kind.as_str(), job.entries));
    let wanted = [(one, "Boiler feed pump", "disc", 3), (two, "Drum line", "", 1)];
    assert_eq!(seen.collect::<Vec<_>>(), wanted);
    assert_eq!((listed[0].number.as_str(), listed[0].by.as_str()), ("41", "R.A."));
}

#[tokio::test]
async fn the_same_entry_twice_counts_once() {
    let (records, _folder) = opened().await;
    let job = records.create("Pump", "R.A.").await.unwrap();
    let reading = write("gap.readings.12", "6.02 mm");
    records.append(job, &reading).await.unwrap();
    records.append(job, &reading).await.unwrap();
    assert_eq!(records.length(job).await.unwrap(), 2);
}

#[tokio::test]
async fn another_entry_under_the_same_name_is_refused() {
    let (records, _folder) = opened().await;
    let job = records.create("Pump", "R.A.").await.unwrap();
    let reading = write("gap.readings.12", "6.02 mm");
    let forged = Entry { id: reading.id, ..write("gap.readings.12", "6.20 mm") };
    records.append(job, &reading).await.unwrap();
    let refused = records.append(job, &forged).await;
    assert!(matches!(refused, Err(RecordsError::SaysElse { .. })), "{refused:?}");
    assert_eq!(records.book(job).await.unwrap().entries().last(), Some(&reading));
}

#[tokio::test]
async fn a_job_that_is_not_there_is_said_to_be_not_there() {
    let (records, _folder) = opened().await;
    let nobody: JobId = "0190b3a5-0000-7000-8000-000000000000".parse().unwrap();
    let entry = write("job.title", "x");
    assert!(matches!(records.append(nobody, &entry).await, Err(RecordsError::NoSuchJob(_))));
    assert!(matches!(records.book(nobody).await, Err(RecordsError::NoSuchJob(_))));
    assert!(matches!(records.export(nobody).await, Err(RecordsError::NoSuchJob(_))));
    assert!(matches!(records.length(nobody).await, Err(RecordsError::NoSuchJob(_))));
}

#[tokio::test]
async fn two_books_of_one_job_become_their_union() {
    let (pit, _pit_folder) = opened().await;
    let (office, _office_folder) = opened().await;
    let common = LogBook::new([write("job.title", "Pump"), write("job.number", "41")]);
    let in_pit = pit.import(&common).await.unwrap();
    let in_office = office.import(&common).await.unwrap();
    pit.append(in_pit, &write("gap.readings.12", "6.02 mm")).await.unwrap();
    office.append(in_office, &write("heat.method", "oven")).await.unwrap();
    let brought = pit.book(in_pit).await.unwrap();
    office.merge(in_office, brought.entries()).await.unwrap();
    office.merge(in_office, brought.entries()).await.unwrap();
    let file = office.book(in_office).await.unwrap().job().file;
    assert_eq!(office.length(in_office).await.unwrap(), 4);
    assert_eq!(file.gap.readings["12"].text(), "6.02 mm");
    assert_eq!(file.heat.method, "oven");
}

#[tokio::test]
async fn entries_added_at_once_are_all_there() {
    let (records, _folder) = opened().await;
    let job = records.create("Pump", "R.A.").await.unwrap();
    let hands = (0..8).map(|hand| {
        let records = records.clone();
        tokio::spawn(async move {
            for reading in 0..10 {
                let place = format!("sizes.driver.bore.{}.along", hand * 10 + reading);
                records.append(job, &write(&place, "80.012 mm")).await.unwrap();
            }
        })
    });
    for hand in hands.collect::<Vec<_>>() {
        hand.await.unwrap();
    }
    assert_eq!(records.book(job).await.unwrap().job().file.sizes.driver.bore.len(), 80);
}

/// The other program that may have the file open is a second pool here.
#[tokio::test]
async fn two_programs_may_write_to_one_file() {
    let (one, folder) = opened().await;
    let other = Records::open(&folder.path().join("books.db")).await.unwrap();
    let job = one.create("Pump", "R.A.").await.unwrap();
    for reading in 0..20 {
        let writer = if reading % 2 == 0 { &one } else { &other };
        let entry = write(&format!("sizes.driver.bore.{reading}.at"), "12 mm");
        writer.append(job, &entry).await.unwrap();
    }
    assert_eq!(other.length(job).await.unwrap(), 21);
}

#[tokio::test]
async fn a_file_says_the_same_after_export_and_import() {
    let (records, _folder) = opened().await;
    let job = records.create("Pump", "R.A.").await.unwrap();
    let wrong = write("sizes.driver.bore.1.along", "80.516 mm");
    let act = Act::Correct {
        replaces: wrong.id,
        value: "80.016 mm".into(),
        why: "one turn of the thimble".into(),
    };
    for entry in
        [wrong, new_entry("R.A.", act), new_entry("T.B.", Act::Tick { step: "on.lockout".into() })]
    {
        records.append(job, &entry).await.unwrap();
    }
    let file = job::read(&records.export(job).await.unwrap()).unwrap();
    let back = records.import(&book_of_file(&file, "X.X.")).await.unwrap();
    assert_eq!(records.book(back).await.unwrap(), records.book(job).await.unwrap());
}

/// A file's tables are older than the entries after them, whatever the clock says now.
#[tokio::test]
async fn a_correction_in_a_file_outlives_the_import() {
    let (records, _folder) = opened().await;
    let text = r#"
        hubwright = 1
        [job]
        title = "Pump"
        units = "metric"
        [[entries]]
        id = "0190b3a5-0000-7000-8000-000000000001"
        at = "2020-01-01T08:00:00Z"
        by = "R.A."
        act = { write = { place = "job.title", value = "Sea-water pump" } }
    "#;
    let file = job::read(text).unwrap();
    let job = records.import(&book_of_file(&file, "R.A.")).await.unwrap();
    assert_eq!(records.book(job).await.unwrap().job().file.job.title, "Sea-water pump");
}
