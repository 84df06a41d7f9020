//! A day, as it is written in a job: "2026-11-25".

use std::fmt;
use std::str::FromStr;

use jiff::civil::Date;
use jiff::{Span, Unit};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error as _};

/// A day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day(Date);

/// A text that is no day.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("“{0}” is not a day; expected year, month and day, such as 2026-11-25")]
pub struct DayError(String);

impl Day {
    /// So many months later; `None` beyond the calendar. The 31st becomes the last of a shorter
    /// month.
    ///
    /// # Example
    /// ```
    /// let day: job::file::Day = "2026-08-31".parse()?;
    /// assert_eq!(day.months_later(6).map(|day| day.to_string()).as_deref(), Some("2027-02-28"));
    /// # Ok::<(), job::file::DayError>(())
    /// ```
    pub fn months_later(self, months: u32) -> Option<Self> {
        let span = Span::new().try_months(i64::from(months)).ok()?;
        self.0.checked_add(span).ok().map(Self)
    }

    /// So many days later; `None` beyond the calendar.
    pub fn days_later(self, days: u32) -> Option<Self> {
        let span = Span::new().try_days(i64::from(days)).ok()?;
        self.0.checked_add(span).ok().map(Self)
    }

    /// Days from an earlier day to this one; negative when that one is later.
    pub fn days_since(self, earlier: Self) -> Option<i64> {
        let span = self.0.since((Unit::Day, earlier.0)).ok()?;
        Some(i64::from(span.get_days()))
    }
}

impl FromStr for Day {
    type Err = DayError;

    fn from_str(text: &str) -> Result<Self, DayError> {
        text.trim().parse().map(Self).map_err(|_| DayError(text.to_owned()))
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl Serialize for Day {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Day {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        text.parse().map_err(D::Error::custom)
    }
}

impl JsonSchema for Day {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Day".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "string", "format": "date",
            "description": "a day: year, month and day", "examples": ["2026-11-25"]
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The calendar itself: 2028 is a leap year, a year is twelve months, a month ends.
    #[test]
    fn months_and_days_go_by_the_calendar() {
        let day = |text: &str| text.parse::<Day>().unwrap();
        let shown = |day: Option<Day>| day.unwrap().to_string();
        assert_eq!(shown(day("2026-11-30").months_later(12)), "2027-11-30");
        assert_eq!(shown(day("2027-11-30").months_later(3)), "2028-02-29");
        assert_eq!(shown(day("2028-02-28").days_later(2)), "2028-03-01");
        assert_eq!(day("2028-03-01").days_since(day("2028-02-01")), Some(29));
        assert_eq!(day("2026-01-01").days_since(day("2026-01-02")), Some(-1));
        assert!(day("9999-06-01").months_later(12).is_none());
        for wrong in ["", "25.11.2026", "2026-13-01", "2026-02-30", "tomorrow"] {
            assert!(wrong.parse::<Day>().is_err(), "{wrong}");
        }
    }
}
