//! Today compared with earlier sessions, and the drift over the day.

use super::curves::steps;
use super::{Counted, Picture, WaitsInput, bites, p_words};
use crate::chart::{Axis, ChartDot, ChartKind, ChartView, DotShape, LineStyle, Tick};
use crate::figures::clock;
use crate::{Arg, Wording};
use restwater_compare::log_rank::log_rank;
use restwater_compare::{ByHours, CLEAR_BELOW, DaySoFar, TimedWait, against_earlier, over_the_day};
use restwater_log::Moment;
use restwater_waits::{LIKE_DAY_WEIGHT, OTHER_DAY_WEIGHT, SurvivalCurve, Wait};

const HOUR_MIN: f64 = 60.0;

/// Today's curve beside that of earlier sessions, and whether today differs; `None` without earlier casts.
pub(super) fn earlier(input: &WaitsInput, counted: &Counted) -> Option<Picture> {
    let words = input.words;
    let before: Vec<Wait> = counted.earlier.iter().flat_map(|day| &day.0).copied().collect();
    let (then, now) = (SurvivalCurve::new(&before).ok()?, SurvivalCurve::new(&counted.today).ok()?);
    let longest = then.longest_min().max(now.longest_min());
    let x = Axis::up_to(words, "axis-wait", longest.max(20.0));
    let y = Axis::up_to(words, "axis-without", 100.0);
    let mut chart = ChartView::new(ChartKind::Earlier, words.say("waits-earlier"), x, y);
    chart.lines.extend(steps(words, &now, LineStyle::Solid, "legend-today"));
    chart.lines.extend(steps(words, &then, LineStyle::Dashed, "legend-earlier"));
    let hours = against(input, counted);
    chart.says = says(words, counted, bites(&before), hours, "waits-earlier");
    let counts = [
        ("bites", Arg::Count(bites(&counted.today))),
        ("casts", Arg::Count(counted.ended_today())),
        ("before", Arg::Count(bites(&before))),
        ("beforecasts", Arg::Count(counted.ended_earlier())),
        ("sessions", Arg::Count(counted.earlier.len())),
    ];
    let (like, other) = (words.figure(LIKE_DAY_WEIGHT, 2), words.figure(OTHER_DAY_WEIGHT, 2));
    let weights = [("like", Arg::Text(&like)), ("other", Arg::Text(&other))];
    chart.notes = vec![words.say_with("waits-earlier-counts", &counts)];
    let log_rank = log_rank(&counted.today, &before).ok().and_then(|test| test.p());
    let log_rank =
        log_rank.map(|p| words.say_with("waits-earlier-log-rank", &[("p", Arg::Text(&p_words(words, p)))]));
    let hours = hours.map(|hours| hours_words(words, "waits-earlier-hours", hours));
    let weights = words.say_with("waits-weights", &weights);
    Some(Picture { chart, figures: hours.into_iter().chain(log_rank).chain([weights]).collect() })
}

/// The waits with their times.
fn timed(waits: &[Wait], at: &[f64]) -> Vec<TimedWait> {
    waits.iter().zip(at).map(|(&wait, &at_min)| TimedWait { at_min, wait }).collect()
}

/// How much of the session can be counted.
fn so_far(input: &WaitsInput) -> DaySoFar {
    if !input.session.is_open() {
        return DaySoFar::Over;
    }
    let out = input.session.casts.iter().filter(|cast| cast.end.is_none());
    let first = out.map(|cast| cast.start.at_ms).min();
    first.map_or(DaySoFar::Running, |ms| DaySoFar::OutSince(ms as f64 / 60_000.0))
}

/// Today's hours compared with those of earlier sessions.
fn against(input: &WaitsInput, counted: &Counted) -> Option<ByHours> {
    let earlier: Vec<Vec<TimedWait>> =
        counted.earlier.iter().zip(&counted.earlier_at).map(|(day, at)| timed(&day.0, at)).collect();
    let earlier: Vec<&[TimedWait]> = earlier.iter().map(Vec::as_slice).collect();
    let today = timed(&counted.today, &counted.today_at);
    against_earlier(&today, &earlier, so_far(input)).ok()
}

