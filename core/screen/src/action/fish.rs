//! Taps about a landed fish.

use restwater_log::WeightUnit;
use serde::{Deserialize, Serialize};

/// Details of a landed fish, in a match or not.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(tag = "tap", rename_all = "snake_case", deny_unknown_fields)]
pub enum FishTap {
    /// Chooses another landed fish.
    Meant {
        /// How many landings before the latest; 0 is the latest.
        back: u32,
    },
    /// Its class.
    Class {
        /// Its name.
        name: String,
    },
    /// The net that it went into; later fish go into it, too.
    Net {
        /// Its name.
        name: String,
    },
    /// It went back into the water, or it did not.
    PutBack {
        /// Whether it went back.
        back: bool,
    },
    /// It isn't weighed.
    NoWeight,
    /// A digit of its weight was typed.
    Digit {
        /// From 0 to 9.
        digit: u8,
    },
    /// The unit was typed: the next digits are ounces, drams, or decimals of a kilogram. After the last unit
    /// the figure is cleared.
    NextUnit,
    /// Erases the last digit typed.
    RubOut,
    /// The figure typed was read on the scales.
    Weighed,
    /// The figure typed is a guess by eye.
    Guessed,
    /// A given weight.
    Weight {
        /// The unit.
        unit: WeightUnit,
        /// How many of it.
        count: i64,
        /// Whether it is a guess by eye.
        guessed: bool,
    },
}

impl FishTap {
    /// Whether it types a figure: such taps follow each other fast, and the same digit may be wanted twice.
    pub fn steps(&self) -> bool {
        matches!(self, Self::Digit { .. } | Self::NextUnit | Self::RubOut)
    }

    /// Whether nothing more is entered on its screen, so that the Bank opens.
    pub fn closes(&self) -> bool {
        matches!(self, Self::Class { .. } | Self::NoWeight | Self::Weighed | Self::Guessed)
    }

    pub(super) fn texts(&self) -> Vec<(&'static str, &str)> {
        match self {
            Self::Class { name } => vec![("class", name)],
            Self::Net { name } => vec![("net", name)],
            _ => Vec::new(),
        }
    }
}
