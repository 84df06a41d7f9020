//! The steps as lines: for the first page, and in full with their cautions before them.

use std::collections::BTreeSet;

use job::Stage;
use job::plan::{Caution, Done, Piece, Plan, Step};
use serde::Serialize;

/// One step.
#[derive(Serialize)]
pub(super) struct StepLine<'a> {
    number: usize,
    title: &'a [Piece],
    detail: &'a [Piece],
    hold: Option<&'a str>,
    needs: &'a [String],
    done: Option<String>,
}

/// Steps in a row that belong to one stage.
#[derive(Serialize)]
pub(super) struct Part<'a> {
    stage: &'static str,
    cautions: Vec<&'a [String]>,
    steps: Vec<StepLine<'a>>,
}

/// The steps, numbered from one.
pub(super) fn lines(steps: &[Step]) -> Vec<StepLine<'_>> {
    steps.iter().enumerate().map(|(place, step)| StepLine::new(place + 1, step)).collect()
}

/// The steps in full. A stage's cautions stand where it is first come to.
pub(super) fn parts<'a>(plan: &'a Plan, steps: &'a [Step]) -> Vec<Part<'a>> {
    let mut seen = BTreeSet::new();
    let mut number = 0;
    let runs = steps.chunk_by(|one, next| one.stage == next.stage);
    runs.map(|run| {
        let stage = run[0].stage;
        let cautions = if seen.insert(stage) { cautions(plan, Some(stage)) } else { Vec::new() };
        let lines = run.iter().map(|step| {
            number += 1;
            StepLine::new(number, step)
        });
        Part { stage: stage.title(), cautions, steps: lines.collect() }
    })
    .collect()
}

/// The cautions before everything, and those of a stage that has no step to stand before.
pub(super) fn before_everything(plan: &Plan) -> Vec<&[String]> {
    let has_step = |stage| plan.on.iter().chain(&plan.off).any(|step| step.stage == stage);
    let homeless = Stage::ALL.into_iter().filter(|stage| !has_step(*stage));
    let homeless = homeless.flat_map(|stage| cautions(plan, Some(stage)));
    cautions(plan, None).into_iter().chain(homeless).collect()
}

fn cautions(plan: &Plan, before: Option<Stage>) -> Vec<&[String]> {
    let these = plan.cautions.iter().filter(|caution| caution.stage == before);
    these.map(|Caution { orders, .. }| orders.as_slice()).collect()
}

impl<'a> StepLine<'a> {
    fn new(number: usize, step: &'a Step) -> Self {
        Self {
            number,
            title: &step.title,
            detail: &step.detail,
            hold: step.hold.as_deref(),
            needs: &step.needs,
            done: step.done.as_ref().map(|Done { at, by }| format!("{at} {by}")),
        }
    }
}
