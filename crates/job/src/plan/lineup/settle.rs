//! What would settle a line-up that is too close to call, and by how much.
//!
//! Each thing that could be read more closely is tried on paper: one more sweep of every dial, arcs
//! made whole, the brackets' sag measured well, the growth known twice as well. What brings the `±`
//! down most is named, with what it would become.

use lineup::Plane;
use lineup::clock::Clock;
use lineup::dial::{Dial, Reading};
use lineup::line::Line;
use lineup::position::{Observation, foreseen, position};
use lineup::tolerance::{Judgement, Level, judge_line};
use quantities::{Length, Physical, Value};

use super::{Context, Joint};

/// A gain of less than this part of the `±` is not worth a walk.
const WORTH: f64 = 0.1;
/// A sag that was measured with care is known to this, m: half a division of a fine dial.
const SAG_KNOWN_M: f64 = 0.0025e-3;

/// The sentence for one judged deviation.
pub(super) fn sentence(cx: &Context, joint: &Joint, judgement: &Judgement) -> String {
    let now = judgement.deviation.plus_minus.unwrap_or(0.0);
    let mut ways: Vec<(f64, &str)> = Vec::new();
    let observations = joint.observations();
    let more = |further: &[Observation]| {
        let line = foreseen(&joint.position, &observations, further).ok()?;
        plus_minus(joint, &line.minus(&joint.target), judgement)
    };
    let sweeps: Vec<&Dial> = observations.iter().filter_map(sweep).collect();
    if !sweeps.is_empty() {
        let again: Vec<Observation> = sweeps.iter().map(|dial| whole_turn(dial)).collect();
        let words = if sweeps.iter().any(|dial| is_arc(dial)) {
            "Readings all the way round would bring"
        } else {
            "One more sweep would bring"
        };
        ways.extend(more(&again).map(|then| (then, words)));
    }
    ways.extend(
        with_sag_known(joint, &observations, judgement)
            .map(|then| (then, "A sag read closely on a mandrel would bring")),
    );
    ways.extend(with_growth_known(joint, judgement).map(|then| {
        (then, "Growth known twice as well, from temperatures read on the supports, would bring")
    }));
    let best = ways.into_iter().min_by(|a, b| a.0.total_cmp(&b.0));
    let digits = |si: f64| {
        let value = Value { si: 0.0, plus_minus: Some(si), ..judgement.deviation };
        (value.plus_minus_digits(cx.system).unwrap_or_default(), value.unit(cx.system))
    };
    if let Some((then, words)) = best.filter(|(then, _)| *then < (1.0 - WORTH) * now) {
        let ((now, unit), (then, _)) = (digits(now), digits(then));
        return format!("{words} the ± of {now} to ± {then} {unit}; read again before calling it.");
    }
    let (now, unit) = digits(now);
    format!(
        "Its ± of {now} {unit} reaches over the limit, and reading again would gain little: take it as outside."
    )
}

fn sweep(observation: &Observation) -> Option<&Dial> {
    match observation {
        Observation::Sweep(dial) => Some(dial),
        _ => None,
    }
}

/// The `±` of what was judged, for another line of deviation.
fn plus_minus(joint: &Joint, deviation: &Line, judged: &Judgement) -> Option<f64> {
    let levels: Vec<Level> = joint.levels.clone();
    let all = judge_line(&joint.position.layout, deviation, &levels).ok()?;
    let same = |one: &&Judgement| {
        one.plane == judged.plane && one.place == judged.place && one.measure == judged.measure
    };
    all.iter().find(same)?.deviation.plus_minus
}

/// The same dial swept once more all the way round; what it reads does not count.
fn whole_turn(dial: &Dial) -> Observation {
    let mut clocks = Clock::QUARTERS.to_vec();
    if !is_arc(dial) {
        clocks = dial.readings.iter().map(|reading| reading.clock).collect();
    }
    let readings = clocks.into_iter().map(|clock| Reading { clock, value: Length::default() });
    Observation::Sweep(Dial { readings: readings.collect(), ..dial.clone() })
}

/// True for a sweep that leaves more than a third of the turn out.
fn is_arc(dial: &Dial) -> bool {
    let mut degrees: Vec<f64> = dial.readings.iter().map(|r| r.clock.degrees()).collect();
    degrees.sort_by(f64::total_cmp);
    let first = degrees.first().copied().unwrap_or(0.0) + 360.0;
    let next = degrees.iter().skip(1).copied().chain([first]);
    degrees.iter().zip(next).any(|(here, there)| there - here > 120.5)
}

fn with_sag_known(joint: &Joint, seen: &[Observation], judged: &Judgement) -> Option<f64> {
    let known = Length::from_si(SAG_KNOWN_M);
    let mut any = false;
    let better = seen.iter().map(|observation| {
        let mut observation = observation.clone();
        if let Observation::Sweep(dial) = &mut observation
            && let Some(sag) = dial.sag.as_mut().filter(|sag| sag.amplitude.plus_minus > known)
        {
            sag.amplitude.plus_minus = known;
            any = true;
        }
        observation
    });
    let better: Vec<Observation> = better.collect();
    let line = any.then(|| position(&joint.position.layout, &better).ok()).flatten()?.line;
    plus_minus(joint, &line.minus(&joint.target), judged)
}

/// With the target's uncertainty halved.
fn with_growth_known(joint: &Joint, judged: &Judgement) -> Option<f64> {
    let target = plus_minus(joint, &joint.target, judged).filter(|target| *target > 0.0)?;
    let now = judged.deviation.plus_minus?;
    Some((now * now - 0.75 * target * target).max(0.0).sqrt())
}

/// What one more sweep of all dials would do to the offset's `±` at the coupling: now and then.
pub(super) fn one_more_sweep(joint: &Joint, plane: Plane) -> Option<(f64, f64)> {
    let observations = joint.observations();
    let again: Vec<Observation> = observations.iter().filter_map(sweep).map(whole_turn).collect();
    let line =
        foreseen(&joint.position, &observations, &again).ok().filter(|_| !again.is_empty())?;
    let at = joint.position.layout.reference;
    let now = joint.position.offset_at(plane, at).plus_minus;
    Some((now.si(), line.offset(plane, at).plus_minus.si()))
}
