//! The card of a job file, for looking at: `print_card a4|letter metric|inch < job.toml > card.pdf`.

use std::io::{Read, Write};

use papers::{CardFigures, Paper, card};
use quantities::System;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    let paper = if asked.iter().any(|word| word == "letter") { Paper::Letter } else { Paper::A4 };
    let inch = asked.iter().any(|word| word == "inch");
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text)?;
    let file = job::read(&text)
        .map_err(|errors| errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))?;
    let system = if inch { System::Inch } else { System::Metric };
    let plan = job::plan::plan(&job::Job::from_file(&file), system);
    let pdf = card(&plan, &CardFigures::of(&plan), paper, "Hubwright 0.1.0")?;
    std::io::stdout().write_all(&pdf)?;
    Ok(())
}
