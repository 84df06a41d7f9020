//! What the catalogue says of a calculation.

use quantities::{Kind, Source};

use crate::{Answer, Given, ReckonError};

/// A calculation that can be asked alone.
pub struct Calculation {
    /// Its name: "contact-pressure".
    pub name: &'static str,
    /// What it answers, in one sentence.
    pub does: &'static str,
    /// What it needs.
    pub inputs: &'static [Input],
    /// What it gives.
    pub outputs: &'static [Output],
    /// What it holds for.
    pub valid: &'static str,
    /// Where it comes from.
    pub source: Source,
    /// The calculation itself.
    pub answer: fn(&Given) -> Result<Answer, ReckonError>,
}

/// One input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Its key: "joint".
    pub name: &'static str,
    /// What it is, in words.
    pub what: &'static str,
    /// What may be written.
    pub sort: Sort,
    /// What stands in when it is left out; `None` when it must be given.
    pub default: Option<&'static str>,
}

/// What may be written for an input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sort {
    /// A quantity with its unit.
    Quantity(Kind),
    /// Several, parted by semicolons.
    Quantities(Kind),
    /// One of these words.
    Choice(&'static [&'static str]),
    /// A word that has a form of its own: a fit class, a thread.
    Word,
}

/// One output.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Output {
    /// Its key.
    pub name: &'static str,
    /// What it is, in words.
    pub what: &'static str,
    /// Its kind; `None` for a word.
    pub kind: Option<Kind>,
}

impl Input {
    /// A quantity that must be given.
    pub const fn quantity(name: &'static str, kind: Kind, what: &'static str) -> Self {
        Self { name, what, sort: Sort::Quantity(kind), default: None }
    }

    /// Several quantities that must be given.
    pub const fn quantities(name: &'static str, kind: Kind, what: &'static str) -> Self {
        Self { name, what, sort: Sort::Quantities(kind), default: None }
    }

    /// One of some words.
    pub const fn choice(
        name: &'static str,
        words: &'static [&'static str],
        what: &'static str,
    ) -> Self {
        Self { name, what, sort: Sort::Choice(words), default: None }
    }

    /// A word with a form of its own.
    pub const fn word(name: &'static str, what: &'static str) -> Self {
        Self { name, what, sort: Sort::Word, default: None }
    }

    /// With what stands in when it is left out; empty text means that it may be left out.
    #[must_use]
    pub const fn or(self, default: &'static str) -> Self {
        Self { default: Some(default), ..self }
    }
}

impl Output {
    /// A number.
    pub const fn value(name: &'static str, kind: Kind, what: &'static str) -> Self {
        Self { name, what, kind: Some(kind) }
    }

    /// A word or several.
    pub const fn word(name: &'static str, what: &'static str) -> Self {
        Self { name, what, kind: None }
    }
}
