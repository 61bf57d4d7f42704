//! The plan of leave times: shapes of the wait weighted by the record, and the bites expected for each leave
//! time.

use super::fed::{FED_TIMES, FedEffect, FedShapes, FedWaits};
use super::leave_time::Means;
use super::likelihood::Likelihood;
use super::record::{EarlierDay, Record, Settings};
use super::renewal::Costs;
use super::shapes::{Likely, NEGLIGIBLE, POINTS, SHAPE_PRIORS, Shapes};
use super::{BiteError, Wait};
use std::sync::{Arc, OnceLock};

/// Assumed minutes of a day's fishing if nothing else is known. A guess.
pub(crate) const DAY_MIN: f64 = 300.0;

static SHAPES: OnceLock<Arc<Shapes>> = OnceLock::new();

/// The posterior of this day's waits, as far as the plan of the next cast needs it.
///
/// Rates are posterior means over the shapes of R(t) of each (renewal-reward theorem; Ross): a day has
/// one unknown truth that all its casts share.
#[derive(Debug, Clone)]
pub struct LeavePlan {
    pub(crate) settings: Settings,
    pub(crate) costs: Costs,
    pub(crate) habit_min: Option<f64>,
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
    /// Bites per minute of each shape by leave time.
    rates: Arc<[f32]>,
    /// Weight of each shape; the largest is 1.
    pub(crate) weights: Vec<f64>,
    /// The part of it that belongs to changing days; empty if days can't change.
    moving: Vec<f64>,
    /// The same casts by whether they lay in fed water.
    pub(crate) by_feed: FedWaits,
    /// Whether the next cast would be in fed water.
    pub(crate) fed: bool,
    /// Results that follow from the weights. They are computed on first use, since a running clock asks every
    /// second. The second is for casts in fed water, if feed counts.
    reckoned: [OnceLock<Reckoned>; 2],
}

/// Results that follow from the weights of a record.
#[derive(Debug, Clone)]
pub(crate) struct Reckoned {
    pub likely: Likely,
    /// The shapes if they aren't the plan's own, but those for casts in fed water or in other water.
    pub(crate) own: Option<Arc<FedShapes>>,
    /// Mean bites per minute by leave time.
    pub rate: [f32; POINTS],
    pub means: Means,
}

/// The rows of the shapes that count.
#[derive(Clone, Copy)]
pub(crate) struct Rows<'a> {
    bitten: &'a [f32],
    waiting: &'a [f32],
    rates: &'a [f32],
    ever: &'a [f64],
}

impl<'a> Rows<'a> {
    /// Share of casts with a bite by each time.
    pub(crate) fn bitten(self, shape: usize) -> &'a [f32] {
        &self.bitten[shape * POINTS..][..POINTS]
    }

    /// Mean of the wait or the time.
    pub(crate) fn waiting(self, shape: usize) -> &'a [f32] {
        &self.waiting[shape * POINTS..][..POINTS]
    }

    /// Bites per minute by leave time.
    pub(crate) fn rates(self, shape: usize) -> &'a [f32] {
        &self.rates[shape * POINTS..][..POINTS]
    }
}

impl LeavePlan {
    /// The plan after a record.
    pub fn new(record: &Record, settings: &Settings) -> Result<Self, BiteError> {
        let shapes = SHAPES.get_or_init(|| Arc::new(Shapes::new(&SHAPE_PRIORS)));
        Self::with_shapes(record, settings, Arc::clone(shapes))
    }

    /// The plan with other beliefs about shapes.
    pub fn with_shapes(record: &Record, settings: &Settings, shapes: Arc<Shapes>) -> Result<Self, BiteError> {
        settings.check()?;
        let costs = record.costs()?;
        let mut plan = Self {
            settings: *settings,
            costs,
            rates: shapes.rates(costs),
            habit_min: record.habit_min,
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
            reckoned: Default::default(),
        };
        plan.open_book(record.earlier)?;
        if settings.changing > 0.0 {
            plan.moving = plan.weights.iter().map(|w| settings.changing * w).collect();
        }
        plan.by_feed = FedWaits::new(&plan.weights, settings.fed, settings.changing);
        for (wait, fed) in record.today_by_feed()? {
            plan.add_by_feed(wait, fed);
        }
        Ok(plan)
    }

    /// Adds a finished cast of today that was not in fed water.
    pub fn add(&mut self, wait: Wait) {
        self.add_by_feed(wait, false);
    }

    /// Adds a finished cast of today.
    pub fn add_by_feed(&mut self, wait: Wait, fed: bool) {
        self.reckoned = Default::default();
        self.by_feed.add(&self.shapes, wait, fed);
        self.casts += 1;
        self.waited_min += wait.minutes();
        if wait.is_bite() {
            self.bites += 1;
            self.all_bites += 1.0;
        }
        self.longest_min = self.longest_min.max(wait.minutes());
        let likelihood = Likelihood::new(&self.shapes, wait);
        let (before, after) = likelihood.rows(&self.shapes);
        for ((weight, a), b) in self.weights.iter_mut().zip(before).zip(after) {
            *weight *= likelihood.of(*a, *b);
        }
        for ((weight, a), b) in self.moving.iter_mut().zip(before).zip(after) {
            *weight *= likelihood.of(*a, *b);
        }
        if !self.moving.is_empty() {
            self.shapes.drift().go_on(wait, &mut self.moving, &mut self.weights);
        }
        let top = self.weights.iter().copied().fold(0.0, f64::max);
        if top > 0.0 {
            self.weights.iter_mut().chain(&mut self.moving).for_each(|w| *w /= top);
        }
    }

