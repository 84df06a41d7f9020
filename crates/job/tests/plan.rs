//! The plan of a whole job: the demo jobs, metric against inch, and the ends swapped.
use job::plan::{Piece, Plan, plan};
use job::{Job, JobFile};
use quantities::{System, Verdict};

const PUMP: &str = include_str!("../../../demo/sea-water-pump.toml");
const DEMOS: [&str; 4] = [
    PUMP,
    include_str!("../../../demo/drying-belt.toml"),
    include_str!("../../../demo/boiler-feed-pump.toml"),
    include_str!("../../../demo/drum-line-shaft.toml"),
];

fn file(text: &str) -> JobFile {
    job::read(text).unwrap_or_else(|errors| panic!("{}", errors[0]))
}

fn planned(text: &str) -> Plan {
    let file = file(text);
    plan(&Job::from_file(&file), file.system())
}

fn si(plan: &Plan, id: &str) -> f64 {
    let number = plan.number(id).unwrap_or_else(|| panic!("no {id}"));
    number.value.unwrap_or_else(|| panic!("{id} has no value")).si
}

#[test]
fn every_number_has_a_name_of_its_own() {
    for demo in DEMOS {
        let plan = planned(demo);
        let mut ids: Vec<&str> = plan.numbers().map(|number| number.id.as_str()).collect();
        ids.sort_unstable();
        let all = ids.len();
        ids.dedup();
        assert_eq!(ids.len(), all, "{}", plan.head.title);
        assert!(all > 40, "{} has only {all} numbers", plan.head.title);
    }
}

#[test]
fn a_stage_alone_is_as_in_the_whole_plan() {
    for demo in DEMOS {
        let (file, whole) = (file(demo), planned(demo));
        let job = Job::from_file(&file);
        for stage in &whole.stages {
            assert_eq!(job::plan::stage(&job, file.system(), stage.stage), *stage);
        }
    }
}

#[test]
fn every_judged_number_that_is_not_inside_says_what_would_settle_it() {
    for demo in DEMOS {
        let plan = planned(demo);
        for number in plan.numbers() {
            let quiet = matches!(number.verdict, None | Some(Verdict::Inside));
            assert!(quiet || !number.settle.is_empty(), "{}: {}", plan.head.title, number.id);
        }
    }
}

/// Outside calls for work, too close to call for a closer reading: never the same sentence.
#[test]
fn too_close_to_call_is_settled_by_reading_and_not_by_mending() {
    let mut seen = 0;
    for demo in DEMOS {
        let plan = planned(demo);
        for number in plan.numbers().filter(|n| n.verdict == Some(Verdict::TooClose)) {
            seen += 1;
            let settle = &number.settle;
            assert!(settle.contains('±') && settle.contains("read"), "{}: {settle}", number.id);
            let outside = plan.numbers().filter(|n| n.verdict == Some(Verdict::Outside));
            assert!(outside.into_iter().all(|n| n.settle != *settle), "{}", number.id);
        }
    }
    assert!(seen > 0, "no demo job has a number that is too close to call");
}

/// Every number shows its working: formula, what was put in, source. A number that somebody wrote
/// says so (`as written`).
#[test]
fn every_number_carries_its_working() {
    let mut wanting: Vec<String> = Vec::new();
    for demo in DEMOS {
        let plan = planned(demo);
        for number in &plan.numbers().collect::<Vec<_>>() {
            let (id, Some(value)) = (&number.id, number.value) else { continue };
            let Some(working) = &number.working else {
                wanting.push(format!("{id} has none"));
                continue;
            };
            let off = (working.result.si.abs() - value.si.abs()).abs();
            if off > 1e-9 * value.si.abs() {
                wanting.push(format!("{id}: the working gives {:?}", working.result));
            }
            if working.terms.is_empty() {
                wanting.push(format!("{id}: nothing is put in"));
            }
        }
    }
    wanting.sort();
    wanting.dedup();
    assert!(wanting.is_empty(), "numbers without their working: {wanting:#?}");
}

