//! Close-up: how tight the bolts, in which order, in how many passes.
//!
//! The maker's torque comes first. Without it the torque is estimated from size, grade and state of
//! the threads, T = K·F·d (`mechanics::bolts`, figures of `tables`); an estimate says so. A
//! self-locking nut takes its prevailing torque on top.
//!
//! Not here: the order itself (`mechanics::order`), grease ([`crate::lubricant`]).

use mechanics::bolts::{self, BoltError};
use mechanics::order::tightening_order;
use quantities::{Basis, Kind, Measured, Source, Torque, Value, Working};
use tables::bolts::Bolt;
use tables::nut_factor::{REUSABLE, Threads, nut_factor};

use crate::kind::{Bolting, CloseUp};
use crate::sheet::Bolts;

/// How the bolts of a coupling are tightened.
#[derive(Clone, Debug, PartialEq)]
pub struct Tightening {
    /// Torque that seats the joint.
    pub seating: Torque,
    /// Where it comes from.
    pub from: From,
    /// What a self-locking nut takes to turn.
    pub prevailing: Option<Torque>,
    /// What the wrench is set to in each pass, the last one to the end.
    pub passes: Vec<Torque>,
    /// Order of the bolts, numbered from 1 round the circle; empty when their number is not known
    /// or they stand in no circle.
    pub order: Vec<usize>,
    /// The threads are not as the sheet's torque takes them to be.
    pub threads_differ: Option<ThreadsDiffer>,
}

/// Where a torque comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum From {
    /// The maker's sheet.
    MakersSheet,
    /// Estimated from the bolt and the state of its threads.
    Estimate {
        /// Bolt.
        bolt: Bolt,
        /// State of the threads.
        threads: Threads,
        /// The estimate.
        tightening: bolts::Tightening,
    },
}

/// A sheet's torque on threads in another state.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThreadsDiffer {
    /// As the sheet has them.
    pub sheet: Threads,
    /// As they are on this job.
    pub job: Threads,
    /// Preload that the torque would give, as a multiple of what the sheet means.
    pub preload: f64,
}

/// What the job knows beside the sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct OnThisJob {
    /// State of the threads.
    pub threads: Option<Threads>,
    /// Prevailing torque of a self-locking nut, measured.
    pub prevailing: Option<Torque>,
}

