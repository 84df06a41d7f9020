//! ISO 286-1: fundamental deviations of shafts, in µm: the upper limit es for c to h, the lower
//! limit ei for j to x.
//!
//! j to 180 mm and c (but for 30 to 40 mm) are from memory, the rest is read.

use super::{Letter, grades};
use crate::step::{NO, Row, row};

#[rustfmt::skip]
const MAIN_STEPS: [Row<[f64; 10]>; 13] = [
    // over, up to (mm) |    d       e       f       g     j5,j6    j7      k*       m       n       p
    (  0.0,   3.0, [ -20.0,  -14.0,   -6.0,   -2.0,   -2.0,   -4.0,    0.0,    2.0,    4.0,    6.0]),
    (  3.0,   6.0, [ -30.0,  -20.0,  -10.0,   -4.0,   -2.0,   -4.0,    1.0,    4.0,    8.0,   12.0]),
    (  6.0,  10.0, [ -40.0,  -25.0,  -13.0,   -5.0,   -2.0,   -5.0,    1.0,    6.0,   10.0,   15.0]),
    ( 10.0,  18.0, [ -50.0,  -32.0,  -16.0,   -6.0,   -3.0,   -6.0,    1.0,    7.0,   12.0,   18.0]),
    ( 18.0,  30.0, [ -65.0,  -40.0,  -20.0,   -7.0,   -4.0,   -8.0,    2.0,    8.0,   15.0,   22.0]),
    ( 30.0,  50.0, [ -80.0,  -50.0,  -25.0,   -9.0,   -5.0,  -10.0,    2.0,    9.0,   17.0,   26.0]),
    ( 50.0,  80.0, [-100.0,  -60.0,  -30.0,  -10.0,   -7.0,  -12.0,    2.0,   11.0,   20.0,   32.0]),
    ( 80.0, 120.0, [-120.0,  -72.0,  -36.0,  -12.0,   -9.0,  -15.0,    3.0,   13.0,   23.0,   37.0]),
    (120.0, 180.0, [-145.0,  -85.0,  -43.0,  -14.0,  -11.0,  -18.0,    3.0,   15.0,   27.0,   43.0]),
    (180.0, 250.0, [-170.0, -100.0,  -50.0,  -15.0,  -13.0,  -21.0,    4.0,   17.0,   31.0,   50.0]),
    (250.0, 315.0, [-190.0, -110.0,  -56.0,  -17.0,  -16.0,  -26.0,    4.0,   20.0,   34.0,   56.0]),
    (315.0, 400.0, [-210.0, -125.0,  -62.0,  -18.0,  -18.0,  -28.0,    4.0,   21.0,   37.0,   62.0]),
    (400.0, 500.0, [-230.0, -135.0,  -68.0,  -20.0,  -20.0,  -32.0,    5.0,   23.0,   40.0,   68.0]),
    // * grades 4 to 7; zero in the others
];

