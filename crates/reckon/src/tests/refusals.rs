//! What is wrong is said, with what was expected; nothing is made up and nothing panics.

use proptest::prelude::*;

use super::*;
use crate::{ReckonError, ask_json};

fn refused(name: &str, inputs: &[(&str, &str)]) -> String {
    reckon(name, inputs.iter().copied()).unwrap_err().to_string()
}

#[test]
fn an_unknown_name_gets_the_nearest() {
    let message = refused("contact-presure", &[]);
    assert!(message.contains("“contact-presure”"), "{message}");
    assert!(message.contains("did you mean “contact-pressure”?"), "{message}");
    let message = refused("zzz", &[]);
    assert!(!message.contains("did you mean"), "{message}");
}

#[test]
fn an_unknown_input_gets_the_nearest_and_all() {
    let message = refused("torque", &[("powre", "90 kW"), ("speed", "1480 rpm")]);
    assert!(message.contains("did you mean “power”?"), "{message}");
    assert!(message.contains("it takes power, speed, service_factor"), "{message}");
}

#[test]
fn a_missing_input_is_named_and_explained() {
    let message = refused("torque", &[("power", "90 kW")]);
    assert_eq!(message, "torque needs speed: speed of the coupling");
    // One that may be left out is still wanted where nothing else serves.
    let message = refused("dial-sweep", &[("readings", "0; 5; 9; 4 mil"), ("surface", "face")]);
    assert!(message.starts_with("dial-sweep needs swing"), "{message}");
}

#[test]
fn a_unit_is_wanted_and_the_right_one() {
    let message = refused("torque", &[("power", "90"), ("speed", "1480 rpm")]);
    assert!(message.starts_with("power: “90” has no unit; expected a power"), "{message}");
    let message = refused("torque", &[("power", "90 N·m"), ("speed", "1480 rpm")]);
    assert!(message.contains("is a unit of a torque; expected a power"), "{message}");
    let message = refused("bolt-torque", &[("bolt", "M16 8.8"), ("threads", "oily")]);
    assert!(message.contains("none of: dry, zinc plated, oiled"), "{message}");
    assert!(message.contains("did you mean “oiled”?"), "{message}");
}

#[test]
fn an_input_that_is_read_nowhere_is_read_all_the_same() {
    let ball = [("outside", "50 mm"), ("bore_surface", "bare"), ("length", "12 furlong")];
    let message = refused("lump-cooling", &ball);
    assert!(message.contains("furlong") || message.contains("needs"), "{message}");
    let message = refused("size", &[("readings", "80 mm"), ("spread", "4 µm"), ("nominal", "big")]);
    assert!(message.starts_with("nominal: “big” is not a number"), "{message}");
}

#[test]
fn once_is_enough() {
    let twice = [("power", "90 kW"), ("power", "91 kW"), ("speed", "1480 rpm")];
    assert_eq!(refused("torque", &twice), "power is given twice");
}

#[test]
fn what_has_no_answer_says_what_it_holds_for() {
    let message = refused("torque", &[("power", "-90 kW"), ("speed", "1480 rpm")]);
    assert!(message.starts_with("no answer: power is not above zero"), "{message}");
    assert!(message.ends_with("it holds for: steady running; power and speed above zero"));
    let loose = [("interference", "-0.01 mm"), ("joint", "50 mm"), ("outside", "100 mm")];
    assert!(refused("contact-pressure", &loose).contains("no interference to press with"));
    assert!(refused("iso-limits", &[("class", "H7"), ("nominal", "2 m")]).contains("not held"));
    assert!(refused("key-metric", &[("shaft", "5 mm")]).contains("no figure is held"));
    assert!(refused("tightening-order", &[("bolts", "2.5")]).contains("not a whole number"));
    assert!(refused("tightening-order", &[("bolts", "1")]).contains("no answer"));
}

#[test]
fn names_of_metals_seals_and_kinds_are_offered() {
    let message = refused("material", &[("material", "steal")]);
    assert!(message.contains("did you mean “steel”?"), "{message}");
    let message = refused("seal-limit", &[("seal", "nitril")]);
    assert!(message.contains("did you mean “nitrile”?"), "{message}");
    let message = refused("coupling-kind", &[("kind", "geer")]);
    assert!(message.contains("did you mean “gear”?"), "{message}");
    let message = refused(
        "support-growth",
        &[("height", "500 mm"), ("rise", "40 K"), ("material", "concret")],
    );
    assert!(message.contains("did you mean “concrete”?"), "{message}");
}

