//! Hubs on tapered shaft ends.

use mechanics::interference::hub::{Metal, PressFit};
use mechanics::taper::{Taper, dilation};
use quantities::{Basis, Force, Kind, Length, Source, Value};
use tables::pullers;

use super::choices::{metal, slices};
use super::press::{
    BEARS, FLANGE_LENGTH, FLANGE_OUTSIDE, HUB, HUB_RISE, JOINT, LENGTH, OUTSIDE, SHAFT, SHAFT_BORE,
    SHAFT_RISE, SLICE_LENGTHS, SLICE_OUTSIDES, SPEED, fit, running,
};
use super::shown;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const ONE_IN: Input = Input::quantity(
    "one_in",
    Kind::Number,
    "taper on the diameter: one in so much; 16 is 3/4 in per foot",
);
const CONE: Source = Source::new("geometry and statics of a cone", "", Basis::Computed);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "taper-draw-up",
        does: "How far to draw a hub up its taper for an interference.",
        inputs: &[
            ONE_IN,
            Input::quantity("interference", Kind::Allowance, "interference wanted, with its ±"),
        ],
        outputs: &[Output::value(
            "distance",
            Kind::Offset,
            "along the shaft, from metal touching metal",
        )],
        valid: "tapers no steeper than one in two; metal touching metal at the start",
        source: CONE,
        answer: draw_up,
    },
    Calculation {
        name: "taper-interference",
        does: "The interference that a draw-up on a taper gives.",
        inputs: &[ONE_IN, Input::quantity("distance", Kind::Offset, "drawn up by, with its ±")],
        outputs: &[Output::value("interference", Kind::Allowance, "on the diameter")],
        valid: "tapers no steeper than one in two; metal touching metal at the start",
        source: CONE,
        answer: drawn,
    },
    Calculation {
        name: "taper-of-sizes",
        does: "The taper between two diameters.",
        inputs: &[
            Input::quantity("large", Kind::Size, "large diameter"),
            Input::quantity("small", Kind::Size, "small diameter"),
            Input::quantity("length", Kind::Length, "length between them"),
        ],
        outputs: &[
            Output::value("one_in", Kind::Number, "one in so much, on the diameter"),
            Output::value("on_diameter", Kind::Slope, "change of diameter per length"),
            Output::value("half_angle", Kind::Degrees, "half of the cone’s angle"),
        ],
        valid: "tapers no steeper than one in two",
        source: CONE,
        answer: between,
    },
    Calculation {
        name: "taper-forces",
        does: "What pushes a hub off its taper, what holds it, and what draws it off or up.",
        inputs: &[
            ONE_IN,
            Input::quantity("normal_force", Kind::Force, "all that presses on the joint"),
            Input::quantity("friction", Kind::Number, "friction; 0.02 on a film of oil").or("0.14"),
        ],
        outputs: &[
            Output::value("push_off", Kind::Force, "what the pressure pushes the hub off with"),
            Output::value("grip", Kind::Force, "what friction holds it with"),
            Output::value("to_draw_off", Kind::Force, "force to draw it off"),
            Output::value("to_draw_up", Kind::Force, "force to draw it up the last of its way"),
            Output::word("stays_on", "yes when friction alone keeps it on"),
        ],
        valid: "a hub that comes off by itself must be caught by a nut or a stop",
        source: CONE,
        answer: forces,
    },
    Calculation {
        name: "taper-fit",
        does: "What a hub on a tapered shaft end holds: pressure, torque, and what draws it off.",
        inputs: &[
            ONE_IN,
            Input::quantity("small", Kind::Length, "diameter of the joint at the hub’s small end"),
            Input::quantity("distance", Kind::Offset, "drawn up by, from metal touching metal"),
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
            Input::quantity("friction", Kind::Number, "friction that can be counted on").or("0.14"),
            SPEED,
            HUB_RISE,
            SHAFT_RISE,
        ],
        outputs: &[
            Output::value("interference", Kind::Allowance, "interference that the draw-up gives"),
            Output::value("pressure", Kind::Stress, "mean pressure"),
            Output::value("stress", Kind::Stress, "highest equivalent stress at the bore"),
            Output::value("torque", Kind::Torque, "torque held"),
            Output::value("normal_force", Kind::Force, "all that presses on the joint"),
            Output::value("to_draw_off", Kind::Force, "force to draw it off"),
        ],
        valid: "the body at the small end, a flange at the large one; hub and shaft of one taper",
        source: Source::new("Lamé, slice by slice; statics of a cone", "", Basis::Computed),
        answer: on_taper,
    },
    Calculation {
        name: "oil-dilation",
        does: "Oil pressure that lifts a hub off its shaft, and the stress that it puts in the hub.",
        inputs: &[
            Input::quantity(
                "interference",
                Kind::Allowance,
                "interference that presses: the upper end",
            ),
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
            SPEED,
            HUB_RISE,
            SHAFT_RISE,
            Input::quantity("factor", Kind::Number, "oil pressure over fit pressure, 1.1 to 1.25")
                .or("1.25"),
        ],
        outputs: &[
            Output::value("fit_pressure", Kind::Stress, "highest pressure of the fit"),
            Output::value("oil_pressure", Kind::Stress, "oil pressure"),
            Output::value("hub_stress", Kind::Stress, "equivalent stress at the bore under it"),
        ],
        valid: "hubs made for oil injection; the stress and the pump set its end; nobody stands in line with the hub",
        source: pullers::SOURCE,
        answer: oil,
    },
];

