//! Fits, windows, pressures, torques, bore maps and tightening orders with random numbers on all
//! papers.

use proptest::prelude::*;
use proptest::sample::select;

use super::{cases, is_plain, is_tidy, paths, texts};
use crate::axis::real;
use crate::bore_map::{self, BoreMap, BoreMapError, Diameter, Station, Touches};
use crate::budget::{self, BudgetError};
use crate::clearance::{self, Clearance, Level, Moment};
use crate::envelope::{self, Basis, Envelope, State};
use crate::fit::{self, Direction, Fit, FitError, Outcome, Part, Reading, Zone};
use crate::foot_map::{self, FootMap, FootMapError, Tried};
use crate::pressure::{self, Pressure, PressureError, Slice};
use crate::pull::{self, Pull, Window};
use crate::tightening::{self, Ends, Stage, Tightening, TighteningError};
use crate::torque::{self, Needed, Torque, TorqueError};
use crate::warmth::{self, Warmth, WarmthError};
use crate::window::{self, Class, WindowError};
use crate::{Figure, Paper};

const PAPERS: [Paper; 4] = [Paper::CARD, Paper::PAGE, Paper::COLUMN, Paper::PHONE];

fn good(figure: &Figure, tidy: Result<(), String>) -> Result<(), TestCaseError> {
    let plain = is_plain(figure);
    prop_assert!(plain.is_ok(), "{}", plain.unwrap_err());
    prop_assert!(tidy.is_ok(), "{}", tidy.unwrap_err());
    Ok(())
}

fn part(name: &'static str) -> impl Strategy<Value = Part> {
    let zone = prop::option::of((-80.0..80.0_f64, 5.0..60.0_f64));
    let readings = prop::collection::vec(-90.0..140.0_f64, 0..9);
    (zone, readings, 0.5..15.0_f64).prop_map(move |(zone, values, plus_minus)| {
        let mean = values.iter().sum::<f64>() / real(values.len().max(1));
        let reading = |(index, value): (usize, &f64)| Reading {
            station: (index / 2 + 1).to_string(),
            direction: [Direction::AlongKey, Direction::AcrossKey][index % 2],
            value: *value,
            plus_minus,
        };
        Part {
            name: name.to_owned(),
            zone: zone.map(|(lower, width)| {
                let upper = lower + width;
                let text = format!("{name}, H7: {lower:+.0} to {upper:+.0}").replace('-', "−");
                Zone { lower, upper, text }
            }),
            readings: values.iter().enumerate().map(reading).collect(),
            mean: (!values.is_empty()).then_some(mean),
        }
    })
}

fn outcome(number: &str) -> Outcome {
    Outcome {
        number: number.to_owned(),
        spread: "± 0.003".to_owned(),
        word: "interference".to_owned(),
    }
}

fn some_fit() -> impl Strategy<Value = Fit> {
    (part("bore"), part("shaft"), any::<bool>()).prop_map(|(bore, shaft, worked)| {
        let outcome = worked.then(|| outcome("0.034 mm"));
        Fit { axis: "µm above 80 mm".to_owned(), bore, shaft, outcome }
    })
}

fn some_window() -> impl Strategy<Value = window::Window> {
    let class = (-80.0..150.0_f64, 5.0..60.0_f64, any::<bool>(), any::<bool>());
    let limit = || prop::option::of(0.0..260.0_f64);
    let measured = prop::option::of((-60.0..120.0_f64, 0.5..12.0_f64));
    (prop::collection::vec(class, 0..13), limit(), limit(), limit(), measured).prop_map(
        |(classes, holds_from, bears_to, goes_on_to, measured)| {
            let class = |(least, width, inside, wanted): (f64, f64, bool, bool)| Class {
                name: "H7/js6".to_owned(),
                least,
                greatest: least + width,
                inside,
                wanted,
            };
            let classes = classes.into_iter().map(class).collect();
            let unit = "µm".to_owned();
            window::Window { unit, holds_from, bears_to, goes_on_to, classes, measured }
        },
    )
}