/// Why there is no torque.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum CloseUpError {
    /// This form has no bolts.
    #[error("this form has no bolts")]
    NoBolts,
    /// A figure that the sheet lacks: the field's name.
    #[error("neither bolts.torque nor {0}")]
    Missing(&'static str),
    /// A bolt that is not held.
    #[error(transparent)]
    NotHeld(#[from] tables::bolts::BoltError),
    /// A number that is none.
    #[error(transparent)]
    Number(#[from] BoltError),
}

/// How to tighten the bolts of this sheet.
///
/// # Errors
/// [`CloseUpError`]: no bolts in this form, or figures missing, not held, or no numbers.
/// # Example
/// ```
/// use couplings::closeup::{OnThisJob, tightening};
/// use couplings::{Sheet, kind};
/// use quantities::Physical;
/// use tables::nut_factor::Threads;
/// let gear = kind("gear").unwrap();
/// let mut sheet = Sheet::default();
/// sheet.bolts.size = Some("M16".to_owned());
/// sheet.bolts.grade = Some("8.8".to_owned());
/// sheet.bolts.count = Some(quantities::Whole(8));
/// let job = OnThisJob { threads: Some(Threads::Dry), prevailing: None };
/// let found = tightening(&sheet.bolts, &gear.close_up(&gear.forms()[0]), job)?;
/// assert_eq!(format!("{:.0}", found.seating.si()), "219");
/// assert_eq!(found.order, [1, 5, 3, 7, 2, 6, 4, 8]);
/// # Ok::<(), couplings::closeup::CloseUpError>(())
/// ```
pub fn tightening(
    sheet: &Bolts,
    close_up: &CloseUp,
    job: OnThisJob,
) -> Result<Tightening, CloseUpError> {
    if close_up.bolts == Bolting::None {
        return Err(CloseUpError::NoBolts);
    }
    let prevailing =
        job.prevailing.or_else(|| sheet.prevailing_torque.as_ref().map(Measured::value));
    let (seating, from) = match &sheet.torque {
        Some(torque) => (torque.value(), From::MakersSheet),
        None => estimate(sheet, job)?,
    };
    let add = |pass| match prevailing {
        Some(prevailing) => bolts::with_prevailing(pass, prevailing),
        None => Ok(pass),
    };
    let passes = bolts::passes(seating, close_up.stages)?;
    let passes = passes.into_iter().map(add).collect::<Result<_, _>>()?;
    let threads_differ = match from {
        From::MakersSheet => differ(sheet.threads, job.threads),
        From::Estimate { .. } => None,
    };
    let order = order(sheet, close_up);
    Ok(Tightening { seating, from, prevailing, passes, order, threads_differ })
}

fn estimate(sheet: &Bolts, job: OnThisJob) -> Result<(Torque, From), CloseUpError> {
    let missing = CloseUpError::Missing;
    let size = sheet.size.as_ref().ok_or(missing("bolts.size"))?;
    let grade = sheet.grade.as_ref().ok_or(missing("bolts.grade"))?;
    let threads = job.threads.or(sheet.threads).ok_or(missing("bolts.threads"))?;
    let bolt = tables::bolts::bolt(&format!("{size} {grade}"))?;
    let preload = bolts::preload_from_proof(bolt.proof_load(), REUSABLE)?;
    let tightening = bolts::tightening_torque(nut_factor(threads), preload, bolt.thread.diameter)?;
    Ok((tightening.torque, From::Estimate { bolt, threads, tightening }))
}

fn differ(sheet: Option<Threads>, job: Option<Threads>) -> Option<ThreadsDiffer> {
    let (sheet, job) = sheet.zip(job)?;
    let preload = nut_factor(sheet) / nut_factor(job);
    (sheet != job).then_some(ThreadsDiffer { sheet, job, preload })
}

fn order(sheet: &Bolts, close_up: &CloseUp) -> Vec<usize> {
    let in_a_circle = !matches!(close_up.bolts, Bolting::CoverSplit | Bolting::None);
    let count = sheet.count.and_then(|count| usize::try_from(count.0).ok());
    // More than the sheet's schema allows would be a slip of the pen.
    let count = count.filter(|count| in_a_circle && *count <= 200);
    count.and_then(tightening_order).unwrap_or_default()
}

impl Tightening {
    /// What the wrench is set to at the end.
    pub fn setting(&self) -> Torque {
        self.prevailing.map_or(self.seating, |prevailing| self.seating + prevailing)
    }

    /// Where the seating torque comes from.
    pub fn source(&self) -> Source {
        match self.from {
            From::MakersSheet => Source::new("maker’s sheet", "bolts.torque", Basis::MakersSheet),
            From::Estimate { .. } => Source::common_practice(
                "nut factor on three quarters of the proof load; an estimate",
            ),
        }
    }

    /// How the torques were found: the estimate, if it is one, then the wrench setting.
    pub fn workings(&self) -> Vec<Working> {
        let estimate = match self.from {
            From::MakersSheet => None,
            From::Estimate { tightening, .. } => Some(tightening.working()),
        };
        let setting = self.prevailing.map(|prevailing| {
            let shown = |torque| Value::new(Kind::Torque, torque);
            Working::new("Wrench setting", "S = T + P", shown(self.setting()), PREVAILING)
                .term("T", "torque that seats", shown(self.seating))
                .term("P", "prevailing torque of the nut", shown(prevailing))
        });
        estimate.into_iter().chain(setting).collect()
    }
}

const PREVAILING: Source = Source::common_practice("self-locking nuts take their own on top");

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Sheet, kind};
    use quantities::Physical as _;

    fn gear() -> CloseUp {
        let gear = kind("gear").unwrap();
        gear.close_up(&gear.forms()[0])
    }

    fn bolts(text: &str) -> Bolts {
        let mut parts = text.split(' ').map(str::to_owned);
        Bolts { size: parts.next(), grade: parts.next(), ..Sheet::default().bolts }
    }

    fn job(threads: Threads) -> OnThisJob {
        OnThisJob { threads: Some(threads), prevailing: None }
    }

    /// ISO 898-1 proof load of M12 10.9, 70 kN as printed, K 0.15 and 75 % (common practice): 94.5
    /// N·m by hand. Stress area times proof stress gives 69.97 kN, so the torque to a tenth. With
    /// 12 N·m prevailing the wrench is set to 106.5 N·m.
    #[test]
    fn an_estimate_without_the_makers_torque() {
        let found = tightening(&bolts("M12 10.9"), &gear(), job(Threads::Lubricated)).unwrap();
        assert!((found.seating.si() - 94.5).abs() <= 0.05, "{:?}", found.seating);
        let locked =
            OnThisJob { prevailing: Some(Torque::from_si(12.0)), ..job(Threads::Lubricated) };
        let found = tightening(&bolts("M12 10.9"), &gear(), locked).unwrap();
        assert!((found.setting().si() - 106.5).abs() <= 0.05);
        assert!((found.passes[0].si() - (0.3 * found.seating.si() + 12.0)).abs() < 1e-9);
        assert_eq!(found.passes.last(), Some(&found.setting()));
        assert_eq!(found.workings().len(), 2);
    }

    #[test]
    fn the_makers_torque_comes_first() {
        let torque = Some("120 N·m".parse().unwrap());
        let sheet = Bolts { torque, threads: Some(Threads::Dry), ..bolts("M12 10.9") };
        let found = tightening(&sheet, &gear(), job(Threads::Molybdenum)).unwrap();
        assert_eq!((found.seating.si(), found.from), (120.0, From::MakersSheet));
        let differ = found.threads_differ.unwrap();
        assert!((differ.preload - 0.2 / 0.12).abs() < 1e-12);
        let same = tightening(&sheet, &gear(), job(Threads::Dry)).unwrap();
        assert!(same.threads_differ.is_none() && same.workings().is_empty());
    }

    #[test]
    fn what_is_missing_is_named() {
        let none = OnThisJob::default();
        let error = |sheet: &Bolts| tightening(sheet, &gear(), none).unwrap_err();
        assert_eq!(error(&Bolts::default()), CloseUpError::Missing("bolts.size"));
        assert_eq!(error(&bolts("M12")), CloseUpError::Missing("bolts.grade"));
        assert_eq!(error(&bolts("M12 10.9")), CloseUpError::Missing("bolts.threads"));
        let unheld = tightening(&bolts("M13 10.9"), &gear(), job(Threads::Dry));
        assert!(matches!(unheld, Err(CloseUpError::NotHeld(_))));
        let continuous = kind("gear").unwrap();
        let form = continuous.form(Some("continuous sleeve")).unwrap();
        let bare = tightening(&bolts("M12 10.9"), &continuous.close_up(form), none);
        assert_eq!(bare, Err(CloseUpError::NoBolts));
        let zero = Bolts { torque: Some("0 N·m".parse().unwrap()), ..Bolts::default() };
        assert!(matches!(error(&zero), CloseUpError::Number(_)));
    }

    #[test]
    fn a_split_cover_has_no_circle() {
        let grid = kind("grid").unwrap();
        let torque = Some("12 N·m".parse().unwrap());
        let sheet = Bolts { torque, count: Some(quantities::Whole(8)), ..Bolts::default() };
        let along = tightening(&sheet, &grid.close_up(&grid.forms()[0]), OnThisJob::default());
        assert!(along.unwrap().order.is_empty());
        let across = grid.form(Some("cover split across")).unwrap();
        let across = tightening(&sheet, &grid.close_up(across), OnThisJob::default());
        assert_eq!(across.unwrap().order.len(), 8);
    }
}
