//! Interference fits: pressure, what a hub holds, its window, when it lets go.

use mechanics::interference::hub::{Metal, PressFit, Running, SliceState};
use mechanics::interference::release::LetsGo;
use mechanics::interference::{Joint, Sizes, contact_pressure};
use mechanics::window::{Allowed, Demand, LimitedBy, Window};
use mechanics::{Estimate, Range};
use quantities::{
    AngularVelocity, Basis, Kind, Length, Pressure, Source, TemperatureInterval, Torque,
};
use tables::materials::Elastic;

use super::choices::{MATERIAL, metal, slices};
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

pub(super) const JOINT: Input = Input::quantity("joint", Kind::Length, "diameter of the joint");
pub(super) const OUTSIDE: Input =
    Input::quantity("outside", Kind::Length, "outside diameter of the hub’s body").optional();
pub(super) const LENGTH: Input =
    Input::quantity("length", Kind::Length, "length of the hub on the shaft").optional();
pub(super) const FLANGE_OUTSIDE: Input =
    Input::quantity("flange_outside", Kind::Length, "outside of its flange or gear ring")
        .optional();
pub(super) const FLANGE_LENGTH: Input =
    Input::quantity("flange_length", Kind::Length, "length of that flange").optional();
pub(super) const SLICE_LENGTHS: Input = Input::quantities(
    "slice_lengths",
    Kind::Length,
    "or the hub slice by slice along the shaft, in place of outside and length: their lengths",
)
.optional();
pub(super) const SLICE_OUTSIDES: Input =
    Input::quantities("slice_outsides", Kind::Length, "outside diameter of each slice").optional();
pub(super) const BEARS: Input = Input::quantity(
    "bears",
    Kind::Percent,
    "part of the joint that bears: a keyway leaves 1 − w/(π·d), a taper what showed blue",
)
.or("100 %");
pub(super) const SHAFT_BORE: Input =
    Input::quantity("shaft_bore", Kind::Length, "bore of the shaft").or("0 mm");
pub(super) const HUB: Input = Input::word("hub", MATERIAL).or("steel");
pub(super) const SHAFT: Input = Input::word("shaft", MATERIAL).or("steel");
pub(super) const SPEED: Input = Input::quantity("speed", Kind::Speed, "speed").or("0 rpm");
pub(super) const HUB_RISE: Input =
    Input::quantity("hub_rise", Kind::TemperatureDifference, "hub over 20 °C").or("0 K");
pub(super) const SHAFT_RISE: Input =
    Input::quantity("shaft_rise", Kind::TemperatureDifference, "shaft over 20 °C").or("0 K");
pub(super) const FRICTION: Input =
    Input::quantity("friction", Kind::Number, "friction that can be counted on").or("0.14");

pub(super) const HUB_STRESS: Input = Input::quantity(
    "hub_stress",
    Kind::Stress,
    "stress allowed in the hub; 80 % of yield when left out",
)
.optional();
pub(super) const SHAFT_STRESS: Input =
    Input::quantity("shaft_stress", Kind::Stress, "the same in the shaft").optional();
pub(super) const FLATTENING: Input =
    Input::quantity("flattening", Kind::Allowance, "what flattening takes").or("0 mm");

