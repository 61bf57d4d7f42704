//! What the session tells of fish at its spots: the casts of today, cell by cell, weighed with the law of the wait.

use super::model::Session;
use super::waits::{running_wait_min, stretches};
use super::water::{cast_at, swim_spot};
use super::{Cast, Stamp};
use restwater_swim::{CellId, CellWorth, SpotsWorth, Swim, WhereNext};
use restwater_waits::{
    Advice, AdviceState, SpotBeliefs, SpotCast, SpotEvent, SpotLeave, Then, Wait, WaitPosterior,
};

/// The fewest casts, spots fished and bites from which spots can be told apart: the project's own choice.
const ENOUGH: (usize, usize, usize) = (3, 2, 1);

/// What is believed of the spots of a session.
pub struct SpotsOfDay {
    beliefs: SpotBeliefs,
    /// The cells that were fished or disturbed, in the order of their first cast.
    cells: Vec<CellId>,
    /// By cell: casts in a row without a bite up to now, and their minutes.
    dry: Vec<(u32, f64)>,
}

/// How long to leave a cast, given where else one could cast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeaveBySpots {
    /// Minutes, or `None` if waiting on stays the best.
    pub leave_min: Option<u32>,
    /// Where then: another cell, or `None` for the same again.
    pub move_to: Option<CellId>,
    /// Casts in a row without a bite at its spot before it, and their minutes.
    pub dry: (u32, f64),
    /// Of a hundred such spots, how many hold fish once it has waited so long in vain.
    pub here_of_100: u32,
    /// The same of where to go then.
    pub there_of_100: u32,
}

/// The record of the spots while it is collected.
#[derive(Default)]
struct Collected {
    events: Vec<SpotEvent>,
    cells: Vec<CellId>,
    dry: Vec<(u32, f64)>,
    fished: Vec<usize>,
    casts: usize,
    bites: usize,
}

impl SpotsOfDay {
    /// What is believed at a moment, or `None` while the record is too short or knows one spot only. Baits that are still out
    /// count as having waited in vain so far where `running` says so.
    pub fn new(
        session: &Session,
        swim: &Swim,
        posterior: &WaitPosterior,
        now: &Stamp,
        running: bool,
    ) -> Option<Self> {
        let mut all = Collected::default();
        for cast in session.casts.iter().filter(|cast| cast.start.at_ms <= now.at_ms) {
            all.take(session, swim, cast, now, running);
        }
        let Collected { events, cells, dry, fished, casts, bites } = all;
        let (least_casts, least_spots, least_bites) = ENOUGH;
        if casts < least_casts || fished.len() < least_spots || bites < least_bites {
            return None;
        }
        let rest_min = swim.input().rest_target_min;
        Some(Self { beliefs: posterior.spots(cells.len(), &events, rest_min), cells, dry })
    }

    /// The figures that the choice of the next spot uses.
    pub fn worth(&self, at_ms: i64) -> SpotsWorth {
        let at_min = minutes(at_ms);
        let of = |(spot, (&cell, &(dry_casts, dry_min)))| {
            let worth = self.beliefs.worth(Some(spot), at_min);
            CellWorth { cell, here: worth.here, worth: worth.per_hour, dry_casts, dry_min }
        };
        let elsewhere = self.beliefs.worth(None, at_min);
        SpotsWorth {
            cells: self.cells.iter().zip(&self.dry).enumerate().map(of).collect(),
            elsewhere: elsewhere.here,
            elsewhere_worth: elsewhere.per_hour,
        }
    }

