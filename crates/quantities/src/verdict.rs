//! Whether a number lies within its limits, its `±` taken into account.

use serde::Serialize;

use crate::{System, Value};

/// The four words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// The whole interval lies within the limits.
    Inside,
    /// There is no number yet.
    NotMeasured,
    /// The interval straddles a limit.
    TooClose,
    /// The whole interval lies beyond a limit.
    Outside,
}

impl Verdict {
    /// As it is stamped.
    pub fn words(self) -> &'static str {
        match self {
            Self::Inside => "inside",
            Self::NotMeasured => "not measured",
            Self::TooClose => "too close to call",
            Self::Outside => "outside",
        }
    }
}

/// Two limits, of which one may be open; in SI, of the same kind as the value they judge.
#[derive(Clone, Copy, Debug, PartialEq, Default, Serialize)]
pub struct Limits {
    /// At least this.
    pub least: Option<f64>,
    /// At most this.
    pub greatest: Option<f64>,
}

impl Limits {
    /// From one to the other.
    pub fn between(least: f64, greatest: f64) -> Self {
        Self { least: Some(least), greatest: Some(greatest) }
    }

    /// No more than.
    pub fn at_most(greatest: f64) -> Self {
        Self { least: None, greatest: Some(greatest) }
    }

    /// No less than.
    pub fn at_least(least: f64) -> Self {
        Self { least: Some(least), greatest: None }
    }

    /// In words, as a value of `like`'s kind: "0.002 to 0.051 mm", "at most 0.10 mm".
    pub fn show(&self, like: &Value, system: System) -> String {
        let one = |si: f64| Value { si, plus_minus: None, ..*like };
        match (self.least, self.greatest) {
            (Some(least), Some(greatest)) => {
                format!("{} to {}", one(least).digits(system), one(greatest).show(system))
            }
            (None, Some(greatest)) => format!("at most {}", one(greatest).show(system)),
            (Some(least), None) => format!("at least {}", one(least).show(system)),
            (None, None) => String::new(),
        }
    }
}

/// The verdict on a value. One without a `±` is taken as exact; on the limit is inside.
pub fn judge(value: &Value, limits: &Limits) -> Verdict {
    let spread = value.plus_minus.unwrap_or(0.0);
    let (low, high) = (value.si - spread, value.si + spread);
    let least = limits.least.unwrap_or(f64::NEG_INFINITY);
    let greatest = limits.greatest.unwrap_or(f64::INFINITY);
    // A value converted from inches must not fall outside its own limit by a rounding error.
    let hair = 1e-12 + 1e-9 * value.si.abs();
    if low >= least - hair && high <= greatest + hair {
        Verdict::Inside
    } else if high < least - hair || low > greatest + hair {
        Verdict::Outside
    } else {
        Verdict::TooClose
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Kind;

    #[test]
    fn the_spread_decides() {
        let value = |si, plus_minus| Value { kind: Kind::Allowance, si, plus_minus };
        let limits = Limits::between(2e-6, 51e-6);
        assert_eq!(judge(&value(34e-6, Some(4e-6)), &limits), Verdict::Inside);
        assert_eq!(judge(&value(50e-6, Some(4e-6)), &limits), Verdict::TooClose);
        assert_eq!(judge(&value(56e-6, Some(4e-6)), &limits), Verdict::Outside);
        assert_eq!(judge(&value(51e-6, None), &limits), Verdict::Inside);
        assert_eq!(limits.show(&value(0.0, None), System::Metric), "0.002 to 0.051 mm");
    }
}
