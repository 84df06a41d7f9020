//! The size of a bore or a shaft, from readings at any depths and in any directions.
//!
//! Every reading is corrected for the setting standard and brought to 20 °C ([`correction`]). The
//! mean is the size; what the readings show of taper, barrel, waist and out-of-round is its form
//! ([`form`]), which is not counted as uncertainty. Readings that look wrong are named with what
//! could have gone wrong ([`suspects`]), and are neither dropped nor mended: that is for the hand
//! that holds the micrometer.
//!
//! The `±` of the mean has two parts. The random part belongs to each reading and shrinks with
//! their number, `√(Σu²)/n`. The common part (setting standard, temperature, expansion) sits in all
//! of them alike and does not shrink.
//!
//! Not here: limits and verdicts.

pub mod correction;
pub mod form;
pub mod suspects;

use quantities::{
    Angle, Basis, Kind, Length, Physical, Source, Value, Working, both, root_sum_square,
};

use crate::least_squares::count_of;
use crate::{Estimate, is_positive};
use correction::{Setting, Temperatures};
use form::{Bow, Roundness, Taper};
use suspects::Suspect;

/// Which way a diameter was taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Direction {
    /// Through the middle of the keyway.
    AlongKey,
    /// At right angles to that.
    AcrossKey,
    /// So far round from the keyway (or from any mark, when there is none).
    At(Angle),
}

impl Direction {
    /// Its angle from the keyway.
    pub fn angle(self) -> Angle {
        match self {
            Self::AlongKey => Angle::from_si(0.0),
            Self::AcrossKey => Angle::from_si(std::f64::consts::FRAC_PI_2),
            Self::At(angle) => angle,
        }
    }
}

/// How the instrument touches, which decides what lobes it can see.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Contact {
    /// Two points across: a micrometer, a two-point bore gauge. Blind to three lobes.
    #[default]
    TwoPoint,
    /// Three points at 120°: a three-point bore micrometer. Blind to two lobes (ovality).
    ThreePoint,
}

/// One reading as the instrument gave it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// How deep in the bore, or how far along the shaft.
    pub station: Length,
    /// Which way across.
    pub direction: Direction,
    /// What the instrument read.
    pub size: Length,
    /// The `±` of this one reading: what differs from one reading to the next.
    pub spread: Length,
}

/// All the readings of one bore or shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct Measurement {
    /// The readings, in the order they were taken.
    pub readings: Vec<Reading>,
    /// How the instrument touches.
    pub contact: Contact,
    /// What was how warm; `None` when all stood at 20 °C.
    pub temperatures: Option<Temperatures>,
    /// What the instrument was set on; `None` when it is trusted as it is.
    pub setting: Option<Setting>,
    /// The size on the drawing, if known: shows a slip that all readings share.
    pub nominal: Option<Length>,
}

/// Why readings give no size.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SizeError {
    /// Nothing was read.
    #[error("no readings")]
    Empty,
    /// A reading that is no size, or has no sound `±`.
    #[error("reading {}, {}, is not a size with a ±", index + 1, both(&reading.size))]
    Reading {
        /// Its place, from 0.
        index: usize,
        /// The reading.
        reading: Reading,
    },
    /// Temperatures or expansions that are no numbers.
    #[error("temperatures are not sound, or beyond what the metals’ expansion is known for")]
    Temperatures(Temperatures),
    /// A setting standard that is no size.
    #[error("setting standard is no size with a ±")]
    Setting(Setting),
}

/// A measured bore or shaft at 20 °C.
#[derive(Clone, Debug, PartialEq)]
pub struct Size {
    /// Every reading at 20 °C, in the order they came.
    pub corrected: Vec<Length>,
    /// The mean of them and its whole `±`.
    pub mean: Estimate<Length>,
    /// The part of the `±` that shrinks with the number of readings.
    pub random: Length,
    /// The part that all readings share: of the setting standard and of the temperatures.
    pub common: Length,
    /// Of that, the setting standard's.
    pub setting: Length,
    /// The smallest reading at 20 °C.
    pub least: Length,
    /// The largest.
    pub greatest: Length,
    /// Change of diameter along the length; `None` unless one direction was read at two depths.
    pub taper: Option<Taper>,
    /// Middle against ends; `None` unless one direction was read at three depths.
    pub bow: Option<Bow>,
    /// Change of diameter around; `None` unless one depth was read in two directions.
    pub roundness: Option<Roundness>,
    /// Readings that look wrong.
    pub suspects: Vec<Suspect>,
}

impl Measurement {
    /// Readings taken at 20 °C with a trusted two-point instrument.
    pub fn plain(readings: Vec<Reading>) -> Self {
        let contact = Contact::TwoPoint;
        Self { readings, contact, temperatures: None, setting: None, nominal: None }
    }

