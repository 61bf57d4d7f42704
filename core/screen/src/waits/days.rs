//! Today against earlier sessions, and the drift over the day.

use super::curves::steps;
use super::{Counted, WaitsInput, bites, p_words};
use crate::chart::{Axis, ChartDot, ChartKind, ChartView, DotShape, LineStyle, Tick};
use crate::figures::clock;
use crate::{Arg, Wording};
use restwater_compare::log_rank::{Weighting, log_rank};
use restwater_compare::{CLEAR_BELOW, Trend, rank_trend};
use restwater_log::Moment;
use restwater_waits::{LIKE_DAY_WEIGHT, OTHER_DAY_WEIGHT, SurvivalCurve, Wait};

/// Steers the drawn permutations: the same record says the same.
const SEED: u64 = 4;
const HOUR_MIN: f64 = 60.0;

/// Today's curve beside that of earlier sessions, with the log-rank p; none without earlier casts.
pub(super) fn earlier(input: &WaitsInput, counted: &Counted) -> Option<ChartView> {
    let words = input.words;
    let before: Vec<Wait> = counted.earlier.iter().flat_map(|day| &day.0).copied().collect();
    let (then, now) = (SurvivalCurve::new(&before).ok()?, SurvivalCurve::new(&counted.today).ok()?);
    let longest = then.longest_min().max(now.longest_min());
    let x = Axis::up_to(words.say("axis-wait"), longest.max(20.0));
    let y = Axis::up_to(words.say("axis-without"), 100.0);
    let mut chart = ChartView::new(ChartKind::Earlier, words.say("waits-earlier"), x, y);
    chart.lines.extend(steps(words, &now, LineStyle::Solid, "legend-today"));
    chart.lines.extend(steps(words, &then, LineStyle::Dashed, "legend-earlier"));
    chart.says = against(words, &counted.today, &before);
    let counts = [
        ("bites", Arg::Count(bites(&counted.today))),
        ("casts", Arg::Count(counted.today.len())),
        ("before", Arg::Count(bites(&before))),
        ("beforecasts", Arg::Count(before.len())),
        ("sessions", Arg::Count(counted.earlier.len())),
    ];
    let (like, other) = (LIKE_DAY_WEIGHT.to_string(), OTHER_DAY_WEIGHT.to_string());
    let weights = [("like", Arg::Text(&like)), ("other", Arg::Text(&other))];
    chart.notes =
        vec![words.say_with("waits-earlier-counts", &counts), words.say_with("waits-weights", &weights)];
    Some(chart)
}

fn against(words: &Wording, today: &[Wait], before: &[Wait]) -> String {
    let enough = bites(today) + bites(before) >= super::BITES_TO_TELL;
    let test = log_rank(today, before, Weighting::LogRank).ok().filter(|_| enough);
    let Some((p, excess)) = test.and_then(|test| Some((test.p()?, test.excess()))) else {
        return words.say_with("waits-cant-tell", &[("bites", Arg::Count(bites(today)))]);
    };
    let id = match (p < CLEAR_BELOW, excess > 0.0) {
        (false, _) => "waits-earlier-same",
        (true, true) => "waits-earlier-readier",
        (true, false) => "waits-earlier-slower",
    };
    words.say_with(id, &[("p", Arg::Text(&p_words(words, p)))])
}

/// Each cast at its time of day and as high as its wait, with a rank trend.
pub(super) fn drift(input: &WaitsInput, counted: &Counted) -> Option<ChartView> {
    let words = input.words;
    let started = input.session.started.as_ref()?;
    let longest = counted.today.iter().map(|w| w.minutes()).fold(0.0, f64::max);
    let end = counted.today_at.iter().zip(&counted.today).map(|(at, w)| at + w.minutes()).fold(0.0, f64::max);
    if end <= 0.0 {
        return None;
    }
    let x = day_axis(words, &started.shown, end);
    let y = Axis::up_to(words.say("axis-wait-up"), longest.max(5.0));
    let mut chart = ChartView::new(ChartKind::Drift, words.say("waits-drift"), x, y);
    let dot = |(at, wait): (&f64, &Wait)| ChartDot {
        x: *at,
        y: wait.minutes(),
        shape: if wait.is_bite() { DotShape::Bite } else { DotShape::WithoutBite },
    };
    chart.dots = counted.today_at.iter().zip(&counted.today).map(dot).collect();
    let trend = rank_trend(&counted.today_at, &counted.today, SEED).ok().flatten();
    chart.says = drift_says(words, &counted.today, trend);
    chart.notes = vec![super::counts_words(words, &counted.today), words.say("waits-drift-how")];
    Some(chart)
}

fn drift_says(words: &Wording, today: &[Wait], trend: Option<Trend>) -> String {
    let enough = bites(today) >= super::BITES_TO_TELL;
    let Some(trend) = trend.filter(|_| enough) else {
        return words.say_with("waits-cant-tell", &[("bites", Arg::Count(bites(today)))]);
    };
    let id = match (trend.p < CLEAR_BELOW, trend.correlation > 0.0) {
        (false, _) => "waits-drift-none",
        (true, true) => "waits-drift-readier",
        (true, false) => "waits-drift-slower",
    };
    let trend_words = format!("{:+.2}", trend.correlation).replace('-', "\u{2212}");
    words.say_with(id, &[("trend", Arg::Text(&trend_words)), ("p", Arg::Text(&p_words(words, trend.p)))])
}

/// Minutes of the session, labelled with the hours of the clock.
fn day_axis(words: &Wording, started: &Moment, end_min: f64) -> Axis {
    let step = libm::ceil(end_min / HOUR_MIN / 5.0).max(1.0) * HOUR_MIN;
    let past_hour = (started.local_ms().div_euclid(60_000).rem_euclid(60)) as f64;
    let mut ticks = Vec::new();
    let mut at = if past_hour > 0.0 { HOUR_MIN - past_hour } else { 0.0 };
    while at <= end_min {
        let moment = Moment { wall_ms: started.wall_ms + (at * 60_000.0) as i64, ..started.clone() };
        ticks.push(Tick { at, label: clock(&moment) });
        at += step;
    }
    Axis { label: words.say("axis-clock"), from: 0.0, to: end_min, ticks }
}
