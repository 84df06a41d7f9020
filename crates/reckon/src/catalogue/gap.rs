//! The gap, the distance between shaft ends, and end float.

use couplings::gap::{Target, readings, restore, target};
use couplings::{Planes, Sheet, kind};
use lineup::axial::{self, EndFloat, ShaftGrowth, shaft_ends};
use quantities::{Basis, Kind, Length, Limits, Physical, Source, TemperatureInterval};
use tables::limits::END_FLOAT_SOURCE;

use super::choices::not_held;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const EXPANSION: &str = "11.7 µm/m/K";
const PRACTICE: Source = Source::common_practice("gap between hubs");

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "gap-target",
        does: "The gap that a maker’s sheet asks for, and the limits that it may lie between.",
        inputs: &[
            Input::word("kind", "kind of coupling: gear, grid, disc, …"),
            Input::word("form", "how it is built; the usual form when left out").optional(),
            Input::quantity("hub_faces", Kind::Gap, "gap between hub faces, with its ±").optional(),
            Input::quantity("shaft_ends", Kind::Length, "distance between shaft ends, with its ±")
                .optional(),
            Input::quantity("least", Kind::Gap, "least gap, where the sheet gives a range")
                .optional(),
            Input::quantity("greatest", Kind::Gap, "greatest gap").optional(),
            Input::quantity("pack", Kind::Gap, "free length of one pack").optional(),
            Input::quantity("spacer", Kind::Length, "length of the spacer").optional(),
            Input::quantity("axial", Kind::Gap, "axial movement allowed to each side").optional(),
        ],
        outputs: &[
            Output::value("gap", Kind::Gap, "the gap"),
            Output::value("at_least", Kind::Gap, "at least"),
            Output::value("at_most", Kind::Gap, "at most"),
            Output::word("from", "the figure of the sheet that it comes from"),
            Output::word("source", "how the tolerance is known"),
        ],
        valid: "as the sheet means it, cold or hot",
        source: Source::new("maker’s sheet", "as entered", Basis::MakersSheet),
        answer: gap_target,
    },
    Calculation {
        name: "gap-mean",
        does: "Mean and spread of a gap read at points round the hubs.",
        inputs: &[
            Input::quantities(
                "readings",
                Kind::Gap,
                "readings round the hubs, evenly spaced, each with its ±",
            ),
            Input::quantity("least", Kind::Gap, "at least").optional(),
            Input::quantity("greatest", Kind::Gap, "at most").optional(),
        ],
        outputs: &[
            Output::value("mean", Kind::Gap, "mean"),
            Output::value("spread", Kind::Gap, "widest less narrowest"),
            Output::word("verdict", "the mean against the limits"),
        ],
        valid: "an even number of evenly spaced points, so that an angle cancels in the mean",
        source: PRACTICE,
        answer: gap_mean,
    },
    Calculation {
        name: "gap-change",
        does: "How far a gap has to change to be as it was recorded.",
        inputs: &[
            Input::quantity("recorded", Kind::Gap, "as recorded, with its ±"),
            Input::quantity("found", Kind::Gap, "as found, with its ±"),
        ],
        outputs: &[Output::value("change", Kind::Gap, "change; + opens it")],
        valid: "read at the same places, at about the same temperature",
        source: PRACTICE,
        answer: gap_change,
    },
    Calculation {
        name: "shaft-ends",
        does: "Distance between shaft ends to set cold, for one wanted hot.",
        inputs: &[
            Input::quantity("hot", Kind::Length, "distance wanted hot"),
            Input::quantity(
                "driver_length",
                Kind::Length,
                "driver: from the bearing that holds the shaft to its end",
            ),
            Input::quantity(
                "driver_rise",
                Kind::TemperatureDifference,
                "driver: mean rise of the shaft, with its ±",
            ),
            Input::quantity("driver_expansion", Kind::Expansion, "driver: expansion of the shaft")
                .or(EXPANSION),
            Input::quantity(
                "driver_casing",
                Kind::Offset,
                "driver: what the casing carries the bearing towards the coupling",
            )
            .or("0 mm"),
            Input::quantity("driven_length", Kind::Length, "driven: the same length"),
            Input::quantity(
                "driven_rise",
                Kind::TemperatureDifference,
                "driven: mean rise, with its ±",
            ),
            Input::quantity("driven_expansion", Kind::Expansion, "driven: expansion of the shaft")
                .or(EXPANSION),
            Input::quantity(
                "driven_casing",
                Kind::Offset,
                "driven: what the casing carries its bearing",
            )
            .or("0 mm"),
        ],
        outputs: &[
            Output::value("cold", Kind::Size, "to set cold"),
            Output::value(
                "driver_growth",
                Kind::Offset,
                "growth of the driver’s shaft towards the coupling",
            ),
            Output::value(
                "driven_growth",
                Kind::Offset,
                "growth of the driven shaft towards the coupling",
            ),
        ],
        valid: "each shaft grows from the bearing that holds it; a pack that is to be free hot is stretched cold by both growths",
        source: Source::new("thermal expansion", "", Basis::Computed),
        answer: ends,
    },
    Calculation {
        name: "end-float",
        does: "What is left between a rotor and its nearer bearing shoulder when the coupling stops it.",
        inputs: &[
            Input::quantity("rotor", Kind::Gap, "whole float of the rotor, with its ±"),
            Input::quantity("magnetic_centre", Kind::Gap, "magnetic centre off the middle of it")
                .or("0 mm"),
            Input::quantity("coupling", Kind::Gap, "whole travel that the coupling leaves"),
        ],
        outputs: &[
            Output::value("clearance", Kind::Gap, "left at the nearer shoulder"),
            Output::word("clears_shoulders", "inside while the coupling stops it first"),
            Output::word("within_half", "inside while the travel is less than half the float"),
        ],
        valid: "the coupling set with the rotor on its magnetic centre",
        source: Source::common_practice("sleeve-bearing motors"),
        answer: float,
    },
    Calculation {
        name: "end-float-usual",
        does: "Float of a sleeve-bearing motor’s rotor and travel of its coupling that go together.",
        inputs: &[Input::quantity("power", Kind::Power, "power of the motor")],
        outputs: &[
            Output::value("rotor_least", Kind::Gap, "float of the rotor at least"),
            Output::value("coupling_greatest", Kind::Gap, "travel of the coupling at most"),
        ],
        valid: "125 to 450 hp, and from 500 hp; between them the pair depends on speed",
        source: END_FLOAT_SOURCE,
        answer: usual_float,
    },
];

