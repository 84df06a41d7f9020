//! A stage of the plan in the making.

use quantities::{Basis, Limits, Source, System, Value, Verdict, Working, judge};

use super::{Missing, Number, StagePlan};
use crate::Stage;

/// A value that was written in this job.
pub(super) const WRITTEN: Source = Source::new("This job", "as written", Basis::Entered);
/// A value from the maker's sheet.
pub(super) const SHEET: Source = Source::new("The maker’s sheet", "as entered", Basis::MakersSheet);

/// Collects what a stage found and what it lacks.
pub(super) struct StageBuilder {
    stage: Stage,
    system: System,
    plan: StagePlan,
}

impl StageBuilder {
    pub fn new(stage: Stage, system: System, begun: bool) -> Self {
        let plan = StagePlan {
            stage,
            summary: String::new(),
            numbers: Vec::new(),
            missing: Vec::new(),
            notes: Vec::new(),
            begun,
        };
        Self { stage, system, plan }
    }

    /// A value as text in this plan's units.
    pub fn show(&self, value: &Value) -> String {
        value.show(self.system)
    }

    /// Adds a number; its name is put behind the stage's.
    pub fn number(&mut self, id: &str, label: impl Into<String>, value: Value) -> Entry<'_> {
        self.plan.numbers.push(Number {
            id: format!("{}.{id}", self.stage.key()),
            label: label.into(),
            second: String::new(),
            value: Some(value),
            limits: None,
            verdict: None,
            settle: String::new(),
            working: None,
            key: false,
        });
        let last = self.plan.numbers.len() - 1;
        Entry { number: &mut self.plan.numbers[last] }
    }

    /// Adds a number that is judged but was not measured yet, and what is missing for it.
    pub fn unmeasured(&mut self, id: &str, label: impl Into<String>, place: &str, what: &str) {
        self.plan.numbers.push(Number {
            id: format!("{}.{id}", self.stage.key()),
            label: label.into(),
            second: String::new(),
            value: None,
            limits: None,
            verdict: Some(Verdict::NotMeasured),
            settle: format!("Measure {what}."),
            working: None,
            key: true,
        });
        self.missing(place, what);
    }

    /// Says what is still to be measured, chosen or looked up; the same place only once.
    pub fn missing(&mut self, place: &str, what: &str) {
        if !self.plan.missing.iter().any(|missing| missing.place == place) {
            self.plan.missing.push(Missing { place: place.to_owned(), what: what.to_owned() });
        }
    }

    /// How much is still to be measured so far.
    pub fn lacking(&self) -> usize {
        self.plan.missing.len()
    }

    pub fn note(&mut self, text: impl Into<String>) {
        self.plan.notes.push(text.into());
    }

    /// A note that both ends may give.
    pub fn note_once(&mut self, text: String) {
        if !self.plan.notes.contains(&text) {
            self.plan.notes.push(text);
        }
    }

    pub fn done(mut self, summary: impl Into<String>) -> StagePlan {
        self.plan.summary = summary.into();
        self.plan
    }
}

/// The number just added.
pub(super) struct Entry<'a> {
    number: &'a mut Number,
}

impl Entry<'_> {
    pub fn second(self, second: impl Into<String>) -> Self {
        self.number.second = second.into();
        self
    }

    pub fn working(self, working: Working) -> Self {
        self.number.working = Some(working);
        self
    }

    /// Says that it stands as somebody wrote it: in this job, or on the maker's sheet.
    pub fn as_written(self, source: Source) -> Self {
        let value = self.number.value.unwrap_or(Value::number(0.0));
        let working = Working::new(self.number.label.clone(), "x = w", value, source).term(
            "w",
            "as written",
            value,
        );
        self.working(working)
    }

    /// For the first page of the card.
    pub fn key(self) -> Self {
        self.number.key = true;
        self
    }

    /// Judges it; `settle` says what would settle or mend it when it is not inside.
    pub fn judged(self, limits: Limits, settle: impl Into<String>) -> Self {
        let verdict = self.number.value.map(|value| judge(&value, &limits));
        self.number.limits = Some(limits);
        self.number.verdict = verdict;
        if verdict != Some(Verdict::Inside) {
            self.number.settle = settle.into();
        }
        self
    }

    /// Gives it a verdict that was found elsewhere.
    pub fn ruled(self, limits: Limits, verdict: Verdict, settle: impl Into<String>) -> Self {
        self.number.limits = Some(limits);
        self.number.verdict = Some(verdict);
        if verdict != Verdict::Inside {
            self.number.settle = settle.into();
        }
        self
    }
}
