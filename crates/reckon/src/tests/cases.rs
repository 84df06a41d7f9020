//! Cases that others have worked, by chapter.
//!
//! "By hand" is arithmetic that a reader can follow from the inputs; it stands where no publication
//! prints an example. "From memory" is a printed figure that was recalled, not read again.

mod closeup;
mod fit;
mod heat;
mod lineup;
mod machines;
mod running;
mod sizes;

use super::*;

/// All of them.
pub(super) fn all() -> impl Iterator<Item = &'static Case> {
    let chapters = [
        machines::CASES,
        sizes::CASES,
        fit::CASES,
        heat::CASES,
        lineup::CASES,
        closeup::CASES,
        running::CASES,
    ];
    chapters.into_iter().flatten()
}

#[test]
fn others_have_it_so() {
    let mut wrong = Vec::new();
    for case in all() {
        let answer = case.answer();
        for (want, wanted) in case.wants {
            let name = want.trim_end_matches(" ±");
            let found = answer.result(name);
            let found = found.unwrap_or_else(|| panic!("{}: no {name}", case.name));
            let found = if name == *want { found.clone() } else { half_width(found) };
            let faults = faults(&found, wanted);
            wrong.extend(
                faults.iter().map(|it| format!("{}: {want} is {it} ({})", case.name, case.source)),
            );
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// The ± of a number as a number of its own.
fn half_width(found: &Outcome) -> Outcome {
    let Outcome::Value(value) = found else { panic!("no number: {found:?}") };
    Outcome::Value(Value { si: value.plus_minus.unwrap(), plus_minus: None, ..*value })
}

fn faults(found: &Outcome, wanted: &str) -> Vec<String> {
    let word = |found: &str| {
        (found != wanted).then(|| format!("“{found}”, for “{wanted}”")).into_iter().collect()
    };
    match found {
        Outcome::Value(value) => unlike(value, wanted).into_iter().collect(),
        Outcome::Word(found) => word(found),
        Outcome::Words(found) => word(&found.join("; ")),
        Outcome::Values(values) => {
            let wanted: Vec<&str> = wanted.split(';').map(str::trim).collect();
            if values.len() != wanted.len() {
                return vec![format!("{} numbers, for {}", values.len(), wanted.len())];
            }
            values.iter().zip(wanted).filter_map(|(value, text)| unlike(value, text)).collect()
        }
    }
}

/// A check that nothing can fail is none: a figure off by one in its last digit is caught.
#[test]
fn a_wrong_figure_would_be_seen() {
    let digit = |text: &str| printed(text, quantities::Kind::Stress);
    let (wanted, allowed) = digit("114.5 MPa");
    assert!((wanted - 114.5e6).abs() < 1.0 && (allowed - 0.05e6).abs() < 1.0);
    let (_, allowed) = digit("22500 psi");
    assert!((allowed - 0.5 * 6_894.757).abs() < 0.01);
    let (wanted, allowed) = printed("131.111 degC", quantities::Kind::Temperature);
    assert!((wanted - 404.261).abs() < 1e-9 && (allowed - 0.0005).abs() < 1e-9);
    let (_, allowed) = printed("157 mm2", quantities::Kind::Area);
    assert!((allowed - 0.5e-6).abs() < 1e-15);
}
