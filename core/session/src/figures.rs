//! The figures of a session for the tables and the report.

use crate::own_count::catch_by_net;
use crate::own_count::entered;
use crate::{Cast, CaughtFish, EndCause, Session, catch, wait_of};
use restwater_log::{FeedKind, FishSign, FishWeight, Side, WeightUnit};
use restwater_sky::conditions::Conditions;
use std::collections::HashMap;
use uuid::Uuid;

/// How feed went in, as tables and maps spell it.
pub fn feed_kind_name(kind: FeedKind) -> &'static str {
    match kind {
        FeedKind::Loose => "loose",
        FeedKind::Ball => "ball",
        FeedKind::Bag => "bag",
        FeedKind::Feeder => "feeder",
        FeedKind::Spod => "spod",
    }
}

/// How fish showed, as maps spell it.
pub fn fish_sign_name(sign: FishSign) -> &'static str {
    match sign {
        FishSign::Rolled => "rolled",
        FishSign::Bubbles => "bubbles",
        FishSign::Topping => "topping",
    }
}

/// On which side a neighbour's peg is, as tables and maps spell it.
pub fn side_name(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
        Side::Across => "across",
    }
}

/// Counts over a session.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Counts {
    /// Casts made.
    pub casts: usize,
    /// Bites, with or without a landed fish.
    pub bites: usize,
    /// Fish landed.
    pub landed: usize,
    /// Fish hooked and lost.
    pub lost: usize,
    /// Bites missed.
    pub missed: usize,
    /// Fish that swam into the line.
    pub liners: usize,
    /// Weight of the fish whose weight is known, by scales or by eye, in grams.
    pub grams: f64,
    /// How many of these weights are by eye.
    pub by_eye: usize,
    /// Landed fish without a weight.
    pub unweighed: usize,
    /// Landed fish that went back into the water.
    pub put_back: usize,
    /// Hooklengths lost with their casts.
    pub hooklengths_lost: usize,
}

impl Counts {
    /// Counts a session.
    pub fn of(session: &Session) -> Self {
        let mut counts = Self { casts: session.casts.len(), ..Self::default() };
        for cast in &session.casts {
            counts.bites += usize::from(cast.bite.is_some());
            counts.liners += cast.liners.len();
            match cast.end.as_ref().map(|end| &end.cause) {
                Some(EndCause::Landed { fish }) => {
                    counts.landed += 1;
                    counts.by_eye += usize::from(matches!(fish, Some(FishWeight::Guessed { .. })));
                    match weight_parts(fish.as_ref()).1 {
                        Some((unit, count)) => counts.grams += grams(unit, count),
                        None => counts.unweighed += 1,
                    }
                }
                Some(EndCause::Lost) => counts.lost += 1,
                Some(EndCause::Missed) => counts.missed += 1,
                _ => {}
            }
        }
        counts.put_back = catch(session).iter().filter(|fish| fish.put_back).count();
        counts.hooklengths_lost = session.losses.len();
        counts
    }
}

/// How a weight is known, and what was entered.
pub fn weight_parts(fish: Option<&FishWeight>) -> (&'static str, Option<(WeightUnit, u32)>) {
    match fish {
        None => ("", None),
        Some(FishWeight::Weighed { unit, count }) => ("scales", Some((*unit, *count))),
        Some(FishWeight::Guessed { unit, count }) => ("eye", Some((*unit, *count))),
        Some(FishWeight::Class { .. }) => ("class", None),
    }
}

/// A weight in grams.
pub fn grams(unit: WeightUnit, count: u32) -> f64 {
    entered(unit, count).grams()
}

/// The landed fish by the op of their cast, each with the net that it is in.
pub fn fish_by_cast(session: &Session) -> HashMap<Uuid, CaughtFish> {
    catch_by_net(session).into_iter().map(|fish| (fish.cast, fish)).collect()
}

/// The latest conditions logged before the splash of a cast.
pub fn conditions_at(session: &Session, cast: &Cast) -> Conditions {
    let by_then = session.conditions.iter().rev().find(|known| cast.start.ms_since(&known.at) >= 0);
    by_then.map_or_else(Conditions::default, |known| known.conditions)
}

/// Minutes of the wait that ended with the cast, by a bite or otherwise. `None` while the cast is out or if
/// its end was not seen.
pub fn wait_minutes(session: &Session, cast: &Cast) -> Option<f64> {
    wait_of(session, cast).map(restwater_waits::Wait::minutes)
}

/// What ended a cast, as the tables name it.
pub fn end_name(cause: &EndCause) -> &'static str {
    match cause {
        EndCause::Landed { .. } => "landed",
        EndCause::Lost => "lost",
        EndCause::Missed => "missed",
        EndCause::OutcomeNotSeen => "outcome not seen",
        EndCause::WoundIn => "wound in",
        EndCause::EndNotSeen => "end not seen",
        EndCause::SessionEnded => "session ended",
    }
}
