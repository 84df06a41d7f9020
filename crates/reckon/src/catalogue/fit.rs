//! Fits: limits by class, interference from sizes, what is usual.

use mechanics::interference::flattening::{Interference, flattening_din_7190, flattening_from_ra};
use quantities::{Basis, Kind, Length, Source};
use tables::iso_286::{self, Class};
use tables::{agma_9002, fits, hub_fits, nema_mg_1};

use super::choices::not_held;
use super::shown;
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const FITS: [(&str, agma_9002::Fit); 2] =
    [("clearance", agma_9002::Fit::Clearance), ("interference", agma_9002::Fit::Interference)];
const FIT_NAMES: &[&str] = &names(&FITS);

const NOMINAL: Input = Input::quantity("nominal", Kind::Size, "nominal size");
const UPPER: Output = Output::value("upper", Kind::Allowance, "upper deviation");
const LOWER: Output = Output::value("lower", Kind::Allowance, "lower deviation");
const HELD: Output = Output::word("source", "where the figures come from");

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "iso-limits",
        does: "Limits of a hole or a shaft of an ISO 286 class, such as H7 or p6.",
        inputs: &[
            Input::word("class", "class: capitals for a hole, small letters for a shaft"),
            NOMINAL,
        ],
        outputs: &[
            UPPER,
            LOWER,
            Output::value("largest", Kind::Size, "largest size"),
            Output::value("smallest", Kind::Size, "smallest size"),
            HELD,
        ],
        valid: "to 500 mm, wherever the tables hold letter and grade; the answer says how its figures are known",
        source: iso_286::SOURCE,
        answer: limits,
    },
    Calculation {
        name: "iso-grade",
        does: "Width of an ISO tolerance grade for a size.",
        inputs: &[Input::quantity("grade", Kind::Count, "grade, 7 for IT7"), NOMINAL],
        outputs: &[Output::value("width", Kind::Allowance, "width of the tolerance"), HELD],
        valid: "IT1 to IT18, to 500 mm; the answer says how its figure is known",
        source: iso_286::SOURCE,
        answer: grade,
    },
    Calculation {
        name: "fit-limits",
        does: "Least and greatest interference of a fit: H7/p6, FN2, or AGMA interference.",
        inputs: &[
            Input::word(
                "fit",
                "H7/p6 of ISO 286, FN2 of ANSI B4.1, AGMA clearance or AGMA interference",
            ),
            NOMINAL,
        ],
        outputs: &[
            Output::value("least", Kind::Allowance, "least interference; − is clearance"),
            Output::value("greatest", Kind::Allowance, "greatest interference; − is clearance"),
            Output::word("sort", "clearance, transition or interference"),
            Output::word("system", "whose fit it is"),
            Output::value("hole_upper", Kind::Allowance, "upper deviation of the hole"),
            Output::value("hole_lower", Kind::Allowance, "lower deviation of the hole"),
            Output::value("shaft_upper", Kind::Allowance, "upper deviation of the shaft"),
            Output::value("shaft_lower", Kind::Allowance, "lower deviation of the shaft"),
            HELD,
        ],
        valid: "ISO to 500 mm, B4.1 to 19.69 in (FN to 12.41 in), AGMA bores to 1-1/2 in; wherever the tables hold them",
        source: Source::new(
            "ISO 286-1 and -2; ANSI B4.1; ANSI/AGMA 9002",
            "as the answer says",
            Basis::Read,
        ),
        answer: fit_limits,
    },
    Calculation {
        name: "coupling-bore",
        does: "Limits of a coupling’s bore in inches, and its keyway.",
        inputs: &[
            NOMINAL,
            Input::choice("fit", FIT_NAMES, "whether the hub slides on or is heated on"),
        ],
        outputs: &[
            UPPER,
            LOWER,
            Output::value(
                "keyway_width",
                Kind::Size,
                "width of the keyway, where the bore is listed",
            ),
            Output::value("keyway_width_upper", Kind::Allowance, "it may be wider by"),
            Output::value("across", Kind::Size, "bottom of the keyway to the far side of the bore"),
            Output::value("across_upper", Kind::Allowance, "it may be deeper by"),
        ],
        valid: "bores from 3/8 to 1-1/2 in, square keys",
        source: agma_9002::SOURCE,
        answer: coupling_bore,
    },
    Calculation {
        name: "motor-shaft",
        does: "Limits of a motor’s shaft extension in inches.",
        inputs: &[NOMINAL],
        outputs: &[UPPER, LOWER],
        valid: "shafts of 3/16 to 6-1/2 in",
        source: nema_mg_1::SOURCE,
        answer: motor_shaft,
    },
    Calculation {
        name: "usual-interference",
        does: "How tight hubs are usually bored, when nothing else is known.",
        inputs: &[Input::quantity("shaft", Kind::Size, "shaft diameter")],
        outputs: &[
            Output::value("keyed_least", Kind::Allowance, "straight bore with a key, least"),
            Output::value("keyed_greatest", Kind::Allowance, "straight bore with a key, greatest"),
            Output::value("keyless_least", Kind::Allowance, "steel hub without a key, least"),
            Output::value("keyless_greatest", Kind::Allowance, "steel hub without a key, greatest"),
            Output::value("taper", Kind::Allowance, "taper without a key"),
        ],
        valid: "rules of thumb; a keyed hub over 1/2 up to 6 in; the maker’s sheet outranks them",
        source: hub_fits::SOURCE,
        answer: usual,
    },
    Calculation {
        name: "interference",
        does: "Interference of a measured shaft in a measured bore, and what flattening leaves of it.",
        inputs: &[
            Input::quantity("shaft", Kind::Size, "shaft at 20 °C, with its ±"),
            Input::quantity("bore", Kind::Size, "bore at 20 °C, with its ±"),
            Input::quantity(
                "shared",
                Kind::Allowance,
                "part of both ±, when one was set on the other",
            )
            .or("0 mm"),
            Input::quantity("rz_hub", Kind::Roughness, "Rz of the bore").optional(),
            Input::quantity("rz_shaft", Kind::Roughness, "Rz of the shaft").optional(),
            Input::quantity("ra_hub", Kind::Roughness, "or Ra of the bore").optional(),
            Input::quantity("ra_shaft", Kind::Roughness, "or Ra of the shaft").optional(),
        ],
        outputs: &[
            Output::value("measured", Kind::Allowance, "shaft less bore; − is clearance"),
            Output::value("flattening", Kind::Allowance, "what flattening takes"),
            Output::value("effective", Kind::Allowance, "what is left to press with"),
        ],
        valid: "sizes measured apart from each other but for what they share; turned, reamed or ground surfaces",
        source: Source::new(
            "ISO 286-1; DIN 7190-1 for Rz, common practice for Ra",
            "flattening",
            Basis::Memory,
        ),
        answer: interference,
    },
];

