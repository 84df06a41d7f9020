//! Bores and shafts as measured, at 20 °C.

mod form;
mod readings;
mod suspicions;

use mechanics::size::{Contact, Size};
use quantities::{Kind, Length, Limits, Physical, Value};

use super::stage_builder::{StageBuilder, WRITTEN};
use super::{Context, StagePlan};
use crate::Stage;
use crate::file::{End, GaugeReads};
use readings::{Taken, gauge, stations, usual_spread};

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

    pub fn index(self) -> usize {
        usize::from(self == Self::Shaft)
    }

    /// The table of what it was read with.
    fn gauge_key(self) -> &'static str {
        match self {
            Self::Bore => "bore_gauge",
            Self::Shaft => "micrometer",
        }
    }
}

/// The sizes of one end.
#[derive(Clone, Debug, Default)]
pub(super) struct Found {
    pub bore: Option<Size>,
    pub shaft: Option<Size>,
    /// The ± that both share.
    pub shared: Length,
    /// Readings of bore and shaft, those that make the size and those with three points besides.
    taken: [[Option<Taken>; 2]; 2],
    /// What three points found of the bore and of the shaft.
    three_point: [Option<Size>; 2],
}

/// A reading as it is at 20 °C, set right by its standard.
pub(super) struct Corrected<'a> {
    pub station: &'a str,
    /// From the key, clockwise.
    pub degrees: f64,
    /// Points that touch, evenly round.
    pub touches: u8,
    pub size: Length,
    pub spread: Length,
}

impl Found {
    pub fn part(&self, part: Part) -> Option<&Size> {
        match part {
            Part::Bore => self.bore.as_ref(),
            Part::Shaft => self.shaft.as_ref(),
        }
    }

    fn taken(&self, part: Part) -> Option<&Taken> {
        self.taken[part.index()][0].as_ref()
    }

    fn three_point(&self, part: Part) -> Option<&Size> {
        self.three_point[part.index()].as_ref()
    }

    /// Every reading that makes the size of a part.
    pub fn readings(&self, part: Part) -> impl Iterator<Item = Corrected<'_>> {
        corrected(self.taken(part), self.part(part))
    }

    /// What was read with three points besides.
    pub fn by_three_points(&self, part: Part) -> impl Iterator<Item = Corrected<'_>> {
        corrected(self.taken[part.index()][1].as_ref(), self.three_point(part))
    }
}

fn corrected<'a>(
    taken: Option<&'a Taken>,
    size: Option<&'a Size>,
) -> impl Iterator<Item = Corrected<'a>> {
    let touches = match taken.map(|taken| taken.measurement.contact) {
        Some(Contact::ThreePoint) => 3,
        _ => 2,
    };
    let reads = taken.map_or(&[][..], |taken| &taken.reads);
    let sizes = size.map_or(&[][..], |size| &size.corrected);
    reads.iter().zip(sizes).map(move |(read, size)| Corrected {
        station: &read.station,
        degrees: read.degrees,
        touches,
        size: *size,
        spread: read.reading.spread,
    })
}

pub(super) fn found(cx: &Context, end: End) -> Found {
    let [bore, shaft] = Part::BOTH.map(|part| readings::taken(cx, end, part));
    let size = |taken: &Option<Taken>| taken.as_ref()?.measurement.size().ok();
    Found {
        bore: size(&bore[0]),
        shaft: size(&shaft[0]),
        shared: readings::shared(cx, end),
        three_point: [size(&bore[1]), size(&shaft[1])],
        taken: [bore, shaft],
    }
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
            taken += cx.sizes(end).readings(part).count();
            part_numbers(cx, &mut out, end, part);
        }
        suspicions::between_parts(cx, &mut out, end);
        contact(cx, &mut out, end);
        key_asked(cx, &mut out, end);
    }
    said(cx, &mut out, taken);
    let lacking = out.lacking();
    let summary = match (taken, lacking) {
        (0, _) => "nothing measured yet".to_owned(),
        (taken, 0) => format!("{taken} sizes taken"),
        (taken, lacking) => format!("{taken} sizes taken, {lacking} still to measure"),
    };
    out.done(summary)
}

