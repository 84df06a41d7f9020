//! What cannot be of heat: how a hub is made hot, and what the flow of heat assumes.

use quantities::Physical;

use super::Found;
use crate::JobFile;
use crate::file::{End, Text};

/// Part of its bore that no heat opens a hub by: steel grows by 0.7 per cent on its way to 600 °C.
const MOST_OPENED: f64 = 0.01;

/// Ways to make a hub hot.
const METHODS: [&str; 4] = ["oven", "induction", "oil bath", "torch"];

impl Found {
    pub(super) fn heat(&mut self, file: &JobFile) {
        let (heat, removal) = (&file.heat, &file.removal);
        if !heat.method.is_empty() && !METHODS.contains(&heat.method.as_str()) {
            self.known("heat.method", &heat.method, "a way to heat a hub", METHODS.into_iter());
        }
        self.clearance_on(file);
        self.positive("heat.power", &heat.power);
        self.positive("heat.carried", &heat.carried);
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
            for (name, row) in &figures.expansions {
                self.positive(&format!("{place}.expansions.{name}.mean"), &row.mean);
            }
        }
        let assume = &heat.assume;
        self.positive("heat.assume.hardness", &assume.hardness);
        self.positive("removal.ram_area", &removal.ram_area);
        self.positive("removal.ram_pressure", &removal.ram_pressure);
        for (key, share) in [
            ("emissivity", &assume.emissivity),
            ("shaft_emissivity", &assume.shaft_emissivity),
            ("joint_emissivity", &assume.joint_emissivity),
            ("off_middle_least", &assume.off_middle_least),
            ("off_middle", &assume.off_middle),
            ("off_middle_greatest", &assume.off_middle_greatest),
            ("grip", &assume.grip),
        ] {
            self.share(&format!("heat.assume.{key}"), share);
        }
        for end in End::BOTH {
            let rate = &file.sizes.at(end).taper.rate;
            if removal.at(end).tapered == Some(false) && !rate.is_empty() {
                let what = format!("a straight seat, and a taper of {rate}");
                let place = format!("removal.{}.tapered", end.key());
                self.add(&place, what, "true, or no taper among the sizes");
            }
            let (hold, place) = (removal.at(end), format!("removal.{}", end.key()));
            self.positive(&format!("{place}.hole_depth"), &hold.hole_depth);
            self.positive(&format!("{place}.jaw_width"), &hold.jaw_width);
            self.positive(&format!("{place}.jaw_grip"), &hold.jaw_grip);
            self.positive(&format!("{place}.jaw_on"), &hold.jaw_on);
            for (name, near) in &hold.near {
                let place = format!("removal.{}.near.{name}.behind", end.key());
                self.positive(&place, &near.behind);
            }
        }
    }

    /// No heat opens a bore by a hundredth of its size.
    fn clearance_on(&mut self, file: &JobFile) {
        let Some(clearance) = &file.heat.clearance else { return };
        let bores = End::BOTH.into_iter().filter_map(|end| file.sizes.at(end).nominal.as_ref());
        let smallest = bores.map(|bore| bore.value().si()).fold(f64::INFINITY, f64::min);
        if clearance.value().si() > MOST_OPENED * smallest {
            let what = format!("{} is more than heat opens any bore by", clearance.text());
            let expected = "what a hub slides on with, such as 0.08 mm or 3 mil";
            self.add("heat.clearance", what, expected);
        }
    }

    fn share(&mut self, place: &str, text: &Text<quantities::Ratio>) {
        if let Some(written) = text
            && !(0.0..=1.0).contains(&written.value().si())
        {
            self.add(place, format!("{} is not possible here", written.text()), "0 to 1");
        }
    }
}
