//! The chance that a line-up is inside, by drawing every input at random.

use lineup::dial::{Dial, Turning};
use lineup::growth::PlaneGrowth;
use lineup::position::{Observation, position};
use lineup::tolerance::{Measure, chance_of_all, judge_line};
use lineup::trials::{Growth, OnTrial, Outcome, trials};
use lineup::{Estimate, Layout, Machine};
use quantities::{Basis, Kind, Length, Physical, Source, Value};

use super::choices::{POSITIONS, VIEW_NAMES};
use super::whole_train::{
    DIAL_AT, DIAL_READS, DIAL_SAG, DIAL_SWING, READINGS, dials, levels, spools,
};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

/// How growth is known.
#[derive(Clone, Copy)]
enum Known {
    Normal,
    Between,
}
const KNOWN: [(&str, Known); 2] = [("normal", Known::Normal), ("between", Known::Between)];
const KNOWN_NAMES: &[&str] = &names(&KNOWN);

const RUNOUT: Input = Input::quantities(
    "dial_runout",
    Kind::Allowance,
    "runout of each parked rim or face, high spot unknown; 0 where both shafts turn",
)
.optional();
const GROWTH_IS: Input =
    Input::choice("growth_is", KNOWN_NAMES, "± of growth as 95 % of a bell, or as bounds")
        .or("normal");

pub(super) const ALL: &[Calculation] = &[Calculation {
    name: "line-up-chance",
    does: "The chance that a coupling runs within its limits, by drawing every input at random.",
    inputs: &[
        Input::quantity("couplings_at", Kind::Length, "x of the coupling").or("0 mm"),
        Input::quantities(
            "flexing_planes",
            Kind::Length,
            "x of its two flexing planes, with a spacer",
        )
        .optional(),
        Input::words(
            "dial_rides_on",
            "for each dial “driver” or “driven”: which of the two machines carries it",
        ),
        DIAL_READS,
        DIAL_AT,
        DIAL_SWING.optional(),
        DIAL_SAG.optional(),
        RUNOUT,
        READINGS,
        Input::words("positions", "where each reading was taken: 12, 1:30, 45°").or(POSITIONS),
        Input::choice("view", VIEW_NAMES, "how the reader stood").or("from driver"),
        Input::quantity("division", Kind::Allowance, "smallest step that the dials read to")
            .or("0.01 mm"),
        Input::quantity("spread", Kind::Allowance, "± of one reading beyond the division")
            .optional(),
        Input::quantities(
            "growth_at",
            Kind::Length,
            "x of two planes of the driver, two of the driven",
        )
        .optional(),
        Input::quantities("growth", Kind::Offset, "what each of those planes grows, with its ±")
            .optional(),
        GROWTH_IS,
        Input::quantities("offset_limits", Kind::Offset, "limit on the offset; none with a spacer"),
        Input::quantities(
            "slope_limits",
            Kind::Slope,
            "limit on the slope; with a spacer on the angle at each flexing plane",
        ),
        Input::quantity("trials", Kind::Count, "how many").or("100000"),
        Input::quantity("seed", Kind::Count, "where the numbers at random start").or("1"),
    ],
    outputs: &[
        Output::value(
            "chance",
            Kind::Percent,
            "that all is inside, with twice its own uncertainty",
        ),
        Output::value(
            "by_squares",
            Kind::Percent,
            "the same, at least, by adding squares and taking all errors as normal",
        ),
        Output::word("judged", "what is judged"),
        Output::value("inside", Kind::Percent, "chance that each of them is inside"),
        Output::value(
            "offsets",
            Kind::Offset,
            "running, the driven above and to the right of the driver; ± half of the 95 % interval",
        ),
        Output::value("offset_deviation", Kind::Allowance, "standard deviation of each"),
        Output::value("slopes", Kind::Slope, "slopes, or angles at the flexing planes, as judged"),
        Output::value("slope_deviation", Kind::Slope, "standard deviation of each"),
        Output::value("worst_ratio", Kind::Number, "worst ratio to a limit that 95 % stay below"),
    ],
    valid: "straight shafts, small slopes; divisions as rectangles, other ± as 95 % of a bell",
    source: Source::new("JCGM 101:2008", "clauses 5 to 7", Basis::Memory),
    answer: chance,
}];

