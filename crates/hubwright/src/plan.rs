//! `hubwright plan`: a job file in, its plan out.

use std::io::Read;
use std::path::Path;

use job::Job;
use job::plan::{Depth, Plan};
use quantities::System;

use crate::arguments::{self, Units};
use crate::{Failure, card, terminal};

/// Prints the plan.
pub fn run(asked: &arguments::Plan) -> Result<(), Failure> {
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
    let text = text_of(path)?;
    let file = job::read(&text).map_err(|errors| {
        let said = |error: &job::FileError| format!("{}, {error}", path.display());
        let all: Vec<String> = errors.iter().map(said).collect();
        Failure::Input(all.concat())
    })?;
    let job = Job::from_file(&file);
    let system = units.map_or(file.system(), System::from);
    Ok(job::plan::plan_with(&job, system, Depth::Full))
}

fn text_of(path: &Path) -> Result<String, Failure> {
    let read = if path == Path::new("-") {
        let mut text = String::new();
        std::io::stdin().read_to_string(&mut text).map(|_| text)
    } else {
        std::fs::read_to_string(path)
    };
    read.map_err(|error| Failure::Input(format!("{}: {error}", path.display())))
}