fn gap_target(given: &Given) -> Result<Answer, ReckonError> {
    let kind = kind(given.word("kind"))
        .ok_or_else(|| Given::unreadable("kind", "coupling-kind lists what is known"))?;
    let form = Some(given.word("form")).filter(|form| !form.is_empty());
    let form = kind.form(form).ok_or_else(|| {
        let known: Vec<&str> = kind.forms().iter().map(|form| form.name).collect();
        Given::unreadable("form", format!("none of: {}", known.join(", ")))
    })?;
    let mut sheet = Sheet::default();
    sheet.gap.hub_faces = given.written_as("hub_faces");
    sheet.gap.dbse = given.written_as("shaft_ends");
    sheet.gap.least = given.written_as("least");
    sheet.gap.greatest = given.written_as("greatest");
    sheet.sizes.pack_thickness = given.written_as("pack");
    sheet.sizes.spacer_length = given.written_as("spacer");
    sheet.allows.running.axial = given.written_as("axial");
    let planes: Planes = kind.forgives(form).planes;
    let target = target(&sheet, kind.gap_rule(form), planes).map_err(ReckonError::not_valid)?;
    let length = |si: Option<f64>| si.map(Length::from_si);
    let answer = given.answer().with("gap", target.gap);
    let answer = answer.with("at_least", length(target.limits.least));
    let answer = answer.with("at_most", length(target.limits.greatest));
    Ok(answer.with("from", target.from).with("source", target.source.to_string()))
}

fn gap_mean(given: &Given) -> Result<Answer, ReckonError> {
    let found = readings(&given.estimates("readings"))?;
    let end = |name| given.optional::<Length>(name).map(Length::si);
    let limits = Limits { least: end("least"), greatest: end("greatest") };
    let verdict = (limits != Limits::default()).then(|| {
        found.verdict(&Target { gap: found.mean.value, limits, from: "as given", source: PRACTICE })
    });
    let answer = given.answer().with("mean", found.mean).with("spread", found.spread);
    let answer = answer.with("verdict", verdict);
    Ok(answer.shown_by([found.mean_working(), found.spread_working()]))
}

fn gap_change(given: &Given) -> Result<Answer, ReckonError> {
    let change = restore(&given.estimate("recorded")?, &given.estimate("found")?);
    Ok(given.answer().with("change", change.change).shown_by([change.working()]))
}

fn shaft(given: &Given, names: [&'static str; 4]) -> Result<ShaftGrowth, ReckonError> {
    let [length, rise, expansion, casing] = names;
    Ok(ShaftGrowth {
        length: given.quantity(length)?,
        rise: given.estimate::<TemperatureInterval>(rise)?,
        expansion: given.quantity(expansion)?,
        casing: given.estimate(casing)?,
    })
}

#[expect(clippy::similar_names, reason = "driver and driven are the words of the trade")]
fn ends(given: &Given) -> Result<Answer, ReckonError> {
    let driver =
        shaft(given, ["driver_length", "driver_rise", "driver_expansion", "driver_casing"])?;
    let driven =
        shaft(given, ["driven_length", "driven_rise", "driven_expansion", "driven_casing"])?;
    let ends = shaft_ends(given.quantity("hot")?, &driver, &driven)?;
    let answer = given.answer().with("cold", ends.cold).with("driver_growth", ends.driver);
    let workings = [ends.working(), driver.working(), driven.working()];
    Ok(answer.with("driven_growth", ends.driven).shown_by(workings))
}

fn float(given: &Given) -> Result<Answer, ReckonError> {
    let centre = given.estimate("magnetic_centre")?;
    let float = EndFloat::new(given.estimate("rotor")?, centre, given.estimate("coupling")?)?;
    let answer = given.answer().with("clearance", float.clearance());
    let answer = answer.with("clears_shoulders", float.clears_shoulders());
    let answer = answer.with("within_half", float.within_half_of_float());
    Ok(answer.shown_by([float.working()]))
}

fn usual_float(given: &Given) -> Result<Answer, ReckonError> {
    let pair = axial::usual_float(given.quantity("power")?)
        .ok_or_else(|| not_held("a motor of that power"))?;
    let answer = given.answer().with("rotor_least", pair.rotor_least);
    Ok(answer.with("coupling_greatest", pair.coupling_greatest))
}
