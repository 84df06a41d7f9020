//! What falls due after a close-up: the first re-check, fresh grease, a look.
//!
//! The sheet's interval comes before what is usual for the kind. What a coupling runs in shortens
//! the interval: half of it, a rule of our own, since the trade says "oftener" and gives no figure.
//!
//! Not here: the calendar (`job`), how grease is chosen ([`crate::lubricant`]).

use quantities::{Basis, Source, Whole};
use serde::Serialize;
use tables::greases::{Grease, HIGH_SPEED_G};

use crate::kind::{Kind, same_name};
use crate::sheet::Sheet;

/// Something that falls due.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Due {
    /// A name that stays: "grease".
    pub id: &'static str,
    /// What is to be done.
    pub what: &'static str,
    /// When: the earliest and the latest.
    pub after: After,
    /// How the interval is known.
    pub source: Source,
    /// Whether what it runs in has halved it.
    pub halved: Halved,
}

/// So long after the coupling was closed up; earliest and latest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum After {
    /// Days.
    Days([u32; 2]),
    /// Months.
    Months([u32; 2]),
}

/// Whether an interval was halved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
#[expect(missing_docs, reason = "the names say it")]
pub enum Halved {
    No,
    Yes,
}

/// What makes grease and rubber age sooner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the names say it")]
pub enum Hardship {
    Hot,
    Wet,
    Dusty,
    Reversing,
    ManyStarts,
}

impl Hardship {
    /// All of them.
    pub const ALL: [Self; 5] =
        [Self::Hot, Self::Wet, Self::Dusty, Self::Reversing, Self::ManyStarts];

    /// As it is written in a job: "many starts".
    pub fn name(self) -> &'static str {
        match self {
            Self::Hot => "hot",
            Self::Wet => "wet",
            Self::Dusty => "dusty",
            Self::Reversing => "reversing",
            Self::ManyStarts => "many starts",
        }
    }

    /// The one of this name.
    pub fn of(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|hardship| same_name(hardship.name(), name))
    }
}

/// What a coupling runs in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Service {
    /// How many times gravity its grease feels.
    pub level: Option<f64>,
    /// The grade of coupling grease in it.
    pub grease: Option<&'static Grease>,
    /// What makes it age sooner.
    pub hardships: Vec<Hardship>,
}

impl Service {
    /// Spun harder than a general grease stands.
    fn is_fast(&self) -> bool {
        let stands = self.grease.is_some_and(|grease| grease.grade == "CG-2");
        self.level.is_some_and(|level| level > HIGH_SPEED_G) && !stands
    }
}

/// What falls due after a close-up.
///
/// # Example
/// ```
/// use couplings::{Sheet, kind};
/// use couplings::dues::{After, Service, dues};
/// let dues = dues(kind("gear").unwrap(), &Sheet::default(), &Service::default());
/// let grease = dues.iter().find(|due| due.id == "grease").unwrap();
/// assert_eq!(grease.after, After::Months([6, 12]));
/// ```
pub fn dues(kind: &dyn Kind, sheet: &Sheet, service: &Service) -> Vec<Due> {
    let first = Due {
        id: "first",
        what: kind.first_recheck(),
        after: After::Days([1, 7]),
        source: Source::common_practice("re-check after the first day to the first week"),
        halved: Halved::No,
    };
    let usual = kind.look();
    let look = Due {
        id: "look",
        what: "stop, lock out and look the coupling over",
        after: After::Months(usual.months),
        source: usual.source,
        halved: Halved::No,
    };
    let later = grease(kind, sheet, service).into_iter().chain([look]);
    [first].into_iter().chain(later.map(|due| shortened(due, service))).collect()
}

fn grease(kind: &dyn Kind, sheet: &Sheet, service: &Service) -> Option<Due> {
    let usual = kind.lubrication()?;
    let (months, source) = match sheet.lubricant.months {
        Some(Whole(months)) => ([months; 2], SHEET),
        None if service.is_fast() => ([usual.months[0]; 2], usual.source),
        None => (usual.months, usual.source),
    };
    let what = "open, clean and pack with fresh grease";
    Some(Due { id: "grease", what, after: After::Months(months), source, halved: Halved::No })
}

const SHEET: Source = Source::new("maker’s sheet", "lubricant.months", Basis::MakersSheet);

fn shortened(due: Due, service: &Service) -> Due {
    match due.after {
        After::Months([low, _]) if !service.hardships.is_empty() && low > 1 => {
            Due { after: After::Months([low / 2, low / 2]), halved: Halved::Yes, ..due }
        }
        _ => due,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kinds::{kind, kinds};

    fn grease_due(service: &Service, sheet: &Sheet) -> Due {
        let dues = dues(kind("gear").unwrap(), sheet, service);
        *dues.iter().find(|due| due.id == "grease").unwrap()
    }

    /// Reliable Plant, July-August 2008, p. 37: gear couplings every 6 to 12 months; the trade opens
    /// them sooner when they run hot or fast (common practice).
    #[test]
    fn grease_falls_due_sooner_in_hard_service() {
        let usual = grease_due(&Service::default(), &Sheet::default());
        assert_eq!(usual.after, After::Months([6, 12]));
        let fast = Service { level: Some(400.0), ..Service::default() };
        assert_eq!(grease_due(&fast, &Sheet::default()).after, After::Months([6, 6]));
        let made_for_it = Service { grease: tables::greases::grease_for(400.0), ..fast };
        assert_eq!(grease_due(&made_for_it, &Sheet::default()).after, After::Months([6, 12]));
        let hot = Service { hardships: vec![Hardship::Hot], ..Service::default() };
        let found = grease_due(&hot, &Sheet::default());
        assert_eq!((found.after, found.halved), (After::Months([3, 3]), Halved::Yes));
    }

    #[test]
    fn the_sheets_interval_comes_first() {
        let mut sheet = Sheet::default();
        sheet.lubricant.months = Some(Whole(24));
        let fast = Service { level: Some(400.0), ..Service::default() };
        let found = grease_due(&fast, &sheet);
        assert_eq!(
            (found.after, found.source.basis),
            (After::Months([24, 24]), Basis::MakersSheet)
        );
    }

    /// Rubber is looked at sooner than steel, and a flange that nothing works in later (common
    /// practice, from memory); a coupling of steel every year (Plant Services, 2008).
    #[test]
    fn each_kind_is_looked_at_in_its_own_time() {
        let look = |name: &str| {
            let dues = dues(kind(name).unwrap(), &Sheet::default(), &Service::default());
            dues.iter().find(|due| due.id == "look").unwrap().after
        };
        assert_eq!(look("disc"), After::Months([12, 12]));
        assert_eq!(look("jaw"), After::Months([6, 12]));
        assert_eq!(look("rigid flange"), After::Months([12, 24]));
    }

    /// A kind that runs dry is looked at, not greased.
    #[test]
    fn every_kind_is_looked_at() {
        for kind in kinds() {
            let dues = dues(*kind, &Sheet::default(), &Service::default());
            let ids: Vec<&str> = dues.iter().map(|due| due.id).collect();
            assert!(ids.starts_with(&["first"]) && ids.contains(&"look"), "{}", kind.name());
            assert_eq!(ids.contains(&"grease"), kind.lubrication().is_some(), "{}", kind.name());
        }
    }
}
