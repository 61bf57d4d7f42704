//! Feed in the model of waits: casts in fed water have r times the hazard of the others (proportional
//! hazards; Cox 1972, Journal of the Royal Statistical Society B 34).
//!
//! A wait w of a cast with the hazard r h, and e = 1 for a bite, adds e (ln r + ln h(w)) - r H(w) to the
//! log-likelihood, H being the sum of h up to w: the share still waiting becomes its power r. Neither side is
//! the baseline. A shape describes the middle: fed casts have its hazard times one power, the others its
//! hazard times the mirrored power, and r is the ratio of the two. So exchanging the names of the sides turns
//! r into 1 / r and changes nothing else, and earlier days, whose feed is not considered, count for the
//! middle.
//!
//! r is used only if both sides have enough casts (see [`FedWaits::has_enough_casts`]). Until then, and on every day on
//! which all casts or none were in fed water, none of this is computed.

use super::likelihood::Likelihood;
use super::shapes::{Likely, NEGLIGIBLE, POINTS, Shapes};
use super::{BiteError, Wait};
use libm::{exp, log};
use std::sync::Arc;

/// How many values of r are considered.
pub const FED_TIMES: usize = 7;
/// The powers of fed casts, in eighths; those of the others are the same from the end. A power of an eighth
/// is three square roots and a product, which every platform rounds alike.
const EIGHTHS: [u8; FED_TIMES] = [5, 6, 7, 8, 9, 11, 13];
/// The one that changes nothing.
const NO_EFFECT: usize = 3;
/// How many casts on each side, and bites on both together, are needed before r is used. A guess: fewer are
/// next to no evidence.
const CASTS_A_SIDE: usize = 3;
const BITES: usize = 3;

/// The prior of r: the probabilities of 5/13, 6/11, 7/9, 1, 9/7, 11/6 and 13/5.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FedPrior(pub [f64; FED_TIMES]);

/// The prior in use. Half of it is on "feed does nothing", as in the comparisons of changes. The rest is
/// symmetric about that, a bell curve in ln r with a standard deviation of a half, so that a doubling is
/// plausible and a tenfold effect is not. A guess, checked by simulation (docs/advice.md).
pub const FED_PRIOR: FedPrior = FedPrior([0.03, 0.085, 0.135, 0.5, 0.135, 0.085, 0.03]);

impl FedPrior {
    pub(crate) fn check(&self) -> Result<(), BiteError> {
        for weight in self.0 {
            super::error::share("the weight of an effect of feed", weight)?;
        }
        super::error::positive("the sum of the weights of effects of feed", self.0.iter().sum())?;
        Ok(())
    }
}

/// ln r of each value.
fn ln_times() -> [f64; FED_TIMES] {
    std::array::from_fn(|j| log(f64::from(EIGHTHS[j]) / f64::from(EIGHTHS[FED_TIMES - 1 - j])))
}

/// How much quicker casts in fed water get their bites.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FedEffect {
    /// Their hazard as a multiple of that of the others: the geometric mean of r.
    pub times: f64,
    /// Lower end of its equal-tailed credible interval.
    pub low: f64,
    /// Upper end.
    pub high: f64,
}

/// The power of the hazard on that side for a value of r.
fn power(times: usize, fed: bool) -> usize {
    if fed { times } else { FED_TIMES - 1 - times }
}

/// The share bitten with the hazard multiplied by each of the powers.
#[inline]
fn bitten_with_powers(bitten: f32) -> [f32; FED_TIMES] {
    let still = 1.0 - bitten;
    let eighth = still.sqrt().sqrt().sqrt();
    let quarter = eighth * eighth;
    let half = quarter * quarter;
    [
        1.0 - half * eighth,
        1.0 - half * quarter,
        1.0 - half * quarter * eighth,
        bitten,
        1.0 - still * eighth,
        1.0 - still * quarter * eighth,
        1.0 - still * half * eighth,
    ]
}

/// Today's casts by whether they were in fed water and, once both sides have enough casts, the joint weights
/// of shape and r.
#[derive(Debug, Clone, Default)]
pub(crate) struct FedWaits {
    waits: Vec<(Wait, bool)>,
    /// The weights of the shapes before the first cast of today.
    before: Vec<f64>,
    prior: [f64; FED_TIMES],
    /// Probability that the day changes.
    changing: f64,
    /// Weight of each shape with each r, one row for each value of r.
    weights: Option<[Vec<f64>; FED_TIMES]>,
    /// The part of it that belongs to changing days; empty if days can't change.
    moving: [Vec<f64>; FED_TIMES],
}

