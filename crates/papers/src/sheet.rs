//! A maker's sheet on paper: what was entered, and lines to write on for what was not.

use job::{FieldLine, SheetFile, sheet_lines};
use serde::Serialize;

use crate::world::{Document, Imprint};
use crate::{Paper, PaperError, printable};

/// A maker's sheet, as PDF/A-2b; figures stand as they were entered.
///
/// `made_by` names the program and its version, for the foot of each page.
///
/// # Errors
/// [`PaperError`] when the PDF can't keep to its standard.
pub fn sheet(file: &SheetFile, paper: Paper, made_by: &str) -> Result<Vec<u8>, PaperError> {
    let mut data = serde_json::to_value(Page::new(file, paper, made_by))
        .map_err(|error| PaperError::Data(error.to_string()))?;
    printable::all(&mut data);
    let document = Document::new("/sheet.typ", data.to_string().into_bytes())?;
    document.pdf(&Imprint {
        ident: format!("maker's sheet {}", title(file)),
        made_by: printable::printable(made_by).into_owned(),
        written: String::new(),
    })
}

#[derive(Serialize)]
struct Page<'a> {
    paper: &'static str,
    made_by: &'a str,
    title: &'a str,
    form: String,
    foot: &'a str,
    said: Vec<Group>,
    silent: Vec<Group>,
}

/// The figures of one table of the sheet.
#[derive(Serialize)]
struct Group {
    name: String,
    lines: Vec<Line>,
}

#[derive(Serialize)]
struct Line {
    what: String,
    says: String,
}

impl<'a> Page<'a> {
    fn new(file: &'a SheetFile, paper: Paper, made_by: &'a str) -> Self {
        let (said, silent): (Vec<_>, Vec<_>) =
            sheet_lines(&file.sheet).into_iter().partition(|line| !line.says.is_empty());
        let named = [&file.kind, &file.form].map(String::as_str);
        let named: Vec<&str> = named.into_iter().filter(|words| !words.is_empty()).collect();
        Self {
            paper: paper.name(),
            made_by,
            title: title(file),
            form: named.join(", "),
            foot: file.sheet.taken_from.as_deref().unwrap_or_default(),
            said: groups(&said),
            silent: groups(&silent),
        }
    }
}

fn title(file: &SheetFile) -> &str {
    if file.name.is_empty() { "Coupling" } else { &file.name }
}

fn groups(lines: &[FieldLine]) -> Vec<Group> {
    let alike = lines.chunk_by(|one, next| one.group() == next.group());
    alike
        .map(|lines| Group {
            name: lines[0].group().unwrap_or_else(|| "Ratings and limits".to_owned()),
            lines: lines.iter().map(Line::of).collect(),
        })
        .collect()
}

impl Line {
    fn of(line: &FieldLine) -> Self {
        Self { what: line.what.trim_end_matches('.').to_owned(), says: line.says.clone() }
    }
}
