//! One share of casts or fish: exact limits and the exact test.

use super::error::{CompareError, inner_probability};
use super::tails::{beta_quantile, binomial_at_least, binomial_at_most, binomial_pmf};

/// Which departures from equality count against it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Alternative {
    /// Either way.
    TwoSided,
    /// The first is greater.
    Greater,
    /// The first is less.
    Less,
}

/// Two limits; `high` may be infinite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Lower limit.
    pub low: f64,
    /// Upper limit.
    pub high: f64,
}

impl Limits {
    /// Whether `x` is between them, the limits included.
    pub fn contains(self, x: f64) -> bool {
        self.low <= x && x <= self.high
    }
}

/// Outcomes at least as unlikely as the observed one, within this relative slack, are counted by
/// the minimum-likelihood rule (the slack that R's binom.test uses).
pub(crate) const TIE_SLACK: f64 = 1.0 + 1e-7;

fn counts(successes: u64, trials: u64) -> Result<(), CompareError> {
    if successes > trials { Err(CompareError::MoreThanAll { successes, trials }) } else { Ok(()) }
}

/// Exact limits for a probability, `confidence` in (0, 1) (Clopper and Pearson, Biometrika
/// 26:404-413, 1934). No trials: 0 to 1.
pub fn clopper_pearson(successes: u64, trials: u64, confidence: f64) -> Result<Limits, CompareError> {
    counts(successes, trials)?;
    let tail = 0.5 * (1.0 - inner_probability(confidence)?);
    let (x, n) = (successes as f64, trials as f64);
    let low = if successes == 0 { 0.0 } else { beta_quantile(x, n - x + 1.0, tail) };
    // The upper limit is computed as the complement of a small quantile, to keep its precision near 1.
    let high = if successes == trials { 1.0 } else { 1.0 - beta_quantile(n - x, x + 1.0, tail) };
    Ok(Limits { low, high })
}

/// p-value of the exact binomial test of `p0`. Two-sided by the minimum-likelihood rule: all
/// outcomes no likelier than the observed one (as R's binom.test).
pub fn binomial_test(
    successes: u64,
    trials: u64,
    p0: f64,
    alternative: Alternative,
) -> Result<f64, CompareError> {
    counts(successes, trials)?;
    if !(0.0..=1.0).contains(&p0) {
        return Err(CompareError::NotAProbability(p0));
    }
    Ok(match alternative {
        Alternative::Greater => binomial_at_least(successes, trials, p0),
        Alternative::Less => binomial_at_most(successes, trials, p0),
        Alternative::TwoSided => no_likelier(successes, trials, p0),
    })
}

/// P(outcomes no likelier than `k`): the tail of `k` and the tail beyond the matching outcome on the
/// other side of the mode, found by bisection since the probabilities rise to the mode and fall after.
fn no_likelier(k: u64, n: u64, p: f64) -> f64 {
    if p <= 0.0 {
        return if k == 0 { 1.0 } else { 0.0 };
    }
    if p >= 1.0 {
        return if k == n { 1.0 } else { 0.0 };
    }
    let limit = binomial_pmf(k, n, p) * TIE_SLACK;
    let mode = (((n as f64 + 1.0) * p) as u64).min(n);
    if binomial_pmf(mode, n, p) <= limit {
        return 1.0;
    }
    let unlikely = |j: u64| binomial_pmf(j, n, p) <= limit;
    let total = if k < mode {
        let from = first_above(mode, n, unlikely);
        binomial_at_most(k, n, p) + binomial_at_least(from, n, p)
    } else {
        // On the left side: the last j below the mode that is no likelier.
        let reach = first_above(0, mode, |d| unlikely(mode - d));
        let left = if reach > mode { 0.0 } else { binomial_at_most(mode - reach, n, p) };
        left + binomial_at_least(k, n, p)
    };
    total.min(1.0)
}

/// The first integer in `low..=high` for which `holds` (false, then true) is true; `high + 1` if none.
fn first_above(low: u64, high: u64, holds: impl Fn(u64) -> bool) -> u64 {
    let (mut low, mut high) = (low, high + 1);
    while low < high {
        let middle = low + (high - low) / 2;
        if holds(middle) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    low
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn brute(k: u64, n: u64, p: f64) -> f64 {
        let limit = binomial_pmf(k, n, p) * TIE_SLACK;
        (0..=n).map(|j| binomial_pmf(j, n, p)).filter(|&q| q <= limit).sum()
    }

    #[test]
    fn impossible_counts_and_odd_levels_are_refused() {
        assert_eq!(clopper_pearson(3, 2, 0.95), Err(CompareError::MoreThanAll { successes: 3, trials: 2 }));
        assert!(matches!(clopper_pearson(1, 2, f64::NAN), Err(CompareError::NotAProbability(_))));
        assert!(matches!(binomial_test(1, 2, 1.5, Alternative::Less), Err(CompareError::NotAProbability(_))));
    }

    #[test]
    fn without_trials_the_limits_are_zero_and_one() {
        assert_eq!(clopper_pearson(0, 0, 0.95), Ok(Limits { low: 0.0, high: 1.0 }));
        assert_eq!(binomial_test(0, 0, 0.3, Alternative::TwoSided), Ok(1.0));
    }

    proptest! {
        #[test]
        fn two_sided_p_is_the_brute_sum(n in 0u64..60, share in 0.0f64..=1.0, p in 0.01f64..0.99) {
            let k = (n as f64 * share) as u64;
            let fast = binomial_test(k, n, p, Alternative::TwoSided).unwrap();
            prop_assert!((fast - brute(k, n, p).min(1.0)).abs() < 1e-9, "{k} of {n} at {p}");
        }

        #[test]
        fn limits_contain_the_share_and_swap_with_the_outcomes(n in 1u64..500, share in 0.0f64..=1.0) {
            let k = (n as f64 * share) as u64;
            let limits = clopper_pearson(k, n, 0.95).unwrap();
            prop_assert!(limits.contains(k as f64 / n as f64));
            let other = clopper_pearson(n - k, n, 0.95).unwrap();
            prop_assert!((limits.low - (1.0 - other.high)).abs() < 1e-12);
        }
    }
}
