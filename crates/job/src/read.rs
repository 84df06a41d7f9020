//! A job file as TOML: reading it with errors that help, writing it, and its JSON Schema.

use std::fmt;

use crate::{JobFile, Problem, impossible, parse};

/// What is wrong with a job file, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct FileError {
    /// Line, counted from 1.
    pub line: usize,
    /// The line itself.
    pub excerpt: String,
    /// What is wrong.
    pub what: String,
    /// What was expected.
    pub expected: String,
    /// The nearest known key.
    pub nearest: Option<String>,
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "line {}: {}", self.line, self.what)?;
        if !self.excerpt.is_empty() {
            writeln!(f, "  {:>4} | {}", self.line, self.excerpt)?;
        }
        if !self.expected.is_empty() {
            writeln!(f, "  expected {}", self.expected)?;
        }
        if let Some(key) = &self.nearest {
            writeln!(f, "  did you mean “{key}”?")?;
        }
        Ok(())
    }
}

impl std::error::Error for FileError {}

/// Reads a job file.
///
/// # Errors
/// All that is wrong with it, as far as one reading can tell: text that is not TOML, an unknown
/// key (with the nearest known one), a quantity without its unit, a value that cannot be.
pub fn read(text: &str) -> Result<JobFile, Vec<FileError>> {
    let file: JobFile = parse::parsed(text)?;
    let version = crate::file::VERSION;
    if file.hubwright != version {
        let what = format!("this file is of version {}", file.hubwright);
        let expected = format!("hubwright = {version}: the version that this program reads");
        return Err(vec![at(text, place_start(text, "hubwright"), what, expected)]);
    }
    let problems = impossible(&file);
    if problems.is_empty() {
        return Ok(file);
    }
    Err(problems.iter().map(|problem| from_problem(text, problem)).collect())
}

/// Writes a job file.
///
/// # Errors
/// When TOML cannot hold it, which no job file causes.
pub fn write(file: &JobFile) -> Result<String, toml::ser::Error> {
    toml::to_string_pretty(file)
}

/// The JSON Schema of a job file, for editors.
pub fn schema() -> serde_json::Value {
    let mut schema = schemars::schema_for!(JobFile);
    schema.insert("title".into(), "A Hubwright job file, version 1".into());
    schema.to_value()
}

pub(crate) fn from_problem(text: &str, problem: &Problem) -> FileError {
    let start = place_start(text, &problem.place);
    let mut error = at(text, start, problem.what.clone(), problem.expected.clone());
    if start.is_none() {
        error.what = format!("{}: {}", problem.place, error.what);
    }
    error
}

pub(crate) fn at(text: &str, start: Option<usize>, what: String, expected: String) -> FileError {
    let start = start.unwrap_or(0).min(text.len());
    let before = text.get(..start).unwrap_or("");
    let line = before.matches('\n').count() + 1;
    let excerpt = text.lines().nth(line - 1).unwrap_or("").trim_end().to_owned();
    FileError { line, excerpt, what, expected, nearest: None }
}

/// Where in the text the value at a dotted place begins.
pub(crate) fn place_start(text: &str, place: &str) -> Option<usize> {
    let doc = toml::de::DeTable::parse(text).ok()?;
    let mut table = doc.get_ref();
    let mut keys = place.split('.').peekable();
    loop {
        let key = keys.next()?;
        let value = table.get(key)?;
        if keys.peek().is_none() {
            return Some(value.span().start);
        }
        let toml::de::DeValue::Table(inner) = value.get_ref() else {
            return Some(value.span().start);
        };
        table = inner;
    }
}
