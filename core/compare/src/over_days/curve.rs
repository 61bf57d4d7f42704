//! The likelihood of the ratio of two rates on a grid of ratios. The likelihood of several days is the
//! product over the days.

use crate::belief::{Belief, LN_RATIO_SD as SLABS, NO_DIFFERENCE, RiskSet, risk_sets};
use crate::poisson_rates::Tally;
use libm::{exp, log, sqrt};
use restwater_waits::Wait;
use std::iter::Sum;

/// Grid points on either side of no difference, and the step of ln r between them: ratios of up to 240 either
/// way.
const HALF: usize = 110;
const STEP: f64 = 0.05;
/// All grid points.
const PLACES: usize = 2 * HALF + 1;
/// Standard deviation of ln r in the bet: that of the single day's ([`any_look_p`](crate::any_look_p)).
const BET_SD: f64 = 1.0;
/// Standard deviations to which a likelihood is blurred.
const REACH: f64 = 4.0;
/// Likelihoods that are this much below the highest count as zero.
const LEAST: f64 = 1e-300;
/// Products are multiplied up to this size before their logarithm is taken.
const LARGE: f64 = 1e200;

/// The logarithm of the likelihood of each ln r, A against B, less that of no difference.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Curve(Vec<f64>);

fn ln_r(place: usize) -> f64 {
    STEP * (place as f64 - HALF as f64)
}

impl Curve {
    /// The likelihood without data.
    pub(super) fn flat() -> Self {
        Self(vec![0.0; PLACES])
    }

    /// The logarithm of the value of one unit staked on each ln r.
    pub(super) fn of(ln_paid: impl Fn(f64) -> f64) -> Self {
        Self((0..PLACES).map(|place| ln_paid(ln_r(place))).collect())
    }

    /// The likelihood of these bites in these times, both above zero: the bites on A are binomial with odds r
    /// T_A : T_B, which is the bet with the common rate integrated out.
    pub(super) fn of_minutes(a: Tally, b: Tally) -> Self {
        Self::of(|u| crate::belief::ln_likelihood(a, b, u))
    }

    /// The likelihood of the waits of a stratum, compared at equal waits (partial likelihood, ties by Efron).
    pub(super) fn of_waits(a: &[Wait], b: &[Wait]) -> Self {
        let sets = risk_sets(a, b);
        let alike = ln_against(&sets, 1.0);
        let on_a: f64 = sets.iter().map(RiskSet::bites_on_a).sum();
        Self::of(|u| on_a * u - ln_against(&sets, exp(u)) + alike)
    }

    /// The likelihood if ln r has an additional normal error on this day.
    pub(super) fn blurred(&self, variance: f64) -> Self {
        if variance <= 0.0 {
            return self.clone();
        }
        let taps = (REACH * sqrt(variance) / STEP).min(PLACES as f64) as usize;
        let weights: Vec<f64> =
            (0..=taps).map(|i| exp(-0.5 * (STEP * i as f64) * (STEP * i as f64) / variance)).collect();
        let top = self.top();
        let likely: Vec<f64> = self.0.iter().map(|ln| exp(ln - top)).collect();
        let here = |place: usize| {
            let near = place.saturating_sub(taps)..=(place + taps).min(PLACES - 1);
            let (mut sum, mut all) = (0.0, 0.0);
            for other in near {
                let weight = weights[other.abs_diff(place)];
                sum += weight * likely[other];
                all += weight;
            }
            top + log((sum / all).max(LEAST))
        };
        Self((0..PLACES).map(here).collect())
    }

    /// The logarithm of the value of one unit staked against "they are alike": the mean over a normal ln r.
    pub(super) fn ln_e_value(&self) -> f64 {
        let top = self.top();
        let (mut sum, mut all) = (0.0, 0.0);
        for (place, ln) in self.0.iter().enumerate() {
            let z = ln_r(place) / BET_SD;
            let weight = exp(-0.5 * z * z);
            sum += weight * exp(ln - top);
            all += weight;
        }
        top + log(sum / all)
    }

    /// The posterior, with half of the prior on no difference. The curve must be that of blurred days.
    pub(super) fn belief(&self) -> Belief {
        let (each, none) = self.weights();
        let on =
            |is: fn(f64) -> bool| each.iter().filter(|(u, _)| is(*u)).map(|(_, weight)| weight).sum::<f64>();
        let (above, below, between) = (on(|u| u > 0.0), on(|u| u < 0.0), on(|u| u == 0.0));
        let all = none + above + below + between;
        Belief { a: (above + 0.5 * between) / all, b: (below + 0.5 * between) / all }
    }

    /// The posterior weight of each ln r, and separately that of no difference.
    pub(super) fn weights(&self) -> (Vec<(f64, f64)>, f64) {
        let top = self.top();
        let half = (1.0 - NO_DIFFERENCE) / SLABS.len() as f64;
        let density = |u: f64| {
            let of = |sd: &f64| exp(-0.5 * (u / sd) * (u / sd)) / sd;
            half * SLABS.iter().map(of).sum::<f64>() * STEP / sqrt(2.0 * std::f64::consts::PI)
        };
        let each = self.0.iter().enumerate().map(|(place, ln)| {
            let u = ln_r(place);
            (u, density(u) * exp(ln - top))
        });
        (each.collect(), NO_DIFFERENCE * exp(self.0[HALF] - top))
    }

    /// Posterior lower limit, median and upper limit (95 %) of r, if the sides differ at all.
    pub(super) fn ratio(&self) -> [f64; 3] {
        let (each, _) = self.weights();
        let all: f64 = each.iter().map(|(_, weight)| weight).sum();
        [0.025, 0.5, 0.975].map(|share| {
            let mut left = share * all;
            let place = each.iter().position(|(_, weight)| {
                left -= weight;
                left <= 0.0
            });
            let place = place.unwrap_or(PLACES - 1);
            // Interpolated within the step in which it is reached.
            exp(each[place].0 + STEP * (0.5 + left / each[place].1.max(f64::MIN_POSITIVE)))
        })
    }

    fn top(&self) -> f64 {
        self.0.iter().copied().fold(f64::NEG_INFINITY, f64::max)
    }

    /// Adds another day or stratum.
    pub(super) fn add(&mut self, other: &Self) {
        for (sum, ln) in self.0.iter_mut().zip(&other.0) {
            *sum += ln;
        }
    }
}

impl<'a> Sum<&'a Curve> for Curve {
    fn sum<I: Iterator<Item = &'a Curve>>(curves: I) -> Self {
        let mut all = Self::flat();
        curves.for_each(|curve| all.add(curve));
        all
    }
}

/// The logarithm of the product of the risk sets' weights over all bites at the ratio `r`.
fn ln_against(sets: &[RiskSet], r: f64) -> f64 {
    ln_product(sets.iter().flat_map(|set| set.taken_of(r)))
}

/// The logarithm of a product, with far fewer logarithms than a sum of logarithms needs.
pub(super) fn ln_product(factors: impl Iterator<Item = f64>) -> f64 {
    let (mut sum, mut product) = (0.0, 1.0);
    for factor in factors {
        product *= factor;
        if !(1.0 / LARGE..LARGE).contains(&product) {
            (sum, product) = (sum + log(product), 1.0);
        }
    }
    sum + log(product)
}
