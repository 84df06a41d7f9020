//! The coupling: kind and hubs. The maker's sheet is in `sheet`.

use quantities::Kind;

use super::{Choice, Face, Field, Group, Row, names_or, sheet};
use crate::opened::Opened;
use job::file::End;

pub(super) fn groups(opened: &Opened) -> Vec<Group> {
    let mut groups = vec![kind(opened), hubs(opened), hubs_seldom(opened)];
    groups.extend(End::BOTH.map(|end| slices(opened, end)));
    groups.extend(sheet::groups());
    groups
}

fn kind(opened: &Opened) -> Group {
    let kinds = couplings::kinds().iter().map(|kind| Choice::new(kind.name(), kind.title()));
    let mut rows = vec![Row::one(
        "Kind of coupling",
        "coupling.kind",
        Face::Choice(kinds.collect(), String::new()),
    )];
    let forms =
        couplings::kind(&opened.job.file.coupling.kind).map_or(&[][..], |kind| kind.forms());
    if forms.len() > 1 {
        let form = Face::named(forms.iter().map(|form| form.name)).or(forms[0].name);
        rows.push(Row::one("How it is built", "coupling.form", form));
    }
    rows.push(Row::one("Balanced as an assembly", "coupling.balanced", Face::YesNo));
    Group::new("Kind", "", rows)
}

fn hubs(opened: &Opened) -> Group {
    let materials = Face::named(tables::materials::names());
    let rows = vec![
        hub(opened, "Outside diameter of the hub", "outside", &Face::Quantity(Kind::Length)),
        hub(opened, "Length on the shaft", "length", &Face::Quantity(Kind::Length)),
        hub(opened, "Material of the hub", "material", &materials),
        hub(opened, "Material of the shaft", "shaft_material", &materials),
        hub(opened, "Mass of the hub", "mass", &Face::Quantity(Kind::Mass)),
    ];
    Group::new("Hubs", "measured, not from the sheet", rows).columns(names(opened))
}

fn hubs_seldom(opened: &Opened) -> Group {
    let length = Face::Quantity(Kind::Length);
    let rough = Face::Quantity(Kind::Roughness);
    let rows = vec![
        hub(opened, "Outside of flange or gear ring", "flange_outside", &length),
        hub(opened, "Length of flange or gear ring", "flange_length", &length),
        hub(opened, "Bore of a hollow shaft", "shaft_bore", &length),
        hub(opened, "Yield strength of the hub", "yield_strength", &Face::Quantity(Kind::Stress)),
        hub(opened, "Roughness Rz of the bore", "bore_roughness", &rough),
        hub(opened, "Roughness Rz of the shaft", "shaft_roughness", &rough),
    ];
    let about = "flange, hollow shaft, roughness, strength";
    Group::new("More of the hubs", about, rows).columns(names(opened)).folded()
}

/// A hub of more outside diameters than a body and a flange.
fn slices(opened: &Opened, end: End) -> Group {
    let table = format!("coupling.{}.slices", end.key());
    let name = opened.name(end);
    let row = |slice: &String| {
        let field = |key: &str, short: &str| {
            let say = format!("Slice {slice} from the gap, {short}, {name} hub");
            Field::new(format!("{table}.{slice}.{key}"), say, short, Face::Quantity(Kind::Length))
        };
        Row::new(
            format!("Slice {slice} from the gap"),
            vec![field("length", "length"), field("outside", "outside")],
        )
    };
    let names = names_or(opened, &table, &["1", "2", "3"]);
    let title = format!("Slices of the {name} hub");
    Group::new(
        title,
        "where it has more diameters than body and flange",
        names.iter().map(row).collect(),
    )
    .folded()
}

fn hub(opened: &Opened, label: &str, key: &str, face: &Face) -> Row {
    Row::ends(opened, label, |end| format!("coupling.{}.{key}", end.key()), face)
}

fn names(opened: &Opened) -> [String; 2] {
    End::BOTH.map(|end| format!("on the {}", opened.name(end)))
}
