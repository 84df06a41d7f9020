//! The card of an invented job, as PDF on standard output: `sample_card > card.pdf`.

use std::io::Write;

use papers::{Paper, card};

#[path = "../tests/sample/mod.rs"]
mod sample;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let pdf = card(&sample::plan(), &sample::figures(), Paper::A4, "Hubwright 0.1.0")?;
    std::io::stdout().write_all(&pdf)?;
    Ok(())
}
