//! Corrections made from memory: ends that were not seen, casts that were forgotten, entries confirmed to be
//! right, and gaps in which something may be missing.

use super::Stamp;
use super::cast::{Cast, CastEnd, EndCause};
use super::end_corrected::{Correction, in_one};
use super::late_end::mark_late_end;
use super::model::{Doubt, DoubtKind, RodState, Session};
use super::rhythm::median;
use super::step::Step;
use super::waits::wait_end_ms;
use restwater_log::{EndSaid, OpOrder, Payload, RodNumber};
use std::collections::HashMap;
use uuid::Uuid;

/// How many cycles of a rod must be known before a gap can be recognised.
const CYCLES: usize = 3;
/// A gap of at least this many median cycles is long.
const LONG: f64 = 2.0;
/// The cycle assumed, in minutes, for a bait still out at the end while fewer are known: the longest wait that
/// Mend offers. The project's own choice, no source.
const CYCLE_ASSUMED_MIN: f64 = 60.0;

/// Corrections in the log, collected while it is folded.
#[derive(Default)]
pub(super) struct Later {
    ends: Vec<Remembered>,
    added: Vec<Added>,
    /// Entries confirmed to be right, and where in the log that was said.
    confirmed: HashMap<Uuid, OpOrder>,
    /// Casts that ended, each with the place in the log of the entry that ended it. What was confirmed about a cast
    /// before then does not include that end.
    closed: HashMap<Uuid, OpOrder>,
}

/// The corrections of the end of a cast.
struct Remembered {
    cast: Uuid,
    said: Vec<Correction>,
}

struct Added {
    op: Uuid,
    after: Uuid,
    lag_s: u32,
    wait_s: u32,
    end: EndSaid,
}

impl Later {
    pub(super) fn note(&mut self, step: &Step) {
        if let Payload::CastAdded { after, lag_s, wait_s, end } = *step.payload {
            self.added.push(Added { op: step.op.id, after, lag_s, wait_s, end });
        }
        if !step.ends.is_empty() {
            self.ends.push(Remembered { cast: step.op.id, said: step.ends.clone() });
        }
        if let Some(order) = step.confirmed {
            self.confirmed.insert(step.op.id, order);
        }
    }

    /// Notes that an entry ended a cast.
    pub(super) fn note_closed(&mut self, cast: Uuid, by: &Step) {
        self.closed.insert(cast, by.op.order());
    }

    /// Whether a cast ended after something had been said of it.
    fn closed_since(&self, cast: Uuid, said: OpOrder) -> bool {
        self.closed.get(&cast).is_some_and(|closed| said < *closed)
    }

    /// Applies the corrected ends of the casts of which `is_it` is true. A correction of an end that was undone since is not about
    /// the end that came later.
    fn remember(&self, session: &mut Session, is_it: impl Fn(Uuid) -> bool) {
        for Remembered { cast, said } in self.ends.iter().filter(|said| is_it(said.cast)) {
            let holds = said.iter().filter(|said| !self.closed_since(*cast, said.order));
            remember(session, *cast, holds);
        }
    }

    /// Whether an entry was confirmed to be right.
    pub(super) fn is_confirmed(&self, op: Uuid) -> bool {
        self.confirmed.contains_key(&op)
    }

    /// Whether the confirmation of its entry settles a doubt. One that was given while the cast was out can't settle a doubt about
    /// its end.
    fn settles(&self, doubt: &Doubt) -> bool {
        let of_the_end =
            matches!(doubt.kind, DoubtKind::EndNotSeen | DoubtKind::OutcomeNotSeen | DoubtKind::StillOut);
        self.confirmed
            .get(&doubt.op)
            .is_some_and(|order| !(of_the_end && self.closed_since(doubt.op, *order)))
    }
}

/// Applies the corrections to the session, and marks long gaps.
pub(super) fn apply(session: &mut Session, later: &Later) {
    note_latest(session);
    // A forgotten cast is placed relative to the end of the previous cast, so that end has to be known first.
    later.remember(session, |_| true);
    for added in &later.added {
        add(session, added);
        later.remember(session, |cast| cast == added.op);
    }
    mark_gaps(session);
    mark_still_out(session);
    mark_late_end(session);
    session.doubts.retain(|doubt| !later.settles(doubt));
}

/// Notes the latest possible end of each wait. Later entries stay as they are: the outcome of its bite, the
/// next splash of its rod, the end of the session. So a corrected wait may be longer as well as shorter.
fn note_latest(session: &mut Session) {
    let ended = session.ended.clone();
    let mut next: HashMap<RodNumber, Stamp> = HashMap::new();
    for cast in session.casts.iter_mut().rev() {
        if let Some(end) = &cast.end {
            // After a merge a later entry may be earlier in time: then it doesn't limit the end.
            let after = next.get(&cast.rod).or(ended.as_ref()).filter(|after| after.ms_since(&end.at) >= 0);
            cast.latest = if cast.bite.is_some() { Some(end.at.clone()) } else { after.cloned() };
        }
        next.insert(cast.rod, cast.start.clone());
    }
}