impl FedWaits {
    pub(crate) fn new(before: &[f64], prior: FedPrior, changing: f64) -> Self {
        let sum: f64 = prior.0.iter().sum();
        Self { before: before.to_vec(), prior: prior.0.map(|p| p / sum), changing, ..Self::default() }
    }

    /// The weights of the shapes before the first cast of today.
    pub(crate) fn before(&self) -> &[f64] {
        &self.before
    }

    /// Takes in a finished cast of today.
    pub(crate) fn add(&mut self, shapes: &Shapes, wait: Wait, fed: bool) {
        self.waits.push((wait, fed));
        let begun = if self.weights.is_some() {
            self.waits.len() - 1
        } else if self.has_enough_casts() {
            let times = |p: f64| self.before.iter().map(|w| w * p).collect();
            self.weights = Some(self.prior.map(times));
            if self.changing > 0.0 {
                self.moving = self.prior.map(|p| times(self.changing * p));
            }
            0
        } else {
            return;
        };
        let Some(weights) = &mut self.weights else { return };
        for (i, &(wait, fed)) in self.waits.iter().enumerate().skip(begun) {
            weigh(shapes, weights, wait, fed);
            if self.changing > 0.0 {
                weigh(shapes, &mut self.moving, wait, fed);
                for (moving, all) in self.moving.iter_mut().zip(weights.iter_mut()) {
                    shapes.drift().go_on(wait, moving, all);
                }
            }
            if i % BETWEEN_SCALINGS == 0 {
                scale(weights, &mut self.moving);
            }
        }
    }

    /// Whether several values of r are possible and both sides have enough casts.
    fn has_enough_casts(&self) -> bool {
        if self.prior.iter().filter(|p| **p > 0.0).count() < 2 {
            return false;
        }
        let fed = self.waits.iter().filter(|(_, fed)| *fed).count();
        let bites = self.waits.iter().filter(|(wait, _)| wait.is_bite()).count();
        fed >= CASTS_A_SIDE && self.waits.len() - fed >= CASTS_A_SIDE && bites >= BITES
    }

    /// Each value of r with its probability, once both sides have enough casts.
    pub(crate) fn times(&self) -> Option<[(f64, f64); FED_TIMES]> {
        let (believed, ln) = (self.believed()?, ln_times());
        Some(std::array::from_fn(|j| (exp(ln[j]), believed[j])))
    }

    /// Whether r is used.
    pub(crate) fn counts(&self) -> bool {
        self.weights.is_some()
    }

    fn believed(&self) -> Option<[f64; FED_TIMES]> {
        let weights = self.weights.as_ref()?;
        let sums: [f64; FED_TIMES] = std::array::from_fn(|j| weights[j].iter().sum());
        let all: f64 = sums.iter().sum();
        Some(sums.map(|sum| sum / all))
    }

    /// How much quicker casts in fed water get their bites, with an interval of that level. Each value of r
    /// represents all values nearer to it than to the next one, since the list is coarse.
    pub(crate) fn effect(&self, level: f64) -> Option<FedEffect> {
        let (believed, ln) = (self.believed()?, ln_times());
        let last = FED_TIMES - 1;
        let edge = |j: usize| match j {
            0 => 1.5 * ln[0] - 0.5 * ln[1],
            j if j > last => 1.5 * ln[last] - 0.5 * ln[last - 1],
            j => 0.5 * (ln[j - 1] + ln[j]),
        };
        let at = |share: f64| {
            let mut left = share;
            for (j, &p) in believed.iter().enumerate() {
                if left <= p && p > 0.0 {
                    return edge(j) + (edge(j + 1) - edge(j)) * left / p;
                }
                left -= p;
            }
            edge(FED_TIMES)
        };
        let mean: f64 = believed.iter().zip(ln).map(|(p, ln)| p * ln).sum();
        let tail = 0.5 * (1.0 - level);
        Some(FedEffect { times: exp(mean), low: exp(at(tail)), high: exp(at(1.0 - tail)) })
    }