fn chance(given: &Given) -> Result<Answer, ReckonError> {
    let spools = spools(given, 1)?;
    let levels = levels(given, &spools)?.remove(0);
    let reference = given.quantity("couplings_at")?;
    let layout = Layout { moving: Machine::Driven, reference, spool: spools[0] };
    let dials = with_runout(given, dials(given)?)?;
    let seen: Vec<Observation> = dials.into_iter().map(Observation::Sweep).collect();
    let position = position(&layout, &seen)?;
    let grown = growths(given, reference)?;
    let left = position.line.minus(&grown[0].target(&grown[1]));
    let on = OnTrial { position: &position, seen: &seen, left: &left, levels: &levels };
    let (drawn, start) = (given.count("trials")?, given.count("seed")?);
    let found = trials(&[on], &grown, start.into(), drawn)?;
    let outcomes = &found.couplings[0];
    let percent = |si| Value { kind: Kind::Percent, si, plus_minus: None };
    let judged: Vec<String> = outcomes.iter().map(|it| it.judgement.words()).collect();
    let inside: Vec<Value> = outcomes.iter().map(|outcome| percent(outcome.inside)).collect();
    let by_squares = chance_of_all(&judge_line(&layout, &left, &levels)?).map(percent);
    let (offsets, slopes): (Vec<&Outcome>, Vec<&Outcome>) =
        outcomes.iter().partition(|outcome| outcome.judgement.measure == Measure::Offset);
    let shown = |all: &[&Outcome]| all.iter().map(|outcome| outcome.shown()).collect::<Vec<_>>();
    let deviation = |all: &[&Outcome], kind| {
        let one = |outcome: &&Outcome| Value { kind, si: outcome.deviation, plus_minus: None };
        all.iter().map(one).collect::<Vec<Value>>()
    };
    let answer = given.answer().with("chance", found.chance()).with("by_squares", by_squares);
    let answer = answer.with("judged", judged).with("inside", inside);
    let answer = answer.with("offsets", shown(&offsets));
    let answer = answer.with("offset_deviation", deviation(&offsets, Kind::Allowance));
    let answer = answer.with("slopes", shown(&slopes));
    let answer = answer.with("slope_deviation", deviation(&slopes, Kind::Slope));
    Ok(answer.with("worst_ratio", found.worst_ratio).shown_by([found.working()]))
}

fn with_runout(given: &Given, mut dials: Vec<Dial>) -> Result<Vec<Dial>, ReckonError> {
    let runouts = given.quantities::<Length>("dial_runout");
    if runouts.is_empty() {
        return Ok(dials);
    }
    let runouts = super::train::so_many("dial_runout", runouts, dials.len())?;
    for (dial, runout) in dials.iter_mut().zip(runouts) {
        if runout.si() != 0.0 {
            dial.turning = Turning::CarrierAlone(runout);
        }
    }
    Ok(dials)
}

/// What driver and driven grow.
fn growths(given: &Given, at: Length) -> Result<[Growth; 2], ReckonError> {
    let known = given.pick("growth_is", &KNOWN)?;
    let at_planes = given.quantities::<Length>("growth_at");
    let grown = given.estimates::<Length>("growth");
    if at_planes.is_empty() && grown.is_empty() {
        let still = Growth::between(&[PlaneGrowth::up(at, Estimate::exact(Length::default()))])?;
        return Ok([still.clone(), still]);
    }
    let at_planes = super::train::so_many("growth_at", at_planes, 4)?;
    let grown = super::train::so_many("growth", grown, 4)?;
    let planes: Vec<PlaneGrowth> =
        at_planes.into_iter().zip(grown).map(|(at, up)| PlaneGrowth::up(at, up)).collect();
    let growth = |planes: &[PlaneGrowth]| match known {
        Known::Normal => Ok(Growth::normal(lineup::growth::growth_line(planes)?)),
        Known::Between => Growth::between(planes),
    };
    Ok([growth(&planes[..2])?, growth(&planes[2..])?])
}
