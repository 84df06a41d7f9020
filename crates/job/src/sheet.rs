//! A maker's sheet as a file of its own: kept, used again in another job, handed on, printed.
//!
//! It is TOML like a job file, with the same keys as `coupling.sheet` there.

use couplings::Sheet;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::Value as Json;

use crate::book::leaves;
use crate::check::impossible;
use crate::fields::{self, FieldLine};
use crate::parse::parsed;
use crate::read::{at, place_start};
use crate::{Act, FileError, JobFile, Written};

/// The version of the sheet's form that this program writes.
pub const SHEET_VERSION: u32 = 1;

/// A sheet, and the coupling that it is of.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetFile {
    /// The version mark: 1.
    pub hubwright_sheet: u32,
    /// What it is called where it is kept.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// The kind of coupling: "gear", "grid", …
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub kind: String,
    /// The variant of the kind; empty for the usual one.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub form: String,
    /// The maker's figures.
    #[serde(default)]
    pub sheet: Sheet,
}

/// Reads a sheet.
///
/// # Errors
/// What is wrong with it and where: as for a job file, and a kind or form that is not known.
/// # Example
/// ```
/// let text = "hubwright_sheet = 1\nkind = \"gear\"\n[sheet]\nrated_torque = \"2.4 kN·m\"\n";
/// let file = job::read_sheet(text).unwrap();
/// assert_eq!(file.sheet.rated_torque.unwrap().text(), "2.4 kN·m");
/// assert!(job::read_sheet("hubwright_sheet = 1\nkind = \"geer\"\n").is_err());
/// ```
pub fn read_sheet(text: &str) -> Result<SheetFile, Vec<FileError>> {
    let file: SheetFile = parsed(text)?;
    let wrong = |place: &str, what: String, expected: String| {
        Err(vec![at(text, place_start(text, place), what, expected)])
    };
    if file.hubwright_sheet != SHEET_VERSION {
        let what = format!("this sheet is of version {}", file.hubwright_sheet);
        let expected = format!("hubwright_sheet = {SHEET_VERSION}: the version that is read here");
        return wrong("hubwright_sheet", what, expected);
    }
    let figures = impossible(&file.into_job(&JobFile::default())).into_iter();
    let figures: Vec<FileError> = figures
        .filter_map(|problem| {
            let place =
                problem.place.strip_prefix("coupling.").filter(|p| p.starts_with("sheet."))?;
            Some(at(text, place_start(text, place), problem.what.clone(), problem.expected.clone()))
        })
        .collect();
    if !figures.is_empty() {
        return Err(figures);
    }
    if file.kind.is_empty() {
        return Ok(file);
    }
    let Some(kind) = couplings::kind(&file.kind) else {
        let known: Vec<&str> = couplings::kinds().iter().map(|kind| kind.name()).collect();
        let what = format!("“{}” is not a kind of coupling that is known here", file.kind);
        return wrong("kind", what, format!("one of: {}", known.join(", ")));
    };
    if !file.form.is_empty() && kind.form(Some(&file.form)).is_none() {
        let known: Vec<&str> = kind.forms().iter().map(|form| form.name).collect();
        let what = format!("“{}” is no form of this kind, {}", file.form, kind.name());
        return wrong("form", what, format!("one of: {}", known.join(", ")));
    }
    Ok(file)
}

/// Writes a sheet.
///
/// # Errors
/// When TOML cannot hold it, which no sheet causes.
pub fn write_sheet(file: &SheetFile) -> Result<String, toml::ser::Error> {
    toml::to_string_pretty(file)
}

/// An empty sheet to be filled in by hand: every field with what it is, each behind a #.
pub fn blank_sheet(kind: &str, form: &str) -> String {
    let head = format!(
        "hubwright_sheet = {SHEET_VERSION}\nname = \"\"\nkind = \"{kind}\"\nform = \"{form}\"\n"
    );
    format!("{head}\n{}", fields::blank("sheet", &sheet_lines(&Sheet::default())))
}

/// The JSON Schema of a sheet, for editors.
pub fn sheet_schema() -> Json {
    let mut schema = schemars::schema_for!(SheetFile);
    schema.insert("title".into(), "A Hubwright coupling sheet, version 1".into());
    schema.to_value()
}

/// Every field of a sheet in order, plain ones before its tables, with what the sheet says.
pub fn sheet_lines(sheet: &Sheet) -> Vec<FieldLine> {
    fields::lines(sheet)
}

impl SheetFile {
    /// The sheet of a job.
    pub fn of(file: &JobFile) -> Self {
        let coupling = &file.coupling;
        let name = coupling.sheet.taken_from.clone();
        Self {
            hubwright_sheet: SHEET_VERSION,
            name: name.unwrap_or_else(|| file.job.title.clone()),
            kind: coupling.kind.clone(),
            form: coupling.form.clone(),
            sheet: coupling.sheet.clone(),
        }
    }

    /// The job with this sheet in it, in place of whatever sheet it had.
    #[must_use]
    pub fn into_job(&self, file: &JobFile) -> JobFile {
        let mut file = file.clone();
        if !self.kind.is_empty() {
            file.coupling.kind.clone_from(&self.kind);
            file.coupling.form.clone_from(&self.form);
        }
        file.coupling.sheet = self.sheet.clone();
        file
    }

    /// What has to be entered in a log book to put this sheet in: one entry a figure.
    pub fn acts(&self) -> Vec<Act> {
        let mut written = Vec::new();
        if let Ok(Json::Object(sheet)) = serde_json::to_value(&self.sheet) {
            leaves(&sheet, &mut "coupling.sheet".to_owned(), &mut written);
        }
        let named = [("coupling.kind", &self.kind), ("coupling.form", &self.form)];
        let named = named.into_iter().filter(|(_, text)| !text.is_empty());
        let named = named.map(|(place, text)| (place.to_owned(), Written::Text(text.clone())));
        named.chain(written).map(|(place, value)| Act::Write { place, value }).collect()
    }
}