    /// How long to leave a cast in a cell that went out at a moment, or `None` while the record doesn't support that spots
    /// differ. `next` is where else one could go: what comes next there comes next here.
    pub fn leave(&self, cell: CellId, splash_ms: i64, next: &WhereNext) -> Option<LeaveBySpots> {
        if !self.tell() {
            return None;
        }
        let spot = self.place(cell);
        let first = || next.ranked.iter().map(|n| n.cell).find(|id| *id != cell);
        let other = next.go_in.map(|go_in| go_in.cell).or_else(first);
        let SpotLeave { leave_min, then, here, there } =
            self.beliefs.leave(spot, minutes(splash_ms), other.map(|id| self.place(id)).as_slice())?;
        let of_100 = |chance: f64| libm::round(100.0 * chance.clamp(0.0, 1.0)) as u32;
        Some(LeaveBySpots {
            leave_min: leave_min.map(|min| libm::round(min).max(1.0) as u32),
            move_to: other.filter(|_| then != Then::RecastHere),
            dry: spot.map_or((0, 0.0), |place| self.dry[place]),
            here_of_100: of_100(here),
            there_of_100: of_100(there),
        })
    }

    /// Whether the record supports that spots differ, so that it tells how long to leave a cast too.
    pub fn tell(&self) -> bool {
        self.beliefs.tell()
    }

    fn place(&self, cell: CellId) -> Option<usize> {
        self.cells.iter().position(|known| *known == cell)
    }
}

impl LeaveBySpots {
    /// The advice with its one figure as the spots have it.
    pub fn over(&self, advice: Advice) -> Advice {
        let Some(leave_min) = self.leave_min else { return advice };
        let leave = f64::from(leave_min);
        let state = match advice.state {
            AdviceState::CantTellYet => AdviceState::CantTellYet,
            _ => AdviceState::HoldUntilRecastBy,
        };
        Advice {
            state,
            leave_min,
            next_leave_min: leave,
            hold_until_min: advice.hold_until_min.map(|hold| hold.min(leave)),
            recast_by_min: Some(leave),
            best_min: advice.best_min.map(|best| best.min(leave)),
            ..advice
        }
    }
}

impl Collected {
    fn take(&mut self, session: &Session, swim: &Swim, cast: &Cast, now: &Stamp, running: bool) {
        let Some(at) = cast_at(cast) else { return };
        let own = cast.spot.as_ref().and_then(swim_spot).and_then(|spot| swim.cell_of(spot));
        // What a landing does to its own water is part of the law of the wait.
        for cell in swim.reached_by(&at).into_iter().filter(|cell| Some(*cell) != own) {
            let spot = self.place(cell);
            self.events.push(SpotEvent::Disturbed { spot, at_min: minutes(at.start_ms) });
        }
        let Some(own) = own else { return };
        let spot = self.place(own);
        let over = cast.wait_end().is_some_and(|end| end.at_ms <= now.at_ms);
        if over {
            for stretch in stretches(session, cast) {
                self.fished(spot, stretch.from.at_ms, stretch.wait);
            }
            self.casts += 1;
            self.bites += usize::from(cast.bite.is_some());
            let end_ms = at.end_ms.unwrap_or(now.at_ms).min(now.at_ms);
            self.events.push(SpotEvent::Disturbed { spot, at_min: minutes(end_ms) });
        } else if let Some(waited) = running_wait_min(session, cast, now).filter(|_| running)
            && let Ok(wait) = Wait::new(waited, false)
        {
            self.fished(spot, cast.start.at_ms, wait);
            self.events.push(SpotEvent::Disturbed { spot, at_min: minutes(now.at_ms) });
        }
    }

    fn fished(&mut self, spot: usize, from_ms: i64, wait: Wait) {
        self.events.push(SpotEvent::Fished(SpotCast { spot, at_min: minutes(from_ms), wait }));
        let dry = &mut self.dry[spot];
        *dry = if wait.is_bite() { (0, 0.0) } else { (dry.0 + 1, dry.1 + wait.minutes()) };
        if !self.fished.contains(&spot) {
            self.fished.push(spot);
        }
    }

    fn place(&mut self, cell: CellId) -> usize {
        self.cells.iter().position(|known| *known == cell).unwrap_or_else(|| {
            self.cells.push(cell);
            self.dry.push((0, 0.0));
            self.cells.len() - 1
        })
    }
}

fn minutes(ms: i64) -> f64 {
    ms as f64 / 60_000.0
}
