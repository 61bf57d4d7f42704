//! Catch per hour, for all sessions shown and for each.

use super::{BookInput, Day, LEVEL_PERCENT, tally, whose_day_words};
use crate::figures::{sentence_case, whole};
use crate::{Arg, Axis, BookSet, Leaf, LeafKey, LeafLine, LeafSpan, Wording};
use restwater_compare::FEWEST_BITES;
use restwater_compare::sets::{DayTally, Rate, set_rates};

/// How many sessions are listed one by one; the overall rates count all of them.
const LISTED: usize = 24;
/// The axis reaches at least this many times the highest rate.
const SCALE: f64 = 2.5;

/// The page of the rates, and the page of their figures behind it.
pub(super) fn rates(input: &BookInput, shown: &[Day]) -> [Leaf; 2] {
    let words = input.words;
    let mut verdict = Leaf::new(words, "book", "rates");
    let mut figures = Leaf::new(words, "book", "rates-figures");
    let tallies: Vec<_> = shown.iter().map(|day| tally(day.gist)).collect();
    let all = set_rates(&tallies);
    verdict.says = says(input, all.bites.as_ref());
    let axis = axis_of_days(words, &tallies);
    verdict.lines = lines(input, shown, &tallies, &axis, counts_words);
    verdict.drawn_on(&axis);
    figures.says.clone_from(&verdict.says);
    figures.lines = lines(input, shown, &tallies, &axis, limits_words);
    figures.drawn_on(&axis);
    if shown.len() > LISTED {
        verdict.notes.push(words.say_with("book-listed", &[("count", Arg::Count(LISTED))]));
    }
    figures.notes.push(words.say_with("book-rates-how", &[("level", Arg::Count(LEVEL_PERCENT))]));
    verdict.rows = input.filter.rows(words, BookSet::Shown, input.days);
    if all.bites.is_some() {
        verdict.keys.push(LeafKey {
            label: words.say("waits-figures"),
            ..figures.opener(words.say("book-figures-sub"))
        });
    }
    [verdict, figures]
}

/// How often a bite comes, and the evidence for it.
fn says(input: &BookInput, bites: Option<&Rate>) -> String {
    let words = input.words;
    let which = input.filter.words(words, input.days);
    match bites {
        None => words.say("book-rates-none"),
        Some(rate) if rate.count < FEWEST_BITES => {
            let args = [("which", Arg::Text(&which)), ("bites", Arg::Count(rate.count as usize))];
            sentence_case(&words.say_with("book-rates-cant-tell", &args))
        }
        Some(rate) => {
            let (minutes, hours) = (whole(60.0 / rate.per_hour), words.figure(rate.hours, 1));
            let args = [
                ("which", Arg::Text(&which)),
                ("minutes", Arg::Text(&minutes)),
                ("bites", Arg::Count(rate.count as usize)),
                ("hours", Arg::Text(&hours)),
            ];
            sentence_case(&words.say_with("book-rates-says", &args))
        }
    }
}

/// The axis of the rate of all days and those of the days that are listed.
fn axis_of_days(words: &Wording, tallies: &[DayTally]) -> Axis {
    let each = tallies.iter().take(LISTED).map(|tally| set_rates(std::slice::from_ref(tally)).bites);
    axis_of(words, each.chain([set_rates(tallies).bites]).flatten().map(|rate| rate.per_hour))
}

/// A line for all sessions, one for the fish landed, and one for each session.
fn lines(
    input: &BookInput,
    shown: &[Day],
    tallies: &[DayTally],
    axis: &Axis,
    detail: fn(&Wording, &Rate) -> String,
) -> Vec<LeafLine> {
    let words = input.words;
    let all = set_rates(tallies);
    let each: Vec<_> = shown
        .iter()
        .zip(tallies)
        .take(LISTED)
        .map(|(day, tally)| (whose_day_words(words, day), set_rates(std::slice::from_ref(tally)).bites))
        .collect();
    let line = |label: String, rate: &Rate| LeafLine {
        detail: detail(words, rate),
        ..rate_line(words, label, rate, axis)
    };
    let of_all = |id: &str, count: usize| {
        let together = words.say_with("book-together", &[("count", Arg::Count(count))]);
        words.listed(&[&words.say(id), &together])
    };
    let mut lines: Vec<LeafLine> =
        all.bites.iter().map(|rate| line(of_all("book-bites-rate", all.days), rate)).collect();
    // This rate is for hours of the whole session, so it doesn't belong on the axis for hours out, and a session that is still
    // running has no hours yet.
    lines.extend(
        all.landed
            .iter()
            .map(|rate| LeafLine { span: None, ..line(of_all("book-landed-rate", all.ended), rate) }),
    );
    lines.extend(each.into_iter().map(|(label, rate)| match rate {
        Some(rate) => line(label, &rate),
        None => LeafLine::new(label, words.say("book-nothing-out")),
    }));
    lines
}

/// The axis that rates are drawn on. Its last figure has the unit, since a small screen has no room for the name of the axis.
pub(super) fn axis_of(words: &Wording, rates: impl Iterator<Item = f64>) -> Axis {
    let top = rates.fold(0.0, f64::max);
    let mut axis = Axis::up_to(words, "axis-rate", if top > 0.0 { top * SCALE } else { 1.0 });
    if let Some(last) = axis.ticks.last_mut() {
        last.label = words.say_with("book-per-hour", &[("rate", Arg::Text(&last.label))]);
    }
    axis
}

fn figures(words: &Wording, rate: &Rate) -> (String, String, String) {
    // Enough decimals that a low limit is not shown as zero.
    let decimals = if rate.per_hour < 1.0 { 2 } else { 1 };
    (
        words.figure(rate.per_hour, decimals),
        words.figure(rate.limits.low, decimals),
        words.figure(rate.limits.high, decimals),
    )
}

/// "9 in 6.5 h".
fn counts_words(words: &Wording, rate: &Rate) -> String {
    let hours = words.figure(rate.hours, 1);
    words.say_with("book-counts", &[("count", Arg::Count(rate.count as usize)), ("hours", Arg::Text(&hours))])
}

/// "9 in 6.5 h: 0.6 to 2.6", on a page whose lines say which hours they count.
fn limits_words(words: &Wording, rate: &Rate) -> String {
    limits_said(words, "book-limits", rate)
}

fn limits_said(words: &Wording, id: &str, rate: &Rate) -> String {
    let (_, low, high) = figures(words, rate);
    let hours = words.figure(rate.hours, 1);
    words.say_with(
        id,
        &[
            ("count", Arg::Count(rate.count as usize)),
            ("hours", Arg::Text(&hours)),
            ("low", Arg::Text(&low)),
            ("high", Arg::Text(&high)),
        ],
    )
}

/// "0.9 an hour", its limits and counts, and the range drawn.
pub(super) fn rate_line(words: &Wording, label: String, rate: &Rate, axis: &Axis) -> LeafLine {
    let (per_hour, ..) = figures(words, rate);
    let mut line = LeafLine::new(label, words.say_with("book-per-hour", &[("rate", Arg::Text(&per_hour))]));
    line.detail = limits_said(words, "rod-hours-limits", rate);
    line.span = Some(LeafSpan::on(axis, rate.limits.low, rate.per_hour, rate.limits.high));
    line
}
