//! The plan on its day: which lines are due, and the result of each. Both depend only on the session, and all
//! times are measured on its time line, so setting the clock neither shows a line early nor hides it.

use super::model::{RodState, Session};
use super::section::is_after_all_out;
use super::waits::{end_unknown, wait_end_ms};
use super::water::{degrees, kept_back, reach_m};
use super::{Cast, Stamp};
use restwater_log::{MoveAt, PlanLine, PlanSpot, Rig, RodNumber, Spot, local_ms};
use restwater_match_day::clock::{DAY_MS, HOUR_MS, MINUTE_MS};
use restwater_match_day::rules::same_name;

/// How many casts count as the first ones of a day: the project's own choice, no source.
const FIRST_CASTS: usize = 3;
/// How long the line that says to move is shown: after that it has been read or was decided against. The
/// project's own choice, no source.
const MOVE_SHOWN_MS: i64 = 30 * MINUTE_MS;
/// A time of day further back than this at the start of a session belongs to the next day, as in a night
/// session: the project's own choice, no source.
const NEXT_DAY_MS: i64 = 6 * HOUR_MS;

/// A line that is due.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PlanDue<'a> {
    /// What to do at the peg that was drawn.
    Peg {
        /// Its name or number.
        peg: &'a str,
        /// What to do.
        note: &'a str,
    },
    /// The rig to put on a rod.
    Rig {
        /// Which rod.
        rod: RodNumber,
        /// The rig.
        rig: &'a Rig,
    },
    /// Where to start.
    Start {
        /// Where.
        spot: &'a PlanSpot,
    },
    /// How long to leave a first cast.
    Leave {
        /// Minutes.
        minutes: u16,
    },
    /// To move into kept-back water.
    Move {
        /// When, in ms on the time line.
        at_ms: i64,
    },
}

/// A line of the plan and its result.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PlanOutcome<'a> {
    /// The pegs hoped for, and the one drawn.
    Pegs {
        /// The pegs in the plan.
        liked: Vec<&'a str>,
        /// The peg of the session, if entered.
        drawn: Option<&'a str>,
        /// Whether it is one of them.
        got: bool,
    },
    /// The rig of a rod.
    Rig {
        /// Which rod.
        rod: RodNumber,
        /// As planned.
        rig: &'a Rig,
        /// The rig of its first cast, if there was one.
        first: Option<&'a Rig>,
        /// Whether it had everything that was planned.
        kept: bool,
    },
    /// Where the first cast went.
    Start {
        /// As planned.
        spot: &'a PlanSpot,
        /// The first cast, if there was one.
        first: Option<&'a Cast>,
        /// Whether it went there.
        kept: bool,
    },
    /// How long the first casts were left.
    Leave {
        /// Minutes as planned.
        minutes: u16,
        /// Whole minutes to the bite or the end, for the casts whose end is known.
        left_min: Vec<i64>,
    },
    /// The move into kept-back water.
    Move {
        /// When, in ms on the time line.
        at_ms: i64,
        /// The phone's offset from UTC, in minutes, by which that is a time of day.
        offset_min: i16,
        /// The first cast into water that was kept back.
        first: Option<&'a Stamp>,
    },
}

/// What the plan says of kept-back water at a moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum KeptPlan {
    /// Nothing, or what it said was done or its time is over.
    Unplanned,
    /// It is kept back until later.
    NotYet,
    /// It is time to fish it.
    Now,
}

/// The same for the sentence on the Bank and for where the Swim sends the next cast.
pub(crate) fn kept_plan(session: &Session, now: &Stamp) -> KeptPlan {
    let lines = session.plan.as_ref().map_or(&[][..], |plan| &plan.lines);
    let at = lines.iter().find_map(|line| match line {
        PlanLine::Move { at } => move_ms(session, *at, now),
        _ => None,
    });
    match at {
        Some(at_ms) if now.at_ms < at_ms => KeptPlan::NotYet,
        Some(at_ms) if is_time_to_move(session, at_ms, now) => KeptPlan::Now,
        _ => KeptPlan::Unplanned,
    }
}

/// Whether the time to move has come, is not long past, and no cast went into kept-back water yet.
fn is_time_to_move(session: &Session, at_ms: i64, now: &Stamp) -> bool {
    let moved = |cast: &Cast| cast.start.at_ms <= now.at_ms && into_kept_back(session, cast);
    (at_ms..at_ms.saturating_add(MOVE_SHOWN_MS)).contains(&now.at_ms) && !session.casts.iter().any(moved)
}

