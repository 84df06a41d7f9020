//! How well shafts must be lined up, and whether they are; pipes that pull.

use lineup::growth::{PlaneGrowth, growth_line};
use lineup::line::Line;
use lineup::strain::PipeStrain;
use lineup::tolerance::{Level, Measure, chance_of_all, judge_line, worst};
use lineup::{Estimate, Layout, Machine, Plane};
use quantities::{Angle, AngularVelocity, Basis, Kind, Length, Physical, Source};
use tables::alignment::{self, short, spacer};
use tables::limits::{PIPE_STRAIN, pipe_parallelism};

use super::choices::not_held;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const SPEED: Input = Input::quantity("speed", Kind::Speed, "speed");
const AIM: Output = Output::value("slope_aim", Kind::Slope, "slope to stop at");
const LIMIT: Output = Output::value("slope_limit", Kind::Slope, "slope to run with");
const API_686: Source =
    Source::new("API RP 686, 2nd ed.", "clauses 4.6 to 4.8, by a summary", Basis::Read);
const VALID: &str =
    "600 to 7200 rpm; slower machines as at 600; the maker of machine or coupling outranks it";

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "short-levels",
        does: "How well the shafts of a short coupling must be lined up, by speed.",
        inputs: &[SPEED],
        outputs: &[
            Output::value("offset_aim", Kind::Offset, "offset to stop at"),
            Output::value("offset_limit", Kind::Offset, "offset to run with"),
            AIM,
            LIMIT,
        ],
        valid: VALID,
        source: alignment::SOURCE,
        answer: short_levels,
    },
    Calculation {
        name: "spacer-levels",
        does: "Slope that each flex plane of a spacer is held to, by speed.",
        inputs: &[SPEED],
        outputs: &[AIM, LIMIT],
        valid: VALID,
        source: alignment::SOURCE,
        answer: spacer_levels,
    },
    Calculation {
        name: "line-up-verdict",
        does: "Whether a line-up is good enough, its ± taken into account.",
        inputs: &[
            Input::quantity("offset_up", Kind::Offset, "offset left upwards, with its ±"),
            Input::quantity("offset_right", Kind::Offset, "offset left sideways, with its ±"),
            Input::quantity("slope_up", Kind::Slope, "slope left upwards, with its ±"),
            Input::quantity("slope_right", Kind::Slope, "slope left sideways, with its ±"),
            Input::quantity("speed", Kind::Speed, "speed, for the levels by speed").optional(),
            Input::quantity("offset_limit", Kind::Offset, "or an offset to stay within").optional(),
            Input::quantity("slope_limit", Kind::Slope, "and a slope to stay within").optional(),
        ],
        outputs: &[
            Output::word("verdict", "the worst of all"),
            Output::word("each", "offset and slope, upwards and sideways, against the limit"),
            Output::word("aims", "the same against the aim"),
            Output::value("worst_ratio", Kind::Number, "largest ratio to a limit"),
            Output::value("likely", Kind::Percent, "chance that all are inside, at least"),
        ],
        valid: "deviations from the target; the strictest level counts",
        source: alignment::SOURCE,
        answer: verdict,
    },
    Calculation {
        name: "pipe-strain",
        does: "Whether the pipes pull: movement of the shaft while flanges are drawn up.",
        inputs: &[
            Input::quantity("up", Kind::Offset, "movement upwards at the coupling, with its ±"),
            Input::quantity("right", Kind::Offset, "movement sideways, with its ±"),
            Input::quantity(
                "limit",
                Kind::Offset,
                "allowed in each of the two; 0.05 mm when left out",
            )
            .optional(),
        ],
        outputs: &[
            Output::word("verdict", "the worse of the two"),
            Output::word("each", "upwards, sideways"),
            Output::value("limit", Kind::Offset, "what was allowed"),
        ],
        valid: "strain comes out in the pipe, not in the coupling",
        source: API_686,
        answer: pipes,
    },
    Calculation {
        name: "flange-parallelism",
        does: "How far out of parallel a loose pipe flange may stand.",
        inputs: &[Input::quantity("outside", Kind::Length, "outside diameter of the flange")],
        outputs: &[Output::value("most", Kind::Gap, "widest gap less narrowest, at most")],
        valid: "0.01 mm for each centimetre, 0.25 mm below 250 mm, never more than 0.75 mm",
        source: API_686,
        answer: parallel,
    },
];

fn speed(given: &Given) -> Result<AngularVelocity, ReckonError> {
    let speed: AngularVelocity = given.quantity("speed")?;
    if speed <= AngularVelocity::default() {
        return Err(ReckonError::not_valid("a speed above zero is wanted, such as 1480 rpm"));
    }
    Ok(speed)
}

fn beyond() -> ReckonError {
    not_held("that speed")
}

