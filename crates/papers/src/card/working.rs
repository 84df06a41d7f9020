//! The working of every number, stage by stage.
//!
//! Numbers that were found the same way (both bores, all feet) share one block: formula, range and
//! names once, and a column of values each.

use job::plan::{Number, Plan};
use quantities::{System, Term, Working};
use serde::Serialize;

/// All workings, and the sources that they name by number.
#[derive(Serialize)]
pub(super) struct Workings<'a> {
    parts: Vec<Part<'a>>,
    sources: Vec<String>,
}

/// The workings of one stage.
#[derive(Serialize)]
struct Part<'a> {
    stage: &'static str,
    groups: Vec<Group<'a>>,
}

/// Numbers that were found the same way.
#[derive(Serialize)]
struct Group<'a> {
    items: Vec<Item<'a>>,
    /// What was worked out: "Mean size at 20 °C"; where all have one name and no label says it.
    name: Option<&'a str>,
    formula: Vec<&'static str>,
    /// What is the same for all of them.
    common: Vec<Row<'a>>,
    /// What differs, as many of them side by side as find room.
    runs: Vec<Run<'a>>,
    valid: &'static str,
    /// Place in the list of sources, from one.
    source: usize,
}

#[derive(Serialize)]
struct Item<'a> {
    /// The number it is the working of: "Mean bore, motor hub".
    label: &'a str,
    /// What was worked out, where each has its own name.
    name: Option<&'a str>,
    result: String,
    /// Empty where it would only repeat the formula.
    put_in: String,
}

/// Neighbours of a group.
#[derive(Serialize)]
struct Run<'a> {
    /// Place in the group of its first, from one.
    from: usize,
    rows: Vec<Row<'a>>,
}

#[derive(Serialize)]
struct Row<'a> {
    symbol: &'static str,
    name: &'a str,
    values: Vec<String>,
}

/// The stages that have a working.
pub(super) fn workings(plan: &Plan) -> Workings<'_> {
    let mut sources = Vec::new();
    let parts = plan.stages.iter().map(|stage| Part {
        stage: stage.stage.title(),
        groups: groups(&stage.numbers, plan.head.system, &mut sources),
    });
    let parts = parts.filter(|part| !part.groups.is_empty()).collect();
    Workings { parts, sources }
}

impl Workings<'_> {
    pub(super) fn are_none(&self) -> bool {
        self.parts.is_empty()
    }
}

fn groups<'a>(numbers: &'a [Number], system: System, sources: &mut Vec<String>) -> Vec<Group<'a>> {
    let mut alike: Vec<Vec<(&str, &Working)>> = Vec::new();
    for number in numbers {
        let Some(working) = &number.working else { continue };
        let one = (number.label.as_str(), working);
        match alike.iter_mut().find(|group| same_way(group[0].1, working)) {
            Some(group) => group.push(one),
            None => alike.push(vec![one]),
        }
    }
    alike.iter().map(|group| Group::new(group, system, sources)).collect()
}

/// All but the values is the same.
fn same_way(one: &Working, other: &Working) -> bool {
    let mut terms = one.terms.iter().zip(&other.terms);
    one.formula == other.formula
        && one.valid == other.valid
        && one.source == other.source
        && one.terms.len() == other.terms.len()
        && terms.all(|(one, other)| one.symbol == other.symbol && one.name == other.name)
}

impl<'a> Group<'a> {
    fn new(these: &[(&'a str, &'a Working)], system: System, sources: &mut Vec<String>) -> Self {
        let (_, first) = these[0];
        let one_name = these.iter().all(|(_, working)| working.name == first.name);
        let says_it = |label: &str, name: &str| label.starts_with(name);
        let formula: Vec<&str> =
            first.formula.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
        let item = |(label, working): &(&'a str, &'a Working)| Item {
            label,
            name: Some(working.name.as_ref()).filter(|name| !one_name && !says_it(label, name)),
            result: working.result.show(system),
            put_in: Some(working.put_in(system))
                .filter(|put_in| !formula.last().is_some_and(|line| line.ends_with(put_in)))
                .unwrap_or_default(),
        };
        let (common, own): (Vec<_>, Vec<_>) =
            rows(these, system).into_iter().partition(Row::is_one_value);
        let said = these.iter().all(|(label, _)| says_it(label, &first.name));
        Self {
            items: these.iter().map(item).collect(),
            name: Some(first.name.as_ref()).filter(|_| one_name && !said),
            common: common.into_iter().map(|row| row.part(0..1)).collect(),
            runs: runs(&own, these.len()),
            formula,
            valid: first.valid,
            source: place_of(&first.source.to_string(), sources),
        }
    }
}

fn rows<'a>(these: &[(&'a str, &'a Working)], system: System) -> Vec<Row<'a>> {
    let (_, first) = these[0];
    let row = |(place, term): (usize, &'a Term)| Row {
        symbol: term.symbol,
        name: &term.name,
        values: these.iter().map(|(_, of)| of.terms[place].value.show(system)).collect(),
    };
    first.terms.iter().enumerate().map(row).collect()
}

/// Letters of small print in a column.
const LINE: usize = 54;
/// A longer name is broken into lines.
const NAME: usize = 22;

fn runs<'a>(rows: &[Row<'a>], count: usize) -> Vec<Run<'a>> {
    let letters = |text: &str| text.chars().count();
    let names = rows.iter().map(|row| letters(row.name)).max();
    let values = rows.iter().flat_map(|row| &row.values).map(|value| letters(value)).max();
    let (Some(name), Some(value)) = (names, values) else { return Vec::new() };
    let room = ((LINE - name.min(NAME)) / (value + 2)).clamp(1, count);
    let starts = (0..count).step_by(room);
    let run = |from: usize| Run {
        from: from + 1,
        rows: rows.iter().map(|row| row.part(from..count.min(from + room))).collect(),
    };
    starts.map(run).collect()
}

impl Row<'_> {
    fn is_one_value(&self) -> bool {
        self.values.iter().all(|value| *value == self.values[0])
    }

    fn part(&self, places: std::ops::Range<usize>) -> Self {
        Self { values: self.values[places].to_vec(), ..*self }
    }
}

/// The place of `source` in the list, from one; it's added where it is new.
fn place_of(source: &str, sources: &mut Vec<String>) -> usize {
    let known = sources.iter().position(|known| known == source);
    1 + known.unwrap_or_else(|| {
        sources.push(source.to_owned());
        sources.len() - 1
    })
}
