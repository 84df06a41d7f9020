//! Writes one figure of every kind into a folder: `cargo run -p figures --example gallery DIR`.

use figures::section::{Detail, Dim, Half, Key, Kind, Packs, Section};
use figures::{Figure, Paper};
use quantities::System;

#[path = "gallery/charts.rs"]
mod charts;
#[path = "gallery/heat.rs"]
mod heat;
#[path = "gallery/sections.rs"]
mod sections;
#[path = "gallery/trains.rs"]
mod trains;

fn main() -> std::io::Result<()> {
    let folder = std::env::args().nth(1).unwrap_or_else(|| "figures".to_owned());
    for (name, figure) in [sections::all(), trains::all(), charts::all(), heat::all()].concat() {
        write(&folder, &name, &figure)?;
    }
    Ok(())
}

#[expect(clippy::disallowed_methods, reason = "an example that exists to write files")]
fn write(folder: &str, name: &str, figure: &Figure) -> std::io::Result<()> {
    std::fs::create_dir_all(folder)?;
    std::fs::write(format!("{folder}/{name}.svg"), &figure.svg)
}
