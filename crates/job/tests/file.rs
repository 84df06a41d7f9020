//! A job as a file: read, written, read again; and what is said of a file that is wrong.
#![expect(clippy::unwrap_used, reason = "a test may stop here")]

use jiff::Timestamp;
use job::{Act, Entry, EntryId, Job, JobFile, LogBook, Written};
use proptest::prelude::*;
use quantities::Measured;

const DEMOS: [(&str, &str); 4] = [
    ("sea-water-pump", include_str!("../../../demo/sea-water-pump.toml")),
    ("drying-belt", include_str!("../../../demo/drying-belt.toml")),
    ("boiler-feed-pump", include_str!("../../../demo/boiler-feed-pump.toml")),
    ("drum-line-shaft", include_str!("../../../demo/drum-line-shaft.toml")),
];

fn read(text: &str) -> JobFile {
    job::read(text).unwrap_or_else(|errors| panic!("{}", errors[0]))
}

/// The errors of a file, as a person reads them.
fn complaint(text: &str) -> String {
    job::read(text).unwrap_err().iter().map(ToString::to_string).collect()
}

fn ids() -> impl FnMut() -> EntryId {
    let mut next = 0_u128;
    move || {
        next += 1;
        EntryId(uuid::Uuid::from_u128(next))
    }
}

#[test]
fn a_written_job_reads_as_the_same_job() {
    for (name, text) in DEMOS {
        let file = read(text);
        assert!(file.job.invented, "{name} must say that it is invented");
        let again = read(&job::write(&file).unwrap());
        assert_eq!(file, again, "{name}");
    }
}

#[test]
fn a_log_book_says_what_its_file_said() {
    for (name, text) in DEMOS {
        let file = read(text);
        let book = LogBook::from_file(&file, Timestamp::UNIX_EPOCH, "R.A.", ids());
        let job = book.job();
        assert_eq!(job.set_aside, [], "{name}");
        assert_eq!(job.to_file(), file, "{name}");
        let halves = (book.entries()[..9].to_vec(), book.entries()[5..].to_vec());
        let united = LogBook::new(halves.0.into_iter().chain(halves.1));
        assert_eq!(united.job().to_file(), file, "the union of two parts of {name}");
    }
}

/// The lines that are complained of.
fn lines(text: &str) -> Vec<usize> {
    job::read(text).unwrap_err().iter().map(|error| error.line).collect()
}

#[test]
fn all_that_is_wrong_is_told_at_once() {
    let unlike_toml = "hubwright = 1\n[job\ntitle = \"x\"\n[machines]\nspeed = 1480 rpm\n";
    assert_eq!(lines(unlike_toml), [2, 5]);
    let wrong = "hubwright = 1\n[job]\ntitle = \"x\"\ncolour = \"red\"\n[machines]\n\
        speeed = \"1480 rpm\"\npower = \"90\"\nspeed = \"1480 rpm\"\n[sizez.driver]\n\
        nominal = \"80 mm\"\n[fit.driver]\nclass = 7\n";
    assert_eq!(lines(wrong), [4, 6, 7, 9, 12]);
    let word = complaint("hubwright = 1\n[job]\ntitle = \"x\"\nunits = \"imperial\"\n");
    assert!(word.contains("the word “imperial” is not known here"), "{word}");
    // What is asked for is not taken out of the file by the telling.
    assert_eq!(lines("hubwright = \"one\"\n[job]\ntitle = 4\n"), [1, 3]);
}

#[test]
fn an_unknown_key_is_named_with_the_nearest_one() {
    let text =
        complaint("hubwright = 1\n[job]\ntitle = \"x\"\n[machines]\nspeeed = \"1480 rpm\"\n");
    assert!(text.contains("line 5"), "{text}");
    assert!(text.contains("speeed = \"1480 rpm\""), "{text}");
    assert!(text.contains("did you mean “speed”?"), "{text}");
}

