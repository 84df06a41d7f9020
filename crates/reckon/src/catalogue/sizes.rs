//! Measured sizes, and the form of a bore or shaft.

use mechanics::size::correction::{Setting, Temperatures};
use mechanics::size::form::Profile;
use mechanics::size::suspects::{Slip, Suspect, Which};
use mechanics::size::{Contact, Direction, Measurement, Reading, Size};
use quantities::{
    Angle, Basis, Kind, Length, Physical, Source, System, TemperatureInterval, Value, parse,
};
use tables::tools;

use super::choices::{SYSTEM_NAMES, SYSTEMS, not_held};
use crate::calculation::names;
use crate::{Answer, Calculation, Given, Input, Output, ReckonError};

const CONTACTS: [(&str, Contact); 2] =
    [("two-point", Contact::TwoPoint), ("three-point", Contact::ThreePoint)];
const CONTACT_NAMES: &[&str] = &names(&CONTACTS);

/// What the readings are.
#[derive(Clone, Copy, PartialEq)]
enum Reads {
    Sizes,
    Differences,
}

const READS: [(&str, Reads); 2] = [("size", Reads::Sizes), ("difference", Reads::Differences)];
const READS_NAMES: &[&str] = &names(&READS);

const GUM: Source =
    Source::new("JCGM 100:2008 (GUM)", "4.2 and 5.1.2; ISO 1 for 20 °C", Basis::Memory);

const READINGS: Input = Input::quantities("readings", Kind::Size, "diameters as read");
const SPREAD: Input = Input::quantity("spread", Kind::Allowance, "± of one reading");
const CONTACT: Input =
    Input::choice("contact", CONTACT_NAMES, "how the instrument touches").or("two-point");
const MEAN: Output = Output::value("mean", Kind::Size, "mean size at 20 °C");

pub(super) const ALL: &[Calculation] = &[
    Calculation {
        name: "size",
        does: "Mean size at 20 °C from several readings of a bore or shaft, with its ±.",
        inputs: &[
            Input::quantities("readings", Kind::Size, "diameters as read, or differences"),
            Input::choice(
                "reads",
                READS_NAMES,
                "difference when the readings count from the standard; + where the part is larger",
            )
            .or("size"),
            SPREAD,
            Input::quantity("part_temperature", Kind::Temperature, "temperature of the part")
                .or("20 °C"),
            Input::quantity(
                "instrument_temperature",
                Kind::Temperature,
                "temperature of the instrument, or of the standard that it was set on",
            )
            .or("20 °C"),
            Input::quantity(
                "temperature_spread",
                Kind::TemperatureDifference,
                "± of both temperatures",
            )
            .or("0 K"),
            Input::quantity("part_expansion", Kind::Expansion, "expansion of the part")
                .or("11.5 µm/m/K"),
            Input::quantity("instrument_expansion", Kind::Expansion, "expansion of the instrument")
                .or("11.5 µm/m/K"),
            Input::quantity("expansion_spread", Kind::Expansion, "± of both expansions")
                .or("0 µm/m/K"),
            Input::quantity("standard", Kind::Size, "size of the setting standard, with its ±")
                .optional(),
            Input::quantity(
                "read_on_standard",
                Kind::Size,
                "what the instrument read on it; of a difference 0 when left out",
            )
            .optional(),
            CONTACT,
            Input::quantity("nominal", Kind::Size, "size on the drawing, to see slips by")
                .optional(),
        ],
        outputs: &[
            MEAN,
            Output::value("least", Kind::Size, "smallest reading at 20 °C"),
            Output::value("greatest", Kind::Size, "largest reading at 20 °C"),
            Output::value(
                "random",
                Kind::Allowance,
                "part of the ± that shrinks with more readings",
            ),
            Output::value("common", Kind::Allowance, "part of the ± that all readings share"),
            Output::value("at_20", Kind::Size, "each reading at 20 °C"),
            Output::word("suspects", "readings that look wrong"),
        ],
        valid: "readings spread evenly over the part",
        source: GUM,
        answer: size,
    },
    Calculation {
        name: "size-form",
        does: "Taper, barrel or waist, and out-of-round of a bore or shaft from readings at known places.",
        inputs: &[
            READINGS,
            Input::quantities("stations", Kind::Length, "how deep each reading was taken"),
            Input::words(
                "directions",
                "which way each: along, across (the key), or an angle such as 45 deg",
            ),
            SPREAD,
            CONTACT,
        ],
        outputs: &[
            MEAN,
            Output::value("taper", Kind::Slope, "change of diameter per length"),
            Output::value("over_span", Kind::Allowance, "the same over the stations’ span"),
            Output::value("middle_over_ends", Kind::Allowance, "middle less the mean of the ends"),
            Output::word("profile", "straight, barrel or waist"),
            Output::value("out_of_round", Kind::Allowance, "largest less smallest around"),
            Output::word("blind_to", "what this instrument cannot see"),
            Output::word("suspects", "readings that look wrong"),
        ],
        valid: "taper from two depths in one direction, bow from three, out-of-round from two directions at one depth",
        source: Source::new("least squares within each direction and station", "", Basis::Computed),
        answer: form,
    },
    Calculation {
        name: "tool-for-size",
        does: "The micrometer and the bore gauge for a size.",
        inputs: &[
            Input::quantity("size", Kind::Size, "size"),
            Input::choice("units", SYSTEM_NAMES, "how the tool is marked").or("metric"),
        ],
        outputs: &[
            Output::word("micrometer", "range of the outside micrometer"),
            Output::word("bore_gauge", "range of the two-point bore gauge"),
        ],
        valid: "ranges as usually sold; a shop’s own may differ",
        source: tools::SOURCE,
        answer: tool,
    },
];

