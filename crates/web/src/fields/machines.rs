//! The head of the job and the two machines.

use quantities::Kind;

use super::{Face, Group, Row, site};
use crate::opened::Opened;
use job::file::End;

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let mut groups = vec![job(), duty(opened), machines(opened), asks(), shafts(opened), seldom()];
    groups.push(site::rules());
    groups
}

fn job() -> Group {
    let rows = vec![
        Row::one("Name of the job", "job.title", Face::Words("Sea-water pump 2")),
        Row::one("Number in the book", "job.number", Face::Code("41")),
        Row::one("Works", "job.works", Face::Words("where it stands")),
    ];
    Group::new("The job", "", rows)
}

fn duty(opened: &Opened) -> Group {
    let moves = Face::end(opened, "the").or(&format!("the {}", opened.name(End::Driver)));
    let rows = vec![
        Row::one("Power", "machines.power", Face::Quantity(Kind::Power)),
        Row::one("Speed", "machines.speed", Face::Quantity(Kind::Speed)),
        Row::one("Service factor", "machines.service_factor", Face::Quantity(Kind::Number)),
        Row::one("Temperature of the place", "machines.ambient", Face::Quantity(Kind::Temperature)),
        Row::one("Which machine is moved", "machines.moves", moves),
    ];
    Group::new("What they do", "at the coupling", rows)
}

fn machines(opened: &Opened) -> Group {
    let row = |label: &str, key: &'static str, face: Face| {
        Row::ends(opened, label, move |end| format!("machines.{}.{key}", end.key()), &face)
    };
    let rows = vec![
        row("Short name", "name", Face::Words("motor, pump, …")),
        row("What sort", "sort", Face::Words("electric motor")),
        row("What locks it out", "isolate", Face::Texts("switch 2M; valves shut")),
    ];
    Group::new("The two machines", "the one that drives first", rows)
}

/// What the drive asks of a coupling.
fn asks() -> Group {
    let load = Face::choice(&[
        ("uniform", "steady"),
        ("moderate", "moderate shock"),
        ("heavy", "heavy shock"),
        ("extreme", "extreme shock, or reversing"),
    ]);
    let rows = vec![
        Row::one("How the load runs", "machines.asks.load", load),
        Row::one("Shaft lines stay offset while running", "machines.asks.offset", Face::YesNo),
        Row::one("A shaft moves along its axis", "machines.asks.end_movement", Face::YesNo),
        Row::one("Can be stopped and greased", "machines.asks.grease_service", Face::YesNo),
        Row::one("Stands in heat, above 80 °C or so", "machines.asks.hot_place", Face::YesNo),
        Row::one("Torsional vibration must be damped", "machines.asks.damping", Face::YesNo),
        Row::one("The torque turns round", "machines.reversing", Face::YesNo),
        Row::one("Starts in an hour", "machines.starts", Face::Quantity(Kind::Count)),
        Row::one("Torque while it starts", "machines.start_torque", Face::Quantity(Kind::Torque)),
        Row::one("It starts against its load", "machines.starts_loaded", Face::YesNo),
        Row::one(
            "Torque that swings on, to each side",
            "machines.vibratory_torque",
            Face::Quantity(Kind::Torque),
        ),
        Row::one(
            "How often it swings",
            "machines.vibratory_frequency",
            Face::Quantity(Kind::Speed),
        ),
    ];
    Group::new("What the drive asks", "load, movement, starts", rows).folded()
}

fn shafts(opened: &Opened) -> Group {
    let row = |label: &str, key: &str, kind: Kind| {
        Row::ends_at(opened, label, "machines", key, &Face::Quantity(kind))
    };
    let rows = vec![
        row("Inertia of the rotor", "inertia", Kind::Inertia),
        row("Hub’s middle to nearest bearing", "overhang", Kind::Length),
        row("Most bending moment there", "overhang_limit", Kind::Torque),
        row("Most force along the shaft", "thrust_limit", Kind::Force),
    ];
    let names = End::BOTH.map(|end| opened.name(end).to_owned());
    Group::new("Rotors", "inertia, overhang, thrust", rows).columns(names).folded()
}

fn seldom() -> Group {
    let units = Face::choice(&[("metric", "mm, N·m, °C"), ("inch", "in, lbf·ft, °F")]);
    let rows = vec![
        Row::one("Units of the job", "job.units", units),
        Row::one("Begun on", "job.written", Face::Code("2026-11-25")),
        Row::one("Begun by", "job.by", Face::Words("initials")),
        Row::one("For the next person", "job.note", Face::Words("what they should know")),
        Row::one(
            "Largest torque at start or in a jam",
            "machines.peak_torque",
            Face::Quantity(Kind::Torque),
        ),
        Row::one("Everything here is invented", "job.invented", Face::YesNo),
    ];
    Group::new("More of the job", "units, dates, start-up torque", rows).folded()
}
