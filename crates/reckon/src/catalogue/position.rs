//! Where the moving machine's shaft lies against the fixed one's.

use lineup::clock::Clock;
use lineup::dial::{Dial, Surface};
use lineup::line::Line;
use lineup::moves::{FootPlane, moves};
use lineup::position::{Gap, Observation, Offset, Position, Slope, position};
use lineup::sag::Sag;
use lineup::suspects::{Mistake, suspects};
use lineup::{Body, Estimate, Layout, Machine, Plane, Spool};
use quantities::{Angle, Basis, Kind, Length, Source};

use super::choices::{MACHINE_NAMES, MACHINES, POSITIONS, VIEW_NAMES, VIEWS, clocks};
use super::dials::paired;
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

#[derive(Clone, Copy)]
enum Looks {
    Back,
    Away,
}
const FACES: [(&str, Looks); 2] = [("back", Looks::Back), ("away", Looks::Away)];
const FACE_NAMES: &[&str] = &names(&FACES);

const MOVING: Input = Input::choice("moving", MACHINE_NAMES, "the machine that moves");
const POSITION: Input =
    Input::words("positions", "where each reading was taken: 12, 1:30, 45°").or(POSITIONS);
const VIEW: Input = Input::choice("view", VIEW_NAMES, "how the reader stood").or("from driver");
const DIVISION: Input =
    Input::quantity("division", Kind::Allowance, "smallest step that the dials read to")
        .or("0.01 mm");
const SPREAD: Input =
    Input::quantity("spread", Kind::Allowance, "± of one reading beyond the division").optional();
const REFERENCE: Input = Input::quantity(
    "reference",
    Kind::Length,
    "plane that the offset is stated at; x runs from driver to driven",
)
.or("0 mm");
const STRAIGHTEDGE_AT: Input =
    Input::quantity("straightedge_at", Kind::Length, "x where a straightedge was laid, as a check")
        .optional();
const STRAIGHTEDGE_UP: Input =
    Input::quantity("straightedge_up", Kind::Offset, "moving above fixed there, by feelers")
        .optional();
const STRAIGHTEDGE_RIGHT: Input =
    Input::quantity("straightedge_right", Kind::Offset, "moving to the right of fixed there")
        .optional();
const FEET: Input =
    Input::quantities("feet", Kind::Length, "x of the moving machine’s foot planes").optional();

const OFFSET_UP: Output =
    Output::value("offset_up", Kind::Offset, "moving shaft above the fixed one at the reference");
const OFFSET_RIGHT: Output =
    Output::value("offset_right", Kind::Offset, "the same to the right, looking along +x");
const SLOPE_UP: Output =
    Output::value("slope_up", Kind::Slope, "how it climbs against the fixed one, along +x");
const SLOPE_RIGHT: Output = Output::value("slope_right", Kind::Slope, "how it bears right");
const MOVE_UP: Output =
    Output::value("move_up", Kind::Offset, "shims to add at each foot plane; − to take out");
const MOVE_RIGHT: Output = Output::value("move_right", Kind::Offset, "push to the right there");
const SCATTER: Output = Output::value(
    "scatter",
    Kind::Number,
    "scatter of the sweeps over what was stated; 1 at least",
);
const DISAGREEMENT: Output =
    Output::value("disagreement", Kind::Number, "observations against each other; 1 at least");
const CHI_SQUARED: Output =
    Output::value("chi_squared", Kind::Number, "of the observations against each other");
const SUSPECTS: Output =
    Output::word("suspects", "dials that would agree with all the rest if they were turned round");
const FACTOR: Output =
    Output::value("factor", Kind::Number, "from standard uncertainty to ±; 2 at least");
const SPARE: Output = Output::value("spare", Kind::Count, "observations beyond the four needed");

const SOURCE: Source =
    Source::new("generalised least squares", "JCGM 100:2008, H.3", Basis::Computed);
