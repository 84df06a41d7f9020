//! The readings of one bore or shaft as they were written, and what they were read with.

use mechanics::Estimate;
use mechanics::size::correction::{Setting, Temperatures};
use mechanics::size::{Contact, Direction, Measurement, Reading};
use quantities::{
    Angle, Length, Measured, Physical, TemperatureCoefficient, TemperatureInterval, root_sum_square,
};

use super::{Context, Part};
use crate::check::angle;
use crate::file::{Bore, End, Gauge, GaugeReads, Named, Points};

/// ± of a reading that has none of its own, when the job gives none either: a micrometer in
/// practised hands (common practice), said in the plan.
const READING_M: f64 = 0.004e-3;
/// ± of the temperatures of part and instrument, and of their expansion (common practice).
const TEMPERATURE_K: f64 = 1.0;
const EXPANSION_PER_K: f64 = 1.0e-6;
/// Expansion of steel instruments, and of a part whose material nobody gave (common practice).
const STEEL_PER_K: f64 = 11.5e-6;

/// One reading and where it was taken.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Read {
    /// "3".
    pub station: String,
    /// "across the key", "at 30° to the key".
    pub way: String,
    /// From the key, clockwise.
    pub degrees: f64,
    /// What the instrument gave; a difference is brought to a size.
    pub reading: Reading,
}

/// All of them, and the measurement that they make.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Taken {
    pub reads: Vec<Read>,
    pub measurement: Measurement,
}

impl Taken {
    fn new(cx: &Context, end: End, part: Part, reads: Vec<Read>, contact: Contact) -> Self {
        let readings = reads.iter().map(|read| read.reading).collect();
        let nominal = cx.file.sizes.at(end).nominal.as_ref().map(Measured::value);
        let measurement = Measurement {
            readings,
            contact,
            temperatures: temperatures(cx, end, part),
            setting: setting(cx, end, part),
            // A taper's readings lie beside the nominal size by design.
            nominal: nominal.filter(|_| cx.taper(end).is_none()),
        };
        Self { reads, measurement }
    }

    /// "station 3, across the key".
    pub fn name(&self, index: usize) -> String {
        let read = self.reads.get(index);
        read.map_or_else(String::new, |read| format!("station {}, {}", read.station, read.way))
    }
}

/// What the part was read with.
pub(super) fn gauge<'a>(cx: &'a Context, end: End, part: Part) -> &'a Gauge {
    let sizes = cx.file.sizes.at(end);
    match part {
        Part::Bore => &sizes.bore_gauge,
        Part::Shaft => &sizes.micrometer,
    }
}

/// Readings by station, of one part at one end.
pub(super) fn stations<'a>(cx: &'a Context, end: End, part: Part) -> &'a Named<Bore> {
    let sizes = cx.file.sizes.at(end);
    match part {
        Part::Bore => &sizes.bore,
        Part::Shaft => &sizes.shaft,
    }
}

/// Readings across two points, and those with three. Without any across two, those with three make
/// the size.
pub(super) fn taken(cx: &Context, end: End, part: Part) -> [Option<Taken>; 2] {
    let mut reads: [Vec<Read>; 2] = Default::default();
    let Some(offset) = offset(gauge(cx, end, part)) else { return [None, None] };
    for (number, (name, station)) in stations(cx, end, part).iter().enumerate() {
        // A station without its depth still has its place in the row.
        let place = f64::from(u32::try_from(number).unwrap_or(0)) * 0.01;
        let depth = station.at.as_ref().map_or(Length::from_si(place), Measured::value);
        let at = Station { name, depth, offset, spread: usual_spread(cx, end, part) };
        at.two_points(station, &mut reads[0]);
        at.turned(&station.three_point, &mut reads[1]);
    }
    let contact = match gauge(cx, end, part).points {
        Points::Two => Contact::TwoPoint,
        Points::Three => Contact::ThreePoint,
    };
    let [two, three] = reads;
    let made = |reads: Vec<Read>, contact| {
        (!reads.is_empty()).then(|| Taken::new(cx, end, part, reads, contact))
    };
    match made(two, contact) {
        None => [made(three, Contact::ThreePoint), None],
        two => [two, made(three, Contact::ThreePoint)],
    }
}

/// What is added to a reading to make a size of it; `None` for differences from nothing.
fn offset(gauge: &Gauge) -> Option<Length> {
    match gauge.reads {
        GaugeReads::Size => Some(Length::default()),
        GaugeReads::Difference => gauge.set_on.as_ref().map(Measured::value),
    }
}

