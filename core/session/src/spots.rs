//! What the session says about fish at its spots: today's casts, cell by cell, weighed with the law of the wait.

use super::model::Session;
use super::plan_day::{KeptPlan, kept_plan};
use super::swim_kept::{Reached, SwimKept};
use super::waits::{running_from_ms, running_wait_min, stretches};
use super::water::{cast_at, swim_spot};
use super::{Cast, Stamp};
use restwater_log::RodNumber;
use restwater_swim::{CellId, CellWorth, NextSpot, SpotsWorth, Swim, SwimFigures, WhereNext};
use restwater_waits::{
    Advice, AdviceState, SpotBeliefs, SpotCast, SpotEvent, SpotLeave, SpotWorth, SpotsKept, Then, Wait,
    WaitPosterior,
};

/// The fewest casts, spots fished and bites from which spots can be told apart: the project's own choice.
const ENOUGH: (usize, usize, usize) = (3, 2, 1);

/// Where next as of a moment, with what a cast at each cell is worth where the record tells.
pub fn where_next(
    session: &Session,
    swim: &Swim,
    figures: &SwimFigures,
    posterior: Option<&WaitPosterior>,
    at: &Stamp,
) -> WhereNext {
    let kept = (&mut Reached::default(), &mut SpotsKept::default());
    let spots = posterior.and_then(|posterior| SpotsOfDay::new(session, swim, kept, posterior, at, None));
    let next = swim.where_next_by_worth(figures, spots.map(|spots| spots.worth(at.at_ms)).as_ref());
    as_planned(session, swim, next, at)
}

/// Kept-back water is what the angler planned for it: not proposed before its time, and proposed when that has come.
fn as_planned(session: &Session, swim: &Swim, next: WhereNext, at: &Stamp) -> WhereNext {
    let go_in = match kept_plan(session, at) {
        KeptPlan::Unplanned => return next,
        KeptPlan::NotYet => None,
        KeptPlan::Now => swim.go_in_as_planned(&next).or(next.go_in),
    };
    WhereNext { go_in, ..next }
}

/// How long to leave the cast of a rod that goes out at a moment, or that went out then, given where else one could cast.
/// `None` while the record doesn't support that spots differ. What happened after that moment doesn't change the answer, except for
/// baits of other rods that are out: no rod is sent onto one, whenever it went out. `kept` saves work if this was asked before, and
/// changes no answer.
pub fn leave_by_spots(
    session: &Session,
    posterior: &WaitPosterior,
    rod: RodNumber,
    at: &Stamp,
    kept: &mut SwimKept,
) -> Option<LeaveBySpots> {
    let out = session.casts.iter().find(|cast| cast.rod == rod && cast.start.at_ms == at.at_ms);
    let set = || session.rod(rod).and_then(|rod| rod.spot.as_ref());
    let spot = out.map_or_else(set, |cast| cast.spot.as_ref())?;
    kept.bring_up_to(session).ok()?;
    let (swim, reached, casts) = kept.parts(rod)?;
    let cell = swim.cell_of(swim_spot(spot)?)?;
    let spots = SpotsOfDay::new(session, swim, (reached, casts), posterior, at, Some(rod))
        .filter(SpotsOfDay::tell)?;
    let next = swim.where_next_by_worth(&swim.figures(at.at_ms), Some(&spots.worth(at.at_ms)));
    let next = as_planned(session, swim, next, at);
    spots.leave(cell, at.at_ms, &next, &baits_of_others(session, swim, rod))
}

/// The cells in which other rods have a bait out: no rod is sent onto one.
pub fn baits_of_others(session: &Session, swim: &Swim, rod: RodNumber) -> Vec<CellId> {
    let others = session.casts.iter().filter(|cast| cast.rod != rod && cast.end.is_none());
    others.filter_map(|cast| swim.cell_of(swim_spot(cast.spot.as_ref()?)?)).collect()
}

