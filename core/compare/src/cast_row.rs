//! One cast in the form that the comparisons need.

use super::Factor;
use restwater_waits::Wait;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// One wait of a cast: when, how long, with what. A cast has one wait, plus one
/// for each twitch that restarted it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CastRow {
    /// Rod.
    pub rod: u8,
    /// Splash or twitch, minutes into the day (any fixed start).
    pub at_min: f64,
    /// Wait: to the bite, or to whatever else ended the cast.
    pub wait: Wait,
    /// Whether a twitch ended it: the cast goes on, and its next wait has a row of its own.
    #[serde(default)]
    pub twitched: bool,
    /// Values in force, each in one fixed spelling ("46 cm"); a factor not recorded is absent, and
    /// going from recorded to absent is not a change.
    pub setup: BTreeMap<Factor, String>,
}