/// What the hours say, in the message `id` with its ending.
fn says(words: &Wording, counted: &Counted, before: usize, hours: Option<ByHours>, id: &str) -> String {
    let enough = bites(&counted.today) + before >= super::BITES_TO_TELL;
    let Some(hours) = hours.filter(|_| enough) else {
        return words.say_with("waits-cant-tell", &[("bites", Arg::Count(bites(&counted.today)))]);
    };
    let ending = match (hours.p < CLEAR_BELOW, hours.quicker) {
        (false, _) => "same",
        (true, true) => "quicker",
        (true, false) => "slower",
    };
    words.say(&format!("{id}-{ending}"))
}

/// The p of the hours, with how many there are.
fn hours_words(words: &Wording, id: &str, hours: ByHours) -> String {
    let p = p_words(words, hours.p);
    words.say_with(
        id,
        &[
            ("p", Arg::Text(&p)),
            ("hours", Arg::Count(hours.hours)),
            ("before", Arg::Count(hours.earlier_hours)),
        ],
    )
}

/// Each cast at its time of day, with its wait as the height, and whether bites came quicker or slower during
/// the day.
pub(super) fn drift(input: &WaitsInput, counted: &Counted) -> Option<Picture> {
    let words = input.words;
    let started = input.session.started.as_ref()?;
    let longest = counted.today.iter().map(|w| w.minutes()).fold(0.0, f64::max);
    let end = counted.today_at.iter().zip(&counted.today).map(|(at, w)| at + w.minutes()).fold(0.0, f64::max);
    if end <= 0.0 {
        return None;
    }
    // A cast may have been entered from before the start.
    let begin = counted.today_at.iter().copied().fold(0.0, f64::min);
    let x = day_axis(words, &started.shown, (begin, end));
    let y = Axis::up_to(words, "axis-wait-up", longest.max(5.0));
    let mut chart = ChartView::new(ChartKind::Drift, words.say("waits-drift"), x, y);
    let dot = |(at, wait): (&f64, &Wait)| ChartDot {
        x: *at,
        y: wait.minutes(),
        shape: if wait.is_bite() { DotShape::Bite } else { DotShape::WithoutBite },
    };
    chart.dots = counted.today_at.iter().zip(&counted.today).map(dot).collect();
    let hours = over_the_day(&timed(&counted.today, &counted.today_at), so_far(input)).ok();
    chart.says = says(words, counted, 0, hours, "waits-drift");
    chart.notes =
        vec![super::counts_words(words, &counted.today, counted.of_today()), words.say("waits-drift-how")];
    let hours = hours.map(|hours| hours_words(words, "waits-drift-hours", hours));
    let figures = hours.into_iter().chain([words.say("waits-drift-figures")]).collect();
    Some(Picture { chart, figures })
}

/// Minutes of the session, labelled with the hours of the clock.
fn day_axis(words: &Wording, started: &Moment, (begin_min, end_min): (f64, f64)) -> Axis {
    let step = libm::ceil((end_min - begin_min) / HOUR_MIN / 5.0).max(1.0) * HOUR_MIN;
    let past_hour = (started.local_ms().div_euclid(60_000).rem_euclid(60)) as f64;
    let mut ticks = Vec::new();
    // The first full hour.
    let mut at = libm::ceil((begin_min + past_hour) / HOUR_MIN) * HOUR_MIN - past_hour;
    while at <= end_min {
        let moment = Moment { wall_ms: started.wall_ms + (at * 60_000.0) as i64, ..started.clone() };
        ticks.push(Tick { at, label: clock(&moment) });
        at += step;
    }
    Axis { label: words.say("axis-clock"), from: begin_min, to: end_min, ticks }
}
