//! Readings that look wrong, and what could have happened.
//!
//! A reading stands apart when it lies further from the median of all than 3.5 robust standard
//! deviations (1.4826 times the median deviation, or half the `±` of a reading when that is
//! larger). Medians are not drawn aside by the one reading that is wrong. A distance that matches a
//! slip of the hand is named with it.

use quantities::{Length, Physical};

use super::Reading;

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
}

/// Which reading looks wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// The reading at this place, from 0.
    Reading(usize),
    /// One of the two: two readings cannot tell which.
    OneOfTwo,
    /// All of them alike, against the size on the drawing.
    All,
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
        _ => apart(readings, corrected, middle),
    };
    if let Some(nominal) = nominal.filter(|nominal| nominal.is_finite() && nominal.si() > 0.0) {
        let slip = slip(middle, nominal.si());
        let off_by = Length::from_si(middle - nominal.si());
        found.extend(slip.map(|slip| Suspect { which: Which::All, off_by, slip: Some(slip) }));
    }
    found
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
