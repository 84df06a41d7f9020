//! Before and after: what is looked at, roughed in, typed in, left behind; limits; years before.

use quantities::Kind;

use super::dials::Set;
use super::{CLOCK, Face, Field, Group, LENGTH, OFFSET, Row, SLOPE, names_or};
use crate::opened::Opened;

/// Yes and no before anything is moved, and pipes.
pub(super) fn before(opened: &Opened) -> [Group; 2] {
    let asked = [
        ("Anchor bolts tight", "anchors_tight"),
        ("Grout sounds full", "grout_sound"),
        ("Feet and pads clean", "feet_clean"),
        ("Jack bolts off the feet", "jack_bolts_free"),
        ("Dowels drawn", "dowels_out"),
        ("Coupling open or free", "coupling_free"),
    ];
    let row =
        |(label, key): (&str, &str)| Row::one(label, format!("lineup.before.{key}"), Face::YesNo);
    let state = Group::new("Before moving", "yes or no", asked.map(row).into()).folded();
    let table = "lineup.before.pipes";
    let pipes = names_or(opened, table, &["suction", "discharge"]);
    let row = |label: &str, key: &str, face: &Face| {
        let field = |pipe: &String| {
            Field::new(
                format!("{table}.{pipe}.{key}"),
                format!("{label}, {pipe} pipe"),
                pipe.clone(),
                face.clone(),
            )
        };
        Row::new(label, pipes.iter().map(field).collect())
    };
    let rows = vec![
        row("Shaft went up", "up", &OFFSET),
        row("Shaft went to 3 o’clock", "right", &OFFSET),
        row("Flange’s outside", "outside", &LENGTH),
        row("Widest less narrowest gap", "out_of_parallel", &OFFSET),
        row("On the machine", "on", &Face::end(opened, "the")),
    ];
    let about = "dials at the coupling while flanges are made up";
    [state, Group::new("Pipes", about, rows).columns(pipes.clone()).folded()]
}

pub(super) fn rough(opened: &Opened) -> Group {
    let mut rows = Vec::new();
    for (what, key) in [("Rim stands proud", "steps"), ("Gap", "gaps")] {
        for clock in names_or(opened, &format!("lineup.rough.{key}"), &CLOCK) {
            rows.push(Row::one(
                &format!("{what} at {clock}, roughly"),
                format!("lineup.rough.{key}.{clock}"),
                OFFSET,
            ));
        }
    }
    rows.push(Row::one("Gaps were taken at diameter", "lineup.rough.diameter", LENGTH));
    let about = "straightedge and feelers, of the machine that moves";
    Group::new("Roughing in", about, rows).folded()
}

/// Offsets and slopes from another instrument, at any of the places that hold them.
pub(super) fn typed(place: &str, title: &str, about: &str, opened: &Opened) -> Group {
    Group::new(title, about, offsets(place, title, opened)).folded()
}

pub(super) fn offsets(place: &str, of: &str, opened: &Opened) -> Vec<Row> {
    let row = |label: &str, key: &str, face: Face| {
        let say = format!("{label}, {}", of.to_lowercase());
        Row::new(label, vec![Field::new(format!("{place}.{key}"), say, "", face)])
    };
    let mut rows = vec![
        row("Offset up at the coupling’s middle", "up", OFFSET),
        row("Offset to 3 o’clock", "right", OFFSET),
        row("Slope up, driver to driven", "slope_up", SLOPE),
        row("Slope to 3 o’clock, driver to driven", "slope_right", SLOPE),
    ];
    for plane in names_or(opened, &format!("{place}.planes"), &["1"]) {
        rows.extend([
            row(
                &format!("Place {plane}, towards the driven"),
                &format!("planes.{plane}.at"),
                LENGTH,
            ),
            row(&format!("Offset up at place {plane}"), &format!("planes.{plane}.up"), OFFSET),
            row(
                &format!("To 3 o’clock at place {plane}"),
                &format!("planes.{plane}.right"),
                OFFSET,
            ),
        ]);
    }
    rows
}

/// The last sweep of every dial, and what another instrument gave then.
pub(super) fn as_left(opened: &Opened, own: &Set) -> Vec<Group> {
    let mut groups = Vec::new();
    if !own.dials.is_empty() {
        let clocks = own.clocks("as_left.dials");
        let read = |clock: &String| {
            own.row_at(
                &format!("{clock} o’clock"),
                "as_left.dials",
                &format!("readings.{clock}"),
                &OFFSET,
            )
        };
        let mut rows: Vec<Row> = clocks.iter().map(read).collect();
        rows.push(own.row_at("12 again", "as_left.dials", "back", &OFFSET));
        let about = "the same dials, once the moves are made";
        groups.push(Group::new("As left", about, rows).columns(own.columns()).folded());
    }
    let about = "once the moves are made";
    groups.push(typed("lineup.as_left.typed", "As left, from another instrument", about, opened));
    groups
}

pub(super) fn limits() -> Group {
    let aim =
        Face::choice(&[("run", "running"), ("start", "starting"), ("between", "between the two")]);
    let prefer = Face::choice(&[
        ("least-total", "the least in all"),
        ("least-greatest", "the least greatest"),
        ("raise-only", "nothing is lowered"),
    ]);
    let rows = vec![
        Row::one("In line when", "lineup.aim", aim.or("running")),
        Row::one("Of equal moves", "lineup.prefer", prefer.or("the least in all")),
        Row::one("The site’s limit on the offset", "lineup.limits.offset", OFFSET),
        Row::one("The site’s limit on the slope", "lineup.limits.slope", SLOPE),
        Row::one("The site’s limit on a foot’s rise", "lineup.limits.foot", OFFSET),
        Row::one("The site’s limit on pipe strain", "lineup.limits.pipes", OFFSET),
        Row::one("Diameter for comparing the gap", "lineup.gap_diameter", LENGTH),
        Row::one("Shim stock", "lineup.shims.stock", Face::Quantities(Kind::Offset)),
        Row::one("Most shims under one foot", "lineup.shims.most", Face::Quantity(Kind::Number)),
    ];
    Group::new("Aim, limits and shims", "the site’s own, where it has them", rows).folded()
}

/// Visits of years before: those that are written, and the next.
pub(super) fn visits(opened: &Opened) -> Vec<Group> {
    let table = "lineup.visits";
    let mut names = opened.names_at(table);
    let next = (1..=names.len() + 1).map(|n| n.to_string()).find(|n| !names.contains(n));
    names.extend(next);
    names.sort_by_key(|name| super::super::order(name, &[]));
    let group = |name: &String| {
        let place = format!("{table}.{name}");
        let one = |label: &str, key: &str, face: Face| {
            let say = format!("{label}, visit {name}");
            Row::new(label, vec![Field::new(format!("{place}.{key}"), say, "", face)])
        };
        let mut rows = vec![one("Day", "day", Face::Code("2024-05-12"))];
        for (key, words) in [("found", "found"), ("left", "left")] {
            rows.extend(
                offsets(&format!("{place}.{key}"), &format!("as {words}, visit {name}"), opened)
                    .into_iter()
                    .map(|row| Row { label: format!("As {words}: {}", lower(&row.label)), ..row }),
            );
        }
        rows.push(one("What was done", "note", Face::Words("grouted anew")));
        Group::new(format!("Visit {name}"), "years before: how it was found and left", rows)
            .folded()
    };
    names.iter().map(group).collect()
}

fn lower(label: &str) -> String {
    let mut letters = label.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().collect::<String>() + letters.as_str()
    })
}
