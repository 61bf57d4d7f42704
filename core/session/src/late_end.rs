//! An END that was tapped long after everything else, often the next morning.

use super::cast::EndCause;
use super::model::{Doubt, DoubtKind, LastTimed, Session};
use super::{Cast, Stamp};
use restwater_log::Payload;

/// An END later than this after the last entry, with every rod in, is doubtful: packing up takes less. A choice.
const PACKED_UP_WITHIN_MIN: f64 = 90.0;

/// Marks such an END. A bait that was out until END has a doubt of its own, and after a match the weigh-in takes long.
pub(super) fn mark_late_end(session: &mut Session) {
    let out_until_end =
        |cast: &Cast| cast.end.as_ref().is_some_and(|end| end.cause == EndCause::SessionEnded);
    if session.match_day.is_some() || session.casts.iter().any(out_until_end) {
        return;
    }
    let Some(LastTimed { op, at, .. }) = end_of(session) else { return };
    let quiet_min = last_before_end(session).map_or(0.0, |last| at.minutes_since(last));
    if quiet_min > PACKED_UP_WITHIN_MIN {
        let doubt = Doubt { op: *op, kind: DoubtKind::LateEnd };
        session.doubts.push(doubt);
    }
}

/// The END of a session, as long as nothing was logged after it whose time counts.
fn end_of(session: &Session) -> Option<&LastTimed> {
    session.last_timed.as_ref().filter(|last| matches!(last.payload, Payload::SessionEnded))
}

/// When anything was last logged before END, or the start if nothing was.
pub fn last_before_end(session: &Session) -> Option<&Stamp> {
    let ended = session.ended.as_ref()?;
    let casts = session.casts.iter().flat_map(|cast| {
        let end = cast.end.as_ref().map(|end| &end.at);
        [Some(cast.last_logged()), cast.bite.as_ref().map(|(at, _)| at), end].into_iter().flatten()
    });
    let breaks = session.breaks.iter().flat_map(|rest| [Some(&rest.from), rest.to.as_ref()]).flatten();
    session
        .started
        .iter()
        .chain(casts)
        .chain(breaks)
        .chain(session.fed.iter().map(|fed| &fed.at))
        .chain(session.shown.iter().map(|shown| &shown.at))
        .chain(session.neighbours.iter().map(|fish| &fish.at))
        .chain(session.notes.iter().map(|note| &note.at))
        .chain(session.conditions.iter().map(|conditions| &conditions.at))
        .filter(|at| at.at_ms <= ended.at_ms)
        .max_by_key(|at| at.at_ms)
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
    fn packing_up_a_break_and_a_bait_that_is_out_are_no_late_end() {
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
}
