//! The ten stages of the way through a job, in the order of the work, of the card and the page.

use serde::Serialize;

/// A stage; its noun is the file name in every layer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
#[expect(missing_docs, reason = "the titles say it")]
pub enum Stage {
    Machines,
    Coupling,
    Sizes,
    Fit,
    Heat,
    Gap,
    Lineup,
    Closeup,
    Running,
    Removal,
}

impl Stage {
    /// All ten, in order.
    pub const ALL: [Self; 10] = [
        Self::Machines,
        Self::Coupling,
        Self::Sizes,
        Self::Fit,
        Self::Heat,
        Self::Gap,
        Self::Lineup,
        Self::Closeup,
        Self::Running,
        Self::Removal,
    ];

    /// Its key in files, addresses and entries.
    pub fn key(self) -> &'static str {
        match self {
            Self::Machines => "machines",
            Self::Coupling => "coupling",
            Self::Sizes => "sizes",
            Self::Fit => "fit",
            Self::Heat => "heat",
            Self::Gap => "gap",
            Self::Lineup => "lineup",
            Self::Closeup => "closeup",
            Self::Running => "running",
            Self::Removal => "removal",
        }
    }

    /// Its name as a reader sees it.
    pub fn title(self) -> &'static str {
        match self {
            Self::Machines => "Machines",
            Self::Coupling => "Coupling",
            Self::Sizes => "Bores & shafts",
            Self::Fit => "Fit",
            Self::Heat => "Heat",
            Self::Gap => "Gap",
            Self::Lineup => "Line-up",
            Self::Closeup => "Close-up",
            Self::Running => "Running",
            Self::Removal => "Off",
        }
    }

    /// The stage with this key.
    pub fn of(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|stage| stage.key() == key)
    }
}
