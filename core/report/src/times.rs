//! Times of day, with the date where the day changes.

use restwater_log::Moment;
use restwater_screen::{Arg, Wording, clock, date_words};
use restwater_session::Session;

/// The times of one list, from its top to its end.
pub(super) struct Times<'a> {
    words: &'a Wording,
    /// The date shown last: at first that of the title.
    date: String,
}

impl<'a> Times<'a> {
    pub fn new(words: &'a Wording, session: &Session) -> Self {
        let date = session.started.as_ref().map(|at| date_of(words, &at.shown)).unwrap_or_default();
        Self { words, date }
    }

    /// A time: "22:14", and "15 Nov 2023 00:13" where it is on another day than the one before.
    pub fn say(&mut self, at: &Moment) -> String {
        let date = date_of(self.words, at);
        if date == self.date {
            return clock(at);
        }
        self.date = date;
        with_date(self.words, at)
    }
}

/// A time with its date.
pub(super) fn with_date(words: &Wording, at: &Moment) -> String {
    let (day, time) = (date_of(words, at), clock(at));
    words.say_with("report-day-time", &[("day", Arg::Text(&day)), ("time", Arg::Text(&time))])
}

fn date_of(words: &Wording, at: &Moment) -> String {
    date_words(words, at.wall_ms, at.offset_min)
}
