//! Taps about fish that show themselves.

use restwater_log::{FishSign, Side};
use serde::{Deserialize, Serialize};

/// What was seen of fish, and where.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum SeenTap {
    /// Fish showed.
    Sign {
        /// How.
        sign: FishSign,
    },
    /// A neighbour landed one: the key of the Bank, which stays open.
    Neighbour {
        /// On which side.
        side: Side,
    },
    /// A neighbour landed one: the key of the screen of what was seen, which closes.
    NeighbourHere {
        /// On which side.
        side: Side,
    },
    /// Where they show.
    AtAim {
        /// At the cell that is aimed at on the Swim screen, otherwise at the spot of the chosen rod.
        aim: bool,
    },
}

impl SeenTap {
    /// Whether nothing more is entered on its screen, so that the Bank opens.
    pub fn closes(&self) -> bool {
        matches!(self, Self::Sign { .. } | Self::NeighbourHere { .. })
    }
}