    /// The size that the readings give.
    ///
    /// ```text
    /// d = Σ d20/n      U = √( Σ u²/n² + Uc² )
    /// ```
    /// # Valid
    /// Readings spread evenly over the fit; the mean of a few at one end is the size of that end.
    /// # Errors
    /// [`SizeError`] for no readings, and for readings, temperatures or a setting that are no
    /// sound numbers.
    /// # Source
    /// JCGM 100:2008 (GUM), 4.2 and 5.1.2; ISO 1 for 20 °C.
    /// # Example
    /// ```
    /// use mechanics::size::{Direction, Measurement, Reading};
    /// use uom::si::{f64::Length, length::millimeter};
    /// let mm = Length::new::<millimeter>;
    /// let read = |size| Reading {
    ///     station: mm(10.0), direction: Direction::AlongKey, size: mm(size), spread: mm(0.004),
    /// };
    /// let size = Measurement::plain(vec![read(80.060), read(80.064)]).size()?;
    /// assert_eq!(format!("{:.3}", size.mean.value.get::<millimeter>()), "80.062");
    /// assert_eq!(format!("{:.4}", size.mean.plus_minus.get::<millimeter>()), "0.0028");
    /// # Ok::<(), mechanics::size::SizeError>(())
    /// ```
    pub fn size(&self) -> Result<Size, SizeError> {
        self.check()?;
        let corrected: Vec<f64> = self.readings.iter().map(|r| self.corrected(r.size)).collect();
        let n = count_of(corrected.len());
        let mean = corrected.iter().sum::<f64>() / n;
        let random = root_sum_square(self.readings.iter().map(|r| r.spread.si())) / n;
        let setting = self.setting.map_or(0.0, |setting| setting.standard.plus_minus.si());
        let common = root_sum_square([setting, self.warmth_spread(mean)]);
        let whole = root_sum_square([random, common]);
        Ok(Size {
            mean: Estimate::new(Length::from_si(mean), Length::from_si(whole)),
            random: Length::from_si(random),
            common: Length::from_si(common),
            setting: Length::from_si(setting),
            least: Length::from_si(corrected.iter().copied().fold(f64::INFINITY, f64::min)),
            greatest: Length::from_si(corrected.iter().copied().fold(0.0, f64::max)),
            taper: form::taper(self.contact, &self.readings, &corrected),
            bow: form::bow(self.contact, &self.readings, &corrected),
            roundness: form::roundness(self.contact, &self.readings, &corrected),
            suspects: suspects::find(&self.readings, &corrected, self.nominal),
            corrected: corrected.into_iter().map(Length::from_si).collect(),
        })
    }

    /// How one of the readings became a size at 20 °C; `None` when there is no such reading.
    pub fn reading_working(&self, index: usize) -> Option<Working> {
        let read = self.readings.get(index)?.size;
        let size = Length::from_si(self.corrected(read));
        Some(correction::working(read, size, self.temperatures.as_ref(), self.setting.as_ref()))
    }

    fn check(&self) -> Result<(), SizeError> {
        if self.readings.is_empty() {
            return Err(SizeError::Empty);
        }
        let bad = |reading: &Reading| {
            let spread = reading.spread.si();
            !(is_positive(reading.size.si())
                && reading.station.is_finite()
                && reading.direction.angle().is_finite()
                && spread.is_finite()
                && spread >= 0.0)
        };
        if let Some(index) = self.readings.iter().position(bad) {
            return Err(SizeError::Reading { index, reading: self.readings[index] });
        }
        if let Some(temperatures) = self.temperatures.filter(|t| !t.is_sound()) {
            return Err(SizeError::Temperatures(temperatures));
        }
        match self.setting.filter(|setting| !setting.is_sound()) {
            Some(setting) => Err(SizeError::Setting(setting)),
            None => Ok(()),
        }
    }

    fn corrected(&self, read: Length) -> f64 {
        let shift = self.setting.map_or(0.0, |setting| setting.shift().si());
        let factor = self.temperatures.map_or(1.0, |temperatures| temperatures.factor());
        (read.si() + shift) * factor
    }

    fn warmth_spread(&self, size: f64) -> f64 {
        self.temperatures.map_or(0.0, |t| t.spread_of(Length::from_si(size)).whole().si())
    }
}

impl Size {
    /// How the mean and its `±` were found.
    pub fn working(&self) -> Working {
        let length = |length: Length| Value::new(Kind::Size, length);
        let count = u32::try_from(self.corrected.len()).unwrap_or(u32::MAX);
        let sum = Length::from_si(self.corrected.iter().map(|size| size.si()).sum());
        Working::new("Mean size at 20 °C", "d = S/n", self.mean.shown(Kind::Size), GUM)
            .term("S", "sum of the readings at 20 °C", length(sum))
            .term("n", "readings", Value::count(count))
            .valid("form (taper, out-of-round) is shown apart and is not part of the ±")
    }

    /// How the `±` of the mean was found.
    pub fn spread_working(&self) -> Working {
        let length = |length: Length| Value::new(Kind::Size, length);
        let result = length(self.mean.plus_minus);
        Working::new("± of the mean", "U = √(r² + c²)", result, GUM)
            .term("r", "random part, √(Σu²)/n", length(self.random))
            .term("c", "part that all readings share", length(self.common))
    }
}

const GUM: Source = Source::new("JCGM 100:2008 (GUM)", "4.2 and 5.1.2", Basis::Memory);

#[cfg(test)]
mod tests;
