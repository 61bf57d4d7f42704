//! The part of the posterior about fed water.

use super::fed::FedEffect;
use super::{BiteError, WaitPosterior};

impl WaitPosterior {
    /// Sets whether the next cast is in fed water: see [`super::LeavePlan::next_is_fed`].
    pub fn next_is_fed(&mut self, fed: bool) {
        self.plan.next_is_fed(fed);
    }

    /// Whether casts in fed water are treated separately: see [`super::LeavePlan::feed_counts`].
    pub fn feed_counts(&self) -> bool {
        self.plan.feed_counts()
    }

    /// How much quicker casts in fed water get their bites: see [`super::LeavePlan::fed_effect`].
    pub fn fed_effect(&self, level: f64) -> Result<Option<FedEffect>, BiteError> {
        self.plan.fed_effect(level)
    }
}
