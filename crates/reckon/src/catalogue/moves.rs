//! What to do at the feet, and what a line means at hubs and flex planes.

use lineup::bounded::best_move as within_room;
use lineup::clock::{Clock, View};
use lineup::flange::{Flange, flange_move};
use lineup::line::Line;
use lineup::moves::{FootMove, FootPlane, Watch, moves, raise_of_target, tilt};
use lineup::position::{flex_angles, gap_difference};
use lineup::tolerance::Level;
use lineup::{Estimate, Layout, Plane, Spool};
use quantities::{Basis, Kind, Length, Physical, Source, System, Value};

use super::choices::{MACHINE_NAMES, MACHINES};
use super::growth::line;
use super::levels::inclined;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const AT: Input =
    Input::quantities("at", Kind::Length, "x of two planes where the position is known");
const UP: Input = Input::quantities("up", Kind::Offset, "moving above fixed there, with its ±");
const RIGHT: Input =
    Input::quantities("right", Kind::Offset, "moving to the right of fixed there").optional();
const TARGET_AT: Input = Input::quantities(
    "target_at",
    Kind::Length,
    "x of the planes of the target; in line when left out",
)
.optional();
const TARGET_UP: Input =
    Input::quantities("target_up", Kind::Offset, "moving above fixed, as it should be").optional();
const TARGET_RIGHT: Input =
    Input::quantities("target_right", Kind::Offset, "to the right, as it should be").optional();
const FEET: Input =
    Input::quantities("feet", Kind::Length, "x of the moving machine’s foot planes");
const SHIMS: Input =
    Input::quantities("shims", Kind::Offset, "shims under each plane that can come out").optional();
const ROOM_RIGHT: Input =
    Input::quantities("room_right", Kind::Offset, "room to the right at each plane").optional();
const ROOM_LEFT: Input =
    Input::quantities("room_left", Kind::Offset, "room to the left at each plane").optional();
