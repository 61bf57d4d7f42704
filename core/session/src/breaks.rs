//! Breaks: while the angler is away from the rods, no fishing time is counted.

use super::Stamp;
use super::late_end::fished_until;
use super::model::{Break, Doubt, DoubtKind, RodState, Session};
use super::step::Step;
use super::waits::wait_end_ms;

impl Session {
    /// The break that the angler is on, if any.
    pub fn away(&self) -> Option<&Break> {
        self.breaks.last().filter(|last| last.to.is_none())
    }

    /// Begins a break, unless the angler is on one already. An earlier one may be entered meanwhile on another phone.
    pub(super) fn go_away(&mut self, step: &Step) {
        let rest = Break { op: step.op.id, from: step.at.clone(), to: None };
        match self.away().map(|now| now.from.clone()) {
            None => self.breaks.push(rest),
            Some(now) if rest.from.ms_since(&now) < 0 => {
                self.breaks.insert(self.breaks.len() - 1, Break { to: Some(now), ..rest });
            }
            Some(_) => {}
        }
    }

    /// Ends the break, or the earlier one that was entered meanwhile; without one, being back is a doubt.
    pub(super) fn come_back(&mut self, step: &Step) {
        if self.away().is_none() {
            self.doubts.push(Doubt { op: step.op.id, kind: DoubtKind::NoBreak });
        }
        if let [.., earlier, now] = self.breaks.as_mut_slice()
            && now.to.is_none()
            && earlier.to.as_ref() == Some(&now.from)
            && (earlier.from.at_ms..now.from.at_ms).contains(&step.at.at_ms)
        {
            earlier.to = Some(step.at.clone());
        } else {
            self.close_break(&step.at);
        }
    }

    /// Ends the current break, as a cast or the end of the session does. The turn-rounds of rods that are in
    /// begin here.
    pub(super) fn close_break(&mut self, at: &Stamp) {
        let Some(last) = self.breaks.last_mut().filter(|last| last.to.is_none()) else { return };
        // After a merge, the event that closes the break may be earlier than it: the break then has no length.
        let to = if at.ms_since(&last.from) < 0 { last.from.clone() } else { at.clone() };
        last.to = Some(to.clone());
        for rod in &mut self.rods {
            if let RodState::Ready { since: Some(since) } = &mut rod.state
                && to.ms_since(since) > 0
            {
                *since = to.clone();
            }
        }
    }

    /// Minutes of the session that were fished: without breaks, without the time before a doubtful END and, in a match, without
    /// the time before all-in and after all-out unless a bait was out then. `None` before the session has ended.
    pub fn fished_min(&self) -> Option<f64> {
        let (from_ms, to_ms) = self.fished_ms(fished_until(self)?)?;
        let away = self.overlap_min(from_ms, to_ms);
        Some((to_ms.saturating_sub(from_ms) as f64 / 60_000.0 - away).max(0.0))
    }

    /// From when to when it was fished, in ms on the time line, given that it was fished until `until`: in a match from all-in to
    /// all-out, or as long as a bait was out. Breaks are in it.
    pub(super) fn fished_ms(&self, until: &Stamp) -> Option<(i64, i64)> {
        let (mut from_ms, mut to_ms) = (self.started.as_ref()?.at_ms, until.at_ms);
        if let Some(day) = &self.match_day {
            let first = self.casts.iter().map(|cast| cast.start.at_ms).min();
            let last = self.casts.iter().filter_map(|cast| wait_end_ms(self, cast)).max();
            let (all_in, all_out) = day.on_line_ms(Some(until));
            from_ms = from_ms.max(first.map_or(all_in, |first| first.min(all_in)));
            to_ms = to_ms.min(last.map_or(all_out, |last| last.max(all_out)));
        }
        Some((from_ms, to_ms))
    }

    /// Minutes of breaks between two stamps; a break that has not ended counts up to `to`.
    pub fn break_min(&self, from: &Stamp, to: &Stamp) -> f64 {
        self.overlap_min(from.at_ms, to.at_ms)
    }

    pub(super) fn overlap_min(&self, from_ms: i64, to_ms: i64) -> f64 {
        let end = |rest: &Break| rest.to.as_ref().map_or(to_ms, |end| end.at_ms).min(to_ms);
        let mut spans: Vec<(i64, i64)> =
            self.breaks.iter().map(|rest| (rest.from.at_ms.max(from_ms), end(rest))).collect();
        spans.sort_unstable();
        // Breaks may overlap, since one may be added afterwards: each minute counts once.
        let (mut until, mut away_ms) = (from_ms, 0_i64);
        for (from, to) in spans {
            away_ms = away_ms.saturating_add(to.saturating_sub(from.max(until)).max(0));
            until = until.max(to);
        }
        away_ms as f64 / 60_000.0
    }

