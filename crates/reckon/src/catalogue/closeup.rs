//! Closing up: bolts.

use mechanics::bolts::{preload_from_proof, tightening_torque};
use mechanics::order::tightening_order;
use quantities::{Basis, Kind, Ratio, Source, Value};
use tables::nut_factor::{self, Threads};

use crate::{Answer, Calculation, Given, Input, Outcome, Output, ReckonError};

const STATES: &[&str] = &["dry", "zinc plated", "oiled", "lubricated", "molybdenum"];

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "bolt-torque",
        does: "Tightening torque of a bolt from its size, grade and threads.",
        inputs: &[
            Input::word("bolt", "size and grade: M16 8.8, 5/8-11 grade 5"),
            Input::choice("threads", STATES, "state of threads and nut face").or("dry"),
            Input::quantity("fraction", Kind::Percent, "preload, as a part of the proof load").or("75 %"),
        ],
        outputs: &[
            Output::value("torque", Kind::Torque, "tightening torque"),
            Output::value("preload", Kind::Force, "preload that it gives"),
        ],
        valid: "an estimate: preload scatters 25 to 35 % from torque alone; the maker’s torque comes first",
        source: Source::common_practice("nut factor"),
        answer: bolt_torque,
    },
    Calculation {
        name: "tightening-order",
        does: "Order in which the bolts of a circle are tightened.",
        inputs: &[Input::quantity("bolts", Kind::Count, "bolts in the circle")],
        outputs: &[Output::word("order", "places counted round from the first")],
        valid: "two bolts or more, evenly spaced",
        source: Source::new("common practice", "opposite, then the widest space left", Basis::Memory),
        answer: order,
    },
];

fn bolt_torque(given: &Given) -> Result<Answer, ReckonError> {
    let bolt = tables::bolts::bolt(given.word("bolt")?).map_err(ReckonError::not_valid)?;
    let threads = match given.word("threads")? {
        "zinc plated" => Threads::ZincPlated,
        "oiled" => Threads::Oiled,
        "lubricated" => Threads::Lubricated,
        "molybdenum" => Threads::Molybdenum,
        _ => Threads::Dry,
    };
    let fraction = given.quantity::<Ratio>("fraction")?.value;
    let preload = preload_from_proof(bolt.proof_load(), fraction).map_err(ReckonError::not_valid)?;
    let factor = nut_factor::nut_factor(threads);
    let tightening =
        tightening_torque(factor, preload, bolt.thread.diameter).map_err(ReckonError::not_valid)?;
    Ok(Answer::default()
        .with("torque", Value::new(Kind::Torque, tightening.torque))
        .with("preload", Value::new(Kind::Force, tightening.preload))
        .shown_by(tightening.working()))
}

fn order(given: &Given) -> Result<Answer, ReckonError> {
    let bolts = given.quantity::<Ratio>("bolts")?.value;
    let whole = (2_u16..=400).find(|n| (f64::from(*n) - bolts).abs() < 1e-9);
    let order = whole.and_then(|n| tightening_order(usize::from(n)));
    let order = order.ok_or_else(|| {
        ReckonError::NotValid(format!("{bolts} is not a whole number of bolts, two or more"))
    })?;
    let places = order.iter().map(ToString::to_string).collect();
    Ok(Answer::default().and("order", Outcome::Words(places)))
}
