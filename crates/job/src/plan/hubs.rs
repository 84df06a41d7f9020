//! The hubs as the plan computes with them: the job's own figures first, then the maker's sheet.

use mechanics::Slice;
use mechanics::interference::hub::{Metal, PressFit};
use mechanics::mass::hub_mass;
use quantities::{Kind, Length, Measured, Value};
use tables::materials::{Material, material};

use super::Context;
use crate::file::End;

impl Context<'_> {
    /// Outside diameter of the hub's body.
    pub fn hub_outside(&self, end: End) -> Option<Length> {
        let sizes = &self.file.coupling.sheet.sizes;
        let driven = sizes.driven_hub_outside.as_ref().filter(|_| end == End::Driven);
        let own = self.file.coupling.hub(end).outside.as_ref();
        own.or(driven).or(sizes.hub_outside.as_ref()).map(Measured::value)
    }

    /// Length of the hub on its shaft.
    pub fn hub_length(&self, end: End) -> Option<Length> {
        let sizes = &self.file.coupling.sheet.sizes;
        let driven = sizes.driven_hub_length.as_ref().filter(|_| end == End::Driven);
        let own = self.file.coupling.hub(end).length.as_ref();
        own.or(driven).or(sizes.hub_length.as_ref()).map(Measured::value)
    }

    /// Name of the hub's material; empty when nothing gives it.
    pub fn hub_material(&self, end: End) -> &str {
        let own = self.file.coupling.hub(end).material.as_str();
        let sheet = self.file.coupling.sheet.hub_material.as_deref();
        if own.is_empty() { sheet.unwrap_or("") } else { own }
    }

    /// The hub's material.
    pub fn hub_metal(&self, end: End) -> Option<&'static Material> {
        material(self.hub_material(end))
    }

    /// The shaft's material.
    pub fn shaft_metal(&self, end: End) -> Option<&'static Material> {
        material(&self.file.coupling.hub(end).shaft_material)
    }

    /// Bore and shaft size on the drawing, or their mean as measured.
    pub fn joint_diameter(&self, end: End) -> Option<Length> {
        let nominal = self.file.sizes.at(end).nominal.as_ref().map(Measured::value);
        nominal.or_else(|| self.sizes(end).shaft.as_ref().map(|size| size.mean.value))
    }

    /// The hub along its shaft: body, then flange or gear ring. A flange as long as the hub, or
    /// one that is not given in full, leaves a plain hub.
    pub fn hub_slices(&self, end: End) -> Option<Vec<Slice>> {
        let (outside, length) = (self.hub_outside(end)?, self.hub_length(end)?);
        let hub = self.file.coupling.hub(end);
        let flange = hub.flange_outside.as_ref().zip(hub.flange_length.as_ref());
        Some(match flange.map(|(outside, length)| (outside.value(), length.value())) {
            Some((flange, part)) if part < length => vec![
                Slice { length: length - part, outside },
                Slice { length: part, outside: flange },
            ],
            _ => vec![Slice { length, outside }],
        })
    }

    /// The hub pressed on its shaft.
    pub fn press_fit(&self, end: End) -> Option<PressFit> {
        let shaft_bore = self.file.coupling.hub(end).shaft_bore.as_ref();
        let shaft_bore = shaft_bore.map_or_else(Length::default, Measured::value);
        let (hub, shaft) = (Metal::from(self.hub_metal(end)?), Metal::from(self.shaft_metal(end)?));
        PressFit::new(shaft_bore, self.joint_diameter(end)?, &self.hub_slices(end)?, hub, shaft)
            .ok()
    }

    /// Mass of a hub and where it is from: weighed, the sheet's, or worked out from its outline.
    pub fn hub_mass(&self, end: End) -> Option<(Value, &'static str)> {
        let masses = &self.file.coupling.sheet.masses;
        let driven = masses.driven_hub.as_ref().filter(|_| end == End::Driven);
        if let Some(mass) = &self.file.coupling.hub(end).mass {
            return Some((mass.shown(), "as entered"));
        }
        if let Some(mass) = driven.or(masses.hub.as_ref()) {
            return Some((mass.shown(), "from the sheet"));
        }
        let density = self.hub_metal(end)?.density;
        let mass = hub_mass(self.joint_diameter(end)?, &self.hub_slices(end)?, density).ok()?;
        Some((
            Value::new(Kind::Mass, mass.mass),
            "worked out from its outline, keyway not taken out",
        ))
    }
}
