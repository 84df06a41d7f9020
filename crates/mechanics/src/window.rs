//! The window of interference: the least that holds, the greatest that hub and shaft bear.
//!
//! The least is where the fit, at its speed and warmth, with the least friction, just holds the
//! torque times its safety. The greatest is where the first part reaches the stress allowed for it,
//! cold and at rest or running, whichever comes first. Both are interferences as measured: what
//! flattening takes is added.
//!
//! Not here: which standard fits lie inside (`tables::iso_286`, asked by the caller).

use quantities::{Basis, Kind, Length, Physical, Pressure, Source, Torque, Value, Working};

use crate::crossing::crossing;
use crate::interference::JointError;
use crate::interference::hub::{PressFit, Running, State};
use crate::is_positive;

/// What a fit has to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// Torque to hold.
    pub torque: Torque,
    /// Times this.
    pub safety: f64,
    /// Least friction that can be counted on.
    pub friction: f64,
    /// How it runs.
    pub running: Running,
    /// What flattening takes from the interference.
    pub flattening: Length,
}

/// Stress that is allowed: usually 80 % of yield at the bore of the hub (Bloch, *Improving
/// Machinery Reliability*, p. 217).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowed {
    /// In the hub.
    pub hub: Pressure,
    /// In the shaft.
    pub shaft: Pressure,
}

/// What gives the greatest interference.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitedBy {
    /// The bore of this slice of the hub, from 0.
    Hub(usize),
    /// The shaft.
    Shaft,
}

/// One end of the window.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// Interference as measured.
    pub interference: Length,
    /// The fit with what is left of it to press, running.
    pub state: State,
}

/// The window of interference.
#[derive(Clone, Debug, PartialEq)]
pub struct Window {
    /// What was asked.
    pub demand: Demand,
    /// What was allowed.
    pub allowed: Allowed,
    /// The least that holds; `None` when no elastic interference does.
    pub least: Option<Edge>,
    /// The greatest that the parts bear; `None` when speed alone is too much.
    pub greatest: Option<Edge>,
    /// What limits it.
    pub limited_by: Option<LimitedBy>,
}

/// How the interference of a fit, least to greatest, lies to a window.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lies {
    /// All of it.
    Inside,
    /// A part of it.
    Partly,
    /// None of it.
    Outside,
}

/// Two per cent of the diameter: no metal here is elastic beyond.
const MOST_STRAIN: f64 = 0.02;

impl PressFit {
    /// The window of interference for a demand.
    ///
    /// # Valid
    /// Both parts elastic; rings slice by slice.
    /// # Errors
    /// [`JointError`] for a demand or a stress that is no sound number above zero.
    /// # Example
    /// ```
    /// use mechanics::Slice;
    /// use mechanics::interference::hub::{Metal, PressFit, Running};
    /// use mechanics::window::{Allowed, Demand};
    /// use quantities::{Length, Physical, Pressure, Torque};
    /// use uom::si::length::millimeter;
    /// let mm = Length::new::<millimeter>;
    /// let steel = Metal::from(tables::materials::material("steel").unwrap());
    /// let hub = [Slice { length: mm(90.0), outside: mm(130.0) }];
    /// let fit = PressFit::new(mm(0.0), mm(80.0), &hub, steel, steel)?;
    /// let window = fit.window(
    ///     Demand {
    ///         torque: Torque::from_si(1500.0), safety: 1.5, friction: 0.12,
    ///         running: Running::default(), flattening: mm(0.008),
    ///     },
    ///     Allowed { hub: Pressure::from_si(220e6), shaft: Pressure::from_si(220e6) },
    /// )?;
    /// assert!(window.is_open());
    /// # Ok::<(), mechanics::interference::JointError>(())
    /// ```
    pub fn window(&self, demand: Demand, allowed: Allowed) -> Result<Window, JointError> {
        let numbers = [
            demand.torque.si(),
            demand.safety,
            demand.friction,
            allowed.hub.si(),
            allowed.shaft.si(),
        ];
        if let Some(&number) = numbers.iter().find(|number| !is_positive(**number)) {
            return Err(JointError::Number(number));
        }
        if !(demand.flattening.is_finite() && demand.flattening.si() >= 0.0) {
            return Err(JointError::Number(demand.flattening.si()));
        }
        let least = self.least(demand)?;
        let greatest = self.greatest(demand, allowed)?;
        let limited_by = match &greatest {
            Some(edge) => Some(self.limit(&edge.state, allowed)?),
            None => None,
        };
        Ok(Window { demand, allowed, least, greatest, limited_by })
    }

