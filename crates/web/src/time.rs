//! When something was written, as the margin says it.

use jiff::Timestamp;
use jiff::tz::TimeZone;

/// The hour on the day of the newest entry, the day otherwise: "09:14", "25 Nov".
pub(crate) fn short(at: Timestamp, newest: Timestamp, zone: &TimeZone) -> String {
    let (there, newest) =
        (at.to_zoned_datetime(zone.clone()), newest.to_zoned_datetime(zone.clone()));
    if there.date() == newest.date() {
        there.strftime("%H:%M").to_string()
    } else {
        there.strftime("%-d %b").to_string()
    }
}

/// When a step was done, from the plan's day and hour in UTC: "25 Nov 2026, 09:14".
pub(crate) fn done(at: &str, zone: &TimeZone) -> String {
    let utc = jiff::civil::DateTime::strptime("%Y-%m-%d %H:%M", at).ok();
    let utc = utc.and_then(|at| TimeZone::UTC.to_timestamp(at).ok());
    utc.map_or_else(|| at.to_owned(), |at| long(at, zone))
}

/// Day, month, year and hour: "25 Nov 2026, 09:14".
pub(crate) fn long(at: Timestamp, zone: &TimeZone) -> String {
    at.to_zoned_datetime(zone.clone()).strftime("%-d %b %Y, %H:%M").to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_was_done_at_the_hour_of_the_place() {
        let zone = TimeZone::fixed(jiff::tz::offset(2));
        assert_eq!(done("2026-11-25 23:14", &zone), "26 Nov 2026, 01:14");
        assert_eq!(done("some time", &zone), "some time");
        let at = |text: &str| text.parse::<Timestamp>().unwrap();
        let newest = at("2026-11-25T21:59:00Z");
        assert_eq!(short(at("2026-11-25T07:14:00Z"), newest, &zone), "09:14");
        assert_eq!(short(at("2026-11-24T21:59:00Z"), newest, &zone), "24 Nov");
    }
}
