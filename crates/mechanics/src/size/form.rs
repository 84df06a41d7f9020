//! The form that readings show: taper, barrel or waist, out-of-round.
//!
//! Taper and bow are found within each direction, out-of-round within each station
//! (`least_squares`), so that one is not taken for the other. A two-point instrument sees the
//! diameter change with two lobes, `D + A·cos 2(φ − φ0)`, and is blind to three; three contacts at
//! 120° see three lobes and are blind to two.

use quantities::{Angle, Basis, Kind, Length, Physical, Source, Value, Working, root_sum_square};

use super::{Contact, Reading};
use crate::Estimate;
use crate::least_squares::{count_of, within};

/// How the diameter changes along the length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taper {
    /// Change of diameter per length, positive when it grows with the station.
    pub slope: Estimate<Angle>,
    /// The stations' span.
    pub span: Length,
    /// Change of diameter over that span.
    pub over_span: Estimate<Length>,
}

impl Taper {
    /// True when the taper is larger than its `±`.
    pub fn is_clear(&self) -> bool {
        self.slope.value.abs() > self.slope.plus_minus
    }

    /// How it was found.
    pub fn working(&self) -> Working {
        let formula = "t = s·L";
        Working::new(
            "Taper over the length read",
            formula,
            self.over_span.shown(Kind::Allowance),
            LINE,
        )
        .term("s", "slope of the diameter, by least squares", self.slope.shown(Kind::Slope))
        .term("L", "length read over", Value::new(Kind::Length, self.span))
    }
}

/// What the length looks like once the taper is taken out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Profile {
    /// No clear difference.
    Straight,
    /// Larger in the middle.
    Barrel,
    /// Smaller in the middle.
    Waist,
}

/// Middle against ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bow {
    /// Diameter in the middle of the span less the mean of its ends, by the best parabola.
    pub middle_over_ends: Estimate<Length>,
    /// That parabola in the middle of the span, mean of the directions.
    pub middle: Length,
    /// The mean of its ends.
    pub ends: Length,
}

impl Bow {
    /// How it was found.
    pub fn working(&self) -> Working {
        let source =
            Source::new("least squares within each direction", "parabola", Basis::Computed);
        let result = self.middle_over_ends.shown(Kind::Allowance);
        let size = |length| Value::new(Kind::Size, length);
        Working::new("Middle over ends", "D(x) = D0 + t·x + q·x²\nb = M − E", result, source)
            .term("M", "diameter in the middle, by the best parabola", size(self.middle))
            .term("E", "mean of its ends", size(self.ends))
            .valid("above zero: wide in the middle; below: narrow in the middle")
    }

    /// What it amounts to.
    pub fn profile(&self) -> Profile {
        let Estimate { value, plus_minus } = self.middle_over_ends;
        if value.abs() <= plus_minus {
            Profile::Straight
        } else if value > Length::default() {
            Profile::Barrel
        } else {
            Profile::Waist
        }
    }
}

/// How the diameter changes around.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Roundness {
    /// Largest less smallest diameter around; with two directions it is at least this much.
    pub out_of_round: Estimate<Length>,
    /// Where the largest is, from the keyway; `None` when two directions cannot tell.
    pub largest_at: Option<Angle>,
    /// How many lobes the instrument would see: two (oval), or three.
    pub lobes: u8,
    /// How many directions were read.
    pub directions: usize,
    /// With two directions: the diameter in the first and in the second, by least squares.
    pub two: Option<[Length; 2]>,
}

impl Roundness {
    /// How it was found.
    pub fn working(&self) -> Working {
        let (formula, source) = match self.largest_at {
            None => ("o = |A − B|", "two directions, least squares within each depth"),
            Some(_) => ("D(φ) = D0 + A·cos m·(φ − φ0)\no = 2·A", "least squares within each depth"),
        };
        let count = u32::try_from(self.directions).unwrap_or(u32::MAX);
        let source = Source::new(source, "", Basis::Computed);
        let half = Length::from_si(self.out_of_round.value.si() / 2.0);
        let working = Working::new(
            "Out of round",
            formula,
            self.out_of_round.shown(Kind::Allowance),
            source,
        )
        .term("n", "directions read", Value::count(count))
        .term("m", "lobes that are seen", Value::count(u32::from(self.lobes)))
        .valid("an instrument of two points cannot see three lobes, one of three cannot see two");
        let size = |length| Value::new(Kind::Size, length);
        let working = match self.two {
            None => working,
            Some([first, second]) => working
                .term("A", "diameter in the first direction", size(first))
                .term("B", "diameter in the second", size(second)),
        };
        match self.largest_at {
            None => working,
            Some(angle) => working
                .term("A", "half of the change", Value::new(Kind::Allowance, half))
                .term("φ0", "where the largest is", Value::new(Kind::Degrees, angle)),
        }
    }

    /// The lobes that this instrument cannot see, however many directions are read.
    pub fn blind_to(&self) -> u8 {
        5 - self.lobes
    }
}

/// The `±` of one reading, as the root mean square of them all.
fn typical(readings: &[Reading]) -> f64 {
    root_sum_square(readings.iter().map(|r| r.spread.si())) / count_of(readings.len()).sqrt()
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / count_of(values.len())
}

/// The mean of one column.
fn mean_of<const K: usize>(rows: &[[f64; K]], column: usize) -> f64 {
    rows.iter().map(|row| row[column]).sum::<f64>() / count_of(rows.len())
}

