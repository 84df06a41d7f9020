//! How the hubs are made hot.

use quantities::Kind;

use super::{Face, Group, Row};

pub(super) fn groups() -> Vec<Group> {
    let method = Face::named(["oven", "induction", "oil bath", "torch"]);
    let warmth = Face::Quantity(Kind::Temperature);
    let difference = Face::Quantity(Kind::TemperatureDifference);
    let rows = vec![
        Row::one("How the hub is heated", "heat.method", method),
        Row::one(
            "Clearance wanted while it slides",
            "heat.clearance",
            Face::Quantity(Kind::Allowance),
        ),
        Row::one("Lost from heater to shaft", "heat.loss", difference),
        Row::one("The site’s limit on the hub", "heat.limit", warmth.clone()),
        Row::one("Shaft, where it is cooled", "heat.shaft_temperature", warmth),
        Row::one("Seals that stay in or touch the hub", "heat.seals_left", Face::Texts("nitrile")),
    ];
    vec![Group::new("Heating", "blank takes the common value, and says so", rows)]
}
