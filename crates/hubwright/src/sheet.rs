//! `hubwright sheet`: a maker's sheet taken out of a job, put into one, begun, or read out.

use std::path::Path;

use job::SheetFile;
use quantities::System;

use crate::arguments::Sheet;
use crate::{Failure, card, fields, plan};

/// Prints what was asked for.
pub fn run(asked: &Sheet) -> Result<(), Failure> {
    if let Some(out) = &asked.out {
        return on_paper(asked, out);
    }
    let text = match (&asked.blank, &asked.file) {
        (Some(kind), _) => blank(kind, asked.form.as_deref().unwrap_or_default())?,
        (None, Some(path)) => of_file(asked, path)?,
        (None, None) => String::new(),
    };
    print!("{text}");
    Ok(())
}

/// The sheet as a PDF: of a file, or an empty one to fill in by hand.
fn on_paper(asked: &Sheet, out: &Path) -> Result<(), Failure> {
    let (sheet, system) = match (&asked.blank, &asked.file) {
        (None, Some(path)) => read(path)?,
        (kind, _) => {
            let form = asked.form.as_deref().unwrap_or_default();
            let text = blank(kind.as_deref().unwrap_or_default(), form)?;
            let sheet = job::read_sheet(&text);
            (sheet.map_err(|errors| plan::wrong(Path::new("this sheet"), &errors))?, System::Metric)
        }
    };
    let paper = asked.paper.map_or(papers::Paper::usual(system), papers::Paper::from);
    let pdf = papers::sheet(&sheet, paper, card::made_by())
        .map_err(|error| Failure::Refused(format!("the sheet cannot be set: {error}")))?;
    card::write_pdf(&pdf, out)
}

fn of_file(asked: &Sheet, path: &Path) -> Result<String, Failure> {
    let (sheet, _) = read(path)?;
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

/// The sheet in a file, which is one or is a job with one, and the units of that job; a sheet by
/// itself has none.
fn read(path: &Path) -> Result<(SheetFile, System), Failure> {
    let text = plan::text_of(path)?;
    if plan::is_marked(&text, "hubwright_sheet") {
        let sheet = job::read_sheet(&text).map_err(|errors| plan::wrong(path, &errors))?;
        return Ok((sheet, System::Metric));
    }
    let job = plan::read_text(path, &text)?;
    Ok((SheetFile::of(&job), job.job.units))
}

/// Every figure that the sheet has in words, then what it is silent on.
fn read_out(sheet: &SheetFile) -> String {
    let head = [&sheet.name, &sheet.kind, &sheet.form].map(String::as_str);
    let head: Vec<&str> = head.into_iter().filter(|words| !words.is_empty()).collect();
    let lines = job::sheet_lines(&sheet.sheet);
    fields::read_out(&head.join(", "), &lines, "not on the sheet")
}
