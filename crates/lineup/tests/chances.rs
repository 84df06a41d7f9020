//! Chances by trials, beside distributions that are known in closed form.

#![expect(clippy::unwrap_used, reason = "a test that cannot be set up must stop")]

mod common;

use common::*;
use lineup::dial::{Dial, Surface, Turning};
use lineup::growth::{PlaneGrowth, growth_line};
use lineup::line::Line;
use lineup::position::{Observation, Offset, Position, Slope, position};
use lineup::tolerance::Level;
use lineup::trials::{Growth, OnTrial, Trials, TrialsError, trials};
use lineup::{Body, Estimate, Machine, Plane, Spool};
use quantities::{Angle, Physical, Source};

const TRIALS: u32 = 200_000;
/// A ± that counts for nothing beside the others.
const HAIR_MM: f64 = 1e-7;

fn source() -> Source {
    Source::common_practice("site")
}

fn offset_level(limit_mm: f64) -> Vec<Level> {
    vec![Level::offset("site", None, Some(mm(limit_mm)), source()).unwrap()]
}

/// Offset and slope of the driven against the driver, the same in both planes.
fn typed(offset: [f64; 2], slope: [f64; 2]) -> Vec<Observation> {
    let (of, from, at) = (Body::Driven, Body::Driver, mm(0.0));
    let both = Plane::BOTH.into_iter().flat_map(|plane| {
        let amount = Estimate::new(mm(offset[0]), mm(offset[1]));
        let climbs = Estimate::new(Angle::from_si(slope[0] / 1e3), Angle::from_si(slope[1] / 1e3));
        [
            Observation::Offset(Offset { plane, of, from, at, amount }),
            Observation::Slope(Slope { plane, of, from, amount: climbs }),
        ]
    });
    both.collect()
}

fn still() -> Growth {
    Growth::normal(Line::zero(mm(0.0)))
}

fn placed(seen: &[Observation]) -> Position {
    position(&layout(Machine::Driven, 0.0), seen).unwrap()
}

fn tried(seen: &[Observation], growths: &[Growth], levels: &[Level], left: &Line) -> Trials {
    let position = placed(seen);
    let on = OnTrial { position: &position, seen, left, levels };
    trials(&[on], growths, 1, TRIALS).unwrap()
}

/// Within four standard uncertainties of a share: of 10 000 honest runs one misses it.
#[track_caller]
fn share(found: f64, wanted: f64) {
    let u = (wanted * (1.0 - wanted) / f64::from(TRIALS)).sqrt();
    assert!(
        (found - wanted).abs() <= 4.0 * u + 1.0 / f64::from(TRIALS),
        "{found} for {wanted} ± {u}"
    );
}

/// Φ(z) − Φ(−z) at z = 1 and 2, Abramowitz and Stegun, Table 26.1; from memory.
const WITHIN_ONE: f64 = 0.682_689_492;
const WITHIN_TWO: f64 = 0.954_499_736;

#[test]
fn independent_planes_multiply() {
    let seen = typed([0.0, 0.020], [0.0, HAIR_MM]);
    let found = tried(&seen, &[still(), still()], &offset_level(0.020), &Line::zero(mm(0.0)));
    share(found.inside, WITHIN_TWO * WITHIN_TWO);
    for outcome in &found.couplings[0] {
        share(outcome.inside, WITHIN_TWO);
        let u_um = outcome.deviation * 1e6;
        assert!((u_um - 10.0).abs() < 4.0 * 10.0 / (2.0 * f64::from(TRIALS)).sqrt(), "{u_um}");
        // The middle 95 % of a normal distribution is 1.959964 standard deviations to either side.
        let [low, high] = outcome.interval.map(|si| si * 1e6);
        assert!((high - 19.599_64).abs() < 0.15 && (low + 19.599_64).abs() < 0.15, "{low} {high}");
    }
    // By the larger of two: the 0.95 quantile z solves (2Φ(z) − 1)² = 0.95, so z = 2.2365.
    assert!((found.worst_ratio - 2.2365 / 2.0).abs() < 0.005, "{}", found.worst_ratio);
}

/// Bounds on growth of one plane are a rectangle: within half of it, half the chance, where a normal
/// distribution of that uncertainty would give 0.61.
#[test]
fn bounds_are_rectangles() {
    let bounds = PlaneGrowth::up(mm(0.0), Estimate::new(mm(0.0), mm(0.040)));
    let growths = [still(), Growth::between(&[bounds]).unwrap()];
    let seen = typed([0.0, HAIR_MM], [0.0, HAIR_MM]);
    let found = tried(&seen, &growths, &offset_level(0.020), &Line::zero(mm(0.0)));
    share(found.inside, 0.5);
    let deviation = found.couplings[0][0].deviation * 1e6;
    assert!((deviation / (40.0 / 3_f64.sqrt()) - 1.0).abs() < 0.01, "{deviation}");
}

