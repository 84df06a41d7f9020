//! Dials, distances, feet, growth and shims; what is looked at before, and what is read after; the
//! rest of the train.

mod dials;
mod feet;
mod rest;
mod train;

use quantities::Kind;

use super::{Choice, Face, Field, Group, Row, names_or};
use crate::opened::Opened;
use job::file::End;

/// Clock positions in the order that shafts are turned.
const CLOCK: [&str; 4] = ["12", "3", "6", "9"];
const FEET: [&str; 2] = ["front", "rear"];
const CORNERS: [&str; 4] = ["front-left", "rear-left", "rear-right", "front-right"];
const SIDES: [&str; 2] = ["left", "right"];

const OFFSET: Face = Face::Quantity(Kind::Offset);
const LENGTH: Face = Face::Quantity(Kind::Length);
const SLOPE: Face = Face::Quantity(Kind::Slope);

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
    let own = dials::Set::of_job(opened);
    let mut groups = Vec::new();
    if !own.dials.is_empty() {
        groups.extend([own.set_up(), own.sweep()]);
    }
    groups.push(feet::feet(opened, moves));
    if !own.dials.is_empty() {
        groups.push(own.seldom().folded());
    }
    groups.extend([feet::seldom(opened, moves), feet::feet(opened, moves.other()).folded()]);
    groups.push(feet::seldom(opened, moves.other()));
    groups.extend(rest::before(opened));
    groups.extend(End::BOTH.map(|end| feet::base(opened, end)));
    groups.extend(End::BOTH.map(|end| feet::moves(opened, end)));
    groups.push(rest::rough(opened));
    groups.push(rest::typed("lineup.typed", "From another instrument", "instead of dials", opened));
    groups.extend(rest::as_left(opened, &own));
    groups.push(rest::limits());
    groups.extend(rest::visits(opened));
    groups.extend(train::groups(opened));
    groups
}
