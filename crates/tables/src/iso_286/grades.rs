//! ISO 286-1, Table 1: standard tolerance grades, and the sizes that the tables step by.
//!
//! IT5 to IT11 are read; IT1 to IT4 are from memory; from IT12 on a grade is ten times the one five
//! before it, as the standard's table is from IT12 up.

use crate::step::{NO, Row, row};

/// The grades held here.
pub(super) const GRADES: std::ops::RangeInclusive<u8> = 1..=18;
/// Those of them that were read.
pub(super) const READ: std::ops::RangeInclusive<u8> = 5..=11;
/// The first that is ten times another.
pub(super) const FIRST_COARSE: u8 = 12;

#[rustfmt::skip]
pub(super) const TABLE: [Row<[f64; 11]>; 14] = [
    // over, up to (mm) |  IT1   IT2   IT3   IT4    IT5    IT6    IT7    IT8    IT9   IT10   IT11 (µm)
    (  0.0,   3.0, [0.8,  1.2,  2.0,  3.0,   4.0,   6.0,  10.0,  14.0,  25.0,  40.0,  60.0]),
    (  3.0,   6.0, [1.0,  1.5,  2.5,  4.0,   5.0,   8.0,  12.0,  18.0,  30.0,  48.0,  75.0]),
    (  6.0,  10.0, [1.0,  1.5,  2.5,  4.0,   6.0,   9.0,  15.0,  22.0,  36.0,  58.0,  90.0]),
    ( 10.0,  18.0, [1.2,  2.0,  3.0,  5.0,   8.0,  11.0,  18.0,  27.0,  43.0,  70.0, 110.0]),
    ( 18.0,  30.0, [1.5,  2.5,  4.0,  6.0,   9.0,  13.0,  21.0,  33.0,  52.0,  84.0, 130.0]),
    ( 30.0,  50.0, [1.5,  2.5,  4.0,  7.0,  11.0,  16.0,  25.0,  39.0,  62.0, 100.0, 160.0]),
    ( 50.0,  80.0, [2.0,  3.0,  5.0,  8.0,  13.0,  19.0,  30.0,  46.0,  74.0, 120.0, 190.0]),
    ( 80.0, 120.0, [2.5,  4.0,  6.0, 10.0,  15.0,  22.0,  35.0,  54.0,  87.0, 140.0, 220.0]),
    (120.0, 180.0, [3.5,  5.0,  8.0, 12.0,  18.0,  25.0,  40.0,  63.0, 100.0, 160.0, 250.0]),
    (180.0, 250.0, [4.5,  7.0, 10.0, 14.0,  20.0,  29.0,  46.0,  72.0, 115.0, 185.0, 290.0]),
    (250.0, 315.0, [6.0,  8.0, 12.0, 16.0,  23.0,  32.0,  52.0,  81.0, 130.0, 210.0, 320.0]),
    (315.0, 400.0, [7.0,  9.0, 13.0, 18.0,  25.0,  36.0,  57.0,  89.0, 140.0, 230.0, 360.0]),
    (400.0, 500.0, [8.0, 10.0, 15.0, 20.0,  27.0,  40.0,  63.0,  97.0, 155.0, 250.0, 400.0]),
    (500.0, 630.0, [ NO,   NO,   NO,   NO,  32.0,  44.0,  70.0, 110.0, 175.0, 280.0, 440.0]),
];

/// Width of the tolerance zone in µm. Grades from 14 on are for sizes over 1 mm only.
pub(super) fn width(nominal_mm: f64, grade: u8) -> Option<f64> {
    if grade >= FIRST_COARSE {
        let finer = width(nominal_mm, grade - 5)?;
        let used = grade < 14 || nominal_mm > 1.0;
        return (GRADES.contains(&grade) && used).then_some(10.0 * finer);
    }
    let column = usize::from(grade.checked_sub(1)?);
    row(&TABLE, nominal_mm)?.get(column).copied().filter(|width| width.is_finite())
}
