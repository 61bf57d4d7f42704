//! What the record tells of fish at the spots: where next, and how long to leave a cast by where else one could go.

use super::advisor::Advisor;
use restwater_log::{RodNumber, Spot, SwimSetup};
use restwater_screen::{SpotsReading, first_spot};
use restwater_session::{Cast, KeptBack, Mark, Session, SpotsOfDay, Stamp, reach_m, reach_near, swim_of};
use restwater_swim::{CellId, ColumnName, Swim, SwimFigures, WhereNext};
use uuid::Uuid;

/// What the spots said, with what it rests on: a running clock asks every second.
pub(super) struct SpotsAnswer {
    of: Of,
    says: Option<SpotsReading>,
}

/// What the answer changes with.
#[derive(PartialEq)]
struct Of {
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

impl Advisor {
    /// Where next as of a moment, with what the record tells of fish at the cells.
    pub(super) fn where_next(
        &mut self,
        session: &Session,
        swim: &Swim,
        figures: &SwimFigures,
        at: &Stamp,
    ) -> WhereNext {
        let told = self
            .waits(session)
            .and_then(|posterior| SpotsOfDay::new(session, swim, posterior, at, true))
            .map(|spots| spots.told(at.at_ms));
        swim.where_next_told(figures, told.as_ref())
    }

    /// What the spots say of the cast of a rod that is out, or of the one that goes out now.
    pub(super) fn spots_of(
        &mut self,
        session: &Session,
        rod: RodNumber,
        now: &Stamp,
    ) -> Option<SpotsReading> {
        let running = session.running(rod);
        let set = session.rod(rod).and_then(|rod| rod.spot.as_ref());
        let spot = running.map_or(set, |cast| cast.spot.as_ref());
        let at_ms = running.map_or(now.at_ms - now.at_ms.rem_euclid(60_000), |cast| cast.start.at_ms);
        let of = Of {
            session: session.id,
            rod,
            casts: session.casts.clone(),
            marks: session.marks.clone(),
            kept_back: session.kept_back.clone(),
            swim: session.swim.clone(),
            spot: spot.cloned(),
            at_ms,
        };
        if let Some(answer) = self.spots.as_ref().filter(|answer| answer.of == of) {
            return answer.says.clone();
        }
        let says = self.leave_told(session, spot, at_ms, now);
        self.spots = Some(SpotsAnswer { of, says: says.clone() });
        says
    }

    fn leave_told(
        &mut self,
        session: &Session,
        spot: Option<&Spot>,
        at_ms: i64,
        now: &Stamp,
    ) -> Option<SpotsReading> {
        let spot = spot.filter(|_| on_spots(session) > 1)?;
        let swim = swim_of(session).ok()?;
        let bearing_deg = f64::from(spot.bearing_cdeg) / 100.0;
        let cell = swim.cell_of(restwater_swim::Spot { bearing_deg, range_m: reach_m(spot.reach) })?;
        let spots = SpotsOfDay::new(session, &swim, self.waits(session)?, now, false)?;
        if !spots.tell() {
            return None;
        }
        let next = swim.where_next_told(&swim.figures(now.at_ms), Some(&spots.told(now.at_ms)));
        let leave = spots.leave(cell, at_ms, &next)?;
        let move_to = leave.move_to.and_then(|to| spot_at(session, &swim, to, Some(spot)));
        Some(SpotsReading { leave, move_to })
    }
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
