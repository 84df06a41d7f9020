//! The rule by speed lies within the span of the tables of common practice.
//!
//! A printed figure stands for everything that rounds to it, so a table's span is widened by half
//! of its last printed digit, and by no more.

use proptest::prelude::*;
use quantities::{Angle, AngularVelocity, Length, System};
use tables::alignment::{short, spacer};
use uom::si::angle::radian;
use uom::si::angular_velocity::revolution_per_minute;
use uom::si::length::millimeter;

use super::{number, rows};

const FILE: &str = include_str!("alignment.toml");
const MIL_MM: f64 = 0.0254;

fn rpm(speed: f64) -> AngularVelocity {
    AngularVelocity::new::<revolution_per_minute>(speed)
}

fn mm(length: Length) -> f64 {
    length.get::<millimeter>()
}

fn mm_m(angle: Angle) -> f64 {
    angle.get::<radian>() * 1e3
}

/// What tables allow at one speed: the least and the greatest of what they print.
#[derive(Clone, Copy)]
struct Span {
    least: f64,
    greatest: f64,
}

impl Span {
    fn none() -> Self {
        Self { least: f64::INFINITY, greatest: f64::NEG_INFINITY }
    }

    fn and(self, figure: f64, half_digit: f64) -> Self {
        Self {
            least: self.least.min(figure - half_digit),
            greatest: self.greatest.max(figure + half_digit),
        }
    }

    fn holds(self, figure: f64) -> bool {
        self.least - 1e-9 <= figure && figure <= self.greatest + 1e-9
    }
}

/// Spans of offset limit, offset aim (mm), slope limit, slope aim (mm/m) at a speed that at least
/// one of the two tables by speed lists.
fn short_spans(speed: f64) -> [Span; 4] {
    let mut spans = [Span::none(); 4];
    let mut widen = |figures: [f64; 4], half_digits: [f64; 4]| {
        for (span, (figure, half)) in spans.iter_mut().zip(figures.into_iter().zip(half_digits)) {
            *span = span.and(figure, half);
        }
    };
    let listed = |row: &&Vec<toml::Value>| (number(&row[0]) - speed).abs() < 0.5;
    if let Some(row) = rows(FILE, "short_inch").iter().find(listed) {
        let [a, b, c, d] = [1, 2, 3, 4].map(|column| number(&row[column]));
        widen(
            [a * MIL_MM, b * MIL_MM, c / 10.0, d / 10.0],
            [0.05 * MIL_MM, 0.05 * MIL_MM, 5e-3, 5e-3],
        );
    }
    if let Some(row) = rows(FILE, "short_metric").iter().find(listed) {
        let [a, b, c, d] = [1, 2, 3, 4].map(|column| number(&row[column]));
        widen([a, b, c * 10.0, d * 10.0], [5e-3, 5e-3, 0.05, 0.05]);
    }
    for row in rows(FILE, "short_bands") {
        if number(&row[0]) <= speed && speed < number(&row[1]) {
            let [aim, slope_aim, limit, slope_limit] = [2, 3, 4, 5].map(|c| number(&row[c]));
            let half = |slope: f64| if (slope * 10.0).fract() > 1e-9 { 5e-3 } else { 0.05 };
            widen(
                [limit * MIL_MM, aim * MIL_MM, slope_limit, slope_aim],
                [0.05 * MIL_MM, 0.05 * MIL_MM, half(slope_limit), half(slope_aim)],
            );
        }
    }
    spans
}

fn speeds(tables: [&str; 2]) -> Vec<f64> {
    let speeds = tables.into_iter().flat_map(|table| rows(FILE, table));
    speeds.map(|row| number(&row[0])).collect()
}

#[test]
fn short_couplings_lie_within_the_tables_at_every_speed_they_list() {
    for speed in speeds(["short_inch", "short_metric"]) {
        let levels = short(rpm(speed)).unwrap();
        let found = [
            mm(levels.offset_limit),
            mm(levels.offset_aim),
            mm_m(levels.slope_limit),
            mm_m(levels.slope_aim),
        ];
        let names = ["offset limit", "offset aim", "slope limit", "slope aim"];
        for ((figure, span), name) in found.into_iter().zip(short_spans(speed)).zip(names) {
            let Span { least, greatest } = span;
            assert!(span.holds(figure), "{name} at {speed}: {figure} not in {least} to {greatest}");
        }
    }
}