/// A parked rim of unknown high spot: |R/2·cos φ| < 0.8·R/2 for 1 − 2·acos(0.8)/π of all φ, and both
/// planes at once for 1 − 4·acos(0.8)/π.
#[test]
fn a_runout_stands_somewhere_on_its_circle() {
    let degrees: Vec<f64> = (0..8).map(|k| 45.0 * f64::from(k)).collect();
    let rim = dial(Body::Driver, Body::Driven, Surface::Rim, 0.0, &degrees, &[0.0; 8]);
    let turning = Turning::CarrierAlone(mm(0.10));
    let rim = Dial { turning, division: mm(HAIR_MM), ..rim };
    let mut seen = vec![Observation::Sweep(rim)];
    seen.extend(typed([0.0, 10.0], [0.0, HAIR_MM]));
    let found = tried(&seen, &[still(), still()], &offset_level(0.040), &Line::zero(mm(0.0)));
    let beyond = 2.0 * 0.8_f64.acos() / std::f64::consts::PI;
    share(found.couplings[0][0].inside, 1.0 - beyond);
    share(found.inside, 1.0 - 2.0 * beyond);
}

/// One reading at each quarter: the offset is half the difference of two rectangles of the division,
/// a triangle, inside of which half the width has three quarters of the chance.
#[test]
fn divisions_are_rectangles() {
    let rim = dial(Body::Driver, Body::Driven, Surface::Rim, 0.0, &QUARTERS, &[0.0; 4]);
    let mut seen = vec![Observation::Sweep(rim)];
    seen.extend(typed([0.0, 1e3], [0.0, HAIR_MM]));
    let found = tried(&seen, &[still(), still()], &offset_level(0.0025), &Line::zero(mm(0.0)));
    share(found.couplings[0][0].inside, 0.75);
    share(found.inside, 0.75 * 0.75);
}

/// A stem's place that is known to ±1 mm, on shafts that climb 2 mm/m against each other: the offset
/// carried to the middle is off by 1 µm at one standard uncertainty. Sideways nothing climbs.
#[test]
fn a_stem_somewhere_else_sees_another_offset() {
    let degrees: Vec<f64> = (0..8).map(|k| 45.0 * f64::from(k)).collect();
    // 0.2 mm at x = 100 mm and 2 mm/m are no offset at the middle.
    let readings: Vec<f64> = degrees.iter().map(|d| 0.2 * d.to_radians().cos()).collect();
    let rim = dial(Body::Driver, Body::Driven, Surface::Rim, 100.0, &degrees, &readings);
    let lever_plus_minus = Some(mm(1.0));
    let rim = Dial { lever_plus_minus, zero: None, division: mm(HAIR_MM), ..rim };
    let (of, from) = (Body::Driven, Body::Driver);
    let slope = |plane, climb: f64| {
        let amount = Estimate::new(Angle::from_si(climb), Angle::from_si(1e-9));
        Observation::Slope(Slope { plane, of, from, amount })
    };
    let seen = [Observation::Sweep(rim), slope(Plane::Vertical, 2e-3), slope(Plane::Sideways, 0.0)];
    let found = tried(&seen, &[still(), still()], &offset_level(0.001), &Line::zero(mm(0.0)));
    share(found.couplings[0][0].inside, WITHIN_ONE);
    assert!((found.couplings[0][1].inside - 1.0).abs() < 1e-9);
    // Adding squares knows of it too.
    let u = placed(&seen).offset_at(Plane::Vertical, mm(0.0)).standard_uncertainty();
    near(u * 1e6, 1.0, 1e-3);
}

/// The machine in the middle grows by ±; both couplings see it alike, so the chance of both is that
/// of one, not its square.
#[test]
fn what_couplings_share_is_shared() {
    let level = PlaneGrowth::up(mm(0.0), Estimate::new(mm(0.0), mm(0.020)));
    let middle = Growth::normal(growth_line(&[level]).unwrap());
    let (seen, zero) = (typed([0.0, HAIR_MM], [0.0, HAIR_MM]), Line::zero(mm(0.0)));
    let (position, levels) = (placed(&seen), offset_level(0.020));
    let on = OnTrial { position: &position, seen: &seen, left: &zero, levels: &levels };
    let found = trials(&[on, on], &[still(), middle, still()], 1, TRIALS).unwrap();
    share(found.inside, WITHIN_TWO);
}

