//! ANSI B4.1: the fits that slide, locate or wring, made of the standard's grades and deviations.
//!
//! A hole has its lower limit at the nominal size and is as wide as its grade; a shaft begins at a
//! deviation and is as wide as its own grade. All of it is from memory but for grades 6, 7 and 8,
//! which are those of the tables that were read. The standard prints the limits that follow from
//! these, some of them rounded again to 0.05 or 0.1 thousandths; the first step, where that
//! rounding changes every figure, is not held.

use super::Limits;
use crate::step::{NO, Row, row};

/// A class: grade of the hole, grade of the shaft, where the shaft begins.
pub(super) struct Made {
    pub hole: usize,
    pub shaft: usize,
    pub from: From,
}

/// Where a shaft's zone lies; a column of the deviations.
#[derive(Clone, Copy)]
pub(super) enum From {
    /// Its upper limit is the nominal size.
    Nominal,
    /// Its upper limit lies so far below it.
    Below(usize),
    /// Its lower limit lies so far above it.
    Above(usize),
    /// It reaches so far to both sides.
    Around(usize),
}

#[rustfmt::skip]
pub(super) const GRADES: [Row<[f64; 10]>; 12] = [
    // over, to (in) |   4     5     6     7     8     9    10    11    12    13 (0.001 in)
    ( 0.12,  0.24, [0.15, 0.20,  0.3,  0.5,  0.7,  1.2,  1.8,  3.0,  5.0,  7.0]),
    ( 0.24,  0.40, [0.15, 0.25,  0.4,  0.6,  0.9,  1.4,  2.2,  3.5,  6.0,  9.0]),
    ( 0.40,  0.71, [0.20, 0.30,  0.4,  0.7,  1.0,  1.6,  2.8,  4.0,  7.0, 10.0]),
    ( 0.71,  1.19, [0.25, 0.40,  0.5,  0.8,  1.2,  2.0,  3.5,  5.0,  8.0, 12.0]),
    ( 1.19,  1.97, [0.30, 0.40,  0.6,  1.0,  1.6,  2.5,  4.0,  6.0, 10.0, 16.0]),
    ( 1.97,  3.15, [0.30, 0.50,  0.7,  1.2,  1.8,  3.0,  4.5,  7.0, 12.0, 18.0]),
    ( 3.15,  4.73, [0.40, 0.60,  0.9,  1.4,  2.2,  3.5,  5.0,  9.0, 14.0, 22.0]),
    ( 4.73,  7.09, [0.50, 0.70,  1.0,  1.6,  2.5,  4.0,  6.0, 10.0, 16.0, 25.0]),
    ( 7.09,  9.85, [0.60, 0.80,  1.2,  1.8,  2.8,  4.5,  7.0, 12.0, 18.0, 28.0]),
    ( 9.85, 12.41, [0.60, 0.90,  1.2,  2.0,  3.0,  5.0,  8.0, 12.0, 20.0, 30.0]),
    (12.41, 15.75, [0.70, 1.00,  1.4,  2.2,  3.5,  6.0,  9.0, 14.0, 22.0, 35.0]),
    (15.75, 19.69, [0.80, 1.00,  1.6,  2.5,  4.0,  6.0, 10.0, 16.0, 25.0, 40.0]),
];

/// Running fits: g, f, e, d, then those of RC8 and RC9.
const RUNNING: [usize; 6] = [0, 1, 2, 3, 4, 5];
/// Locational clearance fits: g, f, e, d, then those of LC9, LC10 and LC11.
const LOCATING: [usize; 7] = [6, 7, 8, 9, 10, 11, 12];
/// Transition fits: js6, js7, k, n.
const TRANSITION: [usize; 4] = [13, 14, 15, 16];

