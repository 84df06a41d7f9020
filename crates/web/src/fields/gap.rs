//! The gap between the hubs.

use quantities::Kind;

use super::{Face, Field, Group, Row, names_or};
use crate::opened::Opened;

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
    let wanted = vec![
        Row::one("Gap wanted, with its ±", "gap.wanted", GAP),
        Row::one("Gap found before it came apart", "gap.recorded", GAP),
        Row::one("Shafts grow together by", "gap.shaft_growth", GAP),
        Row::one("End float of a sleeve-bearing motor", "gap.end_float", GAP),
    ];
    vec![
        Group::new("Gap measured", "with feelers or a gauge, all round", readings),
        Group::new("Gap wanted", "blank takes the sheet’s", wanted),
    ]
}
