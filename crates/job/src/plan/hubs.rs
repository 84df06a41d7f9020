//! The hubs as the plan computes with them: the job's own figures first, then the maker's sheet.
//!
//! Slices run from the machine outwards, as heat reckons with them, or from the gap inwards, as they
//! are numbered and pressed.

use std::f64::consts::PI;

use mechanics::Slice;
use mechanics::interference::hub::{Metal, PressFit};
use mechanics::mass::{HubMass, hub_mass};
use mechanics::taper::Taper;
use quantities::{Length, Mass, Measured, Physical, Pressure};
use tables::materials::{Material, material};

use super::Context;
use crate::file::{End, Figures, HubSlice};

impl Context<'_> {
    /// Outside diameter of the hub's body.
    pub fn hub_outside(&self, end: End) -> Option<Length> {
        self.file.coupling.hub_outside(end)
    }

    /// Length of the hub on its shaft; that of its slices, where only they are given.
    pub fn hub_length(&self, end: End) -> Option<Length> {
        self.file.coupling.hub_length(end)
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

    /// Where the hub yields, and how that is known.
    pub fn hub_yield(&self, end: End) -> Option<(Pressure, &'static str)> {
        let own = self.file.coupling.hub(end).yield_strength.as_ref();
        let usual = || self.hub_metal(end)?.yield_strength;
        own.map(|own| (own.value(), "yield as entered"))
            .or_else(|| usual().map(|usual| (usual, "usual yield of its material")))
    }

    /// Where the shaft yields, as its material usually does.
    pub fn shaft_yield(&self, end: End) -> Option<Pressure> {
        self.shaft_metal(end)?.yield_strength
    }

    /// The taper of a tapered shaft end.
    pub fn taper(&self, end: End) -> Option<Taper> {
        self.file.sizes.at(end).taper.rate.parse().ok()
    }

    /// Diameter at the small end of a tapered joint: as entered, or with the nominal size at the
    /// large end.
    pub fn small_end(&self, end: End) -> Option<Length> {
        let sizes = self.file.sizes.at(end);
        let taper = self.taper(end)?;
        sizes.taper.small_end.as_ref().map(Measured::value).or_else(|| {
            let large = sizes.nominal.as_ref()?.value();
            Some(large - self.hub_length(end)? * taper.on_diameter())
        })
    }

    /// Bore and shaft size on the drawing, or their mean as measured; on a taper the mean diameter
    /// of the joint.
    pub fn joint_diameter(&self, end: End) -> Option<Length> {
        if let (Some(taper), Some(small)) = (self.taper(end), self.small_end(end)) {
            let half = self.hub_length(end).unwrap_or_default() / 2.0;
            return Some(small + half * taper.on_diameter());
        }
        let nominal = self.file.sizes.at(end).nominal.as_ref().map(Measured::value);
        nominal.or_else(|| self.sizes(end).shaft.as_ref().map(|size| size.mean.value))
    }

    /// The hub along its shaft, from the machine's side to the gap: as the job slices it, else body,
    /// then flange or gear ring. A flange as long as the hub, or one that is not given in full, leaves
    /// a plain hub.
    pub fn hub_slices(&self, end: End) -> Option<Vec<Slice>> {
        let mut slices = self.slices_from_gap(end)?;
        slices.reverse();
        Some(slices)
    }

    /// The same from the gap inwards.
    pub fn slices_from_gap(&self, end: End) -> Option<Vec<Slice>> {
        let hub = self.file.coupling.hub(end);
        if let Some(slices) = sliced(&hub.slices) {
            return Some(slices);
        }
        let (outside, length) = (self.hub_outside(end)?, self.hub_length(end)?);
        let flange = hub.flange_outside.as_ref().zip(hub.flange_length.as_ref());
        Some(match flange.map(|(outside, length)| (outside.value(), length.value())) {
            Some((flange, part)) if part < length => vec![
                Slice { length: part, outside: flange },
                Slice { length: length - part, outside },
            ],
            _ => vec![Slice { length, outside }],
        })
    }

    /// The hub pressed on its shaft, all of the joint bearing.
    pub fn press_fit(&self, end: End) -> Option<PressFit> {
        let shaft_bore = self.file.coupling.hub(end).shaft_bore.as_ref();
        let bore = shaft_bore.map_or_else(Length::default, Measured::value);
        let assume = &self.file.heat.assume;
        let hub = metal(self.hub_metal(end)?, &assume.hub);
        let shaft = metal(self.shaft_metal(end)?, &assume.shaft);
        let slices = self.slices_from_gap(end)?;
        match self.taper(end) {
            Some(taper) => {
                PressFit::tapered(bore, self.small_end(end)?, taper, &slices, hub, shaft).ok()
            }
            None => PressFit::new(bore, self.joint_diameter(end)?, &slices, hub, shaft).ok(),
        }
    }

    /// The part of the joint that bears: what the keyways leave of it, and what showed blue.
    pub fn bearing(&self, end: End) -> f64 {
        let sizes = self.file.sizes.at(end);
        let contact = sizes.taper.contact.as_ref().filter(|_| self.taper(end).is_some());
        let contact = contact.map_or(1.0, |contact| contact.value().value);
        let (Some(key), Some(diameter)) = (&sizes.key, self.joint_diameter(end)) else {
            return contact;
        };
        let keys = if key.count.is_some_and(|count| count.0 > 1) { 2.0 } else { 1.0 };
        let width = key.width.as_ref().map_or(0.0, |width| width.value().si());
        contact * (1.0 - keys * width / (PI * diameter.si())).max(0.0)
    }

    /// Mass of a hub: weighed, the sheet's, or worked out from its outline.
    pub fn hub_mass(&self, end: End) -> Option<HubWeight> {
        let masses = &self.file.coupling.sheet.masses;
        let driven = masses.driven_hub.as_ref().filter(|_| end == End::Driven);
        if let Some(mass) = &self.file.coupling.hub(end).mass {
            return Some(HubWeight { mass: mass.value(), from: WeightFrom::Job });
        }
        if let Some(mass) = driven.or(masses.hub.as_ref()) {
            return Some(HubWeight { mass: mass.value(), from: WeightFrom::Sheet });
        }
        let density = metal(self.hub_metal(end)?, &self.file.heat.assume.hub).density;
        let found = hub_mass(self.joint_diameter(end)?, &self.hub_slices(end)?, density).ok()?;
        Some(HubWeight { mass: found.mass, from: WeightFrom::Outline(found) })
    }
}

