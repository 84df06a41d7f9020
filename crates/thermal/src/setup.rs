//! From entries to a model and its cases.

use quantities::{Length, Physical, Pressure, ThermodynamicTemperature};

use crate::ThermalError;
use crate::check::{Effort, size};
use crate::kernel::case::{Burn, Case, Film, Place};
use crate::kernel::contact::forces_n;
use crate::kernel::crossing::radiated_w_m2k;
use crate::kernel::mesh::Part;
use crate::kernel::model::Model;
use crate::metal::Metal;
use crate::profile::{Hub, Shaft, section};
use crate::surfaces::Surfaces;
use crate::surroundings::Surroundings;
use crate::unknowns::Guess;

/// What heat on and heat off have in common.
#[derive(Clone, Copy)]
pub(crate) struct Setup<'a> {
    pub hub: &'a Hub,
    pub shaft: &'a Shaft,
    pub interference: Length,
    pub surroundings: &'a Surroundings,
    pub surfaces: &'a Surfaces,
    /// A temperature that is typical for the hot surface (K).
    pub typical_k: f64,
}

/// Times at which something switches are kept to an eighth of a second.
pub(crate) const SWITCH_TICKS: u64 = 128;

/// Hotter than this (600 °C) no metal here keeps the figures of the model.
pub(crate) const HOTTEST_K: f64 = 873.15;

/// An error for equations that did not solve.
pub(crate) fn unsolved(seconds: f64) -> ThermalError {
    ThermalError::Unsolved(quantities::Time::from_si(seconds))
}

impl Setup<'_> {
    /// Refuses entries that make no sense together.
    pub fn check(&self, temperatures_k: &[f64]) -> Result<(), ThermalError> {
        self.hub.metal.check()?;
        self.shaft.metal.check()?;
        if size(self.interference).is_err() || self.interference > 0.1 * self.hub.bore {
            return Err(ThermalError::Loose(self.interference));
        }
        let films = self.films()?;
        let air = films.iter().map(|film| film.air_k);
        for kelvin in temperatures_k.iter().copied().chain(air) {
            self.hub.metal.expansion.reaches(kelvin)?;
            self.shaft.metal.expansion.reaches(kelvin)?;
        }
        Ok(())
    }

    fn films(&self) -> Result<[Film; 2], ThermalError> {
        Ok([self.surroundings.hub.film()?, self.surroundings.shaft.film()?])
    }

    /// The model, with lines of the mesh at further stations.
    pub fn model(&self, effort: Effort, marks_m: Vec<f64>) -> Result<Model, ThermalError> {
        let section = section(self.hub, self.shaft, marks_m, effort.coarseness())?;
        let [film, _] = self.films()?;
        let radiated = film.emissivity * radiated_w_m2k(self.typical_k, film.air_k);
        let metals = [&self.hub.metal, &self.shaft.metal];
        Model::new(
            &section,
            metals.map(Metal::conductor),
            metals.map(Metal::stiffness),
            film.convection_w_m2k + radiated,
        )
        .ok_or_else(|| unsolved(0.0))
    }

    /// A case on that model.
    pub fn case<'m>(
        &self,
        model: &'m Model,
        guess: &Guess,
        place: Place,
        burns: Vec<Burn>,
    ) -> Result<Case<'m>, ThermalError> {
        let [hub, shaft] = guess.growth;
        Ok(Case {
            model,
            growth: [self.hub.metal.growth(hub), self.shaft.metal.growth(shaft)],
            interference_r_m: 0.5 * self.interference.si(),
            crossing: self.surfaces.crossing(guess)?,
            film: self.films()?,
            place,
            burns,
        })
    }

    /// ∫p dA (N) of the joint when all is at 20 °C; refuses a bore that yields.
    pub fn cold_force_n(&self, model: &Model) -> Result<f64, ThermalError> {
        let pairs = &model.mesh.pairs;
        let closed = vec![-0.5 * self.interference.si(); pairs.len()];
        let force =
            forces_n(model.elastic.by_force(), &closed, &[]).ok_or_else(|| unsolved(0.0))?;
        if let Some(strength) = self.hub.metal.yield_strength {
            let stress = Pressure::from_si(bore_stress_pa(model, &force));
            if stress > strength {
                return Err(ThermalError::Yields { stress, strength });
            }
        }
        Ok(force.iter().sum())
    }
}

/// Von Mises stress along the bore, in the mean over its surface.
pub(crate) fn bore_stress_pa(model: &Model, force_n: &[f64]) -> f64 {
    let still = vec![0.0; model.mesh.nodes_m.len()];
    let field = model.elastic.displacement_m(&model.mesh, &still, force_n);
    let bore: f64 = model.mesh.pairs.first().map_or(0.0, |pair| model.mesh.nodes_m[pair.hub][0]);
    let on_bore = model
        .mesh
        .elements
        .iter()
        .filter(|element| element.part == Part::Hub && element.ring.r_m[0] <= bore);
    let (mut stress, mut length) = (0.0, 0.0);
    for element in on_bore {
        let long = element.ring.z_m[1] - element.ring.z_m[0];
        stress += long * model.elastic.von_mises_pa(element, [-1.0, 0.0], &field);
        length += long;
    }
    stress / length
}

/// In kelvin, when it is a temperature.
pub(crate) fn kelvin(temperature: ThermodynamicTemperature) -> Result<f64, ThermalError> {
    if temperature.si().is_finite() && temperature.si() > 0.0 {
        Ok(temperature.si())
    } else {
        Err(ThermalError::Temperature(temperature))
    }
}