#[test]
fn a_quantity_that_is_wrong_says_what_was_expected() {
    for (line, what, expected) in [
        ("speed = \"1480\"", "“1480” has no unit", "1480 rpm"),
        ("speed = 1480", "“1480” has no unit", "1480 rpm"),
        ("power = \"90 mm\"", "“mm” is a unit of a length", "75 kW or 100 hp"),
        ("power = \"1,480 kW\"", "two meanings", ""),
        ("power = \"-5 kW\"", "-5 kW is not possible here", "greater than zero"),
        ("service_factor = \"0.5\"", "less than one", "1 or more"),
        ("power = true", "invalid type", ""),
    ] {
        let text = complaint(&format!("hubwright = 1\n[job]\ntitle = \"x\"\n[machines]\n{line}\n"));
        assert!(text.contains("line 5"), "{line}: {text}");
        assert!(text.contains(what) && text.contains(expected), "{line}: {text}");
    }
}

#[test]
fn what_cannot_be_is_an_error() {
    let head = "hubwright = 1\n[job]\ntitle = \"x\"\n";
    for (tables, what) in [
        ("[coupling]\nkind = \"geer\"\n", "not a kind of coupling"),
        (
            "[coupling.driver]\noutside = \"70 mm\"\n[sizes.driver]\nnominal = \"80 mm\"\n",
            "does not go into a hub",
        ),
        ("[coupling.driver]\nmaterial = \"butter\"\n", "not a material"),
        (
            "[coupling.sheet.sizes]\nhub_outside = \"5 in\"\n[sizes.driven]\nnominal = \"5.5 in\"\n",
            "does not go into the sheet’s hub",
        ),
        (
            "[coupling.sheet.sizes]\nhub_length = \"4 in\"\n[sizes.driven.bore.1]\nat = \"35 in\"\n",
            "deep in a hub",
        ),
        ("[heat]\nmethod = \"microwave\"\n", "not a way to heat a hub"),
        ("[sizes.driver.key]\ncount = 3\n", "3 keys in one shaft"),
        (
            "[sizes.driver.taper]\nrate = \"1:12\"\n[removal.driver]\ntapered = false\n",
            "a straight seat, and a taper",
        ),
        (
            "[lineup.dials.a]\nkind = \"rim\"\nrides_on = \"driver\"\nreadings = { 14 = \"0 mm\" }\n",
            "not a clock position",
        ),
        ("[fit.driver]\nclass = \"Q9\"\n", "Q9"),
    ] {
        let text = complaint(&format!("{head}{tables}"));
        assert!(text.contains(what), "{tables}: {text}");
    }
    assert!(complaint("hubwright = 2\n[job]\ntitle = \"x\"\n").contains("version 2"));
    assert!(complaint("[job]\ntitle = \"x\"\n").contains("expected the line hubwright = 1"));
    assert!(complaint("hubwright = 1\n").contains("expected a table [job]"));
    assert!(complaint("not toml").contains("line 1"));
}

#[test]
fn entries_of_a_file_correct_its_tables() {
    let text = "hubwright = 1\n[job]\ntitle = \"x\"\nunits = \"inch\"\n\
        [[entries]]\nid = \"00000000-0000-0000-0000-000000000001\"\nat = \"2026-11-25T07:31:00Z\"\nby = \"R.A.\"\n\
        act = { write = { place = \"machines.speed\", value = \"1480 rpm\" } }\n\
        [[entries]]\nid = \"00000000-0000-0000-0000-000000000002\"\nat = \"2026-11-25T07:33:00Z\"\nby = \"R.A.\"\n\
        act = { correct = { replaces = \"00000000-0000-0000-0000-000000000001\", value = \"1770 rpm\", why = \"read the plate again\" } }\n";
    let job = Job::from_file(&read(text));
    assert_eq!(job.file.machines.speed.as_ref().map(Measured::text), Some("1770 rpm"));
    assert!(job.log[0].replaced_by.is_some() && job.log[1].replaced_by.is_none());
    assert_eq!(job.log[1].place, "machines.speed");
}

