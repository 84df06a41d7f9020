//! What cannot be of a coupling: its spaces, what was seen of it, how it wore, what it runs in.

mod sheet;

use std::collections::BTreeSet;

use couplings::dues::Hardship;
use couplings::kind::common_findings;

use super::Found;
use crate::JobFile;
use crate::file::{End, Removal, Site};

/// The names of all steps of one way, of every kind.
fn steps(way: &str) -> BTreeSet<&'static str> {
    let kinds = couplings::kinds().iter();
    let forms = kinds.flat_map(|kind| kind.forms().iter().map(move |form| (kind, form)));
    let steps = forms.flat_map(|(kind, form)| match way {
        "on" => kind.install_steps(form),
        _ => kind.removal_steps(form),
    });
    steps.map(|step| step.id).collect()
}

impl Found {
    pub(super) fn coupling(&mut self, file: &JobFile) {
        self.form(file);
        self.sheet(file);
        self.duty(file);
        self.rooms(file);
        self.seen(file);
        self.worn(file);
        self.hardships(&file.running.hardships);
        self.pullers(&file.removal);
        self.site(&file.site);
    }

    fn site(&mut self, site: &Site) {
        self.at_least_one("site.puller_margin", &site.puller_margin);
        self.positive("site.torque_within", &site.torque_within);
        for shim in &site.shims {
            self.positive("site.shims", &Some(shim.clone()));
        }
        for puller in &site.pullers {
            self.positive("site.pullers", &Some(puller.clone()));
        }
        for (way, holds) in [("on", &site.holds.on), ("off", &site.holds.off)] {
            let known = steps(way);
            for step in holds.keys().filter(|step| !known.contains(step.as_str())) {
                let place = format!("site.holds.{way}.{step}");
                self.known(&place, step, "a step", known.iter().copied());
            }
        }
    }

    fn duty(&mut self, file: &JobFile) {
        self.positive("machines.start_torque", &file.machines.start_torque);
        self.positive("machines.vibratory_torque", &file.machines.vibratory_torque);
        self.positive("machines.vibratory_frequency", &file.machines.vibratory_frequency);
        for end in End::BOTH {
            let (place, machine) = (format!("machines.{}", end.key()), file.machines.at(end));
            self.positive(&format!("{place}.inertia"), &machine.inertia);
            self.positive(&format!("{place}.overhang"), &machine.overhang);
            self.positive(&format!("{place}.overhang_limit"), &machine.overhang_limit);
            self.positive(&format!("{place}.thrust_limit"), &machine.thrust_limit);
        }
        self.positive("gap.end_float", &file.gap.end_float);
    }

    fn rooms(&mut self, file: &JobFile) {
        for (name, room) in &file.closeup.rooms {
            let place = format!("closeup.rooms.{name}");
            self.positive(&format!("{place}.outside"), &room.outside);
            self.positive(&format!("{place}.length"), &room.length);
            if let (Some(inside), Some(outside)) = (&room.inside, &room.outside)
                && inside.value() >= outside.value()
            {
                let what = format!(
                    "no room between {} inside and {} outside",
                    inside.text(),
                    outside.text()
                );
                self.add(&format!("{place}.inside"), what, "an inside smaller than the outside");
            }
        }
    }

    /// What was seen goes by names that the kind has; without a kind any will do.
    fn seen(&mut self, file: &JobFile) {
        let Some(kind) = couplings::kind(&file.coupling.kind) else { return };
        let known = || kind.findings().iter().chain(common_findings()).map(|finding| finding.id);
        for seen in &file.inspection.seen {
            if !known().any(|id| id == seen) {
                let what =
                    format!("“{seen}” is nothing that is seen on this kind, {}", kind.name());
                let names: Vec<&str> = known().collect();
                self.add("inspection.seen", what, format!("of these: {}", names.join(", ")));
            }
        }
    }

    fn worn(&mut self, file: &JobFile) {
        let found = &file.inspection;
        self.not_negative("inspection.backlash", &found.backlash);
        self.not_negative("inspection.tooth", &found.tooth);
        self.not_negative("inspection.element", &found.element);
        self.not_negative("inspection.stretch", &found.stretch);
        self.not_negative("inspection.off_centre", &found.off_centre);
        self.positive("inspection.in_service", &found.in_service);
        for (name, pack) in &found.packs {
            let pack = Some(pack.clone());
            self.positive(&format!("inspection.packs.{name}"), &pack);
        }
        if let (Some(closed), Some(opened)) = (file.closeup.closed, found.opened)
            && opened < closed
        {
            let what = format!("opened on {opened}, before it was closed up on {closed}");
            self.add("inspection.opened", what, "a day after that");
        }
    }

    fn hardships(&mut self, hardships: &[String]) {
        for name in hardships {
            if Hardship::of(name).is_none() {
                let known = Hardship::ALL.map(Hardship::name).join(", ");
                let what = format!("“{name}” is no hardship that is known here");
                self.add("running.hardships", what, format!("of these: {known}"));
            }
        }
    }

    fn pullers(&mut self, removal: &Removal) {
        self.positive("removal.puller", &removal.puller);
        self.positive("removal.screw", &removal.screw);
        for end in End::BOTH {
            let hold = removal.at(end);
            if !hold.hole_thread.is_empty() && tables::bolts::thread(&hold.hole_thread).is_none() {
                let what = format!("“{}” is not a thread that is held here", hold.hole_thread);
                let place = format!("removal.{}.hole_thread", end.key());
                self.add(&place, what, "a thread such as M16 or 5/8-11");
            }
        }
    }
}