const VALID: &str = "shafts straight, slopes small; both shafts turned together";

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "reverse-rim",
        does: "Position of a machine from two rim dials, each carried by the other shaft.",
        inputs: &[
            MOVING,
            Input::quantities(
                "on_driven",
                Kind::Offset,
                "dial carried by the driver, on the driven rim",
            ),
            Input::quantity("at_driven", Kind::Length, "x of the plane that it touches"),
            Input::quantities(
                "on_driver",
                Kind::Offset,
                "dial carried by the driven shaft, on the driver’s rim",
            ),
            Input::quantity("at_driver", Kind::Length, "x of the plane that it touches"),
            POSITION,
            VIEW,
            Input::quantity(
                "sag_on_driven",
                Kind::Allowance,
                "sag of the bracket on the driver, with its ±",
            )
            .or("0 mm"),
            Input::quantity(
                "sag_on_driver",
                Kind::Allowance,
                "sag of the bracket on the driven shaft",
            )
            .or("0 mm"),
            DIVISION,
            SPREAD,
            STRAIGHTEDGE_AT,
            STRAIGHTEDGE_UP,
            STRAIGHTEDGE_RIGHT,
            REFERENCE,
            FEET,
        ],
        outputs: POSITIONED,
        valid: VALID,
        source: SOURCE,
        answer: reverse_rim,
    },
    Calculation {
        name: "rim-and-face",
        does: "Position of a machine from a rim dial and a face dial on one bracket.",
        inputs: &[
            MOVING,
            Input::choice("carried_by", MACHINE_NAMES, "the shaft that carries both dials"),
            Input::quantities("rim", Kind::Offset, "readings of the rim dial"),
            Input::quantity("at", Kind::Length, "x of the plane that the rim dial touches"),
            Input::quantities("face", Kind::Offset, "readings of the face dial"),
            Input::quantity("swing", Kind::Length, "swing diameter of the face dial"),
            Input::choice("looks", FACE_NAMES, "the face looks back at the bracket, or away")
                .or("back"),
            POSITION,
            VIEW,
            Input::quantity(
                "sag_rim",
                Kind::Allowance,
                "sag of the bracket at the rim, +, with its ±",
            )
            .or("0 mm"),
            Input::quantity("sag_face", Kind::Allowance, "sag of the bracket at the face, signed")
                .or("0 mm"),
            DIVISION,
            SPREAD,
            STRAIGHTEDGE_AT,
            STRAIGHTEDGE_UP,
            STRAIGHTEDGE_RIGHT,
            REFERENCE,
            FEET,
        ],
        outputs: POSITIONED,
        valid: VALID,
        source: SOURCE,
        answer: rim_and_face,
    },
    Calculation {
        name: "faces-across-spacer",
        does: "Position of a machine from a face dial on each hub, reading the spool end that it faces.",
        inputs: &[
            MOVING,
            Input::quantities("on_driver_end", Kind::Offset, "dial on the driver’s hub"),
            Input::quantity(
                "driver_plane",
                Kind::Length,
                "x of the flex plane at the driver’s end",
            ),
            Input::quantity("driver_swing", Kind::Length, "its swing diameter"),
            Input::quantities("on_driven_end", Kind::Offset, "dial on the driven hub"),
            Input::quantity("driven_plane", Kind::Length, "x of the flex plane at the driven end"),
            Input::quantity("driven_swing", Kind::Length, "its swing diameter"),
            POSITION,
            VIEW,
            Input::quantity(
                "sag_driver_end",
                Kind::Allowance,
                "face sag of the bracket there, signed",
            )
            .or("0 mm"),
            Input::quantity(
                "sag_driven_end",
                Kind::Allowance,
                "face sag of the bracket there, signed",
            )
            .or("0 mm"),
            DIVISION,
            SPREAD,
            STRAIGHTEDGE_AT,
            STRAIGHTEDGE_UP,
            STRAIGHTEDGE_RIGHT,
            REFERENCE,
            FEET,
        ],
        outputs: &[
            OFFSET_UP,
            OFFSET_RIGHT,
            SLOPE_UP,
            SLOPE_RIGHT,
            Output::value("driver_angle_up", Kind::Slope, "spool against driver, upwards"),
            Output::value("driver_angle_right", Kind::Slope, "spool against driver, to the right"),
            Output::value("driven_angle_up", Kind::Slope, "driven against spool, upwards"),
            Output::value("driven_angle_right", Kind::Slope, "driven against spool, to the right"),
            MOVE_UP,
            MOVE_RIGHT,
            SCATTER,
            DISAGREEMENT,
            CHI_SQUARED,
            FACTOR,
            SPARE,
            SUSPECTS,
        ],
        valid: VALID,
        source: SOURCE,
        answer: across_spacer,
    },
    Calculation {
        name: "position",
        does: "Position of a machine from any offsets, slopes and gap differences, however measured.",
        inputs: &[
            MOVING,
            Input::quantities("offsets_up", Kind::Offset, "moving above fixed, each with its ±")
                .optional(),
            Input::quantities(
                "offsets_right",
                Kind::Offset,
                "moving to the right of fixed, at the same places",
            )
            .optional(),
            Input::quantities("at", Kind::Length, "x of the place of each offset").optional(),
            Input::quantities("slopes_up", Kind::Slope, "moving against fixed, each with its ±")
                .optional(),
            Input::quantities("slopes_right", Kind::Slope, "the same to the right").optional(),
            Input::quantities("gaps_up", Kind::Gap, "top gap less bottom gap, each with its ±")
                .optional(),
            Input::quantities("gaps_right", Kind::Gap, "right gap less left gap").optional(),
            Input::quantity("gap_diameter", Kind::Length, "diameter at which the gaps were taken")
                .optional(),
            REFERENCE,
            FEET,
        ],
        outputs: MIXED,
        valid: "every observation with a ± above zero; together they fix offset and slope both ways",
        source: SOURCE,
        answer: mixed,
    },
];

