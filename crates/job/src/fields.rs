//! The fields of a table, as its schema names them: to be read out, or to be filled in by hand.

use std::fmt::Write as _;

use schemars::JsonSchema;
use serde::Serialize;
use serde_json::{Map, Value as Json};

/// One field: what it is, and what was written in it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct FieldLine {
    /// Its place: `gap.hub_faces`.
    pub place: String,
    /// What it is, in the words of the schema.
    pub what: String,
    /// As it was entered; empty when nothing was.
    pub says: String,
    /// What stands for nothing in it, as TOML has it.
    pub empty: &'static str,
}

impl FieldLine {
    /// The table that it stands in, as a heading: `set_screws` as “Set screws”, `allows.fitting` as
    /// “Allows, fitting”; none for one that stands in no table.
    pub fn group(&self) -> Option<String> {
        let (group, _) = self.place.rsplit_once('.')?;
        let words = group.replace('_', " ").replace('.', ", ");
        let mut letters = words.chars();
        letters.next().map(|first| first.to_uppercase().chain(letters).collect())
    }
}

/// Every field in order, plain ones before tables.
pub(crate) fn lines<T: JsonSchema + Serialize>(table: &T) -> Vec<FieldLine> {
    let schema = schemars::schema_for!(T).to_value();
    let said = serde_json::to_value(table).unwrap_or_default();
    let mut lines = Vec::new();
    collect(&schema, &schema, &said, "", &mut lines);
    lines.sort_by_key(|line| line.place.contains('.'));
    lines
}

/// TOML of an empty table: every field with what it is, each behind a #.
pub(crate) fn blank(root: &str, lines: &[FieldLine]) -> String {
    let mut out = format!("[{root}]\n");
    let mut table = "";
    for line in lines {
        let (under, key) = line.place.rsplit_once('.').unwrap_or(("", &line.place));
        if under != table {
            let _ = write!(out, "\n[{root}.{under}]\n");
            table = under;
        }
        let _ = write!(out, "# {}\n# {key} = {}\n", line.what, line.empty);
    }
    out
}

fn collect(root: &Json, schema: &Json, said: &Json, under: &str, lines: &mut Vec<FieldLine>) {
    let nothing = Map::new();
    for (key, field) in schema["properties"].as_object().unwrap_or(&nothing) {
        let place = if under.is_empty() { key.clone() } else { format!("{under}.{key}") };
        match inner(root, field) {
            Some(inner) => collect(root, inner, &said[key], &place, lines),
            None => lines.push(FieldLine {
                place,
                what: field["description"].as_str().unwrap_or_default().replace('\n', " "),
                says: written(&said[key]),
                empty: empty(field),
            }),
        }
    }
}

/// The table that a field holds; none where it holds a value.
fn inner<'a>(root: &'a Json, field: &'a Json) -> Option<&'a Json> {
    let name = field["$ref"].as_str()?.strip_prefix("#/$defs/")?;
    let found = &root["$defs"][name];
    found["properties"].is_object().then_some(found)
}

fn empty(field: &Json) -> &'static str {
    let kind = &field["type"];
    match kind.as_str().or_else(|| kind[0].as_str()) {
        Some("array") => "[]",
        Some("boolean") => "false",
        Some("object") => "{}",
        _ => "\"\"",
    }
}

fn written(value: &Json) -> String {
    match value {
        Json::String(text) => text.clone(),
        Json::Number(number) => number.to_string(),
        Json::Bool(true) => "yes".to_owned(),
        Json::Bool(false) => "no".to_owned(),
        Json::Array(list) => list.iter().map(written).collect::<Vec<_>>().join(", "),
        Json::Object(named) => {
            let named = named.iter().map(|(name, value)| format!("{name}: {}", written(value)));
            named.collect::<Vec<_>>().join("; ")
        }
        Json::Null => String::new(),
    }
}
