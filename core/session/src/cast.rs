//! One cast, from splash to whatever ended it.

use restwater_log::{FishWeight, Moment, Rig, RodNumber, Spot};
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
    pub at: Moment,
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
    pub start: Moment,
    /// What was on the line.
    pub rig: Rig,
    /// Where it went, where that was said.
    pub spot: Option<Spot>,
    /// The bite and the op that says so.
    pub bite: Option<(Moment, Uuid)>,
    /// Fish that swam into the line.
    pub liners: Vec<Moment>,
    /// The tip moved without a pull.
    pub indications: Vec<Moment>,
    /// The bait was moved.
    pub twitches: Vec<Moment>,
    /// What ended it; none while it is out.
    pub end: Option<CastEnd>,
    /// The op that says its hooklength was lost with it.
    pub hooklength_lost: Option<Uuid>,
}

impl Cast {
    /// Whether a fish is on: a bite, and nothing said of what came of it.
    pub fn fish_on(&self) -> bool {
        self.bite.is_some() && self.end.is_none()
    }

    /// When the wait ended: at the bite, or else at the end of the cast.
    pub fn wait_end(&self) -> Option<&Moment> {
        self.bite.as_ref().map(|(at, _)| at).or_else(|| self.end.as_ref().map(|end| &end.at))
    }

    /// Where the wait starts: at the splash, or at the last twitch before `until` where twitches start it anew.
    pub fn wait_start(&self, until: &Moment, twitch_restarts: bool) -> &Moment {
        let twitch = self.twitches.iter().rev().find(|t| until.since(t).ms >= 0);
        twitch.filter(|_| twitch_restarts).unwrap_or(&self.start)
    }
}
