//! What is assumed before the record says more.

/// Turn-round assumed until the angler's own is known, minutes. A guess.
pub const TURN_ROUND_GUESS_MIN: f64 = 2.0;
/// Extra time of a bite assumed until the angler's own is known, minutes. A guess.
pub const BITE_EXTRA_GUESS_MIN: f64 = 3.0;
/// Probability that an earlier session on the same water was a day of today's kind. Its influence on today is
/// smaller, since days of one kind differ too (day effect). A guess, checked by simulation (docs/advice.md).
pub const LIKE_DAY_WEIGHT: f64 = 0.8;
/// The same for a session on another water. A guess.
pub const OTHER_DAY_WEIGHT: f64 = 0.15;