#[rustfmt::skip]
const DEVIATIONS: [Row<[f64; 17]>; 12] = [
    // over, to (in) | RC g     f    e     d    RC8   RC9 | LC g    f    e    d    LC9  LC10  LC11 | js6   js7   k    n
    ( 0.12,  0.24, [0.15, 0.4, 0.8,  1.2,  2.8,  4.5,  0.15, 0.4, 0.8, 1.2,  2.8,  4.5,  6.0,  0.15, 0.25,  NO, 0.3]),
    ( 0.24,  0.40, [0.20, 0.5, 1.0,  1.6,  3.0,  5.0,  0.20, 0.5, 1.0, 1.6,  3.0,  5.0,  7.0,  0.20, 0.30, 0.1, 0.4]),
    ( 0.40,  0.71, [0.25, 0.6, 1.2,  2.0,  3.5,  6.0,  0.25, 0.6, 1.2, 2.0,  3.5,  6.0,  8.0,  0.20, 0.35, 0.1, 0.5]),
    ( 0.71,  1.19, [0.30, 0.8, 1.6,  2.5,  4.5,  7.0,  0.30, 0.8, 1.6, 2.5,  4.5,  7.0, 10.0,  0.25, 0.40, 0.1, 0.6]),
    ( 1.19,  1.97, [0.40, 1.0, 2.0,  3.0,  5.0,  8.0,  0.40, 1.0, 2.0, 3.0,  5.0,  8.0, 12.0,  0.30, 0.50, 0.1, 0.7]),
    ( 1.97,  3.15, [0.40, 1.2, 2.5,  4.0,  6.0,  9.0,  0.40, 1.2, 2.5, 4.0,  6.0, 10.0, 14.0,  0.30, 0.60, 0.1, 0.8]),
    ( 3.15,  4.73, [0.50, 1.4, 3.0,  5.0,  7.0, 10.0,  0.50, 1.4, 3.0, 5.0,  7.0, 11.0, 16.0,  0.40, 0.70, 0.1, 1.0]),
    ( 4.73,  7.09, [0.60, 1.6, 3.5,  6.0,  8.0, 12.0,  0.60, 1.6, 3.5, 6.0,  8.0, 12.0, 18.0,  0.50, 0.80, 0.1, 1.2]),
    ( 7.09,  9.85, [0.60, 2.0, 4.0,  7.0, 10.0, 15.0,  0.60, 2.0, 4.0, 7.0, 10.0, 16.0, 22.0,  0.60, 0.90, 0.2, 1.4]),
    ( 9.85, 12.41, [0.80, 2.5, 5.0,  8.0, 12.0, 18.0,  0.70, 2.2, 4.5, 7.0, 12.0, 20.0, 28.0,  0.60, 1.00, 0.2, 1.4]),
    (12.41, 15.75, [1.00, 3.0, 6.0, 10.0, 14.0, 22.0,  0.70, 2.5, 5.0, 8.0, 14.0, 22.0, 30.0,  0.70, 1.00, 0.2, 1.6]),
    (15.75, 19.69, [1.20, 4.0, 8.0, 12.0, 16.0, 25.0,  0.80, 2.8, 5.0, 9.0, 16.0, 25.0, 35.0,  0.80, 1.20, 0.2, 1.8]),
];

const fn made(hole: usize, shaft: usize, from: From) -> Made {
    Made { hole, shaft, from }
}

/// RC1 to RC9.
pub(super) const RC: [Made; 9] = [
    made(5, 4, From::Below(RUNNING[0])),
    made(6, 5, From::Below(RUNNING[0])),
    made(7, 6, From::Below(RUNNING[1])),
    made(8, 7, From::Below(RUNNING[1])),
    made(8, 7, From::Below(RUNNING[2])),
    made(9, 8, From::Below(RUNNING[2])),
    made(9, 8, From::Below(RUNNING[3])),
    made(10, 9, From::Below(RUNNING[4])),
    made(11, 10, From::Below(RUNNING[5])),
];

/// LC1 to LC11.
pub(super) const LC: [Made; 11] = [
    made(6, 5, From::Nominal),
    made(7, 6, From::Nominal),
    made(8, 7, From::Nominal),
    made(10, 9, From::Nominal),
    made(7, 6, From::Below(LOCATING[0])),
    made(9, 8, From::Below(LOCATING[1])),
    made(10, 9, From::Below(LOCATING[2])),
    made(10, 9, From::Below(LOCATING[3])),
    made(11, 10, From::Below(LOCATING[4])),
    made(12, 12, From::Below(LOCATING[5])),
    made(13, 13, From::Below(LOCATING[6])),
];

/// LT1 to LT6.
pub(super) const LT: [Made; 6] = [
    made(7, 6, From::Around(TRANSITION[0])),
    made(8, 7, From::Around(TRANSITION[1])),
    made(7, 6, From::Above(TRANSITION[2])),
    made(8, 7, From::Above(TRANSITION[2])),
    made(7, 6, From::Above(TRANSITION[3])),
    made(7, 7, From::Above(TRANSITION[3])),
];

impl Made {
    /// Upper deviation of the hole, upper and lower of the shaft.
    pub(super) fn limits(&self, nominal_in: f64) -> Option<Limits> {
        let width = |grade: usize| row(&GRADES, nominal_in)?.get(grade - 4).copied();
        let deviation = |column: usize| Some(row(&DEVIATIONS, nominal_in)?[column]);
        let (hole, width) = (width(self.hole)?, width(self.shaft)?);
        Some(match self.from {
            From::Nominal => [hole, 0.0, -width],
            From::Below(column) => [hole, -deviation(column)?, -deviation(column)? - width],
            From::Above(column) => [hole, deviation(column)? + width, deviation(column)?],
            From::Around(column) => [hole, deviation(column)?, -deviation(column)?],
        })
    }
}