#[test]
fn several_quantities_share_a_unit_only_when_none_has_its_own() {
    let mean = |readings: &str| {
        let asked = [("readings", readings), ("spread", "1 µm")];
        reckon("size", asked).map(|answer| answer.value("mean").unwrap().si)
    };
    assert!((mean("80.1; 80.3 mm").unwrap() - 0.0802).abs() < 1e-12);
    assert!((mean("3 in; 80.2 mm").unwrap() - 0.0782).abs() < 1e-12);
    assert!((mean("3 in; 76.2 mm;").unwrap() - 0.0762).abs() < 1e-12);
    assert!(mean("80.1 mm; 80.3").is_err());
    assert!(mean("80.1; 3 in; 80.3 mm").is_err());
    assert!(mean("80.1; kW mm").is_err());
    let asked = [("torque", "200 N·m"), ("fractions", "30; 70; 100 %")];
    let passes = reckon("bolt-passes", asked).unwrap();
    assert_eq!(
        passes.result("passes").unwrap().show(quantities::System::Metric),
        "60.0 N·m; 140 N·m; 200 N·m"
    );
    assert!(mean("").is_err());
    assert!(mean(" ; ").is_err());
}

#[test]
fn numbers_of_things_must_match() {
    let short = [("readings", "0; 5; 9 mil")];
    assert!(refused("dial-sweep", &short).contains("3 readings at 4 positions"));
    let gaps = [("rise", "0.2 mm"), ("gaps", "0.1; 0.1 mm")];
    assert!(refused("soft-foot", &gaps).contains("2 given where 4 are wanted"));
}

/// Every calculation, each of its inputs in turn replaced by nonsense of several sorts: an error or
/// an answer, never a panic, and never a number that is none.
#[test]
fn nonsense_in_any_input_never_panics() {
    let nonsense = [
        "",
        "0",
        "-1 mm",
        "0 mm",
        "1e300 mm",
        "1e-300 mm",
        "nan",
        "∞ kW",
        "0 K",
        "-400 °C",
        "0 kW",
        "1e9",
        "-3",
        "0 rpm",
        "1e300 rpm",
        "0 N·m",
        "1 mm ± 1e300 mm",
        "9; 9; 9 mm",
        "x",
        "12; 12",
    ];
    for case in cases::all() {
        for input in case.calculation().inputs {
            for text in nonsense {
                let mut inputs: Vec<(&str, &str)> =
                    case.inputs.iter().copied().filter(|(name, _)| *name != input.name).collect();
                inputs.push((input.name, text));
                if let Ok(answer) = reckon(case.name, inputs) {
                    check_finite(case, input.name, text, &answer);
                }
            }
        }
    }
}

fn check_finite(case: &Case, input: &str, text: &str, answer: &Answer) {
    for (name, outcome) in &answer.results {
        let values: &[Value] = match outcome {
            Outcome::Value(value) => std::slice::from_ref(value),
            Outcome::Values(values) => values,
            _ => &[],
        };
        for value in values {
            let what = format!("{}: {input}={text} gives {name} of {}", case.name, value.si);
            assert!(value.si.is_finite(), "{what}");
            assert!(value.plus_minus.is_none_or(f64::is_finite), "{what}");
        }
    }
}

#[test]
fn lines_that_are_no_cases_are_refused() {
    for line in [
        "",
        "7",
        "[]",
        "{",
        "{\"reckon\": 7}",
        "{\"reckon\": \"torque\", \"power\": {}}",
        "{\"reckon\": \"torque\", \"power\": [null]}",
        "{\"power\": \"90 kW\"}",
    ] {
        let error = ask_json(None, line).unwrap_err();
        assert!(matches!(error, ReckonError::NotJson(_)), "{line}: {error}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    /// Random texts in random inputs of any calculation.
    #[test]
    fn any_text_is_answered(
        place in any::<prop::sample::Index>(),
        texts in prop::collection::vec("[-−+±0-9 .,;:/%°a-zA-Zµ·]{0,20}|\\PC{0,16}", 14),
    ) {
        let all: Vec<&Calculation> = all().collect();
        let calculation = all[place.index(all.len())];
        let inputs = calculation.inputs.iter().zip(&texts);
        let _ = reckon(calculation.name, inputs.map(|(input, text)| (input.name, text.as_str())));
        let _ = ask_json(None, &texts[0]);
        let _ = reckon(&texts[1], [(texts[2].as_str(), texts[3].as_str())]);
    }

    /// Texts of the right sort with odd numbers: an answer has only numbers that are numbers.
    #[test]
    fn odd_numbers_are_answered_soundly(
        place in any::<prop::sample::Index>(),
        numbers in prop::collection::vec(prop_oneof![
            -10.0..10.0_f64, 0.0..1e4_f64, Just(0.0), -1e12..1e12_f64,
        ], 16),
    ) {
        let cases: Vec<&Case> = cases::all().collect();
        let case = cases[place.index(cases.len())];
        let inputs: Vec<(&str, String)> = case.inputs.iter().zip(&numbers)
            .map(|((name, text), number)| (*name, renumbered(text, *number)))
            .collect();
        let asked = inputs.iter().map(|(name, text)| (*name, text.as_str()));
        if let Ok(answer) = reckon(case.name, asked) {
            check_finite(case, "odd numbers", &format!("{inputs:?}"), &answer);
        }
    }
}

/// The text with another number before its unit.
fn renumbered(text: &str, number: f64) -> String {
    match text.rsplit_once(' ') {
        Some((digits, unit)) if digits.starts_with(|c: char| c.is_ascii_digit() || c == '-') => {
            format!("{number} {unit}")
        }
        _ => text.to_owned(),
    }
}
