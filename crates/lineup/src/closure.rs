//! Is a sweep to be believed? Closure, return to zero, repeats, and the reading that doesn't fit.
//!
//! Four readings a quarter turn apart on two straight shafts close: r12 + r6 = r3 + r9, with or
//! without sag, since each cosine and sine cancels against its opposite. The sum of four readings
//! of standard uncertainty u has standard uncertainty 2u. A sweep that does not close is never
//! put right here; the single slips that would make it close are named for the reader to look at.
//! Swapping 3 and 9 changes no closure and cannot be found this way.

use quantities::{Basis, Kind, Length, Limits, Physical, Source, Value, Verdict, Working, judge};

use crate::Estimate;
use crate::clock::Clock;
use crate::dial::{Dial, DialError};

/// One turn of the pointer of the dials in use: 1 mm, 0.1 in, 0.05 in. Common practice.
const TURNS_M: [f64; 3] = [1e-3, 2.54e-3, 1.27e-3];

/// A standardised residual above this names its reading; a rule of our own.
const ODD: f64 = 3.0;
/// The odd one must stand out from the next by this factor, or none is named; a rule of our own.
const STANDS_OUT: f64 = 1.25;

/// The closure of four readings a quarter turn apart.
#[derive(Clone, Debug, PartialEq)]
pub struct Closure {
    /// The first of the four positions; the rest follow clockwise.
    pub from: Clock,
    /// Readings at the four positions, repeats averaged.
    pub readings: [Length; 4],
    /// First plus third, minus second and fourth.
    pub sum: Estimate<Length>,
}

impl Closure {
    /// Against a limit on its size, 0.05 mm or 0.002 in by common practice.
    pub fn verdict(&self, limit: Length) -> Verdict {
        judge(&self.sum.shown(Kind::Offset), &Limits::between(-limit.si(), limit.si()))
    }

    /// How it was found.
    pub fn working(&self) -> Working {
        let shown = |length| Value::new(Kind::Offset, length);
        let [first, second, third, fourth] = self.readings;
        let named = |quarters| format!("reading at {}", self.from.quarters_on(quarters));
        Working::new(
            "Closure of the sweep",
            "e = r1 + r3 − r2 − r4",
            self.sum.shown(Kind::Offset),
            Source::new("US Bureau of Reclamation, FIST 2-1", "page 22", Basis::Read),
        )
        .term("r1", named(0), shown(first))
        .term("r2", named(1), shown(second))
        .term("r3", named(2), shown(third))
        .term("r4", named(3), shown(fourth))
        .valid("shafts, with or without sag; not the form of one surface")
    }
}

/// Every closure in the sweep: one for four readings, two for eight.
///
/// # Errors
/// [`DialError`] for a sweep that is none.
pub fn closures(dial: &Dial) -> Result<Vec<Closure>, DialError> {
    dial.points()?;
    let all = dial.all_readings();
    let u = dial.standard_uncertainty();
    let mean_at = |clock: Clock| {
        let here = all.iter().filter(|reading| reading.clock.is(clock));
        let (sum, count) = here.fold((0.0, 0.0), |(s, n), r| (s + r.value.si(), n + 1.0));
        (count > 0.0).then(|| (sum / count, u * u / count))
    };
    let mut found: Vec<Closure> = Vec::new();
    for from in all.iter().map(|reading| reading.clock).filter(|clock| clock.degrees() < 89.99) {
        let four: Option<Vec<(f64, f64)>> =
            (0..4).map(|quarters| mean_at(from.quarters_on(quarters))).collect();
        let Some(four) = four else { continue };
        if found.iter().any(|closure| closure.from.is(from)) {
            continue;
        }
        let sum = four[0].0 + four[2].0 - four[1].0 - four[3].0;
        let variance: f64 = four.iter().map(|(_, variance)| variance).sum();
        let readings = [0, 1, 2, 3].map(|i| Length::from_si(four[i].0));
        found.push(Closure { from, readings, sum: Estimate::from_standard(sum, variance.sqrt()) });
    }
    found.sort_by(|a, b| a.from.degrees().total_cmp(&b.from.degrees()));
    Ok(found)
}

/// One change that would make a sweep close.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Slip {
    /// This reading has the wrong sign.
    Sign(Clock),
    /// These two readings were booked in each other's place.
    Swapped(Clock, Clock),
    /// This reading is out by a whole turn of the pointer; add this to it.
    Turn(Clock, Length),
}

/// The slips of which any one alone would make the closure lie within the limit; none when it
/// already does. The reading at the position that was set to zero is not suspected.
///
/// With r12 = 0, bottom and one side swapped looks exactly like a wrong sign at the other side:
/// then both are named.
pub fn likely_slips(closure: &Closure, zero: Option<Clock>, limit: Length) -> Vec<Slip> {
    let within = |sum: f64| sum.abs() <= limit.si();
    let sum = closure.sum.value.si();
    if within(sum) || !sum.is_finite() {
        return Vec::new();
    }
    let clocks = [0, 1, 2, 3].map(|quarters| closure.from.quarters_on(quarters));
    let signs = [1.0, -1.0, 1.0, -1.0];
    let values = closure.readings.map(Physical::si);
    let mut slips = Vec::new();
    let is_zero = |i: usize| zero.is_some_and(|zero| zero.is(clocks[i]));
    for i in (0..4).filter(|i| !is_zero(*i)) {
        if within(sum - 2.0 * signs[i] * values[i]) {
            slips.push(Slip::Sign(clocks[i]));
        }
        for turn in TURNS_M.into_iter().flat_map(|turn| [turn, -turn]) {
            if within(sum + signs[i] * turn) {
                slips.push(Slip::Turn(clocks[i], Length::from_si(turn)));
            }
        }
    }
    for (i, j) in [(0, 1), (0, 3), (2, 1), (2, 3)] {
        let closes = within(sum - 2.0 * signs[i] * (values[i] - values[j]));
        if closes && !is_zero(i) && !is_zero(j) {
            slips.push(Slip::Swapped(clocks[i], clocks[j]));
        }
    }
    slips
}