const SHIGLEY: Source = Source::new(
    "Shigley’s Mechanical Engineering Design, 9th ed.",
    "Eq. 7-39, 7-48, 7-49",
    Basis::Read,
);
const VALID: &str = "rings slice by slice, elastic; torque and pull not both at once; no bound is given for the pressure at the hub’s edge";

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "contact-pressure",
        does: "Pressure between one ring and a shaft, and the stress at the ring’s bore.",
        inputs: &[
            Input::quantity(
                "interference",
                Kind::Allowance,
                "interference that presses, on the diameter",
            ),
            JOINT,
            Input::quantity("outside", Kind::Length, "outside diameter of the hub"),
            SHAFT_BORE,
            Input::quantity("hub_young", Kind::Stress, "Young’s modulus of the hub").or("207 GPa"),
            Input::quantity("hub_poisson", Kind::Number, "Poisson’s ratio of the hub").or("0.292"),
            Input::quantity("shaft_young", Kind::Stress, "Young’s modulus of the shaft")
                .or("207 GPa"),
            Input::quantity("shaft_poisson", Kind::Number, "Poisson’s ratio of the shaft")
                .or("0.292"),
        ],
        outputs: &[
            Output::value("pressure", Kind::Stress, "contact pressure"),
            Output::value("hoop", Kind::Stress, "hoop stress in the hub at its bore"),
            Output::value("equivalent", Kind::Stress, "equivalent stress there, von Mises"),
            Output::value("shaft_hoop", Kind::Stress, "hoop stress in the shaft at its surface"),
            Output::value("shaft_inside", Kind::Stress, "equivalent stress at the shaft’s bore"),
            Output::value("hub_growth", Kind::Allowance, "growth of the bore"),
            Output::value("shaft_shrink", Kind::Allowance, "how much smaller the shaft becomes"),
        ],
        valid: "both parts elastic; away from the ends of the hub; cold and at rest",
        source: Source::new(
            "Shigley’s Mechanical Engineering Design, 9th ed.",
            "Eq. 7-39",
            Basis::Read,
        ),
        answer: pressure,
    },
    Calculation {
        name: "press-fit",
        does: "What a hub, with its flange or any slices, holds on its shaft at speed and warm.",
        inputs: &[
            Input::quantity(
                "interference",
                Kind::Allowance,
                "interference that presses, with its ±",
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
            Input::quantity("friction_least", Kind::Number, "lowest friction").or("0.14"),
            Input::quantity("friction_greatest", Kind::Number, "highest friction").or("0.24"),
            SPEED,
            HUB_RISE,
            SHAFT_RISE,
        ],
        outputs: &[
            Output::value("torque_least", Kind::Torque, "torque held at least"),
            Output::value("torque_greatest", Kind::Torque, "torque held at most"),
            Output::value("pull_least", Kind::Force, "axial pull held at least"),
            Output::value("pull_greatest", Kind::Force, "axial pull held at most: to pull it off"),
            Output::value("pressure", Kind::Stress, "mean pressure at the upper end"),
            Output::value("stress", Kind::Stress, "highest equivalent stress at the bore"),
            Output::value("shaft_stress", Kind::Stress, "highest equivalent stress in the shaft"),
            Output::value(
                "lost",
                Kind::Allowance,
                "interference lost to speed and warmth, slice by slice",
            ),
        ],
        valid: VALID,
        source: SHIGLEY,
        answer: press_fit,
    },
    Calculation {
        name: "torque-and-pull",
        does: "How safely a fit holds a torque and an axial force at once.",
        inputs: &[
            Input::quantity(
                "interference",
                Kind::Allowance,
                "interference that presses: the lower end",
            ),
            Input::quantity("torque", Kind::Torque, "torque to hold"),
            Input::quantity("axial", Kind::Force, "axial force to hold").or("0 kN"),
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
            SPEED,
            HUB_RISE,
            SHAFT_RISE,
        ],
        outputs: &[
            Output::value("safety", Kind::Number, "what holds over what is asked"),
            Output::value("together", Kind::Force, "what both ask of the joint together"),
            Output::value("normal_force", Kind::Force, "all that presses on the joint"),
        ],
        valid: "friction alike over the joint; it resists the resultant of both",
        source: Source::new("Coulomb friction; statics", "", Basis::Computed),
        answer: both_at_once,
    },
    Calculation {
        name: "interference-window",
        does: "The least interference that holds a torque and the greatest that hub and shaft bear.",
        inputs: &[
            Input::quantity("torque", Kind::Torque, "torque to hold"),
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
        ],
        outputs: &[
            Output::value("least", Kind::Allowance, "least interference as measured"),
            Output::value("greatest", Kind::Allowance, "greatest interference as measured"),
            Output::word("window", "open or shut"),
            Output::word("limited_by", "what gives the greatest"),
        ],
        valid: VALID,
        source: Source::new(
            "Shigley’s Mechanical Engineering Design, 9th ed.; Bloch, Improving Machinery Reliability",
            "Eq. 7-39, 7-48; p. 217 for 80 % of yield",
            Basis::Read,
        ),
        answer: window,
    },
    Calculation {
        name: "hub-lets-go",
        does: "At what speed, or how much warmer than 20 °C, a hub no longer holds a torque.",
        inputs: &[
            Input::quantity("interference", Kind::Allowance, "interference that presses"),
            Input::quantity("torque", Kind::Torque, "torque to hold; none for lifting off")
                .or("0 N·m"),
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
            SPEED,
            HUB_RISE,
            SHAFT_RISE,
        ],
        outputs: &[
            Output::value("at_speed", Kind::Speed, "speed at which it lets go, warm as given"),
            Output::word("by_speed", "already, at the speed, or never"),
            Output::value(
                "at_rise",
                Kind::TemperatureDifference,
                "hub over 20 °C at which it lets go, at the given speed",
            ),
            Output::word("by_warmth", "already, at the rise, or never"),
        ],
        valid: VALID,
        source: Source::new(
            "Timoshenko and Goodier, Theory of Elasticity",
            "rotating disks",
            Basis::Memory,
        ),
        answer: lets_go,
    },
];

