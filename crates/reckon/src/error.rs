//! Why a calculation gives no answer.

use quantities::TextError;

/// Why a calculation gives no answer.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ReckonError {
    /// No calculation of this name.
    #[error("there is no calculation “{name}”{}; reckon --list shows all", did_you_mean(nearest.as_deref()))]
    Unknown {
        /// What was asked.
        name: String,
        /// The nearest name.
        nearest: Option<String>,
    },
    /// An input that this calculation does not take.
    #[error("“{input}” is no input of {calculation}{}; it takes {}", did_you_mean(nearest.as_deref()), known.join(", "))]
    UnknownInput {
        /// The calculation.
        calculation: &'static str,
        /// What was given.
        input: String,
        /// The nearest input.
        nearest: Option<String>,
        /// All inputs.
        known: Vec<&'static str>,
    },
    /// An input that was not given.
    #[error("{calculation} needs {input}: {what}")]
    Missing {
        /// The calculation.
        calculation: &'static str,
        /// The input.
        input: &'static str,
        /// What it is.
        what: &'static str,
    },
    /// An input that cannot be read.
    #[error("{input}: {why}")]
    Unreadable {
        /// The input.
        input: String,
        /// What is wrong.
        why: String,
    },
    /// An input that was given twice.
    #[error("{0} is given twice")]
    Twice(String),
    /// A case that the calculation does not hold for.
    #[error("no answer: {why}{}", holds_for(valid))]
    NotValid {
        /// What is wrong, in SI.
        why: String,
        /// What the calculation holds for.
        valid: &'static str,
    },
    /// A line that is not a JSON object of texts.
    #[error("the line is not a JSON object of texts: {0}")]
    NotJson(String),
}

impl ReckonError {
    /// A case that has no answer.
    pub fn not_valid(why: impl std::fmt::Display) -> Self {
        Self::NotValid { why: why.to_string(), valid: "" }
    }

    /// The same, saying what the calculation holds for.
    pub(crate) fn holds(self, valid: &'static str) -> Self {
        match self {
            Self::NotValid { why, .. } => Self::NotValid { why, valid },
            other => other,
        }
    }

    pub(crate) fn unreadable(input: &str, why: &TextError) -> Self {
        Self::Unreadable { input: input.to_owned(), why: why.to_string() }
    }
}

macro_rules! without_an_answer {
    ($($error:ty),* $(,)?) => {$(
        impl From<$error> for ReckonError {
            fn from(error: $error) -> Self {
                Self::not_valid(error)
            }
        }
    )*};
}

without_an_answer! {
    tables::ansi_b4_1::B41Error,
    tables::bolts::BoltError,
    tables::fits::FitError,
    tables::iso_286::Iso286Error,
    mechanics::bolts::BoltError,
    mechanics::heat::HeatError,
    mechanics::interference::JointError,
    mechanics::keys::KeyError,
    mechanics::mass::MassError,
    mechanics::power::PowerError,
    mechanics::pull::PullError,
    mechanics::size::SizeError,
    mechanics::taper::TaperError,
    lineup::axial::AxialError,
    lineup::bounded::BoundedError,
    lineup::budget::BudgetError,
    lineup::clock::ClockError,
    lineup::dial::DialError,
    lineup::foot::FootError,
    lineup::drift::DriftError,
    lineup::flange::FlangeError,
    lineup::growth::GrowthError,
    lineup::moves::MovesError,
    lineup::position::PositionError,
    lineup::sag::SagError,
    lineup::shims::ShimError,
    lineup::tolerance::ToleranceError,
    lineup::train::TrainError,
    lineup::trials::TrialsError,
    lineup::whole::WholeError,
    thermal::ThermalError,
    couplings::axial_force::NoForce,
    couplings::closeup::CloseUpError,
    couplings::din_740::RatingError,
    couplings::gap::ReadingError,
    couplings::lubricant::LubricantError,
    couplings::rating::StartError,
    couplings::share::ShareError,
    couplings::spacer::SpacerError,
    couplings::teeth::ToothError,
    couplings::vertical::VerticalError,
}

fn holds_for(valid: &str) -> String {
    if valid.is_empty() { String::new() } else { format!("; it holds for: {valid}") }
}

pub(crate) fn did_you_mean(nearest: Option<&str>) -> String {
    nearest.map_or_else(String::new, |name| format!("; did you mean “{name}”?"))
}

pub(crate) fn nearest<'a>(name: &str, known: impl Iterator<Item = &'a str>) -> Option<String> {
    let scored = known.map(|other| (strsim::jaro_winkler(name, other), other));
    let best = scored.max_by(|a, b| a.0.total_cmp(&b.0))?;
    (best.0 > 0.7).then(|| best.1.to_owned())
}
