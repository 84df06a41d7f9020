//! ISO 286-1: limits of holes, made from the shafts' by the standard's rules.
//!
//! A to H: EI = −es of the shaft. K, M and N to grade 8, P to ZC to grade 7: ES = −ei + Δ with
//! Δ = `ITn` − `ITn−1` from grade 3 on, as the standard prints it; coarser grades go without Δ, and
//! N is then zero but for −4 µm up to 3 mm, and only over 1 mm. K coarser than grade 8 is held to
//! 3 mm only. M6 over 250 up to 315 mm is −9 µm, against the rule. J is a table.

use super::{Letter, grades, shafts};
use crate::step::{Row, lies_in, row};

#[rustfmt::skip]
const J: [Row<[f64; 3]>; 13] = [
    // over, up to (mm) |  J6     J7     J8   (ES, µm)
    (  0.0,   3.0, [  2.0,   4.0,   6.0]),
    (  3.0,   6.0, [  5.0,   6.0,  10.0]),
    (  6.0,  10.0, [  5.0,   8.0,  12.0]),
    ( 10.0,  18.0, [  6.0,  10.0,  15.0]),
    ( 18.0,  30.0, [  8.0,  12.0,  20.0]),
    ( 30.0,  50.0, [ 10.0,  14.0,  24.0]),
    ( 50.0,  80.0, [ 13.0,  18.0,  28.0]),
    ( 80.0, 120.0, [ 16.0,  22.0,  34.0]),
    (120.0, 180.0, [ 18.0,  26.0,  41.0]),
    (180.0, 250.0, [ 22.0,  30.0,  47.0]),
    (250.0, 315.0, [ 25.0,  36.0,  55.0]),
    (315.0, 400.0, [ 29.0,  39.0,  60.0]),
    (400.0, 500.0, [ 33.0,  43.0,  66.0]),
];

/// Upper and lower deviation in µm.
pub(super) fn zone(letter: Letter, grade: u8, nominal_mm: f64) -> Option<(f64, f64)> {
    let width = grades::width(nominal_mm, grade)?;
    if letter == Letter::Js {
        return Some((width / 2.0, -width / 2.0));
    }
    if letter.lies_below() {
        let lower = -shafts::fundamental(letter, grade, nominal_mm)?;
        return Some((lower + width, lower));
    }
    let upper = upper_limit(letter, grade, nominal_mm)?;
    Some((upper, upper - width))
}

fn upper_limit(letter: Letter, grade: u8, nominal_mm: f64) -> Option<f64> {
    let smallest = lies_in(nominal_mm, 0.0, 3.0);
    match letter {
        Letter::J => {
            let column = usize::from(grade.checked_sub(6)?);
            row(&J, nominal_mm)?.get(column).copied()
        }
        Letter::K if grade > 8 => smallest.then_some(0.0),
        Letter::N if grade > 8 && nominal_mm <= 1.0 => None,
        Letter::N if grade > 8 && smallest => Some(-4.0),
        Letter::N if grade > 8 => shafts::fundamental(letter, grade, nominal_mm).map(|_| 0.0),
        Letter::M if grade == 6 && lies_in(nominal_mm, 250.0, 315.0) => Some(-9.0),
        Letter::K | Letter::M | Letter::N => by_rule(letter, grade, 8, nominal_mm),
        _ => by_rule(letter, grade, 7, nominal_mm),
    }
}

/// ES = −ei + Δ; Δ only up to grade `last`, and not in the first step of sizes.
fn by_rule(letter: Letter, grade: u8, last: u8, nominal_mm: f64) -> Option<f64> {
    // A shaft k is zero outside grades 4 to 7; the rule starts from that of those grades.
    let deviation = shafts::fundamental(letter, grade.clamp(4, 7), nominal_mm)?;
    if grade > last || lies_in(nominal_mm, 0.0, 3.0) {
        return Some(-deviation);
    }
    if grade < 3 {
        return None;
    }
    let delta = grades::width(nominal_mm, grade)? - grades::width(nominal_mm, grade - 1)?;
    Some(delta - deviation)
}
