//! Where on the turn a reading was taken: a clock position, and the end it was seen from.
//!
//! Inside, a position is an angle clockwise from 12 as seen looking along +x, from driver towards
//! driven. Seen from the other end, 3 and 9 change places; that is put right as the position comes in.

use std::fmt;

use quantities::{Angle, Physical};

/// Which way the reader looked when naming left and right.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum View {
    /// From the driver towards the driven machine, along +x.
    #[default]
    FromDriver,
    /// From the driven machine towards the driver: 3 and 9 change places.
    FromDriven,
}

/// A clock position, held as seen looking along +x.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Clock {
    degrees: f64,
}

/// Why a text is no clock position.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ClockError {
    /// It cannot be read.
    #[error("“{0}” is not a clock position; expected one such as 12, 1:30 or 45°")]
    NotAPosition(String),
    /// A bare number beyond the dial of a clock.
    #[error("“{0}” is beyond 12 o’clock; degrees need their mark, such as 45°")]
    BeyondTwelve(String),
}

impl Clock {
    /// Twelve o'clock, up.
    pub const TWELVE: Self = Self { degrees: 0.0 };
    /// Three o'clock, +z.
    pub const THREE: Self = Self { degrees: 90.0 };
    /// Six o'clock, down.
    pub const SIX: Self = Self { degrees: 180.0 };
    /// Nine o'clock, −z.
    pub const NINE: Self = Self { degrees: 270.0 };
    /// The four usual positions, in the order of the clock.
    pub const QUARTERS: [Self; 4] = [Self::TWELVE, Self::THREE, Self::SIX, Self::NINE];

    /// From degrees clockwise from 12 as the reader saw them; `None` for what is no number.
    pub fn from_degrees(degrees: f64, view: View) -> Option<Self> {
        let seen = match view {
            View::FromDriver => degrees,
            View::FromDriven => -degrees,
        };
        let turned = seen.rem_euclid(360.0);
        // An angle a hair below zero may round up to a full turn.
        let degrees = if turned >= 360.0 { 0.0 } else { turned };
        degrees.is_finite().then_some(Self { degrees })
    }

    /// Reads "12", "3", "1:30", "4.5", "9 o'clock", "45°" or "45 deg".
    ///
    /// # Errors
    /// [`ClockError`] for anything else, and for a bare number above 12.
    ///
    /// # Example
    /// ```
    /// use lineup::clock::{Clock, View};
    /// assert_eq!(Clock::read("3", View::FromDriver)?, Clock::THREE);
    /// assert_eq!(Clock::read("3", View::FromDriven)?, Clock::NINE);
    /// assert_eq!(Clock::read("1:30", View::FromDriver)?, Clock::read("45°", View::FromDriver)?);
    /// # Ok::<(), lineup::clock::ClockError>(())
    /// ```
    pub fn read(text: &str, view: View) -> Result<Self, ClockError> {
        let bad = || ClockError::NotAPosition(text.trim().to_owned());
        let clean = text.trim().replace('’', "'").to_lowercase();
        if let Some(number) = clean.strip_suffix('°').or_else(|| clean.strip_suffix("deg")) {
            let degrees = number.trim().parse().map_err(|_| bad())?;
            return Self::from_degrees(degrees, view).ok_or_else(bad);
        }
        let bare = clean.strip_suffix("o'clock").unwrap_or(&clean).trim();
        let hours = hours(bare).ok_or_else(bad)?;
        if hours >= 13.0 {
            return Err(ClockError::BeyondTwelve(text.trim().to_owned()));
        }
        Self::from_degrees(30.0 * hours, view).ok_or_else(bad)
    }

    /// Degrees clockwise from 12, 0 to below 360, looking along +x.
    pub fn degrees(self) -> f64 {
        self.degrees
    }

    /// The same as an angle.
    pub fn angle(self) -> Angle {
        Angle::from_si(self.degrees.to_radians())
    }

    /// The position as someone with that view names it.
    #[must_use]
    pub fn seen(self, view: View) -> Self {
        Self::from_degrees(self.degrees, view).unwrap_or(self)
    }

