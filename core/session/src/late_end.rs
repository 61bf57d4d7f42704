//! An END that was tapped long after everything else, often the next morning.

use super::cast::{CastEnd, EndCause};
use super::model::{Doubt, DoubtKind, LastTimed, Rod, RodState, Session};
use super::{Cast, MatchDay, Stamp};
use restwater_log::Payload;

/// An END later than this after the last entry, with every rod in, is doubtful: packing up takes less.
/// The project's own choice, no source.
const PACKED_UP_WITHIN_MIN: f64 = 90.0;
/// With every rod in for longer than this, a session of an earlier day is over: a night's sleep takes less. The project's own
/// choice, no source.
const SLEPT_WITHIN_MIN: f64 = 600.0;
/// A break that has lasted longer than this was forgotten with the session: whoever means to come back does so within a day. The
/// project's own choice, no source.
const BACK_WITHIN_MIN: f64 = 1_440.0;
/// How much longer the scales may take to come to the peg after a match. The project's own choice, no source.
const WEIGHED_WITHIN_MIN: f64 = 120.0;

impl Session {
    /// Notes when something beside casts was last logged at the water, given all such entries.
    pub(super) fn note_there(&mut self, all: &[Stamp]) {
        let until_ms = self.ended.as_ref().map_or(i64::MAX, |ended| ended.at_ms);
        let before = all.iter().filter(|at| at.at_ms <= until_ms);
        self.there_until = before.max_by_key(|at| at.at_ms).cloned();
    }
}

/// Marks such an END. A bait that was out until END has a doubt of its own.
pub(super) fn mark_late_end(session: &mut Session) {
    let out_until_end =
        |cast: &Cast| cast.end.as_ref().is_some_and(|end| end.cause == EndCause::SessionEnded);
    if session.casts.iter().any(out_until_end) {
        return;
    }
    let Some(LastTimed { op, at, .. }) = end_of(session) else { return };
    if long_after_the_last(session, at).is_some() {
        let doubt = Doubt { op: *op, kind: DoubtKind::LateEnd };
        session.doubts.push(doubt);
    }
}

/// Whether every rod has been in for longer than a night's sleep takes, since its last cast or since the start; during a break,
/// whether that has lasted for longer than any does.
pub fn in_overnight(session: &Session, now: &Stamp) -> bool {
    if let Some(rest) = session.away() {
        return now.is_long_after(&rest.from, BACK_WITHIN_MIN);
    }
    let in_since = |rod: &Rod| match &rod.state {
        RodState::Ready { since } => since.clone().or_else(|| session.started.clone()),
        _ => None,
    };
    let long_in = |rod| in_since(rod).is_some_and(|since| now.is_long_after(&since, SLEPT_WITHIN_MIN));
    session.rods.iter().all(long_in)
}

/// The last entry before END, if END came too long after it to be packing up, and in a match too long after all-out.
fn long_after_the_last<'a>(session: &'a Session, ended: &Stamp) -> Option<&'a Stamp> {
    let since_all_out = |day: &MatchDay| {
        let (_, all_out_ms) = day.on_line_ms(Some(ended));
        ended.at_ms.saturating_sub(all_out_ms) as f64 / 60_000.0 > PACKED_UP_WITHIN_MIN + WEIGHED_WITHIN_MIN
    };
    last_before_end(session).filter(|last| {
        let after_the_match = session.match_day.as_ref().is_none_or(since_all_out);
        ended.is_long_after(last, PACKED_UP_WITHIN_MIN) && (after_the_match || ended.is_weeks_after(last))
    })
}

/// Until when a session counts as fished, or `None` before END. If END is doubtful, or a bait was out until END and that is
/// doubtful, and the last entry was long before, nobody knows about the time after that entry.
pub(super) fn fished_until(session: &Session) -> Option<&Stamp> {
    let ended = session.ended.as_ref()?;
    let doubted = |doubt: &Doubt| matches!(doubt.kind, DoubtKind::LateEnd | DoubtKind::StillOut);
    let in_doubt = session.doubts.iter().any(doubted);
    Some(long_after_the_last(session, ended).filter(|_| in_doubt).unwrap_or(ended))
}

/// The END of a session, as long as nothing was logged after it whose time counts.
fn end_of(session: &Session) -> Option<&LastTimed> {
    session.last_timed.as_ref().filter(|last| matches!(last.payload, Payload::SessionEnded))
}

/// When anything was last logged at the water before END, or the start if nothing was. A cast that END closed is not an entry of its own, and a cast with a bite does not end later because
/// of what is entered about the bite afterwards.
pub fn last_before_end(session: &Session) -> Option<&Stamp> {
    let ended = session.ended.as_ref()?;
    let end_op = end_of(session).map(|last| last.op);
    let casts = session.casts.iter().flat_map(|cast| {
        let with_end =
            |end: &&CastEnd| end.at.at_ms == ended.at_ms && (cast.bite.is_some() || Some(end.op) == end_op);
        let end = cast.end.as_ref().filter(|end| !with_end(end)).map(|end| &end.at);
        [Some(cast.last_logged()), cast.bite.as_ref().map(|(at, _)| at), end].into_iter().flatten()
    });
    let beside = session.there_until.as_ref();
    casts.chain(&session.started).chain(beside).filter(|at| at.at_ms <= ended.at_ms).max_by_key(|at| at.at_ms)
}

