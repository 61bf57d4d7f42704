//! Taps on the plan for a day.

use super::TackleTap;
use restwater_log::{MoveAt, Reach, RodNumber};
use serde::{Deserialize, Serialize};

/// A choice or a key of the plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum PlanTap {
    /// The day that is planned; it writes nothing.
    Day {
        /// Counted from 1 January 1970 in local time.
        day: i32,
    },
    /// A peg is removed.
    NoPeg {
        /// Which.
        peg: String,
    },
    /// One thing of the rig to put on a rod; the rest carries over.
    Rig {
        /// Which rod.
        rod: RodNumber,
        /// Which thing.
        change: TackleTap,
    },
    /// No rig is planned for a rod.
    NoRig {
        /// Which rod.
        rod: RodNumber,
    },
    /// How far out to start.
    Reach {
        /// In the unit it is counted in.
        reach: Reach,
    },
    /// In which direction to start.
    Bearing {
        /// Degrees clockwise from straight out, in hundredths.
        cdeg: i32,
    },
    /// At which mark to start.
    Mark {
        /// Its name.
        name: String,
    },
    /// Where to start is left open.
    NoStart,
    /// How long to leave the first casts.
    Leave {
        /// In minutes, or `None` if that is left open.
        minutes: Option<u16>,
    },
    /// When to move into kept-back water.
    Move {
        /// When, or `None` if that is left open.
        at: Option<MoveAt>,
    },
    /// Today's session follows this plan or none; before START this is about the next session.
    Today {
        /// Whether it follows the plan.
        takes: bool,
    },
}

impl PlanTap {
    pub(super) fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::NoPeg { peg } => vec![("peg", peg)],
            Self::Mark { name } => vec![("mark", name)],
            Self::Rig { change, .. } => change.texts(),
            _ => Vec::new(),
        }
    }
}