fn some_pressure() -> impl Strategy<Value = Pressure> {
    let slice = (4.0..160.0_f64, 20.0..240.0_f64, 0.0..60.0_f64, 0.0..90.0_f64);
    let slices = prop::collection::vec(slice, 1..7);
    (slices, prop::option::of(5.0..50.0_f64), any::<bool>()).prop_map(|(slices, bore, inch)| {
        let slice = |(length, wall, least, more): (f64, f64, f64, f64)| Slice {
            length,
            outside: 60.0 + wall,
            joint: 60.0,
            least,
            most: least + more,
            text: format!("{:.1}", least + more),
        };
        Pressure {
            unit: "MPa".to_owned(),
            slices: slices.into_iter().map(slice).collect(),
            shaft_bore: bore,
            system: if inch { quantities::System::Inch } else { quantities::System::Metric },
        }
    })
}

fn some_torque() -> impl Strategy<Value = Torque> {
    let needed = prop::collection::vec(1.0..60_000.0_f64, 0..6);
    let key = prop::option::of(1.0..90_000.0_f64);
    (0.0..30_000.0_f64, 1.0..30_000.0_f64, key, needed).prop_map(
        |(least, more, key, mut needed)| {
            needed.sort_by(f64::total_cmp);
            let words = ["full load", "with service factor", "and safety", "peak"];
            let needed = needed.iter().enumerate().map(|(place, value)| Needed {
                value: *value,
                text: format!("{} {value:.0}", words[place % 4]),
            });
            Torque {
                unit: "N·m".to_owned(),
                held: (least, least + more),
                held_text: format!("{least:.0} to {:.0}", least + more),
                key: key.map(|key| (key, format!("{key:.0}"))),
                needed: needed.collect(),
            }
        },
    )
}

proptest! {
    #![proptest_config(cases(400))]

    #[test]
    fn windows(window in some_window(), paper in select(PAPERS.to_vec())) {
        match window::draw(&window, paper) {
            Ok(figure) => good(&figure, is_tidy(&window::drawing(&window, paper)))?,
            Err(error) => prop_assert_eq!(error, WindowError::Nothing),
        }
    }

    #[test]
    fn pressures(pressure in some_pressure(), paper in select(PAPERS.to_vec())) {
        let figure =
            pressure::draw(&pressure, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&pressure::drawing(&pressure, paper)))?;
        prop_assert!(figure.says.contains("No bound is given"));
    }

    #[test]
    fn torques(torque in some_torque(), paper in select(PAPERS.to_vec())) {
        let figure =
            torque::draw(&torque, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&torque::drawing(&torque, paper)))?;
    }

    #[test]
    fn fits(fit in some_fit(), paper in select(PAPERS.to_vec())) {
        match fit::draw(&fit, paper) {
            Ok(figure) => good(&figure, is_tidy(&fit::drawing(&fit, paper)))?,
            Err(error) => prop_assert_eq!(error, FitError::Nothing),
        }
    }

    #[test]
    fn bore_maps(
        stations in prop::collection::vec(prop::collection::vec((0.0..180.0_f64, -0.05..0.05_f64), 1..5), 1..4),
        plus_minus_mm in 0.0005..0.01_f64,
        paper in select(PAPERS.to_vec()),
    ) {
        let stations = stations.into_iter().enumerate().map(|(index, diameters)| Station {
            name: format!("{}, 12 mm in", index + 1),
            touches: if index == 1 { Touches::Three } else { Touches::Two },
            diameters: diameters
                .into_iter()
                .map(|(degrees, over_mm)| {
                    let text = format!("{:+.0}", 1000.0 * over_mm).replace('-', "−");
                    Diameter { degrees, over_mm, text }
                })
                .collect(),
        });
        let map = BoreMap {
            stations: stations.collect(),
            plus_minus_mm,
            numbers: "µm over 80 mm".to_owned(),
        };
        let figure = bore_map::draw(&map, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&bore_map::drawing(&map, paper).0))?;
    }

    #[test]
    fn tightenings(
        order in (2..49_usize).prop_flat_map(|n| Just((1..=n).collect::<Vec<_>>()).prop_shuffle()),
        shares in prop::collection::vec(0.0..1.0_f64, 0..6),
        paper in select(PAPERS.to_vec()),
    ) {
        let stage = |share: f64| Stage { share, text: format!("{:.0} N·m", 140.0 * share) };
        let tightening = Tightening {
            ends: if order.len() % 2 == 0 { Ends::ByTurns } else { Ends::Alike },
            order,
            stages: shares.into_iter().map(stage).collect(),
            note: "In each stage follow the numbers; in the last none may turn.".to_owned(),
        };
        let figure =
            tightening::draw(&tightening, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&tightening::drawing(&tightening, paper)))?;
    }
}