#[cfg(test)]
mod tests {
    use super::super::fold;
    use super::super::written::{SESSION, Written};
    use super::*;

    const CAST: Payload = Payload::Cast { rod: 1 };
    const IN: Payload = Payload::WoundIn { rod: 1 };

    fn a_cast_and_end_at(end_s: i64) -> (Written, uuid::Uuid) {
        let mut day = Written::new(1);
        day.log(60, CAST);
        day.log(1_800, IN);
        let end = day.log(end_s, Payload::SessionEnded);
        (day, end)
    }

    #[test]
    fn an_end_on_the_next_morning_is_a_doubt_until_it_is_set_back_or_confirmed() {
        let (mut day, end) = a_cast_and_end_at(54_000);
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.doubts, [Doubt { op: end, kind: DoubtKind::LateEnd }]);
        assert_eq!(last_before_end(&session).map(|at| at.at_ms), Some(1_800_000));
        let (mut sure, sure_end) = a_cast_and_end_at(54_000);
        sure.amend(54_010, sure_end, Payload::Confirmed);
        assert_eq!(fold(SESSION, &sure.ops).doubts, []);
        day.amend(54_010, end, Payload::TimeSet { back_s: 52_200 });
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.ended.map(|at| at.at_ms), Some(1_800_000));
        assert_eq!(session.doubts, [Doubt { op: end, kind: DoubtKind::Approximate }]);
    }

    #[test]
    fn packing_up_a_break_and_a_bait_that_is_out_are_not_a_late_end() {
        let (day, _) = a_cast_and_end_at(1_800 + 80 * 60);
        assert_eq!(fold(SESSION, &day.ops).doubts, []);
        let mut rested = Written::new(1);
        rested.log(60, Payload::Away);
        rested.log(20_000, Payload::Returned);
        rested.log(21_000, Payload::SessionEnded);
        assert_eq!(fold(SESSION, &rested.ops).doubts, []);
        let mut out = Written::new(1);
        out.log(60, CAST);
        out.log(20_000, Payload::SessionEnded);
        let kinds: Vec<DoubtKind> = fold(SESSION, &out.ops).doubts.iter().map(|doubt| doubt.kind).collect();
        assert_eq!(kinds, [DoubtKind::StillOut], "a doubt of its own");
    }

    /// CAST 14:40, BITE 15:00, END at 7:30: END closed the cast, so its end is not an entry of its own.
    #[test]
    fn a_forgotten_outcome_hides_no_late_end_and_the_hours_end_with_the_last_entry() {
        let mut day = Written::new(1);
        let cast = day.log(600, CAST);
        day.log(1_800, Payload::Bite { rod: 1 });
        let end = day.log(61_200, Payload::SessionEnded);
        let late = Doubt { op: end, kind: DoubtKind::LateEnd };
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.doubts, [Doubt { op: cast, kind: DoubtKind::OutcomeNotSeen }, late.clone()]);
        assert_eq!(last_before_end(&session).map(|at| at.at_ms), Some(1_800_000));
        assert_eq!(session.fished_min(), Some(30.0));
        // How the bite ended was entered, but not when.
        let said = Payload::CastEndSet { end: restwater_log::EndSaid::Landed, after_s: Some(1_200) };
        day.amend(61_300, cast, said);
        let session = fold(SESSION, &day.ops);
        assert_eq!((session.doubts.as_slice(), session.fished_min()), (&[late][..], Some(30.0)));
        let sure = day.amend(61_400, end, Payload::Confirmed);
        assert_eq!(fold(SESSION, &day.ops).fished_min(), Some(1_020.0), "END was not late");
        day.undo(61_500, &[sure]);
        day.amend(61_600, end, Payload::TimeSet { back_s: 59_400 });
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.fished_min(), Some(30.0));
        assert!(
            session.doubts.iter().all(|doubt| doubt.kind == DoubtKind::Approximate),
            "{:?}",
            session.doubts
        );
    }

    /// A bait that was forgotten in the water makes its cast doubtful, and with it the hours up to END.
    #[test]
    fn the_hours_of_a_doubtful_bait_end_with_the_last_entry_too() {
        let mut day = Written::new(1);
        let cast = day.log(600, CAST);
        day.log(1_800, Payload::Liner { rod: 1 });
        day.log(61_200, Payload::SessionEnded);
        assert_eq!(fold(SESSION, &day.ops).fished_min(), Some(30.0));
        day.amend(61_300, cast, Payload::Confirmed);
        assert_eq!(fold(SESSION, &day.ops).fished_min(), Some(1_020.0), "it was out all night");
        let mut near = Written::new(1);
        near.log(600, CAST);
        near.log(6_600, Payload::Liner { rod: 1 });
        near.log(9_000, Payload::SessionEnded);
        assert_eq!(fold(SESSION, &near.ops).fished_min(), Some(150.0), "END came soon after the last entry");
    }
}
