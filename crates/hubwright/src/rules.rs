//! `hubwright rules`: the plant's rules taken out of a job, put into one, begun, or read out.

use std::path::Path;

use job::SiteFile;

use crate::arguments::Rules;
use crate::{Failure, fields, plan};

/// Prints what was asked for.
pub fn run(asked: &Rules) -> Result<(), Failure> {
    let text = match &asked.file {
        Some(path) => of_file(asked, path)?,
        None => job::blank_site(),
    };
    print!("{text}");
    Ok(())
}

fn of_file(asked: &Rules, path: &Path) -> Result<String, Failure> {
    let rules = read(path)?;
    if asked.read {
        let lines = job::site_lines(&rules.site);
        return Ok(fields::read_out("rules of the plant", &lines, "as usual, no rule on"));
    }
    let toml = match &asked.into {
        Some(job) => job::write(&rules.into_job(&plan::read(job)?)),
        None => job::write_site(&rules),
    };
    toml.map_err(|error| Failure::Refused(error.to_string()))
}

/// The rules in a file, which is of rules alone or is a job with some.
fn read(path: &Path) -> Result<SiteFile, Failure> {
    let text = plan::text_of(path)?;
    if !plan::is_marked(&text, "hubwright_site") {
        return Ok(SiteFile::of(&plan::read_text(path, &text)?));
    }
    job::read_site(&text).map_err(|errors| plan::wrong(path, &errors))
}
