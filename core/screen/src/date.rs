//! Dates in words.

use super::{Arg, Wording};
use chrono::{DateTime, Datelike};
use restwater_log::local_ms;

/// "17 Jan 2026".
pub fn date_words(words: &Wording, wall_ms: i64, offset_min: i16) -> String {
    let local = DateTime::from_timestamp_millis(local_ms(wall_ms, offset_min));
    let Some(local) = local else { return String::new() };
    let month = words.say(&format!("month-{}", local.month()));
    let (day, year) = (local.day().to_string(), local.year().to_string());
    words.say_with(
        "book-date",
        &[("day", Arg::Text(&day)), ("month", Arg::Text(&month)), ("year", Arg::Text(&year))],
    )
}
