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

/// Day, month, year and hour: "25 Nov 2026, 09:14".
pub(crate) fn long(at: Timestamp, zone: &TimeZone) -> String {
    at.to_zoned_datetime(zone.clone()).strftime("%-d %b %Y, %H:%M").to_string()
}
