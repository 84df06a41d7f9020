//! Levels, bound feet, feet that do not sit, pipe strain and the way along the shafts.

#![expect(clippy::unwrap_used, reason = "a test that cannot be set up must stop")]

mod common;

use common::*;
use lineup::axial::{AxialError, EndFloat, ShaftGrowth, shaft_ends, usual_float};
use lineup::bounded::best_move;
use lineup::foot::{
    Corner, FootKind, FootReadings, PlacedGap, Twist, highest_rise, kind, out_of_plane,
};
use lineup::growth::{PlaneGrowth, growth_line, target, target_working};
use lineup::line::Line;
use lineup::moves::{FootPlane, Watch, moves};
use lineup::strain::PipeStrain;
use lineup::tolerance::{Level, Measure, Place, ToleranceError, judge_line, worst};
use lineup::{Estimate, Layout, Machine, Plane, Spool};
use proptest::prelude::*;
use quantities::{
    Angle, Physical, Power, Source, System, TemperatureCoefficient, TemperatureInterval, Verdict,
};
use uom::si::power::horsepower;

const VERTICAL: Plane = Plane::Vertical;
const SHOP: Source = Source::common_practice("table by speed");

/// A line through two heights (mm) at two places (mm), level sideways.
fn through(a: (f64, f64), b: (f64, f64), plus_minus: f64) -> Line {
    let at = |(x, y): (f64, f64)| PlaneGrowth::up(mm(x), Estimate::new(mm(y), mm(plus_minus)));
    growth_line(&[at(a), at(b)]).unwrap()
}

fn offset_level(name: &str, aim_mm: Option<f64>, limit_mm: Option<f64>) -> Level {
    Level::offset(name, aim_mm.map(mm), limit_mm.map(mm), SHOP).unwrap()
}

fn slope_level(limit_mm_per_m: f64) -> Level {
    Level::slope("slope", None, Some(Angle::from_si(limit_mm_per_m / 1e3)), SHOP).unwrap()
}

/// A worked line of a common table, metric series: at 6000 rpm 0.03 mm per 100 mm of spacer, so
/// 300 mm of spacer may be off by 0.09 mm.
#[test]
fn a_spacer_is_judged_at_its_flex_planes() {
    let layout = Layout {
        spool: Some(Spool { driver_end: mm(0.0), driven_end: mm(300.0) }),
        ..layout(Machine::Driven, 150.0)
    };
    let level =
        Level::flex_angle("6000 rpm", None, Some(Angle::from_si(0.03 / 100.0)), SHOP).unwrap();
    let verdicts = |at_driven_end: f64| {
        let line = through((0.0, 0.0), (300.0, at_driven_end), 0.0);
        let judged = judge_line(&layout, &line, std::slice::from_ref(&level)).unwrap();
        let vertical = |place| {
            let one = judged.iter().find(|j| j.plane == VERTICAL && j.place == place).unwrap();
            one.verdict()
        };
        [vertical(Place::DriverEnd), vertical(Place::DrivenEnd)]
    };
    // The offset at the driven end sets the angle at the driver's.
    assert_eq!(verdicts(0.0899), [Verdict::Inside, Verdict::Inside]);
    assert_eq!(verdicts(0.0901), [Verdict::Outside, Verdict::Inside]);
    let bare = Layout { spool: None, ..layout };
    let line = Line::zero(mm(0.0));
    assert_eq!(judge_line(&bare, &line, &[level]), Err(ToleranceError::NoSpool));
}

/// A worked line of the same table for short couplings: 1500 rpm, −0.04 and 0.02 mm against an aim
/// of 0.06 mm are both within it. (One reprint calls that figure 2 mils; the table has 0.06 mm.)
#[test]
fn two_offsets_within_their_aim() {
    let level = offset_level("1500 rpm", Some(0.06), Some(0.09));
    let planes = |mm_up: f64, mm_right: f64| PlaneGrowth {
        at: mm(0.0),
        up: Estimate::exact(mm(mm_up)),
        right: Estimate::exact(mm(mm_right)),
    };
    let line = growth_line(&[planes(-0.04, 0.02)]).unwrap();
    let judged = judge_line(&layout(Machine::Driver, 0.0), &line, &[level]).unwrap();
    assert_eq!(judged.len(), 2);
    for judgement in &judged {
        assert_eq!(judgement.by_aim.as_ref().unwrap().1, Verdict::Inside);
        assert_eq!(judgement.verdict(), Verdict::Inside);
    }
    let working = judged[0].working();
    assert_eq!(working.put_in(System::Metric), "|−0.04 mm|/0.09 mm");
}

