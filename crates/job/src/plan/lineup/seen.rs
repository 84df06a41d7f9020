//! What was seen: dials, straightedge and feelers, and other instruments, as `lineup` takes them.

use lineup::clock::{Clock, View as ClockView};
use lineup::dial::{Dial as Swept, Reading, Stem, Surface, Turning, free_of_float};
use lineup::position::{Gap, Observation, Offset, STRAIGHTEDGE_M, Slope};
use lineup::sag::{Bar as SagBar, Sag, bar_sag};
use lineup::{Body, Estimate, Plane};
use quantities::{Angle, Length, MassDensity, Measured, Physical, Pressure, System};
use tables::limits::{HUB_FACE_RUNOUT, HUB_RIM_RUNOUT};

use super::bench::Setup;
use super::{Context, machine, observed};
use crate::file::{
    Dial, DialKind, End, FaceSide, Named, Offsets, Reads, Rim, Rises, Rough, Text, Turned, View,
};

/// Steel of a bracket's bar.
const STEEL_DENSITY: f64 = 7850.0;
const STEEL_YOUNG_PA: f64 = 207e9;
/// ± of offsets and slopes that another instrument gave without one: a rule of our own.
const TYPED_M: f64 = 0.02e-3;
const TYPED_RAD: f64 = 0.05e-3;
/// ± of a sag that was measured without one, as a part of it: a rule of our own.
const SAG_PART: f64 = 0.1;
/// ± of a sag that nobody measured: a bracket of common reach sags by a tenth or so (common practice).
pub(super) const SAG_UNKNOWN_M: f64 = 0.1e-3;

/// One observation and where it comes from.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Seen {
    /// The name of its dial; nothing for what was typed or roughed in.
    pub dial: Option<String>,
    /// "pump rim, dial on the motor".
    pub what: String,
    pub observation: Observation,
}

/// Which readings of the dials count.
#[derive(Clone, Copy)]
pub(super) enum Sweeps<'a> {
    /// Those of the dials themselves.
    Found,
    /// Those as left, by the dials' names, with what another instrument gave.
    Left(&'a crate::file::AsLeft),
}

/// Every observation at a coupling, straightedge and feelers left out.
pub(super) fn seen(cx: &Context, setup: &Setup, which: Sweeps) -> Vec<Seen> {
    let mut all = Vec::new();
    for (name, dial) in setup.dials {
        if is_second_of_pair(setup.dials, name) {
            continue;
        }
        let what = dial_name(setup, dial);
        for readings in sweeps(name, dial, which) {
            let partner = setup.dials.get(&dial.opposite);
            let swept = match partner {
                None => swept(cx, setup, dial, readings),
                Some(other) => paired(cx, setup, (dial, readings), (&dial.opposite, other), which),
            };
            if let Some(swept) = swept {
                let observation = Observation::Sweep(swept);
                all.push(Seen { dial: Some(name.clone()), what: what.clone(), observation });
            }
        }
    }
    let typed = match which {
        Sweeps::Found => setup.typed,
        Sweeps::Left(left) => left.typed.as_ref(),
    };
    all.extend(typed.into_iter().flat_map(|typed| typed_in(setup, typed)));
    all
}

/// The sweeps of one dial: its readings, and those of further sweeps.
fn sweeps<'a>(name: &str, dial: &'a Dial, which: Sweeps<'a>) -> Vec<&'a Named<Measured<Length>>> {
    match which {
        Sweeps::Found => std::iter::once(&dial.readings).chain(dial.again.values()).collect(),
        Sweeps::Left(left) => left.dials.get(name).map(|left| &left.readings).into_iter().collect(),
    }
}

/// True for a face dial that another one names as its opposite: the two are read as one.
fn is_second_of_pair(dials: &Named<Dial>, name: &String) -> bool {
    dials.iter().any(|(other, dial)| {
        let mutual = dials.get(name).is_some_and(|own| own.opposite == *other);
        dial.opposite == *name && other != name && (!mutual || other < name)
    })
}

fn paired(
    cx: &Context,
    setup: &Setup,
    (dial, readings): (&Dial, &Named<Measured<Length>>),
    (name, other): (&str, &Dial),
    which: Sweeps,
) -> Option<Swept> {
    let first = swept_of(cx, setup, dial, readings)?;
    let seconds = sweeps(name, other, which);
    let second = swept_of(cx, setup, other, seconds.first()?)?;
    let both = free_of_float(&first, &second).ok()?;
    (both.readings.len() >= 3).then_some(both)
}

/// One sweep, when place and readings suffice for one.
pub(super) fn swept(
    cx: &Context,
    setup: &Setup,
    dial: &Dial,
    readings: &Named<Measured<Length>>,
) -> Option<Swept> {
    swept_of(cx, setup, dial, readings).filter(|swept| swept.readings.len() >= 3)
}

