//! What the catalogue must be, whoever reads it, and what published examples say.

mod cases;
mod lines;
mod refusals;
mod shape;
mod shown;
mod systems;

use quantities::{Kind, Value, read};

use crate::{Answer, Calculation, Outcome, Sort, all, calculation, reckon};

/// A case with its answer as somebody else printed it.
struct Case {
    /// The calculation.
    name: &'static str,
    /// Where the figures stand.
    source: &'static str,
    /// What is put in.
    inputs: &'static [(&'static str, &'static str)],
    /// What must come out, as printed: half of the last digit is allowed, or the ± that stands
    /// beside it. A name followed by ± wants the half-width itself.
    wants: &'static [(&'static str, &'static str)],
}

impl Case {
    fn answer(&self) -> Answer {
        let answered = reckon(self.name, self.inputs.iter().copied());
        answered.unwrap_or_else(|error| panic!("{}, {}: {error}", self.name, self.source))
    }

    fn calculation(&self) -> &'static Calculation {
        calculation(self.name).unwrap()
    }
}

/// What is printed, in SI, and what may be missing from it: half of its last digit.
fn printed(text: &str, kind: Kind) -> (f64, f64) {
    let dimension = kind.dimension();
    let reading = read(text, dimension).unwrap_or_else(|error| panic!("{text}: {error}"));
    if let Some(spread) = reading.spread {
        return (reading.si, spread);
    }
    let end = text.rfind(|c: char| c.is_ascii_digit()).unwrap_or(0);
    let start = text.find(|c: char| c.is_ascii_digit()).unwrap_or(0);
    // A unit such as mm2 has digits of its own; the number ends at the first space.
    let number = text[start..=end].split(' ').next().unwrap_or("");
    let decimals = number.split_once('.').map_or(0, |(_, part)| part.len());
    let unit = text[start + number.len()..].trim();
    let step = |number: f64| read(&format!("{number} {unit}"), dimension).unwrap().si;
    let digit = 0.1_f64.powi(i32::try_from(decimals).unwrap());
    (reading.si, 0.5 * (step(digit) - step(0.0)))
}

/// What is wrong with a number, if it is not as printed.
fn unlike(found: &Value, text: &str) -> Option<String> {
    let (wanted, allowed) = printed(text, found.kind);
    // A double keeps sixteen digits; what is exactly half a digit off is not a fault.
    let hair = 1e-9 * wanted.abs();
    let is_like = (found.si - wanted).abs() <= allowed + hair;
    (!is_like).then(|| format!("{} in SI, for {text}", found.si))
}