/// Each demo job is worth looking at: none is all inside, and each way has its steps.
#[test]
fn the_demo_jobs_are_worth_looking_at() {
    for demo in DEMOS {
        let plan = planned(demo);
        let title = &plan.head.title;
        assert!(plan.verdict() > Some(Verdict::Inside), "{title}");
        assert!(
            (12..=24).contains(&plan.on.len()) && (10..=24).contains(&plan.off.len()),
            "{title}"
        );
        assert!(plan.on[0].hold.is_some() && plan.off[0].hold.is_some(), "{title}: lock out first");
        assert!(plan.drawings.section.is_some() && plan.drawings.lineup.is_some(), "{title}");
        assert!(plan.kit.iter().any(|item| item.what.contains("micrometer")), "{title}");
    }
}

/// A step says a number, or that it is still to measure; never a bare blank.
#[test]
fn no_blank_is_left_in_a_step() {
    for demo in DEMOS {
        let plan = planned(demo);
        for step in plan.on.iter().chain(&plan.off) {
            for piece in step.title.iter().chain(&step.detail) {
                assert!(!piece.text().contains(['{', '}']), "{}: {}", step.id, piece.text());
                assert!(!matches!(piece, Piece::Number(text) if text.is_empty()), "{}", step.id);
            }
        }
    }
}

/// A blank says what it waits for: readings, the maker’s sheet, a choice, or the full plan.
#[test]
fn a_blank_says_what_it_waits_for() {
    let gear =
        "hubwright = 1\n[job]\nnumber = \"1\"\ntitle = \"Pump\"\n[coupling]\nkind = \"gear\"\n";
    let (measure, sheet) = ("still to measure", "still to enter, from the maker’s sheet");
    let plan = planned(gear);
    for (id, words) in [
        ("on.heat-driver", measure),
        ("on.gap", sheet),
        ("on.lineup", measure),
        ("on.torque", sheet),
        ("on.fill", sheet),
    ] {
        let step = plan.on.iter().find(|step| step.id == id).unwrap();
        let says = |piece: &Piece| matches!(piece, Piece::Missing(text) if text == words);
        assert!(step.title.iter().any(says), "{id}: {:?}", step.title);
    }
}

/// Nothing is to be brought twice: no item is another one said less exactly.
#[test]
fn the_kit_has_no_doubles() {
    for demo in DEMOS {
        let plan = planned(demo);
        let said = |what: &str| plan.kit.iter().filter(|item| item.what.contains(what)).count();
        for tool in
            ["torque wrench", "inside micrometer", "ring spanner", "feeler gauges", "puller of"]
        {
            assert!(said(tool) <= 1, "{}: {} times {tool}", plan.head.title, said(tool));
        }
        assert_eq!(said("outside micrometer") >= 1, said("micrometers and bore gauge") == 0);
        let all: Vec<&str> = plan.kit.iter().map(|item| item.what.as_str()).collect();
        for (at, one) in all.iter().enumerate() {
            assert!(!all[at + 1..].iter().any(|other| other.contains(one)), "{one}");
        }
    }
}

/// The machines go by the names that the job gives them, in every line of the work.
#[test]
fn steps_name_the_machines() {
    for demo in DEMOS {
        let plan = planned(demo);
        let names = (plan.head.driver.as_str(), plan.head.driven.as_str());
        let lockout = plan.on[0].title_text();
        assert!(lockout.contains(names.0) && lockout.contains(names.1), "{lockout}");
        for step in plan.on.iter().chain(&plan.off) {
            let text: String = step.title.iter().chain(&step.detail).map(Piece::text).collect();
            assert!(!text.contains("driver hub") && !text.contains("driven hub"), "{text}");
        }
    }
}

/// What a job does not say is listed, never filled in.
#[test]
fn an_empty_job_is_all_still_to_measure() {
    let plan = planned("hubwright = 1\n[job]\ntitle = \"nothing yet\"\n");
    assert!(plan.missing().count() > 5);
    assert!(plan.numbers().all(|number| number.value.is_none()), "a number from nothing");
}

/// Every quantity of the sea-water pump, written in the other system to twelve digits.
fn in_inches(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('"') {
        let Some((quoted, behind)) = after.split_once('"') else { break };
        out.push_str(before);
        out.extend(["\"", &other(quoted), "\""]);
        rest = behind;
    }
    out + rest
}

