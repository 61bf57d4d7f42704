//! Cast by cast, and the notes.

use super::fan::where_words;
use super::fish::fish_words;
use super::page::{Page, cut};
use super::times::Times;
use restwater_screen::{Arg, Wording, mark_of};
use restwater_session::figures::{fish_by_cast, wait_minutes};
use restwater_session::{Cast, CaughtFish, EndCause, Session, reach_m};

/// Casts listed; with more the report would not stay within four pages.
const MOST_CASTS: usize = 120;
/// Notes listed, and characters of each.
const MOST_NOTES: usize = 12;
const NOTE_CHARS: usize = 160;
/// Characters of a cell.
const CELL_CHARS: usize = 28;

pub(super) fn write(words: &Wording, session: &Session, page: &mut Page) {
    if !session.casts.is_empty() {
        page.heading(&words.say("report-list"));
        let head = ["report-time", "report-rod", "report-spot", "report-bait", "report-wait", "report-end"];
        let fish = fish_by_cast(session);
        let casts = session.casts.iter().take(MOST_CASTS);
        let mut times = Times::new(words, session);
        let rows: Vec<Vec<String>> =
            casts.map(|cast| row(words, &mut times, session, cast, fish.get(&cast.op))).collect();
        page.table(&head.map(|id| words.say(id)), &rows);
        let more = session.casts.len().saturating_sub(MOST_CASTS);
        if more > 0 {
            page.fine_print(&words.say_with("report-more", &[("count", Arg::Count(more))]));
        }
    }
    if !session.notes.is_empty() {
        page.heading(&words.say("report-notes"));
        let notes = session.notes.iter().take(MOST_NOTES);
        let mut times = Times::new(words, session);
        page.list(
            &notes
                .map(|n| format!("{} {}", times.say(&n.at.shown), cut(&n.text, NOTE_CHARS)))
                .collect::<Vec<_>>(),
        );
    }
    let approximate = session.casts.iter().filter(|cast| is_approximate(cast)).count();
    let from = if session.setup.twitch_restarts { "report-from-twitch" } else { "report-from-splash" };
    let from = words.say(from);
    let args = [("from", Arg::Text(&from)), ("approximate", Arg::Count(approximate))];
    page.fine_print(&words.say_with("report-foot", &args));
}

/// Whether the time of splash, bite or end was entered afterwards.
fn is_approximate(cast: &Cast) -> bool {
    let bite = cast.bite.as_ref().map(|(at, _)| at);
    let times = [Some(&cast.start), bite, cast.end.as_ref().map(|end| &end.at)];
    times.into_iter().flatten().any(|at| at.shown.approx_s > 0)
}

fn row(
    words: &Wording,
    times: &mut Times,
    session: &Session,
    cast: &Cast,
    fish: Option<&CaughtFish>,
) -> Vec<String> {
    let spot =
        cast.spot.as_ref().map(|s| where_words(words, mark_of(session, s), s.bearing_cdeg, reach_m(s.reach)));
    let wait = wait_minutes(session, cast).map(|minutes| {
        let minutes = words.decimal(minutes, 1);
        let id = if cast.bite.is_some() { "report-wait-value" } else { "report-wait-longer" };
        words.say_with(id, &[("minutes", Arg::Text(&minutes))])
    });
    let end = words.say(match cast.end.as_ref().map(|end| &end.cause) {
        Some(EndCause::Landed { .. }) => "report-end-landed",
        Some(EndCause::Lost) => "report-end-lost",
        Some(EndCause::Missed) => "report-end-missed",
        Some(EndCause::OutcomeNotSeen) => "report-end-outcome",
        Some(EndCause::WoundIn) => "report-end-wound-in",
        Some(EndCause::EndNotSeen) => "report-end-unseen",
        Some(EndCause::SessionEnded) => "report-end-session",
        None => "report-end-out",
    });
    let fish = fish.map(|fish| fish_words(words, fish)).unwrap_or_default();
    let lost = cast.hooklength_lost.map(|_| words.say("report-end-hooklength"));
    let end: Vec<String> = [end].into_iter().chain(fish).chain(lost).collect();
    vec![
        times.say(&cast.start.shown),
        cast.rod.to_string(),
        spot.unwrap_or_default(),
        cut(cast.rig.bait.as_deref().unwrap_or_default(), CELL_CHARS),
        wait.unwrap_or_default(),
        words.listed(&end),
    ]
}
