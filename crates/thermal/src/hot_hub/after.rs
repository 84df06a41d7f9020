//! After first contact: gripping, creeping, cooling.

use quantities::{Length, Physical, Time};

use super::{HotHub, LONGEST_S, Run};
use crate::ThermalError;
use crate::curve::{Pull, Sample, Watch, first_reach};
use crate::field::Past;
use crate::kernel::model::Model;
use crate::kernel::moment::ticks;
use crate::setup::{Setup, unsolved};

/// What comes after first contact, in the likely case; times count from home on the shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct After {
    /// The joint has its share of its cold grip, and holds by itself.
    pub grips: Option<Time>,
    /// The hub is cool enough to touch everywhere; `None` when it is not within a day.
    pub cool: Option<Time>,
    /// The pull when all is at 20 °C.
    pub cold_pull: Pull,
    /// How much the bore still shortens against the shaft in it from first contact until cold. If
    /// the far end grips first, so much gap can open at the shoulder: hold the hub against it
    /// until it grips.
    pub creep: Length,
}

/// The run to its end.
pub(super) struct Cooled {
    pub after: After,
    pub curve: Vec<Sample>,
    pub past: Past,
    pub energy: f64,
}

/// Goes on from first contact until the hub is cool.
pub(super) fn cool(
    asked: &HotHub,
    setup: &Setup,
    model: &Model,
    run: Run,
    cold_n: f64,
) -> Result<Cooled, ThermalError> {
    let Run { mut march, mut curve, mut past, contact_k, .. } = run;
    let watch = Watch::new(model, asked.friction, &asked.places)?;
    let end = ticks(LONGEST_S, 1);
    let touch_k = asked.touch.si();
    let never = setup.surroundings.hub.temperature >= asked.touch;
    let grip = asked.grip * asked.friction.low * cold_n;
    let done = |now: &Sample| now.pull.low.si() >= grip && (never || now.hub.si() <= touch_k);
    while march.now.ticks < end && !curve.last().is_some_and(done) {
        let leg = march.advance(end).ok_or_else(|| unsolved(march.now.seconds()))?;
        curve.push(watch.sample(&leg.to));
        past.note(leg.to.seconds(), &leg.to.temperature_k);
    }
    let cold_k = vec![setup.surroundings.hub.temperature.si(); contact_k.len()];
    let stretch = |nodal: &[f64]| model.elastic.stretch_m(&march.case.strain(nodal));
    let after = After {
        grips: first_reach(&curve, |sample| sample.pull.low.si(), grip),
        cool: first_reach(&curve, |sample| -sample.hub.si(), -touch_k),
        cold_pull: asked.friction.pull(cold_n),
        creep: Length::from_si((stretch(&contact_k) - stretch(&cold_k)).max(0.0)),
    };
    Ok(Cooled { after, curve, past, energy: march.ledger.error() })
}
