//! Closing up: how tight the bolts, in which order, what they then carry.

use couplings::closeup::{From as Known, OnThisJob, tightening};
use couplings::kind;
use couplings::sheet::Bolts;
use mechanics::Range;
use mechanics::bolts::{
    fitted_bolts, flange_friction, passes, preload_from_proof, preload_range, preload_working,
    prevailing_working, stress_area, tightening_torque, with_prevailing,
};
use mechanics::order::tightening_order;
use quantities::{Basis, Kind, Ratio, Source, Torque, Whole};
use tables::bolts::{bolt, thread, threads};
use tables::nut_factor::{self, Threads};
use tables::tools::{self, torque_wrench_for};

use super::choices::{SYSTEM_NAMES, SYSTEMS, not_held};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError, error};

const STATES: [(&str, Threads); 5] = [
    ("dry", Threads::Dry),
    ("zinc plated", Threads::ZincPlated),
    ("oiled", Threads::Oiled),
    ("lubricated", Threads::Lubricated),
    ("molybdenum", Threads::Molybdenum),
];
const STATE_NAMES: &[&str] = &names(&STATES);
const FAMILIES: [(&str, mechanics::bolts::Thread); 2] =
    [("metric", mechanics::bolts::Thread::Metric), ("unified", mechanics::bolts::Thread::Unified)];
const FAMILY_NAMES: &[&str] = &names(&FAMILIES);

const THREADS: Input = Input::choice("threads", STATE_NAMES, "state of threads and nut face");
const COUNT: Input = Input::quantity("bolts", Kind::Count, "bolts in the circle");
const CIRCLE: Input = Input::quantity("bolt_circle", Kind::Length, "diameter of the bolt circle");
const PRACTICE: Source =
    Source::common_practice("nut factor; the maker’s torque outranks the estimate");
