//! Catch per hour: of all sessions shown, and of each.

use super::{BookInput, Day, LEVEL_PERCENT, tally, whose_day_words};
use crate::figures::{sentence_case, trimmed};
use crate::{Arg, BookSet, Leaf, LeafLine, LeafSpan, Wording};
use restwater_compare::FEWEST_BITES;
use restwater_compare::sets::{Rate, set_rates};

/// Sessions listed one by one; the rates of all count every one.
const LISTED: usize = 24;
/// The scale ends at this many times the highest rate.
const SCALE: f64 = 2.5;

/// The leaf.
pub(super) fn rates(input: &BookInput, shown: &[Day]) -> Leaf {
    let words = input.words;
    let mut leaf = Leaf::new(words, "book", "rates");
    let tallies: Vec<_> = shown.iter().map(|day| tally(day.gist)).collect();
    let all = set_rates(&tallies);
    let which = input.filter.words(words, input.days);
    leaf.says = match all.bites {
        None => words.say("book-rates-none"),
        Some(rate) if rate.count < FEWEST_BITES => {
            let args = [("which", Arg::Text(&which)), ("bites", Arg::Count(rate.count as usize))];
            sentence_case(&words.say_with("book-rates-cant-tell", &args))
        }
        Some(rate) => {
            let (per_hour, low, high) = figures(&rate);
            sentence_case(&words.say_with(
                "book-rates-says",
                &[
                    ("which", Arg::Text(&which)),
                    ("rate", Arg::Text(&per_hour)),
                    ("low", Arg::Text(&low)),
                    ("high", Arg::Text(&high)),
                ],
            ))
        }
    };
    let each: Vec<_> = shown
        .iter()
        .zip(&tallies)
        .take(LISTED)
        .map(|(day, tally)| (whose_day_words(words, day), set_rates(std::slice::from_ref(tally)).bites))
        .collect();
    let top =
        each.iter().filter_map(|(_, rate)| rate.map(|r| r.per_hour)).chain(all.bites.map(|r| r.per_hour));
    let scale = scale_of(top);
    let together = words.say_with("book-together", &[("count", Arg::Count(all.days))]);
    leaf.lines.extend(all.bites.map(|rate| rate_line(words, words.say("book-bites-rate"), &rate, scale)));
    if let Some(rate) = all.landed {
        // Another clock: hours of the whole session, so it has no place on the scale of hours out.
        leaf.lines
            .push(LeafLine { span: None, ..rate_line(words, words.say("book-landed-rate"), &rate, scale) });
    }
    for line in &mut leaf.lines {
        line.label = format!("{}, {together}", line.label);
    }
    for (label, rate) in each {
        leaf.lines.push(match rate {
            Some(rate) => rate_line(words, label, &rate, scale),
            None => LeafLine::new(label, words.say("book-nothing-out")),
        });
    }
    if shown.len() > LISTED {
        leaf.notes.push(words.say_with("book-listed", &[("count", Arg::Count(LISTED))]));
    }
    leaf.notes.push(words.say_with("book-rates-how", &[("level", Arg::Count(LEVEL_PERCENT))]));
    leaf.rows = input.filter.rows(words, BookSet::Shown, input.days);
    leaf
}

/// End of the scale that a set of rates is drawn on.
pub(super) fn scale_of(rates: impl Iterator<Item = f64>) -> f64 {
    let top = rates.fold(0.0, f64::max);
    if top > 0.0 { top * SCALE } else { 1.0 }
}

fn figures(rate: &Rate) -> (String, String, String) {
    // As many decimals as keep a low limit from reading as nought.
    let decimals = if rate.per_hour < 1.0 { 2 } else { 1 };
    (
        trimmed(rate.per_hour, decimals),
        trimmed(rate.limits.low, decimals),
        trimmed(rate.limits.high, decimals),
    )
}

/// "0.9 an hour", its limits and counts, and the range drawn.
pub(super) fn rate_line(words: &Wording, label: String, rate: &Rate, scale: f64) -> LeafLine {
    let (per_hour, low, high) = figures(rate);
    let hours = trimmed(rate.hours, 1);
    let mut line = LeafLine::new(label, words.say_with("book-per-hour", &[("rate", Arg::Text(&per_hour))]));
    line.detail = words.say_with(
        "book-limits",
        &[
            ("count", Arg::Count(rate.count as usize)),
            ("hours", Arg::Text(&hours)),
            ("low", Arg::Text(&low)),
            ("high", Arg::Text(&high)),
        ],
    );
    line.span = Some(LeafSpan {
        low: rate.limits.low.min(scale),
        at: Some(rate.per_hour),
        high: rate.limits.high.min(scale),
        beyond: rate.limits.high > scale,
        scale,
    });
    line
}
