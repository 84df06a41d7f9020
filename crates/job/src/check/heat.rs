//! What cannot be of heat: how a hub is made hot, and what the flow of heat assumes.

use quantities::Physical;

use super::Found;
use crate::JobFile;
use crate::file::{End, Text};

/// Ways to make a hub hot.
const METHODS: [&str; 4] = ["oven", "induction", "oil bath", "torch"];

impl Found {
    pub(super) fn heat(&mut self, file: &JobFile) {
        let (heat, removal) = (&file.heat, &file.removal);
        if !heat.method.is_empty() && !METHODS.contains(&heat.method.as_str()) {
            self.known("heat.method", &heat.method, "a way to heat a hub", METHODS.into_iter());
        }
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

    fn share(&mut self, place: &str, text: &Text<quantities::Ratio>) {
        if let Some(written) = text
            && !(0.0..=1.0).contains(&written.value().si())
        {
            self.add(place, format!("{} is not possible here", written.text()), "0 to 1");
        }
    }
}
