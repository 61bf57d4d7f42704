//! Fish that neighbours were seen to land, compared with the angler's own.

use super::Stamp;
use super::catch::catch;
use super::fed::NeighbourFish;
use super::late_end::fished_until;
use super::model::{Doubt, DoubtKind, Session};
use super::step::Step;
use restwater_compare::{BesideOthers, beside_others};
use restwater_log::Side;

/// The angler's fish compared with those of the neighbours.
#[derive(Debug, Clone, PartialEq)]
pub struct Beside {
    /// Since when both are counted: the first fish that a neighbour was seen to land.
    pub since: Stamp,
    /// Minutes since then, without breaks.
    pub minutes: f64,
    /// Minutes of breaks since then.
    pub away_min: f64,
    /// What was counted, and what follows from it.
    pub found: BesideOthers,
}

impl Session {
    /// Adds a fish that a neighbour landed.
    pub(super) fn take_neighbour(&mut self, step: &Step, side: Side) {
        if !self.is_open() {
            self.doubts.push(Doubt { op: step.op.id, kind: DoubtKind::OutsideSession });
        }
        self.neighbours.push(NeighbourFish { op: step.op.id, at: step.at.clone(), side });
    }

    fn is_in_break(&self, at: &Stamp) -> bool {
        self.breaks
            .iter()
            .any(|rest| at.at_ms >= rest.from.at_ms && rest.to.as_ref().is_none_or(|to| at.at_ms < to.at_ms))
    }
}

/// The angler's fish beside those of the neighbours, up to `now` or as long as the session was fished; `None` before a
/// neighbour's fish is logged. While the angler is away nobody watches, so no fish count.
pub fn beside(session: &Session, now: &Stamp) -> Option<Beside> {
    let (from_ms, to_ms) = session.fished_ms(fished_until(session).unwrap_or(now))?;
    let minutes = |at: &Stamp| at.at_ms as f64 / 60_000.0;
    let counts = |at: &Stamp| (from_ms..=to_ms).contains(&at.at_ms) && !session.is_in_break(at);
    let of = |side: Side| {
        let here = session.neighbours.iter().filter(|fish| fish.side == side && counts(&fish.at));
        here.map(|fish| minutes(&fish.at)).collect::<Vec<f64>>()
    };
    let others = [Side::Left, Side::Right, Side::Across].map(of);
    let mine: Vec<f64> =
        catch(session).iter().filter(|fish| counts(&fish.at)).map(|fish| minutes(&fish.at)).collect();
    let first = session.neighbours.iter().map(|fish| &fish.at).filter(|at| counts(at));
    let since = first.min_by_key(|at| at.at_ms)?.clone();
    let found = beside_others(&mine, &others)?;
    let away_min = session.overlap_min(since.at_ms, to_ms);
    let minutes = (to_ms.saturating_sub(since.at_ms) as f64 / 60_000.0 - away_min).max(0.0);
    Some(Beside { since, minutes, away_min, found })
}

#[cfg(test)]
mod tests {
    use super::super::fold;
    use super::super::written::{SESSION, Written, stamp};
    use super::*;
    use restwater_compare::BesideVerdict;
    use restwater_log::Payload;

    fn caught(side: Side) -> Payload {
        Payload::NeighbourCaught { side }
    }

    fn landed(day: &mut Written, s: i64) {
        day.log(s - 600, Payload::Cast { rod: 1 });
        day.log(s - 60, Payload::Bite { rod: 1 });
        day.log(s, Payload::Landed { rod: 1, fish: None });
    }

    #[test]
    fn counting_begins_with_a_neighbours_first_fish_which_itself_does_not_count() {
        let mut day = Written::new(1);
        landed(&mut day, 1_200);
        let none = fold(SESSION, &day.ops);
        assert!(beside(&none, &stamp(1_300)).is_none());
        day.log(1_800, caught(Side::Left));
        day.log(2_400, caught(Side::Left));
        landed(&mut day, 3_600);
        day.log(4_200, caught(Side::Across));
        day.log(4_800, caught(Side::Across));
        let found = beside(&fold(SESSION, &day.ops), &stamp(5_400)).unwrap();
        assert_eq!((found.since.at_ms, found.minutes), (1_800_000, 60.0));
        assert_eq!((found.found.mine, found.found.theirs, found.found.neighbours), (1, 2, 2));
        assert_eq!(found.found.verdict, BesideVerdict::CantTellYet);
    }

    #[test]
    fn no_fish_count_while_the_angler_is_away_or_after_the_end() {
        let mut day = Written::new(1);
        day.log(600, caught(Side::Right));
        day.log(900, Payload::Away);
        day.log(1_200, caught(Side::Right));
        day.log(1_500, Payload::Returned);
        day.log(1_800, caught(Side::Right));
        day.log(2_400, Payload::SessionEnded);
        let late = day.log(3_000, caught(Side::Right));
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.doubts, [Doubt { op: late, kind: DoubtKind::OutsideSession }]);
        let found = beside(&session, &stamp(9_000)).unwrap();
        assert_eq!((found.found.theirs, found.minutes), (1, 20.0));
    }

    #[test]
    fn a_fish_that_is_undone_or_set_back_counts_as_corrected() {
        let mut day = Written::new(1);
        day.log(600, caught(Side::Left));
        let second = day.log(1_200, caught(Side::Left));
        day.amend(1_260, second, Payload::TimeSet { back_s: 60 });
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.neighbours[1].at.at_ms, 1_140_000);
        day.undo(1_300, &[second]);
        let found = beside(&fold(SESSION, &day.ops), &stamp(1_400)).unwrap();
        assert_eq!(found.found.theirs, 0);
    }
}
