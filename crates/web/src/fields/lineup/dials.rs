//! The dials at one coupling.

use quantities::Kind;

use super::{CLOCK, Choice, Face, Field, Group, LENGTH, OFFSET, Row, names_or};
use crate::opened::Opened;
use job::file::{Dial, DialKind, End, Named, Reads};

/// The dials at one coupling: rims before faces, those on the driver's shaft first.
pub(super) struct Set<'a> {
    opened: &'a Opened,
    /// Where the coupling's tables stand: "lineup".
    pub place: String,
    /// What stands behind every field's name, where there are several couplings.
    of: String,
    /// The machines on both sides.
    names: [String; 2],
    pub dials: Vec<(String, Dial)>,
}

impl<'a> Set<'a> {
    pub fn of_job(opened: &'a Opened) -> Self {
        let names = End::BOTH.map(|end| opened.name(end).to_owned());
        Self::new(opened, "lineup", String::new(), names, &opened.job.file.lineup.dials)
    }

    pub fn new(
        opened: &'a Opened,
        place: &str,
        of: String,
        names: [String; 2],
        dials: &Named<Dial>,
    ) -> Self {
        let mut dials: Vec<(String, Dial)> =
            dials.iter().map(|(name, dial)| (name.clone(), dial.clone())).collect();
        dials.sort_by_key(|(_, dial)| (dial.rides_on == End::Driven, dial.kind == DialKind::Face));
        Self { opened, place: place.to_owned(), of, names, dials }
    }

    /// "on the pump rim, rides on the motor": by what it reads and what carries it.
    pub fn words(&self, dial: &Dial) -> String {
        let part = match dial.kind {
            DialKind::Rim => "rim",
            DialKind::Face => "face",
        };
        let name = |end: End| self.names[usize::from(end == End::Driven)].as_str();
        let read = match dial.reads {
            Some(Reads::Spool) => "spool",
            Some(Reads::Driver) => name(End::Driver),
            Some(Reads::Driven) => name(End::Driven),
            None => name(dial.rides_on.other()),
        };
        format!("on the {read} {part}, rides on the {}", name(dial.rides_on))
    }

    /// A row with a field for each dial.
    fn row(&self, label: &str, key: &str, face: &Face) -> Row {
        self.row_at(label, "dials", key, face)
    }

    /// The same in another table of the coupling.
    pub fn row_at(&self, label: &str, table: &str, key: &str, face: &Face) -> Row {
        let as_left = if table == "dials" { "" } else { ", as left" };
        let field = |(name, dial): &(String, Dial)| {
            let words = self.words(dial);
            // Two dials may stand alike, half a turn apart: then their names tell them apart.
            let alike = self.dials.iter().filter(|(_, other)| self.words(other) == words).count();
            let words = if alike > 1 { format!("{words}, {name}") } else { words };
            let place = format!("{}.{table}.{name}.{key}", self.place);
            let say = format!("{label}, dial {words}{}{as_left}", self.of);
            Field::new(place, say, words, face.clone())
        };
        Row::new(label, self.dials.iter().map(field).collect())
    }

    pub fn columns(&self) -> Vec<String> {
        self.dials.iter().map(|(_, dial)| self.words(dial)).collect()
    }

    pub fn set_up(&self) -> Group {
        let mut rows = vec![self.row("Stem from the coupling’s middle", "at", &LENGTH)];
        if self.dials.iter().any(|(_, dial)| dial.kind == DialKind::Face) {
            let mut swing = self.row("Diameter the stem sweeps", "swing", &LENGTH);
            let faces = self.dials.iter().map(|(_, dial)| dial.kind == DialKind::Face);
            let kept = swing.fields.into_iter().zip(faces).filter(|(_, is_face)| *is_face);
            swing.fields = kept.map(|(field, _)| field).collect();
            for field in &mut swing.fields {
                "face dial".clone_into(&mut field.short);
            }
            rows.push(swing);
        }
        rows.push(self.row("Sag, half of what the bottom shows", "sag", &OFFSET));
        Group::new(format!("Setting up{}", self.of), "distances along the shaft are positive", rows)
            .columns(self.columns())
    }

    /// The clock positions at which any of them was read.
    pub fn clocks(&self, table: &str) -> Vec<String> {
        let mut clocks: Vec<String> = Vec::new();
        for (name, _) in &self.dials {
            let place = format!("{}.{table}.{name}.readings", self.place);
            clocks.extend(names_or(self.opened, &place, &CLOCK));
        }
        clocks.sort_by_key(|clock| (super::super::order(clock, &CLOCK), clock.clone()));
        clocks.dedup();
        clocks
    }