#[test]
fn the_strictest_level_is_named_and_the_spread_counts() {
    let levels = [
        offset_level("table", None, Some(0.09)),
        offset_level("site rule", Some(0.03), Some(0.05)),
        offset_level("coupling", None, Some(0.30)),
    ];
    let line = through((0.0, 0.045), (100.0, 0.045), 0.02);
    let judged = judge_line(&layout(Machine::Driver, 0.0), &line, &levels).unwrap();
    let vertical = &judged[0];
    assert_eq!((vertical.plane, vertical.measure), (VERTICAL, Measure::Offset));
    let (level, verdict) = vertical.by_limit.as_ref().unwrap();
    assert_eq!((level.name.as_str(), *verdict), ("site rule", Verdict::TooClose));
    near(vertical.ratio(), 0.9, 1e-9);
    assert_eq!(worst(&judged), Verdict::TooClose);
    assert_eq!(worst(&[]), Verdict::NotMeasured);
    assert!(Level::offset("", Some(mm(0.1)), Some(mm(0.05)), SHOP).is_err());
    assert!(Level::offset("", None, None, SHOP).is_err());
    assert!(Level::offset("", None, Some(mm(f64::NAN)), SHOP).is_err());
}

fn feet(shims: f64, side: f64) -> Vec<FootPlane> {
    [("front", 300.0), ("rear", 700.0)]
        .map(|(name, x)| FootPlane {
            name: name.into(),
            at: mm(x),
            shims: Some(mm(shims)),
            pack: Vec::new(),
            side_room: Some((mm(side), mm(side))),
        })
        .into()
}

#[test]
fn bound_feet_are_flagged_with_what_is_missing() {
    // Front 0.35 too high with 0.20 of shims there; sideways in line.
    let position = through((0.0, 0.20), (300.0, 0.35), 0.01);
    let found = moves(&position, &Line::zero(mm(0.0)), &feet(0.20, 1.0)).unwrap();
    near(in_mm(found[0].up().value), -0.35, 1e-9);
    assert!(found[0].is_base_bound() && !found[0].is_bolt_bound());
    near(in_mm(found[0].beyond(VERTICAL)), -0.15, 1e-9);
    near(in_mm(found[0].dial_reads(Watch::OnTop)), -0.35, 1e-9);
    let aside = PlaneGrowth {
        at: mm(0.0),
        up: Estimate::exact(mm(0.0)),
        right: Estimate::exact(mm(-0.25)),
    };
    let aside = growth_line(&[aside]).unwrap();
    let aside = &moves(&aside, &Line::zero(mm(0.0)), &feet(0.20, 0.10)).unwrap()[1];
    near(in_mm(aside.dial_reads(Watch::FromRight)), 0.25, 1e-9);
    near(in_mm(aside.dial_reads(Watch::FromLeft)), -0.25, 1e-9);
    assert!(aside.is_bolt_bound());
    near(in_mm(aside.beyond(Plane::Sideways)), 0.15, 1e-9);
    let working = found[0].working(VERTICAL);
    assert_eq!(working.put_in(System::Metric), "0.00 mm − 0.35 mm");
}

