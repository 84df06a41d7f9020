//! The plant's rules: what they change in a plan, and that the plan says so.

use job::plan::{Plan, plan};
use job::{Entry, EntryId, Job, LogBook, SiteFile, Stage};
use quantities::{System, Verdict};

const PUMP: &str = include_str!("../../../demo/sea-water-pump.toml");
const RULES: &str = r#"hubwright_site = 1
[site]
rules = "works rules 12, invented"
hub_limit = "120 degC"
heat_allowed = false
threads = "molybdenum"
torque_within = "2 %"
puller_margin = "2"
pullers = ["100 kN", "300 kN"]
shims = ["0.1 mm", "1 mm"]
greases = ["bearing grease 2"]
tools = ["torque wrench", "gauge blocks"]
wear = ["helmet", "safety boots"]
limits = { foot = "0.02 mm" }
[site.holds.on]
torque = "The shift foreman sees the wrench set."
"#;

fn rules() -> SiteFile {
    job::read_site(RULES).unwrap_or_else(|errors| panic!("{}", errors[0]))
}

fn ruled(text: &str) -> Plan {
    let file = job::read(text).unwrap_or_else(|errors| panic!("{}", errors[0]));
    plan(&Job::from_file(&rules().into_job(&file)), System::Metric)
}

fn notes(plan: &Plan, stage: Stage) -> String {
    plan.stage(stage).notes.join("\n")
}

#[test]
fn rules_come_before_the_usual_and_say_so() {
    let plan = ruled(PUMP);
    let heat = plan.number("heat.driver.temperature").unwrap();
    assert_eq!(heat.verdict, Some(Verdict::Outside), "151 °C against 120 °C");
    assert!(heat.second.contains("site’s limit"), "{}", heat.second);
    for (stage, words) in [
        (Stage::Heat, "works rules 12, invented): no hub over 120 degC"),
        (Stage::Lineup, "a foot rises at most 0.02 mm"),
        (Stage::Closeup, "torque within 2 % of what is wanted"),
        (Stage::Closeup, "is not among what is in store"),
    ] {
        assert!(notes(&plan, stage).contains(words), "{words}: {}", notes(&plan, stage));
    }
    let hold = plan.on.iter().find(|step| step.id == "on.torque").unwrap().hold.clone();
    assert_eq!(hold.as_deref(), Some("The shift foreman sees the wrench set. (plant rule)"));
    assert!(plan.cautions.iter().any(|caution| caution.orders[0].contains("safety boots")));
    let wrench = plan.kit.iter().find(|item| item.what.starts_with("torque wrench")).unwrap();
    assert!(wrench.why.ends_with("on hand here"), "{}", wrench.why);
}

/// What the job itself says is not taken back by a rule, but for a stricter limit.
#[test]
fn the_job_has_the_word_where_it_speaks() {
    let text = |limit: &str| {
        format!(
            "hubwright = 1\n[job]\ntitle = \"x\"\n[coupling]\nkind = \"rigid flange\"\n\
             [heat]\nlimit = \"{limit}\"\n[removal]\nheat_allowed = true\npuller = \"50 kN\"\n"
        )
    };
    assert!(!notes(&ruled(&text("100 degC")), Stage::Heat).contains("Plant rule"));
    let plan = ruled(&text("150 degC"));
    assert!(notes(&plan, Stage::Heat).contains("Plant rule"));
    assert!(notes(&plan, Stage::Lineup).contains("shims in store, 0.1 mm, 1 mm"));
    assert!(!notes(&ruled(PUMP), Stage::Lineup).contains("shims in store"), "it lists its own");
    let removal = notes(&plan, Stage::Removal);
    assert!(removal.contains("the permit decides") && !removal.contains("300 kN"), "{removal}");
}

/// A rule is no work done: a stage is begun by the job alone.
#[test]
fn rules_begin_no_stage() {
    let plan = ruled("hubwright = 1\n[job]\ntitle = \"x\"\n[coupling]\nkind = \"gear\"\n");
    for stage in [Stage::Heat, Stage::Lineup, Stage::Closeup, Stage::Removal] {
        assert!(!plan.stage(stage).begun, "{stage:?}");
    }
}

#[test]
fn rules_go_from_a_file_into_a_log_book_and_back() {
    let file = rules();
    let again = job::read_site(&job::write_site(&file).unwrap()).unwrap();
    assert_eq!(again, file);
    let at = "2026-11-25T08:00:00Z".parse().unwrap();
    let entry = |(number, act)| Entry {
        id: EntryId(uuid::Uuid::from_u128(number)),
        at,
        by: "R.A.".into(),
        act,
    };
    let job = LogBook::new((1_u128..).zip(file.acts()).map(entry)).job();
    assert!(job.set_aside.is_empty(), "{:?}", job.set_aside);
    assert_eq!(SiteFile::of(&job.file).site, file.site);
}

#[test]
fn a_rule_that_cannot_be_says_where() {
    for (rule, line, what) in [
        ("hub_limit = \"120 mm\"\n", 3, "unit of a length"),
        ("puller_margin = \"0.5\"\n", 3, "less than one"),
        ("holds = { on = { dance = \"all\" } }\n", 3, "not a step"),
        ("shims = [\"0 mm\"]\n", 3, "not possible"),
        ("hub_limt = \"120 degC\"\n", 3, "not known here"),
    ] {
        let errors = job::read_site(&format!("hubwright_site = 1\n[site]\n{rule}")).unwrap_err();
        assert_eq!(errors[0].line, line, "{rule}: {}", errors[0]);
        assert!(errors[0].to_string().contains(what), "{rule}: {}", errors[0]);
    }
}
