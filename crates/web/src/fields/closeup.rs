//! Bolts and grease as the job has them.

use quantities::Kind;

use super::{Face, Field, Group, Row, names_or, sheet, site};
use crate::opened::Opened;

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let torque = Face::Quantity(Kind::Torque);
    let nut = "Running torque of a self-locking nut";
    let rows = vec![
        Row::one("Threads", "closeup.threads", sheet::threads()),
        Row::one(nut, "closeup.prevailing_torque", torque.clone()),
        Row::one("Torque put on", "closeup.torque_done", torque),
        Row::one("Grease put in", "closeup.grease_used", Face::Words("name and amount")),
        Row::one("Closed up on", "closeup.closed", Face::Code("2026-11-25")),
    ];
    vec![
        Group::new("Bolts and grease", "as this job has them", rows),
        rooms(opened),
        site::holds(opened),
    ]
}

/// Rings of free space, for a filling that the sheet does not give.
fn rooms(opened: &Opened) -> Group {
    let row = |name: &String| {
        let field = |key: &str, short: &str| {
            let say = format!("Free space {name}, {short}");
            let place = format!("closeup.rooms.{name}.{key}");
            Field::new(place, say, short, Face::Quantity(Kind::Length))
        };
        let fields =
            vec![field("inside", "inside"), field("outside", "outside"), field("length", "length")];
        Row::new(format!("Ring {name}"), fields)
    };
    let rows = names_or(opened, "closeup.rooms", &["1", "2"]).iter().map(row).collect();
    Group::new("Free space for grease", "measured, where the sheet gives no filling", rows).folded()
}
