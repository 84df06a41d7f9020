//! Schema, completions and manual page.

use std::io::Write;

use clap::CommandFactory;

use crate::Failure;
use crate::arguments::Arguments;

/// The JSON Schema of a job file, or of a sheet.
pub fn schema(sheet: bool) -> Result<(), Failure> {
    let schema = if sheet { job::sheet_schema() } else { job::schema() };
    let schema = serde_json::to_string_pretty(&schema);
    println!("{}", schema.map_err(|error| Failure::Refused(error.to_string()))?);
    Ok(())
}

/// Completions for a shell.
pub fn completions(shell: clap_complete::Shell) -> Result<(), Failure> {
    let mut text = Vec::new();
    clap_complete::generate(shell, &mut Arguments::command(), "hubwright", &mut text);
    out(&text)
}

/// The manual page.
pub fn man() -> Result<(), Failure> {
    let mut text = Vec::new();
    clap_mangen::Man::new(Arguments::command())
        .render(&mut text)
        .map_err(|error| Failure::Refused(error.to_string()))?;
    out(&text)
}

fn out(text: &[u8]) -> Result<(), Failure> {
    std::io::stdout().write_all(text).map_err(|error| Failure::Refused(error.to_string()))
}
