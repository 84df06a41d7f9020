//! Growth of supports, and where the shafts must stand cold.

use lineup::clock::Clock;
use lineup::dial::{Dial, Surface};
use lineup::drift::{Span, drift};
use lineup::growth::{
    PlaneGrowth, Support, growth_line, support_growth, target, target_readings, target_working,
};
use lineup::line::Line;
use lineup::sag::Sag;
use lineup::{Estimate, Layout, Machine, Plane};
use quantities::{Basis, Kind, Length, Physical, Ratio, Source, TemperatureInterval};
use tables::growth::{support_of, supports};

use super::choices::{MACHINE_NAMES, MACHINES, POSITIONS, VIEW_NAMES, VIEWS, clocks};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError, error};

#[derive(Clone, Copy)]
enum Touched {
    Rim,
    Face,
    FarFace,
}
const SURFACES: [(&str, Touched); 3] =
    [("rim", Touched::Rim), ("face", Touched::Face), ("far face", Touched::FarFace)];
const SURFACE_NAMES: &[&str] = &names(&SURFACES);

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "support-growth",
        does: "How much a support lifts its shaft on the way from cold to running.",
        inputs: &[
            Input::quantity(
                "height",
                Kind::Length,
                "from the shims to the shaft’s centre, with its ±",
            ),
            Input::quantity(
                "rise",
                Kind::TemperatureDifference,
                "rise of the support’s metal, with its ±",
            ),
            Input::word("material", "what it is made of, such as cast iron or concrete")
                .or("steel or iron frame"),
            Input::quantity(
                "expansion",
                Kind::Expansion,
                "its expansion; that of the material when left out",
            )
            .optional(),
        ],
        outputs: &[Output::value("growth", Kind::Offset, "upwards")],
        valid: "the rise of the metal of the support, not of what is pumped",
        source: Source::new(
            "McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment",
            "ch. 8",
            Basis::Read,
        ),
        answer: support,
    },
    Calculation {
        name: "cold-target",
        does: "Where the moving shaft must stand cold, so that both run in line.",
        inputs: &[
            Input::quantities(
                "fixed_at",
                Kind::Length,
                "x of the foot planes of the machine that stays",
            ),
            Input::quantities("fixed_growth", Kind::Offset, "what each grows upwards, with its ±"),
            Input::quantities(
                "moving_at",
                Kind::Length,
                "x of the foot planes of the machine that moves",
            ),
            Input::quantities("moving_growth", Kind::Offset, "what each grows upwards, with its ±"),
            Input::quantities(
                "wanted_at",
                Kind::Length,
                "x of the planes where the target is wanted",
            ),
        ],
        outputs: &[
            Output::value("target", Kind::Offset, "moving above fixed, cold, at each plane"),
            Output::value("slope", Kind::Slope, "how it climbs, along +x"),
        ],
        valid: "growth straight between and beyond the foot planes",
        source: Source::new("growth lines of both machines", "", Basis::Computed),
        answer: cold,
    },
    Calculation {
        name: "line-drift",
        does: "How a line-up wanders over the years, and when it reaches its limit.",
        inputs: &[
            Input::quantities("years", Kind::Number, "years between two visits"),
            Input::quantities(
                "changes",
                Kind::Offset,
                "offset found less offset left, each with its ±",
            ),
            Input::quantity("now", Kind::Offset, "offset as it is left now").optional(),
            Input::quantity("limit", Kind::Offset, "offset to stay within").optional(),
        ],
        outputs: &[
            Output::value("per_year", Kind::Offset, "steady drift in a year"),
            Output::value(
                "years_left",
                Kind::Number,
                "years until it reaches the limit, when it surely drifts",
            ),
        ],
        valid: "a drift that goes on as it did",
        source: Source::new("least squares through nothing", "each span by its ±", Basis::Computed),
        answer: wander,
    },
    Calculation {
        name: "target-readings",
        does: "What a dial must read when the moving shaft stands on its target.",
        inputs: &[
            Input::choice("moving", MACHINE_NAMES, "the machine that moves"),
            Input::quantities(
                "target_at",
                Kind::Length,
                "x of two planes where the target is known",
            ),
            Input::quantities("target_up", Kind::Offset, "moving above fixed there"),
            Input::quantities("target_right", Kind::Offset, "moving to the right of fixed there")
                .optional(),
            Input::choice("carried_by", MACHINE_NAMES, "the shaft that carries the dial"),
            Input::choice("surface", SURFACE_NAMES, "what it touches").or("rim"),
            Input::quantity("swing", Kind::Length, "swing diameter of a face dial").optional(),
            Input::quantity("at", Kind::Length, "x of the plane that it touches"),
            Input::quantity("sag", Kind::Allowance, "sag of its bracket").or("0 mm"),
            Input::words("positions", "where it is read").or(POSITIONS),
            Input::word("zero", "where it is set to zero").or("12"),
            Input::choice("view", VIEW_NAMES, "how the reader stands").or("from driver"),
        ],
        outputs: &[Output::value("readings", Kind::Offset, "reading at each position")],
        valid: "shafts straight, slopes small; both shafts turned together",
        source: Source::new(
            "McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment",
            "figure 9-10",
            Basis::Read,
        ),
        answer: aim,
    },
];

