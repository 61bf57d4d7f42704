//! Tail probabilities and their inverses, on the incomplete beta and gamma functions of `statrs`.
//!
//! Counts are exact integers up to 2^53; inverses are found by bisection on a scale on which the
//! answer is resolved to the last bits even when it is tiny, since a limit of 1e-12 must be right
//! relatively, not only absolutely.

use statrs::function::beta::checked_beta_reg;
use statrs::function::gamma::{checked_gamma_lr, checked_gamma_ur, ln_gamma};

/// Regularised incomplete beta I_x(a, b); the limits if a or b is 0.
pub(crate) fn beta_cdf(a: f64, b: f64, x: f64) -> f64 {
    if a <= 0.0 {
        return 1.0;
    }
    if b <= 0.0 {
        return if x >= 1.0 { 1.0 } else { 0.0 };
    }
    checked_beta_reg(a, b, x.clamp(0.0, 1.0)).unwrap_or(f64::NAN).clamp(0.0, 1.0)
}

/// Regularised lower incomplete gamma P(a, x).
pub fn gamma_cdf(a: f64, x: f64) -> f64 {
    if a <= 0.0 {
        return 1.0;
    }
    if x <= 0.0 {
        return 0.0;
    }
    checked_gamma_lr(a, x).unwrap_or(f64::NAN).clamp(0.0, 1.0)
}

/// Regularised upper incomplete gamma Q(a, x) = 1 - P(a, x), without the cancellation.
pub(crate) fn gamma_tail(a: f64, x: f64) -> f64 {
    if a <= 0.0 {
        return 0.0;
    }
    if x <= 0.0 {
        return 1.0;
    }
    checked_gamma_ur(a, x).unwrap_or(f64::NAN).clamp(0.0, 1.0)
}

/// P(Z <= z) of a standard normal.
pub(crate) fn normal_below(z: f64) -> f64 {
    0.5 * libm::erfc(-z * core::f64::consts::FRAC_1_SQRT_2)
}

/// Two-sided tail of a standard normal: P(|Z| >= |z|).
pub(crate) fn normal_two_sided(z: f64) -> f64 {
    libm::erfc(z.abs() * core::f64::consts::FRAC_1_SQRT_2)
}

/// P(X >= k) for X binomial(n, p).
pub(crate) fn binomial_at_least(k: u64, n: u64, p: f64) -> f64 {
    if k == 0 {
        return 1.0;
    }
    if k > n {
        return 0.0;
    }
    beta_cdf(k as f64, (n - k) as f64 + 1.0, p)
}

/// P(X <= k) for X binomial(n, p).
pub(crate) fn binomial_at_most(k: u64, n: u64, p: f64) -> f64 {
    if k >= n {
        return 1.0;
    }
    beta_cdf((n - k) as f64, k as f64 + 1.0, 1.0 - p)
}

/// ln of the binomial coefficient (n over k).
pub(crate) fn ln_choose(n: f64, k: f64) -> f64 {
    ln_gamma(n + 1.0) - ln_gamma(k + 1.0) - ln_gamma(n - k + 1.0)
}

/// P(X = k) for X binomial(n, p).
pub(crate) fn binomial_pmf(k: u64, n: u64, p: f64) -> f64 {
    if k > n {
        return 0.0;
    }
    let (successes, failures) = (k as f64, (n - k) as f64);
    let log = ln_choose(n as f64, successes) + times_log(successes, p) + times_log1m(failures, p);
    libm::exp(log)
}

/// `k` ln `p`, with 0 ln 0 = 0.
fn times_log(k: f64, p: f64) -> f64 {
    if k == 0.0 { 0.0 } else { k * libm::log(p) }
}

/// `k` ln(1 - `p`), with 0 ln 0 = 0.
fn times_log1m(k: f64, p: f64) -> f64 {
    if k == 0.0 { 0.0 } else { k * libm::log1p(-p) }
}

