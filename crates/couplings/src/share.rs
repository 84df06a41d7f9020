//! What is asked of a coupling as a share of what it bears.
//!
//! u share used · a asked · b borne, from the maker's sheet

use quantities::{Basis, Kind, Limits, Source, Value, Verdict, Working, judge};

/// What is asked, and what is borne, of one kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// What it is of, in words: "rated torque".
    pub what: &'static str,
    /// What is asked; not negative.
    pub asked: Value,
    /// What is borne; above zero.
    pub borne: Value,
}

/// Why there is no share.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ShareError {
    /// What is asked is no number, or below zero.
    #[error("{what}: asked is no number at or above zero: {si}")]
    Asked {
        /// Of what.
        what: &'static str,
        /// In SI.
        si: f64,
    },
    /// What is borne is not above zero.
    #[error("{what}: borne is not above zero: {si}")]
    Borne {
        /// Of what.
        what: &'static str,
        /// In SI.
        si: f64,
    },
    /// The two are not of one dimension.
    #[error("{what}: {asked:?} cannot be a share of {borne:?}")]
    Dimensions {
        /// Of what.
        what: &'static str,
        /// What was asked.
        asked: Kind,
        /// What is borne.
        borne: Kind,
    },
}

impl Share {
    /// # Errors
    /// [`ShareError`] unless 0 ≤ asked and 0 < borne, both numbers of one dimension.
    /// # Example
    /// ```
    /// use couplings::share::Share;
    /// use quantities::{Kind, Physical, Torque, Value, Verdict};
    /// let torque = |si| Value::new(Kind::Torque, Torque::from_si(si));
    /// let share = Share::new("rated torque", torque(1591.5), torque(2000.0))?;
    /// assert_eq!(share.fraction().show(Default::default()), "80 %");
    /// assert_eq!(share.verdict(), Verdict::Inside);
    /// # Ok::<(), couplings::share::ShareError>(())
    /// ```
    pub fn new(what: &'static str, asked: Value, borne: Value) -> Result<Self, ShareError> {
        if asked.kind.dimension() != borne.kind.dimension() {
            return Err(ShareError::Dimensions { what, asked: asked.kind, borne: borne.kind });
        }
        if !(asked.si.is_finite() && asked.si >= 0.0) {
            return Err(ShareError::Asked { what, si: asked.si });
        }
        if !(borne.si.is_finite() && borne.si > 0.0) {
            return Err(ShareError::Borne { what, si: borne.si });
        }
        Ok(Self { what, asked, borne })
    }

    /// The share, with the `±` of what is asked; what the sheet says is taken as exact.
    pub fn fraction(&self) -> Value {
        let plus_minus = self.asked.plus_minus.map(|spread| spread / self.borne.si);
        Value { kind: Kind::Percent, si: self.asked.si / self.borne.si, plus_minus }
    }

    /// Inside when no more is asked than is borne.
    pub fn verdict(&self) -> Verdict {
        judge(&self.asked, &Limits::at_most(self.borne.si))
    }

    /// How the share was found.
    pub fn working(&self) -> Working {
        let source = Source::new("asked over borne", "", Basis::Computed);
        Working::new(format!("Share used of {}", self.what), "u = a/b", self.fraction(), source)
            .term("a", "asked", self.asked)
            .term("b", format!("{}, maker’s sheet", self.what), self.borne)
    }
}
