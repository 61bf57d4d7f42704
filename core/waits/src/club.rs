//! What the days of many anglers imply for the first casts of another: a club's prior over the shapes.
//!
//! There are too many shapes to be weighed by a few hundred days, so they are only distinguished by their kind: the form, when
//! half of the bites have come, and how many casts get one. A day says how likely each kind makes it ([`Shapes::day_by_kind`]);
//! the weights of the kinds are fitted over the days of many anglers elsewhere, by SQL (docs/pooling.md: empirical Bayes; Robbins
//! 1956, Morris 1983), and come back as a list. Within a kind the shapes keep their usual proportions.
//!
//! The club may fish in another way, or other waters. So its prior is one part of a mixture, and the usual prior keeps a share
//! of it (the robust mixture of Schmidli and others 2014, Biometrics 70): a few casts that the club would not expect bring the
//! usual prior back. How much it keeps depends on whether the club knows the water that is fished ([`FittedTo::own_share`]).

use super::Wait;
use super::book::likelihoods;
use super::kinds::Kinds;
use super::record::EarlierDay;
use super::shapes::Shapes;
use std::sync::Arc;

/// The version of the kinds. A change to the list of shapes or of kinds is a new version.
pub const CLUB_SHAPES: u32 = 1;
/// The share of the prior that stays as it was where the club's weights were fitted to days on the water that is fished.
const OWN_SHARE: f64 = 0.3;
/// The same where they were fitted to the days on all of the club's waters. These say little about a water that the club
/// doesn't know. Both shares were chosen by simulation (docs/advice.md).
const OWN_SHARE_OF_ALL: f64 = 0.7;
/// A kind that makes a day less likely than this, as a natural logarithm relative to the usual prior, counts as if it were at
/// this limit.
const LEAST_LN: f64 = -50.0;
/// How far the sum of a club's weights may be from 1.
const ROUNDED: f64 = 1e-3;

/// Why weights of a club can't be used.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum ClubError {
    /// The number of weights is not the number of kinds.
    #[error("{found} weights for {kinds} kinds of shapes")]
    Count {
        /// How many weights.
        found: usize,
        /// How many kinds.
        kinds: usize,
    },
    /// A weight that isn't a number of zero or more.
    #[error("a weight that is no number of zero or more")]
    NotAWeight,
    /// Weights that don't sum to 1.
    #[error("weights that sum to {0} and not to 1")]
    Sum(f64),
}

/// The days that a club's weights were fitted to, as seen from the water that is fished.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FittedTo {
    /// Those on this water.
    ThisWater,
    /// Those on all waters of the club: all of them, those of a month, or of a range of temperature.
    AllWaters,
}

impl FittedTo {
    /// The share of the prior that stays as it is without a club.
    pub fn own_share(self) -> f64 {
        match self {
            Self::ThisWater => OWN_SHARE,
            Self::AllWaters => OWN_SHARE_OF_ALL,
        }
    }
}

impl Shapes {
    /// The names of the kinds that a club's weights distinguish, in the order of its weights.
    pub fn kind_names(&self) -> &[String] {
        &self.kinds().names
    }

    /// The usual weights of the kinds; they sum to 1.
    pub fn kind_weights(&self) -> &[f64] {
        &self.kinds().usual
    }

    /// How likely each kind makes the waits of a day, as the natural logarithm beside the usual prior as a whole (a Bayes
    /// factor).
    pub fn day_by_kind(&self, waits: &[Wait]) -> Vec<f64> {
        let kinds = self.kinds();
        let sum: f64 = self.prior.iter().sum();
        let prior: Vec<f64> = self.prior.iter().map(|p| p / sum).collect();
        let likely = likelihoods(self, &EarlierDay { waits, weight: 1.0 }, &prior);
        let mut by_kind = vec![0.0; kinds.usual.len()];
        for ((kind, likely), prior) in kinds.of.iter().zip(likely).zip(prior) {
            by_kind[*kind] += likely * prior;
        }
        let ln = |(likely, usual): (f64, &f64)| libm::log(likely / usual).max(LEAST_LN);
        by_kind.into_iter().zip(&kinds.usual).map(ln).collect()
    }

    /// Checks a club's weights of the kinds.
    pub fn check_club(&self, weights: &[f64]) -> Result<(), ClubError> {
        let kinds = self.kinds().usual.len();
        if weights.len() != kinds {
            return Err(ClubError::Count { found: weights.len(), kinds });
        }
        if weights.iter().any(|w| !w.is_finite() || *w < 0.0) {
            return Err(ClubError::NotAWeight);
        }
        let sum: f64 = weights.iter().sum();
        if (sum - 1.0).abs() > ROUNDED {
            return Err(ClubError::Sum(sum));
        }
        Ok(())
    }

    /// The shapes for an angler of a club with these weights of the kinds.
    pub fn of_club(&self, weights: &[f64], fitted: FittedTo) -> Result<Arc<Self>, ClubError> {
        self.check_club(weights)?;
        let own = fitted.own_share();
        let Kinds { of, usual, .. } = self.kinds();
        let sum: f64 = weights.iter().sum();
        let times: Vec<f64> =
            weights.iter().zip(usual).map(|(w, u)| (1.0 - own) * w / sum / u + own).collect();
        let prior = self.prior.iter().zip(of).map(|(p, kind)| p * times[*kind]).collect();
        Ok(Arc::new(self.with_prior(prior)))
    }
}

#[cfg(test)]
mod tests;