fn short_levels(given: &Given) -> Result<Answer, ReckonError> {
    let levels = short(speed(given)?).ok_or_else(beyond)?;
    let answer = given.answer().with("offset_aim", levels.offset_aim);
    let answer = answer.with("offset_limit", levels.offset_limit);
    let answer = answer.with("slope_aim", levels.slope_aim).with("slope_limit", levels.slope_limit);
    Ok(answer.shown_by(levels.workings()))
}

fn spacer_levels(given: &Given) -> Result<Answer, ReckonError> {
    let levels = spacer(speed(given)?).ok_or_else(beyond)?;
    let answer = given.answer().with("slope_aim", levels.slope_aim);
    Ok(answer.with("slope_limit", levels.slope_limit).shown_by(levels.workings()))
}

/// A line of so much offset at a plane and so much slope, both upwards, known apart.
pub(super) fn inclined(
    at: Length,
    offset: Estimate<Length>,
    slope: Estimate<Angle>,
) -> Result<Line, ReckonError> {
    let metre = Length::from_si(1.0);
    let climb =
        Estimate::new(Length::from_si(slope.value.si()), Length::from_si(slope.plus_minus.si()));
    let nothing = PlaneGrowth::up(at, Estimate::exact(Length::default()));
    let level = growth_line(&[PlaneGrowth::up(at, offset)])?;
    Ok(level.plus(&growth_line(&[nothing, PlaneGrowth::up(at + metre, climb)])?))
}

fn levels(given: &Given) -> Result<Vec<Level>, ReckonError> {
    let mut levels = Vec::new();
    if let Some(speed) = given.optional::<AngularVelocity>("speed") {
        let by_speed = short(speed).ok_or_else(beyond)?;
        let (aim, limit) = (Some(by_speed.offset_aim), Some(by_speed.offset_limit));
        levels.push(Level::offset("by speed", aim, limit, alignment::SOURCE)?);
        let (aim, limit) = (Some(by_speed.slope_aim), Some(by_speed.slope_limit));
        levels.push(Level::slope("by speed", aim, limit, alignment::SOURCE)?);
    }
    let as_given = Source::new("as given", "", Basis::Entered);
    if let Some(limit) = given.optional("offset_limit") {
        levels.push(Level::offset("as given", None, Some(limit), as_given)?);
    }
    if let Some(limit) = given.optional("slope_limit") {
        levels.push(Level::slope("as given", None, Some(limit), as_given)?);
    }
    if levels.is_empty() {
        return Err(ReckonError::not_valid("give speed, or offset_limit and slope_limit"));
    }
    Ok(levels)
}

fn verdict(given: &Given) -> Result<Answer, ReckonError> {
    let at = Length::default();
    let layout = Layout { moving: Machine::Driven, reference: at, spool: None };
    let levels = levels(given)?;
    let (mut all, mut each, mut aims) = (Vec::new(), Vec::new(), Vec::new());
    for (way, offset, slope) in
        [("upwards", "offset_up", "slope_up"), ("sideways", "offset_right", "slope_right")]
    {
        let line = inclined(at, given.estimate(offset)?, given.estimate(slope)?)?;
        for judged in judge_line(&layout, &line, &levels)? {
            // Every deviation is laid upwards in turn, so only that plane counts.
            if judged.plane != Plane::Vertical {
                continue;
            }
            let measure = if judged.measure == Measure::Offset { "offset" } else { "slope" };
            each.push(format!("{measure} {way}: {}", judged.verdict().words()));
            let aim = judged.by_aim.as_ref().map(|(_, verdict)| verdict.words());
            aims.extend(aim.map(|word| format!("{measure} {way}: {word}")));
            all.push(judged);
        }
    }
    let ratio = all.iter().map(lineup::tolerance::Judgement::ratio).fold(0.0, f64::max);
    let answer = given.answer().with("verdict", worst(&all)).with("each", each).with("aims", aims);
    let answer = answer.with("worst_ratio", ratio).with("likely", chance_of_all(&all));
    Ok(answer.shown_by(all.iter().map(lineup::tolerance::Judgement::working)))
}

fn pipes(given: &Given) -> Result<Answer, ReckonError> {
    let limit = given.optional::<Length>("limit").unwrap_or(PIPE_STRAIN.most);
    if limit.si() <= 0.0 {
        return Err(ReckonError::not_valid("the limit is not above zero"));
    }
    let strain = PipeStrain { movement: [given.estimate("up")?, given.estimate("right")?], limit };
    let each =
        Plane::BOTH.map(|plane| format!("{}: {}", plane.words(), strain.verdict(plane).words()));
    let answer = given.answer().with("verdict", strain.worst()).with("each", each.to_vec());
    let answer = answer.with("limit", limit);
    Ok(answer.shown_by(Plane::BOTH.map(|plane| strain.working(plane))))
}

fn parallel(given: &Given) -> Result<Answer, ReckonError> {
    let limit = pipe_parallelism(given.quantity("outside")?);
    Ok(given.answer().with("most", limit.ok_or_else(|| not_held("such a flange"))?.most))
}
