//! The posterior of the waits of a day: shapes of the wait weighted by the record, and the bites expected for each
//! leave time.

use super::costs::Costs;
use super::fed::{FED_TIMES, FedEffect, FedWaits};
use super::habit::Habit;
use super::likelihood::{Likelihood, heaviest};
use super::record::{EarlierDay, Record, Settings};
use super::shapes::{Likely, NEGLIGIBLE, POINTS, Shapes};
use super::sums::Derived;
use super::{BiteError, Wait};
use std::sync::{Arc, OnceLock};

/// Assumed minutes of a day's fishing if nothing else is known. A guess.
pub(crate) const DAY_MIN: f64 = 300.0;

/// What is known about the waits of this day after a record. Advice, curves and forecasts are all computed from it.
///
/// Rates are posterior means over the shapes of R(t) of each (renewal-reward theorem; Ross): a day has
/// one unknown truth that all its casts share.
#[derive(Debug, Clone)]
pub struct WaitPosterior {
    pub(crate) settings: Settings,
    pub(crate) costs: Costs,
    pub(crate) habit: Option<Habit>,
    pub(crate) casts: usize,
    pub(crate) bites: usize,
    /// Weighted bites of the whole record.
    pub(crate) all_bites: f64,
    pub(crate) longest_min: f64,
    /// Minutes of today that the casts have waited.
    waited_min: f64,
    /// Weighted earlier days.
    pub(crate) days: f64,
    pub(crate) shapes: Arc<Shapes>,
    /// Weight of each shape; the largest is 1.
    pub(crate) weights: Vec<f64>,
    /// The part of it that belongs to changing days; empty if days can't change.
    moving: Vec<f64>,
    /// The same casts by whether they were in fed water.
    pub(crate) by_feed: FedWaits,
    /// Whether the next cast would be in fed water.
    pub(crate) fed: bool,
    /// Results that follow from the weights. They are computed on first use, since a running clock asks every
    /// second. The second is for casts in fed water, if feed counts.
    pub(crate) derived: [OnceLock<Derived>; 2],
}

impl WaitPosterior {
    /// The posterior of a record.
    pub fn new(record: &Record, settings: &Settings) -> Result<Self, BiteError> {
        Self::with_shapes(record, settings, Shapes::usual())
    }

    /// The posterior with other beliefs about shapes before the first cast.
    pub fn with_shapes(record: &Record, settings: &Settings, shapes: Arc<Shapes>) -> Result<Self, BiteError> {
        settings.check()?;
        let costs = record.costs()?;
        let mut posterior = Self {
            settings: *settings,
            costs,
            habit: record.habit.cloned(),
            casts: 0,
            bites: 0,
            all_bites: 0.0,
            longest_min: 0.0,
            waited_min: 0.0,
            days: 0.0,
            weights: shapes.prior.clone(),
            moving: Vec::new(),
            shapes,
            by_feed: FedWaits::default(),
            fed: false,
            derived: Default::default(),
        };
        posterior.open_book(record.earlier)?;
        if settings.changing > 0.0 {
            posterior.moving = posterior.weights.iter().map(|w| settings.changing * w).collect();
        }
        posterior.by_feed = FedWaits::new(&posterior.weights, settings.fed, settings.changing);
        for (wait, fed) in record.today_by_feed()? {
            posterior.add_by_feed(wait, fed);
        }
        Ok(posterior)
    }

    /// Adds a finished cast of today that was not in fed water.
    pub fn add(&mut self, wait: Wait) {
        self.add_by_feed(wait, false);
    }

