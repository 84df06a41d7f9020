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

    /// The units of this plan's texts.
    pub fn system(&self) -> System {
        self.system
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
        Entry { number: &mut self.plan.numbers[last], system: self.system }
    }

    /// True where a number of that name is there already.
    pub fn has(&self, id: &str) -> bool {
        let id = format!("{}.{id}", self.stage.key());
        self.plan.numbers.iter().any(|number| number.id == id)
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

    /// Adds a number that is judged and was left out of a quick plan: nothing is missing for it.
    pub fn pending(&mut self, id: &str, label: impl Into<String>) {
        let value = Value::number(0.0);
        let number = self.number(id, label, value).number;
        number.value = None;
        number.verdict = Some(Verdict::NotMeasured);
        "Worked out on the full plan.".clone_into(&mut number.settle);
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

    /// True once anything was entered for it.
    pub fn begun(&self) -> bool {
        self.plan.begun
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
    system: System,
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
    pub fn written(self, source: Source) -> Self {
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

    /// Judges it; `mend` says what to do when it is outside. One that is too close to call says by
    /// itself what would settle it.
    pub fn judged(self, limits: Limits, mend: impl Into<String>) -> Self {
        let verdict = self.number.value.map(|value| judge(&value, &limits));
        self.decided(limits, verdict, mend.into())
    }

    /// Gives it a verdict that was found elsewhere.
    pub fn ruled(self, limits: Limits, verdict: Verdict, mend: impl Into<String>) -> Self {
        self.decided(limits, Some(verdict), mend.into())
    }

    fn decided(self, limits: Limits, verdict: Option<Verdict>, mend: String) -> Self {
        self.number.settle = match verdict {
            Some(Verdict::Inside) => String::new(),
            Some(Verdict::TooClose) => self.closer(),
            _ => mend,
        };
        self.number.limits = Some(limits);
        self.number.verdict = verdict;
        self
    }

    /// What settles a number whose ± reaches over its limit.
    fn closer(&self) -> String {
        let value = self.number.value.filter(|value| value.plus_minus.is_some());
        let spread = value.map(|value| {
            let digits = value.plus_minus_digits(self.system).unwrap_or_default();
            format!(" of {digits} {}", value.unit(self.system)).trim_end().to_owned()
        });
        let spread = spread.unwrap_or_default();
        format!(
            "Its ±{spread} reaches over the limit: read more closely what it rests on, and take \
             it as outside until then."
        )
    }

    /// Says for this number what would settle it when it is too close to call.
    pub fn settled_by(self, closer: impl Into<String>) -> Self {
        if self.number.verdict == Some(Verdict::TooClose) {
            self.number.settle = closer.into();
        }
        self
    }
}