/// One station.
struct Station<'a> {
    name: &'a str,
    depth: Length,
    offset: Length,
    spread: Length,
}

impl Station<'_> {
    /// In the order of the hand: along, across, between, then around.
    fn two_points(&self, station: &Bore, out: &mut Vec<Read>) {
        let eighth = Direction::At(Angle::from_si(std::f64::consts::FRAC_PI_4));
        for (direction, text, way, degrees) in [
            (Direction::AlongKey, &station.along, "along the key", 0.0),
            (Direction::AcrossKey, &station.across, "across the key", 90.0),
            (eighth, &station.between, "between", 45.0),
        ] {
            if let Some(written) = text {
                out.push(self.read(written, direction, way.to_owned(), degrees));
            }
        }
        self.turned(&station.around, out);
    }

    fn turned(&self, named: &Named<Measured<Length>>, out: &mut Vec<Read>) {
        let mut turned: Vec<(f64, &Measured<Length>)> =
            named.iter().filter_map(|(name, read)| Some((angle(name)?, read))).collect();
        turned.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (degrees, written) in turned {
            let direction = Direction::At(Angle::from_si(degrees.to_radians()));
            out.push(self.read(written, direction, format!("at {degrees}° to the key"), degrees));
        }
    }

    fn read(
        &self,
        written: &Measured<Length>,
        direction: Direction,
        way: String,
        degrees: f64,
    ) -> Read {
        let reading = Reading {
            station: self.depth,
            direction,
            size: written.value() + self.offset,
            spread: written.spread().unwrap_or(self.spread),
        };
        Read { station: self.name.to_owned(), way, degrees, reading }
    }
}

/// ± of a reading that has none of its own.
pub(super) fn usual_spread(cx: &Context, end: End, part: Part) -> Length {
    let own = gauge(cx, end, part).spread.as_ref().or(cx.file.sizes.spread.as_ref());
    own.map_or(Length::from_si(READING_M), Measured::value)
}

/// What the instrument was set on. A gauge set on the micrometer has that one's own error as well.
fn setting(cx: &Context, end: End, part: Part) -> Option<Setting> {
    let gauge = gauge(cx, end, part);
    let set_on = gauge.set_on.as_ref()?;
    let own = set_on.spread().map_or(0.0, Physical::si);
    let shared = if part == Part::Bore { shared(cx, end).si() } else { 0.0 };
    let spread = Length::from_si(root_sum_square([own, shared]));
    let standard = Estimate::new(set_on.value(), spread);
    let read = match gauge.reads {
        GaugeReads::Size => gauge.read_there.as_ref().map_or(standard.value, Measured::value),
        GaugeReads::Difference => standard.value,
    };
    Some(Setting { standard, read })
}

/// The ± that bore and shaft share, where the bore gauge was set on the shaft's micrometer: that of
/// the standard which the micrometer was set on.
pub(super) fn shared(cx: &Context, end: End) -> Length {
    let sizes = cx.file.sizes.at(end);
    let linked = sizes.gauge_on_micrometer == Some(true);
    let standard = sizes.micrometer.set_on.as_ref().filter(|_| linked);
    standard.and_then(Measured::spread).unwrap_or_default()
}

/// Part and instrument as warm as the job says; 20 °C when it says nothing.
fn temperatures(cx: &Context, end: End, part: Part) -> Option<Temperatures> {
    let (sizes, gauge) = (&cx.file.sizes, gauge(cx, end, part));
    let part_at = gauge.part_temperature.as_ref().or(sizes.temperature.as_ref());
    let instrument = gauge.temperature.as_ref().or(sizes.instrument_temperature.as_ref());
    let part_at = part_at.or(instrument)?.value();
    let instrument = instrument.map_or(part_at, Measured::value);
    let metal = match part {
        Part::Bore => cx.hub_metal(end),
        Part::Shaft => cx.shaft_metal(end),
    };
    let steel = TemperatureCoefficient::from_si(STEEL_PER_K);
    Some(Temperatures {
        part: part_at,
        instrument,
        part_expansion: metal.map_or(steel, |metal| metal.expansion),
        instrument_expansion: steel,
        spread: TemperatureInterval::from_si(TEMPERATURE_K),
        expansion_spread: TemperatureCoefficient::from_si(EXPANSION_PER_K),
    })
}
