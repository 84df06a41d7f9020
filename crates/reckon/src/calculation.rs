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
    /// What stands in when it is left out; empty when it may be missing altogether, `None` when it
    /// must be given.
    pub default: Option<&'static str>,
}

/// What may be written for an input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sort {
    /// A quantity with its unit.
    Quantity(Kind),
    /// Several, parted by semicolons; a unit after the last serves them all.
    Quantities(Kind),
    /// One of these words.
    Choice(&'static [&'static str]),
    /// A word that has a form of its own: a fit class, a thread.
    Word,
    /// Several of these, parted by semicolons.
    Words,
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

    /// Several words with a form of their own.
    pub const fn words(name: &'static str, what: &'static str) -> Self {
        Self { name, what, sort: Sort::Words, default: None }
    }

    /// With what stands in when it is left out.
    #[must_use]
    pub const fn or(self, default: &'static str) -> Self {
        Self { default: Some(default), ..self }
    }

    /// It may be left out, and nothing stands in for it.
    #[must_use]
    pub const fn optional(self) -> Self {
        self.or("")
    }
}

impl Output {
    /// A number, or several of one kind.
    pub const fn value(name: &'static str, kind: Kind, what: &'static str) -> Self {
        Self { name, what, kind: Some(kind) }
    }

    /// A word or several.
    pub const fn word(name: &'static str, what: &'static str) -> Self {
        Self { name, what, kind: None }
    }
}

/// The words of a choice that stands for something: names of `pairs`.
pub(crate) const fn names<T: Copy, const N: usize>(
    pairs: &[(&'static str, T); N],
) -> [&'static str; N] {
    let mut names = [""; N];
    let mut at = 0;
    while at < N {
        names[at] = pairs[at].0;
        at += 1;
    }
    names
}
