//! How the machines stand: feet, growth, base, flange, moves.

use quantities::Kind;

use super::{CORNERS, FEET, Face, Field, Group, LENGTH, OFFSET, Row, SIDES, names_or};
use crate::opened::Opened;
use job::file::End;

/// The foot planes of one machine.
pub(super) struct Planes {
    /// Where their table stands: "lineup.driver.feet".
    pub table: String,
    /// "motor".
    pub name: String,
    /// "front", "rear".
    pub names: Vec<String>,
}

impl Planes {
    pub fn of(opened: &Opened, end: End) -> Self {
        Self::at(opened, &format!("lineup.{}.feet", end.key()), opened.name(end))
    }

    pub fn at(opened: &Opened, table: &str, name: &str) -> Self {
        let names = names_or(opened, table, &FEET);
        Self { table: table.to_owned(), name: name.to_owned(), names }
    }

    /// A row with a field for each foot plane.
    pub fn row(&self, label: &str, key: &str, face: &Face) -> Row {
        let field = |foot: &String| {
            let say = format!("{label}, {foot} feet, {}", self.name);
            Field::new(format!("{}.{foot}.{key}", self.table), say, foot.clone(), face.clone())
        };
        Row::new(label, self.names.iter().map(field).collect())
    }

    pub fn columns(&self) -> Vec<String> {
        self.names.iter().map(|name| format!("{name} feet")).collect()
    }

    pub fn usual(&self) -> Vec<Row> {
        vec![
            self.row("From the coupling’s middle", "at", &LENGTH),
            self.row("Rise when let go, left", "rise.left", &OFFSET),
            self.row("Rise when let go, right", "rise.right", &OFFSET),
            self.row("Growth up, warm", "growth.up", &OFFSET),
            self.row("Shims now under it", "shims", &OFFSET),
        ]
    }

    pub fn seldom(&self) -> Vec<Row> {
        let warmer = Face::Quantity(Kind::TemperatureDifference);
        let mut rows = vec![
            self.row("Shims to shaft’s middle", "growth.height", &LENGTH),
            self.row("Warmer running by", "growth.rise", &warmer),
            self.row("Support is of", "growth.material", &Face::named(tables::materials::names())),
            self.row("Growth to 3 o’clock, warm", "growth.right", &OFFSET),
            self.row("Growth up at start already", "growth.start_up", &OFFSET),
            self.row("Warmer at start by", "growth.start_rise", &warmer),
            self.row("Its pack, shim by shim", "pack", &Face::Quantities(Kind::Offset)),
            self.row("Room sideways", "side_room", &OFFSET),
            self.row("Room to 3 o’clock, if other", "room_right", &OFFSET),
            self.row("Room to 9 o’clock, if other", "room_left", &OFFSET),
        ];
        for side in SIDES {
            rows.push(self.row(
                &format!("Rise with pipes free, {side}"),
                &format!("rise_free.{side}"),
                &OFFSET,
            ));
        }
        for side in SIDES {
            for corner in CORNERS {
                let label = format!("Gap under the {side} foot, {}", corner.replace('-', " "));
                rows.push(self.row(&label, &format!("gaps.{side}.{corner}"), &OFFSET));
            }
        }
        rows
    }

    pub fn moves(&self) -> Vec<Row> {
        vec![
            self.row("Tried on paper: up", "tried.up", &OFFSET),
            self.row("Tried on paper: to 3 o’clock", "tried.right", &OFFSET),
            self.row("Moved: up", "made.up", &OFFSET),
            self.row("Moved: to 3 o’clock", "made.right", &OFFSET),
        ]
    }
}

pub(super) fn feet(opened: &Opened, end: End) -> Group {
    let planes = Planes::of(opened, end);
    let title = format!("Feet of the {}", planes.name);
    Group::new(title, "front is next to the coupling", planes.usual()).columns(planes.columns())
}

pub(super) fn seldom(opened: &Opened, end: End) -> Group {
    let planes = Planes::of(opened, end);
    let mut rows = planes.seldom();
    let one = |label: &str, key: &str, face: Face| {
        let place = format!("lineup.{}.{key}", end.key());
        let say = format!("{label}, {}", planes.name);
        Row::new(label, vec![Field::new(place, say, "", face)])
    };
    rows.push(one("Shaft above the feet", "centre_height", LENGTH));
    rows.push(one("Between left and right feet", "width", LENGTH));
    rows.push(one("May be moved", "moves", Face::YesNo));
    let title = format!("More of the {}’s feet", planes.name);
    let about = "growth from temperature, rooms, soft feet";
    Group::new(title, about, rows).columns(planes.columns()).folded()
}

/// Moves tried and moves made.
pub(super) fn moves(opened: &Opened, end: End) -> Group {
    let planes = Planes::of(opened, end);
    let title = format!("Moves of the {}", planes.name);
    let about = "tried on paper, and made; − is down, or to 9";
    Group::new(title, about, planes.moves()).columns(planes.columns()).folded()
}

/// Base, flange and runout of one machine.
pub(super) fn base(opened: &Opened, end: End) -> Group {
    let name = opened.name(end);
    let one = |label: &str, key: &str, face: Face| {
        let place = format!("lineup.{}.{key}", end.key());
        Row::new(label, vec![Field::new(place, format!("{label}, {name}"), "", face)])
    };
    let mut rows = vec![
        one("Runout of the shaft", "runout.shaft", OFFSET),
        one("Runout of the hub’s rim", "runout.rim", OFFSET),
        one("Runout of the hub’s face", "runout.face", OFFSET),
    ];
    for (what, key) in [("Pad", "pads"), ("Sole", "soles")] {
        for corner in CORNERS {
            let label = format!("{what} height, {}", corner.replace('-', " "));
            rows.push(one(&label, &format!("{key}.{corner}"), OFFSET));
        }
    }
    rows.extend([
        one("Flange: seat from the coupling", "flange.at", LENGTH),
        one("Flange: bolt circle", "flange.circle", LENGTH),
        one("Flange: bolts", "flange.bolts", Face::Quantity(Kind::Count)),
        one("Flange: first bolt at", "flange.first", Face::Code("12")),
        one("Flange: room on its seat", "flange.room", OFFSET),
    ]);
    let about = "hub runout, flatness, a machine on a flange";
    Group::new(format!("Base of the {name}"), about, rows).folded()
}
