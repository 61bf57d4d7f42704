//! Why a comparison can't be made, each with what to do next.

/// Input that no test can use.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum CompareError {
    /// Exposure (time fished) must be above zero and finite.
    #[error("{0} is no time fished")]
    NoExposure(f64),
    /// A probability outside 0 to 1.
    #[error("{0} is no probability")]
    NotAProbability(f64),
    /// More successes than trials.
    #[error("{successes} out of {trials} is impossible")]
    MoreThanAll {
        /// Successes given.
        successes: u64,
        /// Trials given.
        trials: u64,
    },
    /// Nothing to compare.
    #[error("nothing to compare")]
    EmptyGroup,
    /// Records of one series that differ in length.
    #[error("{times} times but {labels} labels")]
    LengthMismatch {
        /// Times given.
        times: usize,
        /// Labels given.
        labels: usize,
    },
    /// A time that is not a number, or below zero.
    #[error("{0} is no length of time")]
    NotATime(f64),
    /// A shape or rate of a distribution that must be above zero and finite.
    #[error("{0} can't be a shape or a rate")]
    NotAPositive(f64),
}

/// Checks that `x` is finite and above zero.
pub(crate) fn exposure(x: f64) -> Result<f64, CompareError> {
    if x.is_finite() && x > 0.0 { Ok(x) } else { Err(CompareError::NoExposure(x)) }
}

/// Checks that `p` is strictly between 0 and 1 (a confidence level, a quantile).
pub(crate) fn inner_probability(p: f64) -> Result<f64, CompareError> {
    if p > 0.0 && p < 1.0 { Ok(p) } else { Err(CompareError::NotAProbability(p)) }
}
