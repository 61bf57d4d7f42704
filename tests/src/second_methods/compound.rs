//! Total weight when both the number of fish and the weight of each are uncertain: a compound law.

use restwater_compare::gamma_poisson::Foretold;
use restwater_compare::tails::gamma_cdf;

/// The number of fish: distributions of the class p(k) = (a + b / k) p(k - 1), for which Panjer's recursion
/// holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CountLaw {
    /// Poisson with this mean.
    Poisson(f64),
    /// Negative binomial: a Poisson count with a gamma rate.
    NegativeBinomial(Foretold),
}

/// Why a compound law can't be made.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum CompoundError {
    /// A mean, shape or scale that is not positive and finite.
    #[error("{0} can't be a mean, a shape or a scale of weights: it must be finite and above zero")]
    NotAPositive(f64),
    /// Probabilities of the weight of one fish that don't add up to 1, or include an invalid one.
    #[error("the chances of the weights of one fish add up to {0}, not to 1: check the weights")]
    NotALaw(f64),
    /// The chance of no weight at all is too small to start the recursion from.
    #[error("too many fish to add up weight by weight: forecast a shorter time")]
    TooMany,
}

impl CountLaw {
    /// A Poisson count.
    pub fn poisson(mean: f64) -> Result<Self, CompoundError> {
        if mean.is_finite() && mean >= 0.0 {
            Ok(Self::Poisson(mean))
        } else {
            Err(CompoundError::NotAPositive(mean))
        }
    }

    /// Mean number.
    pub fn mean(self) -> f64 {
        match self {
            Self::Poisson(mean) => mean,
            Self::NegativeBinomial(law) => law.mean(),
        }
    }

    /// Variance of the number.
    pub fn variance(self) -> f64 {
        match self {
            Self::Poisson(mean) => mean,
            Self::NegativeBinomial(law) => law.variance(),
        }
    }

    /// P(number = k).
    pub fn pmf(self, k: u64) -> f64 {
        match self {
            Self::Poisson(mean) => restwater_compare::tails::poisson_pmf(k, mean),
            Self::NegativeBinomial(law) => law.pmf(k),
        }
    }

    /// Panjer's a and b.
    fn recursion(self) -> (f64, f64) {
        match self {
            Self::Poisson(mean) => (0.0, mean),
            Self::NegativeBinomial(law) => {
                let go_on = 1.0 - law.prob();
                (go_on, (law.size() - 1.0) * go_on)
            }
        }
    }

    /// Probability generating function at `z` in 0..=1: the chance of a zero total if each fish adds nothing
    /// with probability z.
    fn generating(self, z: f64) -> f64 {
        match self {
            Self::Poisson(mean) => libm::exp(mean * (z - 1.0)),
            Self::NegativeBinomial(law) => {
                let inside = 1.0 - (1.0 - law.prob()) * z;
                libm::exp(law.size() * (libm::log(law.prob()) - libm::log(inside)))
            }
        }
    }
}

/// Probabilities of a total of 0, 1, ..., `most` units when each of a random number of fish weighs
/// j units with probability `severity[j]` (Panjer, ASTIN Bulletin 12:22-26, 1981).
pub fn panjer(count: CountLaw, severity: &[f64], most: usize) -> Result<Vec<f64>, CompoundError> {
    let total: f64 = severity.iter().sum();
    if severity.iter().any(|p| !(0.0..=1.0).contains(p)) || (total - 1.0).abs() > 1e-9 {
        return Err(CompoundError::NotALaw(total));
    }
    let (a, b) = count.recursion();
    let nothing = severity[0];
    let mut pmf = Vec::with_capacity(most + 1);
    pmf.push(count.generating(nothing));
    if pmf[0] < f64::MIN_POSITIVE {
        return Err(CompoundError::TooMany);
    }
    let scale = 1.0 / (1.0 - a * nothing);
    for s in 1..=most {
        let reach = s.min(severity.len() - 1);
        let sum: f64 = (1..=reach).map(|j| (a + b * j as f64 / s as f64) * severity[j] * pmf[s - j]).sum();
        pmf.push(scale * sum);
    }
    Ok(pmf)
}

/// Mean and variance of a compound total, from those of the number and of one fish (Wald).
pub fn compound_moments(count: CountLaw, mean: f64, variance: f64) -> (f64, f64) {
    (count.mean() * mean, count.mean() * variance + count.variance() * mean * mean)
}

/// The weight of one fish as a gamma law.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GammaWeight {
    shape: f64,
    scale: f64,
}

impl GammaWeight {
    /// A gamma law of weights with mean `shape` x `scale`, in any unit of weight.
    pub fn new(shape: f64, scale: f64) -> Result<Self, CompoundError> {
        for x in [shape, scale] {
            if !(x.is_finite() && x > 0.0) {
                return Err(CompoundError::NotAPositive(x));
            }
        }
        Ok(Self { shape, scale })
    }