    /// Where the torque held reaches what is needed.
    fn least(&self, demand: Demand) -> Result<Option<Edge>, JointError> {
        let needed = (demand.torque * demand.safety).si();
        let spare = |pressing: Length| {
            Ok(self.state(pressing, demand.running)?.torque(demand.friction).si() - needed)
        };
        let found = self.turning_point(spare)?;
        found.map(|(_, holding)| self.edge(holding, demand)).transpose()
    }

    /// Where a part reaches what is allowed.
    fn greatest(&self, demand: Demand, allowed: Allowed) -> Result<Option<Edge>, JointError> {
        let over = |pressing: Length| {
            let running = self.state(pressing, demand.running)?;
            let still = self.state(pressing, Running::default())?;
            Ok(use_of(&running, allowed).0.max(use_of(&still, allowed).0) - 1.0)
        };
        let found = self.turning_point(over)?;
        let bearing = found.map(|(bearing, _)| bearing).filter(|bearing| bearing.si() > 0.0);
        bearing.map(|bearing| self.edge(bearing, demand)).transpose()
    }

    /// The interferences just below and just above the point where what rises with it passes through
    /// nothing; the lower one is zero when it is above from the start.
    fn turning_point(
        &self,
        rises: impl Fn(Length) -> Result<f64, JointError>,
    ) -> Result<Option<(Length, Length)>, JointError> {
        let high = self.diameter() * MOST_STRAIN;
        let low = high * 1e-9;
        let ends = [rises(low)?, rises(high)?];
        if ends[1] < 0.0 {
            return Ok(None);
        }
        if ends[0] >= 0.0 {
            return Ok(Some((Length::default(), low)));
        }
        let value = |si| rises(Length::from_si(si));
        let [low, high] = crossing([low.si(), high.si()], ends, value)?;
        Ok(Some((Length::from_si(low), Length::from_si(high))))
    }

    fn edge(&self, pressing: Length, demand: Demand) -> Result<Edge, JointError> {
        let state = self.state(pressing, demand.running)?;
        Ok(Edge { interference: pressing + demand.flattening, state })
    }

    fn limit(&self, running: &State, allowed: Allowed) -> Result<LimitedBy, JointError> {
        let still = self.state(running.interference, Running::default())?;
        let [fast, slow] = [running, &still].map(|state| use_of(state, allowed));
        Ok(if fast.0 > slow.0 { fast.1 } else { slow.1 })
    }
}

/// The largest part of what is allowed that any part takes, and which it is.
fn use_of(state: &State, allowed: Allowed) -> (f64, LimitedBy) {
    let hub = state.slices.iter().enumerate().map(|(place, slice)| {
        (slice.hub_bore.von_mises.si() / allowed.hub.si(), LimitedBy::Hub(place))
    });
    let shaft = state
        .slices
        .iter()
        .map(|slice| (slice.shaft.von_mises.si() / allowed.shaft.si(), LimitedBy::Shaft));
    hub.chain(shaft).fold(
        (0.0, LimitedBy::Hub(0)),
        |worst, part| {
            if part.0 > worst.0 { part } else { worst }
        },
    )
}

impl Window {
    /// True when there is interference that both holds and is borne.
    pub fn is_open(&self) -> bool {
        match (&self.least, &self.greatest) {
            (Some(least), Some(greatest)) => least.interference <= greatest.interference,
            _ => false,
        }
    }

    /// The greatest interference that is borne and, where that is known, still goes on hot; `None`
    /// when nothing limits it.
    pub fn upper(&self, goes_on: Option<Length>) -> Option<Length> {
        let borne = self.greatest.as_ref().map(|edge| edge.interference);
        match (borne, goes_on) {
            (Some(borne), Some(hot)) => Some(if hot < borne { hot } else { borne }),
            (borne, hot) => borne.or(hot),
        }
    }

