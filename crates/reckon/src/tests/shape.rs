//! Every entry of the catalogue is whole.

use std::collections::BTreeSet;

use quantities::read;

use super::*;
use crate::describe;

fn is_name(text: &str, joint: char) -> bool {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == joint;
    !text.is_empty() && text.chars().all(plain) && !text.starts_with(joint)
}

#[test]
fn names_are_unique_and_plain() {
    let names: Vec<&str> = all().map(|calculation| calculation.name).collect();
    assert_eq!(names.iter().collect::<BTreeSet<_>>().len(), names.len());
    for calculation in all() {
        assert!(is_name(calculation.name, '-'), "{}", calculation.name);
        let inputs: BTreeSet<&str> = calculation.inputs.iter().map(|input| input.name).collect();
        assert_eq!(inputs.len(), calculation.inputs.len(), "{}", calculation.name);
        let outputs: BTreeSet<&str> = calculation.outputs.iter().map(|it| it.name).collect();
        assert_eq!(outputs.len(), calculation.outputs.len(), "{}", calculation.name);
        for name in inputs.iter().chain(&outputs) {
            assert!(is_name(name, '_'), "{}: {name}", calculation.name);
        }
    }
}

#[test]
fn every_entry_says_what_it_is() {
    for calculation in all() {
        let name = calculation.name;
        assert!(calculation.does.ends_with('.') && calculation.does.len() > 20, "{name}");
        assert!(calculation.valid.len() > 8, "{name}");
        assert!(calculation.source.to_string().len() > 8, "{name}");
        assert!(!calculation.inputs.is_empty() && !calculation.outputs.is_empty(), "{name}");
        for input in calculation.inputs {
            assert!(input.what.len() > 3, "{name}: {}", input.name);
        }
        for output in calculation.outputs {
            assert!(output.what.len() > 3, "{name}: {}", output.name);
        }
        assert_eq!(describe(calculation)["name"], name);
    }
}

#[test]
fn what_stands_in_can_be_read() {
    for calculation in all() {
        for input in calculation.inputs {
            let Some(default) = input.default.filter(|default| !default.is_empty()) else {
                continue;
            };
            let name = format!("{}: {}", calculation.name, input.name);
            match input.sort {
                Sort::Quantity(kind) => {
                    read(default, kind.dimension()).unwrap_or_else(|why| panic!("{name}: {why}"));
                }
                Sort::Choice(words) => assert!(words.contains(&default), "{name}"),
                // The rest is read as a case is, which every calculation is asked below.
                Sort::Quantities(_) | Sort::Word | Sort::Words => {}
            }
        }
    }
}

#[test]
fn every_calculation_is_asked() {
    let asked: BTreeSet<&str> = cases::all().map(|case| case.name).collect();
    let silent: Vec<&str> =
        all().map(|calculation| calculation.name).filter(|name| !asked.contains(name)).collect();
    assert!(silent.is_empty(), "no case asks {silent:?}");
}

#[test]
fn answers_keep_to_what_is_declared() {
    for case in cases::all() {
        let declared = case.calculation().outputs;
        let answer = case.answer();
        assert!(!answer.results.is_empty(), "{}", case.name);
        let mut places = Vec::new();
        for (name, outcome) in &answer.results {
            let place = declared.iter().position(|output| output.name == *name);
            let place = place.unwrap_or_else(|| panic!("{}: {name} is not declared", case.name));
            places.push(place);
            let kinds: Vec<Option<Kind>> = match outcome {
                Outcome::Value(value) => vec![Some(value.kind)],
                Outcome::Values(values) => values.iter().map(|value| Some(value.kind)).collect(),
                Outcome::Word(_) | Outcome::Words(_) => vec![None],
            };
            for kind in kinds {
                assert_eq!(kind, declared[place].kind, "{}: {name}", case.name);
            }
        }
        let unique: BTreeSet<&usize> = places.iter().collect();
        assert_eq!(unique.len(), places.len(), "{}: a result twice", case.name);
    }
}

/// Each output comes out of some case: a declared one that never does would be an empty promise.
#[test]
fn every_output_is_given_by_some_case() {
    let mut silent = Vec::new();
    for calculation in all() {
        let answers: Vec<Answer> =
            cases::all().filter(|it| it.name == calculation.name).map(Case::answer).collect();
        for output in calculation.outputs {
            if !answers.iter().any(|answer| answer.result(output.name).is_some()) {
                silent.push(format!("{}: {}", calculation.name, output.name));
            }
        }
    }
    assert!(silent.is_empty(), "{silent:#?}");
}

/// A working that went wrong would show no number, or a letter that stands for nothing.
#[test]
fn workings_show_numbers() {
    for case in cases::all() {
        for working in case.answer().working {
            assert!(working.result.si.is_finite(), "{}: {}", case.name, working.name);
            assert!(working.terms.iter().all(|term| term.value.si.is_finite()), "{}", case.name);
            assert!(!working.put_in(quantities::System::Metric).is_empty(), "{}", case.name);
        }
    }
}
