//! The Waits screen: what the record shows about waits, as pictures with a message in words.

mod curves;
mod days;
mod forecast;

pub use forecast::{ForecastLine, ForecastView, forecast_view};

use super::casts_that_count::CastFilter;
use super::club::{ClubUsed, figures};
use super::date::hours_minutes;
use super::leave_words::not_seen_words;
use super::{Arg, ChartView, ChoiceRow, LeafKey, Whose, Wording};
use restwater_compare::{CastRow, hour_clusters};
use restwater_session::{
    FED_WITHIN_MIN, Rhythm, Session, casts_by_telling, habit_before_bites, is_fed, wait_settings,
};
use restwater_waits::{Advice, EarlierDay, FedEffect, Habit, Record, Shapes, Wait, WaitPosterior};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// Level of every interval on this screen.
const LEVEL: f64 = 0.95;
/// With fewer bites than this, nothing is claimed about this water.
const BITES_TO_TELL: usize = restwater_waits::BITES_TO_TELL as usize;

/// The Waits screen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WaitsView {
    /// Its heading.
    pub title: String,
    /// What counts: "9 bites in 15 casts this session, 212 min waited."
    pub counts: String,
    /// Which casts count: rows of choices.
    pub rows: Vec<ChoiceRow>,
    /// The pictures, the most useful first; empty before the first cast is in.
    pub charts: Vec<ChartView>,
    /// The forecast for the rest of the day.
    pub forecast: Option<ForecastView>,
    /// The page of figures behind them; `None` before there is a picture.
    pub figures: Option<FiguresView>,
    /// What to do if there is nothing to show yet.
    pub offer: Option<LeafKey>,
}

impl WaitsView {
    /// The screen before the first session: what to do, and the key for it.
    pub fn without_session(words: &Wording) -> Self {
        Self {
            title: words.say("waits-title"),
            counts: words.say("waits-none"),
            rows: Vec::new(),
            charts: Vec::new(),
            forecast: None,
            figures: None,
            offer: Some(LeafKey::start(words)),
        }
    }
}

/// The page behind verdicts: intervals, p values and how they were obtained.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct FiguresView {
    /// Its heading.
    pub title: String,
    /// A paragraph for each verdict, which begins with that verdict's heading.
    pub lines: Vec<String>,
}

/// A picture with the figures behind it.
pub(super) struct Picture {
    chart: ChartView,
    figures: Vec<String>,
}

/// An earlier session as evidence for today.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EarlierRows<'a> {
    /// Its casts.
    pub rows: &'a [CastRow],
    /// Their weight, 0 to 1.
    pub weight: f64,
    /// How many of its casts are in no row, since their end was not seen.
    pub unseen: usize,
    /// Whether it is another angler's.
    pub of_another: bool,
    /// Whether it was on the same water and peg as today's, both named: only from there is a spot the same spot.
    pub same_peg: bool,
}

/// What the screen is made from.
#[derive(Clone, Copy)]
pub struct WaitsInput<'a> {
    /// The session.
    pub session: &'a Session,
    /// Its casts as rows.
    pub rows: &'a [CastRow],
    /// Earlier sessions, newest first.
    pub earlier: &'a [EarlierRows<'a>],
    /// Which casts count.
    pub filter: &'a CastFilter,
    /// Whose earlier sessions these are, if there is a choice.
    pub whose: Option<Whose>,
    /// What a cast costs besides its wait.
    pub rhythm: Rhythm,
    /// How long the angler leaves casts.
    pub habit: Option<&'a Habit>,
    /// Whether the cast that the screen is about is in fed water.
    pub in_fed_water: bool,
    /// The shapes as they are weighed before the first cast.
    pub shapes: &'a Arc<Shapes>,
    /// The club that these weights come from.
    pub club: Option<ClubUsed<'a>>,
    /// The sentences.
    pub words: &'a Wording,
}

/// How many casts an answer is about, and of how many sessions.
#[derive(Debug, Clone, Copy)]
pub(super) struct Scope {
    /// Casts that have ended, those whose end was not seen among them.
    casts: usize,
    /// Sessions with a cast among them; 0 if it is about this session alone.
    sessions: usize,
}

/// The casts that count.
pub(super) struct Counted {
    today: Vec<Wait>,
    /// Whether the cast of each wait was in fed water.
    today_fed: Vec<bool>,
    today_at: Vec<f64>,
    earlier: Vec<(Vec<Wait>, f64)>,
    /// When the waits of each earlier day began, minutes into that day.
    earlier_at: Vec<Vec<f64>>,
    /// How many casts today's waits belong to: a cast has several waits if twitches restart them.
    today_casts: usize,
    /// How many of them were outside fed water, and how many in it.
    today_casts_by_feed: [usize; 2],
    earlier_casts: usize,
    /// How many casts of today and of earlier sessions are in no wait, since their end was not seen. What a choice of rod, spot
    /// or bait leaves out isn't told apart from them, so under such a choice there are none.
    unseen: [usize; 2],
    /// Earlier days among them that are another angler's.
    of_another: usize,
}