const GEOMETRY: Source = Source::new("geometry of straight shafts", "", Basis::Computed);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "foot-moves",
        does: "Shims and pushes at the feet that bring a machine from its position to its target.",
        inputs: &[
            AT,
            UP,
            RIGHT,
            TARGET_AT,
            TARGET_UP,
            TARGET_RIGHT,
            FEET,
            SHIMS,
            ROOM_RIGHT,
            ROOM_LEFT,
        ],
        outputs: &[
            Output::value("move_up", Kind::Offset, "shims to add at each plane; − to take out"),
            Output::value(
                "move_right",
                Kind::Offset,
                "push to the right, looking along +x; − to the left",
            ),
            Output::value(
                "dial_on_top",
                Kind::Offset,
                "what a dial above each foot reads after the move",
            ),
            Output::value(
                "dial_from_right",
                Kind::Offset,
                "what a dial to its right reads after the move",
            ),
            Output::word("bound", "planes that cannot go as far as they should"),
        ],
        valid: "straight shafts; the two planes’ errors apart from each other; judge a move by where it brings the shaft at the coupling",
        source: GEOMETRY,
        answer: foot_moves,
    },
    Calculation {
        name: "best-move",
        does: "The best move within the room of the feet, when some are base-bound or bolt-bound.",
        inputs: &[
            Input::choice("moving", MACHINE_NAMES, "the machine that moves"),
            AT,
            UP,
            RIGHT,
            TARGET_AT,
            TARGET_UP,
            TARGET_RIGHT,
            FEET,
            SHIMS,
            ROOM_RIGHT,
            ROOM_LEFT,
            Input::quantity("reference", Kind::Length, "plane that the offset is judged at")
                .or("0 mm"),
            Input::quantity("offset_limit", Kind::Offset, "offset to stay within"),
            Input::quantity("slope_limit", Kind::Slope, "slope to stay within"),
        ],
        outputs: &[
            Output::value("move_up", Kind::Offset, "shims to add at each plane; − to take out"),
            Output::value("move_right", Kind::Offset, "push to the right at each plane"),
            Output::value("left_offset_up", Kind::Offset, "offset that is left, upwards"),
            Output::value("left_offset_right", Kind::Offset, "offset that is left, to the right"),
            Output::value("left_slope_up", Kind::Slope, "slope that is left, upwards"),
            Output::value("left_slope_right", Kind::Slope, "slope that is left, to the right"),
            Output::value("worst_ratio", Kind::Number, "largest ratio to a limit that is left"),
            Output::word("obstacles", "what stands in the way"),
        ],
        valid: "least sum of squared ratios to the limits; a foot without a room goes as far as asked",
        source: GEOMETRY,
        answer: best_move,
    },
    Calculation {
        name: "raise-fixed",
        does: "How far the fixed machine must rise, so that a base-bound foot can stay above its base.",
        inputs: &[
            Input::quantity("move_up", Kind::Offset, "move wanted at the foot; − is down"),
            Input::quantity("shims", Kind::Offset, "shims there now"),
            Input::quantity("least_pack", Kind::Offset, "shims that should lie there at least"),
        ],
        outputs: &[Output::value("raise", Kind::Offset, "of the fixed line at that foot’s plane")],
        valid: "at the plane of the foot; nothing when the foot can come down",
        source: Source::new(
            "Harlon, A Millwright’s Guide to Motor/Pump Alignment, 2nd ed.",
            "options four and five",
            Basis::Read,
        ),
        answer: raise,
    },
    Calculation {
        name: "tilt-shims",
        does: "Shims that shift a shaft sideways by tilting its machine.",
        inputs: &[
            Input::quantity("shift", Kind::Offset, "wanted sideways"),
            Input::quantity("shaft_height", Kind::Length, "shaft above its feet"),
            Input::quantity("foot_width", Kind::Length, "between left and right feet"),
        ],
        outputs: &[Output::value(
            "shims",
            Kind::Offset,
            "raise one side and lower the other by this",
        )],
        valid: "small tilts; the shaft moves towards the lowered side",
        source: Source::new(
            "Bloch and Geitner, Machinery Component Maintenance and Repair",
            "pp. 224 to 225",
            Basis::Read,
        ),
        answer: tilted,
    },
    Calculation {
        name: "flange-shims",
        does: "Shims at the bolts of a flange-mounted machine, and its shift on its seat.",
        inputs: &[
            Input::choice("moving", MACHINE_NAMES, "the machine that moves"),
            AT,
            UP,
            RIGHT,
            TARGET_AT,
            TARGET_UP,
            TARGET_RIGHT,
            Input::quantity("seat", Kind::Length, "x of the flange’s seat"),
            Input::quantity("bolt_circle", Kind::Length, "diameter of the bolt circle"),
            Input::quantity("bolts", Kind::Count, "how many bolts, evenly spread"),
            Input::word("first", "clock position of the first").or("12"),
        ],
        outputs: &[
            Output::value("shims", Kind::Offset, "shim at each bolt, in the order of the clock"),
            Output::word("bolts_at", "where each bolt stands"),
            Output::value("shift_up", Kind::Offset, "shift on its seat, towards 12"),
            Output::value("shift_right", Kind::Offset, "shift on its seat, towards 3"),
        ],
        valid: "a straight shaft square to its flange; 12 is what was called up",
        source: GEOMETRY,
        answer: flange_shims,
    },
    Calculation {
        name: "gap-difference",
        does: "Gap at the top less gap at the bottom of facing hubs, from the slope between shafts.",
        inputs: &[
            Input::choice("moving", MACHINE_NAMES, "the machine that moves"),
            Input::quantity("slope", Kind::Slope, "moving against fixed, along +x, with its ±"),
            Input::quantity("diameter", Kind::Length, "diameter of the faces"),
        ],
        outputs: &[Output::value(
            "difference",
            Kind::Gap,
            "top less bottom; for a slope to the right, right less left",
        )],
        valid: "faces square to their shafts",
        source: GEOMETRY,
        answer: gaps,
    },
    Calculation {
        name: "flex-angles",
        does: "Angles at the two flex planes of a spacer, from the line of the moving machine.",
        inputs: &[
            Input::choice("moving", MACHINE_NAMES, "the machine that moves"),
            AT,
            UP,
            RIGHT,
            Input::quantity(
                "driver_plane",
                Kind::Length,
                "x of the flex plane at the driver’s end",
            ),
            Input::quantity("driven_plane", Kind::Length, "x of the flex plane at the driven end"),
        ],
        outputs: &[
            Output::value("driver_up", Kind::Slope, "spool against driver, upwards"),
            Output::value("driver_right", Kind::Slope, "spool against driver, to the right"),
            Output::value("driven_up", Kind::Slope, "driven against spool, upwards"),
            Output::value("driven_right", Kind::Slope, "driven against spool, to the right"),
        ],
        valid: "a spool that hinges at both planes",
        source: GEOMETRY,
        answer: flexed,
    },
];