    /// The position so many quarter turns on, clockwise.
    #[must_use]
    pub fn quarters_on(self, quarters: u8) -> Self {
        let degrees = self.degrees + 90.0 * f64::from(quarters);
        Self { degrees: degrees.rem_euclid(360.0) }
    }

    /// True when two positions are the same to a hundredth of a degree.
    pub fn is(self, other: Self) -> bool {
        let apart = (self.degrees - other.degrees).rem_euclid(360.0);
        apart.min(360.0 - apart) < 0.01
    }

    /// Cosine and sine; exactly 0 and ±1 at the quarters.
    pub(crate) fn cos_sin(self) -> (f64, f64) {
        let quarter = Self::QUARTERS.iter().position(|quarter| *quarter == self);
        match quarter {
            Some(0) => (1.0, 0.0),
            Some(1) => (0.0, 1.0),
            Some(2) => (-1.0, 0.0),
            Some(_) => (0.0, -1.0),
            None => {
                let (sin, cos) = self.degrees.to_radians().sin_cos();
                (cos, sin)
            }
        }
    }
}

/// Hours on a clock's dial, 0 to below 13; "12:30" is half past twelve.
fn hours(text: &str) -> Option<f64> {
    let (hours, minutes) = text.split_once(':').unwrap_or((text, "0"));
    let hours: f64 = hours.trim().parse().ok()?;
    let minutes: u8 = minutes.trim().parse().ok()?;
    let whole = !text.contains(':') || hours.fract() == 0.0;
    (whole && hours >= 0.0 && hours.is_finite() && minutes < 60)
        .then(|| hours + f64::from(minutes) / 60.0)
}

/// As a clock shows it, "1:30"; in degrees where no whole minute fits.
impl fmt::Display for Clock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let minutes = self.degrees * 2.0;
        if (minutes - minutes.round()).abs() > 1e-6 {
            return write!(f, "{:.1}°", self.degrees);
        }
        let hour = (self.degrees / 30.0 + 1e-9).floor();
        let minute = (minutes - 60.0 * hour).round();
        let hour = if hour == 0.0 { 12.0 } else { hour };
        if minute == 0.0 { write!(f, "{hour:.0}") } else { write!(f, "{hour:.0}:{minute:02.0}") }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn positions_read_as_people_write_them() {
        for (text, degrees) in [
            ("12", 0.0),
            ("12:30", 15.0),
            ("0", 0.0),
            ("3", 90.0),
            ("1:30", 45.0),
            ("4.5", 135.0),
            ("9 o’clock", 270.0),
            ("45°", 45.0),
            ("300 deg", 300.0),
            ("-90°", 270.0),
        ] {
            let read = Clock::read(text, View::FromDriver).unwrap();
            assert!((read.degrees() - degrees).abs() < 1e-9, "{text}: {read:?}");
        }
        for text in ["", "noon", "1:75", "1.5:30", "NaN", "inf°", "-1"] {
            assert!(Clock::read(text, View::FromDriver).is_err(), "{text}");
        }
        assert!(matches!(Clock::read("45", View::FromDriver), Err(ClockError::BeyondTwelve(_))));
    }

    #[test]
    fn positions_show_as_a_clock_does() {
        for (degrees, text) in
            [(0.0, "12"), (45.0, "1:30"), (90.0, "3"), (277.0, "9:14"), (10.1, "10.1°")]
        {
            let clock = Clock::from_degrees(degrees, View::FromDriver).unwrap();
            assert_eq!(clock.to_string(), text);
        }
    }

    proptest::proptest! {
        /// Seen from the other end and back again is where it was, and only left and right change.
        #[test]
        fn the_other_view_is_a_mirror(degrees in 0.0..360.0_f64) {
            let near = Clock::from_degrees(degrees, View::FromDriver).unwrap();
            let far = Clock::from_degrees(degrees, View::FromDriven).unwrap();
            proptest::prop_assert!(far.seen(View::FromDriven).is(near));
            let ((c, s), (cf, sf)) = (near.cos_sin(), far.cos_sin());
            proptest::prop_assert!((c - cf).abs() < 1e-9 && (s + sf).abs() < 1e-9);
        }

        #[test]
        fn any_text_is_answered(text in "\\PC{0,12}") {
            let _ = Clock::read(&text, View::FromDriver);
        }
    }
}
