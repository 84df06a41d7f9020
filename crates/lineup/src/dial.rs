//! One dial and its sweep: what carries it, what it touches, and what it read where.
//!
//! The signs of the trade's many set-ups come down to one: readings are turned so that they rise
//! when the stem is pushed in, on an outside rim. Sag is left in them until [`Dial::fit`].
//!
//! u standard uncertainty of one reading: u² = q²/12 + (U/2)², q the dial's division, U its stated `±`

use quantities::{Length, Physical, both, is_spread};

use crate::clock::Clock;
use crate::fit::{FitError, Point, harmonic};
use crate::sag::Sag;

pub use crate::sweep::{Sweep, free_of_float};

use crate::Body;

/// The surface under the stem.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Surface {
    /// The outside of a rim.
    Rim,
    /// The inside of a rim, the stem pointing outwards.
    InsideRim,
    /// The face that looks back at the carrier, at this swing diameter.
    Face(Length),
    /// The face that looks away from the carrier.
    FarFace(Length),
}

impl Surface {
    /// True for either side of a rim.
    pub fn is_rim(self) -> bool {
        matches!(self, Self::Rim | Self::InsideRim)
    }

    /// Swing diameter of a face dial.
    pub fn swing(self) -> Option<Length> {
        match self {
            Self::Rim | Self::InsideRim => None,
            Self::Face(swing) | Self::FarFace(swing) => Some(swing),
        }
    }
}

/// Which way the pointer goes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Stem {
    /// The reading rises when the stem is pushed in, as on most dials.
    #[default]
    RisesPushedIn,
    /// The reading falls when the stem is pushed in.
    FallsPushedIn,
}

/// What was turned during the sweep.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Turning {
    /// Both shafts together: the stem stays on one spot, and runout drops out.
    #[default]
    Together,
    /// The carrier alone, round a parked rim or face with this total runout, its high spot unknown.
    CarrierAlone(Length),
    /// The same with the high spot parked at this clock position: taken off the readings.
    ///
    /// ```text
    /// r(t) − R/2·cos(t − h)
    /// ```
    CarrierOver {
        /// Total runout of the parked rim or face.
        runout: Length,
        /// Where the dial read most as the touched shaft was turned under it and parked.
        high: Clock,
    },
}

/// One reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Where the dial stood.
    pub clock: Clock,
    /// What it read.
    pub value: Length,
}

/// A dial and its sweep.
#[derive(Clone, Debug, PartialEq)]
pub struct Dial {
    /// What carries it.
    pub carried_by: Body,
    /// What its stem touches.
    pub touches: Body,
    /// Rim or face.
    pub surface: Surface,
    /// x of the plane where the stem touches.
    pub at: Length,
    /// Its readings, at any positions, any number of times.
    pub readings: Vec<Reading>,
    /// Where it was set to zero. A zero not among the readings is taken as one.
    pub zero: Option<Clock>,
    /// What it read when it came back to the zero position.
    pub returned: Option<Length>,
    /// Which way the pointer goes.
    pub stem: Stem,
    /// What was turned.
    pub turning: Turning,
    /// Its division: the smallest step it can be read to.
    pub division: Length,
    /// `±` of one reading beyond the division, if stated.
    pub plus_minus: Option<Length>,
    /// `±` of its lever, if stated: of the place of a rim's stem along the shaft, or of a face's swing.
    pub lever_plus_minus: Option<Length>,
    /// Sag of its bracket; `None` leaves the sag in the result.
    pub sag: Option<Sag>,
}

/// Why a sweep gives no answer.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DialError {
    /// A reading, size or spread that is no number, or a division that is not positive.
    #[error(
        "a reading, size or ± of a dial that is not a number, or a smallest division of nothing"
    )]
    NotANumber,
    /// A dial that touches what carries it.
    #[error(
        "the dial is carried by what it touches, {0}; expected its bracket on the one shaft and its stem on the other"
    )]
    OneBody(Body),
    /// A face dial needs a swing.
    #[error("a face dial that swings on a circle of {}; expected the diameter that its stem runs on", both(.0))]
    Swing(Length),
    /// The readings do not fix a circle.
    #[error(transparent)]
    Fit(#[from] FitError),
    /// Two face dials that do not form a pair.
    #[error(
        "a pair against end float wants two face dials half a turn apart, on the same body and the same circle"
    )]
    NoPair,
}

impl Dial {
    /// A dial without readings yet; the remaining fields have their usual values.
    pub fn new(
        carried_by: impl Into<Body>,
        touches: impl Into<Body>,
        surface: Surface,
        at: Length,
        division: Length,
    ) -> Self {
        Self {
            carried_by: carried_by.into(),
            touches: touches.into(),
            surface,
            at,
            readings: Vec::new(),
            zero: Some(Clock::TWELVE),
            returned: None,
            stem: Stem::default(),
            turning: Turning::default(),
            division,
            plus_minus: None,
            lever_plus_minus: None,
            sag: None,
        }
    }

    /// With these readings added.
    #[must_use]
    pub fn with(mut self, readings: impl IntoIterator<Item = (Clock, Length)>) -> Self {
        self.readings.extend(readings.into_iter().map(|(clock, value)| Reading { clock, value }));
        self
    }