const STATICS: Source = Source::new("statics of the bolt circle", "", Basis::Computed);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "bolt-torque",
        does: "Tightening torque of a bolt from its size, grade and threads.",
        inputs: &[
            Input::word("bolt", "size and grade: M16 8.8, 5/8-11 grade 5"),
            THREADS.or("dry"),
            Input::quantity("fraction", Kind::Percent, "preload, as a part of the proof load")
                .or("75 %"),
        ],
        outputs: &[
            Output::value("torque", Kind::Torque, "tightening torque"),
            Output::value("preload", Kind::Force, "preload that it gives"),
            Output::value("proof_load", Kind::Force, "load that it bears without lasting stretch"),
            Output::value("nut_factor", Kind::Number, "nut factor of those threads"),
        ],
        valid: "an estimate: preload scatters 25 to 35 % from torque alone; coarse threads; the maker’s torque comes first",
        source: PRACTICE,
        answer: bolt_torque,
    },
    Calculation {
        name: "torque-for-preload",
        does: "Torque for a preload, from nut factor and diameter.",
        inputs: &[
            Input::quantity("nut_factor", Kind::Number, "nut factor, 0.2 for dry threads"),
            Input::quantity("preload", Kind::Force, "preload wanted"),
            Input::quantity("diameter", Kind::Length, "diameter of the bolt"),
        ],
        outputs: &[Output::value("torque", Kind::Torque, "torque")],
        valid: "an estimate; the nut factor is known to a quarter or so",
        source: PRACTICE,
        answer: for_preload,
    },
    Calculation {
        name: "preload-range",
        does: "The preload that a torque may give while the nut factor lies in a range.",
        inputs: &[
            Input::quantity("torque", Kind::Torque, "torque that the wrench is set to"),
            Input::quantity("nut_factor_least", Kind::Number, "nut factor at least"),
            Input::quantity("nut_factor_greatest", Kind::Number, "nut factor at most"),
            Input::quantity("diameter", Kind::Length, "diameter of the bolt"),
        ],
        outputs: &[
            Output::value("least", Kind::Force, "preload at least"),
            Output::value("greatest", Kind::Force, "preload at most"),
        ],
        valid: "clean threads of one state",
        source: PRACTICE,
        answer: range,
    },
    Calculation {
        name: "tightening",
        does: "How the bolts of a coupling are tightened: wrench setting, passes, order.",
        inputs: &[
            Input::word("kind", "kind of coupling: gear, grid, disc, rigid, …"),
            Input::word("form", "how it is built; the usual form when left out").optional(),
            Input::quantity(
                "sheet_torque",
                Kind::Torque,
                "torque of the maker’s sheet, if it has one",
            )
            .optional(),
            Input::word("size", "size of the bolts, such as M16 or 5/8-11").optional(),
            Input::word("grade", "their grade, such as 8.8 or grade 5").optional(),
            Input::quantity("bolts", Kind::Count, "how many in the circle").optional(),
            Input::choice("sheet_threads", STATE_NAMES, "threads as the sheet’s torque takes them")
                .optional(),
            THREADS.optional(),
            Input::quantity("prevailing", Kind::Torque, "what a self-locking nut takes to turn")
                .optional(),
        ],
        outputs: &[
            Output::value("setting", Kind::Torque, "what the wrench is set to at the end"),
            Output::value("seating", Kind::Torque, "torque that seats the joint"),
            Output::value("passes", Kind::Torque, "wrench setting of each pass"),
            Output::word("order", "order of the bolts, numbered round the circle"),
            Output::word("from", "the maker’s sheet, or an estimate"),
            Output::value(
                "preload",
                Kind::Percent,
                "preload over what the sheet means, when the threads differ",
            ),
        ],
        valid: "the maker’s torque comes first; an estimate is three quarters of the proof load",
        source: PRACTICE,
        answer: tighten,
    },
    Calculation {
        name: "wrench-setting",
        does: "Wrench setting with a self-locking nut.",
        inputs: &[
            Input::quantity("seating", Kind::Torque, "torque that seats"),
            Input::quantity("prevailing", Kind::Torque, "what the nut takes to turn"),
        ],
        outputs: &[Output::value("setting", Kind::Torque, "what the wrench is set to")],
        valid: "the prevailing torque measured on the last turn before it seats",
        source: Source::common_practice("self-locking nuts"),
        answer: setting,
    },
    Calculation {
        name: "bolt-passes",
        does: "Torque of every pass on the way to the last.",
        inputs: &[
            Input::quantity("torque", Kind::Torque, "torque of the last pass"),
            Input::quantities("fractions", Kind::Percent, "part of it in each pass")
                .or("30 %; 70 %; 100 %"),
        ],
        outputs: &[Output::value("passes", Kind::Torque, "torque of each pass")],
        valid: "across the circle in each pass",
        source: nut_factor::PASSES_SOURCE,
        answer: bolt_passes,
    },
    Calculation {
        name: "tightening-order",
        does: "Order in which the bolts of a circle are tightened.",
        inputs: &[COUNT],
        outputs: &[Output::value("order", Kind::Count, "places counted round from the first")],
        valid: "two to 400 bolts, evenly spaced",
        source: Source::new(
            "common practice",
            "opposite, then the widest space left",
            Basis::Memory,
        ),
        answer: order,
    },
    Calculation {
        name: "thread",
        does: "Diameter, pitch and stress area of a coarse thread.",
        inputs: &[Input::word("thread", "M16, 5/8-11")],
        outputs: &[
            Output::value("diameter", Kind::Length, "nominal diameter"),
            Output::value("pitch", Kind::Size, "pitch"),
            Output::value(
                "stress_area",
                Kind::Area,
                "tensile stress area, as the standard prints it",
            ),
            Output::word("source", "where it comes from"),
        ],
        valid: "coarse threads M6 to M27, M30, M36 and 1/4-20 to 1 1/2-6",
        source: Source::new("ISO 898-1; SAE J429", "as reprinted", Basis::Read),
        answer: thread_of,
    },
    Calculation {
        name: "stress-area",
        does: "Tensile stress area of a thread from diameter and pitch.",
        inputs: &[
            Input::quantity("diameter", Kind::Length, "nominal diameter"),
            Input::quantity("pitch", Kind::Size, "pitch"),
            Input::choice("family", FAMILY_NAMES, "which profile").or("metric"),
        ],
        outputs: &[Output::value("stress_area", Kind::Area, "tensile stress area")],
        valid: "ISO metric and Unified threads",
        source: Source::new("ISO 898-1; ASME B1.1", "tensile stress area", Basis::Memory),
        answer: area,
    },
    Calculation {
        name: "flange-friction",
        does: "Torque that a bolted flange carries by friction between its faces.",
        inputs: &[
            Input::quantity("friction", Kind::Number, "friction between the faces"),
            COUNT,
            Input::quantity(
                "preload",
                Kind::Force,
                "preload of each bolt: the lower end of its scatter",
            ),
            CIRCLE,
        ],
        outputs: &[Output::value("torque", Kind::Torque, "torque")],
        valid: "faces that touch near the bolt circle",
        source: STATICS,
        answer: friction,
    },
    Calculation {
        name: "fitted-bolts",
        does: "Torque that bolts fitted in reamed holes carry by shear.",
        inputs: &[
            COUNT,
            Input::quantity("shank", Kind::Length, "diameter of the shank"),
            Input::quantity("shear", Kind::Stress, "shear stress allowed"),
            CIRCLE,
        ],
        outputs: &[Output::value("torque", Kind::Torque, "torque")],
        valid: "every shank fits its hole, no thread in the shear plane; friction comes on top",
        source: STATICS,
        answer: fitted,
    },
    Calculation {
        name: "wrench-for-torque",
        does: "The torque wrench for a torque.",
        inputs: &[
            Input::quantity("torque", Kind::Torque, "torque"),
            Input::choice("units", SYSTEM_NAMES, "how the wrench is marked").or("metric"),
        ],
        outputs: &[Output::word("wrench", "range of the wrench")],
        valid: "ranges as usually sold; a shop’s own may differ",
        source: tools::SOURCE,
        answer: wrench,
    },
];