/// Inserts a forgotten cast where it was made. If there is no such place, it becomes a doubt instead.
fn add(session: &mut Session, added: &Added) {
    let Some(cast) = forgotten(session, added) else {
        session.doubts.push(Doubt { op: added.op, kind: DoubtKind::NothingOut });
        return;
    };
    let place = session.casts.iter().position(|other| other.start.ms_since(&cast.start) > 0);
    let place = place.unwrap_or(session.casts.len());
    let start = cast.start.clone();
    session.casts.insert(place, cast);
    for rod in &mut session.rods {
        if let RodState::Out { cast } | RodState::FishOn { cast } = &mut rod.state {
            *cast += usize::from(*cast >= place);
        }
    }
    if let Some(test) = &mut session.alternation {
        let before_it =
            test.after_cast > place || (test.after_cast == place && test.began.ms_since(&start) > 0);
        test.after_cast += usize::from(before_it);
    }
    session.doubts.push(Doubt { op: added.op, kind: DoubtKind::Approximate });
}

fn forgotten(session: &Session, added: &Added) -> Option<Cast> {
    let before = session.casts.iter().find(|cast| cast.op == added.after)?;
    let end = &before.end.as_ref()?.at;
    let next = next_start(session, before.rod, end);
    let start = no_later(end.later(added.lag_s), next);
    let until = no_later(start.later(added.wait_s), next);
    // If other corrections left no room for it, there was no such cast.
    if until.ms_since(&start) <= 0 {
        return None;
    }
    let latest = next.cloned();
    let bite = (added.end != EndSaid::WoundIn).then(|| (until.clone(), added.op));
    Some(Cast {
        op: added.op,
        rod: before.rod,
        start,
        rig: before.rig.clone(),
        spot: before.spot.clone(),
        fill_mg: before.fill_mg,
        bite,
        liners: Vec::new(),
        indications: Vec::new(),
        twitches: Vec::new(),
        end: Some(CastEnd { cause: cause(added.end), at: until, op: added.op }),
        latest,
        hooklength_lost: None,
    })
}

/// The next splash of a rod after `from`.
fn next_start<'a>(session: &'a Session, rod: RodNumber, from: &Stamp) -> Option<&'a Stamp> {
    let starts = session.casts.iter().filter(|cast| cast.rod == rod).map(|cast| &cast.start);
    starts.filter(|start| start.ms_since(from) >= 0).min_by_key(|start| start.at_ms)
}

fn no_later(at: Stamp, limit: Option<&Stamp>) -> Stamp {
    match limit {
        Some(limit) if at.ms_since(limit) > 0 => limit.clone(),
        _ => at,
    }
}

fn cause(end: EndSaid) -> EndCause {
    match end {
        EndSaid::WoundIn => EndCause::WoundIn,
        EndSaid::Landed => EndCause::Landed { fish: None },
        EndSaid::Lost => EndCause::Lost,
        EndSaid::Missed => EndCause::Missed,
    }
}

/// Applies the remembered end of a cast. A cast that is still out has no end to correct.
fn remember<'c>(session: &mut Session, cast: Uuid, said: impl Iterator<Item = &'c Correction>) {
    let Some(cast) = session.casts.iter_mut().find(|other| other.op == cast) else { return };
    let Some(end) = cast.end.clone() else { return };
    let Some(said) = in_one(&end.cause, said) else { return };
    let latest = cast.latest.as_ref().unwrap_or(&said.at);
    let at = said.after_s.map(|seconds| no_later(cast.start.later(seconds), Some(latest)));
    let bitten = said.end != EndSaid::WoundIn;
    let wait_end = at.clone().unwrap_or_else(|| cast.wait_end().unwrap_or(&end.at).clone());
    let cause = match (&end.cause, cause(said.end)) {
        // The weight stays with the fish.
        (EndCause::Landed { fish }, EndCause::Landed { .. }) => EndCause::Landed { fish: fish.clone() },
        (_, cause) => cause,
    };
    // A cast with a bite ended later than the bite, when it was closed; any other cast ended at the time
    // entered.
    let ended = if bitten && cast.bite.is_some() { end.at } else { wait_end.clone() };
    cast.bite = bitten.then(|| (wait_end, cast.bite.as_ref().map_or(said.op, |(_, op)| *op)));
    cast.end = Some(CastEnd { cause, at: ended, op: said.op });
    let settled =
        |kind| matches!(kind, DoubtKind::EndNotSeen | DoubtKind::OutcomeNotSeen | DoubtKind::Approximate);
    let op = cast.op;
    session.doubts.retain(|doubt| doubt.op != op || !settled(doubt.kind));
}

