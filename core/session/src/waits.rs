//! The waits of a session's casts.

use super::cast::{Cast, EndCause};
use super::model::Session;
use restwater_log::Moment;
use restwater_waits::Wait;

/// The waits of all casts that have ended, in the order of the log. Where the end was not seen the bait
/// was in at some time before the next splash: a turn-round earlier is taken.
pub fn waits_of(session: &Session, turn_round_min: f64) -> Vec<Wait> {
    session.casts.iter().filter_map(|cast| wait_of(session, cast, turn_round_min)).collect()
}

/// The wait of one cast; none while it is out, and none where its times run backwards.
pub fn wait_of(session: &Session, cast: &Cast, turn_round_min: f64) -> Option<Wait> {
    let until = cast.wait_end()?;
    let unseen =
        cast.bite.is_none() && cast.end.as_ref().is_some_and(|end| end.cause == EndCause::EndNotSeen);
    let less = if unseen { turn_round_min } else { 0.0 };
    let minutes = minutes(session, cast, until)?;
    Wait::new((minutes - less).max(0.0), cast.bite.is_some()).ok()
}

/// Minutes the running wait of a cast has lasted at `now`.
pub fn running_wait_min(session: &Session, cast: &Cast, now: &Moment) -> Option<f64> {
    if cast.end.is_some() || cast.bite.is_some() {
        return None;
    }
    minutes(session, cast, now)
}

fn minutes(session: &Session, cast: &Cast, until: &Moment) -> Option<f64> {
    let start = cast.wait_start(until, session.setup.twitch_restarts);
    let ms = until.since(start).ms - i64::from(session.setup.settle_s) * 1_000;
    (until.since(start).ms >= 0).then(|| ms.max(0) as f64 / 60_000.0)
}

/// When the angler winds in by habit today: the median of the waits ended by choice, from two on.
pub fn habit_min(session: &Session) -> Option<f64> {
    let by_choice = |cast: &&Cast| cast.end.as_ref().is_some_and(|end| end.cause == EndCause::WoundIn);
    let casts = session.casts.iter().filter(by_choice);
    let mut minutes: Vec<f64> = casts
        .filter_map(|cast| wait_of(session, cast, 0.0))
        .map(Wait::minutes)
        .filter(|m| *m > 0.0)
        .collect();
    if minutes.len() < 2 { None } else { super::rhythm::median(&mut minutes) }
}
