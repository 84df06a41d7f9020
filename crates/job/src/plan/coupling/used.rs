//! How much of what the coupling bears is used up: offset, angle and axial position together.
//!
//! The line-up as it was read is looked at twice: warm, less what the supports grow, and cold at the
//! start. Once lined up to its target a machine still starts cold with all of that target, which
//! is the third look.

use couplings::envelope::{Borne, Misalignment, Shares, axial_left, shares};
use couplings::kind::{Planes, Sliding};
use couplings::teeth::{SlidingBand, axial_friction, sliding};
use lineup::line::Line;
use lineup::position::flex_angles;
use lineup::{Layout, Plane, Spool};
use mechanics::Estimate;
use quantities::{
    Angle, Basis, Kind, Length, Limits, Measured, Physical, Ratio, Source, Value, Working,
};

use super::super::Context;
use super::super::lineup::{Found, layout};
use super::super::stage_builder::StageBuilder;
use super::axial::thrust_limit;

/// Friction in the teeth that thrust bearings are chosen for: API practice, from memory.
const TEETH_FRICTION: f64 = 0.25;
const MEND: &str = "Line up closer to the target, or set the gap closer; the shares of angle, offset and axial add up.";

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    let none = cx.form.is_none_or(|form| form.planes == Planes::None);
    let Some(found) = cx.lineup().filter(|_| !none) else { return };
    let borne = borne(cx);
    if borne == Borne::default() {
        out.missing(
            "coupling.sheet.allows.running.angle",
            "what misalignment it bears running, from the maker’s sheet",
        );
    }
    let [running, cold, target] = states(cx, found);
    used(cx, out, ("running", "Misalignment used, running"), running, borne);
    used(cx, out, ("start", "Misalignment used, cold at the start"), cold, borne);
    used(cx, out, ("aimed", "Misalignment used cold, once lined up"), target, borne);
    offset_not_taken(cx, out, found);
    left(cx, out, running, borne);
    teeth(cx, out, running);
}

/// Running; cold at the start; cold once lined up.
fn states(cx: &Context, found: &Found) -> [Misalignment; 3] {
    [
        asked(cx, &found.running(), axial(cx, State::Running)),
        asked(cx, &found.own().position.line, axial(cx, State::Cold)),
        asked(cx, &found.own().target, cx.gap().off_when_set(cx).map(magnitude)),
    ]
}

/// What each state asks, beside what is borne, for a drawing; `None` where there is nothing to bear
/// it or the line-up is not known.
pub(in crate::plan) fn asked_and_borne(cx: &Context) -> Option<([Misalignment; 3], Borne)> {
    let bears = cx.form.is_some_and(|form| form.planes != Planes::None);
    let found = cx.lineup().filter(|_| bears)?;
    Some((states(cx, found), borne(cx)))
}

/// The angle at the worse engagement while running; `None` where the line-up is not known.
pub(in crate::plan) fn running_angle(cx: &Context) -> Option<Estimate<Angle>> {
    asked_and_borne(cx)?.0[0].angle
}

/// Warm or cold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum State {
    Running,
    Cold,
}

fn borne(cx: &Context) -> Borne {
    let allows = &cx.file.coupling.sheet.allows.running;
    let offset = allows.offset.as_ref().map(Measured::value);
    Borne {
        // Where the angles at both engagements are known, offset has become part of them.
        offset: offset.filter(|_| spool_layout(cx).is_none()),
        angle: allows.angle.as_ref().map(Measured::value),
        axial: allows.axial.as_ref().map(Measured::value),
    }
}

/// The layout with both engagements, for any coupling with two flexing planes whose distance is
/// known.
fn spool_layout(cx: &Context) -> Option<Layout> {
    let layout = layout(cx);
    if layout.spool.is_some() {
        return Some(layout);
    }
    let two = cx.form.is_some_and(|form| form.planes == Planes::Two);
    let between = cx.file.coupling.sheet.sizes.between_planes.as_ref().filter(|_| two)?;
    let half = between.value() / 2.0;
    let spool = Spool { driver_end: -half, driven_end: half };
    (half > Length::default()).then_some(Layout { spool: Some(spool), ..layout })
}

