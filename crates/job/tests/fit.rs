//! Fits through the whole of a plan: published cases, form of a bore, tapers, keys, and slips of the
//! hand that are named and never mended.
#![expect(clippy::unwrap_used, reason = "a test may stop here")]

use job::plan::{Plan, plan};
use job::{Job, Stage};
use proptest::prelude::*;
use quantities::Verdict;

fn planned(tables: &str) -> Plan {
    let text = format!("hubwright = 1\n[job]\ntitle = \"a case\"\n{tables}");
    let file = job::read(&text).unwrap_or_else(|errors| panic!("{text}\n{}", errors[0]));
    plan(&Job::from_file(&file), file.system())
}

/// What is said of tables that cannot be.
fn complaint(tables: &str) -> String {
    let text = format!("hubwright = 1\n[job]\ntitle = \"a case\"\n{tables}");
    job::read(&text).unwrap_err().iter().map(ToString::to_string).collect()
}

fn si(plan: &Plan, id: &str) -> f64 {
    let number = plan.number(id).unwrap_or_else(|| panic!("no {id}"));
    number.value.unwrap_or_else(|| panic!("{id} has no value")).si
}

fn verdict(plan: &Plan, id: &str) -> Verdict {
    plan.number(id).and_then(|number| number.verdict).unwrap_or_else(|| panic!("no word on {id}"))
}

fn notes(plan: &Plan, stage: Stage) -> String {
    plan.stage(stage).notes.join("\n")
}

/// Within half of the last printed digit.
fn near(found: f64, published: f64, half: f64) {
    assert!((found - published).abs() <= half, "{found} for {published}");
}

const MIL: f64 = 25.4e-6;
const PSI: f64 = 6_894.757_293_168;

/// Bore and shaft at one place, in millimetres, with a ± that hardly counts.
fn sizes(nominal: f64, bore: f64, shaft: f64) -> String {
    format!(
        "[sizes]\nspread = \"0.000001 mm\"\n[sizes.driver]\nnominal = \"{nominal} mm\"\n\
         [sizes.driver.bore.1]\nalong = \"{bore} mm\"\n[sizes.driver.shaft.1]\nalong = \"{shaft} mm\"\n"
    )
}

fn steel_hub(outside: f64, length: f64) -> String {
    format!(
        "[coupling.driver]\noutside = \"{outside} mm\"\nlength = \"{length} mm\"\n\
         material = \"steel\"\nshaft_material = \"steel\"\n"
    )
}

/// Least and greatest interference of fits as printed.
#[test]
fn classes_have_their_printed_limits() {
    // ISO 286-2:2010, Tables 6 to 32 (µm).
    for (class, nominal, least, greatest) in [
        ("H7/p6", 80.0, 2.0, 51.0),
        ("H7/s6", 50.0, 18.0, 59.0),
        ("H8/f7", 80.0, -106.0, -30.0),
        ("H7/n6", 65.0, -10.0, 39.0),
    ] {
        let plan = planned(&format!(
            "{}[fit.driver]\nclass = \"{class}\"",
            sizes(nominal, nominal, nominal)
        ));
        let limits = plan.number("fit.driver.interference").unwrap().limits.unwrap();
        near(limits.least.unwrap() * 1e6, least, 1e-6);
        near(limits.greatest.unwrap() * 1e6, greatest, 1e-6);
    }
    // ANSI B4.1-1967 Tables 11 and 12 (Machinery's Handbook, 27th ed., p. 663, and 31st, p. 660); a
    // bore of ANSI/AGMA 9002-B04 on a shaft of NEMA MG 1 (mils).
    for (class, nominal, least, greatest) in [
        ("FN2", 3.0, 1.0, 2.9),
        ("FN1", 2.25, 0.6, 1.8),
        ("LN2", 1.0, 0.0, 1.3),
        ("AGMA interference", 1.5, 0.0, 1.0),
        ("AGMA clearance", 1.5, -1.5, 0.0),
    ] {
        let size = format!("{nominal} in");
        let plan = planned(&format!(
            "units = \"inch\"\n[sizes.driver]\nnominal = \"{size}\"\n[sizes.driver.bore.1]\n\
             along = \"{size}\"\n[sizes.driver.shaft.1]\nalong = \"{size}\"\n\
             [fit.driver]\nclass = \"{class}\""
        ));
        let limits = plan.number("fit.driver.interference").unwrap().limits.unwrap();
        near(limits.least.unwrap() / MIL, least, 1e-6);
        near(limits.greatest.unwrap() / MIL, greatest, 1e-6);
    }
}