/// The usual minutes from one splash of a rod to the next, or `None` before enough are known.
fn cycle_min(casts: &[&Cast]) -> Option<f64> {
    let pairs = casts.windows(2).filter_map(|pair| Some((pair.first()?, pair.last()?)));
    let mut cycles: Vec<f64> = pairs.map(|(last, next)| next.start.minutes_since(&last.start)).collect();
    median(&mut cycles).filter(|_| cycles.len() >= CYCLES)
}

fn casts_of(session: &Session, rod: RodNumber) -> Vec<&Cast> {
    session.casts.iter().filter(|cast| cast.rod == rod).collect()
}

/// A long gap before a cast, in which something may be missing.
pub struct Gap<'a> {
    /// The cast before it on its rod.
    pub before: &'a Cast,
    /// When that cast ended.
    pub end: &'a Stamp,
    /// The splash after it.
    pub next: &'a Stamp,
}

/// The gap that a cast is doubtful for.
pub fn gap_before(session: &Session, op: Uuid) -> Option<Gap<'_>> {
    session.doubts.iter().find(|doubt| doubt.op == op && doubt.kind == DoubtKind::LongGap)?;
    let next = session.casts.iter().find(|cast| cast.op == op)?;
    let before = casts_of(session, next.rod).into_iter().take_while(|cast| cast.op != op).last()?;
    Some(Gap { before, end: &before.end.as_ref()?.at, next: &next.start })
}

impl Gap<'_> {
    /// The longest stretch of it outside logged breaks: there a cast may be missing.
    pub fn of_a_cast(&self, session: &Session) -> (Stamp, Stamp) {
        session.without_a_break(self.end, self.next)
    }

    /// The longest stretch of it in which the angler may have been away, because every rod was in. If another rod was out, and
    /// what is left besides its casts is shorter than the usual time from cast to cast, there was no break: that rod is returned
    /// as the error.
    pub fn of_a_break(&self, session: &Session) -> Result<(Stamp, Stamp), RodNumber> {
        let in_it = |cast: &&Cast| {
            let over = cast.end.as_ref().is_none_or(|end| end.at.ms_since(self.end) > 0);
            cast.rod != self.before.rod && over && self.next.ms_since(&cast.start) > 0
        };
        let (from, to) = session.with_all_in(self.end, self.next);
        let cycle = cycle_min(&casts_of(session, self.before.rod)).unwrap_or(0.0);
        match session.casts.iter().find(in_it) {
            Some(out) if to.minutes_since(&from) < cycle => Err(out.rod),
            _ => Ok((from, to)),
        }
    }
}

/// Marks the casts before which nothing was logged for more than two median cycles of their rod.
fn mark_gaps(session: &mut Session) {
    let mut long = Vec::new();
    for rod in &session.rods {
        let casts = casts_of(session, rod.number);
        let Some(cycle) = cycle_min(&casts) else { continue };
        let pairs = casts.windows(2).filter_map(|pair| Some((*pair.first()?, *pair.last()?)));
        long.extend(pairs.filter_map(|(last, next)| {
            let end = &last.end.as_ref()?.at;
            // During a break no cast can have been forgotten.
            let gap = next.start.minutes_since(end) - session.break_min(end, &next.start);
            (gap > LONG * cycle).then_some(Doubt { op: next.op, kind: DoubtKind::LongGap })
        }));
    }
    session.doubts.extend(long);
}

/// Marks the casts that only the end of the session closed, where nothing was logged of them for so long before that the bait may
/// have been in.
fn mark_still_out(session: &mut Session) {
    let left = session.casts.iter().filter(|cast| {
        cast.bite.is_none() && cast.end.as_ref().is_some_and(|end| end.cause == EndCause::SessionEnded)
    });
    let long = left.filter(|cast| {
        let quiet_ms =
            wait_end_ms(session, cast).map_or(0, |end_ms| end_ms.saturating_sub(cast.last_logged().at_ms));
        let cycle = cycle_min(&casts_of(session, cast.rod)).unwrap_or(CYCLE_ASSUMED_MIN);
        quiet_ms as f64 / 60_000.0 > LONG * cycle
    });
    let long: Vec<Doubt> = long.map(|cast| Doubt { op: cast.op, kind: DoubtKind::StillOut }).collect();
    session.doubts.extend(long);
}

#[cfg(test)]
mod tests {
    use super::super::written::{SESSION, Written};
    use super::super::{fold, waits_of};
    use super::*;

    const CAST: Payload = Payload::Cast { rod: 1 };

    fn kinds(session: &Session) -> Vec<DoubtKind> {
        session.doubts.iter().map(|d| d.kind).collect()
    }

