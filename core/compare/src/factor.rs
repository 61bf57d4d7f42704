//! The factors that can be changed between two casts.

use serde::{Deserialize, Serialize};

/// What can be changed between two casts of a rod.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Factor {
    /// Spot: where it was cast, range included.
    Spot,
    /// Bait.
    Bait,
    /// Colour of the bait.
    Colour,
    /// Height of the pop-up off the bottom.
    Height,
    /// Length of the hooklength.
    Hooklength,
    /// Hook size.
    HookSize,
    /// Lead or feeder weight.
    Lead,
    /// Leader.
    Leader,
    /// Whether the water was fed shortly before the cast.
    Feed,
    /// How much it was fed.
    FeedAmount,
}