/// What is believed about the spots of a session.
struct SpotsOfDay {
    beliefs: SpotBeliefs,
    /// The cells that were fished or disturbed, in the order of their first cast.
    cells: Vec<CellId>,
    /// By cell: casts in a row without a bite up to now, and their minutes.
    dry: Vec<(u32, f64)>,
}

/// How long to leave a cast, given where else one could cast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeaveBySpots {
    /// Minutes.
    pub leave_min: u32,
    /// Where to cast then: another cell, or `None` for the same one again.
    pub move_to: Option<CellId>,
    /// Casts in a row without a bite at its spot before it, and their minutes.
    pub dry: (u32, f64),
    /// Of a hundred such spots, how many have fish once it has waited that long without a bite.
    pub here_of_100: u32,
    /// The same for where to cast then.
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
    /// Events before this no longer change.
    settled_min: f64,
}

impl SpotsOfDay {
    /// What is believed at a moment, or `None` while the record is too short or knows one spot only. Baits that are out then have
    /// waited without a bite so far; the one of the rod that is asked about is left out.
    fn new(
        session: &Session,
        swim: &Swim,
        (reached, kept): (&mut Reached, &mut SpotsKept),
        posterior: &WaitPosterior,
        at: &Stamp,
        asked: Option<RodNumber>,
    ) -> Option<Self> {
        let mut all = Collected { settled_min: f64::INFINITY, ..Collected::default() };
        for cast in session.casts.iter().filter(|cast| cast.start.at_ms <= at.at_ms) {
            all.take(session, swim, reached, cast, at, asked);
        }
        let Collected { events, cells, dry, fished, casts, bites, settled_min } = all;
        let (least_casts, least_spots, least_bites) = ENOUGH;
        if casts < least_casts || fished.len() < least_spots || bites < least_bites {
            return None;
        }
        let rest_min = swim.input().rest_target_min;
        let beliefs = posterior.spots_kept(kept, cells.len(), &events, settled_min, rest_min);
        Some(Self { beliefs, cells, dry })
    }

    /// The figures that the choice of the next spot uses.
    fn worth(&self, at_ms: i64) -> SpotsWorth {
        let at_min = minutes(at_ms);
        let of = |(spot, (&cell, &(dry_casts, dry_min)))| {
            let SpotWorth { here, per_hour, rank } = self.beliefs.worth(Some(spot), at_min);
            CellWorth { cell, here, per_hour, rank, dry_casts, dry_min }
        };
        let elsewhere = self.beliefs.worth(None, at_min);
        SpotsWorth {
            cells: self.cells.iter().zip(&self.dry).enumerate().map(of).collect(),
            elsewhere: elsewhere.here,
            elsewhere_per_hour: elsewhere.per_hour,
            elsewhere_rank: elsewhere.rank,
        }
    }

    /// How long to leave a cast that goes out in a cell at a moment, or `None` if the spots don't say. `next` is where else one
    /// could cast then, and `baits` are where others have one out by now.
    fn leave(&self, cell: CellId, at_ms: i64, next: &WhereNext, baits: &[CellId]) -> Option<LeaveBySpots> {
        let spot = self.place(cell);
        // Nobody casts onto a bait that is out.
        let free = |n: &&NextSpot| n.cell != cell && !n.figures.out_now && !baits.contains(&n.cell);
        let first = || next.ranked.iter().find(free).map(|n| n.cell);
        let go_in = next.go_in.map(|go_in| go_in.cell).filter(|id| !baits.contains(id));
        let other = go_in.or_else(first);
        let SpotLeave { leave_min, then, here, there } =
            self.beliefs.leave(spot, minutes(at_ms), other.map(|id| self.place(id)).as_slice())?;
        let of_100 = |chance: f64| libm::round(100.0 * chance.clamp(0.0, 1.0)) as u32;
        Some(LeaveBySpots {
            // If no move beats waiting, only the waits say how long.
            leave_min: libm::round(leave_min?).max(1.0) as u32,
            move_to: other.filter(|_| then != Then::RecastHere),
            dry: spot.map_or((0, 0.0), |place| self.dry[place]),
            here_of_100: of_100(here),
            there_of_100: of_100(there),
        })
    }

