//! The priors of waits before the first cast, with their reasons, so that the app can show them.

use super::BiteError;
use super::error::{open_share, positive, share};
use super::special::ln_gamma;
use libm::{exp, log};

/// Turn-round assumed until the angler's own is known, minutes. A guess.
pub const TURN_ROUND_GUESS_MIN: f64 = 2.0;
/// Extra time of a bite assumed until the angler's own is known, minutes. A guess.
pub const BITE_EXTRA_GUESS_MIN: f64 = 3.0;
/// Probability that an earlier session on the same water was a day of today's kind. Its influence on today is
/// smaller, since days of one kind differ too (day effect). A guess, checked by simulation (docs/advice.md).
pub const LIKE_DAY_WEIGHT: f64 = 0.8;
/// The same for a session on another water. A guess.
pub const OTHER_DAY_WEIGHT: f64 = 0.15;

/// Prior of a scale on the log axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ScalePrior {
    /// ln scale is normal.
    LogNormal {
        /// Mean of ln minutes.
        mean: f64,
        /// Its standard deviation.
        sd: f64,
    },
    /// The rate 1 / scale is gamma-distributed: conjugate for exponential waits.
    GammaRate {
        /// Shape.
        shape: f64,
        /// Rate, minutes.
        rate: f64,
    },
}

impl ScalePrior {
    /// Log density of ln scale.
    pub(crate) fn ln_density(self, ln_scale: f64) -> f64 {
        match self {
            Self::LogNormal { mean, sd } => ln_normal(ln_scale, mean, sd),
            Self::GammaRate { shape, rate } => {
                shape * log(rate) - ln_gamma(shape) - shape * ln_scale - rate * exp(-ln_scale)
            }
        }
    }

    /// First and second derivative of the log density.
    pub(crate) fn slopes(self, ln_scale: f64) -> (f64, f64) {
        match self {
            Self::LogNormal { mean, sd } => ((mean - ln_scale) / (sd * sd), -1.0 / (sd * sd)),
            Self::GammaRate { shape, rate } => {
                let r = rate * exp(-ln_scale);
                (r - shape, -r)
            }
        }
    }

    /// Where the density of ln scale is highest.
    pub(crate) fn mode(self) -> f64 {
        match self {
            Self::LogNormal { mean, .. } => mean,
            Self::GammaRate { shape, rate } => log(rate / shape),
        }
    }

    fn check(self) -> Result<(), BiteError> {
        match self {
            Self::LogNormal { mean, sd } => {
                positive("the prior typical wait", exp(mean))?;
                positive("the prior spread of ln scale", sd)?;
            }
            Self::GammaRate { shape, rate } => {
                positive("the prior shape of the rate", shape)?;
                positive("the prior rate of the rate", rate)?;
            }
        }
        Ok(())
    }
}

/// ln of the normal density.
pub(crate) fn ln_normal(x: f64, mean: f64, sd: f64) -> f64 {
    let z = (x - mean) / sd;
    -0.5 * z * z - log(sd) - super::special::LN_SQRT_TWO_PI
}

/// The priors of waits before the first cast.
///
/// Shapes share one scale, the ln of the concentration of the waits: ln shape for Weibull, -ln sigma
/// for log-normal, half ln shape for gamma; each is about -ln of the coefficient of variation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Priors {
    /// Weibull scale, log-normal median, gamma mean: minutes.
    pub scale: ScalePrior,
    /// Scale of exponential waits, minutes.
    pub exponential_scale: ScalePrior,
    /// Mean and standard deviation of ln concentration.
    pub concentration: (f64, f64),
    /// Mean and standard deviation of the logit of the share of casts that would never get a bite.
    pub never: (f64, f64),
    /// Probability, by model, that every cast would get a bite in the end: that the share above is zero.
    pub somebody_always: [f64; 4],
    /// Prior weights of exponential, Weibull, log-normal and gamma waits; they are scaled to sum to 1.
    pub models: [f64; 4],
}

/// The priors in use, each with its reason in [`Priors::reasons`].
pub const PRIORS: Priors = Priors {
    scale: ScalePrior::LogNormal { mean: 2.708_050_201_102_210_3, sd: 0.8 },
    exponential_scale: ScalePrior::LogNormal { mean: 2.995_732_273_553_991, sd: 0.8 },
    concentration: (1.0, 0.9),
    never: (-0.7, 1.2),
    somebody_always: [0.5, 0.15, 0.15, 0.15],
    models: [0.25, 0.25, 0.25, 0.25],
};

impl Default for Priors {
    fn default() -> Self {
        PRIORS
    }
}

impl Priors {
    /// The reason for each prior, in the order in which the app lists them.
    pub const fn reasons() -> [(&'static str, &'static str); 5] {
        [
            (
                "typical wait",
                "about 15 minutes, with nineteen days in twenty between 3 and 75: casts are commonly left \
                 for 15 to 20 minutes (common practice, no source), so bites are expected on that scale",
            ),
            (
                "how close together bites come",
                "bunched, with a spread of about four parts in ten of the typical wait, but anything from bites \
                 all over to bites within a minute of one another is allowed for (a guess, kept wide)",
            ),
            (
                "share of casts with nobody home",
                "about one cast in three, with nineteen days in twenty between 5 and 84 in a hundred (a guess, \
                 kept wide), or none at all: with probability one half where bites come at a constant rate, 0.15 elsewhere",
            ),
            (
                "models",
                "exponential, Weibull, log-normal and gamma waits count the same before the first cast",
            ),
            (
                "earlier days",
                "one on the same water was a day of this kind with a chance of four in five, one on another water of one in \
                 seven; days of one kind may be the same, or differ in their rate by a quarter or by more than half \
                 (guesses; the book says which)",
            ),
        ]
    }

    /// Refuses priors that aren't proper.
    pub fn check(&self) -> Result<(), BiteError> {
        self.scale.check()?;
        self.exponential_scale.check()?;
        positive("the prior spread of the concentration", self.concentration.1)?;
        positive("the prior spread of the never-bite share", self.never.1)?;
        for always in self.somebody_always {
            share("the probability that every cast would get a bite", always)?;
        }
        for weight in self.models {
            share("a prior model weight", weight)?;
        }
        open_share("the sum of prior model weights over five", self.models.iter().sum::<f64>() / 5.0)?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn densities_of_the_scale_integrate_to_one() {
        for prior in
            [ScalePrior::LogNormal { mean: 2.7, sd: 0.8 }, ScalePrior::GammaRate { shape: 2.0, rate: 30.0 }]
        {
            let sum: f64 = (-2000..4000).map(|i| exp(prior.ln_density(f64::from(i) * 0.005)) * 0.005).sum();
            assert!((sum - 1.0).abs() < 1e-8, "{prior:?} {sum}");
            let (h, x) = (1e-4, 2.2);
            let slope = (prior.ln_density(x + h) - prior.ln_density(x - h)) / (2.0 * h);
            assert!((slope - prior.slopes(x).0).abs() < 1e-6);
            assert!(prior.slopes(prior.mode()).0.abs() < 1e-12);
        }
    }

    #[test]
    fn improper_priors_are_refused() {
        assert!(PRIORS.check().is_ok());
        assert!(Priors { somebody_always: [1.5; 4], ..PRIORS }.check().is_err());
        assert!(Priors { concentration: (0.0, 0.0), ..PRIORS }.check().is_err());
        assert!(Priors { models: [0.0; 4], ..PRIORS }.check().is_err());
    }
}
