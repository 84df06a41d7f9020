//! What the machines ask of the coupling.

use couplings::rating::start;
use couplings::service::{factor, least_in_special_trains, load_of, usual};
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
        name: "usual-service-factor",
        does: "Service factors that are usual for a driver and a driven machine, by their names.",
        inputs: &[
            Input::word("driver", "what drives, such as electric motor or diesel engine"),
            Input::word("machine", "what is driven, such as centrifugal pump or crusher"),
        ],
        outputs: &[
            Output::value("least", Kind::Number, "least factor"),
            Output::value("greatest", Kind::Number, "greatest factor"),
            Output::word("machines", "machines of the table that it may be"),
        ],
        valid: "a suggestion: the coupling maker’s own table comes first",
        source: service_factors::SOURCE,
        answer: usual_factor,
    },
    Calculation {
        name: "special-train-factor",
        does: "The least service factor that special-purpose trains ask for, by kind of coupling.",
        inputs: &[Input::word("kind", "kind of coupling: gear, disc, diaphragm")],
        outputs: &[
            Output::value("service_factor", Kind::Number, "least factor"),
            Output::word("source", "how it is known"),
        ],
        valid: "special-purpose trains of the oil and gas trade",
        source: service_factors::SPECIAL_PURPOSE,
        answer: special_train,
    },
    Calculation {
        name: "starting-torque",
        does: "Torque that passes through a stiff coupling while its driver speeds up.",
        inputs: &[
            Input::quantity("torque", Kind::Torque, "torque of the driver"),
            Input::quantity(
                "driver_inertia",
                Kind::Inertia,
                "inertia of the driver, at the coupling",
            ),
            Input::quantity(
                "load_inertia",
                Kind::Inertia,
                "inertia of what is driven, at the coupling",
            ),
            Input::quantity("load_torque", Kind::Torque, "the load’s torque while it starts")
                .optional(),
        ],
        outputs: &[Output::value("passes", Kind::Torque, "what passes through the coupling")],
        valid: "two stiff rotors and a torque that rises slowly; applied at once it can double",
        source: Source::new("two stiff rotors that speed up as one", "", Basis::Computed),
        answer: starting,
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

fn usual_factor(given: &Given) -> Result<Answer, ReckonError> {
    let usual = usual(given.word("driver"), given.word("machine"));
    let usual = usual.ok_or_else(|| not_held("that driver and that machine"))?;
    let [least, greatest] = usual.factors;
    let answer = given.answer().with("least", least).with("greatest", greatest);
    Ok(answer.with("machines", usual.machines))
}

fn special_train(given: &Given) -> Result<Answer, ReckonError> {
    let held = least_in_special_trains(given.word("kind"));
    let held = held.ok_or_else(|| not_held("that kind of coupling"))?;
    Ok(given.answer().with("service_factor", held.factor).with("source", held.source.to_string()))
}

fn starting(given: &Given) -> Result<Answer, ReckonError> {
    let inertias = [given.quantity("driver_inertia")?, given.quantity("load_inertia")?];
    let start = start(given.quantity("torque")?, given.optional("load_torque"), inertias)?;
    Ok(given.answer().with("passes", start.passes).shown_by([start.working()]))
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
