//! Writes the figures of a job file's plan into a folder: `cargo run -p figures --example plan JOB.toml DIR`.
#![expect(clippy::disallowed_methods, reason = "an example that exists to read and write files")]

use figures::section::Detail;
use figures::{Figure, Paper, of_plan};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut words = std::env::args().skip(1);
    let (path, folder) = (words.next().ok_or("no job file")?, words.next().ok_or("no folder")?);
    let file =
        job::read(&std::fs::read_to_string(path)?).map_err(|errors| errors[0].to_string())?;
    let job = job::Job::from_file(&file);
    let plan = job::plan::plan_with(&job, file.system(), job::plan::Depth::Full);
    std::fs::create_dir_all(&folder)?;
    let figures: Vec<(&str, Option<Figure>)> = vec![
        ("section", of_plan::section(&plan, Detail::Full)),
        ("section-small", of_plan::section(&plan, Detail::Small)),
        ("lineup", of_plan::lineup(&plan, Paper::PAGE)),
        ("lineup-card", of_plan::lineup(&plan, Paper::CARD)),
        ("lineup-phone", of_plan::lineup(&plan, Paper::PHONE)),
        ("sweep-1", of_plan::sweep(&plan, 0, Paper::COLUMN)),
        ("sweep-2-card", of_plan::sweep(&plan, 1, Paper::CARD)),
        ("fit-driver", of_plan::fit(&plan, "driver", Paper::COLUMN)),
        ("fit-driven", of_plan::fit(&plan, "driven", Paper::COLUMN)),
        ("bore-map", of_plan::bore_map(&plan, "driver", Paper::PAGE)),
        ("clearance-driver", of_plan::clearance(&plan, "driver", Paper::COLUMN)),
        ("clearance-card", of_plan::clearance(&plan, "driver", Paper::CARD)),
        ("pull-driver", of_plan::pull(&plan, "driver", Paper::COLUMN)),
        ("pull-driven", of_plan::pull(&plan, "driven", Paper::CARD)),
        ("window-driver", of_plan::window(&plan, "driver", Paper::COLUMN)),
        ("window-driven-card", of_plan::window(&plan, "driven", Paper::CARD)),
        ("pressure-driver", of_plan::pressure(&plan, "driver", Paper::COLUMN)),
        ("pressure-driver-card", of_plan::pressure(&plan, "driver", Paper::CARD)),
        ("torque-driver", of_plan::torque(&plan, "driver", Paper::COLUMN)),
        ("torque-driven-card", of_plan::torque(&plan, "driven", Paper::CARD)),
        ("tightening", of_plan::tightening(&plan, Paper::CARD)),
    ];
    for (name, figure) in figures {
        match figure {
            Some(figure) => std::fs::write(format!("{folder}/{name}.svg"), figure.svg)?,
            None => eprintln!("no {name}"),
        }
    }
    Ok(())
}
