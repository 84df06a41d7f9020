//! How a gear coupling is built, and what of.

use crate::kind::{Each, Form, Part, Planes, Spacer};

pub(super) const FLANGED: &str = "flanged sleeves";
pub(super) const SINGLE: &str = "single engagement";
pub(super) const SPACER: &str = "spacer";
pub(super) const CONTINUOUS: &str = "continuous sleeve";

pub(super) static FORMS: [Form; 4] = [
    Form {
        name: FLANGED,
        says: "A toothed sleeve on each hub, bolted together at their flanges.",
        planes: Planes::Two,
        spacer: Spacer::Without,
    },
    Form {
        name: SINGLE,
        says: "One toothed hub and sleeve, bolted to a plain flanged hub.",
        planes: Planes::One,
        spacer: Spacer::Without,
    },
    Form {
        name: SPACER,
        says: "Two flanged sleeves with a spacer between them that drops out.",
        planes: Planes::Two,
        spacer: Spacer::With,
    },
    Form {
        name: CONTINUOUS,
        says: "One sleeve over both hubs, held by rings at its ends; no flange bolts.",
        planes: Planes::Two,
        spacer: Spacer::Without,
    },
];

/// Its parts, sorted by letter.
pub(super) fn parts(form: &Form) -> Vec<Part> {
    let seals = if form.name == SINGLE { Each::One } else { Each::PerHub };
    let mut parts = vec![
        Part::new('A', "shaft", Each::PerHub),
        Part::new('B', "driver hub", Each::One),
        Part::new('C', "driven hub", Each::One),
    ];
    match form.name {
        SPACER => parts
            .extend([Part::new('D', "sleeve", Each::PerHub), Part::new('E', "spacer", Each::One)]),
        FLANGED => parts.extend([
            Part::new('D', "driver sleeve", Each::One),
            Part::new('E', "driven sleeve", Each::One),
        ]),
        _ => parts.push(Part::new('D', "sleeve", Each::One)),
    }
    parts.push(Part::new('F', "seal", seals));
    if form.name != CONTINUOUS {
        let gaskets = if form.name == SPACER { Each::Two } else { Each::One };
        parts.push(Part::new('G', "gasket", gaskets));
        parts.push(Part::new('H', "bolt and nut", Each::PerBolt));
    }
    parts.push(Part::new('J', "plug", Each::AsMade));
    parts.push(Part::new('K', "key", Each::PerHub));
    parts.push(Part::new('T', "teeth", seals));
    if form.name == CONTINUOUS {
        parts.push(Part::new('W', "end ring", Each::Two));
    }
    parts
}
