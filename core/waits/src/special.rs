//! Special functions the shapes and the curves share, on `libm` and `statrs` so that every platform agrees.

use statrs::function::{erf, gamma};

/// Upper tail of the standard normal.
pub(crate) fn normal_upper(z: f64) -> f64 {
    0.5 * libm::erfc(z * std::f64::consts::FRAC_1_SQRT_2)
}

/// Quantile of the standard normal for 0 < p < 1.
pub(crate) fn normal_quantile(p: f64) -> f64 {
    -std::f64::consts::SQRT_2 * erf::erfc_inv(2.0 * p)
}

/// Regularised lower incomplete gamma P(a, x), a > 0.
pub(crate) fn gamma_lower(a: f64, x: f64) -> f64 {
    if x <= 0.0 { 0.0 } else { gamma::gamma_lr(a, x) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn normal_quantile_of_the_usual_level() {
        // 1.959963984540054: R's qnorm(0.975), from memory.
        assert!((normal_quantile(0.975) - 1.959_963_984_540_054).abs() < 1e-14);
    }
}
