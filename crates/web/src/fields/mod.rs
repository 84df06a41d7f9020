//! The fields of each stage: which place a field writes at, what it is called, and in what order
//! the hand moves from one to the next.
//!
//! Fields are built from the job: the machines' names are in their words, the stations, dials and
//! feet that exist have theirs, and so has the next one. A field that is seldom wanted stands in a
//! folded group, and Enter passes it by.

mod closeup;
mod coupling;
mod fit;
mod gap;
mod heat;
mod inspection;
mod lineup;
mod machines;
mod removal;
mod running;
mod sheet;
mod site;
mod sizes;

use job::Stage;
use job::file::End;
use quantities::{Kind, System};

use crate::opened::Opened;

pub(crate) use lineup::{TEMPLATES, template};
pub(crate) use site::groups as rules;

/// Fields that belong together.
pub(crate) struct Group {
    pub title: String,
    /// One short line beside the title.
    pub about: String,
    /// Heads of the columns, where all rows have the same ones.
    pub columns: Vec<String>,
    pub rows: Vec<Row>,
    /// Seldom wanted: closed until it is opened, and passed by.
    pub folded: bool,
}

/// Fields side by side.
pub(crate) struct Row {
    pub label: String,
    pub fields: Vec<Field>,
}

/// One field.
#[derive(Clone)]
pub(crate) struct Field {
    /// Where it writes.
    pub place: String,
    /// What it is, in full.
    pub say: String,
    /// What stands over it; empty where the row's label is enough.
    pub short: String,
    pub face: Face,
}