fn position(given: &Given) -> Result<Line, ReckonError> {
    line(given, "at", "up", Some("right"))
}

fn target(given: &Given, at: Length) -> Result<Line, ReckonError> {
    if given.quantities::<Length>("target_at").is_empty() {
        let left_over = ["target_up", "target_right"].iter();
        if left_over.copied().any(|name| !given.quantities::<Length>(name).is_empty()) {
            return Err(ReckonError::not_valid("a target needs target_at"));
        }
        return Ok(Line::zero(at));
    }
    line(given, "target_at", "target_up", Some("target_right"))
}

fn feet(given: &Given) -> Result<Vec<FootPlane>, ReckonError> {
    let places = given.quantities::<Length>("feet");
    let each = |name: &'static str| -> Result<Vec<Option<Length>>, ReckonError> {
        let all = given.quantities::<Length>(name);
        match all.len() {
            0 => Ok(vec![None; places.len()]),
            n if n == places.len() => Ok(all.into_iter().map(Some).collect()),
            n => Err(Given::unreadable(name, format!("{n} given for {} planes", places.len()))),
        }
    };
    let (shims, right, left) = (each("shims")?, each("room_right")?, each("room_left")?);
    let foot = |place: usize| FootPlane {
        shims: shims[place],
        side_room: right[place].zip(left[place]),
        ..FootPlane::new(format!("plane {}", place + 1), places[place])
    };
    if right.iter().zip(&left).any(|(right, left)| right.is_some() != left.is_some()) {
        return Err(ReckonError::not_valid("room sideways needs both room_right and room_left"));
    }
    Ok((0..places.len()).map(foot).collect())
}

fn shown(length: Length) -> String {
    let [metric, inch] =
        [System::Metric, System::Inch].map(|system| Value::new(Kind::Offset, length).show(system));
    format!("{metric} ({inch})")
}

fn foot_moves(given: &Given) -> Result<Answer, ReckonError> {
    let position = position(given)?;
    let moves = moves(&position, &target(given, position.reference())?, &feet(given)?)?;
    let estimates = |way: fn(&FootMove) -> Estimate<Length>| -> Vec<Estimate<Length>> {
        moves.iter().map(way).collect()
    };
    let reads =
        |watch| -> Vec<Length> { moves.iter().map(|foot| foot.dial_reads(watch)).collect() };
    let mut bound = Vec::new();
    for foot in &moves {
        let words = [
            (foot.is_base_bound(), Plane::Vertical, "base-bound"),
            (foot.is_bolt_bound(), Plane::Sideways, "bolt-bound"),
        ];
        for (is_bound, plane, word) in words {
            if is_bound {
                bound.push(format!(
                    "{}: {word} by {}",
                    foot.foot.name,
                    shown(foot.beyond(plane).abs())
                ));
            }
        }
    }
    let answer = given.answer().with("move_up", estimates(FootMove::up));
    let answer = answer.with("move_right", estimates(FootMove::right));
    let answer = answer.with("dial_on_top", reads(Watch::OnTop));
    let answer = answer.with("dial_from_right", reads(Watch::FromRight)).with("bound", bound);
    let workings = moves.iter().flat_map(|foot| Plane::BOTH.map(|plane| foot.working(plane)));
    Ok(answer.shown_by(workings))
}

fn best_move(given: &Given) -> Result<Answer, ReckonError> {
    let (moving, reference) = (given.pick("moving", &MACHINES)?, given.quantity("reference")?);
    let layout = Layout { moving, reference, spool: None };
    let as_given = Source::new("as given", "", Basis::Entered);
    let levels = [
        Level::offset("offset", None, Some(given.quantity("offset_limit")?), as_given)?,
        Level::slope("slope", None, Some(given.quantity("slope_limit")?), as_given)?,
    ];
    let position = position(given)?;
    let target = target(given, position.reference())?;
    let best = within_room(&layout, &position, &target, &feet(given)?, &levels)?;
    let ways = |way: usize| -> Vec<Length> { best.feet.iter().map(|foot| foot[way]).collect() };
    let obstacles: Vec<String> = best
        .obstacles
        .iter()
        .map(|it| {
            let way = match (it.plane, it.beyond.si() < 0.0) {
                (Plane::Vertical, true) => "down",
                (Plane::Vertical, false) => "up",
                (Plane::Sideways, true) => "to the left",
                (Plane::Sideways, false) => "to the right",
            };
            format!("{}: {} more room {way} is wanted", it.foot, shown(it.beyond.abs()))
        })
        .collect();
    let [up, right] = Plane::BOTH.map(|plane| best.left.offset(plane, reference));
    let [climb, bear] = Plane::BOTH.map(|plane| best.left.slope(plane));
    let answer = given.answer().with("move_up", ways(0)).with("move_right", ways(1));
    let answer = answer.with("left_offset_up", up).with("left_offset_right", right);
    let answer = answer.with("left_slope_up", climb).with("left_slope_right", bear);
    Ok(answer.with("worst_ratio", best.worst_ratio).with("obstacles", obstacles))
}