/// The screen without its forecast, and the posterior that a forecast needs, or `None` if it can't be
/// computed from the record.
pub fn waits(input: &WaitsInput) -> (WaitsView, Option<WaitPosterior>) {
    let words = input.words;
    let counted = Counted::new(input);
    let title = words.say("waits-title");
    let earlier = input.earlier.iter().filter(|day| input.filter.takes_day(day.same_peg)).count();
    let rows = input.filter.rows(words, input.session, input.rows, earlier, input.whose);
    let all = counted.all();
    let mut view = WaitsView {
        title,
        counts: if all.is_empty() && input.rows.is_empty() && input.session.is_open() {
            words.say("waits-none-yet")
        } else {
            counted.words(words, &all)
        },
        rows,
        charts: Vec::new(),
        forecast: None,
        figures: None,
        offer: (all.is_empty() && !input.session.is_open()).then(|| LeafKey::start(words)),
    };
    let earlier: Vec<EarlierDay> =
        counted.earlier.iter().map(|(waits, weight)| EarlierDay { waits, weight: *weight }).collect();
    let record = Record {
        today: &counted.today,
        fed: &counted.today_fed,
        earlier: &earlier,
        turn_round_min: input.rhythm.between_min(),
        bite_extra_min: input.rhythm.bite_extra_min,
        habit: input.habit,
    };
    let shapes = Arc::clone(input.shapes);
    let Ok(mut posterior) = WaitPosterior::with_shapes(&record, &wait_settings(input.session), shapes) else {
        return (view, None);
    };
    posterior.next_is_fed(input.in_fed_water);
    if !all.is_empty() {
        let pictures = pictures(input, &counted, &all, &posterior);
        let line = |p: &Picture| words.sentences(&[&p.chart.title, &p.figures.join(" ")]);
        let lines = pictures.iter().map(line).chain(counted.fed_words(words, &posterior));
        let club = input.club.map(|used| figures(words, &used));
        let lines = lines.chain(club).collect();
        view.figures = Some(FiguresView { title: words.say("waits-figures"), lines });
        view.charts = pictures.into_iter().map(|p| p.chart).collect();
    }
    (view, Some(posterior))
}

fn pictures(input: &WaitsInput, counted: &Counted, all: &[Wait], posterior: &WaitPosterior) -> Vec<Picture> {
    let advice = posterior.advice();
    let hours = counted.hours();
    let asked = curves::Asked {
        words: input.words,
        all,
        hours: &hours,
        scope: counted.scope(),
        unseen: counted.unseen_words(input.words),
        posterior,
        advice: &advice,
        habit: input.habit.map(Habit::median_min),
        before_bites: habit_before_bites(input.session),
    };
    let all = [
        asked.leave_time(),
        asked.survival(),
        asked.hazard(),
        days::earlier(input, counted),
        days::drift(input, counted),
    ];
    all.into_iter().flatten().collect()
}

impl Counted {
    fn new(input: &WaitsInput) -> Self {
        let today: Vec<&CastRow> = input.rows.iter().filter(|row| input.filter.takes(row)).collect();
        let counts = |day: &&EarlierRows| !input.filter.today_only && input.filter.takes_day(day.same_peg);
        let days: Vec<&EarlierRows> = input.earlier.iter().filter(counts).collect();
        let of = |day: &&EarlierRows| {
            let waits: Vec<Wait> =
                day.rows.iter().filter(|row| input.filter.takes(row)).map(|row| row.wait).collect();
            (!waits.is_empty()).then_some((waits, day.weight))
        };
        Self {
            today: today.iter().map(|row| row.wait).collect(),
            today_fed: today.iter().map(|row| is_fed(row)).collect(),
            today_at: today.iter().map(|row| row.at_min).collect(),
            earlier: days.iter().filter_map(of).collect(),
            earlier_at: days
                .iter()
                .map(|day| {
                    day.rows.iter().filter(|row| input.filter.takes(row)).map(|row| row.at_min).collect()
                })
                .filter(|day: &Vec<f64>| !day.is_empty())
                .collect(),
            today_casts: today.iter().filter(|row| !row.twitched).count(),
            today_casts_by_feed: [false, true]
                .map(|fed| today.iter().filter(|row| !row.twitched && is_fed(row) == fed).count()),
            earlier_casts: days
                .iter()
                .flat_map(|day| day.rows)
                .filter(|row| input.filter.takes(row) && !row.twitched)
                .count(),
            unseen: if input.filter.takes_every_cast() {
                [casts_by_telling(input.session).1, days.iter().map(|day| day.unseen).sum()]
            } else {
                [0, 0]
            },
            of_another: days
                .iter()
                .filter(|day| day.of_another && day.rows.iter().any(|row| input.filter.takes(row)))
                .count(),
        }
    }

