//! A maker's sheet as a file of its own: out of one job, into another.

use jiff::Timestamp;
use job::{
    Entry, EntryId, JobFile, LogBook, SheetFile, blank_sheet, read_sheet, sheet_lines, write_sheet,
};

const DEMOS: [&str; 4] = [
    include_str!("../../../demo/sea-water-pump.toml"),
    include_str!("../../../demo/drying-belt.toml"),
    include_str!("../../../demo/boiler-feed-pump.toml"),
    include_str!("../../../demo/drum-line-shaft.toml"),
];

fn file(text: &str) -> JobFile {
    job::read(text).unwrap_or_else(|errors| panic!("{}", errors[0]))
}

fn bare() -> JobFile {
    file("hubwright = 1\n[job]\ntitle = \"another\"\n")
}

#[test]
fn a_sheet_goes_from_one_job_to_another() {
    for demo in DEMOS {
        let from = file(demo);
        let sheet = SheetFile::of(&from);
        let again = read_sheet(&write_sheet(&sheet).unwrap()).unwrap();
        assert_eq!(sheet, again);
        let into = again.into_job(&bare());
        assert_eq!(into.coupling.sheet, from.coupling.sheet);
        assert_eq!(into.coupling.kind, from.coupling.kind);
        assert_eq!(into.job.title, "another", "nothing but the coupling changes");
        assert_eq!(job::read(&job::write(&into).unwrap()).unwrap(), into);
    }
}

/// Entered figure by figure in a log book, it is the same sheet.
#[test]
fn a_sheet_can_be_entered_in_a_log_book() {
    for demo in DEMOS {
        let sheet = SheetFile::of(&file(demo));
        let entries = (1_u128..).zip(sheet.acts()).map(|(number, act)| Entry {
            id: EntryId(uuid::Uuid::from_u128(number)),
            at: Timestamp::UNIX_EPOCH,
            by: "R.A.".into(),
            act,
        });
        let job = LogBook::new(entries).job();
        assert_eq!(job.set_aside, []);
        assert_eq!(job.file.coupling.sheet, sheet.sheet);
    }
}

/// A blank one reads as an empty sheet, and each line becomes a field when its # is taken away.
#[test]
fn a_blank_sheet_can_be_filled_in() {
    let blank = blank_sheet("gear", "spacer");
    assert_eq!(read_sheet(&blank).unwrap().sheet, couplings::Sheet::default());
    let filled = blank
        .replace("# rated_torque = \"\"", "rated_torque = \"2400 N·m\"")
        .replace("# hub_faces = \"\"", "hub_faces = \"3.2 ± 0.4 mm\"")
        .replace("# count = \"\"", "count = \"8\"");
    let read = read_sheet(&filled).unwrap_or_else(|errors| panic!("{}", errors[0]));
    assert_eq!(read.sheet.rated_torque.unwrap().text(), "2400 N·m");
    assert_eq!(read.sheet.gap.hub_faces.unwrap().text(), "3.2 ± 0.4 mm");
    assert_eq!(read.sheet.bolts.count.map(|count| count.0), Some(8));
    let fields = blank.lines().filter(|line| line.ends_with("= \"\"") && line.starts_with('#'));
    assert_eq!(fields.count(), sheet_lines(&couplings::Sheet::default()).len());
}

#[test]
fn a_printed_sheet_says_every_figure() {
    let sheet = file(DEMOS[2]).coupling.sheet;
    let lines = sheet_lines(&sheet);
    let says = |place: &str| {
        let line = lines.iter().find(|line| line.place == place);
        line.unwrap_or_else(|| panic!("no {place}")).says.clone()
    };
    assert_eq!(says("rated_torque"), "1250 N·m");
    assert_eq!(says("gap.dbse"), "180 ± 0.5 mm");
    assert_eq!(says("bolts.count"), "6");
    assert_eq!(says("wear.backlash"), "", "the sheet is silent");
    // Counted by hand: 16 plain fields, then sizes 12, gap 5, allows 6, bolts 7, set screws 3,
    // interference 2, lubricant 5, masses 5, inertias 4, wear 6.
    assert_eq!(lines.len(), 71);
    assert!(lines.iter().all(|line| line.what.len() > 5));
}

#[test]
fn a_sheet_that_is_wrong_says_where() {
    for (text, line, what) in [
        ("hubwright_sheet = 2\n", 1, "version 2"),
        ("hubwright_sheet = 1\nkind = \"geer\"\n", 2, "not a kind"),
        ("hubwright_sheet = 1\nkind = \"gear\"\nform = \"bent\"\n", 3, "no form"),
        ("hubwright_sheet = 1\n[sheet]\nrated_torqe = \"2 kN·m\"\n", 3, "rated_torqe"),
        ("hubwright_sheet = 1\n[sheet]\nrated_torque = \"2 kW\"\n", 3, "unit of a power"),
        ("kind = \"gear\"\n", 1, "hubwright_sheet"),
    ] {
        let errors = read_sheet(text).unwrap_err();
        let error = &errors[0];
        assert_eq!(error.line, line, "{text}: {error}");
        assert!(error.to_string().contains(what), "{text}: {error}");
    }
}
