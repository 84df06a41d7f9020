//! Readings that look wrong, and what could have happened.
//!
//! A reading stands apart when it lies further from the median of all than 3.5 robust standard
//! deviations (1.4826 times the median deviation, or half the `±` of a reading when that is
//! larger). Medians are not drawn aside by the one reading that is wrong. A distance that matches a
//! slip of the hand is named with it. Where all readings of one station stand apart alike, the station
//! is named: its readings may belong elsewhere. A station that is wide where all others are narrow
//! may have its two directions swapped. And a reading further from the size on the drawing than any
//! wear was taken elsewhere, or with the unit mistaken, however well others agree with it.

use quantities::{Length, Physical, root_sum_square};

use super::{Direction, Reading};

/// Slips that leave their size behind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// One turn of a metric thimble: 0.5 mm.
    MetricTurn,
    /// One turn of an inch thimble: 0.025 in.
    InchTurn,
    /// One division of a metric sleeve: 1 mm.
    Millimetre,
    /// One numbered division of an inch sleeve: 0.1 in.
    TenthOfAnInch,
    /// Millimetres written as inches, or the reverse: a factor of 25.4.
    MixedUnits,
    /// The reading along the key written as the one across it, and the reverse.
    Swapped,
}

/// Which reading looks wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// The reading at this place, from 0.
    Reading(usize),
    /// All readings of the station of the reading at this place, from 0.
    Station(usize),
    /// One of the two: two readings cannot tell which.
    OneOfTwo,
    /// All of them alike, against the size on the drawing.
    All,
    /// The reading at this place, from 0, against the size on the drawing.
    Far(usize),
}

/// A reading that looks wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suspect {
    /// Which.
    pub which: Which,
    /// How far it lies from where the others put it.
    pub off_by: Length,
    /// What could have happened, if its distance matches a slip.
    pub slip: Option<Slip>,
}

/// Robust standard deviations that a reading may lie from the median (Iglewicz and Hoaglin's 3.5).
const APART: f64 = 3.5;
/// How near a distance must come to that of a slip: form and scatter lie well within it, and half
/// a millimetre and 0.025 in are still told apart.
const NEAR_M: f64 = 0.05e-3;

pub(super) fn find(
    readings: &[Reading],
    corrected: &[f64],
    nominal: Option<Length>,
) -> Vec<Suspect> {
    let middle = median(corrected.to_vec());
    let mut found = match corrected {
        &[first, second] => pair(first, second),
        _ => whole_stations(readings, &apart(readings, corrected, middle)),
    };
    found.extend(swapped(readings, corrected));
    if let Some(nominal) = nominal.filter(|nominal| nominal.is_finite() && nominal.si() > 0.0) {
        let slip = slip(middle, nominal.si());
        let off_by = Length::from_si(middle - nominal.si());
        let all_far = corrected.iter().all(|size| is_far(*size, nominal.si()));
        if slip.is_some() || all_far {
            found.push(Suspect { which: Which::All, off_by, slip });
        } else {
            let far = far(corrected, nominal.si(), |index| named(readings, &found, index));
            found.extend(far);
        }
    }
    found
}

/// No bore or shaft that is still one lies further from its nominal size than this part of it: a rule
/// of our own.
const FAR: f64 = 0.02;

fn is_far(size: f64, nominal: f64) -> bool {
    (size / nominal - 1.0).abs() > FAR
}

/// Readings far from the nominal size that are not suspected already.
fn far(corrected: &[f64], nominal: f64, known: impl Fn(usize) -> bool) -> Vec<Suspect> {
    let each = corrected.iter().enumerate();
    each.filter(|(index, size)| is_far(**size, nominal) && !known(*index))
        .map(|(index, size)| Suspect {
            which: Which::Far(index),
            off_by: Length::from_si(size - nominal),
            slip: slip(*size, nominal),
        })
        .collect()
}

/// True for a reading that is suspected by itself or with its station.
fn named(readings: &[Reading], found: &[Suspect], index: usize) -> bool {
    found.iter().any(|suspect| match suspect.which {
        Which::Reading(place) => place == index,
        Which::Station(place) => places(readings, readings[place].station).contains(&index),
        _ => false,
    })
}

/// Two readings: only a distance that matches a slip says anything.
fn pair(first: f64, second: f64) -> Vec<Suspect> {
    let suspect = |slip| Suspect {
        which: Which::OneOfTwo,
        off_by: Length::from_si(second - first),
        slip: Some(slip),
    };
    slip(second, first).map(suspect).into_iter().collect()
}

