//! The flow of heat in a full plan: seconds in hand, and heat to get a hub off.
use job::plan::{Depth, Plan, Trying, plan_with, try_heat};
use job::{Job, JobFile};
use quantities::{System, Verdict};

const PUMP: &str = include_str!("../../../demo/sea-water-pump.toml");

fn full(text: &str) -> Plan {
    let file: JobFile = job::read(text).unwrap_or_else(|errors| panic!("{}", errors[0]));
    plan_with(&Job::from_file(&file), System::Metric, Depth::Full)
}

/// A plain steel hub, 130 mm outside and 90 mm long, on an 80 mm shaft that is `over` µm larger.
fn plain(over: f64, heat: &str) -> String {
    let shaft = 80.0 + over / 1000.0;
    format!(
        r#"
        hubwright = 1
        [job]
        title = "plain hub, invented"
        [coupling]
        kind = "rigid flange"
        [coupling.driver]
        outside = "130 mm"
        length = "90 mm"
        material = "steel"
        shaft_material = "steel"
        [machines]
        ambient = "20 degC"
        [sizes]
        spread = "0.001 mm"
        [sizes.driver]
        nominal = "80 mm"
        [sizes.driver.bore.1]
        along = "80.000 mm"
        [sizes.driver.shaft.1]
        along = "{shaft:.4} mm"
        [heat]
        {heat}
        "#
    )
}

fn seconds(text: &str) -> f64 {
    let plan = full(text);
    let notes = &plan.stage(job::Stage::Heat).notes;
    let number = plan.number("heat.driver.seconds").unwrap_or_else(|| panic!("{notes:#?}"));
    number.value.expect("a time").si
}

/// At one temperature, more interference leaves less clearance, and so less time.
#[test]
fn seconds_shrink_as_interference_grows() {
    let at = |over| seconds(&plain(over, "heated_to = \"220 degC\""));
    let found = [40.0, 60.0, 80.0].map(at);
    assert!(found[0] > found[1] && found[1] > found[2], "{found:?}");
}

#[test]
fn more_clearance_gives_more_seconds() {
    let found =
        ["0.06 mm", "0.09 mm"].map(|c| seconds(&plain(50.0, &format!("clearance = \"{c}\""))));
    assert!(found[0] < found[1], "{found:?}");
}

/// A hub hung nearer to the middle, and a joint that conducts less, stay open longer.
#[test]
fn an_assumption_that_is_written_is_the_one_that_counts() {
    let usual = seconds(&plain(50.0, ""));
    let slow = seconds(&plain(50.0, "assume = { off_middle_greatest = \"0.7\" }"));
    let open = seconds(&plain(50.0, "assume = { conductance_greatest = \"1.0\" }"));
    assert!(slow > usual && open >= usual, "{usual} {slow} {open}");
}

/// Steps of time are chosen by the run itself, so that the last digits of a size may shift them:
/// a thousandth is allowed.
#[test]
fn inches_give_the_same_seconds() {
    let metric = plain(50.0, "");
    let inch = metric
        .replace("\"130 mm\"", "\"5.118110236220 in\"")
        .replace("\"90 mm\"", "\"3.543307086614 in\"")
        .replace("\"80 mm\"", "\"3.149606299213 in\"")
        .replace("\"80.000 mm\"", "\"3.149606299213 in\"")
        .replace("\"80.0500 mm\"", "\"3.151574803150 in\"")
        .replace("\"0.001 mm\"", "\"0.000039370079 in\"")
        .replace("\"20 degC\"", "\"68 degF\"");
    assert!(!inch.contains(" mm\""), "all was rewritten");
    let (a, b) = (seconds(&metric), seconds(&inch));
    assert!((a - b).abs() < 1e-3 * a, "{a} or {b}");
}

/// The cautions of the way that was chosen come before those of the others.
#[test]
fn the_chosen_methods_cautions_come_first() {
    for (method, begins) in [("oil bath", "Oil bath"), ("torch", "A flame"), ("oven", "An oven")] {
        let file = job::read(&plain(50.0, &format!("method = \"{method}\""))).unwrap();
        let plan = plan_with(&Job::from_file(&file), System::Metric, Depth::Quick);
        let first = plan.cautions.iter().find(|c| c.stage == Some(job::Stage::Heat)).unwrap();
        assert!(first.orders[0].starts_with(begins), "{method}: {:?}", first.orders);
    }
}

