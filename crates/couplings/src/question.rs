//! What a duty asks, one question at a time, and what a kind answers to it in a word.
//!
//! The reasons behind a word are those of [`crate::duty`]; no word weighs more than another.

use serde::Serialize;

use crate::duty::all_reasons;
use crate::kind::{Form, Gives, Kind};
use crate::{Duty, Reason, Speaks, kinds};

/// One thing that a duty may ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Question {
    Load,
    Speed,
    Offset,
    EndMovement,
    Grease,
    Heat,
    Damping,
    Reversing,
    Starts,
    EndFloat,
}

/// What a kind answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// Something speaks for it, nothing against it.
    For,
    /// Something speaks against it, nothing for it.
    Against,
    /// Both.
    Both,
    /// Nothing speaks either way.
    Neither,
    /// Nothing is known of the kind in general: the maker says.
    Maker,
}

impl Answer {
    /// In a word.
    pub fn says(self) -> &'static str {
        match self {
            Self::For => "for",
            Self::Against => "against",
            Self::Both => "both",
            Self::Neither => "neither",
            Self::Maker => "maker",
        }
    }
}

impl Question {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::Load,
        Self::Speed,
        Self::Offset,
        Self::EndMovement,
        Self::Grease,
        Self::Heat,
        Self::Damping,
        Self::Reversing,
        Self::Starts,
        Self::EndFloat,
    ];

    /// Those that a duty asks and that tell kinds apart: some kind has a reason for or against.
    pub fn asked_by(duty: &Duty) -> impl Iterator<Item = Self> {
        let usual = |kind: &'static dyn Kind| (kind, &kind.forms()[0]);
        Self::ALL.into_iter().filter(move |question| {
            let mut all = kinds().iter().map(|kind| usual(*kind));
            all.any(|(kind, form)| !question.reasons(kind, form, duty).is_empty())
        })
    }

    /// In a few words.
    pub fn says(self) -> &'static str {
        match self {
            Self::Load => "load",
            Self::Speed => "speed",
            Self::Offset => "offset",
            Self::EndMovement => "end movement",
            Self::Grease => "grease",
            Self::Heat => "heat",
            Self::Damping => "damping",
            Self::Reversing => "turns round",
            Self::Starts => "starts",
            Self::EndFloat => "end float",
        }
    }

    /// A duty that asks nothing else.
    fn alone(self, duty: &Duty) -> Duty {
        let none = Duty::default();
        match self {
            Self::Load => Duty { load: duty.load, ..none },
            Self::Speed => Duty { speed: duty.speed, ..none },
            Self::Offset => Duty { offset: duty.offset, ..none },
            Self::EndMovement => Duty { end_movement: duty.end_movement, ..none },
            Self::Grease => Duty { grease_service: duty.grease_service, ..none },
            Self::Heat => Duty { hot_place: duty.hot_place, ..none },
            Self::Damping => Duty { damping: duty.damping, ..none },
            Self::Reversing => Duty { reversing: duty.reversing, ..none },
            Self::Starts => Duty { many_starts: duty.many_starts, ..none },
            Self::EndFloat => Duty { end_float: duty.end_float, ..none },
        }
    }

    /// The reasons of a kind that have to do with this question alone.
    pub fn reasons(self, kind: &dyn Kind, form: &Form, duty: &Duty) -> Vec<Reason> {
        all_reasons(kind, form, &self.alone(duty))
    }

    /// What a kind answers to it.
    ///
    /// # Example
    /// ```
    /// use couplings::{Answer, Duty, Need, Question, kind};
    /// let duty = Duty { grease_service: Some(Need::No), ..Duty::default() };
    /// let answer = |name| {
    ///     let kind = kind(name).unwrap();
    ///     Question::Grease.answer(kind, &kind.forms()[0], &duty)
    /// };
    /// assert_eq!([answer("gear"), answer("disc")], [Answer::Against, Answer::For]);
    /// ```
    pub fn answer(self, kind: &dyn Kind, form: &Form, duty: &Duty) -> Answer {
        let reasons = self.reasons(kind, form, duty);
        let any = |speaks| reasons.iter().any(|reason| reason.speaks == speaks);
        match (any(Speaks::For), any(Speaks::Against)) {
            (true, true) => Answer::Both,
            (true, false) => Answer::For,
            (false, true) => Answer::Against,
            (false, false) if kind.character().gives == Gives::NotKnown => Answer::Maker,
            (false, false) => Answer::Neither,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Load, Need};
    use quantities::{AngularVelocity, Physical};

    fn duties() -> impl Iterator<Item = Duty> {
        let loads = [None, Some(Load::Uniform), Some(Load::Moderate), Some(Load::Heavy)];
        let needs = [None, Some(Need::No), Some(Need::Yes)];
        loads.into_iter().flat_map(move |load| {
            needs.into_iter().map(move |need| Duty {
                load,
                speed: need.map(|_| AngularVelocity::from_si(500.0)),
                offset: need,
                end_movement: need,
                grease_service: need,
                hot_place: need,
                damping: need,
                reversing: need,
                many_starts: need,
                end_float: need,
            })
        })
    }

    /// A reason that rested on two questions at once would stand under neither of them.
    #[test]
    fn every_reason_stands_under_one_question() {
        for duty in duties() {
            for kind in kinds() {
                let form = &kind.forms()[0];
                let whole = all_reasons(*kind, form, &duty);
                let parts: Vec<Reason> = Question::ALL
                    .iter()
                    .flat_map(|question| question.reasons(*kind, form, &duty))
                    .collect();
                assert_eq!(whole.len(), parts.len(), "{}: {duty:?}", kind.name());
                assert!(whole.iter().all(|reason| parts.contains(reason)), "{}", kind.name());
            }
        }
    }
}
