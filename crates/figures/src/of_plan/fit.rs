//! Zones and readings as the fit diagram and the bore map want them.

use job::plan::drawings::{FitPart, FitZones};
use quantities::System;

use crate::bore_map::{BoreMap, Diameter, Station};
use crate::fit::{Direction, Fit, Outcome, Part, Reading, Zone};

pub(super) fn input(data: &FitZones) -> Fit {
    let [bore, shaft] = &data.parts;
    let outcome = data.outcome.as_ref();
    Fit {
        axis: data.axis.clone(),
        bore: part(bore),
        shaft: part(shaft),
        outcome: outcome
            .map(|(number, word)| Outcome { number: number.clone(), word: (*word).to_owned() }),
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

fn reading((station, degrees, value, plus_minus): &(String, f64, f64, f64)) -> Reading {
    let direction = if *degrees > 60.0 { Direction::AcrossKey } else { Direction::AlongKey };
    Reading { station: station.clone(), direction, value: *value, plus_minus: *plus_minus }
}

/// `None` without readings of the bore.
pub(super) fn bore(data: &FitZones, system: System) -> Option<BoreMap> {
    let [bore, _] = &data.parts;
    let (to_mm, decimals) = match system {
        System::Metric => (1e-3, 0),
        System::Inch => (25.4e-3, 1),
    };
    let mut stations: Vec<Station> = Vec::new();
    for (station, degrees, over, _) in &bore.readings {
        let text = format!("{over:+.decimals$}").replace('-', "−");
        let diameter = Diameter { degrees: *degrees, over_mm: over * to_mm, text };
        match stations.iter_mut().find(|known| known.name == *station) {
            Some(known) => known.diameters.push(diameter),
            None => stations.push(Station { name: station.clone(), diameters: vec![diameter] }),
        }
    }
    let spread = bore.readings.iter().map(|(_, _, _, spread)| *spread).fold(0.0, f64::max);
    let numbers = data.axis.replace("above", "over");
    let plus_minus_mm = spread * to_mm;
    (!stations.is_empty()).then_some(BoreMap { stations, plus_minus_mm, numbers })
}
