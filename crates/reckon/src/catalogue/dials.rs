//! Dials: what a sweep says, whether it is to be believed, and what the bracket does to it.

use lineup::clock::Clock;
use lineup::closure::{Slip, check};
use lineup::dial::{Dial, Stem, Surface, Turning, free_of_float};
use lineup::sag::{Bar, Sag, bar_sag};
use lineup::{Machine, Plane};
use quantities::{Basis, Kind, Length, Physical, Source, System, Value};
use tables::limits::CLOSURE;
use uom::ConstZero;

use super::choices::{MATERIAL, POSITIONS, VIEW_NAMES, VIEWS, clocks, metal};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const STEMS: [(&str, Stem); 2] =
    [("rises pushed in", Stem::RisesPushedIn), ("falls pushed in", Stem::FallsPushedIn)];
const STEM_NAMES: &[&str] = &names(&STEMS);
/// Which surface is touched; a face takes its swing from elsewhere.
#[derive(Clone, Copy)]
enum Touched {
    Rim,
    InsideRim,
    Face,
    FarFace,
}
const SURFACES: [(&str, Touched); 4] = [
    ("rim", Touched::Rim),
    ("inside rim", Touched::InsideRim),
    ("face", Touched::Face),
    ("far face", Touched::FarFace),
];
const SURFACE_NAMES: &[&str] = &names(&SURFACES);
const DIALS: [(&str, DialKind); 2] = [("rim", DialKind::Rim), ("face", DialKind::Face)];
const DIAL_NAMES: &[&str] = &names(&DIALS);
#[derive(Clone, Copy)]
enum DialKind {
    Rim,
    Face,
}

const READINGS: Input =
    Input::quantities("readings", Kind::Offset, "readings, in the order of the positions");
const POSITION: Input =
    Input::words("positions", "where each was taken: 12, 1:30, 45°").or(POSITIONS);
const VIEW: Input = Input::choice("view", VIEW_NAMES, "how the reader stood").or("from driver");
const DIVISION: Input =
    Input::quantity("division", Kind::Allowance, "smallest step that it can be read to")
        .or("0.01 mm");
const SPREAD: Input =
    Input::quantity("spread", Kind::Allowance, "± of one reading beyond the division").optional();
