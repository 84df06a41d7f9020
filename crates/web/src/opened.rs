//! A job as it lies open: its log book, what the book says, and the plan.

use jiff::Timestamp;
use job::file::End;
use job::plan::{Depth, Due, Head, Plan, StagePlan, plan_with};
use job::{Job, Line, LogBook, Stage, Written};
use quantities::{System, Verdict};
use records::JobId;
use serde_json::Value as Json;

/// A job as it lies open.
pub(crate) struct Opened {
    pub id: JobId,
    pub book: LogBook,
    pub job: Job,
    pub plan: Plan,
    pub depth: Depth,
    /// The units of the page: those that were asked for, or the job's own.
    pub system: System,
    tables: Json,
}

impl Opened {
    pub fn of(id: JobId, book: LogBook, units: Option<System>, depth: Depth) -> Self {
        let job = book.job();
        let system = units.unwrap_or(job.file.system());
        let plan = plan_with(&job, system, depth);
        let tables = serde_json::to_value(&job.file).unwrap_or_default();
        Self { id, book, job, plan, depth, system, tables }
    }

    /// How many entries it was made of.
    pub fn length(&self) -> usize {
        self.book.entries().len()
    }

    /// What stands at a place, as it was written; empty where nothing does.
    pub fn text_at(&self, place: &str) -> String {
        text_at(&self.tables, place)
    }

    /// The names in a table of readings: stations, clock positions, feet, dials.
    pub fn names_at(&self, place: &str) -> Vec<String> {
        let found = place.split('.').try_fold(&self.tables, |table, key| table.get(key));
        let keys = found.and_then(Json::as_object).map(|table| table.keys().cloned().collect());
        keys.unwrap_or_default()
    }

    /// The short name of one machine.
    pub fn name(&self, end: End) -> &str {
        self.job.file.machines.name(end)
    }

    /// True where a full plan would say more than this one: how long a hot hub stays open, and
    /// what heat gets it off.
    pub fn has_more_to_say(&self) -> bool {
        let heat = self.plan.stage(Stage::Heat);
        self.depth == Depth::Quick && heat.numbers.iter().any(|number| number.value.is_some())
    }

    /// How far each stage is.
    pub fn standings(&self) -> Vec<(Stage, Standing)> {
        self.plan.stages.iter().map(|stage| (stage.stage, Standing::of(stage))).collect()
    }

    /// What the job is called.
    pub fn title(&self) -> &str {
        match self.plan.head.title.as_str() {
            "" => "Job without a name",
            title => title,
        }
    }
}

/// What stands between the parts of a list in a field: a part may well hold a comma.
pub(crate) const BETWEEN: &str = "; ";

/// What stands at a place of the tables, as it was written.
fn text_at(tables: &Json, place: &str) -> String {
    let found = place.split('.').try_fold(tables, |table, key| table.get(key));
    match found {
        Some(Json::String(text)) => text.clone(),
        Some(Json::Bool(flag)) => Written::Flag(*flag).shown(),
        Some(Json::Number(number)) => number.to_string(),
        Some(Json::Array(texts)) => {
            let texts: Vec<&str> = texts.iter().filter_map(Json::as_str).collect();
            texts.join(BETWEEN)
        }
        _ => String::new(),
    }
}

/// The line of the log that stands at a place now.
pub(crate) fn standing<'a>(job: &'a Job, place: &str) -> Option<&'a Line> {
    let stands = |line: &&Line| {
        let writes = matches!(line.entry.act, job::Act::Write { .. } | job::Act::Correct { .. });
        line.place == place && line.replaced_by.is_none() && writes
    };
    job.log.iter().rev().find(stands)
}

/// What the list says of a job.
pub(crate) struct Summary {
    pub id: JobId,
    /// Entries that it was made of.
    pub length: usize,
    pub head: Head,
    pub title: String,
    /// When the last entry was made, and by whom.
    pub last: Option<(Timestamp, String)>,
    pub stages: Vec<(Stage, Standing)>,
    pub verdict: Option<Verdict>,
    pub dues: Vec<Due>,
}

impl Summary {
    pub fn of(opened: &Opened) -> Self {
        let last = opened.book.entries().last();
        Self {
            id: opened.id,
            length: opened.length(),
            head: opened.plan.head.clone(),
            title: opened.title().to_owned(),
            last: last.map(|entry| (entry.at, entry.by.clone())),
            stages: opened.standings(),
            verdict: opened.plan.verdict(),
            dues: opened.plan.dues.clone(),
        }
    }
}

/// How far a stage is: its worst word, or what it waits for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Standing {
    NotBegun,
    Done,
    Judged(Verdict),
}

impl Standing {
    pub fn of(stage: &StagePlan) -> Self {
        match stage.verdict() {
            Some(verdict) => Self::Judged(verdict),
            None if stage.begun && stage.missing.is_empty() => Self::Done,
            None => Self::NotBegun,
        }
    }
}

/// The second line of a stage: what it waits for.
pub(crate) fn waits_for(stage: &StagePlan) -> String {
    let missing = stage.missing.len();
    match Standing::of(stage) {
        Standing::Judged(verdict @ (Verdict::Outside | Verdict::TooClose)) => {
            verdict.words().into()
        }
        _ if missing > 0 && stage.begun => format!("{missing} to enter"),
        Standing::Judged(verdict) => verdict.words().into(),
        Standing::Done => "done".into(),
        Standing::NotBegun => "not begun".into(),
    }
}

/// The stage at whose page a place is entered; what is found on opening stands with coming off, the
/// plant's hold points with closing up.
pub(crate) fn stage_of(place: &str) -> Stage {
    if place.starts_with("site.holds.") {
        return Stage::Closeup;
    }
    match place.split('.').next().unwrap_or("") {
        "inspection" => Stage::Removal,
        table => Stage::of(table).unwrap_or(Stage::Machines),
    }
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;

    /// What the list says of a job with this title and nothing else.
    pub(crate) fn summary(title: &str) -> Summary {
        let act = job::Act::Write { place: "job.title".into(), value: title.into() };
        let id = "0190b3a5-0000-7000-8000-000000000000".parse().unwrap();
        let book = LogBook::new([records::new_entry("R.A.", act)]);
        Summary::of(&Opened::of(id, book, None, Depth::Quick))
    }

    #[test]
    fn a_job_that_was_just_named_has_nothing_begun() {
        let summary = summary("Pump");
        assert_eq!((summary.title.as_str(), summary.length), ("Pump", 1));
        assert!(summary.stages.iter().all(|(_, standing)| *standing != Standing::Done));
    }
}
