//! Trains of machines: one common line that all can reach.

use lineup::gains::{Change, gains};
use lineup::growth::{PlaneGrowth, growth_line};
use lineup::moves::FootPlane;
use lineup::position::{Observation, Offset, Position, Slope, position};
use lineup::tolerance::Level;
use lineup::train::{Part, Preference, TrainCoupling, TrainMachine, TrainPlan, line_up};
use lineup::whole::{Proof, Stock, line_up_whole};
use lineup::{Body, Estimate, Layout, Machine, Plane};
use quantities::{Angle, Basis, Kind, Length, Source, System, Value};

use super::choices::{SYSTEM_NAMES, SYSTEMS};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const PREFERENCES: [(&str, Preference); 3] = [
    ("least total", Preference::LeastTotal),
    ("least greatest", Preference::LeastGreatest),
    ("raise only", Preference::RaiseOnly),
];
const PREFERENCE_NAMES: &[&str] = &names(&PREFERENCES);

pub(super) const NAMES: Input =
    Input::words("machines", "names of two to eight machines, in the order of x");
pub(super) const HELD: Input = Input::words("held", "names of those that stay").optional();
pub(super) const FEET: Input = Input::quantities(
    "feet",
    Kind::Length,
    "x of two planes of feet of each machine, in that order",
);
pub(super) const SHIMS: Input =
    Input::quantities("shims", Kind::Offset, "shims at each of those planes that can come out")
        .optional();
pub(super) const ROOM_RIGHT: Input =
    Input::quantities("room_right", Kind::Offset, "room to the right at each of them").optional();
pub(super) const ROOM_LEFT: Input =
    Input::quantities("room_left", Kind::Offset, "room to the left at each of them").optional();
pub(super) const GROWTH: Input =
    Input::quantities("growth", Kind::Offset, "what each of those planes grows, running")
        .optional();
pub(super) const AT: Input = Input::quantities("couplings_at", Kind::Length, "x of each coupling");
const OFFSET_UP: Input = Input::quantities(
    "offsets_up",
    Kind::Offset,
    "at each coupling the next machine above the one before, cold, with its ±",
);
const OFFSET_RIGHT: Input =
    Input::quantities("offsets_right", Kind::Offset, "the same to the right");
const SLOPE_UP: Input = Input::quantities("slopes_up", Kind::Slope, "its slope, with its ±");
const SLOPE_RIGHT: Input = Input::quantities("slopes_right", Kind::Slope, "the same to the right");
const OFFSET_LIMIT: Input =
    Input::quantity("offset_limit", Kind::Offset, "offset that each coupling is held to, running");
const SLOPE_LIMIT: Input = Input::quantity("slope_limit", Kind::Slope, "slope that it is held to");
pub(super) const PREFER: Input =
    Input::choice("prefer", PREFERENCE_NAMES, "which of equal moves").or("least total");

pub(super) const STOCK: Input =
    Input::quantities("stock", Kind::Allowance, "thicknesses in stock; precut shims when left out")
        .optional();
pub(super) const UNITS: Input =
    Input::choice("units", SYSTEM_NAMES, "which precut shims").or("metric");
pub(super) const MOST: Input =
    Input::quantity("most", Kind::Count, "shims in a pack at most, 1 to 8").or("5");

pub(super) const MOVE_UP: Output = Output::value(
    "move_up",
    Kind::Offset,
    "shims to add at the two planes of each machine; none where it is held",
);
pub(super) const MOVE_RIGHT: Output =
    Output::value("move_right", Kind::Offset, "pushes to the right there");
pub(super) const RATIO_UP: Output =
    Output::value("worst_ratio_up", Kind::Number, "worst ratio to a limit that is left, upwards");
pub(super) const RATIO_RIGHT: Output =
    Output::value("worst_ratio_right", Kind::Number, "the same sideways");
pub(super) const WITHOUT_STEPS: Output = Output::value(
    "without_steps",
    Kind::Number,
    "worst ratio upwards that moves of any size would leave",
);
pub(super) const PROOF: Output =
    Output::word("proof", "how sure it is that nothing better can be made");