fn bolt_torque(given: &Given) -> Result<Answer, ReckonError> {
    let bolt = bolt(given.word("bolt"))?;
    let fraction = given.number("fraction")?;
    let preload = preload_from_proof(bolt.proof_load(), fraction)?;
    let factor = nut_factor::nut_factor(given.pick("threads", &STATES)?);
    let tightening = tightening_torque(factor, preload, bolt.thread.diameter)?;
    let answer = given.answer().with("torque", tightening.torque);
    let answer = answer.with("preload", tightening.preload);
    let answer = answer.with("proof_load", bolt.proof_load()).with("nut_factor", factor);
    let preload = preload_working(bolt.proof_load(), fraction)?;
    Ok(answer.shown_by([preload, tightening.working()]))
}

fn for_preload(given: &Given) -> Result<Answer, ReckonError> {
    let (factor, preload) = (given.number("nut_factor")?, given.quantity("preload")?);
    let tightening = tightening_torque(factor, preload, given.quantity("diameter")?)?;
    Ok(given.answer().with("torque", tightening.torque).shown_by([tightening.working()]))
}

fn range(given: &Given) -> Result<Answer, ReckonError> {
    let factors =
        Range::new(given.number("nut_factor_least")?, given.number("nut_factor_greatest")?);
    let preload = preload_range(given.quantity("torque")?, factors, given.quantity("diameter")?)?;
    Ok(given.answer().with("least", preload.low).with("greatest", preload.high))
}