/// What the numbers lean on.
fn said(cx: &Context, out: &mut StageBuilder, taken: usize) {
    let sizes = &cx.file.sizes;
    let own = |end: End| Part::BOTH.into_iter().all(|part| gauge(cx, end, part).spread.is_some());
    if sizes.spread.is_none() && taken > 0 && !End::BOTH.into_iter().all(own) {
        let usual = Value::new(Kind::Allowance, usual_spread(cx, End::Driver, Part::Bore));
        out.note(format!("A reading without a ± of its own is taken as ± {}.", out.show(&usual)));
    }
    if sizes.temperature.is_none() {
        out.missing("sizes.temperature", "temperature of parts and instruments");
        out.note("Without a temperature, sizes are taken as measured at 20 °C (68 °F).");
    }
}

/// "bore, motor hub".
fn words(cx: &Context, end: End, part: Part) -> String {
    match part {
        Part::Bore => format!("bore, {}", cx.hub_name(end)),
        Part::Shaft => format!("shaft, {}", cx.name(end)),
    }
}

fn part_numbers(cx: &Context, out: &mut StageBuilder, end: End, part: Part) {
    let what = words(cx, end, part);
    let id = format!("{}.{}", end.key(), part.key());
    let found = cx.sizes(end);
    let (Some(size), Some(taken)) = (found.part(part), found.taken(part)) else {
        unmeasured(cx, out, end, part);
        return;
    };
    let mean = size.mean.shown(Kind::Size);
    let zone = cx.zone(end, part);
    let spread = parts_of_spread(cx, size);
    let entry = out.number(&id, format!("Mean {what}"), mean).working(size.working()).key();
    match &zone {
        Some((class, limits)) => {
            let first = taken.name(farthest(size));
            let closer = closer(
                cx,
                &mean,
                limits,
                &format!("Take the readings of the {} again, {first} first", part.key()),
            );
            entry
                .second(format!("class {class}; {spread}"))
                .judged(*limits, mend(part))
                .settled_by(closer);
        }
        None => {
            entry.second(spread);
        }
    }
    plus_minus(out, size, &id, &what);
    if let Some((_, limits)) = zone {
        extremes(cx, out, size, taken, &id, &what, limits);
    }
    corrections(out, size, taken, &id, &what);
    form::numbers(out, size, found.three_point(part), &id, &what);
    for suspect in &size.suspects {
        out.note(suspicions::words(cx, end, part, taken, suspect));
    }
}

fn unmeasured(cx: &Context, out: &mut StageBuilder, end: End, part: Part) {
    let (what, gauge) = (words(cx, end, part), gauge(cx, end, part));
    let id = format!("{}.{}", end.key(), part.key());
    if gauge.reads == GaugeReads::Difference
        && gauge.set_on.is_none()
        && !stations(cx, end, part).is_empty()
    {
        let place = format!("sizes.{}.{}.set_on", end.key(), part.gauge_key());
        let of = format!("what the gauge was set on for the {what}");
        out.unmeasured(&id, capital(&what), &place, &of);
        return;
    }
    let place = format!("sizes.{}.{}.1.along", end.key(), part.key());
    out.unmeasured(&id, capital(&what), &place, &what);
}

/// "± 0.0016 from the readings, 0.0018 from setting and temperature".
fn parts_of_spread(cx: &Context, size: &Size) -> String {
    let digits = |length: Length| {
        Value::new(Kind::Allowance, length)
            .with_plus_minus(length.si())
            .plus_minus_digits(cx.system)
    };
    let (random, common) = (digits(size.random), digits(size.common));
    let unit = Value::new(Kind::Allowance, size.random).unit(cx.system);
    match (random, common) {
        (Some(random), Some(common)) if size.common.si() > 0.0 => {
            format!("± {random} {unit} from the readings, {common} from setting and temperature")
        }
        (Some(random), _) => format!("± {random} {unit} from the readings"),
        _ => String::new(),
    }
}

fn plus_minus(out: &mut StageBuilder, size: &Size, id: &str, what: &str) {
    let value = Value::new(Kind::Allowance, size.mean.plus_minus);
    out.number(&format!("{id}.spread"), format!("± of the mean {what}"), value)
        .second("95 %; random part over the number of readings, shared part whole")
        .working(size.spread_working());
}

/// The reading that lies farthest from the mean.
fn farthest(size: &Size) -> usize {
    let off = |length: &Length| (*length - size.mean.value).abs().si();
    let all = size.corrected.iter().enumerate();
    all.max_by(|a, b| off(a.1).total_cmp(&off(b.1))).map_or(0, |(index, _)| index)
}

