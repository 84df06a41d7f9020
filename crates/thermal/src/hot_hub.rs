//! Heat on: a hot hub on a cold shaft, and how long it stays open.
//!
//! The hub, hot through and through, is home on the shaft at once; from then on heat crosses the
//! gap, the hub shrinks, the shaft grows, and the clearance closes from both sides. Nothing else
//! sets the pace: the air outside hardly matters. The clock ends at the first contact anywhere
//! along the bore. Where that is depends on the smallest of inputs, and is not reported.
//!
//! A hub that is still being slid has less of the shaft to heat, so the time is on the safe side;
//! the low end of the range (resting on one side, growing little, conducting well) is the one to
//! work by.
//!
//! Not here: how hot the hub must be (`mechanics::heat`), what it may be heated to (`tables`).

mod after;
mod working;

pub use after::After;

use quantities::{Length, Physical, Ratio, ThermodynamicTemperature, Time};
use rayon::join;

use crate::ThermalError;
use crate::check::{Check, Effort, difference, duration, share};
use crate::curve::{Friction, Peak, Place, Sample, Watch, peaks};
use crate::field::{Field, Past};
use crate::kernel::case::Place as Where;
use crate::kernel::march::March;
use crate::kernel::model::Model;
use crate::kernel::moment::ticks;
use crate::profile::{Hub, Shaft};
use crate::setup::{HOTTEST_K, SWITCH_TICKS, Setup, kelvin, unsolved};
use crate::surfaces::Surfaces;
use crate::surroundings::Surroundings;
use crate::unknowns::{Bounds, Guess, Unknowns};

/// A hot hub and the shaft that it goes on.
#[derive(Clone, Debug, PartialEq)]
pub struct HotHub {
    /// The hub.
    pub hub: Hub,
    /// The shaft.
    pub shaft: Shaft,
    /// Diametral interference at 20 °C: the upper end of its `±`, before flattening.
    pub interference: Length,
    /// Hub as it leaves the heater, hot through and through.
    pub hub_temperature: ThermodynamicTemperature,
    /// Shaft before the hub is on it.
    pub shaft_temperature: ThermodynamicTemperature,
    /// Time from the heater to the shaft, in air.
    pub carried: Time,
    /// Air.
    pub surroundings: Surroundings,
    /// The joint.
    pub surfaces: Surfaces,
    /// What nobody knows exactly.
    pub unknowns: Unknowns,
    /// Friction once it grips.
    pub friction: Friction,
    /// What share of its cold grip makes a joint that holds by itself: one half, a rule of our own.
    pub grip: f64,
    /// Cool enough to touch: 50 °C (common practice for a short touch of bare metal).
    pub touch: ThermodynamicTemperature,
    /// Places whose temperature is wanted.
    pub places: Vec<Place>,
    /// How much work goes into it.
    pub effort: Effort,
}

/// How long a hot hub stays open, and what comes after.
#[derive(Clone, Debug, PartialEq)]
pub struct Grab {
    /// What was asked.
    pub asked: HotHub,
    /// From home on the shaft to first contact; the low end is the one to work by.
    pub contact: Bounds<Time>,
    /// Least clearance on the diameter as the hub comes home, in the tight case.
    pub clearance: Length,
    /// After first contact, in the likely case.
    pub after: After,
    /// The places that were asked for, in their order, in the likely case.
    pub places: Vec<Peak>,
    /// The likely case, from home on the shaft until it is cool.
    pub curve: Vec<Sample>,
    /// The tight case, until first contact.
    pub tight: Vec<Sample>,
    /// Temperature over the section in the likely case: a few moments up to first contact, a few
    /// after it.
    pub fields: Vec<Field>,
    /// How far it can be trusted as arithmetic.
    pub check: Check,
}

/// The seconds alone: as [`Grab::contact`], with nothing of what comes after.
#[derive(Clone, Debug, PartialEq)]
pub struct InHand {
    /// From home on the shaft to first contact; the low end is the one to work by.
    pub contact: Bounds<Time>,
    /// Nodes of the mesh.
    pub nodes: usize,
    /// Steps of time in the likely case.
    pub steps: usize,
    /// The likely case, from home on the shaft to a little after first contact.
    pub curve: Vec<Sample>,
    /// The tight case.
    pub tight: Vec<Sample>,
}

/// Moments that are kept as fields, as shares of the time to first contact.
const MOMENTS: [f64; 8] = [0.0, 0.25, 0.5, 0.75, 1.0, 2.0, 5.0, 20.0];

/// A day: a hub that has not grabbed or cooled by then does not.
const LONGEST_S: f64 = 86_400.0;

impl HotHub {
    /// A hub and shaft in still air of the shaft's temperature, all else at its default.
    pub fn new(
        hub: Hub,
        shaft: Shaft,
        interference: Length,
        hub_temperature: ThermodynamicTemperature,
        shaft_temperature: ThermodynamicTemperature,
    ) -> Self {
        Self {
            hub,
            shaft,
            interference,
            hub_temperature,
            shaft_temperature,
            carried: Time::from_si(0.0),
            surroundings: Surroundings::still(shaft_temperature),
            surfaces: Surfaces::default(),
            unknowns: Unknowns::default(),
            friction: Friction::default(),
            grip: 0.5,
            touch: ThermodynamicTemperature::from_si(323.15),
            places: Vec::new(),
            effort: Effort::default(),
        }
    }

