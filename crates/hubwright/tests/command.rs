//! The program as it is called: what it prints, what it says on the other stream, how it ends.
#![expect(clippy::unwrap_used, reason = "a test may stop")]
#![expect(clippy::disallowed_methods, reason = "these tests start the program and read files")]

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// How a call ended, and what stood on either stream.
struct Ended {
    code: Option<i32>,
    out: Vec<u8>,
    err: String,
}

impl Ended {
    fn text(&self) -> &str {
        std::str::from_utf8(&self.out).unwrap()
    }
}

fn call(arguments: &[&str], typed: &str) -> Ended {
    let mut program = Command::new(env!("CARGO_BIN_EXE_hubwright"))
        .args(arguments)
        .current_dir(project())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A program that ends without reading closes the pipe.
    let _ = program.stdin.take().unwrap().write_all(typed.as_bytes());
    let ended = program.wait_with_output().unwrap();
    let err = String::from_utf8(ended.stderr).unwrap();
    Ended { code: ended.status.code(), out: ended.stdout, err }
}

fn project() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

const PUMP: &str = "demo/sea-water-pump.toml";

#[test]
fn a_plan_is_printed_in_either_units_and_nothing_else_is() {
    for (units, word) in [("metric", "mm"), ("inch", "mil")] {
        let plan = call(&["plan", PUMP, "--units", units], "");
        assert_eq!((plan.code, plan.err.as_str()), (Some(0), ""));
        assert!(plan.text().starts_with("Job 41  Sea-water pump 2"), "{}", plan.text());
        assert!(plan.text().contains(word));
        assert!(plan.text().lines().all(|line| line.chars().count() <= 96));
    }
    let json = call(&["plan", PUMP, "--json"], "");
    let json: serde_json::Value = serde_json::from_slice(&json.out).unwrap();
    assert_eq!(json["head"]["title"], "Sea-water pump 2");
    let working = call(&["plan", PUMP, "--working"], "");
    assert!(working.text().contains("Source: "));
}

#[test]
fn a_job_may_come_from_standard_input() {
    let text = std::fs::read_to_string(project().join(PUMP)).unwrap();
    assert_eq!(call(&["plan", "-"], &text).out, call(&["plan", PUMP], "").out);
}

#[test]
fn a_card_goes_to_a_file_or_to_standard_output() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("card.pdf");
    let written = call(&["card", PUMP, "-o", out.to_str().unwrap()], "");
    assert_eq!((written.code, written.out.len()), (Some(0), 0));
    assert!(std::fs::read(out).unwrap().starts_with(b"%PDF-"));
    assert!(call(&["card", PUMP, "-o", "-"], "").out.starts_with(b"%PDF-"));
    let refused = call(&["card", PUMP, "-o", "nowhere/card.pdf"], "");
    assert_eq!(refused.code, Some(3));
    assert!(refused.err.contains("nowhere/card.pdf"), "{}", refused.err);
}

#[test]
fn what_is_wrong_is_said_with_its_line_and_ends_in_1() {
    let text = std::fs::read_to_string(project().join(PUMP)).unwrap();
    for (from, to, said) in [
        ("1480 rpm", "1480 kW", "expected a speed of rotation"),
        ("[machines]", "[machine]", "did you mean “machines”?"),
        ("80.012 mm", "80,012 mm", "two meanings"),
    ] {
        let ended = call(&["plan", "-"], &text.replacen(from, to, 1));
        assert_eq!((ended.code, ended.out.len()), (Some(1), 0), "{to}");
        assert!(ended.err.contains(said) && ended.err.contains("line "), "{}", ended.err);
    }
    let missing = call(&["plan", "no-such-job.toml"], "");
    assert_eq!(missing.code, Some(1));
    assert!(missing.err.contains("no-such-job.toml"), "{}", missing.err);
    assert_eq!(call(&["plam"], "").code, Some(2));
}

#[test]
fn a_calculation_is_asked_by_words_or_by_lines() {
    let torque = call(&["reckon", "torque", "power=90 kW", "speed=1480 rpm"], "");
    // T = 9550·P/n of the handbooks: 9550·90/1480 = 580.7 N·m.
    assert!(torque.text().contains("581 N·m"), "{}", torque.text());
    let lines = "{\"power\": \"90 kW\", \"speed\": \"1480 rpm\"}\n{\"power\": \"90\"}\n[]\n";
    let answers = call(&["reckon", "torque", "--json"], lines);
    let answers: Vec<&str> = answers.text().lines().collect();
    assert_eq!(answers.len(), 3);
    assert!(answers[0].contains("results") && answers[1].contains("error"), "{answers:?}");
    assert!(answers[2].contains("error"), "{answers:?}");
    let bare = call(&["reckon", "torque", "--bare", "power=90 kW", "speed=1480 rpm"], "");
    assert!(bare.text().starts_with("{\"results\":{") && !bare.text().contains("working"));
    let wrong = call(&["reckon", "torque", "power=90 mm", "speed=1480 rpm"], "");
    assert_eq!((wrong.code, wrong.out.len()), (Some(1), 0));
    assert!(call(&["reckon", "--list"], "").text().contains("torque"));
    let help = call(&["reckon", "torque", "--help"], "");
    assert!(help.text().contains("speed of the coupling"), "{}", help.text());
}