fn pressure(given: &Given) -> Result<Answer, ReckonError> {
    let elastic = |young, poisson| -> Result<Elastic, ReckonError> {
        Ok(Elastic { young: given.quantity::<Pressure>(young)?, poisson: given.number(poisson)? })
    };
    let sizes = Sizes {
        shaft_bore: given.quantity("shaft_bore")?,
        joint: given.quantity("joint")?,
        hub_outside: given.quantity("outside")?,
    };
    let hub = elastic("hub_young", "hub_poisson")?;
    let shaft = elastic("shaft_young", "shaft_poisson")?;
    let contact =
        contact_pressure(&Joint::new(sizes, hub, shaft)?, given.quantity("interference")?)?;
    let (bore, surface) = (contact.hub_bore(), contact.shaft_surface());
    let answer = given.answer().with("pressure", contact.pressure);
    let answer = answer.with("hoop", bore.hoop).with("equivalent", bore.von_mises);
    let answer = answer.with("shaft_hoop", surface.hoop);
    let answer = answer.with("shaft_inside", contact.shaft_inside().von_mises);
    let answer = answer.with("hub_growth", contact.hub_growth());
    let answer = answer.with("shaft_shrink", contact.shaft_shrink());
    Ok(answer.shown_by([contact.working(), bore.working("bore of the hub")]))
}

/// The hub and shaft of the inputs.
pub(super) fn fit(given: &Given) -> Result<PressFit, ReckonError> {
    let (hub, shaft) = (Metal::from(metal(given, "hub")?), Metal::from(metal(given, "shaft")?));
    let (bore, joint) = (given.quantity("shaft_bore")?, given.quantity("joint")?);
    Ok(PressFit::new(bore, joint, &slices(given)?, hub, shaft)?.bearing(given.number("bears")?)?)
}

/// Speed and warmth of the inputs.
pub(super) fn running(given: &Given) -> Result<Running, ReckonError> {
    Ok(Running {
        speed: given.quantity::<AngularVelocity>("speed")?,
        hub_rise: given.quantity::<TemperatureInterval>("hub_rise")?,
        shaft_rise: given.quantity::<TemperatureInterval>("shaft_rise")?,
    })
}

fn press_fit(given: &Given) -> Result<Answer, ReckonError> {
    let fit = fit(given)?;
    let interference: Estimate<Length> = given.estimate("interference")?;
    let friction = Range::new(given.number("friction_least")?, given.number("friction_greatest")?);
    let grip = fit.grip(interference, friction, running(given)?)?;
    let worst = grip.most.worst_slice().map(|(_, slice)| slice);
    let shaft = grip.most.slices.iter().map(|slice| slice.shaft.von_mises);
    let shaft = shaft.reduce(|a, b| if b > a { b } else { a });
    let lost: Vec<Length> = grip.most.slices.iter().map(|slice| slice.lost).collect();
    let answer = given.answer().with("torque_least", grip.torque.low);
    let answer = answer.with("torque_greatest", grip.torque.high);
    let answer = answer.with("pull_least", grip.axial.low).with("pull_greatest", grip.axial.high);
    let answer = answer.with("pressure", grip.most.mean_pressure());
    let answer = answer.with("stress", worst.map(|slice| slice.hub_bore.von_mises));
    let answer = answer.with("shaft_stress", shaft).with("lost", lost);
    let answer = answer.shown_by(worst.map(SliceState::left_working));
    Ok(answer.shown_by([grip.least.as_ref().unwrap_or(&grip.most).torque_working(friction.low)]))
}