const POSITIONED: &[Output] = &[
    OFFSET_UP,
    OFFSET_RIGHT,
    SLOPE_UP,
    SLOPE_RIGHT,
    MOVE_UP,
    MOVE_RIGHT,
    SCATTER,
    DISAGREEMENT,
    CHI_SQUARED,
    FACTOR,
    SPARE,
    SUSPECTS,
];

const MIXED: &[Output] = &[
    OFFSET_UP,
    OFFSET_RIGHT,
    SLOPE_UP,
    SLOPE_RIGHT,
    MOVE_UP,
    MOVE_RIGHT,
    DISAGREEMENT,
    CHI_SQUARED,
    FACTOR,
    SPARE,
];

fn layout(given: &Given, spool: Option<Spool>) -> Result<Layout, ReckonError> {
    let moving = given.pick("moving", &MACHINES)?;
    Ok(Layout { moving, reference: given.quantity("reference")?, spool })
}

fn sag(given: &Given, name: &'static str) -> Result<Sag, ReckonError> {
    Ok(Sag { amplitude: given.estimate(name)?, bracket: name.to_owned() })
}

/// One dial as an observation.
struct Swept {
    by: Body,
    on: Body,
    surface: Surface,
    at: Length,
    readings: &'static str,
    sag: &'static str,
}

impl Swept {
    fn seen(&self, given: &Given, clocks: &[Clock]) -> Result<Observation, ReckonError> {
        let readings = paired(given, self.readings, clocks.to_vec())?;
        let division = given.quantity("division")?;
        let mut dial = Dial::new(self.by, self.on, self.surface, self.at, division);
        dial.plus_minus = given.optional("spread");
        Ok(Observation::Sweep(dial.with(readings).with_sag(sag(given, self.sag)?)))
    }
}

