//! What is seen at a moment, and how it goes on: the data of the curves.

use quantities::{Force, Length, Physical, ThermodynamicTemperature, Time};

use crate::ThermalError;
use crate::check::{not_negative, positive};
use crate::kernel::mesh::Part;
use crate::kernel::model::Model;
use crate::kernel::moment::Moment;

/// Friction between hub and shaft, from its low end to its high end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Friction {
    /// Low end: what can be counted on to hold.
    pub low: f64,
    /// High end: what must be reckoned with when pulling.
    pub high: f64,
}

/// 0.12 to 0.24.
///
/// # Source
/// Bloch, *Improving Machinery Reliability*, p. 217 to 219: 0.24 to choose a puller by; 0.12 is the
/// grip implied in the worked example there.
impl Default for Friction {
    fn default() -> Self {
        Self { low: 0.12, high: 0.24 }
    }
}

impl Friction {
    pub(crate) fn check(self) -> Result<(), ThermalError> {
        positive("friction", self.low)?;
        not_negative("friction’s range", self.high - self.low)
    }

    pub(crate) fn pull(self, normal_n: f64) -> Pull {
        Pull {
            low: Force::from_si(self.low * normal_n),
            high: Force::from_si(self.high * normal_n),
        }
    }
}

/// The force to pull the hub along the shaft, μ·∫p dA.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pull {
    /// With friction at its low end.
    pub low: Force,
    /// With friction at its high end.
    pub high: Force,
}

/// A point whose temperature is wanted: a seal, a bearing, a thermometer.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Its name.
    pub name: String,
    /// In which body.
    pub body: Body,
    /// Distance from the axis.
    pub radius: Length,
    /// Along the shaft, from the hub's face towards the machine; negative behind it.
    pub along: Length,
    /// What it may have; `None` when it is only watched.
    pub limit: Option<ThermodynamicTemperature>,
}

/// Hub or shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Body {
    /// The hub.
    Hub,
    /// The shaft.
    Shaft,
}

/// What is seen at a moment.
#[derive(Clone, Debug, PartialEq)]
pub struct Sample {
    /// Since the beginning.
    pub time: Time,
    /// Least clearance along the joint, on the diameter; zero where it presses.
    pub least: Length,
    /// Greatest clearance along the joint, on the diameter.
    pub greatest: Length,
    /// The pull.
    pub pull: Pull,
    /// Hottest spot of the hub.
    pub hub: ThermodynamicTemperature,
    /// Bore, in the mean.
    pub bore: ThermodynamicTemperature,
    /// Shaft in the bore, in the mean of its surface.
    pub seat: ThermodynamicTemperature,
    /// The places that were asked for, in their order.
    pub places: Vec<ThermodynamicTemperature>,
}

/// The highest temperature that is met.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// How hot.
    pub temperature: ThermodynamicTemperature,
    /// When.
    pub time: Time,
    /// Since when it is above its limit; `None` when it never is or has none.
    pub over_limit: Option<Time>,
}

/// A place as the mesh knows it.
#[derive(Clone, Debug)]
pub(crate) struct Spot {
    weights: Vec<(usize, f64)>,
}

impl Spot {
    pub fn find(model: &Model, place: &Place) -> Result<Self, ThermalError> {
        let part = match place.body {
            Body::Hub => Part::Hub,
            Body::Shaft => Part::Shaft,
        };
        let at = [place.radius.si(), place.along.si()];
        let (element, local) = model
            .mesh
            .find(part, at)
            .ok_or_else(|| ThermalError::NoMetal { place: place.name.clone() })?;
        let value = element.ring.at(local).value;
        Ok(Self { weights: element.nodes.into_iter().zip(value).collect() })
    }

    pub fn of(&self, nodal: &[f64]) -> f64 {
        self.weights.iter().map(|(node, weight)| weight * nodal[*node]).sum()
    }
}

/// What turns a moment into a sample.
pub(crate) struct Watch<'a> {
    pub model: &'a Model,
    pub friction: Friction,
    pub spots: Vec<Spot>,
}

impl<'a> Watch<'a> {
    pub fn new(
        model: &'a Model,
        friction: Friction,
        places: &[Place],
    ) -> Result<Self, ThermalError> {
        let spots = places.iter().map(|place| Spot::find(model, place));
        Ok(Self { model, friction, spots: spots.collect::<Result<_, _>>()? })
    }

    pub fn sample(&self, moment: &Moment) -> Sample {
        let nodal = &moment.temperature_k;
        let gaps = &moment.joint.gap_m;
        let pairs = &self.model.mesh.pairs;
        let area: f64 = pairs.iter().map(|pair| pair.area_m2).sum();
        let bore: f64 = pairs.iter().map(|pair| pair.area_m2 * nodal[pair.hub]).sum();
        let seat: f64 = pairs.iter().map(|pair| pair.area_m2 * nodal[pair.shaft]).sum();
        let kelvin = ThermodynamicTemperature::from_si;
        let diameter = |radial: f64| Length::from_si(2.0 * radial);
        Sample {
            time: Time::from_si(moment.seconds()),
            least: diameter(gaps.iter().copied().fold(f64::INFINITY, f64::min)),
            greatest: diameter(gaps.iter().copied().fold(0.0, f64::max)),
            pull: self.friction.pull(moment.joint.force_n()),
            hub: kelvin(hottest(self.model, nodal).1),
            bore: kelvin(bore / area),
            seat: kelvin(seat / area),
            places: self.spots.iter().map(|spot| kelvin(spot.of(nodal))).collect(),
        }
    }
}

/// The hottest node of the hub, and its temperature (K).
pub(crate) fn hottest(model: &Model, nodal: &[f64]) -> (usize, f64) {
    let hub = nodal[..model.hub_nodes].iter().copied().enumerate();
    hub.fold((0, f64::NEG_INFINITY), |most, next| if next.1 > most.1 { next } else { most })
}

/// When a figure of the curve first comes up to a level, by straight lines between the samples.
pub(crate) fn first_reach(
    curve: &[Sample],
    figure: impl Fn(&Sample) -> f64,
    level: f64,
) -> Option<Time> {
    if let Some(first) = curve.first().filter(|first| figure(first) >= level) {
        return Some(first.time);
    }
    curve.windows(2).find_map(|pair| {
        let [from, to] = [figure(&pair[0]), figure(&pair[1])];
        (to >= level).then(|| {
            let share = (level - from) / (to - from);
            pair[0].time + (pair[1].time - pair[0].time) * share
        })
    })
}

/// The highest temperature of each place.
pub(crate) fn peaks(curve: &[Sample], places: &[Place]) -> Vec<Peak> {
    let peak = |(k, place): (usize, &Place)| {
        let at = |sample: &Sample| sample.places[k];
        let highest =
            curve.iter().reduce(|most, next| if at(next) > at(most) { next } else { most })?;
        let over_limit = place.limit.and_then(|limit| first_over(curve, limit, at));
        Some(Peak { temperature: at(highest), time: highest.time, over_limit })
    };
    places.iter().enumerate().filter_map(peak).collect()
}

/// When a temperature is first seen above its limit.
pub(crate) fn first_over(
    curve: &[Sample],
    limit: ThermodynamicTemperature,
    at: impl Fn(&Sample) -> ThermodynamicTemperature,
) -> Option<Time> {
    curve.iter().find(|sample| at(sample) > limit).map(|sample| sample.time)
}
