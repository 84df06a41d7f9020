//! Further machines of the train: those that are named, and the next one to name.

use quantities::Kind;

use super::dials::Set;
use super::feet::Planes;
use super::{Face, Field, Group, LENGTH, OFFSET, Row, SLOPE, rest};
use crate::opened::Opened;
use job::file::{End, Named, TrainMachine};

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let train = &opened.job.file.lineup.train;
    let mut groups = Vec::new();
    for (side, machines, end) in
        [("before", &train.before, End::Driver), ("after", &train.after, End::Driven)]
    {
        let mut nearer = opened.name(end).to_owned();
        for (number, machine) in machines {
            let name = name(machine, side, number);
            groups.extend(machine_groups(opened, side, number, machine, (&name, &nearer)));
            nearer = name;
        }
        groups.push(next(machines, side, &nearer));
    }
    groups
}

fn name(machine: &TrainMachine, side: &str, number: &str) -> String {
    if machine.name.is_empty() { format!("machine {number} {side}") } else { machine.name.clone() }
}

/// The field that names one more machine.
fn next(machines: &Named<TrainMachine>, side: &str, nearer: &str) -> Group {
    let number = machines.len() + 1;
    let label = format!("Name of the machine beyond the {nearer}");
    let place = format!("lineup.train.{side}.{number}.name");
    let rows = vec![Row::one(&label, place, Face::Words("compressor"))];
    let about = "more of the train, lined up in one with these";
    Group::new(format!("Beyond the {nearer}"), about, rows).folded()
}

fn machine_groups(
    opened: &Opened,
    side: &str,
    number: &str,
    machine: &TrainMachine,
    (name, nearer): (&str, &str),
) -> Vec<Group> {
    let place = format!("lineup.train.{side}.{number}");
    let one = |label: &str, key: &str, face: Face| {
        let say = format!("{label}, {name}");
        Row::new(label, vec![Field::new(format!("{place}.{key}"), say, "", face)])
    };
    let rows = vec![
        one("Name", "name", Face::Words("compressor")),
        one("May be moved", "moves", Face::YesNo),
        one("From coupling to coupling", "coupling_at", LENGTH),
        one("Between flexing planes", "between_planes", LENGTH),
        one("Speed of its coupling", "speed", Face::Quantity(Kind::Speed)),
        one("Limit on its offset", "limits.offset", OFFSET),
        one("Limit on its slope", "limits.slope", SLOPE),
    ];
    let about = format!("coupled to the {nearer}");
    let mut groups = vec![Group::new(format!("Train: {name}"), about, rows).folded()];
    let names = match side {
        "before" => [name.to_owned(), nearer.to_owned()],
        _ => [nearer.to_owned(), name.to_owned()],
    };
    let set = Set::new(opened, &place, format!(", {name}"), names, &machine.dials);
    if set.dials.is_empty() {
        groups.push(first_dials(&place, name));
    } else {
        groups.extend([set.set_up(), set.sweep(), set.seldom()].map(Group::folded));
    }
    let title = format!("Other instrument, {name}");
    groups.push(rest::typed(&format!("{place}.typed"), &title, "at its coupling", opened));
    let planes = Planes::at(opened, &format!("{place}.feet"), name);
    let mut rows = planes.usual();
    rows.extend(planes.seldom());
    rows.extend(planes.moves());
    let title = format!("Feet of the {name}");
    groups.push(
        Group::new(title, "from the middle of its coupling", rows)
            .columns(planes.columns())
            .folded(),
    );
    groups
}

/// Two dials to begin with, one on each shaft.
fn first_dials(place: &str, name: &str) -> Group {
    let rides_on =
        Face::choice(&[("driver", "the nearer to the driver"), ("driven", "the farther one")]);
    let row = |dial: &str| {
        let label = format!("Dial {dial} rides on");
        let say = format!("{label}, {name}");
        let place = format!("{place}.dials.{dial}.rides_on");
        Row::new(label, vec![Field::new(place, say, "", rides_on.clone())])
    };
    let rows = vec![row("1"), row("2")];
    Group::new(format!("Dials at the {name}"), "which shaft each of them rides on", rows).folded()
}
