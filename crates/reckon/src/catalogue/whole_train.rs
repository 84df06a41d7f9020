//! A whole train in one case: from the readings of every dial to whole shims and the chance that all
//! comes out inside.

use lineup::clock::Clock;
use lineup::dial::{Dial, Surface};
use lineup::position::{Observation, Offset, Position, Slope, position};
use lineup::sag::Sag;
use lineup::tolerance::{Judgement, Level, chance_of_all};
use lineup::train::{TrainCoupling, TrainPlan};
use lineup::{Body, Estimate, Layout, Machine, Plane, Spool};
use quantities::{Angle, Basis, Kind, Length, Physical, Source, Value, Working};

use super::choices::{MACHINES, POSITIONS, VIEW_NAMES, VIEWS, clocks};
use super::train::{
    AT, FEET, GROWTH, HELD, MOST, MOVE_RIGHT, MOVE_UP, NAMES, PREFER, PROOF, RATIO_RIGHT, RATIO_UP,
    ROOM_LEFT, ROOM_RIGHT, SHIMS, STOCK, UNITS, WITHOUT_STEPS, in_whole_shims, machines, so_many,
};
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

pub(super) const DIAL_READS: Input = Input::words("dial_reads", "for each dial “rim” or “face”");
pub(super) const DIAL_AT: Input =
    Input::quantities("dial_at", Kind::Length, "x where each stem touches, a rim’s with its ±");
pub(super) const DIAL_SWING: Input = Input::quantities(
    "dial_swing",
    Kind::Length,
    "diameter that each stem sweeps, a face’s with its ±; any for a rim",
);
pub(super) const DIAL_SAG: Input =
    Input::quantities("dial_sag", Kind::Allowance, "sag of each bracket, with its ±");
pub(super) const READINGS: Input = Input::quantities(
    "readings",
    Kind::Offset,
    "all readings, dial by dial, each at all positions; a stem pushed in reads more",
);

pub(super) const ALL: &[Calculation] = &[Calculation {
    name: "train",
    does: "A whole train from its readings to whole shims and the chance that all is inside.",
    inputs: &[
        NAMES,
        HELD,
        FEET,
        SHIMS,
        ROOM_RIGHT,
        ROOM_LEFT,
        GROWTH,
        AT,
        Input::quantities(
            "flexing_planes",
            Kind::Length,
            "x of two flexing planes of each coupling; one place twice where it has no spacer",
        )
        .optional(),
        Input::words("dial_at_coupling", "for each dial the number of its coupling, from 1")
            .optional(),
        Input::words(
            "dial_rides_on",
            "for each dial “driver” or “driven”: which of the two machines there carries it",
        )
        .optional(),
        DIAL_READS.optional(),
        DIAL_AT.optional(),
        DIAL_SWING.optional(),
        DIAL_SAG.optional(),
        READINGS.optional(),
        Input::words("positions", "where each reading was taken: 12, 1:30, 45°").or(POSITIONS),
        Input::choice("view", VIEW_NAMES, "how the reader stood").or("from driver"),
        Input::quantity("division", Kind::Allowance, "smallest step that the dials read to")
            .or("0.01 mm"),
        Input::quantity("spread", Kind::Allowance, "± of one reading beyond the division")
            .optional(),
        Input::words(
            "offset_at_coupling",
            "for each offset that another instrument gave the number of its coupling",
        )
        .optional(),
        Input::quantities("offset_at", Kind::Length, "x where each was taken").optional(),
        Input::quantities(
            "offsets_up",
            Kind::Offset,
            "there the next machine above the one before, with its ±",
        )
        .optional(),
        Input::quantities("offsets_right", Kind::Offset, "the same to the right").optional(),
        Input::words(
            "slope_at_coupling",
            "for each slope that another instrument gave the number of its coupling",
        )
        .optional(),
        Input::quantities(
            "slopes_up",
            Kind::Slope,
            "there the climb of the next machine against the one before, with its ±",
        )
        .optional(),
        Input::quantities("slopes_right", Kind::Slope, "the same to the right").optional(),
        Input::quantities(
            "offset_limits",
            Kind::Offset,
            "on the offset of all couplings or of each, running; of no account with a spacer",
        ),
        Input::quantities(
            "slope_limits",
            Kind::Slope,
            "on the slope; with a spacer on the angle at each flexing plane",
        ),
        PREFER,
        STOCK,
        UNITS,
        MOST,
    ],
    outputs: &[
        Output::value(
            "offset_up",
            Kind::Offset,
            "at each coupling the next machine above the one before, cold",
        ),
        Output::value("offset_right", Kind::Offset, "the same to the right"),
        Output::value("slope_up", Kind::Slope, "how it climbs against the one before"),
        Output::value("slope_right", Kind::Slope, "how it bears right"),
        Output::value(
            "covariance",
            Kind::Number,
            "for each coupling 4 × 4, row by row, of those four in that order; m and rad",
        ),
        MOVE_UP,
        MOVE_RIGHT,
        RATIO_UP,
        RATIO_RIGHT,
        WITHOUT_STEPS,
        Output::value("probability", Kind::Percent, "at least, that all is inside after the moves"),
        PROOF,
    ],
    valid: "two to eight machines; straight shafts, small slopes; both shafts turned together",
    source: Source::new(
        "generalised least squares, branch and bound over whole shims",
        "JCGM 100:2008, H.3",
        Basis::Computed,
    ),
    answer: train,
}];

