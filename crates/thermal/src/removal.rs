//! Heat off: a hub heated on its shaft, and whether, when and for how long it opens.
//!
//! The hub sits with its interference and presses. Heat goes in through its outside, for a time;
//! part of it crosses the joint into the shaft, which follows. The pull falls as the hub outgrows
//! the shaft; open is when no place of the bore presses and the clearance is everywhere what is
//! wanted. When heat stops the hub's lead is lost again through the joint and the window shuts.
//!
//! Contact is one-sided and without friction. The pull is μ·∫p dA of what still presses.
//!
//! Not here: pulling cold (`mechanics::pull`); what to do first, and what never to do.

pub(crate) mod run;
mod working;

use quantities::{Length, Physical, Ratio, ThermodynamicTemperature, Time};
use rayon::join;

use crate::ThermalError;
use crate::check::{Check, Effort, difference, duration, not_negative};
use crate::curve::{Friction, Peak, Place, Pull, Sample, peaks};
use crate::field::Field;
use crate::heating::Heat;
use crate::kernel::model::Model;
use crate::profile::{Hub, Shaft};
use crate::setup::{Setup, kelvin};
use crate::surfaces::Surfaces;
use crate::surroundings::Surroundings;
use crate::unknowns::{Bounds, Unknowns};
use run::{Course, Goal, Run};

/// A hub to be heated off its shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct Removal {
    /// The hub.
    pub hub: Hub,
    /// The shaft. Enter as much of it as heat can reach while it goes on.
    pub shaft: Shaft,
    /// Diametral interference at 20 °C that presses: the upper end, after flattening.
    pub interference: Length,
    /// Hub and shaft before heat begins.
    pub temperature: ThermodynamicTemperature,
    /// Air.
    pub surroundings: Surroundings,
    /// The joint.
    pub surfaces: Surfaces,
    /// What nobody knows exactly.
    pub unknowns: Unknowns,
    /// Friction when pulling.
    pub friction: Friction,
    /// Clearance on the diameter that is wanted everywhere: a thousandth of it by
    /// [`Removal::new`] (DIN 7190-1 for joining; from memory).
    pub clearance: Length,
    /// What the hub may be heated to; its metal's limit by [`Removal::new`].
    pub limit: Option<ThermodynamicTemperature>,
    /// Heat.
    pub heats: Vec<Heat>,
    /// Places whose temperature is wanted.
    pub places: Vec<Place>,
    /// How long to look.
    pub until: Time,
    /// How much work goes into it.
    pub effort: Effort,
}

/// The hottest spot of the hub.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hottest {
    /// How hot, and when.
    pub peak: Peak,
    /// Its distance from the axis.
    pub radius: Length,
    /// Its station from the face towards the machine.
    pub along: Length,
}

/// A time during which the hub can be drawn off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// From when.
    pub opens: Time,
    /// Until when; `None` when it is still open at the end of the run.
    pub shuts: Option<Time>,
}

/// What comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// What was asked.
    pub asked: Removal,
    /// When it opens; the high end is the one to work by. `None` where it does not open.
    pub opens: Bounds<Option<Time>>,
    /// With heat as entered, in the likely case.
    pub window: Option<Window>,
    /// If heat stops for good the moment that it opens, in the likely case.
    pub if_stopped: Option<Window>,
    /// The same in the case of the three whose window is the shortest, among those that open.
    pub shortest: Option<Window>,
    /// The pull before heat.
    pub cold_pull: Pull,
    /// The least pull, and when: what is left for the puller if it does not open.
    pub least_pull: (Time, Pull),
    /// Hottest spot of the hub.
    pub hottest: Hottest,
    /// The places that were asked for, in their order.
    pub places: Vec<Peak>,
    /// When the hub passed what is modelled, and the run ended: 600 °C, or the end of the table of
    /// its expansion; `None` when it never did.
    pub ended: Option<Time>,
    /// The likely case.
    pub curve: Vec<Sample>,
    /// The likely case, if heat stops the moment that it opens, from then on.
    pub stopped: Vec<Sample>,
    /// Temperature over the section in the likely case: while heat is on, as it opens, as it shuts.
    pub fields: Vec<Field>,
    /// How far it can be trusted as arithmetic.
    pub check: Check,
}

impl Removal {
    /// A hub and shaft in still air of their temperature, all else at its default, looked at for an
    /// hour.
    pub fn new(
        hub: Hub,
        shaft: Shaft,
        interference: Length,
        temperature: ThermodynamicTemperature,
        heats: Vec<Heat>,
    ) -> Self {
        Self {
            clearance: hub.bore / 1000.0,
            limit: hub.metal.heating_limit,
            hub,
            shaft,
            interference,
            temperature,
            surroundings: Surroundings::still(temperature),
            surfaces: Surfaces::default(),
            unknowns: Unknowns::default(),
            friction: Friction::default(),
            heats,
            places: Vec::new(),
            until: Time::from_si(3600.0),
            effort: Effort::default(),
        }
    }