/// A class that the tables do not hold for a size is not passed over in silence.
#[test]
fn a_class_that_is_not_held_says_so() {
    let plan = planned(&format!(
        "{}[fit.driver]\nclass = \"AGMA interference\"",
        sizes(80.0, 80.0, 80.03)
    ));
    let said = notes(&plan, Stage::Fit);
    assert!(said.contains("AGMA interference") && said.contains("not held"), "{said}");
    assert!(plan.missing().any(|missing| missing.place == "fit.driver.class"));
}

/// Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, 8th ed., solution 3-64: 40 mm in
/// 80 mm, steel of 207 GPa; radial interference 0.0295 and 0.009 mm press with 114.5 and 34.9 MPa.
#[test]
fn shigley_hubs_press_as_printed() {
    for (over, pressure) in [(0.059, 114.5), (0.018, 34.9)] {
        let plan = planned(&format!("{}{}", sizes(40.0, 40.0, 40.0 + over), steel_hub(80.0, 50.0)));
        near(si(&plan, "fit.driver.pressure") / 1e6, pressure, 0.05);
    }
}

/// A ring cut in two holds what it held.
#[test]
fn slices_cut_in_two_hold_the_same() {
    let whole = planned(&format!("{}{}", sizes(80.0, 80.0, 80.06), steel_hub(130.0, 90.0)));
    let cut = planned(&format!(
        "{}[coupling.driver]\nmaterial = \"steel\"\nshaft_material = \"steel\"\n\
         [coupling.driver.slices]\n1 = {{ length = \"30 mm\", outside = \"130 mm\" }}\n\
         2 = {{ length = \"60 mm\", outside = \"130 mm\" }}\n",
        sizes(80.0, 80.0, 80.06)
    ));
    for id in ["fit.driver.torque", "fit.driver.pressure", "fit.driver.speed", "fit.driver.warmth"]
    {
        let (one, two) = (si(&whole, id), si(&cut, id));
        assert!((one / two - 1.0).abs() < 1e-9, "{id}: {one} {two}");
    }
}

/// At the speed that opens the fit, nothing presses any more; just below it, a little does.
#[test]
fn the_fit_opens_at_its_speed() {
    let base = format!("{}{}", sizes(80.0, 80.0, 80.03), steel_hub(130.0, 90.0));
    let opens = si(&planned(&base), "fit.driver.speed");
    let at = |part: f64| {
        let rpm = opens * part * 30.0 / std::f64::consts::PI;
        planned(&format!("{base}[machines]\npower = \"75 kW\"\nspeed = \"{rpm:.3} rpm\""))
    };
    assert_eq!(verdict(&at(1.01), "fit.driver.speed"), Verdict::Outside);
    assert_eq!(verdict(&at(0.99), "fit.driver.speed"), Verdict::Inside);
    assert!(si(&at(1.01), "fit.driver.torque") <= 0.0);
    assert!(si(&at(0.99), "fit.driver.torque") > 0.0);
}

/// A steel bore read warm, by hand with ISO 1: 100.023 mm at 40 °C with the gauge at 20 °C is 100 mm,
/// at 11.5 µm per metre and kelvin.
#[test]
fn a_warm_bore_is_brought_to_20_degrees() {
    let plan = planned(
        "[coupling.driver]\nmaterial = \"steel\"\n[sizes]\ntemperature = \"40 degC\"\n\
         instrument_temperature = \"20 degC\"\nspread = \"0.001 mm\"\n\
         [sizes.driver]\nnominal = \"100 mm\"\n[sizes.driver.bore.1]\nalong = \"100.023 mm\"",
    );
    near(si(&plan, "sizes.driver.bore") * 1e3, 100.000, 0.0005);
    near(si(&plan, "sizes.driver.bore.at_20") * 1e6, -23.0, 0.5);
}