/// What a straightedge and feelers say, when they were used.
fn straightedge(given: &Given, moving: Machine) -> Result<Vec<Observation>, ReckonError> {
    let Some(at) = given.optional("straightedge_at") else { return Ok(Vec::new()) };
    let (of, from) = (Body::from(moving), Body::from(moving.other()));
    let ways = Plane::BOTH.into_iter().zip(["straightedge_up", "straightedge_right"]);
    let seen = ways.filter_map(|(plane, name)| {
        let amount = given.optional::<Length>(name)?;
        Some(Observation::Offset(Offset::by_straightedge(plane, of, from, at, amount)))
    });
    let seen: Vec<Observation> = seen.collect();
    if seen.is_empty() {
        return Err(ReckonError::not_valid("straightedge_at without straightedge_up or _right"));
    }
    Ok(seen)
}

/// The position of the dials, with a straightedge beside them perhaps.
fn of_dials(
    given: &Given,
    layout: &Layout,
    dials: [Observation; 2],
) -> Result<(Position, Vec<String>), ReckonError> {
    let mut seen = Vec::from(dials);
    seen.extend(straightedge(given, layout.moving)?);
    let suspect = |suspect: lineup::suspects::Suspect| {
        let how = match suspect.mistake {
            Mistake::View => "3 and 9 for each other",
            Mistake::Sign => "every sign turned",
        };
        format!("dial {}: {how}", suspect.observation + 1)
    };
    let suspects = suspects(layout, &seen)?.into_iter().map(suspect).collect();
    Ok((position(layout, &seen)?, suspects))
}

fn answered(given: &Given, found: &Position) -> Result<Answer, ReckonError> {
    let Layout { reference, .. } = found.layout;
    let [up, right] = Plane::BOTH.map(|plane| found.offset_at(plane, reference));
    let [climb, bear] = Plane::BOTH.map(|plane| found.slope(plane));
    let answer = given.answer().with("offset_up", up).with("offset_right", right);
    let answer = answer.with("slope_up", climb).with("slope_right", bear);
    let answer = answer.with("disagreement", found.disagreement);
    let answer = answer.with("chi_squared", found.chi_squared);
    let answer = answer.with("factor", found.factor).with("spare", found.degrees_of_freedom);
    let answer = answer.shown_by(Plane::BOTH.map(|plane| found.working(plane, reference)));
    let feet: Vec<FootPlane> = given
        .quantities("feet")
        .into_iter()
        .enumerate()
        .map(|(place, at)| FootPlane::new(format!("plane {}", place + 1), at))
        .collect();
    if feet.is_empty() {
        return Ok(answer);
    }
    let moves = moves(&found.line, &Line::zero(reference), &feet)?;
    let ways = |way: fn(&lineup::moves::FootMove) -> Estimate<Length>| -> Vec<Estimate<Length>> {
        moves.iter().map(way).collect()
    };
    let answer = answer.with("move_up", ways(lineup::moves::FootMove::up));
    let answer = answer.with("move_right", ways(lineup::moves::FootMove::right));
    let workings = moves.iter().flat_map(|foot| Plane::BOTH.map(|plane| foot.working(plane)));
    Ok(answer.shown_by(workings))
}

fn reverse_rim(given: &Given) -> Result<Answer, ReckonError> {
    let clocks = clocks(given, "positions", given.pick("view", &VIEWS)?)?;
    let dials = [
        Swept {
            by: Body::Driver,
            on: Body::Driven,
            surface: Surface::Rim,
            at: given.quantity("at_driven")?,
            readings: "on_driven",
            sag: "sag_on_driven",
        },
        Swept {
            by: Body::Driven,
            on: Body::Driver,
            surface: Surface::Rim,
            at: given.quantity("at_driver")?,
            readings: "on_driver",
            sag: "sag_on_driver",
        },
    ];
    let [first, second] = dials.map(|dial| dial.seen(given, &clocks));
    let (found, suspects) = of_dials(given, &layout(given, None)?, [first?, second?])?;
    Ok(answered(given, &found)?.with("scatter", found.scatter).with("suspects", suspects))
}

