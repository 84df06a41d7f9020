//! Zones, readings, window, pressure and torque as the figures of the fit want them.

use job::plan::drawings::{
    FitPart, FitReading, FitWindow, FitZones, HeldTorque, HubPressure, PressureSlice, WindowClass,
};
use quantities::System;

use crate::bore_map::{BoreMap, Diameter, Station, Touches};
use crate::fit::{Direction, Fit, Outcome, Part, Reading, Zone};
use crate::pressure::{Pressure, Slice};
use crate::torque::{Needed, Torque};
use crate::window::{Class, Window};

pub(super) fn input(data: &FitZones) -> Fit {
    let [bore, shaft] = &data.parts;
    let outcome = data.outcome.as_ref();
    Fit {
        axis: data.axis.clone(),
        bore: part(bore),
        shaft: part(shaft),
        outcome: outcome.map(|(number, spread, word)| Outcome {
            number: number.clone(),
            spread: spread.clone(),
            word: (*word).to_owned(),
        }),
    }
}

fn part(data: &FitPart) -> Part {
    let zone = data.zone.as_ref();
    Part {
        name: data.name.to_owned(),
        zone: zone.map(|(lower, upper, text)| Zone {
            lower: *lower,
            upper: *upper,
            text: text.clone(),
        }),
        readings: data.readings.iter().map(reading).collect(),
        mean: data.mean,
    }
}

fn reading(read: &FitReading) -> Reading {
    let direction = if read.degrees > 60.0 { Direction::AcrossKey } else { Direction::AlongKey };
    Reading {
        station: read.station.clone(),
        direction,
        value: read.deviation,
        plus_minus: read.plus_minus,
    }
}

/// `None` without readings of the bore.
pub(super) fn bore(data: &FitZones, system: System) -> Option<BoreMap> {
    let [bore, _] = &data.parts;
    let (to_mm, decimals) = match system {
        System::Metric => (1e-3, 0),
        System::Inch => (25.4e-3, 1),
    };
    let mut stations: Vec<Station> = Vec::new();
    for read in bore.readings.iter().chain(&bore.by_three_points) {
        let text = format!("{:+.decimals$}", read.deviation).replace('-', "−");
        let over_mm = read.deviation * to_mm;
        let diameter = Diameter { degrees: read.degrees, over_mm, text };
        let (name, touches) = match read.touches {
            3 => (format!("{}, three points", read.station), Touches::Three),
            _ => (read.station.clone(), Touches::Two),
        };
        match stations.iter_mut().find(|known| known.name == name) {
            Some(known) => known.diameters.push(diameter),
            None => stations.push(Station { name, touches, diameters: vec![diameter] }),
        }
    }
    let spread = bore.readings.iter().map(|read| read.plus_minus).fold(0.0, f64::max);
    let numbers = data.axis.replace("above", "over");
    let plus_minus_mm = spread * to_mm;
    (!stations.is_empty()).then_some(BoreMap { stations, plus_minus_mm, numbers })
}

pub(super) fn window(data: &FitWindow) -> Window {
    let class = |class: &WindowClass| Class {
        name: class.name.clone(),
        least: class.least,
        greatest: class.greatest,
        inside: class.inside,
        wanted: class.wanted,
    };
    Window {
        unit: data.unit.to_owned(),
        holds_from: data.holds_from,
        bears_to: data.bears_to,
        goes_on_to: data.goes_on_to,
        classes: data.classes.iter().map(class).collect(),
        measured: data.measured,
    }
}

pub(super) fn pressure(data: &HubPressure, system: System) -> Pressure {
    let slice = |slice: &PressureSlice| {
        let [length, outside, joint] = slice.sizes.map(|metres| metres * 1e3);
        Slice {
            length,
            outside,
            joint,
            least: slice.least,
            most: slice.most,
            text: slice.text.clone(),
        }
    };
    Pressure {
        unit: data.unit.to_owned(),
        slices: data.slices.iter().map(slice).collect(),
        shaft_bore: data.shaft_bore.map(|metres| metres * 1e3),
        system,
    }
}

pub(super) fn torque(data: &HeldTorque) -> Torque {
    let needed = |(value, words, text): &(f64, &'static str, String)| Needed {
        value: *value,
        text: format!("{words} {text}"),
    };
    let (least, most, text) = &data.held;
    Torque {
        unit: data.unit.to_owned(),
        held: (*least, *most),
        held_text: text.clone(),
        key: data.key.clone(),
        needed: data.needed.iter().map(needed).collect(),
    }
}
