//! Feed, fish that showed themselves and fish that neighbours landed, as a session keeps them.

use super::Stamp;
use restwater_log::{FeedAmount, FeedKind, FeedSaid, FishSign, RodNumber, Side, WaterPlace, WeightUnit};
use restwater_swim::Point;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// Drams in a pound.
const DRAMS_PER_POUND: f64 = 256.0;
/// A pound in milligrams, exactly (international yard and pound agreement, 1959).
const POUND_MG: f64 = 453_592.37;

/// Feed put in by hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Fed {
    /// The op.
    pub op: Uuid,
    /// When.
    pub at: Stamp,
    /// What went in, how much and where.
    pub said: FeedSaid,
}

/// Feed that went in, by hand or with a cast.
#[derive(Debug, Clone, PartialEq)]
pub struct Feeding {
    /// The op: that of the feed, or of the cast whose feeder carried it.
    pub op: Uuid,
    /// When.
    pub at: Stamp,
    /// How.
    pub what: FeedKind,
    /// How much, as it was entered.
    pub amount: FeedAmount,
    /// Where, in the peg frame; `None` if that was not entered.
    pub place: Option<Point>,
    /// The rod at whose spot it went in, if it was fed for a rod.
    pub rod: Option<RodNumber>,
    /// Whether a feeder carried it with a cast.
    pub with_cast: bool,
}

/// Fish that showed themselves.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FishShown {
    /// The op.
    pub op: Uuid,
    /// When.
    pub at: Stamp,
    /// How.
    pub sign: FishSign,
    /// Where.
    pub place: WaterPlace,
}

/// A fish that a neighbour was seen to land.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NeighbourFish {
    /// The op.
    pub op: Uuid,
    /// When.
    pub at: Stamp,
    /// On which side.
    pub side: Side,
}

/// What an amount is taken to weigh, in mg.
pub fn feed_mg(amount: &FeedAmount) -> u64 {
    match *amount {
        FeedAmount::Measures { count, each_mg, .. } => u64::from(count) * u64::from(each_mg),
        FeedAmount::Weight { unit: WeightUnit::Grams, count } => u64::from(count) * 1_000,
        FeedAmount::Weight { unit: WeightUnit::Drams, count } => {
            libm::round(f64::from(count) * POUND_MG / DRAMS_PER_POUND) as u64
        }
    }
}
