//! A session on paper: one self-contained HTML file, at most four pages of A4.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

mod curve;
mod fan;
mod feed;
mod fish;
mod list;
mod others;
mod page;
mod strip;
mod times;

use page::Page;
use restwater_screen::{Arg, Wording, clock, conditions_words, date_words, peg_name, plan_words};
use restwater_session::figures::Counts;
use restwater_session::{Break, Session};
use times::{Times, with_date};

/// How many entries of the weather are listed.
const MOST_CONDITIONS: usize = 6;

/// Whose day it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhoseDay {
    /// The angler's own.
    Own,
    /// Another angler's, which was imported.
    Other,
}

/// The report of a session as a whole HTML document.
pub fn report(words: &Wording, session: &Session, whose: WhoseDay) -> String {
    let mut page = Page::begin(&title(words, session), &words.say("report-language"));
    page.paragraph(&when(words, session));
    if whose == WhoseDay::Other {
        page.paragraph(&words.say("report-of-another"));
    }
    weather(words, session, &mut page);
    breaks(words, session, &mut page);
    plan(words, session, &mut page);
    feed::write(words, session, &mut page);
    others::neighbours(words, session, &mut page);
    summary(words, session, &mut page);
    fish::nets(words, session, &mut page);
    others::section(words, session, &mut page);
    strip::draw(words, session, &mut page);
    curve::draw(words, session, &mut page);
    fan::draw(words, session, &mut page);
    list::write(words, session, &mut page);
    page.end()
}

fn title(words: &Wording, session: &Session) -> String {
    let peg = session.setup.peg.as_deref().map_or_else(
        || words.say("report-peg-none"),
        |peg| words.say_with("report-peg", &[("peg", Arg::Text(peg_name(words, peg)))]),
    );
    let day = session.started.as_ref().map_or_else(
        || words.say("report-day-none"),
        |at| date_words(words, at.shown.wall_ms, at.shown.offset_min),
    );
    let args = [("peg", Arg::Text(&peg)), ("day", Arg::Text(&day))];
    match session.setup.water.as_deref() {
        None => words.say_with("report-title", &args),
        Some(water) => words.say_with("report-title-water", &[args[0], args[1], ("water", Arg::Text(water))]),
    }
}

fn when(words: &Wording, session: &Session) -> String {
    let Some(from) = session.started.as_ref().map(|at| &at.shown) else { return String::new() };
    let Some(to) = session.ended.as_ref().map(|at| &at.shown) else {
        return words.say_with("report-when-open", &[("from", Arg::Text(&clock(from)))]);
    };
    let days = [from, to].map(|at| date_words(words, at.wall_ms, at.offset_min));
    let [from, to] = [from, to].map(|at| if days[0] == days[1] { clock(at) } else { with_date(words, at) });
    words.say_with("report-when", &[("from", Arg::Text(&from)), ("to", Arg::Text(&to))])
}

/// Breaks, each from when to when.
fn breaks(words: &Wording, session: &Session, page: &mut Page) {
    let mut times = Times::new(words, session);
    let line = |rest: &Break| {
        let from = times.say(&rest.from.shown);
        let Some(to) = rest.to.as_ref().map(|at| times.say(&at.shown)) else {
            return words.say_with("report-break-open", &[("from", Arg::Text(&from))]);
        };
        words.say_with("report-break", &[("from", Arg::Text(&from)), ("to", Arg::Text(&to))])
    };
    let lines: Vec<String> = session.breaks.iter().map(line).collect();
    if !lines.is_empty() {
        page.list(&lines);
    }
}

/// The plan compared with what happened.
fn plan(words: &Wording, session: &Session, page: &mut Page) {
    let line = |what: String| words.say_with("report-plan", &[("what", Arg::Text(&what))]);
    let lines: Vec<String> = plan_words(words, session).into_iter().map(line).collect();
    if !lines.is_empty() {
        page.list(&lines);
    }
}

/// The logged weather; only the latest entries if there are many.
fn weather(words: &Wording, session: &Session, page: &mut Page) {
    let known = &session.conditions[session.conditions.len().saturating_sub(MOST_CONDITIONS)..];
    let mut times = Times::new(words, session);
    let lines = known.iter().map(|at| {
        let what = conditions_words(words, &at.conditions);
        words.say_with(
            "report-weather",
            &[("time", Arg::Text(&times.say(&at.at.shown))), ("what", Arg::Text(&what))],
        )
    });
    let lines: Vec<String> = lines.collect();
    if !lines.is_empty() {
        page.list(&lines);
    }
}

fn summary(words: &Wording, session: &Session, page: &mut Page) {
    let counts = Counts::of(session);
    let kg = words.decimal(counts.grams / 1_000.0, 2);
    let weight = if counts.unweighed == 0 {
        words.say_with("report-weight-value", &[("kg", Arg::Text(&kg))])
    } else {
        words
            .say_with("report-weight-rest", &[("kg", Arg::Text(&kg)), ("fish", Arg::Count(counts.unweighed))])
    };
    let by_eye = [("weight", Arg::Text(&weight)), ("fish", Arg::Count(counts.by_eye))];
    let weight = if counts.by_eye == 0 { weight } else { words.say_with("report-weight-eye", &by_eye) };
    let figures = [
        ("report-casts", counts.casts.to_string()),
        ("report-bites", counts.bites.to_string()),
        ("report-landed", counts.landed.to_string()),
        ("report-lost", counts.lost.to_string()),
        ("report-missed", counts.missed.to_string()),
        ("report-liners", counts.liners.to_string()),
        ("report-put-back", counts.put_back.to_string()),
        ("report-hooklengths-lost", counts.hooklengths_lost.to_string()),
        ("report-weight", weight),
        ("report-doubts", session.doubts.len().to_string()),
    ];
    page.figures(figures.map(|(id, value)| (words.say(id), value)).as_slice());
}

#[cfg(test)]
mod tests;