/// What a line of moving against fixed asks at the worse engagement.
fn asked(cx: &Context, line: &Line, axial: Option<Estimate<Length>>) -> Misalignment {
    if let Some(layout) = spool_layout(cx) {
        let [up, right] = Plane::BOTH.map(|plane| flex_angles(&layout, line, plane));
        let both = up.zip(right).map(|(up, right)| {
            let driver = together(up.driver_end, right.driver_end);
            let other = together(up.driven_end, right.driven_end);
            if driver.value > other.value { driver } else { other }
        });
        return Misalignment { offset: None, angle: both, axial };
    }
    let [up, right] = Plane::BOTH.map(|plane| line.slope(plane));
    let offsets = Plane::BOTH.map(|plane| line.offset(plane, Length::default()));
    let offset = (!bears_no_offset(cx)).then(|| together(offsets[0], offsets[1]));
    Misalignment { offset, angle: Some(together(up, right)), axial }
}

/// One plane of flexure alone takes no offset, and no sheet has an allowance for it.
fn bears_no_offset(cx: &Context) -> bool {
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return false };
    let forgives = kind.forgives(form);
    let none = forgives.parallel_mm.is_none() && forgives.angular_deg.is_some();
    let sheet = &cx.file.coupling.sheet.allows.running.offset;
    form.planes == Planes::One && none && sheet.is_none()
}

/// How far shafts are apart that a single plane cannot bring together: against the sheet's
/// allowance at fitting, else left to the limits of the line-up.
fn offset_not_taken(cx: &Context, out: &mut StageBuilder, found: &Found) {
    if !bears_no_offset(cx) {
        return;
    }
    let line = found.running();
    let [up, right] = Plane::BOTH.map(|plane| line.offset(plane, Length::default()));
    let off = together(up, right);
    let source = Source::new("parts at right angles", "", Basis::Computed);
    let label = "Offset that its one plane cannot take, running";
    let value = off.shown(Kind::Offset);
    let working = Working::new(label, "o = √(u² + r²)", value, source)
        .term("u", "offset up", up.shown(Kind::Offset))
        .term("r", "offset to the right", right.shown(Kind::Offset));
    let fitting = cx.file.coupling.sheet.allows.fitting.offset.as_ref().map(Measured::value);
    let speed = cx.file.machines.speed.as_ref().map(Measured::value);
    let by_speed = || tables::alignment::short(speed?).map(|rule| rule.offset_limit);
    let limit = fitting.map(|most| (most, "limit: the sheet, at fitting"));
    let limit = limit.or_else(|| Some((by_speed()?, "limit: the line-up’s rule by speed")));
    let entry = out.number("offset_not_taken", label, value).working(working);
    if let Some((most, second)) = limit {
        entry.second(second).judged(
            Limits::at_most(most.si()),
            "Line up closer: what the coupling cannot take bends the shafts.",
        );
    }
}

/// The length of two parts at right angles.
fn together<Q: Physical<Spread = Q>>(one: Estimate<Q>, other: Estimate<Q>) -> Estimate<Q> {
    let (a, b) = (one.value.si(), other.value.si());
    let (u, v) = (one.plus_minus.si(), other.plus_minus.si());
    let length = a.hypot(b);
    // Near nothing the direction is not known, and the greater of the two spreads holds.
    let spread = if length > u.max(v) { (a * u).hypot(b * v) / length } else { u.max(v) };
    Estimate::new(Q::from_si(length), Q::from_si(spread))
}

/// How far from the position that it was made for.
pub(super) fn axial(cx: &Context, state: State) -> Option<Estimate<Length>> {
    let off = match state {
        State::Running => cx.gap().running(cx)?.less(&Estimate::exact(cx.gap().made_for(cx)?)),
        State::Cold => cx.gap().read.as_ref()?.mean.less(&Estimate::exact(cx.gap().made_for(cx)?)),
    };
    Some(magnitude(off))
}

pub(super) fn magnitude(off: Estimate<Length>) -> Estimate<Length> {
    Estimate::new(off.value.abs(), off.plus_minus)
}

fn used(
    cx: &Context,
    out: &mut StageBuilder,
    (id, label): (&str, &str),
    asked: Misalignment,
    borne: Borne,
) {
    let Ok(found) = shares(&asked, &borne) else { return };
    let (Some(sum), Some(working)) = (found.sum(), found.working()) else {
        for what in found.no_figure {
            let (place, what) = lacking(cx, what);
            out.missing(place, &format!("{what}, from the maker’s sheet"));
        }
        return;
    };
    out.number(&format!("used.{id}"), label, sum)
        .second(parts(&found))
        .working(working)
        .judged(Limits::at_most(1.0), MEND);
}