/// A gauge set on a ring of 80.002 mm, read as differences; one set on 80.000 that read 80.003 there.
#[test]
fn readings_are_set_right_by_the_standard() {
    let plan = planned(
        "[sizes]\nspread = \"0.001 mm\"\n[sizes.driver]\nnominal = \"80 mm\"\n\
         bore_gauge = { reads = \"difference\", set_on = \"80.002 ± 0.001 mm\" }\n\
         micrometer = { set_on = \"80.000 ± 0.001 mm\", read_there = \"80.003 mm\" }\n\
         [sizes.driver.bore.1]\nalong = \"0.010 mm\"\nacross = \"0.012 mm\"\n\
         [sizes.driver.shaft.1]\nalong = \"80.048 mm\"\n",
    );
    near(si(&plan, "sizes.driver.bore") * 1e3, 80.013, 1e-9);
    near(si(&plan, "sizes.driver.shaft") * 1e3, 80.045, 1e-9);
    near(si(&plan, "sizes.driver.shaft.setting") * 1e6, -3.0, 1e-6);
}

/// r = R + a·cos 2φ is an oval of 4·a to two points; r = R + a·cos 3φ is round to two points, and
/// three lobes of 4·a to three.
#[test]
fn two_and_three_lobes_are_told_apart() {
    let bore = |two: &str, three: &str| {
        planned(&format!(
            "[sizes]\nspread = \"0.0005 mm\"\n[sizes.driver]\nnominal = \"80 mm\"\n\
             [sizes.driver.bore.1]\nat = \"20 mm\"\n{two}\n[sizes.driver.bore.1.three_point]\n{three}"
        ))
    };
    // a = 5 µm, largest along the key.
    let oval = bore(
        "along = \"80.010 mm\"\nacross = \"79.990 mm\"\naround = { 60 = \"79.995 mm\", 120 = \"79.995 mm\" }",
        "0 = \"80.000 mm\"\n60 = \"80.000 mm\"",
    );
    near(si(&oval, "sizes.driver.bore.round") * 1e6, 20.0, 1e-6);
    near(si(&oval, "sizes.driver.bore.lobes") * 1e6, 0.0, 1e-6);
    assert!(oval.number("sizes.driver.bore.round").unwrap().second.contains("0° from the key"));
    let touches = |plan: &Plan| {
        let [bore, _] = &plan.drawings.fits[0].parts;
        [bore.readings.len(), bore.by_three_points.iter().filter(|read| read.touches == 3).count()]
    };
    assert_eq!(touches(&oval), [4, 2], "the bore map shows both");
    let lobed = bore(
        "along = \"80.000 mm\"\nacross = \"80.000 mm\"\naround = { 60 = \"80.000 mm\", 120 = \"80.000 mm\" }",
        "0 = \"80.010 mm\"\n60 = \"79.990 mm\"",
    );
    near(si(&lobed, "sizes.driver.bore.round") * 1e6, 0.0, 1e-6);
    near(si(&lobed, "sizes.driver.bore.lobes") * 1e6, 20.0, 1e-6);
}

#[test]
fn barrel_and_waist_are_named() {
    let bore = |middle: &str| {
        let plan = planned(&format!(
            "[sizes]\nspread = \"0.002 mm\"\n[sizes.driver]\nnominal = \"80 mm\"\n[sizes.driver.bore]\n\
             1 = {{ at = \"10 mm\", along = \"80.010 mm\" }}\n2 = {{ at = \"40 mm\", along = \"{middle} mm\" }}\n\
             3 = {{ at = \"70 mm\", along = \"80.010 mm\" }}\n"
        ));
        let bow = plan.number("sizes.driver.bore.bow").unwrap();
        (bow.value.unwrap().si * 1e6, bow.second.clone())
    };
    let (barrel, said) = bore("80.020");
    near(barrel, 10.0, 1e-6);
    assert!(said.contains("wide in the middle"), "{said}");
    let (waist, said) = bore("80.000");
    near(waist, -10.0, 1e-6);
    assert!(said.contains("narrow in the middle"), "{said}");
    assert!(bore("80.011").1.contains("no more than the ±"));
}

