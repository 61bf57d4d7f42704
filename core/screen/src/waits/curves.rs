//! Survival, hazard and bites per hour by leave time.

use super::{LEVEL, Picture, Scope, bites, counts_words, range_words, too_few};
use crate::chart::{
    Axis, ChartBand, ChartBar, ChartDot, ChartKind, ChartLine, ChartSpan, ChartView, DotShape, LineStyle,
};
use crate::figures::{whole, whole_bound, whole_reached};
use crate::leave_words::{band, goes_on_looking, habit_words, leave_words, near_best_words};
use crate::{Arg, Wording};
use restwater_session::HabitBeforeBites;
use restwater_waits::{Advice, CurveKind, CurvePoint, Limits, SurvivalCurve, Wait, WaitPosterior};

/// How many points of a curve are drawn.
const POINTS: u32 = 48;
/// Minutes that are always shown.
const SHORTEST_AXIS_MIN: f64 = 20.0;
/// If the ratio of the best minute to the worst is below this, no best minute is named.
const FLAT: f64 = 1.5;

/// What the three curves are made from.
pub(super) struct Asked<'a> {
    pub(super) words: &'a Wording,
    pub(super) all: &'a [Wait],
    /// The hour in which each wait began.
    pub(super) hours: &'a [usize],
    pub(super) scope: Scope,
    /// The casts among these whose end was not seen, in words.
    pub(super) unseen: Option<String>,
    pub(super) posterior: &'a WaitPosterior,
    pub(super) advice: &'a Advice,
    pub(super) habit: Option<f64>,
    /// The habit, if it ends casts before every bite of today.
    pub(super) before_bites: Option<HabitBeforeBites>,
}

