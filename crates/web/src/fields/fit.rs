//! What the fit should be.

use quantities::Kind;

use super::{Face, Group, Row};
use crate::opened::Opened;
use job::file::End;

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let allowance = Face::Quantity(Kind::Allowance);
    let row = |label: &str, key: &'static str, face: &Face| {
        Row::ends(opened, label, move |end| format!("fit.{}.{key}", end.key()), face)
    };
    let wanted = vec![
        row("Class", "class", &Face::Code("H7/p6")),
        row("Least interference", "least", &allowance),
        row("Greatest interference", "greatest", &allowance),
    ];
    let holds = vec![
        Row::one("Safety against slipping", "fit.safety", Face::Quantity(Kind::Number)),
        Row::one("Least friction", "fit.friction_least", Face::Quantity(Kind::Number)),
        Row::one("Greatest friction", "fit.friction_greatest", Face::Quantity(Kind::Number)),
        Row::one("Axial pull to hold", "fit.axial", Face::Quantity(Kind::Force)),
    ];
    let warmth = Face::Quantity(Kind::Temperature);
    let seldom = vec![
        row("Drawn up on its taper", "drawn_up", &Face::Quantity(Kind::Offset)),
        row("Hub in service", "hub_temperature", &warmth),
        row("Shaft in service", "shaft_temperature", &warmth),
    ];
    let how = vec![
        Row::one("How the hubs go on", "fit.mounting", mountings()),
        Row::one("Bore and shaft degreased", "fit.degreased", Face::YesNo),
        Row::one("What the key carries", "fit.sharing", sharings()),
    ];
    let about = "a class (H7/p6, FN2, AGMA interference), or limits; clearance is negative";
    let names = End::BOTH.map(|end| format!("{} hub", opened.name(end)));
    let ends = "a taper’s draw-up; temperatures where hub and shaft differ";
    vec![
        Group::new("Fit wanted", about, wanted).columns(names.clone()),
        Group::new("What it must hold", "blank takes the common value, and says so", holds),
        Group::new("Draw-up and warmth", ends, seldom).columns(names).folded(),
        Group::new("How it goes on", "heat, press or oil; what the key carries", how).folded(),
    ]
}

fn mountings() -> Face {
    Face::choice(&[
        ("heat", "heated, or the shaft chilled"),
        ("press", "pressed on cold"),
        ("oil", "on a film of oil"),
    ])
}

fn sharings() -> Face {
    Face::choice(&[
        ("key alone", "all of the torque"),
        ("after friction", "what the least friction leaves"),
    ])
}
