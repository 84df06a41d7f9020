//! How the hubs are made hot.

use quantities::{Kind, Value};

use super::{Face, Field, Group, Row, names_or};
use crate::opened::Opened;

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
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
        Row::one("Heater’s power that goes in", "heat.power", Face::Quantity(Kind::HeatFlow)),
        Row::one("Seals that stay in or touch the hub", "heat.seals_left", Face::Texts("nitrile")),
    ];
    vec![
        Group::new("Heating", "blank takes the common value, and says so", rows),
        assumed(opened),
        expansions(opened),
    ]
}

/// What the flow of heat assumes, the usual figure beside each.
fn assumed(opened: &Opened) -> Group {
    let usual = |kind, si| Value { kind, si, plus_minus: None }.show(opened.system);
    let film = |si| usual(Kind::HeatTransfer, si);
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
        one(&format!("To still air: {}", film(7.0)), "convection", Kind::HeatTransfer),
        one("Emissivity outside: 0.6", "emissivity", Kind::Number),
        one("From the shaft: as from the hub", "shaft_convection", Kind::HeatTransfer),
        one("Emissivity of the shaft: as the hub’s", "shaft_emissivity", Kind::Number),
        one("Round the shaft: as the place", "shaft_air", Kind::Temperature),
        Row::one("The joint conducts by its roughness", "heat.assume.by_roughness", Face::YesNo),
        one(
            &format!("Hardness, with roughness: {}", usual(Kind::Stress, 2e9)),
            "hardness",
            Kind::Stress,
        ),
        one(&format!("Joint just touching: {}", film(3500.0)), "touching", Kind::HeatTransfer),
        one(
            &format!("More at {}: {}", usual(Kind::Stress, 10e6), film(25e3)),
            "pressed",
            Kind::HeatTransfer,
        ),
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
        one(
            &format!("Cool enough to touch: {}", usual(Kind::Temperature, 323.15)),
            "touch",
            Kind::Temperature,
        ),
        one(
            &format!("Lined up within: {} of the place", usual(Kind::TemperatureDifference, 10.0)),
            "line_up_within",
            Kind::TemperatureDifference,
        ),
    ]);
    Group::new("What the seconds assume", "a blank takes the figure beside it", rows).folded()
}

/// Expansion by temperature, where a table of it is at hand.
fn expansions(opened: &Opened) -> Group {
    let reference = Value { kind: Kind::Temperature, si: 293.15, plus_minus: None };
    let from = format!("from {} to", reference.show(opened.system));
    let of = |part: &'static str| {
        let from = from.clone();
        let table = format!("heat.assume.{part}.expansions");
        let rows = names_or(opened, &table, &["1", "2", "3"]);
        rows.into_iter().map(move |row| {
            let field = |key: &str, short: &str, kind: Kind| {
                let say = format!("Expansion of the {part}, row {row}, {short}");
                Field::new(format!("{table}.{row}.{key}"), say, short, Face::Quantity(kind))
            };
            let fields = vec![
                field("temperature", &from, Kind::Temperature),
                field("mean", "mean", Kind::Expansion),
            ];
            Row::new(format!("Of the {part}, row {row}"), fields)
        })
    };
    let about = "outranks the one figure; nothing beyond the last row";
    Group::new("Expansion by temperature", about, of("hub").chain(of("shaft")).collect()).folded()
}
