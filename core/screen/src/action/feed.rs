//! Taps about feed.

use restwater_log::{FeedKind, FeedMeasure, WeightUnit};
use serde::{Deserialize, Serialize};

/// Taps about feed by hand: what, how much and where.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum FeedTap {
    /// The same as the last time: at the spot of the chosen rod, or at the same place if that was chosen on
    /// the map.
    Again,
    /// The chosen number of this measure.
    Measure {
        /// How it goes in.
        what: FeedKind,
        /// The measure.
        measure: FeedMeasure,
    },
    /// How many of a measure the next key means.
    Count {
        /// From 1.
        count: u16,
    },
    /// Where it goes.
    AtAim {
        /// To the cell that is aimed at on the Swim screen, otherwise to the spot of the chosen rod.
        aim: bool,
    },
    /// What goes in by weight.
    Kind {
        /// How.
        what: FeedKind,
    },
    /// A digit of its weight was typed.
    Digit {
        /// From 0 to 9.
        digit: u8,
    },
    /// The figure is cleared.
    Clear,
    /// Feeds the weight that was typed.
    Weighed,
    /// Feeds a given weight.
    Weight {
        /// How it goes in.
        what: FeedKind,
        /// The unit.
        unit: WeightUnit,
        /// How many of it.
        count: u32,
    },
}

impl FeedTap {
    /// Whether it types a figure or changes the count: such taps follow each other fast.
    pub fn steps(&self) -> bool {
        matches!(self, Self::Digit { .. } | Self::Count { .. } | Self::Kind { .. })
    }

    /// Whether nothing more is entered on its screen, so that the Bank opens.
    pub fn closes(&self) -> bool {
        matches!(self, Self::Measure { .. } | Self::Weighed)
    }
}
