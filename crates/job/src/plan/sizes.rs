//! Bores and shafts as measured, at 20 °C.

use mechanics::size::correction::Temperatures;
use mechanics::size::suspects::{Slip, Suspect, Which};
use mechanics::size::{Contact, Direction, Measurement, Reading, Size};
use quantities::{
    Angle, Kind, Length, Limits, Measured, Physical, TemperatureCoefficient, TemperatureInterval,
    Value,
};

use super::stage_builder::StageBuilder;
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::{Bore, End, Named};

/// Bore or shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    Bore,
    Shaft,
}

impl Part {
    pub const BOTH: [Self; 2] = [Self::Bore, Self::Shaft];

    pub fn key(self) -> &'static str {
        match self {
            Self::Bore => "bore",
            Self::Shaft => "shaft",
        }
    }
}

/// The sizes of one end.
#[derive(Clone, Debug, Default)]
pub(super) struct Found {
    pub bore: Option<Size>,
    pub shaft: Option<Size>,
}

impl Found {
    pub fn part(&self, part: Part) -> Option<&Size> {
        match part {
            Part::Bore => self.bore.as_ref(),
            Part::Shaft => self.shaft.as_ref(),
        }
    }
}

/// ± of a reading that has none of its own, when the job gives none either: a micrometer in
/// practised hands (common practice), said in the plan.
const READING_M: f64 = 0.004e-3;
/// ± of the temperatures of part and instrument, and of their expansion (common practice).
const TEMPERATURE_K: f64 = 1.0;
const EXPANSION_PER_K: f64 = 1.0e-6;
const STEEL_PER_K: f64 = 11.5e-6;

pub(super) fn found(cx: &Context, end: End) -> Found {
    Found { bore: size(cx, end, Part::Bore), shaft: size(cx, end, Part::Shaft) }
}

/// Readings by station, of one part at one end.
pub(super) fn stations<'a>(cx: &'a Context, end: End, part: Part) -> &'a Named<Bore> {
    let sizes = cx.file.sizes.at(end);
    match part {
        Part::Bore => &sizes.bore,
        Part::Shaft => &sizes.shaft,
    }
}

fn size(cx: &Context, end: End, part: Part) -> Option<Size> {
    let readings = readings(cx, stations(cx, end, part));
    let nominal = cx.file.sizes.at(end).nominal.as_ref().map(Measured::value);
    let temperatures = temperatures(cx, end, part);
    let measurement =
        Measurement { readings, contact: Contact::TwoPoint, temperatures, setting: None, nominal };
    measurement.size().ok()
}

/// The readings in the order of the hand: station by station, along, across, between.
pub(super) fn readings(cx: &Context, stations: &Named<Bore>) -> Vec<Reading> {
    let mut out = Vec::new();
    for (number, (_, station)) in stations.iter().enumerate() {
        // A station without its depth still has its place in the row.
        let place = f64::from(u32::try_from(number).unwrap_or(0)) * 0.01;
        let depth = station.at.as_ref().map_or(Length::from_si(place), Measured::value);
        let eighth = Direction::At(Angle::from_si(std::f64::consts::FRAC_PI_4));
        for (direction, text) in [
            (Direction::AlongKey, &station.along),
            (Direction::AcrossKey, &station.across),
            (eighth, &station.between),
        ] {
            if let Some(written) = text {
                let spread = written.spread().unwrap_or(usual_spread(cx));
                out.push(Reading { station: depth, direction, size: written.value(), spread });
            }
        }
    }
    out
}

pub(super) fn usual_spread(cx: &Context) -> Length {
    cx.file.sizes.spread.as_ref().map_or(Length::from_si(READING_M), Measured::value)
}

/// Part and instrument as warm as the job says; 20 °C when it says nothing.
fn temperatures(cx: &Context, end: End, part: Part) -> Option<Temperatures> {
    let part_at = cx.file.sizes.temperature.as_ref()?.value();
    let instrument = cx.file.sizes.instrument_temperature.as_ref().map_or(part_at, Measured::value);
    let hub = cx.file.coupling.hub(end);
    let name = if part == Part::Bore { &hub.material } else { &hub.shaft_material };
    let steel = TemperatureCoefficient::from_si(STEEL_PER_K);
    let expansion = tables::materials::material(name).map_or(steel, |material| material.expansion);
    Some(Temperatures {
        part: part_at,
        instrument,
        part_expansion: expansion,
        instrument_expansion: steel,
        spread: TemperatureInterval::from_si(TEMPERATURE_K),
        expansion_spread: TemperatureCoefficient::from_si(EXPANSION_PER_K),
    })
}

pub(super) fn stage(cx: &Context) -> StagePlan {
    let sizes = &cx.file.sizes;
    let mut out = cx.stage(Stage::Sizes, *sizes != crate::file::Sizes::default());
    let mut taken = 0;
    for end in End::BOTH {
        if sizes.at(end).nominal.is_none() {
            let what = format!("nominal size, {} end", cx.name(end));
            out.missing(&format!("sizes.{}.nominal", end.key()), &what);
        }
        for part in Part::BOTH {
            taken += readings(cx, stations(cx, end, part)).len();
            part_numbers(cx, &mut out, end, part);
        }
        key_asked(cx, &mut out, end);
    }
    if sizes.spread.is_none() && taken > 0 {
        let usual = Value::new(Kind::Allowance, usual_spread(cx));
        out.note(format!("No ± was given for the readings: ± {} is used.", out.show(&usual)));
    }
    if sizes.temperature.is_none() {
        out.missing("sizes.temperature", "temperature of parts and instruments");
        out.note("Without a temperature, sizes are taken as measured at 20 °C.");
    }
    let lacking = out.lacking();
    let summary = match (taken, lacking) {
        (0, _) => "nothing measured yet".to_owned(),
        (taken, 0) => format!("{taken} sizes taken"),
        (taken, lacking) => format!("{taken} sizes taken, {lacking} still to measure"),
    };
    out.done(summary)
}

