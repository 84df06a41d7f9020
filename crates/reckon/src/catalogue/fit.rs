//! Fits: limits by class, interference, pressure, what a fit holds.

use mechanics::interference::hub::{Metal, PressFit, Running};
use mechanics::interference::{Joint, Sizes, contact_pressure};
use mechanics::{Estimate, Range, Slice};
use quantities::{AngularVelocity, Basis, Kind, Length, Measured, Pressure, Ratio, Source, Value};
use tables::iso_286::{self, Class, Fit};
use tables::materials::{Elastic, Material, material};

use crate::{Answer, Calculation, Given, Input, Outcome, Output, ReckonError};

const MATERIALS: &str = "a material that is known here, such as steel or cast iron";

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "iso-limits",
        does: "Limits of a hole or a shaft of an ISO 286 class, such as H7 or p6.",
        inputs: &[
            Input::word("class", "class: capitals for a hole, small letters for a shaft"),
            Input::quantity("nominal", Kind::Size, "nominal size"),
        ],
        outputs: &[
            Output::value("upper", Kind::Allowance, "upper deviation"),
            Output::value("lower", Kind::Allowance, "lower deviation"),
            Output::value("largest", Kind::Size, "largest size"),
            Output::value("smallest", Kind::Size, "smallest size"),
        ],
        valid: "to 500 mm, wherever the tables hold letter and grade",
        source: iso_286::SOURCE,
        answer: limits,
    },
    Calculation {
        name: "iso-fit",
        does: "Least and greatest interference of an ISO 286 fit, such as H7/p6.",
        inputs: &[
            Input::word("fit", "fit, hole first: H7/p6"),
            Input::quantity("nominal", Kind::Size, "nominal size"),
        ],
        outputs: &[
            Output::value("least", Kind::Allowance, "least interference; − is clearance"),
            Output::value("greatest", Kind::Allowance, "greatest interference; − is clearance"),
            Output::word("sort", "clearance, transition or interference"),
        ],
        valid: "to 500 mm, wherever the tables hold letters and grades",
        source: iso_286::SOURCE,
        answer: iso_fit,
    },
    Calculation {
        name: "contact-pressure",
        does: "Pressure between one ring and a shaft, and the stress at the ring’s bore.",
        inputs: &[
            Input::quantity("interference", Kind::Allowance, "interference that presses, on the diameter"),
            Input::quantity("joint", Kind::Length, "diameter of the joint"),
            Input::quantity("outside", Kind::Length, "outside diameter of the hub"),
            Input::quantity("shaft_bore", Kind::Length, "bore of the shaft").or("0 mm"),
            Input::quantity("hub_young", Kind::Stress, "Young’s modulus of the hub").or("207 GPa"),
            Input::quantity("hub_poisson", Kind::Number, "Poisson’s ratio of the hub").or("0.292"),
            Input::quantity("shaft_young", Kind::Stress, "Young’s modulus of the shaft").or("207 GPa"),
            Input::quantity("shaft_poisson", Kind::Number, "Poisson’s ratio of the shaft").or("0.292"),
        ],
        outputs: &[
            Output::value("pressure", Kind::Stress, "contact pressure"),
            Output::value("hoop", Kind::Stress, "hoop stress in the hub at its bore"),
            Output::value("equivalent", Kind::Stress, "equivalent stress there, von Mises"),
            Output::value("hub_growth", Kind::Allowance, "growth of the bore"),
            Output::value("shaft_shrink", Kind::Allowance, "how much smaller the shaft becomes"),
        ],
        valid: "both parts elastic; away from the ends of the hub; cold and at rest",
        source: Source::new("Shigley’s Mechanical Engineering Design, 9th ed.", "Eq. 7-39", Basis::Read),
        answer: pressure,
    },
    Calculation {
        name: "press-fit",
        does: "What a hub of a body and a flange holds on its shaft, slice by slice, at speed.",
        inputs: &[
            Input::quantity("interference", Kind::Allowance, "interference that presses, with its ±"),
            Input::quantity("joint", Kind::Length, "diameter of the joint"),
            Input::quantity("outside", Kind::Length, "outside diameter of the hub’s body"),
            Input::quantity("length", Kind::Length, "length of the hub on the shaft"),
            Input::quantity("flange_outside", Kind::Length, "outside of its flange or gear ring").or(""),
            Input::quantity("flange_length", Kind::Length, "length of that flange").or(""),
            Input::quantity("shaft_bore", Kind::Length, "bore of the shaft").or("0 mm"),
            Input::word("hub", MATERIALS).or("steel"),
            Input::word("shaft", MATERIALS).or("steel"),
            Input::quantity("friction_least", Kind::Number, "lowest friction").or("0.14"),
            Input::quantity("friction_greatest", Kind::Number, "highest friction").or("0.24"),
            Input::quantity("speed", Kind::Speed, "speed").or("0 rpm"),
        ],
        outputs: &[
            Output::value("torque_least", Kind::Torque, "torque held at least"),
            Output::value("torque_greatest", Kind::Torque, "torque held at most"),
            Output::value("pull_least", Kind::Force, "axial pull held at least"),
            Output::value("pull_greatest", Kind::Force, "axial pull held at most: to pull it off"),
            Output::value("pressure", Kind::Stress, "mean pressure at the upper end"),
            Output::value("stress", Kind::Stress, "highest equivalent stress at the bore"),
        ],
        valid: "rings slice by slice, elastic; torque and pull not both at once; no bound is given for the pressure at the hub’s edge",
        source: Source::new("Shigley’s Mechanical Engineering Design, 9th ed.", "Eq. 7-39, 7-48, 7-49", Basis::Read),
        answer: press_fit,
    },
];

