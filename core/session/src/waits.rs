//! The waits of a session's casts.
//!
//! Four rules hold wherever waits are counted, in the advice, the screens, the report and the tables alike:
//!
//! - A twitch may restart the wait. Each stretch that a twitch ends is then a wait of its own that ended
//!   without a bite (gap times: Prentice, Williams and Peterson 1981), so no minute with a bait out is lost.
//! - An end that was not seen doesn't show whether there was a bite, since logging the bite may have been forgotten too. Only the
//!   wait up to the last twitch of such a cast is known, and only if a twitch restarts the wait. The end of the session doesn't
//!   show it either if the bait may have been in long before.
//! - A wait between two clocks that don't agree is no better known than an end that was not seen.
//! - In a match the bait comes in at all-out, whenever that was logged: a wait that began before all-out and had no
//!   bite ended there. A bite that was logged after all-out shows that the bait was still out.

use super::Stamp;
use super::cast::{Cast, EndCause};
use super::model::{DoubtKind, Session};
use super::rods_in_use::rods_in_use;
use restwater_log::Moment;
use restwater_waits::{Settings, Wait};

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
    session.casts.iter().flat_map(|cast| waits_of_cast(session, cast)).collect()
}

/// Those of one cast, in chronological order.
pub fn waits_of_cast(session: &Session, cast: &Cast) -> Vec<Wait> {
    stretches(session, cast).into_iter().map(|stretch| stretch.wait).collect()
}

/// The wait that ended with the cast; `None` while it is out, if its end was not seen, or if its times run
/// backwards.
pub fn wait_of(session: &Session, cast: &Cast) -> Option<Wait> {
    stretches(session, cast).pop().filter(|stretch| !stretch.twitched).map(|stretch| stretch.wait)
}

/// The number of finished casts that are evidence about waits.
pub fn casts_that_tell(session: &Session) -> usize {
    casts_by_telling(session).0
}

/// Casts that have ended: those that count as waits, and those that don't because their end was not seen.
pub fn casts_by_telling(session: &Session) -> (usize, usize) {
    session.casts.iter().fold((0, 0), |(tell, unseen), cast| {
        if stretches(session, cast).is_empty() {
            (tell, unseen + usize::from(end_unknown(session, cast)))
        } else {
            (tell + 1, unseen)
        }
    })
}

/// The number of casts that have ended: the one count of a day that every screen says, with what of it doesn't count beside it.
pub fn casts_ended(session: &Session) -> usize {
    let (tell, unseen) = casts_by_telling(session);
    tell + unseen
}

/// Whether it is not known when the wait of a cast ended: its end was not seen, or only the end of the session closed it and that
/// is in doubt until it is corrected or confirmed.
pub(super) fn end_unknown(session: &Session, cast: &Cast) -> bool {
    let by_end = || cast.end.as_ref().is_some_and(|end| end.cause == EndCause::SessionEnded);
    let doubted = || session.doubts.iter().any(|d| d.op == cast.op && d.kind == DoubtKind::StillOut);
    cast.end_not_seen() || (by_end() && doubted()) || is_between_clocks(cast)
}

/// Whether the clocks leave more of a wait open than a quarter (the project's own choice, no source), as between two boots of a
/// phone whose clock was set by hours before the second, or showed 1970 after it. Such a wait says nothing of when bites come.
fn is_between_clocks(cast: &Cast) -> bool {
    cast.wait_end()
        .map(|end| end.since(&cast.start))
        .is_some_and(|wait| wait.uncertain_ms > (wait.ms / 4).max(Moment::JUMP_MS))
}

/// When the wait of a cast ended, in ms on the time line, or `None` while it is out: at the bite, otherwise at the end of the
/// cast, and in a match at all-out if that came first.
pub fn wait_end_ms(session: &Session, cast: &Cast) -> Option<i64> {
    let end_ms = cast.wait_end()?.at_ms;
    Some(if cast.bite.is_some() { end_ms } else { no_later_than_all_out(session, cast, end_ms, None) })
}

/// Whether all-out has come by then, in ms on the time line, for a bait that went out before it. `now` is given for a bait that is
/// still out: the clocks may have changed since the last entry, and all-out with them.
pub fn is_all_out(session: &Session, cast: &Cast, at_ms: i64, now: Option<&Stamp>) -> bool {
    no_later_than_all_out(session, cast, at_ms, now) < at_ms
}

fn no_later_than_all_out(session: &Session, cast: &Cast, at_ms: i64, now: Option<&Stamp>) -> i64 {
    let all_out_ms = session.match_day.as_ref().map(|day| day.on_line_ms(now).1);
    all_out_ms
        .filter(|all_out_ms| cast.start.at_ms < *all_out_ms)
        .map_or(at_ms, |all_out_ms| at_ms.min(all_out_ms))
}