fn both_at_once(given: &Given) -> Result<Answer, ReckonError> {
    let state = fit(given)?.state(given.quantity("interference")?, running(given)?)?;
    let (torque, axial) = (given.quantity("torque")?, given.quantity("axial")?);
    let hold = state.hold(given.number("friction")?, torque, axial)?;
    let answer = given.answer().with("safety", hold.safety).with("together", hold.together);
    Ok(answer.with("normal_force", hold.normal_force).shown_by([hold.working()]))
}

/// The window of interference for what the inputs ask.
pub(super) fn window_of(given: &Given) -> Result<Window, ReckonError> {
    let demand = Demand {
        torque: given.quantity::<Torque>("torque")?,
        safety: given.number("safety")?,
        friction: given.number("friction")?,
        running: running(given)?,
        flattening: given.quantity("flattening")?,
    };
    let hub = allowed(given, "hub_stress", "hub")?;
    let shaft = allowed(given, "shaft_stress", "shaft")?;
    Ok(fit(given)?.window(demand, Allowed { hub, shaft })?)
}

/// What gives the greatest interference that is borne.
pub(super) fn limited(window: &Window) -> Option<String> {
    window.limited_by.map(|limit| match limit {
        LimitedBy::Hub(slice) => format!("bore of the hub, slice {}", slice + 1),
        LimitedBy::Shaft => "shaft".to_owned(),
    })
}

fn window(given: &Given) -> Result<Answer, ReckonError> {
    let window = window_of(given)?;
    let edge = |edge: &Option<mechanics::window::Edge>| edge.as_ref().map(|edge| edge.interference);
    let answer = given.answer().with("least", edge(&window.least));
    let answer = answer.with("greatest", edge(&window.greatest));
    let answer = answer.with("window", if window.is_open() { "open" } else { "shut" });
    let answer = answer.with("limited_by", limited(&window));
    Ok(answer.shown_by(window.least_working()).shown_by(window.greatest_working()))
}

/// 80 % of yield at the bore is found good (Bloch, *Improving Machinery Reliability*, p. 217).
const PART_OF_YIELD: f64 = 0.8;

fn allowed(given: &Given, stress: &'static str, of: &'static str) -> Result<Pressure, ReckonError> {
    if let Some(stress) = given.optional(stress) {
        return Ok(stress);
    }
    let metal = metal(given, of)?;
    let yields = metal.yield_strength.map(|strength| strength * PART_OF_YIELD);
    yields.ok_or_else(|| {
        ReckonError::not_valid(format!(
            "no yield strength is held for {}: give {stress}",
            metal.name
        ))
    })
}

fn lets_go(given: &Given) -> Result<Answer, ReckonError> {
    let (fit, running) = (fit(given)?, running(given)?);
    let (interference, friction) = (given.quantity("interference")?, given.number("friction")?);
    let torque = given.quantity("torque")?;
    let speed = fit.lets_go_at_speed(interference, friction, torque, running)?;
    let rise = fit.lets_go_at_hub_rise(interference, friction, torque, running)?;
    let mut workings = Vec::new();
    if let LetsGo::At(at) = speed {
        let ends = [running, Running { speed: at, ..running }];
        workings.push(fit.release(interference, friction, torque, ends)?.speed_working());
    }
    if let LetsGo::At(at) = rise {
        let ends = [running, Running { hub_rise: at, ..running }];
        workings.push(fit.release(interference, friction, torque, ends)?.warmth_working());
    }
    let (at_speed, by_speed) = told(speed, "at the speed");
    let (at_rise, by_warmth) = told(rise, "at the rise");
    let answer = given.answer().with("at_speed", at_speed).with("by_speed", by_speed);
    Ok(answer.with("at_rise", at_rise).with("by_warmth", by_warmth).shown_by(workings))
}

fn told<Q>(end: LetsGo<Q>, word: &'static str) -> (Option<Q>, &'static str) {
    match end {
        LetsGo::Already => (None, "already"),
        LetsGo::At(at) => (Some(at), word),
        LetsGo::Never => (None, "never"),
    }
}