/// At the plan's own temperatures a try-out says what the plan says, to half a percent and the
/// rounding of its words; and it follows the hub's temperature. In both units.
#[test]
fn a_try_out_agrees_with_the_plan() {
    let text = plain(50.0, "heated_to = \"200 degC\"\nloss = \"20 K\"");
    let planned = seconds(&text);
    let job = Job::from_file(&job::read(&text).unwrap());
    let low = |system, hub: Option<f64>| {
        let trying = Trying { end: "driver".into(), hub, shaft: None };
        let tried = try_heat(&job, system, &trying);
        let outcome = tried[0].outcome.clone().unwrap();
        let words = outcome.seconds.unwrap()[0].clone();
        assert!(outcome.closing.is_some());
        words.split(' ').next().unwrap().parse::<f64>().unwrap()
    };
    for system in [System::Metric, System::Inch] {
        let own = low(system, None);
        assert!((own - planned).abs() < 0.006 * planned + 0.5, "{own} {planned}");
    }
    assert!(low(System::Metric, Some(220.0)) > low(System::Inch, Some(356.0)));
    assert!(try_heat(&job, System::Metric, &Trying::default())[0].outcome.is_none());
}

/// What a quick plan says, a full plan says too; it only says more.
#[test]
fn a_full_plan_adds_to_the_quick_one() {
    let file = job::read(PUMP).unwrap_or_else(|errors| panic!("{}", errors[0]));
    let job = Job::from_file(&file);
    let [quick, full] =
        [Depth::Quick, Depth::Full].map(|depth| plan_with(&job, System::Metric, depth));
    for number in quick.numbers() {
        let other = full.number(&number.id).unwrap_or_else(|| panic!("lost {}", number.id));
        // A time that is wanted is not inside before it is known.
        if number.settle == "Worked out on the full plan." {
            assert_eq!((number.value, number.verdict), (None, Some(Verdict::NotMeasured)));
            continue;
        }
        assert_eq!((number.value, number.verdict), (other.value, other.verdict), "{}", number.id);
    }
    for id in ["heat.driver.seconds", "heat.driver.grips", "removal.driven.opens"] {
        let number = full.number(id).unwrap_or_else(|| panic!("no {id}"));
        let known = quick.number(id).is_some_and(|number| number.value.is_some());
        assert!(number.working.is_some() && !known, "{id}");
    }
    let said = full.on.iter().flat_map(|step| &step.detail).map(job::plan::Piece::text);
    assert!(!said.collect::<String>().contains("full plan"));
    assert!(!full.drawings.closing.is_empty() && quick.drawings.closing.is_empty());
}

/// Heat that is written is answered: it opens, or it says what is left to pull.
#[test]
fn heat_that_is_written_opens_the_hub_or_says_what_is_left() {
    let off = |heat: &str| format!("{}\n[removal]\nheat_allowed = true\n{heat}", plain(20.0, ""));
    let strong = full(&off("power_body = \"20 kW\"\nheat_for = \"2 min\""));
    let opens = strong.number("removal.driver.opens").and_then(|number| number.value);
    assert!(opens.is_some_and(|opens| opens.si < 120.0), "{opens:?}");
    let weak = full(&off("power_body = \"0.5 kW\"\nheat_for = \"2 min\""));
    assert!(weak.number("removal.driver.hot_pull").is_some());
    let stage = weak.stage(job::Stage::Removal);
    let advised = weak.number("removal.driver.advised.for").is_some();
    let none = stage.notes.iter().any(|note| note.contains("no heat up to"));
    assert!(advised || none, "{:?}", stage.notes);
}

/// The window is at its shortest no longer than it likely is, and the advised heat, written into the
/// job, opens the hub in every case.
#[test]
fn advised_heat_works_when_it_is_written_down() {
    let off = |heat: &str| format!("{}\n[removal]\nheat_allowed = true\n{heat}", plain(20.0, ""));
    let plan = full(&off(""));
    let si = |plan: &Plan, id: &str| {
        plan.number(&format!("removal.driver.{id}")).and_then(|n| n.value).map(|value| value.si)
    };
    let (power, time) = (si(&plan, "advised.body").unwrap(), si(&plan, "advised.for").unwrap());
    let (opens, least) = (si(&plan, "opens").unwrap(), si(&plan, "window").unwrap());
    assert!(0.0 < least && opens < time, "{opens} {least} {time}");
    let again = full(&off(&format!("power_body = \"{power} W\"\nheat_for = \"{time} s\"")));
    assert!((si(&again, "opens").unwrap() - opens).abs() < 0.01 * opens);
    assert!(si(&again, "advised.body").is_none(), "heat as written works, so none is advised");
}

