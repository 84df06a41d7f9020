//! Bores, shafts and keys, station by station.

use quantities::Kind;

use super::{Face, Field, Group, Row, names_or};
use crate::opened::Opened;
use job::file::End;

/// Stations that a bore or a shaft is measured at, as a rule.
const USUAL: [&str; 3] = ["1", "2", "3"];

const SIZE: Face = Face::Quantity(Kind::Size);

/// A bore or a shaft.
#[derive(Clone, Copy)]
enum Part {
    Bore,
    Shaft,
}

impl Part {
    fn key(self) -> &'static str {
        match self {
            Self::Bore => "bore",
            Self::Shaft => "shaft",
        }
    }

    fn title(self) -> &'static str {
        match self {
            Self::Bore => "Bore",
            Self::Shaft => "Shaft",
        }
    }

    /// "motor hub", "motor".
    fn of(self, opened: &Opened, end: End) -> String {
        match self {
            Self::Bore => format!("{} hub", opened.name(end)),
            Self::Shaft => opened.name(end).to_owned(),
        }
    }
}

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let mut groups = vec![common()];
    for end in End::BOTH {
        groups.push(nominal(opened, end));
        groups.extend([Part::Bore, Part::Shaft].map(|part| stations(opened, end, part)));
        groups.push(key(opened, end));
        groups.extend([key_seldom(opened, end), key_balance(opened, end), seldom(opened, end)]);
        groups.extend([turned(opened, end), taper(opened, end)]);
        groups.extend([Part::Bore, Part::Shaft].map(|part| gauge(opened, end, part)));
    }
    groups
}

fn common() -> Group {
    let warmth = Face::Quantity(Kind::Temperature);
    let rows = vec![
        Row::one("Parts, when they were measured", "sizes.temperature", warmth.clone()),
        Row::one("Instruments, if other than the parts", "sizes.instrument_temperature", warmth),
        Row::one(
            "± of a reading that has none of its own",
            "sizes.spread",
            Face::Quantity(Kind::Allowance),
        ),
    ];
    Group::new("Before measuring", "sizes hold at 20 °C", rows)
}

fn nominal(opened: &Opened, end: End) -> Group {
    let name = opened.name(end);
    let say = format!("Nominal size of bore and shaft, {name}");
    let field = Field::new(format!("sizes.{}.nominal", end.key()), say, "", SIZE);
    let row = Row::new("Nominal size", vec![field]);
    Group::new(format!("At the {name}"), "bore and shaft", vec![row])
}

/// Depths in one row, then the readings, so that no reading ever lands among the depths.
fn stations(opened: &Opened, end: End, part: Part) -> Group {
    let table = format!("sizes.{}.{}", end.key(), part.key());
    let of = part.of(opened, end);
    let names = names_or(opened, &table, &USUAL);
    let depth = |name: &String| {
        let say = format!("{}, station {name}, how far in from the face, {of}", part.title());
        Field::new(format!("{table}.{name}.at"), say, name.clone(), Face::Quantity(Kind::Length))
    };
    let mut rows = vec![Row::new("Depth from the face", names.iter().map(depth).collect())];
    rows.extend(names.iter().map(|name| station(&table, part, &of, name)));
    let about = "depths first, then the readings";
    Group::new(format!("{}, {of}", part.title()), about, rows)
}

fn station(table: &str, part: Part, of: &str, name: &str) -> Row {
    let field = |key: &str, short: &str| {
        let say = format!("{}, station {name}, {short}, {of}", part.title());
        Field::new(format!("{table}.{name}.{key}"), say, short, SIZE)
    };
    let fields = vec![field("along", "along the key"), field("across", "across the key")];
    Row::new(format!("Station {name}"), fields)
}