    #[test]
    fn an_end_that_was_not_seen_can_be_entered_from_memory() {
        let mut day = Written::new(1);
        let cast = day.log(60, CAST);
        day.log(60 + 1_500, CAST);
        assert_eq!(kinds(&fold(SESSION, &day.ops)), [DoubtKind::EndNotSeen]);
        day.amend(2_000, cast, Payload::CastEndSet { end: EndSaid::WoundIn, after_s: Some(1_200) });
        let session = fold(SESSION, &day.ops);
        assert_eq!(kinds(&session), []);
        assert_eq!(waits_of(&session)[0].minutes(), 20.0);
        day.amend(2_010, cast, Payload::CastEndSet { end: EndSaid::Landed, after_s: Some(900) });
        let session = fold(SESSION, &day.ops);
        let wait = waits_of(&session)[0];
        assert!(wait.is_bite() && wait.minutes() == 15.0, "the last word holds");
        day.amend(2_020, cast, Payload::CastEndSet { end: EndSaid::Lost, after_s: Some(9_000) });
        assert_eq!(waits_of(&fold(SESSION, &day.ops))[0].minutes(), 25.0, "not beyond the next splash");
    }

    #[test]
    fn an_outcome_can_be_corrected_and_the_bite_stays() {
        let mut day = Written::new(1);
        let cast = day.log(60, CAST);
        day.log(60 + 840, Payload::Bite { rod: 1 });
        day.log(60 + 1_200, CAST);
        day.amend(2_000, cast, Payload::CastEndSet { end: EndSaid::Missed, after_s: None });
        let session = fold(SESSION, &day.ops);
        assert_eq!(kinds(&session), []);
        let end = session.casts[0].end.as_ref().unwrap();
        assert_eq!((&end.cause, end.at.at_ms), (&EndCause::Missed, session.casts[1].start.at_ms));
        assert_eq!(waits_of(&session)[0].minutes(), 14.0);
    }

    /// END closed the cast and was corrected on another phone, then END was undone here and a fish came.
    #[test]
    fn a_correction_of_an_end_that_was_undone_says_nothing_of_a_later_end() {
        let mut day = Written::new(1);
        let cast = day.log(60, CAST);
        let end = day.log(10_000, Payload::SessionEnded);
        day.amend(10_060, cast, Payload::CastEndSet { end: EndSaid::WoundIn, after_s: Some(1_200) });
        day.undo(10_100, &[end]);
        day.log(12_000, Payload::Bite { rod: 1 });
        day.log(12_100, Payload::Landed { rod: 1, fish: None });
        let session = fold(SESSION, &day.ops);
        assert_eq!(
            session.casts[0].end.as_ref().map(|end| &end.cause),
            Some(&EndCause::Landed { fish: None })
        );
        assert_eq!((waits_of(&session)[0].minutes(), kinds(&session)), (199.0, vec![]));
    }

    #[test]
    fn a_forgotten_cast_is_inserted_in_its_place_and_marked() {
        let mut day = Written::new(1);
        let first = day.log(0, CAST);
        day.log(600, Payload::WoundIn { rod: 1 });
        day.log(3_000, CAST);
        let added = day.log(
            3_100,
            Payload::CastAdded { after: first, lag_s: 120, wait_s: 1_200, end: EndSaid::WoundIn },
        );
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.casts.iter().map(|c| c.op).collect::<Vec<_>>()[1], added);
        assert_eq!(session.casts.len(), 3);
        assert!(matches!(session.rods[0].state, RodState::Out { cast: 2 }));
        assert_eq!(kinds(&session), [DoubtKind::Approximate]);
        day.amend(3_200, added, Payload::Confirmed);
        assert_eq!(kinds(&fold(SESSION, &day.ops)), []);
        let nowhere = day.log(
            3_300,
            Payload::CastAdded { after: Uuid::from_u128(9), lag_s: 0, wait_s: 0, end: EndSaid::Lost },
        );
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.doubts, [Doubt { op: nowhere, kind: DoubtKind::NothingOut }]);
    }

    #[test]
    fn a_gap_of_more_than_two_cycles_is_marked_until_confirmed() {
        let mut day = Written::new(1);
        let mut last = Uuid::nil();
        for start in [0, 900, 1_800, 2_700, 5_500] {
            last = day.log(start, CAST);
            day.log(start + 780, Payload::WoundIn { rod: 1 });
        }
        let session = fold(SESSION, &day.ops);
        // Cycles 15, 15, 15, 46.7 min: the median is 15; the gap before the last cast is 33.7 min.
        assert_eq!(session.doubts, [Doubt { op: last, kind: DoubtKind::LongGap }]);
        day.amend(7_000, last, Payload::Confirmed);
        assert_eq!(fold(SESSION, &day.ops).doubts, []);
    }
}
