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
        row("Class, hole first", "class", &Face::Code("H7/p6")),
        row("Least interference", "least", &allowance),
        row("Greatest interference", "greatest", &allowance),
    ];
    let holds = vec![
        Row::one("Safety against slipping", "fit.safety", Face::Quantity(Kind::Number)),
        Row::one("Least friction", "fit.friction_least", Face::Quantity(Kind::Number)),
        Row::one("Greatest friction", "fit.friction_greatest", Face::Quantity(Kind::Number)),
        Row::one("Axial pull to hold", "fit.axial", Face::Quantity(Kind::Force)),
    ];
    let about = "a class, or limits from maker or site; clearance is negative";
    let names = End::BOTH.map(|end| format!("{} hub", opened.name(end)));
    vec![
        Group::new("Fit wanted", about, wanted).columns(names),
        Group::new("What it must hold", "blank takes the common value, and says so", holds),
    ]
}
