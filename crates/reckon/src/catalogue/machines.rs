//! What the coupling has to carry.

use mechanics::power::Duty;
use quantities::{AngularVelocity, Basis, Kind, Power, Ratio, Source, Value};

use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

pub(super) const ALL: &[Calculation] = &[Calculation {
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
    valid: "steady running",
    source: Source::new("definition of power", "", Basis::Computed),
    answer: torque,
}];

fn torque(given: &Given) -> Result<Answer, ReckonError> {
    let power = given.quantity::<Power>("power")?;
    let speed = given.quantity::<AngularVelocity>("speed")?;
    let factor = given.quantity::<Ratio>("service_factor")?;
    let duty = Duty::new(power, speed, factor).map_err(ReckonError::not_valid)?;
    Ok(Answer::default()
        .with("torque", Value::new(Kind::Torque, duty.torque()))
        .with("design_torque", Value::new(Kind::Torque, duty.design_torque()))
        .shown_by(duty.working())
        .shown_by(duty.design_working()))
}
