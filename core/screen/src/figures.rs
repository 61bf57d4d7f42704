//! Figures as they are written: clocks, minutes, metres.

use chrono::DateTime;
use restwater_log::{Moment, local_ms};

/// Time of day by the phone's local time, "12:46".
pub fn clock(at: &Moment) -> String {
    clock_of(at.wall_ms, at.offset_min)
}

/// The same of a wall time and its offset.
pub(crate) fn clock_of(wall_ms: i64, offset_min: i16) -> String {
    let minutes = local_ms(wall_ms, offset_min).div_euclid(60_000).rem_euclid(24 * 60);
    format!("{:02}:{:02}", minutes / 60, minutes % 60)
}

/// The local day, "2026-01-17".
pub fn iso_day(at: &Moment) -> String {
    iso_day_of(at.wall_ms, at.offset_min)
}

/// The same of a wall time and its offset.
pub(crate) fn iso_day_of(wall_ms: i64, offset_min: i16) -> String {
    DateTime::from_timestamp_millis(local_ms(wall_ms, offset_min))
        .map_or_else(String::new, |t| t.format("%Y-%m-%d").to_string())
}

/// A running clock: "21:40", from an hour on "1:02:10".
pub(crate) fn digits(ms: i64) -> String {
    let seconds = ms.max(0) / 1_000;
    let (hours, minutes, seconds) = (seconds / 3_600, seconds / 60 % 60, seconds % 60);
    if hours > 0 { format!("{hours}:{minutes:02}:{seconds:02}") } else { format!("{minutes}:{seconds:02}") }
}

/// Minutes rounded to a whole number, since nobody winds in to the second.
pub(crate) fn whole(minutes: f64) -> String {
    format!("{:.0}", libm::round(minutes))
}

/// Minutes that something had reached: "rested 44 of 45 min" at 44:36, and the lower end of "between 9 and 15 min".
pub(crate) fn whole_reached(minutes: f64) -> String {
    whole(libm::floor(minutes))
}

/// Minutes that nothing is past: the upper end of "between 9 and 15 min" for 14:20.
pub(crate) fn whole_bound(minutes: f64) -> String {
    whole(libm::ceil(minutes))
}

/// Capitalises the first letter.
pub fn sentence_case(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

/// At most this many decimals, without trailing zeros: "9.5", "12".
pub fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_session::written::second;

    #[test]
    fn clocks_read_as_on_a_watch() {
        assert_eq!(clock(&second(0)), "22:13", "1 700 000 000 s after 1970 UTC");
        assert_eq!(clock(&Moment { offset_min: -60, ..second(0) }), "21:13");
        assert_eq!(digits(1_300_999), "21:40");
        assert_eq!(digits(3_730_000), "1:02:10");
        assert_eq!(digits(-5), "0:00");
    }

    #[test]
    fn decimals_are_trimmed() {
        assert_eq!(trimmed(9.50, 2), "9.5");
        assert_eq!(trimmed(12.0, 2), "12");
        assert_eq!(trimmed(20.0, 0), "20");
    }
}
