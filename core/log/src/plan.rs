//! The plan for a day in the form of the log: one line for each thing that was decided beforehand. A line is
//! replaced as a whole, so if two phones write one plan, the later entry counts, line by line.

use super::setup::RodNumber;
use super::tackle::{Reach, Rig};
use serde::{Deserialize, Serialize};

/// Where the first cast is to go: an aiming mark or a direction, and how far. Each is optional.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct PlanSpot {
    /// Name of the aiming mark. It is not an op id, because the peg isn't drawn yet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mark: Option<String>,
    /// Degrees clockwise from straight out, in hundredths.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bearing_cdeg: Option<i32>,
    /// How far out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reach: Option<Reach>,
}

/// When to move into kept-back water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "by", rename_all = "snake_case")]
pub enum MoveAt {
    /// This long after all-in, or without a match after the start of the session.
    AllIn {
        /// Minutes.
        minutes: u16,
    },
    /// At a time of day.
    Clock {
        /// Minutes since midnight.
        minute: u16,
    },
}

/// One line of a plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "line", rename_all = "snake_case")]
pub enum PlanLine {
    /// A peg hoped for, and what to do there.
    Peg {
        /// Its name or number.
        peg: String,
        /// What to do there; may be empty.
        note: String,
    },
    /// The rig to put on a rod.
    Rig {
        /// Which rod.
        rod: RodNumber,
        /// The whole rig.
        rig: Rig,
    },
    /// Where to start.
    Start {
        /// Where.
        spot: PlanSpot,
    },
    /// How long to leave the first casts.
    Leave {
        /// Minutes.
        minutes: u16,
    },
    /// When to move into kept-back water.
    Move {
        /// When.
        at: MoveAt,
    },
}

/// Which line of a plan.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "line", rename_all = "snake_case")]
pub enum PlanKey {
    /// The line of a peg.
    Peg {
        /// Its name or number.
        peg: String,
    },
    /// The line of a rod's rig.
    Rig {
        /// Which rod.
        rod: RodNumber,
    },
    /// Where to start.
    Start,
    /// How long to leave the first casts.
    Leave,
    /// When to move into kept-back water.
    Move,
}

impl PlanLine {
    /// Which line it is.
    pub fn key(&self) -> PlanKey {
        match self {
            Self::Peg { peg, .. } => PlanKey::Peg { peg: peg.clone() },
            Self::Rig { rod, .. } => PlanKey::Rig { rod: *rod },
            Self::Start { .. } => PlanKey::Start,
            Self::Leave { .. } => PlanKey::Leave,
            Self::Move { .. } => PlanKey::Move,
        }
    }
}
