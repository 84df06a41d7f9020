//! Which dial was booked the wrong way round, when more was measured than needed.
//!
//! A reader who stood at the other end swaps 3 and 9; one who read "out" as plus turns every sign;
//! a stem on the far side of a face turns the slope. None of these shows in a sweep's own closure.
//! It shows where observations contradict each other: if they do, and turning one dial round brings
//! all of them together, that is the likely slip. Nothing is put right here; the reader looks again.
//!
//! Two dials alone fix a position without one to spare and can contradict nothing: a third sweep, or
//! a straightedge and feelers, is what finds a slip among them.

use crate::Layout;
use crate::clock::View;
use crate::dial::{Dial, Reading, Stem};
use crate::position::{Observation, PositionError, position};

/// How a dial may have been booked wrongly.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mistake {
    /// Read from the other end: 3 and 9 stand in each other's place.
    View,
    /// Every sign turned: the pointer runs the other way, or the stem stood on the other side.
    Sign,
}

/// A dial that would agree with all the rest if it were turned round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suspect {
    /// Which observation, counted from zero.
    pub observation: usize,
    /// How it was probably booked.
    pub mistake: Mistake,
    /// χ² of all observations as they stand.
    pub chi_squared: f64,
    /// χ² with this one turned round.
    pub turned: f64,
}

/// Dials that, turned round, would bring contradicting observations together; the likeliest first,
/// none when nothing contradicts.
///
/// A rule of our own: observations contradict each other when their χ² is one that chance exceeds
/// once in a hundred times, and agree when chance exceeds it once in twenty.
///
/// # Errors
/// As [`position`].
pub fn suspects(layout: &Layout, seen: &[Observation]) -> Result<Vec<Suspect>, PositionError> {
    let now = position(layout, seen)?;
    if now.chi_squared <= chance(now.degrees_of_freedom, ONE_IN_A_HUNDRED) {
        return Ok(Vec::new());
    }
    let mut found = Vec::new();
    for (observation, dial) in sweeps(seen) {
        for mistake in [Mistake::View, Mistake::Sign] {
            let mut turned = seen.to_vec();
            turned[observation] = Observation::Sweep(turned_round(dial, mistake));
            let with = position(layout, &turned)?;
            if with.chi_squared <= chance(with.degrees_of_freedom, ONE_IN_TWENTY) {
                let (chi_squared, turned) = (now.chi_squared, with.chi_squared);
                found.push(Suspect { observation, mistake, chi_squared, turned });
            }
        }
    }
    found.sort_by(|a, b| a.turned.total_cmp(&b.turned));
    Ok(found)
}

/// Normal quantiles for the two chances.
const ONE_IN_A_HUNDRED: f64 = 2.326;
const ONE_IN_TWENTY: f64 = 1.645;

/// χ² that chance exceeds so seldom, `z` the normal quantile; 0 without a degree of freedom.
///
/// # Source
/// Wilson and Hilferty's approximation (Abramowitz and Stegun, 26.4.17), from memory.
fn chance(degrees_of_freedom: u32, z: f64) -> f64 {
    let nu = f64::from(degrees_of_freedom);
    if degrees_of_freedom == 0 {
        return f64::INFINITY;
    }
    let part = 2.0 / (9.0 * nu);
    nu * (1.0 - part + z * part.sqrt()).powi(3)
}

fn sweeps(seen: &[Observation]) -> impl Iterator<Item = (usize, &Dial)> {
    seen.iter().enumerate().filter_map(|(index, observation)| match observation {
        Observation::Sweep(dial) => Some((index, dial)),
        _ => None,
    })
}

fn turned_round(dial: &Dial, mistake: Mistake) -> Dial {
    let seen =
        |reading: &Reading| Reading { clock: reading.clock.seen(View::FromDriven), ..*reading };
    match mistake {
        Mistake::View => {
            Dial { readings: dial.readings.iter().map(seen).collect(), ..dial.clone() }
        }
        Mistake::Sign => {
            let stem = match dial.stem {
                Stem::RisesPushedIn => Stem::FallsPushedIn,
                Stem::FallsPushedIn => Stem::RisesPushedIn,
            };
            Dial { stem, ..dial.clone() }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// χ² quantiles of the printed tables: 99 % 6.635, 9.210, 13.277; 95 % 3.841, 5.991, 9.488, for
    /// 1, 2 and 4 degrees of freedom. The approximation holds to 5 %.
    #[test]
    fn chance_meets_the_tables() {
        for (nu, hundred, twenty) in [(1, 6.635, 3.841), (2, 9.210, 5.991), (4, 13.277, 9.488)] {
            assert!((chance(nu, ONE_IN_A_HUNDRED) / hundred - 1.0).abs() < 0.05);
            assert!((chance(nu, ONE_IN_TWENTY) / twenty - 1.0).abs() < 0.05);
        }
    }
}
