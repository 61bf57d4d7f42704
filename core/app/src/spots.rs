//! What the record tells of fish at the spots: where next, and how long to leave a cast by where else one could go.

use restwater_log::{RodNumber, Spot, SwimSetup};
use restwater_screen::{SpotsReading, first_spot};
use restwater_session::{Cast, KeptBack, Mark, Session, SpotsOfDay, Stamp, reach_m, reach_near, swim_of};
use restwater_swim::{CellId, ColumnName, Swim, SwimFigures, WhereNext};
use restwater_waits::WaitPosterior;
use uuid::Uuid;

/// What the spots said, with what it rests on: a running clock asks every second.
pub(super) struct SpotsAnswer {
    pub(super) asked: SpotsAsked,
    pub(super) says: Option<SpotsReading>,
}

/// What is asked of the spots: all that the answer changes with.
#[derive(PartialEq)]
pub(super) struct SpotsAsked {
    session: Uuid,
    rod: RodNumber,
    casts: Vec<Cast>,
    marks: Vec<Mark>,
    kept_back: Vec<KeptBack>,
    swim: SwimSetup,
    /// Where the cast is or goes.
    spot: Option<Spot>,
    /// The splash, or the minute in which it is asked while nothing is out.
    at_ms: i64,
}

impl SpotsAsked {
    /// Asks of the cast of a rod that is out, or of the one that goes out now.
    pub(super) fn new(session: &Session, rod: RodNumber, now: &Stamp) -> Self {
        let running = session.running(rod);
        let set = session.rod(rod).and_then(|rod| rod.spot.as_ref());
        Self {
            session: session.id,
            rod,
            casts: session.casts.clone(),
            marks: session.marks.clone(),
            kept_back: session.kept_back.clone(),
            swim: session.swim.clone(),
            spot: running.map_or(set, |cast| cast.spot.as_ref()).cloned(),
            at_ms: running.map_or(now.at_ms - now.at_ms.rem_euclid(60_000), |cast| cast.start.at_ms),
        }
    }

    /// How long to leave it and what then, by what the other spots are worth at the splash.
    pub(super) fn answer(
        &self,
        session: &Session,
        posterior: &WaitPosterior,
        now: &Stamp,
    ) -> Option<SpotsReading> {
        let spot = self.spot.as_ref().filter(|_| on_spots(session) > 1)?;
        let swim = swim_of(session).ok()?;
        let bearing_deg = f64::from(spot.bearing_cdeg) / 100.0;
        let cell = swim.cell_of(restwater_swim::Spot { bearing_deg, range_m: reach_m(spot.reach) })?;
        let spots = SpotsOfDay::new(session, &swim, posterior, now, false).filter(SpotsOfDay::tell)?;
        let next = swim.where_next_by_worth(&swim.figures(self.at_ms), Some(&spots.worth(self.at_ms)));
        let leave = spots.leave(cell, self.at_ms, &next)?;
        let move_to = leave.move_to.and_then(|to| spot_at(session, &swim, to, Some(spot)));
        Some(SpotsReading { leave, move_to })
    }
}

/// Where next as of a moment, with what the record tells of fish at the cells.
pub(super) fn where_next(
    session: &Session,
    swim: &Swim,
    figures: &SwimFigures,
    posterior: Option<&WaitPosterior>,
    at: &Stamp,
) -> WhereNext {
    let spots = posterior.and_then(|posterior| SpotsOfDay::new(session, swim, posterior, at, true));
    swim.where_next_by_worth(figures, spots.map(|spots| spots.worth(at.at_ms)).as_ref())
}

/// How many spots were cast to.
fn on_spots(session: &Session) -> usize {
    let mut spots: Vec<&Spot> = Vec::new();
    for spot in session.casts.iter().filter_map(|cast| cast.spot.as_ref()) {
        if !spots.contains(&spot) {
            spots.push(spot);
        }
    }
    spots.len()
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