/// A whole turn of the thimble is 0.5 mm or 0.025 in (ISO 3611, ASME B89.1.13): it is named where it
/// was read, and the reading stands.
#[test]
fn a_whole_turn_is_named_and_not_mended() {
    for (unit, at, turn, word) in
        [("mm", 80.0, 0.5, "metric thimble"), ("in", 3.0, 0.025, "inch thimble")]
    {
        let reads = [0.0, 0.0, turn, 0.0].map(|off: f64| format!("{:.3} {unit}", at + off));
        let plan = planned(&format!(
            "[sizes]\nspread = \"0.003 mm\"\n[sizes.driver]\nnominal = \"{at} {unit}\"\n[sizes.driver.shaft]\n\
             1 = {{ at = \"10 mm\", along = \"{}\", across = \"{}\" }}\n\
             2 = {{ at = \"40 mm\", along = \"{}\", across = \"{}\" }}\n",
            reads[0], reads[1], reads[2], reads[3]
        ));
        let said = notes(&plan, Stage::Sizes);
        assert!(said.contains(word) && said.contains("station 2, along the key"), "{said}");
        assert!(said.contains("Read it again"), "{said}");
        let metres = if unit == "mm" { 1e-3 } else { 25.4e-3 };
        near(si(&plan, "sizes.driver.shaft") / metres, at + turn / 4.0, 1e-9);
    }
}

#[test]
fn what_cannot_be_is_refused_with_what_was_expected() {
    for (tables, word) in [
        (format!("{}{}", sizes(80.0, 80.0, 80.03), steel_hub(75.0, 90.0)), "larger than its bore"),
        (format!("{}{}", sizes(80.0, 131.0, 80.03), steel_hub(130.0, 90.0)), "unit mistaken"),
        (
            "[sizes.driver]\nnominal = \"80 mm\"\n[sizes.driver.bore_gauge]\nreads = \"difference\"\n\
             set_on = \"80 mm\"\n[sizes.driver.bore.1]\nalong = \"80.012 mm\"\n"
                .to_owned(),
            "more than a bore gauge travels",
        ),
        ("[fit.driver]\nclass = \"H7/zz9\"".to_owned(), "H7/p6"),
        ("[fit.driver]\nleast = \"0.05 mm\"\ngreatest = \"0.01 mm\"".to_owned(), "negative"),
        ("[sizes.driver.taper]\ncontact = \"120 %\"".to_owned(), "0 to 100 %"),
        ("[sizes.driver.taper]\nrate = \"steep\"".to_owned(), "1:12"),
        (
            "[sizes.driver]\nnominal = \"80 mm\"\n[sizes.driver.key]\nwidth = \"41 mm\"".to_owned(),
            "quarter of the shaft",
        ),
    ] {
        let said = complaint(&tables);
        assert!(said.contains(word), "{word}: {said}");
    }
}

