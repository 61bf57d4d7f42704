//! Special functions the wait models share, on `libm` and `statrs` so that every platform agrees.

use statrs::function::{erf, gamma};

/// ln(sqrt(2 pi)).
pub(crate) const LN_SQRT_TWO_PI: f64 = 0.918_938_533_204_672_8;

/// Upper tail of the standard normal.
pub(crate) fn normal_upper(z: f64) -> f64 {
    0.5 * libm::erfc(z * std::f64::consts::FRAC_1_SQRT_2)
}

/// Density of the standard normal.
pub(crate) fn normal_density(z: f64) -> f64 {
    libm::exp(-0.5 * z * z - LN_SQRT_TWO_PI)
}

/// Natural log of the upper tail of the standard normal; beyond z = 30 by the asymptotic series (Abramowitz
/// and Stegun 26.2.12, recalled), where the tail itself underflows.
pub(crate) fn ln_normal_upper(z: f64) -> f64 {
    if z < 30.0 {
        return libm::log(normal_upper(z));
    }
    let u = 1.0 / (z * z);
    -0.5 * z * z - LN_SQRT_TWO_PI - libm::log(z) + libm::log1p(-u * (1.0 - 3.0 * u * (1.0 - 5.0 * u)))
}

/// Inverse Mills ratio: density over upper tail.
pub(crate) fn mills(z: f64) -> f64 {
    libm::exp(-0.5 * z * z - LN_SQRT_TWO_PI - ln_normal_upper(z))
}

/// Quantile of the standard normal for 0 < p < 1.
pub(crate) fn normal_quantile(p: f64) -> f64 {
    -std::f64::consts::SQRT_2 * erf::erfc_inv(2.0 * p)
}

/// ln Gamma(a), a > 0.
pub(crate) fn ln_gamma(a: f64) -> f64 {
    libm::lgamma(a)
}

/// Regularised lower incomplete gamma P(a, x), a > 0.
pub(crate) fn gamma_lower(a: f64, x: f64) -> f64 {
    if x <= 0.0 { 0.0 } else { gamma::gamma_lr(a, x) }
}

/// ln Q(a, x), the log of the regularised upper incomplete gamma; far in the tail by the continued fraction
/// of Legendre (Press et al., Numerical Recipes 6.2), where Q itself underflows.
pub(crate) fn ln_gamma_upper(a: f64, x: f64) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    if x < a + 40.0 {
        let lower = gamma::gamma_lr(a, x);
        return if lower < 0.5 { libm::log1p(-lower) } else { libm::log(gamma::gamma_ur(a, x)) };
    }
    a * libm::log(x) - x - ln_gamma(a) + libm::log(upper_fraction(a, x))
}

/// The continued fraction h in Q(a, x) = x^a e^-x h / Gamma(a), by Lentz's method; x > a + 1.
pub(crate) fn upper_fraction(a: f64, x: f64) -> f64 {
    let mut b = x + 1.0 - a;
    let mut c = 1e300;
    let mut d = 1.0 / b;
    let mut h = d;
    for i in 1..200 {
        let i = f64::from(i);
        let an = -i * (i - a);
        b += 2.0;
        d = 1.0 / (an * d + b);
        c = b + an / c;
        let step = c * d;
        h *= step;
        if (step - 1.0).abs() < 1e-15 {
            break;
        }
    }
    h
}

/// Digamma.
pub(crate) fn digamma(a: f64) -> f64 {
    gamma::digamma(a)
}

/// Trigamma by upward recurrence and the asymptotic series (Abramowitz and Stegun 6.4.12, recalled;
/// checked below against differences of digamma).
pub(crate) fn trigamma(a: f64) -> f64 {
    let mut x = a;
    let mut sum = 0.0;
    while x < 10.0 {
        sum += 1.0 / (x * x);
        x += 1.0;
    }
    let u = 1.0 / (x * x);
    let series = 1.0 / 6.0 - u * (1.0 / 30.0 - u * (1.0 / 42.0 - u * (1.0 / 30.0 - u * 5.0 / 66.0)));
    sum + 1.0 / x + 0.5 * u + series * u / x
}

/// Quantile of the gamma distribution with the given shape and rate 1: bisection, then Newton steps.
pub(crate) fn gamma_quantile(shape: f64, p: f64) -> f64 {
    let mut high = shape + 10.0;
    while gamma_lower(shape, high) < p && high < 1e300 {
        high *= 2.0;
    }
    let mut low = 0.0;
    for _ in 0..200 {
        let mid = 0.5 * (low + high);
        if mid <= low || mid >= high {
            break;
        }
        if gamma_lower(shape, mid) < p { low = mid } else { high = mid }
    }
    0.5 * (low + high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn normal_tail_meets_its_series_smoothly() {
        let below = libm::log(normal_upper(29.999_999));
        let above = ln_normal_upper(30.000_001);
        assert!((below - above - 6.0e-5).abs() < 1e-5, "{below} {above}");
    }

    #[test]
    fn normal_quantile_of_the_usual_level() {
        // 1.959963984540054: R's qnorm(0.975), from memory.
        assert!((normal_quantile(0.975) - 1.959_963_984_540_054).abs() < 1e-14);
    }

    #[test]
    fn trigamma_is_the_slope_of_digamma() {
        for a in [0.1, 0.7, 1.0, 3.3, 25.0, 400.0] {
            let h = 1e-4 * a;
            let slope = (digamma(a + h) - digamma(a - h)) / (2.0 * h);
            assert!((trigamma(a) / slope - 1.0).abs() < 1e-6, "{a}");
        }
        // pi^2 / 6 at 1.
        assert!((trigamma(1.0) - std::f64::consts::PI.powi(2) / 6.0).abs() < 1e-13);
    }

    #[test]
    fn gamma_tail_in_closed_form_for_integer_shapes() {
        // Q(1, x) = e^-x and Q(2, x) = (1 + x) e^-x.
        for x in [0.1, 1.0, 5.0, 41.5, 120.0, 700.0] {
            assert!((ln_gamma_upper(1.0, x) + x).abs() < 1e-12 * x.max(1.0));
            assert!((ln_gamma_upper(2.0, x) - (libm::log1p(x) - x)).abs() < 1e-12 * x.max(1.0));
        }
    }

    #[test]
    fn gamma_quantile_inverts() {
        for (a, p) in [(0.5, 0.1), (3.5, 0.975), (11.0, 0.025), (300.0, 0.5)] {
            assert!((gamma_lower(a, gamma_quantile(a, p)) - p).abs() < 1e-12);
        }
    }
}