fn other(text: &str) -> String {
    let convert = |unit: &str, to: &str, factor: f64, shift: f64| {
        let numbers = text.strip_suffix(unit)?.trim_end();
        let parts: Option<Vec<String>> = numbers
            .split('±')
            .enumerate()
            .map(|(part, number)| {
                let number: f64 = number.trim().parse().ok()?;
                // A spread is a difference: it has no shift.
                let shift = if part == 0 { shift } else { 0.0 };
                Some(format!("{:.12}", number / factor + shift))
            })
            .collect();
        Some(format!("{} {to}", parts?.join(" ± ")))
    };
    convert(" mm", "in", 25.4, 0.0)
        .or_else(|| convert(" µm", "µin", 0.0254, 0.0))
        .or_else(|| convert(" kW", "hp", 0.745_699_871_582_270_2, 0.0))
        .or_else(|| convert(" N·m", "lbf·ft", 1.355_817_948_331_400_4, 0.0))
        .or_else(|| convert(" kN", "lbf", 4.448_221_615_260_5e-3, 0.0))
        .or_else(|| convert(" kg", "lb", 0.453_592_37, 0.0))
        .or_else(|| convert(" degC", "degF", 5.0 / 9.0, 32.0))
        .or_else(|| convert(" K", "degF", 5.0 / 9.0, 0.0))
        .unwrap_or_else(|| text.to_owned())
}

/// One job in millimetres and in inches is one plan. Its units mark is left alone, since stock
/// shims, keys and micrometers go by it.
#[test]
fn metric_and_inch_give_the_same_plan() {
    let inches = in_inches(PUMP);
    assert!(inches.contains(" in\"") && !inches.contains(" mm\""), "the job was rewritten");
    let (metric, inch) = (planned(PUMP), planned(&inches));
    assert_eq!(metric.numbers().count(), inch.numbers().count());
    for (one, other) in metric.numbers().zip(inch.numbers()) {
        assert_eq!((&one.id, one.verdict), (&other.id, other.verdict));
        let (Some(a), Some(b)) = (one.value, other.value) else { continue };
        assert!(
            (a.si - b.si).abs() <= 1e-8 * a.si.abs() + 1e-11,
            "{}: {} or {}",
            one.id,
            a.si,
            b.si
        );
    }
}

/// Shown in inches, a metric job is still the same numbers.
#[test]
fn the_units_of_a_plan_change_only_its_words() {
    let job = Job::from_file(&file(PUMP));
    let (metric, inch) = (plan(&job, System::Metric), plan(&job, System::Inch));
    for (one, other) in metric.numbers().zip(inch.numbers()) {
        assert_eq!((&one.id, one.value, one.verdict), (&other.id, other.value, other.verdict));
    }
}

/// The same bench seen from its other end: driver and driven change places, and with them the
/// view, so that 3 and 9 change places too. Heights stay, sides turn over.
#[test]
fn swapping_the_ends_mirrors_the_line_up() {
    let swapped = PUMP
        .replace("driver", "DRIVER")
        .replace("driven", "driver")
        .replace("DRIVER", "driven")
        .replace("3 = \"-0.32 mm\"", "9 = \"-0.32 mm\"")
        .replace("9 = \"-0.09 mm\"", "3 = \"-0.09 mm\"")
        .replace("3 = \"0.35 mm\"", "9 = \"0.35 mm\"")
        .replace("9 = \"0.03 mm\"", "3 = \"0.03 mm\"");
    let (one, other) = (planned(PUMP), planned(&swapped));
    for id in [
        "lineup.offset.up",
        "lineup.offset.right",
        "lineup.tilt.up",
        "lineup.tilt.right",
        "lineup.move.front.up",
        "lineup.move.front.right",
        "lineup.move.rear.up",
        "lineup.move.rear.right",
    ] {
        let (a, b) = (si(&one, id), si(&other, id));
        assert!((a - b).abs() < 1e-9, "{id}: {a} or {b}");
    }
    let label = |plan: &Plan, id: &str| plan.number(id).unwrap().label.clone();
    assert!(label(&one, "lineup.offset.right").ends_with("to 3 o’clock"));
    assert!(label(&other, "lineup.offset.right").ends_with("to 9 o’clock"));
    assert_eq!(label(&one, "lineup.move.rear.right"), "Push the rear feet to 9");
    assert_eq!(label(&other, "lineup.move.rear.right"), "Push the rear feet to 3");
    for id in ["interference", "torque", "pressure"] {
        let before = si(&one, &format!("fit.driver.{id}"));
        let after = si(&other, &format!("fit.driven.{id}"));
        assert!((before - after).abs() <= 1e-9 * before.abs(), "{id}: {before} or {after}");
    }
}
