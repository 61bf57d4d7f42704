//! Size classes: fish are logged by class, with a mean weight learned from those that were weighed.
//!
//! Weights within a class are assumed to be normal with unknown mean and spread, under a conjugate prior that
//! counts as a few fish (Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, section 3.3). The learned mean
//! is therefore shrunk towards the angler's first guess: with n weighed fish and a guess worth k fish, mean =
//! (k guess + sum of weights) / (k + n).

use super::weight::Weight;
use serde::{Deserialize, Serialize};

/// What the angler assumes about a class before weighing any fish.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SizeClass {
    /// The angler's name for it.
    pub name: String,
    /// Guessed mean weight of one fish.
    pub guess: Weight,
    /// Guessed spread of single fish about the mean, as a share of it (standard deviation over mean).
    pub spread: f64,
}

/// How many weighed fish a guess counts as: the project's own choice, no source, stated in the app.
pub const GUESS_COUNTS_AS: f64 = 3.0;

/// The spread a new class starts with: the project's own choice, no source, marked as a guess.
pub const STARTING_SPREAD: f64 = 0.35;

/// Why a class can't be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ClassError {
    /// No name.
    #[error("a size class needs a name")]
    NoName,
    /// An impossible spread.
    #[error("the spread of \"{name}\" must be above 0 and at most 2, not {spread}")]
    BadSpread {
        /// Which class.
        name: String,
        /// What was entered.
        spread: f64,
    },
    /// A weight that can't be one fish.
    #[error(transparent)]
    Weight(#[from] super::weight::WeightError),
}

/// What is known about one fish of a class, grams.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Learned {
    /// Mean weight of one fish, shrunk towards the guess.
    pub mean_g: f64,
    /// Standard deviation of single fish about the mean.
    pub sd_g: f64,
    /// How many fish the mean is based on: those weighed, plus [`GUESS_COUNTS_AS`] for the guess.
    pub rests_on: f64,
    /// Fish weighed.
    pub weighed: usize,
}

/// Sum of several fish logged by class, grams.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Estimate {
    /// Expected.
    pub mean_g: f64,
    /// Variance, square grams.
    pub variance: f64,
}

impl SizeClass {
    /// Checks the class and learns its mean from the fish of it that were weighed.
    pub fn learn(&self, weighed: &[Weight]) -> Result<Learned, ClassError> {
        if self.name.trim().is_empty() {
            return Err(ClassError::NoName);
        }
        if !(self.spread > 0.0 && self.spread <= 2.0) {
            return Err(ClassError::BadSpread { name: self.name.clone(), spread: self.spread });
        }
        let guess = self.guess.of_a_fish()?.grams();
        let mut grams = Vec::with_capacity(weighed.len());
        for weight in weighed {
            grams.push(weight.of_a_fish()?.grams());
        }
        Ok(posterior(guess, guess * self.spread, &grams))
    }
}

/// Posterior of the conjugate normal model with the prior worth k fish for mean and spread alike.
fn posterior(guess: f64, sd: f64, grams: &[f64]) -> Learned {
    let (k, n) = (GUESS_COUNTS_AS, grams.len() as f64);
    let average = if grams.is_empty() { guess } else { grams.iter().sum::<f64>() / n };
    let within: f64 = grams.iter().map(|g| (g - average) * (g - average)).sum();
    let apart = (average - guess) * (average - guess) * k * n / (k + n);
    let variance = (k * sd * sd + within + apart) / (k + n);
    Learned {
        mean_g: (k * guess + n * average) / (k + n),
        sd_g: variance.sqrt(),
        rests_on: k + n,
        weighed: grams.len(),
    }
}

impl Learned {
    /// The sum of `count` fish logged by class: it has their own spread and the shared uncertainty of the
    /// mean, so variance = count sd^2 + count^2 sd^2 / rests_on.
    pub fn times(&self, count: u32) -> Estimate {
        let (n, variance) = (f64::from(count), self.sd_g * self.sd_g);
        Estimate { mean_g: n * self.mean_g, variance: n * variance + n * n * variance / self.rests_on }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stockie() -> SizeClass {
        SizeClass { name: "stockie".into(), guess: Weight::Grams(600), spread: 0.25 }
    }

    #[test]
    fn without_a_weighed_fish_the_mean_is_the_guess() {
        let learned = stockie().learn(&[]).unwrap();
        assert!((learned.mean_g - 600.0).abs() < 1e-12 && (learned.sd_g - 150.0).abs() < 1e-12);
    }

    /// By hand: k = 3 at 600 g, three fish of 700, 800 and 900 g: mean (1800 + 2400) / 6 = 700;
    /// variance (3 x 150^2 + 20 000 + 200^2 x 3 x 3 / 6) / 6 = 147 500 / 6.
    #[test]
    fn weighed_fish_pull_the_mean_from_the_guess() {
        let learned = stockie().learn(&[Weight::Grams(700), Weight::Grams(800), Weight::Grams(900)]).unwrap();
        assert!((learned.mean_g - 700.0).abs() < 1e-9);
        assert!((learned.sd_g * learned.sd_g - 147_500.0 / 6.0).abs() < 1e-6);
        assert_eq!(learned.weighed, 3);
    }

    #[test]
    fn uncertainty_of_the_mean_grows_faster_than_the_spread_of_single_fish() {
        let learned = stockie().learn(&[]).unwrap();
        let ten = learned.times(10);
        assert!((ten.mean_g - 6_000.0).abs() < 1e-9);
        assert!((ten.variance - (10.0 + 100.0 / 3.0) * 22_500.0).abs() < 1e-6);
        assert_eq!(learned.times(0), Estimate::default());
    }

    #[test]
    fn impossible_classes_and_weights_are_refused() {
        assert_eq!(SizeClass { name: " ".into(), ..stockie() }.learn(&[]), Err(ClassError::NoName));
        let wild = SizeClass { spread: f64::NAN, ..stockie() };
        assert!(matches!(wild.learn(&[]), Err(ClassError::BadSpread { .. })));
        assert!(matches!(stockie().learn(&[Weight::Grams(-5)]), Err(ClassError::Weight(_))));
    }
}
