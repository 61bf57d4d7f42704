//! Inference about a rate of bites: gamma prior, gamma posterior, and its forecast.

use super::binomial::Limits;
use super::error::{CompareError, inner_probability};
use super::poisson_rates::Tally;
use super::tails::{beta_cdf, beta_quantile, gamma_quantile, gamma_tail};
use statrs::function::gamma::ln_gamma;

/// A gamma law of a rate: mean `shape / rate`. The unit of `rate` is the unit of time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GammaRate {
    shape: f64,
    rate: f64,
}

/// The prior of this app for the rate of bites on one side of a change: shape one half, no time (the
/// invariant prior of Jeffreys 1946 for a Poisson rate). It is worth half a bite, does not depend on the unit
/// of time and treats both sides alike.
pub const JEFFREYS: GammaRate = GammaRate { shape: 0.5, rate: 0.0 };

impl GammaRate {
    /// A prior with this shape (above zero) and rate (zero allowed: no prior time).
    pub fn new(shape: f64, rate: f64) -> Result<Self, CompareError> {
        if !(shape.is_finite() && shape > 0.0) {
            return Err(CompareError::NotAPositive(shape));
        }
        if !(rate.is_finite() && rate >= 0.0) {
            return Err(CompareError::NotAPositive(rate));
        }
        Ok(Self { shape, rate })
    }

    /// The posterior after these bites in this time. The time may be zero if the prior has time.
    pub fn after(self, seen: Tally) -> Result<Self, CompareError> {
        if !(seen.time.is_finite() && seen.time >= 0.0) || self.rate + seen.time <= 0.0 {
            return Err(CompareError::NoExposure(seen.time));
        }
        Ok(Self { shape: self.shape + seen.bites as f64, rate: self.rate + seen.time })
    }

    /// Shape.
    pub fn shape(self) -> f64 {
        self.shape
    }

    /// Rate (time).
    pub fn rate(self) -> f64 {
        self.rate
    }

    /// Mean.
    pub fn mean(self) -> f64 {
        self.shape / self.rate
    }

    /// The value below which the rate lies with probability `p`.
    pub fn quantile(self, p: f64) -> Result<f64, CompareError> {
        Ok(gamma_quantile(self.shape, inner_probability(p)?) / self.rate)
    }

    /// The middle `level` of probability.
    pub fn interval(self, level: f64) -> Result<Limits, CompareError> {
        let tail = 0.5 * (1.0 - inner_probability(level)?);
        Ok(Limits { low: self.quantile(tail)?, high: self.quantile(1.0 - tail)? })
    }

    /// P(rate > x).
    pub fn above(self, x: f64) -> f64 {
        gamma_tail(self.shape, x * self.rate)
    }

    /// Bites in `time` to come: negative binomial.
    pub fn foretell(self, time: f64) -> Result<Foretold, CompareError> {
        if !(time.is_finite() && time >= 0.0) {
            return Err(CompareError::NoExposure(time));
        }
        Ok(Foretold { size: self.shape, stay: self.rate / (self.rate + time), mean: self.mean() * time })
    }
}

/// P(rate A > rate B), in closed form by the incomplete beta function: the share of A in
/// b_A A + b_B B is Beta(a_A, a_B), so P = 1 - I_x(a_A, a_B) at x = b_A / (b_A + b_B).
pub fn probability_greater(a: GammaRate, b: GammaRate) -> f64 {
    beta_cdf(b.shape, a.shape, b.rate / (a.rate + b.rate))
}

/// The middle `level` of the ratio rate A / rate B (a beta-prime law, from the same beta share).
pub fn ratio_interval(a: GammaRate, b: GammaRate, level: f64) -> Result<Limits, CompareError> {
    let tail = 0.5 * (1.0 - inner_probability(level)?);
    let scale = b.rate / a.rate;
    // odds of a share = share / (1 - share), each read off its own small quantile.
    let odds = |p: f64| {
        let share = beta_quantile(a.shape, b.shape, p);
        let rest = beta_quantile(b.shape, a.shape, 1.0 - p);
        scale * share / rest
    };
    Ok(Limits { low: odds(tail), high: odds(1.0 - tail) })
}

/// A negative binomial count of bites to come.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Foretold {
    size: f64,
    stay: f64,
    mean: f64,
}

impl Foretold {
    /// A negative binomial count with this size (above zero) and success probability `prob` in
    /// (0, 1]: mean size (1 - prob) / prob.
    pub fn negative_binomial(size: f64, prob: f64) -> Result<Self, CompareError> {
        if !(size.is_finite() && size > 0.0) {
            return Err(CompareError::NotAPositive(size));
        }
        if !(prob > 0.0 && prob <= 1.0) {
            return Err(CompareError::NotAProbability(prob));
        }
        Ok(Self { size, stay: prob, mean: size * (1.0 - prob) / prob })
    }

    /// Mean count.
    pub fn mean(self) -> f64 {
        self.mean
    }

    /// Variance of the count.
    pub fn variance(self) -> f64 {
        self.mean / self.stay
    }

