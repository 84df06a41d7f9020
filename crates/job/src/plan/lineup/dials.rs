//! Dials as the job writes them, as `lineup` reads them; and what a sweep says of itself.

use lineup::clock::{Clock, View as ClockView};
use lineup::closure::{Check, Slip, check};
use lineup::dial::{Dial as Swept, Surface};
use lineup::position::{Observation, Offset, Slope};
use lineup::sag::{Bar as SagBar, Sag, bar_sag};
use lineup::{Body, Estimate, Plane};
use quantities::{
    Angle, Kind, Length, Limits, MassDensity, Measured, Physical, Pressure, System, Value, Verdict,
};

use tables::limits::CLOSURE;

use super::super::stage_builder::StageBuilder;
use super::{Context, machine, observed, x};
use crate::file::{Dial, DialKind, Named, Rim, View};
use crate::plan::sizes::capital;

/// Steel of a bracket's bar.
const STEEL_DENSITY: f64 = 7850.0;
const STEEL_YOUNG_PA: f64 = 207e9;
/// ± of offsets and slopes that another instrument gave without one: a rule of our own.
const TYPED_M: f64 = 0.02e-3;
const TYPED_RAD: f64 = 0.05e-3;

/// Every observation of the job.
pub(super) fn observations(cx: &Context) -> Vec<Observation> {
    let sweeps = cx.file.lineup.dials.values().filter_map(|dial| swept(cx, dial));
    let mut all: Vec<Observation> = sweeps.map(Observation::Sweep).collect();
    all.extend(typed(cx));
    all
}

/// One dial, when place and readings suffice for a sweep.
pub(super) fn swept(cx: &Context, dial: &Dial) -> Option<Swept> {
    let reads = dial.rides_on.other();
    let at = x(reads, dial.at.as_ref()?.value());
    let surface = match (dial.kind, dial.rim) {
        (DialKind::Face, _) => Surface::Face(dial.swing.as_ref()?.value()),
        (DialKind::Rim, Rim::Outside) => Surface::Rim,
        (DialKind::Rim, Rim::Inside) => Surface::InsideRim,
    };
    let mut swept = Swept::new(
        machine(dial.rides_on),
        machine(reads),
        surface,
        at,
        division(cx.system_of_job()),
    );
    swept.readings = readings(dial);
    swept.zero = None;
    swept.returned = dial.back.as_ref().map(Measured::value);
    swept.plus_minus = dial.spread.as_ref().map(Measured::value);
    swept.sag = sag(dial);
    (swept.readings.len() >= 3).then_some(swept)
}

/// Division of the dials in use: 0.01 mm, or half a mil (common practice).
fn division(system: System) -> Length {
    Length::from_si(match system {
        System::Metric => 0.01e-3,
        System::Inch => 0.0127e-3,
    })
}

fn readings(dial: &Dial) -> Vec<lineup::dial::Reading> {
    let view = match dial.view {
        View::FromDriver => ClockView::FromDriver,
        View::FromDriven => ClockView::FromDriven,
    };
    let read = |(at, value): (&String, &Measured<Length>)| {
        let clock = Clock::read(at, view).ok()?;
        Some(lineup::dial::Reading { clock, value: value.value() })
    };
    dial.readings.iter().filter_map(read).collect()
}

/// The sag of the bracket: measured, or worked out from its bar; a face dial's is left out.
pub(super) fn sag(dial: &Dial) -> Option<Sag> {
    if dial.kind == DialKind::Face {
        return None;
    }
    let amplitude = if let Some(written) = &dial.sag {
        observed(written, written.value() * 0.1)
    } else {
        let bar = dial.bar.as_ref()?;
        let bar = SagBar {
            outside: bar.outside.as_ref()?.value(),
            inside: bar.inside.as_ref().map_or_else(Length::default, Measured::value),
            overhang: bar.length.as_ref()?.value(),
            end_mass: bar.end_mass.as_ref()?.value(),
            density: MassDensity::from_si(STEEL_DENSITY),
            young: Pressure::from_si(STEEL_YOUNG_PA),
        };
        return bar_sag(bar).ok().map(|worked| worked.sag(dial.rides_on.key()));
    };
    Some(Sag { amplitude, bracket: dial.rides_on.key().to_owned() })
}