fn tighten(given: &Given) -> Result<Answer, ReckonError> {
    let coupling = kind(given.word("kind"))
        .ok_or_else(|| Given::unreadable("kind", "coupling-kind lists what is known"))?;
    let written = |name| Some(given.word(name).to_owned()).filter(|word| !word.is_empty());
    let form = coupling.form(written("form").as_deref());
    let form =
        form.ok_or_else(|| Given::unreadable("form", "coupling-kind lists what is known"))?;
    let state = |name| STATES.iter().find(|(word, _)| *word == given.word(name)).map(|(_, it)| *it);
    let bolts = given.optional::<Ratio>("bolts").map(|_| given.count("bolts")).transpose()?;
    let sheet = Bolts {
        count: bolts.map(Whole),
        size: written("size"),
        grade: written("grade"),
        torque: given.written_as("sheet_torque"),
        threads: state("sheet_threads"),
        ..Bolts::default()
    };
    let job = OnThisJob { threads: state("threads"), prevailing: given.optional("prevailing") };
    let found = tightening(&sheet, &coupling.close_up(form), job)?;
    let order: Vec<String> = found.order.iter().map(ToString::to_string).collect();
    let from = match found.from {
        Known::MakersSheet => "the maker’s sheet",
        Known::Estimate { .. } => "an estimate from size, grade and threads",
    };
    let answer = given.answer().with("setting", found.setting()).with("seating", found.seating);
    let answer = answer.with("passes", found.passes.clone()).with("order", order);
    let answer = answer.with("from", from);
    let answer = answer.with("preload", found.threads_differ.map(|differ| differ.preload));
    Ok(answer.shown_by(found.workings()))
}

fn setting(given: &Given) -> Result<Answer, ReckonError> {
    let (seating, prevailing) = (given.quantity("seating")?, given.quantity("prevailing")?);
    let answer = given.answer().with("setting", with_prevailing(seating, prevailing)?);
    Ok(answer.shown_by([prevailing_working(seating, prevailing)?]))
}

fn bolt_passes(given: &Given) -> Result<Answer, ReckonError> {
    let fractions: Vec<f64> =
        given.quantities::<Ratio>("fractions").into_iter().map(|part| part.value).collect();
    Ok(given.answer().with("passes", passes(given.quantity::<Torque>("torque")?, &fractions)?))
}

fn order(given: &Given) -> Result<Answer, ReckonError> {
    let bolts = given.count("bolts")?;
    let order =
        usize::try_from(bolts).ok().filter(|bolts| *bolts <= 400).and_then(tightening_order);
    let order = order.ok_or_else(|| ReckonError::not_valid(format!("{bolts} bolts")))?;
    let places: Vec<u32> =
        order.into_iter().map(|place| u32::try_from(place).unwrap_or(u32::MAX)).collect();
    Ok(given.answer().with("order", places))
}

fn thread_of(given: &Given) -> Result<Answer, ReckonError> {
    let name = given.word("thread");
    let held = thread(name).ok_or_else(|| {
        let nearest = error::nearest(name, threads().map(|thread| thread.name));
        let meant = error::did_you_mean(nearest.as_deref());
        Given::unreadable("thread", format!("“{name}” is no coarse thread that is held{meant}"))
    })?;
    let answer = given.answer().with("diameter", held.diameter).with("pitch", held.pitch);
    Ok(answer.with("stress_area", held.stress_area).with("source", held.source.to_string()))
}

fn area(given: &Given) -> Result<Answer, ReckonError> {
    let (diameter, pitch) = (given.quantity("diameter")?, given.quantity("pitch")?);
    let area = stress_area(diameter, pitch, given.pick("family", &FAMILIES)?)?;
    Ok(given.answer().with("stress_area", area))
}

fn friction(given: &Given) -> Result<Answer, ReckonError> {
    let (friction, bolts) = (given.number("friction")?, given.count("bolts")?);
    let circle = given.quantity("bolt_circle")?;
    let flange = flange_friction(friction, bolts, given.quantity("preload")?, circle)?;
    Ok(given.answer().with("torque", flange.torque).shown_by([flange.working()]))
}

fn fitted(given: &Given) -> Result<Answer, ReckonError> {
    let (bolts, shank) = (given.count("bolts")?, given.quantity("shank")?);
    let circle = given.quantity("bolt_circle")?;
    let fitted = fitted_bolts(bolts, shank, given.quantity("shear")?, circle)?;
    Ok(given.answer().with("torque", fitted.torque).shown_by([fitted.working()]))
}

fn wrench(given: &Given) -> Result<Answer, ReckonError> {
    let range = torque_wrench_for(given.quantity("torque")?, given.pick("units", &SYSTEMS)?);
    let range = range.ok_or_else(|| not_held("a wrench for that torque"))?;
    Ok(given.answer().with("wrench", range.show()))
}