/// The lines that are due at `now`; empty while a fish is on, and after all-out.
pub fn plan_due<'a>(session: &'a Session, now: &Stamp) -> Vec<PlanDue<'a>> {
    let Some(plan) = session.plan.as_ref().filter(|_| session.is_open()) else { return Vec::new() };
    if is_after_all_out(session, now) {
        return Vec::new();
    }
    if session.rods.iter().any(|rod| matches!(rod.state, RodState::FishOn { .. })) {
        return Vec::new();
    }
    let casts: Vec<&Cast> =
        in_time(session).into_iter().filter(|cast| cast.start.at_ms <= now.at_ms).collect();
    let due = |line: &'a PlanLine| match line {
        PlanLine::Peg { peg, note } => {
            let drawn = session.setup.peg.as_deref().is_some_and(|drawn| same_name(drawn, peg));
            (casts.is_empty() && drawn && !note.is_empty()).then_some(PlanDue::Peg { peg, note })
        }
        PlanLine::Rig { rod, rig } => {
            let state = session.rod(*rod)?;
            (casts.is_empty() && !holds_rig(&state.rig, rig)).then_some(PlanDue::Rig { rod: *rod, rig })
        }
        PlanLine::Start { spot } => {
            let set = session.rods.iter().filter_map(|rod| rod.spot.as_ref());
            let is_set = set.into_iter().any(|set| goes_to(session, set, spot));
            (casts.is_empty() && !is_set).then_some(PlanDue::Start { spot })
        }
        PlanLine::Leave { minutes } => {
            let out = casts.iter().take(FIRST_CASTS).any(|cast| cast.end.is_none());
            out.then_some(PlanDue::Leave { minutes: *minutes })
        }
        PlanLine::Move { at } => {
            let at_ms = move_ms(session, *at, now)?;
            is_time_to_move(session, at_ms, now).then_some(PlanDue::Move { at_ms })
        }
    };
    plan.lines.iter().filter_map(due).collect()
}

/// The plan of a session compared with what happened, line by line.
pub fn plan_outcomes(session: &Session) -> Vec<PlanOutcome<'_>> {
    let Some(plan) = &session.plan else { return Vec::new() };
    let casts = in_time(session);
    let liked: Vec<&str> = plan.lines.iter().filter_map(peg_of).collect();
    let drawn = session.setup.peg.as_deref();
    let got = drawn.is_some_and(|drawn| liked.iter().any(|peg| same_name(drawn, peg)));
    let pegs = (!liked.is_empty()).then_some(PlanOutcome::Pegs { liked, drawn, got });
    let outcome = |line| match line {
        &PlanLine::Peg { .. } => None,
        PlanLine::Rig { rod, rig } => {
            let first = casts.iter().find(|cast| cast.rod == *rod).map(|cast| &cast.rig);
            let kept = first.is_some_and(|first| holds_rig(first, rig));
            Some(PlanOutcome::Rig { rod: *rod, rig, first, kept })
        }
        PlanLine::Start { spot } => {
            let first = casts.first().copied();
            let kept = first.and_then(|cast| cast.spot.as_ref()).is_some_and(|at| goes_to(session, at, spot));
            Some(PlanOutcome::Start { spot, first, kept })
        }
        PlanLine::Leave { minutes } => {
            let ended = casts.iter().take(FIRST_CASTS).filter(|cast| !end_unknown(session, cast));
            let left_min = ended.filter_map(|cast| {
                Some(wait_end_ms(session, cast)?.saturating_sub(cast.start.at_ms).max(0) / MINUTE_MS)
            });
            Some(PlanOutcome::Leave { minutes: *minutes, left_min: left_min.collect() })
        }
        PlanLine::Move { at } => {
            let first = casts.iter().find(|cast| into_kept_back(session, cast)).map(|cast| &cast.start);
            // The clocks may have been changed meanwhile, so it is a time as of the move, or without a move as of the end.
            let then = first.or(session.ended.as_ref()).or(session.started.as_ref())?;
            let offset_min = then.shown.offset_min;
            Some(PlanOutcome::Move { at_ms: move_ms(session, *at, then)?, offset_min, first })
        }
    };
    pegs.into_iter().chain(plan.lines.iter().filter_map(outcome)).collect()
}

fn peg_of(line: &PlanLine) -> Option<&str> {
    match line {
        PlanLine::Peg { peg, .. } => Some(peg),
        _ => None,
    }
}

