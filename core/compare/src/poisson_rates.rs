//! One rate of bites and two rates of bites: exact tests and exact limits.

use super::binomial::{Alternative, Limits, binomial_test, clopper_pearson};
use super::error::{CompareError, exposure, inner_probability};
use super::tails::{binomial_at_least, binomial_at_most, binomial_pmf, gamma_quantile};

/// Bites and the time fished for them, in any one unit of time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tally {
    /// Bites.
    pub bites: u64,
    /// Time fished, above zero.
    pub time: f64,
}

impl Tally {
    /// Bites per unit of time.
    pub fn rate(self) -> f64 {
        self.bites as f64 / self.time
    }
}

/// Exact limits for the mean of a Poisson count (Garwood, Biometrika 28:437-442, 1936); divide by
/// the time fished for a rate.
pub fn garwood(count: u64, confidence: f64) -> Result<Limits, CompareError> {
    let tail = 0.5 * (1.0 - inner_probability(confidence)?);
    let x = count as f64;
    let low = if count == 0 { 0.0 } else { gamma_quantile(x, tail) };
    Ok(Limits { low, high: gamma_quantile(x + 1.0, 1.0 - tail) })
}

/// The conditional exact test ("C-test") of two Poisson rates: given the total, the first count is
/// binomial (Przyborowski and Wilenski, Biometrika 31:313-323, 1940).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ConditionalTest {
    /// Total count, the binomial's trials.
    pub trials: u64,
    /// Share of the time that was the first side's: the binomial's probability if rates are equal.
    pub share: f64,
    /// P(first count this large or larger).
    pub greater: f64,
    /// P(first count this small or smaller).
    pub less: f64,
    /// Two-sided by doubling the smaller tail: the convention of this app (Krishnamoorthy and
    /// Thomson 2004).
    pub two_sided: f64,
    /// Two-sided by the minimum-likelihood rule (the convention of R's poisson.test).
    pub two_sided_min_likelihood: f64,
    /// Mid-p version of `greater`: half of the observed outcome's probability is left out.
    pub mid_greater: f64,
    /// Mid-p version of `less`.
    pub mid_less: f64,
}

/// Tests whether two rates are equal by conditioning on the total. No bites at all: every p is 1.
pub fn conditional_test(a: Tally, b: Tally) -> Result<ConditionalTest, CompareError> {
    let share = exposure(a.time)? / (a.time + exposure(b.time)?);
    let trials = a.bites.saturating_add(b.bites);
    let greater = binomial_at_least(a.bites, trials, share);
    let less = binomial_at_most(a.bites, trials, share);
    let here = binomial_pmf(a.bites, trials, share);
    Ok(ConditionalTest {
        trials,
        share,
        greater,
        less,
        two_sided: (2.0 * greater.min(less)).min(1.0),
        two_sided_min_likelihood: binomial_test(a.bites, trials, share, Alternative::TwoSided)?,
        mid_greater: greater - 0.5 * here,
        mid_less: less - 0.5 * here,
    })
}

/// Ratio of the first rate to the second with exact limits (Clopper-Pearson on the condition).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RateRatio {
    /// Observed ratio; `None` when the second side has no bites.
    pub ratio: Option<f64>,
    /// Exact limits; 0 to infinity when there are no bites at all.
    pub limits: Limits,
}

/// Exact limits for the ratio of two rates at `confidence`.
pub fn rate_ratio(a: Tally, b: Tally, confidence: f64) -> Result<RateRatio, CompareError> {
    let scale = exposure(b.time)? / exposure(a.time)?;
    let odds = |p: f64| if p >= 1.0 { f64::INFINITY } else { scale * p / (1.0 - p) };
    let share = clopper_pearson(a.bites, a.bites.saturating_add(b.bites), confidence)?;
    let ratio = (b.bites > 0).then(|| a.rate() / b.rate());
    Ok(RateRatio { ratio, limits: Limits { low: odds(share.low), high: odds(share.high) } })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tally(bites: u64, time: f64) -> Tally {
        Tally { bites, time }
    }

    #[test]
    fn time_must_be_above_zero() {
        for time in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert!(matches!(
                conditional_test(tally(1, time), tally(1, 1.0)),
                Err(CompareError::NoExposure(_))
            ));
        }
    }

    #[test]
    fn no_bites_at_all_is_no_evidence() {
        let test = conditional_test(tally(0, 2.0), tally(0, 3.0)).unwrap();
        assert_eq!((test.two_sided, test.two_sided_min_likelihood), (1.0, 1.0));
        let ratio = rate_ratio(tally(0, 2.0), tally(0, 3.0), 0.95).unwrap();
        assert_eq!(ratio.ratio, None);
        assert_eq!(ratio.limits, Limits { low: 0.0, high: f64::INFINITY });
    }

    proptest! {
        #[test]
        fn swapping_sides_swaps_the_tails(
            x in 0u64..25, y in 0u64..25, t in 0.1f64..50.0, u in 0.1f64..50.0,
        ) {
            let (a, b) = (tally(x, t), tally(y, u));
            let (one, two) = (conditional_test(a, b).unwrap(), conditional_test(b, a).unwrap());
            prop_assert!((one.greater - two.less).abs() < 1e-9);
            prop_assert!((one.two_sided - two.two_sided).abs() < 1e-9);
            for p in [one.two_sided, one.greater, one.less] {
                prop_assert!((0.0..=1.0).contains(&p));
            }
        }

        #[test]
        fn limits_contain_the_estimate(x in 0u64..200, y in 1u64..200, t in 0.1f64..50.0, u in 0.1f64..50.0) {
            prop_assert!(garwood(x, 0.95).unwrap().contains(x as f64));
            let ratio = rate_ratio(tally(x, t), tally(y, u), 0.9).unwrap();
            prop_assert!(ratio.limits.contains(ratio.ratio.unwrap()));
        }

        #[test]
        fn at_a_limit_of_the_ratio_the_one_sided_p_is_two_and_a_half_per_cent(x in 1u64..15, y in 1u64..15, t in 1.0f64..9.0) {
            // At the lower limit for the ratio, P(X >= x) is just 2.5 %: stretch the time by it.
            let low = rate_ratio(tally(x, t), tally(y, 3.0), 0.95).unwrap().limits.low;
            let at_limit = conditional_test(tally(x, t * low), tally(y, 3.0)).unwrap();
            prop_assert!((at_limit.greater - 0.025).abs() < 1e-9);
        }
    }
}
