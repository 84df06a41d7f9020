//! How the hubs come off.

use quantities::Kind;

use super::{Face, Group, Row};

pub(super) fn groups() -> Vec<Group> {
    let rows = vec![
        Row::one("Puller at hand is good for", "removal.puller", Face::Quantity(Kind::Force)),
        Row::one("Margin of puller over pull", "removal.margin", Face::Quantity(Kind::Number)),
        Row::one("Flame or heater is allowed", "removal.heat_allowed", Face::YesNo),
        Row::one(
            "Yield strength of the puller’s studs",
            "removal.stud_yield",
            Face::Quantity(Kind::Stress),
        ),
    ];
    vec![Group::new("Coming off", "", rows)]
}
