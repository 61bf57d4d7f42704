//! The forecast for the remaining time, as ranges.

use crate::figures::whole;
use crate::leave_words::guess_words;
use crate::{Action, Arg, Choice, ChoiceRow, WaitsTap, Wording};
use restwater_match_day::forecast::{FishKind, LastCast, Range, TimeLeft};
use restwater_session::rest::{Leaves, Rest, landing, rest_of_match};
use restwater_session::{Rhythm, Session};
use restwater_waits::WaitPosterior;
use serde::{Deserialize, Serialize};

/// Remaining times to choose from, in minutes.
const LEFT_MIN: [u32; 6] = [30, 60, 90, 120, 180, 240];
/// The seed of the simulated futures, so that the same record always gives the same answer.
const SEED: u64 = 4;

/// One figure with its range.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ForecastLine {
    /// What it is: "Bites to come".
    pub label: String,
    /// "2 to 5, about 3".
    pub value: String,
    /// Both for a screen reader.
    pub spoken: String,
    /// One future in ten stays below this.
    pub low: f64,
    /// One future in ten passes this.
    pub high: f64,
}

/// What is to come until all-out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ForecastView {
    /// Its heading.
    pub title: String,
    /// How much time is left, a choice by taps.
    pub left: ChoiceRow,
    /// What it says, in one sentence.
    pub says: String,
    /// Casts left, bites to come, fish to come, last useful cast.
    pub lines: Vec<ForecastLine>,
    /// How that was obtained.
    pub notes: Vec<String>,
}

/// Simulates the remaining `left_min` minutes from the state of the rods. `out_min` has one entry for each
/// rod: the minutes its bait has been out, negative while it settles, or `None`. Returns `None` if nothing can be forecast.
pub fn forecast_view(
    words: &Wording,
    session: &Session,
    posterior: &WaitPosterior,
    rhythm: Rhythm,
    out_min: &[Option<f64>],
    left_min: u32,
) -> Option<ForecastView> {
    let advice = posterior.advice();
    let leaves = Leaves::of(&advice);
    let time = TimeLeft { minutes: f64::from(left_min), rods: out_min.to_vec() };
    // Only the Match screen forecasts weight; here every fish counts as one.
    let fish = landing(session, vec![FishKind::alike(1.0)]);
    let Rest { coming, last } = rest_of_match(posterior, leaves, &rhythm, &time, &fish, SEED).ok()?;
    let out = ("out", Arg::Count(out_min.iter().flatten().count()));
    let mut lines = vec![
        line(words.say_with("match-casts", &[out]), words, coming.casts),
        line(words.say("forecast-bites"), words, coming.bites),
        line(words.say("forecast-fish"), words, coming.fish),
    ];
    lines.extend(last.map(|last| last_cast(words, last)));
    let any = whole(100.0 * coming.any_bite);
    let too_few = super::too_few(&advice);
    let says = words.say_with(
        if too_few { "forecast-cant-tell" } else { "forecast-says" },
        &[("percent", Arg::Text(&any)), ("minutes", Arg::Text(&left_min.to_string()))],
    );
    let (leave, then) = (whole(leaves.first), whole(leaves.then));
    let turn = words.figure(rhythm.turn_round_min, 1);
    let how = [("leave", Arg::Text(&leave)), ("then", Arg::Text(&then)), ("turn", Arg::Text(&turn)), out];
    let how = words.say_with("forecast-how", &how);
    Some(ForecastView {
        title: words.say("forecast-title"),
        left: left_row(words, left_min),
        says,
        lines,
        notes: std::iter::once(how).chain(guess_words(words, &rhythm)).collect(),
    })
}

fn line(label: String, words: &Wording, range: Range) -> ForecastLine {
    let [low, likely, high] = [range.low, range.likely, range.high].map(whole);
    let same = low == high;
    let value = words.say_with(
        if same { "forecast-one" } else { "forecast-range" },
        &[("low", Arg::Text(&low)), ("likely", Arg::Text(&likely)), ("high", Arg::Text(&high))],
    );
    let Range { low, high, .. } = range;
    ForecastLine { label, value, spoken: String::new(), low, high }
}

/// Until how long before the end winding in for a new cast is worth it.
fn last_cast(words: &Wording, last: LastCast) -> ForecastLine {
    let [low, likely, high] = [last.low, last.before_all_out, last.high].map(whole);
    let minutes = [("low", Arg::Text(&low)), ("likely", Arg::Text(&likely)), ("high", Arg::Text(&high))];
    let value = words.say_with("forecast-last-value", &minutes);
    let label = words.say("forecast-last");
    ForecastLine { label, value, spoken: String::new(), low: last.low, high: last.high }
}

fn left_row(words: &Wording, left_min: u32) -> ChoiceRow {
    let say = |m: u32| words.say_with("forecast-min", &[("minutes", Arg::Text(&m.to_string()))]);
    let choice = |m: &u32| {
        let action = Action::Waits { tap: WaitsTap::TimeLeft { minutes: *m } };
        Choice::new(m.to_string(), say(*m), *m == left_min, action)
    };
    let choices = LEFT_MIN.iter().map(choice).collect();
    let row = ChoiceRow::of("left", words.say("forecast-left"), choices, String::new());
    ChoiceRow { value: say(left_min), ..row }
}
