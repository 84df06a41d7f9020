//! `hubwright card`: a job file in, a PDF out.

use std::io::Write;
use std::path::Path;

use job::plan::Plan;
use papers::CardFigures;

use crate::arguments::{self, Paper};
use crate::{Failure, plan};

/// Writes the card.
pub fn run(asked: &arguments::Card) -> Result<(), Failure> {
    make_ready();
    let plan = plan::planned(&asked.file, asked.units)?;
    write(&plan, asked.paper, &asked.out)
}

/// Lets the fonts be read while the plan is worked out.
pub fn make_ready() {
    std::thread::spawn(papers::make_ready);
}

/// Writes the card of a plan to a file.
pub fn write(plan: &Plan, paper: Option<Paper>, out: &Path) -> Result<(), Failure> {
    let paper = paper.map_or(papers::Paper::usual(plan.head.system), papers::Paper::from);
    let pdf = papers::card(plan, &CardFigures::of(plan), paper, made_by())
        .map_err(|error| Failure::Refused(format!("the card cannot be set: {error}")))?;
    write_pdf(&pdf, out)
}

/// Writes a PDF to a file, or to standard output for -.
pub fn write_pdf(pdf: &[u8], out: &Path) -> Result<(), Failure> {
    let written = if out == Path::new("-") {
        std::io::stdout().write_all(pdf)
    } else {
        std::fs::write(out, pdf)
    };
    written.map_err(|error| Failure::Refused(format!("{}: {error}", out.display())))
}

/// Name and version, as every printout carries them.
pub fn made_by() -> &'static str {
    concat!("Hubwright ", env!("CARGO_PKG_VERSION"))
}
