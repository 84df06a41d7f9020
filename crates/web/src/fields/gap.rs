//! The gap between the hubs.

use quantities::Kind;

use super::{Face, Field, Group, Row, names_or};
use crate::opened::Opened;
use job::file::End;

/// Clock positions in the order that a hand goes round.
const CLOCK: [&str; 4] = ["12", "3", "6", "9"];

const GAP: Face = Face::Quantity(Kind::Gap);

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let reading = |clock: &String| {
        let say = format!("Gap at {clock} o’clock");
        Row::new(
            format!("{clock} o’clock"),
            vec![Field::new(format!("gap.readings.{clock}"), say, "", GAP)],
        )
    };
    let readings = names_or(opened, "gap.readings", &CLOCK).iter().map(reading).collect();
    let meant = Face::choice(&[("running", "running, warm"), ("standing", "standing, cold")]);
    let wanted = vec![
        Row::one("Gap wanted, with its ±", "gap.wanted", GAP),
        Row::one("The gap is meant", "gap.meant", meant),
        Row::one("Gap found before it came apart", "gap.recorded", GAP),
        Row::one("Shafts grow together by", "gap.shaft_growth", GAP),
        Row::one("End float of a sleeve-bearing motor", "gap.end_float", GAP),
        Row::one("Magnetic centre from the float’s middle", "gap.magnetic_centre", GAP),
    ];
    vec![
        Group::new("Gap measured", "with feelers or a gauge, all round", readings),
        Group::new("Gap wanted", "blank takes the sheet’s", wanted),
        along(opened),
    ]
}

/// What each shaft does along its axis.
fn along(opened: &Opened) -> Group {
    let row = |label: &str, key: &str, kind: Kind| {
        Row::ends_at(opened, label, "gap", key, &Face::Quantity(kind))
    };
    let rows = vec![
        row("Hub stands out of its shaft’s end", "hub_out", Kind::Gap),
        row("Grows towards the coupling", "growth", Kind::Gap),
        row("Thrust bearing to shaft’s end", "length", Kind::Length),
        row("Warmer running by", "rise", Kind::TemperatureDifference),
        row("Casing carries that bearing towards it", "casing", Kind::Offset),
        row("Rotor still moves towards it", "shift", Kind::Gap),
    ];
    let names = End::BOTH.map(|end| opened.name(end).to_owned());
    let about = "hubs that stand out, growth, float";
    Group::new("Along the shafts", about, rows).columns(names).folded()
}