/// Growths of ±0.02 mm at −600 and −200 mm, drawn out to 0: weights −1/2 and 3/2, so ±√2.5·0.02;
/// three planes fit a line whose ± at the middle is ±0.02/√3. A target adds the squares of both.
#[test]
fn growth_carries_its_spread_to_the_coupling() {
    let grown = |x: f64| PlaneGrowth::up(mm(x), Estimate::new(mm(0.1), mm(0.02)));
    let two = growth_line(&[grown(-600.0), grown(-200.0)]).unwrap();
    near(in_mm(two.offset(VERTICAL, mm(0.0)).plus_minus), 2.5_f64.sqrt() * 0.02, 1e-9);
    let three = growth_line(&[grown(300.0), grown(500.0), grown(700.0)]).unwrap();
    near(in_mm(three.offset(VERTICAL, mm(500.0)).plus_minus), 0.02 / 3.0_f64.sqrt(), 1e-9);
    let both = target(&two, &three).offset(VERTICAL, mm(0.0)).plus_minus;
    let parts = [&two, &three].map(|line| in_mm(line.offset(VERTICAL, mm(0.0)).plus_minus));
    near(in_mm(both), parts[0].hypot(parts[1]), 1e-9);
    let working = target_working(&two, &three, VERTICAL, mm(0.0));
    near(working.result.si, working.terms[0].value.si - working.terms[1].value.si, 1e-15);
    assert!(growth_line(&[]).is_err());
    assert!(growth_line(&[grown(1.0), grown(1.0)]).is_err());
}

#[test]
fn with_room_the_best_move_is_the_whole_move() {
    let position = through((0.0, 0.20), (300.0, 0.35), 0.01);
    let levels = [offset_level("", None, Some(0.05)), slope_level(0.5)];
    let target = Line::zero(mm(0.0));
    let best =
        best_move(&layout(Machine::Driven, 0.0), &position, &target, &feet(1.0, 1.0), &levels);
    let best = best.unwrap();
    near(best.worst_ratio, 0.0, 1e-9);
    near(in_mm(best.feet[0][0]), -0.35, 1e-9);
    assert!(best.obstacles.is_empty());
    let one =
        best_move(&layout(Machine::Driven, 0.0), &position, &target, &feet(1.0, 1.0), &levels[..1]);
    assert!(one.is_err());
}

proptest! {
    /// No move on a fine grid within the feet's room leaves less than the best one does.
    #[test]
    fn no_allowed_move_is_better(
        front in -0.6..0.6_f64,
        rear in -0.6..0.6_f64,
        shims in 0.0..0.4_f64,
        offset_limit in 0.02..0.2_f64,
        slope_limit in 0.1..1.0_f64,
    ) {
        let position = through((300.0, front), (700.0, rear), 0.0);
        let levels = [offset_level("", None, Some(offset_limit)), slope_level(slope_limit)];
        let target = Line::zero(mm(0.0));
        let layout = layout(Machine::Driven, 0.0);
        let best = best_move(&layout, &position, &target, &feet(shims, 1.0), &levels).unwrap();
        let left = |up_front: f64, up_rear: f64| {
            let slope = (rear + up_rear - front - up_front) / 400.0;
            let offset = front + up_front - 300.0 * slope;
            (offset / offset_limit).powi(2) + (slope * 1e3 / slope_limit).powi(2)
        };
        let (up_front, up_rear) = (in_mm(best.feet[0][0]), in_mm(best.feet[1][0]));
        prop_assert!(up_front >= -shims - 1e-9 && up_rear >= -shims - 1e-9);
        let least = left(up_front, up_rear);
        for i in 0..=60 {
            for j in 0..=60 {
                let step = |i: i32| -shims + (0.7 + shims) * f64::from(i) / 60.0;
                prop_assert!(least <= left(step(i), step(j)) + 1e-9);
            }
        }
        let wanted = best.obstacles.iter().filter(|o| o.plane == VERTICAL).count();
        prop_assert_eq!(wanted, [front, rear].iter().filter(|y| **y > shims).count());
    }
}

/// US Bureau of Reclamation, FIST 4-1A, page 17: rises 0.005, 0.002, 0.002, 0.002 in: a shim of
/// 0.003 in under the first.
#[test]
fn one_foot_rises_more_than_the_rest() {
    let rises = [0.005, 0.002, 0.002, 0.002].map(|inches| mm(inches * IN));
    let (index, shim) = highest_rise(&rises).unwrap();
    assert_eq!(index, 0);
    near(in_mm(shim) / IN, 0.003, 1e-9);
    assert!(highest_rise(&rises[1..]).is_none());
}

