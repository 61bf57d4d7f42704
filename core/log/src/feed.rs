//! Feed and fish that showed themselves, in the form of the log: what was fed, how much (in the angler's
//! measures or by weight), and where.

use super::fish::WeightUnit;
use super::setup::RodNumber;
use serde::{Deserialize, Serialize};

/// How feed was put in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum FeedKind {
    /// Loose, by hand, catapult or pole cup.
    Loose,
    /// Balls of groundbait.
    Ball,
    /// A bag that dissolves.
    Bag,
    /// A feeder, filled and cast.
    Feeder,
    /// A spod.
    Spod,
}

/// What an angler counts feed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum FeedMeasure {
    /// As much as fits between finger and thumb.
    Pinch,
    /// A handful.
    Handful,
    /// A cup.
    Cup,
    /// A ball.
    Ball,
    /// A bag.
    Bag,
    /// One fill of a feeder or a spod.
    Fill,
}

/// How much.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(tag = "by", rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum FeedAmount {
    /// A number of measures.
    Measures {
        /// The measure.
        measure: FeedMeasure,
        /// How many.
        count: u16,
        /// The angler's estimate at that time of what one weighs, in mg. It is stored with the entry, so that
        /// changing the estimate later doesn't change earlier entries.
        each_mg: u32,
    },
    /// By weight.
    Weight {
        /// The unit it was entered in.
        unit: WeightUnit,
        /// How many of it.
        count: u32,
    },
}

/// A place on the water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WaterPlace {
    /// Degrees clockwise from straight out, in hundredths.
    pub bearing_cdeg: i32,
    /// Range in cm.
    pub range_cm: u32,
}

/// How fish showed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum FishSign {
    /// A fish rolled or jumped.
    Rolled,
    /// Bubbles came up.
    Bubbles,
    /// Fish took something off the top.
    Topping,
}

/// Feed that was put in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct FeedSaid {
    /// How.
    pub what: FeedKind,
    /// How much.
    pub amount: FeedAmount,
    /// The rod at whose spot it was put in; `None` for a place on the map.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rod: Option<RodNumber>,
    /// Where that is; `None` if the rod's spot was not set.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<WaterPlace>,
}
