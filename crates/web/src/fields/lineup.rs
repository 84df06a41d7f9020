//! Dials, distances, feet, growth and shims.

use quantities::Kind;

use super::{Choice, Face, Field, Group, Row, names_or};
use crate::opened::Opened;
use job::file::{Dial, DialKind, End};

/// Clock positions in the order that shafts are turned.
const CLOCK: [&str; 4] = ["12", "3", "6", "9"];
const FEET: [&str; 2] = ["front", "rear"];

const OFFSET: Face = Face::Quantity(Kind::Offset);
const LENGTH: Face = Face::Quantity(Kind::Length);

/// Sets of dials that a sweep can begin with: key, and what it is called.
pub(crate) const TEMPLATES: [(&str, &str); 3] = [
    ("reverse", "two rim dials, one on each shaft"),
    ("rim-and-face", "rim and face, both on the driver’s shaft"),
    ("rim-and-face-back", "rim and face, both on the driven shaft"),
];

/// What a set of dials writes: places and words.
pub(crate) fn template(opened: &Opened, key: &str) -> Vec<(String, &'static str)> {
    let dials: &[(&str, End)] = match key {
        "reverse" => &[("rim", End::Driver), ("rim", End::Driven)],
        "rim-and-face" => &[("rim", End::Driver), ("face", End::Driver)],
        "rim-and-face-back" => &[("rim", End::Driven), ("face", End::Driven)],
        _ => &[],
    };
    let written = dials.iter().flat_map(|&(kind, rides_on)| {
        let dial = format!("lineup.dials.{}-{kind}", plain_name(opened, rides_on.other()));
        [(format!("{dial}.kind"), kind), (format!("{dial}.rides_on"), rides_on.key())]
    });
    written.collect()
}

/// The machine's short name, as a key can be: "motor", "fan-2".
fn plain_name(opened: &Opened, end: End) -> String {
    let plain = |name: &str| {
        let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
        name.chars().map(plain).collect::<String>()
    };
    let (this, other) = (plain(opened.name(end)), plain(opened.name(end.other())));
    let tells = this != other && this.contains(|c: char| c.is_ascii_alphanumeric());
    if tells { this } else { end.key().to_owned() }
}

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let moves = opened.job.file.machines.moves;
    let mut groups = Vec::new();
    if !dials(opened).is_empty() {
        groups.extend([set_up(opened), sweep(opened)]);
    }
    groups.push(feet(opened, moves));
    if !dials(opened).is_empty() {
        groups.push(dials_seldom(opened));
    }
    groups.extend([feet_seldom(opened, moves), feet(opened, moves.other()).folded()]);
    groups.extend([feet_seldom(opened, moves.other()), limits(), typed()]);
    groups
}

/// The dials, rims before faces, those on the driver's shaft first.
fn dials(opened: &Opened) -> Vec<(&String, &Dial)> {
    let mut dials: Vec<_> = opened.job.file.lineup.dials.iter().collect();
    dials.sort_by_key(|(_, dial)| (dial.rides_on == End::Driven, dial.kind == DialKind::Face));
    dials
}

/// "on the pump rim, rides on the motor": by what it reads and what carries it.
fn dial_words(opened: &Opened, dial: &Dial) -> String {
    let part = match dial.kind {
        DialKind::Rim => "rim",
        DialKind::Face => "face",
    };
    let (read, carrier) = (opened.name(dial.rides_on.other()), opened.name(dial.rides_on));
    format!("on the {read} {part}, rides on the {carrier}")
}

/// A row with a field for each dial.
fn dial_row(opened: &Opened, label: &str, key: &str, face: &Face) -> Row {
    let field = |(name, dial): (&String, &Dial)| {
        let words = dial_words(opened, dial);
        let place = format!("lineup.dials.{name}.{key}");
        Field::new(place, format!("{label}, dial {words}"), words, face.clone())
    };
    Row::new(label, dials(opened).into_iter().map(field).collect())
}

fn dial_columns(opened: &Opened) -> Vec<String> {
    dials(opened).into_iter().map(|(_, dial)| dial_words(opened, dial)).collect()
}

fn set_up(opened: &Opened) -> Group {
    let mut rows = vec![dial_row(opened, "Stem from the coupling’s middle", "at", &LENGTH)];
    if dials(opened).iter().any(|(_, dial)| dial.kind == DialKind::Face) {
        let mut swing = dial_row(opened, "Diameter the stem sweeps", "swing", &LENGTH);
        let faces = dials(opened);
        let is_face = |field: &Field| {
            let of = |name: &str| format!("lineup.dials.{name}.swing");
            faces.iter().any(|(name, dial)| of(name) == field.place && dial.kind == DialKind::Face)
        };
        swing.fields.retain(is_face);
        for field in &mut swing.fields {
            "face dial".clone_into(&mut field.short);
        }
        rows.push(swing);
    }
    rows.push(dial_row(opened, "Sag, half of what the bottom shows", "sag", &OFFSET));
    Group::new("Setting up", "distances along the shaft are positive", rows)
        .columns(dial_columns(opened))
}

fn sweep(opened: &Opened) -> Group {
    let mut clocks: Vec<String> = Vec::new();
    for (name, _) in dials(opened) {
        clocks.extend(names_or(opened, &format!("lineup.dials.{name}.readings"), &CLOCK));
    }
    clocks.sort_by_key(|clock| (super::order(clock, &CLOCK), clock.clone()));
    clocks.dedup();
    let mut rows: Vec<Row> = clocks
        .iter()
        .map(|clock| {
            dial_row(opened, &format!("{clock} o’clock"), &format!("readings.{clock}"), &OFFSET)
        })
        .collect();
    rows.push(dial_row(opened, "12 again", "back", &OFFSET));
    let about = "a stem pushed in reads more";
    Group::new("Sweep", about, rows).columns(dial_columns(opened))
}

