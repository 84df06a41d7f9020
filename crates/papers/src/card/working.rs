//! The working of every number, stage by stage.
//!
//! Numbers that were found the same way (both bores, all feet) share one block: formula, range and
//! names once, and a column of values each.

use job::plan::{Number, Plan};
use quantities::{System, Working};
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
    formula: Vec<&'static str>,
    /// What is the same for all of them.
    common: Vec<Row<'a>>,
    /// What differs, two of them side by side.
    pairs: Vec<Pair<'a>>,
    valid: &'static str,
    /// Place in the list of sources, from one.
    source: usize,
}

#[derive(Serialize)]
struct Item<'a> {
    /// The number it is the working of: "Mean bore, motor hub".
    label: &'a str,
    /// What was worked out, where the label doesn't say the same: "Mean size at 20 °C".
    name: Option<&'a str>,
    result: String,
    put_in: String,
}

/// Two neighbours of a group, or the last one alone.
#[derive(Serialize)]
struct Pair<'a> {
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
    let named = |working: &Working| -> Vec<(&str, String)> {
        working.terms.iter().map(|term| (term.symbol, term.name.clone())).collect()
    };
    one.formula == other.formula
        && one.valid == other.valid
        && one.source == other.source
        && named(one) == named(other)
}

impl<'a> Group<'a> {
    fn new(these: &[(&'a str, &'a Working)], system: System, sources: &mut Vec<String>) -> Self {
        let (_, first) = these[0];
        let item = |(label, working): &(&'a str, &'a Working)| Item {
            label,
            name: Some(working.name.as_str()).filter(|name| name != label),
            result: working.result.show(system),
            put_in: working.put_in(system),
        };
        let rows: Vec<Row> = first
            .terms
            .iter()
            .enumerate()
            .map(|(place, term)| Row {
                symbol: term.symbol,
                name: &term.name,
                values: these.iter().map(|(_, of)| of.terms[place].value.show(system)).collect(),
            })
            .collect();
        let (common, own): (Vec<_>, Vec<_>) =
            rows.into_iter().partition(|row| row.values.iter().all(|v| *v == row.values[0]));
        Self {
            items: these.iter().map(item).collect(),
            formula: first.formula.lines().map(str::trim).filter(|l| !l.is_empty()).collect(),
            common: common.into_iter().map(|row| row.part(0..1)).collect(),
            pairs: if own.is_empty() { Vec::new() } else { pairs(&own, these.len()) },
            valid: first.valid,
            source: place_of(&first.source.to_string(), sources),
        }
    }
}

fn pairs<'a>(rows: &[Row<'a>], count: usize) -> Vec<Pair<'a>> {
    let starts = (0..count).step_by(2);
    starts
        .map(|from| Pair {
            from: from + 1,
            rows: rows.iter().map(|row| row.part(from..count.min(from + 2))).collect(),
        })
        .collect()
}

impl Row<'_> {
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