/// A cone of 1:12 closes by a twelfth of its draw-up; at 3/4 in/ft by a sixteenth.
#[test]
fn a_taper_is_drawn_up_to_its_stop() {
    let with = |rate: &str, contact: &str| {
        planned(&format!(
            "{}[sizes.driver]\nnominal = \"102 mm\"\n\
             taper = {{ rate = \"{rate}\", small_end = \"94 mm\", contact = \"{contact}\", stands_out = \"-3 mm\" }}\n\
             [fit.driver]\nleast = \"0.09 mm\"\ngreatest = \"0.11 mm\"\ndrawn_up = \"1.2 mm\"",
            steel_hub(150.0, 96.0)
        ))
    };
    for (rate, over) in [("1:10", 10.0), ("1:12", 12.0), ("1:16", 16.0), ("3/4 in/ft", 16.0)] {
        let plan = with(rate, "90 %");
        near(si(&plan, "fit.driver.draw_up") * 1e3, 0.1 * over, 1e-9);
        near(si(&plan, "fit.driver.stop") * 1e3, 0.1 * over - 3.0, 1e-9);
        near(si(&plan, "fit.driver.interference") * 1e3, 1.2 / over, 1e-9);
        assert!(si(&plan, "fit.driver.oil") > si(&plan, "fit.driver.pressure"));
    }
    // API 671: 85 % of a tapered bore must bear (from memory).
    assert_eq!(verdict(&with("1:12", "90 %"), "sizes.driver.contact"), Verdict::Inside);
    assert_eq!(verdict(&with("1:12", "80 %"), "sizes.driver.contact"), Verdict::Outside);
    // Less contact holds less, in proportion.
    let held = |contact: &str| si(&with("1:12", contact), "fit.driver.torque");
    near(held("45 %") / held("90 %"), 0.5, 1e-9);
}

/// Mott, *Machine Elements in Mechanical Design*, ch. 11, exercise 1: a square key of 1/2 in on 2 in
/// for 21 000 lbf·in, yield 54 000 psi, design factor 3, is 4.67 in long. The plan asks a safety of
/// 1.5, so it is given twice the torque.
#[test]
fn motts_key_needs_its_printed_length() {
    let plan = planned(
        "units = \"inch\"\n[machines]\npower = \"1 hp\"\nspeed = \"1750 rpm\"\npeak_torque = \"3500 lbf·ft\"\n\
         [sizes.driver]\nnominal = \"2 in\"\n[sizes.driver.key]\nwidth = \"0.5 in\"\nheight = \"0.5 in\"\n\
         length = \"4 in\"\nyield_strength = \"54000 psi\"",
    );
    near(si(&plan, "fit.driver.key.torque") / (PSI * 25.4e-3_f64.powi(3)), 42_000.0, 1.0);
    near(si(&plan, "fit.driver.key.needed") / 25.4e-3, 4.67, 0.005);
    assert_eq!(verdict(&plan, "fit.driver.key.shear"), Verdict::Outside);
}

/// ANSI B17.1, square, class 1: 1/2 in of bar stock, 0 to −0.002 in wide and high.
#[test]
fn an_inch_key_is_judged_by_its_height_too() {
    let plan = planned(
        "units = \"inch\"\n[sizes.driver]\nnominal = \"2 in\"\n[sizes.driver.key]\n\
         width = \"0.4990 ± 0.0002 in\"\nheight = \"0.5010 ± 0.0002 in\"\nlength = \"4 in\"",
    );
    let limits = plan.number("fit.driver.key.height").unwrap().limits.unwrap();
    near(limits.least.unwrap() / 25.4e-3, 0.498, 1e-9);
    near(limits.greatest.unwrap() / 25.4e-3, 0.5, 1e-9);
    assert_eq!(verdict(&plan, "fit.driver.key.width"), Verdict::Inside);
    assert_eq!(verdict(&plan, "fit.driver.key.height"), Verdict::Outside);
}

