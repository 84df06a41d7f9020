//! A fit as people write it, of whichever system: H7/p6, FN2, or a coupling bore of AGMA 9002.
//!
//! Deviations are counted from the nominal size. Interference is diametral and positive when the
//! shaft is the larger.
//!
//! Not here: the figures (`iso_286`, `ansi_b4_1`, `agma_9002`, `nema_mg_1`).

use std::fmt;
use std::str::FromStr;

use quantities::{Basis, Length, Source, System};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::{agma_9002, ansi_b4_1, iso_286, nema_mg_1};
use uom::si::length::inch;

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

/// A fit of one of the systems.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(try_from = "String", into = "String")]
#[schemars(with = "String")]
pub enum Fit {
    /// A hole and a shaft of ISO 286: H7/p6.
    Iso(iso_286::Fit),
    /// A class of ANSI B4.1: FN2.
    Inch(ansi_b4_1::Class),
    /// A coupling's bore of ANSI/AGMA 9002 on a motor's shaft of NEMA MG 1.
    Agma(agma_9002::Fit),
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
    /// In AGMA 9002.
    #[error("{fit} is not held for {} in; held are bores of 3/8 to 1-1/2 in", .nominal.get::<inch>())]
    Agma {
        /// The fit.
        fit: Fit,
        /// The size.
        nominal: Length,
    },
    /// Text that no system knows.
    #[error(
        "“{0}” is no fit that is known here: H7/p6 (ISO 286), FN2 (ANSI B4.1), AGMA clearance or AGMA interference"
    )]
    Unknown(String),
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
            Self::Agma(fit) => agma_9002::bore(nominal, fit)
                .zip(nema_mg_1::shaft_extension(nominal))
                .map(|(hole, shaft)| Zones { hole, shaft })
                .ok_or(FitError::Agma { fit: self, nominal }),
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
            Self::Agma(_) => AGMA,
        }
    }

    /// What the zones of hole and shaft are called: "H7" and "p6".
    pub fn part_names(self) -> [String; 2] {
        match self {
            Self::Iso(fit) => [fit.hole.to_string(), fit.shaft.to_string()],
            Self::Inch(class) => [class.to_string(), class.to_string()],
            Self::Agma(_) => [self.to_string(), "NEMA MG 1".to_owned()],
        }
    }

    /// The system's name: "ISO 286".
    pub fn system(self) -> &'static str {
        match self {
            Self::Iso(_) => "ISO 286",
            Self::Inch(_) => "ANSI B4.1",
            Self::Agma(_) => "ANSI/AGMA 9002",
        }
    }
}

impl FromStr for Fit {
    type Err = FitError;

    fn from_str(text: &str) -> Result<Self, FitError> {
        let plain = text.trim().to_lowercase();
        if let Some(sort) = plain.strip_prefix("agma") {
            return match sort.trim().trim_start_matches("9002").trim() {
                "clearance" => Ok(Self::Agma(agma_9002::Fit::Clearance)),
                "interference" => Ok(Self::Agma(agma_9002::Fit::Interference)),
                _ => Err(FitError::Unknown(text.trim().to_owned())),
            };
        }
        if ansi_b4_1::begins_as_one(text) {
            return Ok(Self::Inch(text.parse()?));
        }
        match text.parse() {
            Err(iso_286::Iso286Error::NotAFit(text)) => Err(FitError::Unknown(text)),
            fit => Ok(Self::Iso(fit?)),
        }
    }
}

/// The shaft's is the less sure.
const AGMA: Source = Source::new(
    "ANSI/AGMA 9002-B04 for the bore (read), NEMA MG 1 for the shaft",
    "",
    Basis::Memory,
);

impl fmt::Display for Fit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Iso(fit) => fit.fmt(f),
            Self::Inch(class) => class.fmt(f),
            Self::Agma(agma_9002::Fit::Clearance) => f.write_str("AGMA clearance"),
            Self::Agma(agma_9002::Fit::Interference) => f.write_str("AGMA interference"),
        }
    }
}

as_text!(Fit);

/// Classes that hubs and shafts are commonly made to (common practice), loosest first: of ISO 286
/// for metric jobs, of ANSI B4.1 for jobs in inches.
pub fn usual(system: System) -> impl Iterator<Item = Fit> {
    let names: &[&str] = match system {
        System::Metric => &ISO,
        System::Inch => &INCH,
    };
    names.iter().filter_map(|name| name.parse().ok())
}

const ISO: [&str; 10] =
    ["H7/h6", "H7/j6", "H7/k6", "H7/m6", "H7/n6", "H7/p6", "H7/r6", "H7/s6", "H7/t6", "H7/u6"];
const INCH: [&str; 9] = ["LC2", "LT3", "LN2", "LN3", "FN1", "FN2", "FN3", "FN4", "FN5"];

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
        assert_eq!(basis("LC5", inches(3.0)), Basis::Memory);
        assert_eq!(basis("H12/h9", mm(80.0)), Basis::Computed);
        assert_eq!(basis("H12/za9", mm(80.0)), Basis::Memory);
        assert_eq!(basis("H4/h5", mm(80.0)), Basis::Memory);
    }

    #[test]
    fn either_system_is_read_and_written_back() {
        for (text, written) in [
            ("H7/p6", "H7/p6"),
            ("H7 - js6", "H7/js6"),
            ("H7p6", "H7/p6"),
            (" ZA8 h7 ", "ZA8/h7"),
            ("fn 2", "FN2"),
            ("LC-2", "LC2"),
            ("rc4", "RC4"),
            ("agma  interference", "AGMA interference"),
            ("AGMA 9002 clearance", "AGMA clearance"),
        ] {
            let fit: Fit = text.parse().unwrap();
            assert_eq!(fit.to_string(), written);
            assert_eq!(written.parse::<Fit>().unwrap(), fit);
        }
        for text in [
            "",
            "FN9",
            "RC14",
            "AGMA",
            "AGMA tight",
            "H7",
            "p6/H7",
            "H7/p6/k6",
            "ſ7/p6",
            "ß",
            "H7/P6",
        ] {
            assert!(text.parse::<Fit>().is_err(), "{text}");
        }
    }

    /// A bore of AGMA 9002 on a shaft of +0/−0.0005 in has 0 to 0.0010 in of interference (common
    /// practice); with clearance, 0 to 0.0015 in.
    #[test]
    fn a_coupling_bore_on_a_motor_shaft() {
        use uom::si::length::{inch, mil};
        let fit = |text: &str| {
            let (least, greatest) =
                text.parse::<Fit>().unwrap().interference(Length::new::<inch>(1.125)).unwrap();
            format!("{:.1} to {:.1}", least.get::<mil>(), greatest.get::<mil>())
        };
        assert_eq!(fit("AGMA interference"), "0.0 to 1.0");
        assert_eq!(fit("AGMA clearance"), "-1.5 to 0.0");
        let large = "AGMA clearance".parse::<Fit>().unwrap().zones(Length::new::<inch>(2.0));
        assert_eq!(
            large.unwrap_err().to_string(),
            "AGMA clearance is not held for 2 in; held are bores of 3/8 to 1-1/2 in"
        );
    }
}
