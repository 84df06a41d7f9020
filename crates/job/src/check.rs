//! Values that read well but cannot be.

mod coupling;
mod fit;
mod heat;
mod lineup;
mod sizes;

use quantities::Physical;
use serde::Serialize;

use crate::JobFile;
use crate::file::{End, Text};

pub(crate) use lineup::corner_key;
pub(crate) use sizes::angle;

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
    let kind = &file.coupling.kind;
    if !kind.is_empty() && couplings::kind(kind).is_none() {
        let known = couplings::kinds().iter().map(|kind| kind.name());
        found.known("coupling.kind", kind, "a kind of coupling", known);
    }
    found.not_negative("sizes.spread", &file.sizes.spread);
    for end in End::BOTH {
        found.hub(file, end);
        found.sizes(file, end);
        found.fit(file, end);
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

    /// Words that must be among those that are known, where any are written.
    fn known<'a>(
        &mut self,
        place: &str,
        name: &str,
        what: &str,
        names: impl Iterator<Item = &'a str>,
    ) {
        let names: Vec<&str> = names.collect();
        let what = format!("“{name}” is not {what} that is known here");
        let meant = crate::parse::nearest(&name.to_lowercase(), &names);
        let meant = meant.map_or_else(String::new, |meant| format!("; did you mean “{meant}”?"));
        self.add(place, what, format!("one of: {}{meant}", names.join(", ")));
    }

    fn at_least_one(&mut self, place: &str, text: &Text<quantities::Ratio>) {
        if let Some(written) = text
            && written.value().si() < 1.0
        {
            self.add(place, format!("{} is less than one", written.text()), "1 or more");
        }
    }
}