fn swept_of(
    cx: &Context,
    setup: &Setup,
    dial: &Dial,
    readings: &Named<Measured<Length>>,
) -> Option<Swept> {
    let carrier = Body::from(machine(dial.rides_on));
    let (touches, towards) = touched(dial);
    let side = if towards == End::Driver { -1.0 } else { 1.0 };
    let reach = match (&dial.at, dial.kind) {
        (Some(at), _) => at.value(),
        // A face tells a slope, which is the same everywhere.
        (None, DialKind::Face) => Length::default(),
        (None, DialKind::Rim) => return None,
    };
    let surface = match (dial.kind, dial.rim, dial.face) {
        (DialKind::Face, _, FaceSide::Near) => Surface::Face(dial.swing.as_ref()?.value()),
        (DialKind::Face, _, FaceSide::Far) => Surface::FarFace(dial.swing.as_ref()?.value()),
        (DialKind::Rim, Rim::Outside, _) => Surface::Rim,
        (DialKind::Rim, Rim::Inside, _) => Surface::InsideRim,
    };
    let lever = if dial.kind == DialKind::Rim { &dial.at } else { &dial.swing };
    let at = setup.layout.reference + reach * side;
    let division = dial.division.as_ref().map_or_else(|| usual_division(cx), Measured::value);
    Some(Swept {
        readings: clocked(dial.view, readings),
        zero: None,
        plus_minus: dial.spread.as_ref().map(Measured::value),
        lever_plus_minus: lever.as_ref().and_then(Measured::spread),
        stem: match dial.rises {
            Rises::PushedIn => Stem::RisesPushedIn,
            Rises::LetOut => Stem::FallsPushedIn,
        },
        turning: turning(dial),
        sag: sag(dial, &setup.key).or_else(|| unknown_sag(dial, &setup.key)),
        ..Swept::new(carrier, touches, surface, at, division)
    })
}

/// What the stem touches, and towards which machine its place is measured.
fn touched(dial: &Dial) -> (Body, End) {
    match dial.reads {
        Some(Reads::Spool) => (Body::Spool, dial.rides_on),
        Some(Reads::Driver) => (Body::Driver, End::Driver),
        Some(Reads::Driven) => (Body::Driven, End::Driven),
        None => (machine(dial.rides_on.other()).into(), dial.rides_on.other()),
    }
}

/// Division of the dials in use: 0.01 mm, or half a mil (common practice).
fn usual_division(cx: &Context) -> Length {
    Length::from_si(match cx.system_of_job() {
        System::Metric => 0.01e-3,
        System::Inch => 0.0127e-3,
    })
}

pub(super) fn clock_view(view: View) -> ClockView {
    match view {
        View::FromDriver => ClockView::FromDriver,
        View::FromDriven => ClockView::FromDriven,
    }
}

fn clocked(view: View, readings: &Named<Measured<Length>>) -> Vec<Reading> {
    let read = |(at, value): (&String, &Measured<Length>)| {
        let clock = Clock::read(at, clock_view(view)).ok()?;
        Some(Reading { clock, value: value.value() })
    };
    readings.iter().filter_map(read).collect()
}

/// What was turned; a runout that nobody measured counts with the most that a hub may have.
fn turning(dial: &Dial) -> Turning {
    if dial.turned == Turned::Both {
        return Turning::Together;
    }
    let usual = if dial.kind == DialKind::Rim { HUB_RIM_RUNOUT } else { HUB_FACE_RUNOUT };
    let runout = dial.runout.as_ref().map_or(usual.most, Measured::value);
    match Clock::read(&dial.high, clock_view(dial.view)) {
        Ok(high) if dial.runout.is_some() => Turning::CarrierOver { runout, high },
        _ => Turning::CarrierAlone(runout),
    }
}

/// A rim dial's sag while nobody measured it: none, and as unsure as a bracket of common reach.
fn unknown_sag(dial: &Dial, coupling: &str) -> Option<Sag> {
    let amplitude = Estimate::new(Length::default(), Length::from_si(SAG_UNKNOWN_M));
    (dial.kind == DialKind::Rim).then(|| Sag { amplitude, bracket: bracket(dial, coupling) })
}

/// Which bracket: dials on one share the error of its sag.
fn bracket(dial: &Dial, coupling: &str) -> String {
    let bracket = if dial.bracket.is_empty() { dial.rides_on.key() } else { &dial.bracket };
    format!("{coupling} {bracket}")
}

