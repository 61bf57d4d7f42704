//! What a plan does to a session before its first cast: the rigs and the spot that it puts on the rods, and how long it leaves a
//! cast while the record can't tell.

use super::model::Session;
use super::plan_day::{goes_to, holds_rig};
use restwater_log::{Payload, PlanLine, PlanSpot, Rig, RodNumber, Spot};
use restwater_match_day::rules::same_name;

/// A rod as it is before the plan: its rig and its spot.
pub struct RodBefore<'a> {
    /// Which rod.
    pub rod: RodNumber,
    /// Its rig.
    pub rig: &'a Rig,
    /// Its spot.
    pub spot: Option<&'a Spot>,
}

/// What the plan puts on the rods: the rig of each that has a line, and the spot of the first cast on the first rod. `bearing` tells
/// the bearing of a mark by its name; a spot at a mark that the peg doesn't have is not set.
pub fn entries_of_plan(
    lines: &[PlanLine],
    rods: &[RodBefore],
    bearing: impl Fn(&str) -> Option<i32>,
) -> Vec<Payload> {
    let entry = |line: &PlanLine| match line {
        PlanLine::Rig { rod, rig } => {
            let before = rods.iter().find(|before| before.rod == *rod)?;
            (!holds_rig(before.rig, rig))
                .then(|| Payload::RigSet { rod: *rod, rig: with_planned(before.rig, rig) })
        }
        PlanLine::Start { spot } => {
            let first = rods.first()?;
            let spot = spot_of_plan(spot, &bearing)?;
            // With its clip, if it is the spot of the last day.
            let has = |at: &Spot| (at.bearing_cdeg, at.reach) == (spot.bearing_cdeg, spot.reach);
            (!first.spot.is_some_and(has)).then_some(Payload::SpotSet { rod: first.rod, spot })
        }
        _ => None,
    };
    lines.iter().filter_map(entry).collect()
}

/// Where the first cast is to go by the plan, until there is one. `None` without a planned range.
pub fn planned_spot(session: &Session) -> Option<Spot> {
    let lines = &session.plan.as_ref().filter(|_| session.is_open() && session.casts.is_empty())?.lines;
    let planned = lines.iter().find_map(|line| match line {
        PlanLine::Start { spot } => Some(spot),
        _ => None,
    })?;
    let bearing = |name: &str| mark_bearing(session, name);
    let spot = spot_of_plan(planned, &bearing)?;
    // The rod may have it already, with its clip.
    let set = session.rods.iter().filter_map(|rod| rod.spot.as_ref());
    Some(set.into_iter().find(|set| goes_to(session, set, planned)).cloned().unwrap_or(spot))
}

/// The bearing of the mark of a session that has a name.
pub fn mark_bearing(session: &Session, name: &str) -> Option<i32> {
    session.marks.iter().find(|mark| same_name(&mark.name, name)).map(|mark| mark.bearing_cdeg)
}

/// How long the plan leaves the first casts, in minutes.
pub fn planned_leave(session: &Session) -> Option<u16> {
    let lines = &session.plan.as_ref().filter(|_| session.is_open())?.lines;
    lines.iter().find_map(|line| match line {
        PlanLine::Leave { minutes } => Some(*minutes),
        _ => None,
    })
}

/// A direction that isn't planned is straight out.
fn spot_of_plan(planned: &PlanSpot, bearing: &impl Fn(&str) -> Option<i32>) -> Option<Spot> {
    let at_mark = match planned.mark.as_deref() {
        Some(name) => Some(bearing(name)?),
        None => planned.bearing_cdeg,
    };
    Some(Spot { mark: None, bearing_cdeg: at_mark.unwrap_or(0), reach: planned.reach?, clipped: false })
}

/// A rig with everything that was planned for it.
fn with_planned(now: &Rig, planned: &Rig) -> Rig {
    fn either<T: Clone>(planned: Option<&T>, now: Option<&T>) -> Option<T> {
        planned.or(now).cloned()
    }
    Rig {
        bait: either(planned.bait.as_ref(), now.bait.as_ref()),
        colour: either(planned.colour.as_ref(), now.colour.as_ref()),
        hooklength_mm: planned.hooklength_mm.or(now.hooklength_mm),
        hook_size: planned.hook_size.or(now.hook_size),
        popup_mm: planned.popup_mm.or(now.popup_mm),
        lead_mg: planned.lead_mg.or(now.lead_mg),
        material: either(planned.material.as_ref(), now.material.as_ref()),
    }
}
