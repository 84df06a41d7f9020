//! What each sweep says of itself, and what each dial still lacks.

use lineup::closure::{Check, Slip, check};
use lineup::position::Observation;
use lineup::suspects::{Mistake, suspects};
use quantities::{Kind, Length, Limits, Measured, Physical, Value, Verdict, Working};
use tables::limits::{CLOSURE, HUB_RIM_RUNOUT};

use super::super::stage_builder::StageBuilder;
use super::Context;
use super::bench::{self, Setup};
use super::seen::{SAG_UNKNOWN_M, Seen, Sweeps, clock_view, dial_name, rough, sag, seen, swept};
use crate::file::{Dial, DialKind, Named, Turned};
use crate::plan::sizes::capital;

/// Swings that differ by less are on one circle.
const SAME_CIRCLE_M: f64 = 0.5e-3;

/// An observation this many times its own uncertainty off the others is named; a rule of our own.
const ODD: f64 = 3.0;

/// The dials of one coupling.
pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, setup: &Setup) {
    for (name, dial) in setup.dials {
        asked(out, setup, name, dial);
        let id = if setup.key.is_empty() { name.clone() } else { format!("{}.{name}", setup.key) };
        let called = dial_name(setup, dial);
        let sweep = |readings| swept(cx, setup, dial, readings);
        let first = first(cx, setup, dial);
        let again = dial.again.iter().map(|(number, readings)| {
            (format!("{id}.{number}"), format!("{called}, sweep {number}"), sweep(readings))
        });
        let all = std::iter::once((id.clone(), called.clone(), first)).chain(again);
        for (id, called, swept) in all {
            if let Some(swept) = swept
                && let Ok(found) = check(&swept, CLOSURE.most)
            {
                check_numbers(cx, out, &id, &called, &found);
            }
        }
    }
    contradictions(cx, out, setup);
}

/// True while a sweep of this job does not close, or did not come back to its start: nothing is moved
/// on it.
pub(super) fn fails(cx: &Context) -> bool {
    let fails = |setup: &Setup, dial: &Dial| {
        let found = first(cx, setup, dial).and_then(|swept| check(&swept, CLOSURE.most).ok());
        found.is_some_and(|found| found.verdict(CLOSURE.most) == Verdict::Outside)
    };
    bench::setups(cx).iter().any(|setup| setup.dials.values().any(|dial| fails(setup, dial)))
}

/// The sweep of a dial with its start and what it showed there at the end.
fn first(cx: &Context, setup: &Setup, dial: &Dial) -> Option<lineup::dial::Dial> {
    let swept = swept(cx, setup, dial, &dial.readings)?;
    let returned = dial.back.as_ref().map(Measured::value);
    Some(lineup::dial::Dial { returned, zero: first_clock(dial), ..swept })
}

/// Where the dial was set to zero: at a position that reads nothing, if one does, 12 first.
fn first_clock(dial: &Dial) -> Option<lineup::clock::Clock> {
    let zero = |(_, value): &(&String, &Measured<Length>)| value.value() == Length::default();
    let clocks = dial.readings.iter().filter(zero).map(|(clock, _)| clock);
    let first = clocks.min_by_key(|clock| (clock.as_str() != "12", (*clock).clone()))?;
    lineup::clock::Clock::read(first, clock_view(dial.view)).ok()
}

fn asked(out: &mut StageBuilder, setup: &Setup, name: &str, dial: &Dial) {
    let place = format!("{}.dials.{name}", setup.place);
    let called = dial_name(setup, dial);
    let rim = dial.kind == DialKind::Rim;
    if dial.at.is_none() && rim {
        out.missing(&format!("{place}.at"), &format!("where it touches: {called}"));
    }
    if dial.kind == DialKind::Face && dial.swing.is_none() {
        out.missing(&format!("{place}.swing"), &format!("swing diameter: {called}"));
    }
    for clock in unread(&dial.readings) {
        out.missing(&format!("{place}.readings.{clock}"), &format!("reading at {clock}: {called}"));
    }
    if rim && sag(dial, "").is_none() {
        out.missing(&format!("{place}.sag"), &format!("sag of the bracket: {called}"));
        let unknown = Value::new(Kind::Offset, Length::from_si(SAG_UNKNOWN_M)).show(out.system());
        out.note(capital(&format!("{called}: the sag of its bracket is not known. It counts as none ± {unknown} until it is measured on a mandrel, and every height is as much less sure.")));
    }
    given_twice(out, dial, &called);
    if let Some(other) = setup.dials.get(&dial.opposite)
        && let (Some(one), Some(two)) = (&dial.swing, &other.swing)
        && (one.value() - two.value()).abs() > Length::from_si(SAME_CIRCLE_M)
    {
        out.note(capital(&format!("{called}: it swings on {}, its opposite on {}. Two faces against end float want one circle, so neither counts: set both alike.", one.text(), two.text())));
    }
    if rim && dial.sag.is_none() && dial.mandrel.is_none() && dial.bar.is_some() {
        out.note(capital(&format!("{called}: its sag is worked out from the bar, ± half of it; clamp and post give as well. Measure it on a mandrel.")));
    }
    if dial.turned == Turned::Carrier && dial.runout.is_none() {
        out.missing(&format!("{place}.runout"), &format!("runout of the hub read: {called}"));
        let most = Value::new(Kind::Offset, HUB_RIM_RUNOUT.most).show(out.system());
        out.note(capital(&format!("{called}: one shaft was turned, so the other hub’s runout is in the readings. It counts as {most} until it is measured; turn both together, and it drops out.")));
    }
}