/// A hub that cools from a clearance and grips at some second, and goes on a little after that.
fn cooling(start: f64, grips: f64, bend: f64) -> Vec<(f64, f64)> {
    (0..=30)
        .map(|step| {
            let share = 1.1 * f64::from(step) / 30.0;
            (grips * share, start * (1.0 - share.powf(bend)))
        })
        .collect()
}

proptest! {
    #![proptest_config(cases(400))]

    #[test]
    fn clearances(
        (start, grips, bend) in (5.0..900.0_f64, 3.0..900.0_f64, 0.4..1.6_f64),
        (likely, slowest) in (1.0..2.0_f64, 1.0..3.0_f64),
        (level, cases) in (prop::option::of(0.0..1.0_f64), any::<[bool; 3]>()),
        paper in select(PAPERS.to_vec()),
    ) {
        let case = |factor: f64| cooling(1.02 * start, grips * factor, bend);
        let moment = |seconds: f64, text: &str| {
            Moment { seconds, text: text.replace('%', &format!("{seconds:.0}")) }
        };
        let clearance = Clearance {
            heights: "clearance in the bore, µm".to_owned(),
            quickest: cooling(start, grips, bend),
            likely: cases[0].then(|| case(likely)),
            slowest: cases[1].then(|| case(likely * slowest)),
            level: level.map(|share| Level {
                value: share * start,
                text: "needed to slide".to_owned(),
            }),
            count_on: Some(moment(grips, "count on % s")),
            at_most: cases[2].then(|| moment(grips * likely * slowest, "% s at most")),
        };
        let figure =
            clearance::draw(&clearance, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&clearance::drawing(&clearance, paper)))?;
        let said = texts(&figure.svg).iter().any(|text| text.starts_with("count on"));
        prop_assert!(said, "the answer is lost");
    }

    #[test]
    fn envelopes(
        (axial, angle, shoulder) in (0.2..5.0_f64, 0.05..3.0_f64, 0.0..0.7_f64),
        states in prop::collection::vec((-1.3..1.3_f64, -1.3..1.3_f64, 0.001..0.2_f64, any::<bool>()), 0..3),
        paper in select(PAPERS.to_vec()),
    ) {
        let edge = |share: f64| {
            let (x, y) = (axial * share, angle * share);
            vec![(-x, 0.0), (-x * shoulder, y), (x * shoulder, y), (x, 0.0)]
        };
        let state = |(index, (x, y, doubt, measured)): (usize, (f64, f64, f64, bool))| State {
            name: ["cold", "hot"][index].to_owned(),
            axial: x * axial,
            angle: y * angle,
            plus_minus: (doubt * axial, doubt * angle),
            basis: if measured { Basis::Measured } else { Basis::WorkedOut },
        };
        let envelope = Envelope {
            heights: "angle at the pack, degrees".to_owned(),
            run: "mm axial".to_owned(),
            allowed: edge(1.0),
            fitting: Some(edge(0.33)),
            states: states.into_iter().enumerate().map(state).collect(),
        };
        let figure =
            envelope::draw(&envelope, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&envelope::drawing(&envelope, paper)))?;
    }

    #[test]
    fn pulls(
        (most, from, open) in (5.0..500.0_f64, 5.0..300.0_f64, 1.0..300.0_f64),
        (level, off, free) in (0.0..1.2_f64, 0.0..1.0_f64, any::<bool>()),
        paper in select(PAPERS.to_vec()),
    ) {
        let to = from + open;
        let pull = Pull {
            heights: "pull needed, kN".to_owned(),
            pull: (0..=60)
                .map(|step| f64::from(step) * 2.0 * to / 60.0)
                .map(|s| {
                    let warming = (1.0 - s / from).max(0.0).powi(2);
                    let cold_again = (1.0 - (-(s - to).max(0.0) / from).exp()) * 0.8;
                    (s, most * (warming + cold_again))
                })
                .collect(),
            level: Some(Level { value: level * most, text: "puller holds".to_owned() }),
            window: free.then(|| Window { from, to, text: format!("open {from:.0} to {to:.0} s") }),
            heat_off: Some(from + off * open),
        };
        let figure = pull::draw(&pull, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&pull::drawing(&pull, paper)))?;
        let said = texts(&figure.svg).iter().any(|text| text.starts_with("open"));
        prop_assert!(said || !free, "the answer is lost");
    }
}

