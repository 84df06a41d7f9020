//! What running asks of the coupling's own allowance: offset, angle and axial movement together.

use couplings::envelope::{Borne, Misalignment, Shares, shares};
use lineup::growth::target;
use lineup::line::Line;
use lineup::position::flex_angles;
use lineup::{Estimate, Plane};
use quantities::{Angle, Kind, Length, Limits, Measured, Physical, Value};

use super::super::stage_builder::StageBuilder;
use super::{Context, Found, Joint};
use crate::file::End;

const MEND: &str =
    "Line up closer, or set the gap nearer to what it runs at; an allowance is used up once.";
const CLOSER: &str = "Its ± reaches over the allowance: read dials and gap again, more closely.";

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, found: &Found) {
    let joint = found.own();
    let running = running(found, joint);
    let allows = &cx.file.coupling.sheet.allows.running;
    let borne = Borne {
        offset: allows.offset.as_ref().map(Measured::value),
        angle: allows.angle.as_ref().map(Measured::value),
        axial: allows.axial.as_ref().map(Measured::value),
    };
    let axial = axial(cx).filter(|_| borne.axial.is_some());
    if joint.position.layout.spool.is_some() {
        for end in End::BOTH {
            let asked = Misalignment { angle: angle_at(joint, &running, end), axial, offset: None };
            let asked = only_known(asked, &borne);
            let label = format!("Coupling’s allowance used, {} end", cx.name(end));
            number(out, &format!("envelope.{}", end.key()), label, &asked, &borne);
        }
        return;
    }
    let middle = joint.position.layout.reference;
    let offset = both(Plane::BOTH.map(|plane| running.offset(plane, middle)));
    let angle = both(Plane::BOTH.map(|plane| running.slope(plane)));
    let asked = Misalignment { offset: Some(offset), angle: Some(angle), axial };
    let asked = only_known(asked, &borne);
    number(out, "envelope", "Coupling’s allowance used".to_owned(), &asked, &borne);
}

/// Where the moving shaft lies against the other one when running.
fn running(found: &Found, joint: &Joint) -> Line {
    let (fixed, moving) = found.states(1);
    joint.position.line.minus(&target(fixed, moving))
}

/// What the shafts' growth moves the hubs towards each other.
fn axial(cx: &Context) -> Option<Estimate<Length>> {
    let gap = &cx.file.gap;
    let one = |text: &Option<Measured<Length>>| {
        let text = text.as_ref()?;
        Some(Estimate::new(text.value().abs(), text.spread().unwrap_or_default()))
    };
    one(&gap.shaft_growth).or_else(|| {
        let (left, right) = (one(&gap.driver.growth)?, one(&gap.driven.growth)?);
        let spread = left.plus_minus.si().hypot(right.plus_minus.si());
        Some(Estimate::new(left.value + right.value, Length::from_si(spread)))
    })
}

fn angle_at(joint: &Joint, running: &Line, end: End) -> Option<Estimate<Angle>> {
    let at = |plane| {
        let angles = flex_angles(&joint.position.layout, running, plane)?;
        Some(if end == End::Driver { angles.driver_end } else { angles.driven_end })
    };
    Some(both([at(Plane::Vertical)?, at(Plane::Sideways)?]))
}

/// The two planes put together: the size of the whole, with its `±` by the law of propagation.
fn both<Q: Physical<Spread = Q>>([up, right]: [Estimate<Q>; 2]) -> Estimate<Q> {
    let [(a, u), (b, v)] = [up, right].map(|one| (one.value.si(), one.plus_minus.si()));
    let size = a.hypot(b);
    let spread = if size > 0.0 { (a * u).hypot(b * v) / size } else { u.max(v) };
    Estimate::new(Q::from_si(size), Q::from_si(spread))
}

/// What the sheet has no figure for is left out: it cannot be a share of anything.
fn only_known(asked: Misalignment, borne: &Borne) -> Misalignment {
    Misalignment {
        offset: asked.offset.filter(|_| borne.offset.is_some()),
        angle: asked.angle.filter(|_| borne.angle.is_some()),
        axial: asked.axial,
    }
}

fn number(out: &mut StageBuilder, id: &str, label: String, asked: &Misalignment, borne: &Borne) {
    let Ok(shares) = shares(asked, borne) else { return };
    let Some(sum) = shares.sum() else { return };
    let entry = out
        .number(id, label, Value { kind: Kind::Percent, ..sum })
        .second(format!("running, as it stands now: {} together; the sheet", parts(&shares)));
    let entry = match shares.working() {
        Some(working) => entry.working(working),
        None => entry,
    };
    entry.judged(Limits::at_most(1.0), MEND).settled_by(CLOSER);
}

fn parts(shares: &Shares) -> String {
    let all =
        [("offset", &shares.offset), ("angle", &shares.angle), ("axial movement", &shares.axial)];
    let all = all.into_iter().filter(|(_, share)| share.is_some());
    all.map(|(name, _)| name).collect::<Vec<_>>().join(", ")
}