    /// Mean and variance of one fish.
    pub fn moments(self) -> (f64, f64) {
        (self.shape * self.scale, self.shape * self.scale * self.scale)
    }
}

/// Number of fish beyond which the remaining chance is dropped.
const DROPPED: f64 = 1e-13;
/// Most fish that are added up.
const MOST_FISH: u64 = 100_000;

/// P(total weight <= x): over the number of fish, since a sum of k gamma weights is gamma with k
/// times the shape.
pub fn compound_gamma_cdf(count: CountLaw, one: GammaWeight, x: f64) -> f64 {
    if x.is_nan() || x < 0.0 {
        return 0.0;
    }
    let mut cdf = 0.0;
    let mut seen = 0.0;
    for k in 0..MOST_FISH {
        let here = count.pmf(k);
        seen += here;
        cdf += here * gamma_cdf(k as f64 * one.shape, x / one.scale);
        if 1.0 - seen < DROPPED && k as f64 > count.mean() {
            break;
        }
    }
    cdf.min(1.0)
}

/// Smallest weight that the total does not exceed with probability `p` in (0, 1); 0 if no fish at all is at
/// least that probable.
pub fn compound_gamma_quantile(count: CountLaw, one: GammaWeight, p: f64) -> Option<f64> {
    if !(p > 0.0 && p < 1.0) {
        return None;
    }
    if count.pmf(0) >= p {
        return Some(0.0);
    }
    let start = (count.mean() * one.shape * one.scale).max(1e-9);
    Some(restwater_compare::tails::crossing_above_zero(start, p, |x| compound_gamma_cdf(count, one, x)))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn law(size: f64, prob: f64) -> CountLaw {
        CountLaw::NegativeBinomial(Foretold::negative_binomial(size, prob).unwrap())
    }

    #[test]
    fn invalid_laws_are_refused() {
        let count = CountLaw::poisson(1.0).unwrap();
        assert!(matches!(panjer(count, &[0.5, 0.4], 5), Err(CompoundError::NotALaw(_))));
        assert!(matches!(panjer(count, &[1.5, -0.5], 5), Err(CompoundError::NotALaw(_))));
        assert!(matches!(panjer(count, &[], 5), Err(CompoundError::NotALaw(_))));
        assert!(CountLaw::poisson(f64::NAN).is_err());
        assert!(GammaWeight::new(0.0, 1.0).is_err());
        let crowd = CountLaw::poisson(5_000.0).unwrap();
        assert_eq!(panjer(crowd, &[0.0, 1.0], 5), Err(CompoundError::TooMany));
    }

    #[test]
    fn one_unit_a_fish_gives_back_the_count() {
        for count in [CountLaw::poisson(2.3).unwrap(), law(3.5, 0.4)] {
            let pmf = panjer(count, &[0.0, 1.0], 30).unwrap();
            for (k, p) in pmf.iter().enumerate() {
                assert!((p - count.pmf(k as u64)).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn a_quantile_undoes_the_compound() {
        let one = GammaWeight::new(2.0, 150.0).unwrap();
        let x = compound_gamma_quantile(law(6.0, 0.6), one, 0.8).unwrap();
        assert!((compound_gamma_cdf(law(6.0, 0.6), one, x) - 0.8).abs() < 1e-9);
        assert_eq!(compound_gamma_quantile(law(6.0, 0.99), one, 0.5), Some(0.0));
    }

    /// The pmf by summing complete convolutions of the severity, one number of fish at a time.
    fn by_convolution(count: CountLaw, severity: &[f64], most: usize) -> Vec<f64> {
        let mut power = vec![0.0; most + 1];
        power[0] = 1.0;
        let mut total = vec![0.0; most + 1];
        for k in 0..200 {
            for (t, p) in total.iter_mut().zip(&power) {
                *t += count.pmf(k) * p;
            }
            let next = |s: usize| (0..=s.min(severity.len() - 1)).map(|j| severity[j] * power[s - j]).sum();
            power = (0..=most).map(next).collect();
        }
        total
    }

    proptest! {
        #[test]
        fn panjer_equals_convolution(
            weights in prop::collection::vec(0.05f64..1.0, 2..6), size in 0.5f64..8.0, prob in 0.3f64..0.95,
        ) {
            let total: f64 = weights.iter().sum();
            let severity: Vec<f64> = weights.iter().map(|w| w / total).collect();
            for count in [law(size, prob), CountLaw::poisson(size).unwrap()] {
                let fast = panjer(count, &severity, 12).unwrap();
                for (x, y) in fast.iter().zip(by_convolution(count, &severity, 12)) {
                    prop_assert!((x - y).abs() < 1e-10);
                }
            }
        }
    }
}