proptest! {
    #![proptest_config(cases(120))]
    #[test]
    fn lines_of_temperature_are_tidy(
        bore in 20.0..300.0_f64,
        slices in prop::collection::vec((5.0..120.0_f64, 1.1..3.0_f64), 1..4),
        shaft in (0.0..500.0_f64, 0.0..80.0_f64),
        hollow in prop::option::of(0.1..0.8_f64),
        lines in prop::collection::vec(prop::collection::vec((-50.0..250.0_f64, 0.0..200.0_f64), 2..9), 0..14),
        paper in select(PAPERS.to_vec()),
    ) {
        let warmth = Warmth {
            title: "34 s after it is home".to_owned(),
            ranges: "hub 96 to 131 °C, shaft 21 to 58 °C".to_owned(),
            bore,
            hollow: hollow.map_or(0.0, |share| share * bore),
            shaft: [shaft.0, shaft.1],
            slices: slices.iter().map(|(length, wide)| (*length, wide * bore)).collect(),
            lines: lines.into_iter().enumerate().map(|(k, line)| ((20 * k).to_string(), line)).collect(),
        };
        let figure = warmth::draw(&warmth, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&warmth::drawing(&warmth, paper)))?;
    }
}

proptest! {
    #![proptest_config(cases(120))]
    #[test]
    fn foot_maps_are_tidy(
        planes in prop::collection::vec(prop::array::uniform2((
            prop::option::of(-0.5..2.0_f64),
            any::<bool>(),
            prop::array::uniform4(prop::option::of(0.0..1.5_f64)),
        )), 1..4),
        coupling_right in any::<bool>(),
        digits in 2_usize..4,
        paper in select(PAPERS.to_vec()),
    ) {
        let shown = |mm: f64| format!("{mm:.digits$}").replace('-', "−");
        let map = FootMap {
            name: "motor".to_owned(),
            unit: "mm".to_owned(),
            coupling_right,
            planes: planes.iter().map(|feet| feet.each_ref().map(|(rise, soft, gaps)| Tried {
                rise: rise.map(shown),
                soft: *soft,
                gaps: gaps.map(|gap| gap.map(shown)),
            })).collect(),
        };
        let figure = foot_map::draw(&map, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&foot_map::drawing(&map, paper)))?;
        let shown = texts(&figure.svg);
        for foot in planes.iter().flatten().filter_map(|(rise, ..)| rise.map(shown_as(digits))) {
            prop_assert!(shown.iter().any(|text| text.starts_with(&foot)), "{foot} is lost");
        }
    }
}

fn shown_as(digits: usize) -> impl Fn(f64) -> String {
    move |mm| format!("{mm:.digits$}").replace('-', "−")
}