fn part_numbers(cx: &Context, out: &mut StageBuilder, end: End, part: Part) {
    let (key, name) = (part.key(), cx.hub_name(end));
    let what = match part {
        Part::Bore => format!("bore, {name}"),
        Part::Shaft => format!("shaft, {}", cx.name(end)),
    };
    let id = format!("{}.{key}", end.key());
    let Some(size) = cx.sizes(end).part(part) else {
        let place = format!("sizes.{}.{key}.1.along", end.key());
        out.unmeasured(&id, capital(&what), &place, &what);
        return;
    };
    let mean = size.mean.shown(Kind::Size);
    let zone = cx.zone(end, part);
    let entry = out.number(&id, format!("Mean {what}"), mean).working(size.working()).key();
    if let Some((class, limits)) = zone {
        let settle = settle_size(part);
        entry.second(format!("class {class}")).judged(limits, settle);
        extremes(out, size, &id, &what, limits);
    }
    form(out, size, &id, &what);
    for suspect in &size.suspects {
        out.note(suspicion(cx, end, part, suspect));
    }
}

fn settle_size(part: Part) -> &'static str {
    match part {
        Part::Bore => {
            "Measure the bore again with a gauge set on a ring near this size; if it stays, ask whoever bored it."
        }
        Part::Shaft => {
            "Measure the shaft again with a micrometer set on a standard near this size; if it stays, have the bore made to suit."
        }
    }
}

/// Least and greatest reading, where one of them does not share the verdict of the mean.
fn extremes(out: &mut StageBuilder, size: &Size, id: &str, what: &str, limits: Limits) {
    let reading =
        size.random.si() * f64::from(u32::try_from(size.corrected.len()).unwrap_or(1)).sqrt();
    for (key, label, length) in
        [("least", "Smallest", size.least), ("greatest", "Largest", size.greatest)]
    {
        let spread = reading.hypot(size.common.si());
        let value = Value::new(Kind::Size, length).with_plus_minus(spread);
        out.number(&format!("{id}.{key}"), format!("{label} {what}"), value)
            .second("one reading")
            .judged(
                limits,
                "Read this place again; one reading is not as sure as the mean of all.",
            );
    }
}

fn form(out: &mut StageBuilder, size: &Size, id: &str, what: &str) {
    if let Some(taper) = &size.taper {
        let value = taper.over_span.shown(Kind::Allowance);
        let clear = if taper.is_clear() {
            "clear of the ± of the readings"
        } else {
            "no more than the ± of the readings"
        };
        out.number(&format!("{id}.taper"), format!("Taper of the {what}"), value)
            .second(format!("over the stations, towards the far end; {clear}"))
            .working(taper.working());
    }
    if let Some(round) = &size.roundness {
        let value = round.out_of_round.shown(Kind::Allowance);
        out.number(&format!("{id}.round"), format!("Out-of-round of the {what}"), value)
            .second("largest less smallest diameter at one station; a two-point gauge is blind to three lobes");
    }
}

fn suspicion(cx: &Context, end: End, part: Part, suspect: &Suspect) -> String {
    let place = match suspect.which {
        Which::Reading(index) | Which::Station(index) => reading_name(cx, end, part, index),
        Which::OneOfTwo => {
            format!("one of the two readings of the {} at the {}", part.key(), cx.name(end))
        }
        Which::All => format!("every reading of the {} at the {}", part.key(), cx.name(end)),
    };
    let off = Value::new(Kind::Allowance, suspect.off_by).show(cx.system);
    let slip = match suspect.slip {
        Some(Slip::MetricTurn) => ": one turn of a metric thimble",
        Some(Slip::InchTurn) => ": one turn of an inch thimble",
        Some(Slip::Millimetre) => ": one millimetre misread on the sleeve",
        Some(Slip::TenthOfAnInch) => ": a tenth of an inch misread on the sleeve",
        Some(Slip::MixedUnits) => ": millimetres and inches mixed up",
        Some(Slip::Swapped) => ": along and across swapped",
        None => "",
    };
    format!("{} lies {off} from where the others put it{slip}. Read it again.", capital(&place))
}

fn reading_name(cx: &Context, end: End, part: Part, index: usize) -> String {
    let stations = stations(cx, end, part);
    let mut names = Vec::new();
    for (station, readings) in stations {
        for (word, text) in [
            ("along the key", &readings.along),
            ("across the key", &readings.across),
            ("between", &readings.between),
        ] {
            if text.is_some() {
                names.push(format!(
                    "{} at the {}, station {station}, {word}",
                    part.key(),
                    cx.name(end)
                ));
            }
        }
    }
    names.get(index).cloned().unwrap_or_default()
}

fn key_asked(cx: &Context, out: &mut StageBuilder, end: End) {
    let Some(key) = &cx.file.sizes.at(end).key else { return };
    for (field, text, what) in [
        ("width", &key.width, "key width"),
        ("height", &key.height, "key height"),
        ("length", &key.length, "key length"),
    ] {
        if text.is_none() {
            let place = format!("sizes.{}.key.{field}", end.key());
            out.missing(&place, &format!("{what}, {} end", cx.name(end)));
        }
    }
}

pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