/// EN 1993-1-2, 3.4.1.1: steel lengthens by 1.2·10⁻⁵·θ + 0.4·10⁻⁸·θ² − 2.416·10⁻⁴ from 20 °C (from
/// memory), a mean of 12.48·10⁻⁶ to 100 °C and 12.88·10⁻⁶ to 200 °C. 0.05 mm and 0.08 mm to open on
/// 80 mm: 1.625·10⁻³, which is 148.2 °C by that curve. In degrees Fahrenheit as well.
#[test]
fn an_expansion_by_temperature_is_the_one_that_counts() {
    let table = "shaft_temperature = \"20 degC\"
        [heat.assume.hub.expansions.1]
        temperature = \"100 degC\"
        mean = \"12.48 um/m/K\"
        [heat.assume.hub.expansions.2]
        temperature = \"200 degC\"
        mean = \"12.88 um/m/K\"";
    let inch = table
        .replace("100 degC", "212 degF")
        .replace("200 degC", "392 degF")
        .replace("12.48 um/m/K", "6.933333 uin/in/degF")
        .replace("12.88 um/m/K", "7.155556 uin/in/degF");
    let at = |heat: &str| {
        let text = plain(50.0, heat).replace("spread = \"0.001 mm\"", "spread = \"0.0000001 mm\"");
        let plan = full(&text);
        plan.number("heat.driver.at_shaft").and_then(|n| n.value).map(|value| value.si - 273.15)
    };
    let found = at(table).unwrap();
    assert!((found - 148.2).abs() < 0.05, "{found}");
    assert!((at(&inch).unwrap() - found).abs() < 1e-3);
    assert!(full(&plain(50.0, table)).number("heat.driver.seconds").is_some());
    let half = full(&plain(50.0, "[heat.assume.hub.expansions.1]\ntemperature = \"100 degC\""));
    let notes = &half.stage(job::Stage::Heat).notes;
    assert!(
        notes.iter().any(|note| note.contains("expansion by temperature is left out")),
        "{notes:?}"
    );
}

/// Rougher surfaces leave more air between them, and so more seconds; what is written outranks them.
#[test]
fn roughness_gives_what_the_joint_conducts() {
    let rough = |rz: &str, more: &str| {
        let heat = &format!("assume = {{ by_roughness = true{more} }}");
        let both = format!("bore_roughness = \"{rz}\"\nshaft_roughness = \"{rz}\"");
        full(&plain(50.0, heat).replace("[machines]", &format!("{both}\n[machines]")))
    };
    let touching = |plan: &Plan| plan.number("heat.driver.touching").and_then(|n| n.value);
    let (fine, coarse) = (rough("4 um", ""), rough("16 um", ""));
    assert!(touching(&fine).unwrap().si > touching(&coarse).unwrap().si);
    let inch = rough("0.16 mil", "");
    let (metric, inch) =
        (touching(&rough("4.064 um", "")).unwrap().si, touching(&inch).unwrap().si);
    assert!((metric - inch).abs() < 1e-6 * metric);
    let time = |plan: &Plan| plan.number("heat.driver.seconds").and_then(|n| n.value).unwrap().si;
    assert!(time(&coarse) > time(&fine));
    let written = rough("4 um", ", touching = \"3500 W/m2/K\", pressed = \"25000 W/m2/K\"");
    assert!(touching(&written).is_none());
    assert!((time(&written) - seconds(&plain(50.0, ""))).abs() < 1e-9);
    let unsaid = full(&plain(50.0, "assume = { by_roughness = true }"));
    let missing = &unsaid.stage(job::Stage::Heat).missing;
    assert!(missing.iter().any(|it| it.place == "coupling.driver.bore_roughness"), "{missing:?}");
}

/// Ice on the shaft keeps it small while the hub is heated off, and a seal nearer to the hub gets
/// hotter than one that is farther off, on as off.
#[test]
fn what_is_near_gets_warm_and_a_cold_shaft_helps() {
    let near = "[removal]\nheat_allowed = true\npower_body = \"8 kW\"\nheat_for = \"2 min\"
        [removal.driver.near.seal]
        behind = \"15 mm\"
        material = \"nitrile\"
        kept = \"shielded\"
        [removal.driver.near.bearing]
        behind = \"120 mm\"
        limit = \"110 degC\"
        [removal.driver.near.ring]
        behind = \"5 mm\"
        kept = \"taken off\"";
    let plan = full(&format!("{}\n{near}", plain(50.0, "")));
    for stage in ["heat", "removal"] {
        let at = |what: &str| plan.number(&format!("{stage}.driver.near.{what}"));
        let si = |what: &str| at(what).and_then(|n| n.value).unwrap().si;
        assert!(si("seal") > si("bearing") && si("bearing") >= 293.14, "{stage}");
        assert!((at("seal").unwrap().limits.unwrap().greatest.unwrap() - 373.15).abs() < 1e-9);
        assert!(at("ring").is_none());
    }
    let iced = "assume = { shaft_convection = \"2000 W/m2/K\", shaft_air = \"0 degC\" }";
    let iced = full(&format!("{}\n{near}", plain(50.0, iced)));
    let opens =
        |plan: &Plan| plan.number("removal.driver.opens").and_then(|n| n.value).map(|v| v.si);
    match (opens(&plan), opens(&iced)) {
        (Some(bare), Some(iced)) => assert!(iced < bare, "{iced} {bare}"),
        (None, _) => {}
        (bare, iced) => panic!("{bare:?} {iced:?}"),
    }
}

