//! Casts left in the time left.
//!
//! floor((time left - reserve) / (planned leave + turn-round)), as a range over what is uncertain.

use serde::{Deserialize, Serialize};

/// A range of milliseconds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct RangeMs {
    /// Lower end.
    pub low: i64,
    /// Upper end.
    pub high: i64,
}

/// How many casts are left.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CastsLeft {
    /// With the longest leave and turn-round.
    pub low: u32,
    /// With the shortest.
    pub high: u32,
}

/// Why casts can't be counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum CastsLeftError {
    /// A range below zero or the wrong way round.
    #[error("{what} can't run from {low} to {high} ms")]
    BadRange {
        /// Which range.
        what: &'static str,
        /// Lower end.
        low: i64,
        /// Upper end.
        high: i64,
    },
    /// A reserve below zero.
    #[error("a reserve of {0} ms can't be used")]
    BadReserve(i64),
    /// A cast that takes no time.
    #[error("leave and turn-round together take no time")]
    NoCycle,
}

impl RangeMs {
    /// A value without uncertainty.
    pub const fn exactly(ms: i64) -> Self {
        Self { low: ms, high: ms }
    }

    fn checked(self, what: &'static str) -> Result<Self, CastsLeftError> {
        if self.low < 0 || self.high < self.low {
            return Err(CastsLeftError::BadRange { what, low: self.low, high: self.high });
        }
        Ok(self)
    }
}

/// Casts left with `left_ms` to fish, of which `reserve_ms` are kept free; no time gives no casts.
pub fn casts_left(
    left_ms: i64,
    reserve_ms: i64,
    planned_leave: RangeMs,
    turn_round: RangeMs,
) -> Result<CastsLeft, CastsLeftError> {
    if reserve_ms < 0 {
        return Err(CastsLeftError::BadReserve(reserve_ms));
    }
    let leave = planned_leave.checked("planned leave")?;
    let turn = turn_round.checked("turn-round")?;
    let shortest = leave.low.saturating_add(turn.low);
    if shortest == 0 {
        return Err(CastsLeftError::NoCycle);
    }
    let longest = leave.high.saturating_add(turn.high);
    let usable = left_ms.saturating_sub(reserve_ms).max(0);
    let count = |cycle: i64| u32::try_from(usable / cycle).unwrap_or(u32::MAX);
    Ok(CastsLeft { low: count(longest), high: count(shortest) })
}

#[cfg(test)]
mod tests {
    use super::super::clock::MINUTE_MS;
    use super::*;
    use proptest::prelude::*;

    fn minutes(low: i64, high: i64) -> RangeMs {
        RangeMs { low: low * MINUTE_MS, high: high * MINUTE_MS }
    }

    #[test]
    fn an_hour_less_five_minutes_fits_three_casts_of_fifteen_and_two() {
        let left = casts_left(60 * MINUTE_MS, 5 * MINUTE_MS, minutes(15, 15), minutes(2, 2)).unwrap();
        assert_eq!((left.low, left.high), (3, 3), "55 / 17");
        let exact = casts_left(60 * MINUTE_MS, 0, minutes(18, 18), minutes(2, 2)).unwrap();
        assert_eq!(exact.low, 3, "60 / 20 is three and not two");
    }

    #[test]
    fn uncertainty_gives_a_range_and_no_time_gives_no_casts() {
        let left = casts_left(60 * MINUTE_MS, 0, minutes(10, 20), minutes(2, 5)).unwrap();
        assert_eq!((left.low, left.high), (2, 5));
        let over = casts_left(-MINUTE_MS, 0, minutes(10, 20), minutes(2, 5)).unwrap();
        assert_eq!((over.low, over.high), (0, 0));
        let kept = casts_left(5 * MINUTE_MS, 10 * MINUTE_MS, minutes(1, 1), minutes(1, 1)).unwrap();
        assert_eq!(kept.high, 0);
    }

    #[test]
    fn impossible_ranges_are_refused() {
        let bad = casts_left(MINUTE_MS, 0, minutes(20, 10), minutes(1, 1));
        assert!(matches!(bad, Err(CastsLeftError::BadRange { what: "planned leave", .. })));
        let bad = casts_left(MINUTE_MS, 0, minutes(1, 1), minutes(-1, 1));
        assert!(matches!(bad, Err(CastsLeftError::BadRange { what: "turn-round", .. })));
        assert_eq!(
            casts_left(MINUTE_MS, -1, minutes(1, 1), minutes(1, 1)),
            Err(CastsLeftError::BadReserve(-1))
        );
        assert_eq!(casts_left(MINUTE_MS, 0, minutes(0, 0), minutes(0, 0)), Err(CastsLeftError::NoCycle));
    }

    proptest! {
        #[test]
        fn that_many_casts_fit_and_one_more_does_not(left in 0_i64..1_000_000, leave in 1_i64..10_000, turn in 0_i64..10_000) {
            let count = casts_left(left, 0, RangeMs::exactly(leave), RangeMs::exactly(turn)).unwrap().low;
            let used = i64::from(count) * (leave + turn);
            prop_assert!(used <= left && used + leave + turn > left);
        }
    }
}
