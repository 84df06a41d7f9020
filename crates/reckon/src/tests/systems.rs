//! Metric and inch are equals: the same case in the other units is the same case.

use quantities::{System, read};

use super::*;

/// A quantity of the case in the units of a system, to the last digit.
fn in_units(text: &str, kind: Kind, system: System) -> String {
    let reading = read(text, kind.dimension()).unwrap();
    let unit = kind.unit(system);
    let spread = reading.spread.map_or_else(String::new, |si| format!(" ± {}", si / unit.factor));
    format!("{}{spread} {}", unit.from_si(reading.si), unit.name())
}

fn rewritten(case: &Case, system: System) -> Vec<(&'static str, String)> {
    let inputs = case.calculation().inputs;
    let rewrite = |(name, text): &(&'static str, &'static str)| {
        let sort = inputs.iter().find(|input| input.name == *name).unwrap().sort;
        let text = match sort {
            Sort::Quantity(kind) => in_units(text, kind, system),
            Sort::Quantities(kind) => each(text, kind, system),
            Sort::Choice(_) | Sort::Word | Sort::Words => (*text).to_owned(),
        };
        (*name, text)
    };
    case.inputs.iter().map(rewrite).collect()
}

/// The units of the last serve those before it, as they do when the case is asked.
fn each(text: &str, kind: Kind, system: System) -> String {
    let last = text.rsplit(';').next().unwrap().trim();
    let unit = last.split_once(' ').map_or("", |(_, unit)| unit);
    let whole = |part: &str| {
        let alone = read(part, kind.dimension()).is_ok();
        if alone { part.to_owned() } else { format!("{part} {unit}") }
    };
    let parts = text.split(';').map(|part| in_units(&whole(part.trim()), kind, system));
    parts.collect::<Vec<_>>().join("; ")
}

fn values(outcome: &Outcome) -> &[Value] {
    match outcome {
        Outcome::Value(value) => std::slice::from_ref(value),
        Outcome::Values(values) => values,
        Outcome::Word(_) | Outcome::Words(_) => &[],
    }
}

#[test]
fn metric_and_inch_give_the_same() {
    for case in cases::all() {
        let direct = case.answer();
        for system in [System::Metric, System::Inch] {
            let inputs = rewritten(case, system);
            let asked = inputs.iter().map(|(name, text)| (*name, text.as_str()));
            let answer = reckon(case.name, asked)
                .unwrap_or_else(|error| panic!("{} in {system:?}: {error}; {inputs:?}", case.name));
            assert_eq!(answer.results.len(), direct.results.len(), "{}", case.name);
            for ((name, one), (_, other)) in direct.results.iter().zip(&answer.results) {
                let (one, other) = (values(one), values(other));
                assert_eq!(one.len(), other.len(), "{}: {name}", case.name);
                let largest = one.iter().map(|value| value.si.abs()).fold(0.0, f64::max);
                for (one, other) in one.iter().zip(other) {
                    // Differences of large numbers lose digits: a bore of 80 mm is known to 1e-17 m.
                    let hair = 1e-9 * largest + 1e-14;
                    assert!(
                        (one.si - other.si).abs() <= hair,
                        "{} in {system:?}: {name} {} for {}",
                        case.name,
                        other.si,
                        one.si
                    );
                }
            }
        }
    }
}