    /// How interference from `low` to `high` lies to what holds, is borne and, where that is known,
    /// goes on hot.
    pub fn lies(&self, low: Length, high: Length, goes_on: Option<Length>) -> Lies {
        let least = self.least.as_ref().map(|edge| edge.interference);
        let above = |size: Length| least.is_some_and(|least| least <= size);
        let below = |size: Length| self.upper(goes_on).is_none_or(|most| size <= most);
        if above(low) && below(high) {
            Lies::Inside
        } else if above(high) && below(low) {
            Lies::Partly
        } else {
            Lies::Outside
        }
    }

    /// How the least interference was found.
    pub fn least_working(&self) -> Option<Working> {
        let Edge { interference, state } = self.least.as_ref()?;
        let allowance = |length| Value::new(Kind::Allowance, length);
        let Demand { torque, safety, friction, flattening, .. } = self.demand;
        let formula = "N = c·Σ p·π·d·L\nS·T = m·N·d/2\ni = e + f";
        let source = Source::new("the torque held, set to what is needed", "", Basis::Computed);
        Some(
            Working::new(
                "Least interference that holds",
                formula,
                allowance(*interference),
                source,
            )
            .term("T", "torque to hold", Value::new(Kind::Torque, torque))
            .term("S", "safety", Value::number(safety))
            .term("m", "least friction", Value::number(friction))
            .term("d", "joint", Value::new(Kind::Length, state.diameter))
            .term("N", "all that presses", Value::new(Kind::Force, state.normal_force))
            .term("e", "interference that presses", allowance(state.interference))
            .term("f", "flattening of both surfaces", allowance(flattening))
            .valid("rings slice by slice, elastic"),
        )
    }

