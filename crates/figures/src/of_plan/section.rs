//! The coupling's data as the section wants it.

use job::plan::drawings::{self as data, Known as DataKnown};
use quantities::System;

use crate::section::{Cover, Dim, Half, Key, Kind, Known, Packs, Section};

const MM: f64 = 1e3;

pub(super) fn input(data: &data::Section, system: System) -> Section {
    Section {
        driver: half(&data.halves[0]),
        driven: half(&data.halves[1]),
        gap: dim(&data.gap),
        outside: data.outside.as_ref().map(dim),
        kind: kind(data),
        system,
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

fn kind(data: &data::Section) -> Kind {
    let bolts = data.bolts;
    match data.kind.as_str() {
        "gear" => Kind::Gear { sleeve_outside: None, bolts },
        "grid" => Kind::Grid { slotted_outside: None },
        "disc" if data.spacer => {
            Kind::Disc { packs: Packs::Two { flange_gap: data.pack.as_ref().map(dim) }, bolts }
        }
        "disc" => Kind::Disc { packs: Packs::One, bolts },
        "rigid flange" => Kind::Rigid { bolts },
        "roller chain" => {
            let bare = data.form == "without cover";
            let cover = if bare { Cover::Bare } else { Cover::On };
            Kind::Chain { cover }
        }
        // A toothed sleeve and an element with a spacer have no drawing yet.
        "elastomer in shear" if data.form == "clamped element" => Kind::Shear { screws: bolts },
        "diaphragm" if data.spacer => {
            Kind::Diaphragm { packs: Packs::Two { flange_gap: None }, bolts }
        }
        "diaphragm" => Kind::Diaphragm { packs: Packs::One, bolts },
        "jaw" => Kind::Jaw { jaws: None },
        "pin and bush" => Kind::Pin { pins: bolts },
        _ => Kind::Other,
    }
}
