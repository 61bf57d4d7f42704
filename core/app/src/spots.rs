//! What the record says about fish at the spots: how long to leave a cast, given where else one could cast.

use super::journal::InMemory;
use restwater_log::{RodNumber, Spot};
use restwater_screen::{SpotsReading, first_spot};
use restwater_session::{Session, Stamp, SwimKept, leave_by_spots, reach_near};
use restwater_swim::{CellId, ColumnName, Swim};
use restwater_waits::WaitPosterior;
use uuid::Uuid;

/// What the spots said, with the question: a running clock asks every second.
pub(super) struct SpotsAnswer {
    pub(super) asked: SpotsAsked,
    pub(super) says: Option<SpotsReading>,
}

/// What is asked about the spots. The same log gives the same answer.
#[derive(PartialEq)]
pub(super) struct SpotsAsked {
    session: Uuid,
    log: InMemory,
    rod: RodNumber,
    /// The splash; while nothing is out, the present minute, or the end of a cast within it.
    at_ms: i64,
}

impl SpotsAsked {
    /// Asks about the cast of a rod that is out, or about one that goes out now.
    pub(super) fn new(session: &Session, log: InMemory, rod: RodNumber, now: &Stamp) -> Self {
        let this_minute = now.at_ms - now.at_ms.rem_euclid(60_000);
        let ends = session
            .casts
            .iter()
            .flat_map(|cast| [cast.wait_end(), cast.end.as_ref().map(|end| &end.at)].into_iter().flatten());
        let ended = ends.map(|end| end.at_ms).filter(|end_ms| *end_ms <= now.at_ms).max();
        let up_to = ended.map_or(this_minute, |end_ms| end_ms.max(this_minute));
        let at_ms = session.running(rod).map_or(up_to, |cast| cast.start.at_ms);
        Self { session: session.id, log, rod, at_ms }
    }

    /// Whether the other question is about another rod of the same day.
    pub(super) fn is_about_another_rod(&self, other: &Self) -> bool {
        self.session == other.session && self.rod != other.rod
    }

    /// How long to leave it, and what to do then.
    pub(super) fn answer(
        &self,
        session: &Session,
        posterior: &WaitPosterior,
        now: &Stamp,
        kept: &mut SwimKept,
    ) -> Option<SpotsReading> {
        let at = now.before(now.at_ms - self.at_ms);
        let leave = leave_by_spots(session, posterior, self.rod, &at, kept)?;
        let swim = kept.swim()?;
        let like = session.rod(self.rod).and_then(|rod| rod.spot.as_ref());
        let move_to = leave.move_to.and_then(|to| spot_at(session, swim, to, like));
        Some(SpotsReading { leave, move_to })
    }
}

/// The spot in the middle of a cell, as a rod is sent to it.
pub(super) fn spot_at(session: &Session, swim: &Swim, id: CellId, like: Option<&Spot>) -> Option<Spot> {
    let aim = swim.cell(id).ok()?.aim?;
    let like = like.cloned().unwrap_or_else(|| first_spot(session));
    Some(Spot {
        mark: mark_of(swim, id),
        bearing_cdeg: libm::round(aim.bearing_deg * 100.0) as i32,
        reach: reach_near(aim.range_m, like.reach),
        clipped: like.clipped,
    })
}

fn mark_of(swim: &Swim, id: CellId) -> Option<Uuid> {
    match swim.columns().columns.get(id.column as usize)?.name {
        ColumnName::On(i) => swim.columns().marks.get(i as usize)?.id.parse().ok(),
        _ => None,
    }
}
