//! Readings that look wrong, and what could have happened. Nothing is mended here: the hand that
//! holds the micrometer reads again.

use mechanics::size::suspects::{Slip, Suspect, Which};
use quantities::{Kind, Limits, Physical, Value};

use super::readings::Taken;
use super::{Context, Part, StageBuilder, capital};
use crate::file::End;

/// A reading that lies this near to the other end's nominal size, and farther from its own, may
/// belong there.
const NEAR_M: f64 = 0.3e-3;

pub(super) fn words(
    cx: &Context,
    end: End,
    part: Part,
    taken: &Taken,
    suspect: &Suspect,
) -> String {
    let (what, name) = (part.key(), cx.name(end));
    let place = match suspect.which {
        Which::Reading(index) | Which::Far(index) => {
            format!("{what} at the {name}, {}", taken.name(index))
        }
        Which::Station(index) => {
            let station = taken.reads.get(index).map_or("", |read| read.station.as_str());
            format!("{what} at the {name}, station {station}, all of its readings")
        }
        Which::OneOfTwo => format!("one of the two readings of the {what} at the {name}"),
        Which::All => format!("every reading of the {what} at the {name}"),
    };
    let off = Value::new(Kind::Allowance, suspect.off_by.abs()).show(cx.system);
    let over = if suspect.off_by.si() > 0.0 { "over" } else { "under" };
    if suspect.slip == Some(Slip::Swapped) {
        return format!(
            "{}: wide where the other stations are narrow. Were along and across swapped? Read both again.",
            capital(&place)
        );
    }
    let from = match suspect.which {
        Which::All | Which::Far(_) => "the nominal size",
        _ => "where the others put it",
    };
    let slip = slip(suspect.slip, suspect.which);
    let elsewhere = elsewhere(cx, end, taken, suspect);
    format!(
        "{} {} {off} {over} {from}{slip}. {elsewhere}Read it again; as it stands it counts.",
        capital(&place),
        if matches!(suspect.which, Which::Station(_)) { "lie" } else { "lies" }
    )
}

fn slip(slip: Option<Slip>, which: Which) -> &'static str {
    match (slip, which) {
        (Some(Slip::MetricTurn), _) => ": one turn of a metric thimble, 0.5 mm",
        (Some(Slip::InchTurn), _) => ": one turn of an inch thimble, 0.025 in",
        (Some(Slip::Millimetre), _) => ": one millimetre misread on the sleeve",
        (Some(Slip::TenthOfAnInch), _) => ": a tenth of an inch misread on the sleeve",
        (Some(Slip::MixedUnits), _) => ": millimetres and inches mixed up",
        (None, Which::Station(_)) => ": were they taken in another bore, or at another depth?",
        (Some(Slip::Swapped) | None, _) => "",
    }
}

/// Says when a reading fits the other end's bore and shaft.
fn elsewhere(cx: &Context, end: End, taken: &Taken, suspect: &Suspect) -> String {
    let (Which::Reading(index) | Which::Station(index) | Which::Far(index)) = suspect.which else {
        return String::new();
    };
    let other = cx.file.sizes.at(end.other()).nominal.as_ref();
    let (Some(read), Some(other)) = (taken.reads.get(index), other) else { return String::new() };
    let off = (read.reading.size - other.value()).abs().si();
    if off < NEAR_M && suspect.off_by.abs().si() > 2.0 * NEAR_M {
        format!("It would suit the {}. ", cx.name(end.other()))
    } else {
        String::new()
    }
}

/// Bore and shaft that would suit each other's zones: written in each other's place?
pub(super) fn between_parts(cx: &Context, out: &mut StageBuilder, end: End) {
    let sizes = cx.sizes(end);
    let (Some(bore), Some(shaft)) = (&sizes.bore, &sizes.shaft) else { return };
    let zone = |part| cx.zone(end, part).map(|(_, limits)| limits);
    let (Some(hole), Some(pin)) = (zone(Part::Bore), zone(Part::Shaft)) else { return };
    let lies = |limits: &Limits, si: f64| {
        limits.least.is_none_or(|least| si >= least)
            && limits.greatest.is_none_or(|most| si <= most)
    };
    let (bore, shaft) = (bore.mean.value.si(), shaft.mean.value.si());
    let as_written = lies(&hole, bore) || lies(&pin, shaft);
    if !as_written && lies(&hole, shaft) && lies(&pin, bore) {
        out.note(format!(
            "At the {}, the bore measures as the shaft should and the shaft as the bore should: were they written in each other’s place?",
            cx.name(end)
        ));
    }
}
