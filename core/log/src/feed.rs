//! Feed put into the water and fish that showed, as an op carries them: what, how much by the angler's measure or by
//! weight, and where.

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
    /// Between finger and thumb.
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
    /// So many measures.
    Measures {
        /// The measure.
        measure: FeedMeasure,
        /// How many.
        count: u16,
        /// What the angler took one to weigh then, in mg: a guess, and stored with the entry, so that a guess that is
        /// changed later changes nothing that was fed before.
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
    /// Where that is; `None` when the rod's spot was not set.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<WaterPlace>,
}