    /// Size (shape of the gamma law behind it).
    pub fn size(self) -> f64 {
        self.size
    }

    /// Success probability.
    pub fn prob(self) -> f64 {
        self.stay
    }

    /// P(count = k).
    pub fn pmf(self, k: u64) -> f64 {
        if self.stay >= 1.0 {
            return if k == 0 { 1.0 } else { 0.0 };
        }
        let k = k as f64;
        let log = ln_gamma(self.size + k) - ln_gamma(self.size) - ln_gamma(k + 1.0)
            + self.size * libm::log(self.stay)
            + k * libm::log1p(-self.stay);
        libm::exp(log)
    }

    /// P(count >= k).
    pub fn at_least(self, k: u64) -> f64 {
        if k == 0 {
            return 1.0;
        }
        beta_cdf(k as f64, self.size, 1.0 - self.stay)
    }

    /// Smallest k with P(count <= k) >= p, for p in (0, 1).
    pub fn quantile(self, p: f64) -> Result<u64, CompareError> {
        let p = inner_probability(p)?;
        let below = |k: u64| self.at_least(k + 1) <= 1.0 - p;
        let (mut low, mut high) = (0, 1);
        while !below(high) && high < 1 << 50 {
            low = high;
            high *= 2;
        }
        while low < high {
            let middle = low + (high - low) / 2;
            if below(middle) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        Ok(low)
    }

    /// The count beyond which less than 1e-14 lies, at most 1,000,000.
    fn reach(self) -> u64 {
        let mut k = 16;
        while k < 1_000_000 && self.at_least(k) > 1e-14 {
            k *= 2;
        }
        k
    }
}

/// P(more on A), P(the same), P(more on B) for two independent counts to come.
pub fn who_has_more(a: Foretold, b: Foretold) -> [f64; 3] {
    let reach = a.reach().max(b.reach());
    let (mut more_a, mut same, mut more_b) = (0.0, 0.0, 0.0);
    for k in 0..=reach {
        let (here_a, here_b) = (a.pmf(k), b.pmf(k));
        more_a += here_b * a.at_least(k + 1);
        same += here_a * here_b;
        more_b += here_a * b.at_least(k + 1);
    }
    [more_a, same, more_b]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chance::Chance;
    use proptest::prelude::*;

    fn gamma(shape: f64, rate: f64) -> GammaRate {
        GammaRate::new(shape, rate).unwrap()
    }

    #[test]
    fn no_time_and_no_prior_time_is_refused() {
        let nothing = Tally { bites: 0, time: 0.0 };
        assert_eq!(JEFFREYS.after(nothing), Err(CompareError::NoExposure(0.0)));
        assert!(gamma(1.0, 1.0).after(nothing).is_ok());
        assert!(GammaRate::new(0.0, 1.0).is_err());
        assert!(GammaRate::new(1.0, f64::NAN).is_err());
    }

    #[test]
    fn the_closed_form_agrees_with_simulation() {
        let (a, b) = (gamma(9.5, 6.0), gamma(3.5, 5.5));
        let mut chance = Chance::new(5, 0);
        let n = 40_000;
        let wins = (0..n).filter(|_| chance.gamma(9.5) / 6.0 > chance.gamma(3.5) / 5.5).count();
        let p = probability_greater(a, b);
        let error = (p * (1.0 - p) / f64::from(n)).sqrt();
        assert!((wins as f64 / f64::from(n) - p).abs() < 5.0 * error);
    }

    proptest! {
        #[test]
        fn the_probabilities_of_both_sides_sum_to_one(a in 0.5f64..40.0, b in 0.5f64..40.0, t in 0.1f64..20.0, u in 0.1f64..20.0) {
            let (one, two) = (gamma(a, t), gamma(b, u));
            let (p, q) = (probability_greater(one, two), probability_greater(two, one));
            prop_assert!((p + q - 1.0).abs() < 1e-10);
            let r = ratio_interval(one, two, 0.9).unwrap();
            let s = ratio_interval(two, one, 0.9).unwrap();
            prop_assert!((r.low * s.high - 1.0).abs() < 1e-8);
            // Inside the middle 90 % of the ratio lies 1 exactly when neither side is 95 % sure.
            let close = (p - 0.95).abs() < 1e-6 || (q - 0.95).abs() < 1e-6;
            prop_assert!(close || r.contains(1.0) == (p < 0.95 && q < 0.95));
        }

        #[test]
        fn a_forecast_count_is_a_distribution(size in 0.5f64..30.0, prob in 0.05f64..0.99) {
            let law = Foretold::negative_binomial(size, prob).unwrap();
            let total: f64 = (0..2_000).map(|k| law.pmf(k)).sum();
            prop_assert!((total - 1.0).abs() < 1e-9);
            let k = law.quantile(0.5).unwrap();
            prop_assert!(1.0 - law.at_least(k + 1) >= 0.5 - 1e-12);
            prop_assert!(k == 0 || 1.0 - law.at_least(k) < 0.5);
        }
    }
}