    /// Whether it opens, when, for how long, and what gets how hot.
    ///
    /// # Valid
    /// Straight bore, elastic, axisymmetric: no keyway, no taper, heat all round. The temperature
    /// that a metal may have is watched and reported, not enforced; beyond 600 °C, or the table of
    /// the hub's expansion, the run ends.
    /// # Errors
    /// [`ThermalError`]: sizes that do not nest, figures that are none, no such surface to heat, a
    /// bore that yields, and an answer that a coarser mesh does not confirm.
    /// # Source
    /// Heat conduction, linear thermoelasticity and one-sided contact by finite elements; checked
    /// as [`crate::HotHub::solve`].
    /// # Example
    /// ```
    /// use quantities::{Length, Physical, Power, ThermodynamicTemperature, Time};
    /// use thermal::{Heat, Hub, Metal, Removal, Shaft, Zone};
    /// use uom::si::{length::millimeter, thermodynamic_temperature::degree_celsius};
    /// let (mm, c) = (Length::new::<millimeter>, ThermodynamicTemperature::new::<degree_celsius>);
    /// let steel = Metal::from(tables::materials::material("steel").unwrap());
    /// let hub = Hub::plain(mm(80.0), mm(130.0), mm(90.0), steel.clone());
    /// let shaft = Shaft::solid(mm(80.0), steel);
    /// let all = Zone::outside("outside", mm(0.0), mm(90.0));
    /// let burner = Heat::until(all, Power::from_si(15e3), Time::from_si(300.0));
    /// let opening = Removal::new(hub, shaft, mm(0.05), c(20.0), vec![burner]).solve()?;
    /// let opens = opening.opens.likely.unwrap();
    /// assert!(30.0 < opens.si() && opens.si() < 300.0, "{opens:?}");
    /// # Ok::<(), thermal::ThermalError>(())
    /// ```
    pub fn solve(&self) -> Result<Opening, ThermalError> {
        let setup = self.setup()?;
        let model = self.model(&setup, self.effort)?;
        let cold_n = setup.cold_force_n(&model)?;
        let course = Course::new(self, &setup, &model, self.effort);
        let (likely, (tight, loose)) = join(
            || course.run(&self.unknowns.likely(), Goal::WholeTime),
            || {
                let tight = || course.run(&self.unknowns.tight(), Goal::Opened);
                join(tight, || course.run(&self.unknowns.loose(), Goal::Opened))
            },
        );
        let (likely, tight, loose) = (likely?, tight?, loose?);
        let opens = Bounds { low: loose.opens, likely: likely.opens, high: tight.opens };
        let roughly = |rough| {
            let wide = self.model(&setup, rough)?;
            let course = Course::new(self, &setup, &wide, rough);
            let goal = if likely.opens.is_some() { Goal::Opened } else { Goal::WholeTime };
            let other = course.run(&self.unknowns.likely(), goal)?;
            Ok(Ratio::from_si(likely.difference(&other, cold_n, 0.5 * self.interference.si())))
        };
        let after = |run: &Run| course.stopped(run);
        let ((stopped, coarser), (tight, loose)) = join(
            || join(|| after(&likely), || self.effort.rougher().map(roughly)),
            || join(|| after(&tight), || after(&loose)),
        );
        let (stopped, tight, loose) = (stopped?, tight?, loose?);
        let windows = [&stopped, &tight, &loose].into_iter().flatten().filter_map(Run::window);
        let shortest = windows
            .filter_map(|window| Some((window.lasts()?.si(), window)))
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, window)| window);
        let check = Check {
            energy: Ratio::from_si(
                likely.energy.max(stopped.as_ref().map_or(0.0, |run| run.energy)),
            ),
            coarser: coarser.transpose()?,
            nodes: model.mesh.nodes_m.len(),
            steps: likely.curve.len(),
        }
        .passed()?;
        let stop_s = self.heats.iter().map(|heat| heat.stop.si()).fold(0.0, f64::max);
        let stop_s = stop_s.min(likely.curve.last().map_or(0.0, |sample| sample.time.si()));
        let moments = [0.25, 0.5, 0.75, 1.0].into_iter().map(|share| share * stop_s);
        let switches = likely.opens.into_iter().chain(likely.shuts).map(Physical::si);
        let fields = likely.past.fields(&model, moments.chain(switches).collect());
        Ok(Opening {
            opens,
            window: likely.window(),
            if_stopped: stopped.as_ref().and_then(Run::window),
            shortest,
            cold_pull: likely.curve[0].pull,
            least_pull: likely.least_pull(),
            hottest: likely.hottest(&model, self.limit),
            places: peaks(&likely.curve, &self.places),
            ended: likely.ended,
            check,
            fields,
            curve: likely.curve,
            stopped: stopped.map_or_else(Vec::new, |run| run.curve),
            asked: self.clone(),
        })
    }

    pub(crate) fn setup(&self) -> Result<Setup<'_>, ThermalError> {
        let start = kelvin(self.temperature)?;
        let setup = Setup {
            hub: &self.hub,
            shaft: &self.shaft,
            interference: self.interference,
            surroundings: &self.surroundings,
            surfaces: &self.surfaces,
            typical_k: start + 100.0,
        };
        setup.check(&[start])?;
        self.unknowns.check()?;
        self.friction.check()?;
        not_negative("clearance", self.clearance.si())?;
        duration(self.until)?;
        self.heats.iter().try_for_each(Heat::check)?;
        Ok(setup)
    }

    pub(crate) fn model(&self, setup: &Setup, effort: Effort) -> Result<Model, ThermalError> {
        let marks = self.heats.iter().flat_map(|heat| heat.zone.marks_m()).collect();
        setup.model(effort, marks)
    }
}

impl Window {
    /// How long; `None` when it is still open at the end.
    pub fn lasts(&self) -> Option<Time> {
        self.shuts.map(|shuts| shuts - self.opens)
    }
}