proptest! {
    #![proptest_config(cases(120))]
    #[test]
    fn budgets_are_tidy(
        states in prop::collection::vec((prop::array::uniform3(prop::option::of(0.0..1.6_f64)), 0.0..0.4_f64), 1..4),
        paper in select(PAPERS.to_vec()),
    ) {
        let states: Vec<budget::State> = states.into_iter().enumerate().map(|(place, (shares, plus_minus))| {
            let name = ["running", "cold at the start", "cold, once lined up"][place].to_owned();
            budget::State { name, shares, plus_minus }
        }).collect();
        let figure = budget::draw(&states, paper).map_err(|e| TestCaseError::fail(e.to_string()))?;
        good(&figure, is_tidy(&budget::drawing(&states, paper)))?;
        let said = texts(&figure.svg);
        for state in &states {
            prop_assert!(said.iter().any(|text| text.starts_with(&state.name)), "{} is lost", state.name);
        }
    }
}

#[test]
fn a_share_below_nothing_is_not_drawn() {
    let state =
        budget::State { name: String::new(), shares: [Some(-0.1), None, None], plus_minus: 0.0 };
    assert_eq!(budget::draw(&[state], Paper::CARD), Err(BudgetError::NoShare(-0.1)));
    assert_eq!(budget::draw(&[], Paper::CARD), Err(BudgetError::Nothing));
}

#[test]
fn a_machine_without_feet_has_no_map() {
    let map = FootMap {
        name: "motor".to_owned(),
        unit: "mm".to_owned(),
        coupling_right: true,
        planes: vec![],
    };
    assert_eq!(foot_map::draw(&map, Paper::CARD), Err(FootMapError::Planes(0)));
}

#[test]
fn a_hub_of_no_size_is_not_drawn() {
    let hub = |slices| Warmth {
        title: String::new(),
        ranges: String::new(),
        bore: 80.0,
        hollow: 0.0,
        shaft: [160.0, 0.0],
        slices,
        lines: vec![],
    };
    let refused = warmth::draw(&hub(vec![(0.0, 120.0)]), Paper::CARD);
    assert_eq!(refused, Err(WarmthError::NoSize(0.0)));
    assert_eq!(warmth::draw(&hub(vec![]), Paper::CARD), Err(WarmthError::NoHub));
    assert!(warmth::draw(&hub(vec![(90.0, 120.0)]), Paper::CARD).is_ok());
}

fn example() -> Fit {
    let zone = |lower, upper, text: &str| Some(Zone { lower, upper, text: text.to_owned() });
    let part =
        |name: &str, zone, mean| Part { name: name.to_owned(), zone, readings: vec![], mean };
    Fit {
        axis: "µm above 80 mm".to_owned(),
        bore: part("bore", zone(0.0, 30.0, "bore, H7: +0 to +30"), Some(13.0)),
        shaft: part("shaft", zone(32.0, 51.0, "shaft, p6: +32 to +51"), Some(46.5)),
        outcome: Some(outcome("0.034 mm")),
    }
}

/// Both zones stand on one height scale: 30 and 19 µm high, 2 µm apart, taken with a ruler.
#[test]
fn zones_are_to_scale() {
    let figure = fit::draw(&example(), Paper::PAGE).unwrap();
    let boxes: Vec<(f64, f64)> = paths(&figure.svg)
        .into_iter()
        .filter(|(a, points)| a.contains("stroke-width=\"0.5\"") && points.len() == 4)
        .map(|(_, points)| (points[0].1, points[2].1))
        .collect();
    let [(bore_top, bore_foot), (shaft_top, shaft_foot)] = boxes[..] else {
        panic!("two zones: {boxes:?}")
    };
    let per_um = (bore_foot - bore_top) / 30.0;
    assert!((shaft_foot - shaft_top - 19.0 * per_um).abs() < 0.03);
    assert!((bore_top - shaft_foot - 2.0 * per_um).abs() < 0.03);
}

