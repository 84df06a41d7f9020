//! Getting a hub off.

use mechanics::Range;
use mechanics::pull::hold::{Jaws, thread_shear};
use mechanics::pull::{
    pull_force, puller, puller_bolt_stress, ram_force, ram_force_working, ram_pressure,
    ram_working, screw_torque,
};
use quantities::{Area, Basis, Force, Kind, Length, Pressure, Source};
use tables::pullers::{self, Drive};
use tables::{bolts, friction};

use super::press::{
    BEARS, FLANGE_LENGTH, FLANGE_OUTSIDE, HUB, HUB_RISE, JOINT, LENGTH, OUTSIDE, SHAFT, SHAFT_BORE,
    SHAFT_RISE, SLICE_LENGTHS, SLICE_OUTSIDES, SPEED, fit, running,
};
use super::shown;
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
    Calculation {
        name: "puller-threads",
        does: "Shear stress in the threads of a hub’s puller holes.",
        inputs: &[
            PULL,
            Input::quantity("holes", Kind::Count, "how many are used"),
            Input::word("thread", "their thread, such as M16").optional(),
            Input::quantity("diameter", Kind::Length, "or the diameter of the thread").optional(),
            Input::quantity("engaged", Kind::Length, "length of thread that is engaged"),
        ],
        outputs: &[Output::value("stress", Kind::Stress, "shear stress in the hub")],
        valid: "60° threads, coarse; all holes pull alike, which asks for a stiff bar set square",
        source: Source::new("Norton, Machine Design", "thread stripping", Basis::Memory),
        answer: puller_threads,
    },
    Calculation {
        name: "puller-jaws",
        does: "Pressure under a puller’s jaws, and bending of the flange that they hold by.",
        inputs: &[
            PULL,
            Input::quantity("jaws", Kind::Count, "how many"),
            Input::quantity("width", Kind::Length, "width of each, along the rim"),
            Input::quantity("grip", Kind::Length, "how far each reaches over what it holds by"),
            Input::quantity("thickness", Kind::Length, "thickness of that flange").optional(),
        ],
        outputs: &[
            Output::value("pressure", Kind::Stress, "under the jaws"),
            Output::value("bending", Kind::Stress, "at the root of the flange"),
        ],
        valid: "jaws square, all alike; a beam as wide as the jaw, which a whole ring outdoes",
        source: Source::new("force over area; statics of a short beam", "", Basis::Computed),
        answer: puller_jaws,
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
        (Some(pressure), None) => {
            let answer = given.answer().with("force", ram_force(pressure, area)?);
            Ok(answer.shown_by([ram_force_working(pressure, area)?]))
        }
        (None, Some(pull)) => {
            let answer = given.answer().with("pressure", ram_pressure(pull, area)?);
            Ok(answer.shown_by([ram_working(pull, area)?]))
        }
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
    let (pull, bolts) = (given.quantity("pull")?, given.count("bolts")?);
    let stress = puller_bolt_stress(pull, bolts, area)?;
    let working = shown::bolt_stress(stress, pull, bolts, area);
    Ok(given.answer().with("stress", stress).shown_by([working]))
}

fn puller_threads(given: &Given) -> Result<Answer, ReckonError> {
    let named = Some(given.word("thread")).filter(|name| !name.is_empty());
    let diameter = match (named, given.optional::<Length>("diameter")) {
        (Some(name), None) => bolts::thread(name)
            .map(|thread| thread.diameter)
            .ok_or_else(|| Given::unreadable("thread", format!("“{name}” is not held")))?,
        (None, Some(diameter)) => diameter,
        _ => return Err(ReckonError::not_valid("give either thread or diameter")),
    };
    let (pull, holes) = (given.quantity("pull")?, given.count("holes")?);
    let shear = thread_shear(pull, holes, diameter, given.quantity("engaged")?)?;
    Ok(given.answer().with("stress", shear.stress).shown_by([shear.working()]))
}

fn puller_jaws(given: &Given) -> Result<Answer, ReckonError> {
    let pull = given.quantity("pull")?;
    let jaws = Jaws {
        count: given.count("jaws")?,
        width: given.quantity("width")?,
        grip: given.quantity("grip")?,
    };
    let answer = given.answer().with("pressure", jaws.bearing(pull)?);
    let answer = answer.shown_by([jaws.bearing_working(pull)?]);
    let Some(thickness) = given.optional("thickness") else { return Ok(answer) };
    let answer = answer.with("bending", jaws.bending(pull, thickness)?);
    Ok(answer.shown_by([jaws.bending_working(pull, thickness)?]))
}