    /// What counts, and how many of the sessions are another angler's.
    fn words(&self, words: &Wording, all: &[Wait]) -> String {
        let counts = counts_words(words, all, self.scope());
        let whose = (self.of_another > 0)
            .then(|| words.say_with("whose-counted", &[("count", Arg::Count(self.of_another))]));
        let said = [Some(counts), whose, self.unseen_words(words)];
        said.into_iter().flatten().collect::<Vec<_>>().join(" ")
    }

    /// "The end of 1 cast was not seen: its wait doesn't count."
    fn unseen_words(&self, words: &Wording) -> Option<String> {
        not_seen_words(words, self.unseen.iter().sum())
    }

    /// How much quicker casts in fed water get their bites, if the answers above treat them separately.
    fn fed_words(&self, words: &Wording, posterior: &WaitPosterior) -> Option<String> {
        let FedEffect { times, low, high } = posterior.fed_effect(LEVEL).ok()??;
        let [other, fed] = self.today_casts_by_feed;
        let (minutes, times) = (FED_WITHIN_MIN.to_string(), words.figure(times, 1));
        let limits = range_words(words, low, high, 1);
        let args = [
            ("minutes", Arg::Text(&minutes)),
            ("times", Arg::Text(&times)),
            ("limits", Arg::Text(&limits)),
            ("fed", Arg::Count(fed)),
            ("other", Arg::Count(other)),
        ];
        Some(words.say_with("waits-fed", &args))
    }

    /// This session's casts that have ended.
    fn ended_today(&self) -> usize {
        self.today_casts + self.unseen[0]
    }

    /// Those of the earlier sessions.
    fn ended_earlier(&self) -> usize {
        self.earlier_casts + self.unseen[1]
    }

    /// What the drift over this session is about.
    fn of_today(&self) -> Scope {
        Scope { casts: self.ended_today(), sessions: 0 }
    }

    fn scope(&self) -> Scope {
        let of_today = usize::from(!self.today.is_empty());
        let sessions = if self.earlier.is_empty() { 0 } else { self.earlier.len() + of_today };
        Scope { casts: self.ended_today() + self.ended_earlier(), sessions }
    }

    /// The hour in which each wait began, since casts of one hour are alike.
    fn hours(&self) -> Vec<usize> {
        let days = std::iter::once(&self.today_at).chain(&self.earlier_at).enumerate();
        hour_clusters(days.flat_map(|(day, at)| at.iter().map(move |at| (day, *at))))
    }

    fn all(&self) -> Vec<Wait> {
        self.today.iter().chain(self.earlier.iter().flat_map(|day| &day.0)).copied().collect()
    }
}

fn bites(waits: &[Wait]) -> usize {
    waits.iter().filter(|w| w.is_bite()).count()
}

/// "9 bites in 15 casts this session, 3 h 32 in the water."
fn counts_words(words: &Wording, waits: &[Wait], scope: Scope) -> String {
    // An empty sum of floats is -0.0.
    let minutes: f64 = waits.iter().map(|w| w.minutes()).sum::<f64>() + 0.0;
    words.say_with(
        "waits-counts",
        &[
            ("bites", Arg::Count(bites(waits))),
            ("casts", Arg::Count(scope.casts)),
            ("sessions", Arg::Count(scope.sessions)),
            ("time", Arg::Text(&hours_minutes(words, 60_000 * libm::round(minutes) as i64))),
        ],
    )
}

/// A probability as it is written: "0.34", "0.006", "below 0.001".
pub(crate) fn p_words(words: &Wording, p: f64) -> String {
    if p < 0.001 {
        words.say("p-tiny")
    } else {
        let decimals = if p < 0.1 { 3 } else { 2 };
        words.say_with("p-is", &[("p", Arg::Text(&words.decimal(p, decimals)))])
    }
}

/// "1.2 to 3.3".
fn range_words(words: &Wording, low: f64, high: f64, decimals: usize) -> String {
    let (low, high) = (words.figure(low, decimals), words.figure(high, decimals));
    words.say_with("range", &[("low", Arg::Text(&low)), ("high", Arg::Text(&high))])
}

/// Whether the record is too small to say anything about this water.
fn too_few(advice: &Advice) -> bool {
    advice.state == restwater_waits::AdviceState::CantTellYet
}

#[cfg(test)]
mod tests;