    /// How the greatest interference was found.
    pub fn greatest_working(&self) -> Option<Working> {
        let Edge { interference, state } = self.greatest.as_ref()?;
        let allowance = |length| Value::new(Kind::Allowance, length);
        let stress = |stress| Value::new(Kind::Stress, stress);
        let formula = "σ at the worst place = s\ni = e + f";
        let (allowed, place) = match self.limited_by? {
            LimitedBy::Hub(slice) => (self.allowed.hub, format!("hub, slice {}", slice + 1)),
            LimitedBy::Shaft => (self.allowed.shaft, "shaft".to_owned()),
        };
        let source = Source::new("von Mises stress, set to what is allowed", "", Basis::Computed);
        Some(
            Working::new("Greatest interference borne", formula, allowance(*interference), source)
                .term("s", format!("stress allowed, {place}"), stress(allowed))
                .term("e", "interference that presses", allowance(state.interference))
                .term("f", "flattening of both surfaces", allowance(self.demand.flattening))
                .valid("rings slice by slice, elastic"),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Slice;
    use crate::interference::hub::Metal;
    use proptest::prelude::*;
    use quantities::{AngularVelocity, MassDensity, TemperatureCoefficient, TemperatureInterval};
    use tables::materials::Elastic;
    use uom::si::length::{micrometer, millimeter};
    use uom::si::pressure::{gigapascal, megapascal};

    fn mm(mm: f64) -> Length {
        Length::new::<millimeter>(mm)
    }

    fn steel() -> Metal {
        Metal {
            elastic: Elastic { young: Pressure::new::<gigapascal>(210.0), poisson: 0.3 },
            density: MassDensity::from_si(7850.0),
            expansion: TemperatureCoefficient::from_si(11.5e-6),
        }
    }

    fn fit(slices: &[(f64, f64)]) -> PressFit {
        let slice =
            |&(length, outside): &(f64, f64)| Slice { length: mm(length), outside: mm(outside) };
        let slices: Vec<Slice> = slices.iter().map(slice).collect();
        PressFit::new(mm(0.0), mm(100.0), &slices, steel(), steel()).unwrap()
    }

    fn demand(torque: f64) -> Demand {
        Demand {
            torque: Torque::from_si(torque),
            safety: 1.0,
            friction: 0.14,
            running: Running::default(),
            flattening: Length::new::<micrometer>(8.24),
        }
    }

    fn allowed(mpa: f64) -> Allowed {
        let stress = Pressure::new::<megapascal>(mpa);
        Allowed { hub: stress, shaft: stress }
    }

    /// The chain of `interference` the other way round: 4687.3 N·m on 100/160/120 is held by 36 µm
    /// with 8.24 µm flattened; and 93 µm puts p·√(c² + c + 1) on the bore, with p 54.2332 MPa and
    /// hoop 123.763 MPa: 157.98 MPa.
    #[test]
    fn the_window_undoes_the_chain() {
        let at_bore = (123.763_f64.powi(2) + 123.763 * 54.2332 + 54.2332_f64.powi(2)).sqrt();
        let window = fit(&[(120.0, 160.0)]).window(demand(4687.3), allowed(at_bore)).unwrap();
        let microns = |edge: &Option<Edge>| edge.as_ref().unwrap().interference.get::<micrometer>();
        assert!((microns(&window.least) - 36.0).abs() < 0.0005);
        assert!((microns(&window.greatest) - 93.0).abs() < 0.0005);
        assert_eq!(window.limited_by, Some(LimitedBy::Hub(0)));
        assert!(window.is_open());
    }

    #[test]
    fn a_window_may_be_shut() {
        let window = fit(&[(20.0, 110.0)]).window(demand(20_000.0), allowed(200.0)).unwrap();
        assert!(!window.is_open());
        let mut fast = demand(100.0);
        fast.running.speed = AngularVelocity::from_si(8000.0);
        let window = fit(&[(120.0, 160.0)]).window(fast, allowed(200.0)).unwrap();
        assert_eq!((window.greatest.clone(), window.limited_by), (None, None));
        assert!(!window.is_open());
    }

    /// A hub that runs 60 K warmer than its shaft is pressed less: what it bears is decided cold.
    #[test]
    fn the_greatest_is_borne_cold_and_running() {
        let cold = fit(&[(120.0, 160.0)]).window(demand(100.0), allowed(150.0)).unwrap();
        let mut warm = demand(100.0);
        warm.running.hub_rise = TemperatureInterval::from_si(60.0);
        let warm = fit(&[(120.0, 160.0)]).window(warm, allowed(150.0)).unwrap();
        let most = |window: Window| window.greatest.unwrap().interference.si();
        let least = |window: &Window| window.least.as_ref().unwrap().interference.si();
        // 100·11.5e-6·60 = 0.069 mm more is needed to hold the same.
        assert!((least(&warm) - least(&cold) - 69e-6).abs() < 1e-12);
        assert!((most(warm) / most(cold) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn what_is_no_demand_is_refused() {
        assert!(fit(&[(120.0, 160.0)]).window(demand(f64::NAN), allowed(200.0)).is_err());
        assert!(fit(&[(120.0, 160.0)]).window(demand(100.0), allowed(0.0)).is_err());
    }

    proptest! {
        /// At the least interference the torque is just held; at the greatest the worst bore just
        /// reaches what is allowed.
        #[test]
        fn the_edges_are_where_they_say(torque in 100.0..5000.0_f64, mpa in 100.0..400.0_f64) {
            let fit = fit(&[(90.0, 150.0), (30.0, 240.0)]);
            let window = fit.window(demand(torque), allowed(mpa)).unwrap();
            let held = window.least.unwrap().state.torque(0.14).si();
            prop_assert!((held / torque - 1.0).abs() < 1e-6);
            let greatest = window.greatest.unwrap();
            let (_, worst) = greatest.state.worst_slice().unwrap();
            prop_assert!((worst.hub_bore.von_mises.get::<megapascal>() / mpa - 1.0).abs() < 1e-6);
        }

        /// More torque moves the least up; more stress allowed moves the greatest up.
        #[test]
        fn the_window_moves_as_it_should(torque in 100.0..5000.0_f64, mpa in 100.0..400.0_f64) {
            let fit = fit(&[(120.0, 160.0)]);
            let at = |torque, mpa| {
                let window = fit.window(demand(torque), allowed(mpa)).unwrap();
                (window.least.unwrap().interference, window.greatest.unwrap().interference)
            };
            prop_assert!(at(torque * 1.1, mpa).0 > at(torque, mpa).0);
            prop_assert!(at(torque, mpa * 1.1).1 > at(torque, mpa).1);
        }
    }
}