fn apart(readings: &[Reading], corrected: &[f64], middle: f64) -> Vec<Suspect> {
    let deviations = corrected.iter().map(|size| (size - middle).abs()).collect();
    let scatter = 1.4826 * median(deviations);
    let suspect = |(index, (&size, reading)): (usize, (&f64, &Reading))| {
        let allowed = APART * scatter.max(reading.spread.si() / 2.0).max(middle * 1e-12);
        ((size - middle).abs() > allowed).then(|| Suspect {
            which: Which::Reading(index),
            off_by: Length::from_si(size - middle),
            slip: slip(size, middle),
        })
    };
    corrected.iter().zip(readings).enumerate().filter_map(suspect).collect()
}

/// Where every reading of a station stands apart by about the same, one suspect for all of them.
fn whole_stations(readings: &[Reading], found: &[Suspect]) -> Vec<Suspect> {
    let mut out: Vec<Suspect> = Vec::new();
    for suspect in found {
        let Which::Reading(index) = suspect.which else { continue };
        let station = readings[index].station;
        let own: Vec<usize> = places(readings, station);
        let alike = |other: &&Suspect| {
            matches!(other.which, Which::Reading(place) if own.contains(&place))
                && (other.off_by - suspect.off_by).abs().si() <= NEAR_M
        };
        let all = own.len() > 1 && found.iter().filter(alike).count() == own.len();
        let which = if all { Which::Station(own[0]) } else { suspect.which };
        if !out.iter().any(|known| known.which == which) {
            out.push(Suspect { which, ..*suspect });
        }
    }
    out
}

/// Places of the readings at a station.
fn places(readings: &[Reading], station: Length) -> Vec<usize> {
    let here = |reading: &Reading| (reading.station - station).abs().si() <= SAME_STATION_M;
    readings.iter().enumerate().filter(|(_, reading)| here(reading)).map(|(i, _)| i).collect()
}

const SAME_STATION_M: f64 = 1e-7;

/// A station that is wide one way where all the others, two at least, are wide the other way, each
/// clear of the `±` of its two readings.
fn swapped(readings: &[Reading], corrected: &[f64]) -> Vec<Suspect> {
    let along = readings.iter().enumerate().filter(|(_, r)| r.direction == Direction::AlongKey);
    let pairs: Vec<(usize, f64, f64)> = along
        .filter_map(|(index, reading)| {
            let across = places(readings, reading.station)
                .into_iter()
                .find(|&place| readings[place].direction == Direction::AcrossKey)?;
            let spread = root_sum_square([reading.spread.si(), readings[across].spread.si()]);
            Some((index, corrected[index] - corrected[across], spread))
        })
        .collect();
    if pairs.len() < 3 || pairs.iter().any(|(_, wide, spread)| wide.abs() <= *spread) {
        return Vec::new();
    }
    let positive = pairs.iter().filter(|(_, wide, _)| *wide > 0.0).count();
    let lone = match (positive, pairs.len() - positive) {
        (1, _) => pairs.iter().find(|(_, wide, _)| *wide > 0.0),
        (_, 1) => pairs.iter().find(|(_, wide, _)| *wide < 0.0),
        _ => None,
    };
    let suspect = |&(index, wide, _): &(usize, f64, f64)| Suspect {
        which: Which::Station(index),
        off_by: Length::from_si(wide),
        slip: Some(Slip::Swapped),
    };
    lone.map(suspect).into_iter().collect()
}

/// The slip that would make `found` out of `wanted`.
fn slip(found: f64, wanted: f64) -> Option<Slip> {
    let distance = (found - wanted).abs();
    let steps = [
        (Slip::MetricTurn, 0.5e-3),
        (Slip::InchTurn, 0.025 * 0.0254),
        (Slip::Millimetre, 1.0e-3),
        (Slip::TenthOfAnInch, 0.1 * 0.0254),
    ];
    let ratio = if found > wanted { found / wanted } else { wanted / found };
    if (ratio / 25.4 - 1.0).abs() < 0.02 {
        return Some(Slip::MixedUnits);
    }
    steps.into_iter().find(|(_, step)| (distance - step).abs() <= NEAR_M).map(|(slip, _)| slip)
}

/// The middle of the numbers; zero of none.
fn median(mut numbers: Vec<f64>) -> f64 {
    numbers.sort_by(f64::total_cmp);
    let half = numbers.len() / 2;
    match (numbers.get(half), numbers.len() % 2) {
        (Some(&middle), 1) => middle,
        (Some(&above), _) => f64::midpoint(numbers[half - 1], above),
        (None, _) => 0.0,
    }
}
