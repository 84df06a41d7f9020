//! Measured sizes.

use mechanics::size::correction::Temperatures;
use mechanics::size::{Contact, Direction, Measurement, Reading};
use quantities::{
    Basis, Kind, Length, Source, TemperatureCoefficient, TemperatureInterval, ThermodynamicTemperature,
    Value,
};

use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

pub(super) const ALL: &[Calculation] = &[Calculation {
    name: "size",
    does: "Mean size at 20 °C from several readings of a bore or shaft, with its ±.",
    inputs: &[
        Input::quantities("readings", Kind::Size, "diameters as read"),
        Input::quantity("spread", Kind::Allowance, "± of one reading"),
        Input::quantity("part_temperature", Kind::Temperature, "temperature of the part").or("20 °C"),
        Input::quantity("instrument_temperature", Kind::Temperature, "temperature of the instrument").or("20 °C"),
        Input::quantity("temperature_spread", Kind::TemperatureDifference, "± of both temperatures").or("0 K"),
        Input::quantity("part_expansion", Kind::Expansion, "expansion of the part").or("11.5 µm/m/K"),
        Input::quantity("instrument_expansion", Kind::Expansion, "expansion of the instrument").or("11.5 µm/m/K"),
    ],
    outputs: &[
        Output::value("mean", Kind::Size, "mean size at 20 °C"),
        Output::value("least", Kind::Size, "smallest reading at 20 °C"),
        Output::value("greatest", Kind::Size, "largest reading at 20 °C"),
    ],
    valid: "readings spread evenly over the part; a two-point instrument",
    source: Source::new("JCGM 100:2008 (GUM)", "4.2 and 5.1.2; ISO 1 for 20 °C", Basis::Memory),
    answer: size,
}];

fn size(given: &Given) -> Result<Answer, ReckonError> {
    let spread = given.quantity::<Length>("spread")?;
    let readings = given.quantities::<Length>("readings")?;
    let reading =
        |size| Reading { station: Length::default(), direction: Direction::AlongKey, size, spread };
    let temperatures = Temperatures {
        part: given.quantity::<ThermodynamicTemperature>("part_temperature")?,
        instrument: given.quantity::<ThermodynamicTemperature>("instrument_temperature")?,
        part_expansion: given.quantity::<TemperatureCoefficient>("part_expansion")?,
        instrument_expansion: given.quantity::<TemperatureCoefficient>("instrument_expansion")?,
        spread: given.quantity::<TemperatureInterval>("temperature_spread")?,
        expansion_spread: TemperatureCoefficient::default(),
    };
    let measurement = Measurement {
        readings: readings.into_iter().map(reading).collect(),
        contact: Contact::TwoPoint,
        temperatures: Some(temperatures),
        setting: None,
        nominal: None,
    };
    let size = measurement.size().map_err(ReckonError::not_valid)?;
    Ok(Answer::default()
        .with("mean", size.mean.shown(Kind::Size))
        .with("least", Value::new(Kind::Size, size.least))
        .with("greatest", Value::new(Kind::Size, size.greatest))
        .shown_by(size.working())
        .shown_by(size.spread_working()))
}
