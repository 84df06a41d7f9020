//! How the hubs come off, and how the coupling was found.

use quantities::{Kind, Value};

use super::{Face, Field, Group, Row, inspection, names_or};
use crate::opened::Opened;
use job::file::End;

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let rows = vec![
        Row::one("Puller at hand is good for", "removal.puller", Face::Quantity(Kind::Force)),
        Row::one("Flame or heater is allowed", "removal.heat_allowed", Face::YesNo),
        Row::one("Diameter of the puller’s screw", "removal.screw", Face::Quantity(Kind::Length)),
        Row::one("Thread of that screw", "removal.screw_thread", Face::Code("M24")),
        Row::one("Area of the puller’s ram", "removal.ram_area", Face::Quantity(Kind::Area)),
        Row::one(
            "Pressure that ram and pump may have",
            "removal.ram_pressure",
            Face::Quantity(Kind::Pressure),
        ),
        Row::one("Margin of puller over pull", "removal.margin", Face::Quantity(Kind::Number)),
        Row::one(
            "Yield strength of the puller’s studs",
            "removal.stud_yield",
            Face::Quantity(Kind::Stress),
        ),
    ];
    let mut groups =
        vec![Group::new("Coming off", "", rows), heated(opened), holds(opened), near(opened)];
    groups.extend(inspection::groups(opened));
    groups
}

/// Heat to get a hub off; what goes into the metal.
fn heated(opened: &Opened) -> Group {
    let free = Value { kind: Kind::Allowance, si: 0.02e-3, plus_minus: None };
    let power = Face::Quantity(Kind::HeatFlow);
    let rows = vec![
        Row::one("Heat into the body", "removal.power_body", power.clone()),
        Row::one("Heat into flange or gear ring", "removal.power_flange", power.clone()),
        Row::one("Heated for: 5 min", "removal.heat_for", Face::Quantity(Kind::Minutes)),
        Row::one("All the heat at hand: 20 kW", "removal.power_at_hand", power),
        Row::one("To stay open for: 30 s", "removal.window", Face::Quantity(Kind::Time)),
        Row::one(
            &format!("Open means clearance of: {}", free.show(opened.system)),
            "removal.clearance",
            Face::Quantity(Kind::Allowance),
        ),
    ];
    Group::new("Heating it off", "of a gas burner’s heat a third to a half goes in", rows)
}

/// Seals and bearings beside the hubs, which must not get hot.
fn near(opened: &Opened) -> Group {
    let rows = End::BOTH.into_iter().flat_map(|end| {
        let table = format!("removal.{}.near", end.key());
        let machine = opened.name(end).to_owned();
        names_or(opened, &table, &["seal", "bearing"]).into_iter().map(move |part| {
            let field = |key: &str, short: &str, face: Face| {
                let say = format!("{part} of the {machine}, {short}");
                Field::new(format!("{table}.{part}.{key}"), say, short, face)
            };
            let seals = Face::named(tables::seals::all().iter().map(|seal| seal.name));
            let fields = vec![
                field("behind", "behind the hub by", Face::Quantity(Kind::Length)),
                field("material", "made of", seals),
                field("limit", "may get as hot as", Face::Quantity(Kind::Temperature)),
                field("kept", "while it is hot", Face::named(["taken off", "shielded", "left"])),
            ];
            Row::new(format!("{part}, {machine}"), fields)
        })
    });
    Group::new("Near the hubs", "what heat may reach, on as off", rows.collect()).folded()
}

/// What a hub and its shaft end offer to whoever pulls it.
fn holds(opened: &Opened) -> Group {
    let row =
        |label: &str, key: &str, face: &Face| Row::ends_at(opened, label, "removal", key, face);
    let asked = |label: &str, key: &str| row(label, key, &Face::YesNo);
    let rows = vec![
        asked("Threaded puller holes", "puller_holes"),
        row("How many of them", "holes", &Face::Quantity(Kind::Count)),
        row("Their thread", "hole_thread", &Face::Code("M16")),
        row("Thread that is engaged", "hole_depth", &Face::Quantity(Kind::Length)),
        asked("Jaws hold square behind it", "jaws_hold"),
        row("How many jaws", "jaws", &Face::Quantity(Kind::Count)),
        row("Width of a jaw", "jaw_width", &Face::Quantity(Kind::Length)),
        row("How far it grips", "jaw_grip", &Face::Quantity(Kind::Length)),
        row("Thickness of what it holds by", "jaw_on", &Face::Quantity(Kind::Length)),
        asked("Shaft’s end takes the push", "end_takes_push"),
        asked("Room in front for a puller", "room"),
        asked("Port for oil under pressure", "oil_port"),
        asked("On a taper", "tapered"),
        asked("Not used again", "scrap"),
    ];
    let names = End::BOTH.map(|end| format!("{} hub", opened.name(end)));
    Group::new("What there is to pull by", "", rows).columns(names).folded()
}
