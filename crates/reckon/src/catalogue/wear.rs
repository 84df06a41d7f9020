//! Wear, and vertical sets.

use couplings::sheet::Wear;
use couplings::vertical::{orbit, plumb};
use couplings::wear::{Fate, PackLimit, Worn, backlash, element, pack, stretch, tooth};
use quantities::{Basis, Kind, Length, Source, Time};
use tables::limits::VERTICAL_STRAIGHTNESS;

use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

#[derive(Clone, Copy)]
enum Wearing {
    Backlash,
    Tooth,
    Element,
}
const PARTS: [(&str, Wearing); 3] =
    [("backlash", Wearing::Backlash), ("tooth", Wearing::Tooth), ("element", Wearing::Element)];
const PART_NAMES: &[&str] = &names(&PARTS);

const IN_SERVICE: Input =
    Input::quantity("in_service", Kind::Time, "time in service so far").optional();
const VERDICT: Output = Output::word("verdict", "inside, outside, too close to call, not measured");
const FATE: Output = Output::word("fate", "what becomes of it");
const LEFT: Output = Output::value("left", Kind::Time, "time left at the pace so far");
const LIMIT: Output = Output::value("limit", Kind::Offset, "the limit");
const SHEET: Source = Source::new("maker’s sheet", "wear", Basis::MakersSheet);
const RECLAMATION: Source =
    Source::new("US Bureau of Reclamation, FIST 2-1 (2000)", "Table 1", Basis::Read);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "wear",
        does: "Whether a worn part goes back: backlash, wear of teeth, thickness of an element.",
        inputs: &[
            Input::choice("part", PART_NAMES, "backlash and tooth wear grow, an element shrinks"),
            Input::quantity("measured", Kind::Offset, "as measured, with its ±"),
            Input::quantity("new_backlash", Kind::Offset, "backlash when new").optional(),
            Input::quantity("new_thickness", Kind::Offset, "thickness of an element when new")
                .optional(),
            Input::quantity("limit", Kind::Offset, "limit of the maker’s sheet").optional(),
            IN_SERVICE,
        ],
        outputs: &[VERDICT, FATE, LIMIT, Output::word("source", "how the limit is known"), LEFT],
        valid: "backlash along the pitch circle; without a limit gear teeth may double their backlash, anything else has no verdict",
        source: SHEET,
        answer: worn,
    },
    Calculation {
        name: "chain-stretch",
        does: "Whether a stretched chain goes back.",
        inputs: &[
            Input::quantity("measured", Kind::Percent, "stretch over length, with its ±"),
            Input::quantity("limit", Kind::Percent, "limit of the maker’s sheet").optional(),
            IN_SERVICE,
        ],
        outputs: &[VERDICT, FATE, LEFT],
        valid: "no verdict without the sheet’s limit",
        source: SHEET,
        answer: chain,
    },
    Calculation {
        name: "pack-set",
        does: "Whether a disc pack has set: its free length against that when new.",
        inputs: &[
            Input::quantity("measured", Kind::Gap, "free length off the coupling, with its ±"),
            Input::quantity("new", Kind::Gap, "free length when new"),
            Input::quantity("may_differ", Kind::Gap, "what it may differ by"),
        ],
        outputs: &[Output::value("set", Kind::Offset, "how much it differs"), VERDICT, FATE],
        valid: "measured free, off the coupling",
        source: SHEET,
        answer: set,
    },
    Calculation {
        name: "vertical-orbit",
        does: "Greatest orbit of a vertical shaft turned slowly, and how far its line may bend.",
        inputs: &[
            Input::quantity("below", Kind::Length, "from the thrust bearing to the reading"),
            Input::quantity("runner", Kind::Length, "diameter of the thrust runner"),
        ],
        outputs: &[
            Output::value("greatest", Kind::Allowance, "diameter of the orbit at most"),
            Output::value(
                "straightness",
                Kind::Allowance,
                "no point further off the straight line",
            ),
        ],
        valid: "vertical sets on one thrust bearing, where the maker gives nothing",
        source: RECLAMATION,
        answer: vertical_orbit,
    },
    Calculation {
        name: "vertical-plumb",
        does: "How far the centre of runout of a vertical shaft may lean.",
        inputs: &[Input::quantity("between", Kind::Length, "length between the readings")],
        outputs: &[Output::value("greatest", Kind::Allowance, "leaning at most")],
        valid: "vertical sets on one thrust bearing, where the maker gives nothing",
        source: RECLAMATION,
        answer: vertical_plumb,
    },
];

fn fate(fate: Fate) -> &'static str {
    match fate {
        Fate::Reuse => "it goes back",
        Fate::MeasureAgain => "measure again, or renew",
        Fate::Renew => "renew",
        Fate::NoLimit => "no limit: ask the maker",
    }
}

fn with_worn(given: &Given, worn: &Worn) -> Answer {
    let answer = given.answer().with("verdict", worn.verdict()).with("fate", fate(worn.fate()));
    answer.shown_by(worn.limit_working())
}

fn with_left(given: &Given, answer: Answer, worn: &Worn) -> Answer {
    let left = given.optional::<Time>("in_service").and_then(|time| worn.time_left(time));
    let answer = answer.with("left", left.as_ref().map(|left| left.left));
    answer.shown_by(left.map(|left| left.working()))
}

fn worn(given: &Given) -> Result<Answer, ReckonError> {
    let measured = given.measured::<Length>("measured")?;
    let limit = given.written_as("limit");
    let sheet = Wear { new_backlash: given.written_as("new_backlash"), ..Wear::default() };
    let worn = match given.pick("part", &PARTS)? {
        Wearing::Backlash => backlash(&measured, &Wear { backlash: limit, ..sheet }),
        Wearing::Tooth => tooth(&measured, &Wear { tooth: limit, ..sheet }),
        Wearing::Element => {
            let new = given.written_as("new_thickness");
            element(&measured, &Wear { element: limit, ..sheet }, new.as_ref())
        }
    };
    let answer = with_worn(given, &worn).with("limit", worn.limit);
    let answer = answer.with("source", worn.source.to_string());
    Ok(with_left(given, answer, &worn))
}

fn chain(given: &Given) -> Result<Answer, ReckonError> {
    let sheet = Wear { stretch: given.written_as("limit"), ..Wear::default() };
    let worn = stretch(&given.measured("measured")?, &sheet);
    Ok(with_left(given, with_worn(given, &worn), &worn))
}

fn set(given: &Given) -> Result<Answer, ReckonError> {
    let may_differ = given.quantity::<Length>("may_differ")?;
    if may_differ.value < 0.0 {
        return Err(ReckonError::not_valid("may_differ is below zero"));
    }
    let may = PackLimit::of_sheet(may_differ);
    let worn = pack(&given.measured("measured")?, given.quantity("new")?, may);
    let answer = given.answer().with("set", worn.measured).with("verdict", worn.verdict());
    Ok(answer.with("fate", fate(worn.fate())).shown_by(worn.limit_working()))
}

fn vertical_orbit(given: &Given) -> Result<Answer, ReckonError> {
    let orbit = orbit(given.quantity("below")?, given.quantity("runner")?)?;
    let answer = given.answer().with("greatest", orbit.greatest);
    Ok(answer.with("straightness", VERTICAL_STRAIGHTNESS.most).shown_by([orbit.working()]))
}

fn vertical_plumb(given: &Given) -> Result<Answer, ReckonError> {
    Ok(given.answer().with("greatest", plumb(given.quantity("between")?)?))
}