/// The figure that is lacking. With two flexing planes the length between them does as well as an
/// offset allowance, and is on more sheets.
fn lacking(cx: &Context, what: &'static str) -> (&'static str, &'static str) {
    let two = cx.form.is_some_and(|form| form.planes == Planes::Two);
    match what {
        "offset allowance" if two => {
            ("coupling.sheet.sizes.between_planes", "length between the flexing planes")
        }
        "offset allowance" => ("coupling.sheet.allows.running.offset", what),
        "angle allowance" => ("coupling.sheet.allows.running.angle", what),
        _ => ("coupling.sheet.allows.running.axial", what),
    }
}

/// "offset 12 %, angle 8 %; limit: what the sheet bears, running".
fn parts(found: &Shares) -> String {
    let named = [(&found.offset, "offset"), (&found.angle, "angle"), (&found.axial, "axial")];
    let parts: Vec<String> = named
        .into_iter()
        .filter_map(|(share, name)| {
            Some(format!("{name} {:.0} %", share.as_ref()?.fraction().si * 100.0))
        })
        .collect();
    format!("{}; limit: what the sheet bears running, all together", parts.join(", "))
}

/// What the angle leaves of the axial movement.
fn left(cx: &Context, out: &mut StageBuilder, running: Misalignment, borne: Borne) {
    let (Some(angle), Some(most), Some(axial)) = (running.angle, borne.angle, borne.axial) else {
        return;
    };
    let Ok(left) = axial_left(angle.value, most, axial) else { return };
    let growth = cx.gap().growth.as_ref().map(|growth| growth.total().value.abs());
    let second = growth.map_or_else(String::new, |growth| {
        format!("the shafts grow {}", Value::new(Kind::Offset, growth).show(cx.system))
    });
    out.number(
        "axial_left",
        "Axial movement that the angle leaves",
        Value::new(Kind::Offset, left.left),
    )
    .second(second)
    .working(left.working());
}

/// How fast teeth slide at the angle that they run at, and what their friction holds.
fn teeth(cx: &Context, out: &mut StageBuilder, running: Misalignment) {
    let Some(kind) = cx.kind.filter(|kind| kind.teeth_slide() == Sliding::Yes) else { return };
    let Some(pitch) = &cx.file.coupling.sheet.sizes.pitch_diameter else {
        let what = format!("pitch diameter of the {} teeth, from the maker’s sheet", kind.name());
        out.missing("coupling.sheet.sizes.pitch_diameter", &what);
        return;
    };
    slide(cx, out, pitch.value(), running.angle);
    let friction = Ratio::from_si(TEETH_FRICTION);
    let held =
        cx.duty().and_then(|duty| axial_friction(duty.torque(), pitch.value(), friction).ok());
    if let Some(held) = held {
        let value = Value::new(Kind::Force, held.force);
        let entry = out
            .number("teeth.force", "Axial force that the teeth hold before they slide", value)
            .second("lands on a thrust bearing; friction as API practice has it, from memory")
            .working(held.working());
        if let Some((limits, end)) = thrust_limit(cx) {
            entry
                .second(format!(
                    "friction as API practice has it, from memory; limit: the {}, as entered",
                    cx.name(end)
                ))
                .judged(limits, "Fresh grease and good teeth, or a kind that slides less; ask the machine’s maker.");
        }
    }
}

fn slide(cx: &Context, out: &mut StageBuilder, pitch: Length, angle: Option<Estimate<Angle>>) {
    let speed = cx.file.machines.speed.as_ref().map(Measured::value);
    let Some((angle, speed)) = angle.zip(speed) else { return };
    let Ok(found) = sliding(pitch, angle.high(), speed) else { return };
    let band = match found.band() {
        SlidingBand::Ordinary => "ordinary greased couplings run so",
        SlidingBand::Fast => "fast: hardened teeth, close seals and the right grease",
        SlidingBand::TooFast => "beyond what sealed grease is used for: ask the maker",
    };
    let value = Value::new(Kind::Velocity, found.highest);
    out.number("teeth.sliding", "Sliding speed of the teeth, at most", value)
        .second(format!("{band} ({})", SlidingBand::SOURCE))
        .working(found.working());
}