fn dials_seldom(opened: &Opened) -> Group {
    let kind = Face::choice(&[("rim", "rim"), ("face", "face")]);
    let rides_on = Face::end(opened, "the");
    let side = Face::choice(&[("outside", "outside"), ("inside", "inside")]).or("outside");
    let view = Face::Choice(
        vec![
            Choice::new("from-driver", format!("behind the {}", opened.name(End::Driver))),
            Choice::new("from-driven", format!("behind the {}", opened.name(End::Driven))),
        ],
        format!("(behind the {})", opened.name(End::Driver)),
    );
    let row = |label: &str, key: &str, face: &Face| dial_row(opened, label, key, face);
    let rows = vec![
        row("What it reads", "kind", &kind),
        row("What it rides on", "rides_on", &rides_on),
        row("Where the reader stood", "view", &view),
        row("± of one reading", "spread", &Face::Quantity(Kind::Allowance)),
        row("Side of the rim", "rim", &side),
        row("Bar: outside diameter", "bar.outside", &LENGTH),
        row("Bar: inside, of a tube", "bar.inside", &LENGTH),
        row("Bar: clamp to dial", "bar.length", &LENGTH),
        row("Bar: mass at its end", "bar.end_mass", &Face::Quantity(Kind::Mass)),
    ];
    let about = "kind, viewpoint, ±, bar for the sag";
    Group::new("More of the dials", about, rows).columns(dial_columns(opened)).folded()
}

/// A row with a field for each foot plane.
fn foot_row(opened: &Opened, end: End, label: &str, key: &str, face: &Face) -> Row {
    let name = opened.name(end);
    let table = format!("lineup.{}.feet", end.key());
    let field = |foot: &String| {
        let say = format!("{label}, {foot} feet, {name}");
        Field::new(format!("{table}.{foot}.{key}"), say, foot.clone(), face.clone())
    };
    Row::new(label, names_or(opened, &table, &FEET).iter().map(field).collect())
}

fn foot_columns(opened: &Opened, end: End) -> Vec<String> {
    let names = names_or(opened, &format!("lineup.{}.feet", end.key()), &FEET);
    names.into_iter().map(|name| format!("{name} feet")).collect()
}

fn feet(opened: &Opened, end: End) -> Group {
    let row = |label: &str, key: &str, face: &Face| foot_row(opened, end, label, key, face);
    let rows = vec![
        row("From the coupling’s middle", "at", &LENGTH),
        row("Rise when let go, left", "rise.left", &OFFSET),
        row("Rise when let go, right", "rise.right", &OFFSET),
        row("Growth up, warm", "growth.up", &OFFSET),
        row("Shims now under it", "shims", &OFFSET),
    ];
    let title = format!("Feet of the {}", opened.name(end));
    Group::new(title, "front is next to the coupling", rows).columns(foot_columns(opened, end))
}

fn feet_seldom(opened: &Opened, end: End) -> Group {
    let row = |label: &str, key: &str, face: &Face| foot_row(opened, end, label, key, face);
    let rows = vec![
        row("Shims to shaft’s middle", "growth.height", &LENGTH),
        row("Warmer running by", "growth.rise", &Face::Quantity(Kind::TemperatureDifference)),
        row("Support is of", "growth.material", &Face::named(tables::materials::names())),
        row("Room sideways", "side_room", &OFFSET),
    ];
    let mut rows = rows;
    let place = format!("lineup.{}.centre_height", end.key());
    let say = format!("Height of the shaft above the feet, {}", opened.name(end));
    rows.push(Row::new("Shaft above the feet", vec![Field::new(place, say, "", LENGTH)]));
    let title = format!("More of the {}’s feet", opened.name(end));
    let about = "growth from temperature, room sideways";
    Group::new(title, about, rows).columns(foot_columns(opened, end)).folded()
}

fn limits() -> Group {
    let rows = vec![
        Row::one("The site’s limit on the offset", "lineup.limits.offset", OFFSET),
        Row::one(
            "The site’s limit on the slope",
            "lineup.limits.slope",
            Face::Quantity(Kind::Slope),
        ),
        Row::one("Diameter for comparing the gap", "lineup.gap_diameter", LENGTH),
        Row::one("Shim stock", "lineup.shims.stock", Face::Quantities(Kind::Offset)),
        Row::one("Most shims under one foot", "lineup.shims.most", Face::Quantity(Kind::Number)),
    ];
    Group::new("Limits and shims", "the site’s own, where it has them", rows).folded()
}

fn typed() -> Group {
    let slope = Face::Quantity(Kind::Slope);
    let rows = vec![
        Row::one("Offset up at the coupling’s middle", "lineup.typed.up", OFFSET),
        Row::one("Offset to 3 o’clock", "lineup.typed.right", OFFSET),
        Row::one("Slope up, driver to driven", "lineup.typed.slope_up", slope.clone()),
        Row::one("Slope to 3 o’clock, driver to driven", "lineup.typed.slope_right", slope),
    ];
    let about = "offsets and slopes that it gave, instead of dials";
    Group::new("From another instrument", about, rows).folded()
}
