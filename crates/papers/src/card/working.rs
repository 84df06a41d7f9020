//! The working of every number, stage by stage.

use job::plan::{Number, Plan};
use quantities::{System, Working};
use serde::Serialize;

/// The workings of one stage.
#[derive(Serialize)]
pub(super) struct Part<'a> {
    stage: &'static str,
    workings: Vec<WorkingLines<'a>>,
}

#[derive(Serialize)]
struct WorkingLines<'a> {
    /// The number it is the working of: "Mean bore, motor hub".
    label: &'a str,
    /// What was worked out, where the label doesn't say the same: "Mean size at 20 °C".
    name: Option<&'a str>,
    result: String,
    formula: Vec<&'static str>,
    put_in: String,
    terms: Vec<TermLine<'a>>,
    valid: &'static str,
    source: String,
}

#[derive(Serialize)]
struct TermLine<'a> {
    symbol: &'static str,
    name: &'a str,
    value: String,
}

/// The stages that have a working.
pub(super) fn parts(plan: &Plan) -> Vec<Part<'_>> {
    let parts = plan.stages.iter().map(|stage| Part {
        stage: stage.stage.title(),
        workings: workings(&stage.numbers, plan.head.system),
    });
    parts.filter(|part| !part.workings.is_empty()).collect()
}

fn workings(numbers: &[Number], system: System) -> Vec<WorkingLines<'_>> {
    let worked = numbers.iter().filter_map(|number| Some((number, number.working.as_ref()?)));
    worked.map(|(number, working)| WorkingLines::new(&number.label, working, system)).collect()
}

impl<'a> WorkingLines<'a> {
    fn new(label: &'a str, working: &'a Working, system: System) -> Self {
        let terms = working.terms.iter().map(|term| TermLine {
            symbol: term.symbol,
            name: &term.name,
            value: term.value.show(system),
        });
        Self {
            label,
            name: Some(working.name.as_str()).filter(|name| *name != label),
            result: working.result.show(system),
            formula: working.formula.lines().map(str::trim).filter(|l| !l.is_empty()).collect(),
            put_in: working.put_in(system),
            terms: terms.collect(),
            valid: working.valid,
            source: working.source.to_string(),
        }
    }
}
