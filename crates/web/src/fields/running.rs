//! The first run.

use quantities::Kind;

use super::{Face, Group, Row};

pub(super) fn groups() -> Vec<Group> {
    let rows = vec![
        Row::one("Has run for", "running.ran_for", Face::Hours),
        Row::one("Vibration, largest, r.m.s.", "running.vibration", Face::Quantity(Kind::Velocity)),
        Row::one(
            "Outside of the coupling",
            "running.temperature",
            Face::Quantity(Kind::Temperature),
        ),
    ];
    vec![Group::new("First run", "guard on before it turns", rows)]
}