fn limits(given: &Given) -> Result<Answer, ReckonError> {
    let class: Class = given.word("class").parse()?;
    let nominal = given.quantity::<Length>("nominal")?;
    let zone = class.limits(nominal)?;
    let answer = given.answer().with("upper", zone.upper).with("lower", zone.lower);
    let answer =
        answer.with("largest", nominal + zone.upper).with("smallest", nominal + zone.lower);
    Ok(answer.with("source", class.source(nominal).to_string()))
}

fn grade(given: &Given) -> Result<Answer, ReckonError> {
    let grade = u8::try_from(given.count("grade")?).unwrap_or(u8::MAX);
    let width = iso_286::tolerance(given.quantity("nominal")?, grade);
    let answer =
        given.answer().with("width", width.ok_or_else(|| not_held("that grade and size"))?);
    Ok(answer.with("source", iso_286::grade_source(grade).to_string()))
}

fn fit_limits(given: &Given) -> Result<Answer, ReckonError> {
    let fit: fits::Fit = given.word("fit").parse()?;
    let nominal = given.quantity::<Length>("nominal")?;
    let zones = fit.zones(nominal)?;
    let (least, greatest) = zones.interference();
    let sort = match (least.value < 0.0, greatest.value > 0.0) {
        (false, _) => "interference",
        (true, true) => "transition",
        (true, false) => "clearance",
    };
    let answer = given.answer().with("least", least).with("greatest", greatest).with("sort", sort);
    let answer = answer.with("system", fit.system());
    let answer = answer.with("hole_upper", zones.hole.upper).with("hole_lower", zones.hole.lower);
    let answer =
        answer.with("shaft_upper", zones.shaft.upper).with("shaft_lower", zones.shaft.lower);
    Ok(answer.with("source", fit.source(nominal).to_string()))
}

