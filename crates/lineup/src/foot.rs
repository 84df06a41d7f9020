//! Does every foot sit? Rise on loosening, gaps at a foot's corners, and the twist of four feet.
//!
//! With all others tight, a foot that rises when its own bolt is loosened was drawn down to a base
//! it did not touch. The gaps under its corners, once loose, say how: even gaps want a shim, uneven
//! ones a step or a machined foot, no gap at all a pack that springs; and a rise that goes away
//! when pipes and coupling are free was never the foot's. The bounds between these kinds are a rule
//! of our own, stated at [`kind`].
//!
//! Four feet on a rectangle rock by `twist = FL + RR − RL − FR` of the gap profile; the plane part
//! of the profile only tilts the frame.

use quantities::{
    Basis, Kind, Length, Limits, Physical, Source, Value, Verdict, Working, both, judge,
};

use crate::Estimate;
use crate::linear::least_squares;

/// Which corner of the machine a foot stands at, or which corner of a foot a gap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Corner {
    /// Front (coupling end), left looking along +x.
    FrontLeft,
    /// Rear, left.
    RearLeft,
    /// Rear, right.
    RearRight,
    /// Front, right.
    FrontRight,
}

impl Corner {
    /// All four, once round.
    pub const ALL: [Self; 4] = [Self::FrontLeft, Self::RearLeft, Self::RearRight, Self::FrontRight];

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::FrontLeft => "front left",
            Self::RearLeft => "rear left",
            Self::RearRight => "rear right",
            Self::FrontRight => "front right",
        }
    }

    /// + for one diagonal, − for the other.
    fn sign(self) -> f64 {
        match self {
            Self::FrontLeft | Self::RearRight => 1.0,
            Self::RearLeft | Self::FrontRight => -1.0,
        }
    }
}

/// What is wrong with a foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FootKind {
    /// Its rise is within the limit.
    Sound,
    /// It stands off evenly: shim it.
    Parallel,
    /// It touches at one side: step shims, or machine it.
    Angled,
    /// It rises without a gap: clean it, and lay fewer and flatter shims.
    Springing,
    /// Pipes or coupling lift it: free them first, shims are no cure.
    Induced,
    /// It rises, and nobody has taken the gaps.
    GapsWanted,
}

/// What was found at one foot.
#[derive(Clone, Debug, PartialEq)]
pub struct FootReadings {
    /// Its name.
    pub name: String,
    /// Rise when its own bolt was loosened, all others tight.
    pub rise: Estimate<Length>,
    /// The same with pipes and coupling free, if that was tried.
    pub rise_free: Option<Estimate<Length>>,
    /// Gaps under its corners once loose, in the order of [`Corner::ALL`].
    pub gaps: Option<[Length; 4]>,
}

/// The verdict on one foot, and its cure.
#[derive(Clone, Debug, PartialEq)]
pub struct FootFinding {
    /// Its name.
    pub name: String,
    /// Its rise on loosening.
    pub rise: Estimate<Length>,
    /// What a rise may be.
    pub limit: Length,
    /// Rise against the limit.
    pub verdict: Verdict,
    /// What it is.
    pub kind: FootKind,
    /// Shim under the whole foot, where that is the cure (or its even part).
    pub shim: Option<Length>,
    /// What is to be filled on top of it at each corner, for an angled foot.
    pub steps: Option<[Length; 4]>,
}

/// Why feet cannot be judged.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FootError {
    /// A rise or a gap that is no number, or a gap below zero.
    #[error(
        "foot “{0}”: its rise or a gap is not a number, or a gap is below zero; read gaps as the feeler that goes in, or nothing"
    )]
    NotANumber(String),
    /// The limit must be positive.
    #[error("a foot’s rise cannot be judged by a limit of {}; give one above nothing, such as 0.05 mm (0.002 in)", both(.0))]
    Limit(Length),
    /// Fewer than four feet, or all on one line.
    #[error(
        "the feet are fewer than four, or all stand on one line; give four or more round the machine"
    )]
    NoPlane,
}

/// What one foot's readings say, against a limit on its rise (0.05 mm or 0.002 in by common practice).
///
/// A rule of our own, with h half the limit: rise within the limit is sound; one that falls within
/// it with pipes and coupling free is induced; no gap above h is springing; gaps that differ by
/// more than h are angled; else it is parallel, and the shim is the mean gap.
///
/// # Errors
/// [`FootError`].
pub fn kind(readings: &FootReadings, limit: Length) -> Result<FootFinding, FootError> {
    check(readings, limit)?;
    let rise = readings.rise;
    let verdict = judge(&rise.shown(Kind::Offset), &Limits::at_most(limit.si()));
    let name = || readings.name.clone();
    let plain =
        |kind| FootFinding { name: name(), rise, limit, verdict, kind, shim: None, steps: None };
    if readings.rise.value <= limit {
        return Ok(plain(FootKind::Sound));
    }
    if readings.rise_free.is_some_and(|free| free.value <= limit) {
        return Ok(plain(FootKind::Induced));
    }
    let Some(gaps) = readings.gaps else { return Ok(plain(FootKind::GapsWanted)) };
    let least = gaps.into_iter().fold(Length::from_si(f64::INFINITY), Length::min);
    let greatest = gaps.into_iter().fold(Length::from_si(0.0), Length::max);
    if greatest <= limit / 2.0 {
        return Ok(plain(FootKind::Springing));
    }
    if greatest - least > limit / 2.0 {
        let steps = Some(gaps.map(|gap| gap - least));
        return Ok(FootFinding { shim: Some(least), steps, ..plain(FootKind::Angled) });
    }
    let mean = gaps.into_iter().fold(Length::from_si(0.0), |sum, gap| sum + gap) / 4.0;
    Ok(FootFinding { shim: Some(mean), ..plain(FootKind::Parallel) })
}

