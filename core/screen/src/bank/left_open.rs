//! A session of an earlier day whose END was forgotten.

use super::advice::quiet;
use super::{AdviceView, BankInput};
use crate::Arg;
use crate::book::midnight;
use crate::date::date_words;
use restwater_session::{Session, Stamp, in_overnight};

/// The start of the session, if it began on an earlier day and every rod has been in for longer than a night's sleep takes, or a
/// break has lasted for longer than any does. The hours of a match have words of their own.
pub(super) fn left_open<'a>(input: &BankInput<'a>) -> Option<&'a Stamp> {
    let session: &Session =
        input.session.filter(|session| session.is_open() && session.match_day.is_none())?;
    let start = session.started.as_ref()?;
    // By the clock of now, since that of START may have been set meanwhile.
    let earlier =
        input.now.wall_at(start.at_ms) < midnight(&input.now.shown) || input.now.is_weeks_after(start);
    (earlier && in_overnight(session, input.now)).then_some(start)
}

/// "Still open since 17 Jan 2026. END closes it, then START begins a new one."
pub(super) fn advice(input: &BankInput) -> Option<AdviceView> {
    let start = &left_open(input)?.shown;
    let date = date_words(input.words, start.wall_ms, start.offset_min);
    let headline = input.words.say_with("advice-left-open", &[("date", Arg::Text(&date))]);
    Some(quiet(headline, input.words.say("advice-left-open-detail")))
}
