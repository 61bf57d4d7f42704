//! One cast as the comparisons need it.

use super::Factor;
use restwater_waits::Wait;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What became of a bite.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum BiteOutcome {
    /// The fish was landed.
    Landed,
    /// Hooked and lost.
    Lost,
    /// Struck at and missed.
    Missed,
}

/// One cast: when, how long, with what, and what became of its bite.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CastRow {
    /// Rod.
    pub rod: u8,
    /// Splash, minutes into the day (any fixed start).
    pub at_min: f64,
    /// Wait: to the bite, or to whatever else ended the cast.
    pub wait: Wait,
    /// Values in force, each in one fixed spelling ("46 cm"); a factor not recorded is absent, and
    /// going from recorded to absent is not a change.
    pub setup: BTreeMap<Factor, String>,
    /// What became of the bite, where it is known.
    pub outcome: Option<BiteOutcome>,
}
