//! The one program: arguments in, answers out.
//!
//! On standard output stands only what could be piped on; the rest goes to standard error and
//! reads without colour. Exit codes: 0 done, 1 the input has an error, 2 the command line is
//! wrong, 3 the disk or the network refused.
#![expect(
    clippy::disallowed_methods,
    reason = "the program is where files, clock and network come in"
)]

mod arguments;
mod card;
mod fields;
mod help;
mod plan;
mod reckon;
mod rules;
mod serve;
mod sheet;
mod terminal;

use std::process::ExitCode;

use arguments::{Arguments, Command};
use clap::Parser;

/// Plans and papers are made of many small texts.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Why the program ends without its answer.
#[derive(Debug)]
enum Failure {
    /// The input has an error: exit code 1.
    Input(String),
    /// The disk or the network refused: exit code 3.
    Refused(String),
}

fn main() -> ExitCode {
    let done = match Arguments::parse().command {
        Command::Plan(asked) => plan::run(&asked),
        Command::Card(asked) => card::run(&asked),
        Command::Serve(asked) => serve::run(&asked),
        Command::Reckon(asked) => reckon::run(&asked),
        Command::Sheet(asked) => sheet::run(&asked),
        Command::Rules(asked) => rules::run(&asked),
        Command::Schema { sheet: true, .. } => help::schema(&job::sheet_schema()),
        Command::Schema { rules: true, .. } => help::schema(&job::site_schema()),
        Command::Schema { .. } => help::schema(&job::schema()),
        Command::Completions { shell } => help::completions(shell),
        Command::Man => help::man(),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure::Input(why)) => fail(&why, 1),
        Err(Failure::Refused(why)) => fail(&why, 3),
    }
}

fn fail(why: &str, code: u8) -> ExitCode {
    eprintln!("hubwright: {}", why.trim_end());
    ExitCode::from(code)
}
