//! Misalignment against what a coupling bears.

use couplings::Share;
use couplings::envelope::{Borne, Misalignment, angle_of_gap, axial_left, offset_borne, shares};
use mechanics::Estimate;
use quantities::{Angle, Basis, Kind, Length, Physical, Source};

use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const STRAIGHT: Source = Source::new(
    "straight line between the allowances",
    "the safe side of the usual diagram",
    Basis::Memory,
);
const GEOMETRY: Source = Source::new("geometry", "", Basis::Computed);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "misalignment-share",
        does: "Share of what a coupling bears that offset, angle and axial movement take together.",
        inputs: &[
            Input::quantity("offset", Kind::Offset, "offset asked, with its ±").optional(),
            Input::quantity("angle", Kind::Slope, "angle asked at one engagement").optional(),
            Input::quantity("axial", Kind::Offset, "distance from the axial position").optional(),
            Input::quantity("offset_borne", Kind::Offset, "offset borne alone").optional(),
            Input::quantity("angle_borne", Kind::Slope, "angle borne alone").optional(),
            Input::quantity("axial_borne", Kind::Offset, "axial movement borne alone").optional(),
        ],
        outputs: &[
            Output::value("offset_share", Kind::Percent, "share of the offset"),
            Output::value("angle_share", Kind::Percent, "share of the angle"),
            Output::value("axial_share", Kind::Percent, "share of the axial movement"),
            Output::value("share", Kind::Percent, "their sum"),
            Output::word("verdict", "inside while the sum is no more than all"),
        ],
        valid: "magnitudes, signs taken off; an allowance is no target for the line-up",
        source: STRAIGHT,
        answer: misalignment_share,
    },
    Calculation {
        name: "axial-left",
        does: "Axial movement that an angle leaves over.",
        inputs: &[
            Input::quantity("angle", Kind::Slope, "angle asked"),
            Input::quantity("angle_borne", Kind::Slope, "angle borne alone"),
            Input::quantity("axial_borne", Kind::Offset, "axial movement borne in line"),
        ],
        outputs: &[Output::value("left", Kind::Offset, "axial movement left over")],
        valid: "one engagement: a mesh, a pack",
        source: STRAIGHT,
        answer: left_over,
    },
    Calculation {
        name: "offset-borne",
        does: "Offset that two flexing planes bear, from the angle at each and the span.",
        inputs: &[
            Input::quantity("span", Kind::Length, "between the flexing planes"),
            Input::quantity("angle", Kind::Slope, "angle at each plane"),
        ],
        outputs: &[Output::value("offset", Kind::Offset, "offset of the shafts")],
        valid: "angles below a quarter turn",
        source: GEOMETRY,
        answer: borne_offset,
    },
    Calculation {
        name: "angle-of-gaps",
        does: "Angle between two faces whose gap differs across a diameter.",
        inputs: &[
            Input::quantity("difference", Kind::Gap, "widest gap less narrowest"),
            Input::quantity("diameter", Kind::Length, "diameter at which they were taken"),
        ],
        outputs: &[
            Output::value("angle", Kind::Slope, "angle, as a slope"),
            Output::value("degrees", Kind::Degrees, "the same in degrees"),
        ],
        valid: "flat faces",
        source: GEOMETRY,
        answer: gap_angle,
    },
];

fn magnitude<Q: Physical<Spread = Q>>(
    given: &Given,
    name: &'static str,
) -> Result<Option<Estimate<Q>>, ReckonError> {
    given.optional::<Q>(name).map(|_| given.estimate(name)).transpose()
}

fn misalignment_share(given: &Given) -> Result<Answer, ReckonError> {
    let asked = Misalignment {
        offset: magnitude(given, "offset")?,
        angle: magnitude(given, "angle")?,
        axial: magnitude(given, "axial")?,
    };
    let borne = Borne {
        offset: given.optional("offset_borne"),
        angle: given.optional("angle_borne"),
        axial: given.optional("axial_borne"),
    };
    let shares = shares(&asked, &borne)?;
    if shares.known().next().is_none() && shares.no_figure.is_empty() {
        return Err(ReckonError::not_valid("no offset, angle or axial movement is asked"));
    }
    let share = |share: &Option<Share>| share.as_ref().map(Share::fraction);
    let answer = given.answer().with("offset_share", share(&shares.offset));
    let answer = answer.with("angle_share", share(&shares.angle));
    let answer = answer.with("axial_share", share(&shares.axial));
    let answer = answer.with("share", shares.sum()).with("verdict", shares.verdict());
    Ok(answer.shown_by(shares.known().map(Share::working)).shown_by(shares.working()))
}

fn left_over(given: &Given) -> Result<Answer, ReckonError> {
    let (angle, borne) = (given.quantity("angle")?, given.quantity("angle_borne")?);
    let left = axial_left(angle, borne, given.quantity("axial_borne")?)?;
    Ok(given.answer().with("left", left.left).shown_by([left.working()]))
}

fn borne_offset(given: &Given) -> Result<Answer, ReckonError> {
    let (span, angle) = (given.quantity::<Length>("span")?, given.quantity::<Angle>("angle")?);
    if span.si() <= 0.0 || !(0.0..std::f64::consts::FRAC_PI_2).contains(&angle.si()) {
        return Err(ReckonError::not_valid("the span or the angle is out of range"));
    }
    Ok(given.answer().with("offset", offset_borne(span, angle)))
}

fn gap_angle(given: &Given) -> Result<Answer, ReckonError> {
    let angle = angle_of_gap(given.quantity("difference")?, given.quantity("diameter")?)?;
    Ok(given.answer().with("angle", angle).with("degrees", angle))
}
