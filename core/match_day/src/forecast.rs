//! Forecasts for the rest of the match: casts, bites, weight, the last useful cast.
//!
//! Everything is based on the distribution of the wait, which is itself uncertain: a weighted set of
//! distributions ("laws"), drawn from the posterior. A day has one unknown truth that all its casts share, so
//! each simulated future draws one law and keeps it.

mod fish;
mod last_cast;
mod laws;
mod renewal;

pub use fish::FishKind;
pub use last_cast::{LastCast, last_useful_cast};
pub use laws::LAWS;
pub use renewal::{Forecast, Landing, Plan, Range, TimeLeft, forecast};

/// A distribution of the wait from splash to bite.
pub trait WaitSurvival {
    /// Probability that a wait is longer than `minutes`: 1 at 0, never rising. It stays above 0 if some casts
    /// would never get a bite.
    fn survival(&self, minutes: f64) -> f64;
}

impl<F: Fn(f64) -> f64> WaitSurvival for F {
    fn survival(&self, minutes: f64) -> f64 {
        self(minutes)
    }
}

/// Why no forecast is possible.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum ForecastError {
    /// No law of the wait, or weights that are all zero.
    #[error("nothing is known of the waits yet")]
    NoLaw,
    /// A weight that is negative or not a number.
    #[error("{0} can't be the weight of a law")]
    BadWeight(f64),
    /// A time that is negative or not a number.
    #[error("{0} is no length of time")]
    NotATime(f64),
    /// Leave time and turn-round are zero, which would give infinitely many casts.
    #[error("a cast must take some time")]
    NoCastTime,
    /// No landed fish and no assumed weights to draw from.
    #[error("no weight of a fish is known")]
    NoFish,
    /// A weight of a fish that is negative or not a number.
    #[error("{0} is no weight of a fish")]
    NotAFish(f64),
}

/// Checks a time that may be zero.
pub(crate) fn time(minutes: f64) -> Result<f64, ForecastError> {
    if minutes.is_finite() && minutes >= 0.0 { Ok(minutes) } else { Err(ForecastError::NotATime(minutes)) }
}

/// Checks the weights of laws and returns their sum.
pub(crate) fn total_weight<L>(laws: &[(f64, L)]) -> Result<f64, ForecastError> {
    if let Some(bad) = laws.iter().map(|l| l.0).find(|w| !(w.is_finite() && *w >= 0.0)) {
        return Err(ForecastError::BadWeight(bad));
    }
    let total = laws.iter().map(|l| l.0).sum::<f64>();
    if total > 0.0 { Ok(total) } else { Err(ForecastError::NoLaw) }
}
