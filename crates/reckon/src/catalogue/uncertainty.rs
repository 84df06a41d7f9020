//! What one reading may be out by.

use lineup::budget::{Budget, Part, student_95};
use quantities::{
    Basis, Kind, Length, Limits, Physical, Source, Value, judge, probability_inside, settling,
};

use super::shown;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const GUM: Source = Source::new("JCGM 100:2008 (GUM)", "5.1.2 and annex G.4", Basis::Memory);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "reading-uncertainty",
        does: "The ± of one reading from its parts: division, bounds, repeats.",
        inputs: &[
            Input::quantity("division", Kind::Allowance, "smallest step of the scale").optional(),
            Input::quantities("bounds", Kind::Allowance, "half-widths that hold for certain")
                .optional(),
            Input::quantities("standard", Kind::Allowance, "standard uncertainties known well")
                .optional(),
            Input::quantity("repeat_deviation", Kind::Allowance, "standard deviation of repeats")
                .optional(),
            Input::quantity("repeats", Kind::Count, "how many repeats the reading is the mean of")
                .or("1"),
        ],
        outputs: &[
            Output::value("plus_minus", Kind::Allowance, "half of the 95 % interval"),
            Output::value("standard", Kind::Allowance, "standard uncertainty"),
            Output::value(
                "freedom",
                Kind::Number,
                "effective degrees of freedom, when few readings rule",
            ),
            Output::value("factor", Kind::Number, "factor from standard uncertainty to ±"),
        ],
        valid: "parts that have nothing to do with each other; two repeats or more for a standard deviation",
        source: GUM,
        answer: budget,
    },
    Calculation {
        name: "student-factor",
        does: "Student’s factor for a two-sided 95 % interval.",
        inputs: &[Input::quantity("freedom", Kind::Number, "degrees of freedom")],
        outputs: &[Output::value("factor", Kind::Number, "factor")],
        valid: "one degree of freedom or more, cut to a whole number",
        source: Source::new(
            "Abramowitz and Stegun, Handbook of Mathematical Functions",
            "26.7.3 and 26.7.4",
            Basis::Memory,
        ),
        answer: student,
    },
    Calculation {
        name: "inside-limits",
        does: "Whether a length lies inside its limits, how likely, and what ± would settle it.",
        inputs: &[
            Input::quantity("value", Kind::Size, "length as found, with its ±"),
            Input::quantity("least", Kind::Size, "at least").optional(),
            Input::quantity("greatest", Kind::Size, "at most").optional(),
        ],
        outputs: &[
            Output::word("verdict", "inside, outside or too close to call"),
            Output::value("likely", Kind::Percent, "probability that it lies inside"),
            Output::value("settled_by", Kind::Allowance, "± that would settle it"),
        ],
        valid: "errors normally distributed, half the ± as standard deviation",
        source: Source::new("JCGM 106:2012", "7.2 to 7.4", Basis::Memory),
        answer: inside,
    },
];

fn budget(given: &Given) -> Result<Answer, ReckonError> {
    let mut parts: Vec<Part> = given.optional("division").map(Part::division).into_iter().collect();
    let bounds = given.quantities::<Length>("bounds");
    parts.extend(bounds.into_iter().map(|bound| Part::bounds("bounds", bound)));
    let standard = given.quantities::<Length>("standard");
    parts.extend(standard.into_iter().map(|u| Part::new("standard uncertainty", u, None)));
    if let Some(deviation) = given.optional("repeat_deviation") {
        parts.push(Part::repeats(deviation, given.count("repeats")?));
    }
    let budget = Budget::new(parts)?;
    let answer = given.answer().with("plus_minus", budget.plus_minus()).with("standard", budget.u);
    let answer = answer.with("freedom", budget.degrees_of_freedom).with("factor", budget.factor);
    Ok(answer.shown_by([budget.working()]))
}

fn inside(given: &Given) -> Result<Answer, ReckonError> {
    let value = given.estimate::<Length>("value")?;
    // Nothing written after the length means that its ± is not known, not that it is exact.
    let known = value.plus_minus.si() > 0.0;
    let value =
        Value { plus_minus: known.then(|| value.plus_minus.si()), ..value.shown(Kind::Size) };
    let end = |name| given.optional::<Length>(name).map(Length::si);
    let limits = Limits { least: end("least"), greatest: end("greatest") };
    if limits == Limits::default() {
        return Err(ReckonError::not_valid("give least, greatest or both"));
    }
    let likely = probability_inside(&value, &limits);
    let settled = settling(&value, &limits).map(Length::from_si);
    let answer = given.answer().with("verdict", judge(&value, &limits));
    let working = likely.map(|likely| shown::chance(likely, &value, &limits));
    Ok(answer.with("likely", likely).with("settled_by", settled).shown_by(working))
}

fn student(given: &Given) -> Result<Answer, ReckonError> {
    let freedom = given.number("freedom")?;
    if freedom < 1.0 {
        return Err(ReckonError::not_valid("less than one degree of freedom"));
    }
    Ok(given.answer().with("factor", student_95(freedom)))
}