const ZERO: Input =
    Input::word("zero", "where it was set to zero, when that is not among the readings").optional();

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "dial-sweep",
        does: "The circle through a sweep of a dial: what it says upwards and to the right.",
        inputs: &[
            READINGS,
            POSITION,
            VIEW,
            ZERO,
            Input::choice("surface", SURFACE_NAMES, "what the stem touches").or("rim"),
            Input::quantity("swing", Kind::Length, "swing diameter of a face dial").optional(),
            Input::choice("stem", STEM_NAMES, "which way the pointer goes").or("rises pushed in"),
            Input::quantity(
                "runout",
                Kind::Allowance,
                "runout of the rim, when only the carrier turns",
            )
            .optional(),
            Input::quantity(
                "sag",
                Kind::Allowance,
                "sag of the bracket, +, with its ±; signed for a face",
            )
            .or("0 mm"),
            DIVISION,
            SPREAD,
        ],
        outputs: &[
            Output::value(
                "up",
                Kind::Offset,
                "touched shaft above the carrier’s line; at a face half the swing times the slope",
            ),
            Output::value("right", Kind::Offset, "the same to the right"),
            Output::value("constant", Kind::Offset, "middle of the circle"),
            Output::value("cosine", Kind::Offset, "cosine of the circle, sag still in it"),
            Output::value("sine", Kind::Offset, "sine of the circle"),
            Output::value("u_cosine", Kind::Allowance, "standard uncertainty of the cosine"),
            Output::value("u_sine", Kind::Allowance, "standard uncertainty of the sine"),
            Output::value("u_constant", Kind::Allowance, "standard uncertainty of the constant"),
            Output::value("correlation", Kind::Number, "between constant and cosine"),
            Output::value("indicator_reading", Kind::Offset, "total indicator reading"),
            Output::value("scatter", Kind::Allowance, "standard deviation about the circle"),
            Output::value(
                "chi_squared",
                Kind::Number,
                "squares of the residuals over the stated uncertainty",
            ),
            Output::value("spare", Kind::Count, "readings beyond the three that fix a circle"),
        ],
        valid: "three different positions or more; shafts straight, slopes small",
        source: Source::new("least squares over the sweep", "JCGM 100:2008, H.3", Basis::Computed),
        answer: sweep,
    },
    Calculation {
        name: "dial-check",
        does: "Whether a sweep is to be believed: closure, return to zero, the reading that does not fit.",
        inputs: &[
            READINGS,
            POSITION,
            VIEW,
            ZERO,
            Input::quantity(
                "returned",
                Kind::Offset,
                "what it read on coming back to the zero position",
            )
            .optional(),
            Input::quantity(
                "limit",
                Kind::Allowance,
                "the sums of opposite readings may differ by",
            )
            .or("0.05 mm"),
            DIVISION,
            SPREAD,
        ],
        outputs: &[
            Output::word("verdict", "inside, outside, too close to call or not measured"),
            Output::value(
                "closure",
                Kind::Offset,
                "top plus bottom less the sides, for each set of four",
            ),
            Output::value("return_to_zero", Kind::Offset, "reading on coming back less the zero"),
            Output::value("repeatability", Kind::Allowance, "standard deviation of repeats"),
            Output::word("odd", "the reading that does not fit the others"),
            Output::word("slips", "single slips that would make it close"),
        ],
        valid: "sweeps over a straight shaft; two swapped sides change no closure",
        source: CLOSURE.source,
        answer: checked,
    },
    Calculation {
        name: "dial-rezero",
        does: "A sweep set to zero at another position.",
        inputs: &[
            READINGS,
            POSITION,
            VIEW,
            ZERO,
            Input::word("at", "position that is to read zero"),
        ],
        outputs: &[
            Output::value("readings", Kind::Offset, "readings, in the order of the positions"),
            Output::word("positions", "where each was taken"),
        ],
        valid: "a position that was read",
        source: Source::new("what was read there is taken from all", "", Basis::Computed),
        answer: rezero,
    },
    Calculation {
        name: "face-dials-apart",
        does: "Two face dials half a turn apart as one that end float does not touch.",
        inputs: &[
            Input::quantities("first", Kind::Offset, "readings of the first dial"),
            Input::words("first_positions", "where each was taken"),
            Input::quantities(
                "second",
                Kind::Offset,
                "readings of the second dial, at the same times",
            ),
            Input::words("second_positions", "where each was taken: opposite"),
            Input::quantity("swing", Kind::Length, "swing diameter of both"),
            VIEW,
            DIVISION,
        ],
        outputs: &[
            Output::value("readings", Kind::Offset, "face readings free of float"),
            Output::word("positions", "where each stands: the first dial’s"),
        ],
        valid: "both dials on one face, read at the same time",
        source: Source::new(
            "Bloch and Geitner, Machinery Component Maintenance and Repair",
            "p. 212",
            Basis::Read,
        ),
        answer: apart,
    },
    Calculation {
        name: "mandrel-sag",
        does: "Sag of a bracket from its bottom reading on a stiff mandrel, zeroed at the top.",
        inputs: &[
            Input::quantity("bottom", Kind::Offset, "bottom reading, with its ±"),
            Input::choice("dial", DIAL_NAMES, "rim or face").or("rim"),
        ],
        outputs: &[
            Output::value("sag", Kind::Offset, "sag: + for a rim dial, signed for a face dial"),
            Output::value(
                "add_at_bottom",
                Kind::Offset,
                "what is added to a bottom reading zeroed at the top",
            ),
        ],
        valid: "a mandrel that does not bend; the bracket as it is used",
        source: Source::new("US Bureau of Reclamation, FIST 4-1A", "pp. 17 and 24", Basis::Read),
        answer: mandrel,
    },
    Calculation {
        name: "bar-sag",
        does: "Sag of a bar that carries a dial at its end, worked out until it is measured.",
        inputs: &[
            Input::quantity("outside", Kind::Length, "outside diameter"),
            Input::quantity("inside", Kind::Length, "inside diameter; 0 for a rod").or("0 mm"),
            Input::quantity("overhang", Kind::Length, "from clamp to dial"),
            Input::quantity("end_mass", Kind::Mass, "dial and clamp at the end"),
            Input::word("material", MATERIAL).or("steel"),
            Input::quantity("density", Kind::Density, "that of the material when left out")
                .optional(),
            Input::quantity("young", Kind::Stress, "that of the material when left out").optional(),
        ],
        outputs: &[
            Output::value("sag", Kind::Offset, "sag, with half of it as ±"),
            Output::value("from_end", Kind::Offset, "from the mass at the end"),
            Output::value("from_weight", Kind::Offset, "from its own weight"),
            Output::value("bottom", Kind::Offset, "what it shows at the bottom of a mandrel"),
        ],
        valid: "a bar clamped at one end; clamp and post, left out, give as well: hence the wide ±",
        source: Source::new(
            "Shigley’s Mechanical Engineering Design, 9th ed.",
            "Table A-9, cantilevers",
            Basis::Memory,
        ),
        answer: bar,
    },
];