fn check(readings: &FootReadings, limit: Length) -> Result<(), FootError> {
    let gaps = readings.gaps.iter().flatten();
    let sound = readings.rise.is_sound()
        && readings.rise_free.is_none_or(|free| free.is_sound())
        && gaps.into_iter().all(|gap| gap.si() >= 0.0 && gap.si().is_finite());
    if !sound {
        return Err(FootError::NotANumber(readings.name.clone()));
    }
    let positive = limit.si() > 0.0 && limit.si().is_finite();
    if positive { Ok(()) } else { Err(FootError::Limit(limit)) }
}

impl FootFinding {
    /// How the rise was judged.
    pub fn working(&self) -> Working {
        Working::new(
            format!("Rise of the {} foot over what it may be", self.name),
            "r = h/L",
            Value {
                kind: Kind::Percent,
                si: self.rise.value.si() / self.limit.si(),
                plus_minus: None,
            },
            Source::common_practice("rise on loosening one foot"),
        )
        .term("h", "rise on loosening", self.rise.shown(Kind::Offset))
        .term("L", "allowed", Value::new(Kind::Offset, self.limit))
        .valid("all other feet tight")
    }
}

/// The one foot that rises more than all others, and the shim that brings it down to them: its
/// rise minus the next largest. `None` for fewer than two rises, or when two rise most.
///
/// # Source
/// US Bureau of Reclamation, FIST 4-1A, page 17.
pub fn highest_rise(rises: &[Length]) -> Option<(usize, Length)> {
    let mut ranked: Vec<(usize, f64)> = rises.iter().map(|rise| rise.si()).enumerate().collect();
    ranked.sort_by(|a, b| b.1.total_cmp(&a.1));
    let [(index, most), (_, next), ..] = ranked[..] else { return None };
    (most > next && most.is_finite()).then(|| (index, Length::from_si(most - next)))
}

/// The gap profile of four feet: sole height minus pad height, by whatever means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twist {
    /// Gaps in the order of [`Corner::ALL`]; only their differences count.
    pub gaps: [Estimate<Length>; 4],
    /// FL + RR − RL − FR.
    pub twist: Estimate<Length>,
}

impl Twist {
    /// From the four gaps, in the order of [`Corner::ALL`].
    ///
    /// # Errors
    /// [`FootError::NotANumber`].
    pub fn of(gaps: [Estimate<Length>; 4]) -> Result<Self, FootError> {
        if !gaps.iter().all(Estimate::is_sound) {
            return Err(FootError::NotANumber("twist".into()));
        }
        let signed = Corner::ALL.into_iter().zip(&gaps);
        let twist: f64 = signed.map(|(corner, gap)| corner.sign() * gap.value.si()).sum();
        let variance: f64 = gaps.iter().map(|gap| gap.standard_uncertainty().powi(2)).sum();
        Ok(Self { gaps, twist: Estimate::from_standard(twist, variance.sqrt()) })
    }

    /// Against a limit on its size.
    pub fn verdict(&self, limit: Length) -> Verdict {
        judge(&self.twist.shown(Kind::Offset), &Limits::between(-limit.si(), limit.si()))
    }

    /// The two feet of the diagonal that stands off: either may take the shim.
    pub fn feet_that_stand_off(&self) -> [Corner; 2] {
        if self.twist.value.si() < 0.0 {
            [Corner::RearLeft, Corner::FrontRight]
        } else {
            [Corner::FrontLeft, Corner::RearRight]
        }
    }

    /// One shim that takes the twist out.
    pub fn shim(&self) -> Length {
        self.twist.value.abs()
    }

    /// How it was found.
    pub fn working(&self) -> Working {
        let [fl, rl, rr, fr] = self.gaps.map(|gap| gap.shown(Kind::Offset));
        Working::new(
            "Twist of the four feet",
            "w = FL + RR − RL − FR",
            self.twist.shown(Kind::Offset),
            Source::new("Geometry of a rigid frame on a rectangle", "", Basis::Computed),
        )
        .term("FL", "gap, front left", fl)
        .term("RR", "gap, rear right", rr)
        .term("RL", "gap, rear left", rl)
        .term("FR", "gap, front right", fr)
        .valid("a rigid frame, feet on a rectangle")
    }
}

/// One foot's place on the base and its gap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlacedGap {
    /// Along the machine.
    pub x: Length,
    /// Across it.
    pub z: Length,
    /// Sole height minus pad height.
    pub gap: Length,
}

/// How far each foot lies from the plane that fits all best, for any number of feet from four on.
///
/// # Errors
/// [`FootError::NoPlane`] for fewer than four feet or feet on one line.
pub fn out_of_plane(feet: &[PlacedGap]) -> Result<Vec<Length>, FootError> {
    let equations = feet.iter().map(|foot| ([1.0, foot.x.si(), foot.z.si()], foot.gap.si()));
    let plane = (feet.len() > 3).then(|| least_squares(&equations)).flatten();
    let plane = plane.ok_or(FootError::NoPlane)?;
    let off: Vec<f64> = equations.map(|equation| plane.residual(&equation)).collect();
    if !off.iter().all(|residual| residual.is_finite()) {
        return Err(FootError::NotANumber("gap".into()));
    }
    Ok(off.into_iter().map(Length::from_si).collect())
}
