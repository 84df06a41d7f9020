//! The numbers as lines: those of the first page, those of each stage, those of the record.

use job::Stage;
use job::plan::{Number, Plan, StagePlan};
use quantities::{System, Value, Verdict};
use serde::Serialize;

/// One number.
#[derive(Serialize)]
pub(super) struct NumberLine<'a> {
    label: &'a str,
    second: &'a str,
    digits: String,
    /// "± 0.004 mm", or the unit alone.
    unit: String,
    limit: String,
    stamp: Option<&'static str>,
    settle: &'a str,
}

/// Where a stage stands.
#[derive(Serialize)]
pub(super) struct StageLine<'a> {
    stage: &'static str,
    summary: &'a str,
    stamp: Option<&'static str>,
    notes: &'a [String],
    /// Those that aren't on the first page.
    numbers: Vec<NumberLine<'a>>,
}

/// The numbers of the first page.
pub(super) fn key(plan: &Plan) -> Vec<NumberLine<'_>> {
    lines(plan.numbers().filter(|number| number.key), plan.head.system)
}

/// Every stage that was begun or has something to say.
pub(super) fn stages(plan: &Plan) -> Vec<StageLine<'_>> {
    let told =
        |stage: &&StagePlan| stage.begun || !stage.numbers.is_empty() || !stage.notes.is_empty();
    plan.stages.iter().filter(told).map(|stage| stage_line(stage, plan.head.system)).collect()
}

/// What is read when a machine is found and again when it is left.
pub(super) fn to_record(plan: &Plan) -> Vec<NumberLine<'_>> {
    let stages = [Stage::Gap, Stage::Lineup, Stage::Closeup, Stage::Running];
    let numbers = plan.stages.iter().filter(|stage| stages.contains(&stage.stage));
    let numbers = numbers.flat_map(|stage| &stage.numbers);
    lines(numbers.filter(|number| number.key && number.verdict.is_some()), plan.head.system)
}

fn stage_line(stage: &StagePlan, system: System) -> StageLine<'_> {
    StageLine {
        stage: stage.stage.title(),
        summary: &stage.summary,
        stamp: stage.verdict().map(Verdict::words),
        notes: &stage.notes,
        numbers: lines(stage.numbers.iter().filter(|number| !number.key), system),
    }
}

fn lines<'a>(numbers: impl Iterator<Item = &'a Number>, system: System) -> Vec<NumberLine<'a>> {
    numbers.map(|number| NumberLine::new(number, system)).collect()
}

impl<'a> NumberLine<'a> {
    fn new(number: &'a Number, system: System) -> Self {
        let limit = number.limits.as_ref().zip(number.value.as_ref());
        Self {
            label: &number.label,
            second: &number.second,
            digits: number.value.map(|value| value.digits(system)).unwrap_or_default(),
            unit: number.value.map(|value| spread_and_unit(&value, system)).unwrap_or_default(),
            limit: limit.map(|(limits, value)| limits.show(value, system)).unwrap_or_default(),
            stamp: number.verdict.map(Verdict::words),
            settle: &number.settle,
        }
    }
}

fn spread_and_unit(value: &Value, system: System) -> String {
    let spread = value.plus_minus_digits(system).map(|digits| format!("± {digits}"));
    super::joined(&spread.unwrap_or_default(), " ", value.unit(system))
}
