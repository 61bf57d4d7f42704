//! What the record says about fish at the spots: how long to leave a cast, given where else one could cast.

use super::journal::InMemory;
use restwater_log::{RodNumber, Spot};
use restwater_screen::{SpotsReading, first_spot};
use restwater_session::{Session, Stamp, SwimKept, leave_by_spots, on_swim, planned_spot, reach_near};
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
        let move_to = leave.move_to.and_then(|to| spot_at(session, swim, to, self.rod, &at));
        Some(SpotsReading { leave, move_to })
    }
}

/// The spot in a cell to which a rod is sent: one that is known, or else the middle.
pub(super) fn spot_at(
    session: &Session,
    swim: &Swim,
    id: CellId,
    rod: RodNumber,
    at: &Stamp,
) -> Option<Spot> {
    let aim = swim.cell(id).ok()?.aim?;
    if let Some(known) = known_spot(session, swim, id, rod, at) {
        return Some(known.spot);
    }
    let like = session.rod(rod).and_then(|rod| rod.spot.as_ref());
    let like = like.cloned().unwrap_or_else(|| first_spot(session));
    Some(Spot {
        mark: mark_of(swim, id),
        bearing_cdeg: libm::round(aim.bearing_deg * 100.0) as i32,
        reach: reach_near(aim.range_m, like.reach),
        clipped: like.clipped,
    })
}

/// A spot of the day in a cell.
#[derive(Debug, Clone)]
pub(super) struct KnownSpot {
    /// Where.
    pub spot: Spot,
    /// Whether a cast went there.
    pub cast: bool,
}

/// The spot in a cell to which the next cast of a rod there goes, rather than to the middle of the cell: the rod's own, or else the
/// latest of any rod that was clipped up, or before the first cast the one planned. A metre or two beside it would be a new clip for the same water.
pub(super) fn known_spot(
    session: &Session,
    swim: &Swim,
    id: CellId,
    rod: RodNumber,
    at: &Stamp,
) -> Option<KnownSpot> {
    let is_there = |spot: &&Spot| swim.cell_of(on_swim(spot)) == Some(id);
    let casts = || session.casts.iter().filter(|cast| cast.start.at_ms <= at.at_ms);
    let same = |a: &Spot, b: &Spot| (a.bearing_cdeg, a.reach) == (b.bearing_cdeg, b.reach);
    let was_cast = |spot: &Spot| casts().filter_map(|cast| cast.spot.as_ref()).any(|cast| same(cast, spot));
    let own = session.rod(rod).and_then(|rod| rod.spot.as_ref()).filter(is_there);
    // A spot that no cast went to yet was set after those of the casts.
    let set = session.rods.iter().filter_map(|rod| rod.spot.as_ref());
    let set = set.filter(|spot| spot.clipped && !was_cast(spot)).find(is_there);
    let last = || {
        let clipped = casts().filter_map(|cast| Some((cast.start.at_ms, cast.spot.as_ref()?)));
        let clipped = clipped.filter(|(_, spot)| spot.clipped && is_there(spot));
        clipped.max_by_key(|(start_ms, _)| *start_ms).map(|(_, spot)| spot)
    };
    let spot = own.or(set).or_else(last).cloned();
    let spot = spot.or_else(|| planned_spot(session).filter(|spot| is_there(&spot)))?;
    Some(KnownSpot { cast: was_cast(&spot), spot })
}

fn mark_of(swim: &Swim, id: CellId) -> Option<Uuid> {
    match swim.columns().columns.get(id.column as usize)?.name {
        ColumnName::On(i) => swim.columns().marks.get(i as usize)?.id.parse().ok(),
        _ => None,
    }
}