/// A sag that is said in two ways, or in a way that a face dial does not have.
fn given_twice(out: &mut StageBuilder, dial: &Dial, called: &str) {
    let ways = [
        ("mandrel", dial.mandrel.is_some()),
        ("sag", dial.sag.is_some()),
        ("bar", dial.bar.is_some()),
    ];
    let given: Vec<&str> = ways.iter().filter(|(_, given)| *given).map(|(way, _)| *way).collect();
    if dial.kind == DialKind::Face && given.iter().any(|way| *way != "mandrel") {
        out.note(capital(&format!("{called}: the sag of a face dial is what it shows at the bottom of a mandrel, of either sign (mandrel); {} says nothing of a face and is left out.", given.iter().filter(|way| **way != "mandrel").copied().collect::<Vec<_>>().join(" and "))));
    } else if given.len() > 1 {
        out.note(capital(&format!("{called}: its sag is given as {}. The first of them counts; take the others out, or find out which is true.", given.join(" and as "))));
    }
}

/// The quarters that a sweep still lacks, while it lacks any four of its own.
fn unread(readings: &Named<Measured<Length>>) -> Vec<&'static str> {
    if readings.len() >= 4 {
        return Vec::new();
    }
    ["12", "3", "6", "9"].into_iter().filter(|clock| !readings.contains_key(*clock)).collect()
}

fn check_numbers(cx: &Context, out: &mut StageBuilder, id: &str, called: &str, found: &Check) {
    let limits = Limits::between(-CLOSURE.most.si(), CLOSURE.most.si());
    let slips: Vec<String> = found.slips.iter().map(|slip| slip_words(cx, slip)).collect();
    let settle = if slips.is_empty() {
        "Sweep again: the readings contradict each other.".to_owned()
    } else {
        format!("Sweep again. It would close if {}.", slips.join(", or if "))
    };
    if let Some(closure) = found.closures.first() {
        // The dial's own rounding must not turn a clean sweep into a doubtful one: it is the
        // readings' sum that is judged.
        let sum = Value::new(Kind::Offset, closure.sum.value);
        out.number(&format!("{id}.closure"), format!("Closure, {called}"), sum)
            .second("12 and 6 together less 3 and 9 together; nothing for a true sweep")
            .working(Working { result: sum, ..closure.working() })
            .judged(limits, settle);
    }
    if let Some(back) = found.return_to_zero {
        let value = Value::new(Kind::Offset, back.value);
        out.number(&format!("{id}.back"), format!("Back at its start, {called}"), value)
            .second("less what it showed there at first")
            .written(CLOSURE.source)
            .judged(
                limits,
                "Something moved during the sweep. Fasten the bracket and sweep again.",
            );
    }
    if let Some(odd) = &found.odd {
        let off = Value::new(Kind::Offset, odd.off_by).show(cx.system);
        let clock = odd.clock;
        out.note(capital(&format!("{called}: the reading at {clock} lies {off} off the circle through the others. Read it again.")));
    }
    if found.verdict(CLOSURE.most) == Verdict::Outside {
        out.note(capital(&format!("{called}: do not move anything on this sweep.")));
    }
}

fn slip_words(cx: &Context, slip: &Slip) -> String {
    match slip {
        Slip::Sign(clock) => format!("the reading at {clock} had the other sign"),
        Slip::Swapped(one, other) => format!("{one} and {other} were booked in each other’s place"),
        Slip::Turn(clock, turn) => {
            let turn = Value::new(Kind::Offset, *turn).show(cx.system);
            format!("a whole turn of the pointer ({turn}) was missed at {clock}")
        }
    }
}

/// Dials that contradict each other, or straightedge and feelers: which one was probably booked the
/// wrong way round, or else which one does not fit.
fn contradictions(cx: &Context, out: &mut StageBuilder, setup: &Setup) {
    let mut all: Vec<Seen> = seen(cx, setup, Sweeps::Found);
    if setup.key.is_empty() {
        all.extend(rough(setup, &cx.file.lineup.rough));
    }
    let observations: Vec<Observation> = all.iter().map(|seen| seen.observation.clone()).collect();
    let Ok(found) = suspects(&setup.layout, &observations) else { return };
    if let Some(suspect) = found.first() {
        let called = &all[suspect.observation].what;
        let slip = match suspect.mistake {
            Mistake::View => "was read from the other end: 3 and 9 stand in each other’s place",
            Mistake::Sign => {
                "has all its signs turned: the stem on the other side, or the pointer the other way"
            }
        };
        out.note(capital(&format!("{called}: it contradicts the rest, and would agree if it {slip}. Look again before moving anything.")));
        return;
    }
    let Ok(position) = lineup::position::position(&setup.layout, &observations) else { return };
    if let Some(misfit) = position.misfits.first().filter(|misfit| misfit.standardised.abs() > ODD)
    {
        let called = &all[misfit.observation].what;
        let plane = misfit.plane.words();
        out.note(capital(&format!("{called}: {plane} it does not fit the rest, by {:.0} times its own uncertainty. Read it again.", misfit.standardised.abs())));
    }
}