fn train(given: &Given) -> Result<Answer, ReckonError> {
    let machines = machines(given)?;
    let count = machines.len().saturating_sub(1);
    let dials = dials(given)?.into_iter().map(Observation::Sweep);
    let at = at_couplings(given, "dial_at_coupling", count)?;
    let mut seen: Vec<(usize, Observation)> =
        so_many("dial_at_coupling", at, dials.len())?.into_iter().zip(dials).collect();
    seen.extend(typed(given, count)?);
    let places = so_many("couplings_at", given.quantities::<Length>("couplings_at"), count)?;
    let spools = spools(given, count)?;
    let levels = levels(given, &spools)?;
    let mut couplings = Vec::new();
    for (place, at) in places.into_iter().enumerate() {
        let layout = Layout { moving: Machine::Driven, reference: at, spool: spools[place] };
        let here = seen.iter().filter(|(coupling, _)| *coupling == place);
        let seen: Vec<Observation> = here.map(|(_, seen)| seen.clone()).collect();
        let position = position(&layout, &seen)?;
        couplings.push(TrainCoupling { position, levels: levels[place].clone() });
    }
    let (answer, plan) = in_whole_shims(given, &machines, &couplings)?;
    let positions: Vec<&Position> = couplings.iter().map(|coupling| &coupling.position).collect();
    let answer = answer.shown_by(foot_workings(&plan));
    Ok(with_positions(answer, &positions).with("probability", probability(&plan)))
}

fn with_positions(answer: Answer, positions: &[&Position]) -> Answer {
    let offsets = |plane| -> Vec<Estimate<Length>> {
        positions.iter().map(|found| found.offset_at(plane, found.layout.reference)).collect()
    };
    let slopes = |plane| -> Vec<Estimate<Angle>> {
        positions.iter().map(|found| found.slope(plane)).collect()
    };
    let covariance = positions.iter().flat_map(|found| found.line.covariance()).flatten();
    let workings = positions
        .iter()
        .flat_map(|found| Plane::BOTH.map(|plane| found.working(plane, found.layout.reference)));
    answer
        .with("offset_up", offsets(Plane::Vertical))
        .with("offset_right", offsets(Plane::Sideways))
        .with("slope_up", slopes(Plane::Vertical))
        .with("slope_right", slopes(Plane::Sideways))
        .with("covariance", covariance.map(Value::number).collect::<Vec<Value>>())
        .shown_by(workings)
}

fn probability(plan: &TrainPlan) -> Option<Value> {
    let judged: Vec<Judgement> =
        plan.couplings.iter().flat_map(|left| left.judged.iter().cloned()).collect();
    let chance = chance_of_all(&judged)?;
    Some(Value { kind: Kind::Percent, si: chance, plus_minus: None })
}

fn foot_workings(plan: &TrainPlan) -> Vec<Working> {
    let feet = plan.machines.iter().flat_map(|machine| &machine.feet);
    let working = |plane, foot: &lineup::train::TrainFoot| foot.working(plane, plan.worst_ratio);
    feet.flat_map(|foot| Plane::BOTH.map(|plane| working(plane, foot))).collect()
}

/// Which coupling each was read at.
fn at_couplings(
    given: &Given,
    name: &'static str,
    couplings: usize,
) -> Result<Vec<usize>, ReckonError> {
    let of = |number: &String| coupling_of(name, number, couplings);
    given.words(name).iter().map(of).collect()
}

/// Offsets and slopes as another instrument gave them.
fn typed(given: &Given, couplings: usize) -> Result<Vec<(usize, Observation)>, ReckonError> {
    let (of, from) = (Body::Driven, Body::Driver);
    let at_offset = at_couplings(given, "offset_at_coupling", couplings)?;
    let places = so_many("offset_at", given.quantities::<Length>("offset_at"), at_offset.len())?;
    let at_slope = at_couplings(given, "slope_at_coupling", couplings)?;
    let mut seen = Vec::new();
    for (plane, offsets, slopes) in [
        (Plane::Vertical, "offsets_up", "slopes_up"),
        (Plane::Sideways, "offsets_right", "slopes_right"),
    ] {
        let amounts = so_many(offsets, given.estimates::<Length>(offsets), at_offset.len())?;
        for ((&coupling, &at), amount) in at_offset.iter().zip(&places).zip(amounts) {
            seen.push((coupling, Observation::Offset(Offset { plane, of, from, at, amount })));
        }
        let amounts = so_many(slopes, given.estimates::<Angle>(slopes), at_slope.len())?;
        for (&coupling, amount) in at_slope.iter().zip(amounts) {
            seen.push((coupling, Observation::Slope(Slope { plane, of, from, amount })));
        }
    }
    Ok(seen)
}