/// The casts in chronological order. A forgotten cast that was added later may not be in that order.
fn in_time(session: &Session) -> Vec<&Cast> {
    let mut casts: Vec<&Cast> = session.casts.iter().collect();
    casts.sort_by_key(|cast| cast.start.at_ms);
    casts
}

/// Whether a rig has everything that was planned for it.
pub(crate) fn holds_rig(rig: &Rig, planned: &Rig) -> bool {
    fn holds<T: PartialEq>(now: Option<&T>, planned: Option<&T>) -> bool {
        planned.is_none() || now == planned
    }
    fn is_named(now: Option<&String>, planned: Option<&String>) -> bool {
        planned.is_none_or(|planned| now.is_some_and(|now| same_name(now, planned)))
    }
    is_named(rig.bait.as_ref(), planned.bait.as_ref())
        && is_named(rig.colour.as_ref(), planned.colour.as_ref())
        && holds(rig.hooklength_mm.as_ref(), planned.hooklength_mm.as_ref())
        && holds(rig.hook_size.as_ref(), planned.hook_size.as_ref())
        && holds(rig.popup_mm.as_ref(), planned.popup_mm.as_ref())
        && holds(rig.lead_mg.as_ref(), planned.lead_mg.as_ref())
        && holds(rig.material.as_ref(), planned.material.as_ref())
}

/// Whether a spot is the planned one, as far as the plan defines it.
pub(crate) fn goes_to(session: &Session, spot: &Spot, planned: &PlanSpot) -> bool {
    let aims_at = |name: &str| {
        let at = |mark: &&super::Mark| {
            spot.mark.map_or(mark.bearing_cdeg == spot.bearing_cdeg, |id| mark.id == id)
        };
        session.marks.iter().find(at).is_some_and(|mark| same_name(&mark.name, name))
    };
    planned.mark.as_deref().is_none_or(aims_at)
        && planned.bearing_cdeg.is_none_or(|cdeg| cdeg == spot.bearing_cdeg)
        && planned.reach.is_none_or(|reach| (reach_m(reach) - reach_m(spot.reach)).abs() < 0.01)
}

/// Whether a cast went into water that had been kept back before it, whether or not it was released since.
fn into_kept_back(session: &Session, cast: &Cast) -> bool {
    let Some(spot) = &cast.spot else { return false };
    let kept = session.kept_back.iter().filter(|kept| kept.since.at_ms <= cast.start.at_ms);
    kept.filter_map(kept_back).any(|kept| kept.holds(degrees(spot.bearing_cdeg), reach_m(spot.reach)))
}

/// When to move, in ms on the time line. A time of day is placed on the line by the match's clock, or without
/// a match by what the phone showed at the session's start. Where the plan is for a later day, it is a time of that
/// day. The phone's offset from UTC is that of `now`, which over a change of the clocks is not that of the start.
fn move_ms(session: &Session, at: MoveAt, now: &Stamp) -> Option<i64> {
    let start = session.started.as_ref()?;
    let day = session.match_day.as_ref();
    // What the clock of the match shows at the start of the session.
    let start_ms =
        day.map_or(start.shown.wall_ms, |day| day.shown_ms(day.phone_ms(start) + day.setup.offset_ms));
    Some(match at {
        MoveAt::AllIn { minutes } => {
            let all_in = day.map_or(start.at_ms, |day| day.on_line_ms(Some(now)).0);
            all_in.saturating_add(i64::from(minutes) * MINUTE_MS)
        }
        MoveAt::Clock { minute } => {
            let local = local_ms(start_ms, start.shown.offset_min);
            let (day, time_of_day) = (local.div_euclid(DAY_MS), local.rem_euclid(DAY_MS));
            let later = session.plan.as_ref().map_or(0, |plan| i64::from(plan.day).saturating_sub(day));
            let ahead = i64::from(minute) * MINUTE_MS - time_of_day;
            let ahead = match later {
                1.. => ahead.saturating_add(later.saturating_mul(DAY_MS)),
                _ if ahead < -NEXT_DAY_MS => ahead + DAY_MS,
                _ => ahead,
            };
            let clocks_min = i64::from(start.shown.offset_min) - i64::from(now.shown.offset_min);
            start.at_ms.saturating_add(ahead).saturating_add(clocks_min * MINUTE_MS)
        }
    })
}

#[cfg(test)]
mod tests;