/// The sweep of the inputs, touching a surface.
fn sweep_of(given: &Given, surface: Surface, division: Length) -> Result<Dial, ReckonError> {
    let view = given.pick("view", &VIEWS)?;
    let readings = paired(given, "readings", clocks(given, "positions", view)?)?;
    let mut dial = Dial::new(Machine::Driver, Machine::Driven, surface, Length::ZERO, division);
    let zero = Some(given.word("zero")).filter(|zero| !zero.is_empty());
    dial.zero = zero.map(|zero| Clock::read(zero, view)).transpose()?;
    Ok(dial.with(readings))
}

/// Positions with their readings.
pub(super) fn paired(
    given: &Given,
    readings: &'static str,
    at: Vec<Clock>,
) -> Result<Vec<(Clock, Length)>, ReckonError> {
    let values = given.quantities::<Length>(readings);
    if at.len() == values.len() {
        return Ok(at.into_iter().zip(values).collect());
    }
    let why = format!("{} readings at {} positions", values.len(), at.len());
    Err(Given::unreadable(readings, why))
}

fn surface(given: &Given) -> Result<Surface, ReckonError> {
    let swing = || given.quantity::<Length>("swing");
    Ok(match given.pick("surface", &SURFACES)? {
        Touched::Rim => Surface::Rim,
        Touched::InsideRim => Surface::InsideRim,
        Touched::Face => Surface::Face(swing()?),
        Touched::FarFace => Surface::FarFace(swing()?),
    })
}

fn sweep(given: &Given) -> Result<Answer, ReckonError> {
    let mut dial = sweep_of(given, surface(given)?, given.quantity("division")?)?;
    dial.stem = given.pick("stem", &STEMS)?;
    dial.turning = given.optional("runout").map_or(Turning::Together, Turning::CarrierAlone);
    dial.plus_minus = given.optional("spread");
    dial.sag = Some(Sag { amplitude: given.estimate("sag")?, bracket: String::new() });
    let sweep = dial.fit()?;
    let circle = &sweep.circle;
    let variance = |k: usize| circle.covariance[k][k];
    let u = |k: usize| Length::from_si(variance(k).sqrt());
    let correlation = circle.covariance[0][1] / (variance(0) * variance(1)).sqrt();
    let answer = given.answer().with("up", sweep.cosine()).with("right", sweep.sine());
    let answer = answer.with("constant", Length::from_si(circle.constant));
    let answer = answer.with("cosine", Length::from_si(circle.cosine));
    let answer = answer.with("sine", Length::from_si(circle.sine));
    let answer = answer.with("u_cosine", u(1)).with("u_sine", u(2)).with("u_constant", u(0));
    let answer = answer.with("correlation", correlation);
    let answer = answer.with("indicator_reading", dial.total_indicator_reading());
    let answer = answer.with("scatter", circle.residual_deviation().map(Length::from_si));
    let answer = answer.with("chi_squared", circle.chi_squared);
    let answer = answer.with("spare", circle.degrees_of_freedom);
    Ok(answer.shown_by(Plane::BOTH.map(|plane| sweep.working(plane))))
}