/// Every dial.
pub(super) fn dials(given: &Given) -> Result<Vec<Dial>, ReckonError> {
    let riders = given.words("dial_rides_on");
    let count = riders.len();
    let reads = so_many("dial_reads", given.words("dial_reads").to_vec(), count)?;
    let places = so_many("dial_at", given.estimates::<Length>("dial_at"), count)?;
    let swings = given.estimates::<Length>("dial_swing");
    let swings = if swings.is_empty() { swings } else { so_many("dial_swing", swings, count)? };
    let sags = given.estimates::<Length>("dial_sag");
    let sags = if sags.is_empty() { sags } else { so_many("dial_sag", sags, count)? };
    let clocks = clocks(given, "positions", given.pick("view", &VIEWS)?)?;
    let readings = given.quantities::<Length>("readings");
    let readings = so_many("readings", readings, count * clocks.len())?;
    let dial = |(place, rider): (usize, &String)| {
        let carrier = carrier_of(rider)?;
        let swing = swings.get(place);
        let surface = surface_of(&reads[place], swing.map(|swing| swing.value))?;
        let lever = if surface.is_rim() { Some(&places[place]) } else { swing };
        let (at, division) = (places[place].value, given.quantity("division")?);
        let mut dial = Dial::new(carrier, carrier.other(), surface, at, division);
        dial.plus_minus = given.optional("spread");
        dial.lever_plus_minus = lever.map(|lever| lever.plus_minus).filter(|it| it.si() > 0.0);
        let first = place * clocks.len();
        let swept: Vec<(Clock, Length)> =
            clocks.iter().copied().zip(readings[first..].iter().copied()).collect();
        let mut dial = dial.with(swept);
        dial.sag = sags.get(place).map(|sag| Sag { amplitude: *sag, bracket: place.to_string() });
        Ok(dial)
    };
    riders.iter().enumerate().map(dial).collect()
}

fn coupling_of(name: &'static str, number: &str, couplings: usize) -> Result<usize, ReckonError> {
    let known = number.parse().ok().filter(|number| (1..=couplings).contains(number));
    known.map(|number: usize| number - 1).ok_or_else(|| {
        let why = format!("“{number}” is none of the couplings 1 to {couplings}");
        Given::unreadable(name, why)
    })
}

fn carrier_of(word: &str) -> Result<Machine, ReckonError> {
    let found = MACHINES.iter().find(|(name, _)| *name == word);
    found.map(|(_, machine)| *machine).ok_or_else(|| {
        Given::unreadable("dial_rides_on", format!("“{word}” is none of: driver, driven"))
    })
}

fn surface_of(word: &str, swing: Option<Length>) -> Result<Surface, ReckonError> {
    match (word, swing) {
        ("rim", _) => Ok(Surface::Rim),
        ("face", Some(swing)) => Ok(Surface::Face(swing)),
        ("face", None) => {
            Err(Given::unreadable("dial_swing", "a face dial needs the diameter that it sweeps"))
        }
        _ => Err(Given::unreadable("dial_reads", format!("“{word}” is none of: rim, face"))),
    }
}

/// The flexing planes of each coupling; `None` where both stand at one place.
pub(super) fn spools(given: &Given, count: usize) -> Result<Vec<Option<Spool>>, ReckonError> {
    let planes = given.quantities::<Length>("flexing_planes");
    if planes.is_empty() {
        return Ok(vec![None; count]);
    }
    let planes = so_many("flexing_planes", planes, 2 * count)?;
    let spool = |two: &[Length]| {
        (two[0] < two[1]).then(|| Spool { driver_end: two[0], driven_end: two[1] })
    };
    Ok(planes.chunks_exact(2).map(spool).collect())
}

/// What each coupling is held to.
pub(super) fn levels(
    given: &Given,
    spools: &[Option<Spool>],
) -> Result<Vec<Vec<Level>>, ReckonError> {
    let offsets = each("offset_limits", given.quantities::<Length>("offset_limits"), spools.len())?;
    let slopes = each("slope_limits", given.quantities::<Angle>("slope_limits"), spools.len())?;
    let as_given = Source::new("as given", "", Basis::Entered);
    let level = |(place, spool): (usize, &Option<Spool>)| {
        let (offset, slope) = (Some(offsets[place]), Some(slopes[place]));
        if spool.is_some() {
            return Ok(vec![Level::flex_angle("angle", None, slope, as_given)?]);
        }
        Ok(vec![
            Level::offset("offset", None, offset, as_given)?,
            Level::slope("slope", None, slope, as_given)?,
        ])
    };
    spools.iter().enumerate().map(level).collect()
}

/// One for all, or one for each.
fn each<T: Copy>(name: &'static str, all: Vec<T>, count: usize) -> Result<Vec<T>, ReckonError> {
    if let [one] = all[..] { Ok(vec![one; count]) } else { so_many(name, all, count) }
}
