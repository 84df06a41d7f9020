//! Values that read well but cannot be.

mod coupling;
mod lineup;

use quantities::Physical;
use serde::Serialize;

use crate::JobFile;
use crate::file::{End, Hub, SizeEnd, Text};

pub(crate) use lineup::corner_key;

/// Something that cannot be.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Problem {
    /// Where: keys joined by dots.
    pub place: String,
    /// What is wrong.
    pub what: String,
    /// What was expected.
    pub expected: String,
}

/// All that cannot be in a job, in the order of its tables.
pub fn impossible(file: &JobFile) -> Vec<Problem> {
    let mut found = Found(Vec::new());
    let machines = &file.machines;
    found.positive("machines.power", &machines.power);
    found.positive("machines.speed", &machines.speed);
    found.positive("machines.peak_torque", &machines.peak_torque);
    found.at_least_one("machines.service_factor", &machines.service_factor);
    found.heat(file);
    found.at_least_one("fit.safety", &file.fit.safety);
    found.at_least_one("removal.margin", &file.removal.margin);
    if !file.coupling.kind.is_empty() && couplings::kind(&file.coupling.kind).is_none() {
        let known: Vec<&str> = couplings::kinds().iter().map(|kind| kind.name()).collect();
        let what = format!("“{}” is not a kind of coupling that is known here", file.coupling.kind);
        found.add("coupling.kind", what, format!("one of: {}", known.join(", ")));
    }
    for end in End::BOTH {
        found.hub(&format!("coupling.{}", end.key()), file.coupling.hub(end));
        found.sizes(&format!("sizes.{}", end.key()), file.sizes.at(end));
        found.bore_within_hub(file, end);
        found.class(file, end);
    }
    found.clocks("gap.readings", &file.gap.readings);
    found.lineup(file);
    found.coupling(file);
    found.0
}

struct Found(Vec<Problem>);

impl Found {
    fn add(&mut self, place: &str, what: String, expected: impl Into<String>) {
        self.0.push(Problem { place: place.to_owned(), what, expected: expected.into() });
    }

    fn positive<Q: Physical>(&mut self, place: &str, text: &Text<Q>) {
        if let Some(written) = text
            && written.value().si() <= 0.0
        {
            let what = format!("{} is not possible here", written.text());
            self.add(place, what, format!("{} greater than zero", Q::DIMENSION.words()));
        }
    }

    fn not_negative<Q: Physical>(&mut self, place: &str, text: &Text<Q>) {
        if let Some(written) = text
            && written.value().si() < 0.0
        {
            let what = format!("{} is below zero", written.text());
            self.add(place, what, format!("{} of zero or more", Q::DIMENSION.words()));
        }
    }

    fn at_least_one(&mut self, place: &str, text: &Text<quantities::Ratio>) {
        if let Some(written) = text
            && written.value().si() < 1.0
        {
            self.add(place, format!("{} is less than one", written.text()), "1 or more");
        }
    }

    fn heat(&mut self, file: &JobFile) {
        let (heat, removal) = (&file.heat, &file.removal);
        self.positive("heat.power", &heat.power);
        self.positive("heat.time_wanted", &heat.time_wanted);
        self.positive("removal.power_body", &removal.power_body);
        self.positive("removal.power_flange", &removal.power_flange);
        self.positive("removal.power_at_hand", &removal.power_at_hand);
        self.positive("removal.heat_for", &removal.heat_for);
        self.positive("removal.window", &removal.window);
        for (place, figures) in [("hub", &heat.assume.hub), ("shaft", &heat.assume.shaft)] {
            let place = format!("heat.assume.{place}");
            self.positive(&format!("{place}.conductivity"), &figures.conductivity);
            self.positive(&format!("{place}.heat_capacity"), &figures.heat_capacity);
            self.positive(&format!("{place}.density"), &figures.density);
            self.positive(&format!("{place}.expansion"), &figures.expansion);
            self.positive(&format!("{place}.modulus"), &figures.modulus);
        }
        let assume = &heat.assume;
        for (key, share) in [
            ("emissivity", &assume.emissivity),
            ("joint_emissivity", &assume.joint_emissivity),
            ("off_middle_least", &assume.off_middle_least),
            ("off_middle", &assume.off_middle),
            ("off_middle_greatest", &assume.off_middle_greatest),
            ("grip", &assume.grip),
        ] {
            self.share(&format!("heat.assume.{key}"), share);
        }
        for end in End::BOTH {
            for (name, near) in &removal.at(end).near {
                let place = format!("removal.{}.near.{name}.behind", end.key());
                self.positive(&place, &near.behind);
            }
        }
    }

    fn share(&mut self, place: &str, text: &Text<quantities::Ratio>) {
        if let Some(written) = text
            && !(0.0..=1.0).contains(&written.value().si())
        {
            self.add(place, format!("{} is not possible here", written.text()), "0 to 1");
        }
    }

    fn hub(&mut self, place: &str, hub: &Hub) {
        for (key, size) in [
            ("outside", &hub.outside),
            ("length", &hub.length),
            ("flange_outside", &hub.flange_outside),
            ("flange_length", &hub.flange_length),
        ] {
            self.positive(&format!("{place}.{key}"), size);
        }
        for (key, name) in [("material", &hub.material), ("shaft_material", &hub.shaft_material)] {
            if !name.is_empty() && tables::materials::material(name).is_none() {
                let known: Vec<&str> = tables::materials::names().collect();
                let what = format!("“{name}” is not a material that is known here");
                self.add(&format!("{place}.{key}"), what, format!("one of: {}", known.join(", ")));
            }
        }
    }

    fn sizes(&mut self, place: &str, sizes: &SizeEnd) {
        self.positive(&format!("{place}.nominal"), &sizes.nominal);
        for (part, stations) in [("bore", &sizes.bore), ("shaft", &sizes.shaft)] {
            for (station, readings) in stations {
                let place = format!("{place}.{part}.{station}");
                self.positive(&format!("{place}.along"), &readings.along);
                self.positive(&format!("{place}.across"), &readings.across);
                self.positive(&format!("{place}.between"), &readings.between);
            }
        }
        if let Some(key) = &sizes.key {
            self.positive(&format!("{place}.key.width"), &key.width);
            self.positive(&format!("{place}.key.height"), &key.height);
            self.positive(&format!("{place}.key.length"), &key.length);
        }
    }

    fn bore_within_hub(&mut self, file: &JobFile, end: End) {
        let hub = file.coupling.hub(end);
        let size = &file.sizes.at(end).nominal;
        if let (Some(outside), Some(nominal)) = (&hub.outside, size)
            && nominal.value() >= outside.value()
        {
            let what = format!(
                "a bore of {} does not go into a hub of {} outside",
                nominal.text(),
                outside.text()
            );
            self.add(
                &format!("coupling.{}.outside", end.key()),
                what,
                "a hub larger than its bore",
            );
        }
    }

    fn class(&mut self, file: &JobFile, end: End) {
        let class = &file.fit.at(end).class;
        if class.is_empty() {
            return;
        }
        if let Err(error) = class.parse::<tables::iso_286::Fit>() {
            let place = format!("fit.{}.class", end.key());
            self.add(&place, error.to_string(), "a class of ISO 286, hole first, such as H7/p6");
        }
    }
}