pub(super) const VALID: &str = "two to eight machines; straight shafts; the least worst ratio, then the moves that are preferred";
const PROGRAM: Source = Source::new("linear programming", "the least worst ratio", Basis::Computed);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "common-line",
        does: "Moves of a train of machines to one common line that all can reach.",
        inputs: &[
            NAMES,
            HELD,
            FEET,
            SHIMS,
            ROOM_RIGHT,
            ROOM_LEFT,
            GROWTH,
            AT,
            OFFSET_UP,
            OFFSET_RIGHT,
            SLOPE_UP,
            SLOPE_RIGHT,
            OFFSET_LIMIT,
            SLOPE_LIMIT,
            PREFER,
        ],
        outputs: &[
            MOVE_UP,
            MOVE_RIGHT,
            RATIO_UP,
            RATIO_RIGHT,
            Output::word("gains", "what stands in the way, and what changing it would gain"),
        ],
        valid: VALID,
        source: PROGRAM,
        answer: common_line,
    },
    Calculation {
        name: "common-line-whole",
        does: "The same with packs made of whole shims of the stock.",
        inputs: &[
            NAMES,
            HELD,
            FEET,
            SHIMS,
            ROOM_RIGHT,
            ROOM_LEFT,
            GROWTH,
            AT,
            OFFSET_UP,
            OFFSET_RIGHT,
            SLOPE_UP,
            SLOPE_RIGHT,
            OFFSET_LIMIT,
            SLOPE_LIMIT,
            PREFER,
            STOCK,
            UNITS,
            MOST,
        ],
        outputs: &[MOVE_UP, MOVE_RIGHT, RATIO_UP, RATIO_RIGHT, WITHOUT_STEPS, PROOF],
        valid: VALID,
        source: Source::new("branch and bound over whole shims", "", Basis::Computed),
        answer: whole_line,
    },
];

pub(super) fn so_many<T>(
    name: &'static str,
    all: Vec<T>,
    wanted: usize,
) -> Result<Vec<T>, ReckonError> {
    let found = all.len();
    let why = format!("{found} given where {wanted} are wanted");
    if found == wanted { Ok(all) } else { Err(Given::unreadable(name, why)) }
}

/// Lengths at every plane of feet, which may have been left out.
fn at_feet(
    given: &Given,
    name: &'static str,
    count: usize,
) -> Result<Vec<Option<Length>>, ReckonError> {
    let all = given.quantities::<Length>(name);
    if all.is_empty() {
        return Ok(vec![None; count]);
    }
    Ok(so_many(name, all, count)?.into_iter().map(Some).collect())
}

pub(super) fn machines(given: &Given) -> Result<Vec<TrainMachine>, ReckonError> {
    let called = given.words("machines");
    let held = given.words("held");
    if let Some(stranger) = held.iter().find(|name| !called.contains(name)) {
        return Err(Given::unreadable("held", format!("“{stranger}” is none of the machines")));
    }
    let count = 2 * called.len();
    let places = so_many("feet", given.quantities::<Length>("feet"), count)?;
    let shims = at_feet(given, "shims", count)?;
    let (right, left) = (at_feet(given, "room_right", count)?, at_feet(given, "room_left", count)?);
    let growth = given.estimates::<Length>("growth");
    let still = vec![Estimate::exact(Length::default()); count];
    let growth = if growth.is_empty() { still } else { so_many("growth", growth, count)? };
    let foot = |plane: usize| FootPlane {
        shims: shims[plane],
        side_room: right[plane].zip(left[plane]),
        ..FootPlane::new(format!("plane {} of {}", plane % 2 + 1, called[plane / 2]), places[plane])
    };
    let machine = |(place, name): (usize, &String)| {
        let two = [2 * place, 2 * place + 1];
        let grown = two.map(|plane| PlaneGrowth::up(places[plane], growth[plane]));
        Ok(TrainMachine {
            name: name.clone(),
            part: if held.contains(name) { Part::Held } else { Part::Movable },
            feet: two.map(foot).into(),
            growth: growth_line(&grown)?,
        })
    };
    called.iter().enumerate().map(machine).collect()
}

fn couplings(given: &Given, count: usize) -> Result<Vec<TrainCoupling>, ReckonError> {
    let places = so_many("couplings_at", given.quantities::<Length>("couplings_at"), count)?;
    let offsets = |name| so_many(name, given.estimates::<Length>(name), count);
    let slopes = |name| so_many(name, given.estimates::<Angle>(name), count);
    let offsets = [offsets("offsets_up")?, offsets("offsets_right")?];
    let slopes = [slopes("slopes_up")?, slopes("slopes_right")?];
    let as_given = Source::new("as given", "", Basis::Entered);
    let levels = [
        Level::offset("offset", None, Some(given.quantity("offset_limit")?), as_given)?,
        Level::slope("slope", None, Some(given.quantity("slope_limit")?), as_given)?,
    ];
    let coupling = |place: usize| {
        let at = places[place];
        let position = placed(at, [0, 1].map(|way| (offsets[way][place], slopes[way][place])))?;
        Ok(TrainCoupling { position, levels: levels.to_vec() })
    };
    (0..count).map(coupling).collect()
}