fn checked(given: &Given) -> Result<Answer, ReckonError> {
    let mut dial = sweep_of(given, Surface::Rim, given.quantity("division")?)?;
    dial.returned = given.optional("returned");
    dial.plus_minus = given.optional("spread");
    let view = given.pick("view", &VIEWS)?;
    let limit = given.quantity::<Length>("limit")?;
    if limit.si() <= 0.0 {
        return Err(ReckonError::not_valid("the limit is not above zero"));
    }
    let check = check(&dial, limit)?;
    let shown = |length: Length| {
        let [metric, inch] = [System::Metric, System::Inch]
            .map(|system| Value::new(Kind::Offset, length).show(system));
        format!("{metric} ({inch})")
    };
    let odd =
        check.odd.map(|odd| format!("{}, off by {}", odd.clock.seen(view), shown(odd.off_by)));
    let slip = |slip: &Slip| match slip {
        Slip::Sign(at) => format!("sign at {}", at.seen(view)),
        Slip::Swapped(a, b) => format!("{} and {} swapped", a.seen(view), b.seen(view)),
        Slip::Turn(at, add) => {
            format!("a turn of the pointer at {}: add {}", at.seen(view), shown(*add))
        }
    };
    let sums: Vec<_> = check.closures.iter().map(|closure| closure.sum).collect();
    let answer = given.answer().with("verdict", check.verdict(limit)).with("closure", sums);
    let answer = answer.with("return_to_zero", check.return_to_zero);
    let answer = answer.with("repeatability", check.repeatability.map(|(deviation, _)| deviation));
    let answer = answer.with("odd", odd);
    let answer = answer.with("slips", check.slips.iter().map(slip).collect::<Vec<_>>());
    Ok(answer.shown_by(check.closures.iter().map(lineup::closure::Closure::working)))
}

fn rezero(given: &Given) -> Result<Answer, ReckonError> {
    let view = given.pick("view", &VIEWS)?;
    let at = Clock::read(given.word("at"), view)?;
    let turned = sweep_of(given, Surface::Rim, Length::ZERO)?
        .rezeroed(at)
        .ok_or_else(|| Given::unreadable("at", "nothing was read there"))?;
    let positions: Vec<String> =
        turned.readings.iter().map(|reading| reading.clock.seen(view).to_string()).collect();
    let readings: Vec<Length> = turned.readings.iter().map(|reading| reading.value).collect();
    Ok(given.answer().with("readings", readings).with("positions", positions))
}

fn apart(given: &Given) -> Result<Answer, ReckonError> {
    let view = given.pick("view", &VIEWS)?;
    let face = Surface::Face(given.quantity("swing")?);
    let division = given.quantity("division")?;
    let dial = |readings, positions| -> Result<Dial, ReckonError> {
        let readings = paired(given, readings, clocks(given, positions, view)?)?;
        Ok(Dial::new(Machine::Driver, Machine::Driven, face, Length::ZERO, division).with(readings))
    };
    let free =
        free_of_float(&dial("first", "first_positions")?, &dial("second", "second_positions")?)?;
    let positions: Vec<String> =
        free.readings.iter().map(|reading| reading.clock.seen(view).to_string()).collect();
    let readings: Vec<Length> = free.readings.iter().map(|reading| reading.value).collect();
    Ok(given.answer().with("readings", readings).with("positions", positions))
}

fn mandrel(given: &Given) -> Result<Answer, ReckonError> {
    let bottom = given.estimate("bottom")?;
    let sag = match given.pick("dial", &DIALS)? {
        DialKind::Rim => Sag::rim_on_mandrel(bottom, ""),
        DialKind::Face => Sag::face_on_mandrel(bottom, ""),
    }?;
    let answer = given.answer().with("sag", sag.amplitude);
    Ok(answer.with("add_at_bottom", -sag.bottom_reading()))
}

fn bar(given: &Given) -> Result<Answer, ReckonError> {
    let metal = metal(given, "material")?;
    let found = bar_sag(Bar {
        outside: given.quantity("outside")?,
        inside: given.quantity("inside")?,
        overhang: given.quantity("overhang")?,
        end_mass: given.quantity("end_mass")?,
        density: given.optional("density").unwrap_or(metal.density),
        young: given.optional("young").unwrap_or(metal.elastic.young),
    })?;
    let sag = found.sag("");
    let answer = given.answer().with("sag", sag.amplitude);
    let answer = answer.with("from_end", found.from_end).with("from_weight", found.from_weight);
    Ok(answer.with("bottom", sag.bottom_reading()).shown_by([found.working()]))
}