/// The sag of the bracket: measured, or worked out from its bar. A face dial's is what it showed on
/// a mandrel, and nothing otherwise.
pub(super) fn sag(dial: &Dial, coupling: &str) -> Option<Sag> {
    let bracket = bracket(dial, coupling);
    if let Some(mandrel) = &dial.mandrel {
        let bottom = observed(mandrel, mandrel.value().abs() * SAG_PART);
        return match dial.kind {
            DialKind::Rim => Sag::rim_on_mandrel(bottom, &bracket).ok(),
            DialKind::Face => Sag::face_on_mandrel(bottom, &bracket).ok(),
        };
    }
    if dial.kind == DialKind::Face {
        return None;
    }
    if let Some(written) = &dial.sag {
        let amplitude = observed(written, written.value() * SAG_PART);
        return Some(Sag { amplitude, bracket });
    }
    let bar = dial.bar.as_ref()?;
    let bar = SagBar {
        outside: bar.outside.as_ref()?.value(),
        inside: bar.inside.as_ref().map_or_else(Length::default, Measured::value),
        overhang: bar.length.as_ref()?.value(),
        end_mass: bar.end_mass.as_ref()?.value(),
        density: MassDensity::from_si(STEEL_DENSITY),
        young: Pressure::from_si(STEEL_YOUNG_PA),
    };
    bar_sag(bar).ok().map(|worked| worked.sag(&bracket))
}

/// What another instrument gave.
fn typed_in(setup: &Setup, typed: &Offsets) -> Vec<Seen> {
    let moving = setup.layout.moving;
    let (of, from) = (Body::from(moving), Body::from(moving.other()));
    let offset = |plane, at, text: &Text<Length>| {
        let amount = observed(text.as_ref()?, Length::from_si(TYPED_M));
        Some(Observation::Offset(Offset { plane, of, from, at, amount }))
    };
    let slope = |plane, text: &Text<Angle>| {
        let text = text.as_ref()?;
        let spread = text.spread().unwrap_or(Angle::from_si(TYPED_RAD));
        let amount = Estimate::new(text.value(), spread);
        Some(Observation::Slope(Slope { plane, of, from, amount }))
    };
    let middle = setup.layout.reference;
    let mut all = vec![
        offset(Plane::Vertical, middle, &typed.up),
        offset(Plane::Sideways, middle, &typed.right),
        slope(Plane::Vertical, &typed.slope_up),
        slope(Plane::Sideways, &typed.slope_right),
    ];
    for place in typed.planes.values() {
        let Some(at) = place.at.as_ref().map(|at| middle + at.value()) else { continue };
        all.extend([
            offset(Plane::Vertical, at, &place.up),
            offset(Plane::Sideways, at, &place.right),
        ]);
    }
    let what = "from the other instrument";
    let seen = |observation| Seen { dial: None, what: what.to_owned(), observation };
    all.into_iter().flatten().map(seen).collect()
}

/// What straightedge and feelers say: coarse, for roughing in.
pub(super) fn rough(setup: &Setup, rough: &Rough) -> Vec<Seen> {
    let moving = setup.layout.moving;
    let (of, from) = (Body::from(moving), Body::from(moving.other()));
    let sides = [(Plane::Vertical, "12", "6"), (Plane::Sideways, "3", "9")];
    let mut all = Vec::new();
    for (plane, first, second) in sides {
        let at =
            |named: &Named<Measured<Length>>, clock: &str| named.get(clock).map(Measured::value);
        let steps = (at(&rough.steps, first), at(&rough.steps, second));
        // One place alone takes both rims for equal, and is as much less sure.
        let step = match steps {
            (Some(first), Some(second)) => Some(((first - second) / 2.0, 1.0)),
            (Some(first), None) => Some((first, 2.0)),
            (None, Some(second)) => Some((-second, 2.0)),
            (None, None) => None,
        };
        if let Some((step, times)) = step {
            let amount = Estimate::new(step, Length::from_si(times * STRAIGHTEDGE_M));
            let at = setup.layout.reference;
            all.push(Observation::Offset(Offset { plane, of, from, at, amount }));
        }
        let gaps = at(&rough.gaps, first).zip(at(&rough.gaps, second));
        if let (Some((first, second)), Some(diameter)) = (gaps, &rough.diameter) {
            let between = (of, from);
            let gap = Gap::by_feelers(plane, between, diameter.value(), first - second);
            all.push(Observation::Gap(gap));
        }
    }
    let what = "straightedge and feelers";
    let seen = |observation| Seen { dial: None, what: what.to_owned(), observation };
    all.into_iter().map(seen).collect()
}

/// "pump rim, dial on the motor".
pub(super) fn dial_name(setup: &Setup, dial: &Dial) -> String {
    let part = match dial.kind {
        DialKind::Rim => "rim",
        DialKind::Face => "face",
    };
    let read = match dial.reads {
        Some(Reads::Spool) => "spool",
        Some(Reads::Driver) => setup.name(End::Driver),
        Some(Reads::Driven) => setup.name(End::Driven),
        None => setup.name(dial.rides_on.other()),
    };
    format!("{read} {part}, dial on the {}", setup.name(dial.rides_on))
}
