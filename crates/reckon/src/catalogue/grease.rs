//! Grease: how hard it is thrown, which grade, how much goes in.

use couplings::lubricant::{Ring, Throw, charge, free_volume, throw, usual_density};
use quantities::{Angle, Basis, Kind, Length, MassDensity, Source, Volume};
use tables::greases;

use super::choices::not_held;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const RADIUS: Input =
    Input::quantity("radius", Kind::Length, "radius of the teeth, the grid or the grease");
const CENTRIFUGE: Source =
    Source::new("centrifugal acceleration over standard gravity", "", Basis::Computed);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "grease-throw",
        does: "How many times gravity grease feels at a radius, and the grade for it.",
        inputs: &[
            RADIUS,
            Input::quantity("speed", Kind::Speed, "speed"),
            Input::quantity("angle", Kind::Degrees, "angle that the mesh runs at").optional(),
        ],
        outputs: &[
            Output::value("level", Kind::Number, "times standard gravity"),
            Output::word("grade", "grade of coupling grease for it"),
            Output::word("purpose", "what that grade is for"),
        ],
        valid: "grades from memory, to be confirmed; the coupling maker’s choice outranks them",
        source: CENTRIFUGE,
        answer: thrown,
    },
    Calculation {
        name: "grease-speed",
        does: "The speed at which a radius reaches so many times gravity.",
        inputs: &[
            RADIUS,
            Input::quantity(
                "level",
                Kind::Number,
                "times standard gravity; 200 parts general from high-speed grease",
            )
            .or("200"),
        ],
        outputs: &[Output::value("speed", Kind::Speed, "speed")],
        valid: "a radius and a level above zero",
        source: CENTRIFUGE,
        answer: speed,
    },
    Calculation {
        name: "grease-charge",
        does: "How much grease goes in, from the free space inside.",
        inputs: &[
            Input::quantities(
                "insides",
                Kind::Length,
                "inside diameter of each ring of free space",
            )
            .optional(),
            Input::quantities("outsides", Kind::Length, "outside diameter of each").optional(),
            Input::quantities("lengths", Kind::Length, "length of each along the shaft").optional(),
            Input::quantity("free", Kind::Volume, "or the free volume, as measured").optional(),
            Input::quantity("share", Kind::Percent, "share of it that is filled").or("75 %"),
            Input::quantity(
                "density",
                Kind::Density,
                "density of the grease; 900 kg/m³ when left out",
            )
            .optional(),
        ],
        outputs: &[
            Output::value("free", Kind::Volume, "free volume"),
            Output::value("volume", Kind::Volume, "volume to put in"),
            Output::value("mass", Kind::Mass, "its mass"),
        ],
        valid: "teeth, bolts and grids in the rings are not taken out; the maker’s amount comes first",
        source: greases::FILL_SOURCE,
        answer: fill,
    },
    Calculation {
        name: "grease-number",
        does: "The NLGI number of a worked penetration.",
        inputs: &[Input::quantity(
            "penetration",
            Kind::Count,
            "worked penetration, tenths of a millimetre",
        )],
        outputs: &[Output::word("number", "NLGI number")],
        valid: "none between the numbers and beyond them",
        source: Source::common_practice(
            "NLGI classification, as reprinted in lubrication handbooks",
        ),
        answer: number,
    },
];

fn thrown(given: &Given) -> Result<Answer, ReckonError> {
    let thrown = throw(given.quantity("radius")?, given.quantity("speed")?)?;
    let angle = given.optional::<Angle>("angle");
    let grease = angle.map_or_else(|| thrown.grade(), |angle| thrown.grade_at(angle));
    let answer = given.answer().with("level", thrown.level);
    let answer = answer.with("grade", grease.map(|grease| grease.grade));
    let answer = answer.with("purpose", grease.map(|grease| grease.purpose));
    Ok(answer.shown_by([thrown.working()]))
}

fn speed(given: &Given) -> Result<Answer, ReckonError> {
    let speed = Throw::speed_at(given.number("level")?, given.quantity("radius")?)?;
    Ok(given.answer().with("speed", speed))
}

fn fill(given: &Given) -> Result<Answer, ReckonError> {
    let density = given.optional::<MassDensity>("density").unwrap_or_else(usual_density);
    let charge = charge(room(given)?, given.number("share")?, density)?;
    let answer = given.answer().with("free", charge.free).with("volume", charge.volume);
    Ok(answer.with("mass", charge.mass).shown_by([charge.working()]))
}

fn room(given: &Given) -> Result<Volume, ReckonError> {
    let [insides, outsides, lengths] =
        ["insides", "outsides", "lengths"].map(|name| given.quantities::<Length>(name));
    match given.optional::<Volume>("free") {
        Some(free) if insides.is_empty() && outsides.is_empty() && lengths.is_empty() => Ok(free),
        Some(_) => Err(ReckonError::not_valid("give rings or the free volume, not both")),
        None if insides.len() != outsides.len() || insides.len() != lengths.len() => {
            Err(ReckonError::not_valid("insides, outsides and lengths differ in number"))
        }
        None => {
            let rings = insides.into_iter().zip(outsides).zip(lengths);
            let ring = |((inside, outside), length)| Ring { inside, outside, length };
            Ok(free_volume(&rings.map(ring).collect::<Vec<_>>())?)
        }
    }
}

fn number(given: &Given) -> Result<Answer, ReckonError> {
    let found = greases::nlgi(given.count("penetration")?);
    Ok(given.answer().with("number", found.ok_or_else(|| not_held("that penetration"))?))
}