/// With all errors normal and small, trials scatter as the squares say: rims across a spacer, at its
/// two flex planes, with a shared sag and a partial arc.
#[test]
fn small_normal_errors_agree_with_the_squares() {
    let degrees: Vec<f64> = (0..9).map(|k| 22.5 * f64::from(k) - 90.0).collect();
    let sweep = |carrier: Body, touched, at, up: f64| {
        let readings: Vec<f64> = degrees.iter().map(|d| up * d.to_radians().cos()).collect();
        let dial = dial(carrier, touched, Surface::Rim, at, &degrees, &readings);
        let dial = Dial { zero: None, division: mm(1e-3), plus_minus: Some(mm(0.02)), ..dial };
        let amplitude = Estimate::new(mm(0.0), mm(0.01));
        Observation::Sweep(dial.with_sag(lineup::sag::Sag { amplitude, bracket: "bar".into() }))
    };
    let seen = [
        sweep(Body::Driver, Body::Driven, 150.0, 0.05),
        sweep(Body::Driven, Body::Driver, -150.0, -0.02),
    ];
    let spool = Some(Spool { driver_end: mm(-150.0), driven_end: mm(150.0) });
    let layout = lineup::Layout { spool, ..layout(Machine::Driven, 0.0) };
    let position = position(&layout, &seen).unwrap();
    let levels =
        vec![Level::flex_angle("site", None, Some(Angle::from_si(1.7e-4)), source()).unwrap()];
    let left = &position.line;
    let on = OnTrial { position: &position, seen: &seen, left, levels: &levels };
    let found = trials(&[on], &[still(), still()], 3, TRIALS).unwrap();
    for outcome in &found.couplings[0] {
        let by_squares = outcome.judgement.deviation.plus_minus.unwrap() / 2.0;
        // Four standard deviations of a standard deviation, 1/√(2n) each.
        let allowed = 4.0 / (2.0 * f64::from(TRIALS)).sqrt();
        assert!((outcome.deviation / by_squares - 1.0).abs() < allowed, "{outcome:?}");
        let off = outcome.mean - outcome.judgement.deviation.si;
        assert!(off.abs() < 4.0 * by_squares / f64::from(TRIALS).sqrt(), "{outcome:?}");
        share(outcome.inside, outcome.judgement.chance().unwrap());
    }
}

#[test]
fn a_seed_gives_the_same_answer_and_another_another() {
    let seen = typed([0.0, 0.020], [0.0, HAIR_MM]);
    let (position, levels, zero) = (placed(&seen), offset_level(0.012), Line::zero(mm(0.0)));
    let on = OnTrial { position: &position, seen: &seen, left: &zero, levels: &levels };
    // 1001 trials do not fill the last row of lanes.
    let run = |seed| trials(&[on], &[still(), still()], seed, 1001).unwrap();
    assert_eq!(run(5), run(5));
    assert!((run(5).inside - run(6).inside).abs() > 0.0);
    assert!((run(5).inside * 1001.0).fract().abs() < 1e-6);
}

#[test]
fn what_cannot_be_tried_is_said() {
    let seen = typed([0.0, 0.020], [0.0, HAIR_MM]);
    let (position, levels, zero) = (placed(&seen), offset_level(0.012), Line::zero(mm(0.0)));
    let on = OnTrial { position: &position, seen: &seen, left: &zero, levels: &levels };
    let growths = [still(), still()];
    assert_eq!(trials(&[], &[still()], 1, 10), Err(TrialsError::Nothing));
    assert_eq!(trials(&[on], &growths[..1], 1, 10), Err(TrialsError::Nothing));
    assert_eq!(trials(&[on], &growths, 1, 0), Err(TrialsError::Nothing));
    let unjudged = OnTrial { levels: &[], ..on };
    assert_eq!(trials(&[unjudged], &growths, 1, 10), Err(TrialsError::Nothing));
    let unseen = OnTrial { seen: &seen[..1], ..on };
    assert_eq!(trials(&[unseen], &growths, 1, 10), Err(TrialsError::NotFixed(0)));
    // Two rims 10 mm apart, each known to ±5 mm.
    let rim = |carrier: Machine, at| {
        let readings = QUARTERS.map(|degrees| (clock(degrees), mm(0.0)));
        let dial = Dial::new(carrier, carrier.other(), Surface::Rim, mm(at), mm(0.01));
        Observation::Sweep(Dial { lever_plus_minus: Some(mm(5.0)), ..dial.with(readings) })
    };
    let seen = [rim(Machine::Driver, 5.0), rim(Machine::Driven, -5.0)];
    let position = placed(&seen);
    let on = OnTrial { position: &position, seen: &seen, ..on };
    assert_eq!(trials(&[on], &growths, 1, 10), Err(TrialsError::Lever(0)));
}