/// Numbers every different value in the order met; two within `same` are one.
fn groups(values: &[f64], same: f64) -> (Vec<usize>, usize) {
    let mut seen: Vec<f64> = Vec::new();
    let numbers = values.iter().map(|&value| {
        seen.iter().position(|&other| (other - value).abs() <= same).unwrap_or_else(|| {
            seen.push(value);
            seen.len() - 1
        })
    });
    let numbers = numbers.collect();
    (numbers, seen.len())
}

/// How many lobes the instrument sees, and so how often in a turn it finds the same place.
fn lobes(contact: Contact) -> u8 {
    match contact {
        Contact::TwoPoint => 2,
        Contact::ThreePoint => 3,
    }
}

/// Directions as angles of one period: half a turn across two points, a third with three.
fn phases(readings: &[Reading], contact: Contact) -> Vec<f64> {
    let period = std::f64::consts::TAU / f64::from(lobes(contact));
    let phase = |r: &Reading| {
        let phase = r.direction.angle().si().rem_euclid(period);
        if period - phase < SAME_ANGLE { 0.0 } else { phase }
    };
    readings.iter().map(phase).collect()
}

const SAME_ANGLE: f64 = 1e-6;
const SAME_STATION_M: f64 = 1e-7;

fn span_and_middle(readings: &[Reading]) -> (f64, f64) {
    let stations = readings.iter().map(|r| r.station.si());
    let (low, high) = stations
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), x| (low.min(x), high.max(x)));
    (high - low, f64::midpoint(low, high))
}

pub(super) fn taper(contact: Contact, readings: &[Reading], corrected: &[f64]) -> Option<Taper> {
    let (span, middle) = span_and_middle(readings);
    if span <= SAME_STATION_M {
        return None;
    }
    let (directions, _) = groups(&phases(readings, contact), SAME_ANGLE);
    let x: Vec<[f64; 1]> = readings.iter().map(|r| [(r.station.si() - middle) / span]).collect();
    let fit = within(&directions, &x, corrected)?;
    let (over, spread) = (fit.coefficients[0], fit.spread(0, typical(readings)));
    Some(Taper {
        slope: Estimate::new(Angle::from_si(over / span), Angle::from_si(spread / span)),
        span: Length::from_si(span),
        over_span: Estimate::new(Length::from_si(over), Length::from_si(spread)),
    })
}

pub(super) fn bow(contact: Contact, readings: &[Reading], corrected: &[f64]) -> Option<Bow> {
    let (span, middle) = span_and_middle(readings);
    if span <= SAME_STATION_M {
        return None;
    }
    let (directions, _) = groups(&phases(readings, contact), SAME_ANGLE);
    let row = |r: &Reading| {
        let x = 2.0 * (r.station.si() - middle) / span;
        [x, -x * x]
    };
    let x: Vec<[f64; 2]> = readings.iter().map(row).collect();
    let fit = within(&directions, &x, corrected)?;
    let (value, spread) = (fit.coefficients[1], fit.spread(1, typical(readings)));
    let middle = mean(corrected) - fit.coefficients[0] * mean_of(&x, 0) - value * mean_of(&x, 1);
    Some(Bow {
        middle_over_ends: Estimate::new(Length::from_si(value), Length::from_si(spread)),
        middle: Length::from_si(middle),
        ends: Length::from_si(middle - value),
    })
}

pub(super) fn roundness(
    contact: Contact,
    readings: &[Reading],
    corrected: &[f64],
) -> Option<Roundness> {
    let lobes = lobes(contact);
    let phases = phases(readings, contact);
    let (numbers, directions) = groups(&phases, SAME_ANGLE);
    let stations: Vec<f64> = readings.iter().map(|r| r.station.si()).collect();
    let (planes, _) = groups(&stations, SAME_STATION_M);
    let reading = typical(readings);
    if directions < 3 {
        let x: Vec<[f64; 1]> = numbers.iter().map(|&number| [count_of(number)]).collect();
        let fit = within(&planes, &x, corrected)?;
        let second_over_first = fit.coefficients[0];
        let first = mean(corrected) - second_over_first * mean_of(&x, 0);
        return Some(Roundness {
            out_of_round: Estimate::new(
                Length::from_si(second_over_first.abs()),
                Length::from_si(fit.spread(0, reading)),
            ),
            largest_at: None,
            lobes,
            directions,
            two: Some([first, first + second_over_first].map(Length::from_si)),
        });
    }
    let row = |phase: &f64| {
        let (sine, cosine) = (f64::from(lobes) * phase).sin_cos();
        [cosine, sine]
    };
    let x: Vec<[f64; 2]> = phases.iter().map(row).collect();
    let fit = within(&planes, &x, corrected)?;
    let [cosine, sine] = fit.coefficients;
    let spread = 2.0 * fit.spread(0, reading).max(fit.spread(1, reading));
    Some(Roundness {
        out_of_round: Estimate::new(
            Length::from_si(2.0 * cosine.hypot(sine)),
            Length::from_si(spread),
        ),
        largest_at: Some(Angle::from_si(sine.atan2(cosine) / f64::from(lobes))),
        lobes,
        directions,
        two: None,
    })
}

const LINE: Source = Source::new(
    "least squares within each direction",
    "± from that of the readings, or from their scatter when it is larger",
    Basis::Computed,
);