fn reading(size: Length, spread: Length) -> Reading {
    Reading { station: Length::default(), direction: Direction::AlongKey, size, spread }
}

fn size(given: &Given) -> Result<Answer, ReckonError> {
    let spread = given.quantity::<Length>("spread")?;
    let (setting, zero) = setting(given)?;
    let readings = given.quantities::<Length>("readings");
    let temperatures = Temperatures {
        part: given.quantity("part_temperature")?,
        instrument: given.quantity("instrument_temperature")?,
        part_expansion: given.quantity("part_expansion")?,
        instrument_expansion: given.quantity("instrument_expansion")?,
        spread: given.quantity::<TemperatureInterval>("temperature_spread")?,
        expansion_spread: given.quantity("expansion_spread")?,
    };
    let measurement = Measurement {
        readings: readings.into_iter().map(|size| reading(size + zero, spread)).collect(),
        contact: given.pick("contact", &CONTACTS)?,
        temperatures: Some(temperatures),
        setting,
        nominal: given.optional("nominal"),
    };
    let size = measurement.size()?;
    let first = measurement.reading_working(0);
    let counted = given.pick("reads", &READS)? == Reads::Differences;
    let difference = given.quantities::<Length>("readings").first().copied();
    let difference = measurement
        .setting
        .zip(difference.filter(|_| counted))
        .map(|(setting, difference)| setting.difference_working(difference));
    let answer = given.answer().with("mean", size.mean);
    let answer = answer.with("least", size.least).with("greatest", size.greatest);
    let answer = answer.with("random", size.random).with("common", size.common);
    let answer = answer.with("at_20", size.corrected.clone()).with("suspects", suspects(&size));
    Ok(answer
        .shown_by(difference)
        .shown_by(first)
        .shown_by([size.working(), size.spread_working()]))
}

/// What the instrument was set on, and what makes a size of a reading: nothing, or the standard
/// from which a difference counts.
fn setting(given: &Given) -> Result<(Option<Setting>, Length), ReckonError> {
    let standard = given.optional::<Length>("standard");
    let read = given.optional::<Length>("read_on_standard");
    match (given.pick("reads", &READS)?, standard, read) {
        (Reads::Sizes, None, None) => Ok((None, Length::default())),
        (Reads::Sizes, Some(_), Some(read)) => {
            Ok((Some(Setting { standard: given.estimate("standard")?, read }), Length::default()))
        }
        (Reads::Differences, Some(size), read) => {
            let read = size + read.unwrap_or_default();
            Ok((Some(Setting { standard: given.estimate("standard")?, read }), size))
        }
        (Reads::Sizes, ..) => {
            Err(ReckonError::not_valid("a setting needs both standard and read_on_standard"))
        }
        (Reads::Differences, None, _) => Err(ReckonError::not_valid(
            "a difference counts from a standard: give the size of what the instrument was set on as standard",
        )),
    }
}

