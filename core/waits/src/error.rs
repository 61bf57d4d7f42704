//! What can be wrong with the input of a computation about waits.

/// Why an answer about waits can't be given.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum BiteError {
    /// There are no waits.
    #[error("there are no waits to work with: log a cast first, or choose more casts")]
    NoWaits,
    /// A number that must be positive isn't, or isn't a number.
    #[error("{what} must be a positive number, not {value}")]
    NotPositive {
        /// Which figure.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// A number that must be zero or more isn't, or isn't a number.
    #[error("{what} must be a number of zero or more, not {value}")]
    Negative {
        /// Which figure.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// A share, weight or level outside 0..1.
    #[error("{what} must lie between 0 and 1, not {value}")]
    NotAShare {
        /// Which figure.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// Two lists that belong together have different lengths.
    #[error("each wait needs its group: {waits} waits, {groups} groups")]
    GroupsDontMatch {
        /// How many waits.
        waits: usize,
        /// How many group marks.
        groups: usize,
    },
}

/// Passes a positive finite number through.
pub(crate) fn positive(what: &'static str, value: f64) -> Result<f64, BiteError> {
    if value.is_finite() && value > 0.0 { Ok(value) } else { Err(BiteError::NotPositive { what, value }) }
}

/// Passes a finite number of zero or more through.
pub(crate) fn not_negative(what: &'static str, value: f64) -> Result<f64, BiteError> {
    if value.is_finite() && value >= 0.0 { Ok(value) } else { Err(BiteError::Negative { what, value }) }
}

/// Passes a number strictly between 0 and 1 through.
pub(crate) fn open_share(what: &'static str, value: f64) -> Result<f64, BiteError> {
    if value > 0.0 && value < 1.0 { Ok(value) } else { Err(BiteError::NotAShare { what, value }) }
}

/// Passes a number from 0 to 1 through.
pub(crate) fn share(what: &'static str, value: f64) -> Result<f64, BiteError> {
    if (0.0..=1.0).contains(&value) { Ok(value) } else { Err(BiteError::NotAShare { what, value }) }
}