fn taper(given: &Given) -> Result<Taper, ReckonError> {
    Ok(Taper::one_in(given.number("one_in")?)?)
}

fn draw_up(given: &Given) -> Result<Answer, ReckonError> {
    let drawn = taper(given)?.draw_up(given.estimate::<Length>("interference")?)?;
    Ok(given.answer().with("distance", drawn.distance).shown_by([drawn.working()]))
}

fn drawn(given: &Given) -> Result<Answer, ReckonError> {
    let (taper, distance) = (taper(given)?, given.estimate::<Length>("distance")?);
    let interference = taper.interference(distance)?;
    let shown = (interference.shown(Kind::Allowance), distance.shown(Kind::Length));
    let working = shown::drawn(shown.0, taper.on_diameter(), shown.1);
    Ok(given.answer().with("interference", interference).shown_by([working]))
}

fn between(given: &Given) -> Result<Answer, ReckonError> {
    let (large, small) = (given.quantity("large")?, given.quantity("small")?);
    let length = given.quantity("length")?;
    let taper = Taper::between(large, small, length)?;
    let slope = quantities::Angle::new::<uom::si::angle::radian>(taper.on_diameter());
    let answer = given.answer().with("one_in", 1.0 / taper.on_diameter());
    let working = shown::taper(Value::new(Kind::Slope, slope), large, small, length);
    let answer = answer.with("on_diameter", slope).with("half_angle", taper.half_angle());
    Ok(answer.shown_by([working]))
}

fn forces(given: &Given) -> Result<Answer, ReckonError> {
    let force = given.quantity::<Force>("normal_force")?;
    let axial = taper(given)?.axial(force, given.number("friction")?)?;
    let stays = if axial.is_self_locking() { "yes" } else { "no" };
    let answer = given.answer().with("push_off", axial.push_off).with("grip", axial.grip);
    let answer = answer.with("to_draw_off", axial.to_draw_off());
    let answer = answer.with("to_draw_up", axial.to_draw_up()).with("stays_on", stays);
    Ok(answer.shown_by([axial.working()]))
}

fn on_taper(given: &Given) -> Result<Answer, ReckonError> {
    let taper = taper(given)?;
    let (hub, shaft) = (Metal::from(metal(given, "hub")?), Metal::from(metal(given, "shaft")?));
    let (bore, small) = (given.quantity("shaft_bore")?, given.quantity("small")?);
    let fit = PressFit::tapered(bore, small, taper, &slices(given)?, hub, shaft)?;
    let fit = fit.bearing(given.number("bears")?)?;
    let interference = taper.interference(given.estimate("distance")?)?;
    let state = fit.state(interference.value, running(given)?)?;
    let friction = given.number("friction")?;
    let axial = taper.axial(state.normal_force, friction)?;
    let worst = state.worst_slice().map(|(_, slice)| slice.hub_bore.von_mises);
    let answer = given.answer().with("interference", interference);
    let answer = answer.with("pressure", state.mean_pressure()).with("stress", worst);
    let answer = answer.with("torque", state.torque(friction));
    let answer = answer.with("normal_force", state.normal_force);
    let answer = answer.with("to_draw_off", axial.to_draw_off());
    Ok(answer.shown_by([state.pressure_working(), state.torque_working(friction), axial.working()]))
}

fn oil(given: &Given) -> Result<Answer, ReckonError> {
    let state = fit(given)?.state(given.quantity("interference")?, running(given)?)?;
    let oil = dilation(&state, given.number("factor")?)?;
    let answer = given.answer().with("fit_pressure", oil.fit).with("oil_pressure", oil.oil);
    Ok(answer.with("hub_stress", oil.hub_stress).shown_by([oil.working()]))
}