/// Where the next machine lies against the one before, from offset and slope both ways.
fn placed(
    at: Length,
    ways: [(Estimate<Length>, Estimate<Angle>); 2],
) -> Result<Position, ReckonError> {
    let layout = Layout { moving: Machine::Driven, reference: at, spool: None };
    let (of, from) = (Body::Driven, Body::Driver);
    let seen: Vec<Observation> = Plane::BOTH
        .into_iter()
        .zip(ways)
        .flat_map(|(plane, (offset, slope))| {
            let offset = Observation::Offset(Offset { plane, of, from, at, amount: offset });
            [offset, Observation::Slope(Slope { plane, of, from, amount: slope })]
        })
        .collect();
    Ok(position(&layout, &seen)?)
}

fn with_plan(answer: Answer, plan: &TrainPlan) -> Answer {
    let amounts = |plane| -> Vec<Length> {
        plan.machines.iter().flat_map(|machine| machine.amounts(plane)).collect()
    };
    let [up, right] = plan.worst_ratio;
    let answer = answer.with("move_up", amounts(Plane::Vertical));
    let answer = answer.with("move_right", amounts(Plane::Sideways));
    let answer = answer.with("worst_ratio_up", up).with("worst_ratio_right", right);
    answer.shown_by(Plane::BOTH.map(|plane| plan.working(plane)))
}

fn common_line(given: &Given) -> Result<Answer, ReckonError> {
    let machines = machines(given)?;
    let couplings = couplings(given, machines.len().saturating_sub(1))?;
    let prefer = given.pick("prefer", &PREFERENCES)?;
    let plan = line_up(&machines, &couplings, prefer)?;
    let found = gains(&machines, &couplings, prefer)?;
    let gains: Vec<String> = found
        .iter()
        .map(|gain| {
            let what = match &gain.change {
                Change::Room { foot, beyond, .. } => {
                    format!("{} more room for {foot}", shown(*beyond))
                }
                Change::AllRoom => "room for all feet".to_owned(),
                Change::LetGo(machine) => format!("{} let go", machines[*machine].name),
            };
            format!("{}, {what}: {:.2} becomes {:.2}", gain.plane.words(), gain.now, gain.then)
        })
        .collect();
    Ok(with_plan(given.answer(), &plan).with("gains", gains))
}

fn shown(length: Length) -> String {
    let [metric, inch] =
        [System::Metric, System::Inch].map(|system| Value::new(Kind::Offset, length).show(system));
    format!("{metric} ({inch})")
}

fn whole_line(given: &Given) -> Result<Answer, ReckonError> {
    let machines = machines(given)?;
    let couplings = couplings(given, machines.len().saturating_sub(1))?;
    Ok(in_whole_shims(given, &machines, &couplings)?.0)
}

/// The answer in whole shims of the stock that is given, and the plan that it tells.
pub(super) fn in_whole_shims(
    given: &Given,
    machines: &[TrainMachine],
    couplings: &[TrainCoupling],
) -> Result<(Answer, TrainPlan), ReckonError> {
    let thicknesses = given.quantities::<Length>("stock");
    let precut = tables::shims::stock(given.pick("units", &SYSTEMS)?).to_vec();
    let most = usize::try_from(given.count("most")?).unwrap_or(usize::MAX);
    let thicknesses = if thicknesses.is_empty() { precut } else { thicknesses };
    let prefer = given.pick("prefer", &PREFERENCES)?;
    let whole = line_up_whole(machines, couplings, prefer, &Stock { thicknesses, most })?;
    let proof = match whole.proof {
        Proof::Best => "nothing better can be made of the stock".to_owned(),
        Proof::Within(gap) => format!("the search was given up: within {gap:.3} of the best"),
    };
    let answer = with_plan(given.answer(), &whole.plan);
    let answer = answer.with("without_steps", whole.free.worst_ratio[0]).with("proof", proof);
    Ok((answer, whole.plan))
}