fn limits(given: &Given) -> Result<Answer, ReckonError> {
    let class: Class = given.word("class")?.parse().map_err(ReckonError::not_valid)?;
    let nominal = given.quantity::<Length>("nominal")?;
    let zone = class.limits(nominal).map_err(ReckonError::not_valid)?;
    Ok(Answer::default()
        .with("upper", Value::new(Kind::Allowance, zone.upper))
        .with("lower", Value::new(Kind::Allowance, zone.lower))
        .with("largest", Value::new(Kind::Size, nominal + zone.upper))
        .with("smallest", Value::new(Kind::Size, nominal + zone.lower)))
}

fn iso_fit(given: &Given) -> Result<Answer, ReckonError> {
    let fit: Fit = given.word("fit")?.parse().map_err(ReckonError::not_valid)?;
    let nominal = given.quantity::<Length>("nominal")?;
    let (least, greatest) = fit.interference(nominal).map_err(ReckonError::not_valid)?;
    let sort = match (least.value < 0.0, greatest.value > 0.0) {
        (false, _) => "interference",
        (true, true) => "transition",
        (true, false) => "clearance",
    };
    Ok(Answer::default()
        .with("least", Value::new(Kind::Allowance, least))
        .with("greatest", Value::new(Kind::Allowance, greatest))
        .and("sort", Outcome::Word(sort.to_owned())))
}

fn pressure(given: &Given) -> Result<Answer, ReckonError> {
    let elastic = |young, poisson| -> Result<Elastic, ReckonError> {
        let poisson = given.quantity::<Ratio>(poisson)?.value;
        Ok(Elastic { young: given.quantity::<Pressure>(young)?, poisson })
    };
    let sizes = Sizes {
        shaft_bore: given.quantity("shaft_bore")?,
        joint: given.quantity("joint")?,
        hub_outside: given.quantity("outside")?,
    };
    let (hub, shaft) = (elastic("hub_young", "hub_poisson")?, elastic("shaft_young", "shaft_poisson")?);
    let joint = Joint::new(sizes, hub, shaft).map_err(ReckonError::not_valid)?;
    let contact = contact_pressure(&joint, given.quantity("interference")?).map_err(ReckonError::not_valid)?;
    let stress = contact.hub_bore();
    Ok(Answer::default()
        .with("pressure", Value::new(Kind::Stress, contact.pressure))
        .with("hoop", Value::new(Kind::Stress, stress.hoop))
        .with("equivalent", Value::new(Kind::Stress, stress.von_mises))
        .with("hub_growth", Value::new(Kind::Allowance, contact.hub_growth()))
        .with("shaft_shrink", Value::new(Kind::Allowance, contact.shaft_shrink()))
        .shown_by(contact.working())
        .shown_by(stress.working("bore of the hub")))
}

pub(super) fn metal(given: &Given, input: &'static str) -> Result<&'static Material, ReckonError> {
    let name = given.word(input)?;
    material(name).ok_or_else(|| {
        let known: Vec<&str> = tables::materials::names().collect();
        let why = format!("“{name}” is none of: {}", known.join(", "));
        ReckonError::Unreadable { input: input.to_owned(), why }
    })
}

/// The hub's slices from body and flange.
pub(super) fn slices(given: &Given) -> Result<Vec<Slice>, ReckonError> {
    let length = given.quantity::<Length>("length")?;
    let body = Slice { length, outside: given.quantity("outside")? };
    let flange = given.optional::<Length>("flange_outside")?.zip(given.optional::<Length>("flange_length")?);
    Ok(match flange {
        None => vec![body],
        Some((outside, part)) if part < length => {
            vec![Slice { length: length - part, ..body }, Slice { length: part, outside }]
        }
        Some(_) => return Err(ReckonError::NotValid("the flange is as long as the hub".into())),
    })
}

fn press_fit(given: &Given) -> Result<Answer, ReckonError> {
    let interference: Measured<Length> = given.measured("interference")?;
    let interference =
        Estimate::new(interference.value(), interference.spread().unwrap_or_default());
    let (hub, shaft) = (Metal::from(metal(given, "hub")?), Metal::from(metal(given, "shaft")?));
    let fit = PressFit::new(given.quantity("shaft_bore")?, given.quantity("joint")?, &slices(given)?, hub, shaft)
        .map_err(ReckonError::not_valid)?;
    let friction = Range::new(
        given.quantity::<Ratio>("friction_least")?.value,
        given.quantity::<Ratio>("friction_greatest")?.value,
    );
    let running = Running { speed: given.quantity::<AngularVelocity>("speed")?, ..Running::default() };
    let grip = fit.grip(interference, friction, running).map_err(ReckonError::not_valid)?;
    let stress = grip.most.worst_slice().map(|(_, slice)| slice.hub_bore.von_mises).unwrap_or_default();
    Ok(Answer::default()
        .with("torque_least", Value::new(Kind::Torque, grip.torque.low))
        .with("torque_greatest", Value::new(Kind::Torque, grip.torque.high))
        .with("pull_least", Value::new(Kind::Force, grip.axial.low))
        .with("pull_greatest", Value::new(Kind::Force, grip.axial.high))
        .with("pressure", Value::new(Kind::Stress, grip.most.mean_pressure()))
        .with("stress", Value::new(Kind::Stress, stress))
        .shown_by(grip.least.as_ref().unwrap_or(&grip.most).torque_working(friction.low)))
}
