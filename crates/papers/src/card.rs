//! The job card: what stands on it, in words, for the template to lay out.
//!
//! Every number becomes text in the plan's own units here, so that the template knows nothing of
//! units and the card says what the page says.

mod drawings;
mod numbers;
mod steps;
mod working;

use job::plan::{Head, KindRow, KitItem, Missing, Plan};
use quantities::Verdict;
use serde::Serialize;

pub use drawings::CardFigures;

use crate::world::{Document, Imprint};
use crate::{Paper, PaperError, printable};

/// The job card of a plan, as PDF/A-2b.
///
/// `made_by` names the program and its version, for the foot of each page.
///
/// # Errors
/// [`PaperError`] when a figure can't be read as SVG, or the PDF can't keep to its standard.
pub fn card(
    plan: &Plan,
    figures: &CardFigures,
    paper: Paper,
    made_by: &str,
) -> Result<Vec<u8>, PaperError> {
    let mut data = serde_json::to_value(Card::new(plan, figures, paper, made_by))
        .map_err(|error| PaperError::Data(error.to_string()))?;
    printable::all(&mut data);
    let mut document = Document::new("/card.typ", data.to_string().into_bytes())?;
    for (path, svg) in figures.files() {
        document.add(path, svg);
    }
    document.pdf(&Imprint {
        ident: format!("job card {}", plan.head.number),
        made_by: printable::printable(made_by).into_owned(),
        written: plan.head.written.clone(),
    })
}

#[derive(Serialize)]
struct Card<'a> {
    paper: &'static str,
    made_by: &'a str,
    head: HeadLines<'a>,
    first: Vec<&'a [String]>,
    drawings: drawings::Drawings<'a>,
    steps: Vec<steps::StepLine<'a>>,
    numbers: Vec<numbers::NumberLine<'a>>,
    more_numbers: Vec<numbers::NumberLine<'a>>,
    missing: Vec<&'a str>,
    full: Vec<steps::Part<'a>>,
    stages: Vec<numbers::StageLine<'a>>,
    kit: Vec<KitRow<'a>>,
    made_of: Vec<PartLine<'a>>,
    kinds: Option<KindTable<'a>>,
    found: Vec<&'a str>,
    off: Vec<steps::Part<'a>>,
    record: Vec<numbers::NumberLine<'a>>,
    workings: Option<working::Workings<'a>>,
}

impl<'a> Card<'a> {
    fn new(plan: &'a Plan, figures: &'a CardFigures, paper: Paper, made_by: &'a str) -> Self {
        let key = numbers::Key::of(plan, paper.numbers_first());
        Self {
            paper: paper.name(),
            made_by,
            head: HeadLines::new(plan),
            first: steps::before_everything(plan),
            drawings: drawings::Drawings::new(figures, paper),
            steps: steps::lines(&plan.on),
            numbers: key.first(),
            more_numbers: key.rest(),
            missing: plan.missing().map(|Missing { what, .. }| what.as_str()).collect(),
            full: steps::parts(plan, &plan.on),
            stages: numbers::stages(plan, &key),
            kit: kit(&plan.kit),
            made_of: made_of(plan),
            kinds: kinds(plan),
            found: found(plan),
            off: steps::parts(plan, &plan.off),
            record: numbers::to_record(plan),
            workings: Some(working::workings(plan)).filter(|workings| !workings.are_none()),
        }
    }
}

/// A part of the coupling.
#[derive(Serialize)]
struct PartLine<'a> {
    letter: char,
    name: &'a str,
    how_many: &'a str,
}

fn made_of(plan: &Plan) -> Vec<PartLine<'_>> {
    let parts = plan.about.iter().flat_map(|about| &about.parts);
    parts
        .map(|part| PartLine { letter: part.letter, name: &part.name, how_many: &part.how_many })
        .collect()
}

/// All kinds beside each other, a word to each thing that this drive asks.
#[derive(Serialize)]
struct KindTable<'a> {
    questions: &'a [&'static str],
    rows: Vec<KindLine<'a>>,
}

#[derive(Serialize)]
struct KindLine<'a> {
    title: &'static str,
    chosen: bool,
    answers: &'a [&'static str],
    pros: &'a [&'static str],
    cons: &'a [&'static str],
}

fn kinds<'a>(plan: &'a Plan) -> Option<KindTable<'a>> {
    let choice = &plan.choice;
    let row = |row: &'a KindRow| KindLine {
        title: row.title,
        chosen: row.chosen,
        answers: &row.answers,
        pros: &row.pros,
        cons: &row.cons,
    };
    let rows = choice.kinds.iter().map(row).collect();
    (!choice.questions.is_empty()).then_some(KindTable { questions: &choice.questions, rows })
}

/// What may be found when it is opened, to be ticked.
fn found(plan: &Plan) -> Vec<&str> {
    plan.about.iter().flat_map(|about| &about.faults).map(|fault| fault.seen).collect()
}

/// Things that are for the same purpose.
#[derive(Serialize)]
struct KitRow<'a> {
    why: &'a str,
    what: Vec<&'a str>,
}

fn kit(items: &[KitItem]) -> Vec<KitRow<'_>> {
    let rows = items.chunk_by(|one, next| one.why == next.why);
    rows.map(|row| KitRow {
        why: &row[0].why,
        what: row.iter().map(|item| item.what.as_str()).collect(),
    })
    .collect()
}

#[derive(Serialize)]
struct HeadLines<'a> {
    number: &'a str,
    /// "motor to pump".
    train: String,
    title: &'a str,
    stamp: Option<&'static str>,
    facts: Vec<Fact<'a>>,
}

#[derive(Serialize)]
struct Fact<'a> {
    name: &'static str,
    text: std::borrow::Cow<'a, str>,
}

impl<'a> HeadLines<'a> {
    fn new(plan: &'a Plan) -> Self {
        let head = &plan.head;
        Self {
            number: &head.number,
            train: joined(&head.driver, " to ", &head.driven),
            title: &head.title,
            stamp: plan.verdict().map(Verdict::words),
            facts: facts(head),
        }
    }
}

fn facts(head: &Head) -> Vec<Fact<'_>> {
    let works = if head.invented { "works (invented)" } else { "works" };
    let place = if head.invented && head.works.is_empty() { "not named" } else { &head.works };
    [
        ("coupling", head.coupling.as_str().into()),
        ("runs at", head.runs_at.as_str().into()),
        (works, place.into()),
        ("written", joined(&head.written, ", ", &head.by).into()),
    ]
    .into_iter()
    .map(|(name, text)| Fact { name, text })
    .filter(|fact| !fact.text.is_empty())
    .collect()
}

/// Two texts with something between them, or the one that is there.
fn joined(one: &str, between: &str, other: &str) -> String {
    let between = if one.is_empty() || other.is_empty() { "" } else { between };
    format!("{one}{between}{other}")
}
