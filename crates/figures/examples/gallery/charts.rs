//! Fits, bore maps, tightening orders and marks, with invented numbers.

use figures::bore_map::{self, BoreMap, Diameter, Station, Touches};
use figures::fit::{self, Direction, Fit, Outcome, Part, Reading, Zone};
use figures::marks::{Ground, bead, mark, stamp};
use figures::tightening::{self, Ends, Stage, Tightening};
use quantities::Verdict;

use crate::{Figure, Paper};

const PAPERS: [(&str, Paper); 3] =
    [("card", Paper::CARD), ("column", Paper::COLUMN), ("page", Paper::PAGE)];

/// All of them.
pub fn all() -> Vec<(String, Figure)> {
    let mut figures = marks();
    for (paper, size) in PAPERS {
        for (name, fit) in fits() {
            figures.extend(fit::draw(&fit, size).map(|f| (format!("fit-{name}-{paper}"), f)));
        }
        for bolts in [6, 8, 12, 24] {
            let name = format!("tightening-{bolts}-{paper}");
            figures.extend(tightening::draw(&rounds(bolts), size).map(|f| (name, f)));
        }
        figures.extend(bore_map::draw(&map(), size).map(|f| (format!("bore-map-{paper}"), f)));
    }
    figures
}

fn marks() -> Vec<(String, Figure)> {
    let all = [Verdict::Inside, Verdict::Outside, Verdict::TooClose, Verdict::NotMeasured];
    let mut figures = vec![("bead-none".to_owned(), bead(None))];
    for verdict in all {
        let name = verdict.words().replace(' ', "-");
        figures.push((format!("mark-{name}"), mark(verdict, Ground::Paper)));
        figures.push((format!("stamp-{name}"), stamp(verdict)));
        figures.push((format!("bead-{name}"), bead(Some(verdict))));
    }
    figures
}

fn readings(values: &[f64], plus_minus: f64) -> Vec<Reading> {
    let reading = |(index, value): (usize, &f64)| Reading {
        station: (index / 2 + 1).to_string(),
        direction: if index % 2 == 0 { Direction::AlongKey } else { Direction::AcrossKey },
        value: *value,
        plus_minus,
    };
    values.iter().enumerate().map(reading).collect()
}

fn part(name: &str, zone: Option<(f64, f64, &str)>, values: &[f64], plus_minus: f64) -> Part {
    let (sum, count) = values.iter().fold((0.0, 0.0), |(sum, count), v| (sum + v, count + 1.0));
    let mean: f64 = sum / count;
    Part {
        name: name.to_owned(),
        zone: zone.map(|(lower, upper, text)| Zone { lower, upper, text: text.to_owned() }),
        readings: readings(values, plus_minus),
        mean: (!values.is_empty()).then_some(mean),
    }
}

fn fits() -> Vec<(&'static str, Fit)> {
    let outcome = |number: &str, word: &str| {
        Some(Outcome {
            number: format!("{number} mm"),
            spread: "± 0.003".to_owned(),
            word: word.to_owned(),
        })
    };
    let fit =
        |axis: &str, bore, shaft, outcome| Fit { axis: axis.to_owned(), bore, shaft, outcome };
    vec![
        (
            "tight",
            fit(
                "µm above 80 mm",
                part(
                    "bore",
                    Some((0.0, 30.0, "bore, H7: +0 to +30")),
                    &[12.0, 14.0, 10.0, 13.0, 13.0, 16.0],
                    4.0,
                ),
                part(
                    "shaft",
                    Some((32.0, 51.0, "shaft, p6: +32 to +51")),
                    &[44.0, 46.0, 45.0, 47.0, 47.0, 50.0],
                    4.0,
                ),
                outcome("0.034", "interference"),
            ),
        ),
        (
            "loose",
            fit(
                "µm above 220 mm",
                part("bore", Some((0.0, 46.0, "bore, H7: +0 to +46")), &[44.0, 43.0], 8.0),
                part("shaft", Some((-44.0, -15.0, "shaft, g6: −44 to −15")), &[-40.0, -41.0], 8.0),
                outcome("0.084", "clearance"),
            ),
        ),
        (
            "close",
            fit(
                "µm above 25 mm",
                part(
                    "bore",
                    Some((0.0, 21.0, "bore, H7: +0 to +21")),
                    &[12.0, 13.0, 11.0, 12.0],
                    4.0,
                ),
                part(
                    "shaft",
                    Some((2.0, 15.0, "shaft, k6: +2 to +15")),
                    &[10.0, 9.0, 9.0, 10.0],
                    4.0,
                ),
                outcome("0.003", "clearance"),
            ),
        ),
        (
            "bare",
            fit(
                "mil above 3.2500 in",
                part("bore", None, &[0.52, 0.48, 0.5], 0.2),
                part("shaft", None, &[2.2, 2.1, 2.25], 0.2),
                outcome("0.0017", "interference"),
            ),
        ),
    ]
}

fn rounds(bolts: usize) -> Tightening {
    // Opposite, then a quarter turn on, as far as the number allows.
    let half = bolts / 2;
    let mut starts: Vec<usize> = (0..half).collect();
    starts.sort_by_key(|s| (s * 7) % half);
    let order = starts.into_iter().flat_map(|s| [s + 1, s + half + 1]).collect();
    let stage = |share, text: &str| Stage { share, text: text.to_owned() };
    Tightening {
        order,
        ends: Ends::Alike,
        stages: vec![
            stage(0.0, "snug by hand"),
            stage(0.3, "42 N·m"),
            stage(0.7, "98 N·m"),
            stage(1.0, "140 N·m"),
            stage(1.0, "140 N·m, once round clockwise"),
        ],
        note: "In each stage follow the numbers; in the last none may turn.".to_owned(),
    }
}

fn map() -> BoreMap {
    let station = |name: &str, values: [f64; 4]| Station {
        name: name.to_owned(),
        touches: Touches::Two,
        diameters: values
            .into_iter()
            .zip([0.0, 45.0, 90.0, 135.0])
            .map(|(value, degrees)| Diameter {
                degrees,
                over_mm: value / 1000.0,
                text: format!("{value:+.0}"),
            })
            .collect(),
    };
    BoreMap {
        stations: vec![
            station("1, 12 mm in", [21.0, 28.0, 17.0, 9.0]),
            station("2, 46 mm in", [19.0, 22.0, 18.0, 14.0]),
            station("3, 80 mm in", [24.0, 21.0, 16.0, 18.0]),
            Station {
                touches: Touches::Three,
                ..station("3, three points", [16.0, 19.0, 22.0, 19.0])
            },
        ],
        plus_minus_mm: 0.004,
        numbers: "µm over 80 mm".to_owned(),
    }
}