    pub fn sweep(&self) -> Group {
        let clocks = self.clocks("dials");
        let read = |clock: &String| {
            self.row(&format!("{clock} o’clock"), &format!("readings.{clock}"), &OFFSET)
        };
        let mut rows: Vec<Row> = clocks.iter().map(read).collect();
        rows.push(self.row("12 again", "back", &OFFSET));
        Group::new(format!("Sweep{}", self.of), "a stem pushed in reads more", rows)
            .columns(self.columns())
    }

    pub fn seldom(&self) -> Group {
        let kind = Face::choice(&[("rim", "rim"), ("face", "face")]);
        let [one, other] = &self.names;
        let ends = [("driver", one), ("driven", other)];
        let named = |words: &str| {
            let choice = |(key, name): (&str, &String)| Choice::new(key, format!("{words} {name}"));
            ends.map(choice).to_vec()
        };
        let mut reads = named("the");
        reads.push(Choice::new("spool", "the spool"));
        let view = vec![
            Choice::new("from-driver", format!("behind the {one}")),
            Choice::new("from-driven", format!("behind the {other}")),
        ];
        let either = |a: (&str, &str), b: (&str, &str)| Face::choice(&[a, b]).or(a.1);
        let row = |label: &str, key: &str, face: &Face| self.row(label, key, face);
        let mut rows = vec![
            row("What it reads", "kind", &kind),
            row("What it rides on", "rides_on", &Face::Choice(named("the"), String::new())),
            row("Whose hub it reads", "reads", &Face::Choice(reads, "(the other one’s)".into())),
            row(
                "Where the reader stood",
                "view",
                &Face::Choice(view, format!("(behind the {one})")),
            ),
            row("± of one reading", "spread", &Face::Quantity(Kind::Allowance)),
            row("What it can be read to", "division", &Face::Quantity(Kind::Allowance)),
            row(
                "The pointer rises",
                "rises",
                &either(("pushed-in", "stem pushed in"), ("let-out", "stem let out")),
            ),
            row("Side of the rim", "rim", &either(("outside", "outside"), ("inside", "inside"))),
            row(
                "Side of the face",
                "face",
                &either(("near", "towards its carrier"), ("far", "away from it")),
            ),
            row(
                "Turned",
                "turned",
                &either(("both", "both shafts"), ("carrier", "its carrier alone")),
            ),
            row("Runout of the hub read", "runout", &OFFSET),
            row("Its high spot stood at", "high", &Face::Code("7:30")),
            self.opposite(),
            row("Bottom of the mandrel showed", "mandrel", &OFFSET),
            row("Bracket", "bracket", &Face::Words("long bracket")),
            row("Bar: outside diameter", "bar.outside", &LENGTH),
            row("Bar: inside, of a tube", "bar.inside", &LENGTH),
            row("Bar: clamp to dial", "bar.length", &LENGTH),
            row("Bar: mass at its end", "bar.end_mass", &Face::Quantity(Kind::Mass)),
        ];
        rows.extend(self.again());
        let about = "kind, viewpoint, ±, bar for the sag, further sweeps";
        Group::new(format!("More of the dials{}", self.of), about, rows).columns(self.columns())
    }

    /// For each dial, which of the others reads half a turn away; nothing where it is alone.
    fn opposite(&self) -> Row {
        let mut row = self.row("The face dial opposite", "opposite", &Face::YesNo);
        let name = |at: usize| self.dials[at].0.as_str();
        for (at, field) in row.fields.iter_mut().enumerate() {
            let others = (0..self.dials.len()).filter(|other| *other != at);
            field.face = Face::named(others.map(name)).or("none");
        }
        if self.dials.len() < 2 {
            row.fields.clear();
        }
        row
    }

    /// Further sweeps, the next one always open.
    fn again(&self) -> Vec<Row> {
        let mut numbers: Vec<String> = Vec::new();
        for (name, _) in &self.dials {
            let place = format!("{}.dials.{name}.again", self.place);
            numbers.extend(names_or(self.opened, &place, &["2"]));
        }
        numbers.sort();
        numbers.dedup();
        let clocks = self.clocks("dials");
        let row = |(number, clock): (&String, &String)| {
            let label = format!("Sweep {number}, {clock} o’clock");
            self.row(&label, &format!("again.{number}.{clock}"), &OFFSET)
        };
        numbers
            .iter()
            .flat_map(|number| clocks.iter().map(move |clock| (number, clock)))
            .map(row)
            .collect()
    }
}
