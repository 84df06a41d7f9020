//! One line of the order of work, and the blanks in it that a job fills with its numbers.

use serde::Serialize;

pub use crate::end::End;
pub use crate::stage::Stage;

/// On which jobs a step is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum When {
    /// On every job.
    Always,
    /// When the hub on this side has interference and goes on, or comes off, by heat.
    Hot(End),
    /// When the hub on this side has clearance and slides.
    Slip(End),
    /// When the motor has sleeve bearings and the coupling must limit its end float.
    EndFloat,
}

/// One step of the work. The title and the detail may hold [`PLACEHOLDERS`] in braces.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Step {
    /// A name that stays, unique within the kind: "lockout".
    pub id: &'static str,
    /// Where it belongs.
    pub stage: Stage,
    /// On which jobs it is done.
    pub when: When,
    /// What to do, in one line of a job card.
    pub title: &'static str,
    /// How to do it.
    pub detail: &'static str,
    /// A hold point: who must agree, and to what, before the next step.
    pub hold: Option<&'static str>,
    /// Tools and supplies, in words.
    pub needs: &'static [&'static str],
}

impl Step {
    /// A step of every job, without hold point.
    pub(crate) const fn new(
        id: &'static str,
        stage: Stage,
        title: &'static str,
        detail: &'static str,
    ) -> Self {
        Self { id, stage, when: When::Always, title, detail, hold: None, needs: &[] }
    }

    /// Only on such jobs.
    pub(crate) const fn when(self, when: When) -> Self {
        Self { when, ..self }
    }

    /// Wait here until these agree.
    pub(crate) const fn hold(self, hold: &'static str) -> Self {
        Self { hold: Some(hold), ..self }
    }

    /// Have these at hand.
    pub(crate) const fn needs(self, needs: &'static [&'static str]) -> Self {
        Self { needs, ..self }
    }
}

/// The blanks that titles and details may hold, written `{gap.faces}`; the first three are the names
/// of the machines.
pub const PLACEHOLDERS: [&str; 22] = [
    "driver",
    "driven",
    "moves",
    "heat.driver.temperature",
    "heat.driven.temperature",
    "heat.driver.seconds",
    "heat.driven.seconds",
    "heat.driver.clearance",
    "heat.driven.clearance",
    "gap.faces",
    "gap.packs",
    "lineup.moves",
    "lineup.packs",
    "closeup.torque",
    "closeup.grease",
    "fit.driver.interference",
    "fit.driven.interference",
    "removal.driver.force",
    "removal.driven.force",
    "removal.driver.starting",
    "removal.driven.starting",
    "coupling.mass",
];

/// What stands in a blank that the job has no number for.
pub const STILL_TO_MEASURE: &str = "still to measure";

/// The text with its blanks filled; one without a number says [`STILL_TO_MEASURE`].
///
/// # Example
/// ```
/// let gap = |name: &str| (name == "gap.faces").then(|| "3.2 mm".to_owned());
/// assert_eq!(couplings::step::fill("Set the gap: {gap.faces}", gap), "Set the gap: 3.2 mm");
/// assert_eq!(
///     couplings::step::fill("Nuts to {closeup.torque}", gap),
///     "Nuts to still to measure",
/// );
/// ```
pub fn fill(text: &str, number: impl Fn(&str) -> Option<String>) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        let Some((name, behind)) = after.split_once('}') else { break };
        out.push_str(before);
        out.push_str(&number(name).unwrap_or_else(|| STILL_TO_MEASURE.to_owned()));
        rest = behind;
    }
    out.push_str(rest);
    out
}

/// The names of the blanks in a text.
pub fn blanks(text: &str) -> impl Iterator<Item = &str> {
    text.split('{').skip(1).filter_map(|part| part.split_once('}').map(|(name, _)| name))
}
