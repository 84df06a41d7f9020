//! What the machines ask of the coupling.

use couplings::service::{factor, load_of};
use mechanics::power::Duty;
use quantities::{Basis, Kind, Length, Source};
use tables::limits::shaft_runout;
use tables::service_factors::{self, Driver};

use super::choices::{LOAD_NAMES, LOADS, not_held};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const DRIVERS: [(&str, Driver); 3] = [
    ("electric motor", Driver::ElectricMotor),
    ("engine of four to twelve cylinders", Driver::EngineFourToTwelve),
    ("engine of one to three cylinders", Driver::EngineOneToThree),
];
const DRIVER_NAMES: &[&str] = &names(&DRIVERS);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "torque",
        does: "Torque from power and speed, with and without a service factor.",
        inputs: &[
            Input::quantity("power", Kind::Power, "power that the coupling carries"),
            Input::quantity("speed", Kind::Speed, "speed of the coupling"),
            Input::quantity("service_factor", Kind::Number, "service factor, 1 or more").or("1"),
        ],
        outputs: &[
            Output::value("torque", Kind::Torque, "torque at that power and speed"),
            Output::value("design_torque", Kind::Torque, "the same with the service factor"),
        ],
        valid: "steady running; power and speed above zero",
        source: Source::new("definition of power", "", Basis::Computed),
        answer: torque,
    },
    Calculation {
        name: "service-factor",
        does: "Service factor of a load by its driver.",
        inputs: &[
            Input::choice("load", LOAD_NAMES, "how the driven machine works"),
            Input::choice("driver", DRIVER_NAMES, "what drives").or("electric motor"),
        ],
        outputs: &[
            Output::value("service_factor", Kind::Number, "factor on the steady torque"),
            Output::word("source", "how it is known"),
        ],
        valid: "no factor of safety; the coupling maker’s own table comes first; none is held for extreme shock with an engine",
        source: service_factors::SOURCE,
        answer: service_factor,
    },
    Calculation {
        name: "machine-load",
        does: "How a driven machine loads its coupling, by its name.",
        inputs: &[Input::word("machine", "a driven machine, such as piston pump or crusher")],
        outputs: &[Output::word("load", "uniform, moderate, heavy or extreme")],
        valid: "the machines of the table",
        source: service_factors::SOURCE,
        answer: machine_load,
    },
    Calculation {
        name: "shaft-end-runout",
        does: "Total runout that a motor’s shaft end may have, midway along it.",
        inputs: &[Input::quantity("shaft", Kind::Size, "shaft diameter")],
        outputs: &[Output::value("most", Kind::Allowance, "total indicator reading at most")],
        valid: "shafts over 6 up to 630 mm; foot- and flange-mounted motors",
        source: Source::new("ANSI/EASA AR100-2015", "Table 2-4", Basis::Read),
        answer: shaft_end_runout,
    },
];

fn torque(given: &Given) -> Result<Answer, ReckonError> {
    let duty = duty(given)?;
    let answer = given.answer().with("torque", duty.torque());
    let answer = answer.with("design_torque", duty.design_torque());
    Ok(answer.shown_by([duty.working(), duty.design_working()]))
}

/// Power, speed and service factor.
pub(super) fn duty(given: &Given) -> Result<Duty, ReckonError> {
    let factor = given.quantity("service_factor")?;
    Ok(Duty::new(given.quantity("power")?, given.quantity("speed")?, factor)?)
}

fn service_factor(given: &Given) -> Result<Answer, ReckonError> {
    let (driver, load) = (given.pick("driver", &DRIVERS)?, given.pick("load", &LOADS)?);
    let held = factor(driver, load).ok_or_else(|| not_held("extreme shock with an engine"))?;
    Ok(given.answer().with("service_factor", held.factor).with("source", held.source.to_string()))
}

fn machine_load(given: &Given) -> Result<Answer, ReckonError> {
    let name = given.word("machine");
    let load = load_of(name).ok_or_else(|| {
        use service_factors::{Load, machines};
        let known: Vec<&str> = [Load::Uniform, Load::Medium, Load::Heavy]
            .into_iter()
            .flat_map(machines)
            .copied()
            .collect();
        Given::unreadable("machine", format!("“{name}” is none of: {}", known.join(", ")))
    })?;
    let word = LOADS.iter().find(|(_, held)| *held == load).map(|(word, _)| *word);
    Ok(given.answer().with("load", word))
}

fn shaft_end_runout(given: &Given) -> Result<Answer, ReckonError> {
    let limit = shaft_runout(given.quantity::<Length>("shaft")?);
    let limit = limit.ok_or_else(|| not_held("a shaft of that size"))?;
    Ok(given.answer().with("most", limit.most))
}