/// A reading that does not fit the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OddReading {
    /// Where it was taken.
    pub clock: Clock,
    /// What was read.
    pub read: Length,
    /// How far it lies from the circle through all of them.
    pub off_by: Length,
    /// The same over its own standard uncertainty.
    pub standardised: f64,
}

/// All that can be said of a sweep from itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// Closures; empty when no four readings stand a quarter turn apart.
    pub closures: Vec<Closure>,
    /// Reading on coming back, minus the reading at the zero position.
    pub return_to_zero: Option<Estimate<Length>>,
    /// Standard deviation of one reading from repeats at one position, and its degrees of freedom.
    pub repeatability: Option<(Length, u32)>,
    /// The reading that fits the circle worst, if one stands out. Four readings cannot show one.
    pub odd: Option<OddReading>,
    /// Single slips that would make the first closure that fails lie within the limit.
    pub slips: Vec<Slip>,
}

impl Check {
    /// The worst word among closures and return to zero; not measured when there are neither.
    pub fn verdict(&self, limit: Length) -> Verdict {
        let back = self.return_to_zero.map(|back| {
            judge(&back.shown(Kind::Offset), &Limits::between(-limit.si(), limit.si()))
        });
        let sums = self.closures.iter().map(|closure| closure.verdict(limit));
        sums.chain(back).max().unwrap_or(Verdict::NotMeasured)
    }
}

/// Checks a sweep against a limit for closure.
///
/// # Errors
/// [`DialError`] for a sweep that fixes no circle.
/// # Example
/// ```
/// use lineup::clock::Clock;
/// use lineup::closure::{Slip, check};
/// use lineup::{Machine, dial::{Dial, Surface}};
/// use quantities::{Length, Physical, Verdict};
/// let mm = |mm: f64| Length::from_si(mm / 1e3);
/// let dial = Dial::new(Machine::Driver, Machine::Driven, Surface::Rim, mm(0.0), mm(0.01))
///     .with(Clock::QUARTERS.into_iter().zip([0.0, 0.30, -0.40, 0.10].map(mm)));
/// let checked = check(&dial, mm(0.05))?;
/// assert_eq!(checked.verdict(mm(0.05)), Verdict::Outside);
/// assert_eq!(checked.slips, [Slip::Sign(Clock::SIX)]);
/// # Ok::<(), lineup::dial::DialError>(())
/// ```
pub fn check(dial: &Dial, limit: Length) -> Result<Check, DialError> {
    let closures = closures(dial)?;
    let slips = closures
        .iter()
        .map(|closure| likely_slips(closure, dial.zero, limit))
        .find(|slips| !slips.is_empty())
        .unwrap_or_default();
    Ok(Check {
        return_to_zero: return_to_zero(dial),
        repeatability: repeatability(dial),
        odd: odd_reading(dial)?,
        closures,
        slips,
    })
}

fn return_to_zero(dial: &Dial) -> Option<Estimate<Length>> {
    let zero = dial.zero?;
    let start = dial.all_readings().iter().find(|reading| reading.clock.is(zero))?.value;
    let off = dial.returned?.si() - start.si();
    let u = dial.standard_uncertainty() * 2_f64.sqrt();
    off.is_finite().then(|| Estimate::from_standard(off, u))
}

/// Pooled standard deviation of readings at one and the same position.
fn repeatability(dial: &Dial) -> Option<(Length, u32)> {
    let mut groups: Vec<(Clock, Vec<f64>)> = Vec::new();
    for reading in &dial.readings {
        match groups.iter_mut().find(|(clock, _)| clock.is(reading.clock)) {
            Some((_, values)) => values.push(reading.value.si()),
            None => groups.push((reading.clock, vec![reading.value.si()])),
        }
    }
    let (mut squares, mut freedom) = (0.0, 0_u32);
    for (_, values) in groups {
        let count = u32::try_from(values.len()).ok()?;
        let mean = values.iter().sum::<f64>() / f64::from(count);
        squares += values.iter().map(|value| (value - mean).powi(2)).sum::<f64>();
        freedom += count - 1;
    }
    (freedom > 0).then(|| (Length::from_si((squares / f64::from(freedom)).sqrt()), freedom))
}

/// The reading with the largest standardised residual, when it is large and stands out.
fn odd_reading(dial: &Dial) -> Result<Option<OddReading>, DialError> {
    let circle = dial.fit()?.circle;
    let readings = dial.all_readings();
    let mut ranked: Vec<(f64, usize)> = circle
        .standardised
        .iter()
        .enumerate()
        .filter_map(|(index, residual)| residual.map(|residual| (residual, index)))
        .collect();
    ranked.sort_by(|a, b| b.0.abs().total_cmp(&a.0.abs()));
    let next = ranked.get(1).map_or(0.0, |(residual, _)| residual.abs());
    let first = ranked.first().filter(|_| circle.degrees_of_freedom > 1);
    Ok(first.filter(|(w, _)| w.abs() > ODD && w.abs() > STANDS_OUT * next).map(|&(w, index)| {
        OddReading {
            clock: readings[index].clock,
            read: readings[index].value,
            off_by: Length::from_si(dial.sign() * circle.residuals[index]),
            standardised: w,
        }
    }))
}