#[rustfmt::skip]
const INTERMEDIATE_STEPS: [Row<[f64; 7]>; 25] = [
    // over, up to (mm) |    c       r       s       t       u       v       x
    (  0.0,   3.0, [ -60.0,   10.0,   14.0,     NO,   18.0,     NO,   20.0]),
    (  3.0,   6.0, [ -70.0,   15.0,   19.0,     NO,   23.0,     NO,   28.0]),
    (  6.0,  10.0, [ -80.0,   19.0,   23.0,     NO,   28.0,     NO,   34.0]),
    ( 10.0,  14.0, [ -95.0,   23.0,   28.0,     NO,   33.0,     NO,   40.0]),
    ( 14.0,  18.0, [ -95.0,   23.0,   28.0,     NO,   33.0,   39.0,   45.0]),
    ( 18.0,  24.0, [-110.0,   28.0,   35.0,     NO,   41.0,   47.0,   54.0]),
    ( 24.0,  30.0, [-110.0,   28.0,   35.0,   41.0,   48.0,   55.0,   64.0]),
    ( 30.0,  40.0, [-120.0,   34.0,   43.0,   48.0,   60.0,   68.0,   80.0]),
    ( 40.0,  50.0, [-130.0,   34.0,   43.0,   54.0,   70.0,   81.0,   97.0]),
    ( 50.0,  65.0, [-140.0,   41.0,   53.0,   66.0,   87.0,  102.0,  122.0]),
    ( 65.0,  80.0, [-150.0,   43.0,   59.0,   75.0,  102.0,  120.0,  146.0]),
    ( 80.0, 100.0, [-170.0,   51.0,   71.0,   91.0,  124.0,  146.0,  178.0]),
    (100.0, 120.0, [-180.0,   54.0,   79.0,  104.0,  144.0,  172.0,  210.0]),
    (120.0, 140.0, [-200.0,   63.0,   92.0,  122.0,  170.0,  202.0,  248.0]),
    (140.0, 160.0, [-210.0,   65.0,  100.0,  134.0,  190.0,  228.0,  280.0]),
    (160.0, 180.0, [-230.0,   68.0,  108.0,  146.0,  210.0,  252.0,  310.0]),
    (180.0, 200.0, [-240.0,   77.0,  122.0,  166.0,  236.0,  284.0,  350.0]),
    (200.0, 225.0, [-260.0,   80.0,  130.0,  180.0,  258.0,  310.0,  385.0]),
    (225.0, 250.0, [-280.0,   84.0,  140.0,  196.0,  284.0,  340.0,  425.0]),
    (250.0, 280.0, [-300.0,   94.0,  158.0,  218.0,  315.0,  385.0,  475.0]),
    (280.0, 315.0, [-330.0,   98.0,  170.0,  240.0,  350.0,  425.0,  525.0]),
    (315.0, 355.0, [-360.0,  108.0,  190.0,  268.0,  390.0,  475.0,  590.0]),
    (355.0, 400.0, [-400.0,  114.0,  208.0,  294.0,  435.0,  530.0,  650.0]),
    (400.0, 450.0, [-440.0,  126.0,  232.0,  330.0,  490.0,  595.0,  740.0]),
    (450.0, 500.0, [-480.0,  132.0,  252.0,  360.0,  540.0,  660.0,  820.0]),
];

/// The deviation of a letter that the rows of the table give as printed.
pub(super) fn fundamental(letter: Letter, grade: u8, nominal_mm: f64) -> Option<f64> {
    let main = |column: usize| row(&MAIN_STEPS, nominal_mm).map(|figures| figures[column]);
    let intermediate =
        |column: usize| row(&INTERMEDIATE_STEPS, nominal_mm).map(|figures| figures[column]);
    let deviation = match letter {
        Letter::H => Some(0.0),
        Letter::Js => None,
        Letter::D => main(0),
        Letter::E => main(1),
        Letter::F => main(2),
        Letter::G => main(3),
        Letter::J => match grade {
            5 | 6 => main(4),
            7 => main(5),
            _ => None,
        },
        Letter::K if grade > 7 => main(6).map(|_| 0.0),
        Letter::K => main(6),
        Letter::M => main(7),
        Letter::N => main(8),
        Letter::P => main(9),
        Letter::C => intermediate(0),
        Letter::R => intermediate(1),
        Letter::S => intermediate(2),
        Letter::T => intermediate(3),
        Letter::U => intermediate(4),
        Letter::V => intermediate(5),
        Letter::X => intermediate(6),
    };
    deviation.filter(|deviation| deviation.is_finite())
}

/// Upper and lower deviation in µm.
pub(super) fn zone(letter: Letter, grade: u8, nominal_mm: f64) -> Option<(f64, f64)> {
    let width = grades::width(nominal_mm, grade)?;
    if letter == Letter::Js {
        return Some((width / 2.0, -width / 2.0));
    }
    let deviation = fundamental(letter, grade, nominal_mm)?;
    Some(if letter.lies_below() {
        (deviation, deviation - width)
    } else {
        (deviation + width, deviation)
    })
}