    /// The shapes as they apply to the casts of one side, with their weights, which sum to 1; `None` until
    /// both sides have enough casts.
    pub(crate) fn shapes_of(&self, shapes: &Shapes, fed: bool) -> Option<(Likely, Arc<FedShapes>)> {
        let weights = self.weights.as_ref()?;
        let least = NEGLIGIBLE * heaviest(weights);
        let counted = |w: f64| w > least;
        let sum: f64 = weights.iter().flatten().filter(|w| counted(**w)).sum();
        let (mut likely, mut rows) = (Vec::new(), FedShapes::default());
        for shape in 0..shapes.count() {
            let here = weights.each_ref().map(|row| row[shape]);
            if !here.into_iter().any(counted) {
                continue;
            }
            let powers = powers_of::<POINTS>(&shapes.bitten[shape * POINTS..]);
            for (times, weight) in here.into_iter().enumerate().filter(|(_, w)| counted(*w)) {
                likely.push((rows.ever.len(), (weight / sum) as f32));
                rows.add(shapes, shape, &powers, power(times, fed));
            }
        }
        Some((likely, Arc::new(rows)))
    }
}

/// Multiplies the weights by the likelihood of a wait on that side under each shape with each r.
fn weigh(shapes: &Shapes, weights: &mut [Vec<f64>; FED_TIMES], wait: Wait, fed: bool) {
    let likelihood = Likelihood::new(shapes, wait);
    let (before, after) = likelihood.rows(shapes);
    for first in (0..before.len()).step_by(AT_ONCE) {
        let many = AT_ONCE.min(before.len() - first);
        let (a, b) = (powers_of::<AT_ONCE>(&before[first..]), powers_of::<AT_ONCE>(&after[first..]));
        for (times, row) in weights.iter_mut().enumerate() {
            let power = power(times, fed);
            for ((weight, a), b) in row[first..][..many].iter_mut().zip(&a[power]).zip(&b[power]) {
                *weight *= likelihood.of(*a, *b);
            }
        }
    }
}

/// Scales the weights so that the largest is 1, if there is any.
fn scale(weights: &mut [Vec<f64>; FED_TIMES], moving: &mut [Vec<f64>; FED_TIMES]) {
    let top = heaviest(weights);
    if top > 0.0 {
        weights.iter_mut().chain(moving).flatten().for_each(|w| *w /= top);
    }
}

fn heaviest(weights: &[Vec<f64>; FED_TIMES]) -> f64 {
    weights.iter().flatten().copied().fold(0.0, f64::max)
}

/// This many factors of at least one in a million stay far above the smallest representable number.
const BETWEEN_SCALINGS: usize = 16;

/// How many shares are raised to their powers at once.
const AT_ONCE: usize = 64;

/// The first `N` shares bitten, or as many as there are, with the hazard taken times each of the powers.
fn powers_of<const N: usize>(bitten: &[f32]) -> [[f32; N]; FED_TIMES] {
    let mut rows = [[0.0; N]; FED_TIMES];
    for (i, &b) in bitten.iter().take(N).enumerate() {
        let powered = bitten_with_powers(b);
        for (row, powered) in rows.iter_mut().zip(powered) {
            row[i] = powered;
        }
    }
    rows
}

/// The shapes as they apply to the casts of one side, in rows like those of [`Shapes`].
#[derive(Debug, Default)]
pub(crate) struct FedShapes {
    pub(crate) bitten: Vec<f32>,
    pub(crate) waiting: Vec<f32>,
    pub(crate) ever: Vec<f64>,
}

impl FedShapes {
    fn add(&mut self, shapes: &Shapes, shape: usize, powers: &[[f32; POINTS]; FED_TIMES], power: usize) {
        self.bitten.extend(powers[power]);
        if power == NO_EFFECT {
            self.waiting.extend_from_slice(&shapes.waiting[shape * POINTS..][..POINTS]);
            self.ever.push(shapes.ever[shape]);
        } else {
            self.waiting.extend(waiting(&shapes.times, &powers[power]));
            self.ever.push(1.0 - libm::pow(1.0 - shapes.ever[shape], f64::from(EIGHTHS[power]) / 8.0));
        }
    }
}

/// Mean of the smaller of wait and time, at each time.
fn waiting(times: &[f64], bitten: &[f32; POINTS]) -> [f32; POINTS] {
    let (mut sum, mut out) = (0.0, [0.0; POINTS]);
    for i in 1..POINTS {
        let step = (times[i] - times[i - 1]) as f32;
        sum += step * (1.0 - 0.5 * (bitten[i] + bitten[i - 1]));
        out[i] = sum;
    }
    out
}

#[cfg(test)]
mod tests;