#[test]
fn a_sheet_goes_from_job_to_job() {
    let sheet = call(&["sheet", PUMP], "");
    assert_eq!(sheet.code, Some(0), "{}", sheet.err);
    let read = job::read_sheet(sheet.text()).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let kept = folder.path().join("gear.toml");
    std::fs::write(&kept, sheet.text()).unwrap();
    let into = call(&["sheet", kept.to_str().unwrap(), "--into", "demo/boiler-feed-pump.toml"], "");
    let into = job::read(into.text()).unwrap();
    assert_eq!((into.coupling.kind.as_str(), &into.coupling.sheet), ("gear", &read.sheet));
    let words = call(&["sheet", kept.to_str().unwrap(), "--read"], "");
    assert!(words.text().contains("4300 N·m"), "{}", words.text());
    assert!(call(&["sheet", "--blank", "grid"], "").text().contains("# rated_torque"));
    assert_eq!(call(&["sheet", "--blank", "geer"], "").code, Some(1));
    assert_eq!(call(&["sheet"], "").code, Some(2));
}

#[test]
fn a_sheet_goes_on_paper() {
    for asked in [&["sheet", PUMP, "-o", "-"][..], &["sheet", "--blank", "grid", "-o", "-"]] {
        let paper = call(asked, "");
        assert_eq!(paper.code, Some(0), "{}", paper.err);
        assert!(paper.out.starts_with(b"%PDF"), "{asked:?}");
    }
    assert_eq!(call(&["sheet", "--blank", "geer", "-o", "-"], "").code, Some(1));
    assert_eq!(call(&["sheet", PUMP, "--read", "-o", "-"], "").code, Some(2));
}

#[test]
fn the_plants_rules_go_from_job_to_job() {
    let rules = call(&["rules", PUMP], "");
    assert_eq!(rules.code, Some(0), "{}", rules.err);
    let read = job::read_site(rules.text()).unwrap();
    assert!(read.site.torque_within.is_some(), "the pump's job has rules: {}", rules.text());
    let into = call(&["rules", "-", "--into", "demo/drum-line-shaft.toml"], rules.text());
    let into = job::read(into.text()).unwrap();
    assert_eq!((into.coupling.kind.as_str(), &into.site), ("rigid flange", &read.site));
    assert_eq!(call(&["rules", "-"], rules.text()).text(), rules.text());
    let wrong = call(&["rules", "-"], "hubwright_site = 1\n[site]\ntorque_witin = \"2 %\"\n");
    assert_eq!(wrong.code, Some(1));
    assert!(wrong.err.contains("torque_within") && wrong.err.contains("line 3"), "{}", wrong.err);
    assert_eq!(call(&["rules"], "").code, Some(2));
}

#[test]
fn rules_begin_empty_and_are_read_out() {
    let blank = call(&["rules", "--blank"], "");
    assert_eq!((blank.code, blank.err.as_str()), (Some(0), ""));
    let filled = blank
        .text()
        .replace("# hub_limit = \"\"", "hub_limit = \"180 degC\"")
        .replace("# heat_allowed = false", "heat_allowed = false")
        .replace("# pullers = []", "pullers = [\"100 kN\", \"300 kN\"]")
        .replace("# foot = \"\"", "foot = \"0.02 mm\"")
        .replace("# on = {}", "on = { torque = \"The foreman sees the wrench set.\" }");
    let words = call(&["rules", "-", "--read"], &filled);
    assert_eq!(words.code, Some(0), "{}", words.err);
    for said in ["180 degC", "100 kN, 300 kN", "limits.foot", "torque: The foreman", "no\n"] {
        assert!(words.text().contains(said), "{said}: {}", words.text());
    }
    let silent = words.text().lines().last().unwrap();
    assert!(silent.contains("shims") && !silent.contains("pullers"), "{silent}");
    // A rule that cannot be is refused whether it is read out or handed on.
    let wrong = call(&["rules", "-", "--read"], &filled.replace("180 degC", "180 mm"));
    assert_eq!((wrong.code, wrong.out.len()), (Some(1), 0));
    assert!(wrong.err.contains("line "), "{}", wrong.err);
    assert_eq!(call(&["rules", "--blank", "--read"], "").code, Some(2));
}

/// The schemas that editors are given are those that the program reads by.
#[test]
fn the_published_schemas_are_up_to_date() {
    for (arguments, published) in [
        (&["schema"][..], "docs/job.schema.json"),
        (&["schema", "--sheet"][..], "docs/sheet.schema.json"),
        (&["schema", "--rules"][..], "docs/rules.schema.json"),
    ] {
        let stands = std::fs::read_to_string(project().join(published)).unwrap();
        let now = call(arguments, "");
        assert!(now.text() == stands, "write {published} anew: hubwright {}", arguments.join(" "));
    }
}

#[test]
fn completions_and_the_manual_page_name_the_commands() {
    for shell in ["bash", "zsh", "fish"] {
        assert!(call(&["completions", shell], "").text().contains("reckon"), "{shell}");
    }
    assert!(call(&["man"], "").text().contains("hubwright"));
}
