//! Getting a hub off.

use mechanics::Range;
use mechanics::pull::{
    pull_force, puller, puller_bolt_stress, ram_force, ram_pressure, screw_torque,
};
use quantities::{Area, Basis, Force, Kind, Pressure, Source};
use tables::pullers::{self, Drive};
use tables::{bolts, friction};

use super::press::{
    BEARS, FLANGE_LENGTH, FLANGE_OUTSIDE, HUB, HUB_RISE, JOINT, LENGTH, OUTSIDE, SHAFT, SHAFT_BORE,
    SHAFT_RISE, SLICE_LENGTHS, SLICE_OUTSIDES, SPEED, fit, running,
};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const DRIVES: [(&str, Drive); 2] = [("hydraulic", Drive::Hydraulic), ("screw", Drive::Screw)];
const DRIVE_NAMES: &[&str] = &names(&DRIVES);
const JOINTS: [(&str, friction::Joint); 6] = [
    ("shrunk", friction::Joint::Shrunk),
    ("shrunk degreased", friction::Joint::ShrunkDegreased),
    ("oil", friction::Joint::Oil),
    ("oil degreased", friction::Joint::OilDegreased),
    ("iron oil", friction::Joint::IronOil),
    ("iron oil degreased", friction::Joint::IronOilDegreased),
];
const JOINT_NAMES: &[&str] = &names(&JOINTS);

const PULL: Input = Input::quantity("pull", Kind::Force, "pull that strips the hub");
const BLOCH: Source =
    Source::new("Bloch, Improving Machinery Reliability", "Eq. 3-13, p. 218", Basis::Read);
const VALID: &str =
    "never react the pull through bearings; nobody stands in line with a loaded puller";

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "fit-friction",
        does: "Friction to count on for grip, by how hub and shaft were put together.",
        inputs: &[Input::choice(
            "joint",
            JOINT_NAMES,
            "steel on steel, heated or by oil; iron on steel by oil",
        )],
        outputs: &[
            Output::value("friction", Kind::Number, "to count on for grip"),
            Output::value("for_pulling", Kind::Number, "to choose a puller by: high on purpose"),
        ],
        valid: "0.03 to 0.3 is met in the field",
        source: friction::SOURCE,
        answer: grip,
    },
    Calculation {
        name: "pull-off",
        does: "The pull that strips a hub, cold or warmed.",
        inputs: &[
            Input::quantity(
                "interference",
                Kind::Allowance,
                "interference that presses: the upper end",
            ),
            JOINT,
            OUTSIDE,
            LENGTH,
            FLANGE_OUTSIDE,
            FLANGE_LENGTH,
            SLICE_LENGTHS,
            SLICE_OUTSIDES,
            BEARS,
            SHAFT_BORE,
            HUB,
            SHAFT,
            Input::quantity("friction_least", Kind::Number, "friction at least").or("0.14"),
            Input::quantity("friction_greatest", Kind::Number, "friction at most, for the puller")
                .or("0.24"),
            HUB_RISE,
            SHAFT_RISE,
            SPEED,
        ],
        outputs: &[
            Output::value("least", Kind::Force, "pull at least"),
            Output::value("greatest", Kind::Force, "pull at most: choose the puller by this"),
            Output::value("normal_force", Kind::Force, "all that presses on the joint"),
        ],
        valid: VALID,
        source: BLOCH,
        answer: pull_off,
    },
    Calculation {
        name: "puller",
        does: "The smallest puller that has a margin over a pull.",
        inputs: &[
            PULL,
            Input::choice("drive", DRIVE_NAMES, "how it is driven").or("hydraulic"),
            Input::quantity("margin", Kind::Number, "capacity over pull").or("1.5"),
        ],
        outputs: &[
            Output::value("needed", Kind::Force, "capacity that it takes"),
            Output::value("class", Kind::Force, "capacity of the smallest class that has it"),
            Output::value("tons", Kind::Count, "the same in tons of 2000 lbf"),
        ],
        valid: "when no class has it add heat or oil, do not pull harder; never react the pull through bearings",
        source: pullers::SOURCE,
        answer: which_puller,
    },
    Calculation {
        name: "puller-screw",
        does: "Torque on a puller’s screw for a pull.",
        inputs: &[
            Input::quantity("nut_factor", Kind::Number, "nut factor of the greased screw")
                .or("0.15"),
            PULL,
            Input::quantity("screw", Kind::Length, "diameter of the screw"),
        ],
        outputs: &[Output::value("torque", Kind::Torque, "torque")],
        valid: VALID,
        source: Source::common_practice("nut factor"),
        answer: screw,
    },
    Calculation {
        name: "ram",
        does: "Force of a ram from its pressure, or the pressure that it needs for a pull.",
        inputs: &[
            Input::quantity("area", Kind::Area, "effective area of the ram"),
            Input::quantity("pressure", Kind::Pressure, "pressure").optional(),
            Input::quantity("pull", Kind::Force, "or the pull").optional(),
        ],
        outputs: &[
            Output::value("force", Kind::Force, "force"),
            Output::value("pressure", Kind::Pressure, "pressure"),
        ],
        valid: VALID,
        source: Source::new("force is pressure times area", "", Basis::Computed),
        answer: ram,
    },
    Calculation {
        name: "puller-bolts",
        does: "Tensile stress in bolts screwed into a hub’s puller holes.",
        inputs: &[
            PULL,
            Input::quantity("bolts", Kind::Count, "how many"),
            Input::word("thread", "their thread, such as M16").optional(),
            Input::quantity("stress_area", Kind::Area, "or the stress area of one").optional(),
        ],
        outputs: &[Output::value("stress", Kind::Stress, "tensile stress")],
        valid: "all pull alike, which asks for a stiff bar set square",
        source: Source::new("force over area", "", Basis::Computed),
        answer: puller_bolts,
    },
];