fn mend(part: Part) -> &'static str {
    match part {
        Part::Bore => {
            "Read the bore once more with a gauge set on a ring near this size. If it stays, whoever bored it bores another, or the maker agrees to it."
        }
        Part::Shaft => {
            "Read the shaft once more with a micrometer set on a standard near this size. If it stays, have the bore made to suit."
        }
    }
}

/// What would settle a number that is too close to call; `doing` says which readings to repeat.
pub(super) fn closer(cx: &Context, value: &Value, limits: &Limits, doing: &str) -> String {
    let needed = quantities::settling(value, limits).unwrap_or(0.0);
    if needed < LEAST_SPREAD_M {
        return format!(
            "It lies on the limit, closer than the ± of any reading in a shop. {doing}; if it stays, take it as outside."
        );
    }
    let needed = Value { si: needed, plus_minus: Some(needed), ..*value };
    let digits = needed.plus_minus_digits(cx.system).unwrap_or_default();
    let unit = needed.unit(cx.system);
    format!("{doing}: a ± of {digits} {unit} or less settles it; until then take it as outside.")
}

/// No gauge in a shop reads closer: half a micrometre (common practice).
const LEAST_SPREAD_M: f64 = 0.5e-6;

/// Least and greatest reading.
fn extremes(
    cx: &Context,
    out: &mut StageBuilder,
    size: &Size,
    taken: &Taken,
    id: &str,
    what: &str,
    limits: Limits,
) {
    for (key, label, length) in
        [("least", "Smallest", size.least), ("greatest", "Largest", size.greatest)]
    {
        let index = size.corrected.iter().position(|one| *one == length).unwrap_or(0);
        let Some(read) = taken.reads.get(index) else { continue };
        let spread = read.reading.spread.si().hypot(size.common.si());
        let value = Value::new(Kind::Size, length).with_plus_minus(spread);
        let name = taken.name(index);
        let closer =
            closer(cx, &value, &limits, &format!("Take the reading at {name} again, three times"));
        let entry = out
            .number(&format!("{id}.{key}"), format!("{label} {what}"), value)
            .second(format!("{name}; one reading"))
            .judged(
                limits,
                format!("Read {name} once more; if it stays, the part is out of its class there."),
            )
            .settled_by(closer);
        if let Some(working) = taken.measurement.reading_working(index) {
            entry.working(working);
        }
    }
}

/// What setting standard and temperature took off.
fn corrections(out: &mut StageBuilder, size: &Size, taken: &Taken, id: &str, what: &str) {
    if let Some(setting) = taken.measurement.setting
        && setting.shift().si() != 0.0
    {
        let value = Value::new(Kind::Allowance, setting.shift());
        out.number(&format!("{id}.setting"), format!("Set right by the standard, {what}"), value)
            .second("added to every reading")
            .working(setting.working());
    }
    let warmth = taken.measurement.temperatures.map(|warmth| warmth.correction(size.mean.value));
    if let Some(correction) = warmth.filter(|warmth| warmth.by.abs().si() >= LEAST_SPREAD_M) {
        out.number(
            &format!("{id}.at_20"),
            format!("Brought to 20 °C, {what}"),
            Value::new(Kind::Allowance, correction.by),
        )
        .second("added to every reading; a warm part reads large, a warm instrument small")
        .working(correction.working());
    }
}

fn contact(cx: &Context, out: &mut StageBuilder, end: End) {
    if cx.taper(end).is_none() {
        return;
    }
    let place = format!("sizes.{}.taper.contact", end.key());
    let Some(contact) = &cx.file.sizes.at(end).taper.contact else {
        out.missing(&place, &format!("part of the taper that shows blue, {}", cx.hub_name(end)));
        return;
    };
    out.number(
        &format!("{}.contact", end.key()),
        format!("Contact by blue, {}", cx.hub_name(end)),
        contact.shown_as(Kind::Percent),
    )
    .second(format!("limit: {}", tables::hub_fits::TAPER_CONTACT_SOURCE))
    .written(WRITTEN)
    .judged(
        Limits::at_least(tables::hub_fits::TAPER_CONTACT),
        "Lap the bore with a lap of the shaft’s taper, never hub on shaft; blue it again.",
    );
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
