//! Closed forms against which the grid is checked: exponential waits, or Weibull waits of known
//! shape, with a gamma prior on scale^-shape (any textbook of Bayesian statistics).

use super::error::{not_negative, open_share, positive};
use super::special::gamma_quantile;
use super::{BiteError, Wait};
use libm::{exp, log1p, pow};

/// Gamma posterior of theta in S(t) = exp(-theta t^power).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GammaPosterior {
    /// Shape: the prior's plus one for each bite.
    pub shape: f64,
    /// Rate: the prior's plus t^power for each cast.
    pub rate: f64,
    /// The known Weibull shape; 1 for exponential waits.
    pub power: f64,
}

impl GammaPosterior {
    /// Adds `waits` to a gamma prior.
    pub fn new(prior_shape: f64, prior_rate: f64, power: f64, waits: &[Wait]) -> Result<Self, BiteError> {
        positive("the prior shape", prior_shape)?;
        not_negative("the prior rate", prior_rate)?;
        positive("the known shape", power)?;
        let bites = waits.iter().filter(|w| w.is_bite()).count() as f64;
        let exposure: f64 = waits.iter().map(|w| pow(w.minutes(), power)).sum();
        positive("prior rate and waits together", prior_rate + exposure)?;
        Ok(Self { shape: prior_shape + bites, rate: prior_rate + exposure, power })
    }

    /// Posterior mean of theta; for exponential waits the bites per minute.
    pub fn mean(&self) -> f64 {
        self.shape / self.rate
    }

    /// Equal-tailed credible interval of theta.
    pub fn interval(&self, level: f64) -> Result<(f64, f64), BiteError> {
        let tail = 0.5 * (1.0 - open_share("the credible level", level)?);
        let at = |p| gamma_quantile(self.shape, p) / self.rate;
        Ok((at(tail), at(1.0 - tail)))
    }

    /// Probability that the next cast waits longer than `minutes`.
    pub fn survival(&self, minutes: f64) -> f64 {
        exp(-self.shape * log1p(pow(minutes, self.power) / self.rate))
    }

    /// Time by which the next cast has had its bite with probability one half.
    pub fn median(&self) -> f64 {
        pow(self.rate * (pow(2.0, 1.0 / self.shape) - 1.0), 1.0 / self.power)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_are_left_at_the_median() {
        let waits = [Wait::new(5.0, true).unwrap(), Wait::new(9.0, false).unwrap()];
        let posterior = GammaPosterior::new(2.0, 30.0, 1.3, &waits).unwrap();
        assert!((posterior.survival(posterior.median()) - 0.5).abs() < 1e-14);
        assert!(GammaPosterior::new(0.0, 1.0, 1.0, &waits).is_err());
        assert!(GammaPosterior::new(1.0, 0.0, 1.0, &[]).is_err());
    }
}
