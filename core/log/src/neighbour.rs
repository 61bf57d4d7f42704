//! Other anglers in the form of the log, identified by the position of their peg relative to the angler's
//! own.

use serde::{Deserialize, Serialize};

/// On which side of the angler's peg another peg is, looking over the water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Side {
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// On the far bank.
    Across,
}

/// Another angler's peg.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct OtherPeg {
    /// On which side.
    pub side: Side,
    /// Which peg on that side, counted from the angler's own: 1 is the next one.
    pub place: u8,
}