fn grip(given: &Given) -> Result<Answer, ReckonError> {
    let answer = given.answer().with("friction", friction::grip(given.pick("joint", &JOINTS)?));
    Ok(answer.with("for_pulling", friction::PULL))
}

fn pull_off(given: &Given) -> Result<Answer, ReckonError> {
    let state = fit(given)?.state(given.quantity("interference")?, running(given)?)?;
    let friction = Range::new(given.number("friction_least")?, given.number("friction_greatest")?);
    let pull = pull_force(&state, friction)?;
    let answer = given.answer().with("least", pull.force.low).with("greatest", pull.force.high);
    Ok(answer.with("normal_force", pull.normal_force).shown_by([pull.working()]))
}

fn which_puller(given: &Given) -> Result<Answer, ReckonError> {
    let drive = given.pick("drive", &DRIVES)?;
    let choice = puller(given.quantity("pull")?, given.number("margin")?, drive)?;
    let answer = given.answer().with("needed", choice.needed);
    let answer = answer.with("class", choice.class.map(|puller| puller.capacity));
    let answer = answer.with("tons", choice.class.map(|puller| puller.tons));
    Ok(answer.shown_by([choice.working()]))
}

fn screw(given: &Given) -> Result<Answer, ReckonError> {
    let factor = given.number("nut_factor")?;
    let torque = screw_torque(factor, given.quantity("pull")?, given.quantity("screw")?)?;
    Ok(given.answer().with("torque", torque.torque).shown_by([torque.working()]))
}

fn ram(given: &Given) -> Result<Answer, ReckonError> {
    let area = given.quantity::<Area>("area")?;
    match (given.optional::<Pressure>("pressure"), given.optional::<Force>("pull")) {
        (Some(pressure), None) => Ok(given.answer().with("force", ram_force(pressure, area)?)),
        (None, Some(pull)) => Ok(given.answer().with("pressure", ram_pressure(pull, area)?)),
        _ => Err(ReckonError::not_valid("give either pressure or pull")),
    }
}

fn puller_bolts(given: &Given) -> Result<Answer, ReckonError> {
    let named = Some(given.word("thread")).filter(|name| !name.is_empty());
    let area = match (named, given.optional::<Area>("stress_area")) {
        (Some(name), None) => bolts::thread(name)
            .map(|thread| thread.stress_area)
            .ok_or_else(|| Given::unreadable("thread", format!("“{name}” is not held")))?,
        (None, Some(area)) => area,
        _ => return Err(ReckonError::not_valid("give either thread or stress_area")),
    };
    let stress = puller_bolt_stress(given.quantity("pull")?, given.count("bolts")?, area)?;
    Ok(given.answer().with("stress", stress))
}
