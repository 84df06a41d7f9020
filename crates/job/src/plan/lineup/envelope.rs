//! What running asks of a spacer coupling's own allowance at each flexing plane, the angle and the
//! axial position together. The coupling's stage tells the worse of the two, and short couplings.

use couplings::envelope::{Borne, Misalignment, shares};
use lineup::position::flex_angles;
use lineup::{Estimate, Plane};
use quantities::{Angle, Length, Limits, Measured, Physical};

use super::super::stage_builder::StageBuilder;
use super::{Context, Found};
use crate::file::End;

const MEND: &str =
    "Line up closer, or set the gap nearer to what it runs at; an allowance is used up once.";
const CLOSER: &str = "Its ± reaches over the allowance: read dials and gap again, more closely.";

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder, found: &Found) {
    if found.own().position.layout.spool.is_none() {
        return;
    }
    let allows = &cx.file.coupling.sheet.allows.running;
    let borne = Borne {
        offset: None,
        angle: allows.angle.as_ref().map(Measured::value),
        axial: allows.axial.as_ref().map(Measured::value),
    };
    let axial = axial(cx).filter(|_| borne.axial.is_some());
    for end in End::BOTH {
        let angle = angle_at(found, end).filter(|_| borne.angle.is_some());
        let asked = Misalignment { angle, axial, offset: None };
        let Ok(shares) = shares(&asked, &borne) else { continue };
        let (Some(sum), Some(working)) = (shares.sum(), shares.working()) else { continue };
        let label = format!("Coupling’s allowance used, {} end", cx.name(end));
        let what = if axial.is_some() { "angle and axial position together" } else { "angle" };
        out.number(&format!("envelope.{}", end.key()), label, sum)
            .second(format!("running, as it stands now: {what}; the sheet"))
            .working(working)
            .judged(Limits::at_most(1.0), MEND)
            .settled_by(CLOSER);
    }
}

/// How far from the axial position that it was made for, running.
fn axial(cx: &Context) -> Option<Estimate<Length>> {
    let off = cx.gap().running(cx)?.less(&Estimate::exact(cx.gap().made_for(cx)?));
    Some(Estimate::new(off.value.abs(), off.plus_minus))
}

/// The angle at one flexing plane, running, with its `±` by the law of propagation.
fn angle_at(found: &Found, end: End) -> Option<Estimate<Angle>> {
    let running = found.running();
    let at = |plane| {
        let angles = flex_angles(&found.own().position.layout, &running, plane)?;
        let angle = if end == End::Driver { angles.driver_end } else { angles.driven_end };
        Some((angle.value.si(), angle.plus_minus.si()))
    };
    let ((a, u), (b, v)) = (at(Plane::Vertical)?, at(Plane::Sideways)?);
    let size = a.hypot(b);
    // Near nothing the direction is not known, and the greater of the two spreads holds.
    let spread = if size > u.max(v) { (a * u).hypot(b * v) / size } else { u.max(v) };
    Some(Estimate::new(Angle::from_si(size), Angle::from_si(spread)))
}