fn key(opened: &Opened, end: End) -> Group {
    let name = opened.name(end);
    let place = |key: &str| format!("sizes.{}.key.{key}", end.key());
    let field = |key: &str, say: &str, short: &str| {
        Field::new(place(key), format!("{say}, {name}"), short, Face::Quantity(Kind::Gap))
    };
    let rows = vec![
        Row::new(
            "Key",
            vec![field("width", "Key width", "width"), field("height", "Key height", "height")],
        ),
        Row::new(
            "Depth of the keyway",
            vec![
                field("shaft_depth", "Depth of the keyway in the shaft", "in the shaft"),
                field("hub_depth", "Depth of the keyway in the hub", "in the hub"),
            ],
        ),
        Row::new("Key length", vec![field("length", "Key length", "")]),
    ];
    Group::new(format!("Key, {name}"), "", rows)
}

fn key_seldom(opened: &Opened, end: End) -> Group {
    let name = opened.name(end);
    let place = |key: &str| format!("sizes.{}.key.{key}", end.key());
    let width = |key: &str, part: &str| {
        let say = format!("Width of the keyway in the {part}, {name}");
        Field::new(place(key), say, format!("in the {part}"), Face::Quantity(Kind::Gap))
    };
    let ends = Face::choice(&[
        ("square", "square at both ends"),
        ("round", "round at both ends"),
        ("half", "round at one end"),
    ]);
    let ends = ends.or("square at both ends");
    let one = |label: &str, key: &str, face: Face| {
        Row::new(label, vec![Field::new(place(key), format!("{label}, {name}"), "", face)])
    };
    let rows = vec![
        Row::new(
            "Width of the keyway",
            vec![width("shaft_width", "shaft"), width("hub_width", "hub")],
        ),
        one("How the key ends", "ends", ends),
        one("Yield strength of the key", "yield_strength", Face::Quantity(Kind::Stress)),
        one("Steel of the key", "steel", Face::named(tables::key_steels::names())),
        one("How many keys", "count", Face::Quantity(Kind::Count)),
        one("Seat of a metric key", "seat", Face::named(["tight", "normal", "free"])),
        one("Class of an inch key’s fit", "fit_class", Face::named(["1", "2"])),
    ];
    Group::new(format!("More of the key, {name}"), "keyway widths, ends, strength", rows).folded()
}

/// What is seldom taken of a key: keyways that lean, their lengths, the force of a set screw.
fn key_balance(opened: &Opened, end: End) -> Group {
    let name = opened.name(end);
    let pair = |label: &str, key: &str, face: &Face| {
        let field = |part: &str| {
            let say = format!("{label} in the {part}, {name}");
            let place = format!("sizes.{}.key.{part}_{key}", end.key());
            Field::new(place, say, format!("in the {part}"), face.clone())
        };
        Row::new(label, vec![field("shaft"), field("hub")])
    };
    let holding = Field::new(
        format!("sizes.{}.key.set_screw_holding", end.key()),
        format!("Force that one set screw holds, {name}"),
        "",
        Face::Quantity(Kind::Force),
    );
    let rows = vec![
        pair("Lean of the keyway over its length", "twist", &Face::Quantity(Kind::Offset)),
        pair("Length of the keyway", "keyway_length", &Face::Quantity(Kind::Length)),
        Row::new("Force that one set screw holds", vec![holding]),
    ];
    let about = "keyways that lean, length for balance, set screw";
    Group::new(format!("Lean and balance of the key, {name}"), about, rows).folded()
}

/// Readings by degrees from the key, across two points and with three.
fn turned(opened: &Opened, end: End) -> Group {
    let mut rows = Vec::new();
    for part in [Part::Bore, Part::Shaft] {
        let of = part.of(opened, end);
        for station in names_or(opened, &format!("sizes.{}.{}", end.key(), part.key()), &USUAL) {
            let table = format!("sizes.{}.{}.{station}", end.key(), part.key());
            for (key, usual, label) in [
                ("around", ["60", "120"], "two points"),
                ("three_point", ["0", "60"], "three points"),
            ] {
                let names = names_or(opened, &format!("{table}.{key}"), &usual);
                let field = |degrees: &String| {
                    let say = format!(
                        "{}, station {station}, {label}, {degrees}° from the key, {of}",
                        part.title()
                    );
                    Field::new(format!("{table}.{key}.{degrees}"), say, format!("{degrees}°"), SIZE)
                };
                let label = format!("{} {station}, {label}", part.title());
                rows.push(Row::new(label, names.iter().map(field).collect()));
            }
        }
    }
    let title = format!("Other directions, {}", opened.name(end));
    Group::new(title, "degrees from the key; three points see three lobes", rows).folded()
}

