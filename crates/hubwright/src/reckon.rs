//! `hubwright reckon`: one calculation alone, from arguments or from JSON lines.

use std::fmt::Write as _;
use std::io::{BufRead as _, BufReader, BufWriter, Write as _};

use quantities::{Kind, System, Working};
use reckon::{Answer, Calculation, ReckonError, Sort};

use crate::Failure;
use crate::arguments;

/// Answers.
pub fn run(asked: &arguments::Reckon) -> Result<(), Failure> {
    let system = asked.units.map_or(System::Metric, System::from);
    let json = if asked.bare { reckon::bare_line } else { reckon::answer_line };
    match (asked.list, asked.words.split_first()) {
        (true, _) => out(&listed(asked.json)),
        (false, None) if asked.help => out(USE),
        (false, None) => lines(None, json),
        (false, Some((name, _))) if asked.help => out(&described(name, asked.json)?),
        (false, Some((name, []))) => lines(Some(name), json),
        (false, Some((name, inputs))) => {
            one(name, inputs, (asked.json || asked.bare).then_some(json), system)
        }
    }
}

const USE: &str = "\
hubwright reckon NAME key=value …   asks one calculation; quantities carry their units
hubwright reckon NAME               reads cases from standard input, one JSON object a line
hubwright reckon                    the same; each object names its calculation under \"reckon\"
hubwright reckon --list             lists the calculations
hubwright reckon NAME --help        inputs, outputs, valid range and source of one
  --json          answer in JSON
  --bare          answer in JSON with the results alone, in SI: for very many cases
  --units inch    answer in inches, pound-feet, degrees Fahrenheit
";

/// An answer, or its error, as a line of JSON.
type Line = fn(&Result<Answer, ReckonError>) -> String;

fn one(name: &str, inputs: &[String], json: Option<Line>, system: System) -> Result<(), Failure> {
    let pairs = inputs.iter().map(|word| {
        word.split_once('=').ok_or_else(|| {
            Failure::Input(format!("“{word}” is not key=value, such as power=\"90 kW\""))
        })
    });
    let pairs: Vec<(&str, &str)> = pairs.collect::<Result<_, _>>()?;
    let answered = reckon::reckon(name, pairs);
    if let Some(json) = json {
        out(&format!("{}\n", json(&answered)))?;
        return answered.map(drop).map_err(|error| Failure::Input(error.to_string()));
    }
    let answer = answered.map_err(|error| Failure::Input(error.to_string()))?;
    out(&shown(reckon::calculation(name).ok(), &answer, system))
}

/// One case a line in, one answer a line out, in order; an error is the answer of its line. What
/// has been answered is sent off before more is waited for.
fn lines(name: Option<&str>, json: Line) -> Result<(), Failure> {
    let refused = |error: std::io::Error| Failure::Refused(error.to_string());
    let mut stdin = BufReader::with_capacity(AT_ONCE, std::io::stdin().lock());
    let mut stdout = BufWriter::with_capacity(AT_ONCE, std::io::stdout().lock());
    let mut line = String::new();
    while stdin.read_line(&mut line).map_err(refused)? > 0 {
        if !line.trim().is_empty() {
            let answer = json(&reckon::ask_json(name, &line));
            writeln!(stdout, "{answer}").map_err(refused)?;
        }
        if !stdin.buffer().contains(&b'\n') {
            stdout.flush().map_err(refused)?;
        }
        line.clear();
    }
    stdout.flush().map_err(refused)
}

/// Bytes that are read or written in one go.
const AT_ONCE: usize = 64 * 1024;

fn listed(json: bool) -> String {
    if json {
        let all: Vec<serde_json::Value> = reckon::all().map(reckon::describe).collect();
        return format!("{}\n", serde_json::Value::Array(all));
    }
    let mut text = String::new();
    for calculation in reckon::all() {
        let _ = writeln!(text, "{:<24} {}", calculation.name, calculation.does);
    }
    text
}

fn described(name: &str, json: bool) -> Result<String, Failure> {
    let calculation =
        reckon::calculation(name).map_err(|error| Failure::Input(error.to_string()))?;
    if json {
        return Ok(format!("{}\n", reckon::describe(calculation)));
    }
    let mut text = format!("{}\n{}\n\nInputs\n", calculation.name, calculation.does);
    for input in calculation.inputs {
        let is = match input.sort {
            Sort::Quantity(kind) => ways(kind),
            Sort::Quantities(kind) => format!("{}; …", kind.examples()[0]),
            Sort::Choice(words) => words.join(" | "),
            Sort::Word => String::new(),
            Sort::Words => "several, parted by semicolons".to_owned(),
        };
        let default = match input.default {
            None => String::new(),
            Some("") => " (may be left out)".to_owned(),
            Some(default) => format!(" (default {default})"),
        };
        let _ = writeln!(text, "  {:<20} {}{default}\n{:23}{is}", input.name, input.what, "");
    }
    text.push_str("\nOutputs\n");
    for output in calculation.outputs {
        let units = output.kind.map_or_else(String::new, |kind| {
            let [metric, inch] = [System::Metric, System::Inch].map(|s| kind.unit(s).name());
            if metric == inch { metric.to_owned() } else { format!("{metric} or {inch}") }
        });
        let _ = writeln!(text, "  {:<20} {}  {units}", output.name, output.what);
    }
    let _ = writeln!(text, "\nValid: {}\nSource: {}", calculation.valid, calculation.source);
    Ok(text)
}

fn shown(calculation: Option<&Calculation>, answer: &Answer, system: System) -> String {
    let mut text = String::new();
    for (name, outcome) in &answer.results {
        let outputs = calculation.map_or(&[] as &[_], |calculation| calculation.outputs);
        let what = outputs.iter().find(|output| output.name == *name).map_or("", |o| o.what);
        let _ = writeln!(text, "{name:<20} {:<24} {what}", outcome.show(system));
    }
    for working in &answer.working {
        text.push_str(&worked(working, system));
    }
    text
}

fn worked(working: &Working, system: System) -> String {
    let mut text = format!("\n{}\n", working.name);
    for line in working.formula.lines() {
        let _ = writeln!(text, "  {}", line.trim());
    }
    let _ = writeln!(text, "  = {} = {}", working.put_in(system), working.result.show(system));
    for term in &working.terms {
        let _ =
            writeln!(text, "  {:<6} {:<44} {}", term.symbol, term.name, term.value.show(system));
    }
    if !working.valid.is_empty() {
        let _ = writeln!(text, "  Holds for: {}", working.valid);
    }
    let _ = writeln!(text, "  Source: {}", working.source);
    text
}

fn out(text: &str) -> Result<(), Failure> {
    let written = std::io::stdout().write_all(text.as_bytes());
    written.map_err(|error| Failure::Refused(error.to_string()))
}

/// How a quantity may be written: "0.25 mm or 10 mil", or "8".
fn ways(kind: Kind) -> String {
    let [metric, inch] = kind.examples();
    if metric == inch { metric.to_owned() } else { format!("{metric} or {inch}") }
}
