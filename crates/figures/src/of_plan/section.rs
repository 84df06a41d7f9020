//! The coupling's data as the section wants it.

use job::plan::drawings::{self as data, Known as DataKnown};
use quantities::{Kind as Shown, Length, Physical, System, Value};

use crate::section::{
    Cover, Dim, Elastomer, Half, Key, Kind, Known, Middle, Packs, Rubber, Section, SectionError,
    Sleeves, Split, Through,
};

const MM: f64 = 1e3;

pub(super) fn input(data: &data::Section, system: System) -> Section {
    let mut section = Section {
        driver: half(&data.halves[0]),
        driven: half(&data.halves[1]),
        gap: dim(&data.gap),
        outside: data.outside.as_ref().map(dim),
        kind: kind(data),
        system,
    };
    if let Kind::Disc { packs: Packs::Close { .. }, .. } = section.kind {
        turn_inwards(&mut section);
    }
    section
}

/// What of the sizes does not fit, in the job's units, and what to change.
pub(super) fn refused(error: &SectionError, system: System) -> String {
    let shown = |mm: &f64| Value::new(Shown::Length, Length::from_si(mm / MM)).show(system);
    match error {
        SectionError::Size { what, mm } => {
            format!("Not drawn: {what} cannot be {}. Look it up again and enter it.", shown(mm))
        }
        SectionError::Order { inner, inner_mm, outer, outer_mm } => format!(
            "Not drawn: {inner}, {}, must be smaller than {outer}, {}. One of the two is wrong: \
             measure or look up both, and correct it.",
            shown(inner_mm),
            shown(outer_mm)
        ),
    }
}

/// Hubs of a length that nobody stated are no longer than the seats leave room for.
fn turn_inwards(section: &mut Section) {
    let most = 0.45 * section.gap.mm;
    for half in [&mut section.driver, &mut section.driven] {
        if half.hub_length.known == Known::Assumed && half.hub_length.mm > most {
            let text = match section.system {
                System::Metric => format!("{most:.0}"),
                System::Inch => format!("{:.2}", most / 25.4),
            };
            half.hub_length = Dim::assumed(most, text);
        }
    }
}

fn half(data: &data::Half) -> Half {
    Half {
        machine: data.machine.clone(),
        shaft: dim(&data.shaft),
        shaft_bore_mm: data.shaft_bore.map(|bore| bore * MM),
        hub_length: dim(&data.length),
        hub_outside: data.outside.as_ref().map(dim),
        key: data.key.map(|[height, depth, length]| Key {
            height_mm: height * MM,
            depth_mm: depth * MM,
            length_mm: length * MM,
        }),
    }
}

fn dim(size: &data::Size) -> Dim {
    let known = match size.known {
        DataKnown::Measured => Known::Measured,
        DataKnown::Given => Known::Sheet,
        DataKnown::Assumed => Known::Assumed,
    };
    Dim { mm: size.si * MM, text: size.text.clone(), known }
}

/// A form that is not named here is drawn as the kind's usual one.
fn kind(data: &data::Section) -> Kind {
    let (bolts, form) = (data.bolts, data.form.as_str());
    let middle = if data.spacer { Middle::Spacer } else { Middle::Bare };
    let flange_gap = data.pack.as_ref().map(dim);
    match data.kind.as_str() {
        "gear" => {
            let sleeves = match form {
                "single engagement" => Sleeves::OneEngagement,
                "spacer" => Sleeves::Spacer,
                "continuous sleeve" => Sleeves::Continuous,
                _ => Sleeves::Flanged,
            };
            Kind::Gear { sleeves, sleeve_outside: None, bolts }
        }
        "grid" => {
            let across = form == "cover split across";
            let cover = if across { Split::Across } else { Split::Along };
            Kind::Grid { cover, middle, slotted_outside: None, bolts }
        }
        "disc" => {
            let packs = match (form, middle) {
                ("close-coupled", _) => Packs::Close { flange_gap },
                (_, Middle::Spacer) => Packs::Two { flange_gap },
                (_, Middle::Bare) => Packs::One,
            };
            Kind::Disc { packs, bolts }
        }
        "rigid flange" => {
            let free = form == "clearance bolts";
            let through = if free { Through::Free } else { Through::Fitted };
            Kind::Rigid { through, middle, bolts }
        }
        "roller chain" => {
            let bare = form == "without cover";
            Kind::Chain { cover: if bare { Cover::Bare } else { Cover::On } }
        }
        "elastomer in shear" => {
            let rubber = match form {
                "toothed sleeve" => Rubber::Toothed,
                "spacer" => Rubber::Spacer,
                _ => Rubber::Clamped,
            };
            Kind::Shear { rubber, screws: bolts }
        }
        "diaphragm" => {
            let two = middle == Middle::Spacer;
            let packs = if two { Packs::Two { flange_gap } } else { Packs::One };
            Kind::Diaphragm { packs, bolts }
        }
        "jaw" => {
            let element = match form {
                "wrapped element" => Elastomer::Wrapped,
                "spacer" => Elastomer::Spacer,
                _ => Elastomer::Star,
            };
            Kind::Jaw { element, jaws: None }
        }
        "pin and bush" => Kind::Pin { middle, pins: bolts },
        _ => Kind::Other,
    }
}