/// ISO/R 773: 22 × 14 on 80 mm, 9.0 and 5.4 deep (+0.2), normal seat N9 in the shaft (0 to −52 µm)
/// and JS9 in the hub (± 26 µm), key h9 (0 to −52 µm); height h11 of ISO 286-2 (0 to −110 µm).
#[test]
fn a_metric_key_has_its_printed_zones() {
    let plan = planned(&format!(
        "{}[sizes.driver.key]\nwidth = \"22.00 ± 0.005 mm\"\nheight = \"14.0 ± 0.01 mm\"\nlength = \"80 mm\"\n\
         shaft_width = \"21.97 ± 0.005 mm\"\nhub_width = \"22.06 ± 0.005 mm\"\n\
         shaft_depth = \"9.1 ± 0.05 mm\"\nhub_depth = \"5.2 ± 0.02 mm\"",
        sizes(80.0, 80.0, 80.03)
    ));
    for (key, least, greatest) in [
        ("width", 21.948, 22.0),
        ("height", 13.89, 14.0),
        ("shaft_width", 21.948, 22.0),
        ("hub_width", 21.974, 22.026),
        ("shaft_depth", 9.0, 9.2),
        ("hub_depth", 5.4, 5.6),
    ] {
        let limits = plan.number(&format!("fit.driver.key.{key}")).unwrap().limits.unwrap();
        near(limits.least.unwrap() * 1e3, least, 1e-6);
        near(limits.greatest.unwrap() * 1e3, greatest, 1e-6);
    }
    assert_eq!(verdict(&plan, "fit.driver.key.hub_width"), Verdict::Outside);
    assert_eq!(verdict(&plan, "fit.driver.key.hub_depth"), Verdict::Outside);
    // 9.1 + 5.2 − 14 less the tightness of the fit itself.
    near(si(&plan, "fit.driver.key.top") * 1e3, 0.3 - 0.015, 1e-9);
    near(si(&plan, "fit.driver.key.side.shaft") * 1e6, -30.0, 1e-3);
    near(si(&plan, "fit.driver.key.side.hub") * 1e6, 60.0, 1e-3);
}

/// The rule that a job chooses decides what a key is asked to carry.
#[test]
fn a_key_carries_all_or_what_friction_leaves() {
    let with = |rule: &str| {
        planned(&format!(
            "{}{}[machines]\npower = \"75 kW\"\nspeed = \"500 rpm\"\nservice_factor = \"2\"\n\
             [sizes.driver.key]\nwidth = \"22 mm\"\nheight = \"14 mm\"\nlength = \"80 mm\"\n\
             [fit]\nsharing = \"{rule}\"",
            sizes(80.0, 80.0, 80.02),
            steel_hub(130.0, 90.0)
        ))
    };
    let (alone, after) = (with("key alone"), with("after friction"));
    let carried = 75e3 / (500.0 * std::f64::consts::PI / 30.0) * 2.0;
    near(si(&alone, "fit.driver.key.torque"), carried, 1e-6);
    let left = (carried - si(&after, "fit.driver.torque")).max(0.0);
    near(si(&after, "fit.driver.key.torque"), left, 1e-6);
}

/// ISO 21940-32: the key for a half-key balance is as long as the mean of both keyways.
#[test]
fn a_key_for_balance_is_the_mean_of_its_keyways() {
    let plan = planned(
        "[sizes.driver]\nnominal = \"80 mm\"\n[sizes.driver.key]\nwidth = \"22 mm\"\nheight = \"14 mm\"\n\
         length = \"125 mm\"\nshaft_keyway_length = \"125 mm\"\nhub_keyway_length = \"75 mm\"",
    );
    near(si(&plan, "fit.driver.key.balance") * 1e3, 100.0, 1e-9);
    assert!(notes(&plan, Stage::Fit).contains("balance"));
}

/// Limits as entered outrank a class, and the sheet's stand where neither is given.
#[test]
fn limits_are_by_whoever_gave_them() {
    let sheet = "[coupling.sheet.interference]\nleast = \"0.02 mm\"\ngreatest = \"0.05 mm\"\n";
    let whose = |tables: &str| {
        let plan = planned(&format!("{}{sheet}{tables}", sizes(80.0, 80.0, 80.03)));
        plan.number("fit.driver.interference").unwrap().second.clone()
    };
    assert!(whose("").contains("maker’s sheet"));
    assert!(whose("[fit.driver]\nclass = \"H7/p6\"").contains("class H7/p6, ISO 286"));
    let both = "[fit.driver]\nclass = \"H7/p6\"\nleast = \"0.01 mm\"\ngreatest = \"0.04 mm\"";
    assert!(whose(both).contains("as entered"));
}

