//! Kinds of coupling: what each forgives, and which suit a duty.

use couplings::duty::{MANY_STARTS, all_reasons};
use couplings::{Duty, Kind as Coupling, Need, Planes, Question, Reason, Speaks, kind, kinds};
use quantities::{Basis, Kind, Physical, Ratio, Source};

use super::choices::{LOAD_NAMES, LOADS};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError, error};

const NEEDS: [(&str, Need); 2] = [("yes", Need::Yes), ("no", Need::No)];
const NEED_NAMES: &[&str] = &names(&NEEDS);
const USUAL: Source = Source::new("what is common for the kind", "", Basis::CommonPractice);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "coupling-kind",
        does: "What a kind of coupling forgives, and what sets its hubs apart.",
        inputs: &[
            Input::word("kind", "gear, grid, disc, rigid, jaw, …"),
            Input::word("form", "how it is built; the usual form when left out").optional(),
        ],
        outputs: &[
            Output::word("form", "the form"),
            Output::word("says", "what it is"),
            Output::word("planes", "planes of flexing: none, one or two"),
            Output::value("angle", Kind::Degrees, "angle at one engagement, low and high"),
            Output::value("offset", Kind::Offset, "offset of the shafts, low and high"),
            Output::value("axial", Kind::Offset, "axial movement to each side, low and high"),
            Output::word("gap", "what sets the hubs apart"),
            Output::value("grease_months", Kind::Count, "months between openings for grease"),
            Output::word("source", "how it is known"),
        ],
        valid: "capacity, no target for the line-up; the maker’s sheet comes first",
        source: USUAL,
        answer: coupling_kind,
    },
    Calculation {
        name: "kinds-for-duty",
        does: "What speaks for and against each kind of coupling on a duty.",
        inputs: &[
            Input::choice("load", LOAD_NAMES, "how the load runs").optional(),
            Input::quantity("speed", Kind::Speed, "speed").optional(),
            Input::choice("offset", NEED_NAMES, "do the shafts stay offset?").optional(),
            Input::choice("end_movement", NEED_NAMES, "does a shaft move along?").optional(),
            Input::choice("grease_service", NEED_NAMES, "can it be opened for grease?").optional(),
            Input::choice("hot_place", NEED_NAMES, "does it stand above about 80 °C?").optional(),
            Input::choice("damping", NEED_NAMES, "must torsional vibration be damped?").optional(),
            Input::choice("reversing", NEED_NAMES, "does the torque turn round?").optional(),
            Input::quantity("starts", Kind::Count, "starts in an hour").optional(),
            Input::choice("end_float", NEED_NAMES, "does a rotor float in sleeve bearings?")
                .optional(),
        ],
        outputs: &[
            Output::word("for", "kind by kind, what speaks for it"),
            Output::word("against", "kind by kind, what speaks against it"),
            Output::word("answers", "kind by kind, a word to each thing asked"),
        ],
        valid: "reasons, no ranking; the maker’s sheet and the size decide",
        source: USUAL,
        answer: for_duty,
    },
];

fn named(given: &Given) -> Result<&'static dyn Coupling, ReckonError> {
    let name = given.word("kind");
    kind(name).ok_or_else(|| {
        let known: Vec<&str> = kinds().iter().map(|kind| kind.name()).collect();
        let nearest = error::nearest(name, known.iter().copied());
        let meant = error::did_you_mean(nearest.as_deref());
        Given::unreadable("kind", format!("“{name}” is none of: {}{meant}", known.join(", ")))
    })
}

fn coupling_kind(given: &Given) -> Result<Answer, ReckonError> {
    let kind = named(given)?;
    let form = Some(given.word("form")).filter(|form| !form.is_empty());
    let form = kind.form(form).ok_or_else(|| {
        let known: Vec<&str> = kind.forms().iter().map(|form| form.name).collect();
        Given::unreadable("form", format!("none of: {}", known.join(", ")))
    })?;
    let forgives = kind.forgives(form);
    let planes = match forgives.planes {
        Planes::None => "none",
        Planes::One => "one",
        Planes::Two => "two",
    };
    let months = kind.lubrication().map(|grease| grease.months.map(f64::from).to_vec());
    let answer = given.answer().with("form", form.name).with("says", form.says);
    let answer = answer.with("planes", planes);
    let answer = answer.with("angle", forgives.angular().map(|ends| ends.to_vec()));
    let answer = answer.with("offset", forgives.parallel().map(|ends| ends.to_vec()));
    let answer = answer.with("axial", forgives.axial().map(|ends| ends.to_vec()));
    let answer = answer.with("gap", kind.gap_rule(form).says()).with("grease_months", months);
    Ok(answer.with("source", forgives.source.to_string()))
}

fn for_duty(given: &Given) -> Result<Answer, ReckonError> {
    let need =
        |name| NEEDS.iter().find(|(word, _)| *word == given.word(name)).map(|(_, need)| *need);
    let load = LOADS.iter().find(|(word, _)| *word == given.word("load"));
    let starts = given.optional::<Ratio>("starts");
    let duty = Duty {
        load: load.map(|(_, load)| *load),
        speed: given.optional("speed"),
        offset: need("offset"),
        end_movement: need("end_movement"),
        grease_service: need("grease_service"),
        hot_place: need("hot_place"),
        damping: need("damping"),
        reversing: need("reversing"),
        many_starts: starts.map(|starts| Need::from(starts.si() > f64::from(MANY_STARTS))),
        end_float: need("end_float"),
    };
    if duty == Duty::default() {
        return Err(ReckonError::not_valid("nothing is said of the duty"));
    }
    let (mut favour, mut against, mut answers) = (Vec::new(), Vec::new(), Vec::new());
    for kind in kinds() {
        let form = &kind.forms()[0];
        for Reason { speaks, text } in all_reasons(*kind, form, &duty) {
            let reason = format!("{}: {text}", kind.name());
            if speaks == Speaks::For { favour.push(reason) } else { against.push(reason) }
        }
        let words: Vec<String> = Question::asked_by(&duty)
            .map(|question| {
                let answer = question.answer(*kind, form, &duty);
                format!("{} {}", question.says(), answer.says())
            })
            .collect();
        answers.push(format!("{}: {}", kind.name(), words.join(", ")));
    }
    let answer = given.answer().with("for", favour).with("against", against);
    Ok(answer.with("answers", answers))
}
