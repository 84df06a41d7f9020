//! Choosing a fit: what holds, is borne and goes on hot, and the classes that lie in it.

use mechanics::window::{Edge, Lies};
use quantities::{Basis, Kind, Length, Source, TemperatureInterval, ThermodynamicTemperature};
use tables::fits::{self, Fit};

use super::choices::{SYSTEM_NAMES, SYSTEMS};
use super::heat::{CLEARANCE, HUB_EXPANSION, LOSS, SHAFT_EXPANSION, SHAFT_TEMPERATURE, opening_at};
use super::press::{
    BEARS, FLANGE_LENGTH, FLANGE_OUTSIDE, FLATTENING, FRICTION, HUB, HUB_RISE, HUB_STRESS, JOINT,
    LENGTH, OUTSIDE, SHAFT, SHAFT_BORE, SHAFT_RISE, SHAFT_STRESS, SLICE_LENGTHS, SLICE_OUTSIDES,
    SPEED, limited, window_of,
};
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

pub(super) const ALL: &[Calculation] = &[Calculation {
    name: "choose-fit",
    does: "Which fits hold a torque, are borne, and still go on with the hub below its temperature limit.",
    inputs: &[
        Input::quantity("torque", Kind::Torque, "torque to hold by friction alone"),
        Input::quantity("safety", Kind::Number, "times this").or("2"),
        FRICTION,
        JOINT,
        OUTSIDE,
        LENGTH,
        FLANGE_OUTSIDE,
        FLANGE_LENGTH,
        SLICE_LENGTHS,
        SLICE_OUTSIDES,
        BEARS,
        SHAFT_BORE,
        HUB,
        SHAFT,
        HUB_STRESS,
        SHAFT_STRESS,
        FLATTENING,
        SPEED,
        HUB_RISE,
        SHAFT_RISE,
        Input::quantity("hub_limit", Kind::Temperature, "the hub may be no hotter than this")
            .optional(),
        LOSS,
        CLEARANCE,
        HUB_EXPANSION,
        SHAFT_EXPANSION,
        SHAFT_TEMPERATURE,
        Input::words("fits", "fits to try, such as H7/s6; FN2; the usual ones when left out")
            .optional(),
        Input::choice("units", SYSTEM_NAMES, "which usual ones: ISO 286 or ANSI B4.1").or("metric"),
        Input::quantity("nominal", Kind::Size, "nominal size; the joint’s when left out")
            .optional(),
    ],
    outputs: &[
        Output::value("least", Kind::Allowance, "least interference that holds, as measured"),
        Output::value("borne", Kind::Allowance, "greatest that hub and shaft bear"),
        Output::value(
            "goes_on",
            Kind::Allowance,
            "greatest that goes on with the hub at its limit",
        ),
        Output::value("greatest", Kind::Allowance, "the smaller of the two"),
        Output::word("window", "open or shut"),
        Output::word("limited_by", "what gives the greatest"),
        Output::word("inside", "fits that lie in it whole"),
        Output::word("partly", "fits that lie in it in part"),
        Output::word("outside", "fits that lie outside"),
    ],
    valid: "rings slice by slice, elastic; the hub hot through and through; without a key’s help",
    source: Source::new(
        "Shigley’s Mechanical Engineering Design, 9th ed.; DIN 7190-1; ISO 286-1 and -2; ANSI B4.1",
        "Eq. 7-39, 7-48; joining temperature; limits of the fits",
        Basis::Memory,
    ),
    answer: choose,
}];

fn choose(given: &Given) -> Result<Answer, ReckonError> {
    let window = window_of(given)?;
    let joint = given.quantity::<Length>("joint")?;
    let opening = opening_at(given, joint, Length::default())?;
    let at_shaft = given.optional::<ThermodynamicTemperature>("hub_limit").map(|limit| {
        let loss = given.quantity::<TemperatureInterval>("loss")?;
        Ok::<_, ReckonError>(limit - loss)
    });
    let at_shaft = at_shaft.transpose()?;
    let goes_on = at_shaft.map(|hub| opening.opens(hub)).transpose()?;
    let hot = at_shaft.map(|hub| opening.opens_working(hub)).transpose()?;

    let edge = |edge: &Option<Edge>| edge.as_ref().map(|edge| edge.interference);
    let (least, borne, most) = (edge(&window.least), edge(&window.greatest), window.upper(goes_on));
    let open = least.zip(most).is_some_and(|(least, most)| least <= most);
    let by_heat = goes_on.is_some() && goes_on == most;
    let by = if by_heat { Some("the hub’s temperature".to_owned()) } else { limited(&window) };

    let answer = given.answer().with("least", least).with("borne", borne);
    let answer = answer.with("goes_on", goes_on).with("greatest", most);
    let answer = answer.with("window", if open { "open" } else { "shut" }).with("limited_by", by);
    let mut lying: [Vec<String>; 3] = Default::default();
    for (fit, low, high) in tried(given, joint)? {
        let place = match window.lies(low, high, goes_on) {
            Lies::Inside => 0,
            Lies::Partly => 1,
            Lies::Outside => 2,
        };
        lying[place].push(fit.to_string());
    }
    let [inside, partly, outside] = lying;
    let answer = answer.with("inside", inside).with("partly", partly).with("outside", outside);
    let answer = answer.shown_by(window.least_working()).shown_by(window.greatest_working());
    Ok(answer.shown_by(hot))
}

/// The fits to try with their least and greatest interference. Of the usual ones, those that the
/// tables do not hold for this size are left out; one that was asked for by name is an error.
fn tried(given: &Given, joint: Length) -> Result<Vec<(Fit, Length, Length)>, ReckonError> {
    let nominal = given.optional("nominal").unwrap_or(joint);
    let named = given.words("fits");
    if named.is_empty() {
        let usual = fits::usual(given.pick("units", &SYSTEMS)?);
        let held = usual.filter_map(|fit| Some((fit, fit.interference(nominal).ok()?)));
        return Ok(held.map(|(fit, (low, high))| (fit, low, high)).collect());
    }
    let mut found = Vec::with_capacity(named.len());
    for name in named {
        let fit: Fit = name.parse()?;
        let (low, high) = fit.interference(nominal)?;
        found.push((fit, low, high));
    }
    Ok(found)
}
