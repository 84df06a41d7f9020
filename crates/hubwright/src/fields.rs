//! A sheet or a set of rules in words: what it says, then what it is silent on.

use std::fmt::Write as _;

use job::FieldLine;

/// A heading, the fields that say something, and the others by their places after `silent`.
pub fn read_out(head: &str, lines: &[FieldLine], silent: &str) -> String {
    let mut out = format!("{head}\n");
    let (said, unsaid): (Vec<_>, Vec<_>) = lines.iter().partition(|line| !line.says.is_empty());
    for line in said {
        let _ = writeln!(out, "  {:<34} {}\n      {}", line.place, line.says, line.what);
    }
    let unsaid: Vec<&str> = unsaid.iter().map(|line| line.place.as_str()).collect();
    if !unsaid.is_empty() {
        let _ = writeln!(out, "{silent}: {}", unsaid.join(", "));
    }
    out
}
