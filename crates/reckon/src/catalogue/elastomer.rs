//! Elastomer couplings: what steady torque, shock and swings ask of them.

use couplings::din_740::{
    From, SOURCE, Shock, Swings, shock, start_factor, steady, swings, temperature_factor,
};
use quantities::{Kind, ThermodynamicTemperature};

use super::choices::not_held;
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const SIDES: [(&str, From); 2] = [("driver", From::Driver), ("load", From::Load)];
const SIDE_NAMES: &[&str] = &names(&SIDES);

const TEMPERATURE: Input =
    Input::quantity("temperature", Kind::Temperature, "temperature at the coupling").or("20 °C");
const TEMPERATURE_FACTOR: Output =
    Output::value("temperature_factor", Kind::Number, "factor for that temperature");
const VALID: &str =
    "natural-rubber-like elastomers, −30 to 80 °C; the maker’s own factors come first";

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "elastomer-steady",
        does: "Rated torque that a steady torque asks of an elastomer coupling.",
        inputs: &[Input::quantity("torque", Kind::Torque, "steady torque"), TEMPERATURE],
        outputs: &[
            Output::value("needed", Kind::Torque, "rated torque at least"),
            TEMPERATURE_FACTOR,
        ],
        valid: VALID,
        source: SOURCE,
        answer: steady_torque,
    },
    Calculation {
        name: "elastomer-shock",
        does: "Greatest torque that a shock asks of an elastomer coupling.",
        inputs: &[
            Input::choice("from", SIDE_NAMES, "on which side the shock arises").or("driver"),
            Input::quantity("peak", Kind::Torque, "peak torque there"),
            Input::quantity(
                "driver_inertia",
                Kind::Inertia,
                "inertia of the driver, at the coupling",
            ),
            Input::quantity("load_inertia", Kind::Inertia, "inertia of the load, at the coupling"),
            Input::quantity("shock_factor", Kind::Number, "1.5 light, 1.8 medium, 2.2 heavy")
                .or("1.8"),
            Input::quantity("starts_per_hour", Kind::Count, "starts in an hour").or("10"),
            Input::quantity(
                "load_torque",
                Kind::Torque,
                "the load’s torque that the shock rides on",
            )
            .optional(),
            TEMPERATURE,
        ],
        outputs: &[
            Output::value("needed", Kind::Torque, "greatest torque of the coupling at least"),
            Output::value("in_coupling", Kind::Torque, "torque of the shock in the coupling"),
            Output::value("passes", Kind::Percent, "share of the peak that passes through"),
            Output::value("start_factor", Kind::Number, "factor for the starts"),
            TEMPERATURE_FACTOR,
        ],
        valid: VALID,
        source: SOURCE,
        answer: shock_torque,
    },
    Calculation {
        name: "elastomer-swing",
        does: "Vibratory torque rating that an alternating torque asks of an elastomer coupling.",
        inputs: &[
            Input::quantity("torque", Kind::Torque, "alternating torque, to each side"),
            Input::quantity("frequency", Kind::Speed, "its frequency"),
            TEMPERATURE,
        ],
        outputs: &[
            Output::value("needed", Kind::Torque, "vibratory torque rating at least"),
            Output::value("frequency_factor", Kind::Number, "1 up to 10 Hz, √(f/10 Hz) above"),
            TEMPERATURE_FACTOR,
        ],
        valid: VALID,
        source: SOURCE,
        answer: swing_torque,
    },
];

fn warmth(given: &Given) -> Result<f64, ReckonError> {
    let at = given.quantity::<ThermodynamicTemperature>("temperature")?;
    temperature_factor(at).ok_or_else(|| not_held("that temperature"))
}

fn steady_torque(given: &Given) -> Result<Answer, ReckonError> {
    let factor = warmth(given)?;
    let needed = steady(given.quantity("torque")?, factor)?;
    Ok(given.answer().with("needed", needed).with("temperature_factor", factor))
}

fn shock_torque(given: &Given) -> Result<Answer, ReckonError> {
    let starts = start_factor(given.count("starts_per_hour")?);
    let asked = Shock {
        from: given.pick("from", &SIDES)?,
        peak: given.quantity("peak")?,
        inertias: [given.quantity("driver_inertia")?, given.quantity("load_inertia")?],
        shock_factor: given.number("shock_factor")?,
        start_factor: starts.ok_or_else(|| not_held("so many starts"))?,
        temperature_factor: warmth(given)?,
        load: given.optional("load_torque"),
    };
    let need = shock(asked)?;
    let answer = given.answer().with("needed", need.needed).with("in_coupling", need.in_coupling);
    let answer = answer.with("passes", need.share).with("start_factor", asked.start_factor);
    let answer = answer.with("temperature_factor", asked.temperature_factor);
    Ok(answer.shown_by([need.working()]))
}

fn swing_torque(given: &Given) -> Result<Answer, ReckonError> {
    let factor = warmth(given)?;
    let asked = Swings {
        torque: given.quantity("torque")?,
        frequency: given.quantity("frequency")?,
        temperature_factor: factor,
    };
    let need = swings(asked)?;
    let answer = given.answer().with("needed", need.needed);
    let answer = answer.with("frequency_factor", need.frequency_factor);
    Ok(answer.with("temperature_factor", factor).shown_by([need.working()]))
}
