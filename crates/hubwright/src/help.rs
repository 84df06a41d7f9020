//! Schema, completions and manual page.

use std::io::Write;

use clap::CommandFactory;
use serde_json::Value as Json;

use crate::Failure;
use crate::arguments::Arguments;

/// A JSON Schema: of a job file, of a sheet, of the plant's rules.
pub fn schema(schema: &Json) -> Result<(), Failure> {
    let schema = serde_json::to_string_pretty(schema);
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
