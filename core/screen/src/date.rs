//! Dates and durations in words.

use super::{Arg, Wording};
use chrono::{DateTime, Datelike};
use restwater_log::local_ms;
use restwater_session::{Session, Summary};

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

/// Hours and minutes, "3 h 14"; below an hour "14 min".
pub(crate) fn hours_minutes(words: &Wording, ms: i64) -> String {
    let minutes = ms.max(0) / 60_000;
    let (hours, past) = ((minutes / 60).to_string(), minutes % 60);
    if minutes < 60 {
        return words.say_with("minutes-short", &[("minutes", Arg::Text(&past.to_string()))]);
    }
    let past = format!("{past:02}");
    words.say_with("hours-minutes", &[("hours", Arg::Text(&hours)), ("minutes", Arg::Text(&past))])
}

/// "17 Jan 2026, Alder Pool, peg 14".
pub(crate) fn session_day_words(words: &Wording, session: &Session) -> String {
    let started = session.started.as_ref().map(|at| (at.shown.wall_ms, at.shown.offset_min));
    at_water(words, started, session.setup.water.clone(), session.setup.peg.as_deref())
}

/// The same of a day of which only the summary is at hand.
pub fn day_words(words: &Wording, day: &Summary) -> String {
    let started = day.started_ms.map(|ms| (ms, day.offset_min));
    at_water(words, started, day.water.clone(), day.peg.as_deref())
}

fn at_water(
    words: &Wording,
    started: Option<(i64, i16)>,
    water: Option<String>,
    peg: Option<&str>,
) -> String {
    let date = started.map(|(wall_ms, offset_min)| date_words(words, wall_ms, offset_min));
    let peg = peg.map(|peg| super::peg_words(words, peg));
    words.listed(&[date, water, peg].map(Option::unwrap_or_default))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_duration_has_hours_only_from_an_hour_on() {
        let words = Wording::new();
        assert_eq!(hours_minutes(&words, 194 * 60_000), "3 h 14");
        assert_eq!(hours_minutes(&words, 184 * 60_000), "3 h 04");
        assert_eq!(hours_minutes(&words, 14 * 60_000), "14 min");
    }
}
