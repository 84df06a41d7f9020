//! `hubwright rules`: the plant's rules taken out of a job, or put into one.

use std::path::Path;

use job::SiteFile;

use crate::arguments::Rules;
use crate::{Failure, plan};

/// Prints the rules, or the job with the rules in it.
pub fn run(asked: &Rules) -> Result<(), Failure> {
    let rules = read(&asked.file)?;
    let toml = match &asked.into {
        Some(job) => job::write(&rules.into_job(&plan::read(job)?)),
        None => job::write_site(&rules),
    };
    print!("{}", toml.map_err(|error| Failure::Refused(error.to_string()))?);
    Ok(())
}

/// The rules in a file, which is of rules alone or is a job with some.
fn read(path: &Path) -> Result<SiteFile, Failure> {
    let text = plan::text_of(path)?;
    if !plan::is_marked(&text, "hubwright_site") {
        return Ok(SiteFile::of(&plan::read_text(path, &text)?));
    }
    job::read_site(&text).map_err(|errors| plan::wrong(path, &errors))
}
