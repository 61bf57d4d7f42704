//! The weight of fish to come.
//!
//! Fish have kinds: a class of the match, or any fish if no class was entered. For each kind, the mean
//! weight, the spread of single fish and the number of fish behind them are known. Each future draws the
//! shares of the kinds (a Dirichlet distribution on those landed; the Bayesian bootstrap of Rubin 1981 over
//! kinds), one mean for each kind, and then every fish about that mean. Means and fish are log-normal, so
//! that none is below zero, and a few are large if the spread is wide.

use super::ForecastError;
use restwater_compare::chance::Chance;

/// Fish of one kind, in any one unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FishKind {
    /// How many of the landed fish are of this kind; if none was landed, one for each kind that may come.
    pub fish: u32,
    /// Mean weight of one; 0 if fish of this kind don't count.
    pub mean: f64,
    /// Standard deviation of single fish about the mean.
    pub sd: f64,
    /// How many fish the mean is based on.
    pub rests_on: f64,
}

impl FishKind {
    /// Fish that all weigh the same. A weight of 1 counts them.
    pub const fn alike(weight: f64) -> Self {
        Self { fish: 1, mean: weight, sd: 0.0, rests_on: 1.0 }
    }

    pub(super) fn check(&self) -> Result<(), ForecastError> {
        let not_below = |x: f64, least: f64| x.is_finite() && x >= least;
        let bad = [(self.mean, 0.0), (self.sd, 0.0), (self.rests_on, 1.0)]
            .into_iter()
            .find(|(x, l)| !not_below(*x, *l));
        bad.map_or(Ok(()), |(x, _)| Err(ForecastError::NotAFish(x)))
    }
}

/// The fish of one future.
pub(super) struct Fish {
    /// Cumulative share of each kind.
    shares: Vec<f64>,
    /// Mean of each kind, and the coefficient of variation of single fish.
    kinds: Vec<(f64, f64)>,
}

impl Fish {
    pub(super) fn draw(kinds: &[FishKind], chance: &mut Chance) -> Self {
        let mut shares: Vec<f64> = kinds.iter().map(|kind| chance.gamma(f64::from(kind.fish))).collect();
        let total: f64 = shares.iter().sum();
        let mut so_far = 0.0;
        for share in &mut shares {
            so_far += *share / total;
            *share = so_far;
        }
        let of = |kind: &FishKind| {
            let scatter = if kind.mean > 0.0 { kind.sd / kind.mean } else { 0.0 };
            (about(kind.mean, scatter / kind.rests_on.sqrt(), chance), scatter)
        };
        Self { shares, kinds: kinds.iter().map(of).collect() }
    }

    /// One fish.
    pub(super) fn weight(&self, chance: &mut Chance) -> f64 {
        let u = chance.uniform();
        let place = self.shares.partition_point(|&share| share < u).min(self.kinds.len() - 1);
        let (mean, scatter) = self.kinds[place];
        about(mean, scatter, chance)
    }
}

/// A log-normal figure with this mean and coefficient of variation.
fn about(mean: f64, scatter: f64, chance: &mut Chance) -> f64 {
    let variance = libm::log1p(scatter * scatter);
    if variance > 0.0 { mean * libm::exp(variance.sqrt() * chance.normal() - 0.5 * variance) } else { mean }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The variance of one fish is that of single fish combined with that of their mean.
    #[test]
    fn the_weight_of_a_fish_includes_the_uncertainty_of_the_mean() {
        let kinds = [FishKind { fish: 4, mean: 500.0, sd: 400.0, rests_on: 5.0 }];
        let mut chance = Chance::new(3, 3);
        let drawn: Vec<f64> =
            (0..40_000).map(|_| Fish::draw(&kinds, &mut chance).weight(&mut chance)).collect();
        let mean = drawn.iter().sum::<f64>() / drawn.len() as f64;
        let variance = drawn.iter().map(|w| (w - mean).powi(2)).sum::<f64>() / drawn.len() as f64;
        assert!((mean / 500.0 - 1.0).abs() < 0.02, "{mean}");
        // (1 + c) (1 + c / n) - 1 times the mean squared, c being 0.64 and n 5.
        let wanted = ((1.0 + 0.64) * (1.0 + 0.64 / 5.0) - 1.0) * 250_000.0;
        assert!((variance / wanted - 1.0).abs() < 0.06, "{variance} {wanted}");
    }

    #[test]
    fn kinds_come_as_often_as_they_were_landed() {
        let kind = |fish, mean| FishKind { fish, mean, sd: 0.0, rests_on: 3.0 };
        let kinds = [kind(6, 100.0), kind(2, 900.0), kind(1, 0.0)];
        let mut chance = Chance::new(4, 4);
        let drawn: Vec<f64> =
            (0..20_000).map(|_| Fish::draw(&kinds, &mut chance).weight(&mut chance)).collect();
        for (weight, share) in [(100.0, 6.0 / 9.0), (900.0, 2.0 / 9.0), (0.0, 1.0 / 9.0)] {
            let found = drawn.iter().filter(|w| **w == weight).count() as f64 / drawn.len() as f64;
            assert!((found - share).abs() < 0.015, "{weight}: {found} {share}");
        }
    }

    #[test]
    fn impossible_weights_are_refused() {
        assert!(FishKind::alike(1.0).check().is_ok());
        assert!(FishKind::alike(f64::NAN).check().is_err());
        assert!(FishKind { sd: -1.0, ..FishKind::alike(1.0) }.check().is_err());
        assert!(FishKind { rests_on: 0.0, ..FishKind::alike(1.0) }.check().is_err());
    }
}