/// Bars stand on one scale: a class of 57 µm is three times as high as one of 19, and begins where
/// the other ends; taken with a ruler.
#[test]
fn classes_are_to_scale() {
    let class = |name: &str, least, greatest| Class {
        name: name.to_owned(),
        least,
        greatest,
        inside: true,
        wanted: false,
    };
    let window = window::Window {
        unit: "µm".to_owned(),
        holds_from: Some(10.0),
        bears_to: Some(90.0),
        goes_on_to: None,
        classes: vec![class("a", 10.0, 29.0), class("b", 29.0, 86.0)],
        measured: None,
    };
    let figure = window::draw(&window, Paper::PAGE).unwrap();
    let boxes: Vec<(f64, f64)> = paths(&figure.svg)
        .into_iter()
        .filter(|(a, points)| a.contains("stroke-width=\"0.5\"") && points.len() == 4)
        .map(|(_, points)| (points[0].1, points[2].1))
        .collect();
    let [(a_top, a_foot), (b_top, b_foot)] = boxes[..] else { panic!("two bars: {boxes:?}") };
    assert!((b_foot - b_top - 3.0 * (a_foot - a_top)).abs() < 0.04);
    assert!((a_top - b_foot).abs() < 0.02);
}

#[test]
fn fits_that_cannot_be_drawn_are_refused() {
    let slice = Slice {
        length: 30.0,
        outside: 60.0,
        joint: 60.0,
        least: 0.0,
        most: 1.0,
        text: String::new(),
    };
    let mut pressure = Pressure {
        unit: String::new(),
        slices: vec![slice],
        shaft_bore: None,
        system: quantities::System::Metric,
    };
    assert_eq!(pressure::draw(&pressure, Paper::CARD), Err(PressureError::NotANumber(0.0)));
    pressure.slices[0].outside = 90.0;
    pressure.shaft_bore = Some(60.0);
    assert_eq!(pressure::draw(&pressure, Paper::CARD), Err(PressureError::NotANumber(60.0)));
    pressure.slices.clear();
    assert_eq!(pressure::draw(&pressure, Paper::CARD), Err(PressureError::Nothing));
    let torque = Torque {
        unit: String::new(),
        held: (2.0, 1.0),
        held_text: String::new(),
        key: None,
        needed: vec![],
    };
    assert_eq!(torque::draw(&torque, Paper::CARD), Err(TorqueError::NotANumber(-1.0)));
}

#[test]
fn what_cannot_be_drawn_is_refused() {
    let mut fit = example();
    fit.bore.mean = Some(f64::NAN);
    assert!(matches!(fit::draw(&fit, Paper::CARD), Err(FitError::NotANumber(_))));
    fit = example();
    fit.bore.zone = Some(Zone { lower: 1.0, upper: 0.0, text: String::new() });
    assert!(matches!(fit::draw(&fit, Paper::CARD), Err(FitError::Zone { .. })));

    let order = |order: Vec<usize>| Tightening {
        order,
        ends: Ends::Alike,
        stages: vec![],
        note: String::new(),
    };
    for (bad, error) in [
        (vec![1], TighteningError::Bolts(1)),
        (vec![1, 1], TighteningError::Order(vec![1, 1])),
        (vec![0, 1], TighteningError::Order(vec![0, 1])),
    ] {
        assert_eq!(tightening::draw(&order(bad), Paper::CARD), Err(error));
    }

    let map = BoreMap { stations: vec![], plus_minus_mm: 0.0, numbers: String::new() };
    assert_eq!(bore_map::draw(&map, Paper::CARD), Err(BoreMapError::Nothing));
}

/// The number of each bolt stands where the order says, counted clockwise from the top.
#[test]
fn numbers_follow_the_order() {
    let tightening = Tightening {
        order: vec![2, 4, 1, 3],
        ends: Ends::Alike,
        stages: vec![],
        note: String::new(),
    };
    let figure = tightening::draw(&tightening, Paper::CARD).unwrap();
    let words = texts(&figure.svg);
    let spots: Vec<(f64, f64)> = figure
        .svg
        .split("<text ")
        .skip(1)
        .map(|piece| {
            let value = |name: &str| -> f64 {
                piece.split(name).nth(1).unwrap().split('"').next().unwrap().parse().unwrap()
            };
            (value("x=\""), value("y=\""))
        })
        .collect();
    let place = |word: &str| spots[words.iter().position(|w| w == word).unwrap()];
    // 1 at 3 o'clock, 2 at 9, 3 at 12, 4 at 6.
    assert!(place("1").0 > place("3").0 && place("2").0 < place("3").0);
    assert!(place("3").1 < place("1").1 && place("4").1 > place("1").1);
}