/// A hub of 20 mm walls that is heated by torch or induction keeps together when it is heated slowly;
/// a flame has its sticks, and its gas is three times what goes in.
#[test]
fn a_torch_has_its_sticks_and_its_gas() {
    let plan = full(&plain(50.0, "method = \"torch\"\npower = \"6 kW\""));
    let si = |id: &str| plan.number(&format!("heat.driver.{id}")).and_then(|n| n.value).unwrap().si;
    assert!((si("burner") - 18e3).abs() < 1e-6);
    assert!(si("stick_melts") < si("stick_stays"));
    assert!((si("stick_melts") - si("temperature")).abs() < 1e-9);
    let induction = full(&plain(50.0, "method = \"induction\""));
    let ramp = induction.number("heat.driver.ramp").and_then(|n| n.value).unwrap().si;
    let rise = si("temperature") - 293.15;
    // t = r·w²·ρ·c/(2·k·D): 25 mm of steel, 7800 kg/m³, 470 J/(kg·K), 51 W/(m·K), 50 K.
    let by_hand = rise * 0.025 * 0.025 * 7800.0 * 470.0 / (2.0 * 51.0 * 50.0);
    assert!((ramp - by_hand).abs() < 0.002 * by_hand, "{ramp} {by_hand}");
}

/// One outline, cut into more slices, takes the same heat: the flange is the widest part, however it is
/// written.
#[test]
fn slices_that_are_cut_in_two_take_the_same_heat() {
    let off = "[removal]\nheat_allowed = true\npower_flange = \"15 kW\"\nheat_for = \"1 min\"";
    let left = |slices: &[[&str; 2]]| {
        let mut text =
            plain(40.0, "").replace("outside = \"130 mm\"\n        length = \"90 mm\"\n", "");
        text.push_str(off);
        for (place, [length, outside]) in slices.iter().enumerate() {
            let number = place + 1;
            text = format!(
                "{text}\n[coupling.driver.slices.{number}]\nlength = \"{length}\"\noutside = \"{outside}\""
            );
        }
        let plan = full(&text);
        let ids = ["removal.driver.opens", "removal.driver.hot_pull"];
        let number = ids.iter().find_map(|id| plan.number(id)).expect("an answer");
        (number.id.clone(), number.value.expect("a value").si)
    };
    let (id, two) = left(&[["20 mm", "200 mm"], ["70 mm", "130 mm"]]);
    let (same, cut) = left(&[["20 mm", "200 mm"], ["30 mm", "130 mm"], ["40 mm", "130 mm"]]);
    assert_eq!(id, same);
    assert!((two / cut - 1.0).abs() < 5e-3, "{two} and {cut}");
}

/// Heat that is written is what the card says, judged by what the fit needs and by its limit.
#[test]
fn a_hub_is_heated_to_what_is_written() {
    let at = |celsius: &str| {
        let plan = full(&plain(50.0, &format!("heated_to = \"{celsius} degC\"")));
        let number = plan.number("heat.driver.temperature").unwrap().clone();
        (number.value.unwrap().si - 273.15, number.verdict.unwrap())
    };
    let (hot, fine) = at("200");
    assert!((hot - 200.0).abs() < 1e-9 && fine == Verdict::Inside);
    assert_eq!(at("60").1, Verdict::Outside, "less than it needs");
    assert_eq!(at("500").1, Verdict::Outside, "more than steel bears");
}

/// A chilled shaft that is enough by itself asks for no heat, and the hub is no colder than its place;
/// dry ice and nitrogen have an answer on steel.
#[test]
fn a_chilled_shaft_may_be_enough() {
    let chilled =
        |over, shaft: &str| full(&plain(over, &format!("shaft_temperature = \"{shaft} degC\"")));
    let plan = chilled(5.0, "-100");
    let number = plan.number("heat.driver.temperature").unwrap();
    assert!((number.value.unwrap().si - 293.15).abs() < 1e-9);
    assert!(number.label.contains("goes on at"), "{}", number.label);
    assert!(plan.number("heat.driver.energy").is_none());
    assert!(plan.number("heat.driver.seconds").is_some());
    let hot =
        |shaft| chilled(120.0, shaft).number("heat.driver.temperature").unwrap().value.unwrap().si;
    let at = ["20", "-78", "-190"].map(hot);
    assert!(at[0] > at[1] && at[1] > at[2], "{at:?}");
}