/// Pads 0.02, −0.05, 0.01, 0.04 and soles 0, 0.01, −0.02, 0 mm (front left, rear left, rear right,
/// front right): the gap profile has a twist of −0.07 mm, taken out at rear left or front right; residuals
/// from the best plane are a quarter of it.
#[test]
fn four_feet_rock_by_their_twist() {
    let pads = [0.02, -0.05, 0.01, 0.04];
    let soles = [0.0, 0.01, -0.02, 0.0];
    let gaps: [f64; 4] = std::array::from_fn(|i| soles[i] - pads[i]);
    let twist = Twist::of(gaps.map(|gap| Estimate::new(mm(gap), mm(0.01)))).unwrap();
    near(in_mm(twist.twist.value), -0.07, 1e-9);
    near(in_mm(twist.twist.plus_minus), 0.02, 1e-9);
    near(in_mm(twist.shim()), 0.07, 1e-9);
    assert_eq!(twist.feet_that_stand_off(), [Corner::RearLeft, Corner::FrontRight]);
    assert_eq!(twist.verdict(mm(0.05)), Verdict::TooClose);
    assert_eq!(twist.verdict(mm(0.04)), Verdict::Outside);
    let places = [(0.0, 0.0), (600.0, 0.0), (600.0, 420.0), (0.0, 420.0)];
    let feet: Vec<PlacedGap> = places
        .iter()
        .zip(gaps)
        .map(|((x, z), gap)| PlacedGap { x: mm(*x), z: mm(*z), gap: mm(gap) })
        .collect();
    let off = out_of_plane(&feet).unwrap();
    for (off, wanted) in off.iter().zip([-0.0175, 0.0175, -0.0175, 0.0175]) {
        near(in_mm(*off), wanted, 1e-9);
    }
    assert!(out_of_plane(&feet[..3]).is_err());
}

#[test]
fn gaps_say_what_kind_of_foot_it_is() {
    let found = |rise: f64, free: Option<f64>, gaps: Option<[f64; 4]>| {
        let exact = |rise: f64| Estimate::new(mm(rise), mm(0.01));
        let gaps = gaps.map(|gaps| gaps.map(mm));
        let name = "front left".to_owned();
        kind(&FootReadings { name, rise: exact(rise), rise_free: free.map(exact), gaps }, mm(0.05))
            .unwrap()
    };
    assert_eq!(found(0.03, None, None).kind, FootKind::Sound);
    assert_eq!(found(0.20, None, None).kind, FootKind::GapsWanted);
    assert_eq!(found(0.20, Some(0.02), None).kind, FootKind::Induced);
    assert_eq!(found(0.20, None, Some([0.0, 0.02, 0.01, 0.0])).kind, FootKind::Springing);
    let parallel = found(0.20, None, Some([0.19, 0.20, 0.20, 0.21]));
    assert_eq!((parallel.kind, parallel.verdict), (FootKind::Parallel, Verdict::Outside));
    near(in_mm(parallel.shim.unwrap()), 0.20, 1e-9);
    // Half the limit of 0.05 mm parts even from uneven.
    assert_eq!(found(0.20, None, Some([0.19, 0.21, 0.20, 0.19])).kind, FootKind::Parallel);
    assert_eq!(found(0.20, None, Some([0.18, 0.21, 0.20, 0.18])).kind, FootKind::Angled);
    let angled = found(0.20, None, Some([0.05, 0.25, 0.25, 0.05]));
    assert_eq!(angled.kind, FootKind::Angled);
    near(in_mm(angled.shim.unwrap()), 0.05, 1e-9);
    near(in_mm(angled.steps.unwrap()[1]), 0.20, 1e-9);
    assert_eq!(found(0.055, None, None).verdict, Verdict::TooClose);
}

/// API RP 686, 2nd ed., clauses 4.6 to 4.8 by a summary: 0.01 mm a centimetre of flange, 0.25 mm when
/// small, 0.75 mm at most; the shaft may move 0.05 mm.
#[test]
fn pipes_may_pull_this_much() {
    for (outside, limit) in [(200.0, 0.25), (400.0, 0.40), (900.0, 0.75)] {
        near(in_mm(tables::limits::pipe_parallelism(mm(outside)).unwrap().most), limit, 1e-9);
    }
    assert!(tables::limits::pipe_parallelism(mm(0.0)).is_none());
    let movement = [0.03, -0.07].map(|moved| Estimate::new(mm(moved), mm(0.01)));
    let strain = PipeStrain { movement, limit: tables::limits::PIPE_STRAIN.most };
    assert_eq!(strain.verdict(VERTICAL), Verdict::Inside);
    assert_eq!(strain.verdict(Plane::Sideways), Verdict::Outside);
    assert_eq!(strain.worst(), Verdict::Outside);
}