fn form(given: &Given) -> Result<Answer, ReckonError> {
    let spread = given.quantity::<Length>("spread")?;
    let sizes = given.quantities::<Length>("readings");
    let stations = given.quantities::<Length>("stations");
    let directions = given.words("directions");
    if sizes.len() != stations.len() || sizes.len() != directions.len() {
        return Err(ReckonError::not_valid("readings, stations and directions differ in number"));
    }
    let mut readings = Vec::with_capacity(sizes.len());
    for ((size, station), direction) in sizes.into_iter().zip(stations).zip(directions) {
        readings.push(Reading { station, direction: way(direction)?, ..reading(size, spread) });
    }
    let contact = given.pick("contact", &CONTACTS)?;
    let size = Measurement { contact, ..Measurement::plain(readings) }.size()?;
    let answer = given.answer().with("mean", size.mean);
    let answer = answer.with("taper", size.taper.map(|taper| taper.slope));
    let answer = answer.with("over_span", size.taper.map(|taper| taper.over_span));
    let answer = answer.with("middle_over_ends", size.bow.map(|bow| bow.middle_over_ends));
    let answer = answer.with("profile", size.bow.map(|bow| profile(bow.profile())));
    let answer = answer.with("out_of_round", size.roundness.map(|round| round.out_of_round));
    let blind = size.roundness.map(|round| format!("{} lobes", round.blind_to()));
    let answer = answer.with("blind_to", blind).with("suspects", suspects(&size));
    let answer = answer.shown_by(size.taper.map(|taper| taper.working()));
    let answer = answer.shown_by(size.bow.map(|bow| bow.working()));
    Ok(answer.shown_by(size.roundness.map(|round| round.working())))
}

fn way(text: &str) -> Result<Direction, ReckonError> {
    match text {
        "along" => Ok(Direction::AlongKey),
        "across" => Ok(Direction::AcrossKey),
        angle => parse::<Angle>(angle).map(|angle| Direction::At(angle.value())).map_err(|why| {
            Given::unreadable(
                "directions",
                format!("“{angle}” is not along, across or an angle: {why}"),
            )
        }),
    }
}

fn profile(profile: Profile) -> &'static str {
    match profile {
        Profile::Straight => "straight",
        Profile::Barrel => "barrel",
        Profile::Waist => "waist",
    }
}

fn suspects(size: &Size) -> Vec<String> {
    size.suspects.iter().map(suspect).collect()
}

fn suspect(suspect: &Suspect) -> String {
    let which = match suspect.which {
        Which::Reading(place) | Which::Far(place) => format!("reading {}", place + 1),
        Which::Station(place) => format!("all at the station of reading {}", place + 1),
        Which::OneOfTwo => "one of the two".to_owned(),
        Which::All => "all of them".to_owned(),
    };
    let slip = match suspect.slip {
        None => "",
        Some(Slip::MetricTurn) => ": one turn of a metric thimble",
        Some(Slip::InchTurn) => ": one turn of an inch thimble",
        Some(Slip::Millimetre) => ": one division of a metric sleeve",
        Some(Slip::TenthOfAnInch) => ": one numbered division of an inch sleeve",
        Some(Slip::MixedUnits) => ": inches and millimetres mixed up",
        Some(Slip::Swapped) => ": along and across the key written for each other",
    };
    let off = Value::new(Kind::Size, Length::from_si(suspect.off_by.si()));
    let [metric, inch] = [System::Metric, System::Inch].map(|system| off.show(system));
    format!("{which}, off by {metric} ({inch}){slip}")
}

fn tool(given: &Given) -> Result<Answer, ReckonError> {
    let (size, system) = (given.quantity("size")?, given.pick("units", &SYSTEMS)?);
    let micrometer = tools::micrometer_for(size, system).map(|range| range.show());
    let gauge = tools::bore_gauge_for(size, system).map(|range| range.show());
    if micrometer.is_none() && gauge.is_none() {
        return Err(not_held("a tool of that size"));
    }
    Ok(given.answer().with("micrometer", micrometer).with("bore_gauge", gauge))
}
