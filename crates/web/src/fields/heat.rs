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
        Row::one("Time on the way there", "heat.carried", Face::Quantity(Kind::Time)),
        Row::one("The site’s limit on the hub", "heat.limit", warmth.clone()),
        Row::one("Shaft, where it is cooled", "heat.shaft_temperature", warmth.clone()),
        Row::one("Heated to, where it is more than needed", "heat.heated_to", warmth),
        Row::one("Time that getting it home takes", "heat.time_wanted", Face::Quantity(Kind::Time)),
        Row::one("Heater’s power that goes in", "heat.power", Face::Quantity(Kind::Power)),
        Row::one("Seals that stay in or touch the hub", "heat.seals_left", Face::Texts("nitrile")),
    ];
    vec![Group::new("Heating", "blank takes the common value, and says so", rows), assumed()]
}

/// What the flow of heat assumes, the usual figure beside each.
fn assumed() -> Group {
    let quantity = Face::Quantity;
    let metal = |part: &str| {
        let place = move |key: &str| format!("heat.assume.{part}.{key}");
        [
            ("conductivity", Kind::Conductivity),
            ("heat capacity", Kind::HeatCapacity),
            ("density", Kind::Density),
            ("expansion", Kind::Expansion),
            ("modulus", Kind::Stress),
        ]
        .map(|(name, kind)| {
            let label =
                format!("{}’s {name}: by its metal", if part == "hub" { "Hub" } else { "Shaft" });
            Row::one(&label, place(&name.replace(' ', "_")), quantity(kind))
        })
    };
    let one = |label: &str, key: &str, kind: Kind| {
        Row::one(label, format!("heat.assume.{key}"), quantity(kind))
    };
    let mut rows: Vec<Row> = metal("hub").into_iter().chain(metal("shaft")).collect();
    rows.extend([
        one("To the air: 7 W/m²/K, still", "convection", Kind::HeatTransfer),
        one("Emissivity outside: 0.6", "emissivity", Kind::Number),
        one("Joint just touching: 3500 W/m²/K", "touching", Kind::HeatTransfer),
        one("More at 10 MPa: 25 000 W/m²/K", "pressed", Kind::HeatTransfer),
        one("Emissivity of bore and shaft: 0.3", "joint_emissivity", Kind::Number),
        one("What fills the gap conducts: as air", "gap_filling", Kind::Conductivity),
        one("Off the middle, at least: 0", "off_middle_least", Kind::Number),
        one("Off the middle, likely: 0.7", "off_middle", Kind::Number),
        one("Off the middle, at most: 1, resting", "off_middle_greatest", Kind::Number),
        one("Joint conducts less: times 0.8", "conductance_least", Kind::Number),
        one("Joint conducts more: times 1.25", "conductance_greatest", Kind::Number),
        one("Expansion may be off by: 0.03 of it", "expansion_scatter", Kind::Number),
        one("Shaft behind the hub: two diameters", "shaft_behind", Kind::Length),
        one("Shaft beyond its end: none", "shaft_ahead", Kind::Length),
        one("Holds with this share of its grip: 0.5", "grip", Kind::Number),
        one("Cool enough to touch: 50 °C", "touch", Kind::Temperature),
        one("Lined up within: 10 K of the place", "line_up_within", Kind::TemperatureDifference),
    ]);
    Group::new("What the seconds assume", "a blank takes the figure beside it", rows).folded()
}
