//! Answers calculations asked as lines of JSON on standard input, one answer a line.
//!
//! ```text
//! echo '{"reckon": "torque", "power": "90 kW", "speed": "1480 rpm"}' | cargo run --example lines
//! ```

use std::io::{BufRead, Write, stdin, stdout};

fn main() -> std::io::Result<()> {
    let mut out = stdout().lock();
    for line in stdin().lock().lines() {
        let answered = reckon::ask_json(None, &line?);
        writeln!(out, "{}", reckon::answer_line(&answered))?;
    }
    Ok(())
}