/// By ΔL = c·ΔT·L along both shafts: 0.8424 and 0.5148 mm, so 180 mm hot is 181.3572 mm cold.
#[test]
fn shaft_ends_stand_apart_cold() {
    let shaft = |length: f64, rise: f64| ShaftGrowth {
        length: mm(length),
        rise: Estimate::new(TemperatureInterval::from_si(rise), TemperatureInterval::from_si(5.0)),
        expansion: TemperatureCoefficient::from_si(11.7e-6),
        casing: Estimate::exact(mm(0.0)),
    };
    let ends = shaft_ends(mm(180.0), &shaft(900.0, 80.0), &shaft(1100.0, 40.0)).unwrap();
    near(in_mm(ends.driver.value), 0.8424, 1e-9);
    near(in_mm(ends.driven.value), 0.5148, 1e-9);
    near(in_mm(ends.cold.value), 181.3572, 1e-9);
    let spread = (0.9_f64 * 5.0 * 11.7e-3).hypot(1.1 * 5.0 * 11.7e-3);
    near(in_mm(ends.cold.plus_minus), spread, 1e-9);
    assert!(shaft_ends(mm(f64::NAN), &shaft(900.0, 80.0), &shaft(1100.0, 40.0)).is_err());
}

/// Sleeve-bearing motor of 0.5 in float and a coupling of 3/16 in travel, a published pair; on the
/// middle of the float (0.5 − 0.1875)/2 in is left, and 3/32 in off it a sixteenth.
#[test]
fn limited_float_keeps_off_the_shoulders() {
    let exact = |inches: f64| Estimate::exact(mm(inches * IN));
    let on_middle = EndFloat::new(exact(0.5), exact(0.0), exact(0.1875)).unwrap();
    near(in_mm(on_middle.clearance().value) / IN, 0.156_25, 1e-9);
    assert_eq!(on_middle.within_half_of_float(), Verdict::Inside);
    let off_middle = EndFloat::new(exact(0.5), exact(-0.093_75), exact(0.1875)).unwrap();
    near(in_mm(off_middle.clearance().value) / IN, 0.0625, 1e-9);
    assert_eq!(off_middle.clears_shoulders(), Verdict::Inside);
    let free = EndFloat::new(exact(0.5), exact(0.0), exact(0.3)).unwrap();
    assert_eq!(free.within_half_of_float(), Verdict::Outside);
    let hits = EndFloat::new(exact(0.25), exact(0.1), exact(0.09)).unwrap();
    assert_eq!(hits.clears_shoulders(), Verdict::Outside);
    let beyond = EndFloat::new(exact(0.25), exact(0.2), exact(0.09));
    assert!(matches!(beyond, Err(AxialError::BeyondFloat { .. })));
}

/// NEMA MG 1, part 20 (from memory): 0.25 in with 0.09 in to 450 hp, 0.5 in with 0.19 in from 500 hp;
/// each pair keeps the rule of half the rotor's float (common practice).
#[test]
fn the_usual_floats_go_together() {
    let motor = |hp: f64| Power::new::<horsepower>(hp);
    for (hp, rotor, coupling) in [(125.0, 0.25, 0.09), (450.0, 0.25, 0.09), (500.0, 0.5, 0.19)] {
        let pair = usual_float(motor(hp)).unwrap();
        near(in_mm(pair.rotor_least) / IN, rotor, 1e-9);
        near(in_mm(pair.coupling_greatest) / IN, coupling, 1e-9);
        let [rotor, coupling] = [pair.rotor_least, pair.coupling_greatest].map(Estimate::exact);
        let float = EndFloat::new(rotor, Estimate::exact(mm(0.0)), coupling).unwrap();
        assert_eq!(float.within_half_of_float(), Verdict::Inside);
        assert_eq!(float.clears_shoulders(), Verdict::Inside);
    }
    assert!(usual_float(motor(50.0)).is_none() && usual_float(motor(470.0)).is_none());
}