/// A table by speed read between its rows, on straight lines of the logarithms; `None` beyond it.
fn read(table: &str, column: usize, scale: f64, speed: f64) -> Option<f64> {
    let rows = rows(FILE, table);
    let points: Vec<(f64, f64)> =
        rows.iter().map(|row| (number(&row[0]), scale * number(&row[column]))).collect();
    let pair = points.windows(2).find(|pair| (pair[0].0..=pair[1].0).contains(&speed))?;
    let [(n0, y0), (n1, y1)] = [pair[0], pair[1]];
    Some(y0 * (y1 / y0).powf((speed / n0).ln() / (n1 / n0).ln()))
}

/// Each of the two tables of spacers has its own speeds; between them it is interpolated, so that
/// both speak from 750 to 6000 rpm. At 600 and 7200 rpm only the inch one does. Read at its own
/// row of 3000 rpm, the metric one alone would allow 0.65 at least; the rule is stricter there.
#[test]
fn spacers_lie_within_the_tables_at_every_speed_they_list() {
    for speed in speeds(["spacer_inch", "spacer_metric"]) {
        let levels = spacer(rpm(speed)).unwrap();
        for (column, figure) in [(1, mm_m(levels.slope_limit)), (2, mm_m(levels.slope_aim))] {
            let inch = read("spacer_inch", column, 1.0, speed);
            let metric = read("spacer_metric", column, 10.0, speed);
            let figures: Vec<f64> = inch.into_iter().chain(metric).collect();
            let both = (750.0..=6000.0).contains(&speed);
            assert_eq!(figures.len(), if both { 2 } else { 1 }, "tables that speak at {speed}");
            let span =
                figures.into_iter().fold(Span::none(), |span, printed| span.and(printed, 0.05));
            let Span { least, greatest } = span;
            assert!(
                span.holds(figure),
                "column {column} at {speed}: {figure}, {least} to {greatest}"
            );
        }
    }
}

/// Worked lines of the reprints: 6000 rpm with a spacer of 300 mm, 0.09 mm; 1500 rpm, aim 0.06 mm.
#[test]
fn worked_lines_of_the_reprints_agree_to_their_last_digit() {
    let offset = mm_m(spacer(rpm(6000.0)).unwrap().slope_limit) * 0.300;
    assert!((offset - 0.09).abs() <= 0.005, "{offset}");
    let aim = mm(short(rpm(1500.0)).unwrap().offset_aim);
    assert!((aim - 0.06).abs() <= 0.005, "{aim}");
}

#[test]
fn the_ends_are_said() {
    for speed in [0.0, 7200.1, 20_000.0, f64::NAN, f64::INFINITY] {
        assert!(short(rpm(speed)).is_none() && spacer(rpm(speed)).is_none(), "{speed}");
    }
    let slow = short(rpm(300.0)).unwrap();
    assert_eq!(Some(slow), short(rpm(600.0)));
    assert_eq!(short(rpm(-1480.0)), short(rpm(1480.0)));
}

#[test]
fn the_working_shows_what_went_in() {
    let [_, limit, _, _] = short(rpm(1480.0)).unwrap().workings();
    assert_eq!(limit.put_in(System::Metric), "193/(1\u{202f}480 rpm + 400)");
    assert_eq!(limit.result.show(System::Metric), "0.10 mm");
}

proptest! {
    /// The faster, the finer; what one aims at is always finer than what one may run with.
    #[test]
    fn levels_fall_with_speed(slow in 600.0..7200.0_f64, faster in 1.0..2.0_f64) {
        let fast = (slow * faster).min(7200.0);
        let (slow_levels, fast_levels) = (short(rpm(slow)).unwrap(), short(rpm(fast)).unwrap());
        prop_assert!(fast_levels.offset_limit <= slow_levels.offset_limit);
        prop_assert!(fast_levels.offset_aim <= slow_levels.offset_aim);
        prop_assert!(fast_levels.slope_limit <= slow_levels.slope_limit);
        prop_assert!(slow_levels.offset_aim < slow_levels.offset_limit);
        prop_assert!(slow_levels.slope_aim < slow_levels.slope_limit);
        let (slow_spacer, fast_spacer) = (spacer(rpm(slow)).unwrap(), spacer(rpm(fast)).unwrap());
        prop_assert!(fast_spacer.slope_limit <= slow_spacer.slope_limit);
        prop_assert!(slow_spacer.slope_aim < slow_spacer.slope_limit);
    }
}