    /// Whether the record supports that spots differ, so that it tells how long to leave a cast too.
    fn tell(&self) -> bool {
        self.beliefs.tell()
    }

    fn place(&self, cell: CellId) -> Option<usize> {
        self.cells.iter().position(|known| *known == cell)
    }
}

impl LeaveBySpots {
    /// The advice with its one figure as the spots have it.
    pub fn over(&self, advice: Advice) -> Advice {
        let leave = f64::from(self.leave_min);
        Advice {
            state: AdviceState::HoldUntilRecastBy,
            is_early: false,
            leave_min: self.leave_min,
            next_leave_min: leave,
            hold_until_min: advice.hold_until_min.map(|hold| hold.min(leave)),
            recast_by_min: Some(leave),
            best_min: advice.best_min.map(|best| best.min(leave)),
            // What the habit costs was computed from the posterior's own leave time.
            rate_at_habit: None,
            lost_at_habit: None,
            ..advice
        }
    }
}

impl Collected {
    fn take(
        &mut self,
        session: &Session,
        swim: &Swim,
        reached: &mut Reached,
        cast: &Cast,
        now: &Stamp,
        asked: Option<RodNumber>,
    ) {
        let Some(at) = cast_at(session, cast) else { return };
        let own = cast.spot.as_ref().and_then(swim_spot).and_then(|spot| swim.cell_of(spot));
        // What a landing does to its own water is part of the law of the wait.
        for cell in reached.by(swim, &at).iter().copied().filter(|cell| Some(*cell) != own) {
            let spot = self.place(cell);
            self.events.push(SpotEvent::Disturbed { spot, at_min: minutes(at.start_ms) });
        }
        let Some(own) = own else { return };
        let spot = self.place(own);
        if cast.wait_end().is_some_and(|end| end.at_ms <= now.at_ms) {
            let all: Vec<(i64, Wait)> = stretches(session, cast)
                .into_iter()
                .map(|stretch| (stretch.from.at_ms, stretch.wait))
                .collect();
            self.casts += usize::from(!all.is_empty());
            self.bites += usize::from(cast.bite.is_some());
            self.fished(spot, &all);
            let end_ms = at.end_ms.unwrap_or(now.at_ms).min(now.at_ms);
            if at.end_ms.is_none_or(|end_ms| end_ms > now.at_ms) {
                self.settled_min = self.settled_min.min(minutes(end_ms));
            }
            self.events.push(SpotEvent::Disturbed { spot, at_min: minutes(end_ms) });
        } else if asked != Some(cast.rod)
            && let Some(from_ms) = running_from_ms(session, cast, now)
            && let Some(wait) =
                running_wait_min(session, cast, now).and_then(|waited| Wait::new(waited, false).ok())
        {
            self.settled_min = self.settled_min.min(minutes(from_ms));
            self.fished(spot, &[(from_ms, wait)]);
            self.events.push(SpotEvent::Disturbed { spot, at_min: minutes(now.at_ms) });
        }
    }

    /// The stretches of one cast, each from where its wait counts; a cast whose end was not seen has none.
    fn fished(&mut self, spot: usize, stretches: &[(i64, Wait)]) {
        let Some((_, last)) = stretches.last() else { return };
        for &(from_ms, wait) in stretches {
            self.events.push(SpotEvent::Fished(SpotCast { spot, at_min: minutes(from_ms), wait }));
        }
        let out_min: f64 = stretches.iter().map(|(_, wait)| wait.minutes()).sum();
        let dry = &mut self.dry[spot];
        *dry = if last.is_bite() { (0, 0.0) } else { (dry.0 + 1, dry.1 + out_min) };
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