/// A metal with the figures that the job knows better.
fn metal(material: &Material, figures: &Figures) -> Metal {
    let mut metal = Metal::from(material);
    let Figures { density, expansion, modulus, .. } = figures;
    metal.density = density.as_ref().map_or(metal.density, Measured::value);
    metal.expansion = expansion.as_ref().map_or(metal.expansion, Measured::value);
    metal.elastic.young = modulus.as_ref().map_or(metal.elastic.young, Measured::value);
    metal
}

/// What a hub weighs, and how that is known.
#[derive(Clone, Copy, Debug)]
pub(super) struct HubWeight {
    pub mass: Mass,
    pub from: WeightFrom,
}

/// Where a hub's mass is from.
#[derive(Clone, Copy, Debug)]
pub(super) enum WeightFrom {
    /// Entered in the job.
    Job,
    /// On the maker's sheet.
    Sheet,
    /// Worked out.
    Outline(HubMass),
}

/// Slices as the job numbers them; `None` unless each has both its sizes.
fn sliced(slices: &crate::file::Named<HubSlice>) -> Option<Vec<Slice>> {
    let mut numbered: Vec<(u32, &HubSlice)> =
        slices.iter().map(|(name, slice)| (name.parse().unwrap_or(u32::MAX), slice)).collect();
    numbered.sort_by_key(|(number, _)| *number);
    let whole = |(_, slice): (u32, &HubSlice)| {
        Some(Slice {
            length: slice.length.as_ref()?.value(),
            outside: slice.outside.as_ref()?.value(),
        })
    };
    let slices: Option<Vec<Slice>> = numbered.into_iter().map(whole).collect();
    slices.filter(|slices| !slices.is_empty())
}
