//! A match in the form of the log: the rules of the day, and the details of a fish.

use super::fish::{FishWeight, WeightUnit};
use super::wire::{MatchRules, Weight};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A size class as the angler set it.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct ClassGuess {
    /// The angler's name for it; the rules use the same name for the kind of fish.
    pub name: String,
    /// Guessed mean weight of one fish, until some are weighed.
    pub guess: Weight,
}

/// A complete match set-up; the last one in force counts. Times are UTC ms by the organiser's clock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct MatchSetup {
    /// All-in.
    pub all_in_ms: i64,
    /// All-out.
    pub all_out_ms: i64,
    /// What to add to the phone's time to read the organiser's.
    #[serde(default)]
    pub offset_ms: i64,
    /// The unit of the scales.
    pub unit: WeightUnit,
    /// The finest mark of the scales at the weigh-in.
    pub mark: Weight,
    /// Nets, limits, kinds that count, landing after all-out, alarms.
    #[serde(default)]
    pub rules: MatchRules,
    /// The size classes, in the order of their keys.
    #[serde(default)]
    pub classes: Vec<ClassGuess>,
}

/// All details of a landed fish; the last entry in force counts.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct FishSaid {
    /// The op of the cast it was landed on.
    pub cast: Uuid,
    /// Its size class.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub class: Option<String>,
    /// What it weighs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weight: Option<FishWeight>,
    /// The net it went into, or `None` if that carries over from the previous fish.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub net: Option<String>,
    /// Whether it went back into the water.
    #[serde(default)]
    pub put_back: bool,
}