    /// Sets what a cast costs besides its wait, and the habit, both of which are learned again with every cast.
    /// Neither is evidence about waits, so the weights stay.
    pub(crate) fn set_pace(&mut self, costs: Costs, habit_min: Option<f64>) {
        self.reckoned = Default::default();
        self.rates = self.shapes.rates(costs);
        (self.costs, self.habit_min) = (costs, habit_min);
    }

    /// Minutes of today that the casts have taken.
    pub(crate) fn used_min(&self) -> f64 {
        self.waited_min
            + self.casts as f64 * self.costs.turn_round_min
            + self.bites as f64 * self.costs.bite_extra_min
    }

    /// Adds the earlier days, each with a truth of its own: see [`super::book`].
    fn open_book(&mut self, days: &[EarlierDay]) -> Result<(), BiteError> {
        for day in days {
            let weight = super::error::share("the weight of an earlier day", day.weight)?;
            // A day without a wait is no day of the book.
            if weight > 0.0 && !day.waits.is_empty() {
                self.days += weight;
                self.all_bites += weight * day.waits.iter().filter(|wait| wait.is_bite()).count() as f64;
                self.longest_min =
                    day.waits.iter().map(|wait| wait.minutes()).fold(self.longest_min, f64::max);
            }
        }
        if self.days > 0.0 {
            self.weights = super::book::after(&self.shapes, days);
            let top = self.weights.iter().copied().fold(0.0, f64::max);
            self.weights.iter_mut().for_each(|w| *w /= top);
        }
        Ok(())
    }

    /// The shapes that count, with their weights, which sum to 1.
    fn likely(&self) -> Likely {
        let counted = self.weights.iter().enumerate().filter(|(_, w)| **w > NEGLIGIBLE);
        let sum: f64 = counted.clone().map(|(_, w)| w).sum();
        counted.map(|(k, w)| (k, (w / sum) as f32)).collect()
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

    /// The rows of the shapes that count.
    pub(crate) fn rows<'a>(&'a self, own: Option<&'a FedShapes>) -> Rows<'a> {
        match own {
            Some(own) => {
                Rows { bitten: &own.bitten, waiting: &own.waiting, rates: &own.rates, ever: &own.ever }
            }
            None => Rows {
                bitten: &self.shapes.bitten,
                waiting: &self.shapes.waiting,
                rates: &self.rates,
                ever: &self.shapes.ever,
            },
        }
    }

    /// Posterior means by leave time.
    pub(crate) fn means(&self) -> &Means {
        &self.reckoned().means
    }

    pub(crate) fn reckoned(&self) -> &Reckoned {
        self.reckoned_of(self.fed)
    }

    /// What follows from the weights for casts in fed water, or for others.
    pub(crate) fn reckoned_of(&self, fed: bool) -> &Reckoned {
        let fed = fed && self.feed_counts();
        self.reckoned[usize::from(fed)].get_or_init(|| {
            let (likely, own) = match self.by_feed.shapes_of(&self.shapes, self.costs, fed) {
                Some((likely, own)) => (likely, Some(own)),
                None => (self.likely(), None),
            };
            let rows = self.rows(own.as_deref());
            let rate = mean_rates(rows, &likely);
            let means = self.worked_out(rows, &likely, &rate);
            Reckoned { likely, own, rate, means }
        })
    }

    fn worked_out(&self, rows: Rows, likely: &[(usize, f32)], rate: &[f32; POINTS]) -> Means {
        let best = top(rate);
        let mut sums = [[0.0_f64; POINTS]; 3];
        let mut ever = 0.0;
        for &(shape, weight) in likely {
            let w = f64::from(weight);
            let (bitten, waiting) = (rows.bitten(shape), rows.waiting(shape));
            let fresh = w * f64::from(rows.rates(shape)[best]);
            ever += w * rows.ever[shape];
            for i in 0..POINTS {
                let b = f64::from(bitten[i]);
                sums[0][i] += w * b;
                sums[1][i] += w * f64::from(waiting[i]);
                sums[2][i] += fresh * (1.0 - b);
            }
        }
        Means {
            times: self.shapes.times[1..].to_vec(),
            rate: rate[1..].iter().map(|&r| f64::from(r)).collect(),
            bitten: sums[0][1..].to_vec(),
            waiting: sums[1][1..].to_vec(),
            ever,
            fresh: sums[2][1..].to_vec(),
            known: self.horizon() - 1,
        }
    }

    /// The first point in time past the horizon.
    pub(crate) fn horizon(&self) -> usize {
        let end = self.settings.horizon_min.max(1.5 * self.longest_min);
        (self.shapes.times.partition_point(|&t| t <= end)).clamp(3, POINTS)
    }
}

/// Mean bites per minute by leave time.
fn mean_rates(rows: Rows, likely: &[(usize, f32)]) -> [f32; POINTS] {
    let mut mean = [0.0; POINTS];
    for &(shape, weight) in likely {
        for (m, r) in mean.iter_mut().zip(rows.rates(shape)) {
            *m += weight * r;
        }
    }
    mean
}

/// The index of the first maximum.
pub(crate) fn top(values: &[f32]) -> usize {
    let mut best = 0;
    for (i, v) in values.iter().enumerate() {
        if *v > values[best] {
            best = i;
        }
    }
    best
}