fn rim_and_face(given: &Given) -> Result<Answer, ReckonError> {
    let clocks = clocks(given, "positions", given.pick("view", &VIEWS)?)?;
    let carrier: Machine = given.pick("carried_by", &MACHINES)?;
    let at = given.quantity("at")?;
    let swing = given.quantity("swing")?;
    let face = match given.pick("looks", &FACES)? {
        Looks::Back => Surface::Face(swing),
        Looks::Away => Surface::FarFace(swing),
    };
    let dial = |surface, readings, sag| {
        let (by, on) = (Body::from(carrier), Body::from(carrier.other()));
        Swept { by, on, surface, at, readings, sag }.seen(given, &clocks)
    };
    let dials = [dial(Surface::Rim, "rim", "sag_rim")?, dial(face, "face", "sag_face")?];
    let (found, suspects) = of_dials(given, &layout(given, None)?, dials)?;
    Ok(answered(given, &found)?.with("scatter", found.scatter).with("suspects", suspects))
}

fn across_spacer(given: &Given) -> Result<Answer, ReckonError> {
    let clocks = clocks(given, "positions", given.pick("view", &VIEWS)?)?;
    let spool = Spool {
        driver_end: given.quantity("driver_plane")?,
        driven_end: given.quantity("driven_plane")?,
    };
    if spool.driven_end <= spool.driver_end {
        return Err(ReckonError::not_valid("driven_plane lies beyond driver_plane, at larger x"));
    }
    let dial = |by, at, swing: &'static str, readings, sag| -> Result<Observation, ReckonError> {
        let surface = Surface::Face(given.quantity(swing)?);
        Swept { by, on: Body::Spool, surface, at, readings, sag }.seen(given, &clocks)
    };
    let dials = [
        dial(Body::Driver, spool.driver_end, "driver_swing", "on_driver_end", "sag_driver_end")?,
        dial(Body::Driven, spool.driven_end, "driven_swing", "on_driven_end", "sag_driven_end")?,
    ];
    let (found, suspects) = of_dials(given, &layout(given, Some(spool))?, dials)?;
    let [up, right] = Plane::BOTH.map(|plane| found.flex_angles(plane));
    let answer = answered(given, &found)?.with("scatter", found.scatter);
    let answer = answer.with("suspects", suspects);
    let answer = answer.with("driver_angle_up", up.map(|angles| angles.driver_end));
    let answer = answer.with("driver_angle_right", right.map(|angles| angles.driver_end));
    let answer = answer.with("driven_angle_up", up.map(|angles| angles.driven_end));
    let answer = answer.with("driven_angle_right", right.map(|angles| angles.driven_end));
    let ends = [Machine::Driver, Machine::Driven];
    let working = |plane| ends.map(|end| found.flex_working(plane, end));
    Ok(answer.shown_by(Plane::BOTH.into_iter().flat_map(working).flatten()))
}

fn mixed(given: &Given) -> Result<Answer, ReckonError> {
    let layout = layout(given, None)?;
    let (of, from) = (Body::from(layout.moving), Body::from(layout.moving.other()));
    let mut seen = Vec::new();
    let places: Vec<Length> = given.quantities("at");
    for (plane, offsets) in Plane::BOTH.into_iter().zip(["offsets_up", "offsets_right"]) {
        let offsets = given.estimates::<Length>(offsets);
        if !offsets.is_empty() && offsets.len() != places.len() {
            return Err(ReckonError::not_valid("offsets and places differ in number"));
        }
        let offset = |(amount, &at)| Observation::Offset(Offset { plane, of, from, at, amount });
        seen.extend(offsets.into_iter().zip(&places).map(offset));
    }
    for (plane, slopes) in Plane::BOTH.into_iter().zip(["slopes_up", "slopes_right"]) {
        let slope = |amount| Observation::Slope(Slope { plane, of, from, amount });
        seen.extend(given.estimates::<Angle>(slopes).into_iter().map(slope));
    }
    for (plane, gaps) in Plane::BOTH.into_iter().zip(["gaps_up", "gaps_right"]) {
        for difference in given.estimates::<Length>(gaps) {
            let diameter = given.quantity("gap_diameter")?;
            seen.push(Observation::Gap(Gap { plane, between: (of, from), diameter, difference }));
        }
    }
    answered(given, &position(&layout, &seen)?)
}
