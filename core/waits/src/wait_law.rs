//! Distributions of the wait that shapes are made of.

use super::special::{gamma_lower, normal_upper};
use libm::log;

/// A distribution of the wait in minutes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Law {
    /// Bites at a constant `rate` per minute.
    Exponential {
        /// Bites per minute.
        rate: f64,
    },
    /// ln t is normal with mean `mu` and standard deviation `sigma`.
    LogNormal {
        /// Mean of ln minutes.
        mu: f64,
        /// Standard deviation of ln minutes.
        sigma: f64,
    },
    /// Gamma with `shape` and `rate`.
    Gamma {
        /// Shape.
        shape: f64,
        /// Per minute.
        rate: f64,
    },
}

impl Law {
    /// Share of casts with a bite by `minutes`.
    pub(crate) fn bitten_by(&self, minutes: f64) -> f64 {
        match *self {
            _ if minutes <= 0.0 => 0.0,
            Self::Exponential { rate } => -libm::expm1(-rate * minutes),
            Self::LogNormal { mu, sigma } => normal_upper((mu - log(minutes)) / sigma),
            Self::Gamma { shape, rate } => gamma_lower(shape, rate * minutes),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The closed forms: 1 - e^-x, and 1 - (1 + x) e^-x for the sum of two exponential waits.
    #[test]
    fn exponential_and_gamma_of_shape_two_agree_with_their_closed_forms() {
        for minutes in [0.1, 3.0, 14.0, 60.0, 180.0] {
            let x: f64 = 0.07 * minutes;
            let one = Law::Exponential { rate: 0.07 }.bitten_by(minutes);
            assert!((one - (1.0 - (-x).exp())).abs() < 1e-14, "{minutes}");
            let two = Law::Gamma { shape: 2.0, rate: 0.07 }.bitten_by(minutes);
            assert!((two - (1.0 - (1.0 + x) * (-x).exp())).abs() < 1e-13, "{minutes}");
        }
        assert_eq!(Law::Exponential { rate: 0.07 }.bitten_by(-1.0), 0.0);
    }

    /// Half by the median, and 2.5 % and 97.5 % 1.959963984540054 standard deviations (R's qnorm, from memory) off it.
    #[test]
    fn log_normal_waits_agree_with_the_normal_quantiles() {
        let law = Law::LogNormal { mu: 2.5, sigma: 0.6 };
        for (z, share) in [(0.0, 0.5), (1.959_963_984_540_054, 0.975), (-1.959_963_984_540_054, 0.025)] {
            let minutes = libm::exp(2.5 + 0.6 * z);
            assert!((law.bitten_by(minutes) - share).abs() < 1e-13, "{z}");
        }
    }
}