fn typed(cx: &Context) -> Vec<Observation> {
    let Some(typed) = &cx.file.lineup.typed else { return Vec::new() };
    let moving = machine(cx.file.machines.moves);
    let (of, from) = (Body::from(moving), Body::from(moving.other()));
    let offset = |plane, text: &Option<Measured<Length>>| {
        let amount = observed(text.as_ref()?, Length::from_si(TYPED_M));
        Some(Observation::Offset(Offset { plane, of, from, at: Length::default(), amount }))
    };
    let slope = |plane, text: &Option<Measured<Angle>>| {
        let text = text.as_ref()?;
        let spread = text.spread().unwrap_or(Angle::from_si(TYPED_RAD));
        let amount = Estimate::new(text.value(), spread);
        Some(Observation::Slope(Slope { plane, of, from, amount }))
    };
    [
        offset(Plane::Vertical, &typed.up),
        offset(Plane::Sideways, &typed.right),
        slope(Plane::Vertical, &typed.slope_up),
        slope(Plane::Sideways, &typed.slope_right),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// "dial on the motor reading the pump's rim".
pub(super) fn dial_name(cx: &Context, dial: &Dial) -> String {
    let part = match dial.kind {
        DialKind::Rim => "rim",
        DialKind::Face => "face",
    };
    format!("{} {part}, dial on the {}", cx.name(dial.rides_on.other()), cx.name(dial.rides_on))
}

/// What each sweep says of itself, and what each dial still lacks.
pub(super) fn checks(cx: &Context, out: &mut StageBuilder) {
    for (name, dial) in &cx.file.lineup.dials {
        asked(cx, out, name, dial);
        if let Some(swept) = swept(cx, dial)
            && let Ok(found) = check(&swept, CLOSURE.most)
        {
            check_numbers(cx, out, name, dial, &found);
        }
    }
}

fn asked(cx: &Context, out: &mut StageBuilder, name: &str, dial: &Dial) {
    let place = format!("lineup.dials.{name}");
    let called = dial_name(cx, dial);
    if dial.at.is_none() {
        out.missing(&format!("{place}.at"), &format!("where it touches: {called}"));
    }
    if dial.kind == DialKind::Face && dial.swing.is_none() {
        out.missing(&format!("{place}.swing"), &format!("swing diameter: {called}"));
    }
    for clock in unread(&dial.readings) {
        out.missing(&format!("{place}.readings.{clock}"), &format!("reading at {clock}: {called}"));
    }
    let no_sag = dial.kind == DialKind::Rim && sag(dial).is_none();
    if no_sag {
        out.missing(&format!("{place}.sag"), &format!("sag of the bracket: {called}"));
    }
}

/// The quarters that a sweep still lacks, while it lacks any four of its own.
fn unread(readings: &Named<Measured<Length>>) -> Vec<&'static str> {
    if readings.len() >= 4 {
        return Vec::new();
    }
    ["12", "3", "6", "9"].into_iter().filter(|clock| !readings.contains_key(*clock)).collect()
}

fn check_numbers(cx: &Context, out: &mut StageBuilder, name: &str, dial: &Dial, found: &Check) {
    let called = dial_name(cx, dial);
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
        out.number(&format!("{name}.closure"), format!("Closure, {called}"), sum)
            .second("12 and 6 together less 3 and 9 together; nothing for a true sweep")
            .working(closure.working())
            .judged(limits, settle);
    }
    if let Some(back) = found.return_to_zero {
        let value = Value::new(Kind::Offset, back.value);
        out.number(&format!("{name}.back"), format!("Back at its start, {called}"), value)
            .second("less what it showed there at first")
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
            format!("a whole turn of the pointer ({turn}) were missed at {clock}")
        }
    }
}