/// An entry by R.A., `number` seconds after the epoch.
fn entry(number: u128, act: Act) -> Entry {
    let at = Timestamp::from_second(i64::try_from(number).unwrap()).unwrap();
    Entry { id: EntryId(uuid::Uuid::from_u128(number)), at, by: "R.A.".into(), act }
}

fn write(place: &str, value: &str) -> Act {
    Act::Write { place: place.into(), value: Written::from(value) }
}

#[test]
fn a_struck_entry_gives_back_what_stood_before() {
    let place = "machines.speed";
    let book = LogBook::new([
        entry(1, write(place, "1480 rpm")),
        entry(2, write(place, "1490 rpm")),
        entry(3, Act::Strike { replaces: EntryId(uuid::Uuid::from_u128(2)), why: String::new() }),
    ]);
    let job = book.job();
    assert_eq!(job.file.machines.speed.as_ref().map(Measured::text), Some("1480 rpm"));
    assert_eq!(job.log.len(), 3, "nothing is rubbed out");
}

#[test]
fn an_entry_that_cannot_be_read_is_set_aside_and_nothing_else_is_lost() {
    let book = LogBook::new([
        entry(1, write("machines.speed", "1480 rpm")),
        entry(2, write("machines.power", "ninety")),
        entry(3, write("moon.phase", "full")),
        entry(4, write("gap.readings.12", "6.05 mm")),
    ]);
    let job = book.job();
    let places: Vec<&str> = job.set_aside.iter().map(|aside| aside.place.as_str()).collect();
    assert_eq!(places, ["machines.power", "moon.phase"]);
    assert!(job.set_aside[0].why.contains("ninety"));
    assert_eq!(job.file.gap.readings.len(), 1);
    assert!(job.accepts(&write("machines.power", "90 kW")).is_ok());
    let refused = job.accepts(&write("machines.power", "90 rpm")).unwrap_err().to_string();
    assert!(refused.contains("unit of a speed"), "{refused}");
    let refused = job.accepts(&write("machines.power", "0 kW")).unwrap_err().to_string();
    assert!(refused.contains("not possible"), "{refused}");
    assert!(job.accepts(&write("machines", "90 kW")).is_err());
}

#[test]
fn the_schema_knows_every_table() {
    let schema = job::schema();
    for table in [
        "machines", "coupling", "sizes", "fit", "heat", "gap", "lineup", "closeup", "running",
        "removal",
    ] {
        assert!(schema["properties"][table].is_object(), "{table}");
    }
    assert_eq!(schema["additionalProperties"], false);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// No text, however odd, stops the reader, and every error has its place.
    #[test]
    fn any_text_is_answered(text in "\\PC{0,200}") {
        if let Err(errors) = job::read(&text) {
            prop_assert!(!errors.is_empty() && errors.iter().all(|error| error.line >= 1));
        }
    }

    /// A demo job with a piece of its text taken out, doubled or overwritten is read or refused,
    /// and what is read is planned.
    #[test]
    fn a_damaged_job_is_answered(
        demo in 0_usize..4, at in 0.0..1.0_f64, length in 0_usize..40, put in "[a-z0-9\"=\\[\\]. \\n-]{0,12}",
    ) {
        let text = DEMOS[demo].1;
        let nearest = |mut at: usize| {
            while !text.is_char_boundary(at) {
                at -= 1;
            }
            at
        };
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "a place in a text")]
        let start = nearest((at * text.len() as f64) as usize);
        let end = nearest((start + length).min(text.len()));
        let damaged = format!("{}{put}{}", &text[..start], &text[end.max(start)..]);
        if let Ok(file) = job::read(&damaged) {
            let plan = job::plan::plan(&Job::from_file(&file), file.system());
            prop_assert_eq!(plan.stages.len(), 10);
        }
    }
}