/// What is written in a field.
#[derive(Clone)]
pub(crate) enum Face {
    /// A quantity; its unit stands beside it and need not be typed.
    Quantity(Kind),
    /// A time in hours, unless another unit is typed.
    Hours,
    /// Several quantities with semicolons between them.
    Quantities(Kind),
    /// Words, such as these.
    Words(&'static str),
    /// A short text without spaces: a class, a thread, a day.
    Code(&'static str),
    /// Several texts with semicolons between them, such as these.
    Texts(&'static str),
    /// One of these; where nothing is chosen, the words that say what then holds.
    Choice(Vec<Choice>, String),
    /// Yes, no, or not said.
    YesNo,
    /// As many of these as hold, each with a box of its own.
    Several(Vec<Choice>),
}

/// One of several.
#[derive(Clone)]
pub(crate) struct Choice {
    pub value: String,
    pub words: String,
}

/// The fields of a stage, in the order that the hand moves.
pub(crate) fn of(stage: Stage, opened: &Opened) -> Vec<Group> {
    match stage {
        Stage::Machines => machines::groups(opened),
        Stage::Coupling => coupling::groups(opened),
        Stage::Sizes => sizes::groups(opened),
        Stage::Fit => fit::groups(opened),
        Stage::Heat => heat::groups(opened),
        Stage::Gap => gap::groups(opened),
        Stage::Lineup => lineup::groups(opened),
        Stage::Closeup => closeup::groups(opened),
        Stage::Running => running::groups(),
        Stage::Removal => removal::groups(opened),
    }
}

/// Every field of some groups, in order.
pub(crate) fn all(groups: &[Group]) -> impl Iterator<Item = &Field> {
    groups.iter().flat_map(Group::fields)
}

/// The fields that do not stand in a folded group, in order.
pub(crate) fn open(groups: &[Group]) -> impl Iterator<Item = &Field> {
    groups.iter().filter(|group| !group.folded).flat_map(Group::fields)
}

/// What the field at this place is called; the place itself where there is none.
pub(crate) fn say(opened: &Opened, place: &str) -> String {
    let stage = crate::opened::stage_of(place);
    let groups = of(stage, opened);
    let found = all(&groups).find(|field| field.place == place);
    found.map_or_else(|| place.replace('.', ", "), |field| field.say.clone())
}

impl Group {
    fn new(title: impl Into<String>, about: impl Into<String>, rows: Vec<Row>) -> Self {
        let (title, about) = (title.into(), about.into());
        Self { title, about, columns: Vec::new(), rows, folded: false }
    }

    /// Its fields in order.
    pub fn fields(&self) -> impl Iterator<Item = &Field> {
        self.rows.iter().flat_map(|row| &row.fields)
    }

    fn columns(self, columns: impl IntoIterator<Item = String>) -> Self {
        Self { columns: columns.into_iter().collect(), ..self }
    }

    fn folded(self) -> Self {
        Self { folded: true, ..self }
    }
}

impl Row {
    fn new(label: impl Into<String>, fields: Vec<Field>) -> Self {
        Self { label: label.into(), fields }
    }

    /// A row of one field, which is called as the row is.
    fn one(label: &str, place: impl Into<String>, face: Face) -> Self {
        Self::new(label, vec![Field::new(place, label, "", face)])
    }

    /// As [`Row::ends`], with the driver's place given as words before and after its key.
    fn ends_at(opened: &Opened, label: &str, before: &str, after: &str, face: &Face) -> Self {
        Self::ends(opened, label, |end| format!("{before}.{}.{after}", end.key()), face)
    }

    /// A row with a field for the driver's and one for the driven end.
    fn ends(opened: &Opened, label: &str, place: impl Fn(End) -> String, face: &Face) -> Self {
        let field = |end: End| {
            let name = opened.name(end);
            Field::new(place(end), format!("{label}, {name}"), name, face.clone())
        };
        Self::new(label, End::BOTH.map(field).into())
    }
}

impl Field {
    fn new(
        place: impl Into<String>,
        say: impl Into<String>,
        short: impl Into<String>,
        face: Face,
    ) -> Self {
        Self { place: place.into(), say: say.into(), short: short.into(), face }
    }
}

impl Face {
    fn choice(choices: &[(&str, &str)]) -> Self {
        let one = |(value, words): &(&str, &str)| Choice::new(*value, *words);
        Self::Choice(choices.iter().map(one).collect(), String::new())
    }

    /// What holds where nothing is chosen.
    fn or(self, usual: &str) -> Self {
        match self {
            Self::Choice(choices, _) => Self::Choice(choices, format!("({usual})")),
            other => other,
        }
    }

    /// One of the two machines.
    fn end(opened: &Opened, words: &str) -> Self {
        let one = |end: End| Choice::new(end.key(), format!("{words} {}", opened.name(end)));
        Self::Choice(End::BOTH.map(one).into(), String::new())
    }

    fn several(choices: &[(&str, &str)]) -> Self {
        Self::Several(choices.iter().map(|(value, words)| Choice::new(*value, *words)).collect())
    }

    fn named<'a>(names: impl IntoIterator<Item = &'a str>) -> Self {
        let one = |name| Choice::new(name, name);
        Self::Choice(names.into_iter().map(one).collect(), String::new())
    }

    /// The unit that stands beside the field.
    pub fn unit(&self, system: System) -> &'static str {
        match self {
            Self::Quantity(kind) | Self::Quantities(kind) => kind.unit(system).name(),
            Self::Hours => "h",
            _ => "",
        }
    }
}

impl Choice {
    fn new(value: impl Into<String>, words: impl Into<String>) -> Self {
        Self { value: value.into(), words: words.into() }
    }
}

/// The names in a table of the job, or these where there are none yet.
fn names_or(opened: &Opened, place: &str, usual: &[&str]) -> Vec<String> {
    let mut names = opened.names_at(place);
    names.extend(usual.iter().map(|name| (*name).to_owned()));
    names.sort_by_key(|name| order(name, usual));
    names.dedup();
    names
}

/// The usual names in their order, then the others: numbers by their size, words by letter.
fn order(name: &str, usual: &[&str]) -> (usize, u32, String) {
    let place = usual.iter().position(|one| *one == name).unwrap_or(usual.len());
    (place, name.parse().unwrap_or(u32::MAX), name.to_owned())
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use job::{Act, ActError, Written};
    use serde_json::Value as Json;

    use super::*;

    fn opened(text: &str) -> Opened {
        let file = job::read(text).unwrap();
        let id = "0190b3a5-0000-7000-8000-000000000000".parse().unwrap();
        Opened::of(id, records::book_of_file(&file, "R.A."), None, job::plan::Depth::Quick)
    }

    /// One job with dials of both kinds and machines on both sides, and every field that it has.
    fn every_field() -> (Opened, Vec<Field>) {
        let opened = opened(
            r#"
            hubwright = 1
            [job]
            title = "Pump"
            units = "metric"
            [coupling]
            kind = "disc"
            [lineup.dials.pump-rim]
            kind = "rim"
            rides_on = "driver"
            [lineup.dials.pump-face]
            kind = "face"
            rides_on = "driver"
            [lineup.train.before.1]
            name = "turbine"
            [lineup.train.before.1.dials.rim]
            kind = "rim"
            rides_on = "driver"
            [lineup.train.before.1.dials.face]
            kind = "face"
            rides_on = "driver"
            [lineup.train.after.1]
            name = "generator"
            [lineup.train.after.1.dials.rim]
            kind = "rim"
            rides_on = "driver"
            [lineup.train.after.1.dials.face]
            kind = "face"
            rides_on = "driver"
            "#,
        );
        let groups = Stage::ALL.map(|stage| of(stage, &opened));
        let fields = groups.iter().flat_map(|groups| all(groups).cloned()).collect();
        (opened, fields)
    }

    /// Writes what the field shows as an example, in the words of either system.
    fn written(face: &Face, system: System) -> Vec<Written> {
        match face {
            Face::Choice(choices, _) => {
                choices.iter().map(|one| one.value.as_str().into()).collect()
            }
            Face::YesNo => vec![Written::Flag(true), Written::Flag(false)],
            Face::Texts(_) => vec![Written::List(vec!["nitrile".into()])],
            Face::Several(choices) => {
                vec![Written::List(choices.iter().map(|one| one.value.clone()).collect())]
            }
            Face::Quantities(_) => vec![Written::List(vec![example(face, system)])],
            _ => vec![Written::Text(example(face, system))],
        }
    }

    fn example(face: &Face, system: System) -> String {
        match face {
            Face::Quantity(kind) | Face::Quantities(kind) => {
                kind.examples()[usize::from(system == System::Inch)].to_owned()
            }
            Face::Hours => "4 h".to_owned(),
            Face::Code(example) => (*example).to_owned(),
            _ => "some words".to_owned(),
        }
    }

    /// A plain number that was read, and found beyond what its place can hold.
    fn is_plain_number(face: &Face, accepted: &Result<(), ActError>) -> bool {
        let read = matches!(accepted, Err(ActError::Impossible(_)));
        read && matches!(face, Face::Quantity(Kind::Number | Kind::Percent | Kind::Count))
    }

    /// Tries a value at a field; one that can only be below zero there is tried so.
    fn accepts(opened: &Opened, place: &str, value: Written) -> Result<(), ActError> {
        let accepts = |value| opened.job.accepts(&Act::Write { place: place.to_owned(), value });
        let accepted = accepts(value.clone());
        let below = matches!(&accepted, Err(ActError::Impossible(problem))
            if problem.expected.ends_with("negative"));
        match value {
            Written::Text(text) if below => accepts(Written::Text(format!("-{text}"))),
            _ => accepted,
        }
    }

    #[test]
    fn every_field_writes_at_a_place_that_the_job_has() {
        let (opened, fields) = every_field();
        for field in &fields {
            for system in [System::Metric, System::Inch] {
                for value in written(&field.face, system) {
                    let accepted = accepts(&opened, &field.place, value.clone());
                    let reads = accepted.is_ok() || is_plain_number(&field.face, &accepted);
                    assert!(reads, "{} = {value:?}: {accepted:?}", field.place);
                }
            }
        }
    }

    #[test]
    fn a_number_without_its_unit_takes_the_one_beside_the_field() {
        let (opened, fields) = every_field();
        for field in &fields {
            let Face::Quantity(kind) = field.face else { continue };
            for system in [System::Metric, System::Inch] {
                let text = format!("4 {}", kind.unit(system).name());
                let accepted = accepts(&opened, &field.place, text.as_str().into());
                let reads = accepted.is_ok() || is_plain_number(&field.face, &accepted);
                assert!(reads, "{} = {text:?}: {accepted:?}", field.place);
            }
        }
    }

    #[test]
    fn no_two_fields_write_at_one_place_or_are_called_alike() {
        let (_, fields) = every_field();
        let places: BTreeSet<&str> = fields.iter().map(|field| field.place.as_str()).collect();
        assert_eq!(places.len(), fields.len());
        let anchors: BTreeSet<String> =
            fields.iter().map(|field| crate::head::anchor(&field.place)).collect();
        assert_eq!(anchors.len(), fields.len());
        for stage in Stage::ALL {
            let said = fields.iter().filter(|field| crate::opened::stage_of(&field.place) == stage);
            let said: Vec<&str> = said.map(|field| field.say.as_str()).collect();
            let once: BTreeSet<&&str> = said.iter().collect();
            assert_eq!(once.len(), said.len(), "{stage:?}: {said:?}");
        }
    }

    /// What the job file can say can be said in the pages.
    #[test]
    fn every_place_of_the_job_file_has_a_field() {
        let schema = job::schema();
        let (_, fields) = every_field();
        let mut places = BTreeSet::new();
        leaves(&schema, &schema, "", &mut places);
        for field in &fields {
            let plain = canonical(&schema, &field.place);
            places.remove(&plain);
        }
        assert_eq!(places, BTreeSet::new());
    }

    fn resolved<'a>(root: &'a Json, schema: &'a Json) -> &'a Json {
        let any = schema.get("anyOf").and_then(Json::as_array);
        let first = any.and_then(|any| any.iter().find(|one| one["type"] != "null"));
        let schema = first.unwrap_or(schema);
        match schema.get("$ref").and_then(Json::as_str) {
            Some(reference) => {
                let name = reference.rsplit('/').next().unwrap();
                resolved(root, &root["$defs"][name])
            }
            None => schema,
        }
    }

    /// The places at which the schema takes a value; `*` for a name of one's own.
    fn leaves(root: &Json, schema: &Json, path: &str, out: &mut BTreeSet<String>) {
        let schema = resolved(root, schema);
        if matches!(path, "entries" | "hubwright") {
            return;
        }
        let join =
            |key: &str| if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") };
        if let Some(properties) = schema.get("properties").and_then(Json::as_object) {
            for (key, inner) in properties {
                leaves(root, inner, &join(key), out);
            }
        } else if let Some(inner) = schema.get("additionalProperties").filter(|one| one.is_object())
        {
            leaves(root, inner, &join("*"), out);
        } else {
            out.insert(path.to_owned());
        }
    }

    /// The place of a field as `leaves` writes it.
    fn canonical(root: &Json, place: &str) -> String {
        let mut schema = resolved(root, root);
        let mut path = Vec::new();
        for key in place.split('.') {
            if let Some(inner) = schema["properties"].get(key) {
                path.push(key);
                schema = resolved(root, inner);
            } else {
                path.push("*");
                schema = resolved(root, &schema["additionalProperties"]);
            }
        }
        path.join(".")
    }
}
