//! `hubwright plan`: a job file in, its plan out.

use std::io::Read;
use std::path::Path;

use job::plan::{Depth, Plan};
use job::{FileError, Job, JobFile};
use quantities::System;

use crate::arguments::{self, Units};
use crate::{Failure, card, terminal};

/// Prints the plan.
pub fn run(asked: &arguments::Plan) -> Result<(), Failure> {
    if asked.card.is_some() {
        card::make_ready();
    }
    let plan = planned(&asked.file, asked.units)?;
    if asked.json {
        let json = serde_json::to_string_pretty(&plan);
        println!("{}", json.map_err(|error| Failure::Refused(error.to_string()))?);
    } else {
        print!("{}", terminal::plan(&plan, asked.working));
    }
    match &asked.card {
        Some(out) => {
            card::write(&plan, asked.paper, out)?;
            eprintln!("hubwright: the card is in {}", out.display());
            Ok(())
        }
        None => Ok(()),
    }
}

/// The plan of the job in a file.
pub fn planned(path: &Path, units: Option<Units>) -> Result<Plan, Failure> {
    let file = read(path)?;
    let job = Job::from_file(&file);
    let system = units.map_or(file.system(), System::from);
    Ok(job::plan::plan_with(&job, system, Depth::Full))
}

/// The job in a file.
pub fn read(path: &Path) -> Result<JobFile, Failure> {
    read_text(path, &text_of(path)?)
}

/// The job in the text of a file.
pub fn read_text(path: &Path, text: &str) -> Result<JobFile, Failure> {
    job::read(text).map_err(|errors| wrong(path, &errors))
}

/// Whether a text bears this version mark.
pub fn is_marked(text: &str, mark: &str) -> bool {
    text.lines().any(|line| line.trim_start().starts_with(mark))
}

/// What is wrong with a file, and where.
pub fn wrong(path: &Path, errors: &[FileError]) -> Failure {
    let said: Vec<String> =
        errors.iter().map(|error| format!("{}, {error}", path.display())).collect();
    Failure::Input(said.concat())
}

/// The text of a file, or of standard input.
pub fn text_of(path: &Path) -> Result<String, Failure> {
    let read = if path == Path::new("-") {
        let mut text = String::new();
        std::io::stdin().read_to_string(&mut text).map(|_| text)
    } else {
        std::fs::read_to_string(path)
    };
    read.map_err(|error| Failure::Input(format!("{}: {error}", path.display())))
}
