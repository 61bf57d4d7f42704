//! The weight of a fish in the form of the log: in the unit it was read in, and how it is known.

use serde::{Deserialize, Serialize};

/// The unit a weight was entered in; it is never converted in the log.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum WeightUnit {
    /// Drams, 1/256 lb.
    #[default]
    Drams,
    /// Grams.
    Grams,
}

/// The weight of a fish, and how it is known.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(tag = "by", rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum FishWeight {
    /// On the scales.
    Weighed {
        /// The unit it was read in.
        unit: WeightUnit,
        /// How many of it.
        count: u32,
    },
    /// By eye.
    Guessed {
        /// The unit it was guessed in.
        unit: WeightUnit,
        /// How many of it.
        count: u32,
    },
    /// One of a class with a learned mean.
    Class {
        /// Name of the class.
        name: String,
    },
}
