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
    /// There was a bite; what came of it was not logged.
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
    /// The op that says so.
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
    /// Where it went, where that was said.
    pub spot: Option<Spot>,
    /// What the feeder put in where it landed, in mg; none of a plain lead.
    pub fill_mg: Option<u32>,
    /// The bite and the op that says so.
    pub bite: Option<(Stamp, Uuid)>,
    /// Fish that swam into the line.
    pub liners: Vec<Stamp>,
    /// The tip moved without a pull.
    pub indications: Vec<Stamp>,
    /// The bait was moved.
    pub twitches: Vec<Stamp>,
    /// What ended it; none while it is out.
    pub end: Option<CastEnd>,
    /// The latest that its wait can be said to have ended: the landing that followed the bite, or what was logged next
    /// on its rod, or `None` if nothing was yet.
    pub latest: Option<Stamp>,
    /// The op that says its hooklength was lost with it.
    pub hooklength_lost: Option<Uuid>,
}

impl Cast {
    /// Whether a fish is on: a bite, and nothing said of what came of it.
    pub fn fish_on(&self) -> bool {
        self.bite.is_some() && self.end.is_none()
    }

    /// When the wait ended: at the bite, or else at the end of the cast.
    pub fn wait_end(&self) -> Option<&Stamp> {
        self.bite.as_ref().map(|(at, _)| at).or_else(|| self.end.as_ref().map(|end| &end.at))
    }

    /// Whether the next cast closed it, with nothing logged of its end. Such an end says nothing of the bite.
    pub fn end_not_seen(&self) -> bool {
        self.bite.is_none() && self.end.as_ref().is_some_and(|end| end.cause == EndCause::EndNotSeen)
    }

    /// The twitches while it waited, up to a stamp, in the order of time.
    pub(super) fn twitches_until(&self, until: &Stamp) -> Vec<&Stamp> {
        let mut twitches: Vec<&Stamp> = self
            .twitches
            .iter()
            .filter(|twitch| twitch.ms_since(&self.start) >= 0 && until.ms_since(twitch) >= 0)
            .collect();
        twitches.sort_by_key(|twitch| twitch.at_ms);
        twitches
    }
}
