//! A hub on its way on and on its way off, and a pack's field, with invented runs.

use figures::clearance::{self, Clearance, Level, Moment};
use figures::envelope::{self, Basis, Envelope, State};
use figures::pull::{self, Pull, Window};

use crate::{Figure, Paper};

/// All of them.
pub fn all() -> Vec<(String, Figure)> {
    let mut figures = Vec::new();
    for (name, paper) in [("card", Paper::CARD), ("column", Paper::COLUMN)] {
        figures.extend(clearance::draw(&on(), paper).map(|f| (format!("clearance-{name}"), f)));
        figures.extend(pull::draw(&off(), paper).map(|f| (format!("pull-{name}"), f)));
        figures.extend(envelope::draw(&field(), paper).map(|f| (format!("envelope-{name}"), f)));
    }
    figures
}

/// From `start` at 0 s through zero at `grips`, cooling ever more slowly.
fn cooling(start: f64, grips: f64) -> Vec<(f64, f64)> {
    let rate = 0.6 / grips;
    let floor = start * (-rate * grips).exp() / (1.0 - (-rate * grips).exp());
    (0..=40)
        .map(|step| f64::from(step) * grips / 40.0)
        .map(|s| (s, (start + floor) * (-rate * s).exp() - floor))
        .collect()
}

fn on() -> Clearance {
    let moment = |seconds, text: &str| Some(Moment { seconds, text: text.to_owned() });
    Clearance {
        heights: "clearance in the bore, µm".to_owned(),
        quickest: cooling(82.0, 39.5),
        likely: Some(cooling(86.0, 54.0)),
        slowest: Some(cooling(88.0, 70.0)),
        level: Some(Level { value: 30.0, text: "needed to slide".to_owned() }),
        count_on: moment(39.5, "count on 39 s"),
        at_most: moment(70.0, "70 s at most"),
    }
}

fn off() -> Pull {
    let pull = (0..=75)
        .map(|step| 2.0 * f64::from(step))
        .map(|s| {
            let warming = 185.0 * (1.0 - s / 34.0).max(0.0).powi(2);
            let cold_again = 150.0 * (1.0 - (-(s - 55.0).max(0.0) / 40.0_f64).exp());
            (s, warming + cold_again)
        })
        .collect();
    Pull {
        heights: "pull needed, kN".to_owned(),
        pull,
        level: Some(Level { value: 60.0, text: "puller holds".to_owned() }),
        window: Some(Window { from: 34.0, to: 55.0, text: "open 34 to 55 s".to_owned() }),
        heat_off: Some(45.0),
    }
}

fn field() -> Envelope {
    let state = |name: &str, axial, angle, basis| State {
        name: name.to_owned(),
        axial,
        angle,
        plus_minus: (0.12, 0.025),
        basis,
    };
    Envelope {
        heights: "angle at the pack, degrees".to_owned(),
        run: "mm axial".to_owned(),
        allowed: vec![(-1.8, 0.0), (0.0, 0.5), (1.8, 0.0)],
        fitting: Some(vec![(-0.6, 0.0), (0.0, 0.165), (0.6, 0.0)]),
        states: vec![
            state("cold", 0.45, 0.09, Basis::Measured),
            state("hot", -0.25, 0.16, Basis::WorkedOut),
        ],
    }
}
