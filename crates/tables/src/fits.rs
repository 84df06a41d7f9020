//! A fit as people write it, of either system: H7/p6 or FN2.
//!
//! Deviations are counted from the nominal size. Interference is diametral and positive when the
//! shaft is the larger.
//!
//! Not here: the figures (`iso_286`, `ansi_b4_1`).

use std::fmt;
use std::str::FromStr;

use quantities::{Length, Source};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::{ansi_b4_1, iso_286};

/// Upper and lower deviation from the nominal size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Zone {
    /// Of the largest size allowed.
    pub upper: Length,
    /// Of the smallest size allowed.
    pub lower: Length,
}

/// The zones of a hole and of its shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Zones {
    /// Of the hole.
    pub hole: Zone,
    /// Of the shaft.
    pub shaft: Zone,
}

impl Zones {
    /// Least and greatest interference; a clearance is negative.
    pub fn interference(&self) -> (Length, Length) {
        (self.shaft.lower - self.hole.upper, self.shaft.upper - self.hole.lower)
    }
}

/// A fit of either system.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(try_from = "String", into = "String")]
#[schemars(with = "String")]
pub enum Fit {
    /// A hole and a shaft of ISO 286: H7/p6.
    Iso(iso_286::Fit),
    /// A class of ANSI B4.1: FN2.
    Inch(ansi_b4_1::Class),
}

/// Why a fit gives no limits.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FitError {
    /// In ISO 286.
    #[error(transparent)]
    Iso(#[from] iso_286::Iso286Error),
    /// In ANSI B4.1.
    #[error(transparent)]
    Inch(#[from] ansi_b4_1::B41Error),
}

impl Fit {
    /// The zones of hole and shaft for a nominal size.
    ///
    /// # Errors
    /// [`FitError`] when the tables do not hold the fit for that size.
    /// # Example
    /// ```
    /// use quantities::Length;
    /// use tables::fits::Fit;
    /// use uom::si::length::{inch, mil};
    /// let zones = "FN2".parse::<Fit>()?.zones(Length::new::<inch>(3.0))?;
    /// let (least, greatest) = zones.interference();
    /// assert_eq!(format!("{:.1} to {:.1}", least.get::<mil>(), greatest.get::<mil>()), "1.0 to 2.9");
    /// # Ok::<(), tables::fits::FitError>(())
    /// ```
    pub fn zones(self, nominal: Length) -> Result<Zones, FitError> {
        match self {
            Self::Iso(fit) => Ok(fit.zones(nominal)?),
            Self::Inch(class) => Ok(class.zones(nominal)?),
        }
    }

    /// Least and greatest interference for a nominal size; a clearance is negative.
    ///
    /// # Errors
    /// As [`Fit::zones`].
    pub fn interference(self, nominal: Length) -> Result<(Length, Length), FitError> {
        self.zones(nominal).map(|zones| zones.interference())
    }

    /// Where its figures for a nominal size come from.
    pub fn source(self, nominal: Length) -> Source {
        match self {
            Self::Iso(fit) => fit.source(nominal),
            Self::Inch(class) => class.source(nominal),
        }
    }
}

impl FromStr for Fit {
    type Err = FitError;

    fn from_str(text: &str) -> Result<Self, FitError> {
        let inch = ["FN", "LN", "LC", "LT", "RC"];
        let start: String = text.trim().to_uppercase().chars().take(2).collect();
        if inch.contains(&start.as_str()) {
            Ok(Self::Inch(text.parse()?))
        } else {
            Ok(Self::Iso(text.parse()?))
        }
    }
}

impl fmt::Display for Fit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Iso(fit) => fit.fmt(f),
            Self::Inch(class) => class.fmt(f),
        }
    }
}

as_text!(Fit);

#[cfg(test)]
mod tests {
    use super::*;

    /// What is from memory says so, and nothing else does.
    #[test]
    fn sources_know_how_they_are_known() {
        use quantities::Basis;
        use uom::si::length::{inch, millimeter};
        let basis = |fit: &str, size| fit.parse::<Fit>().unwrap().source(size).basis;
        let (mm, inches) = (Length::new::<millimeter>, Length::new::<inch>);
        assert_eq!(basis("H7/p6", mm(100.0)), Basis::Read);
        assert_eq!(basis("H7/j6", mm(180.0)), Basis::Memory);
        assert_eq!(basis("H7/j6", mm(200.0)), Basis::Read);
        assert_eq!(basis("C11/h11", mm(80.0)), Basis::Memory);
        assert_eq!(basis("FN2", inches(4.0)), Basis::Memory);
        assert_eq!(basis("FN2", inches(3.0)), Basis::Read);
        assert_eq!(basis("LC2", inches(3.0)), Basis::Computed);
    }

    #[test]
    fn either_system_is_read_and_written_back() {
        for (text, written) in
            [("H7/p6", "H7/p6"), ("H7 - js6", "H7/js6"), ("fn 2", "FN2"), ("LC-2", "LC2")]
        {
            assert_eq!(text.parse::<Fit>().unwrap().to_string(), written);
        }
        for text in ["", "FN9", "RC4", "H7", "p6/H7", "H7/p6/k6", "ſ7/p6", "ß", "H7/P6"] {
            assert!(text.parse::<Fit>().is_err(), "{text}");
        }
    }
}