fn coupling_bore(given: &Given) -> Result<Answer, ReckonError> {
    let nominal = given.quantity::<Length>("nominal")?;
    let zone = agma_9002::bore(nominal, given.pick("fit", &FITS)?);
    let zone = zone.ok_or_else(|| not_held("a bore of that size"))?;
    let keyway = agma_9002::keyway(nominal);
    let answer = given.answer().with("upper", zone.upper).with("lower", zone.lower);
    let answer = answer.with("keyway_width", keyway.map(|keyway| keyway.width));
    let answer = answer.with("keyway_width_upper", keyway.map(|keyway| keyway.width_zone.upper));
    let answer = answer.with("across", keyway.map(|keyway| keyway.across));
    Ok(answer.with("across_upper", keyway.map(|keyway| keyway.across_zone.upper)))
}

fn motor_shaft(given: &Given) -> Result<Answer, ReckonError> {
    let zone = nema_mg_1::shaft_extension(given.quantity("nominal")?);
    let zone = zone.ok_or_else(|| not_held("a shaft of that size"))?;
    Ok(given.answer().with("upper", zone.upper).with("lower", zone.lower))
}

fn usual(given: &Given) -> Result<Answer, ReckonError> {
    let shaft = given.quantity::<Length>("shaft")?;
    if shaft.value <= 0.0 {
        return Err(ReckonError::not_valid("the shaft’s diameter is not above zero"));
    }
    let keyed = hub_fits::keyed(shaft);
    let answer = given.answer().with("keyed_least", keyed.map(|(least, _)| least));
    let answer = answer.with("keyed_greatest", keyed.map(|(_, greatest)| greatest));
    let answer = answer.with("keyless_least", shaft * hub_fits::KEYLESS.0);
    let answer = answer.with("keyless_greatest", shaft * hub_fits::KEYLESS.1);
    let part = |name, part: f64| shown::part_of(name, shaft * part, part, shaft);
    Ok(answer.with("taper", shaft * hub_fits::TAPER).shown_by([
        part("Least, without a key", hub_fits::KEYLESS.0),
        part("Greatest, without a key", hub_fits::KEYLESS.1),
        part("On a taper", hub_fits::TAPER),
    ]))
}

fn interference(given: &Given) -> Result<Answer, ReckonError> {
    let pair = |hub, shaft| given.optional::<Length>(hub).zip(given.optional::<Length>(shaft));
    let rough = ["rz_hub", "rz_shaft", "ra_hub", "ra_shaft"];
    let written = rough.iter().filter(|name| given.optional::<Length>(name).is_some()).count();
    let flattening = match (written, pair("rz_hub", "rz_shaft"), pair("ra_hub", "ra_shaft")) {
        (0, ..) => Length::default(),
        (2, Some((hub, shaft)), _) => flattening_din_7190(hub, shaft),
        (2, _, Some((hub, shaft))) => flattening_from_ra(hub, shaft),
        _ => return Err(ReckonError::not_valid("roughness wants Rz of both parts, or Ra of both")),
    };
    let (shaft, bore) = (given.estimate("shaft")?, given.estimate("bore")?);
    let found = Interference::sharing(shaft, bore, given.quantity("shared")?, flattening)?;
    let answer = given.answer().with("measured", found.measured);
    let answer = answer.with("flattening", found.flattening).with("effective", found.effective);
    Ok(answer.shown_by([found.working(), found.effective_working()]))
}