impl Asked<'_> {
    fn longest(&self) -> f64 {
        self.all.iter().map(|w| w.minutes()).fold(0.0, f64::max)
    }

    fn minutes_axis(&self) -> Axis {
        Axis::up_to(self.words, "axis-wait", (1.15 * self.longest()).max(SHORTEST_AXIS_MIN))
    }

    fn curve(&self, kind: CurveKind, to: f64) -> Option<Vec<CurvePoint>> {
        let times: Vec<f64> = (1..=POINTS).map(|i| to * f64::from(i) / f64::from(POINTS)).collect();
        self.posterior.curve(kind, &times, LEVEL).ok()
    }

    /// The expected line and its band, both times `scale`, and where no cast was out so long.
    fn expected(&self, chart: &mut ChartView, curve: &[CurvePoint], scale: f64, start: f64) {
        let with_start = |first: f64, of: fn(&CurvePoint) -> f64| -> Vec<f64> {
            std::iter::once(first).chain(curve.iter().map(|p| scale * of(p))).collect()
        };
        let x: Vec<f64> = std::iter::once(0.0).chain(curve.iter().map(|p| p.minutes)).collect();
        chart.bands.push(ChartBand {
            label: self.words.say("legend-band"),
            x: x.clone(),
            low: with_start(start, |p| p.low),
            high: with_start(start, |p| p.high),
        });
        let (from, to) = (self.longest(), chart.x.to);
        let label = self.words.say("legend-not-tried");
        chart.not_tried = (from < to).then_some(ChartSpan { label, from, to });
        chart.lines.push(ChartLine {
            label: self.words.say("legend-expected"),
            style: LineStyle::Dashed,
            x,
            y: with_start(start, |p| p.mean),
        });
    }

    /// Share of casts still without a bite: Kaplan-Meier with its limits, and the posterior's curve.
    pub(super) fn survival(&self) -> Option<Picture> {
        let seen = SurvivalCurve::in_clusters(self.all, self.hours).ok()?;
        let x = self.minutes_axis();
        let curve = self.curve(CurveKind::Survival, x.to)?;
        let y = Axis::up_to(self.words, "axis-without", 100.0);
        let title = self.words.say("waits-survival");
        let mut chart = ChartView::new(ChartKind::Survival, title, x, y);
        self.expected(&mut chart, &curve, 100.0, 100.0);
        chart.lines.extend(steps(self.words, &seen, LineStyle::Solid, "legend-seen"));
        chart.lines.extend(limits(self.words, &seen));
        chart.says = self.half(&seen);
        chart.notes =
            vec![counts_words(self.words, self.all, self.scope), self.words.say("waits-survival-how")];
        let figures =
            std::iter::once(self.words.say("waits-survival-figures")).chain(self.half_limits(&seen));
        Some(Picture { chart, figures: figures.collect() })
    }

    fn half(&self, seen: &SurvivalCurve) -> String {
        let words = self.words;
        if bites(self.all) < super::BITES_TO_TELL {
            return words.say_with("waits-cant-tell", &[("bites", Arg::Count(bites(self.all)))]);
        }
        let longest = whole(seen.longest_min());
        let Some(median) = seen.quantile(0.5) else {
            return words.say_with("waits-not-half", &[("longest", Arg::Text(&longest))]);
        };
        words.say_with("waits-half", &[("median", Arg::Text(&whole(median)))])
    }

    /// The limits of that time.
    fn half_limits(&self, seen: &SurvivalCurve) -> Option<String> {
        let words = self.words;
        seen.quantile(0.5).filter(|_| bites(self.all) >= super::BITES_TO_TELL)?;
        let limits = seen.quantile_limits(0.5, Limits::LogLog, LEVEL).unwrap_or((None, None));
        let low = whole(limits.0.unwrap_or(0.0));
        let Some(high) = limits.1.map(whole) else {
            return Some(words.say_with("waits-half-limits-open", &[("low", Arg::Text(&low))]));
        };
        let limits = words.say_with("range", &[("low", Arg::Text(&low)), ("high", Arg::Text(&high))]);
        Some(words.say_with("waits-half-limits", &[("limits", Arg::Text(&limits))]))
    }

    /// Chance of a bite in the next minute, with bars of what was seen.
    pub(super) fn hazard(&self) -> Option<Picture> {
        let x = self.minutes_axis();
        let curve = self.curve(CurveKind::NextMinute, self.longest().max(5.0))?;
        let bars = self.bars(x.to);
        let top = bars.iter().map(|b| b.height).fold(0.0, f64::max);
        let high = curve.iter().map(|p| 100.0 * p.high).fold(0.0, f64::max);
        // A minute with little data at the end of the record can have any rate, so the axis follows the
        // expected curve.
        let top =
            top.min(1.3 * high).max(high.min(3.0 * curve.iter().map(|p| 100.0 * p.mean).fold(0.0, f64::max)));
        let y = Axis::up_to(self.words, "axis-hazard", top.max(1.0));
        let mut chart = ChartView::new(ChartKind::Hazard, self.words.say("waits-hazard"), x, y);
        self.expected(&mut chart, &curve, 100.0, 100.0 * curve.first()?.mean);
        if let (Some(band), Some(first)) = (chart.bands.first_mut(), curve.first()) {
            (band.low[0], band.high[0]) = (100.0 * first.low, 100.0 * first.high);
        }
        chart.bars = bars;
        if let Some((from, to)) = self.advice.bite_window.filter(|_| !too_few(self.advice)) {
            chart.spans.push(ChartSpan { label: self.words.say("span-window"), from, to });
            chart.notes.push(self.window(from, to));
        }
        chart.says = self.thickest(&curve);
        let how = [counts_words(self.words, self.all, self.scope), self.words.say("waits-hazard-how")];
        chart.notes.splice(0..0, how);
        Some(Picture { chart, figures: vec![self.words.say("waits-hazard-figures")] })
    }

    /// What is drawn above the bars: where half of the bites to come are expected, and how many of those seen came then.
    fn window(&self, from: f64, to: f64) -> String {
        let inside = |wait: &&Wait| wait.is_bite() && (from..=to).contains(&wait.minutes());
        let inside = self.all.iter().filter(inside).count();
        let (from, to) = (whole(from), whole(to));
        let args = [
            ("from", Arg::Text(&from)),
            ("to", Arg::Text(&to)),
            ("bites", Arg::Count(bites(self.all))),
            ("inside", Arg::Count(inside)),
        ];
        self.words.say_with("waits-window", &args)
    }

    fn thickest(&self, curve: &[CurvePoint]) -> String {
        let words = self.words;
        if too_few(self.advice) {
            return words.say_with("waits-cant-tell", &[("bites", Arg::Count(bites(self.all)))]);
        }
        let top = curve.iter().max_by(|a, b| a.mean.total_cmp(&b.mean));
        let least = curve.iter().map(|p| p.mean).fold(f64::INFINITY, f64::min);
        let Some(top) = top.filter(|top| top.mean > FLAT * least) else { return words.say("waits-flat") };
        let (minute, percent) = (whole(top.minutes), whole(100.0 * top.mean));
        let limits = range_words(words, 100.0 * top.low, 100.0 * top.high, 0);
        let end = top.minutes >= self.longest() - 1e-9;
        words.say_with(
            if end { "waits-rising" } else { "waits-thickest" },
            &[
                ("minute", Arg::Text(&minute)),
                ("percent", Arg::Text(&percent)),
                ("limits", Arg::Text(&limits)),
                ("bites", Arg::Count(bites(self.all))),
            ],
        )
    }

    /// Bites per hundred minutes out, in sections of the wait, each with its counts.
    fn bars(&self, to: f64) -> Vec<ChartBar> {
        let width = if to > 45.0 { 5.0 } else { 2.0 };
        let mut bars = Vec::new();
        let mut from = 0.0;
        while from < self.longest() {
            let until = from + width;
            let out: f64 = self.all.iter().map(|w| w.minutes().clamp(from, until) - from).sum();
            let here = |w: &&Wait| w.is_bite() && w.minutes() > from && w.minutes() <= until;
            let bites = self.all.iter().filter(here).count();
            if out > 0.0 && bites > 0 {
                let label = words_of_bar(self.words, bites, out);
                bars.push(ChartBar { from, to: until, height: 100.0 * bites as f64 / out, label });
            }
            from = until;
        }
        bars
    }

    /// Bites per hour by leave time, with the near-best band.
    pub(super) fn leave_time(&self) -> Option<Picture> {
        let x = self.minutes_axis();
        let curve = self.curve(CurveKind::Rate, x.to)?;
        let mean = curve.iter().map(|p| p.mean).fold(0.0, f64::max);
        let top = curve.iter().map(|p| p.high).fold(0.0, f64::max).min(3.0 * mean);
        let y = Axis::up_to(self.words, "axis-rate", top);
        let mut chart = ChartView::new(ChartKind::LeaveTime, self.words.say("waits-leave"), x, y);
        self.expected(&mut chart, &curve, 1.0, 0.0);
        let known = !too_few(self.advice);
        // The same band as on the strip of the Bank.
        if let Some((from, to)) = band(self.advice).map(|(from, to)| (from, to.min(chart.x.to)))
            && from < to
        {
            let label =
                self.words.say(if goes_on_looking(self.advice) { "span-leave" } else { "span-near-best" });
            chart.spans.push(ChartSpan { label, from, to });
        }
        let at = |t: f64| near(&curve, t).map(|p| p.mean);
        let mut dot = |t: Option<f64>, shape| {
            if let Some((x, y)) = t.filter(|t| *t <= chart.x.to).and_then(|t| Some((t, at(t)?))) {
                chart.dots.push(ChartDot { x, y, shape });
            }
        };
        dot(self.advice.best_min.filter(|_| known), DotShape::Best);
        dot(self.habit, DotShape::Habit);
        chart.says = self.leave_says();
        chart.notes = self.leave_more().into_iter().collect();
        chart.notes.push(counts_words(self.words, self.all, self.scope));
        chart.notes.extend(self.unseen.clone());
        chart.notes.push(self.words.say("waits-leave-how"));
        let figures = self.best_rate(&curve).into_iter().chain([self.words.say("waits-leave-figures")]);
        Some(Picture { chart, figures: figures.collect() })
    }

    /// What to do, and nothing else: it is read first.
    fn leave_says(&self) -> String {
        if too_few(self.advice) {
            return self.words.say_with("waits-cant-tell", &[("bites", Arg::Count(bites(self.all)))]);
        }
        leave_words(self.words, self.advice)
    }

    /// When bites came, and what was not tried.
    fn leave_more(&self) -> Option<String> {
        let words = self.words;
        let seen: Vec<f64> = self.all.iter().filter(|w| w.is_bite()).map(|w| w.minutes()).collect();
        if too_few(self.advice) {
            return None;
        }
        let first = seen.iter().copied().fold(f64::INFINITY, f64::min);
        let last = seen.iter().copied().fold(0.0, f64::max);
        let (low, high) = if seen.len() == 1 {
            (whole(first), whole(last))
        } else {
            (whole_reached(first), whole_bound(last))
        };
        let longest = whole_bound(self.longest());
        let mut says: Vec<String> = near_best_words(words, self.advice).into_iter().collect();
        let args = [
            ("bites", Arg::Count(seen.len())),
            ("low", Arg::Text(&low)),
            ("high", Arg::Text(&high)),
            ("sessions", Arg::Count(self.scope.sessions)),
        ];
        says.push(words.say_with("waits-bites-between", &args));
        says.extend(self.before_bites.map(|habit| habit_words(words, habit)));
        says.push(words.say_with("waits-not-tried", &[("minutes", Arg::Text(&longest))]));
        Some(says.join(" "))
    }

    /// The best rate with its band.
    fn best_rate(&self, curve: &[CurvePoint]) -> Option<String> {
        let words = self.words;
        let end = curve.last().map_or(0.0, |p| p.minutes);
        let at = self.advice.best_min.unwrap_or(end).min(end);
        let rate = self.words.figure(self.advice.best_rate_per_hour, 1);
        let limits = near(curve, at).map(|p| range_words(words, p.low, p.high, 1))?;
        let args = [("rate", Arg::Text(&rate)), ("limits", Arg::Text(&limits))];
        (!too_few(self.advice)).then(|| words.say_with("waits-best-rate", &args))
    }
}

