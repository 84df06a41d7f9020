//! How the hubs come off, and how the coupling was found.

use quantities::Kind;

use super::{Face, Group, Row, inspection};
use crate::opened::Opened;
use job::file::End;

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let rows = vec![
        Row::one("Puller at hand is good for", "removal.puller", Face::Quantity(Kind::Force)),
        Row::one("Flame or heater is allowed", "removal.heat_allowed", Face::YesNo),
        Row::one("Diameter of the puller’s screw", "removal.screw", Face::Quantity(Kind::Length)),
        Row::one("Margin of puller over pull", "removal.margin", Face::Quantity(Kind::Number)),
        Row::one(
            "Yield strength of the puller’s studs",
            "removal.stud_yield",
            Face::Quantity(Kind::Stress),
        ),
    ];
    let mut groups = vec![Group::new("Coming off", "", rows), holds(opened)];
    groups.extend(inspection::groups(opened));
    groups
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
        asked("Jaws hold square behind it", "jaws_hold"),
        asked("Shaft’s end takes the push", "end_takes_push"),
        asked("Room in front for a puller", "room"),
        asked("Port for oil under pressure", "oil_port"),
        asked("On a taper", "tapered"),
        asked("Not used again", "scrap"),
    ];
    let names = End::BOTH.map(|end| format!("{} hub", opened.name(end)));
    Group::new("What there is to pull by", "", rows).columns(names).folded()
}
