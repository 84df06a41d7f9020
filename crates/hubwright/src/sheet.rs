//! `hubwright sheet`: a maker's sheet taken out of a job, put into one, begun, or read out.

use std::path::Path;

use job::SheetFile;

use crate::arguments::Sheet;
use crate::{Failure, fields, plan};

/// Prints what was asked for.
pub fn run(asked: &Sheet) -> Result<(), Failure> {
    let text = match (&asked.blank, &asked.file) {
        (Some(kind), _) => blank(kind, asked.form.as_deref().unwrap_or_default())?,
        (None, Some(path)) => of_file(asked, path)?,
        (None, None) => String::new(),
    };
    print!("{text}");
    Ok(())
}

fn of_file(asked: &Sheet, path: &Path) -> Result<String, Failure> {
    let sheet = read(path)?;
    if asked.read {
        return Ok(read_out(&sheet));
    }
    let toml = match &asked.into {
        Some(job) => job::write(&sheet.into_job(&plan::read(job)?)),
        None => job::write_sheet(&sheet),
    };
    toml.map_err(|error| Failure::Refused(error.to_string()))
}

/// An empty sheet, once its kind and form are known ones.
fn blank(kind: &str, form: &str) -> Result<String, Failure> {
    let text = job::blank_sheet(kind, form);
    match job::read_sheet(&text) {
        Ok(_) => Ok(text),
        Err(errors) => Err(plan::wrong(Path::new("this sheet"), &errors)),
    }
}

/// The sheet in a file, which is one or is a job with one.
fn read(path: &Path) -> Result<SheetFile, Failure> {
    let text = plan::text_of(path)?;
    if !plan::is_marked(&text, "hubwright_sheet") {
        return Ok(SheetFile::of(&plan::read_text(path, &text)?));
    }
    job::read_sheet(&text).map_err(|errors| plan::wrong(path, &errors))
}

/// Every figure that the sheet has in words, then what it is silent on.
fn read_out(sheet: &SheetFile) -> String {
    let head = [&sheet.name, &sheet.kind, &sheet.form].map(String::as_str);
    let head: Vec<&str> = head.into_iter().filter(|words| !words.is_empty()).collect();
    let lines = job::sheet_lines(&sheet.sheet);
    fields::read_out(&head.join(", "), &lines, "not on the sheet")
}