fn taper(opened: &Opened, end: End) -> Group {
    let name = opened.name(end);
    let one = |label: &str, key: &str, face: Face| {
        let place = format!("sizes.{}.taper.{key}", end.key());
        Row::new(label, vec![Field::new(place, format!("{label}, {name}"), "", face)])
    };
    let rows = vec![
        one("Taper on the diameter", "rate", Face::Code("1:12")),
        one("Shaft at the small end", "small_end", SIZE),
        one("Part that shows blue", "contact", Face::Quantity(Kind::Percent)),
        one("Shaft stands out, metal touching", "stands_out", Face::Quantity(Kind::Offset)),
    ];
    Group::new(format!("Tapered shaft end, {name}"), "taper, contact, where it touches", rows)
        .folded()
}

/// What a part was read with.
fn gauge(opened: &Opened, end: End, part: Part) -> Group {
    let of = part.of(opened, end);
    let (table, tool) = match part {
        Part::Bore => ("bore_gauge", "Bore gauge"),
        Part::Shaft => ("micrometer", "Micrometer"),
    };
    let one = |label: &str, key: &str, face: Face| {
        let place = format!("sizes.{}.{table}.{key}", end.key());
        Row::new(label, vec![Field::new(place, format!("{tool}: {label}, {of}"), "", face)])
    };
    let reads =
        Face::choice(&[("size", "sizes"), ("difference", "differences from what it was set on")]);
    let warmth = Face::Quantity(Kind::Temperature);
    let mut rows = vec![
        one("It reads", "reads", reads),
        one("Set on", "set_on", SIZE),
        one("It read there", "read_there", SIZE),
        one("It touches with", "points", Face::named(["two points", "three points"])),
        one("± of one reading", "spread", Face::Quantity(Kind::Allowance)),
        one("Instrument at", "temperature", warmth.clone()),
        one("Part at", "part_temperature", warmth),
    ];
    if matches!(part, Part::Bore) {
        let label = "Set on the shaft’s micrometer";
        let place = format!("sizes.{}.gauge_on_micrometer", end.key());
        let say = format!("{tool}: {label}, {of}");
        rows.push(Row::new(label, vec![Field::new(place, say, "", Face::YesNo)]));
    }
    Group::new(format!("{tool}, {of}"), "set on a ring, difference readings, temperatures", rows)
        .folded()
}

/// Readings at 45° to the key, and one station more than there are.
fn seldom(opened: &Opened, end: End) -> Group {
    let mut rows = Vec::new();
    for part in [Part::Bore, Part::Shaft] {
        let table = format!("sizes.{}.{}", end.key(), part.key());
        let of = part.of(opened, end);
        let names = names_or(opened, &table, &USUAL);
        let between = |name: &String| {
            let say = format!("{}, station {name}, at 45° to the key, {of}", part.title());
            Field::new(format!("{table}.{name}.between"), say, name.clone(), SIZE)
        };
        rows.push(Row::new(
            format!("{} at 45° to the key", part.title()),
            names.iter().map(between).collect(),
        ));
        let next = next_station(&names);
        let mut more = station(&table, part, &of, &next);
        more.label = format!("{}, station {next}", part.title());
        rows.push(more);
    }
    let title = format!("More readings, {}", opened.name(end));
    Group::new(title, "45° to the key, one more station", rows).folded()
}

fn next_station(names: &[String]) -> String {
    let highest = names.iter().filter_map(|name| name.parse::<u32>().ok()).max().unwrap_or(0);
    highest.saturating_add(1).to_string()
}