    /// The longest stretch between two stamps without a break in it. During a break the rods are in, so that what was forgotten
    /// there was not in it.
    pub(super) fn without_a_break(&self, from: &Stamp, to: &Stamp) -> (Stamp, Stamp) {
        longest_beside(self.rests().collect(), from, to)
    }

    /// The longest stretch between two stamps with every rod in and without a break in it.
    pub(super) fn with_all_in(&self, from: &Stamp, to: &Stamp) -> (Stamp, Stamp) {
        let out = self.casts.iter().map(|cast| (&cast.start, cast.end.as_ref().map_or(to, |end| &end.at)));
        longest_beside(self.rests().chain(out).collect(), from, to)
    }

    fn rests(&self) -> impl Iterator<Item = (&Stamp, &Stamp)> {
        self.breaks.iter().filter_map(|rest| Some((&rest.from, rest.to.as_ref()?)))
    }
}

/// The longest stretch between two stamps that none of these spans touches.
fn longest_beside<'a>(
    mut spans: Vec<(&'a Stamp, &'a Stamp)>,
    from: &'a Stamp,
    to: &'a Stamp,
) -> (Stamp, Stamp) {
    spans.retain(|(begun, over)| over.ms_since(from) > 0 && to.ms_since(begun) > 0);
    spans.sort_by_key(|(begun, _)| begun.at_ms);
    let (mut since, mut longest) = (from, (from, from));
    for (until, next) in spans.into_iter().chain([(to, to)]) {
        if until.ms_since(since) > longest.1.ms_since(longest.0) {
            longest = (since, until);
        }
        if next.ms_since(since) > 0 {
            since = next;
        }
    }
    (longest.0.clone(), longest.1.clone())
}

#[cfg(test)]
mod tests {
    use super::super::written::{SESSION, Written};
    use super::super::{fold, rhythm};
    use super::*;
    use restwater_log::{Payload, SessionSetup};

    const CAST: Payload = Payload::Cast { rod: 1 };
    const IN: Payload = Payload::WoundIn { rod: 1 };

    /// Four casts of 13 min with 2 min between them, a gap of 50 min, and one more.
    fn day(away: Option<(i64, Option<i64>)>) -> Written {
        let mut day = Written::new(1);
        day.log(0, Payload::SessionStarted(SessionSetup { rods: 1, ..SessionSetup::default() }));
        for start in [60, 960, 1_860, 2_760] {
            day.log(start, CAST);
            day.log(start + 780, IN);
        }
        if let Some((from, to)) = away {
            day.log(from, Payload::Away);
            to.map(|to| day.log(to, Payload::Returned));
        }
        day.log(6_540, CAST);
        day.log(7_200, IN);
        day.log(7_260, Payload::SessionEnded);
        day
    }

    #[test]
    fn a_break_is_not_a_gap_to_mend_nor_a_turn_round_nor_time_fished() {
        let without = fold(SESSION, &day(None).ops);
        assert_eq!(without.doubts.iter().map(|doubt| doubt.kind).collect::<Vec<_>>(), [DoubtKind::LongGap]);
        assert_eq!(without.fished_min(), Some(121.0));
        let with = fold(SESSION, &day(Some((3_600, Some(6_420)))).ops);
        assert_eq!(with.doubts, []);
        assert_eq!(with.fished_min(), Some(121.0 - 47.0));
        assert_eq!(rhythm(&with, 9.0, 9.0).turn_round_min, 2.0);
    }

    #[test]
    fn the_next_cast_ends_a_break_that_was_not_ended() {
        let session = fold(SESSION, &day(Some((3_600, None))).ops);
        assert!(session.away().is_none());
        assert_eq!(session.break_min(&session.casts[0].start, &session.casts[4].start), 49.0);
    }

    #[test]
    fn coming_back_without_a_break_is_a_doubt_and_undo_removes_the_break() {
        let mut day = Written::new(1);
        day.log(0, Payload::SessionStarted(SessionSetup::default()));
        let away = day.log(60, Payload::Away);
        assert!(fold(SESSION, &day.ops).away().is_some());
        day.undo(120, &[away]);
        assert!(fold(SESSION, &day.ops).away().is_none());
        let back = day.log(180, Payload::Returned);
        assert_eq!(fold(SESSION, &day.ops).doubts, [Doubt { op: back, kind: DoubtKind::NoBreak }]);
    }

    #[test]
    fn the_turn_round_of_a_rod_that_is_in_begins_at_the_end_of_the_break() {
        let mut day = day(Some((3_600, Some(6_420))));
        day.ops.truncate(day.ops.len() - 3);
        let session = fold(SESSION, &day.ops);
        let RodState::Ready { since: Some(since) } = &session.rods[0].state else { panic!("it is in") };
        assert_eq!(since.at_ms, 6_420_000);
    }
}
