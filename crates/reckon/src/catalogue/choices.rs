//! Words that several calculations share, and what they stand for.

use couplings::Load;
use lineup::Machine;
use lineup::clock::{Clock, View};
use mechanics::Slice;
use mechanics::heat::expansion::Expansion;
use quantities::{Length, System, TemperatureCoefficient};
use tables::materials::{Material, material};

use crate::calculation::names;
use crate::{Given, ReckonError, error};

pub(super) const MATERIAL: &str = "a material that is known here, such as steel or cast iron";

pub(super) const MACHINES: [(&str, Machine); 2] =
    [("driver", Machine::Driver), ("driven", Machine::Driven)];
pub(super) const MACHINE_NAMES: &[&str] = &names(&MACHINES);

pub(super) const VIEWS: [(&str, View); 2] =
    [("from driver", View::FromDriver), ("from driven", View::FromDriven)];
pub(super) const VIEW_NAMES: &[&str] = &names(&VIEWS);

pub(super) const LOADS: [(&str, Load); 4] = [
    ("uniform", Load::Uniform),
    ("moderate", Load::Moderate),
    ("heavy", Load::Heavy),
    ("extreme", Load::Extreme),
];
pub(super) const LOAD_NAMES: &[&str] = &names(&LOADS);

pub(super) const SYSTEMS: [(&str, System); 2] =
    [("metric", System::Metric), ("inch", System::Inch)];
pub(super) const SYSTEM_NAMES: &[&str] = &names(&SYSTEMS);

pub(super) const POSITIONS: &str = "12; 3; 6; 9";

/// The material that an input names.
pub(super) fn metal(given: &Given, input: &'static str) -> Result<&'static Material, ReckonError> {
    let name = given.word(input);
    material(name).ok_or_else(|| {
        let known: Vec<&str> = tables::materials::names().collect();
        let nearest = error::nearest(name, known.iter().copied());
        let meant = error::did_you_mean(nearest.as_deref());
        Given::unreadable(input, format!("“{name}” is none of: {}{meant}", known.join(", ")))
    })
}

/// How a metal grows: the coefficient that was given, else that of the material; for steel one that
/// rises with temperature.
pub(super) fn expansion(
    given: &Given,
    coefficient: &'static str,
    of: &'static str,
) -> Result<Expansion, ReckonError> {
    if let Some(given) = given.optional::<TemperatureCoefficient>(coefficient) {
        return Ok(Expansion::Constant(given));
    }
    let metal = metal(given, of)?;
    let steel = metal.name == "steel";
    Ok(if steel { Expansion::Steel } else { Expansion::Constant(metal.expansion) })
}

/// Clock positions as somebody with that view names them.
pub(super) fn clocks(
    given: &Given,
    positions: &'static str,
    view: View,
) -> Result<Vec<Clock>, ReckonError> {
    let read = |text: &String| Clock::read(text, view);
    let clocks: Result<Vec<Clock>, _> = given.words(positions).iter().map(read).collect();
    clocks.map_err(|error| Given::unreadable(positions, error.to_string()))
}

/// The hub’s slices: as listed, from the gap inwards, or from body and flange.
pub(super) fn slices(given: &Given) -> Result<Vec<Slice>, ReckonError> {
    let lengths = given.listed::<Length>("slice_lengths");
    let outsides = given.listed::<Length>("slice_outsides");
    if lengths.is_empty() && outsides.is_empty() {
        return body_and_flange(given);
    }
    if lengths.len() != outsides.len() {
        let why = format!(
            "{} slice_lengths and {} slice_outsides: each slice wants both",
            lengths.len(),
            outsides.len()
        );
        return Err(ReckonError::not_valid(why));
    }
    let whole = ["length", "outside", "flange_outside", "flange_length"];
    if let Some(twice) = whole.iter().find(|name| given.optional::<Length>(name).is_some()) {
        let why = format!("the hub is given as slices and by its {twice}: leave one of them out");
        return Err(ReckonError::not_valid(why));
    }
    let slice = |(length, outside)| Slice { length, outside };
    Ok(lengths.into_iter().zip(outsides).map(slice).collect())
}

fn body_and_flange(given: &Given) -> Result<Vec<Slice>, ReckonError> {
    let length = given.quantity::<Length>("length")?;
    let body = Slice { length, outside: given.quantity("outside")? };
    let flange = [given.optional("flange_outside"), given.optional("flange_length")];
    match flange {
        [None, None] => Ok(vec![body]),
        [Some(outside), Some(part)] if part < length => {
            Ok(vec![Slice { length: length - part, ..body }, Slice { length: part, outside }])
        }
        [Some(_), Some(_)] => {
            Err(ReckonError::not_valid("the flange is at least as long as the whole hub"))
        }
        _ => Err(ReckonError::not_valid("a flange needs both flange_outside and flange_length")),
    }
}

/// A table has no row for a case.
pub(super) fn not_held(what: &str) -> ReckonError {
    ReckonError::not_valid(format!("no figure is held for {what}"))
}