    /// How long it stays open, when it grips, when it is cool.
    ///
    /// # Valid
    /// Straight bore, elastic, axisymmetric: no keyway, no taper, no tilt; the hub evenly hot to
    /// begin with. Heat crosses the joint as the mean round it ([`Surfaces`]).
    /// # Errors
    /// [`ThermalError`]: sizes that do not nest, figures that are none, a hub hotter than its metal
    /// may be or than is modelled (600 °C), too cold to clear the shaft or never to grab it, a bore that yields once cold, and an
    /// answer that a coarser mesh does not confirm.
    /// # Source
    /// Heat conduction and linear thermoelasticity by finite elements; checked against the series
    /// for a long cylinder (Incropera et al.) and Lamé's thick ring (Shigley).
    /// # Example
    /// ```
    /// use quantities::{Length, ThermodynamicTemperature};
    /// use thermal::{HotHub, Hub, Metal, Shaft};
    /// use uom::si::{length::millimeter, thermodynamic_temperature::degree_celsius, time::second};
    /// let (mm, c) = (Length::new::<millimeter>, ThermodynamicTemperature::new::<degree_celsius>);
    /// let steel = Metal::from(tables::materials::material("steel").unwrap());
    /// let hub = Hub::plain(mm(80.0), mm(130.0), mm(90.0), steel.clone());
    /// let shaft = Shaft::solid(mm(80.0), steel);
    /// let grab = HotHub::new(hub, shaft, mm(0.06), c(180.0), c(20.0)).solve()?;
    /// let seconds = grab.contact.low.get::<second>();
    /// assert!(10.0 < seconds && seconds < 60.0, "{seconds}");
    /// # Ok::<(), thermal::ThermalError>(())
    /// ```
    pub fn solve(&self) -> Result<Grab, ThermalError> {
        let setup = self.setup()?;
        let model = setup.model(self.effort, vec![])?;
        let cold_n = setup.cold_force_n(&model)?;
        let touching = |guess: Guess| self.until_contact(&setup, &model, &guess, self.effort, None);
        let (likely, (tight, loose)) = join(
            || touching(self.unknowns.likely()),
            || join(|| touching(self.unknowns.tight()), || touching(self.unknowns.loose())),
        );
        let (likely, tight, loose) = (likely?, tight?, loose?);
        let contact = Bounds {
            low: Time::from_si(tight.contact_s),
            likely: Time::from_si(likely.contact_s),
            high: Time::from_si(loose.contact_s),
        };
        let clearance = Length::from_si(2.0 * tight.start_m);
        let tight = tight.curve;
        let roughly = |rough| {
            let coarse = setup.model(rough, vec![])?;
            let other =
                self.until_contact(&setup, &coarse, &self.unknowns.likely(), rough, None)?;
            Ok(Ratio::from_si(difference(contact.likely.si(), other.contact_s)))
        };
        let (run, coarser) = join(
            || after::cool(self, &setup, &model, likely, cold_n),
            || self.effort.rougher().map(roughly),
        );
        let (run, coarser) = (run?, coarser.transpose()?);
        let check = Check {
            energy: Ratio::from_si(run.energy),
            coarser,
            nodes: model.mesh.nodes_m.len(),
            steps: run.curve.len(),
        }
        .passed()?;
        let (after, curve) = (run.after, run.curve);
        let places = peaks(&curve, &self.places);
        let moments = MOMENTS.map(|share| share * contact.likely.si()).to_vec();
        let fields = run.past.fields(&model, moments);
        let asked = self.clone();
        Ok(Grab { asked, contact, clearance, after, places, curve, tight, fields, check })
    }

    /// The seconds alone, quick enough to follow a slider. Compared with no other mesh: at
    /// [`Effort::Quick`] within half a percent of the settled answer for an ordinary hub.
    ///
    /// # Errors
    /// As [`HotHub::solve`].
    pub fn in_hand(&self) -> Result<InHand, ThermalError> {
        let setup = self.setup()?;
        let model = setup.model(self.effort, vec![])?;
        setup.cold_force_n(&model)?;
        let known = self.unknowns.likely();
        let likely = self.until_contact(&setup, &model, &known, self.effort, None)?;
        let course = |guess: Guess| -> Result<_, ThermalError> {
            if guess == known {
                return Ok((likely.contact_s, likely.curve.clone()));
            }
            let run = self.until_contact(&setup, &model, &guess, self.effort, None)?;
            Ok((run.contact_s, run.curve))
        };
        let ((low, tight), (high, _)) =
            (course(self.unknowns.tight())?, course(self.unknowns.loose())?);
        let [low, likely_time, high] = [low, likely.contact_s, high].map(Time::from_si);
        let contact = Bounds { low, likely: likely_time, high };
        let (nodes, steps) = (model.mesh.nodes_m.len(), likely.curve.len() - 1);
        Ok(InHand { contact, nodes, steps, curve: likely.curve, tight })
    }