/// What could have happened is said, and the readings stand.
#[test]
fn slips_of_place_and_unit_are_named() {
    let base = "[machines.driver]\nname = \"motor\"\n[machines.driven]\nname = \"pump\"\n\
        [sizes]\nspread = \"0.003 mm\"\n[sizes.driven]\nnominal = \"60 mm\"\n[sizes.driver]\nnominal = \"80 mm\"\n";
    let said = |bore: &str| {
        let plan = planned(&format!("{base}[sizes.driver.bore]\n{bore}"));
        notes(&plan, Stage::Sizes)
    };
    let two = "1 = { at = \"10 mm\", along = \"80.012 mm\", across = \"80.014 mm\" }\n\
        2 = { at = \"40 mm\", along = \"80.011 mm\", across = \"80.013 mm\" }\n";
    // 3.150 in is 80.01 mm: inches read off, millimetres written.
    let unit = said(&format!("{two}3 = {{ at = \"70 mm\", along = \"3.150 mm\" }}"));
    assert!(
        unit.contains("inches mixed up") && unit.contains("station 3, along the key"),
        "{unit}"
    );
    // The pump's bore, written among the motor's.
    let other = "3 = { at = \"70 mm\", along = \"60.012 mm\", across = \"60.014 mm\" }";
    let place = said(&format!("{two}{other}"));
    assert!(place.contains("station 3") && place.contains("suit the pump"), "{place}");
    assert!(!said(two).contains("Read it again"));
}

#[test]
fn bore_and_shaft_in_each_others_place_are_asked_about() {
    let said = |bore: f64, shaft: f64| {
        let sizes = sizes(80.0, bore, shaft);
        notes(&planned(&format!("{sizes}[fit.driver]\nclass = \"H7/p6\"")), Stage::Sizes)
    };
    assert!(said(80.040, 80.012).contains("each other’s place"));
    assert!(!said(80.012, 80.040).contains("each other’s place"));
}

/// Shigley, *Mechanical Engineering Design*, Table 7-4: a cup point of 1/2 in holds 3000 lbf; two of
/// them on 2 in hold 500 lbf·ft.
#[test]
fn set_screws_hold_what_the_table_says() {
    let plan = planned(
        "units = \"inch\"\n[coupling.sheet.setscrew]\nsize = \"1/2\"\ncount = 2\n\
         [sizes.driver]\nnominal = \"2 in\"\n[sizes.driver.key]\nwidth = \"0.5 in\"\nheight = \"0.5 in\"\n\
         length = \"3 in\"",
    );
    near(si(&plan, "fit.driver.screw.torque") / (12.0 * PSI * 25.4e-3_f64.powi(3)), 500.0, 0.5);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    /// More interference holds more, presses harder, opens later and needs more heat.
    #[test]
    fn more_interference_does_more(over in 10.0..60.0_f64, more in 1.0..30.0_f64, d in 40.0..120.0_f64) {
        let with = |over: f64| {
            planned(&format!("{}{}", sizes(d, d, d + over / 1e3), steel_hub(1.7 * d, d)))
        };
        let (less, more) = (with(over), with(over + more));
        for id in ["torque", "pressure", "speed", "warmth", "stress", "axial"] {
            let id = format!("fit.driver.{id}");
            prop_assert!(si(&less, &id) < si(&more, &id), "{}", id);
        }
    }

    /// A stouter hub presses harder and holds more; a hollow shaft less.
    #[test]
    fn stouter_holds_more_and_hollow_less(outside in 1.4..2.5_f64, bore in 0.2..0.6_f64) {
        let d = 80.0;
        let base = sizes(d, d, d + 0.05);
        let torque = |hub: String| si(&planned(&format!("{base}{hub}")), "fit.driver.torque");
        let solid = torque(steel_hub(outside * d, 90.0));
        prop_assert!(solid < torque(steel_hub(outside * d * 1.1, 90.0)));
        let hollow = format!("{}shaft_bore = \"{} mm\"\n", steel_hub(outside * d, 90.0), bore * d);
        prop_assert!(torque(hollow) < solid);
    }
}
