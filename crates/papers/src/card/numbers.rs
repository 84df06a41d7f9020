//! The numbers as lines: those of the first page, those of each stage, those of the record.

use std::cmp::Reverse;

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
    /// Those that aren't told in full among the key numbers.
    numbers: Vec<NumberLine<'a>>,
}

/// The key numbers: those of the first page, and those that follow overleaf.
pub(super) struct Key<'a> {
    first: Vec<&'a Number>,
    rest: Vec<&'a Number>,
    system: System,
}

/// Stages in the order in which their numbers have a claim to the first page.
const WANTED: [Stage; 10] = [
    Stage::Fit,
    Stage::Heat,
    Stage::Gap,
    Stage::Lineup,
    Stage::Closeup,
    Stage::Removal,
    Stage::Running,
    Stage::Coupling,
    Stage::Sizes,
    Stage::Machines,
];

impl<'a> Key<'a> {
    /// At most `room` stand first: those with the worst word, then those of the stages most wanted.
    /// They keep the order of the plan.
    pub(super) fn of(plan: &'a Plan, room: usize) -> Self {
        let claim = |stage: Stage, number: &Number| {
            (Reverse(number.verdict), WANTED.iter().position(|wanted| *wanted == stage))
        };
        let numbers = plan.stages.iter().flat_map(|stage| {
            stage.numbers.iter().filter(|number| number.key).map(|number| (stage.stage, number))
        });
        let mut places: Vec<(usize, (Stage, &Number))> = numbers.enumerate().collect();
        places.sort_by_key(|(place, (stage, number))| (claim(*stage, number), *place));
        let mut rest = places.split_off(room.min(places.len()));
        places.sort_by_key(|(place, _)| *place);
        rest.sort_by_key(|(place, _)| *place);
        let numbers =
            |places: Vec<(usize, (Stage, &'a Number))>| places.into_iter().map(|(_, (_, n))| n);
        Self {
            first: numbers(places).collect(),
            rest: numbers(rest).collect(),
            system: plan.head.system,
        }
    }

    pub(super) fn first(&self) -> Vec<NumberLine<'a>> {
        lines(self.first.iter().copied(), self.system)
    }

    pub(super) fn rest(&self) -> Vec<NumberLine<'a>> {
        lines(self.rest.iter().copied(), self.system)
    }

    /// The first page leaves out where a limit comes from; that is told with the stage.
    fn tells_all(&self, number: &Number) -> bool {
        let is = |other: &&Number| std::ptr::eq(*other, number);
        let on_first = self.first.iter().any(is);
        self.rest.iter().any(is)
            || on_first && (number.second.is_empty() || number.limits.is_none())
    }
}

/// Every stage that was begun or has something to say.
pub(super) fn stages<'a>(plan: &'a Plan, key: &Key) -> Vec<StageLine<'a>> {
    let told =
        |stage: &&StagePlan| stage.begun || !stage.numbers.is_empty() || !stage.notes.is_empty();
    plan.stages.iter().filter(told).map(|stage| stage_line(stage, key)).collect()
}

/// What is read when a machine is found and again when it is left.
pub(super) fn to_record(plan: &Plan) -> Vec<NumberLine<'_>> {
    let stages = [Stage::Gap, Stage::Lineup, Stage::Closeup, Stage::Running];
    let numbers = plan.stages.iter().filter(|stage| stages.contains(&stage.stage));
    let numbers = numbers.flat_map(|stage| &stage.numbers);
    lines(numbers.filter(|number| number.key && number.verdict.is_some()), plan.head.system)
}

fn stage_line<'a>(stage: &'a StagePlan, key: &Key) -> StageLine<'a> {
    StageLine {
        stage: stage.stage.title(),
        summary: &stage.summary,
        stamp: stage.verdict().map(Verdict::words),
        notes: &stage.notes,
        numbers: lines(stage.numbers.iter().filter(|n| !key.tells_all(n)), key.system),
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
