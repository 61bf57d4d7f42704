//! One wait: splash to bite, or splash to whatever else ended the cast.

use serde::{Deserialize, Serialize};

/// A wait in minutes; `bite` is false if something else ended it, so that the wait is only known to be longer
/// (right-censored).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Wait {
    minutes: f64,
    bite: bool,
}

/// Why a wait can't be used.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum WaitError {
    /// Not a number, or infinite.
    #[error("a wait must be a number of minutes, not {0}: mend the times of that cast")]
    NotANumber(f64),
    /// Ends before it starts.
    #[error("a wait of {0} minutes ends before it starts: mend the times of that cast")]
    Negative(f64),
}

impl Wait {
    /// A wait of `minutes` from the splash (less the settle time) that ended with a bite or without.
    pub fn new(minutes: f64, bite: bool) -> Result<Self, WaitError> {
        if !minutes.is_finite() {
            return Err(WaitError::NotANumber(minutes));
        }
        if minutes < 0.0 {
            return Err(WaitError::Negative(minutes));
        }
        Ok(Self { minutes, bite })
    }

    /// Minutes from splash to end.
    pub fn minutes(self) -> f64 {
        self.minutes
    }

    /// Whether a bite ended it.
    pub fn is_bite(self) -> bool {
        self.bite
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bad_minutes_are_refused_by_name() {
        assert_eq!(Wait::new(-1.0, true), Err(WaitError::Negative(-1.0)));
        assert!(matches!(Wait::new(f64::NAN, true), Err(WaitError::NotANumber(_))));
        assert!(matches!(Wait::new(f64::INFINITY, false), Err(WaitError::NotANumber(_))));
        assert_eq!(Wait::new(0.0, false).map(Wait::minutes), Ok(0.0));
    }
}