fn words_of_bar(words: &Wording, bites: usize, out: f64) -> String {
    words.say_with("waits-bar", &[("bites", Arg::Count(bites)), ("minutes", Arg::Text(&whole(out)))])
}

/// The point of a curve nearest to a time.
fn near(curve: &[CurvePoint], minutes: f64) -> Option<&CurvePoint> {
    curve.iter().min_by(|a, b| (a.minutes - minutes).abs().total_cmp(&(b.minutes - minutes).abs()))
}

/// A Kaplan-Meier curve as a line of steps, in per cent.
pub(super) fn steps(
    words: &Wording,
    seen: &SurvivalCurve,
    style: LineStyle,
    label: &str,
) -> Option<ChartLine> {
    let levels: Vec<(f64, f64)> = seen.steps().iter().map(|s| (s.minutes, 100.0 * s.survival)).collect();
    stairs(&levels, seen.longest_min(), style, words.say(label))
}

/// Its two limits as dotted steps.
fn limits(words: &Wording, seen: &SurvivalCurve) -> Vec<ChartLine> {
    let Ok(limits) = seen.limits(Limits::LogLog, LEVEL) else { return Vec::new() };
    let side = |of: fn((f64, f64)) -> f64, label: String| {
        let known = seen.steps().iter().zip(&limits);
        let levels: Vec<(f64, f64)> =
            known.filter_map(|(s, l)| Some((s.minutes, 100.0 * of((*l)?)))).collect();
        stairs(&levels, seen.longest_min(), LineStyle::Dotted, label)
    };
    let low = side(|l| l.0, words.say("legend-limits"));
    low.into_iter().chain(side(|l| l.1, String::new())).collect()
}

fn stairs(levels: &[(f64, f64)], end: f64, style: LineStyle, label: String) -> Option<ChartLine> {
    let (mut x, mut y) = (vec![0.0], vec![100.0]);
    let mut last = 100.0;
    for &(minutes, level) in levels {
        x.extend([minutes, minutes]);
        y.extend([last, level]);
        last = level;
    }
    x.push(end);
    y.push(last);
    (end > 0.0).then_some(ChartLine { label, style, x, y })
}