/// The x in (0, inf) at which a rising `f` crosses `target`, by bisection of ln x to the last bits.
pub fn crossing_above_zero(start: f64, target: f64, f: impl Fn(f64) -> f64) -> f64 {
    let at = |u: f64| f(libm::exp(u));
    crossing(libm::log(start), target, at, libm::exp)
}

/// The x in (0, 1) at which a rising `f(x, 1 - x)` crosses `target`, by bisection of the logit, so that both
/// x and 1 - x keep their precision.
pub(crate) fn crossing_in_unit(start: f64, target: f64, f: impl Fn(f64, f64) -> f64) -> f64 {
    let logistic = |u: f64| 1.0 / (1.0 + libm::exp(-u));
    let at = |u: f64| f(logistic(u), logistic(-u));
    crossing(libm::log(start / (1.0 - start)), target, at, logistic)
}

/// Widens a bracket round `u` and bisects until there is no representable number between its ends.
fn crossing(u: f64, target: f64, f: impl Fn(f64) -> f64, back: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (u, u);
    let mut step = 0.5;
    while f(low) > target && low > -700.0 {
        high = low;
        low -= step;
        step *= 2.0;
    }
    step = 0.5;
    while f(high) < target && high < 700.0 {
        low = high;
        high += step;
        step *= 2.0;
    }
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        if f(middle) < target {
            low = middle;
        } else {
            high = middle;
        }
    }
    back(0.5 * (low + high))
}

/// The x with I_x(a, b) = p; a, b above 0, p in (0, 1).
pub(crate) fn beta_quantile(a: f64, b: f64, p: f64) -> f64 {
    crossing_in_unit((a / (a + b)).clamp(1e-12, 1.0 - 1e-12), 0.0, |x, not_x| {
        // Compare in the smaller tail, where the function keeps its precision.
        if p < 0.5 { beta_cdf(a, b, x) - p } else { (1.0 - p) - beta_cdf(b, a, not_x) }
    })
}

/// The x with P(a, x) = p; a above 0, p in (0, 1).
pub(crate) fn gamma_quantile(a: f64, p: f64) -> f64 {
    crossing_above_zero(a, 0.0, |x| if p < 0.5 { gamma_cdf(a, x) - p } else { (1.0 - p) - gamma_tail(a, x) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn quantiles_of_known_laws() {
        // Gamma with shape 1 is exponential; Beta(1, 1) is uniform; Beta(1, b) has 1 - (1-x)^b.
        assert!((gamma_quantile(1.0, 0.95) + 0.05_f64.ln()).abs() < 1e-12);
        assert!((beta_quantile(1.0, 1.0, 0.3) - 0.3).abs() < 1e-14);
        assert!((beta_quantile(1.0, 4.0, 0.2) - (1.0 - 0.8_f64.powf(0.25))).abs() < 1e-14);
    }

    #[test]
    fn binomial_tails_meet_at_the_edges() {
        assert_eq!(binomial_at_least(0, 5, 0.3), 1.0);
        assert_eq!(binomial_at_most(5, 5, 0.3), 1.0);
        assert!((binomial_at_least(5, 5, 0.3) - 0.3_f64.powi(5)).abs() < 1e-15);
        assert!((binomial_pmf(0, 0, 0.3) - 1.0).abs() < 1e-15);
    }

    proptest! {
        #[test]
        fn a_quantile_undoes_its_tail(a in 0.3f64..60.0, b in 0.3f64..60.0, p in 0.001f64..0.999) {
            prop_assert!((beta_cdf(a, b, beta_quantile(a, b, p)) - p).abs() < 1e-9);
            prop_assert!((gamma_cdf(a, gamma_quantile(a, p)) - p).abs() < 1e-9);
        }

        #[test]
        fn tails_add_up(k in 0u64..30, extra in 0u64..30, p in 0.01f64..0.99) {
            let n = k + extra;
            let total = binomial_at_least(k, n, p) + binomial_at_most(k, n, p) - binomial_pmf(k, n, p);
            prop_assert!((total - 1.0).abs() < 1e-10);
        }
    }
}
