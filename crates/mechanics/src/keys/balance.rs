//! Length of a key so that a balanced hub and shaft stay in balance together.
//!
//! With the half-key convention (ISO 21940-32) shaft and hub are each balanced with half a key that
//! fills their own keyway. A key that fills both keyways exactly adds nothing; where the keyways
//! differ in length, a plain key of the mean length comes near, a stepped one is exact.

use quantities::{Basis, Kind, Length, Source, Value, Working};

use super::KeyError;
use crate::is_positive;
use quantities::Physical;

/// How the length is reckoned.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LengthRule {
    /// The plain mean of the two keyways.
    #[default]
    Mean,
    /// The mean less 5 %, for round-ended keyways (common practice).
    MeanLess5Percent,
}

impl LengthRule {
    fn factor(self) -> f64 {
        match self {
            Self::Mean => 1.0,
            Self::MeanLess5Percent => 0.95,
        }
    }
}

/// A key's length for balance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BalanceKey {
    /// Keyway in the hub.
    pub hub: Length,
    /// Keyway in the shaft.
    pub shaft: Length,
    /// The rule.
    pub rule: LengthRule,
    /// Length of a plain key.
    pub length: Length,
}

impl BalanceKey {
    /// Length of a plain key that keeps hub and shaft in balance.
    ///
    /// ```text
    /// l = f·(H + S)/2
    /// ```
    /// # Valid
    /// Both balanced by the half-key convention and marked so.
    /// # Errors
    /// [`KeyError::Length`] for a keyway not above zero.
    /// # Source
    /// ISO 21940-32 for the convention; the length rule is common practice.
    /// # Example
    /// ```
    /// use mechanics::keys::balance::{BalanceKey, LengthRule};
    /// use uom::si::{f64::Length, length::inch};
    /// let (hub, shaft) = (Length::new::<inch>(3.0), Length::new::<inch>(5.0));
    /// let key = BalanceKey::new(hub, shaft, LengthRule::MeanLess5Percent)?;
    /// assert_eq!(format!("{:.1}", key.length.get::<inch>()), "3.8");
    /// # Ok::<(), mechanics::keys::KeyError>(())
    /// ```
    pub fn new(hub: Length, shaft: Length, rule: LengthRule) -> Result<Self, KeyError> {
        for keyway in [hub, shaft] {
            if !is_positive(keyway.si()) {
                return Err(KeyError::Length(keyway));
            }
        }
        Ok(Self { hub, shaft, rule, length: (hub + shaft) / 2.0 * rule.factor() })
    }

    /// How the length was found.
    pub fn working(&self) -> Working {
        let source = Source::new("ISO 21940-32", "half-key convention", Basis::Memory);
        let length = |length| Value::new(Kind::Length, length);
        Working::new("Key length for balance", "l = f·(H + S)/2", length(self.length), source)
            .term("f", "factor of the rule", Value::number(self.rule.factor()))
            .term("H", "keyway in the hub", length(self.hub))
            .term("S", "keyway in the shaft", length(self.shaft))
            .valid("both parts balanced with half a key; a stepped key is exact")
    }
}