    /// The seconds alone in the likely case, in steps of one length, rounded to a thousandth of a
    /// second or so, whose error nobody looks at: for setting the work beside another program's.
    ///
    /// # Errors
    /// As [`HotHub::solve`].
    pub fn in_strides(&self, stride: Time) -> Result<InHand, ThermalError> {
        let setup = self.setup()?;
        duration(stride)?;
        let model = setup.model(self.effort, vec![])?;
        setup.cold_force_n(&model)?;
        let (known, stride) = (self.unknowns.likely(), ticks(stride.si(), 1).max(1));
        let run = self.until_contact(&setup, &model, &known, self.effort, Some(stride))?;
        let contact = Bounds::known(Time::from_si(run.contact_s));
        let (nodes, steps) = (model.mesh.nodes_m.len(), run.curve.len() - 1);
        Ok(InHand { contact, nodes, steps, tight: run.curve.clone(), curve: run.curve })
    }

    fn setup(&self) -> Result<Setup<'_>, ThermalError> {
        let (hot, cold) = (kelvin(self.hub_temperature)?, kelvin(self.shaft_temperature)?);
        let setup = Setup {
            hub: &self.hub,
            shaft: &self.shaft,
            interference: self.interference,
            surroundings: &self.surroundings,
            surfaces: &self.surfaces,
            typical_k: f64::midpoint(hot, cold),
        };
        setup.check(&[hot, cold])?;
        self.unknowns.check()?;
        self.friction.check()?;
        share("grip", self.grip)?;
        duration(self.carried)?;
        kelvin(self.touch)?;
        let modelled = ThermodynamicTemperature::from_si(HOTTEST_K);
        let limit = self.hub.metal.heating_limit.unwrap_or(modelled);
        let limit = if limit < modelled { limit } else { modelled };
        if self.hub_temperature > limit {
            return Err(ThermalError::TooHot { hub: self.hub_temperature, limit });
        }
        Ok(setup)
    }

    /// A run from the heater to the first contact, in strides of so many ticks once home on the
    /// shaft, or as the error allows.
    fn until_contact<'m>(
        &self,
        setup: &Setup,
        model: &'m Model,
        guess: &Guess,
        effort: Effort,
        stride: Option<u64>,
    ) -> Result<Run<'m>, ThermalError> {
        let watch = Watch::new(model, self.friction, &self.places)?;
        let mut temperature_k = vec![self.shaft_temperature.si(); model.mesh.nodes_m.len()];
        temperature_k[..model.hub_nodes].fill(self.hub_temperature.si());
        let carried = ticks(self.carried.si(), SWITCH_TICKS);
        let away = setup.case(model, guess, Where::Apart, vec![])?;
        let mut way = March::new(away, temperature_k, 0, effort.tolerance_k())
            .ok_or_else(|| unsolved(0.0))?;
        while way.now.ticks < carried {
            way.advance(carried).ok_or_else(|| unsolved(way.now.seconds()))?;
        }
        let case = setup.case(model, guess, Where::Home, vec![])?;
        let mut march = March::new(case, way.now.temperature_k, 0, effort.tolerance_k())
            .ok_or_else(|| unsolved(0.0))?;
        let start_m = march.now.joint.least_m();
        if start_m <= 0.0 {
            return Err(ThermalError::NoClearance(Length::from_si(2.0 * start_m)));
        }
        let mut curve = vec![watch.sample(&march.now)];
        let mut past = Past::default();
        past.note(0.0, &march.now.temperature_k);
        let end = ticks(LONGEST_S, 1);
        loop {
            if march.now.ticks >= end {
                let least_m = march.now.joint.least_m();
                return Err(ThermalError::StaysOpen(Length::from_si(2.0 * least_m)));
            }
            let leg = match stride {
                Some(ticks) => march.stride(ticks),
                None => march.advance(end),
            };
            let leg = leg.ok_or_else(|| unsolved(march.now.seconds()))?;
            curve.push(watch.sample(&leg.to));
            past.note(leg.to.seconds(), &leg.to.temperature_k);
            let least = |nodal: &[f64]| {
                march.case.free_gap_m(nodal).into_iter().fold(f64::INFINITY, f64::min)
            };
            let ends = [&leg.from, &leg.to].map(|moment| moment.joint.least_m());
            if let Some(share) = leg.crossing(ends, least) {
                let (contact_s, contact_k) = (leg.seconds(share), leg.temperature_k(share));
                return Ok(Run { march, curve, past, start_m, contact_s, contact_k });
            }
        }
    }
}

/// A run up to the step in which it touched.
struct Run<'m> {
    march: March<'m>,
    curve: Vec<Sample>,
    past: Past,
    start_m: f64,
    contact_s: f64,
    contact_k: Vec<f64>,
}
