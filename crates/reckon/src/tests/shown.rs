//! What was worked out shows how.

use super::*;

/// Calculations of one line: each of their cases shows the working of its first number.
const ONE_LINE: &[&str] = &[
    "growth",
    "growth-temperature",
    "taper-interference",
    "taper-of-sizes",
    "key-length",
    "puller-bolts",
    "lump-cooling",
    "usual-interference",
    "hub-opens",
];

#[test]
fn a_number_of_one_line_has_its_working() {
    for name in ONE_LINE {
        let cases: Vec<&Case> = cases::all().filter(|case| case.name == *name).collect();
        assert!(!cases.is_empty(), "no case of {name}");
        for case in cases {
            let answer = case.answer();
            let numbers: Vec<f64> = answer
                .results
                .iter()
                .filter_map(|(_, outcome)| match outcome {
                    Outcome::Value(value) => Some(value.si),
                    _ => None,
                })
                .collect();
            let near = |a: f64, b: f64| (a - b).abs() <= 1e-9 * a.abs().max(b.abs());
            let shows = |si: f64| answer.working.iter().any(|how| near(how.result.si, si));
            assert!(numbers.iter().any(|si| shows(*si)), "{name}, {}", case.source);
        }
    }
}
