//! Where a figure or a formula comes from, and how it is known.

use serde::Serialize;

/// How a figure is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Seen in the cited text.
    Read,
    /// Worked out from a stated rule or geometry.
    Computed,
    /// Recalled, not read again.
    Memory,
    /// A fact of the trade that many reprints share.
    CommonPractice,
    /// A rule of Hubwright's own making, said so wherever it is used.
    OwnRule,
    /// From the maker's sheet, as it was entered.
    MakersSheet,
    /// Written in this job.
    Entered,
}

impl Basis {
    /// In words, to stand after the title.
    pub fn words(self) -> &'static str {
        match self {
            Self::Read => "read in the source",
            Self::Computed => "computed",
            Self::Memory => "from memory",
            Self::CommonPractice => "common practice",
            Self::OwnRule => "a rule of our own",
            Self::MakersSheet => "from the maker’s sheet as entered",
            Self::Entered => "written in this job",
        }
    }
}

/// A source: title and place in it, and how its content is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Source {
    /// Standard, book or public manual; empty for common practice.
    pub title: &'static str,
    /// Clause, table, page.
    pub place: &'static str,
    /// How it is known.
    pub basis: Basis,
}

impl Source {
    /// A source.
    pub const fn new(title: &'static str, place: &'static str, basis: Basis) -> Self {
        Self { title, place, basis }
    }

    /// A fact of the trade.
    pub const fn common_practice(what: &'static str) -> Self {
        Self::new(what, "", Basis::CommonPractice)
    }
}

impl std::fmt::Display for Source {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let parts = [self.title, self.place, self.basis.words()];
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        f.write_str(&parts.join(", "))
    }
}