    /// With this sag.
    #[must_use]
    pub fn with_sag(mut self, sag: Sag) -> Self {
        self.sag = Some(sag);
        self
    }

    /// Standard uncertainty of one reading, m.
    ///
    /// ```text
    /// u² = q²/12 + (U/2)²
    /// ```
    /// # Source
    /// JCGM 100:2008, 4.3.7: a division is a rectangle of half-width q/2.
    pub fn standard_uncertainty(&self) -> f64 {
        let stated = self.plus_minus.map_or(0.0, |spread| spread.si() / 2.0);
        (self.division.si() / 12_f64.sqrt()).hypot(stated)
    }

    /// Readings set to zero at another position: what was read there is taken from all.
    /// `None` when nothing was read there.
    #[must_use]
    pub fn rezeroed(&self, at: Clock) -> Option<Self> {
        let all = self.all_readings();
        let shift = all.iter().find(|reading| reading.clock.is(at))?.value;
        let readings =
            all.iter().map(|r| Reading { clock: r.clock, value: r.value - shift }).collect();
        Some(Self { readings, zero: Some(at), ..self.clone() })
    }

    /// Greatest reading minus least: the total indicator reading.
    pub fn total_indicator_reading(&self) -> Length {
        let values = || self.readings.iter().map(|reading| reading.value.si());
        let greatest = values().fold(f64::NEG_INFINITY, f64::max);
        let least = values().fold(f64::INFINITY, f64::min);
        Length::from_si(if self.readings.is_empty() { 0.0 } else { greatest - least })
    }

    /// The readings, with the zero that was set when it is not among them.
    pub fn all_readings(&self) -> Vec<Reading> {
        let mut all = self.readings.clone();
        let unread = self.zero.filter(|zero| !all.iter().any(|r| r.clock.is(*zero)));
        all.extend(unread.map(|clock| Reading { clock, value: Length::from_si(0.0) }));
        all
    }

    /// Fits the sweep and takes the sag off its cosine.
    ///
    /// # Errors
    /// [`DialError`]: readings that are no numbers or too few, a face without a swing.
    pub fn fit(&self) -> Result<Sweep, DialError> {
        let points = self.points()?;
        let circle = harmonic(&points)?;
        let sag_m = self.sag.as_ref().map_or(0.0, |sag| sag.amplitude.value.si());
        Ok(Sweep { circle, sag_m, runout_u_m: self.runout_u() })
    }

    /// The readings as the kernel wants them: rising when the stem is pushed in on an outside rim.
    pub(crate) fn points(&self) -> Result<Vec<Point>, DialError> {
        self.check()?;
        let sigma = self.standard_uncertainty();
        let turned = self.sign();
        let point = |reading: &Reading| {
            let (cos, sin) = reading.clock.cos_sin();
            let runout = self.parked_runout(reading.clock);
            Point { cos, sin, value: turned * (reading.value.si() - runout), sigma }
        };
        Ok(self.all_readings().iter().map(point).collect())
    }

    /// −1 for a dial whose readings run the other way.
    pub(crate) fn sign(&self) -> f64 {
        let stem = if self.stem == Stem::FallsPushedIn { -1.0 } else { 1.0 };
        if self.surface == Surface::InsideRim { -stem } else { stem }
    }

    /// What a parked rim or face of known runout adds to the reading at a position, m.
    fn parked_runout(&self, clock: Clock) -> f64 {
        match self.turning {
            Turning::CarrierOver { runout, high } => {
                let ((cos, sin), (high_cos, high_sin)) = (clock.cos_sin(), high.cos_sin());
                runout.si() / 2.0 * (cos * high_cos + sin * high_sin)
            }
            Turning::Together | Turning::CarrierAlone(_) => 0.0,
        }
    }

    /// A runout of R with its high spot anywhere puts R/2·cos and R/2·sin of an unknown angle into
    /// the two coefficients: standard uncertainty R/√8 in each. Where the high spot is known, half
    /// the difference of two readings is taken off, and their uncertainty stays.
    fn runout_u(&self) -> f64 {
        match self.turning {
            Turning::Together => 0.0,
            Turning::CarrierAlone(runout) => runout.si() / 8_f64.sqrt(),
            Turning::CarrierOver { runout, .. } if runout.si() >= 0.0 => {
                self.standard_uncertainty() / 2_f64.sqrt()
            }
            Turning::CarrierOver { .. } => f64::NAN,
        }
    }

    fn check(&self) -> Result<(), DialError> {
        let stated = [self.plus_minus, self.lever_plus_minus];
        let [stated, lever] = stated.map(|spread| spread.map_or(0.0, Physical::si));
        let spreads = [stated, lever, self.runout_u()];
        let sound = self.at.si().is_finite()
            && self.readings.iter().all(|reading| reading.value.si().is_finite())
            && spreads.into_iter().all(is_spread)
            && is_spread(self.division.si())
            && self.standard_uncertainty() > 0.0
            && self.sag.as_ref().is_none_or(Sag::is_sound);
        if !sound {
            return Err(DialError::NotANumber);
        }
        if self.carried_by == self.touches {
            return Err(DialError::OneBody(self.touches));
        }
        match self.surface.swing() {
            Some(swing) if !(swing.si() > 0.0 && swing.si().is_finite()) => {
                Err(DialError::Swing(swing))
            }
            _ => Ok(()),
        }
    }
}
