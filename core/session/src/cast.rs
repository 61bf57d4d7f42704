//! One cast, from splash to whatever ended it.

use super::Stamp;
use restwater_log::{FishWeight, Rig, RodNumber, Spot};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// What ended a cast.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "cause", rename_all = "snake_case")]
pub enum EndCause {
    /// A fish in the net.
    Landed {
        /// What it weighs, where known.
        fish: Option<FishWeight>,
    },
    /// A hooked fish came off.
    Lost,
    /// The bite was missed.
    Missed,
    /// There was a bite whose outcome was not logged.
    OutcomeNotSeen,
    /// Wound in by choice.
    WoundIn,
    /// The next cast closed it: the end was not seen.
    EndNotSeen,
    /// The session ended with the bait out.
    SessionEnded,
}

/// The end of a cast.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CastEnd {
    /// What ended it.
    pub cause: EndCause,
    /// When.
    pub at: Stamp,
    /// The op that logged it.
    pub op: Uuid,
}

/// One cast.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cast {
    /// The op that began it.
    pub op: Uuid,
    /// Which rod.
    pub rod: RodNumber,
    /// The splash.
    pub start: Stamp,
    /// What was on the line.
    pub rig: Rig,
    /// Where it went, if that was entered.
    pub spot: Option<Spot>,
    /// Feed that the feeder put in where it landed, in mg; `None` for a plain lead.
    pub fill_mg: Option<u32>,
    /// The bite and the op that logged it.
    pub bite: Option<(Stamp, Uuid)>,
    /// Fish that swam into the line.
    pub liners: Vec<Stamp>,
    /// The tip moved without a pull.
    pub indications: Vec<Stamp>,
    /// The bait was moved.
    pub twitches: Vec<Stamp>,
    /// What ended it; `None` while it is out.
    pub end: Option<CastEnd>,
    /// The latest time that may be entered for the end of its wait: the outcome of its bite, or else the next
    /// cast of its rod or the end of the session; `None` if there is none of these yet.
    pub latest: Option<Stamp>,
    /// The op that logged the loss of its hooklength.
    pub hooklength_lost: Option<Uuid>,
}

impl Cast {
    /// Whether a fish is on: there was a bite and its outcome has not been logged.
    pub fn fish_on(&self) -> bool {
        self.bite.is_some() && self.end.is_none()
    }

    /// When the wait ended: at the bite, otherwise at the end of the cast.
    pub fn wait_end(&self) -> Option<&Stamp> {
        self.bite.as_ref().map(|(at, _)| at).or_else(|| self.end.as_ref().map(|end| &end.at))
    }

    /// Whether its end was not logged, so that the next cast closed it. Such an end doesn't show whether
    /// there was a bite.
    pub fn end_not_seen(&self) -> bool {
        self.bite.is_none() && self.end.as_ref().is_some_and(|end| end.cause == EndCause::EndNotSeen)
    }

    /// The last thing logged of it while it was out without a bite.
    pub fn last_logged(&self) -> &Stamp {
        let logged = [&self.liners, &self.indications, &self.twitches].into_iter().flatten();
        logged.fold(&self.start, |last, at| if at.at_ms > last.at_ms { at } else { last })
    }

    /// The twitches during its wait up to a place on the time line, in chronological order.
    pub(super) fn twitches_until(&self, until_ms: i64) -> Vec<&Stamp> {
        let mut twitches: Vec<&Stamp> = self
            .twitches
            .iter()
            .filter(|twitch| twitch.ms_since(&self.start) >= 0 && twitch.at_ms <= until_ms)
            .collect();
        twitches.sort_by_key(|twitch| twitch.at_ms);
        twitches
    }
}