    /// Adds a finished cast of today.
    pub fn add_by_feed(&mut self, wait: Wait, fed: bool) {
        self.derived = Default::default();
        self.by_feed.add(&self.shapes, wait, fed);
        self.casts += 1;
        self.waited_min += wait.minutes();
        if wait.is_bite() {
            self.bites += 1;
            self.all_bites += 1.0;
        }
        self.longest_min = self.longest_min.max(wait.minutes());
        let likelihood = Likelihood::new(&self.shapes, wait);
        likelihood.weigh(&self.shapes, &mut self.weights, &mut self.moving);
        if !self.moving.is_empty() {
            self.shapes.drift().go_on(wait, &mut self.moving, &mut self.weights);
        }
        let top = heaviest(&self.weights);
        if top > 0.0 {
            self.weights.iter_mut().chain(&mut self.moving).for_each(|w| *w /= top);
        }
    }

    /// Sets what a cast costs besides its wait, in minutes, and the habit, which are learned again with every
    /// cast. Neither is evidence about waits, so the weights stay.
    pub fn set_pace(
        &mut self,
        turn_round_min: f64,
        bite_extra_min: f64,
        habit: Option<Habit>,
    ) -> Result<(), BiteError> {
        self.costs = Costs::new(turn_round_min, bite_extra_min)?;
        self.habit = habit;
        self.derived = Default::default();
        Ok(())
    }

    /// Minutes of today that the casts have taken.
    pub(crate) fn used_min(&self) -> f64 {
        self.waited_min
            + self.casts as f64 * self.costs.turn_round_min
            + self.bites as f64 * self.costs.bite_extra_min
    }

    /// Adds the earlier days, each with a true behaviour of its own: see [`super::book`].
    fn open_book(&mut self, days: &[EarlierDay]) -> Result<(), BiteError> {
        for day in days {
            let weight = super::error::share("the weight of an earlier day", day.weight)?;
            // A day without a wait is not a day of the book.
            if weight > 0.0 && !day.waits.is_empty() {
                self.days += weight;
                self.all_bites += weight * day.waits.iter().filter(|wait| wait.is_bite()).count() as f64;
                self.longest_min =
                    day.waits.iter().map(|wait| wait.minutes()).fold(self.longest_min, f64::max);
            }
        }
        if self.days > 0.0 {
            self.weights = super::book::after(&self.shapes, days);
            let top = heaviest(&self.weights);
            self.weights.iter_mut().for_each(|w| *w /= top);
        }
        Ok(())
    }

    /// The shapes that count, with their weights, which sum to 1.
    pub(crate) fn likely(&self) -> Likely {
        let counted = self.weights.iter().enumerate().filter(|(_, w)| **w > NEGLIGIBLE);
        let mut sum = 0.0;
        let mut likely: Likely = counted
            .map(|(shape, w)| {
                sum += w;
                (shape, 0.0)
            })
            .collect();
        for (shape, weight) in &mut likely {
            *weight = (self.weights[*shape] / sum) as f32;
        }
        likely
    }

    /// Sets whether the next cast would be in fed water. If feed counts, all answers are then about such
    /// casts.
    pub fn next_is_fed(&mut self, fed: bool) {
        self.fed = fed;
    }

    /// Whether casts in fed water are treated separately, because both sides have enough casts.
    pub fn feed_counts(&self) -> bool {
        self.by_feed.counts()
    }

    /// The probability of each multiple of the hazard for casts in fed water, or `None` if feed doesn't
    /// count.
    pub fn fed_times(&self) -> Option<[(f64, f64); FED_TIMES]> {
        self.by_feed.times()
    }

    /// How much quicker casts in fed water get their bites, with a credible interval of that level, or `None` if
    /// feed doesn't count.
    pub fn fed_effect(&self, level: f64) -> Result<Option<FedEffect>, BiteError> {
        Ok(self.by_feed.effect(super::error::open_share("the credible level", level)?))
    }

    /// The first point in time past the horizon.
    pub(crate) fn horizon(&self) -> usize {
        let end = self.settings.horizon_min.max(1.5 * self.longest_min);
        (self.shapes.times.partition_point(|&t| t <= end)).clamp(3, POINTS)
    }
}