/// The loss follows the time on the way: a minute in still air takes some kelvins off a hot hub.
#[test]
fn a_longer_way_asks_for_a_hotter_hub() {
    let at = |way: &str| {
        let plan = full(&plain(50.0, &format!("carried = \"{way}\"")));
        let si = |id: &str| plan.number(id).unwrap().value.unwrap().si;
        (si("heat.driver.temperature") - si("heat.driver.at_shaft"), si("heat.driver.loss"))
    };
    let (added, loss) = at("1 min");
    assert!((added - loss).abs() < 1e-9 && (1.0..10.0).contains(&loss), "{loss} K");
    assert!(at("3 min").1 > 2.5 * loss);
}

/// Where nothing works, that is said, and what would.
#[test]
fn no_way_at_all_is_said() {
    let no =
        "driver = { puller_holes = false, jaws_hold = false, oil_port = false, scrap = false }";
    let plan = full(&format!("{}\n[removal]\nheat_allowed = false\n{no}", plain(50.0, "")));
    let number = plan.number("removal.driver.ways").expect("a count of the ways");
    assert_eq!((number.value.unwrap().si, number.verdict), (0.0, Some(Verdict::Outside)));
    assert!(number.settle.contains("None of the five ways"), "{}", number.settle);
}

/// A seal near the hub gets the warmer the nearer it is.
#[test]
fn a_seal_gets_the_warmer_the_nearer_it_is() {
    let at = |behind: &str| {
        let near = format!("{{ behind = \"{behind}\", limit = \"100 degC\" }}");
        let text = format!(
            "{}\n[removal]\npower_body = \"15 kW\"\nheat_for = \"2 min\"\ndriver.near.seal = {near}",
            plain(20.0, "")
        );
        full(&text).number("removal.driver.near.seal").unwrap().value.unwrap().si
    };
    assert!(at("20 mm") > at("80 mm"));
}

/// 71 kN or so on a ram of 3000 mm² that may have 700 bar, which is good for 210 kN (by hand: p·A);
/// threads and jaws by hand: F/(n·0.88·π·d·L), F/(n·b·h), 3·F·h/(n·b·t²).
#[test]
fn a_puller_is_judged_by_its_ram_and_where_it_holds() {
    let removal = "[removal]
        heat_allowed = false
        ram_area = \"3000 mm2\"
        ram_pressure = \"700 bar\"
        screw_thread = \"M24\"
        stud_yield = \"640 MPa\"
        [removal.driver]
        holes = 4
        hole_thread = \"M16\"
        hole_depth = \"20 mm\"
        jaws = 3
        jaw_width = \"30 mm\"
        jaw_grip = \"10 mm\"
        jaw_on = \"25 mm\"";
    let plan = full(&format!("{}\n{removal}", plain(20.0, "")));
    let number = |id: &str| {
        let found = plan.number(&format!("removal.driver.{id}"));
        found.unwrap_or_else(|| panic!("no {id}")).clone()
    };
    let si = |id: &str| number(id).value.unwrap().si;
    let pull = si("force");
    let close =
        |found: f64, wanted: f64| assert!((found / wanted - 1.0).abs() < 1e-9, "{found} {wanted}");
    close(si("ram_force"), 210e3);
    close(si("ram"), pull / 3000e-6);
    close(si("threads"), pull / (4.0 * 0.88 * std::f64::consts::PI * 0.016 * 0.020));
    close(si("jaws"), pull / (3.0 * 0.030 * 0.010));
    close(si("jaws.bending"), 3.0 * pull * 0.010 / (3.0 * 0.030 * 0.025 * 0.025));
    close(si("class"), 1.5 * pull);
    assert_eq!(number("force").verdict, Some(Verdict::Inside));
    for id in ["ram", "threads", "jaws", "jaws.bending", "screw", "screw_stress", "class"] {
        assert!(number(id).working.is_some(), "{id}");
    }
    assert!(number("class").second.contains("hydraulic"), "{}", number("class").second);
    let screw = full(&format!("{}\n[removal]\nscrew_thread = \"1-8\"", plain(20.0, "")));
    let class = screw.number("removal.driver.class").unwrap();
    assert!(class.second.contains("screw puller"), "{}", class.second);
}