/// The waits of one cast, in chronological order.
pub(super) fn stretches<'a>(session: &Session, cast: &'a Cast) -> Vec<Stretch<'a>> {
    let Some(until_ms) = wait_end_ms(session, cast).filter(|until_ms| *until_ms >= cast.start.at_ms) else {
        return Vec::new();
    };
    let mut from = &cast.start;
    let mut all = Vec::new();
    let twitches = if session.setup.twitch_restarts { cast.twitches_until(until_ms) } else { Vec::new() };
    for twitch in twitches {
        all.extend(stretch(session, cast, from, twitch.at_ms, false).map(|wait| Stretch {
            from,
            wait,
            twitched: true,
        }));
        from = twitch;
    }
    if !end_unknown(session, cast) {
        let last = stretch(session, cast, from, until_ms, cast.bite.is_some());
        all.extend(last.map(|wait| Stretch { from, wait, twitched: false }));
    }
    all
}

fn stretch(session: &Session, cast: &Cast, from: &Stamp, until_ms: i64, bite: bool) -> Option<Wait> {
    let ms = until_ms.saturating_sub(counts_from_ms(session, cast, from));
    Wait::new(ms.max(0) as f64 / 60_000.0, bite).ok()
}

/// Where a wait that starts there counts from: a bait settles after the splash; one that is moved along the bottom has settled.
fn counts_from_ms(session: &Session, cast: &Cast, from: &Stamp) -> i64 {
    let settles = from.at_ms == cast.start.at_ms;
    from.at_ms.saturating_add(if settles { i64::from(session.setup.settle_s) * 1_000 } else { 0 })
}

/// From when and until when a cast is known to have waited, in ms on the time line: all its waits, which follow one another. The
/// end is `None` while it is out, and not after the start if nothing of its wait is known.
pub(super) fn all_waits_ms(session: &Session, cast: &Cast) -> (i64, Option<i64>) {
    let until_ms = wait_end_ms(session, cast);
    let twitches = || {
        let last_ms = until_ms.unwrap_or_else(|| no_later_than_all_out(session, cast, i64::MAX, None));
        let counted = session.setup.twitch_restarts;
        cast.twitches.iter().filter(move |at| counted && (cast.start.at_ms..=last_ms).contains(&at.at_ms))
    };
    let from_ms = twitches().map(|at| counts_from_ms(session, cast, at)).min();
    let from_ms = from_ms.into_iter().fold(counts_from_ms(session, cast, &cast.start), i64::min);
    if end_unknown(session, cast) {
        return (from_ms, Some(twitches().map(|at| at.at_ms).max().unwrap_or(from_ms)));
    }
    let all_out_ms =
        || Some(no_later_than_all_out(session, cast, i64::MAX, None)).filter(|ms| *ms < i64::MAX);
    (from_ms, until_ms.or_else(all_out_ms))
}

/// Where the wait of a cast that runs at `now` counts from, in ms on the time line, or `None` if none runs; later than `now` while
/// the bait settles. `now` may be an earlier moment of the day.
pub fn running_from_ms(session: &Session, cast: &Cast, now: &Stamp) -> Option<i64> {
    let over = cast.wait_end().is_some_and(|end| end.at_ms <= now.at_ms);
    if over || now.ms_since(&cast.start) < 0 {
        return None;
    }
    let until_ms = no_later_than_all_out(session, cast, now.at_ms, Some(now));
    let twitch = if session.setup.twitch_restarts { cast.twitches_until(until_ms).pop() } else { None };
    Some(counts_from_ms(session, cast, twitch.unwrap_or(&cast.start)))
}

/// Milliseconds the running wait of a cast has lasted at `now`; negative while the bait settles.
pub fn running_wait_ms(session: &Session, cast: &Cast, now: &Stamp) -> Option<i64> {
    let from_ms = running_from_ms(session, cast, now)?;
    Some(no_later_than_all_out(session, cast, now.at_ms, Some(now)).saturating_sub(from_ms))
}

/// Minutes the running wait of a cast has lasted at `now`.
pub fn running_wait_min(session: &Session, cast: &Cast, now: &Stamp) -> Option<f64> {
    running_wait_ms(session, cast, now).map(|ms| ms.max(0) as f64 / 60_000.0)
}

/// Minutes that the bait of each rod in use has waited, or `None` if it has none out. Before the bait has settled they are
/// negative: what is left of that.
pub fn rods_waited_min(session: &Session, now: &Stamp) -> Vec<Option<f64>> {
    let of = |rod| running_wait_ms(session, session.running(rod)?, now);
    rods_in_use(session, now).into_iter().map(|rod| of(rod).map(|ms| ms as f64 / 60_000.0)).collect()
}

/// The same in whole minutes, so that what is computed from it doesn't change every second.
pub fn rods_waited_whole_min(session: &Session, now: &Stamp) -> Vec<Option<f64>> {
    rods_waited_min(session, now).into_iter().map(|minutes| minutes.map(libm::floor)).collect()
}

/// The settings for a session's waits: a match that is being fished is not fished for what it would teach for other days.
pub fn wait_settings(session: &Session) -> Settings {
    if session.is_open() && session.match_day.is_some() {
        Settings::of_a_match()
    } else {
        Settings::default()
    }
}