fn support(given: &Given) -> Result<Answer, ReckonError> {
    let expansion = match given.optional("expansion") {
        Some(expansion) => expansion,
        None => frame(given.word("material"))?,
    };
    let grown = support_growth(Support {
        height: given.estimate("height")?,
        rise: given.estimate::<TemperatureInterval>("rise")?,
        expansion,
    })?;
    Ok(given.answer().with("growth", grown.growth).shown_by([grown.working()]))
}

fn frame(name: &str) -> Result<quantities::TemperatureCoefficient, ReckonError> {
    let held = support_of(name).map(|support| support.expansion);
    held.ok_or_else(|| {
        let known: Vec<&str> = supports().iter().map(|support| support.name).collect();
        let nearest = error::nearest(name, known.iter().copied());
        let meant = error::did_you_mean(nearest.as_deref());
        Given::unreadable("material", format!("“{name}” is none of: {}{meant}", known.join(", ")))
    })
}

/// A line through places: x, upwards, and to the right when that is given.
pub(super) fn line(
    given: &Given,
    at: &'static str,
    up: &'static str,
    right: Option<&'static str>,
) -> Result<Line, ReckonError> {
    let places = given.quantities::<Length>(at);
    let ups = given.estimates::<Length>(up);
    let rights = right.map(|right| given.estimates::<Length>(right)).unwrap_or_default();
    let level = Estimate::exact(Length::default());
    if places.len() != ups.len() || !(rights.is_empty() || rights.len() == places.len()) {
        return Err(Given::unreadable(
            up,
            format!("{} values at {} planes", ups.len(), places.len()),
        ));
    }
    let rights = rights.into_iter().map(Some).chain(std::iter::repeat(None));
    let grown: Vec<PlaneGrowth> = places
        .into_iter()
        .zip(ups)
        .zip(rights)
        .map(|((at, up), right)| PlaneGrowth { at, up, right: right.unwrap_or(level) })
        .collect();
    Ok(growth_line(&grown)?)
}

fn cold(given: &Given) -> Result<Answer, ReckonError> {
    let fixed = line(given, "fixed_at", "fixed_growth", None)?;
    let moving = line(given, "moving_at", "moving_growth", None)?;
    let wanted = given.quantities::<Length>("wanted_at");
    let target = target(&fixed, &moving);
    let offsets: Vec<Estimate<Length>> =
        wanted.iter().map(|at| target.offset(Plane::Vertical, *at)).collect();
    let answer = given.answer().with("target", offsets);
    let answer = answer.with("slope", target.slope(Plane::Vertical));
    let working = |at: &Length| target_working(&fixed, &moving, Plane::Vertical, *at);
    Ok(answer.shown_by(wanted.iter().map(working)))
}

fn wander(given: &Given) -> Result<Answer, ReckonError> {
    let years = given.quantities::<Ratio>("years");
    let changes = given.estimates::<Length>("changes");
    if years.len() != changes.len() {
        return Err(ReckonError::not_valid("years and changes differ in number"));
    }
    let spans = years.into_iter().zip(changes);
    let drift = drift(spans.map(|(years, change)| Span { years: years.value, change }).collect())?;
    let ends = given.optional::<Length>("now").zip(given.optional("limit"));
    let left = ends.and_then(|(now, limit)| drift.reaches(now, limit));
    let answer = given.answer().with("per_year", drift.per_year).with("years_left", left);
    Ok(answer.shown_by([drift.working(Kind::Offset)]))
}

fn aim(given: &Given) -> Result<Answer, ReckonError> {
    let view = given.pick("view", &VIEWS)?;
    let target = line(given, "target_at", "target_up", Some("target_right"))?;
    let moving: Machine = given.pick("moving", &MACHINES)?;
    let layout = Layout { moving, reference: target.reference(), spool: None };
    let carrier = given.pick("carried_by", &MACHINES)?;
    let swing = || given.quantity::<Length>("swing");
    let surface = match given.pick("surface", &SURFACES)? {
        Touched::Rim => Surface::Rim,
        Touched::Face => Surface::Face(swing()?),
        Touched::FarFace => Surface::FarFace(swing()?),
    };
    let at = given.quantity("at")?;
    let mut dial = Dial::new(carrier, carrier.other(), surface, at, Length::from_si(1e-5));
    dial.zero = Some(Clock::read(given.word("zero"), view)?);
    dial.sag = Some(Sag { amplitude: given.estimate("sag")?, bracket: String::new() });
    let readings = target_readings(&layout, &dial, &target, &clocks(given, "positions", view)?);
    let readings = readings.ok_or_else(|| ReckonError::not_valid("the dial touches no shaft"))?;
    let readings: Vec<Length> = readings.into_iter().map(|(_, reading)| reading).collect();
    Ok(given.answer().with("readings", readings))
}
