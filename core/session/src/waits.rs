//! The waits of a session's casts.
//!
//! Two rules hold wherever waits are counted, in the advice, the screens, the report and the tables alike:
//!
//! - A twitch may restart the wait. Each stretch that a twitch ends is then a wait of its own that ended
//!   without a bite (gap times: Prentice, Williams and Peterson 1981), so no minute with a bait out is lost.
//! - An end that was not seen doesn't show whether there was a bite, since logging the bite may have been
//!   forgotten too. Only the wait up to the last twitch of such a cast is known, and only if a twitch
//!   restarts the wait.

use super::Stamp;
use super::cast::Cast;
use super::feed_before::fed_before;
use super::model::Session;
use restwater_waits::Wait;

/// One wait of a cast.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stretch<'a> {
    /// Where it starts: the splash, or a twitch.
    pub(super) from: &'a Stamp,
    /// How long it was.
    pub(super) wait: Wait,
    /// Whether a twitch ended it, so that another follows on the same cast.
    pub(super) twitched: bool,
}

/// The waits of all casts that have ended, in the order of the log.
pub fn waits_of(session: &Session) -> Vec<Wait> {
    session.casts.iter().flat_map(|cast| stretches(session, cast)).map(|stretch| stretch.wait).collect()
}

/// The same, and for each wait whether its cast lay in fed water.
pub fn waits_by_feed(session: &Session) -> (Vec<Wait>, Vec<bool>) {
    let feedings = session.feedings();
    let of = |cast| {
        let fed = !feedings.is_empty() && fed_before(&feedings, cast).is_some();
        stretches(session, cast).into_iter().map(move |stretch| (stretch.wait, fed))
    };
    session.casts.iter().flat_map(of).unzip()
}

/// The wait that ended with the cast; `None` while it is out, if its end was not seen, or if its times run
/// backwards.
pub fn wait_of(session: &Session, cast: &Cast) -> Option<Wait> {
    stretches(session, cast).pop().filter(|stretch| !stretch.twitched).map(|stretch| stretch.wait)
}

/// The number of finished casts that are evidence about waits.
pub fn casts_that_tell(session: &Session) -> usize {
    session.casts.iter().filter(|cast| !stretches(session, cast).is_empty()).count()
}

/// The waits of one cast, in chronological order.
pub(super) fn stretches<'a>(session: &Session, cast: &'a Cast) -> Vec<Stretch<'a>> {
    let Some(until) = cast.wait_end().filter(|until| until.ms_since(&cast.start) >= 0) else {
        return Vec::new();
    };
    let mut from = &cast.start;
    let mut all = Vec::new();
    let twitches = if session.setup.twitch_restarts { cast.twitches_until(until) } else { Vec::new() };
    for twitch in twitches {
        all.extend(stretch(session, cast, from, twitch, false).map(|wait| Stretch {
            from,
            wait,
            twitched: true,
        }));
        from = twitch;
    }
    if !cast.end_not_seen() {
        let last = stretch(session, cast, from, until, cast.bite.is_some());
        all.extend(last.map(|wait| Stretch { from, wait, twitched: false }));
    }
    all
}

fn stretch(session: &Session, cast: &Cast, from: &Stamp, until: &Stamp, bite: bool) -> Option<Wait> {
    let ms = until.ms_since(from) - settle_ms(session, cast, from);
    Wait::new(ms.max(0) as f64 / 60_000.0, bite).ok()
}

/// The settling time: a bait settles after the splash, but not again when it is moved along the bottom.
fn settle_ms(session: &Session, cast: &Cast, from: &Stamp) -> i64 {
    if from.at_ms == cast.start.at_ms { i64::from(session.setup.settle_s) * 1_000 } else { 0 }
}

/// Milliseconds the running wait of a cast has lasted at `now`; negative while the bait settles.
pub fn running_wait_ms(session: &Session, cast: &Cast, now: &Stamp) -> Option<i64> {
    if cast.end.is_some() || cast.bite.is_some() || now.ms_since(&cast.start) < 0 {
        return None;
    }
    let twitch = if session.setup.twitch_restarts { cast.twitches_until(now).pop() } else { None };
    let from = twitch.unwrap_or(&cast.start);
    Some(now.ms_since(from) - settle_ms(session, cast, from))
}

/// Minutes the running wait of a cast has lasted at `now`.
pub fn running_wait_min(session: &Session, cast: &Cast, now: &Stamp) -> Option<f64> {
    running_wait_ms(session, cast, now).map(|ms| ms.max(0) as f64 / 60_000.0)
}