fn raise(given: &Given) -> Result<Answer, ReckonError> {
    let (up, shims) = (given.quantity::<Length>("move_up")?, given.quantity::<Length>("shims")?);
    let least = given.quantity::<Length>("least_pack")?;
    if shims.si() < 0.0 || least.si() < 0.0 {
        return Err(ReckonError::not_valid("shims below zero"));
    }
    let raise = raise_of_target(up, shims, least);
    Ok(given.answer().with("raise", raise.raise).shown_by([raise.working()]))
}

fn tilted(given: &Given) -> Result<Answer, ReckonError> {
    let (height, width) = (given.quantity("shaft_height")?, given.quantity("foot_width")?);
    let tilt = tilt(given.quantity("shift")?, height, width);
    let tilt =
        tilt.ok_or_else(|| ReckonError::not_valid("height and width above zero are wanted"))?;
    Ok(given.answer().with("shims", tilt.shims).shown_by([tilt.working()]))
}

fn flange_shims(given: &Given) -> Result<Answer, ReckonError> {
    let flange = Flange {
        at: given.quantity("seat")?,
        circle: given.quantity("bolt_circle")?,
        bolts: given.count("bolts").and_then(few)?,
        first: Clock::read(given.word("first"), View::FromDriver)?,
    };
    let position = position(given)?;
    let target = target(given, position.reference())?;
    let found = flange_move(given.pick("moving", &MACHINES)?, flange, &position, &target)?;
    let shims: Vec<Length> = found.shims.iter().map(|(_, shim)| *shim).collect();
    let clocks: Vec<String> = found.shims.iter().map(|(clock, _)| clock.to_string()).collect();
    let [up, right] = found.shift;
    let answer = given.answer().with("shims", shims).with("bolts_at", clocks);
    let answer = answer.with("shift_up", up).with("shift_right", right);
    Ok(answer.shown_by(Plane::BOTH.map(|plane| found.shift_working(plane))))
}

/// As many bolts as a flange may have.
fn few(bolts: u32) -> Result<u32, ReckonError> {
    if bolts <= 400 { Ok(bolts) } else { Err(ReckonError::not_valid(format!("{bolts} bolts"))) }
}

fn gaps(given: &Given) -> Result<Answer, ReckonError> {
    let diameter = given.quantity::<Length>("diameter")?;
    if diameter.si() <= 0.0 {
        return Err(ReckonError::not_valid("the diameter is not above zero"));
    }
    let reference = Length::default();
    let layout = Layout { moving: given.pick("moving", &MACHINES)?, reference, spool: None };
    let line = inclined(reference, Estimate::exact(reference), given.estimate("slope")?)?;
    let difference = gap_difference(&layout, &line, Plane::Vertical, diameter);
    Ok(given.answer().with("difference", difference))
}

fn flexed(given: &Given) -> Result<Answer, ReckonError> {
    let spool = Spool {
        driver_end: given.quantity("driver_plane")?,
        driven_end: given.quantity("driven_plane")?,
    };
    if spool.driven_end <= spool.driver_end {
        return Err(ReckonError::not_valid("driven_plane lies beyond driver_plane, at larger x"));
    }
    let line = position(given)?;
    let moving = given.pick("moving", &MACHINES)?;
    let layout = Layout { moving, reference: line.reference(), spool: Some(spool) };
    let [up, right] = Plane::BOTH.map(|plane| flex_angles(&layout, &line, plane));
    let answer = given.answer().with("driver_up", up.map(|angles| angles.driver_end));
    let answer = answer.with("driver_right", right.map(|angles| angles.driver_end));
    let answer = answer.with("driven_up", up.map(|angles| angles.driven_end));
    Ok(answer.with("driven_right", right.map(|angles| angles.driven_end)))
}
