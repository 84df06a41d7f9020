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
    name: &'a str,
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
    let workings = numbers.iter().filter_map(|number| number.working.as_ref());
    workings.map(|working| WorkingLines::new(working, system)).collect()
}

impl<'a> WorkingLines<'a> {
    fn new(working: &'a Working, system: System) -> Self {
        let terms = working.terms.iter().map(|term| TermLine {
            symbol: term.symbol,
            name: &term.name,
            value: term.value.show(system),
        });
        Self {
            name: &working.name,
            result: working.result.show(system),
            formula: working.formula.lines().map(str::trim).filter(|l| !l.is_empty()).collect(),
            put_in: working.put_in(system),
            terms: terms.collect(),
            valid: working.valid,
            source: working.source.to_string(),
        }
    }
}
