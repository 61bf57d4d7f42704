//! The wait strip: every wait of the session on one line of minutes.

use super::page::{Drawing, Page, step};
use restwater_screen::{Arg, Wording};
use restwater_session::{Session, waits_of};
use restwater_waits::Wait;

const WIDTH: f64 = 680.0;
const HEIGHT: u32 = 120;
const LINE_Y: f64 = 78.0;
const MARGIN: f64 = 24.0;

pub(super) fn draw(words: &Wording, session: &Session, page: &mut Page) {
    page.heading(&words.say("report-strip"));
    let waits = waits_of(session);
    let longest = waits.iter().map(|w| w.minutes()).fold(0.0, f64::max);
    if waits.is_empty() {
        return page.paragraph(&words.say("report-strip-none"));
    }
    page.fine_print(&words.say("report-strip-read"));
    if session.setup.twitch_restarts {
        page.fine_print(&words.say("report-strip-twitch"));
    }
    let mut drawing = Drawing::default();
    let tick = step(longest.max(1.0), 8.0);
    let end = (longest / tick).floor() * tick + tick;
    let x = |minutes: f64| MARGIN + minutes / end * (WIDTH - 2.0 * MARGIN);
    drawing.line((x(0.0), LINE_Y), (x(end), LINE_Y), 1.5);
    let mut at = 0.0;
    while at <= end {
        drawing.line((x(at), LINE_Y), (x(at), LINE_Y + 5.0), 1.0);
        drawing.text((x(at), LINE_Y + 18.0), "middle", &format!("{at:.0}"));
        at += tick;
    }
    drawing.text((x(end), LINE_Y + 34.0), "end", &words.say("report-minutes"));
    marks(&waits, x, &mut drawing);
    page.picture(680, HEIGHT, &words.say("report-strip"), &alternative(words, &waits), &drawing);
}

/// Draws bites in the upper row and other waits in the lower; marks that would cover each other are stacked.
fn marks(waits: &[Wait], x: impl Fn(f64) -> f64, drawing: &mut Drawing) {
    for (bite, base) in [(true, LINE_Y - 44.0), (false, LINE_Y - 12.0)] {
        let mut minutes: Vec<f64> =
            waits.iter().filter(|w| w.is_bite() == bite).map(|w| w.minutes()).collect();
        minutes.sort_by(f64::total_cmp);
        let (mut last, mut level) = (f64::NEG_INFINITY, 0.0);
        for at in minutes {
            let px = x(at);
            level = if px - last < 9.0 { (level + 1.0) % 3.0 } else { 0.0 };
            last = px;
            let place = (px, base - level * 9.0);
            if bite {
                drawing.diamond(place);
            } else {
                drawing.stroke(place);
            }
        }
    }
}

fn alternative(words: &Wording, waits: &[Wait]) -> String {
    let mut bites: Vec<f64> = waits.iter().filter(|w| w.is_bite()).map(|w| w.minutes()).collect();
    bites.sort_by(f64::total_cmp);
    let wait =
        |m: &f64| words.say_with("report-strip-wait", &[("minutes", Arg::Text(&words.decimal(*m, 1)))]);
    let list: Vec<String> = bites.iter().map(wait).collect();
    words.say_with(
        "report-strip-alt",
        &[
            ("bites", Arg::Count(bites.len())),
            ("list", Arg::Text(&if list.is_empty() { "0".to_owned() } else { words.listed(&list) })),
            ("others", Arg::Count(waits.len() - bites.len())),
        ],
    )
}
