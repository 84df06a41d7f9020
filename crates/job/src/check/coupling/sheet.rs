//! What cannot be of a coupling's form and of its maker's sheet.

use quantities::{Physical, Whole};

use super::Found;
use crate::JobFile;

impl Found {
    /// A form that its kind does not have.
    pub(super) fn form(&mut self, file: &JobFile) {
        let form = file.coupling.form.as_str();
        let Some(kind) = couplings::kind(&file.coupling.kind).filter(|_| !form.is_empty()) else {
            return;
        };
        if kind.form(Some(form)).is_none() {
            let known = kind.forms().iter().map(|form| form.name);
            let what = format!("a form of this kind, {},", kind.name());
            self.known("coupling.form", form, &what, known);
        }
    }

    /// Figures of the sheet that must be above zero: all but the interference, which is negative
    /// for a clearance.
    pub(super) fn sheet(&mut self, file: &JobFile) {
        let sheet = &file.coupling.sheet;
        if let Some(name) = sheet.hub_material.as_deref()
            && tables::materials::material(name).is_none()
        {
            let names = tables::materials::names();
            self.known("coupling.sheet.hub_material", name, "a material", names);
        }
        self.figure("rated_torque", &sheet.rated_torque);
        self.figure("peak_torque", &sheet.peak_torque);
        self.figure("vibratory_torque", &sheet.vibratory_torque);
        self.figure("max_speed", &sheet.max_speed);
        self.figure("balanced_speed", &sheet.balanced_speed);
        self.figure("max_bore", &sheet.max_bore);
        self.figure("driven_max_bore", &sheet.driven_max_bore);
        self.figure("max_heating", &sheet.max_heating);
        self.figure("seal_limit", &sheet.seal_limit);
        self.figure("inertia", &sheet.inertia);
        self.figure("torsional_stiffness", &sheet.torsional_stiffness);
        self.figure("axial_stiffness", &sheet.axial_stiffness);
        self.not_negative("coupling.sheet.backlash", &sheet.backlash);
        self.sheet_sizes(file);
        self.sheet_allows(file);
        self.sheet_bolts(file);
        self.sheet_masses(file);
        self.sheet_wear(file);
    }

    fn figure<Q: Physical>(&mut self, key: &str, figure: &Option<quantities::Measured<Q>>) {
        self.positive(&format!("coupling.sheet.{key}"), figure);
    }

    fn sheet_sizes(&mut self, file: &JobFile) {
        let (sizes, gap) = (&file.coupling.sheet.sizes, &file.coupling.sheet.gap);
        for (key, size) in [
            ("sizes.hub_length", &sizes.hub_length),
            ("sizes.driven_hub_length", &sizes.driven_hub_length),
            ("sizes.hub_outside", &sizes.hub_outside),
            ("sizes.driven_hub_outside", &sizes.driven_hub_outside),
            ("sizes.flange_outside", &sizes.flange_outside),
            ("sizes.pitch_diameter", &sizes.pitch_diameter),
            ("sizes.spacer_length", &sizes.spacer_length),
            ("sizes.spacer_outside", &sizes.spacer_outside),
            ("sizes.pack_thickness", &sizes.pack_thickness),
            ("sizes.element_thickness", &sizes.element_thickness),
            ("sizes.between_planes", &sizes.between_planes),
            ("gap.end_float", &gap.end_float),
        ] {
            self.figure(key, size);
        }
        for (key, size) in [
            ("sizes.spacer_inside", &sizes.spacer_inside),
            ("gap.hub_faces", &gap.hub_faces),
            ("gap.dbse", &gap.dbse),
            ("gap.least", &gap.least),
            ("gap.greatest", &gap.greatest),
        ] {
            self.not_negative(&format!("coupling.sheet.{key}"), size);
        }
    }

    fn sheet_allows(&mut self, file: &JobFile) {
        let allows = &file.coupling.sheet.allows;
        for (key, set) in [("fitting", &allows.fitting), ("running", &allows.running)] {
            self.figure(&format!("allows.{key}.offset"), &set.offset);
            self.figure(&format!("allows.{key}.angle"), &set.angle);
            self.figure(&format!("allows.{key}.axial"), &set.axial);
        }
    }

    fn sheet_bolts(&mut self, file: &JobFile) {
        let (bolts, setscrew) = (&file.coupling.sheet.bolts, &file.coupling.sheet.setscrew);
        self.count("bolts.count", bolts.count, 200);
        self.figure("bolts.torque", &bolts.torque);
        self.figure("bolts.circle", &bolts.circle);
        self.not_negative("coupling.sheet.bolts.prevailing_torque", &bolts.prevailing_torque);
        self.count("setscrew.count", setscrew.count, 12);
        self.figure("setscrew.torque", &setscrew.torque);
    }

    fn sheet_masses(&mut self, file: &JobFile) {
        let (lubricant, masses) = (&file.coupling.sheet.lubricant, &file.coupling.sheet.masses);
        self.figure("lubricant.mass", &lubricant.mass);
        self.figure("lubricant.volume", &lubricant.volume);
        self.count("lubricant.months", lubricant.months, 240);
        self.figure("lubricant.running_time", &lubricant.running_time);
        for (key, mass) in [
            ("hub", &masses.hub),
            ("driven_hub", &masses.driven_hub),
            ("sleeve", &masses.sleeve),
            ("spacer", &masses.spacer),
            ("total", &masses.total),
        ] {
            self.figure(&format!("masses.{key}"), mass);
        }
        let inertias = &file.coupling.sheet.inertias;
        for (key, inertia) in [
            ("hub", &inertias.hub),
            ("driven_hub", &inertias.driven_hub),
            ("sleeve", &inertias.sleeve),
            ("spacer", &inertias.spacer),
        ] {
            self.figure(&format!("inertias.{key}"), inertia);
        }
    }

    fn sheet_wear(&mut self, file: &JobFile) {
        let wear = &file.coupling.sheet.wear;
        self.figure("wear.backlash", &wear.backlash);
        self.not_negative("coupling.sheet.wear.new_backlash", &wear.new_backlash);
        self.figure("wear.tooth", &wear.tooth);
        self.figure("wear.element", &wear.element);
        self.figure("wear.stretch", &wear.stretch);
        self.figure("wear.pack", &wear.pack);
    }

    /// A count from one to the most that the schema names.
    fn count(&mut self, key: &str, count: Option<Whole>, most: u32) {
        if let Some(Whole(count)) = count
            && !(1..=most).contains(&count)
        {
            let what = format!("{count} is not possible here");
            self.add(&format!("coupling.sheet.{key}"), what, format!("1 to {most}"));
        }
    }
}
