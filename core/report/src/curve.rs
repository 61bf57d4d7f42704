//! The survival curve of the waits with its band.

use super::page::{Drawing, Page, step};
use restwater_compare::hour_clusters;
use restwater_screen::{Arg, Wording};
use restwater_session::{Session, casts_that_tell, rows_of, waits_of};
use restwater_waits::{BITES_TO_TELL, Limits, SurvivalCurve};

const LEFT: f64 = 52.0;
const RIGHT: f64 = 670.0;
const TOP: f64 = 12.0;
const BOTTOM: f64 = 200.0;

pub(super) fn draw(words: &Wording, session: &Session, page: &mut Page) {
    page.heading(&words.say("report-curve"));
    let waits = waits_of(session);
    let bites = waits.iter().filter(|w| w.is_bite()).count();
    // The same limits as on the screen of the waits.
    let hours = hour_clusters(rows_of(session).iter().map(|row| (0, row.at_min)));
    let curve = SurvivalCurve::in_clusters(&waits, &hours).ok().filter(|_| bites as f64 >= BITES_TO_TELL);
    let Some(curve) = curve else { return page.paragraph(&words.say("report-curve-few")) };
    page.fine_print(&words.say_with(
        "report-curve-read",
        &[("casts", Arg::Count(casts_that_tell(session))), ("bites", Arg::Count(bites))],
    ));
    let tick = step(curve.longest_min().max(1.0), 8.0);
    let end = (curve.longest_min() / tick).floor() * tick + tick;
    let place =
        |minutes: f64, share: f64| (LEFT + minutes / end * (RIGHT - LEFT), BOTTOM - share * (BOTTOM - TOP));
    let mut drawing = Drawing::default();
    band(&curve, place, &mut drawing);
    steps(&curve, place, &mut drawing);
    axes(words, end, tick, place, &mut drawing);
    let name = words.say("report-curve");
    page.picture(680, 236, &name, &alternative(words, &curve, end, tick), &drawing);
}

fn steps(curve: &SurvivalCurve, place: impl Fn(f64, f64) -> (f64, f64), drawing: &mut Drawing) {
    let mut points = vec![place(0.0, 1.0)];
    let mut share = 1.0;
    for step in curve.steps() {
        points.push(place(step.minutes, share));
        share = step.survival;
        points.push(place(step.minutes, share));
    }
    points.push(place(curve.longest_min(), share));
    drawing.path(&points, "none", 2.0);
}

fn band(curve: &SurvivalCurve, place: impl Fn(f64, f64) -> (f64, f64), drawing: &mut Drawing) {
    let Ok(limits) = curve.limits(Limits::LogLog, 0.95) else { return };
    let (mut low, mut high) = (vec![place(0.0, 1.0)], vec![place(0.0, 1.0)]);
    let mut last = (1.0, 1.0);
    let mut until = 0.0;
    for (step, limits) in curve.steps().iter().zip(limits) {
        until = step.minutes;
        low.push(place(until, last.0));
        high.push(place(until, last.1));
        let Some(limits) = limits else { break };
        last = limits;
        low.push(place(until, last.0));
        high.push(place(until, last.1));
        until = curve.longest_min();
    }
    low.push(place(until, last.0));
    high.push(place(until, last.1));
    high.reverse();
    low.append(&mut high);
    drawing.path(&low, "#dcd7ca", 0.0);
}

fn axes(words: &Wording, end: f64, tick: f64, place: impl Fn(f64, f64) -> (f64, f64), drawing: &mut Drawing) {
    drawing.line(place(0.0, 0.0), place(end, 0.0), 1.0);
    drawing.line(place(0.0, 0.0), place(0.0, 1.0), 1.0);
    for quarter in 0..=4 {
        let share = f64::from(quarter) / 4.0;
        let (x, y) = place(0.0, share);
        drawing.line((x - 4.0, y), (x, y), 1.0);
        drawing.text((x - 7.0, y + 4.0), "end", &format!("{:.0} %", share * 100.0));
    }
    let mut at = 0.0;
    while at <= end {
        let (x, y) = place(at, 0.0);
        drawing.line((x, y), (x, y + 4.0), 1.0);
        drawing.text((x, y + 17.0), "middle", &format!("{at:.0}"));
        at += tick;
    }
    drawing.text((RIGHT, BOTTOM + 32.0), "end", &words.say("report-minutes"));
    drawing.text((RIGHT, TOP + 2.0), "end", &words.say("report-share"));
}

fn alternative(words: &Wording, curve: &SurvivalCurve, end: f64, tick: f64) -> String {
    let mut list = Vec::new();
    let mut at = tick;
    while at < end {
        let share = format!("{:.0}", curve.survival_at(at) * 100.0);
        let minutes = format!("{at:.0}");
        let args = [("share", Arg::Text(&share)), ("minutes", Arg::Text(&minutes))];
        list.push(words.say_with("report-curve-at", &args));
        at += tick;
    }
    words.say_with("report-curve-alt", &[("list", Arg::Text(&words.listed(&list)))])
}
